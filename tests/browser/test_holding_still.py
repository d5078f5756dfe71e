"""A field that is left, by touch, by mouse or by Enter, leaves the page where it was.

On a phone with touch and on a desk with a mouse. That `enterkeyhint` "next" promises the way to the
next field: HTML Living Standard, "Input modalities: the enterkeyhint attribute".
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.browser.book import back_to_book, card, new_wearer, open_book
from tests.browser.test_looks import WIDTHS
from tests.browser.walk import error_at, field, opened, step

NewPhone = Callable[..., BrowserContext]
NEAR = (
    24  # px that the page may move: a browser brings what is left out of its edge wholly into sight
)
AFTER_ALL = (
    700  # ms: past the pause after which errors are said, and past what is scrolled smoothly
)


def device(new_phone: NewPhone, kind: str) -> Page:
    """A phone with touch, or a desk with a mouse, with the calculator up."""
    across, down = WIDTHS[kind]
    touch = kind != "desk"
    return opened(
        new_phone(viewport={"width": across, "height": down}, is_mobile=touch, has_touch=touch)
    )


def press(page: Page, kind: str, place: Locator) -> None:
    """Tap it, or click it."""
    if kind == "desk":
        place.click()
    else:
        place.tap()


def height(place: Locator) -> float:
    """How far down the screen it stands, in px."""
    box = place.bounding_box()
    assert box
    return box["y"]


def scrolled(page: Page) -> float:
    """How far the page is scrolled once all has come to rest."""
    page.wait_for_timeout(AFTER_ALL)
    found: float = page.evaluate("scrollY")
    return found


@pytest.mark.parametrize("kind", ["phone", "desk"])
@pytest.mark.parametrize("name", ["foot.ball_girth", "foot.calf_girth"])
@pytest.mark.parametrize("text", ["23", "2x3"])
def test_leaving_a_field_leaves_the_page_where_it_is(
    new_phone: NewPhone, kind: str, name: str, text: str
) -> None:
    page = device(new_phone, kind)
    field(page, "foot.length").fill("24,6")
    place = field(page, name)
    top = f"e.getBoundingClientRect().top + scrollY - {250 if kind == 'phone' else 100}"
    place.evaluate(f"e => scrollTo({{ top: {top}, behavior: 'instant' }})")
    press(page, kind, place)
    page.keyboard.type(text)
    before = scrolled(page)
    assert before > 100, "far from the top"
    box = place.bounding_box()
    assert box
    if kind == "desk":  # outside any field
        page.mouse.click(4, box["y"])
    else:
        page.touchscreen.tap(4, box["y"])
    expect(place).not_to_be_focused()
    assert abs(scrolled(page) - before) < NEAR
    expect(place).to_be_in_viewport()
    if text == "2x3":
        expect(error_at(page, name)).to_be_in_viewport()
        expect(error_at(page, name)).not_to_be_empty()


@pytest.mark.parametrize("kind", ["phone", "desk"])
def test_from_field_to_field_the_page_stays_too(new_phone: NewPhone, kind: str) -> None:
    page = device(new_phone, kind)
    field(page, "foot.length").fill("24,6")
    for name in ("foot.ball_girth", "foot.heel_girth"):
        field(page, name).scroll_into_view_if_needed()
        press(page, kind, field(page, name))
        page.keyboard.type("23")
        before = height(field(page, name))
        page.wait_for_timeout(AFTER_ALL)
        assert abs(height(field(page, name)) - before) < 1, "what appears above moves nothing"


def test_back_to_another_step_with_a_field_in_hand(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "yarn")
    slots = field(page, "cylinder.slots")
    slots.fill("60")
    field(page, "fabric.swatch.needles").tap()
    page.go_back()
    expect(page.locator("#measure")).to_be_visible()
    page.go_forward()
    expect(slots).to_be_visible()
    chip = page.locator("#chips button", has_text="72")
    chip.scroll_into_view_if_needed()
    before = scrolled(page)
    chip.tap()  # and its guesses come
    expect(slots).to_have_value("72")
    assert abs(scrolled(page) - before) < NEAR


@pytest.mark.parametrize("kind", ["phone", "desk"])
def test_enter_goes_to_the_next_field_as_its_key_says(new_phone: NewPhone, kind: str) -> None:
    page = device(new_phone, kind)
    page.locator("[name=who]:checked").focus()
    page.keyboard.press("Enter")
    for text, name in [
        ("24,6", "foot.ball_girth"),
        ("22", "foot.heel_girth"),
        ("", "foot.ankle_girth"),
        ("", "foot.calf_girth"),
    ]:
        assert page.locator(":focus").get_attribute("enterkeyhint") == "next"
        page.keyboard.type(text)
        page.keyboard.press("Enter")
        expect(field(page, name)).to_be_focused()
        expect(field(page, name)).to_be_in_viewport()
    page.keyboard.press("Enter")  # from the last field of the step to the first of the next
    expect(field(page, "cylinder.slots")).to_be_focused()
    expect(page.locator("#yarn")).to_be_visible()
    assert page.evaluate("location.search") == "", "nothing was sent"


def test_enter_in_a_list_that_stands_alone_ends_with_done(phone: BrowserContext) -> None:
    """The table's last field has none after it: its key says so, and puts the keys away."""
    page = opened(phone)
    step(page, "counts")
    expect(
        page.get_by_text("One thing to fix first")
    ).to_be_visible()  # what moves the table is there
    page.locator("#chart > summary").tap()
    expect(field(page, "chart.firmest")).to_be_visible()
    field(page, "chart.firmest").focus()
    expect(field(page, "chart.firmest")).to_have_attribute("enterkeyhint", "next")
    page.keyboard.press("Enter")
    expect(field(page, "chart.between")).to_be_focused()
    expect(field(page, "chart.between")).to_have_attribute("enterkeyhint", "done")
    page.keyboard.press("Enter")
    expect(field(page, "chart.between")).not_to_be_focused()


def test_enter_in_a_tag_and_on_a_wearers_page(phone: BrowserContext) -> None:
    """It stayed where it was, and what was typed on ran together on the printed tag."""
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Invented: Nuri", "24")
    back_to_book(page)
    card(page, "Invented: Nuri")
    page.locator("#wearer-colours").focus()
    page.keyboard.type("moss")
    page.keyboard.press("Enter")
    expect(page.locator("#wearer-allergy")).to_be_focused()
    page.locator("#wearer-tag").tap()
    page.locator("#tag-label").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#tag-fibre")).to_be_focused()
    page.keyboard.type("wool")
    expect(page.locator("#tag-label")).to_have_value("Invented: Nuri")
    expect(page.locator("#tag-fibre")).to_have_value("wool")
