"""Every screen in a made-up language, a third longer than English: nothing is left out of the
catalogues, and nothing overflows a phone 320 px wide.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from build import site
from tests.browser import pseudo
from tests.browser.at_machine import planned, settings, target
from tests.browser.book import open_book
from tests.browser.test_counter_looks import sheets, states
from tests.browser.test_looks import screens_of, sideways
from tests.browser.test_wearers import screens_of as screens_of_the_book
from tests.browser.walk import behind, opened, share, step
from tests.conftest import ROOT, served

NewPhone = Callable[..., BrowserContext]

pytestmark = [pytest.mark.pyodide, pytest.mark.slow]

# What is no language's: units, the page's name, systems of sizes, papers, names that people gave.
NOBODYS = (
    r"\b(US (women|men|child|youth)|(EU|UK) child|Mondopoint|Japan|Letter)\b|"
    r"https?://\S+|\w+ \d+, \d{4}|\b(cm|mm|in|kg|lb|oz|yd|tex|EU|US|UK|CSV|Heelwise|html|Nuri)\b"
)


@pytest.fixture(scope="module")
def made_up(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of the page in the made-up language, of a site that has it."""
    folder = tmp_path_factory.mktemp("made-up")
    for name in ("engine", "webapp"):
        shutil.copytree(ROOT / name, folder / "root" / name)
    pseudo.write(folder / "root")
    site.build(folder / "dist", root=folder / "root")
    with served(folder / "dist") as address:
        yield f"{address}{pseudo.LANGUAGE}.html"


def leaks(page: Page) -> list[str]:
    found: list[str] = page.evaluate(
        pseudo.LEAKS,
        [pseudo.OPENS, pseudo.CLOSES, NOBODYS],
    )
    return found


def at_the_machine(page: Page) -> Iterator[str]:
    """Every state of the counter, and the sheets over it."""
    planned(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    yield from states(page)
    yield from sheets(page)


def kept_and_on_paper(page: Page) -> Iterator[str]:
    """Copies of what is kept, the shelf, the tag, and the card as it prints."""
    planned(page)
    share(page, "#write-tag")
    expect(page.locator("#tag-sheet")).to_be_visible()
    yield "tag"
    page.locator("#close-tag").tap()
    page.evaluate("window.print = () => {}")
    share(page, "#print-card", "#print-this-card")
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    page.emulate_media(media="print")
    yield "card"
    page.emulate_media(media="screen")
    page.keyboard.press("Shift")
    step(page, "yarn")
    behind(page, "shelf")
    yield "shelf"
    open_book(page)
    page.locator("#to-copies").tap()
    expect(page.locator("#book-title")).to_be_focused()
    yield "copies"


def instructions(page: Page) -> Iterator[str]:
    """A set of instructions: listed, written, read, on paper; and its reader's way to a plan."""
    planned(page)
    share(page, "#write-set")
    expect(page.locator("#sets-sheet")).to_be_visible()
    yield "sets"
    page.locator("#new-set").tap()
    page.locator("#set-title").fill("Nuri")
    page.locator("#sets-sheet details > summary").tap()
    page.locator("#set-sizes").fill("36, 4000")
    page.locator("#read-set").tap()
    expect(page.locator("#set-sizes-error")).not_to_be_empty()
    yield "set-refused"
    page.locator("#set-by").select_option("EU")
    page.locator("#set-sizes").fill("26, 36, 48")
    page.locator("#read-set").tap()
    expect(page.locator("#set-reading")).to_be_visible(timeout=60_000)
    page.locator("#set-size").select_option("1")
    yield "set-one-size"
    page.locator("#set-size").select_option("-1")
    for fold in (".set-ways", ".set-link"):
        page.locator(f"{fold} > summary").tap()
    fragment = page.locator(".code-address").inner_text().partition("#")[2]
    yield "set-all-sizes"
    page.evaluate("window.print = () => {}")
    page.locator("#print-set").tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    page.emulate_media(media="print")
    yield "card-all-sizes"
    page.emulate_media(media="screen")
    page.keyboard.press("Shift")
    for _ in range(2):
        page.locator("#sets-back").tap()
    page.locator(".kept-sets button").last.tap()
    yield "set-deleted"
    page.locator("#close-sets").tap()
    page.goto(f"{page.url.partition('#')[0]}#{fragment}")
    expect(page.locator("#reader-size")).to_be_visible(timeout=60_000)
    yield "set-reader"
    page.locator("#reader-size").select_option("")
    page.locator("#reader-sheet details > summary").tap()
    page.locator("#see-counts").tap()
    expect(page.locator("#reader-sheet .error")).to_be_visible()
    yield "set-reader-refused"
    page.locator("#reader-size").select_option("36")
    page.locator("#see-counts").tap()
    expect(page.locator("#origin")).to_contain_text("Nuri")
    yield "set-adopted"


@pytest.mark.parametrize(
    "walk",
    [screens_of, screens_of_the_book, at_the_machine, kept_and_on_paper, instructions],
    ids=["sock", "book", "machine", "paper", "instructions"],
)
def test_every_screen_is_all_in_the_language(
    new_phone: NewPhone, made_up: str, screens: Path, walk: Callable[[Page], Iterator[str]]
) -> None:
    phone = new_phone(viewport={"width": 320, "height": 640})
    settings(phone, awake=False, sounds=False, guard=250)
    page = opened(phone, made_up)
    wrong: dict[str, str] = {}  # each leak with the first screen that has it
    with pseudo.accented():
        for name in walk(page):
            page.screenshot(path=screens / f"{name}-made-up.png", full_page=True)
            if not name.startswith("card") and (wide := sideways(page)):  # paper is wider
                wrong[f"{wide} px too wide"] = name
            for leak in leaks(page):
                wrong.setdefault(leak, name)
    assert not wrong, "\n".join(f"{name}: {leak}" for leak, name in wrong.items())
