"""The three steps on a phone: typed, tapped, put right, kept, and worked through by keyboard."""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Route, expect

from tests.browser.walk import (
    COUNTED,
    SOCK_FIGURES,
    choose,
    error_at,
    field,
    figures,
    fill_foot,
    fill_sock,
    more_of,
    opened,
    panel,
    share,
    step,
)

NewPhone = Callable[..., BrowserContext]
TITLES = ["Measure the foot", "Machine and yarn", "Show the counts"]


def test_three_steps_by_touch(phone: BrowserContext) -> None:
    page = opened(phone)
    assert page.locator("h2:visible").all_inner_texts() == TITLES[:1]
    field(page, "foot.length").fill("24,6")
    expect(page.locator("#foot-length-other")).to_have_text(
        "24.6 cm · 9 5/8 in"
    )  # 246 mm = 9.685 in
    page.locator("#measure .go").tap()
    assert page.locator("h2:visible").all_inner_texts() == TITLES[1:2]
    page.locator("#chips button", has_text="60").tap()
    choose(page, "Stitches and rounds")
    field(page, "fabric.stitches").fill("30")
    field(page, "fabric.rounds").fill("38")
    page.locator("#yarn .go").tap()
    assert page.locator("h2:visible").all_inner_texts() == TITLES[2:]
    assert list(figures(page)) == ["Foot", "Cuff", "Leg", "Heel", "Toe"]
    expect(page.locator("#so-far-counts")).to_have_text(f"Foot {figures(page)['Foot']} rounds")
    expect(page.locator("#picture-place svg.sock")).to_be_visible()
    expect(page.locator(".fits .fit")).to_have_count(5)


