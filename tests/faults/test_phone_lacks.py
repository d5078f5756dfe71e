"""A phone that lacks something or refuses it: all the same she plans, counts, and keeps the book.

Each lack is there before the page, several on one phone, and the whole walk is gone: three steps,
link, three rounds at the machine, a wearer, a copy. Where something is lost for it, a sentence says
so, and where not, none does; nothing is thrown. How each refuses is as its specification has it
(WHATWG Storage and HTML, W3C Indexed Database, Screen Wake Lock, Web Share, Clipboard, Vibration,
Web Audio, Web Locks, Service Workers; WICG Web Speech).
"""

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from tests.browser.at_machine import done, go_to, planned, target
from tests.browser.book import back_to_book, labels, new_wearer, open_book
from tests.browser.walk import SOCK, SOCK_FIGURES, field, figures, opened
from tests.conftest import PHONE
from tests.faults.kept_phone import KeptPhone
from tests.faults.lacks import (
    BOOK,
    BY_HAND,
    CLOSED_UNDER_US,
    COPIED,
    COUNTED,
    DARK,
    FILL,
    NO_DATABASE,
    NO_LOCAL_STORAGE,
    OPEN,
    PERSIST,
    SHARE,
    TYPED,
    cannot_be_made,
    gone,
    rejects,
    throws,
)

GRANTED = ["clipboard-write", "screen-wake-lock"]


@dataclass(frozen=True)
class Phone:
    """What runs before its page, and what is told for it, "" where nothing is to be said."""

    lacks: tuple[str, ...] = ()
    typed: str = ""
    counted: str = ""
    book: str = ""
    link: str = COPIED


PHONES = {
    "local_storage_null": Phone(
        (
            "Object.defineProperty(window, 'localStorage', { value: null });",
            gone("Navigator.prototype.storage", "Navigator.prototype.wakeLock"),
            gone("Navigator.prototype.clipboard"),
        ),
        counted=DARK,
        link=BY_HAND,
    ),
    "local_storage_closed": Phone(
        (
            NO_LOCAL_STORAGE,
            rejects("WakeLock.prototype.request", "NotAllowedError"),
            rejects(SHARE, "NotAllowedError"),  # copied, then
        ),
        counted=DARK,
    ),
    "local_storage_full": Phone(
        (
            FILL,
            throws(PERSIST, "SecurityError"),
            rejects(SHARE, "AbortError"),
            cannot_be_made("AudioContext", "NotSupportedError"),
        ),
        link="",
    ),
    "nothing_kept": Phone((NO_LOCAL_STORAGE, NO_DATABASE), typed=TYPED, counted=COUNTED, book=BOOK),
    "database_absent": Phone(
        (
            NO_DATABASE,
            gone("Navigator.prototype.locks", "BroadcastChannel"),
            gone("Navigator.prototype.serviceWorker", "caches"),
        ),
        counted=COUNTED,
        book=BOOK,
    ),
    "database_closed_to_us": Phone(
        (
            throws(OPEN, "SecurityError"),
            cannot_be_made("BroadcastChannel", "SecurityError"),
            rejects("Clipboard.prototype.writeText", "NotAllowedError"),
            f"{PERSIST} = async () => false;",
        ),
        counted=COUNTED,
        book=BOOK,
        link=BY_HAND,
    ),
    "database_hangs_at_open": Phone(
        (f"{OPEN} = () => new EventTarget();", f"{PERSIST} = () => new Promise(() => {{}});"),
        counted=COUNTED,
        book=BOOK,
    ),
    "database_closed_under_us": Phone(
        (
            CLOSED_UNDER_US,
            gone("Navigator.prototype.vibrate", "Navigator.prototype.mediaSession", "AudioContext"),
            gone("speechSynthesis", "SpeechSynthesisUtterance"),
        )
    ),
}


