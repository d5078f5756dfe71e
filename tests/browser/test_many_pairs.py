"""A phone of many years: 2,000 knitted pairs and 2,000 wearers, in a real browser."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.browser.at_machine import planned, settings, target
from tests.browser.book import PUT, copies, open_book
from tests.browser.bundled import bundled
from tests.browser.host import until
from tests.browser.knitted import BEGAN, pair
from tests.browser.test_keeping import take
from tests.browser.walk import figures, more_of, opened

MANY = 2000
OPENS = 500  # ms
QUIET = 250  # ms it takes with nothing on the phone, where the machine does nothing else
COPY = 10_000_000  # bytes
PATIENCE = 180_000  # ms, for a machine that does much else
TRIES = 5  # of which the quickest counts: the others met whatever else the machine did
KINDS = 12  # different pairs; the others are like them, under names of their own
FILL = """async ([ended, many]) => {
  const database = await new Promise((done, fail) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  const writing = database.transaction("ended", "readwrite");
  for (let at = 0; at < many; at += 1) {
    const one = ended[at % ended.length];
    writing.objectStore("ended").put({ ...one, id: `${one.id}-${at}`, began: one.began + at * 1e8,
      ended: one.ended + at * 1e8, wearer: `w-${at}`, who: `Invented ${at}` });
  }
  await new Promise((done) => { writing.oncomplete = done; });
  database.close();
}"""
OPENED = "performance.getEntriesByName('at the machine').at(-1)?.startTime"


def wearers(page: Page) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """Invented ones, each measured once and knitted for."""
    kept = pair("p")
    one, two = kept["session"]["socks"][0], kept["happenings"][-1]
    two = next(each["knit"] for each in kept["happenings"] if each["kind"] == "plan")
    values = page.evaluate("request => bench.toValues(request)", kept["session"]["request"])
    people, visits = [], []
    for at in range(MANY):
        label = f"Invented {at}, ferry {at % 40}"
        people.append(
            {"id": f"w-{at}", "label": label, "state": "washed", "due": "2026-11-28", "price": "38",
             "asked": "herself", "length": "to the calf", "ease": "", "colours": "moss, grey toe",
             "allergy": "", "made": BEGAN + at}
        )  # fmt: skip
        plan = {"at": BEGAN + at, "values": values, "counted": one["counted"]}
        plan |= {"two": two["counted"], "knitted": f"p-{at}"}
        visits.append({"wearer": f"w-{at}", "number": 1, "at": BEGAN + at, "values": values})
        visits[-1]["plans"] = [plan]
    return people, visits


@pytest.fixture
def full(phone: BrowserContext) -> Page:
    """A phone with all of it, and one pair under way; the page at its counts."""
    script = bundled(Path(__file__).with_name("ended_bench.js"))

    def fulfil(route: Route) -> None:
        route.fulfill(body=script, content_type="text/javascript")

    phone.route("**/ended_bench.js", fulfil)
    settings(phone, guard=0)
    page = opened(phone)
    planned(page)
    page.locator("#knit-it").tap()
    target(page).tap()
    page.go_back()
    open_book(page)
    page.go_back()
    page.evaluate("import('/ended_bench.js').then(() => null)")
    ended = page.evaluate(
        "pairs => pairs.map((kept) => bench.endedFrom(kept))",
        [pair(f"p-{kind}", kind) for kind in range(KINDS)],
    )
    page.evaluate(FILL, [ended, MANY])
    people, visits = wearers(page)
    page.evaluate(PUT, {"wearers": people, "visits": visits})
    page.evaluate("localStorage['heelwise.knitting'] = '{\"shown\": null, \"ended\": 2000}'")
    page.goto("about:blank")
    page.goto("./#counts")
    expect(page.locator("#knitted-place summary")).to_have_text(f"Knitted: {MANY} pairs")
    return page


def gone_on(page: Page) -> None:
    _tapped(page, "#machine-line .go-on")


def anew(page: Page) -> None:
    page.goto("manifest.webmanifest")
    page.goto("./#knit")


def begun(page: Page) -> None:
    """A pair of its own, with none under way before it."""
    page.goto("manifest.webmanifest")
    page.goto("./#counts")
    for _ in range(page.locator("#machine-line .put-away").count() or 1):
        more_of(page.locator("#machine-line"))
        page.locator("#machine-line .put-away").first.tap()
    expect(page.locator("#machine-line .put-away")).to_have_count(0)
    figures(page)
    _tapped(page, "#knit-it")


def _tapped(page: Page, button: str) -> None:
    page.locator(button).evaluate(
        "(button) => { window.tapped = performance.now(); button.click(); }"
    )


def opening(page: Page, open_it: Callable[[Page], None]) -> float:
    """Milliseconds until the counter can be tapped; it is left again."""
    page.evaluate("() => { window.tapped = 0; performance.clearMarks('at the machine'); }")
    open_it(page)
    expect(target(page)).to_be_visible()
    took = float(until(page, OPENED)) - float(page.evaluate("window.tapped ?? 0"))
    page.get_by_role("button", name="Leave").tap()
    expect(page.locator("#machine")).to_be_hidden()
    return took


@pytest.mark.alone
@pytest.mark.pyodide
@pytest.mark.parametrize("open_it", [gone_on, anew, begun])
def test_the_counter_opens_at_once(
    full: Page, new_phone: Callable[..., BrowserContext], open_it: Callable[[Page], None]
) -> None:
    empty = new_phone()
    settings(empty, guard=0)
    page = opened(empty)
    planned(page)
    page.locator("#knit-it").tap()
    target(page).tap()
    page.go_back()
    expect(page.locator("#machine")).to_be_hidden()
    # By turns, for a busy machine is slow with nothing on the phone, too.
    took = [(opening(full, open_it), opening(page, open_it)) for _ in range(TRIES)]
    print(open_it.__name__, [(round(one), round(other)) for one, other in took])
    with_all, with_nothing = (min(each) for each in zip(*took, strict=True))
    assert with_all < OPENS * max(1, with_nothing / QUIET)


def test_all_of_it_is_one_small_copy_that_is_read_again(
    full: Page, new_phone: Callable[..., BrowserContext]
) -> None:
    page = full
    open_book(page)
    copies(page)
    with page.expect_download(timeout=PATIENCE) as download:
        page.locator("#save-copy").tap()
    text = Path(download.value.path()).read_bytes()
    print(len(text))
    assert len(text) < COPY
    copy = json.loads(text)
    assert len(copy["ended"]) == MANY
    other = opened(new_phone())
    open_book(other)
    copies(other)
    take(other, text)
    expect(other.locator("#take-copy-error")).to_be_empty()
    expect(other.locator("#book")).to_contain_text(
        f"To add: {MANY} wearers, {MANY + 1} pairs", timeout=PATIENCE
    )
