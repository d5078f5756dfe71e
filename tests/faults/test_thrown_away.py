"""The phone has thrown away what it stored, by itself or on being told to: files, or everything.

Expected behaviour: WHATWG Storage (a bucket goes as a whole), W3C Service Workers (`caches.delete`
leaves the registration).
"""

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Error, Page, expect

from tests.browser.book import new_wearer, open_book
from tests.browser.host import comes_true, until
from tests.browser.walk import field
from tests.faults.played_host import (
    USABLE,
    PlayedHost,
    all_is_stored,
    as_it_is,
    files,
    gone,
    missing,
    only,
    version_of,
)

pytestmark = pytest.mark.stored
NO_FILES = "caches.keys().then((names) => Promise.all(names.map((name) => caches.delete(name))))"


@pytest.fixture
def page(phone: BrowserContext, host: PlayedHost) -> Page:
    """All is stored, something is typed and somebody is in the book."""
    page = phone.new_page()
    page.goto(host.address)
    all_is_stored(page, host)
    field(page, "foot.length").fill("24,6")
    open_book(page)
    new_wearer(page, "Invented: Nuri", "23")
    page.locator(".head [data-book=list]").tap()
    expect(page.locator("#book .wearers")).to_contain_text("Nuri")
    page.goto(host.address)
    all_is_stored(page, host)  # the page has asked for it by now, and does not while files go
    return page


def all_is_kept(page: Page) -> None:
    page.locator(".tape a[data-to=measure]").tap()
    page.locator(".visit button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("24,6")
    open_book(page)
    expect(page.locator("#book .wearers")).to_contain_text("Nuri")


def test_files_thrown_away_come_again(phone: BrowserContext, page: Page, host: PlayedHost) -> None:
    page.evaluate(NO_FILES)
    # With no host there is nothing to be shown. The browser says so, and all that is kept stays.
    host.alter = gone
    with pytest.raises(Error, match="ERR_"):
        page.reload()
    page.close()
    page = phone.new_page()

    # Until the last of them is here again, nobody is told that they are.
    (book,) = (name for name in files(host.dist) if name.startswith("assets/book-"))
    seen: list[str] = []
    host.alter = only(book, missing, seen)
    page.goto(host.address)
    comes_true(page, lambda: seen)
    until(page, USABLE)
    expect(page.locator("#stored-line")).to_be_hidden()

    host.alter = as_it_is
    page.reload()
    all_is_stored(page, host)
    host.alter = gone
    page.reload()
    until(page, USABLE)
    all_is_kept(page)


def test_files_thrown_away_and_the_host_has_another_version(
    page: Page, host: PlayedHost, first: Path, second: Path
) -> None:
    """It is shown, without a reload after the other, and stored once she takes it."""
    page.evaluate(NO_FILES)
    host.deploy(second)
    opened: list[str] = []
    page.on("framenavigated", lambda frame: opened.append(frame.url))
    page.reload()
    until(page, USABLE)
    expect(page.locator("html")).to_have_attribute("data-version", version_of(second))
    expect(page.locator("#offer-line button")).to_be_visible()
    expect(page.locator("#stored-line")).to_be_hidden()
    assert len(opened) == 1
    page.locator("#offer-line button").tap()
    all_is_stored(page, host)
    host.alter = gone
    page.reload()
    until(page, USABLE)
    all_is_kept(page)


def test_everything_thrown_away_is_a_first_visit(
    phone: BrowserContext, page: Page, host: PlayedHost
) -> None:
    page.goto("about:blank")
    phone.new_cdp_session(page).send(
        "Storage.clearDataForOrigin",
        {"origin": host.address.rstrip("/"), "storageTypes": "all"},
    )
    page.goto(host.address)
    all_is_stored(page, host)
    expect(field(page, "foot.length")).to_have_value("")
    open_book(page)
    expect(page.locator("#book .wearers")).to_have_count(0)
    new_wearer(page, "Invented: Ada", "23")
    host.alter = gone
    page.reload()
    expect(field(page, "foot.length")).to_have_value("23")
