"""The sheet for a foot that is far away: true to scale on both papers, and typed in when back.

Outside measures: a ruler (what is printed is measured in the picture of the page), ISO/IEC 7810 for
the outline of a card.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Page, expect

from tests.browser.axe import violations
from tests.browser.book import back_to_book, card, new_wearer, open_book
from tests.browser.on_paper import (
    DOTS,
    PAPER,
    NewPhone,
    nothing_cut_off,
    picture,
    printed,
    text_of,
    to_a_file,
)
from tests.browser.test_looks import sideways, too_small
from tests.browser.walk import field, more, opened

NEAR = 0.2  # mm, as near as a good ruler is read


def opened_sheet(page: Page) -> None:
    more(page)
    page.get_by_role("button", name="A sheet to print and send").tap()
    expect(page.get_by_role("dialog", name="A sheet to measure a foot")).to_be_visible()


def on_paper(page: Page, paper: str, keep: Path) -> bytes:
    page.get_by_role("radio", name=paper).check()
    page.get_by_role("button", name="Print the sheet").tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    return printed(page, paper, keep)


def along(seen: np.ndarray[Any, Any], aside: float) -> np.ndarray[Any, Any]:
    """Where ink is met on a line beside the sheet's diagonal, the middle of each in mm."""
    high, wide = seen.shape
    long = math.hypot(high, wide)
    east, north = wide / long, high / long
    steps = np.arange(0, long, 0.25)
    across = steps * east + aside * DOTS * north
    down = high - steps * north + aside * DOTS * east
    there = (across >= 0) & (across < wide - 1) & (down >= 0) & (down < high - 1)
    dark = np.zeros(len(steps), bool)
    dark[there] = seen[down[there].round().astype(int), across[there].round().astype(int)] < 170
    edges = np.flatnonzero(np.diff(np.concatenate([[0], dark.astype(int), [0]])))
    return np.asarray((edges[::2] + edges[1::2] - 1) / 2 * 0.25 / DOTS)


@pytest.mark.parametrize("paper", PAPER)
def test_bar_card_and_scales_are_true(new_phone: NewPhone, screens: Path, paper: str) -> None:
    page = opened(to_a_file(new_phone()))
    opened_sheet(page)
    made = on_paper(page, paper, screens / f"measuring-{paper}.pdf")
    assert nothing_cut_off(made, paper) == 2
    wide, high = PAPER[paper]
    seen = picture(made)
    right_of_heel = seen[round((high - 10.5) * DOTS), 80 * DOTS :]
    black = np.flatnonzero(right_of_heel < 128)
    bar = (black.max() - black.min() + 1) / DOTS
    assert bar == pytest.approx(100, abs=NEAR)
    row = np.flatnonzero(seen[round((high - 40) * DOTS), round((wide / 2) * DOTS) :] < 128)
    assert (row.max() - row.min()) / DOTS == pytest.approx(85.60, abs=NEAR)
    above, below = round((high - 86) * DOTS), round((high - 24) * DOTS)
    column = np.flatnonzero(seen[above:below, round((wide - 20) * DOTS)] < 128)
    assert (column.max() - column.min()) / DOTS == pytest.approx(53.98, abs=NEAR)

    fine = along(seen, 1.5)
    heel = along(seen, 7)[0]
    scale = fine[fine >= heel - 0.3][:321]
    assert scale[0] == pytest.approx(heel, abs=NEAR)
    assert scale == pytest.approx(heel + np.arange(321), abs=NEAR), "every mm, for a foot of 320"
    whole = along(seen, 7)[:31]
    assert whole == pytest.approx(heel + 10 * np.arange(31), abs=NEAR), "every cm"
    inches = along(seen, -6.5)[:13]
    assert inches == pytest.approx(heel + 25.4 * np.arange(13), abs=NEAR), "every inch"


