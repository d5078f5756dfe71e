"""A link's counts stand before the calculator is up, and are then checked by it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from engine.answers import link, sent_counts
from engine.sock import plan
from tests.asking import answer
from tests.browser.host import REQUEST
from tests.browser.walk import field, figures, step

NewPhone = Callable[..., BrowserContext]
pytestmark = pytest.mark.pyodide
LINE = "#sent-place .line"


def link_of(rounds_more: int = 0) -> str:
    """A link, its counts as a sender's phone would have counted them that counts otherwise."""
    sock = plan.make(REQUEST)
    sent = sock.with_foot(sock.foot_rounds + rounds_more)
    return f"#{link.write(REQUEST, sent_counts.pack(sent))}"


@pytest.fixture
def held(new_phone: NewPhone) -> Iterator[tuple[Page, Callable[[], None]]]:
    """A page whose calculator is up only once what is beside it is called."""
    phone = new_phone(service_workers="block")
    page, waiting = phone.new_page(), list[Route]()
    page.route("**/assets/worker-*.js", lambda route: waiting.append(route))

    def go_on() -> None:
        for _ in range(100):
            if waiting:
                break
            page.wait_for_timeout(50)
        waiting[0].continue_()
        expect(page.locator("#waiting")).to_be_hidden()

    yield page, go_on
    page.unroute_all(behavior="ignoreErrors")


def early(page: Page) -> dict[str, str]:
    """The counts that came along, by part."""
    expect(page.locator("#sent-place .tally").first).to_be_visible()
    found: dict[str, str] = page.evaluate(
        """() => Object.fromEntries([...document.querySelectorAll("#sent-place .tally")].map(
            (one) => [one.querySelector("h3").textContent,
                      one.querySelector(".figure").textContent]))"""
    )
    return found


def counted() -> dict[str, str]:
    """As the engine counts them, natively."""
    page: dict[str, Any] = answer({"do": "page", "request": REQUEST})
    titles = {one["part"]: one["title"] for one in page["plan"]["parts"]}
    return {titles[part]: figure for part, figure in page["counted"]["figures"].items()}


def test_sent_counts_stand_until_they_are_checked(
    held: tuple[Page, Callable[[], None]], site: str
) -> None:
    page, go_on = held
    page.goto(site + link_of())
    assert early(page) == counted()
    expect(page.locator(LINE)).to_contain_text("Counted on the sender’s phone, for 60 slots")
    expect(page.locator("#not-yet")).to_be_hidden()
    expect(page.locator("#counts-title")).to_be_attached()
    go_on()
    expect(page.locator(LINE)).to_have_text("Checked: this phone counts the same as the sender’s.")
    expect(page.locator("#picture-place svg.sock")).to_be_visible()
    expect(page.locator("#sent-place .tally")).to_have_count(0)
    assert figures(page)["Foot"] == counted()["Foot"]
    step(page, "yarn")  # her own change: it is no longer what was sent
    field(page, "cylinder.slots").fill("64")
    step(page, "counts")
    expect(page.locator("#sent-place")).to_be_empty()


def test_where_they_differ_both_are_told(held: tuple[Page, Callable[[], None]], site: str) -> None:
    page, go_on = held
    page.goto(site + link_of(rounds_more=1))
    own = counted()["Foot"]
    sent = str(int(own) + 1)
    assert early(page)["Foot"] == sent
    go_on()
    expect(page.locator(LINE)).to_contain_text("counts differently")
    expect(page.locator(f"{LINE} li")).to_have_text(
        f"Foot: {own} here, {sent} on the sender’s phone."
    )
    expect(page.locator("#sent-place .tally")).to_have_count(0)  # the page's own are there
    assert figures(page)["Foot"] == own


@pytest.mark.parametrize("kind", ["damaged", "short", "without counts"])
def test_what_was_damaged_or_brings_none_shows_none(
    held: tuple[Page, Callable[[], None]], site: str, kind: str
) -> None:
    page, go_on = held
    whole = link_of()
    at = len(whole) // 2
    changed = f"{whole[:at]}{'A' if whole[at] != 'A' else 'B'}{whole[at + 1 :]}"
    given = {
        "damaged": changed,
        "short": whole[:-6],
        "without counts": f"#{link.write(REQUEST)}",
    }[kind]
    page.goto(site + given)
    expect(page.locator("#visit-line")).to_contain_text("Opening the shared plan")
    page.wait_for_timeout(500)
    expect(page.locator("#sent-place .tally")).to_have_count(0)
    go_on()
    if kind == "without counts":
        assert figures(page)["Foot"] == counted()["Foot"]
    else:
        expect(page.locator("#visit-line [role=alert]")).to_contain_text("damaged")
    expect(page.locator(LINE)).to_have_count(0)


def test_her_own_page_takes_them_away(held: tuple[Page, Callable[[], None]], site: str) -> None:
    page, go_on = held
    page.goto(site + link_of())
    early(page)
    go_on()
    expect(page.locator(LINE)).to_contain_text("Checked")
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(page.locator("#sent-place")).to_be_empty()
    expect(page.locator("#visit-line")).to_be_empty()