def test_counts_are_those_of_the_trade(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_sock(page)
    step(page, "counts")
    assert figures(page).items() >= SOCK_FIGURES.items()
    panel(page, "steps")
    heel = page.locator("details.section", has=page.locator("summary", has_text="Heel"))
    heel.locator("summary").tap()
    rows = heel.locator(".needles-row")
    expect(rows).to_have_count(40)  # 30 down to 10 and back, one needle a row
    assert "30 into hold" in rows.nth(0).inner_text()
    assert "30 in work" in rows.nth(39).inner_text()


def test_back_moves_between_steps(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "yarn")
    step(page, "counts")
    page.go_back()
    expect(page.locator("#yarn")).to_be_visible()
    page.go_back()
    expect(page.locator("#measure")).to_be_visible()
    page.go_forward()
    expect(page.locator("#yarn")).to_be_visible()
    page.reload()
    expect(page.locator("#yarn")).to_be_visible()


def test_other_units_keep_what_was_meant(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    before = figures(page)
    step(page, "measure")
    choose(page, "inches")
    expect(field(page, "foot.length")).to_have_value("23,8 cm")
    expect(page.locator("#foot-length-other")).to_have_text("23.8 cm · 9 3/8 in")
    expect(page.locator("#so-far-measure")).to_have_text("9 3/8 in")
    step(page, "counts")
    assert figures(page) == before


def test_left_out_measures_are_guessed_aloud(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    guess = page.locator("#foot-ball_girth-estimate")
    expect(guess).to_have_text(re.compile(r"about 22\.4\scm \(21 to 23\.8\scm\)"))
    expect(page.locator("#foot-length-estimate")).to_be_empty()
    field(page, "foot.ball_girth").fill("9 in")
    expect(guess).to_be_empty()
    expect(page.locator("#foot-ball_girth-other")).to_have_text("9 in · 22.9 cm")


def test_errors_stand_beside_their_field(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    ball = field(page, "foot.ball_girth")
    ball.fill("2x4")
    expect(error_at(page, "foot.ball_girth")).to_be_empty()  # not while she is still typing
    ball.blur()
    expect(error_at(page, "foot.ball_girth")).to_contain_text("x")
    expect(ball).to_have_attribute("aria-invalid", "true")
    assert "foot-ball_girth-error" in str(ball.get_attribute("aria-describedby"))
    expect(page.locator("#so-far-counts")).to_be_empty()

    step(page, "counts")
    expect(page.locator(COUNTED)).to_have_count(0)
    expect(page.locator("#problems")).to_contain_text("One thing to fix first")
    page.locator("#problems button").tap()
    expect(page.locator("#measure")).to_be_visible()
    expect(ball).to_be_focused()
    expect(ball).to_have_value("2x4")

    ball.fill("22.8")
    expect(error_at(page, "foot.ball_girth")).to_be_empty()
    assert ball.get_attribute("aria-invalid") is None
    step(page, "counts")
    figures(page)
    expect(page.locator("#problems")).to_be_empty()


def test_an_empty_page_is_not_scolded_until_counts_are_asked_for(phone: BrowserContext) -> None:
    page = opened(phone)
    expect(page.locator(".error:not(:empty)")).to_have_count(0)
    step(page, "counts")
    expect(page.locator("#problems li")).to_have_count(1)  # all else is taken as usual
    page.locator("#problems button").first.tap()
    expect(field(page, "foot.length")).to_be_focused()
    expect(error_at(page, "foot.length")).not_to_be_empty()


def test_draft_survives_a_reload(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    choose(page, "Stitches and rounds")
    field(page, "fabric.stitches").fill("7 1/2 / in")
    step(page, "measure")
    choose(page, "child")
    field(page, "person.age").fill("9")
    field(page, "foot.calf_girth").fill("3o cm")  # even what cannot be read
    page.reload()
    expect(field(page, "foot.length")).to_have_value("23,8")
    expect(field(page, "foot.calf_girth")).to_have_value("3o cm")
    expect(field(page, "person.age")).to_have_value("9")
    step(page, "yarn")
    expect(field(page, "fabric.stitches")).to_have_value("7 1/2 / in")
    choose(page, "My swatch")
    expect(field(page, "fabric.swatch.length")).to_have_value("15,6")


def test_a_phone_that_stores_nothing_is_told_and_goes_on(phone: BrowserContext) -> None:
    phone.add_init_script(
        """Object.defineProperty(window, 'localStorage', { get() { throw new Error('closed'); } });
        Object.defineProperty(window, 'indexedDB', { value: undefined });"""
    )
    page = opened(phone)
    fill_foot(page)
    expect(page.locator("#status-line")).to_contain_text("gone once you close it")
    step(page, "counts")
    assert figures(page)["Foot"].isdigit()


@pytest.mark.pyodide
def test_typing_before_the_calculator_is_up(phone: BrowserContext) -> None:
    page = phone.new_page()
    held: list[Route] = []
    page.route("**/assets/worker-*.js", lambda route: held.append(route))
    page.goto("./")
    expect(page.locator("#waiting")).to_contain_text("Getting the calculator ready")
    fill_before = {"foot.length": "23,8", "cylinder.slots": "60"}
    for name, text in fill_before.items():
        step(page, "measure" if name.startswith("foot") else "yarn")
        field(page, name).fill(text)
    choose(page, "Yarn alone")
    field(page, "fabric.yarn").fill("400 m / 100 g")
    step(page, "counts")
    expect(page.locator("#not-yet")).to_be_visible()
    for route in held:
        route.continue_()
    assert figures(page)["Foot"].isdigit()
    expect(page.locator(".swatch-first")).to_be_visible()
    expect(page.locator("#waiting")).to_be_hidden()


@pytest.mark.pyodide
def test_a_calculator_that_cannot_start_says_what_to_do(phone: BrowserContext) -> None:
    page = phone.new_page()
    page.route("**/assets/worker-*.js", lambda route: route.abort())
    page.goto("./")
    field(page, "foot.length").fill("23,8")
    again = page.locator("#status-line button", has_text="Try again")
    expect(again).to_be_visible()
    page.unroute("**/assets/worker-*.js")
    again.tap()
    expect(page.locator("#foot-length-other")).to_have_text("23.8 cm · 9 3/8 in", timeout=30_000)
    expect(page.locator("#status-line")).to_be_empty()


def test_the_example_comes_and_goes_in_one_tap(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    mine = figures(page)
    step(page, "measure")
    page.locator("#load-demo").tap()
    expect(page.locator("#visit-line")).to_contain_text("Invented")
    feet = page.locator("#visit-line [aria-pressed]")
    expect(feet).to_have_count(4)
    step(page, "counts")
    more_of(page.locator("#visit-line .line"))
    seen = set()
    for foot in feet.all():
        foot.tap()
        expect(foot).to_have_attribute("aria-pressed", "true")
        expect(page.locator(".tally-foot .figure")).not_to_have_text("")
        page.wait_for_timeout(400)
        seen.add(tuple(figures(page).values()))
    assert len(seen) == 4
    page.reload()
    expect(page.locator("#visit-line")).to_contain_text("Invented")
    page.locator("#visit-line").get_by_role("button", name="My own page").tap()
    expect(page.locator("#visit-line")).to_be_empty()
    expect(page.locator(".tally-foot .figure")).to_have_text(mine["Foot"])
    assert figures(page) == mine
    expect(field(page, "foot.length")).to_have_value("23,8")


def test_the_next_foot_keeps_the_machine_and_the_last_foot(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    share(page, "#next-foot")
    expect(field(page, "foot.length")).to_be_empty()
    expect(field(page, "cylinder.slots")).to_have_value("60")
    expect(field(page, "fabric.swatch.length")).to_have_value("15,6")
    page.reload()
    page.locator("#bring-back").tap()
    expect(field(page, "foot.length")).to_have_value("23,8")


def test_keyboard_alone(new_phone: NewPhone) -> None:
    page = opened(new_phone(is_mobile=False, has_touch=False))

    def tab_to(selector: str) -> None:
        for _ in range(60):
            page.keyboard.press("Tab")
            if page.locator(":focus").evaluate("(e, s) => e.matches(s)", selector):
                return
        pytest.fail(f"Tab does not reach {selector}")

    tab_to("[name='foot.length']")
    page.keyboard.type("24.6 cm")
    tab_to("#measure .go")
    page.keyboard.press("Enter")
    tab_to("#chips [value='60']")
    page.keyboard.press("Space")
    tab_to("[name='way']")
    page.keyboard.press("ArrowDown")
    tab_to("[name='fabric.stitches']")
    page.keyboard.type("30")
    tab_to("[name='fabric.rounds']")
    page.keyboard.type("38")
    tab_to("#yarn .go")
    page.keyboard.press("Enter")
    assert figures(page)["Foot"].isdigit()
    expect(page.locator("#counts-title")).to_be_focused()


def test_the_answer_is_said_once_it_has_settled(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    said = page.locator("#said")
    expect(said).to_be_empty()  # not at every key
    expect(said).to_have_text(page.locator("#so-far-counts").inner_text())
