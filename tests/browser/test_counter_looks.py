"""How the counter looks: the target has two thirds of any screen, nothing is cut off or too small.

Outside measures, as in test_looks.py: WCAG 2.2 through axe-core (contrast at level AAA), 1.4.4
(text at 200 %) and 1.4.10 (320 px wide without sideways scrolling); touch targets of 48 px (common
practice).
"""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests import asking as api
from tests.browser.at_machine import begun, go_to, knit, request, settings, target
from tests.browser.axe import violations
from tests.browser.pseudo import said
from tests.browser.test_looks import sideways, too_small
from tests.browser.walk import behind

NewPhone = Callable[..., BrowserContext]
SIZES = {"phone": (390, 844), "narrow": (320, 568), "lying": (844, 390), "desk": (1280, 800)}


def reminded() -> int:
    """The first row of the heel with something to remember before it."""
    steps = api.answer({"do": "knit", "request": request()})["steps"]
    rows = [one for one in steps if one["part"] == "heel" and one["kind"] == "row"]
    return next(at for at, row in enumerate(rows) if row["remind"])


def states(page: Page) -> Iterator[str]:
    """Walk through what the counter can show; yields the name of each as it stands."""
    yield "by-hand"
    go_to(page, "Leg", 17)
    expect(page.locator(".left-figure")).to_have_text("31")
    yield "rounds"
    go_to(page, "Foot", 41)
    expect(page.locator(".last-few")).to_be_visible()
    yield "five"
    go_to(page, "Heel", reminded())
    expect(page.locator(".remind")).to_be_visible()
    yield "row-reminded"
    go_to(page, "Heel", 25)
    expect(page.locator(".ring-figure")).to_have_text("15")
    yield "row-back"
    page.evaluate(
        """() => ["PageDown", "PageDown"]
            .map((key) => new KeyboardEvent("keydown", { key, bubbles: true }))
            .forEach((event) => document.body.dispatchEvent(event))"""
    )
    expect(page.locator(".notice")).to_be_visible()
    yield "too-close"


def sheets(page: Page) -> Iterator[str]:
    """The sheets over the counter, and the end of both socks."""
    for button in ("Go to…", "Note", "Help", "Settings"):
        page.get_by_role("button", name=said(button)).tap()
        expect(page.locator(".machine-sheet")).to_be_visible()
        yield f"sheet-{button[:4].strip().lower()}"
        if button == "Settings":
            page.locator(".machine-sheet label", has_text=said("off")).tap()
        page.get_by_role("button", name=said("Close")).tap()
    go_to(page, "Off the machine")
    settle(page)
    knit(page)
    yield "ended"
    page.locator(".at-end .go").tap()
    yield "sock-two"
    page.locator("#same-two").tap()
    go_to(page, "Off the machine")
    settle(page)
    knit(page)
    yield "both-ended"


def settle(page: Page) -> None:
    """Wait until the jump to the end has happened."""
    expect(page.locator(".section-name")).to_contain_text(said("Off the machine"))


def whole(page: Page) -> list[str]:
    """Whatever words in the target reach out of it."""
    found: list[str] = page.evaluate(
        """() => { const box = document.querySelector(".target").getBoundingClientRect();
          return [...document.querySelectorAll(".target-inside *")]
            .filter((e) => !e.closest("svg") && e.textContent.trim())
            .filter((e) => { const own = e.getBoundingClientRect();
              return own.top < box.top - 1 || own.bottom > box.bottom + 1 || own.left < box.left - 1
                || own.right > box.right + 1; })
            .map((e) => `${e.className}: ${e.textContent.trim().slice(0, 40)}`); }"""
    )
    return found


