"""A pair that is knitted: what stays of it is small, and holds what was learnt."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests import asking as api
from tests.browser.host import until
from tests.browser.knitted import MEASURED, REQUEST, pair
from tests.browser.machine_site import BENCH_READY, machine_site
from tests.browser.small_sock import session

Json = dict[str, Any]
MOST = 3000  # bytes of JSON
ENDED = "kept => machine.endedFrom(kept)"
STORED = """async () => {
  const database = await new Promise((done) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
  });
  const all = {};
  for (const name of database.objectStoreNames) {
    const asked = database.transaction(name).objectStore(name).getAll();
    await new Promise((done) => { asked.onsuccess = done; });
    all[name] = asked.result;
  }
  database.close();
  return all;
}"""


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with machine_site(tmp_path_factory.mktemp("ended")) as address:
        yield address


@pytest.fixture
def browsing(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(service_workers="block")
    yield context
    context.close()


def opened(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    until(page, BENCH_READY)
    assert page.evaluate("machine.open()")
    return page


@pytest.fixture
def tab(browsing: BrowserContext, address: str) -> Page:
    return opened(browsing, address)


def size(record: Json) -> int:
    """Bytes as the page's own JSON."""
    return len(json.dumps(record, ensure_ascii=False, separators=(",", ":")).encode())


def test_what_stays_is_small_and_holds_what_was_learnt(tab: Page) -> None:
    kept = pair("p-1", wearer="w-1", who="Ferry 10")
    whole = len(json.dumps(kept))
    assert whole > 100_000
    ended: Json = tab.evaluate(ENDED, kept)
    print(whole, "->", size(ended))
    assert size(ended) <= MOST
    assert tab.evaluate("one => machine.endedOf(one)", ended) == ended
    assert ended["request"] == REQUEST
    one, two = (
        api.answer({"do": "knit", "request": {**REQUEST, **more}})["counted"]
        for more in ({}, {"first_sock": MEASURED})
    )
    assert one["figures"]["foot"] != two["figures"]["foot"]
    assert ended["counted"] == [one, {**two, "facts": []}]
    assert ended["measured"] == MEASURED
    assert (ended["wearer"], ended["who"]) == ("w-1", "Ferry 10")
    assert ended["last"] == len(kept["happenings"])
    noted = [one for one in kept["happenings"] if one["kind"] == "note"]
    assert [note["text"] for note in ended["notes"]] == [one["text"] for one in noted]

    # Its times are what the taps said: medians as the counter had learned them, and sums by hand.
    pace = tab.evaluate("kept => machine.learned(kept)", kept)
    again = tab.evaluate("ended => machine.paceOf(ended)", ended)
    assert set(again) == set(pace)
    assert all(again[name] == pytest.approx(pace[name], abs=0.01) for name in pace)
    steps = kept["session"]["socks"][0]["steps"]
    assert set(ended["times"]) == {step["part"] for step in steps}
    done = [one for one in kept["happenings"] if one["kind"] in ("done", "note")]
    seconds: dict[str, float] = {}
    before, waited = {"step": 0, "done": 0}, 0.0
    for happening in done:
        if happening["sock"]:
            continue
        waited += (happening["took"] or 0) / 1000
        if happening["kind"] == "note":
            continue
        part = steps[before["step"]]["part"]
        seconds[part] = seconds.get(part, 0) + waited * (happening["took"] is not None)
        before, waited = happening["place"], 0.0
    for part, took in seconds.items():
        assert ended["times"][part]["took"][0] == pytest.approx(took, abs=1), part
    both = sum(sum(each["took"]) for each in ended["times"].values())
    assert both > sum(seconds.values())
    assert tab.evaluate("ended => machine.tookOf(ended)", ended) == both


def test_it_is_small_whatever_was_written(tab: Page) -> None:
    kept = pair("p-1", who="Ñ" * 500)
    tube = REQUEST["fabric"]["swatch"]
    kept["session"]["request"] = {
        **REQUEST, "fabric": {**REQUEST["fabric"], "swatches": [tube] * 40},
    }  # fmt: skip
    few: Json = tab.evaluate(ENDED, kept)
    assert size(few) <= MOST
    assert "cut" not in few, "swatches stand on the sheet; her notes stand here alone"
    for happening in kept["happenings"][:400]:
        if happening["kind"] == "done":
            happening |= {"kind": "note", "text": "ж" * 900}
    ended: Json = tab.evaluate(ENDED, kept)
    assert size(ended) <= MOST
    assert ended["cut"] is True
    assert ended["notes"][0]["text"].endswith("…")
    assert tab.evaluate("one => machine.endedOf(one)", ended) == ended
    kept["session"]["request"] = {"units": "cm", "foot": {"length": "9" * 5000}}
    kept["session"]["label"] = "l" * 5000
    assert size(tab.evaluate(ENDED, kept)) <= MOST


