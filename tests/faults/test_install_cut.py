"""The site is being stored when line or host fail: no half version is ever used.

Expected behaviour: W3C Service Workers (an install fails as a whole), W3C Subresource Integrity.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.host import comes_true, until
from tests.browser.walk import field
from tests.faults.played_host import (
    SPOILT,
    USABLE,
    Alter,
    PlayedHost,
    all_is_stored,
    as_it_is,
    cut_off,
    files,
    for_the_store,
    gone,
    in_order,
    missing,
    only,
    played,
    sign_in_page,
    truncated,
    version_of,
    wrong_type,
)

NewPhone = Callable[..., BrowserContext]
pytestmark = pytest.mark.stored
NOT_REGISTERED = "navigator.serviceWorker.getRegistration().then((one) => !one)"


def is_given_up(page: Page, seen: list[str]) -> None:
    """The install has come to the spoilt file, and nothing is used of what it stored before."""
    comes_true(page, lambda: seen)
    until(page, NOT_REGISTERED)
    until(page, USABLE)  # from the host
    assert page.evaluate("navigator.serviceWorker.controller") is None
    expect(page.locator("#stored-line")).to_be_hidden()


def comes_after_all(page: Page, host: PlayedHost) -> None:
    """With the host as it should be, the next visit stores all, and the one after needs no host."""
    field(page, "foot.length").fill("24,6")
    host.alter = as_it_is
    page.reload()
    all_is_stored(page, host)
    host.alter = gone
    page.reload()
    until(page, USABLE)
    expect(page.locator("html")).to_have_attribute("data-version", version_of(host.dist))
    expect(field(page, "foot.length")).to_have_value("24,6")


def test_cut_off_at_each_file(phone: BrowserContext, host: PlayedHost, first: Path) -> None:
    """Each visit comes one file further than the one before, until none is left to be cut off."""
    page = phone.new_page()
    for name in in_order(first):
        seen: list[str] = []
        host.alter = only(name, cut_off, seen)
        page.goto(host.address)
        is_given_up(page, seen)
    comes_after_all(page, host)


@pytest.mark.parametrize("spoil", [one for one in SPOILT if one is not cut_off])
def test_spoilt_on_the_first_visit(phone: BrowserContext, host: PlayedHost, spoil: Alter) -> None:
    (book,) = (name for name in files(host.dist) if name.startswith("assets/book-"))
    seen: list[str] = []
    host.alter = only(book, spoil, seen)
    page = phone.new_page()
    page.goto(host.address)
    is_given_up(page, seen)
    comes_after_all(page, host)


def test_the_real_site_is_cut_off_and_comes_under_wrong_types(
    phone: BrowserContext, dist: Path
) -> None:
    """Under those types a browser would run none of it, were they stored."""
    with played(dist) as host:
        (snapshot,) = (name for name in files(dist) if name.startswith("snapshot-"))
        seen: list[str] = []
        host.alter = only(snapshot, cut_off, seen)
        page = phone.new_page()
        page.goto(host.address)
        comes_true(page, lambda: seen)
        field(page, "foot.length").fill("24,6")
        expect(page.locator("#foot-length-other")).to_contain_text("9 5/8 in")
        until(page, NOT_REGISTERED)

        host.alter = lambda response: wrong_type(response) if for_the_store() else response
        page.evaluate("caches.keys().then((names) => names.forEach((name) => caches.delete(name)))")
        page.reload()
        all_is_stored(page, host)
        host.alter = gone
        page.reload()
        expect(page.locator("#foot-length-other")).to_contain_text("9 5/8 in")


@pytest.mark.parametrize("spoil", [cut_off, missing, sign_in_page, truncated])
def test_a_page_whose_script_does_not_come_says_so_and_can_be_loaded_anew(
    phone: BrowserContext, host: PlayedHost, spoil: Alter
) -> None:
    """The browser may hold a spoilt script for a year, as it was told; this asks the host again."""
    (main,) = (name for name in files(host.dist) if name.startswith("assets/main-"))
    host.alter = only(main, spoil, [], to_store=False)
    page = phone.new_page()
    page.goto(host.address)
    expect(page.locator("#not-started")).to_contain_text("Check your connection")
    expect(page.locator("#waiting")).to_be_hidden()
    with page.expect_navigation():
        page.locator("#not-started button").tap()
    expect(page.locator("#not-started")).to_be_visible()
    host.alter = as_it_is
    with page.expect_navigation():
        page.locator("#not-started button").tap()
    until(page, USABLE)
    all_is_stored(page, host)
    expect(page.locator("#not-started")).to_be_hidden()


def test_the_sign_in_page_of_a_network_leaves_nothing_behind(
    phone: BrowserContext, host: PlayedHost
) -> None:
    host.alter = sign_in_page
    page = phone.new_page()
    page.goto(host.address)
    expect(page).to_have_title("Welcome! Please sign in.")
    host.alter = as_it_is
    page.reload()
    all_is_stored(page, host)
