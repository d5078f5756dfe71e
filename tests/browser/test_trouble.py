"""When it goes wrong: what to do at the machine, offline, and the counter that goes along."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, done, go_to, settings, title

TROUBLES = (
    "A dropped stitch",
    "A heel or toe gone wrong",
    "A broken needle",
    "A hem that slipped",
    "Not sure of the count",
)


def helped(page: Page) -> None:
    page.locator(".at-controls").get_by_role("button", name="Help").tap()
    expect(page.locator(".machine-sheet")).to_be_visible()


def test_each_trouble_is_drawn_and_told_in_a_few_short_steps(
    phone: BrowserContext, screens: Path
) -> None:
    page = begun(phone)
    asked = list[str]()
    page.on("request", lambda request: asked.append(request.url))
    page.set_viewport_size({"width": 360, "height": 640})
    page.screenshot(path=screens / "machine-help-button.png")
    helped(page)
    folds = page.locator(".wrong")
    *troubles, cautions = folds.all()
    assert tuple(one.locator("summary").inner_text() for one in troubles) == TROUBLES
    expect(cautions.locator("summary")).to_have_text("Take care")
    for fold in troubles:
        fold.locator("summary").tap()
        expect(fold.locator("svg")).to_be_visible()
        steps = fold.locator("li").all_inner_texts()
        assert 3 <= len(steps) <= 4
        assert all(len(part.split()) <= 20 for step in steps for part in step.split(". "))
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.screenshot(path=screens / "machine-help.png")
    assert asked == [], "the network is not needed for it"


@pytest.mark.parametrize("part", ["Heel", "Toe"])
def test_a_spoilt_heel_or_toe_is_begun_again_and_taken_back(
    phone: BrowserContext, part: str
) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, part, 12)
    helped(page)
    page.locator(".wrong summary", has_text="heel or toe").tap()
    page.locator("#begin-again").tap()
    expect(page.locator(".machine-sheet")).to_be_hidden()
    expect(title(page)).to_contain_text(part)
    expect(page.locator(".at-machine")).to_have_attribute("data-look", "do")
    expect(page.locator(".to-tick")).to_contain_text("Stop with the yarn carrier")
    page.locator(".take-back").press("Enter")
    page.get_by_role("button", name="Take it back").tap()
    expect(done(page)).to_contain_text("Row 13 of 40")


def test_elsewhere_no_heel_is_begun_again_and_the_count_is_set_by_its_own_sheet(
    phone: BrowserContext,
) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Leg", 17)
    helped(page)
    expect(page.locator("#begin-again")).to_have_count(0)
    page.locator(".wrong summary", has_text="Not sure").tap()
    page.get_by_role("button", name="Set the count").and_(page.locator(":visible")).tap()
    field = page.locator("#places-done")
    expect(field).to_have_value("17")
    field.fill("19")
    page.locator("#places-ask").tap()
    page.locator("#places-go").tap()
    expect(done(page)).to_contain_text("19 of 48")