@pytest.mark.parametrize(
    ("socks", "over"),
    [([], False), ([0], False), ([0, 1], True), ([1], True)],
    ids=["begun", "sock one", "both", "sock two alone"],
)
def test_a_pair_is_knitted_once_both_socks_are(tab: Page, socks: list[int], over: bool) -> None:
    kept = pair("p-1")
    kept["happenings"] = [one for one in kept["happenings"] if one["sock"] in socks]
    assert bool(tab.evaluate(ENDED, kept)) is over
    # A sock one that was begun here and left is not knitted.
    if socks == [1]:
        kept["happenings"].insert(0, pair("p-1")["happenings"][0])
        assert tab.evaluate(ENDED, kept) is None


def on_disk(page: Page) -> dict[str, list[Json]]:
    """All that the phone's database of the machine holds."""
    found: dict[str, list[Json]] = page.evaluate(STORED)
    return found


TAKE = "kept => machine.journal.take(kept, false)"
END = "ended => machine.journal.end(ended).then(() => 'ended', (error) => error.name)"


def test_it_takes_the_place_of_every_tap(tab: Page) -> None:
    tab.evaluate(TAKE, pair("p-1"))
    tab.evaluate("session => machine.journal.begin(session)", session("other"))
    assert len(on_disk(tab)["happenings"]) > 400
    ended = tab.evaluate(ENDED, tab.evaluate("machine.journal.read('p-1')"))
    assert tab.evaluate(END, ended) == "ended"
    there = on_disk(tab)
    assert there["ended"] == [ended]
    assert there["happenings"] == []
    assert [one["id"] for one in there["sessions"]] == ["other"]
    assert tab.evaluate("machine.journal.read('p-1')") is None
    assert tab.evaluate("machine.journal.ended.all()") == [ended]


def test_where_more_has_happened_it_stays_as_it_is(tab: Page) -> None:
    kept = pair("p-1")
    tab.evaluate(TAKE, kept)
    ended = tab.evaluate(ENDED, kept)
    assert tab.evaluate(END, {**ended, "last": ended["last"] - 1}) == "NumberTaken"
    assert len(on_disk(tab)["happenings"]) == ended["last"]
    assert on_disk(tab)["ended"] == []


def test_a_tab_that_still_knows_it_brings_it_back_only_by_counting(
    tab: Page, browsing: BrowserContext, address: str
) -> None:
    kept = pair("p-1")
    tab.evaluate(TAKE, kept)
    other = opened(browsing, address)
    assert other.evaluate("machine.journal.read('p-1').then((kept) => kept.happenings.length)")
    assert tab.evaluate(END, tab.evaluate(ENDED, kept)) == "ended"
    # The phone closes the database under the other tab, which doubts and writes what it knows.
    other.evaluate("machine.journal.read('p-1')")
    other.evaluate("session => machine.journal.update(session)", kept["session"])
    assert on_disk(tab)["sessions"] == []
    assert other.evaluate("machine.journal.read('p-1')") is None

    later = opened(browsing, address)
    later.evaluate(TAKE, pair("p-2"))
    held = opened(browsing, address)
    held.evaluate("machine.journal.read('p-2')")
    assert later.evaluate(END, later.evaluate(ENDED, pair("p-2"))) == "ended"
    last = {**kept["happenings"][-1], "session": "p-2"}
    counted = {**last, "number": last["number"] + 1, "kind": "back"}
    held.evaluate("happening => machine.journal.append(happening)", counted)
    there = on_disk(tab)
    assert [one["id"] for one in there["ended"]] == ["p-1"]
    assert len(there["happenings"]) == counted["number"], "nothing that was counted is lost"


def test_one_that_is_deleted_leaves_its_name_and_can_be_brought_back(tab: Page) -> None:
    tab.evaluate(TAKE, pair("p-1"))
    ended = tab.evaluate(ENDED, pair("p-1"))
    tab.evaluate(END, ended)
    tab.evaluate("machine.journal.ended.remove('p-1', 7)")
    assert on_disk(tab)["ended"] == []
    assert on_disk(tab)["gone"] == [{"id": "p-1", "at": 7}]
    tab.evaluate("ended => machine.journal.ended.restore(ended)", ended)
    assert on_disk(tab)["ended"] == [ended]
    assert on_disk(tab)["gone"] == []
