"""Below the counts one panel of three, the plan passed on behind a button, settings as a sheet.

Tabs by keys and roles: ARIA Authoring Practices Guide, "Tabs", with tabs that follow the focus.
"""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import (
    choose,
    error_at,
    field,
    figures,
    fill_foot,
    opened,
    panel,
    settings_sheet,
    step,
)

PANELS = ("sock", "steps", "yarn")


def planned(phone: BrowserContext) -> Page:
    page = opened(phone)
    fill_foot(page)
    page.locator(":focus").blur()
    step(page, "counts")
    figures(page)
    return page


def only(page: Page, name: str) -> None:
    """This panel is on screen and chosen, the others are neither."""
    for one in PANELS:
        tab = page.locator(f"#tab-{one}")
        expect(tab).to_have_attribute("aria-selected", str(one == name).lower())
        expect(tab).to_have_attribute("tabindex", "0" if one == name else "-1")
        expect(page.locator(f"#panel-{one}")).to_be_visible(visible=one == name)


def test_one_of_three_by_touch_and_by_keys(phone: BrowserContext) -> None:
    page = planned(phone)
    only(page, "sock")
    for name in ("yarn", "steps", "sock"):
        panel(page, name)
        only(page, name)
    page.locator("#tab-sock").focus()
    for key, name in [("ArrowRight", "steps"), ("ArrowLeft", "sock"), ("ArrowLeft", "yarn")]:
        page.keyboard.press(key)
        only(page, name)
        expect(page.locator(f"#tab-{name}")).to_be_focused()
    page.reload()
    only(page, "yarn")


def test_on_paper_all_three(phone: BrowserContext) -> None:
    page = planned(phone)
    page.emulate_media(media="print")
    for name in PANELS:
        expect(page.locator(f"#panel-{name}")).to_be_visible()
    for left_out in (".tabs", ".thumb .tape", "#in-hand", "#so-far", "#to-share"):
        expect(page.locator(left_out)).to_be_hidden()


def test_nothing_below_while_there_is_no_plan(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "counts")
    expect(page.locator("#problems li")).to_have_count(1)
    for name in ("#panels", "#to-share", "#knit-it", "#share-place"):
        expect(page.locator(name)).to_be_hidden()


@pytest.mark.parametrize("broken", ["", "cylinder.slots"])
def test_a_way_to_what_is_wrong_in_another_panel(phone: BrowserContext, broken: str) -> None:
    """Whether there is a plan beside it or not."""
    page = planned(phone)
    panel(page, "yarn", "#stock > summary")
    field(page, "stock.left").fill("far")
    field(page, "stock.left").blur()
    expect(error_at(page, "stock.left")).not_to_be_empty()
    panel(page, "sock")
    if broken:
        step(page, "yarn")
        field(page, broken).fill("61")
        step(page, "counts")
        way = page.locator("#problems li", has_text="far").get_by_role("button")
        way.tap()
        expect(field(page, "stock.left")).to_be_focused()
    else:
        panel(page, "yarn")
    expect(field(page, "stock.left")).to_be_visible()
    expect(error_at(page, "stock.left")).to_be_visible()


def test_settings_are_a_sheet_that_back_closes(phone: BrowserContext) -> None:
    page = planned(phone)
    settings_sheet(page)
    choose(page, "dark")
    expect(page.locator("html")).to_have_attribute("data-theme", "dark")
    page.go_back()
    expect(page.locator("#settings")).to_be_hidden()
    expect(page.locator("#counts")).to_be_visible()
    settings_sheet(page)
    page.locator("#close-settings").tap()
    expect(page.locator("#settings")).to_be_hidden()
    expect(page.locator("#to-settings")).to_be_focused()


def test_a_sock_stands_there_before_anything_is_told(phone: BrowserContext) -> None:
    """In the page itself, with its range; each thing that is told inks a part of it."""
    phone.route("**/main-*.js", lambda route: route.abort())
    page = phone.new_page()
    page.goto("./")
    expect(page.locator("#so-far svg .part-foot")).to_be_visible()
    at_once = page.locator("#so-far .figure").inner_text()
    phone.unroute("**/main-*.js")
    page.close()
    page = opened(phone)
    expect(page.locator("#so-far .figure")).to_have_text(at_once)
    dashed = "getComputedStyle(document.querySelector('#so-far .part-foot')).strokeDasharray"
    assert page.evaluate(dashed) != "none"
    field(page, "foot.length").fill("24,6")
    expect(page.locator("#so-far")).to_have_attribute("data-told", "foot")
    expect(page.locator("#so-far .figure")).not_to_have_text(at_once)
    assert page.evaluate(dashed) == "none"
    fill_foot(page)
    expect(page.locator("#so-far")).to_have_attribute("data-told", "foot cylinder fabric")
    rounds = page.locator("#so-far .figure").inner_text()
    page.locator(":focus").blur()
    step(page, "counts")
    assert figures(page)["Foot"] == rounds
    expect(page.locator("#so-far")).to_be_hidden()
