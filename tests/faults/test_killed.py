"""The browser is killed while she counts: what was shown as counted is there when it comes back.

Each time the whole browser dies without warning (SIGKILL), at a moment drawn by chance, often in
the milliseconds in which a tap is being written. The count may afterwards be what was shown, or one
more: the tap that was on its way. HEELWISE_KILLS says how many times; the check kills 15 times, and
`check.py --long` 100 times.
"""

import itertools
import os
import random
import statistics
import time
from collections.abc import Callable
from contextlib import suppress

import pytest
from playwright.sync_api import Error, Page, expect

from tests import asking as api
from tests.browser.at_machine import begun, go_to, request, settings, target
from tests.browser.host import until
from tests.faults.kept_phone import KeptPhone

KILLS = int(os.environ.get("HEELWISE_KILLS", "15"))
SEED = 1707
SHOWN = """() => {
    const words = (name) => document.querySelector(name)?.textContent.trim() ?? "";
    return [words(".section-name"), words(".by-hand-text") || words(".done-words")];
}"""
USABLE = "performance.getEntriesByName('at the machine')[0]?.startTime"


def screens() -> list[tuple[str, str]]:
    """What the counter shows, from the first thing to do to the last: section and words."""
    steps = api.answer({"do": "knit", "request": request()})["steps"]
    totals: dict[str, int] = {}
    for step in steps:
        cranked = step.get("rounds", int(step["kind"] == "row"))
        totals[step["part"]] = totals.get(step["part"], 0) + cranked
    found, done = [], dict.fromkeys(totals, 0)
    for step in steps:
        part, title = step["part"], step["title"]
        if step["kind"] == "do":
            found.append((title, step["text"]))
        elif step["kind"] == "row":
            found.append((title, f"Row {step['row']} of {totals[part]}"))
        for _ in range(step.get("rounds", 0)):
            found.append((title, f"{done[part]} of {totals[part]} done"))
            done[part] += 1
    assert len(set(found)) == len(found)
    return found


class Watch:
    """The screen as the number of taps that it stands for."""

    def __init__(self) -> None:
        self.places = {screen: count for count, screen in enumerate(screens())}

    def count(self, page: Page) -> int:
        """Taps shown as counted."""
        section, words = page.evaluate(SHOWN)
        return self.places[section, words]

    def tap(self, page: Page, shown: int) -> int:
        """One tap; returns what is shown once it is counted."""
        page.touchscreen.tap(195, 600)
        return self.wait(page, shown, shown + 1)

    def wait(self, page: Page, shown: int, wanted: int) -> int:
        """Nothing but what is wanted follows on what is shown."""
        end = time.monotonic() + 10
        while (count := self.count(page)) == shown:
            assert time.monotonic() < end, f"never {wanted} after {shown}"
        assert count == wanted
        return count


def tap_until_killed(phone: KeptPhone, page: Page, watch: Watch, chance: random.Random) -> int:
    """Tap on and on, and be killed; returns what was shown last. One more tap was on its way."""
    shown = watch.count(page)
    counted_before, within = chance.choice([0, 1, 3]), chance.choice([0.03, 0.3])
    with suppress(Error):  # it is dead
        for taps in itertools.count():
            if taps == counted_before:
                phone.kill_in(chance.uniform(0, within))
            shown = watch.tap(page, shown)
    return shown


@pytest.mark.slow
def test_killed_at_any_moment(
    site: str,
    kept_phone: Callable[..., KeptPhone],
    record_property: Callable[[str, object], None],
) -> None:
    chance = random.Random(SEED)
    phone = kept_phone(base_url=site)
    watch = Watch()
    with phone.opened() as context:
        settings(context, guard=0)
        page = begun(context)
        shown = watch.count(page)
        page.wait_for_timeout(1000)  # as long as anything may take that is not a count
        phone.kill()
    tapped = on_their_way = 0
    usable: list[float] = []
    for kill in range(KILLS + 1):
        with phone.opened() as context:
            settings(context, guard=0)
            page = context.pages[0]
            page.goto(chance.choice(["./", "./#knit"]))
            expect(target(page)).to_be_visible()
            count = watch.count(page)
            assert count - shown in ((0, 1) if kill else (0,)), (
                kill,
                shown,
                count,
            )  # begun, not tapped
            on_their_way += count - shown
            usable.append(until(page, USABLE))
            if kill == KILLS:
                break
            if count > len(watch.places) - 60:  # soon off the machine: back to the start
                go_to(page, "Waste yarn", 0)
                count = watch.wait(page, count, 0)
            shown = tap_until_killed(phone, page, watch, chance)
            tapped += shown - count
    usable.sort()
    told = {
        "kills": KILLS,
        "taps shown as counted": tapped,
        "taps on their way that were kept": on_their_way,
        "usable after ms, median": round(statistics.median(usable)),
        "usable after ms, worst": round(usable[-1]),
    }
    for name, value in told.items():
        record_property(name, value)
    print(told)
    assert tapped > KILLS / 2
    # Long before there is a calculator; how long on a machine of its own, the bench says.
    assert statistics.median(usable) < 4000
