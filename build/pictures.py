"""Take pictures of every screen of the built site, light and dark, at five sizes, and look at them.

    .venv/bin/python build/pictures.py [--walk NAME ...] [--size WIDTHxHEIGHT ...] [--scheme NAME]
    .venv/bin/python build/pictures.py --readme

Builds the site and walks through it as the browser tests do. Writes PNGs into .tools/pictures/ and
an index.html that shows them side by side. Of each screen at the sizes of phones it prints how many
words are seen and how many screens long it is. Runs axe-core on every one; ends with 1 where axe
finds a violation or a screen scrolls sideways. With --readme it takes the three pictures of
README.md instead, webapp/pictures/.
"""

from __future__ import annotations

import argparse
import html
import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from build import chromium
from tests.asking import answer_text
from tests.browser import test_counter_looks, test_looks, test_pseudo, test_wearers
from tests.browser.at_machine import begun, go_to
from tests.browser.axe import violations
from tests.browser.book import copies, with_wearers
from tests.browser.test_looks import sideways
from tests.browser.test_word_limits import words
from tests.browser.walk import (
    choose,
    field,
    figures,
    fill_foot,
    opened,
    settings_sheet,
    share,
    step,
)
from tests.conftest import CARED, DESK, PHONE, served

ROOT = Path(__file__).resolve().parents[1]
FOLDER = ROOT / ".tools" / "pictures"
SIZES = ((320, 568), (360, 640), (390, 844), (844, 390), (1280, 800))
COUNTED = ((360, 640), (390, 844))  # whose words and screens are told
SCHEMES = ("light", "dark")
MANY = 40
STATES = ("measured", "planned", "sock one", "sock two", "grafted", "washed", "handed over")


