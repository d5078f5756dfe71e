"""Copies of all that is kept: saved, taken in elsewhere, and never a word overwritten unasked."""

import csv
import json
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import planned, target
from tests.browser.axe import violations
from tests.browser.book import (
    PUT,
    back_to_book,
    card,
    copies,
    held,
    labels,
    new_wearer,
    open_book,
    with_wearers,
)
from tests.browser.small_sock import session
from tests.browser.test_looks import WIDTHS, sideways, too_small
from tests.browser.walk import behind, field, more_of, opened, step

NewPhone = Callable[..., BrowserContext]
KEPT = Path(__file__).with_name("kept")  # as older versions kept it; all of it invented


def saved(page: Page, button: str, folder: Path) -> Path:
    """The file that a button hands to the phone."""
    with page.expect_download() as download:
        page.locator(button).tap()
    target = folder / download.value.suggested_filename
    download.value.save_as(target)
    return target


def take(page: Page, text: str | bytes) -> None:
    """Pick a file with this text."""
    content = text.encode() if isinstance(text, str) else text
    page.locator("#take-copy").set_input_files(
        {"name": "copy.json", "mimeType": "application/json", "buffer": content}
    )


def summed(copy: dict[str, Any]) -> str:
    """A copy whose records were changed on purpose, each with its checksum reckoned anew."""
    for one in copy["book"] + copy["pairs"]:
        one["sum"] = checksum({name: held for name, held in one.items() if name != "sum"})
    parts = {**copy["sheets"], **{name: copy[name] for name in ("dates", "settings", "gone")}}
    copy["sums"] = {name: checksum(part) for name, part in parts.items()}
    return json.dumps(copy)


def checksum(value: Any) -> str:
    """CRC-32 (RFC 1952) of RFC 8785's one text for one value."""
    text = json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return f"{zlib.crc32(text.encode()):08x}"


def two_wearers(phone: BrowserContext) -> Page:
    """Nuri and Wren measured; the book at its copies."""
    page = opened(phone)
    open_book(page)
    for label, length in (("Nuri", "24"), ("Wren", "26,5")):
        new_wearer(page, label, length)
        page.wait_for_timeout(600)
        back_to_book(page)
    copies(page)
    return page


def test_a_copy_goes_to_another_phone(new_phone: NewPhone, tmp_path: Path) -> None:
    page = two_wearers(new_phone())
    expect(page.locator("#book")).to_contain_text("No copy saved yet")
    file = saved(page, "#save-copy", tmp_path)
    expect(page.locator("#book")).to_contain_text("Last copy:")
    page.reload()
    expect(page.locator("#book")).to_contain_text("Last copy:")

    other = opened(new_phone())
    open_book(other)
    copies(other)
    take(other, file.read_bytes())
    expect(other.locator("#book")).to_contain_text("To add: 2 wearers.")
    assert held(other)["wearers"] == [], "asked first"
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_have_text("Loaded: 2 wearers added.")
    other.locator("#all-wearers").tap()
    assert sorted(labels(other)) == ["Nuri", "Wren"]
    card(other, "Wren")
    expect(other.locator("#book .sizes")).to_contain_text("26,5 cm")
    other.wait_for_timeout(700)
    assert sorted(map(json.dumps, held(other)["visits"])) == sorted(
        map(json.dumps, held(page)["visits"])
    )
    other.go_back()
    copies(other)
    take(other, file.read_bytes())
    expect(other.locator("#book .note")).to_contain_text("is here already")


