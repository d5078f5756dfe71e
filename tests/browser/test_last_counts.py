"""The counts of the last visit stand before the calculator is up, and say that they do."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.browser.walk import (
    COUNTED,
    SOCK_FIGURES,
    behind,
    field,
    figures,
    fill_sock,
    opened,
    step,
)

pytestmark = pytest.mark.pyodide


def reload(page: Page) -> Callable[[], None]:
    """Visit again, with a calculator that is up only once what is returned is called."""
    held: list[Route] = []
    page.unroute("**/assets/worker-*.js")
    page.route("**/assets/worker-*.js", lambda route: held.append(route))
    page.reload()
    expect(page.locator("#waiting")).to_be_visible()

    def go_on() -> None:
        for _ in range(100):  # the page asks for it only after it has drawn itself
            if held:
                break
            page.wait_for_timeout(50)
        held[0].continue_()
        expect(page.locator("#waiting")).to_be_hidden()

    return go_on


def test_last_counts_stand_until_they_are_checked(
    new_phone: Callable[..., BrowserContext],
) -> None:
    page = opened(new_phone(service_workers="block"))
    mark, tape, not_yet = (page.locator(at) for at in ("#last-time", "#so-far-counts", "#not-yet"))
    fill_sock(page)
    step(page, "counts")
    assert figures(page).items() >= SOCK_FIGURES.items()

    # As they were, marked, then confirmed.
    go_on = reload(page)
    assert figures(page).items() >= SOCK_FIGURES.items()
    expect(mark).to_contain_text("From last time")
    expect(tape).to_have_text("Last time 46")
    expect(not_yet).to_be_hidden()
    go_on()
    expect(tape).to_have_text("Foot 46 rounds")
    expect(mark).to_be_hidden()
    assert figures(page).items() >= SOCK_FIGURES.items()
    expect(page.locator("#picture-place svg.sock")).to_be_visible()

    # Gone while something else is typed, there again with the old text, replaced by the new counts.
    go_on = reload(page)
    behind(page, "made")
    field(page, "sock.foot_length_of_sock").fill("8 in")
    step(page, "counts")
    expect(page.locator(COUNTED)).to_have_count(0)
    expect(mark).to_be_hidden()
    expect(tape).to_have_text("")
    expect(not_yet).to_contain_text("kept")
    behind(page, "made")
    field(page, "sock.foot_length_of_sock").fill("9 in")
    expect(tape).to_have_text("Last time 46")
    field(page, "sock.foot_length_of_sock").fill("8 in")
    step(page, "counts")
    go_on()
    assert int(figures(page)["Foot"]) in (36, 37)  # an inch, so 9.5 rounds, less than 46
    expect(mark).to_be_hidden()
    behind(page, "made")
    field(page, "sock.foot_length_of_sock").fill("9 in")
    step(page, "counts")
    expect(tape).to_have_text("Foot 46 rounds")

    # Another version counted otherwise.
    page.evaluate(
        """() => {
            const last = JSON.parse(localStorage.getItem("heelwise.last"));
            const foot = last.plan.parts.find(({ part }) => part === "foot");
            foot.count = 45;
            delete foot.figure; // as versions before kept it
            last.plan.counts.foot.rounds = 45;
            localStorage.setItem("heelwise.last", JSON.stringify(last));
        }"""
    )
    go_on = reload(page)
    expect(tape).to_have_text("Last time 45")
    assert figures(page)["Foot"] == "45"
    go_on()
    expect(mark).to_have_text("Foot: this version counts 46 where last time it was 45.")
    assert figures(page)["Foot"] == "46"


def test_last_counts_that_cannot_be_read_or_kept(
    new_phone: Callable[..., BrowserContext],
) -> None:
    page = opened(new_phone(service_workers="block"))
    fill_sock(page)
    step(page, "counts")
    figures(page)
    request = page.evaluate("JSON.stringify(JSON.parse(localStorage['heelwise.last']).request)")
    for spoilt in ("{", "null", "[]", f'{{"request": {request}, "plan": {{}}}}'):
        page.evaluate("(text) => localStorage.setItem('heelwise.last', text)", spoilt)
        reload(page)
        expect(page.locator("#not-yet")).to_contain_text("kept")
        expect(page.locator("#last-time")).to_be_hidden()
        expect(page.locator(COUNTED)).to_have_count(0)

    page.add_init_script("Storage.prototype.setItem = () => { throw new Error('full'); };")
    go_on = reload(page)
    go_on()
    assert figures(page).items() >= SOCK_FIGURES.items()
    expect(page.locator("#last-time")).to_be_hidden()
