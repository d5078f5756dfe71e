"""The browser is killed while something is typed, chosen or begun: what is a second old stays.

Each time the whole browser dies without warning (SIGKILL, no page is closed first, from the very
first visit on), at a moment drawn by chance, and is opened again at the bare address. A field may
then hold what stood there a second before the kill, or anything that was typed into it since.
HEELWISE_KILLS says how many times; the check kills 15 times, and `check.py --long` 100 times.
"""

import math
import os
import random
import time
from collections.abc import Callable
from contextlib import suppress

import pytest
from playwright.sync_api import Error, Page, expect

from tests.browser.at_machine import done, go_to, knit, planned, settings, target
from tests.browser.book import HELD, back_to_book, card, held, new_wearer, open_book
from tests.browser.host import comes_true, until
from tests.browser.walk import field, share
from tests.faults.kept_phone import KeptPhone

KILLS = int(os.environ.get("HEELWISE_KILLS", "15"))
SEED = 20261
WITHIN = 1.0  # s: what is older than that is never lost
USABLE = "performance.getEntriesByName('usable').length"  # the calculator is not waited for
WAITED = 10.0  # s for the page to show what the phone holds

# Where they are, what has to be tapped before they can be typed into unless it is open, and they.
PLACES = {
    "foot": ("measure", "", ("foot.length", "foot.ball_girth", "foot.heel_girth")),
    "yarn": ("yarn", "", ("cylinder.slots", "fabric.swatch.flat_width")),
    "shelf": ("yarn", "#to-shelf", ("shelf.yarns.0.name", "shelf.yarns.0.left")),
    "table": ("counts", "#chart:not([open]) > summary", ("chart.first", "chart.last")),
}
APART = ("shelf", "table")  # one for all sheets


class Typed:
    """What was typed into each field, and when it stood there."""

    def __init__(self) -> None:
        self.texts: dict[str, list[tuple[float, str]]] = {}
        self.count = 0  # those that stood there

    def type(self, page: Page, name: str, text: str) -> None:
        """One text instead of what is there."""
        texts = self.texts.setdefault(name, [(0.0, "")])
        texts.append((math.inf, text))  # on its way
        field(page, name).fill(text)
        texts[-1] = (time.monotonic(), text)
        self.count += 1

    def may_stand(self, name: str, killed: float) -> set[str]:
        """What may stand in a field after a kill."""
        texts = self.texts[name]
        sure = max(at for at, _ in texts if at < killed - WITHIN)
        return {text for at, text in texts if at >= sure}

    def stands(self, name: str, text: str) -> None:
        """So much is certain by now."""
        self.texts[name][:] = [(0.0, text)]  # the list itself: another Typed may have it too


def shown(page: Page, names: list[str]) -> dict[str, str]:
    """What stands in fields, on screen or not."""
    return {name: field(page, name).input_value() for name in names}


def check(page: Page, typed: Typed, killed: float, case: object) -> None:
    """All that was typed a second before the kill, or later."""
    may = {name: typed.may_stand(name, killed) for name in typed.texts}

    def whole() -> bool:
        return all(text in may[name] for name, text in shown(page, list(may)).items())

    try:
        comes_true(page, whole, WAITED)
    except AssertionError:
        there = page.evaluate(HELD.replace("heelwise.book", "heelwise.typed"))
        pytest.fail(f"{case}: {shown(page, list(may))} where there may stand {may}; {there}")
    page.wait_for_timeout(300)  # and it stays
    assert whole(), (case, shown(page, list(may)), may)
    for name, text in shown(page, list(may)).items():
        typed.stands(name, text)


def open_place(page: Page, place: str) -> None:
    """Where its fields can be typed into."""
    where, way, names = PLACES[place]
    page.locator(f".tape a[data-to={where}]").tap()
    page.locator(f"#{where}").wait_for()  # `expect` would not fail by an Error where it is killed
    first = field(page, names[0])
    if way:
        first.wait_for(state="attached")  # what leads there is wired by then
        if not first.is_visible():
            page.locator(way).tap()
    first.wait_for()