def test_what_differs_is_chosen_side_by_side(phone: BrowserContext, tmp_path: Path) -> None:
    page = two_wearers(phone)
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    for one in copy["book"]:
        one["wearer"]["colours"] = "moss"
        one["visits"][0]["values"]["foot.length"] = "30"
    take(page, summed(copy))
    expect(page.locator(".differing")).to_have_count(2)
    wren = page.locator(".differing", has_text="Wren")
    length = wren.locator("tr", has=page.locator("th", has_text="Foot length"))
    assert length.locator("td").all_inner_texts() == ["26,5 cm", "30 cm"]
    expect(wren.locator("tr", has_text="Name")).to_have_count(0)  # only what differs
    page.locator("#leave-copy").tap()
    page.wait_for_timeout(700)
    assert {one["colours"] for one in held(page)["wearers"]} == {""}

    take(page, summed(copy))
    wren.locator("label", has_text="take the file").tap()
    page.locator("#take-in").tap()
    page.wait_for_timeout(700)
    colours = {one["label"]: one["colours"] for one in held(page)["wearers"]}
    assert colours == {"Nuri": "", "Wren": "moss"}
    page.locator("#all-wearers").tap()
    card(page, "Wren")
    page.locator("#open-sheet").tap()
    expect(page.locator("[name='foot.length']")).to_have_value("30")


def test_a_copy_saved_at_once_holds_what_was_typed_last(
    phone: BrowserContext, tmp_path: Path
) -> None:
    """Quicker than the pause after which what is typed goes to the book."""
    phone.add_init_script(
        "const real = setTimeout; globalThis.setTimeout = (act, ms, ...more) =>"
        " real(act, ms === 400 ? 1e8 : ms, ...more);"
    )
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    copies(page)
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    assert copy["book"][0]["visits"][0]["values"]["foot.length"] == "24"


def test_a_copy_of_version_1_is_still_read(phone: BrowserContext) -> None:
    page = opened(phone)
    open_book(page)
    copies(page)
    take(page, KEPT.joinpath("copy_1.json").read_bytes())
    expect(page.locator("#book")).to_contain_text("To add: 2 wearers.")
    page.locator("#take-in").tap()
    page.locator("#all-wearers").tap()
    card(page, "Invented: Nuri, ferry")
    expect(page.locator("#wearer-allergy")).to_have_value("lanolin")
    expect(page.locator("#book .sizes").first).to_contain_text("22,5 cm")
    expect(page.locator(".visit-before")).to_contain_text("21,5 cm")


def with_everything(phone: BrowserContext) -> Page:
    """Something of every kind that a phone keeps; the counter on screen."""
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    page.wait_for_timeout(600)
    page.locator("#visit-line button", has_text="My own page").tap()
    planned(page)
    step(page, "yarn")
    behind(page, "shelf")
    field(page, "shelf.cylinders").fill("54, 60")
    page.locator("#shelf .add").tap()
    field(page, "shelf.yarns.1.name").fill("the grey one")
    step(page, "counts")
    page.locator("#chart > summary").tap()
    page.locator("#chart-by").select_option("length")
    field(page, "chart.first").fill("20")
    field(page, "chart.last").fill("26")
    page.locator("#knit-it").tap()
    tapped(page, 3)
    page.evaluate("localStorage['heelwise.counter'] = '{\"guard\": 400, \"ticks\": true}'")
    page.reload()
    expect(target(page)).to_be_visible()
    return page


def tapped(page: Page, times: int) -> None:
    """Count so many, each seen before the next."""
    for _ in range(times):
        before = target(page).text_content() or ""
        page.wait_for_timeout(450)  # two at once would count as one
        target(page).tap()
        expect(target(page)).not_to_have_text(before)


def to_copies(page: Page) -> None:
    """From the counter."""
    page.go_back()
    open_book(page)
    copies(page)


