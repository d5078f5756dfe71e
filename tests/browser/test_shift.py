"""While one types, the page keeps still: over a whole job, on a small phone.

What moves is what the browser itself finds: Layout Instability API (WICG), the sum of all its
values, with those that follow a key or a tap. It is not asked of what comes in place of another:
a step, a panel, or what a fold holds. Letters that are set from the right move with each key, and
parts of an inch are many keys: there all else is counted.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, field, figures, opened, panel, step

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
DRAWN = "new Promise((end) => requestAnimationFrame(() => requestAnimationFrame(end)))"
FOOT = {"length": "24,6", "ball_girth": "23", "heel_girth": "32", "ankle_girth": "22"}
FOOT_IN = {"length": "9 3/4", "ball_girth": "9 1/8", "heel_girth": "12 1/2", "ankle_girth": "8 3/4"}
# So much more round the heel than of the other measures that it is asked about.
ODD = {"cm": "42", "in": "16 1/2"}
SWATCH = {"flat_width": "10,2", "rounds": "60", "length": "15,6", "needles": "60"}
SWATCH_IN = {"flat_width": "4", "rounds": "60", "length": "6 1/8", "needles": "60"}
SOCK_ONE = {"cm": "24,4", "in": "9 5/8"}


def typed(page: Page, fields: dict[str, str], *, rest: bool = True) -> None:
    """Each field tapped, typed into key by key, and left for the next."""
    for name, text in fields.items():
        field(page, name).tap()
        page.keyboard.type(text, delay=KEY_MS)
        if rest:
            page.wait_for_timeout(REST_MS)


@contextmanager
def asked_for(page: Page) -> Iterator[None]:
    """What comes in place of another, as it was asked for: two frames of it are not counted."""
    page.evaluate("window.watched = false")
    yield
    page.evaluate(DRAWN)
    page.evaluate("window.watched = true")


def moved(page: Page, *, letters: bool = False) -> float:
    """How far things moved so far, with the letters of a field or without."""
    all_moved = page.evaluate("window.moved")
    assert all_moved, "what is typed from the right moves its own letters"
    counted = [one for one in all_moved if letters or not one[1]]
    print(*sorted(counted, reverse=True)[:5], sep="\n")  # shown where it was too far
    return float(sum(value for value, *_ in counted))


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("way", ["swatch", "yarn"])
def test_a_whole_job_moves_nothing(new_phone: NewPhone, units: str, way: str) -> None:
    """From the first key to the first counts, to sock one as it came out, the yarn left, and a
    measure that is asked about."""
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    choose(page, "centimeters" if units == "cm" else "inches")
    page.wait_for_timeout(REST_MS)
    page.evaluate(SEEN)
    foot = FOOT if units == "cm" else FOOT_IN
    typed(page, {f"foot.{name}": text for name, text in foot.items()})
    with asked_for(page):
        step(page, "yarn")
    page.get_by_role("button", name="60", exact=True).tap()
    if way == "swatch":
        swatch = SWATCH if units == "cm" else SWATCH_IN
        *first, last = swatch
        typed(page, {f"fabric.swatch.{name}": swatch[name] for name in first})
        typed(page, {f"fabric.swatch.{last}": swatch[last]}, rest=False)
    else:
        with asked_for(page):
            choose(page, "Yarn alone")  # in place of the swatch's fields come none
        typed(page, {"fabric.yarn": "420", "band": "100"}, rest=False)
    with asked_for(page):
        step(page, "counts")  # whether they are there already or come now
    page.wait_for_timeout(REST_MS)
    rounds = figures(page)["Foot"]
    assert rounds.isdigit()
    if units == "cm":
        assert moved(page, letters=True) <= MOST
    with asked_for(page):
        page.get_by_text("Sock one is off the machine").tap()
    typed(page, {"first_sock.foot_rounds": rounds, "first_sock.length": SOCK_ONE[units]})
    expect(page.locator(".lesson")).to_contain_text("in sock two")
    with asked_for(page):
        panel(page, "yarn")
        page.get_by_text("Yarn: is there enough?").tap()
    typed(page, {"stock.left": "60"})
    expect(page.locator("#enough-place")).to_contain_text("60 g")
    with asked_for(page):
        step(page, "measure")
    field(page, "foot.heel_girth").tap()
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type(ODD[units], delay=KEY_MS)
    expect(page.locator("#in-hand .asks")).to_contain_text("Measure it again?")
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type(foot["heel_girth"], delay=KEY_MS)
    page.wait_for_timeout(REST_MS)
    assert moved(page) <= MOST


def test_the_first_counts_take_the_place_that_was_kept_for_them(new_phone: NewPhone) -> None:
    """Looked at before anything is told, and while the last key's answer is still to come."""
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    step(page, "counts")
    rows = page.locator("#counts-place").get_by_role("listitem")
    in_pencil = [row.bounding_box() for row in rows.all()]
    assert len(in_pencil) == 5
    step(page, "measure")
    page.get_by_label("Foot length", exact=True).fill("24")
    step(page, "counts")
    assert figures(page)["Foot"].isdigit()
    assert [row.bounding_box() for row in rows.all()] == in_pencil
