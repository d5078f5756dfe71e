"""Two tabs on one sheet: what either types stands in both, and of one field the later text."""

from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests import asking as api
from tests.browser.book import HELD, back_to_book, card, held, new_wearer, open_book
from tests.browser.host import REQUEST, comes_true
from tests.browser.walk import behind, choose, field, opened, step

Tabs = tuple[Page, Page]
TYPED = HELD.replace("heelwise.book", "heelwise.typed")
NO_CHANNEL = "delete window.BroadcastChannel"


@pytest.fixture
def tabs(phone: BrowserContext) -> Tabs:
    """Two tabs on the empty page, both open before anything is typed."""
    return opened(phone), opened(phone)


def wearers_sheet(phone: BrowserContext) -> Tabs:
    """Two tabs on the sheet of one wearer."""
    one = opened(phone)
    open_book(one)
    new_wearer(one, "Invented: Nuri")
    comes_true(one, lambda: held(one)["visits"])
    other = opened(phone, "./#book")
    card(other, "Invented: Nuri")
    other.locator("#open-sheet").tap()
    expect(other.locator("#visit-line")).to_contain_text("Saved in the book")
    return one, other


def stands(page: Page, **texts: str) -> None:
    """Fields of the foot hold these."""
    for name, text in texts.items():
        expect(field(page, f"foot.{name}")).to_have_value(text)


def typed(page: Page) -> dict[str, dict[str, Any]]:
    """What the database has of what is typed, by name."""
    return {one["name"]: one["value"] for one in page.evaluate(TYPED)["kept"]}


def test_both_keep_what_either_typed(tabs: Tabs) -> None:
    one, other = tabs
    field(one, "foot.ball_girth").fill("22")
    field(other, "foot.heel_girth").fill("31")
    for page in tabs:
        stands(page, ball_girth="22", heel_girth="31")
    comes_true(one, lambda: len(typed(one).get("mine", {"changed": {}})["changed"]) == 2)
    for page in tabs:
        page.reload()
        stands(page, ball_girth="22", heel_girth="31")


def test_what_is_typed_after_a_link_was_opened_elsewhere_is_shown_next(tabs: Tabs) -> None:
    one, other = tabs
    link = api.answer({"do": "page", "request": REQUEST})["link"]
    other.goto(f"./#{link}")
    expect(other.locator("#visit-line")).to_contain_text("A shared plan")
    other.close()
    field(one, "foot.ball_girth").fill("22")
    comes_true(one, lambda: typed(one).get("mine") and typed(one)["visit"] is None)
    again = opened(one.context)
    stands(again, ball_girth="22")
    expect(again.locator("#visit-line")).not_to_contain_text("A shared plan")


def test_of_one_field_the_later_text_stays_and_the_other_is_told(tabs: Tabs) -> None:
    one, other = tabs
    field(one, "foot.length").fill("24")
    stands(other, length="24")
    field(one, "foot.ball_girth").fill("22")  # it is left
    field(other, "foot.length").fill("25")
    stands(one, length="25")
    told = one.locator("#elsewhere")
    expect(told).to_contain_text("Another tab changed this sheet")
    expect(told).to_contain_text("24 is now 25")
    expect(other.locator("#elsewhere")).to_have_count(0)
    field(other, "foot.length").fill("")
    expect(told).to_contain_text("25 is deleted")
    stands(one, length="")
    field(one, "foot.ball_girth").fill("23")
    expect(told).to_have_count(0)
    one.reload()
    stands(one, length="", ball_girth="23")


def test_the_field_in_hand_is_left_alone(tabs: Tabs) -> None:
    one, other = tabs
    field(other, "foot.length").fill("2")
    stands(one, length="2")
    field(one, "foot.length").fill("26")
    field(one, "foot.ball_girth").fill("22")
    stands(other, length="2", ball_girth="22")  # its own is in hand still
    other.keyboard.press("Tab")
    stands(other, length="26")
    expect(other.locator("#elsewhere")).to_contain_text("2 is now 26")
    # Typed on, it is the later one.
    field(one, "foot.heel_girth").focus()
    field(other, "foot.heel_girth").fill("30")
    stands(one, heel_girth="")
    one.keyboard.type("31")
    stands(one, heel_girth="31")
    other.keyboard.press("Tab")
    stands(other, heel_girth="31")