def walk(page: Page, phone: Phone, folder: Path) -> dict[str, Any]:
    """From an empty page to a copy of all; returns what the copy holds."""
    planned(page)
    assert figures(page).items() >= SOCK_FIGURES.items()
    says(page, "#status-line", phone.typed)
    send = page.get_by_role("button", name="Send it…")
    page.locator("#to-share").tap()
    page.locator("#copy-link").wait_for()
    (send if send.count() else page.locator("#copy-link")).tap()
    says(page, "#share-place [role=status]", phone.link)
    page.locator("#knit-it").tap()
    cared = page.locator("#cared")
    expect(cared.or_(target(page))).to_be_visible()
    if cared.is_visible():  # where nothing is kept of before
        cared.tap()
    go_to(page, "Foot", 10)
    for number in (11, 12, 13):
        page.wait_for_timeout(250)  # sooner, it would be taken for the same round
        target(page).tap()
        expect(done(page)).to_have_text(f"{number} of 46 done")
    says(page, ".notice", phone.counted)
    page.locator(".leave").tap()
    expect(page.locator("#machine-line")).to_contain_text("foot, 13 of 46 rounds done")
    open_book(page)
    new_wearer(page, "Invented: Nuri", "24")
    back_to_book(page)
    assert labels(page) == ["Invented: Nuri"]
    says(page, "#book .trouble", phone.book)
    page.locator("#to-copies").tap()
    with page.expect_download() as download:
        page.locator("#save-copy").tap()
    download.value.save_as(folder / "copy.json")
    copy: dict[str, Any] = json.loads((folder / "copy.json").read_bytes())
    return copy


def says(page: Page, selector: str, words: str) -> None:
    """It says this, or nothing at all."""
    if words:
        expect(page.locator(selector)).to_contain_text(words)
    else:
        assert "".join(page.locator(selector).all_inner_texts()) == ""


def holds_all(copy: dict[str, Any]) -> None:
    """What was typed, counted and written on the walk is in the copy."""
    assert copy["sheets"]["mine"].items() >= SOCK.items()
    (pair,) = copy["pairs"]
    assert [one["kind"] for one in pair["happenings"]] == ["jump", "done", "done", "done"]
    ((wearer, (visit,)),) = [(one["wearer"], one["visits"]) for one in copy["book"]]
    assert (wearer["label"], visit["values"]["foot.length"]) == ("Invented: Nuri", "24")


@contextmanager
def nothing_thrown(context: BrowserContext) -> Iterator[None]:
    """No error and no rejection is left to the browser."""
    thrown: list[str] = []
    context.on("weberror", lambda error: thrown.append(str(error.error)))
    yield
    assert not thrown


@pytest.mark.parametrize("name", PHONES)
def test_the_whole_walk(
    new_phone: Callable[..., BrowserContext], tmp_path: Path, name: str
) -> None:
    context = new_phone(permissions=GRANTED)
    for script in PHONES[name].lacks:
        context.add_init_script(f"if (isSecureContext) {{ {script} }}")  # on the site's page alone
    with nothing_thrown(context):
        page = opened(context)
        holds_all(walk(page, PHONES[name], tmp_path))
        if not PHONES[name].typed:  # then nothing is lost with the page
            page.goto("about:blank")
            page.goto("./")
            expect(page.locator("#visit-line")).to_contain_text("Invented: Nuri")
            expect(field(page, "foot.length")).to_have_value("24")


@pytest.mark.whole
def test_the_whole_walk_where_the_browser_keeps_nothing_for_any_site(
    kept_phone: Callable[..., KeptPhone], site: str, tmp_path: Path
) -> None:
    phone = kept_phone(base_url=site, permissions=GRANTED)
    (phone.folder / "Default").mkdir(parents=True)
    blocked = {"profile": {"default_content_setting_values": {"cookies": 2}}}
    (phone.folder / "Default" / "Preferences").write_text(json.dumps(blocked))
    with phone.opened() as context, nothing_thrown(context):
        holds_all(walk(opened(context), Phone((), TYPED, COUNTED, BOOK), tmp_path))


def test_the_whole_walk_by_http(browser: Browser, site: str, tmp_path: Path) -> None:
    """Without https there is no service worker, wake lock, clipboard, lock, cache or digest."""
    address = "http://plain.test/"
    features: dict[str, Any] = {**PHONE, "base_url": address}
    context = browser.new_context(**features)

    def pass_on(route: Route) -> None:
        route.fulfill(response=route.fetch(url=route.request.url.replace(address, site)))

    context.route(f"{address}**", pass_on)
    with nothing_thrown(context):
        page = opened(context)
        assert not page.evaluate("isSecureContext || 'serviceWorker' in navigator")
        holds_all(walk(page, Phone((), counted=DARK, link=BY_HAND), tmp_path))
    context.close()