@pytest.mark.parametrize("paper", PAPER)
def test_the_second_page_says_where_each_tape_goes(
    new_phone: NewPhone, screens: Path, paper: str
) -> None:
    page = opened(to_a_file(new_phone(color_scheme="dark")))
    opened_sheet(page)
    first, second = text_of(on_paper(page, paper, screens / f"measuring-dark-{paper}.pdf"))
    assert "This bar should be 100 mm long" in " ".join(first.split())
    words = " ".join(second.split())
    for said in ("Ball", "just behind the toes", "Heel", "Instep", "Ankle", "Calf", "clinician"):
        assert said in words
    assert "How long is the bar?" in words
    assert page.locator("#paper .measuring-leg [data-tape-of]").count() == 5


def test_what_came_back_is_one_foot_and_the_bar_corrects_it(new_phone: NewPhone) -> None:
    """Printed at 98 %, a foot of 24.5 cm covers 25 cm of the scale."""
    page = opened(new_phone())
    opened_sheet(page)
    page.get_by_text("It came back: type it in").tap()
    page.get_by_label("How long is the bar?").fill("98")
    page.get_by_label("Foot length, read on the sheet").fill("25")
    sheet = page.get_by_role("dialog")
    sheet.get_by_label("Ball", exact=True).fill("five")
    page.get_by_role("button", name="Put it in the foot").tap()
    expect(sheet.get_by_label("Ball", exact=True)).to_be_focused()
    expect(page.locator("#sheet-ball_girth-error")).not_to_be_empty()
    page.reload()  # nothing typed is lost
    opened_sheet(page)
    expect(page.get_by_label("How long is the bar?")).to_have_value("98")
    sheet.get_by_label("Ball", exact=True).fill("23,4")
    page.get_by_role("button", name="Put it in the foot").tap()
    expect(sheet).to_have_count(0)
    expect(field(page, "foot.length")).to_have_value("24.5 cm")
    expect(field(page, "foot.ball_girth")).to_have_value("23,4")
    expect(page.locator("#measure-title")).to_be_focused()
    opened_sheet(page)
    expect(page.get_by_label("How long is the bar?")).to_have_value("")


def test_a_sheet_for_a_wearer(new_phone: NewPhone, screens: Path) -> None:
    page = opened(to_a_file(new_phone()))
    open_book(page)
    new_wearer(page, "Invented Ada <b>7</b>")
    back_to_book(page)
    card(page, "Invented Ada <b>7</b>")
    page.get_by_role("button", name="A sheet to print and send").tap()
    (first, _) = text_of(on_paper(page, "A4", screens / "measuring-ada.pdf"))
    assert "For Invented Ada <b>7</b>" in " ".join(first.split())
    page.get_by_text("It came back: type it in").tap()
    page.get_by_label("Foot length, read on the sheet").fill("24,5")
    page.get_by_role("button", name="Put it in the foot").tap()
    expect(field(page, "foot.length")).to_have_value("24,5")
    back_to_book(page)
    card(page, "Invented Ada <b>7</b>")
    expect(page.locator("#book")).to_contain_text("24,5 cm")


@pytest.mark.parametrize(("width", "scheme"), [(320, "dark"), (360, "light")])
def test_how_it_looks(new_phone: NewPhone, screens: Path, width: int, scheme: str) -> None:
    size = {"width": width, "height": 640}
    page = opened(new_phone(viewport=size, color_scheme=scheme, reduced_motion="reduce"))
    more(page)
    page.locator("#measuring").scroll_into_view_if_needed()
    page.screenshot(path=screens / f"measuring-way-{width}-{scheme}.png")
    opened_sheet(page)
    page.screenshot(path=screens / f"measuring-{width}-{scheme}.png")
    page.get_by_text("It came back: type it in").tap()
    page.screenshot(path=screens / f"measuring-typed-{width}-{scheme}.png")
    page.locator(".measuring-preview").scroll_into_view_if_needed()
    page.screenshot(path=screens / f"measuring-preview-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []
