"""A number stands on one line with its fraction and unit; what leaves the page has plain spaces."""

import json
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import held, new_wearer, open_book
from tests.browser.host import comes_true
from tests.browser.walk import behind, choose, field, opened, step

NewPhone = Callable[..., BrowserContext]

# Each number on screen with what belongs to it, and on how many lines that stands.
LINES = r"""() => {
  const found = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let text; (text = texts.nextNode()); ) {
    if (!text.parentElement.checkVisibility() || text.parentElement.closest(".unit")) continue;
    for (const match of text.data.matchAll(
        /\d[\d.,]*[ \u00a0](\d+\/\d+([ \u00a0](in|yd|oz)\b)?|%|(cm|mm|m|g|in|yd|oz)\b)/g)) {
      const range = document.createRange();
      range.setStart(text, match.index);
      range.setEnd(text, match.index + match[0].length);
      const tops = [...range.getClientRects()].map((box) => Math.round(box.top));
      found.push([match[0].replaceAll("\u00a0", " "), new Set(tops).size]);
    }
  }
  return found;
}"""


def on_lines(page: Page, seen: set[str]) -> list[str]:
    """Those that are broken over lines; all are added to `seen`."""
    found: list[tuple[str, int]] = page.evaluate(LINES)
    seen.update(text for text, _ in found)
    return [text for text, lines in found if lines != 1]


@pytest.mark.parametrize(("across", "large"), [(390, False), (320, False), (320, True)])
def test_a_number_keeps_its_fraction_and_unit(
    new_phone: NewPhone, across: int, large: bool
) -> None:
    phone = new_phone(viewport={"width": across, "height": 844})
    page = opened(phone)
    session = phone.new_cdp_session(page)  # the sizes hold as long as the session does
    if large:
        session.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
    choose(page, "inches")
    field(page, "foot.length").fill("9 3/8")
    step(page, "yarn")
    page.locator("#chips button", has_text="72").tap()
    field(page, "fabric.yarn").fill("400 m / 100 g")
    swatch = {"needles": "72", "flat_width": "4 3/4", "rounds": "60", "length": "5 1/2"}
    for name, text in swatch.items():
        field(page, f"fabric.swatch.{name}").fill(text)
    expect(page.locator("#so-far-counts")).to_contain_text("Foot")
    seen: set[str] = set()
    # In many widths, so that each of them comes to the edge once.
    for name in ("measure", "yarn", "counts"):
        step(page, name)
        page.evaluate("for (const fold of document.querySelectorAll('details')) fold.open = true")
        if name == "measure":
            field(page, "foot.length").focus()  # and what it was read as
        if name == "counts":
            expect(page.locator("table.chart")).to_be_visible()
        for narrower in range(0, 24 if large else 60, 6):
            page.evaluate("(px) => { document.body.style.paddingRight = `${px}px`; }", narrower)
            assert on_lines(page, seen) == [], f"{name}, {narrower} px narrower"
        page.evaluate("document.body.style.paddingRight = ''")
        wide: int = page.evaluate("document.documentElement.scrollWidth")
        assert wide == across, f"{name} scrolls sideways"
    for one in ("9 3/8 in", "23.8 cm", "%"):
        assert any(text.endswith(one) for text in seen), one


def test_what_is_kept_or_typed_for_her_has_plain_spaces(phone: BrowserContext) -> None:
    phone.add_init_script(
        """const send = Worker.prototype.postMessage; window.asked = [];
        Worker.prototype.postMessage = function (message, ...more) {
          if (message.text) window.asked.push(message.text);
          return send.call(this, message, ...more);
        };"""
    )
    page = opened(phone)
    choose(page, "inches")
    open_book(page)
    new_wearer(page, "Nuri", "99 in")
    page.keyboard.press("Tab")
    offer = page.locator("#foot-length-error .offer")
    expect(offer).to_be_visible()
    offer.tap()
    assert field(page, "foot.length").input_value() == "99 mm"
    field(page, "foot.length").fill("9 3/8")
    step(page, "yarn")
    behind(page, "shelf")
    field(page, "shelf.cylinders").fill("72")
    field(page, "shelf.yarns.0.yarn").fill("400 m / 100 g")
    page.locator(".shelf .take").tap()
    assert field(page, "fabric.yarn").input_value() == "400 m"
    assert field(page, "band").input_value() == "100 g"
    step(page, "counts")
    page.locator("#chart > summary").tap()
    expect(page.locator("table.chart")).to_be_visible()
    assert "\u00a0" in page.locator("table.chart").inner_text()
    comes_true(page, lambda: [one for one in held(page)["visits"] if one.get("plans")])
    kept = json.dumps(held(page), ensure_ascii=False)
    assert '"9 in"' in kept  # the sock foot, of the facts beside the counts
    asked: list[str] = page.evaluate("asked")
    assert any('"shelf"' in call for call in asked)
    # What the last visit showed is shown once more, and goes nowhere else.
    page.evaluate("localStorage.removeItem('heelwise.last')")
    for text in (kept, *asked, page.evaluate("JSON.stringify(localStorage)")):
        assert "\u00a0" not in text
