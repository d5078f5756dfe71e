"""A plan passed on at arm's length: shown as a code, read by another phone's camera, seen there.

The camera is zxing-cpp, an independent reader of ISO/IEC 18004 codes, at a screenshot.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, field, figures, fill_foot, more_of, opened, share, step
from tests.published.code_reader import read

NewPhone = Callable[..., BrowserContext]
PHONE = {"width": 390, "height": 844}
CLIPBOARD = ["clipboard-read", "clipboard-write"]


def planned(phone: BrowserContext) -> Page:
    """A page at the counts of a measured woman's foot."""
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    choose(page, "woman")
    step(page, "counts")
    figures(page)
    expect(page.locator("#so-far-counts")).to_contain_text("Foot")
    page.wait_for_timeout(500)  # the last answer has come
    return page


def scanned(page: Page, keep: Path | None = None) -> str:
    """What a camera makes of the screen."""
    expect(page.locator("#code svg")).to_be_visible()
    seen = page.screenshot(path=keep)
    return read(Image.open(io.BytesIO(seen)).convert("L"))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_scanned_from_the_screen_it_shows_the_same_counts(
    new_phone: NewPhone, screens: Path, scheme: str
) -> None:
    page = planned(new_phone(viewport=PHONE, color_scheme=scheme, device_scale_factor=1))
    page.screenshot(path=screens / f"3-share-{scheme}.png", full_page=True)
    share(page, "#show-code")
    address = scanned(page, screens / f"3-code-{scheme}.png")
    assert page.locator(".code-address").inner_text() == address
    assert address.startswith(page.url.split("#")[0] + "#2.")
    across = page.evaluate("document.querySelector('#code svg').viewBox.baseVal.width")
    wide = page.locator("#code svg").bounding_box()
    assert wide
    assert wide["width"] / across >= 4, "pixels a module"
    other = opened(new_phone(), address)
    expect(other.locator("#visit-line")).to_contain_text("A shared plan")
    assert figures(other) == figures(page)
    more_of(other.locator("#visit-line"))
    expect(other.get_by_role("button", name="Save these counts in the book")).to_be_visible()
    for name in ("foot.length", "person.height", "foot.ball_girth"):
        expect(field(other, name)).to_have_value("")
    expect(other.locator("[name=who][value='']")).to_be_checked()


def test_the_foot_goes_along_only_where_she_says_so(new_phone: NewPhone) -> None:
    page = planned(new_phone(viewport=PHONE, permissions=CLIPBOARD))
    place = page.locator("#share-place")
    share(page)
    expect(place.get_by_role("button", name="Counts only")).to_have_attribute(
        "aria-pressed", "true"
    )
    expect(place).to_contain_text("no measure of the person")
    place.get_by_role("button", name="With the foot").tap()
    share(page, "#show-code")
    whole = scanned(page)
    page.keyboard.press("Escape")
    share(page, "#copy-link")
    expect(place).to_contain_text("Copied")
    assert page.evaluate("navigator.clipboard.readText()") == whole
    other = opened(new_phone(), whole)
    assert figures(other) == figures(page)
    expect(field(other, "foot.length")).to_have_value("23,8")
    more_of(other.locator("#visit-line"))
    expect(other.get_by_role("button", name="Save this foot")).to_be_visible()
    # The next foot is another person's, who has not been asked.
    share(page, "#next-foot")
    field(page, "foot.length").fill("25")
    step(page, "counts")
    share(page)
    expect(page.locator("#share-place button", has_text="Counts only")).to_have_attribute(
        "aria-pressed", "true"
    )


def test_by_keyboard_alone(new_phone: NewPhone) -> None:
    page = planned(new_phone(viewport=PHONE))
    share(page)
    page.locator("#show-code").focus()
    page.keyboard.press("Enter")
    close = page.locator("#code button", has_text="Close")
    expect(close).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#code")).to_be_hidden()
    expect(page.locator("#show-code")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#code")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.locator("#code")).to_be_hidden()


def test_a_visiting_plan_is_passed_on_too(new_phone: NewPhone) -> None:
    page = planned(new_phone(viewport=PHONE))
    share(page, "#show-code")
    address = scanned(page)
    other = opened(new_phone(viewport=PHONE), address)
    expect(other.locator("#visit-line")).to_contain_text("A shared plan")
    figures(other)
    expect(other.locator("#share-place [role=group]")).to_have_count(0)  # nobody's foot is in it
    share(other, "#show-code")
    third = opened(new_phone(), scanned(other))
    assert figures(third) == figures(other) == figures(page)


def test_a_link_too_long_for_a_code_is_said_and_can_be_copied(new_phone: NewPhone) -> None:
    page = planned(new_phone(viewport=PHONE, permissions=CLIPBOARD))
    folder = "'https://socks.example/' + 'x'.repeat(450) + '/'"
    share(page)
    page.locator("#share-place button", has_text="With the foot").wait_for()
    page.evaluate(f"Object.defineProperty(document, 'baseURI', {{ value: {folder} }})")
    page.locator("#share-place button", has_text="With the foot").tap()
    share(page, "#show-code")
    alert = page.locator("#code [role=alert]")
    expect(alert).to_contain_text("too long for a code")
    expect(alert).to_contain_text("Copy the link")
    expect(page.locator("#code svg")).to_have_count(0)
    page.locator("#code button", has_text="Close").tap()
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")


@pytest.mark.parametrize(("across", "down"), [(320, 640), (844, 390), (1280, 860)])
def test_read_on_any_screen(new_phone: NewPhone, screens: Path, across: int, down: int) -> None:
    size = {"width": across, "height": down}
    page = planned(new_phone(viewport=size, device_scale_factor=2))
    share(page, "#show-code")
    assert "#2." in scanned(page, screens / f"3-code-{across}.png")
    close = page.locator("#code button", has_text="Close").bounding_box()
    assert close
    assert close["y"] + close["height"] <= down, "the way out is in sight"
    wide = page.evaluate("document.getElementById('code').scrollWidth")
    assert wide <= across