def sock(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """The three steps, from empty to sock two and the table, and their sheets."""
    page = opened(phone)
    for name in test_looks.screens_of(page):
        yield page, name


def counter(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """The counter from its first step to the end of both socks, and its sheets."""
    page = begun(phone)
    page.locator(".notice button").last.tap()  # that the screen may go dark
    for walk in (test_counter_looks.states, test_counter_looks.sheets):
        for name in walk(page):
            yield page, f"counter-{name}"


def book(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """The book of wearers: empty, with a few, one of them, and somebody new."""
    page = opened(phone)
    for name in test_wearers.screens_of(page):
        yield page, name


def many(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """The book with forty wearers at all stages, and the copies."""
    people = [
        {
            "id": f"w-{at}",
            "label": f"Invented {at + 1}, ferry {at % 7 + 1}",
            "state": STATES[at % len(STATES)],
            "due": f"2026-12-{at % 28 + 1:02}",
            "made": 1_790_000_000_000 + at,
        }
        for at in range(MANY)
    ]
    page = with_wearers(phone, people)
    yield page, "book-forty"
    copies(page)
    yield page, "book-copies"


def paper(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """What goes to paper, on the screen before it is printed."""
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    figures(page)
    page.locator("#to-care").tap()
    yield page, "cautions"
    page.locator(".machine-sheet .sheet-head button").tap()
    share(page)
    yield page, "paper-ways"
    for button, sheet in (("#print-card", "#card-sheet"), ("#write-tag", "#tag-sheet")):
        share(page, button)
        expect(page.locator(sheet)).to_be_visible()
        yield page, f"paper-{sheet[1:]}"
        page.locator(sheet).get_by_role("button", name="Close").tap()
    settings_sheet(page)
    yield page, "settings-closed"


def sets(phone: BrowserContext) -> Iterator[tuple[Page, str]]:
    """Instructions over sizes on the screen, and their reader's way to a plan."""
    page = opened(phone)
    for name in test_pseudo.instructions(page):
        if not name.startswith("card"):
            yield page, name


WALKS: dict[str, Callable[[BrowserContext], Iterator[tuple[Page, str]]]] = {
    walk.__name__: walk for walk in (sock, counter, book, many, paper, sets)
}


class Look:
    """What was seen: the pictures by screen, the table, and what is wrong."""

    def __init__(self) -> None:
        self.taken: dict[str, list[str]] = {}
        self.table: dict[str, list[str]] = {}
        self.wrong: list[str] = []

    def at(self, page: Page, screen: str, sizes: list[tuple[int, int]], schemes: list[str]) -> None:
        """Take every picture of a screen as it stands."""
        for wide, high in sizes:
            page.set_viewport_size({"width": wide, "height": high})
            for scheme in schemes:
                page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
                page.wait_for_timeout(80)
                name = f"{screen}-{wide}x{high}-{scheme}.png"
                page.screenshot(path=FOLDER / name)
                self.taken.setdefault(screen, []).append(name)
                found = violations(page)
                self.wrong += [f"{name}: {rule} at {places}" for rule, places in found]
            if sideways(page):
                self.wrong.append(f"{screen} {wide}x{high}: {sideways(page)} px too wide")
            if (wide, high) in COUNTED:
                long = page.evaluate(
                    "(document.querySelector('dialog[open]') ?? document.documentElement)"
                    ".scrollHeight / innerHeight"
                )
                self.table.setdefault(screen, []).append(f"{words(page)[0]} w, {long:.1f}")

    def sheet(self) -> str:
        """All pictures, a row for each screen."""
        rows = "".join(
            f"<h2>{html.escape(screen)}</h2><p>"
            + "".join(f'<a href="{one}"><img src="{one}" alt="{one}"></a>' for one in names)
            + "</p>"
            for screen, names in self.taken.items()
        )
        style = "body{font:16px sans-serif}p{display:flex;gap:8px;overflow:auto}img{height:320px}"
        return (
            f"<!doctype html><meta charset=utf-8><title>Screens</title><style>{style}</style>{rows}"
        )


def phone_of(browser: Browser, site: str) -> BrowserContext:
    """A fresh phone whose engine answers from this process, as in the tests."""
    features: dict[str, Any] = {**PHONE, "device_scale_factor": 1.5, "service_workers": "block"}
    phone = browser.new_context(base_url=site, reduced_motion="reduce", **features)
    phone.add_init_script(CARED)
    phone.add_init_script(path=DESK)
    phone.expose_function("askDesk", answer_text)
    return phone


def for_readme(phone: BrowserContext) -> None:
    """Take the pictures of README.md anew: a foot half told, its counts, and the counter."""

    def take(name: str) -> None:
        page.evaluate("document.activeElement.blur()")
        page.mouse.move(0, 0)
        page.wait_for_timeout(500)
        page.screenshot(path=ROOT / "webapp" / "pictures" / f"{name}.png", scale="css")

    page = opened(phone)
    choose(page, "woman")
    field(page, "foot.length").fill("24")
    expect(page.locator("#so-far .figure")).to_have_text(re.compile(r"\d+–\d+"))
    take("foot")
    fill_foot(page)
    step(page, "counts")
    figures(page)
    take("counts")
    page.locator("#knit-it").tap()
    page.locator(".notice button").last.tap()  # that the screen may go dark
    go_to(page, "Foot", 17)
    take("machine")


def size_of(text: str) -> tuple[int, int]:
    """A size as it is written, 360x640."""
    wide, high = text.split("x")
    return int(wide), int(high)


def main() -> int:
    """Take them all; returns 1 where something is wrong."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0] if __doc__ else "")
    parser.add_argument("--walk", nargs="+", choices=WALKS, default=[*WALKS])
    parser.add_argument("--size", nargs="+", type=size_of, default=[*SIZES])
    parser.add_argument("--scheme", nargs="+", choices=SCHEMES, default=[*SCHEMES])
    parser.add_argument("--readme", action="store_true")
    asked = parser.parse_args()
    subprocess.run([sys.executable, "build/site.py"], cwd=ROOT, check=True)
    FOLDER.mkdir(parents=True, exist_ok=True)
    found = chromium.shell() or chromium.find()
    if not found:
        print("No Chromium here: python3 build/chromium.py gets one.")
        return 1
    look = Look()
    environment: dict[str, str | float | bool] = {**os.environ, **found.variables}
    with served(ROOT / "dist") as site, sync_playwright() as started:
        browser = started.chromium.launch(
            executable_path=str(found.executable), args=found.arguments, env=environment
        )
        if asked.readme:
            for_readme(phone_of(browser, site))
            browser.close()
            return 0
        for name in asked.walk:
            phone = phone_of(browser, site)
            for page, screen in WALKS[name](phone):
                usual = page.viewport_size or {"width": 390, "height": 844}
                look.at(page, screen, asked.size, asked.scheme)
                page.set_viewport_size(usual)
                page.emulate_media(color_scheme="light")
                page.wait_for_timeout(300)  # what lies where is the walk's again
            phone.close()
        browser.close()
    (FOLDER / "index.html").write_text(look.sheet(), encoding="utf-8")
    print(f"{'words seen, screens long':28}", *(f"{wide}x{high:<10}" for wide, high in COUNTED))
    for screen, cells in look.table.items():
        print(f"{screen:28}", *(f"{cell:14}" for cell in cells))
    print(f"{sum(map(len, look.taken.values()))} pictures in {FOLDER.relative_to(ROOT)}/index.html")
    print(*look.wrong, sep="\n")
    return 1 if look.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
