"""A phone that is really full: what is to be kept waits in memory, is told, and is kept in the end.

Both stores are full for real, localStorage to its last character and the databases by the browser's
own quota. One thing after the other is to be kept: what is typed, a swatch, the shelf, the table,
rounds, a wearer with a plan, a copy.
"""

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import done, go_to, planned, target
from tests.browser.book import back_to_book, copies, held, labels, new_wearer, open_book
from tests.browser.walk import behind, field, figures, step
from tests.faults.lacks import BOOK, COUNTED, FILL, TYPED

COPY = Path(__file__).parents[1] / "fuzz" / "corpus" / "copy_2.json"
FREE = """for (const key of Object.keys(localStorage)) {
    if (key.startsWith('filler')) delete localStorage[key];
}"""


class FullPhone:
    """A page on a phone that has no room, until it is told to have some."""

    def __init__(self, context: BrowserContext, site: str) -> None:
        self.page = context.new_page()
        self.line = context.new_cdp_session(self.page)
        self.origin = {"origin": site.rstrip("/")}
        # Before a database is first opened: what room there was then counts for a while.
        self.line.send("Storage.overrideQuotaForOrigin", {**self.origin, "quotaSize": 1})
        self.page.goto("./")
        expect(self.page.locator("#waiting")).to_be_hidden()
        self.fill()

    def fill(self) -> None:
        self.page.evaluate(f"() => {{ {FILL} }}")

    def free(self) -> None:
        self.page.evaluate(f"() => {{ {FREE} }}")

    def has_room(self) -> None:
        self.free()
        self.line.send("Storage.overrideQuotaForOrigin", self.origin)


@pytest.fixture
def full(phone: BrowserContext, site: str) -> FullPhone:
    return FullPhone(phone, site)


def told(page: Page, place: str, words: str) -> None:
    """It says so."""
    expect(page.locator(place)).to_contain_text(words)


def test_what_is_typed(full: FullPhone) -> None:
    page = full.page
    step(page, "yarn")
    for fold in ("#swatch-more", "#swatches"):
        page.locator(f"{fold} > summary").tap()
    page.get_by_role("button", name="Another swatch or sock").tap()
    step(page, "counts")
    page.locator("#chart > summary").tap()
    fields = {
        "foot.length": "measure",
        "fabric.swatches.0.needles": "yarn",
        "shelf.yarns.0.name": "shelf",
        "chart.first": "counts",
    }
    for name, place in fields.items():
        (behind if place == "shelf" else step)(page, place)
        full.fill()
        field(page, name).fill("123456789" * 20)
        told(page, "#status-line", TYPED)
        full.free()
        field(page, name).fill("34")
        expect(page.locator("#status-line")).not_to_contain_text(TYPED)
    page.reload()
    for name in fields:
        expect(field(page, name)).to_have_value("34")


@pytest.mark.whole
def test_what_is_counted_and_a_wearer_with_a_plan(full: FullPhone) -> None:
    page = full.page
    planned(page)
    page.locator("#knit-it").tap()
    told(page, ".notice", COUNTED)
    go_to(page, "Foot", 10)
    target(page).tap()
    expect(done(page)).to_have_text("11 of 46 done")
    page.locator(".leave").tap()
    open_book(page)
    new_wearer(page, "Invented: Nuri", "24")
    step(page, "counts")
    figures(page)
    back_to_book(page)
    told(page, "#book .trouble", BOOK)
    told(page, ".wearers .to-do", "Knit sock 1 of 2")
    assert held(page)["wearers"] == []
    full.has_room()
    expect(page.locator("#book .trouble")).to_have_count(0)  # by its own next try
    (visit,) = held(page)["visits"]
    assert set(visit["plans"][0]["counted"]["figures"]) >= {"foot", "toe"}
    page.locator("#close-book").tap()
    page.locator("#machine-line .go-on").tap()
    expect(page.locator(".notice")).to_have_count(0)
    page.reload()
    expect(done(page)).to_have_text("11 of 46 done")


def test_a_copy_taken_in(full: FullPhone) -> None:
    page = full.page
    open_book(page)
    copies(page)
    page.locator("#take-copy").set_input_files(COPY)
    page.locator("#take-in").tap()
    told(page, "#book .note", "one pair at the machine")
    told(page, "#book .note", "Your phone isn’t saving all of it")
    assert held(page)["wearers"] == []
    full.has_room()
    expect(page.locator("#book .trouble")).to_have_count(0)
    page.locator("#all-wearers").tap()
    assert {one["label"] for one in held(page)["wearers"]} == set(labels(page)) != set()
