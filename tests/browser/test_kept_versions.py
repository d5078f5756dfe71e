"""What an older version of the page kept: read by this one, and laid aside until that is proven."""

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.browser.at_machine import planned, target
from tests.browser.book import HELD, PUT, card, held, labels, open_book
from tests.browser.bundled import bundled, changed
from tests.browser.host import comes_true, until
from tests.browser.walk import field, opened

KEPT = Path(__file__).with_name("kept")  # by version; all of it invented

# Makes a database as an older version of the page made it.
MAKE = """async ([name, { version, stores }]) => {
  const asked = indexedDB.open(name, version);
  asked.onupgradeneeded = () => {
    for (const [store, { keyPath, indexes = [], records }] of Object.entries(stores)) {
      const made = asked.result.createObjectStore(store, { keyPath });
      for (const name of indexes) made.createIndex(name, name);
      for (const record of records) made.put(record);
    }
  };
  await new Promise((done, fail) => { asked.onsuccess = done; asked.onerror = fail; });
  asked.result.close();
}"""


def kept(name: str, version: int = 1) -> dict[str, Any]:
    """What a version kept in a database."""
    found: dict[str, Any] = json.loads((KEPT / f"{name}_{version}.json").read_text())
    return found


def left_by(phone: BrowserContext, *names: str, version: int = 1) -> Page:
    """A phone with these databases of a version on it, and nothing of the page running."""
    page = phone.new_page()
    page.goto("manifest.webmanifest")
    for name in names:
        page.evaluate(MAKE, [f"heelwise.{name}", kept(name, version)])
    return page


def test_what_version_1_kept_is_there_and_no_version_lacks_a_fixture(
    phone: BrowserContext,
) -> None:
    page = left_by(phone, "book", "machine")
    page.evaluate("localStorage['heelwise.knitting'] = '{\"shown\": null, \"unfinished\": 1}'")
    page.goto("./")
    expect(page.locator("#machine-line")).to_contain_text("Invented: 8 slots")
    page.locator("#machine-line .go-on").tap()
    expect(target(page)).to_be_visible()
    expect(page.locator(".done-words")).to_contain_text("2 of 3")
    page.go_back()
    open_book(page)
    assert labels(page) == ["Invented: Nuri, ferry", "Invented: Wren"]
    card(page, "Invented: Nuri, ferry")
    expect(page.locator("#book .sizes").first).to_contain_text("22,5 cm")
    expect(page.locator("#book .trouble")).to_have_count(0)
    versions = {one["name"]: one["version"] for one in page.evaluate("indexedDB.databases()")}
    for name in ("book", "machine", "typed"):
        there = sorted(int(path.stem.split("_")[1]) for path in KEPT.glob(f"{name}_*.json"))
        assert there == list(range(1, versions[f"heelwise.{name}"] + 1))


def test_what_version_2_kept_of_the_machine_is_there(phone: BrowserContext) -> None:
    page = left_by(phone, "machine", version=2)
    page.evaluate(
        'localStorage[\'heelwise.knitting\'] = \'{"shown": null, "unfinished": 1, "ended": 1}\''
    )
    page.goto("./#counts")
    expect(page.locator("#machine-line")).to_contain_text("Invented: 8 slots, foot 12 rounds")
    page.locator("#knitted-place summary").tap()
    one = page.locator(".knitted-pair")
    expect(one).to_contain_text("For Invented: Wren. Invented: 8 slots, foot 11 rounds")
    expect(one).to_contain_text("Sock two: cuff 8 · leg 10 · foot 13")
    expect(one).to_contain_text("its foot 21,5 cm long, from 11 foot rounds")
    expect(one).to_contain_text("Invented note of a pair that is knitted")


def looks_as_left(page: Page) -> None:
    """The sheet on the table, shelf, table and colours are as the fixtures say."""
    expect(page.locator("#visit-line")).to_contain_text("Invented: Nuri")
    expect(field(page, "foot.length")).to_have_value("21,5")
    expect(field(page, "shelf.cylinders")).to_have_value("54, 60")
    expect(field(page, "chart.first")).to_have_value("22")
    expect(page.locator("html")).to_have_attribute("data-theme", "dark")
    expect(page.locator("#status-line .set-aside")).to_have_count(0)


def test_what_is_typed_as_version_1_of_its_database_has_it(phone: BrowserContext) -> None:
    page = left_by(phone, "typed")
    page.goto("./")
    looks_as_left(page)
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("23,8")
    page.locator("#bring-back").tap()
    expect(field(page, "foot.length")).to_have_value("27")
    open_book(page)
    assert labels(page) == ["Invented: Nuri"]  # the book did not have them


def test_what_local_storage_alone_held_is_brought_over(phone: BrowserContext) -> None:
    """As the versions before the database of what is typed left it."""
    page = phone.new_page()
    page.goto("manifest.webmanifest")
    page.evaluate(
        "all => Object.entries(all).forEach(([key, text]) => localStorage.setItem(key, text))",
        json.loads((KEPT / "local_storage.json").read_text()),
    )
    page.goto("./")
    looks_as_left(page)
    kept_now = HELD.replace("heelwise.book", "heelwise.typed")
    comes_true(
        page,
        lambda: (
            {"mine", "visit", "shelf", "chart", "before", "counter", "tag", "theme"}
            <= {one["name"] for one in page.evaluate(kept_now)["kept"]}
        ),
    )
    comes_true(page, lambda: len(held(page).get("wearers", [])) == 1)
    # The database alone has all of it.
    page.goto("manifest.webmanifest")
    page.evaluate("localStorage.clear()")
    page.goto("./")
    looks_as_left(page)
    expect(field(page, "foot.ball_girth")).to_have_value("20")
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("23,8")
    expect(page.locator("[name=who][value=woman]")).to_be_checked()
    open_book(page)
    assert labels(page) == ["Invented: Nuri"]