def test_everything_goes_to_another_phone_and_is_the_same_there(
    new_phone: NewPhone, tmp_path: Path
) -> None:
    page = with_everything(new_phone())
    stands = target(page).text_content()
    to_copies(page)
    file = saved(page, "#save-copy", tmp_path)
    expect(page.locator("#book .note")).to_contain_text("one wearer, one pair at the machine and")

    other = opened(new_phone())
    open_book(other)
    copies(other)
    take(other, file.read_bytes())
    expect(other.locator("#book")).to_contain_text(
        "To add: one wearer, one pair at the machine, your own page, your cylinders and yarns, "
        "what was typed for the table of sizes and the settings at the machine."
    )
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("Loaded: one wearer")
    again = saved(other, "#save-copy", tmp_path / "again")
    assert json.loads(again.read_text()) == json.loads(file.read_text())
    take(other, file.read_bytes())
    expect(other.locator("#book .note")).to_contain_text("is here already")
    for _ in range(2):  # at once, and after the page was loaded again
        other.goto("./")
        step(other, "yarn")
        expect(field(other, "cylinder.slots")).to_have_value("60")
        expect(field(other, "shelf.cylinders")).to_have_value("54, 60")
        expect(field(other, "shelf.yarns.1.name")).to_have_value("the grey one")
        expect(field(other, "chart.last")).to_have_value("26")
    other.locator("#machine-line .go-on").tap()
    expect(target(other)).to_have_text(stands or "")


def test_what_was_typed_and_counted_otherwise_is_chosen(
    phone: BrowserContext, tmp_path: Path
) -> None:
    page = with_everything(phone)
    to_copies(page)
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    pair = copy["pairs"][0]
    last = pair["happenings"][-1]

    further = json.loads(json.dumps(copy))
    more = {**last, "number": 4, "place": {"step": 2, "done": 0}}
    further["pairs"][0]["happenings"].append(more)
    take(page, summed(further))
    expect(page.locator("#book")).to_contain_text("Counted further than here: one pair")
    expect(page.locator(".differing")).to_have_count(0)
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("one pair at the machine added")
    take(page, summed(copy))  # what is here has gone further
    expect(page.locator("#book .note")).to_contain_text("is here already")

    copy["sheets"]["mine"]["cylinder.slots"] = "72"
    copy["sheets"]["shelf"]["shelf.yarns.1.name"] = "the blue one"
    copy["settings"] = {"guard": 700}
    pair["happenings"][1]["place"] = {"step": 5, "done": 0}
    take(page, summed(copy))
    expect(page.locator(".differing")).to_have_count(4)
    own = page.locator(".differing", has_text="Your own page").locator("tbody tr")
    assert own.locator("td").all_inner_texts() == ["60", "72"]
    shelf = page.locator(".differing", has_text="Your cylinders").locator("tbody tr")
    expect(shelf.locator("th")).to_have_text("Its name (2)")
    assert shelf.locator("td").all_inner_texts() == ["the grey one", "the blue one"]
    knitted = page.locator(".differing", has_text="Counts and notes")
    assert knitted.locator("tr", has_text="Counts").locator("td").all_inner_texts() == ["4", "3"]
    for one in (page.locator(".differing", has_text="Your own page"), knitted):
        one.locator("label", has_text="take the file").tap()
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("as you chose")
    now = json.loads(saved(page, "#save-copy", tmp_path / "now").read_text())
    assert now["sheets"]["mine"]["cylinder.slots"] == "72"
    assert now["sheets"]["shelf"]["shelf.yarns.1.name"] == "the grey one"
    assert now["settings"] == {"guard": 400, "ticks": True}
    assert [one["happenings"] for one in now["pairs"]] == [pair["happenings"]]


GOOD: dict[str, Any] = {
    "heelwise": "wearers",
    "version": 2,
    "book": [
        {
            "wearer": {"id": "z-1", "label": "<b>Zo</b>", "made": 5},
            "visits": [{"wearer": "z-1", "number": 1, "at": 5, "values": {"foot.length": "24"}}],
        }
    ],
    "sheets": {
        "mine": {"foot.length": "<b>1</b>"},
        "before": None,
        "shelf": {"shelf.cylinders": "60"},
        "chart": None,
    },
    "pairs": [
        {
            "session": {**session("p-1"), "label": "<b>invented</b>"},
            "happenings": [
                {
                    "session": "p-1",
                    "number": number,
                    "sock": 0,
                    "kind": "done",
                    "place": {"step": number, "done": 0},
                    "took": None,
                    "at": 5,
                }
                for number in (1, 2)
            ],
        }
    ],
    "settings": {"guard": 150},
}


