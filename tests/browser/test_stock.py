"""The yarn at hand, on a phone: what is left, colours and balls, stripes, in both systems."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import BrowserContext, expect

from tests.browser.axe import violations
from tests.browser.walk import choose, error_at, field, fill_foot, opened, panel, step


def test_what_is_left_is_weighed_and_told(
    new_phone: Callable[..., BrowserContext], screens: Path
) -> None:
    page = opened(new_phone(viewport={"width": 320, "height": 844}))
    fill_foot(page)
    step(page, "counts")
    panel(page, "yarn", "#stock > summary")
    field(page, "stock.left").fill("80")
    verdict = page.locator(".verdict")
    expect(verdict).to_contain_text("Yes: 80 g is left")
    expect(page.locator("#stock-left-other")).to_have_text("80 g · 2.82 oz")  # 80 / 28.35
    field(page, "stock.left").fill("20")
    field(page, "stock.sock_one").fill("33")
    expect(verdict).to_contain_text("No: 20 g is left, and sock two takes about 33 g")
    expect(page.locator(".bars svg")).to_have_count(2)

    page.locator("#stock-colours > summary").tap()
    field(page, "stock.apart").select_option("heel, toe")
    field(page, "stock.ball").fill("50")
    expect(page.locator(".colours li")).to_have_count(2)
    expect(page.locator(".colours li").last).to_contain_text("1 ball")
    page.locator("#stock-stripes > summary").tap()
    field(page, "stock.repeat").fill("12")
    expect(page.locator("#stripes-place")).to_contain_text("rounds of plain tube")
    wide = "document.documentElement.scrollWidth"
    assert page.evaluate(wide) == page.evaluate("document.documentElement.clientWidth")
    assert violations(page) == []
    page.locator("#stock").screenshot(path=screens / "stock-320.png")

    foot = page.locator(".tally-foot .figure").inner_text()
    field(page, "stock.left").fill("20 cm")
    field(page, "stock.left").blur()
    expect(error_at(page, "stock.left")).to_contain_text("not a unit of weight")
    assert page.locator(".tally-foot .figure").inner_text() == foot
    field(page, "stock.left").fill("40")
    step(page, "measure")
    choose(page, "inches")
    step(page, "counts")
    expect(field(page, "stock.left")).to_have_value("40 g")
    expect(page.locator("#stock-left-other")).to_have_text("40 g · 1.41 oz")  # 40 / 28.35
    expect(page.locator(".verdict").first).to_contain_text("40 g of main yarn is left")
    page.reload()
    expect(page.locator(".verdict").first).to_contain_text("40 g of main yarn is left")
    expect(field(page, "stock.apart")).to_have_value("heel, toe")