@pytest.mark.slow
@pytest.mark.parametrize(
    ("size", "scheme"),
    [("phone", "light"), ("narrow", "dark"), ("lying", "light"), ("desk", "dark")],
)
def test_two_thirds_are_for_the_hand(
    new_phone: NewPhone, screens: Path, size: str, scheme: str
) -> None:
    across, down = SIZES[size]
    phone = new_phone(
        viewport={"width": across, "height": down},
        color_scheme=scheme,
        reduced_motion="reduce",
        device_scale_factor=1.5,
    )
    settings(phone, awake=False, sounds=False, guard=250)
    page = begun(phone)
    for name in states(page):
        page.screenshot(path=screens / f"machine-{name}-{size}-{scheme}.png")
        assert sideways(page) == 0, f"{name} scrolls sideways"
        box = target(page).bounding_box()
        assert box
        assert box["height"] >= down * 2 / 3 - 1, name
        assert box["y"] + box["height"] <= down + 1, f"{name}: the target reaches below the screen"
        assert whole(page) == [], name
        assert too_small(page) == [], name
        assert violations(page) == [], name
    for name in sheets(page):
        page.screenshot(path=screens / f"machine-{name}-{size}-{scheme}.png")
        assert sideways(page) == 0, f"{name} scrolls sideways"
        assert too_small(page) == [], name
        assert violations(page) == [], name


@pytest.mark.slow
@pytest.mark.parametrize(("across", "down"), [(320, 568), (390, 844), (844, 390)])
def test_text_twice_as_large(new_phone: NewPhone, screens: Path, across: int, down: int) -> None:
    phone = new_phone(viewport={"width": across, "height": down})
    settings(phone, awake=False, sounds=False, guard=250)
    page = begun(phone)
    session = phone.new_cdp_session(page)  # the sizes hold as long as the session does
    session.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
    for name in states(page):
        page.screenshot(path=screens / f"machine-{name}-{across}-large-text.png", full_page=True)
        assert sideways(page) == 0, f"{name} scrolls sideways"
        assert whole(page) == [], name
        box = target(page).bounding_box()
        assert box
        assert box["height"] >= down * 2 / 3 - 1, name


def test_forced_colours_tell_the_needles_apart(new_phone: NewPhone, screens: Path) -> None:
    phone = new_phone(forced_colors="active")
    settings(phone, awake=False, guard=0)
    page = begun(phone)
    go_to(page, "Heel", 25)
    expect(page.locator(".needle-number")).to_be_visible()
    page.screenshot(path=screens / "machine-forced-colours.png")
    ring = "getComputedStyle(document.querySelector('.needle-{}')).{}"
    ground = page.evaluate("getComputedStyle(document.querySelector('.target')).backgroundColor")
    for kind in ("work", "hold"):
        assert page.evaluate(ring.format(kind, "stroke")) != ground
    # In work is a stroke; in hold is hollow, and apart from it by where it stands.
    assert page.evaluate(ring.format("work", "fill")) == "none"
    assert "a" in str(page.locator(".needle-hold").get_attribute("d"))


def test_the_largest_cylinder_is_readable_on_the_narrowest_phone(
    new_phone: NewPhone, screens: Path
) -> None:
    phone = new_phone(viewport={"width": 320, "height": 568}, device_scale_factor=2)
    settings(phone, awake=False, guard=0)
    page = begun(phone)
    page.go_back()
    page.locator(".tape a[data-to=yarn]").tap()
    for name, text in {
        "cylinder.slots": "120",
        "fabric.stitches": "15 / in",
        "fabric.rounds": "19 / in",
        "sock.heel.needles": "60",
        "sock.heel.left": "20",
        "sock.toe.needles": "60",
        "sock.toe.left": "20",
    }.items():
        if name.startswith("sock.") and not page.locator("#made").is_visible():
            behind(page, "made")
        page.locator(f"[name='{name}']").fill(text)
    page.locator(".tape a[data-to=counts]").tap()
    expect(page.locator("#so-far-yarn")).to_have_text("120 slots")
    page.locator("#knit-it").tap()
    page.locator("#begin-new").tap()
    go_to(page, "Heel", 30)
    expect(page.locator(".needle-number")).to_be_visible()
    page.screenshot(path=screens / "machine-120-slots-narrow.png")
    # Neighbours are parted by at least a pixel, and the number is no smaller than 12 px.
    work = page.locator(".needle-work").bounding_box()
    ring = page.locator(".rim").bounding_box()
    assert work
    assert ring
    scale = ring["width"] / 224  # the rim is 112 units from the middle
    stroke = float(str(page.locator(".needle-work").get_attribute("stroke-width")))
    assert (2 * 3.1416 * 84 / 120 - stroke) * scale >= 1
    number = page.locator(".needle-number").bounding_box()
    assert number
    assert number["height"] >= 12
    assert sideways(page) == 0
