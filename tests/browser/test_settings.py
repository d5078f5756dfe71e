"""The settings are a page: what is set once stands there and under no step."""

import re

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.axe import violations
from tests.browser.walk import field, fill_foot, leave, opened, settings_sheet, step

KEPT = "navigator.storage.persisted = async () => {kept};"
ASKED = "navigator.storage.persist = async () => {{ {then} return true; }};"


def room(page: Page) -> str:
    """What is said of what the phone keeps."""
    told = page.locator("#settings-kept")
    expect(told).not_to_be_empty()
    return told.inner_text()


def test_units_are_those_of_the_first_step(phone: BrowserContext) -> None:
    page = opened(phone)
    field(page, "foot.length").fill("23.8")
    settings_sheet(page)
    expect(page.get_by_role("radio", name="centimeters")).to_be_checked()
    page.get_by_role("radio", name="inches").tap()
    leave(page)
    step(page, "measure")
    expect(page.get_by_role("radio", name="inches")).to_be_checked()
    expect(field(page, "foot.length")).to_have_value("23.8 cm")
    page.locator(".switch label").first.tap()
    settings_sheet(page)
    expect(page.get_by_role("radio", name="centimeters")).to_be_checked()
    page.reload()
    expect(page.get_by_role("radio", name="centimeters")).to_be_checked()


def test_the_machine_leads_to_its_cylinders_and_back(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    settings_sheet(page)
    machine = page.get_by_role("navigation", name="The machine")
    expect(machine.get_by_role("link", name="Slots in the cylinder 60")).to_be_visible()
    cylinders = machine.get_by_role("link", name="Your cylinders")
    expect(cylinders).to_contain_text("None yet")
    cylinders.tap()
    field(page, "shelf.cylinders").fill("54, 72")
    page.get_by_role("button", name="Done").tap()
    expect(cylinders).to_contain_text("54, 72")
    expect(cylinders).to_be_focused()
    leave(page)
    expect(page.locator("#yarn")).to_be_visible()
    settings_sheet(page)
    machine.get_by_role("link", name="Slots in the cylinder").tap()
    expect(page.get_by_role("heading", name="Machine and yarn")).to_be_visible()


def test_the_browser_is_asked_to_keep_it_all(phone: BrowserContext) -> None:
    page = opened(phone)
    page.evaluate(KEPT.format(kept="window.kept === true"))
    page.evaluate(ASKED.format(then=""))
    settings_sheet(page)
    ask = page.get_by_role("button", name="Ask the browser to keep it")
    expect(ask).to_be_visible()
    assert "may delete it" in room(page)
    assert re.search(r"It takes about [1-9]\d* MB", room(page)), room(page)
    ask.tap()
    expect(page.locator("#settings-kept")).to_contain_text("does not promise it yet")
    page.evaluate(ASKED.format(then="window.kept = true;"))
    ask.tap()
    expect(page.locator("#settings-kept")).to_contain_text("has promised to keep")
    expect(ask).to_be_hidden()
    expect(page.get_by_role("heading", name="Settings")).to_be_focused()


def test_copies_open_from_there(phone: BrowserContext) -> None:
    page = opened(phone)
    settings_sheet(page)
    page.get_by_role("button", name="Copies").tap()
    expect(page.get_by_role("button", name="Save all to a file")).to_be_visible()
    page.go_back()
    expect(page.get_by_role("heading", name="Settings")).to_be_visible()


@pytest.mark.parametrize("name", ["measure", "yarn", "counts"])
def test_nothing_of_it_stands_under_a_step(phone: BrowserContext, name: str) -> None:
    page = opened(phone)
    expect(page.locator("#settings")).to_have_count(1)
    step(page, name)
    for words in ("Colors", "What changed", "What this does not do", "Made with", "Language"):
        expect(page.get_by_text(words).locator("visible=true")).to_have_count(0)


@pytest.mark.parametrize("width", [320, 360])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_is_whole_on_a_small_phone(phone: BrowserContext, width: int, scheme: str) -> None:
    page = opened(phone)
    page.set_viewport_size({"width": width, "height": 640})
    settings_sheet(page)
    page.locator("#theme label", has_text=scheme).tap()
    expect(page.locator("html")).to_have_attribute("data-theme", scheme)
    for fold in page.locator("#settings details").all():
        fold.evaluate("one => { one.open = true; }")
    assert page.evaluate("document.documentElement.scrollWidth") == width
    small = page.evaluate(
        """[...document.querySelectorAll("#settings :is(button, summary, a, label)")]
          .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44)
          .map((one) => one.outerHTML)"""
    )
    assert [one for one in small if "licences.txt" not in one] == []
    assert violations(page) == []
