"""From the sender's counts to the page's own there is no moment without counts.

Every state that could be painted is written down: after each change and what hangs on it, and at
each frame.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.browser.test_sent_counts import LINE, counted, link_of
from tests.browser.walk import field, fill_sock, step

NewPhone = Callable[..., BrowserContext]

# The foot's figures that are seen at a moment, one after the other; several if they stand twice.
RECORDER = """
globalThis.moments = [];
const look = () => {
  const seen = [...document.querySelectorAll(".tally")].filter((one) => one.checkVisibility());
  const feet = seen.filter((one) => one.matches(".tally-foot"));
  const moment = seen.length % 5 ? `${seen.length} of 5` :
    feet.map((one) => one.querySelector(".figure").textContent.trim()).join(" ");
  if (moments.at(-1) !== moment) moments.push(moment);
};
document.addEventListener("DOMContentLoaded", () => {
  const all = { subtree: true, childList: true, attributes: true };
  new MutationObserver(() => queueMicrotask(look)).observe(document, all);
  const frame = () => { look(); requestAnimationFrame(frame); };
  frame();
});
"""
# Answers take their time, as on a slow phone.
SLOWLY = """
globalThis.Worker = class extends globalThis.Worker {
  #hear = null;
  get onmessage() { return this.#hear; }
  set onmessage(hear) { this.#hear = hear && ((event) => setTimeout(hear, 400, event)); }
};
"""
BEHIND = "**/assets/behind-*.js"


@pytest.fixture
def page(new_phone: NewPhone) -> Page:
    """One of a slow phone, that writes its moments down."""
    phone = new_phone()
    phone.add_init_script(SLOWLY)
    phone.add_init_script(RECORDER)
    return phone.new_page()


def moments(page: Page) -> list[str]:
    """All until the page's own counts stood."""
    expect(page.locator("#picture-place svg.sock")).to_be_visible()
    page.wait_for_timeout(1000)  # what comes after them
    found: list[str] = page.evaluate("moments")
    return found


def later(page: Page, pattern: str) -> Callable[[], None]:
    """Hold a file back until what is returned is called."""
    held: list[Route] = []
    page.route(pattern, lambda route: held.append(route))

    def go_on() -> None:
        for _ in range(100):
            if held:
                break
            page.wait_for_timeout(50)
        held[0].continue_()

    return go_on


OWN = counted()["Foot"]
SENT = str(int(OWN) + 1)


def test_on_a_slow_phone(page: Page, site: str) -> None:
    page.goto(site + link_of(rounds_more=1))
    assert moments(page) == ["", SENT, OWN]


def test_while_the_rest_of_the_page_comes(page: Page, site: str) -> None:
    """The fields behind the steps join the form after the link was opened: nobody typed."""
    go_on = later(page, BEHIND)
    page.goto(site + link_of(rounds_more=1))
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    go_on()
    assert moments(page) == ["", SENT, OWN]
    expect(page.locator(LINE)).to_contain_text("counts differently")


def test_over_a_page_with_counts(page: Page, site: str) -> None:
    page.goto(site)
    fill_sock(page)
    field(page, "sock.foot_length_of_sock").fill("8 in")
    step(page, "counts")
    before = moments(page)[-1]
    assert before not in {SENT, OWN}
    page.evaluate("link => { location.hash = link; }", link_of(rounds_more=1))
    expect(page.locator(LINE)).to_contain_text("counts differently")
    found = moments(page)
    assert found[found.index(SENT) :] == [SENT, OWN], "and not those of her own page in between"


def test_where_she_types_it_is_no_longer_what_was_sent(page: Page, site: str) -> None:
    page.goto(site + link_of(rounds_more=1))
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    step(page, "yarn")
    field(page, "cylinder.slots").fill("64")
    step(page, "counts")
    expect(page.locator("#sent-place")).to_be_empty()
    assert moments(page)[-1] not in {SENT, OWN}


def test_those_of_last_time_wait_for_no_other_part_of_the_page(page: Page, site: str) -> None:
    page.goto(site)
    fill_sock(page)
    step(page, "counts")
    own = moments(page)[-1]
    page.add_init_script("globalThis.Worker = class { postMessage() {} };")  # never ready
    later(page, BEHIND)
    page.reload()
    expect(page.locator("#last-time")).to_contain_text("From last time")
    assert page.locator(".tally-foot .figure").inner_text() == own
