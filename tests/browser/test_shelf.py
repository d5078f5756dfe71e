"""The shelf on a phone: filled, ranked, taken into the plan and put back, kept beside it."""

from pathlib import Path

from playwright.sync_api import BrowserContext, expect

from tests.browser.at_machine import begun, go_to, knit, settings
from tests.browser.axe import violations
from tests.browser.book import new_wearer, open_book
from tests.browser.walk import behind, error_at, field, fill_foot, leave, more, opened, panel, step

YARN = "shelf.yarns.0"


def test_a_shelf_from_filling_to_undoing(phone: BrowserContext, screens: Path) -> None:
    page = opened(phone)
    fill_foot(page)
    behind(page, "shelf")
    expect(page.locator("#shelf-place")).to_contain_text("to see the ranking")
    field(page, "shelf.cylinders").fill("54, 61")
    field(page, f"{YARN}.name").fill("the grey one")
    field(page, f"{YARN}.left").fill("80")
    expect(error_at(page, "shelf.cylinders")).to_contain_text("61 is odd")
    field(page, "shelf.cylinders").fill("54 60, 72")
    field(page, f"{YARN}.marks.0.stitches").fill("29.5")
    field(page, f"{YARN}.marks.0.rounds").fill("38")
    field(page, f"{YARN}.marks.0.mark").fill("5")
    page.locator("#shelf .add").tap()
    field(page, "shelf.yarns.1.yarn").fill("412 m / 100 g")
    expect(page.locator(".shelf > li")).to_have_count(6)
    expect(error_at(page, "shelf.cylinders")).to_be_empty()
    first = page.locator(".shelf > li").first
    expect(first.locator("h4")).to_have_text("60 slots, the grey one, mark 5")
    expect(first.locator(".verdict")).to_contain_text("fits well")
    expect(page.locator("#shelf-place")).to_contain_text("swatch first")
    for width, height in ((390, 844), (320, 640)):
        page.set_viewport_size({"width": width, "height": height})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.screenshot(path=screens / f"shelf-{width}.png", full_page=True)
    assert violations(page) == []
    small = page.locator("#shelf button:visible").evaluate_all(
        "all => all.filter((one) => one.getBoundingClientRect().height < 47.5).length"
    )
    assert small == 0

    leave(page)
    field(page, "cylinder.slots").fill("72")
    behind(page, "made")
    two_each = page.locator("label", has=field(page, "sock.heel.kind"), has_text="two each")
    two_each.tap()
    field(page, "sock.heel.left").fill("12")
    leave(page)
    behind(page, "shelf")
    first.locator(".take").tap()
    expect(two_each.locator("input")).to_be_checked()
    expect(field(page, "sock.heel.left")).to_have_value("")
    expect(field(page, "cylinder.slots")).to_have_value("60")
    expect(field(page, "fabric.stitches")).to_have_value("29.5")
    expect(field(page, "foot.length")).to_have_value("23,8")
    page.locator("#shelf-back").tap()
    expect(field(page, "cylinder.slots")).to_have_value("72")
    leave(page)
    expect(field(page, "fabric.swatch.needles")).to_be_visible()
    expect(field(page, "fabric.swatch.needles")).to_have_value("60")

    behind(page, "shelf")
    first.locator(".take").tap()
    step(page, "counts")
    expect(page.locator("#counts-place")).to_contain_text("Foot")
    expect(page.locator("#shelf")).to_be_hidden()
    expect(field(page, "stock.left")).to_have_value("80 g")  # it is not asked twice
    panel(page, "yarn")
    expect(page.locator("#enough-place")).to_contain_text("80 g")
    assert "grey" not in page.evaluate("localStorage.getItem('heelwise.mine')")
    page.reload()
    step(page, "yarn")
    behind(page, "shelf")
    expect(field(page, f"{YARN}.name")).to_have_value("the grey one")
    expect(page.locator(".shelf > li")).to_have_count(6)

    first.locator(".take").tap()
    expect(page.locator("#shelf-undo")).to_contain_text("In the plan now")
    open_book(page)
    new_wearer(page, "Nobody yet", "24")
    more(page, "#feet > summary")
    page.locator("#measure summary", has_text="The other foot").first.tap()
    field(page, "other_foot.length").fill("24.7")
    behind(page, "shelf")
    expect(page.locator("#shelf-undo")).to_be_empty()
    expect(page.locator("#shelf-place > .note")).to_contain_text(
        "Foot length, other foot. The pair"
    )


def test_what_a_sock_took_goes_off_the_shelf_where_she_wants_it(
    phone: BrowserContext, screens: Path
) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    page.go_back()
    step(page, "yarn")
    behind(page, "shelf")
    field(page, f"{YARN}.name").fill("the grey one")
    field(page, f"{YARN}.colour").fill("grey")
    left = field(page, f"{YARN}.left")
    left.fill("100")
    page.locator(".on-machine .go-on").tap()
    go_to(page, "Off the machine")
    knit(page)
    page.locator("#off-the-shelf").tap()
    expect(page.locator(".machine-sheet")).to_contain_text("the grey one, grey")
    expect(page.locator(".machine-sheet small")).to_have_text("100 g now, 70 g after")
    page.screenshot(path=screens / "off-the-shelf.png")
    page.locator("#take-yarn").tap()
    expect(page.locator(".at-end")).to_contain_text("g of the grey one, grey is off the shelf")
    expect(page.locator("#off-the-shelf")).to_have_count(0)
    page.screenshot(path=screens / "off-the-shelf-taken.png")
    expect(left).to_have_value("70 g")
    page.locator("#put-yarn-back").tap()
    expect(left).to_have_value("100 g")
    page.locator("#off-the-shelf").tap()
    page.locator("#take-yarn").tap()
    expect(page.locator(".at-end")).to_contain_text("is off the shelf")  # so it is on the disk
    page.reload()
    expect(page.locator(".at-end")).to_contain_text("is off the shelf")
    kept = page.evaluate("localStorage['heelwise.shelf']")
    assert '"shelf.yarns.0.left":"70 g"' in kept
