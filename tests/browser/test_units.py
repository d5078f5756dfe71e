"""What is typed without a unit keeps its meaning: after a reload, and on another phone."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import open_book
from tests.browser.walk import behind, choose, field, fill_foot, opened, step

NewPhone = Callable[..., BrowserContext]
LEFT, STITCHES = "shelf.yarns.0.left", "shelf.yarns.0.marks.0.stitches"
BARE = {
    "shelf.cylinders": "60",
    LEFT: "3.2 oz",
    STITCHES: "8",
    "shelf.yarns.0.marks.0.rounds": "11",
}
TABLE = {"chart.first": "9", "chart.last": "10"}
STORED = ("heelwise.shelf", "heelwise.chart")


def in_inches(phone: BrowserContext) -> Page:
    """Ounces, and inches typed bare, on the shelf and for the table."""
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    choose(page, "inches")
    step(page, "yarn")
    behind(page, "shelf")
    for name, text in BARE.items():
        field(page, name).fill(text)
    step(page, "counts")
    page.locator("#chart > summary").tap()
    for name, text in TABLE.items():
        field(page, name).fill(text)
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(5)  # 9 to 10 in, by ¼
    return page


def as_typed(page: Page) -> None:
    """It reads as it was typed, and is ranked and tabled so."""
    step(page, "counts")
    page.locator("#chart > summary").tap()
    for name, text in TABLE.items():
        expect(field(page, name)).to_have_value(text)
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(5)
    step(page, "yarn")
    behind(page, "shelf")
    for name, text in BARE.items():
        expect(field(page, name)).to_have_value(text)
    expect(page.locator("#shelf-place")).to_contain_text("91 g")  # 3.2 x 28.35


@pytest.mark.parametrize("kept", ["with its units", "by an older version, without"])
def test_inches_and_ounces_stay_so_after_a_reload(phone: BrowserContext, kept: str) -> None:
    page = in_inches(phone)
    if "without" in kept:
        page.wait_for_timeout(500)  # or it writes once more, over what is put there now
        for key in STORED:
            page.evaluate(
                "(key) => { const { units, ...bare } = JSON.parse(localStorage[key]);"
                " if (units !== 'in') throw new Error(units);"
                " if (bare['shelf.yarns.0.left']) bare['shelf.yarns.0.left'] = '3.2';"
                " localStorage[key] = JSON.stringify(bare); }",
                key,
            )
    page.reload()
    as_typed(page)


def test_in_centimeters_the_ounces_stay_ounces(phone: BrowserContext) -> None:
    """The other system, chosen and left again, and a reload in between."""
    page = in_inches(phone)
    field(page, "chart.by").select_option("EU")  # what was typed by length is put by
    step(page, "measure")
    choose(page, "centimeters")
    page.reload()
    step(page, "yarn")
    behind(page, "shelf")
    expect(field(page, LEFT)).to_have_value("3.2 oz")
    expect(field(page, STITCHES)).to_have_value("8 / in")
    expect(page.locator("#shelf-place")).to_contain_text("91 g")


@pytest.mark.parametrize("kept", ["with its units", "by an older version, without"])
def test_a_copy_brings_inches_to_a_phone_in_centimeters(
    new_phone: NewPhone, tmp_path: Path, kept: str
) -> None:
    page = in_inches(new_phone())
    open_book(page)
    page.locator("#to-copies").tap()
    with page.expect_download() as download:
        page.locator("#save-copy").tap()
    download.value.save_as(tmp_path / "copy.json")
    copy = json.loads((tmp_path / "copy.json").read_text())
    for name in ("shelf", "chart"):
        assert copy["sheets"][name].pop("units") == "in"
        if "with its" in kept:
            copy["sheets"][name]["units"] = "in"
    if "older" in kept:  # a bare weight was in ounces there
        copy["sheets"]["shelf"][LEFT] = "3.2"

    other = opened(new_phone())
    open_book(other)
    other.locator("#to-copies").tap()
    other.locator("#take-copy").set_input_files(
        {"name": "c.json", "mimeType": "application/json", "buffer": json.dumps(copy).encode()}
    )
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("Loaded")
    other.goto("./")
    step(other, "measure")
    as_typed(other)
