"""What nobody can read: set aside, told, saved to a file, deleted; all else works on."""

import json
import re
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.browser.at_machine import begun, planned, settings, target
from tests.browser.book import with_wearers
from tests.browser.walk import behind, field, fill_foot, opened, step

# Changes records of the counter's database from outside: {store: [[key, record or null], ...]}.
SPOIL = """async (changes) => {
  const database = await new Promise((done) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
  });
  const stores = [...database.objectStoreNames];
  const writing = database.transaction(stores, "readwrite");
  const found = {};
  for (const name of stores) {
    const store = writing.objectStore(name);
    const asked = store.getAll();
    asked.onsuccess = () => { found[name] = asked.result; };
    for (const [key, record] of changes[name] ?? []) record ? store.put(record) : store.delete(key);
  }
  await new Promise((done) => { writing.oncomplete = done; });
  database.close();
  return found;
}"""


def saved(page: Page, line: Locator, folder: Path) -> str:
    """What the button of a line hands to the phone as a file."""
    line.locator("summary").tap()
    with page.expect_download() as download:
        line.locator(".save-aside").tap()
    target = folder / download.value.suggested_filename
    download.value.save_as(target)
    return target.read_text()


def count(page: Page, times: int) -> None:
    """So many taps of the target, each seen before the next."""
    for _ in range(times):
        before = target(page).text_content() or ""
        target(page).tap()
        expect(target(page)).not_to_have_text(before)


def test_a_wearer_set_aside_goes_to_a_file(phone: BrowserContext, tmp_path: Path) -> None:
    damaged = {"id": "x", "label": 7, "colours": "moß " * 1000}
    page = with_wearers(phone, [{"id": "a", "label": "Ferry"}, damaged])
    line = page.locator("#book .set-aside")
    assert json.loads(saved(page, line, tmp_path)) == damaged, "whole, though less is shown"
    line.locator(".drop-aside").tap()
    expect(line).to_have_count(0)


def test_her_own_page_and_shelf_are_set_aside_not_overwritten(
    phone: BrowserContext, tmp_path: Path
) -> None:
    page = opened(phone)
    fill_foot(page)
    behind(page, "shelf")
    field(page, "shelf.cylinders").fill("54, 60")
    page.evaluate(
        """() => {
          localStorage["heelwise.mine"] = localStorage["heelwise.mine"].slice(0, 40);
          localStorage["heelwise.shelf"] = '{"shelf.cylinders": 54}';
          localStorage["heelwise.chart"] = "[]";
        }"""
    )
    page.goto("about:blank")
    page.goto("./")
    lines = page.locator("#status-line .set-aside")
    expect(lines).to_have_count(3)
    step(page, "measure")
    field(page, "foot.length").fill("25")
    page.reload()
    expect(field(page, "foot.length")).to_have_value("25")
    expect(lines).to_have_count(3)
    shelf = lines.filter(has_text="Your cylinders and yarns")
    assert saved(page, shelf, tmp_path) == '{"shelf.cylinders": 54}'
    own = lines.filter(has_text="Your own page")
    assert saved(page, own, tmp_path).startswith('{"')
    own.locator(".drop-aside").tap()
    expect(lines).to_have_count(2)
    page.reload()
    expect(lines).to_have_count(2)
    assert page.evaluate("Object.keys(localStorage).filter(k => k.includes('aside')).length") == 2


