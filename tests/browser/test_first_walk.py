"""What a newcomer stumbled over: each was seen once, and must not come back."""

import re

from playwright.sync_api import BrowserContext, Locator, expect

from tests.browser.walk import (
    choose,
    error_at,
    field,
    figures,
    fill_foot,
    more,
    opened,
    share,
    step,
)


def test_what_was_meant_is_one_tap_away(phone: BrowserContext) -> None:
    page = opened(phone)
    length = field(page, "foot.length")
    length.fill("246 cm")
    length.blur()
    expect(page.locator("#so-far-measure")).to_have_text("1 to fix")
    error_at(page, "foot.length").locator("button").tap()
    expect(length).to_have_value("246 mm")
    expect(error_at(page, "foot.length")).to_be_empty()
    expect(page.locator("#foot-length-other")).to_have_text("24.6 cm · 9 5/8 in")  # 9.685 in


def test_keys_for_numbers_and_all_keys_at_a_tap(phone: BrowserContext) -> None:
    """A phone's decimal keys have neither space nor slash (seen on iPhone; from memory)."""
    page = opened(phone)
    for units in ("inches", "centimeters"):
        choose(page, units)
        for name in ("foot.length", "fabric.swatch.length", "first_sock.length", "chart.first"):
            expect(field(page, name)).to_have_attribute("inputmode", "decimal")
        expect(field(page, "fabric.rounds")).to_have_attribute("inputmode", "decimal")
        expect(field(page, "cylinder.slots")).to_have_attribute("inputmode", "numeric")
    field(page, "foot.length").tap()
    page.get_by_role("button", name="All keys").tap()
    expect(field(page, "foot.length")).to_have_attribute("inputmode", "text")
    expect(field(page, "foot.length")).to_be_focused()


