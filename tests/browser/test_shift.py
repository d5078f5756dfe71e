"""While one types, the page keeps still: over the whole way to counts, on a small phone.

What moves is what the browser itself finds: Layout Instability API (WICG), the sum of all its
values, with those that follow a key or a tap. It is not asked of a step that comes in place of
another. Letters that are set from the right move with each key, and parts of an inch are many keys:
there all else is counted.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, field, figures, opened, step

NewPhone = Callable[..., BrowserContext]
MOST = 0.02
KEY_MS = 60
# Two frames and the pause of the page itself (page/at_rest.js): what waits for it has come.
REST_MS = 1400
SEEN = """() => {
  window.moved = [];
  window.watched = true;
  new PerformanceObserver((list) => {
    for (const { value, sources } of list.getEntries()) {
      if (!window.watched) continue;
      const names = sources.map(({ node }) => node && (node.id || node.className || node.nodeName));
      // The letters of a field are in no page's tree.
      const letters = names.length > 0 && names.every((name) => !name);
      window.moved.push([value, letters, document.activeElement?.id, ...names]);
    }
  }).observe({ type: "layout-shift" });
}"""
FOOT = {"length": "24,6", "ball_girth": "23", "heel_girth": "32", "ankle_girth": "22"}
FOOT_IN = {"length": "9 3/4", "ball_girth": "9 1/8", "heel_girth": "12 1/2", "ankle_girth": "8 3/4"}
SWATCH = {"needles": "60", "flat_width": "10,2", "rounds": "60", "length": "15,6"}
SWATCH_IN = {"needles": "60", "flat_width": "4", "rounds": "60", "length": "6 1/8"}


def typed(page: Page, fields: dict[str, str]) -> None:
    """Each field tapped, typed into key by key, and left for the next."""
    for name, text in fields.items():
        field(page, name).tap()
        page.keyboard.type(text, delay=KEY_MS)
        page.wait_for_timeout(REST_MS)


def to_yarn(page: Page) -> None:
    """The next step, in place of the first: what moves by that is not counted."""
    page.evaluate("window.watched = false")
    step(page, "yarn")
    page.wait_for_timeout(300)
    page.evaluate("window.watched = true")


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("way", ["swatch", "yarn"])
def test_typing_moves_nothing(new_phone: NewPhone, units: str, way: str) -> None:
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    choose(page, "centimeters" if units == "cm" else "inches")
    page.wait_for_timeout(REST_MS)
    page.evaluate(SEEN)
    foot = FOOT if units == "cm" else FOOT_IN
    typed(page, {f"foot.{name}": text for name, text in foot.items()})
    to_yarn(page)
    page.locator("#chips button", has_text="60").tap()
    if way == "swatch":
        swatch = SWATCH if units == "cm" else SWATCH_IN
        typed(page, {f"fabric.swatch.{name}": text for name, text in swatch.items()})
    else:
        choose(page, "Yarn alone")  # in place of the swatch's fields come none
        page.evaluate("window.moved = []")
        typed(page, {"fabric.yarn": "420", "band": "100"})
    expect(page.locator("#so-far-counts")).to_contain_text("Foot")
    moved = page.evaluate("window.moved")
    assert moved, "what is typed from the right moves its own letters"
    counted = [one for one in moved if units == "cm" or not one[1]]
    assert sum(value for value, *_ in counted) <= MOST, sorted(counted, reverse=True)[:5]
    page.evaluate("window.watched = false")
    step(page, "counts")
    assert figures(page)["Foot"]