def test_a_choice_a_list_that_grows_the_shelf_and_the_table(tabs: Tabs) -> None:
    one, other = tabs
    choose(one, "man")
    expect(other.locator("[name=who][value=man]")).to_be_checked()
    step(one, "yarn")
    behind(one, "shelf")
    field(one, "shelf.yarns.0.name").fill("moss")
    one.locator("#shelf button.add").tap()
    field(one, "shelf.yarns.1.name").fill("slate")
    behind(other, "shelf")
    expect(field(other, "shelf.yarns.1.name")).to_have_value("slate")
    field(other, "shelf.cylinders").fill("60")
    expect(field(one, "shelf.cylinders")).to_have_value("60")
    step(one, "counts")
    one.locator("#chart > summary").tap()
    field(one, "chart.first").fill("22")
    expect(field(other, "chart.first")).to_have_value("22")


def test_a_bare_number_keeps_its_unit_where_the_other_tab_goes_over_to_inches(tabs: Tabs) -> None:
    one, other = tabs
    field(one, "foot.length").fill("24")
    stands(other, length="24")
    field(other, "foot.ball_girth").fill("22")  # in hand
    choose(one, "inches")
    expect(other.locator("html")).to_have_attribute("data-units", "in")
    for page in tabs:
        stands(page, length="24 cm", ball_girth="22 cm")


def test_a_wearers_sheet(phone: BrowserContext) -> None:
    tabs = one, other = wearers_sheet(phone)
    field(one, "foot.ball_girth").fill("22")
    field(other, "foot.heel_girth").fill("31")
    for page in tabs:
        stands(page, ball_girth="22", heel_girth="31")

    def kept() -> bool:
        (visit,) = held(one)["visits"]
        values = visit["values"]
        return (values.get("foot.ball_girth"), values.get("foot.heel_girth")) == ("22", "31")

    comes_true(one, kept)
    back_to_book(one)
    card(one, "Invented: Nuri")
    one.locator("#wearer-due").fill("2026-11-28")
    back_to_book(other)
    card(other, "Invented: Nuri")
    expect(other.locator("#wearer-due")).to_have_value("2026-11-28")
    other.locator("#wearer-price").fill("40")
    expect(one.locator("#wearer-price")).to_have_value("40")
    comes_true(one, lambda: held(one)["wearers"][0]["price"] == "40")
    assert held(one)["wearers"][0]["due"] == "2026-11-28"
    other.go_back()  # from a field that is in hand
    expect(other.locator(".wearers li")).to_have_count(1)


def test_a_wearer_deleted_in_another_tab_is_told(phone: BrowserContext) -> None:
    one, other = wearers_sheet(phone)
    back_to_book(one)
    card(one, "Invented: Nuri")
    one.locator("#delete-wearer").tap()
    one.locator("#delete-surely").tap()
    expect(other.locator("#visit-line")).to_contain_text("This wearer was deleted in another tab")


@pytest.fixture
def deaf(phone: BrowserContext) -> Tabs:
    """Two tabs of a browser in which they cannot hear of each other."""
    phone.add_init_script(NO_CHANNEL)
    return opened(phone), opened(phone)


def test_where_tabs_cannot_hear_of_each_other_the_phone_has_both(deaf: Tabs) -> None:
    one, other = deaf
    field(one, "foot.ball_girth").fill("22")
    comes_true(one, lambda: "mine" in typed(one))
    field(other, "foot.heel_girth").fill("31")
    stands(other, ball_girth="22", heel_girth="31")  # it heard when it wrote its own
    one.reload()
    stands(one, ball_girth="22", heel_girth="31")


def test_another_sheet_in_another_tab_stays_there(tabs: Tabs) -> None:
    one, other = tabs
    field(one, "foot.length").fill("24")
    other.locator("#load-demo").tap()
    expect(other.locator("#visit-line")).to_contain_text("Invented:")
    field(one, "foot.ball_girth").fill("22")
    stands(one, length="24", ball_girth="22")
    expect(one.locator("#visit-line")).to_be_empty()
    expect(field(other, "foot.ball_girth")).not_to_have_value("22")
    other.locator("#visit-line").get_by_role("button", name="My own page").tap()
    stands(other, length="24", ball_girth="22")
