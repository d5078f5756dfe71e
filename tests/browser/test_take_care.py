"""The cautions: once before the first knitting, then under one mark, and in no plan's way."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, planned, target
from tests.browser.axe import violations
from tests.browser.walk import field, opened, panel, step

NEEDLES = "Latch needles pinch and stab."
CLINICIAN = "Ask a clinician first."
TIGHT = "the leg is tight"

Phones = Callable[..., BrowserContext]


def sheet(page: Page) -> None:
    """All of them are on screen."""
    care = page.get_by_role("dialog", name="Take care")
    expect(care).to_be_visible()
    expect(care.get_by_role("listitem")).to_have_count(4)
    for words in (NEEDLES, "Heel weights fall", CLINICIAN, "Wash the socks"):
        expect(care).to_contain_text(words)


def test_the_first_knitting_waits_for_them_and_no_other(new_phone: Phones) -> None:
    phone = new_phone(cared=False)
    page = opened(phone)
    planned(page)
    knit = page.get_by_role("button", name="Knit it")
    knit.tap()
    sheet(page)
    page.get_by_role("button", name="Close").tap()
    expect(knit).to_be_focused()
    expect(target(page)).to_have_count(0)
    expect(knit).to_be_enabled()
    knit.tap()
    sheet(page)
    assert violations(page) == []
    page.get_by_role("button", name="Got it, to the counter").tap()
    expect(target(page)).to_be_visible()
    page.get_by_role("button", name="Leave").tap()
    page.close()
    page = opened(phone)
    step(page, "counts")
    page.get_by_role("button", name="Knit it").tap()
    expect(page.get_by_role("heading", name="You have a pair under way")).to_be_visible()


def test_back_closes_them_and_begins_nothing(new_phone: Phones) -> None:
    page = opened(new_phone(cared=False))
    planned(page)
    page.get_by_role("button", name="Knit it").tap()
    sheet(page)
    page.go_back()
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.get_by_role("button", name="Knit it")).to_be_visible()
    expect(page.locator("#machine-line .on-machine")).to_have_count(0)


@pytest.mark.parametrize("width", [320, 360])
def test_one_mark_beside_the_counts_shows_them(phone: BrowserContext, width: int) -> None:
    page = opened(phone)
    planned(page)
    page.set_viewport_size({"width": width, "height": 640})
    expect(page.get_by_text(NEEDLES)).to_have_count(0)
    expect(page.get_by_text(CLINICIAN)).to_have_count(0)
    mark = page.get_by_role("button", name="Take care")
    box = mark.bounding_box()
    assert box
    assert min(box["width"], box["height"]) >= 44
    mark.tap()
    sheet(page)
    assert page.evaluate("document.documentElement.scrollWidth") == width
    assert violations(page) == []
    page.keyboard.press("Escape")
    expect(mark).to_be_focused()


def test_the_counter_shows_them_under_help(phone: BrowserContext) -> None:
    page = begun(phone)
    page.get_by_role("button", name="Help").tap()
    page.get_by_text("Take care").tap()
    fold = page.get_by_role("dialog").get_by_role("list").filter(has_text=NEEDLES)
    expect(fold.get_by_role("listitem")).to_have_count(4)
    assert violations(page) == []


def test_a_tight_leg_is_said_with_its_plan(phone: BrowserContext) -> None:
    page = opened(phone)
    planned(page)
    panel(page, "sock")
    expect(page.get_by_text(TIGHT)).to_have_count(0)
    step(page, "measure")
    field(page, "foot.ankle_girth").fill("30 cm")
    field(page, "foot.calf_girth").fill("45 cm")
    step(page, "counts")
    expect(page.get_by_text(TIGHT)).to_be_visible()
