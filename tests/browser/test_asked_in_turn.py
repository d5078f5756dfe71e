"""What is missing is said once it was reached or asked for, not of a field still to come."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, error_at, field, figures, opened, panel, step

SETTLED = 700  # ms: an error comes a quarter of a second after a field is left


def asked(phone: BrowserContext) -> Page:
    """Counts were asked for before anything of the swatch was typed."""
    page = opened(phone)
    field(page, "foot.length").fill("24,6")
    step(page, "counts")
    figures(page)
    step(page, "yarn")
    page.get_by_role("button", name="60", exact=True).tap()
    field(page, "fabric.swatch.rounds").fill("60")
    page.wait_for_timeout(SETTLED)
    expect(error_at(page, "fabric.swatch.length")).to_be_empty()
    return page


def test_a_field_that_is_still_to_come_is_not_scolded(phone: BrowserContext) -> None:
    page = asked(phone)
    page.keyboard.press("Tab")
    expect(field(page, "fabric.swatch.length")).to_be_focused()
    page.wait_for_timeout(SETTLED)
    expect(error_at(page, "fabric.swatch.length")).to_be_empty()
    page.keyboard.press("Tab")
    expect(field(page, "fabric.swatch.needles")).to_be_focused()
    expect(error_at(page, "fabric.swatch.length")).not_to_be_empty()
    page.keyboard.type("60")
    page.wait_for_timeout(SETTLED)
    expect(error_at(page, "fabric.swatch.flat_width")).to_be_empty()


def test_with_the_group_left_it_is_said(phone: BrowserContext) -> None:
    page = asked(phone)
    field(page, "cylinder.slots").tap()
    expect(error_at(page, "fabric.swatch.length")).not_to_be_empty()


def test_asked_for_counts_it_is_said(phone: BrowserContext) -> None:
    page = asked(phone)
    step(page, "counts")
    step(page, "yarn")
    expect(error_at(page, "fabric.swatch.length")).not_to_be_empty()


def yarn_of(page: Page) -> str:
    """The yarn that the pair takes."""
    step(page, "counts")
    figures(page)
    panel(page, "yarn")
    words = page.locator("#need-place .need").inner_text()
    step(page, "yarn")
    return words


def test_a_band_is_a_length_and_a_weight_or_all_that_it_says(phone: BrowserContext) -> None:
    page = opened(phone)
    field(page, "foot.length").fill("24,6")
    step(page, "yarn")
    page.get_by_role("button", name="60", exact=True).tap()
    choose(page, "Stitches and rounds")
    field(page, "fabric.stitches").fill("30")
    field(page, "fabric.rounds").fill("38")
    band = page.get_by_role("group", name="What the yarn’s band says")
    length = band.get_by_role("textbox", name="Length")
    weight = band.get_by_role("textbox", name="Weight")
    whole = []
    for first, second in (
        ("420", "100"), ("420 m", "100 g"), ("459.3 yd", "3.527 oz"),
        ("420 m = 100 g, 75 % wool", ""), ("420 m / 100 g", "50"),
    ):  # fmt: skip
        length.fill(first)
        weight.fill(second)
        whole.append(yarn_of(page))
        expect(error_at(page, "fabric.yarn")).to_be_empty()
    assert len(set(whole)) == 1, whole
    weight.fill("50")
    length.fill("420")
    assert yarn_of(page) != whole[0], "half as long a yarn of that weight"
    page.reload()
    expect(length).to_have_value("420")
    expect(weight).to_have_value("50")
