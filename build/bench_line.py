"""A first visit on a thin line: `python3 build/bench_line.py`.

The built site, compressed as hosts send it, is visited by a browser that keeps nothing, through a
slow line of this bench's own (build/slow_line.py), so that workers wait for it too. She opens a
plan that was sent to her. Seconds from navigation until what is typed stays, the sender's counts
are shown, the calculator's own are, and all is stored; and what had come over the line by then.
"""

from __future__ import annotations

import argparse
import contextlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install
from build.slow_line import Line, before

if TYPE_CHECKING:
    from build.bench_browsers import Tab

LINES = {"1.6 Mbit/s, 150 ms": (1.6e6, 0.15), "400 kbit/s, 400 ms": (4e5, 0.4)}
# What is promised of it, in seconds by line.
PROMISED = {
    "the sender's counts": {"1.6 Mbit/s, 150 ms": 2.0, "400 kbit/s, 400 ms": 5.0},
    "first counts": {"1.6 Mbit/s, 150 ms": 15.0, "400 kbit/s, 400 ms": 55.0},
}
SENT = {
    "cylinder": {"slots": 60},
    "fabric": {"yarn": "400 m / 100 g"},
    "foot": {"length": "24.6 cm"},
    "units": "cm",
}
# When each is so, in seconds since navigation; null until it is.
SEEN: dict[str, str] = {
    "usable": "performance.getEntriesByName('usable')[0]",
    "the sender's counts": "document.querySelector('.counts:not(.pencil) .tally')",
    "first counts": "document.querySelector('#picture-place svg.sock, #panels:not([hidden])')",
    "stored": "document.querySelector('#stored-line:not([hidden])')",
}
PATIENCE_S = 240


def visit(tab: Tab, address: str, line: Line) -> dict[str, tuple[float, int]]:
    """Seconds and bytes down the line until each is seen."""
    seen: dict[str, tuple[float, int]] = {}
    begun, before_it = time.monotonic(), line.down
    tab.open(address)
    while len(seen) < len(SEEN):
        told = tab.value(f"[{', '.join(f'Boolean({what})' for what in SEEN.values())}]")
        taken = time.monotonic() - begun
        for what, so in zip(SEEN, told, strict=True):
            if so and what not in seen:
                seen[what] = (taken, line.down - before_it)
        if taken > PATIENCE_S:
            raise install.Stop(f"Not seen in {PATIENCE_S} s: {sorted(SEEN.keys() - seen.keys())}")
        time.sleep(0.05)
    return seen


@contextlib.contextmanager
def compressed(work: Path) -> Iterator[str]:
    """The address of the site as hosts send it: compressed as hard as can be."""
    from build import bench, site

    site.build(install.ROOT / "dist")
    shutil.copytree(install.ROOT / "dist", work / "site")
    subprocess.run(
        (site.find_node(), install.BUILD / "precompress.mjs", work / "site"),
        check=True,
        capture_output=True,
    )
    with bench.served(work / "site") as address:
        yield address


def link() -> str:
    """A plan's link as the page hands it on."""
    from engine import api

    return str(api.answer({"do": "page", "request": SENT})["counts_link"])


def table(name: str, seen: dict[str, tuple[float, int]]) -> tuple[list[str], bool]:
    """A line for each, and whether all that is promised was kept."""
    lines, kept = [f"\n{name}"], True
    for what, (taken, down) in seen.items():
        most = PROMISED.get(what, {}).get(name)
        kept = kept and (most is None or taken <= most)
        promise = f"at most {most:.0f}" if most else ""
        lines.append(f"{what:24}{taken:8.1f} s{down / 1e3:10,.0f} kB  {promise}".rstrip())
    return lines, kept


def browsers() -> dict[str, Callable[[], Any]]:
    """Ways to open tabs, by name."""
    from build.bench_browsers import playwright_tab, webkit_tab

    return {
        "chromium": lambda: playwright_tab("chromium"),
        "firefox": lambda: playwright_tab("firefox"),
        "webkit": webkit_tab,
    }


def main() -> int:
    """Visits, prints tables, and ends with 1 if a promise is broken."""
    parser = argparse.ArgumentParser(prog="python3 build/bench_line.py", description=__doc__)
    parser.add_argument("--browser", default="chromium", help="chromium, firefox or webkit")
    parser.add_argument("--site", help="the address of a host that runs already")
    options = parser.parse_args()
    with install.plainly():
        install.make(install.CHECK)
        if Path(sys.prefix) != install.VENV:
            os.execve(install.PYTHON, [str(install.PYTHON), *sys.argv], install.environment())  # noqa: S606
        kept = True
        with contextlib.ExitStack() as stack:
            work = Path(stack.enter_context(tempfile.TemporaryDirectory(dir=install.TOOLS)))
            address = options.site or stack.enter_context(compressed(work))
            port = int(address.rstrip("/").rpartition(":")[2])
            tabs = stack.enter_context(browsers()[options.browser]())
            for name, (rate, round_trip) in LINES.items():
                line = Line(rate, round_trip)
                with before(port, line) as slow, tabs() as tab:
                    seen = visit(tab, f"http://localhost:{slow}/#{link()}", line)
                lines, so = table(name, seen)
                print("\n".join(lines), flush=True)
                kept = kept and so
    return int(not kept)


if __name__ == "__main__":
    sys.exit(main())
