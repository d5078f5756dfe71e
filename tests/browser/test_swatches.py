"""All pieces of one yarn: they fold to words, tell the mark to set, and sock one joins them."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.axe import violations
from tests.browser.walk import error_at, field, fill_foot, opened, step


def fill_piece(page: Page, at: str, texts: dict[str, str]) -> None:
    for name, text in texts.items():
        field(page, f"{at}.{name}").fill(text)


def test_pieces_of_a_yarn_tell_the_mark_and_sock_one_joins_them(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    page.locator("#swatch-more > summary").tap()
    field(page, "fabric.swatch.mark").fill("5")
    page.locator("#swatches > summary").tap()
    page.get_by_role("button", name="Another swatch or sock").tap()
    second = "fabric.swatches.0"
    fill_piece(page, second, {"needles": "60", "flat_width": "11,6", "rounds": "60", "mark": "7"})
    field(page, f"{second}.length").fill("1")
    field(page, f"{second}.length").blur()
    expect(error_at(page, f"{second}.length")).to_contain_text("Too small")
    field(page, f"{second}.length").fill("17,8")
    expect(page.locator(".kept .words")).to_contain_text("1. Swatch at mark 7:")
    expect(page.locator("#mark-words")).to_contain_text("each whole mark makes the stitch about")
    expect(page.locator("#mark-words")).to_contain_text("somewhere from")
    use = page.locator("#use-mark")
    mark = use.inner_text().removeprefix("Knit it at mark ")
    use.tap()
    expect(field(page, "fabric.mark")).to_have_value(mark)
    expect(use).to_have_count(0)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.locator(".kept button.remove").tap()
    expect(page.locator(".kept")).to_have_count(0)
    page.get_by_role("button", name="Bring it back").tap()
    expect(field(page, f"{second}.length")).to_have_value("17,8")
    expect(page.get_by_role("button", name="Bring it back")).to_be_hidden()

    page.reload()
    expect(page.locator(".kept .words")).to_contain_text("1. Swatch at mark 7:")
    expect(field(page, f"{second}.needles")).to_be_hidden()  # folded: its words say it all
    step(page, "counts")
    page.locator("#first-sock summary").tap()
    field(page, "first_sock.foot_rounds").fill("45")
    field(page, "first_sock.length").fill("23")
    page.locator("#keep-sock").tap()
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    expect(field(page, "first_sock.length")).to_be_empty()
    step(page, "yarn")
    expect(page.locator(".kept .words").nth(1)).to_contain_text("2. Sock at mark")
    expect(page.locator("#problems li")).to_have_count(0)
    page.set_viewport_size({"width": 320, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.set_viewport_size({"width": 390, "height": 844})
    page.locator(".kept > summary").first.tap()
    assert violations(page) == []
