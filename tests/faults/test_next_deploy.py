"""A next version comes while an old one is on the phone: spoilt, in mid-session, or bad itself.

Expected behaviour: W3C Service Workers (a new worker waits, its script is asked for at every
navigation), WHATWG HTML (a module script that does not come fires "error").
"""

import shutil
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from flask import Response, request
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import card, new_wearer, open_book
from tests.browser.host import comes_true, until
from tests.browser.walk import field
from tests.faults.conftest import IN_EACH, STYLES
from tests.faults.played_host import (
    SPOILT,
    USABLE,
    PlayedHost,
    all_is_stored,
    as_it_is,
    files,
    for_the_store,
    gone,
    only,
    small,
    stored,
    truncated,
    version_of,
    wrong_type,
)

pytestmark = pytest.mark.stored
NewPhone = Callable[..., BrowserContext]
LOOK = """async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => {});
    const worker = registration.installing;
    await new Promise((done) => {
        const over = () => worker?.state !== "installing" && done();
        worker?.addEventListener("statechange", over);
        over();
    });
    return [registration.waiting?.state ?? null, registration.active.state];
}"""


def visit(phone: BrowserContext, host: PlayedHost) -> Page:
    """A page of what the host has, opened when all is stored."""
    page = phone.new_page()
    page.goto(host.address)
    all_is_stored(page, host)
    return page


def is_of(page: Page, dist: Path) -> None:
    """The page is this version's, and has started."""
    expect(page.locator("html")).to_have_attribute("data-version", version_of(dist))
    until(page, USABLE)


def take(page: Page) -> None:
    """Take the version that is offered."""
    button = page.locator("#offer-line button")
    expect(button).to_be_visible()
    with page.expect_navigation():
        button.tap()


def each_part_opens(page: Page, label: str = "Invented: Ada") -> None:
    """The parts that are loaded when they are wanted: book, copies, paper, counter."""
    open_book(page)
    page.locator("#to-copies").tap()
    expect(page.locator("#save-copy")).to_be_visible()
    page.locator("#all-wearers").tap()
    new_wearer(page, label, "24")
    page.locator(".head [data-book=list]").tap()
    card(page, label)
    page.locator("#wearer-tag").tap()
    expect(page.locator("#print-tag")).to_be_attached()
    page.goto(page.url.split("#")[0] + "#knit")
    expect(page.locator("#machine-trouble")).to_contain_text("No sock is on the machine yet")


def test_a_spoilt_version_leaves_the_old_one_whole(
    phone: BrowserContext, host: PlayedHost, first: Path, second: Path
) -> None:
    page = visit(phone, host)
    new = sorted(set(files(second)) - set(files(first)))
    scripts_and_styles = [name for name in new if "/en-GB/" not in name]  # one language will do
    assert len(scripts_and_styles) == len(IN_EACH) + len(STYLES)
    changed = [*scripts_and_styles, "index.html"]
    host.deploy(second)
    for name in changed:
        for spoil in SPOILT:
            seen: list[str] = []
            host.alter = only(name, spoil, seen)
            assert page.evaluate(LOOK) == [None, "activated"]
            assert seen, f"{name} was not asked for"
            expect(page.locator("#offer-line button")).to_have_count(0)
    host.alter = gone
    page.reload()
    is_of(page, first)
    each_part_opens(page)

    # The host has the right files after all, under types under which a browser would run none.
    host.alter = lambda response: wrong_type(response) if for_the_store() else response
    page.goto(host.address)
    assert page.evaluate(LOOK) == ["installed", "activated"]
    host.alter = gone
    take(page)
    is_of(page, second)
    assert page.evaluate("second")
    assert stored(page) == files(second)
    each_part_opens(page, "Invented: Bo")


def test_an_open_page_goes_on_when_the_host_has_another_version(
    phone: BrowserContext, host: PlayedHost, second: Path
) -> None:
    """Nothing that was not loaded yet is on the host any longer."""
    page = visit(phone, host)
    host.deploy(second)
    host.asked.clear()
    each_part_opens(page)
    assert not [name for name in host.asked if name.startswith("assets/")]


