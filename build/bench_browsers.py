"""Browsers that build/bench.py measures in: fresh tabs, slowed processes, memory taken."""

from __future__ import annotations

import contextlib
import os
import signal
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Protocol

from build import engines, install

PROCESSES = ("chrom", "firefox", "MiniBrowser", "WebKit", "Isolated", "Web Content")


class Tab(Protocol):
    """A page of a browser with nothing stored at first."""

    def open(self, address: str) -> None:
        """Go there."""

    def value(self, expression: str) -> Any:
        """The value of a JavaScript expression, or what its promise comes to."""


# A browser may say that it is there before the page's script has run: what that names is then not
# there yet.
LOOK = """
const look = () => {{
  try {{ Promise.resolve({0}).then(end, (error) => end(Promise.reject(error))); }}
  catch (error) {{
    if (!(error instanceof ReferenceError)) throw error;
    setTimeout(look, 10);
  }}
}};
look();"""

Tabs = Callable[[], contextlib.AbstractContextManager[Tab]]


@contextlib.contextmanager
def playwright_tab(engine: str) -> Iterator[Tabs]:
    """Tabs of Chromium or Firefox."""
    from playwright.sync_api import Page, sync_playwright

    class PlaywrightTab:
        def __init__(self, page: Page) -> None:
            self.page = page

        def open(self, address: str) -> None:
            self.page.goto(address, wait_until="domcontentloaded")

        def value(self, expression: str) -> Any:
            return self.page.evaluate(f"new Promise((end) => {{ {LOOK.format(expression)} }})")

    with sync_playwright() as playwright:
        if engine == "chromium":
            from build import chromium

            found = chromium.find()
            if not found:
                raise install.Stop("No Chromium here: python3 build/chromium.py gets one.")
            browser = playwright.chromium.launch(
                executable_path=str(found.executable),
                args=found.arguments,
                env={**os.environ, **found.variables},
            )
        else:
            browser = playwright.firefox.launch(
                channel="moz-firefox",
                executable_path="/usr/bin/firefox-esr",
                firefox_user_prefs=engines.FIREFOX_SETTINGS,
            )

        @contextlib.contextmanager
        def tab() -> Iterator[Tab]:
            context = browser.new_context(viewport={"width": 390, "height": 844})
            yield PlaywrightTab(context.new_page())
            context.close()

        yield tab
        browser.close()


@contextlib.contextmanager
def webkit_tab() -> Iterator[Tabs]:
    """Tabs of WebKitGTK; run under xvfb-run where there is no screen."""
    from selenium import webdriver

    class WebKitTab:
        def __init__(self, driver: Any) -> None:
            self.driver = driver

        def open(self, address: str) -> None:
            self.driver.get(address)

        def value(self, expression: str) -> Any:
            script = f"const end = arguments[0]; {LOOK.format(expression)}"
            return self.driver.execute_async_script(script)

    @contextlib.contextmanager
    def tab() -> Iterator[Tab]:
        options = webdriver.WebKitGTKOptions()
        options.binary_location = str(engines.mini_browser())
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
