"""For everybody: the whole way by keys alone, and colours that the phone chooses.

Outside measures: WCAG 2.2, 2.1.1 (keyboard), 2.1.2 (no trap), 2.4.3 (order of focus), 2.4.7 and
2.4.11 (where the focus is can be seen), 1.4.1 (not by colour alone), 2.3.3 (no movement where it is
not wanted); CSS Color Adjustment 1, "Forced Colors Mode".
"""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import settings, target
from tests.browser.test_looks import screens_of, sideways
from tests.browser.test_wearers import screens_of as screens_of_the_book
from tests.browser.walk import SWATCH, figures, opened

NewPhone = Callable[..., BrowserContext]

# What the focused thing is, and how it shows once a frame is painted: an outline or a shadow of its
# own, on the screen and with nothing over its middle. Within a frame a field may still be where
# guesses that have just appeared pushed it.
FOCUS = """async () => {
  await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
  const e = document.activeElement;
  const shown = e.matches("[type=radio], [type=checkbox]") ? e.closest("label") ?? e : e;
  const box = shown.getBoundingClientRect();
  const x = box.x + Math.min(box.width, innerWidth) / 2;
  const y = box.y + Math.min(box.height, innerHeight) / 2;
  const over = document.elementFromPoint(x, y);
  const marks = [e, shown].map((one) => getComputedStyle(one));
  return {
    what: e.outerHTML.slice(0, 90),
    marked: marks.some((s) => (s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2)
      || s.boxShadow !== "none"),
    free: over !== null && (shown.contains(over) || over.contains(shown)),
    over: `${over?.outerHTML.slice(0, 90)} ${y} of ${innerHeight}`,
  };
}"""


def tab_to(page: Page, selector: str) -> None:
    """Press Tab until there; every stop on the way can be seen."""
    for _ in range(150):
        page.keyboard.press("Tab")
        if page.locator(":focus").count() == 0:
            continue  # past the end of the page, in the browser's own bar
        focus = page.evaluate(FOCUS)
        assert focus["marked"], f"the focus cannot be seen at {focus['what']}"
        assert focus["free"], f"{focus['what']} is under {focus['over']}"
        if page.locator(":focus").evaluate("(e, s) => e.matches(s)", selector):
            return
    pytest.fail(f"Tab does not reach {selector}")


def press(page: Page, selector: str) -> None:
    """Tab there and press Enter."""
    tab_to(page, selector)
    page.keyboard.press("Enter")


def test_the_whole_way_by_keys_alone(new_phone: NewPhone) -> None:
    """From the empty form to the counts, the counter and a saved copy: no touch, no mouse."""
    computer = new_phone(is_mobile=False, has_touch=False, reduced_motion="reduce")
    settings(computer, guard=0)
    page = opened(computer)
    tab_to(page, "[name='foot.length']")
    page.keyboard.type("23,8")
    press(page, "#measure .next")
    expect(page.locator("#yarn-title")).to_be_focused()
    tab_to(page, "[name='cylinder.slots']")
    page.keyboard.type("60")
    for name, text in SWATCH.items():
        tab_to(page, f"[name='fabric.swatch.{name}']")
        page.keyboard.type(text)
    press(page, "#yarn .next")
    expect(page.locator("#counts-title")).to_be_focused()
    assert figures(page)["Leg"]
    press(page, "#knit-it")
    expect(target(page)).to_be_visible()
    before = words(page)
    for _ in range(3):
        page.keyboard.press("PageDown")
        expect(page.locator("#machine-now")).not_to_have_text(before)
        before = words(page)
    press(page, ".take-back")
    press(page, ".at-top .leave")
    expect(page.locator("#counts-title")).to_be_visible()
    press(page, "[data-book=list]")
    expect(page.locator("#book-title")).to_be_focused()
    press(page, "#to-copies")
    expect(page.locator("#book-title")).to_have_text("Copies and lists")
    expect(page.locator("#book-title")).to_be_focused()
    tab_to(page, "#save-copy")
    with page.expect_download() as saved:
        page.keyboard.press("Enter")
    assert saved.value.suggested_filename.startswith("heelwise")


def words(page: Page) -> str:
    """What is to do now, as a screen reader is told it."""
    return page.locator("#machine-now").inner_text()


# Of everything that is chosen, pressed or open now: whether it looks like another of its kind that
# is not, by what forced colours leave of a look.
UNMARKED = """() => {
  const look = (e) => [e, e.closest("label")].filter(Boolean).flatMap((one) =>
    [null, "::before", "::after"].map((part) => {
      const s = getComputedStyle(one, part);
      return [s.outlineStyle, s.outlineWidth, s.borderStyle, s.borderWidth, s.fontWeight, s.content,
        s.textDecorationLine, s.backgroundColor, s.color, s.boxShadow].join();
    })).join("|");
  const pairs = [["[aria-current]", "a:not([aria-current])"],
    ["[aria-pressed=true]", "[aria-pressed=false]"],
    ["[type=radio]:checked", "[type=radio]:not(:checked)"]];
  const seen = (e) => (e.closest("label") ?? e).checkVisibility();
  const unmarked = (e, off) => {
    const group = e.closest("fieldset, nav, .chips, p, div, ol, ul");
    const other = [...(group?.querySelectorAll(off) ?? [])].find(seen);
    return other && look(e) === look(other);
  };
  return pairs.flatMap(([on, off]) => [...document.querySelectorAll(on)]
    .filter((e) => seen(e) && unmarked(e, off)).map((e) => e.outerHTML.slice(0, 80)));
}"""


@pytest.mark.slow
@pytest.mark.long
@pytest.mark.parametrize("walk", [screens_of, screens_of_the_book], ids=["sock", "book"])
def test_every_screen_in_forced_colours(
    new_phone: NewPhone, screens: Path, walk: Callable[[Page], Iterator[str]]
) -> None:
    """What is chosen is still told from what is not."""
    page = opened(new_phone(forced_colors="active", reduced_motion="reduce"))
    assert page.evaluate("matchMedia('(forced-colors: active)').matches")
    for name in walk(page):
        page.screenshot(path=screens / f"{name}-forced-colours.png")
        assert sideways(page) == 0, name
        assert page.evaluate(UNMARKED) == [], name
