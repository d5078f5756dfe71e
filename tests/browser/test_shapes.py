"""Wide, low and small screens, more contrast, and less motion.

What is asked of the page: Media Queries Level 5, "prefers-contrast", "prefers-reduced-motion".
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, FloatRect, Locator, Page, expect

from tests.browser.walk import field, fill_foot, opened, step

NewPhone = Callable[..., BrowserContext]
FIRST = {"measure": "foot.length", "yarn": "cylinder.slots"}


def box(place: Locator) -> FloatRect:
    found = place.bounding_box()
    assert found
    return found


def test_wide_the_sock_and_all_counts_stand_right(new_phone: NewPhone) -> None:
    page = opened(new_phone(viewport={"width": 1280, "height": 800}))
    fill_foot(page)
    for name in ("measure", "yarn"):
        step(page, name)
        told, sock = box(page.locator(f"#{name}")), box(page.locator("#so-far figure"))
        assert told["x"] + told["width"] <= sock["x"]
        expect(page.locator("#so-parts")).to_contain_text("30→10→30")
        expect(page.locator("#so-parts")).to_be_in_viewport()


@pytest.mark.parametrize("name", FIRST)
def test_low_a_field_is_in_sight_beside_a_notice(new_phone: NewPhone, name: str) -> None:
    page = opened(new_phone(viewport={"width": 844, "height": 390}))
    page.locator("#load-demo").tap()
    expect(page.locator("#visit-line")).to_contain_text("Coxswain")
    step(page, name)
    expect(field(page, FIRST[name])).to_be_in_viewport(ratio=1)
    rail = box(page.locator(".tape"))
    assert rail["height"] == 390
    assert rail["width"] < 844 / 6
    assert box(page.locator(f"#{name}"))["x"] > rail["width"]


def edge(page: Page) -> str:
    color: str = page.evaluate(
        "getComputedStyle(document.querySelector('.measures .field')).borderTopColor"
    )
    return color


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_with_more_contrast_edges_are_ink(new_phone: NewPhone, scheme: str) -> None:
    page = opened(new_phone(color_scheme=scheme))
    ink = page.evaluate("getComputedStyle(document.documentElement).color")
    assert edge(page) != ink
    page.emulate_media(contrast="more")
    assert edge(page) == ink
