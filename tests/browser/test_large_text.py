"""A phone of 320 × 568 with text half as large again (24 px for 16): WCAG 2.2, 1.4.4 and 1.4.10."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import BrowserContext, expect

from tests.browser.at_machine import go_to, planned, settings, target
from tests.browser.walk import opened, settings_sheet

NewPhone = Callable[..., BrowserContext]


def test_colours_stay_words_and_the_last_five_are_in_sight(new_phone: NewPhone) -> None:
    phone = new_phone(viewport={"width": 320, "height": 568})
    settings(phone, guard=0)
    page = opened(phone)
    session = phone.new_cdp_session(page)
    session.send("Page.setFontSizes", {"fontSizes": {"standard": 24, "fixed": 20}})
    settings_sheet(page)
    for words in page.locator("#theme label span").all():
        size = words.evaluate("e => [e.getClientRects().length, e.innerText.split(' ').length]")
        assert size[0] <= size[1], "no word is broken"
        lines = words.evaluate("e => e.offsetHeight / parseFloat(getComputedStyle(e).lineHeight)")
        assert lines < size[1] + 0.5
    page.locator("#close-settings").tap()
    planned(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    go_to(page, "Foot", 41)
    expect(page.locator(".last-few")).to_be_in_viewport(ratio=1)
