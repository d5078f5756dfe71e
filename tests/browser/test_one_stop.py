"""What is done at one stop of the crank: a list to tick, and one tap when all of it is done."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, done, go_to, settings, target, title
from tests.browser.axe import violations
from tests.browser.walk import behind, field, fill_sock, opened, step


def at_the_heel(phone: BrowserContext) -> Page:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Heel", 0)
    page.set_viewport_size({"width": 360, "height": 640})
    return page


def test_five_things_before_a_heel_are_one_stop(phone: BrowserContext, screens: Path) -> None:
    page = at_the_heel(phone)
    boxes = page.locator(".to-tick input")
    expect(boxes).to_have_count(5)
    expect(page.locator(".to-tick label").first).to_contain_text("Stop with the yarn carrier")
    page.locator(".to-tick label").nth(1).tap()
    expect(boxes.nth(1)).to_be_checked()
    expect(title(page)).to_contain_text("Heel")
    assert page.evaluate("scrollY") == 0
    page.screenshot(path=screens / "machine-ticks.png")
    # A pedal counts at once, though a thing was ticked by hand.
    expect(target(page)).to_be_focused()
    page.keyboard.press("PageDown")
    expect(done(page)).to_contain_text("Row 1 of 40")
    expect(boxes).to_have_count(0)


def test_what_is_ticked_stays_ticked_when_the_page_is_loaded_anew(phone: BrowserContext) -> None:
    page = at_the_heel(phone)
    things = page.get_by_role("checkbox")
    things.nth(1).check()
    things.nth(2).check()
    things.nth(2).uncheck()
    page.reload()
    expect(things).to_have_count(5)
    expect(things.nth(1)).to_be_checked()
    for other in (0, 2, 3, 4):
        expect(things.nth(other)).not_to_be_checked()


def test_a_box_is_ticked_by_its_key_and_a_pedal_goes_on(phone: BrowserContext) -> None:
    page = at_the_heel(phone)
    box = page.locator(".to-tick input").first
    box.focus()
    page.keyboard.press("Space")
    expect(box).to_be_checked()
    page.keyboard.press("PageDown")
    expect(done(page)).to_contain_text("Row 1 of 40")


@pytest.mark.parametrize(("width", "height"), [(360, 640), (320, 568), (640, 360)])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_all_of_the_list_and_the_target_are_in_reach(
    phone: BrowserContext, screens: Path, width: int, height: int, scheme: str
) -> None:
    page = at_the_heel(phone)
    page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
    page.set_viewport_size({"width": width, "height": height})
    for label in page.locator(".to-tick label").all():
        box = label.bounding_box()
        assert box
        assert box["height"] >= 44
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= width
    target(page).scroll_into_view_if_needed()
    whole = target(page).bounding_box()
    assert whole
    assert whole["height"] >= 88
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.screenshot(path=screens / f"machine-ticks-{width}-{scheme}.png")
    assert violations(page) == []


def test_a_machine_without_a_spring_is_asked_once(phone: BrowserContext, screens: Path) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.set_viewport_size({"width": 360, "height": 640})
    for name in ("spring", "thread"):
        field(page, f"cylinder.{name}").and_(page.locator("[value=no]")).locator("..").tap()
    field(page, "cylinder.weights").and_(page.locator("[value=claws]")).locator("..").tap()
    page.screenshot(path=screens / "machine-has.png")
    step(page, "counts")
    page.locator("#knit-it").tap()
    go_to(page, "Heel", 0)
    listed = page.locator(".to-tick")
    expect(listed.locator("label")).to_have_count(4)
    expect(listed).to_contain_text("Take up the slack by hand at each turn.")
    expect(listed).not_to_contain_text("spring")
    expect(listed).to_contain_text("Hang a claw between the 2nd and 3rd needle from each side.")
    page.reload()
    page.locator(".leave").tap()
    behind(page, "made")
    expect(field(page, "cylinder.spring").and_(page.locator("[value=no]"))).to_be_checked()
    expect(field(page, "cylinder.weights").and_(page.locator("[value=claws]"))).to_be_checked()
