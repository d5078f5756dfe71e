"""Each screen by itself: Back closes what lies over it, its title is its own, the focus comes back.

Outside measures: WCAG 2.2, 2.4.2 (a title for each page), 2.4.3 (order of focus), 3.2.3 (Back does
what it does everywhere); HTML Living Standard, "Session history and navigation".
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, done, go_to, planned, settings, target
from tests.browser.book import back_to_book, card, new_wearer, open_book
from tests.browser.walk import figures, fill_foot, opened, share, step

NewPhone = Callable[..., BrowserContext]


def counts(phone: BrowserContext) -> Page:
    """Step three with counts, come to from step two."""
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    figures(page)
    return page


@pytest.mark.parametrize(
    ("opener", "dialog", "close"),
    [
        ("#show-code", "#code", "#code button"),
        ("#write-tag", "#tag-sheet", "#close-tag"),
    ],
)
def test_back_closes_the_dialog_alone(
    new_phone: NewPhone, opener: str, dialog: str, close: str
) -> None:
    page = counts(new_phone(reduced_motion="reduce"))  # nothing is still on its way
    share(page)
    for way in ("back", "button", "escape"):
        page.locator(opener).focus()
        page.keyboard.press("Enter")
        expect(page.locator(dialog)).to_be_visible()
        before = page.evaluate("scrollY")
        if way == "back":
            page.go_back()
        elif way == "button":
            page.locator(close).tap()
        else:
            page.keyboard.press("Escape")
        expect(page.locator(dialog)).to_be_hidden()
        expect(page.locator("#counts")).to_be_visible()
        expect(page.locator(opener)).to_be_focused()
        page.wait_for_timeout(300)
        expect(page.locator(opener)).to_be_focused()
        assert page.evaluate("scrollY") == before > 100
    page.go_forward()  # the dialog of before is no more: nothing comes of it
    page.wait_for_timeout(300)
    expect(page.locator("#counts")).to_be_visible()
    expect(page.locator(dialog)).to_be_hidden()
    page.go_back()
    expect(page.locator("#yarn")).to_be_visible()  # one Back, one step: no entry was left over


def test_a_page_loaded_anew_under_a_dialog(phone: BrowserContext) -> None:
    page = counts(phone)
    share(page, "#show-code")
    expect(page.locator("#code")).to_be_visible()
    page.reload()
    expect(page.locator("#counts")).to_be_visible()
    expect(page.locator("#code")).to_be_hidden()
    figures(page)
    page.go_back()
    expect(page.locator("#yarn")).to_be_visible()


def test_back_over_the_counter(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 10)
    for button in ("Go to…", "Note", "Settings"):
        page.get_by_role("button", name=button).tap()
        expect(page.locator(".machine-sheet[open]")).to_be_visible()
        page.go_back()
        expect(page.locator(".machine-sheet[open]")).to_have_count(0)
        expect(target(page)).to_be_visible()
    page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("11 of 46 done")
    page.go_back()
    expect(page.locator("#counts")).to_be_visible()


def test_a_question_before_a_pair_and_the_way_on(new_phone: NewPhone) -> None:
    """The answer leads to the counter at once, while the question's entry is on its way out."""
    page = begun(new_phone())
    page.go_back()
    page.locator("#knit-it").tap()
    expect(page.locator("#begin-new")).to_be_visible()
    page.go_back()
    expect(page.locator("#begin-new")).to_be_hidden()
    expect(page.locator("#counts")).to_be_visible()
    for answer in ("#go-on-instead", "#begin-new"):
        page.locator("#knit-it").tap()
        page.locator(answer).tap()
        expect(target(page)).to_be_visible()
        page.go_back()
        expect(page.locator("#counts")).to_be_visible()
    page.go_back()
    expect(page.locator("#made")).to_be_visible()  # where the last of the sock was typed
    page.go_back()
    expect(page.locator("#yarn")).to_be_visible()


def test_leaving_the_counter_gives_the_focus_back(new_phone: NewPhone) -> None:
    page = opened(new_phone())
    planned(page)
    page.locator("#knit-it").tap()
    page.locator(".leave").tap()
    expect(page.locator("#knit-it")).to_be_focused()
    expect(page.locator("#knit-it")).to_be_in_viewport()
    go_on = page.locator(".go-on")
    go_on.tap()
    page.locator(".leave").tap()
    expect(go_on).to_be_focused()
    go_on.tap()
    page.reload()
    page.locator(".leave").tap()
    expect(page.locator("#counts-title")).to_be_focused()  # nothing led there


def test_leaving_the_counter_leads_back_to_the_top(phone: BrowserContext) -> None:
    """A browser goes to the step that the address names, past the way to the counter above it."""
    page = opened(phone)
    planned(page)
    page.locator("#knit-it").tap()
    page.locator(".leave").tap()
    page.goto("./")
    expect(page.locator(".go-on")).to_be_visible()
    step(page, "counts")
    page.locator(".go-on").tap()
    expect(target(page)).to_be_visible()
    page.locator(".leave").tap()
    expect(page.locator(".go-on")).to_be_focused()
    page.wait_for_timeout(500)
    assert page.evaluate("scrollY") == 0


def test_from_a_wearer_to_the_counter_and_back(new_phone: NewPhone) -> None:
    page = opened(new_phone())
    open_book(page)
    new_wearer(page, "Invented: Nuri")
    fill_foot(page)
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    page.locator(".leave").tap()
    back_to_book(page)
    card(page, "Invented: Nuri")
    page.locator("[id^=to-machine]").tap()
    expect(target(page)).to_be_visible()
    page.locator(".leave").tap()
    expect(page.locator("[id^=to-machine]")).to_be_focused()


def test_each_screen_has_its_own_title(new_phone: NewPhone) -> None:
    page = opened(new_phone())
    seen = []

    def titled(words: str) -> None:
        expect(page).to_have_title(f"{words} · Heelwise")
        seen.append(words)

    titled("Measure the foot")
    fill_foot(page)
    titled("Machine and yarn")
    step(page, "counts")
    titled("Show the counts")
    page.locator("#knit-it").tap()
    titled("At the machine")
    page.locator(".leave").tap()
    expect(page).to_have_title("Show the counts · Heelwise")
    open_book(page)
    titled("Wearers")
    page.locator("#book button", has_text="New wearer").tap()
    titled("New wearer")
    page.locator("#new-label").fill("Invented: Nuri")
    page.locator("#begin-wearer").tap()
    expect(page).to_have_title("Measure the foot · Heelwise")
    back_to_book(page)
    card(page, "Invented: Nuri")
    titled("One wearer")  # browsers keep titles, and hand them on: no name is in it
    page.locator("#all-wearers").tap()
    page.locator("#to-copies").tap()
    titled("Copies and lists")
    page.locator("#close-book").tap()
    expect(page).to_have_title("Measure the foot · Heelwise")
    page.go_back()
    expect(page).to_have_title("Copies and lists · Heelwise")
    assert len(set(seen)) == len(seen)


def test_what_was_wrong_with_a_link_goes_once_it_is_read(phone: BrowserContext) -> None:
    bad = "#no-plan-at-all"
    page = opened(phone, f"./{bad}")
    banner = page.locator("#visit-line [role=alert]")
    expect(banner).to_be_visible()
    page.locator("#link-understood").tap()
    expect(banner).to_be_hidden()
    expect(page.locator("#measure-title")).to_be_focused()
    page.goto("about:blank")
    page.goto(f"./{bad}")
    expect(banner).to_be_visible()
    step(page, "yarn")
    expect(banner).to_be_hidden()
