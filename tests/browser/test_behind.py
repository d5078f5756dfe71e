"""Pages behind the steps: they come after the first screen, and lose nothing they hold."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import (
    behind,
    error_at,
    field,
    figures,
    fill_foot,
    fill_sock,
    leave,
    opened,
    settings_sheet,
    step,
)

LATER = "**/assets/behind-*.js"
UNITS = Path(__file__).resolve().parents[2] / "webapp" / "page" / "units_beside.js"


def door(page: Page, name: str) -> None:
    """Tap a row of step two by its words."""
    page.get_by_role("link", name=re.compile(name)).tap()


def test_how_a_sock_is_made_is_chosen_on_a_page_of_its_own(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    row = page.get_by_role("link", name=re.compile("How the sock is made"))
    expect(row).to_contain_text("Hung hem, plain leg, short-row heel and toe")
    row.tap()
    expect(page.get_by_role("heading", name="How the sock is made")).to_be_focused()
    expect(page.get_by_role("heading", name="Machine and yarn")).to_be_hidden()
    page.locator("label", has=field(page, "sock.cuff.kind"), has_text="picot hem").tap()
    field(page, "sock.heel.left").fill("12")
    page.get_by_role("button", name="Done").first.tap()
    expect(row).to_be_focused()
    expect(row).to_contain_text("Cuff: picot hem · numbers of your own · the rest as usual")
    step(page, "counts")
    expect(page.locator(".tally-cuff")).to_contain_text("picot hem")


def test_back_and_escape_close_it_and_forward_opens_it(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "yarn")
    door(page, "How the sock is made")
    page.go_back()
    expect(page.get_by_role("heading", name="Machine and yarn")).to_be_visible()
    page.go_forward()
    expect(page.get_by_role("heading", name="How the sock is made")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.get_by_role("heading", name="Machine and yarn")).to_be_visible()
    door(page, "Which of mine")
    expect(page.get_by_role("heading", name="Which of mine suits this foot?")).to_be_focused()
    page.reload()
    expect(page.get_by_role("heading", name="Which of mine suits this foot?")).to_be_visible()
    leave(page)
    expect(page.get_by_role("heading", name="Machine and yarn")).to_be_visible()


def test_an_error_there_is_reached_from_the_counts(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.heel.left").fill("3x4")
    step(page, "counts")
    expect(page.locator("#so-far-yarn")).to_have_text("1 to fix")
    page.locator("#problems").get_by_role("button", name="Go there").tap()
    expect(field(page, "sock.heel.left")).to_be_focused()
    expect(error_at(page, "sock.heel.left")).to_contain_text("x")
    page.go_back()
    expect(page.locator("#problems")).to_be_visible()


@pytest.mark.parametrize("address", ["./", "./#made"])
def test_what_is_kept_counts_before_its_fields_are_there(
    phone: BrowserContext, address: str
) -> None:
    """And comes to stand in them, even half typed, once they are."""
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.leg.height").evaluate("one => { one.closest('details').open = true; }")
    field(page, "sock.leg.height").fill("4x0")
    page.locator("label", has=field(page, "sock.heel.kind"), has_text="two each").tap()
    page.close()
    phone.route(LATER, lambda route: route.abort())
    page = opened(phone, address)
    step(page, "counts")
    expect(page.locator("#problems")).to_contain_text("is not a unit of length")
    expect(field(page, "sock.heel.left")).to_have_count(0)
    step(page, "yarn")
    page.locator("#to-made").tap()
    expect(page.get_by_role("alert")).to_contain_text("This part could not be loaded")
    phone.unroute(LATER)
    page.reload()
    expect(page.locator("#made")).to_have_count(1)
    step(page, "yarn")
    behind(page, "made")
    expect(field(page, "sock.leg.height")).to_have_value("4x0")
    expect(field(page, "sock.heel.left")).to_have_value("10")
    field(page, "sock.leg.height").fill("")
    step(page, "counts")
    assert figures(page)["Heel"] == "30→10→30"
    expect(page.locator(".tally-heel")).to_contain_text("two")


def test_lengths_keep_their_unit_before_their_fields_are_there(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.foot_length_of_sock").fill("23")
    field(page, "sock.length_ease").fill("4")
    page.close()
    phone.route(LATER, lambda route: route.abort())
    page = opened(phone)
    step(page, "measure")
    page.locator(".switch label", has_text="in").last.tap()
    page.close()
    phone.unroute(LATER)
    page = opened(phone)
    behind(page, "made")
    expect(field(page, "sock.foot_length_of_sock")).to_have_value("23 cm")
    expect(field(page, "sock.length_ease")).to_have_value("4 %")


def test_the_units_named_for_later_are_those_beside_the_fields(phone: BrowserContext) -> None:
    page = opened(phone)
    expect(page.locator("#made")).to_have_count(1)
    shown: dict[str, list[str]] = page.evaluate(
        """() => {
          const roots = [...document.querySelectorAll("#made, #shelf, #chart")];
          const templates = roots.flatMap((one) => [...one.querySelectorAll("template")]);
          const all = [...roots, ...templates.map((one) => one.content)];
          const inputs = all.flatMap((one) => [...one.querySelectorAll(".with-unit input")]);
          return Object.fromEntries(inputs.map((one) => [one.name,
            ["cm", "in"].map((unit) =>
              one.parentElement.querySelector(`[data-units=${unit}]`).textContent)]));
        }"""
    )
    # What stands in rows already is named by its template; the table's ends may be sizes of shoes.
    left_out = re.compile(r"(girths|bands|yarns)\.\d+\.|chart\.(first|last|step)$")
    shown = {name: units for name, units in shown.items() if not left_out.search(name)}
    told = {
        name: [cm, inches]
        for cm, inches, names in re.findall(
            r'\[\s*"([^"]+)",\s*"([^"]+)",\s*\[([^]]*)\]', UNITS.read_text()
        )
        for name in re.findall(r'"([^"]+)"', names)
    }
    assert told == shown


def test_the_settings_are_a_page_over_any_step(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "yarn")
    settings_sheet(page)
    expect(page.get_by_role("heading", name="Settings")).to_be_focused()
    expect(page.locator(".tape [aria-current=step]")).to_contain_text("Yarn")
    leave(page)
    expect(page.locator("#yarn")).to_be_visible()
    expect(page.get_by_role("button", name="Settings")).to_be_focused()
