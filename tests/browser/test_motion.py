"""A count that changes rolls in, and its part of the sock is knitted anew: shortly, in place."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import figures, fill_sock, leave, opened, panel, step

# What moves from now on, how long, where the counts stand at each frame, and what is heard.
WATCH = """() => {
  window.moved = [];
  window.places = new Set();
  window.heard = [];
  const animate = Element.prototype.animate;
  Element.prototype.animate = function (frames, options) {
    const row = this.getAttribute("class") ?? this.closest(".tally, .in-pencil").className;
    moved.push([row, this.textContent, options.duration]);
    return animate.call(this, frames, options);
  };
  const each = () => {
    const rows = [...document.querySelectorAll(".tally, .tally .figure")];
    places.add(rows.map((one) => [one.offsetTop, one.offsetHeight, one.offsetWidth]).join());
    requestAnimationFrame(each);
  };
  each();
  const said = document.getElementById("said");
  new MutationObserver(() => heard.push(said.textContent)).observe(said, { childList: true });
}"""


def at_counts(page: Page) -> None:
    """The counts of `walk.SOCK`, settled, and all that moves from now on written down."""
    fill_sock(page)
    leave(page)
    step(page, "counts")
    figures(page)
    page.wait_for_timeout(2000)  # the counts are said once they have settled
    page.evaluate(WATCH)


def another_heel(page: Page) -> list[list[Any]]:
    """Take a heel with more needles left, which makes the foot longer; returns what moved."""
    panel(page, "sock", "#pockets > summary")
    page.get_by_role("button", name="Use this heel: 12 left").tap()
    expect(page.locator(".tally-heel .figure")).to_have_text("30→12→30")
    expect(page.locator(".tally-foot .figure")).to_have_text("48")
    moved: list[list[Any]] = page.evaluate("moved")
    return moved


def test_what_changed_moves_and_nothing_else(phone: BrowserContext) -> None:
    page = opened(phone)
    at_counts(page)
    moved = another_heel(page)
    rolled = {(row, words) for row, words, _ in moved if row != "cover"}
    assert {("tally tally-heel", "12"), ("tally tally-foot", "48")} <= rolled
    assert not {words for row, words in rolled if "tally" in row} - {"12", "48"}
    assert [row for row, *_ in moved if row == "cover"], "the drawing"
    assert max(took for *_, took in moved) <= 250
    expect(page.locator(".cover")).to_have_count(0)
    assert page.evaluate("places.size") == 1, "nothing gives way"


def test_it_is_heard_once(phone: BrowserContext) -> None:
    page = opened(phone)
    at_counts(page)
    another_heel(page)
    foot = page.locator(".tally-foot .figure").inner_text()
    page.wait_for_timeout(2500)
    assert page.evaluate("heard") == [f"Foot {foot} rounds"]
    expect(page.get_by_role("status").filter(has_text=f"Foot {foot} rounds")).to_have_count(1)


@pytest.mark.parametrize("motion", ["reduce", "no-preference"])
def test_it_is_still_for_who_asks(new_phone: Callable[..., BrowserContext], motion: str) -> None:
    page = opened(new_phone(reduced_motion=motion))
    at_counts(page)
    assert bool(another_heel(page)) == (motion == "no-preference")