def spoilt(where: str, value: Any) -> str:
    """GOOD with one thing in it exchanged."""
    spoilt = json.loads(json.dumps(GOOD))
    *path, last = where.split("/")
    place = spoilt
    for key in path:
        place = place[int(key) if key.isdigit() else key]
    place[last] = value
    return json.dumps(spoilt)


def deep(levels: int) -> Any:
    """Objects within objects."""
    return {"a": deep(levels - 1)} if levels else 1


NO_COPY = "not a copy from this page"
NO_WEARER = "Wearer number 1 (“<b>Zo</b>”) cannot be read."
NO_VISIT = "Visit number 1 of “<b>Zo</b>” cannot be read."
NO_PAIR = "Pair at the machine number 1 (“<b>invented</b>”) cannot be read."
NO_COUNT = "Count number 1 of “<b>invented</b>” cannot be read."
OWN = "Your own page cannot be read."
SETTINGS = "The settings at the machine cannot be read."
WEARER, VALUES = "book/0/wearer", "book/0/visits/0/values"
SESSION, HAPPENED = "pairs/0/session", "pairs/0/happenings"
DONE = GOOD["pairs"][0]["happenings"]
REFUSED: dict[str, tuple[str | bytes, str]] = {
    "a picture": (b"\x89PNG\r\n\x1a\n\0\0", NO_COPY),
    "another JSON": ("[1, 2, 3]", NO_COPY),
    "nothing": ("", NO_COPY),
    "null": ("null", NO_COPY),
    "deep": ("[" * 200_000 + "]" * 200_000, NO_COPY),
    "newer": (spoilt("version", 4), "newer version of this page"),
    "version 0": (spoilt("version", 0), "copy names version 0,"),
    "version -1": (spoilt("version", -1), "copy names version -1,"),
    "half a version": (spoilt("version", 1.5), "copy names version 1.5,"),
    "a word as version": (spoilt("version", "2"), "copy names no version"),
}
SET_ASIDE: dict[str, tuple[str, str]] = {
    "not a number": (json.dumps(GOOD).replace('"at": 5', '"at": NaN'), "This file is damaged"),
    "cut": (json.dumps(GOOD, separators=(",", ":"))[:150], "This file is damaged"),
    "no list": (spoilt("book", {}), "This file is damaged"),
    "label": (spoilt(f"{WEARER}/label", 7), "Wearer number 1 cannot be read."),
    "visits": (spoilt("book/0/visits", {"a": 1}), NO_WEARER),
    "markup as id": (spoilt(f"{WEARER}/id", "<img>"), NO_WEARER),
    "another's visit": (spoilt("book/0/visits/0/wearer", "z-2"), NO_VISIT),
    "visit 0": (spoilt("book/0/visits/0/number", 0), NO_VISIT),
    "prototype": (spoilt(VALUES, {"__proto__.shown": "1"}), NO_VISIT),
    "constructor": (spoilt(VALUES, {"foot.constructor.x": "1"}), NO_VISIT),
    "own prototype": (spoilt(VALUES, {"__proto__": {"shown": "1"}}), NO_WEARER),
    "endless": (spoilt(f"{WEARER}/made", "@").replace('"@"', "1e999"), NO_WEARER),
    "deep in a wearer": (spoilt("book/0/visits/0/plans", deep(500)), NO_WEARER),
    "twice": (
        json.dumps({**GOOD, "book": GOOD["book"] * 2}),
        "Wearer number 2 (“<b>Zo</b>”) cannot be read.",
    ),
    "no pairs": (spoilt("pairs", None), "This file is damaged"),
    "pair without counts": (spoilt(f"{SESSION}/socks", [{}, {}]), NO_PAIR),
    "step": (spoilt(f"{SESSION}/socks/1/steps/0/text", 5), NO_PAIR),
    "cylinder": (spoilt(f"{SESSION}/socks/0/slots", 10**9), NO_PAIR),
    "deep in a pair": (spoilt(f"{SESSION}/request", deep(500)), NO_PAIR),
    "prototype of a pair": (spoilt(f"{SESSION}/request", {"__proto__": {"shown": 1}}), NO_PAIR),
    "endless pair": (spoilt(f"{SESSION}/began", "@").replace('"@"', "1e999"), NO_PAIR),
    "markup as pair": (spoilt(f"{SESSION}/id", "<img>"), NO_PAIR),
    "pair twice": (
        json.dumps({**GOOD, "pairs": GOOD["pairs"] * 2}),
        "Pair at the machine number 2 (“<b>invented</b>”) cannot be read.",
    ),
    "place": (spoilt(f"{HAPPENED}/0/place", {"step": -1, "done": 0}), NO_COUNT),
    "endless count": (spoilt(f"{HAPPENED}/0/took", "@").replace('"@"', "-1e999"), NO_PAIR),
    "counted twice": (
        spoilt(HAPPENED, [DONE[0], DONE[0]]),
        "Count number 2 of “<b>invented</b>” cannot be read.",
    ),
    "another's count": (
        spoilt(f"{HAPPENED}/1/session", "p-2"),
        "Count number 2 of “<b>invented</b>” cannot be read.",
    ),
    "no sheets": (spoilt("sheets", 1), "This file is damaged"),
    "own page": (spoilt("sheets/mine", ["a"]), OWN),
    "own number": (spoilt("sheets/mine/foot.length", 5), OWN),
    "prototype of a sheet": (spoilt("sheets/mine", {"__proto__.shown": "1"}), OWN),
    "shelf": (spoilt("sheets/shelf", "all"), "Your cylinders and yarns cannot be read."),
    "no settings": (spoilt("settings", {"guard": "long"}), SETTINGS),
    "endless setting": (spoilt("settings/guard", "@").replace('"@"', "1e999"), SETTINGS),
}


def test_what_is_no_copy_gets_one_sentence_and_changes_nothing(
    phone: BrowserContext, tmp_path: Path
) -> None:
    page = two_wearers(phone)
    before = held(page)
    local = page.evaluate("JSON.stringify({...localStorage})")
    for name, (text, sentence) in REFUSED.items():
        take(page, text)
        expect(page.locator("#take-copy-error"), name).to_contain_text(sentence)
        assert page.locator("#take-in").count() == 0, name
    large = tmp_path / "large.json"
    with large.open("wb") as file:
        file.truncate(100_000_000)
    page.evaluate(
        """() => {
          const real = Blob.prototype.text;
          Blob.prototype.text = function text() {
            if (this.size > 1e6) throw new Error("read");
            return real.call(this);
          };
        }"""
    )
    page.locator("#take-copy").set_input_files(large)
    expect(page.locator("#take-copy-error")).to_contain_text(NO_COPY)
    page.wait_for_timeout(700)
    assert held(page) == before
    assert page.evaluate("JSON.stringify({...localStorage})") == local


def test_what_cannot_be_read_of_a_file_is_named_and_stays_in_it(phone: BrowserContext) -> None:
    page = two_wearers(phone)
    before = held(page)
    local = page.evaluate("JSON.stringify({...localStorage})")
    for name, (text, sentence) in SET_ASIDE.items():
        take(page, text)
        expect(page.locator("#copy-damaged"), name).to_be_visible()
        expect(page.locator("#book .visit"), name).to_contain_text(sentence)
        assert page.evaluate("({}).shown") is None, name
        page.locator("#leave-copy").tap()
    assert held(page) == before
    assert page.evaluate("JSON.stringify({...localStorage})") == local
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Copies and lists")
    take(page, json.dumps(GOOD))
    expect(page.locator("#take-copy-error")).to_be_empty()
    expect(page.locator("#copy-damaged")).to_have_count(0)
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("Loaded: one wearer")
    page.locator("#all-wearers").tap()
    assert "<b>Zo</b>" in labels(page)
    page.locator(".head [data-book=close]").tap()
    expect(page.locator("#machine-line")).to_contain_text("<b>invented</b>")
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("<b>1</b>")


def test_one_mistyped_year_spoils_neither_the_book_nor_its_copy(
    new_phone: NewPhone, tmp_path: Path
) -> None:
    page = two_wearers(new_phone())
    page.locator("#all-wearers").tap()
    card(page, "Wren")
    due = page.locator("#wearer-due")
    due.fill("20261-11-26")
    wrong = page.locator("#wearer-due-error")
    expect(wrong).to_contain_text("The promised day has the year 20261. Write a year from 2000")
    page.go_back()
    expect(page.locator(".wearers")).to_contain_text("correct the day: 20261-11-26")
    copies(page)
    file = saved(page, "#save-copy", tmp_path)
    expect(page.locator("#book .note")).to_have_text(
        "Saved to a file: 2 wearers and all that you typed."
    )

    other = opened(new_phone())
    open_book(other)
    copies(other)
    take(other, file.read_bytes())
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_have_text("Loaded: 2 wearers added.")
    other.wait_for_timeout(700)
    assert {one["due"] for one in held(other)["wearers"]} == {"", "20261-11-26"}
    other.locator("#all-wearers").tap()
    card(other, "Wren")
    other.locator("#wearer-due-error .offer").tap()
    expect(other.locator("#wearer-due")).to_have_value("2026-11-26")
    expect(other.locator("#wearer-due-error")).to_have_text("")


@pytest.mark.parametrize("day", ["1999-12-31", "2200-01-01", "0026-11-26"])
def test_a_day_out_of_reach_is_told_beside_its_field(phone: BrowserContext, day: str) -> None:
    page = with_wearers(phone, [{"id": "w1", "label": "Ferry", "made": 1, "due": "2026-12-01"}])
    card(page, "Ferry")
    page.locator("#wearer-due").fill(day)
    expect(page.locator("#wearer-due-error")).to_contain_text("Write a year from 2000 to 2199")
    expect(page.locator("#wearer-due")).to_have_attribute("aria-invalid", "true")
    for good in ("2000-01-01", "2199-12-31", ""):
        page.locator("#wearer-due").fill(good)
        expect(page.locator("#wearer-due-error")).to_have_text("")


def test_a_record_that_does_not_come_back_is_told_before_saved_is_said(
    phone: BrowserContext, tmp_path: Path
) -> None:
    """The read-back is real: what the file loses on its way to the disk is named."""
    page = two_wearers(phone)
    page.evaluate(
        """() => {
          const real = Blob.prototype.text;
          Blob.prototype.text = async function text() {
            return (await real.call(this)).replace('"label":"Wren"', '"label":"Wr"');
          };
        }"""
    )
    saved(page, "#save-copy", tmp_path)
    expect(page.locator("#book .note")).to_contain_text("differs from this phone in: “Wren”")
    expect(page.locator("#book")).to_contain_text("No copy saved yet")


DAY = 86_400_000  # ms
BACKDATE = """days => {
  const noted = JSON.parse(localStorage["heelwise.uncopied"] ?? "{}");
  for (const name of Object.keys(noted)) noted[name] -= days * 86_400_000;
  localStorage["heelwise.uncopied"] = JSON.stringify(noted);
}"""


