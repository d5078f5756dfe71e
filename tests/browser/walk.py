"""How a person walks through the page: the few movements that the browser tests share."""

import re

from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.browser.pseudo import said

# Python starts anew on every fresh phone, and several at a time share a small machine.
expect.set_options(timeout=30_000)

# A sock foot of 9 in, as it stands, on 60 slots at 9.5 rounds to the inch, heel and toe 30 to 10
# and back, takes 45 or 46 rounds: common practice, no published source.
SOCK = {
    "cylinder.slots": "60",
    "fabric.stitches": "7.5 / in",
    "fabric.rounds": "9.5 / in",
    "sock.heel.needles": "30",
    "sock.heel.left": "10",
    "sock.toe.needles": "30",
    "sock.toe.left": "10",
    "sock.foot_length_of_sock": "9 in",
}
SOCK_FIGURES = {"Heel": "30→10→30", "Foot": "46", "Toe": "30→10→30"}


def opened(phone: BrowserContext, address: str = "./") -> Page:
    """A page of the site with the calculator up."""
    page = phone.new_page()
    page.goto(address)
    expect(page.locator("#waiting")).to_be_hidden()
    return page


def field(page: Page, name: str) -> Locator:
    """The field of a request's path."""
    return page.locator(f"[name='{name}']")


def step(page: Page, name: str) -> None:
    """Tap a stretch of the tape."""
    page.locator(f".tape a[data-to={name}]").tap()
    expect(page.locator(f"#{name}")).to_be_visible()


def choose(page: Page, words: str) -> None:
    """Tap the first of a few that begins so."""
    beginning = re.compile(rf"^\s*⟦?{re.escape(said(words))}")
    page.locator(".choice label:visible", has_text=beginning).first.tap()


def more(page: Page, *then: str) -> None:
    """Open what else is told of a foot, and tap what stands there."""
    fold = page.locator("#measure-more")
    if fold.get_attribute("open") is None:
        fold.locator("> summary").tap()
    for selector in then:
        page.locator(selector).tap()


def fill_sock(page: Page) -> None:
    """Type the whole of SOCK in step two, and last of all how the sock is made."""
    step(page, "yarn")
    choose(page, "Stitches and rounds")
    for name, text in SOCK.items():
        if name.startswith("sock.") and not page.locator("#made").is_visible():
            behind(page, "made")
        field(page, name).fill(text)


def behind(page: Page, name: str) -> None:
    """Open what step two leads to: `made`, how the sock is made, or her `shelf`."""
    if not page.locator(f"#to-{name}").is_visible():
        step(page, "yarn")
    page.locator(f"#to-{name}").tap()
    expect(page.locator(f"#{name}")).to_be_visible()


def leave(page: Page) -> None:
    """Back to what such a page was opened from."""
    page.locator("[data-leaves]:visible").first.tap()
    expect(page.locator(".behind:visible")).to_have_count(0)


def share(page: Page, *then: str) -> None:
    """Open what passes the plan on, and tap what stands there."""
    button = page.locator("#to-share")
    if button.get_attribute("aria-expanded") != "true":
        button.tap()
    for selector in then:
        page.locator(selector).tap()


def panel(page: Page, name: str, *then: str) -> None:
    """Show one of the three below the counts, and tap what stands there."""
    page.locator(f"#tab-{name}").tap()
    for selector in then:
        page.locator(selector).tap()


def more_of(notice: Locator) -> None:
    """Open what stands behind a notice of one line."""
    summary = notice.locator("summary").first
    if summary.evaluate("one => !one.parentElement.open"):
        summary.tap()


def settings_sheet(page: Page) -> None:
    """Open what is set once."""
    page.locator("#to-settings").tap()
    expect(page.locator("#settings")).to_be_visible()


# The rows of the counts, once there are any: until then they stand there in pencil.
COUNTED = ".counts:not(.pencil) .tally"
SWATCH = {"needles": "60", "flat_width": "10.2", "rounds": "60", "length": "15,6"}


def fill_foot(page: Page) -> None:
    """A measured foot and a swatch on 60 slots: enough for counts, with guesses left to make."""
    step(page, "measure")
    field(page, "foot.length").fill("23,8")
    step(page, "yarn")
    page.locator("#chips button", has_text="60").tap()
    for name, text in SWATCH.items():
        field(page, f"fabric.swatch.{name}").fill(text)
    expect(page.locator("#fabric-swatch-length-other")).not_to_be_empty()
    # Until then the counts are those of the usual yarn.
    expect(page.locator("#so-far")).to_have_attribute("data-told", "foot cylinder fabric")


def figures(page: Page) -> dict[str, str]:
    """The big figures of step three by their titles; waits until they stand."""
    rows = page.locator(COUNTED)
    expect(rows).to_have_count(5)
    return {
        row.locator("h3").inner_text(): "".join(row.locator(".figure").inner_text().split())
        for row in rows.all()
    }


def error_at(page: Page, name: str) -> Locator:
    """The words that stand beside a field when it is wrong."""
    return page.locator(f"#{name.replace('.', '-')}-error")