def type_until_killed(
    phone: KeptPhone, page: Page, chance: random.Random, typed: dict[str, Typed], own: str
) -> float:
    """Type on and on, and be killed; returns when that was."""
    places = chance.sample(list(PLACES), 2)
    phone.kill_in(chance.uniform(0.05, 2.5))
    with suppress(Error):  # it is dead
        for place in places * 100:
            open_place(page, place)
            for name in chance.choices(PLACES[place][2], k=2):
                text = str(chance.randint(20, 99))
                typed[place if place in APART else own].type(page, name, text)
                page.wait_for_timeout(chance.choice([0, 100, 700]))
    return phone.killed


def fields_of(typed: dict[str, Typed], own: str) -> Typed:
    """All that is on the page while a sheet is."""
    found = Typed()
    for place in (own, *APART):
        found.texts |= typed[place].texts
    return found


@pytest.mark.slow
def test_killed_while_typing(site: str, kept_phone: Callable[..., KeptPhone]) -> None:
    chance = random.Random(SEED)
    phone = kept_phone(base_url=site)
    own, killed = "mine", 0.0
    typed = {name: Typed() for name in ("mine", *APART)}
    for kill in range(KILLS + 1):
        with phone.opened() as context:
            page = context.pages[0]
            page.goto("./")
            until(page, USABLE)
            all_here = fields_of(typed, own)
            check(page, all_here, killed, kill)
            if kill == KILLS:
                break
            killed = type_until_killed(phone, page, chance, typed, own)
    assert all(one.count for one in typed.values()), "a place was never typed into"
    assert sum(one.count for one in typed.values()) >= KILLS / 2


@pytest.mark.slow
def test_killed_on_a_wearers_sheet(site: str, kept_phone: Callable[..., KeptPhone]) -> None:
    chance = random.Random(SEED)
    phone = kept_phone(base_url=site)
    typed = {name: Typed() for name in ("Invented: Nuri", *APART)}
    own, killed = "Invented: Nuri", 0.0
    for kill in range(KILLS + 1):
        with phone.opened() as context:
            page = context.pages[0]
            page.goto("./")
            until(page, USABLE)
            if not kill:
                open_book(page)
                new_wearer(page, own)
                page.wait_for_timeout(1000 * WITHIN)
            expect(page.locator("#visit-line")).to_contain_text(own)
            check(page, fields_of(typed, own), killed, kill)
            if kill == KILLS:
                break
            killed = type_until_killed(phone, page, chance, typed, own)
    # The book has the same, without the sheet.
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        until(page, USABLE)
        length = field(page, "foot.length").input_value()
        back_to_book(page)
        card(page, own)
        (visit,) = held(page)["visits"]
        assert visit["values"].get("foot.length", "") == length
    assert all(one.count for one in typed.values()), "a place was never typed into"