def test_a_copy_is_offered_when_it_is_time(phone: BrowserContext, tmp_path: Path) -> None:
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    offer = page.locator("#copy-offer")
    expect(offer).to_have_count(0)  # measured just now
    now = page.evaluate("Date.now()")
    page.evaluate(
        PUT, {"wearers": [{"id": f"w{at}", "label": "Ferry", "made": now - DAY} for at in (1, 2)]}
    )
    page.reload()
    expect(offer).to_contain_text("Newer than your last copy: 3 wearers.")
    more_of(offer)
    page.locator("#copy-later").tap()
    expect(offer).to_have_count(0)
    page.reload()
    expect(page.locator(".wearers li")).to_have_count(3)
    expect(offer).to_have_count(0)
    page.evaluate("localStorage['heelwise.copy_put_off'] = '2020-01-01'")
    page.reload()
    more_of(offer)
    file = saved(page, "#copy-now", tmp_path)
    assert len(json.loads(file.read_text())["book"]) == 3
    expect(page.locator("#book .note")).to_contain_text("Saved to a file: 3 wearers")
    page.locator("#all-wearers").tap()
    expect(page.locator(".wearers li")).to_have_count(3)
    expect(offer).to_have_count(0)
    page.evaluate("at => { localStorage['heelwise.copied'] = at; }", str(now - 8 * DAY))
    old = [
        {"id": one["id"], "label": "Ferry", "made": now - 9 * DAY} for one in held(page)["wearers"]
    ]
    page.evaluate(PUT, {"wearers": old})
    page.reload()
    expect(offer).to_contain_text("The last copy is more than a week old")


def test_edits_pairs_and_shelf_are_reason_for_a_copy_too(
    phone: BrowserContext, tmp_path: Path
) -> None:
    page = with_everything(phone)
    to_copies(page)
    saved(page, "#save-copy", tmp_path)
    page.locator("#all-wearers").tap()
    page.evaluate(BACKDATE, 2)
    page.reload()
    expect(page.locator(".wearers li")).to_have_count(1)
    expect(page.locator("#copy-offer")).to_have_count(0)  # all of it is in the copy

    card(page, "Nuri")
    page.locator("#wearer-colours").fill("moss")
    page.locator(".head [data-book=close]").tap()
    step(page, "yarn")
    if not field(page, "shelf.cylinders").is_visible():
        behind(page, "shelf")
    field(page, "shelf.cylinders").fill("54, 60, 72")
    page.locator("#machine-line .go-on").tap()
    tapped(page, 1)
    page.go_back()
    expect(page.locator("#copy-line .line")).to_have_count(0)  # changed just now
    page.wait_for_timeout(700)
    page.evaluate(BACKDATE, 2)
    page.reload()
    words = (
        "Newer than your last copy: one wearer, one pair at the machine "
        "and your cylinders and yarns."
    )
    expect(page.locator("#copy-line")).to_contain_text(words)
    page.locator("#copy-line [data-book=copies]").tap()
    expect(page.locator("#book h2")).to_have_text("Copies and lists")
    saved(page, "#save-copy", tmp_path)
    page.locator(".head [data-book=close]").tap()
    page.reload()
    expect(page.locator("#machine-line .go-on")).to_be_visible()
    expect(page.locator("#copy-line .line")).to_have_count(0)


def test_a_wearer_that_is_deleted_is_no_reason_for_a_copy(phone: BrowserContext) -> None:
    page = two_wearers(phone)
    page.locator("#all-wearers").tap()
    for label in ("Nuri", "Wren"):
        card(page, label)
        page.locator("#delete-wearer").tap()
        page.locator("#delete-surely").tap()
        expect(page.locator("#book h2")).to_have_text("Wearers")
    page.evaluate(BACKDATE, 2)
    page.wait_for_timeout(300)  # it goes back a page for each that is deleted
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Wearers")
    expect(page.locator("#copy-offer")).to_have_count(0)


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        ("async () => true", "has promised to keep all this"),
        ("async () => false", "may delete it when the phone runs short of room"),
        ("async () => { throw new Error('made up'); }", "does not say whether"),
        ("undefined", "does not say whether"),
    ],
)
def test_what_the_browser_answered_is_shown(phone: BrowserContext, answer: str, words: str) -> None:
    phone.add_init_script(f"StorageManager.prototype.persisted = {answer};")
    page = two_wearers(phone)
    expect(page.locator("#browser-keeps")).to_contain_text(words)


SAFARI = (
    "Object.defineProperty(Navigator.prototype, 'vendor', { get: () => 'Apple Computer, Inc.' });"
)


