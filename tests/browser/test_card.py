"""What comes out of the printer, on A4 and on Letter: the card of a pair, and the whole plan."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Page, expect

from tests.asking import answer
from tests.browser.on_paper import (
    DOTS,
    PAPER,
    UNPRINTED,
    NewPhone,
    ink,
    nothing_cut_off,
    picture,
    printed,
    text_of,
    to_a_file,
)
from tests.browser.walk import (
    behind,
    choose,
    field,
    figures,
    fill_foot,
    opened,
    settings_sheet,
    share,
    step,
)
from tests.published.code_reader import found, read

TO_CUT = (105, 138)  # mm: where the dashed lines stand
TALLEST = 139.7  # mm: a quarter of Letter, the shorter of the two


def ready(new_phone: NewPhone, **features: Any) -> Page:
    """A page at the counts, whose printer only notes that it was asked."""
    page = opened(to_a_file(new_phone(**features)))
    fill_foot(page)
    field(page, "fabric.yarn").fill("400 m / 100 g")
    step(page, "counts")
    figures(page)
    page.wait_for_timeout(500)  # the last answer has come
    return page


def asked_to_print(page: Page) -> None:
    share(page, "#print-card", "#print-this-card")
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    assert page.evaluate("window.asked") == 1


@pytest.mark.parametrize("paper", PAPER)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_card_of_a_quarter_page(
    new_phone: NewPhone, screens: Path, paper: str, scheme: str
) -> None:
    page = ready(new_phone, color_scheme=scheme)
    shown = figures(page)
    asked_to_print(page)
    made = printed(page, paper, screens / f"card-{paper}-{scheme}.pdf")
    (words,) = text_of(made)  # one page
    seen = picture(made)
    assert seen.shape[::-1] == pytest.approx([n * DOTS for n in PAPER[paper]], abs=DOTS)
    left, top, right, bottom = ink(seen)
    assert left >= UNPRINTED
    assert top >= UNPRINTED
    assert right == pytest.approx(TO_CUT[0], abs=0.5), "the dashed line, and nothing beyond it"
    assert bottom == pytest.approx(TO_CUT[1], abs=0.5)
    assert bottom < TALLEST
    inside = ink(seen[: (TO_CUT[1] - 1) * DOTS, : (TO_CUT[0] - 1) * DOTS])
    assert inside[2] <= TO_CUT[0] - 4, "a margin where it is cut"
    assert inside[3] <= TO_CUT[1] - 3
    assert set(np.unique(seen[:5])) == {255}, "white paper in every theme"

    lines = "".join(words.split())
    for title, figure in shown.items():
        assert title in words
        assert figure in lines
    for line in ("400 m / 100 g", "60 slots", "For", "Date"):
        assert line in words
    for last in (10, 20, 30, 40, int(shown["Foot"]), int(shown["Leg"])):
        assert len(re.findall(rf"\b{last}\b", words)) >= 2, "a box for each sock"
    for other in ("Measure", "Copy", "Heelwise", "http", "Printed", "1/1"):
        assert other not in words, "nothing else is on the paper"

    address = read(seen)
    assert address.startswith(page.url.split("#")[0] + "#2.")
    request = answer({"do": "open", "link": address.split("#")[1]})["request"]
    assert "foot" not in request
    assert "person" not in request
    counts = answer({"do": "plan", "request": request})["counts"]
    assert str(counts["foot"]["rounds"]) == shown["Foot"]
    assert str(counts["leg"]["rounds"]) == shown["Leg"]


@pytest.mark.parametrize("paper", PAPER)
def test_a_card_for_a_long_leg_in_bands(new_phone: NewPhone, screens: Path, paper: str) -> None:
    page = ready(new_phone)
    step(page, "yarn")
    behind(page, "made")
    page.locator("#long-leg > summary").tap()
    field(page, "sock.leg.height").fill("42 cm")
    step(page, "measure")
    field(page, "foot.ankle_girth").fill("22")
    field(page, "foot.calf_girth").fill("38")
    step(page, "counts")
    expect(page.locator(".tally-leg .detail")).to_contain_text("bands")
    share(page)
    expect(page.locator("#share-place")).to_contain_text("no measure of the person")
    expect(page.locator("#share-place")).not_to_contain_text("stay behind")
    asked_to_print(page)
    made = printed(page, paper, screens / f"card-long-{paper}.pdf")
    (words,) = text_of(made)
    assert "Round 1: " in " ".join(words.split())
    left, top, right, bottom = ink(picture(made))
    assert left >= UNPRINTED
    assert top >= UNPRINTED
    assert right == pytest.approx(TO_CUT[0], abs=0.5)
    assert bottom <= PAPER[paper][1] - UNPRINTED


@pytest.mark.parametrize("paper", PAPER)
def test_the_whole_plan_on_paper(new_phone: NewPhone, screens: Path, paper: str) -> None:
    page = ready(new_phone)
    shown = figures(page)
    made = printed(page, paper, screens / f"plan-{paper}.pdf", margin="10mm")
    pages = text_of(made)
    lines = "".join("".join(pages).split())
    for title, figure in shown.items():
        assert title in "".join(pages)
        assert figure in lines
    assert "A pair on" not in lines
    assert "Copy the link" not in " ".join(pages)
    page.emulate_media(media="print")
    for mark in page.locator(".fit-mark").all():  # a printer leaves grounds white
        style = mark.evaluate(
            "e => [getComputedStyle(e).color, getComputedStyle(e).backgroundColor]"
        )
        assert style == ["rgb(0, 0, 0)", "rgba(0, 0, 0, 0)"]
    nothing_cut_off(made, paper, margin=10)


def test_after_the_card_the_whole_plan_again(new_phone: NewPhone) -> None:
    page = ready(new_phone)
    asked_to_print(page)
    page.keyboard.press("Shift")
    expect(page.locator("html")).not_to_have_attribute("data-print", "paper")
    (first, *_) = text_of(printed(page, "A4"))
    assert "Show the counts" in first


def test_a_card_of_sock_two(new_phone: NewPhone) -> None:
    page = ready(new_phone)
    page.locator("#first-sock summary").tap()
    page.locator("#as-planned button").tap()
    field(page, "first_sock.length").fill("22")
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    page.wait_for_timeout(500)
    shown = figures(page)
    asked_to_print(page)
    (words,) = text_of(printed(page, "A4"))
    assert "Sock two on 60 slots" in words
    foot = next(figure for title, figure in shown.items() if title.startswith("Foot"))
    assert foot in words
    expect(page.locator(".card-boxes b")).to_have_text(["2"] * 5)


def test_a_link_too_long_for_paper_leaves_no_code_of_another_plan(new_phone: NewPhone) -> None:
    page = ready(new_phone)
    asked_to_print(page)
    assert read(picture(printed(page, "A4")))
    page.keyboard.press("Shift")
    folder = "'https://socks.example/' + 'x'.repeat(200) + '/'"
    page.evaluate(f"Object.defineProperty(document, 'baseURI', {{ value: {folder} }})")
    share(page, "#print-card", "#print-this-card")
    expect(page.locator(".card-code")).to_be_empty()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    assert not found(picture(printed(page, "A4")))


def test_the_card_is_never_on_the_screen(new_phone: NewPhone) -> None:
    page = ready(new_phone)
    asked_to_print(page)
    expect(page.locator("#paper")).to_be_hidden()
    expect(page.locator("#counts")).to_be_visible()
    settings_sheet(page)
    choose(page, "dark")
