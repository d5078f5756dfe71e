"""How soon the engine is up and how fast it answers, in a browser: `python3 build/bench.py`.

Ways to start are compared side by side, run about in the same minutes, each number the median of
several runs: stock Pyodide, ours with and without the snapshot, and the floor. Prints tables, and
writes .tools/bench.json. WebKit is measured where selenium and WebKitGTK's driver are there.

The 4x slower phone: all processes of the browser are stopped for three quarters of each 20 ms.
"""

from __future__ import annotations

import argparse
import contextlib
import json
import os
import re
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install
from build.bench_browsers import Tab, Tabs, memory, playwright_tab, slowed, webkit_tab

WAYS = ("stock, default units", "stock", "no snapshot", "snapshot", "floor")
Numbers = dict[str, list[float]]


def start(tab: Tab, address: str, way: str) -> float:
    """Milliseconds from navigation to the first plan."""
    tab.open(f"{address}?way={way.replace(' ', '%20')}")
    return float(tab.value("bench.start"))


def measure_cold(tabs: Tabs, address: str, runs: int, slow: int) -> Numbers:
    """First visits: all comes from the server. Milliseconds by way, a number a run."""
    numbers: Numbers = {}
    for run in range(runs):
        for way in WAYS:  # one beside the other, so that a busy minute touches all of them
            with tabs() as tab, slowed(slow):
                numbers.setdefault(f"cold: {way}", []).append(start(tab, address, way))
        progress(f"cold {run + 1}/{runs}")
    return numbers


def measure_warm(tabs: Tabs, address: str, runs: int, slow: int) -> Numbers:
    """Later visits: all comes from the service worker. Milliseconds and megabytes by way."""
    numbers: Numbers = {}

    def note(what: str, value: float) -> None:
        numbers.setdefault(what, []).append(value)

    with tabs() as tab:
        tab.open(f"{address}?store")
        tab.value("bench.stored()")
        for way in WAYS:
            start(tab, address, way)  # so that what a browser compiles once and keeps is kept
        for run in range(runs):
            for way in WAYS:
                tab.open("about:blank")
                with slowed(slow):
                    note(f"warm: {way}", start(tab, address, way))
                    if way in ("snapshot", "no snapshot"):
                        taken = tab.value("bench.keystrokes(40)")
                        note(f"keystroke: {way}", statistics.median(taken))
                if slow == 1:
                    note(f"memory: {way}", memory())
            progress(f"warm {run + 1}/{runs}")
    return numbers


MEASURES = {"cold": measure_cold, "warm": measure_warm}


# Waits for the calculator, as the counts of a later screen could still be the largest paint.
PAINTED = """(async () => {
    const until = async (value) => {
        while (!value()) await new Promise((go) => setTimeout(go, 20));
        return value();
    };
    const usable = await until(() => performance.getEntriesByName("usable")[0]);
    await until(() => document.querySelector("#waiting.over"));
    const kinds = PerformanceObserver.supportedEntryTypes;
    const largest = await new Promise((found) => {
        if (!kinds.includes("largest-contentful-paint")) return found(null);
        new PerformanceObserver((list) => found(list.getEntries().at(-1).startTime))
            .observe({ type: "largest-contentful-paint", buffered: true });
    });
    return [usable.startTime, largest];
})()"""


def measure_page(tabs: Tabs, address: str, runs: int, slow: int) -> Numbers:
    """Milliseconds from navigation until what is typed stays, and to the largest paint (LCP).

    Of the real page, stored by its service worker, with nothing else kept.
    """
    numbers: Numbers = {}
    with tabs() as tab:
        tab.open(address)
        tab.value("navigator.serviceWorker.ready.then(() => true)")
        for run in range(runs + 1):
            tab.open("about:blank")
            with slowed(slow):
                tab.open(address)
                usable, largest = tab.value(PAINTED)
            if run:  # the first only warms up
                numbers.setdefault("page: usable", []).append(usable)
                if largest is not None:
                    numbers.setdefault("page: largest paint", []).append(largest)
            progress(f"page {run}/{runs}")
    return numbers


# A tap on the counter's target to the frame that shows it counted: by then it is on the disk.
TAPS = """(async () => {
    const pause = (ms) => new Promise((go) => setTimeout(go, ms));
    const until = async (value) => { while (!value()) await pause(20); return value(); };
    (await until(() => document.querySelector("#knit-it:not([hidden])"))).click();
    const target = await until(() => {
        document.querySelector("#cared")?.click();
        return document.querySelector(".target");
    });
    const shown = () => document.querySelector(".at-machine").innerText;
    const taken = [];
    for (let tap = 0; tap < 80; tap += 1) {
        await pause(300);
        const before = shown();
        const begun = performance.now();
        target.click();
        await new Promise((seen) => {
            const look = () =>
                shown() === before ? requestAnimationFrame(look) : setTimeout(seen);
            requestAnimationFrame(look);
        });
        taken.push(performance.now() - begun);
    }
    return taken;
})()"""
COUNTING = """(async () => {
    const mark = () => performance.getEntriesByName("at the machine")[0];
    while (!mark()) await new Promise((go) => setTimeout(go, 20));
    return mark().startTime;
})()"""
PLANNED = {
    "units": "cm",
    "way": "gauge",
    "foot.length": "24.6 cm",
    "cylinder.slots": "60",
    "fabric.stitches": "30",
    "fabric.rounds": "38",
}


