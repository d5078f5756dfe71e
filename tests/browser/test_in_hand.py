"""The field in hand: what it asks, parts of an inch, its drawn tape, and the phone's keyboard.

That a keyboard may lie over a page and be told by the visual viewport alone: CSSOM View, "The
VisualViewport interface"; that a page may ask to be made smaller instead: CSS Viewport,
"interactive-widget".
"""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.host import comes_true
from tests.browser.walk import choose, field, fill_foot, opened, step

NewPhone = Callable[..., BrowserContext]


def test_what_a_field_asks_stands_in_one_place(phone: BrowserContext) -> None:
    page = opened(phone)
    expect(page.locator("#in-hand")).to_be_hidden()
    field(page, "foot.length").tap()
    expect(page.locator("#in-hand")).to_contain_text("longest toe")
    page.keyboard.type("24,6")
    expect(page.locator("#in-hand .read")).to_have_text("= 24.6 cm · 9 5/8 in")
    field(page, "foot.ball_girth").tap()
    expect(page.locator("#in-hand")).to_contain_text("behind the toes")
    expect(page.locator("#in-hand .read")).not_to_contain_text("=")
    page.locator("#in-hand .read summary").tap()
    expect(page.locator("#in-hand details")).to_contain_text("of the US Army")
    expect(field(page, "foot.ball_girth")).to_be_focused()
    step(page, "yarn")
    expect(page.locator("#in-hand")).to_be_hidden()


def test_a_guess_stands_in_its_field(phone: BrowserContext) -> None:
    page = opened(phone)
    choose(page, "woman")
    field(page, "foot.length").fill("24,6")
    ball = field(page, "foot.ball_girth")
    guessed = re.compile(r"^guessed 22\.\d.cm$")  # ANSUR II: 228.1 mm beside 246.3 mm, on average
    expect(ball).to_have_attribute("placeholder", guessed)
    field(page, "foot.length").fill("")
    expect(ball).not_to_have_attribute("placeholder", guessed)


@pytest.mark.parametrize(
    ("typed", "part", "becomes"),
    [
        ("", "1/2", "1/2"),
        ("9", "3/8", "9 3/8"),
        ("9 3/8", "7/8", "9 7/8"),
        ("3/8", "1/4", "1/4"),
        ("9 ", "1/8", "9 1/8"),
    ],
)
def test_parts_of_an_inch_by_a_tap(
    phone: BrowserContext, typed: str, part: str, becomes: str
) -> None:
    page = opened(phone)
    choose(page, "inches")
    length = field(page, "foot.length")
    length.tap()
    page.keyboard.type(typed)
    page.locator("#in-hand").get_by_role("button", name=part, exact=True).tap()
    expect(length).to_have_value(becomes)
    expect(length).to_be_focused()


@pytest.mark.parametrize("typed", ["50 cm", "9.5", "twelve", "9 3/8 in"])
def test_no_part_of_an_inch_takes_the_place_of_what_is_no_inch(
    phone: BrowserContext, typed: str
) -> None:
    page = opened(phone)
    choose(page, "inches")
    field(page, "foot.calf_girth").fill(typed)
    expect(page.locator("#in-hand")).to_be_visible()
    expect(page.locator("#in-hand .eighths button")).to_have_count(0)


@pytest.mark.parametrize(
    ("units", "typed", "further", "becomes"),
    [
        ("centimeters", "24,6", 3, "24.9"),
        ("centimeters", "", 1, "24.1"),
        ("inches", "9 3/8", 2, "9 5/8"),
        ("inches", "9 7/8", 1, "10"),
        ("inches", "", -4, "9"),
    ],
)
def test_a_tape_is_slid_to_the_measure(
    phone: BrowserContext, units: str, typed: str, further: int, becomes: str
) -> None:
    page = opened(phone)
    choose(page, units)
    length = field(page, "foot.length")
    length.fill(typed)
    tape = page.get_by_role("slider", name="Slide the tape")
    assert tape.evaluate("e => e.offsetHeight") >= 44
    tape.focus()
    for _ in range(abs(further)):
        page.keyboard.press("ArrowRight" if further > 0 else "ArrowLeft")
    expect(length).to_have_value(becomes)
    expect(tape).to_be_focused()
    expect(page.locator("#foot-length-other")).not_to_be_empty()
    length.fill("24 ells")
    expect(tape).to_have_count(0)


def test_a_drawn_tape_leads_to_its_field(phone: BrowserContext) -> None:
    page = opened(phone)
    tape = page.locator("[data-tape-of=foot-calf_girth]")
    tape.tap()
    expect(field(page, "foot.calf_girth")).to_be_focused()
    expect(tape).to_have_class("taken")
    page.keyboard.type("36")
    field(page, "foot.length").tap()
    expect(tape).to_have_class("measured")


def clear_of_each_other(page: Page, name: str, down: int) -> bool:
    """The field is whole on the `down` px that are left, and so is what is said of it, below it."""
    box = field(page, name).bounding_box()
    said = page.locator("#in-hand").bounding_box()
    if not box or not said:
        return False
    ends = [0.0, box["y"], box["y"] + box["height"], said["y"], said["y"] + said["height"], down]
    return ends == sorted(ends)


def test_a_keyboard_that_makes_the_page_smaller(new_phone: NewPhone) -> None:
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    field(page, "foot.calf_girth").tap()
    expect(page.locator(".tape")).to_be_visible()
    page.set_viewport_size({"width": 360, "height": 330})
    expect(page.locator(".tape")).to_be_hidden()
    expect(page.locator("#in-hand")).to_be_visible()
    comes_true(page, lambda: clear_of_each_other(page, "foot.calf_girth", 330))
    page.set_viewport_size({"width": 640, "height": 330})  # turned, it is as high as it can be
    expect(page.locator(".tape")).to_be_visible()
    page.set_viewport_size({"width": 360, "height": 640})
    expect(page.locator(".tape")).to_be_visible()


OVER = """(height) => {
  const seen = window.visualViewport;
  Object.defineProperty(seen, "height", { get: () => height, configurable: true });
  seen.dispatchEvent(new Event("resize"));
}"""


def test_a_keyboard_that_lies_over_the_page(new_phone: NewPhone) -> None:
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    fill_foot(page)
    page.locator(":focus").blur()
    step(page, "measure")
    field(page, "foot.ankle_girth").tap()
    page.evaluate(OVER, 340)
    expect(page.locator(".tape")).to_be_hidden()
    comes_true(page, lambda: clear_of_each_other(page, "foot.ankle_girth", 340))
    page.evaluate(OVER, 640)
    expect(page.locator(".tape")).to_be_visible()
    assert page.locator(".thumb").evaluate("e => e.style.bottom") == ""