def test_a_plain_tab_of_safari_is_told_once_how_to_keep_the_book(
    phone: BrowserContext, tmp_path: Path
) -> None:
    """As Safari names itself to pages; the tab itself is Chromium's."""
    phone.add_init_script(SAFARI)
    page = opened(phone)
    open_book(page)
    told = page.locator("#home-screen")
    expect(told).to_have_count(0)  # nothing is held yet
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    expect(told).to_contain_text("Add to Home Screen")
    more_of(told)
    saved(page, "#home-copy", tmp_path)
    page.locator("#all-wearers").tap()
    expect(told).to_be_visible()  # a copy alone is not the home screen
    more_of(told)
    page.locator("#home-close").tap()
    expect(told).to_have_count(0)
    page.reload()
    expect(page.locator(".wearers li")).to_have_count(1)
    expect(told).to_have_count(0)


@pytest.mark.parametrize("script", ["", f"{SAFARI} navigator.standalone = true;"])
def test_on_the_home_screen_or_elsewhere_nothing_is_told(
    phone: BrowserContext, script: str
) -> None:
    phone.add_init_script(script or "undefined")
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    expect(page.locator(".wearers li")).to_have_count(1)
    expect(page.locator("#home-screen")).to_have_count(0)


# OWASP's first characters, wide ones among them, alone and behind white space.
FORMULAS = [
    *(f"{first}1+1" for first in "=+-@＝＋－＠\t\r\n"),
    *(f"{space}=1" for space in (" ", "\t", "\r\n", "\u00a0")),
]
WRITTEN = {
    "label": "Name",
    "length": "How long",
    "ease": "How close",
    "colours": "Colors",
    "allergy": "Allergy",
    "asked": "Who was asked",
}


def test_orders_open_in_a_spreadsheet_as_text(phone: BrowserContext, tmp_path: Path) -> None:
    """OWASP, CSV injection: no cell begins with what a spreadsheet takes for a formula."""
    wearers = [
        {
            "id": f"w{at}",
            **dict.fromkeys(WRITTEN, text),
            "price": 'say "two, pies"\nor so',
            "made": -at,
        }
        for at, text in enumerate(FORMULAS)
    ]
    page = with_wearers(phone, wearers)
    copies(page)
    file = saved(page, "#save-orders", tmp_path)
    assert file.suffix == ".csv"
    with file.open(encoding="utf-8-sig", newline="") as opened_file:
        rows = list(csv.DictReader(opened_file))
    for title in WRITTEN.values():
        assert [row[title] for row in rows] == [f"'{text}" for text in FORMULAS], title
    assert {row["Price"] for row in rows} == {'say "two, pies"\nor so'}


def test_the_phone_is_asked_to_keep_the_book_and_nobody_waits(phone: BrowserContext) -> None:
    phone.add_init_script(
        """window.asked = 0;
        StorageManager.prototype.persist = () => {
          window.asked += 1;
          return new Promise(() => {});
        };"""
    )
    page = opened(phone)
    open_book(page)
    assert page.evaluate("window.asked") == 0, "not before there is anything to keep"
    new_wearer(page, "Nuri", "24")
    assert page.evaluate("window.asked") == 1
    back_to_book(page)
    assert labels(page) == ["Nuri"]


@pytest.mark.slow
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", ["narrow", "phone", "desk"])
def test_how_copies_look(
    new_phone: NewPhone, screens: Path, tmp_path: Path, width: str, scheme: str
) -> None:
    across, down = WIDTHS[width]
    size = {"width": across, "height": down}
    page = two_wearers(
        new_phone(
            viewport=size, color_scheme=scheme, reduced_motion="reduce", device_scale_factor=1.5
        )
    )
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    copy["book"][0]["wearer"]["colours"] = "moss"
    copy["book"].append(GOOD["book"][0])
    for name, text in (("bad", "{"), ("merge", json.dumps(copy))):
        take(page, text)
        page.wait_for_timeout(300)
        page.screenshot(path=screens / f"copies-{name}-{width}-{scheme}.png", full_page=True)
        assert sideways(page) == 0, name
        assert violations(page) == [], name
        assert too_small(page) == [], name