def measure_taps(tabs: Tabs, address: str, runs: int, slow: int) -> Numbers:
    """Milliseconds from a tap to its count on screen, of each while a sock's start is knitted."""
    numbers: Numbers = {}
    for run in range(max(1, runs // 3)):
        with tabs() as tab:
            tab.open(address)
            mine = json.dumps(json.dumps(PLANNED))
            tab.value(f"localStorage.setItem('heelwise.mine', {mine})")
            tab.open(f"{address}?taps#counts")
            with slowed(slow):
                taken = tab.value(TAPS)
            numbers.setdefault("tap: shown as counted", []).extend(taken)
            for _ in range(3):
                tab.open("about:blank")
                with slowed(slow):
                    tab.open(f"{address}#knit")
                    numbers.setdefault("page: at the machine", []).append(tab.value(COUNTING))
            numbers["tap: 95 of 100 shown by"] = [
                statistics.quantiles(numbers["tap: shown as counted"], n=20)[-1]
            ]
        progress(f"taps {run + 1}")
    return numbers


@contextlib.contextmanager
def served(dist: Path) -> Iterator[str]:
    """The address of the folder, served by the project's own server as a process of its own."""
    command = (install.PYTHON, install.BUILD / "serve.py", "--dist", dist, "--port", "0")
    server = subprocess.Popen(command, cwd=install.ROOT, stdout=subprocess.PIPE, text=True)
    words = server.stdout.readline() if server.stdout else ""
    found = re.search(r"http://localhost:\d+", words)
    try:
        if not found:
            raise install.Stop(f"The server did not start: {words}")
        yield f"{found[0]}/"
    finally:
        server.terminate()
        server.wait()


def progress(words: str) -> None:
    """On one line, where somebody looks."""
    print(f"\r{words:40}", end="", file=sys.stderr, flush=True)


def table(browser: str, slow: int, numbers: Numbers) -> str:
    """Medians, and how many times stock and the floor go into each."""
    middle = {what: statistics.median(values) for what, values in numbers.items()}
    lines = [f"\n{browser}, {f'{slow} times slower' if slow > 1 else 'as it is'}"]
    lines.append(f"{'':26}{'median':>10}{'range':>18}{'stock ÷ it':>12}{'÷ floor':>9}")
    for what, value in middle.items():
        kind = what.split(":")[0]
        unit = "MB" if kind == "memory" else "ms"
        low, high = min(numbers[what]), max(numbers[what])
        line = f"{what:32.32}{value:8.0f} {unit}{low:9.0f} –{high:6.0f}"
        if kind in ("cold", "warm"):
            line += f"{middle.get(f'{kind}: {WAYS[0]}', 0) / value:10.1f}×"
            line += f"{value / middle[f'{kind}: floor']:8.1f}×"
        lines.append(line)
    return "\n".join(lines)


def main() -> None:
    """Measures and tells."""
    parser = argparse.ArgumentParser(prog="python3 build/bench.py", description=__doc__)
    parser.add_argument("--runs", type=int, default=7, help="how many of each (7)")
    parser.add_argument("--slow", default="1,4", help="how many times slower (1,4)")
    parser.add_argument("--browsers", default="chromium", help="chromium,firefox,webkit")
    parser.add_argument("--visits", default="cold,warm", help="first and later ones: cold,warm")
    parser.add_argument("--json", type=Path, default=install.TOOLS / "bench.json")
    options = parser.parse_args()
    with install.plainly():
        install.make(install.CHECK)
    if Path(sys.prefix) != install.VENV and "selenium" not in sys.modules:
        os.execve(install.PYTHON, [str(install.PYTHON), *sys.argv], install.environment())  # noqa: S606
    from build import bench_site, site

    browsers = {
        "chromium": lambda: playwright_tab("chromium"),
        "firefox": lambda: playwright_tab("firefox"),
        "webkit": webkit_tab,
    }
    kept: dict[str, Any] = {"load": os.getloadavg(), "runs": options.runs}
    with tempfile.TemporaryDirectory() as folder, contextlib.ExitStack() as stack:
        address = stack.enter_context(served(bench_site.make(Path(folder))))
        site.build(Path(folder) / "page")
        page = stack.enter_context(served(Path(folder) / "page"))
        for name in options.browsers.split(","):
            with browsers[name]() as tabs:
                for slow in map(int, options.slow.split(",")):
                    numbers = measure_page(tabs, page, options.runs, slow)
                    numbers |= measure_taps(tabs, page, options.runs, slow)
                    for visit in options.visits.split(","):
                        numbers |= MEASURES[visit](tabs, address, options.runs, slow)
                    print(table(name, slow, numbers), flush=True)
                    kept[f"{name} {slow}x"] = numbers
    options.json.write_text(json.dumps(kept, indent=1))
    print(f"\nAll numbers: {options.json}")


if __name__ == "__main__":
    main()
