"""The page in more languages than one: the browser's, the one that was chosen; each offline too.

Which English is British is Unicode CLDR's affair: outside the United States it is `en-001`'s, whose
spelling is Britain's (parent locales in supplementalData.xml).
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.host import until
from tests.browser.walk import SOCK_FIGURES, figures, fill_sock, opened, settings_sheet, share, step

IN_DATABASE = """new Promise((found) => {
    indexedDB.open("heelwise.typed").onsuccess = ({ target: { result } }) => {
        const asked = result.transaction("kept").objectStore("kept").get("language");
        asked.onsuccess = () => { result.close(); found(asked.result?.value === "en-GB"); };
    };
})"""

NewPhone = Callable[..., BrowserContext]


def language(page: Page) -> str | None:
    """Of the page, and of what it says: both are one."""
    legend = page.locator("#theme legend").text_content()
    spelled = {"Colors": "en", "Colours": "en-GB"}[legend or ""]
    assert page.locator("html").get_attribute("lang") == spelled
    return spelled


@pytest.mark.parametrize(
    ("locale", "wanted"),
    [
        ("en", "en"),
        ("en-US", "en"),
        ("en-GB", "en-GB"),
        ("en-AU", "en-GB"),
        ("de-DE", "en"),
    ],
)
def test_the_browser_chooses_on_the_first_visit(
    new_phone: NewPhone, locale: str, wanted: str
) -> None:
    assert language(opened(new_phone(locale=locale))) == wanted


def test_what_was_chosen_goes_before(new_phone: NewPhone) -> None:
    phone = new_phone(locale="en-GB")
    page = opened(phone)
    settings_sheet(page)
    page.get_by_role("link", name="English (US)").tap()
    expect(page.locator("html")).to_have_attribute("lang", "en")
    expect(page.locator("#waiting")).to_be_hidden()
    page.close()
    assert language(opened(phone)) == "en"


def test_it_is_chosen_too_where_local_storage_has_lost_it(new_phone: NewPhone) -> None:
    phone = new_phone(locale="en")
    page = opened(phone)
    settings_sheet(page)
    page.get_by_role("link", name="English (UK)").tap()
    expect(page.locator("html")).to_have_attribute("lang", "en-GB")
    expect(page.locator("#waiting")).to_be_hidden()
    until(page, IN_DATABASE)
    page.evaluate("localStorage.clear()")
    page.close()
    page = opened(phone)
    expect(page.locator("html")).to_have_attribute("lang", "en-GB")


def test_a_link_is_of_no_language(new_phone: NewPhone) -> None:
    """What a British page shares opens in the reader's language, with the same counts."""
    clipboard = ["clipboard-read", "clipboard-write"]
    british = opened(new_phone(locale="en-GB", permissions=clipboard))
    fill_sock(british)
    step(british, "counts")
    assert figures(british).items() >= SOCK_FIGURES.items()
    share(british, "#copy-link")
    link = british.evaluate("navigator.clipboard.readText()")
    assert ".html" not in link
    american = opened(new_phone(locale="en-US"), link)
    assert language(american) == "en"
    assert figures(american).items() >= SOCK_FIGURES.items()


@pytest.mark.stored
def test_each_is_there_without_a_network(new_phone: NewPhone) -> None:
    phone = new_phone(locale="en-GB")
    page = opened(phone)
    expect(page.locator("#stored-line")).to_be_visible(timeout=120_000)
    phone.set_offline(True)
    page.reload()
    assert language(page) == "en-GB"
    settings_sheet(page)
    page.get_by_role("link", name="English (US)").tap()
    expect(page.locator("html")).to_have_attribute("lang", "en")
    fill_sock(page)
    step(page, "counts")
    assert figures(page).items() >= SOCK_FIGURES.items()
