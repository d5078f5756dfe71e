"""How every screen looks: no axe violation, room for a thumb, nothing cut off; pictures are kept.

Outside measures: WCAG 2.2 through axe-core (contrast at level AAA, 7:1, for reading in full sun);
touch targets of 48 px, which is 9 mm on a phone held at arm's length (common practice); WCAG 1.4.4
(text at 200 %) and 1.4.10 (320 px wide without sideways scrolling).
"""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.axe import violations
from tests.browser.pseudo import said
from tests.browser.walk import (
    behind,
    choose,
    field,
    figures,
    fill_foot,
    leave,
    more,
    opened,
    panel,
    settings_sheet,
    share,
    step,
)

NewPhone = Callable[..., BrowserContext]

WIDTHS = {"narrow": (320, 640), "phone": (390, 844), "lying": (844, 390), "desk": (1280, 860)}


def screens_of(page: Page) -> Iterator[str]:
    """Walk through every screen and state; yields the name of each as it stands."""
    yield "1-empty"
    step(page, "counts")
    expect(page.locator("#problems li")).to_have_count(1)
    yield "3-problems"
    step(page, "measure")
    yield "1-errors"
    choose(page, "child")
    more(page, "#shoe summary")
    page.locator("#person-more summary").tap()
    for name in ("#feet", "#foot-again", "#other_foot"):
        page.locator(f"{name} > summary").tap()
    yield "1-more"
    choose(page, "not said")
    fill_foot(page)
    yield "2-swatch"
    choose(page, "Yarn alone")
    behind(page, "made")
    choose(page, "mock rib")
    yield "2-made"
    leave(page)
    yield "2-yarn"
    behind(page, "shelf")
    yield "2-shelf"
    leave(page)
    choose(page, "My swatch")
    step(page, "measure")
    yield "1-guesses"
    step(page, "counts")
    figures(page)
    yield "3-counts"
    share(page, "#show-code")
    expect(page.locator("#code svg")).to_be_visible()
    yield "3-code"
    page.locator("#code button").tap()
    for fold in page.locator("#counts summary:visible").all():
        fold.tap()
    yield "3-unfolded"
    for tab in ("steps", "yarn", "sock"):
        panel(page, tab)
        yield f"3-{tab}"
    settings_sheet(page)
    for fold in page.locator("#settings summary").all():
        fold.tap()
    yield "settings"
    page.locator("#close-settings").tap()
    for fold in reversed(page.locator(".section[open] > summary").all()):
        fold.tap()  # their hundreds of rows need no second and third look by axe
    page.locator("#as-planned button").tap()
    field(page, "first_sock.length").fill("22")
    expect(page.locator(".which-sock")).to_contain_text(said("Sock two"))
    page.locator("#first-sock").scroll_into_view_if_needed()
    yield "3-sock-two"
    page.locator("#chart > summary").tap()
    page.locator("table.chart").scroll_into_view_if_needed()
    yield "3-table"
    step(page, "measure")
    page.locator("#load-demo").tap()
    step(page, "counts")
    expect(page.locator("#so-far-yarn")).to_contain_text(said("72 slots"))
    yield "3-example"


LOOKS = pytest.mark.parametrize(
    ("width", "scheme"),
    [
        ("phone", "light"),
        ("phone", "dark"),
        ("narrow", "light"),
        pytest.param("lying", "dark", marks=pytest.mark.long),
        pytest.param("desk", "light", marks=pytest.mark.long),
        ("desk", "dark"),
    ],
)


@pytest.mark.slow
@LOOKS
def test_every_screen(new_phone: NewPhone, screens: Path, width: str, scheme: str) -> None:
    across, down = WIDTHS[width]
    page = opened(
        new_phone(
            viewport={"width": across, "height": down},
            color_scheme=scheme,
            reduced_motion="reduce",
            device_scale_factor=1.5,
        )
    )
    for name in screens_of(page):
        page.screenshot(path=screens / f"{name}-{width}-{scheme}.png")
        assert sideways(page) == 0, f"{name} scrolls sideways"
        assert violations(page) == [], name
        assert too_small(page) == [], name