@pytest.mark.slow
def test_killed_after_a_pair_is_begun(site: str, kept_phone: Callable[..., KeptPhone]) -> None:
    """It is offered at the bare address, though nothing but the database knows of it."""
    chance = random.Random(SEED)
    for kill in range(max(2, KILLS // 5)):
        phone = kept_phone(base_url=site, folder=f"storage {kill}")
        with phone.opened() as context:
            settings(context, guard=0)
            page = context.pages[0]
            page.goto("./")
            planned(page)
            page.locator("#knit-it").tap()
            expect(target(page)).to_be_visible()
            go_to(page, "Leg", 10)
            for _ in range(chance.choice([0, 5])):
                before = done(page).inner_text()
                target(page).tap()
                expect(done(page)).not_to_have_text(before)
            words = done(page).inner_text()
            if chance.random() < 0.5:  # not on screen any longer
                page.locator(".leave").tap()
                expect(page.locator("#machine-line")).to_contain_text("A sock is on the machine")
            page.wait_for_timeout(chance.choice([0, 1000 * WITHIN]))
            phone.kill()
        with phone.opened() as context:
            settings(context, guard=0)
            page = context.pages[0]
            page.goto("./")
            go_on = page.locator("#machine-line .go-on")
            expect(target(page).or_(go_on)).to_be_visible()
            page.wait_for_timeout(500)  # it goes again if the database knows that it was left
            if go_on.is_visible():
                go_on.tap()
            expect(done(page)).to_have_text(words)
            page.locator(".leave").tap()
            expect(field(page, "cylinder.slots")).to_have_value("60")


@pytest.mark.slow
def test_killed_over_words_of_which_nothing_is_made_yet(
    site: str, kept_phone: Callable[..., KeptPhone]
) -> None:
    """The label of somebody new, a note at the machine, what sock one measures, and a tag."""
    phone = kept_phone(base_url=site)
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        planned(page)
        open_book(page)
        page.locator("#book button", has_text="New wearer").tap()
        page.locator("#new-label").fill("Invented: Nuri")
        page.wait_for_timeout(1000 * WITHIN)
        phone.kill()
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        open_book(page)
        page.locator("#book button", has_text="New wearer").tap()
        expect(page.locator("#new-label")).to_have_value("Invented: Nuri")
        page.locator("#begin-wearer").tap()
        back_to_book(page)
        page.locator("#book button", has_text="New wearer").tap()
        expect(page.locator("#new-label")).to_have_value("")
        page.go_back()
        page.locator("#book [data-book=close], .head [data-book=close]").first.tap()
        page.locator("#visit-line button", has_text="My own page").tap()
        planned(page)
        page.locator("#knit-it").tap()
        page.get_by_role("button", name="Note").tap()
        page.locator("#note-text").fill("one loop dropped")
        page.wait_for_timeout(1000 * WITHIN)
        phone.kill()
    with phone.opened() as context:
        settings(context, guard=0)
        page = context.pages[0]
        page.goto("./")
        expect(target(page)).to_be_visible()
        page.get_by_role("button", name="Note").tap()
        expect(page.locator("#note-text")).to_have_value("one loop dropped")
        page.locator("#keep-note").tap()
        expect(page.locator(".notice")).to_contain_text("Note saved")
        page.get_by_role("button", name="Note").tap()
        expect(page.locator("#note-text")).to_have_value("")
        page.locator(".machine-sheet .sheet-head button").tap()
        go_to(page, "Off the machine")
        knit(page)
        page.locator("#measure-first").tap()
        page.locator("#machine-length").fill("21,5")
        page.wait_for_timeout(1000 * WITHIN)
        phone.kill()
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        page.locator("#measure-first").tap()
        expect(page.locator("#machine-length")).to_have_value("21,5")
        page.locator("#work-two").tap()
        page.locator("#begin-two").tap()
        page.locator(".leave").tap()
        share(page, "#write-tag")
        page.locator("#tag-label").fill("Invented: Nuri")
        page.locator("#keep-tag").tap()
        page.locator("#close-tag").tap()
        share(page, "#write-tag")
        page.locator("#tag-fibre").fill("wool")
        page.wait_for_timeout(1000 * WITHIN)
        phone.kill()
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        page.locator(".tape a[data-to=counts]").tap()
        share(page, "#write-tag")
        expect(page.locator("#tag-fibre")).to_have_value("wool")
        expect(page.locator("#tag-sheet .line")).to_contain_text("One tag waits")
        page.locator("#close-tag").tap()
        share(page, "#write-set", "#new-set")
        page.locator("#set-title").fill("Invented: plain socks")
        page.wait_for_timeout(1000 * WITHIN)
        phone.kill()
    with phone.opened() as context:
        page = context.pages[0]
        page.goto("./")
        page.locator(".tape a[data-to=counts]").tap()
        share(page, "#write-set")
        expect(page.locator(".kept-sets")).to_contain_text("Invented: plain socks")
