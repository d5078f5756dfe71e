"""What holds the page's thread on a first visit: `python3 build/blocking.py`.

Chromium records a few first visits of the built site. Of each task after the first paint counts the
time that the thread itself worked, which other work on the machine lengthens little; four times as
much is taken for a slow phone's. What is longer than 50 ms blocks (W3C Long Tasks). Prints that for
each visit, and of the middle one its longest tasks with the scripts that they ran.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

VISITS = 5
SLOWER = 4  # a phone than this machine
LONG_MS = 50  # W3C Long Tasks API, 1.1
MOST_MS = 100
SETTLED_MS = 5000
SHOWN = 6
CATEGORIES = ["toplevel", "devtools.timeline", "v8", "loading"]
Event = Mapping[str, Any]


@dataclass(frozen=True)
class Task:
    """One piece of the thread's work: when it began after the first paint, and how long it is on a
    slow phone, both in ms; what it ran, the longest first."""

    begun: float
    length: float
    ran: tuple[str, ...]

    @property
    def blocks(self) -> float:
        """Milliseconds for which she waits."""
        return max(0.0, self.length - LONG_MS)


def tasks(events: Sequence[Event]) -> list[Task]:
    """Those of the page's thread after its first paint. Raises LookupError where there is none."""
    parsed = Counter((one["pid"], one["tid"]) for one in events if one.get("name") == "ParseHTML")
    ((thread, _),) = parsed.most_common(1)
    own = [one for one in events if (one["pid"], one["tid"]) == thread and "tdur" in one]
    paints = [one["ts"] for one in events if one.get("name") == "firstContentfulPaint"]
    if not paints:
        raise LookupError("nothing was painted")
    whole = [one for one in own if one["name"].endswith("RunTask")]
    return [
        Task((one["ts"] - max(paints)) / 1000, SLOWER * one["tdur"] / 1000, tuple(_ran(one, own)))
        for one in whole
        if one["ts"] + one["dur"] > max(paints)
    ]


def _ran(task: Event, events: Sequence[Event]) -> Iterator[str]:
    """What it ran for a tenth of it or more."""
    inside = [
        one
        for one in events
        if task["ts"] <= one["ts"] < task["ts"] + task["dur"]
        and not one["name"].endswith("RunTask")
        and one["tdur"] > task["tdur"] / 10
    ]
    for one in sorted(inside, key=lambda one: -one["tdur"]):
        facts = one.get("args", {}).get("data", {})
        file = Path(str(facts.get("url") or facts.get("fileName") or "")).name
        yield f"{one['name']} {file}".strip()


def visited(address: str) -> list[Task]:
    """A first visit's tasks."""
    from playwright.sync_api import sync_playwright

    from build import chromium

    found = chromium.find()
    if found is None:
        raise install.Stop("There is no Chromium. To get one: python3 build/chromium.py")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=str(found.executable),
            args=found.arguments,
            env={**os.environ, **found.variables},
        )
        page = browser.new_page(viewport={"width": 412, "height": 823})
        browser.start_tracing(page=page, categories=CATEGORIES)
        page.goto(address)
        page.wait_for_timeout(SETTLED_MS)
        recorded = json.loads(browser.stop_tracing())
        browser.close()
    return tasks(recorded["traceEvents"])


def main() -> int:
    """Visits and prints; 1 if the middle one is blocked for longer than is promised."""
    argparse.ArgumentParser(prog="python3 build/blocking.py", description=__doc__).parse_args()
    with install.plainly():
        from build import bench, site

        site.build(install.ROOT / "dist")
        with bench.served(install.ROOT / "dist") as address:
            visits = [visited(address) for _ in range(VISITS)]
    visits.sort(key=lambda all_: sum(one.blocks for one in all_))
    totals = [sum(one.blocks for one in all_) for all_ in visits]
    middle = VISITS // 2
    print(f"blocked for {', '.join(f'{total:.0f}' for total in totals)} ms; at most {MOST_MS}")
    for one in sorted(visits[middle], key=lambda one: -one.length)[:SHOWN]:
        print(f"{one.begun:8.0f} ms:{one.length:6.0f} ms  {', '.join(one.ran[:SHOWN])}")
    return int(totals[middle] > MOST_MS)


if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)
    sys.exit(main())
