"""One who knits from a set that came by link: it opens with no host, and whose it is stays."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.browser.at_machine import settings, target
from tests.browser.axe import violations
from tests.browser.book import open_book
from tests.browser.host import Host, until
from tests.browser.test_keeping import take
from tests.browser.test_knitted_list import knitted
from tests.browser.test_looks import sideways, too_small
from tests.browser.test_sets import TITLE, link_of, sets_of, shown, written
from tests.browser.test_share import scanned
from tests.browser.test_two_phones import at_copies, copy
from tests.browser.walk import figures, opened, share, step
from tests.conftest import CARED, PHONE, free_port

NewPhone = Callable[..., BrowserContext]
FROM = f"From “{TITLE}” by Invented Ada."


def passed_on(maker: BrowserContext) -> str:
    """The address of a new set."""
    page = opened(maker)
    sets_of(page)
    written(page)
    shown(page)
    return link_of(page)


def adopted(page: Page, size: str = "Size 40") -> dict[str, str]:
    """Choose a size in the set that has just come; returns the counts."""
    sheet = page.get_by_role("dialog", name=TITLE)
    sheet.get_by_label("For which foot").select_option(label=size, timeout=60_000)
    sheet.get_by_role("button", name="See the counts").tap()
    return figures(page)


def copied(page: Page) -> None:
    """The shared plan becomes the reader's own page, where nothing stood."""
    page.locator("#visit-line summary").tap()
    page.get_by_role("button", name="Make it mine").tap()
    expect(page.locator("#visit-line")).to_be_empty()


def test_whose_it_is_stays_with_a_plan(new_phone: NewPhone, tmp_path: Path, screens: Path) -> None:
    """On the reader's own page, at the machine, in a link and in a copy."""
    address = passed_on(new_phone())
    phone = new_phone(viewport={"width": 360, "height": 640})
    settings(phone, awake=False, sounds=False, guard=0)
    page = opened(phone, address)
    counts = adopted(page)
    copied(page)
    step(page, "counts")
    expect(page.locator("#origin")).to_have_text(FROM)
    page.locator("#origin").scroll_into_view_if_needed()
    page.screenshot(path=screens / "set-origin-360.png")
    page.goto("./")  # at its bare address
    step(page, "counts")
    assert figures(page) == counts
    expect(page.locator("#origin")).to_have_text(FROM)

    share(page, "#show-code")
    sent = scanned(page)
    page.locator("#code").get_by_role("button", name="Close").tap()
    third = opened(new_phone(), sent)
    figures(third)
    expect(third.locator("#origin")).to_have_text(FROM)

    open_book(page)
    file = copy(page, tmp_path / "copy")
    page.locator("#close-book").tap()
    fourth = opened(new_phone())
    open_book(fourth)
    at_copies(fourth)
    take(fourth, file)
    fourth.locator("#take-in").tap()
    expect(fourth.locator("#book .note")).to_contain_text("Loaded")
    fourth.locator("#close-book").tap()
    step(fourth, "counts")
    expect(fourth.locator("#origin")).to_have_text(FROM)

    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    target(page).tap()
    page.get_by_role("button", name="Leave").tap()
    line = page.locator(".on-machine")
    line.locator("summary").first.tap()
    expect(line).to_contain_text(FROM)
    line.get_by_role("button", name="Go on").tap()
    knitted(page)
    page.get_by_role("button", name="Leave the counter").tap()
    page.locator("#knitted-place summary").tap()
    expect(page.locator(".knitted-pair")).to_contain_text(FROM)


def test_what_a_reader_mistypes_is_said_beside_it(new_phone: NewPhone, screens: Path) -> None:
    """Nothing typed is lost, and the first of them has the focus."""
    page = opened(new_phone(viewport={"width": 360, "height": 640}), passed_on(new_phone()))
    sheet = page.get_by_role("dialog", name=TITLE)
    sheet.get_by_label("For which foot").select_option(label="My own foot", timeout=60_000)
    see = sheet.get_by_role("button", name="See the counts")
    see.tap()
    expect(sheet.locator("#reader-length-error")).to_contain_text("Nothing says whose foot it is")
    expect(sheet.locator("#reader-length")).to_be_focused()
    sheet.get_by_label("Foot length").fill("far")
    sheet.get_by_text("My own gauge").tap()
    sheet.get_by_label("Rounds").fill("many")
    see.tap()
    for name in ("length", "rounds"):
        expect(sheet.locator(f"#reader-{name}-error")).to_contain_text("cannot be read")
        expect(sheet.locator(f"#reader-{name}")).to_have_attribute("aria-invalid", "true")
    expect(sheet.locator("#reader-length")).to_have_value("far")
    expect(sheet.locator("#reader-length")).to_be_focused()
    page.screenshot(path=screens / "set-reader-wrong-360.png")
    assert violations(page) == []
    assert too_small(page) == []
    assert sideways(page) <= 0
    sheet.get_by_label("Foot length").fill("24")
    sheet.get_by_label("Rounds").fill("")
    see.tap()
    assert figures(page)["Foot"]


@pytest.fixture
def host() -> Iterator[Host]:
    host = Host(free_port())
    yield host
    host.stop()


@pytest.mark.pyodide
@pytest.mark.slow
def test_a_link_opens_and_is_knitted_with_no_host(
    new_phone: NewPhone, browser: Browser, dist: Path, host: Host
) -> None:
    """On another phone that has the site stored: own foot, own gauge, and on to the counter."""
    link = passed_on(new_phone()).partition("#")[2]
    host.serve(dist)
    features: dict[str, Any] = {**PHONE}
    phone = browser.new_context(**features)
    phone.add_init_script(CARED)
    settings(phone, awake=False, sounds=False, guard=0)
    page = phone.new_page()
    page.goto(host.address)
    until(page, "navigator.serviceWorker.ready.then(() => true)")
    page.close()
    host.stop()

    page = phone.new_page()
    page.goto(f"{host.address}#{link}")
    sheet = page.get_by_role("dialog", name=TITLE)
    expect(sheet).to_be_visible(timeout=120_000)
    sheet.get_by_label("For which foot").select_option(label="My own foot")
    sheet.get_by_label("Foot length").fill("24,6 cm")
    sheet.get_by_label("Around the ball").fill("22,8 cm")
    sheet.get_by_text("My own gauge").tap()
    sheet.get_by_label("Stitches").fill("30 / 10 cm")
    sheet.get_by_label("Rounds").fill("40 / 10 cm")
    sheet.get_by_role("button", name="See the counts").tap()
    rounds = int(figures(page)["Foot"])
    expect(page.locator("#origin")).to_have_text(FROM)
    # By hand, for 60 slots: T = 24.6 cm less 4 %; heel and toe 30 to 10 and back.
    assert rounds == round(24.6 * 0.96 * 4 - 40)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    begun = target(page).inner_text()
    target(page).tap()
    expect(target(page)).not_to_have_text(begun)
    counted = target(page).inner_text()
    page.reload()  # what was counted is on this phone
    expect(target(page)).to_have_text(counted, timeout=120_000)
    phone.close()
