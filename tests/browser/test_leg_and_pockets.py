"""A long leg shaped to its girths, another heel at one tap, and toes measured across."""

from pathlib import Path

from playwright.sync_api import BrowserContext, expect

from tests.browser.at_machine import go_to, settings, target
from tests.browser.axe import violations
from tests.browser.walk import behind, choose, field, figures, fill_foot, more, opened, panel, step


def test_a_long_leg_and_another_heel(phone: BrowserContext, screens: Path) -> None:
    page = opened(phone)
    fill_foot(page)
    behind(page, "made")
    page.locator("#long-leg > summary").tap()
    field(page, "sock.leg.height").fill("33")
    expect(page.locator("#sock-leg-height-other")).to_have_text("33 cm · 13 in")  # 12.99 in
    for at, (height, girth) in enumerate((("14", "21,5"), ("30", "34"))):
        page.get_by_role("button", name="Add a girth of the leg").tap()
        field(page, f"sock.leg.girths.{at}.height").fill(height)
        field(page, f"sock.leg.girths.{at}.girth").fill(girth)
    page.locator("#long-leg").screenshot(path=screens / "long_leg.png")
    step(page, "counts")
    expect(page.locator(".tally-leg .detail")).to_contain_text("bands")
    expect(page.locator(".fits")).to_contain_text("Cuff.")
    panel(page, "steps")
    leg = page.locator("#steps-place details", has_text="Leg").first
    leg.locator("summary").tap()
    expect(leg).to_contain_text("Set the tension for a smaller stitch")

    before = figures(page)
    panel(page, "sock", "#pockets > summary")
    page.get_by_role("button", name="Use this heel: 12 left").tap()
    expect(page.locator(".tally-heel .figure")).to_have_text("30→12→30")
    assert int(figures(page)["Foot"]) == int(before["Foot"]) + 2  # 2 rows fewer in the heel's half
    page.locator("#pockets-place").screenshot(path=screens / "pockets.png")
    page.locator("#undo-heel").tap()
    expect(page.locator(".tally-heel .figure")).to_have_text(before["Heel"])

    page.set_viewport_size({"width": 320, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.screenshot(path=screens / "leg_counts_320.png", full_page=True)
    assert violations(page) == []
    step(page, "measure")
    more(page, "#toes-more > summary")
    field(page, "foot.toe_breadth").fill("8")
    step(page, "counts")
    expect(page.locator("#pockets-place")).to_contain_text("left, 19 times in 20")

    step(page, "yarn")
    page.locator("#swatch-more > summary").tap()
    field(page, "fabric.swatch.mark").fill("7")
    page.locator("#swatches > summary").tap()
    page.locator("#swatches button.add").tap()
    # A tighter one: 60 needles lie 8.2 cm wide, where the first is about 10.
    tighter = {"needles": "60", "flat_width": "8,2", "rounds": "60", "length": "12,6", "mark": "4"}
    for name, text in tighter.items():
        field(page, f"fabric.swatches.0.{name}").fill(text)
    step(page, "counts")
    expect(page.locator(".tally-leg .detail")).to_contain_text("at marks")
    set_to = leg.get_by_text("Set the tension mark to")
    expect(set_to.last).to_have_text("Set the tension mark to 7.")  # back before the heel
    page.set_viewport_size({"width": 390, "height": 844})
    page.locator(".tally-leg").screenshot(path=screens / "leg_marks_count.png")
    panel(page, "steps")
    if set_to.last.is_hidden():
        leg.locator("summary").tap()
    leg.screenshot(path=screens / "leg_marks.png")

    page.reload()
    expect(field(page, "sock.leg.girths.1.girth")).to_have_value("34")
    step(page, "measure")
    choose(page, "inches")
    expect(field(page, "sock.leg.girths.1.girth")).to_have_value("34 cm")


def test_a_loose_ankle_is_tightened_at_one_tap_and_back(
    phone: BrowserContext, screens: Path
) -> None:
    """60 needles at 7.5 an inch are 203 mm about; an ankle of 200 mm lies loose in them."""
    settings(phone, guard=0)
    page = opened(phone)
    page.set_viewport_size({"width": 360, "height": 640})
    fill_foot(page)
    step(page, "measure")
    if not field(page, "foot.ankle_girth").is_visible():
        more(page)
    field(page, "foot.ankle_girth").fill("20")
    step(page, "counts")
    gist = page.locator(".fit-gist")
    expect(gist).to_contain_text("Ankle: loose.")
    rounds = int(figures(page)["Leg"])
    page.locator("#other-leg").scroll_into_view_if_needed()
    page.screenshot(path=screens / "loose_ankle_360.png")
    page.locator("#other-leg").tap()
    expect(gist).not_to_contain_text("Ankle")
    expect(page.locator(".tally-leg .detail")).to_contain_text("bands")
    assert int(figures(page)["Leg"]) > rounds, "a smaller stitch takes more rounds"
    page.screenshot(path=screens / "tight_ankle_360.png")
    page.locator("#other-leg").tap()
    expect(gist).to_contain_text("Ankle: loose.")
    expect(page.locator(".tally-leg .figure")).to_have_text(str(rounds))

    page.locator("#other-leg").tap()
    expect(gist).not_to_contain_text("Ankle")
    page.locator("#knit-it").tap()
    go_to(page, "Leg", 0)
    turned = 0
    while page.locator(".section-name").inner_text() == "Leg":
        if target(page).locator(".by-hand").count():
            expect(target(page)).to_contain_text("Set the tension for a")
            turned += 1
        before = target(page).inner_text()
        target(page).tap()
        expect(target(page)).not_to_have_text(before, use_inner_text=True)
    assert turned >= 3, "the counter stops for each turn, and for the last before the heel"
