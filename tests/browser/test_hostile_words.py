"""Words that would be more than words, and far too many of them: everywhere they are only text.

They come with a copy, the one door that carries all that is kept; what is typed or comes by link
goes to the same screens. Unicode Bidirectional Algorithm (UAX 9): a text that turns the direction
of writing does so to the end of its paragraph, unless it stands in an isolate.
"""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.book import copies, open_book, whole_card
from tests.browser.on_paper import to_a_file
from tests.browser.small_sock import session
from tests.browser.test_keeping import NewPhone, saved, take
from tests.browser.test_looks import sideways
from tests.browser.walk import behind, field, opened, step

TURNING = "\u202e\u2067"  # right-to-left override and isolate, neither of them ended
WORDS = {
    # Markup, templates, a pile of accents, joined emoji, no width, NUL and half a character.
    "hostile": f"Zo {TURNING}right <img src=x onerror='shown=1'></script>"
    + "<b>{{7*7}} ${7*7}</b> e"
    + "\u0301" * 40
    + " 👩‍👩‍👧 \u200b\ufeff\0\ud83d end",
    "10,000 letters": f"Zo{TURNING}" + "Zo" * 4998,
}
# Text of hers that shares its isolate (a block is one too) with words of ours.
LOOSE = r"""() => {
  const found = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    if (!/[\u202e\u2067]/.test(node.data)) continue;
    let around = node.parentElement;
    const alone = (one) => {
      const { unicodeBidi, display } = getComputedStyle(one);
      return /isolate|plaintext/.test(unicodeBidi) || !/^(inline|contents)$/.test(display);
    };
    while (!alone(around)) around = around.parentElement;
    const others = around.textContent.replaceAll(node.data, "");
    if (/[\p{L}\p{N}]/u.test(others)) found.push(around.outerHTML.slice(0, 300).toWellFormed());
  }
  return found;
}"""


def copy_with(words: str) -> dict[str, Any]:
    """All that is kept, these words wherever hers can stand."""
    counted = {
        "engine": "1",
        "figures": dict.fromkeys(("cuff", "leg", "heel", "foot", "toe"), words),
        "facts": [{"name": "Yarn", "text": words}],
    }
    plan = {"at": 5, "values": {}, "counted": counted}
    typed = {"units": "cm", "foot.length": words, "foot.ball_girth": words}
    written = (
        *("asked", "length", "ease", "colours", "allergy", "price", "label"),
        *("contact", "deposit", "pairs"),
    )
    pair = session("p-1")
    for knit in pair["socks"]:
        for one in knit["steps"]:
            one["tension"] = words
    noted = {"session": "p-1", "took": None, "at": 5, "place": {"step": 1, "done": 0}}
    return {
        "heelwise": "wearers",
        "version": 2,
        "book": [
            {
                "wearer": {
                    "id": "w-1",
                    "made": 5,
                    "state": "planned",
                    "due": "",
                    **dict.fromkeys(written, words),
                },
                "visits": [
                    {
                        "wearer": "w-1",
                        "number": number,
                        "at": 5,
                        "values": typed,
                        "plans": [plan],
                        "state": words,
                        "due": words,
                        "price": words,
                    }
                    for number in (1, 2)
                ],
            }
        ],
        "sheets": {
            "mine": {
                "units": "cm",
                "way": "gauge",
                "foot.length": words,
                "cylinder.slots": words,
                "fabric.stitches": words,
            },
            "before": None,
            "shelf": {
                "shelf.cylinders": "60",
                "shelf.yarns.0.name": words[:50],
                "shelf.yarns.0.colour": words,
                "shelf.yarns.0.yarn": "400 m / 100 g",
                "shelf.yarns.1.name": words[:50],
                "shelf.yarns.1.yarn": "350 m / 100 g",
            },
            "chart": None,
            "sets": None,
        },
        "pairs": [
            {
                "session": {**pair, "label": words, "who": words},
                "happenings": [
                    {**noted, "number": 1, "sock": 1, "kind": "note", "text": words},
                    {**noted, "number": 2, "sock": 0, "kind": "done"},
                ],
            }
        ],
        "settings": None,
    }


