"""Notices above the work: one line each, and the first field in sight below them."""

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.asking import answer, asked
from tests.browser.book import new_wearer, open_book
from tests.browser.on_paper import NewPhone
from tests.browser.walk import field, figures, fill_foot, more_of, opened, step

MOST = 56  # px
SIZES = [(360, 640), (844, 390)]


def in_sight(page: Page, what: Locator) -> None:
    """The whole of it lies above the tape, on the first screen."""
    page.evaluate("scrollTo(0, 0)")
    box, tape = what.bounding_box(), page.locator(".thumb").bounding_box()
    assert box
    assert tape
    assert box["y"] + box["height"] <= tape["y"], (box, tape)


def one_line(notice: Locator) -> None:
    expect(notice).to_be_visible()
    box = notice.bounding_box()
    assert box
    assert box["height"] <= MOST, box


@pytest.mark.parametrize("size", SIZES)
def test_a_new_wearers_sheet_begins_on_the_first_screen(
    new_phone: NewPhone, size: tuple[int, int]
) -> None:
    page = opened(new_phone(viewport={"width": size[0], "height": size[1]}))
    open_book(page)
    new_wearer(page, "Invented: Nuri")
    notice = page.locator("#visit-line .line")
    one_line(notice)
    in_sight(page, field(page, "foot.length"))
    step(page, "yarn")
    one_line(notice)
    in_sight(page, field(page, "cylinder.slots"))
    more_of(notice)
    expect(notice).to_contain_text("Your own page is kept apart")


@pytest.mark.parametrize("size", SIZES)
def test_example_and_shared_plan_take_one_line(new_phone: NewPhone, size: tuple[int, int]) -> None:
    page = opened(new_phone(viewport={"width": size[0], "height": size[1]}))
    page.locator("#load-demo").tap()
    one_line(page.locator("#visit-line .line"))
    in_sight(page, field(page, "foot.length"))
    link = answer({"do": "page", "request": asked()})["counts_link"]
    shared = opened(new_phone(viewport={"width": size[0], "height": size[1]}), f"./#{link}")
    one_line(shared.locator("#visit-line .line"))
    expect(shared.locator("#counts-place")).to_contain_text("The foot is not in the link")
    expect(shared.locator("#fit")).to_be_hidden()


def test_a_sock_on_the_machine_takes_one_line(new_phone: NewPhone) -> None:
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    fill_foot(page)
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(page.locator(".at-machine")).to_be_visible()
    page.go_back()
    one_line(page.locator("#machine-line .line"))
    step(page, "measure")
    in_sight(page, field(page, "foot.length"))