def test_rounds_left_out_are_a_guess_and_look_like_one(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    choose(page, "Stitches and rounds")
    field(page, "fabric.stitches").fill("30")
    expect(page.locator("#fabric-rounds-estimate")).to_contain_text("Left empty")
    expect(page.locator("#fabric-rounds-other")).to_be_empty()
    expect(page.locator("#fabric-stitches-other")).to_have_text("7.62 / in")
    step(page, "counts")
    expect(page.locator(".swatch-first")).to_be_visible()
    step(page, "yarn")
    field(page, "fabric.rounds").fill("38")
    expect(page.locator("#fabric-rounds-estimate")).to_be_empty()
    step(page, "counts")
    expect(page.locator(".swatch-first")).to_have_count(0)


def test_the_next_foot_starts_afresh(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    expect(page.locator("#foot-calf_girth-estimate")).to_contain_text("Left empty")
    step(page, "counts")
    share(page, "#next-foot")
    expect(page.locator("#so-far-counts")).to_be_empty()  # the engine has answered
    expect(page.locator("#measure .estimate:not(:empty)")).to_have_count(0)
    expect(page.locator("#measure .error:not(:empty)")).to_have_count(0)
    expect(page.locator("#bring-back")).to_be_in_viewport()
    step(page, "counts")
    expect(page.locator("#so-far-measure")).to_have_text("1 to fix")
    expect(page.locator("#said")).to_be_empty()  # no counts of the last foot


def test_the_example_is_seen_when_it_comes(phone: BrowserContext) -> None:
    page = opened(phone)
    page.locator("#load-demo").tap()
    expect(page.locator("#visit-line .line")).to_be_in_viewport()


def test_nothing_is_to_mend_on_an_empty_sheet_once_the_example_is_gone(
    phone: BrowserContext,
) -> None:
    page = opened(phone)
    page.locator("#load-demo").tap()
    step(page, "counts")
    figures(page)
    page.locator("#visit-line").get_by_role("button", name="My own page").tap()
    expect(page.locator("#problems li")).to_have_count(3)  # the calculator has answered
    for name in ("measure", "yarn"):
        expect(page.locator(f"#so-far-{name}")).to_be_empty()
    expect(page.locator(".error:not(:empty)")).to_have_count(0)
    step(page, "measure")
    step(page, "counts")  # now she asks
    expect(page.locator("#so-far-measure")).to_have_text("1 to fix")


def test_a_child_is_offered_childrens_sizes(phone: BrowserContext) -> None:
    page = opened(phone)
    offered = "[...document.querySelectorAll('#person-shoe_size-system option:enabled')]"
    names = f"{offered}.map((option) => option.value)"
    grown = ["EU", "UK", "US women", "US men", "Mondopoint", "Japan"]
    assert page.evaluate(names) == grown
    choose(page, "child")
    child = ["Mondopoint", "Japan", "EU child", "UK child", "US child", "US youth"]
    assert page.evaluate(names) == child
    assert page.locator("#person-shoe_size-system").input_value() in child
    more(page, "#shoe summary")
    field(page, "person.shoe_size.system").select_option("EU child")
    field(page, "person.shoe_size.size").fill("30")
    choose(page, "woman")
    assert page.locator("#person-shoe_size-system").input_value() == "EU child"  # hers, kept


def test_twice_the_text_by_the_page_itself(phone: BrowserContext) -> None:
    """WCAG 1.4.4 where the root's size grows and the phone's own stays."""
    page = opened(phone)
    fill_foot(page)
    page.evaluate("document.documentElement.style.fontSize = '34px'")
    for name in ("measure", "yarn", "counts"):
        step(page, name)
        assert page.evaluate("document.documentElement.scrollWidth") == 390
        tape = page.locator(".tape").bounding_box()
        assert tape is not None
        assert tape["height"] < 844 / 6, "the tape leaves the screen to the work"
        title = page.locator(f".tape a[data-to={name}] .title")
        expect(title).not_to_be_empty()  # said, not seen
    figures(page)
    heel = page.locator(".tally-heel .figure").bounding_box()
    assert heel is not None
    assert heel["x"] + heel["width"] <= 390


def test_the_field_she_is_in_stays_where_it_is(phone: BrowserContext) -> None:
    page = opened(phone)
    page.set_viewport_size({"width": 390, "height": 900})  # round the ball is wholly in sight
    length, ball, heel = (
        field(page, f"foot.{name}") for name in ("length", "ball_girth", "heel_girth")
    )
    start = top(length)
    length.tap()
    ball.evaluate("field => field.focus({ preventScroll: true })")
    before = top(ball)
    expect(error_at(page, "foot.length")).not_to_be_empty()  # above it
    assert abs(top(ball) - before) <= 1
    assert start - top(length) > 100, "the words did take room"
    length.focus()
    length.fill("24")
    expect(page.locator("#foot-heel_girth-estimate")).to_contain_text("Left empty")
    ball.focus()
    page.wait_for_timeout(600)  # the browser brings a field into sight at its leisure
    before, below = top(ball), top(heel)
    ball.fill("23")
    expect(page.locator("#foot-ball_girth-estimate")).to_be_empty()
    expect(page.locator("#foot-ball_girth-other")).not_to_be_empty()
    assert abs(top(ball) - before) <= 1
    assert abs(top(heel) - below) <= 2, "the guess stood in the field, and took no room"
    heel.evaluate("field => field.scrollIntoView({ block: 'center', behavior: 'instant' })")
    heel.evaluate("field => field.focus({ preventScroll: true })")
    before = top(heel)
    expect(field(page, "foot.calf_girth")).to_have_attribute("placeholder", re.compile("guessed"))
    assert abs(top(heel) - before) <= 1
    rows = [page.locator(f"[data-field='foot.{name}']") for name in ("ball_girth", "calf_girth")]
    measured, guessed = (row.evaluate("row => row.offsetHeight") for row in rows)
    assert measured == guessed, "whether measured or guessed, a row is as high"


def top(place: Locator) -> float:
    """How far below the edge of the screen it begins, in CSS pixels."""
    box = place.bounding_box()
    assert box is not None
    return box["y"]


def test_a_length_and_a_cylinder_with_usual_yarn_are_five_taps(phone: BrowserContext) -> None:
    """And the digits: no ball band is looked for, and nothing is to mend."""
    page = opened(phone)
    field(page, "foot.length").tap()
    page.keyboard.type("24")
    page.locator(".tape a[data-to=yarn]").tap()
    page.get_by_role("button", name="72", exact=True).tap()
    choose(page, "Yarn alone")
    page.locator(".tape a[data-to=counts]").tap()
    expect(page.locator(".tally-foot .figure")).to_have_text(re.compile(r"^\d\d$"))
    expect(page.locator(".swatch-first")).to_be_visible()