def sideways(page: Page) -> int:
    """By how many pixels the page is wider than the screen.

    Not than `innerWidth`: a phone zooms out to a page that is too wide, and that grows with it.
    """
    assert page.viewport_size
    wide: int = page.evaluate("document.documentElement.scrollWidth")
    return wide - page.viewport_size["width"]


def too_small(page: Page) -> list[str]:
    """Whatever is for tapping and less than 48 px high or wide."""
    found: list[str] = page.evaluate(
        """[...document.querySelectorAll(
          "button, a, summary, select, input:not([type=radio], [type=checkbox]), label:has(input)")]
          .filter((e) => e.checkVisibility())
          .map((e) => [e, e.getBoundingClientRect()])
          .filter(([, box]) => box.height < 47.9 || box.width < 47.9)
          .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width} x ${box.height}`)"""
    )
    return found


@pytest.mark.slow
@pytest.mark.parametrize("across", [320, pytest.param(390, marks=pytest.mark.long)])
def test_text_twice_as_large(new_phone: NewPhone, screens: Path, across: int) -> None:
    phone = new_phone(viewport={"width": across, "height": 800})
    page = opened(phone)
    session = phone.new_cdp_session(page)  # the sizes hold as long as the session does
    session.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
    for name in screens_of(page):
        size = page.evaluate("getComputedStyle(document.documentElement).fontSize")
        assert size == "34px", "twice the usual 17 px"
        page.screenshot(path=screens / f"{name}-{across}-large-text.png")
        assert sideways(page) == 0, f"{name} scrolls sideways"


def test_light_or_dark_is_hers_to_choose(new_phone: NewPhone) -> None:
    page = opened(new_phone(color_scheme="light"))
    ground = "getComputedStyle(document.documentElement).backgroundColor"
    light = page.evaluate(ground)
    settings_sheet(page)
    choose(page, "dark")
    dark = page.evaluate(ground)
    assert dark != light
    page.reload()
    assert page.evaluate(ground) == dark
    settings_sheet(page)
    choose(page, "as the phone")
    assert page.evaluate(ground) == light
    page.emulate_media(color_scheme="dark")
    assert page.evaluate(ground) == dark
    choose(page, "light")
    assert page.evaluate(ground) == light


def test_forced_colours_still_mark_the_step(new_phone: NewPhone, screens: Path) -> None:
    page = opened(new_phone(forced_colors="active"))
    fill_foot(page)
    page.screenshot(path=screens / "2-forced-colours.png")
    outline = "getComputedStyle(document.querySelector('.tape [aria-current=step]')).outlineStyle"
    assert page.evaluate(outline) == "solid"
    assert page.evaluate(outline.replace("[aria-current=step]", "a:not([aria-current])")) == "none"


def test_on_paper(phone: BrowserContext, screens: Path) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    figures(page)
    page.emulate_media(media="print")
    expect(page.locator(".tape")).to_be_hidden()
    expect(page.locator("#copy-link")).to_be_hidden()
    expect(page.locator(".tally-foot .figure")).to_be_visible()
    expect(page.locator("#picture-place svg")).to_be_visible()
    page.screenshot(path=screens / "3-on-paper.png", full_page=True)


def test_without_script_the_form_stands_and_says_why(new_phone: NewPhone) -> None:
    page = new_phone(java_script_enabled=False).new_page()
    page.goto("./")
    assert page.locator("h2:visible").all_inner_texts() == [
        "Measure the foot",
        "Machine and yarn",
        "Show the counts",
    ]
    expect(field(page, "foot.length")).to_be_editable()
    why = page.locator("noscript p")
    expect(why).to_be_visible()
    assert "needs JavaScript" in why.inner_text()