def test_a_page_that_is_not_stored_yet_says_what_to_do(
    new_phone: NewPhone, host: PlayedHost, second: Path
) -> None:
    """The book was opened and the copies were not, the paper not, the counter not."""
    phone = new_phone(service_workers="block")
    page = phone.new_page()
    page.goto(host.address)
    until(page, USABLE)
    field(page, "foot.length").fill("24,6")
    open_book(page)
    new_wearer(page, "Invented: Nuri", "24")
    page.locator(".head [data-book=list]").tap()
    host.deploy(second)
    page.locator("#to-copies").tap()
    expect(page.locator("#book .trouble")).to_contain_text("then reload")
    page.locator("#all-wearers").tap()
    card(page, "Invented: Nuri")
    page.locator("#wearer-tag").tap()
    expect(page.locator("#book")).to_contain_text("Tap again, or reload")
    page.goto(f"{host.address}#knit")
    expect(page.locator("#machine-trouble")).to_contain_text("then reload")
    page.reload()
    is_of(page, second)
    each_part_opens(page)
    page.goto(host.address)
    page.locator(".visit button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("24,6")


def test_a_page_that_is_not_stored_yet_and_its_book(
    new_phone: NewPhone, host: PlayedHost, second: Path
) -> None:
    page = new_phone(service_workers="block").new_page()
    page.goto(host.address)
    until(page, USABLE)
    host.deploy(second)
    page.locator(".head [data-book=list]").tap()
    expect(page.locator("#book .trouble")).to_contain_text("then reload")
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Wearers")


def test_a_spoilt_part_that_the_browser_would_hold_for_a_year(
    new_phone: NewPhone, host: PlayedHost
) -> None:
    (book,) = (name for name in files(host.dist) if name.startswith("assets/book-"))
    host.alter = only(book, truncated, [], to_store=False)
    page = new_phone(service_workers="block").new_page()
    page.goto(host.address)
    until(page, USABLE)
    page.locator(".head [data-book=list]").tap()
    expect(page.locator("#book .trouble")).to_contain_text("then reload")
    asked_again = f"""performance.getEntriesByType("resource")
        .filter(({{ name }}) => name.endsWith("{book}")).length > 1"""
    until(page, asked_again)
    host.alter = as_it_is
    page.reload()
    expect(page.locator("#book .trouble")).to_be_visible()  # the one that is held
    until(page, asked_again)
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Wearers")


def test_a_first_page_older_than_what_is_stored_becomes_the_same(
    phone: BrowserContext, host: PlayedHost, first: Path, second: Path
) -> None:
    """The deploy comes between the page and its service worker."""

    def deployed(response: Response) -> Response:
        if request.path.startswith("/assets/updates-"):
            host.deploy(second)
        return response

    host.alter = deployed
    page = phone.new_page()
    page.goto(host.address)
    is_of(page, second)
    expect(page.locator("#stored-line")).to_be_visible()
    script = (first / "index.html").read_text().split('data-main="')[1].split('"')[0]
    assert script in host.asked


THROWS_AT_ONCE = "throw new Error('made up');"
REFUSES = """addEventListener("install", (event) => event.waitUntil(Promise.reject("made up")));"""


def with_bad_worker(dist: Path, folder: Path, line: str) -> Path:
    """That site with this line before all that its service worker does."""
    shutil.copytree(dist, folder)
    (folder / "sw.js").write_text(line + (dist / "sw.js").read_text())
    return folder


@pytest.mark.parametrize("line", [THROWS_AT_ONCE, REFUSES])
def test_a_bad_service_worker_changes_nothing_and_the_next_deploy_comes(
    phone: BrowserContext, host: PlayedHost, first: Path, second: Path, tmp_path: Path, line: str
) -> None:
    page = visit(phone, host)
    host.deploy(with_bad_worker(second, tmp_path / "bad", line))
    assert page.evaluate(LOOK) == [None, "activated"]
    host.alter = gone
    page.reload()
    is_of(page, first)
    host.alter = as_it_is
    host.deploy(second)
    page.reload()  # the browser itself asks
    take(page)
    is_of(page, second)


@pytest.mark.parametrize("line", [THROWS_AT_ONCE, REFUSES])
def test_a_bad_service_worker_on_the_first_visit(
    phone: BrowserContext, host: PlayedHost, first: Path, second: Path, tmp_path: Path, line: str
) -> None:
    host.deploy(with_bad_worker(first, tmp_path / "bad", line))
    page = phone.new_page()
    page.goto(host.address)
    comes_true(page, lambda: "sw.js" in host.asked)
    is_of(page, first)
    host.deploy(second)
    page.reload()
    is_of(page, second)
    expect(page.locator("#stored-line")).to_be_visible()


@pytest.fixture(scope="module")
def broken(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its page throws as it starts."""

    def change(root: Path) -> None:
        main = root / "webapp" / "page" / "main.js"
        before, begins, after = main.read_text().partition("wireTheme(draft);")
        assert begins
        main.write_text(f"{before}null.made_up();{after}")

    return small(tmp_path_factory.mktemp("broken"), change)


def test_a_page_that_throws_at_its_start_is_got_rid_of(
    phone: BrowserContext, host: PlayedHost, broken: Path, second: Path
) -> None:
    page = visit(phone, host)
    open_book(page)
    new_wearer(page, "Invented: Nuri", "24")
    page.locator(".head [data-book=list]").tap()
    page.goto(host.address)
    host.deploy(broken)
    assert page.evaluate(LOOK) == ["installed", "activated"]
    take(page)
    line = page.locator("#not-started")
    expect(line).to_be_visible()

    page.evaluate("caches.open('of another site with the same host')")
    # With no host there is nothing better, and nothing is let go.
    host.alter = gone
    with page.expect_navigation():
        line.locator("button").tap()
    expect(line).to_be_visible()
    assert stored(page) == files(broken)

    host.alter = as_it_is
    host.deploy(second)
    with page.expect_navigation():
        line.locator("button").tap()
    is_of(page, second)
    expect(page.locator("#stored-line")).to_be_visible()
    assert "of another site with the same host" in page.evaluate("caches.keys()")
    open_book(page)
    expect(page.locator(".wearers a", has_text="Nuri")).to_be_visible()


def test_a_page_that_throws_at_its_start_is_gone_once_all_tabs_are_closed(
    phone: BrowserContext, host: PlayedHost, broken: Path, second: Path
) -> None:
    """She taps nothing: the browser asks for a next version at each opening, which then waits."""
    page = visit(phone, host)
    host.deploy(broken)
    assert page.evaluate(LOOK) == ["installed", "activated"]
    take(page)
    expect(page.locator("#not-started")).to_be_visible()
    host.deploy(second)
    page.reload()
    expect(page.locator("html")).to_have_attribute("data-version", version_of(broken))
    until(page, "navigator.serviceWorker.getRegistration().then((one) => Boolean(one.waiting))")
    page.close()
    blank = phone.new_page()

    def is_second() -> bool:
        """Whether a page that is opened now is; it takes a moment until a closed one counts so."""
        with closing(phone.new_page()) as opened:
            opened.goto(host.address)
            version = opened.locator("html").get_attribute("data-version")
            return version == version_of(second)

    comes_true(blank, is_second)


@pytest.mark.parametrize("kept_for", ["no-cache", "public, max-age=31536000, immutable"])
def test_the_browser_asks_for_the_service_worker_again_at_each_opening(
    phone: BrowserContext, host: PlayedHost, second: Path, kept_for: str
) -> None:
    """Also where a host lets it be held for a year, against what it was told to send."""

    def held(response: Response) -> Response:
        if request.path == "/sw.js":
            assert response.headers["Cache-Control"] == "no-cache"
            response.headers["Cache-Control"] = kept_for
        return response

    host.alter = held
    page = visit(phone, host)
    host.asked.clear()
    page.reload()
    comes_true(page, lambda: "sw.js" in host.asked)
    host.deploy(second)
    page.reload()
    take(page)
    is_of(page, second)