def test_what_a_version_without_dates_typed_since_is_later(phone: BrowserContext) -> None:
    """A host may go back to an older release for a while: local storage is as that one left it."""
    page = opened(phone)
    field(page, "foot.length").fill("24")
    field(page, "foot.ball_girth").fill("22")
    comes_true(
        page,
        lambda: "22" in json.dumps(page.evaluate(HELD.replace("heelwise.book", "heelwise.typed"))),
    )
    page.goto("manifest.webmanifest")
    page.evaluate(
        """() => {
          const mine = JSON.parse(localStorage["heelwise.mine"]);
          localStorage["heelwise.mine"] = JSON.stringify({ ...mine, "foot.length": "25" });
        }"""
    )
    page.goto("./")
    expect(field(page, "foot.length")).to_have_value("25")
    page.wait_for_timeout(500)
    expect(field(page, "foot.length")).to_have_value("25")
    expect(field(page, "foot.ball_girth")).to_have_value("22")


@pytest.fixture(scope="module")
def bench() -> str:
    return bundled(Path(__file__).with_name("storage_bench.js"))


@pytest.fixture
def version_1(phone: BrowserContext, bench: str) -> Page:
    """A page with the book of version 1 and the bench."""

    def fulfil(route: Route) -> None:
        route.fulfill(body=bench, content_type="text/javascript")

    phone.route("**/storage_bench.js", fulfil)
    return benched(left_by(phone, "book"))


def benched(page: Page) -> Page:
    """With the bench loaded anew."""
    page.goto("manifest.webmanifest")
    page.evaluate("import('/storage_bench.js').then(() => null)")
    return page


def upgraded(page: Page, step: str) -> dict[str, Any]:
    """What comes of opening the book as a version with this step."""
    found: dict[str, Any] = page.evaluate("step => bench.next(step)", step)
    return found


WEARERS = sorted(kept("book")["stores"]["wearers"]["records"], key=lambda one: one["id"])
VISITS = kept("book")["stores"]["visits"]["records"]


def test_what_is_laid_aside_goes_once_the_new_reads_well(version_1: Page) -> None:
    page = version_1
    numbered = [{**one, "at": at} for at, one in enumerate(WEARERS)]
    assert upgraded(page, "good") == {"stuck": False, "wearers": numbered}
    until(
        page,
        """next.twice(opened => opened.count("before")).then(many => many === 0)""",
    )
    assert held(page) == {"before": [], "wearers": numbered, "visits": VISITS}


@pytest.mark.parametrize("step", ["throws half-way", "is refused half-way", "loses one"])
def test_where_the_change_fails_all_is_as_it_was(version_1: Page, step: str) -> None:
    page = version_1
    assert upgraded(page, step) == {"stuck": True, "error": "NotTakenOver"}
    assert held(page) == {"wearers": WEARERS, "visits": VISITS}
    versions = page.evaluate("indexedDB.databases()")
    assert versions == [{"name": "heelwise.book", "version": 1}]
    assert upgraded(benched(page), "good")["stuck"] is False, "a next version may take it over"


def test_what_is_laid_aside_stays_while_one_cannot_be_read(version_1: Page) -> None:
    page = version_1
    spoilt = upgraded(page, "spoils one")["wearers"][1]
    assert spoilt["at"] == "?"
    upgraded(benched(page), "spoils one")
    assert held(page)["before"] == [*VISITS, *WEARERS]
    gone = WEARERS[0]["id"]
    page.evaluate("id => next.forget('wearers', id)", gone)
    page.evaluate("id => next.forget('visits', [id], [id, []])", gone)
    assert held(page)["before"] == WEARERS[1:], "what she deletes goes there, too"
    page.evaluate(PUT, {"wearers": [{**spoilt, "at": 1}], "visits": []})
    upgraded(benched(page), "spoils one")
    until(page, "next.twice(opened => opened.count('before')).then(many => many === 0)")


THROWS = """const UPGRADES = [() => {}, () => { throw new Error("made up"); }];
const REAL = ["""


@pytest.mark.parametrize("name", ["book", "machine"])
def test_the_page_says_so_and_goes_on_in_memory(
    phone: BrowserContext, tmp_path: Path, name: str
) -> None:
    def change(copy: Path) -> None:
        disk = copy / name / "disk.js"
        text = disk.read_text()
        assert text.count("const UPGRADES = [") == 1
        disk.write_text(text.replace("const UPGRADES = [", THROWS))

    script = changed(tmp_path, f"{name}/main.js", change)
    page = left_by(phone, name)
    versions = page.evaluate("indexedDB.databases()")
    phone.route(
        f"**/assets/{name}-*.js",
        lambda route: route.fulfill(body=script, content_type="text/javascript"),
    )
    page = opened(phone)
    if name == "book":
        open_book(page)
        expect(page.locator("#book .trouble")).to_contain_text("The book stays as it was")
        assert held(page)["wearers"] == WEARERS
    else:
        planned(page)
        page.locator("#knit-it").tap()
        expect(page.locator(".notice-memory")).to_contain_text("cannot read your earlier counts")
    now = page.evaluate("indexedDB.databases()")
    assert [one for one in now if one["name"] == f"heelwise.{name}"] == versions
