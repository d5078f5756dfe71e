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
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Protocol

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

WAYS = ("stock, default units", "stock", "no snapshot", "snapshot", "floor")
PROCESSES = ("chrom", "firefox", "MiniBrowser", "WebKit", "Isolated", "Web Content")
Numbers = dict[str, list[float]]


class Tab(Protocol):
    """A page of a browser with nothing stored at first."""

    def open(self, address: str) -> None:
        """Go there."""

    def value(self, expression: str) -> Any:
        """The value of a JavaScript expression, or what its promise comes to."""


@contextlib.contextmanager
def playwright_tab(engine: str) -> Iterator[Callable[[], contextlib.AbstractContextManager[Tab]]]:
    """Tabs of Chromium or Firefox."""
    from playwright.sync_api import Page, sync_playwright

    class PlaywrightTab:
        def __init__(self, page: Page) -> None:
            self.page = page

        def open(self, address: str) -> None:
            self.page.goto(address, wait_until="domcontentloaded")

        def value(self, expression: str) -> Any:
            return self.page.evaluate(expression)

    with sync_playwright() as playwright:
        if engine == "chromium":
            from build import chromium

            found = chromium.find()
            if not found:
                raise install.Stop("No Chromium here: python build/chromium.py gets one.")
            browser = playwright.chromium.launch(
                executable_path=str(found.executable),
                args=found.arguments,
                env={**os.environ, **found.variables},
            )
        else:
            storage = "dom.storageManager.prompt.testing"
            browser = playwright.firefox.launch(
                channel="moz-firefox",
                executable_path="/usr/bin/firefox-esr",
                firefox_user_prefs={storage: True, f"{storage}.allow": True},
            )

        @contextlib.contextmanager
        def tab() -> Iterator[Tab]:
            context = browser.new_context(viewport={"width": 390, "height": 844})
            yield PlaywrightTab(context.new_page())
            context.close()

        yield tab
        browser.close()


@contextlib.contextmanager
def webkit_tab() -> Iterator[Callable[[], contextlib.AbstractContextManager[Tab]]]:
    """Tabs of WebKitGTK; run under xvfb-run where there is no screen."""
    from selenium import webdriver  # type: ignore[import-not-found,unused-ignore]

    class WebKitTab:
        def __init__(self, driver: Any) -> None:
            self.driver = driver

        def open(self, address: str) -> None:
            self.driver.get(address)

        def value(self, expression: str) -> Any:
            script = f"const end = arguments[0]; Promise.resolve({expression}).then(end);"
            return self.driver.execute_async_script(script)

    @contextlib.contextmanager
    def tab() -> Iterator[Tab]:
        options = webdriver.WebKitGTKOptions()
        options.binary_location = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser"
        options.add_argument("--automation")
        service = webdriver.WebKitGTKService("/usr/bin/WebKitWebDriver")
        driver = webdriver.WebKitGTK(options=options, service=service)
        driver.set_script_timeout(180)
        try:
            yield WebKitTab(driver)
        finally:
            driver.quit()

    yield tab


def processes() -> dict[int, str]:
    """The browser's processes: those that this one started, and theirs, by number."""
    parents, names = {}, {}
    for folder in Path("/proc").glob("[0-9]*"):
        with contextlib.suppress(OSError, ValueError):
            name, rest = (folder / "stat").read_text().split("(", 1)[1].rsplit(") ", 1)
            parents[int(folder.name)], names[int(folder.name)] = int(rest.split()[1]), name
    ours = {os.getpid()}
    while more := {child for child, parent in parents.items() if parent in ours} - ours:
        ours |= more
    return {number: names[number] for number in ours if names[number].startswith(PROCESSES)}


@contextlib.contextmanager
def slowed(times: int) -> Iterator[None]:
    """Has the browser's processes run only one part in `times` of the time."""
    over = threading.Event()

    def send(numbers: set[int], what: signal.Signals) -> None:
        for number in numbers:
            with contextlib.suppress(ProcessLookupError):
                os.kill(number, what)

    def stop_and_go() -> None:
        count = 0
        numbers: set[int] = set()
        while not over.is_set():
            if count % 10 == 0:
                numbers = set(processes())
            count += 1
            send(numbers, signal.SIGSTOP)
            time.sleep(0.02 * (times - 1) / times)
            send(numbers, signal.SIGCONT)
            time.sleep(0.02 / times)

    if times == 1:
        yield
        return
    thread = threading.Thread(target=stop_and_go)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()
        send(set(processes()), signal.SIGCONT)


def memory() -> float:
    """Megabytes that the largest of the browser's processes, the page's, has for itself."""
    sizes = [0.0]
    for number in processes():
        with contextlib.suppress(OSError):
            text = Path(f"/proc/{number}/smaps_rollup").read_text()
            sizes.append(sum(int(x.split()[1]) for x in text.splitlines() if "Private" in x) / 1e3)
    return max(sizes)


def measure(
    tabs: Callable[[], contextlib.AbstractContextManager[Tab]],
    address: str,
    runs: int,
    slow: int,
    ways: tuple[str, ...],
) -> Numbers:
    """Milliseconds and megabytes by what was measured, a number a run."""
    numbers: Numbers = {}

    def note(what: str, value: float) -> None:
        numbers.setdefault(what, []).append(value)

    def start(tab: Tab, way: str) -> float:
        tab.open(f"{address}?way={way.replace(' ', '%20')}")
        return float(tab.value("bench.start"))

    for run in range(runs):
        for way in ways:  # one beside the other, so that a busy minute touches all of them
            with tabs() as tab, slowed(slow):
                note(f"cold: {way}", start(tab, way))
        progress(f"cold {run + 1}/{runs}")
    with tabs() as tab:
        tab.open(f"{address}?store")
        tab.value("bench.stored()")
        for way in ways:
            start(tab, way)  # so that what a browser compiles once and keeps is kept
        for run in range(runs):
            for way in ways:
                tab.open("about:blank")
                with slowed(slow):
                    note(f"warm: {way}", start(tab, way))
                    if way in ("snapshot", "no snapshot"):
                        taken = tab.value("bench.keystrokes(40)")
                        note(f"keystroke: {way}", statistics.median(taken))
                if slow == 1:
                    note(f"memory: {way}", memory())
            progress(f"warm {run + 1}/{runs}")
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
    parser.add_argument("--json", type=Path, default=install.TOOLS / "bench.json")
    options = parser.parse_args()
    with install.plainly():
        install.make(install.CHECK)
    if Path(sys.prefix) != install.VENV and "selenium" not in sys.modules:
        os.execve(install.PYTHON, [str(install.PYTHON), *sys.argv], install.environment())  # noqa: S606
    from build import bench_site

    browsers = {
        "chromium": lambda: playwright_tab("chromium"),
        "firefox": lambda: playwright_tab("firefox"),
        "webkit": webkit_tab,
    }
    kept: dict[str, Any] = {"load": os.getloadavg(), "runs": options.runs}
    with tempfile.TemporaryDirectory() as folder, contextlib.ExitStack() as stack:
        address = stack.enter_context(served(bench_site.make(Path(folder))))
        for name in options.browsers.split(","):
            with browsers[name]() as tabs:
                for slow in map(int, options.slow.split(",")):
                    numbers = measure(tabs, address, options.runs, slow, WAYS)
                    print(table(name, slow, numbers), flush=True)
                    kept[f"{name} {slow}x"] = numbers
    options.json.write_text(json.dumps(kept, indent=1))
    print(f"\nAll numbers: {options.json}")


if __name__ == "__main__":
    main()
