"""The first visit is in the units of the browser's region; what was chosen or kept goes before."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, error_at, field, fill_foot, more, opened, panel, step

NewPhone = Callable[..., BrowserContext]


def in_inches(page: Page) -> bool:
    """Both the choice and the units beside the fields say so."""
    chosen = page.locator("[name=units]:checked").get_attribute("value")
    shown = page.locator("#foot-length-unit").inner_text()
    assert chosen == shown
    return chosen == "in"


@pytest.mark.parametrize(
    ("locale", "inches"),
    [("en-US", True), ("es-US", True), ("es-PR", True), ("en-GB", False), ("de-DE", False),
     ("en-CA", False), ("fr", False)],
)  # fmt: skip
def test_the_region_chooses_on_the_first_visit(
    new_phone: NewPhone, locale: str, inches: bool
) -> None:
    """Unicode CLDR, measurement systems: inches in the US, Liberia and Myanmar."""
    assert in_inches(opened(new_phone(locale=locale))) == inches


def test_what_was_chosen_or_kept_goes_before(new_phone: NewPhone) -> None:
    page = opened(new_phone(locale="en-US"))
    choose(page, "centimeters")
    field(page, "foot.length").fill("24.6")
    expect(page.locator("#foot-length-other")).to_have_text("24.6 cm · 9 5/8 in")
    page.reload()
    expect(field(page, "foot.length")).to_have_value("24.6")
    assert not in_inches(page)


def test_beside_inches_a_bare_weight_is_grams(new_phone: NewPhone) -> None:
    page = opened(new_phone(locale="en-US"))
    choose(page, "centimeters")
    fill_foot(page)
    step(page, "measure")
    choose(page, "inches")
    step(page, "counts")
    panel(page, "yarn", "#stock > summary")
    expect(page.locator("#stock-left-unit")).to_have_text("g", use_inner_text=True)
    field(page, "stock.left").fill("27")
    expect(page.locator("#stock-left-other")).to_have_text("27 g · 0.95 oz")  # 27 / 28.35
    expect(page.locator(".verdict")).to_contain_text("27 g is left")
    page.reload()
    expect(page.locator(".verdict")).to_contain_text("27 g is left")
    panel(page, "yarn")
    field(page, "stock.left").fill("1 oz")
    expect(page.locator("#stock-left-other")).to_have_text("1 oz · 28 g")


def test_what_may_be_misread_is_asked_and_mended_by_a_tap(
    new_phone: NewPhone, screens: Path
) -> None:
    page = opened(new_phone(locale="en-US", viewport={"width": 360, "height": 640}))
    field(page, "foot.length").fill("93/8")
    field(page, "foot.length").blur()
    expect(error_at(page, "foot.length")).to_contain_text("is not clear. Did you mean")
    expect(field(page, "foot.length")).to_have_value("93/8")
    page.screenshot(path=screens / "asked-360.png")
    error_at(page, "foot.length").get_by_role("button", name="9 3/8", exact=True).tap()
    expect(field(page, "foot.length")).to_have_value("9 3/8")
    expect(error_at(page, "foot.length")).to_be_empty()
    expect(page.locator("#foot-length-other")).to_have_text("9 3/8 in · 23.8 cm")
    choose(page, "centimeters")
    field(page, "foot.heel_girth").fill("13 1/4")
    field(page, "foot.heel_girth").blur()
    expect(error_at(page, "foot.heel_girth")).to_contain_text("13 1/4 in or 13 1/4 cm?")
    more(page, "#toes-more > summary")
    field(page, "foot.instep_girth").fill("9 3/4 in")
    expect(page.locator("#foot-instep_girth-other")).to_have_text("9 3/4 in · 24.8 cm")
    field(page, "foot.instep_girth").scroll_into_view_if_needed()
    page.screenshot(path=screens / "instep-360.png")


def test_half_a_band_is_asked_for_its_weight(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "yarn")
    field(page, "fabric.yarn").fill("437 yd")
    field(page, "fabric.yarn").blur()
    expect(error_at(page, "fabric.yarn")).to_contain_text("How much does that length")
    error_at(page, "fabric.yarn").get_by_role("button", name="437 yd / 100 g").tap()
    expect(error_at(page, "fabric.yarn")).to_be_empty()
