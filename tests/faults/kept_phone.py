"""A phone whose storage outlives its browser, and whose browser can be killed at any moment."""

import os
import signal
import subprocess
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Error, Playwright

from tests.conftest import CARED


class KeptPhone:
    """Opens and kills browsers on one folder of storage."""

    def __init__(self, playwright: Playwright, folder: Path, features: dict[str, Any]) -> None:
        self.playwright = playwright
        self.folder = folder
        self.features = features
        self.group = 0
        self.killed = 0.0  # when it was, on the monotonic clock
        self.timer: threading.Timer | None = None

    @contextmanager
    def opened(self) -> Iterator[BrowserContext]:
        """A browser; whether it was killed in the end or not, it is gone afterwards."""
        chromium = self.playwright.chromium
        context = chromium.launch_persistent_context(self.folder, **self.features)
        context.add_init_script(CARED)
        self.group = self._group()
        try:
            yield context
        finally:
            if self.timer:
                self.timer.cancel()
                self.timer.join()
            with suppress(Error):
                context.close()
            # A killed browser may leave a process behind that holds the folder.
            with suppress(ProcessLookupError):
                os.killpg(self.group, signal.SIGKILL)

    def kill_in(self, seconds: float) -> None:
        """Kill the browser, with every process of it, so many seconds from now."""
        self.timer = threading.Timer(seconds, self.kill)
        self.timer.start()

    def kill(self) -> None:
        """Kill it now."""
        self.killed = time.monotonic()
        os.killpg(self.group, signal.SIGKILL)

    def _group(self) -> int:
        """The process group of the browser on this folder, which nothing else is in."""
        listed = subprocess.check_output(["ps", "-A", "-ww", "-o", "pgid=,args="], text=True)
        groups = {
            int(line.split(maxsplit=1)[0])
            for line in listed.splitlines()
            if f"--user-data-dir={self.folder}" in line
        }
        assert len(groups) == 1, f"not one browser on {self.folder}: {groups}"
        assert os.getpgid(0) not in groups
        return groups.pop()
