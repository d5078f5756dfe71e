"""Sites and hosts that a test can change, break and take away."""

import shutil
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from build import site

ROOT = Path(__file__).resolve().parents[2]
REQUEST = {
    "units": "cm",
    "foot": {"length": "24.6 cm"},
    "cylinder": {"slots": 60},
    "fabric": {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm"},
}


def built(folder: Path, change: Callable[[Path], None] = lambda root: None) -> Path:
    """A site of its own in `folder`/dist, whose page is bench.js.

    `change` may alter the copy of the sources (`engine`, `webapp`) before it is built.
    """
    root = folder / "root"
    for name in ("engine", "webapp"):
        shutil.copytree(ROOT / name, root / name)
    shutil.copy(Path(__file__).with_name("bench.js"), root / "webapp" / "page" / "main.js")
    change(root)
    site.build(folder / "dist", root=root)
    return folder / "dist"


class Host:
    """The project's own server as a process of its own, which can be stopped like one."""

    def __init__(self, port: int) -> None:
        self.port = port
        self.address = f"http://localhost:{port}/"
        self.process: subprocess.Popen[bytes] | None = None

    def serve(self, dist: Path) -> None:
        """Serve `dist`, in place of what was served before."""
        self.stop()
        command = [sys.executable, "build/serve.py", "--dist", str(dist), "--port", str(self.port)]
        self.process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.DEVNULL)
        for _ in range(200):
            try:
                urllib.request.urlopen(self.address).close()
                return
            except OSError:
                assert self.process.poll() is None, "the server stopped"
                time.sleep(0.05)
        raise AssertionError("the server did not start")

    def stop(self) -> None:
        """End the process, and with it every connection."""
        if self.process:
            self.process.kill()
            self.process.wait()
            self.process = None


def until(page: Page, expression: str, seconds: float = 30) -> Any:
    """The value of a JavaScript expression once it is true.

    wait_for_function would do, did it not need what the site's policy forbids. What it names may
    not be there yet: on a first visit the page's script comes only once something is to be seen.
    """
    end = time.monotonic() + seconds
    look = f"""() => {{
        try {{ return {expression}; }}
        catch (error) {{ if (!(error instanceof ReferenceError)) throw error; }}
    }}"""
    while not (value := page.evaluate(look)):
        assert time.monotonic() < end, f"never true: {expression}"
        page.wait_for_timeout(50)
    return value


def comes_true(page: Page, check: Callable[[], Any], seconds: float = 30) -> None:
    """Wait until a check in Python says yes, while the page goes on."""
    end = time.monotonic() + seconds
    while not check():
        assert time.monotonic() < end, "it never came true"
        page.wait_for_timeout(50)


def ask(page: Page, call: dict[str, Any], **options: Any) -> dict[str, Any]:
    """The engine's answer to a call made in the page; its rejection as {"rejected": words}."""
    until(page, "Boolean(bench)")
    answer: dict[str, Any] = page.evaluate(
        "([call, options]) => bench.engine.ask(call, options).catch(e => ({rejected: e.message}))",
        [call, options],
    )
    return answer
