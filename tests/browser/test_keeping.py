"""Copies of the book: saved, taken in elsewhere, and never a word overwritten unasked."""

import csv
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import (
    back_to_book,
    card,
    held,
    labels,
    new_wearer,
    open_book,
    with_wearers,
)
from tests.browser.test_looks import AXE, WIDTHS, sideways, too_small
from tests.browser.walk import opened

NewPhone = Callable[..., BrowserContext]


def copies(page: Page) -> None:
    """From the list to the copies."""
    page.locator("#to-copies").tap()
    expect(page.locator("#book h2")).to_have_text("Copies and lists")


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
    expect(page.locator("#book")).to_contain_text("No copy of the book was saved yet")
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
    expect(other.locator("#book .note")).to_have_text("Taken in: 2 wearers added.")
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
    expect(other.locator("#book .note")).to_contain_text("in the book already")


def test_what_differs_is_chosen_side_by_side(phone: BrowserContext, tmp_path: Path) -> None:
    page = two_wearers(phone)
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    for one in copy["book"]:
        one["wearer"]["colours"] = "moss"
        one["visits"][0]["values"]["foot.length"] = "30"
    take(page, json.dumps(copy))
    expect(page.locator(".differing")).to_have_count(2)
    wren = page.locator(".differing", has_text="Wren")
    length = wren.locator("tr", has=page.locator("th", has_text="Foot length"))
    assert length.locator("td").all_inner_texts() == ["26,5 cm", "30 cm"]
    expect(wren.locator("tr", has_text="Label")).to_have_count(0)  # only what differs
    page.locator("#leave-copy").tap()
    page.wait_for_timeout(700)
    assert {one["colours"] for one in held(page)["wearers"]} == {""}

    take(page, json.dumps(copy))
    wren.locator("label", has_text="take the file").tap()
    page.locator("#take-in").tap()
    page.wait_for_timeout(700)
    colours = {one["label"]: one["colours"] for one in held(page)["wearers"]}
    assert colours == {"Nuri": "", "Wren": "moss"}
    page.locator("#all-wearers").tap()
    card(page, "Wren")
    page.locator("#open-sheet").tap()
    expect(page.locator("[name='foot.length']")).to_have_value("30")


GOOD: dict[str, Any] = {
    "heelwise": "wearers",
    "version": 1,
    "book": [
        {
            "wearer": {"id": "z-1", "label": "<b>Zo</b>", "made": 5},
            "visits": [{"wearer": "z-1", "number": 1, "at": 5, "values": {"foot.length": "24"}}],
        }
    ],
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


NO_COPY, NO_ENTRY = "not a copy of the book", "Wearer number 1 of this copy cannot be read"
VALUES = "book/0/visits/0/values"
BAD: dict[str, tuple[str | bytes, str]] = {
    "a picture": (b"\x89PNG\r\n\x1a\n\0\0", NO_COPY),
    "another JSON": ("[1, 2, 3]", NO_COPY),
    "nothing": ("", NO_COPY),
    "null": ("null", NO_COPY),
    "huge": ('"' + "x" * 20_000_001 + '"', "larger than any book"),
    "deep": ("[" * 200_000 + "]" * 200_000, NO_COPY),
    "not a number": (json.dumps(GOOD).replace(": 5", ": NaN"), NO_COPY),
    "newer": (spoilt("version", 2), "newer version of this page"),
    "no list": (spoilt("book", {}), "no list of wearers"),
    "label": (spoilt("book/0/wearer/label", 7), NO_ENTRY),
    "day": (spoilt("book/0/wearer/due", "soon"), NO_ENTRY),
    "visits": (spoilt("book/0/visits", {"a": 1}), NO_ENTRY),
    "markup as id": (spoilt("book/0/wearer/id", "<img>"), NO_ENTRY),
    "another's visit": (spoilt("book/0/visits/0/wearer", "z-2"), NO_ENTRY),
    "prototype": (spoilt(VALUES, {"__proto__.shown": "1"}), NO_ENTRY),
    "constructor": (spoilt(VALUES, {"foot.constructor.x": "1"}), NO_ENTRY),
    "own prototype": (spoilt(VALUES, {"__proto__": {"shown": "1"}}), NO_ENTRY),
    "twice": (json.dumps({**GOOD, "book": GOOD["book"] * 2}), "holds one wearer twice"),
}


def test_bad_files_get_one_sentence_and_change_nothing(phone: BrowserContext) -> None:
    page = two_wearers(phone)
    before = held(page)
    for name, (text, sentence) in BAD.items():
        take(page, text)
        expect(page.locator("#take-copy-error"), name).to_contain_text(sentence)
        assert page.locator("#take-in").count() == 0, name
        assert page.evaluate("({}).shown") is None, name
    page.wait_for_timeout(700)
    assert held(page) == before
    take(page, json.dumps(GOOD))
    expect(page.locator("#take-copy-error")).to_be_empty()
    page.locator("#take-in").tap()
    page.locator("#all-wearers").tap()
    assert "<b>Zo</b>" in labels(page)


FORMULAS = ["=1+1", "+1", "-1", "@sum", " =1", "\t=1"]


def test_orders_open_in_a_spreadsheet_as_text(phone: BrowserContext, tmp_path: Path) -> None:
    """OWASP, CSV injection: no cell begins with what a spreadsheet takes for a formula."""
    wearers = [
        {"id": f"w{at}", "label": text, "price": 'say "two, pies"\nor so', "made": -at}
        for at, text in enumerate(FORMULAS)
    ]
    page = with_wearers(phone, wearers)
    copies(page)
    file = saved(page, "#save-orders", tmp_path)
    assert file.suffix == ".csv"
    with file.open(encoding="utf-8-sig", newline="") as opened_file:
        rows = list(csv.DictReader(opened_file))
    assert [row["Label"] for row in rows] == [f"'{text}" for text in FORMULAS]
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
    page = two_wearers(new_phone(viewport=size, color_scheme=scheme, reduced_motion="reduce"))
    copy = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    copy["book"][0]["wearer"]["colours"] = "moss"
    copy["book"].append(GOOD["book"][0])
    for name, text in (("bad", "{"), ("merge", json.dumps(copy))):
        take(page, text)
        page.wait_for_timeout(300)
        page.screenshot(path=screens / f"copies-{name}-{width}-{scheme}.png", full_page=True)
        assert sideways(page) == 0, name
        found = Axe().run(page, options=AXE).response["violations"]
        assert not found, f"{name}: {[(v['id'], [n['target'] for n in v['nodes']]) for v in found]}"
        assert too_small(page) == [], name