def test_nothing_kept_leads_behind_an_object(phone: BrowserContext) -> None:
    """Names of fields become paths in the request: one that left it would change all objects."""
    names = ("foot.__proto__.shown", "__proto__.shown", "constructor.prototype.shown")
    values = dict.fromkeys(names, "1")
    kept = {
        "mine": values,
        "before": values,
        "chart": values,
        "shelf": {"shelf.yarns.__proto__.shown": "1", "shelf.yarns.0.name": "blue"},
        "visit": {"kind": "link", "link": "", "opened": values, "values": values},
        "unkept": {"w-1": {"label": "Ferry", "values": values}},
        "knitted": {"__proto__": {"shown": "1"}, "constructor": {"prototype": {"shown": "1"}}},
        "last": {"request": {"__proto__": {"shown": "1"}}, "plan": {"__proto__": {"shown": "1"}}},
        "counter": {"__proto__": {"shown": True}, "guard": 0},
    }
    page = opened(phone)
    page.evaluate(
        "kept => Object.entries(kept).forEach(([name, text]) => {"
        " localStorage[`heelwise.${name}`] = text; })",
        {name: json.dumps(record) for name, record in kept.items()},
    )
    page.goto("about:blank")
    faults: list[str] = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.goto("./")
    expect(page.locator("#waiting")).to_be_hidden()
    clean = "[Object, Array, Function].every(({ prototype }) => !('shown' in prototype))"
    assert page.evaluate(clean)
    lines = page.locator("#status-line .set-aside")
    for words in (
        "Your own page",
        "What was on your own page before",
        "What was typed for the table of sizes",
        "Your cylinders and yarns",
        "The sheet that was open last",
        "A wearer’s sheet that was not in the book yet",
    ):
        expect(
            lines.filter(has_text=re.compile(f"{words} cannot be read and (was|were) set aside"))
        ).to_have_count(1)
    planned(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    assert page.evaluate(clean)
    assert not faults


def test_where_there_is_no_room_to_set_it_aside_it_stays_where_it_is(
    phone: BrowserContext,
) -> None:
    phone.add_init_script(
        """localStorage["heelwise.mine"] ??= "{spoilt";
        Storage.prototype.setItem = () => { throw new DOMException("", "QuotaExceededError"); };"""
    )
    page = opened(phone)
    step(page, "measure")
    field(page, "foot.length").fill("25")
    expect(page.locator("#status-line")).to_contain_text("Your own page cannot be read")
    page.wait_for_timeout(500)
    page.reload()
    # The database has what is typed now, so there is no loss to tell.
    expect(field(page, "foot.length")).to_have_value("25")
    expect(page.locator("#status-line")).not_to_contain_text("does not let the page save anything")
    assert page.evaluate("localStorage['heelwise.mine']") == "{spoilt"


def test_damage_at_the_machine_stops_nothing_else(phone: BrowserContext, tmp_path: Path) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    count(page, 5)
    there: dict[str, list[dict[str, Any]]] = page.evaluate(SPOIL, {})
    (session,), happenings = there["sessions"], there["happenings"]
    assert len(happenings) == 5
    other = {**session, "id": "other", "socks": [session["socks"][0], {"slots": 60}]}
    spoilt = {**happenings[2], "place": {"step": "far"}}
    gone = [session["id"], 2]
    far = {**happenings[0], "number": 10**12}
    text = target(page).inner_text()
    page.goto("about:blank")
    page.goto("./")
    page.evaluate(
        SPOIL,
        {"sessions": [[None, other]], "happenings": [[None, spoilt], [None, far], [gone, None]]},
    )
    page.reload()
    expect(target(page)).to_be_visible()
    assert target(page).inner_text() == text, "where it stood"
    count(page, 1)
    page.go_back()
    line = page.locator("#machine-line")
    expect(line.locator(".on-machine")).to_have_count(1)
    expect(line.locator(".set-aside")).to_have_count(3)
    pair = line.locator(".set-aside", has_text="A pair at the machine")
    assert json.loads(saved(page, pair, tmp_path)) == {"session": other, "happenings": []}
    pair.locator(".drop-aside").tap()
    line.locator(".set-aside", has_text=str(10**12)).locator("summary").tap()
    line.locator(".set-aside", has_text=str(10**12)).locator(".drop-aside").tap()
    one = line.locator(".set-aside", has_text="One count at the machine")
    expect(one).to_have_count(1)
    assert json.loads(saved(page, one, tmp_path)) == spoilt
    after: dict[str, list[dict[str, Any]]] = page.evaluate(SPOIL, {})
    assert [one["id"] for one in after["sessions"]] == [session["id"]]
    assert spoilt in after["happenings"], "left as it is"
    assert [one["number"] for one in after["happenings"]] == [1, 3, 4, 5, 6]
    one.locator(".drop-aside").tap()
    expect(line.locator(".set-aside")).to_have_count(0)
