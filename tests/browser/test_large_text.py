"""A phone of 320 × 568 with text half as large again (24 px for 16): WCAG 2.2, 1.4.4 and 1.4.10."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, expect

from tests.browser.at_machine import go_to, planned, settings, target
from tests.browser.walk import choose, field, fill_foot, more, opened, settings_sheet, step

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


# Where text ends, in px: of a field's guess its own width, set from the right.
CLEAR = """() => [...document.querySelectorAll(".measures .field")].map((field) => {
  const [label, input] = ["label", "input"].map((name) => field.querySelector(name));
  const text = document.createRange();
  text.selectNodeContents(label);
  const name = text.getBoundingClientRect();
  const style = getComputedStyle(input, "::placeholder");
  const pen = document.createElement("canvas").getContext("2d");
  pen.font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const box = input.getBoundingClientRect();
  const end = box.right - parseFloat(getComputedStyle(input).paddingInlineEnd);
  const from = end - pen.measureText(input.placeholder).width;
  const top = (box.top + box.bottom) / 2 - 0.6 * parseFloat(style.fontSize);
  return [input.placeholder, name.bottom <= top ? 999 : from - name.right];
})"""
ON_TAPE = """() => [...document.querySelectorAll(".tape .so-far")].map((place) => {
  const text = document.createRange();
  text.selectNodeContents(place);
  return [place.textContent, text.getBoundingClientRect().right];
})"""
EDGE = 8  # px of the tape's end at the step that is shown


@pytest.mark.parametrize("units", ["centimeters", "inches"])
@pytest.mark.parametrize("size", [16, 32])
def test_at_320_no_guess_touches_its_name_and_the_tape_is_whole(
    new_phone: NewPhone, size: int, units: str
) -> None:
    """Also with text of 200 % (WCAG 2.2, 1.4.4), where the numbers of the tape stand alone."""
    phone = new_phone(viewport={"width": 320, "height": 568})
    page = opened(phone)
    if size != 16:
        session = phone.new_cdp_session(page)
        session.send("Page.setFontSizes", {"fontSizes": {"standard": size, "fixed": size}})
    fill_foot(page)
    step(page, "measure")
    choose(page, units)
    field(page, "foot.length").fill("")
    more(page, "#shoe summary")
    field(page, "person.shoe_size.size").fill("39")
    expect(field(page, "foot.length")).to_have_attribute("placeholder", re.compile("guessed"))
    clear = page.evaluate(CLEAR)
    assert len(clear) == 5
    for guess, apart in clear:
        assert "guessed" in guess
        assert apart >= 4, (guess, apart)
    assert page.evaluate("document.documentElement.scrollWidth") == 320
    step(page, "counts")
    expect(page.locator("#so-far-counts")).to_contain_text("Foot")
    if size == 16:
        stretches = [one.bounding_box() for one in page.locator(".tape a").all()]
        for (words, right), stretch in zip(page.evaluate(ON_TAPE), stretches, strict=True):
            assert stretch
            assert words
            assert right <= stretch["x"] + stretch["width"] - EDGE, words