def screens_with(page: Page, copy: dict[str, Any], folder: Path) -> Iterator[str]:
    """Every screen that shows them, by name."""
    open_book(page)
    copies(page)
    take(page, json.dumps(copy))
    expect(page.locator("#take-in")).to_be_visible()
    yield "what a copy brings"
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("Loaded")
    now = json.loads(saved(page, "#save-copy", folder).read_text())
    for one in (*now["book"], *now["pairs"]):
        del one["sum"]  # a version 2 file has no checksums, nor dates of changes
    for one in now["book"]:
        for dated in (one["wearer"], *one["visits"]):
            assert dated.pop("changed") == {}
    assert [now["book"], now["pairs"]] == [copy["book"], copy["pairs"]], "nothing is lost"
    for name, text in copy["sheets"]["mine"].items():  # a form has no half characters
        assert now["sheets"]["mine"][name] == text.replace("\ud83d", "\ufffd")
    other = json.loads(json.dumps(copy))
    other["book"][0]["wearer"]["colours"] += "x"
    other["sheets"]["mine"]["foot.length"] += "x"
    take(page, json.dumps(other))
    expect(page.locator(".differing").first).to_be_visible()
    yield "what differs"
    page.locator("#leave-copy").tap()
    page.locator("#print-orders").tap()
    expect(page.locator("#paper")).to_contain_text("Zo")
    yield "orders on paper"
    page.keyboard.press("Shift")
    page.locator("#all-wearers").tap()
    page.locator(".wearers a").wait_for()
    yield "the book"
    page.locator(".wearers a").tap()
    whole_card(page)
    page.evaluate("for (const one of document.querySelectorAll('#book details')) one.open = true")
    yield "a wearer"
    page.locator("#delete-wearer").tap()
    yield "a wearer to be deleted"
    page.locator("#book button", has_text="Keep them").tap()
    page.locator("#wearer-tag").tap()
    page.locator("#tag-label").wait_for()
    yield "a tag to be written"
    page.locator("#tag-title").fill(WORDS["hostile"][:30])
    page.locator("#print-tag").tap()
    yield "a tag on paper"
    page.keyboard.press("Escape")
    page.locator("#open-sheet").tap()
    expect(page.locator("#visit-line")).to_contain_text("Saved in the book")
    yield "a wearer's sheet"
    page.locator("#visit-line button", has_text="My own page").tap()
    step(page, "counts")
    expect(page.locator("#counts .problems")).to_be_visible()
    yield "the machine's line, and what is to fix first"
    step(page, "measure")
    yield "refused beside their fields"
    field(page, "foot.length").fill("24")
    step(page, "yarn")
    behind(page, "shelf")
    expect(page.locator("#shelf-yarns-0-colour-error")).to_contain_text("too long")
    field(page, "shelf.yarns.0.colour").fill("blue")
    expect(page.locator("#shelf-place")).to_contain_text("Zo")
    yield "the shelf"
    page.locator(".go-on").tap()
    page.locator(".target").wait_for()
    page.locator(".strip").tap()
    yield "the counter"
    page.get_by_role("button", name="Note").tap()
    expect(page.locator(".notes")).to_contain_text("Zo")
    yield "notes"


@pytest.mark.whole
@pytest.mark.parametrize("kind", list(WORDS))
def test_words_are_only_words_on_every_screen(
    new_phone: NewPhone, tmp_path: Path, kind: str
) -> None:
    narrow = {"width": 320, "height": 640}
    page = opened(to_a_file(new_phone(viewport=narrow)))
    for name in screens_with(page, copy_with(WORDS[kind]), tmp_path):
        assert page.evaluate(LOOSE) == [], name
        assert sideways(page) == 0, name
        assert page.evaluate("window.shown ?? document.querySelector('[src=x]')") is None, name
