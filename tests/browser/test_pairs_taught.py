"""What finished pairs taught enters the next plan, in no field, and stays with the knitter."""

import re
from collections.abc import Callable
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests import asking as api
from tests.browser.at_machine import target
from tests.browser.axe import violations
from tests.browser.walk import field, figures, fill_sock, opened, share, step

FILL = """async (ended) => {
  const database = await new Promise((done, fail) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  const writing = database.transaction("ended", "readwrite");
  for (const one of ended) writing.objectStore("ended").put(one);
  await new Promise((done) => { writing.oncomplete = done; });
  database.close();
}"""
BEGAN = 1_700_000_000_000  # ms
EVEN = (0, 2, -1, 1, -2, 0, 1, -1, 2, 0, -1, 1, 0)  # mm


def ended(at: int) -> dict[str, Any]:
    """A pair of a steady knitter, 1.5 % shorter than its swatch says, each of its own yarn."""
    length = 150 + at
    swatch = {"needles": "60", "rounds": "60", "flat_width": f"{100 + at} mm"}
    pocket = {"needles": "30", "left": "10"}
    request = {
        "units": "cm",
        "foot": {"length": "24,6"},
        "person": {"sex": "woman"},
        "cylinder": {"slots": "60"},
        "fabric": {"swatch": {**swatch, "length": f"{length} mm"}},
        "sock": {"heel": pocket, "toe": pocket},
    }
    came = 90 * length / 60 * 0.985 + EVEN[at]
    return {
        "id": f"p-{at}",
        "began": BEGAN + at * 10**8,
        "ended": BEGAN + at * 10**8 + 10**7,
        "label": "60 slots, 50 foot rounds",
        "request": request,
        "counted": [api.answer({"do": "knit", "request": request})["counted"]],
        "measured": {"foot_rounds": "50", "length": f"{came:.0f} mm"},
        "times": {},
        "notes": [],
        "yarn": ["", ""],
        "last": 9,
    }


def with_pairs(phone: BrowserContext) -> Page:
    """The counts of a gauge, on a phone that has 13 pairs; the first is deleted."""
    page = opened(phone)
    fill_sock(page)
    step(page, "counts")
    page.locator("#knit-it").tap()  # the counter makes its database
    expect(target(page)).to_be_visible()
    page.evaluate(FILL, [ended(at) for at in range(13)])
    page.go_back()
    figures(page)
    page.locator("#knitted-place summary").tap()
    page.locator(".delete-pair").last.tap()
    expect(page.locator(".bring-back")).to_be_visible()
    return page


def link_of(page: Page) -> dict[str, Any]:
    """The request of the link that would be copied."""
    page.evaluate("navigator.clipboard.writeText = (text) => { window.copied = text; }")
    page.locator("#copy-link").tap()
    address = page.evaluate("window.copied")
    request: dict[str, Any] = api.answer({"do": "open", "link": address.split("#")[1]})["request"]
    return request


def test_twelve_pairs_enter_the_plan_and_stay_out_of_its_link(
    phone: BrowserContext, new_phone: Callable[..., BrowserContext], screens: Any
) -> None:
    page = with_pairs(phone)
    foot = page.locator(".tally-foot .detail")
    before = foot.inner_text()
    step(page, "yarn")
    field(page, "fabric.rounds").fill("9.7 / in")
    step(page, "counts")
    why = page.locator("details.whole")
    why.locator("summary").tap()
    expect(why).to_contain_text(re.compile("by 12 finished pairs.*so the range is narrower"))
    after = foot.inner_text()
    assert before != after
    why.scroll_into_view_if_needed()
    page.screenshot(path=screens / "pairs-taught.png")
    share(page)
    assert link_of(page)["knitter"] == {"left_out": "yes"}
    page.locator("#with-record").tap()
    assert link_of(page)["knitter"]["pairs"] == 12
    page.locator("#with-record").scroll_into_view_if_needed()
    page.screenshot(path=screens / "record-in-link.png")
    assert not violations(page)

    page.reload()
    expect(page.locator("#last-time")).to_be_hidden()
    why = page.locator("details.whole")
    expect(why).to_contain_text("by 12 finished pairs")
    assert foot.inner_text() == after, "at once, as when she was here last"


def test_who_opens_the_link_sees_that_the_record_was_left_out(
    new_phone: Callable[..., BrowserContext],
) -> None:
    told = {"fabric": {"stitches": "7.5 / in", "rounds": "9.6 / in"}}
    side = {"scatter": 0.01, "weight": 12, "habit": 1, "habit_sd": 0.005}
    hers = {"pairs": 12, "stitches": side, "rounds": side}
    found = api.answer({"do": "page", "request": api.asked({**told, "knitter": hers})})
    page = opened(new_phone(), f"./#{found['counts_link']}")
    why = page.locator("details.whole")
    expect(why).to_contain_text("leaves out how the sender’s finished pairs came out")
    page = opened(new_phone(), f"./#{found['link_with_record']}")
    expect(page.locator("details.whole")).to_contain_text("by 12 finished pairs")
    low, high = (found["plan"]["range"]["foot"][end] for end in ("low", "high"))
    expect(page.locator(".tally-foot .detail")).to_contain_text(
        re.compile(rf"{low}\D{{1,10}}{high}")
    )
