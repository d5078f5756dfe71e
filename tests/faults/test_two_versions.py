"""Two tabs, one of them of a version before: both write to the same book and the same journal.

Expected behaviour: W3C Indexed Database (a newer version asks the older connections to close;
opening it as an older version fails).
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import held, new_wearer, open_book
from tests.browser.host import until
from tests.browser.small_sock import session
from tests.browser.walk import field
from tests.faults.played_host import USABLE, PlayedHost, small, version_of

NewPhone = Callable[..., BrowserContext]
# A sock as the page before put it on the machine, and the counter that was on screen.
ON_MACHINE = """async (session) => {
  const database = await new Promise((done) => {
    const asked = indexedDB.open("heelwise.machine", 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("sessions", { keyPath: "id" });
      asked.result.createObjectStore("happenings", { keyPath: ["session", "number"] });
    };
    asked.onsuccess = () => done(asked.result);
  });
  const writing = database.transaction("sessions", "readwrite");
  writing.objectStore("sessions").put(session);
  await new Promise((done) => { writing.oncomplete = done; });
  database.close();
}"""


HAPPENED = """async () => {
  const database = await new Promise((done) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
  });
  const reading = database.transaction("happenings").objectStore("happenings").getAll();
  await new Promise((done) => { reading.onsuccess = done; });
  database.close();
  return reading.result.map(({ number }) => number);
}"""


@pytest.fixture(scope="module")
def newer(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its next version, with a step more in both databases."""

    def change(root: Path) -> None:
        for name in ("book", "machine"):
            disk = root / "webapp" / name / "disk.js"
            text = disk.read_text()
            assert text.count("\n];\n") == 1
            disk.write_text(text.replace("\n];\n", "\n  () => {},\n];\n"))

    return small(tmp_path_factory.mktemp("newer"), change)


@pytest.fixture
def old(phone: BrowserContext, host: PlayedHost) -> Page:
    """A tab of the first version, which stays open; a sock is on the machine."""
    phone.add_init_script("""localStorage['heelwise.counter'] = '{"guard": 0}'""")
    page = phone.new_page()
    page.goto(f"{host.address}manifest.webmanifest")
    page.evaluate(ON_MACHINE, session())
    page.goto(host.address)
    until(page, USABLE)
    return page


def other(old: Page, host: PlayedHost, version: Path) -> Page:
    """A tab of another version."""
    host.deploy(version)
    page = old.context.new_page()
    page.goto(host.address)
    until(page, USABLE)
    expect(page.locator("html")).to_have_attribute("data-version", version_of(version))
    return page


def at_machine(page: Page) -> None:
    """To the counter; the sock is where it was."""
    page.evaluate("location.hash = '#knit'")
    expect(page.locator(".target")).to_be_visible()


def count(page: Page) -> None:
    """One thing more, which stands in the journal once it is shown."""
    shown = page.locator("#machine-now").inner_text()
    page.keyboard.press("PageDown")
    expect(page.locator("#machine-now")).not_to_have_text(shown)


def kept_at_machine(page: Page) -> list[int]:
    """Numbers of what happened, as the database has them."""
    numbers: list[int] = page.evaluate(HAPPENED)
    return numbers


def in_the_book(page: Page, label: str) -> None:
    """The list has somebody."""
    expect(page.locator("#book .wearers")).to_contain_text(label)


def add(page: Page, label: str) -> None:
    """From the list and back to it."""
    new_wearer(page, label, "24")
    page.locator(".head [data-book=list]").tap()
    in_the_book(page, label)


def test_both_write_the_book(old: Page, host: PlayedHost, second: Path) -> None:
    open_book(old)
    add(old, "Invented: Nuri")
    new = other(old, host, second)
    open_book(new)
    in_the_book(new, "Invented: Nuri")
    add(new, "Invented: Ada")
    in_the_book(old, "Invented: Ada")
    add(old, "Invented: Bo")
    in_the_book(new, "Invented: Bo")
    labels = sorted(one["label"] for one in held(new)["wearers"])
    assert labels == ["Invented: Ada", "Invented: Bo", "Invented: Nuri"]
    assert len(held(new)["visits"]) == 3


def test_one_counts_and_the_other_follows(old: Page, host: PlayedHost, second: Path) -> None:
    at_machine(old)
    count(old)
    new = other(old, host, second)
    expect(new.locator(".notice")).to_contain_text("Another tab is counting")
    count(old)
    shown = old.locator("#machine-now").inner_text()
    expect(new.locator("#machine-now")).to_have_text(shown)
    new.get_by_role("button", name="Count here").tap()
    expect(new.locator(".follows")).to_have_count(0)
    count(new)
    expect(old.locator("#machine-now")).to_have_text(new.locator("#machine-now").inner_text())
    assert kept_at_machine(new) == [1, 2, 3]


def test_a_newer_book_is_left_to_the_newer_tab(old: Page, host: PlayedHost, newer: Path) -> None:
    open_book(old)
    add(old, "Invented: Nuri")
    new = other(old, host, newer)
    open_book(new)
    in_the_book(new, "Invented: Nuri")
    # At once, before she writes anything more.
    expect(old.locator("#book .trouble")).to_contain_text("a newer version reads it")
    add(new, "Invented: Ada")
    # What is typed on a sheet waits for the book also through a reload.
    old.locator(".wearers a", has_text="Nuri").tap()
    old.locator("#open-sheet").tap()
    field(old, "foot.length").fill("27")
    until(old, """Object.values(localStorage).join().includes('"27"')""")
    old.goto(f"{host.address}#book")
    with old.expect_event("load"):
        old.locator("#book .trouble button", has_text="Reload").tap()
    until(old, USABLE)
    in_the_book(old, "Invented: Ada")
    expect(old.locator("#book .trouble")).to_have_count(0)
    old.locator(".wearers a", has_text="Nuri").tap()
    expect(old.locator("#book .sizes").first).to_contain_text("27 cm")


def test_a_newer_journal_is_left_to_the_newer_tab(old: Page, host: PlayedHost, newer: Path) -> None:
    at_machine(old)
    count(old)
    count(old)
    new = other(old, host, newer)
    notice = old.locator(".notice-memory")
    expect(notice).to_contain_text("Reload before you go on")
    expect(new.locator(".target")).to_be_visible()
    assert kept_at_machine(new) == [1, 2]
    with old.expect_event("load"):
        notice.get_by_role("button", name="Reload").tap()
    until(old, USABLE)
    expect(old.locator(".target")).to_be_visible()
    expect(old.locator(".notice-memory")).to_have_count(0)
    new.close()
    expect(old.locator(".follows")).to_have_count(0)
    count(old)
    assert kept_at_machine(old) == [1, 2, 3]
