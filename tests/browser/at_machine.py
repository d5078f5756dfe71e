"""How a person gets to the machine and counts there: what the counter's tests share."""

import json
from typing import Any

from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.browser.pseudo import said
from tests.browser.walk import SOCK, field, figures, fill_sock, opened, step


def settings(phone: BrowserContext, **choices: Any) -> None:
    """Set the counter's settings before a page is opened; `guard=0` lets a test count fast."""
    phone.add_init_script(f"localStorage['heelwise.counter'] = {json.dumps(json.dumps(choices))}")


def begun(phone: BrowserContext) -> Page:
    """A page with the sock of `walk.SOCK` on the machine, nothing counted."""
    page = opened(phone)
    planned(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    return page


def request(**more: Any) -> dict[str, Any]:
    """The request of `walk.SOCK`."""
    nested: dict[str, Any] = {"units": "cm", **more}
    for name, text in SOCK.items():
        *groups, last = name.split(".")
        into = nested
        for group in groups:
            into = into.setdefault(group, {})
        into[last] = text
    return nested


def sock_one_measured(page: Page) -> str:
    """Write of sock one on the plan; returns the foot rounds of sock two."""
    page.locator("#first-sock > summary").tap()
    field(page, "first_sock.foot_rounds").fill("46")
    field(page, "first_sock.length").fill("21,5")
    expect(page.locator(".which-sock")).to_contain_text(said("Sock two"))
    return page.locator(".tally-foot .figure").inner_text()


def planned(page: Page) -> None:
    """Fill in the sock of `walk.SOCK` and go to its counts."""
    fill_sock(page)
    step(page, "counts")
    figures(page)


def target(page: Page) -> Locator:
    """The one large button."""
    return page.locator(".target")


def title(page: Page) -> Locator:
    """Which sock and which section."""
    return page.locator(".at-title")


def done(page: Page) -> Locator:
    """How many are done in the section, in words."""
    return page.locator(".done-words")


def go_to(page: Page, section: str, number: int | None = None, sock: str = "") -> None:
    """Jump by the list, the number and the confirmation."""
    page.get_by_role("button", name=said("Go to…")).tap()
    sheet = page.locator(".machine-sheet")
    if sock:
        sheet.locator("label", has_text=said(sock)).tap()
    sheet.locator(".sections label", has_text=said(section)).tap()
    if number is not None:
        sheet.locator("#places-done").fill(str(number))
    sheet.locator("#places-ask").tap()
    sheet.locator("#places-go").tap()
    expect(sheet).to_be_hidden()  # the jump is made by then


def take_back(page: Page, milliseconds: int = 700) -> None:
    """Press "Take back" for so long."""
    box = page.locator(".take-back").bounding_box()
    assert box
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.wait_for_timeout(milliseconds)
    page.mouse.up()


# Counts by key until the section changes or the sock is off; returns how many rounds or rows each
# section took, in order. Each count is waited for before the next.
_KNIT = """async (upTo) => {
  const at = () => document.querySelector(".at-machine");
  const seen = () => ["#machine-title", "#machine-now"].map((part) =>
    at().querySelector(part).textContent).join() + at().dataset.look;
  const counts = {};
  for (let presses = 0; presses < 2000 && at().dataset.look !== "ended"; presses += 1) {
    const section = at().querySelector(".section-name").textContent;
    if (section === upTo) break;
    if (at().dataset.look !== "do") counts[section] = (counts[section] ?? 0) + 1;
    const before = seen();
    document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "PageDown", bubbles: true }));
    for (let waits = 0; seen() === before; waits += 1) {
      if (waits > 2000) throw new Error(`nothing happened at ${before}`);
      await new Promise((next) => setTimeout(next));
    }
  }
  return counts;
}"""


def knit(page: Page, up_to: str = "") -> dict[str, int]:
    """Count through the real keys up to the section called `up_to`, or to the end of the sock."""
    counts: dict[str, int] = page.evaluate(_KNIT, up_to)
    return counts
