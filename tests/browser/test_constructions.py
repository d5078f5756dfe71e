"""Kinds of cuff, heel and toe, chosen on the form and followed at the counter."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import go_to, knit, settings, target
from tests.browser.walk import field, figures, fill_sock, opened, step


def chosen(phone: BrowserContext, name: str, words: str) -> Page:
    """The counts of the sock of `walk.SOCK` with one kind chosen by its words."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, name), has_text=words).first.tap()
    step(page, "counts")
    figures(page)
    return page


def test_two_needles_at_once_are_told_and_drawn(phone: BrowserContext, screens: Path) -> None:
    page = chosen(phone, "sock.heel.kind", "two each")
    rows = page.locator("#steps-place .needles-row .what").all_text_contents()
    told = [" ".join(text.split()) for text in rows]
    assert told[:3] == [
        "knits 1 to 30 · needles 29 and 30 into hold",
        "knits 28 to 1 · needles 1 and 2 into hold",
        "knits 3 to 28 · needle 28 into hold",
    ]
    page.locator("#knit-it").tap()
    go_to(page, "Heel", 0)
    while target(page).locator(".by-hand").count():
        expect(page.locator(".at-machine")).to_have_attribute("data-look", "do")
        before = target(page).inner_text()
        target(page).tap()
        expect(target(page)).not_to_have_text(before, use_inner_text=True)
    words = page.locator(".row-words")
    expect(words).to_contain_text("then lift needles 29 and 30 into hold")
    expect(words).to_contain_text("2nd and 1st needle from the right half mark")
    now = page.locator(".needle-now").get_attribute("d") or ""
    assert now.count("M") == 3, "a stem for each needle, and one head"
    expect(page.locator(".needle-number")).to_have_text("29 30")
    page.screenshot(path=screens / "machine-two-at-first.png")
    assert knit(page, "Foot")["Heel"] == 38


def test_a_picot_hem_is_followed_to_its_end(phone: BrowserContext, screens: Path) -> None:
    page = chosen(phone, "sock.cuff.kind", "picot hem")
    expect(page.locator(".tally-cuff")).to_contain_text("picot hem")
    page.locator("#picture, .picture").first.screenshot(path=screens / "picot-hem.png")
    page.locator("#knit-it").tap()
    go_to(page, "Cuff", 10)
    expect(target(page)).to_contain_text("Move every second stitch onto the needle at its right")
    assert knit(page, "Leg")["Cuff"] == 10


def test_a_mock_rib_hem_asks_which_needle_is_out(phone: BrowserContext) -> None:
    page = chosen(phone, "sock.cuff.kind", "mock rib hem")
    expect(page.locator(".tally-cuff")).to_contain_text("hung, folded to 10")
    step(page, "yarn")
    expect(field(page, "sock.cuff.every")).to_be_visible()
    field(page, "sock.cuff.every").fill("3")
    step(page, "counts")
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Take out every 3rd needle")
    go_to(page, "Cuff", 20)
    expect(target(page)).to_contain_text("lift each of the 40 loops of its first round")


def test_a_rib_on_a_set_up_edge_is_followed_to_the_leg(phone: BrowserContext) -> None:
    """Needles stand out for the ribber only after they are told so: none is drawn before."""
    page = chosen(phone, "sock.cuff.kind", "rib on a set-up edge")
    expect(page.locator(".tally-cuff")).to_contain_text("1×1 rib on a set-up edge")
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Thread waste yarn")
    expect(page.locator(".cylinder-out")).to_have_count(0)
    go_to(page, "Cuff", 1)
    expect(target(page)).to_contain_text("Set the ribber to idle")
    assert knit(page, "Leg")["Cuff"] == 19


def test_a_rib_that_changes_is_asked_for_and_followed(phone: BrowserContext) -> None:
    page = chosen(phone, "sock.cuff.kind", "rib on a set-up edge")
    step(page, "yarn")
    field(page, "sock.cuff.change_after").fill("13")
    field(page, "sock.cuff.change_every").fill("3")
    expect(page.locator("#sock-cuff-change_every-error")).to_contain_text("Keep every 4th or 6th")
    field(page, "sock.cuff.change_every").fill("4")
    step(page, "counts")
    expect(page.locator(".tally-cuff")).to_contain_text("3×1 after round 13")
    page.locator("#knit-it").tap()
    go_to(page, "Cuff", 13)
    expect(target(page)).to_contain_text("Move 15 of the ribber’s stitches back")
    assert knit(page, "Leg")["Cuff"] == 7


def test_rounds_after_the_toe_have_a_place_of_their_own(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.end.rounds").fill("4")
    step(page, "counts")
    expect(page.locator(".tally-end")).to_contain_text("After the toe")
    expect(page.locator(".tally-end .figure")).to_have_text("4")
    expect(page.locator(".tally")).to_have_count(6)
    page.locator("#knit-it").tap()
    go_to(page, "Toe 40 rows", 40)
    assert knit(page, "Off the machine") == {"After the toe": 4}
