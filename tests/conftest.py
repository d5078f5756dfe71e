"""What browser tests stand on: the built site, a server for it, and a phone to open it with."""

import os
import re
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Literal
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Request
from xdist.scheduler import LoadScopeScheduling

from build import chromium
from tests.asking import answer_text

ROOT = Path(__file__).resolve().parents[1]


def pytest_addoption(parser: pytest.Parser) -> None:
    """How many inputs the fuzz tests try in all, and which Chromium browses."""
    parser.addoption("--inputs", default="8000", help="inputs that the fuzz tests try in all")
    parser.addoption(
        "--shell", action="store_true", help="a Chromium without windows, a third quicker"
    )


# In one process such a file took longer than all others; its tests share nothing.
EACH_BY_ITSELF = {
    "tests/published/test_knitout_judge.py",
    "tests/faults/test_killed_typing.py",
    "tests/browser/test_looks.py",
}
ENGINE = re.compile("chromium|firefox|webkit", re.IGNORECASE)


class Shares(LoadScopeScheduling):  # type: ignore[misc]
    """What one process runs: a whole file, for its tests share what is dear to set up.

    Of tests on named engines all of one engine, in whatever file. xdist's own groups do nothing
    with this pytest, which keeps the names of tests elsewhere than xdist 3.8 looks for them.
    """

    def _split_scope(self, nodeid: str) -> str:
        file = nodeid.partition("::")[0]
        if file in EACH_BY_ITSELF:
            return nodeid
        engines = ENGINE.findall(nodeid) if file.startswith("tests/engines/") else ()
        return engines[-1].casefold() if engines else file


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The slow ones first, or one process is left with them while the others have ended."""
    items.sort(key=lambda item: not item.get_closest_marker("slow"))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Shares | None:
    """Ours, unless something else is asked for."""
    return Shares(config, log) if config.getoption("dist") == "loadfile" else None


@pytest.fixture(scope="session")
def dist() -> Path:
    """The built site; built now if it is not up to date."""
    subprocess.run([sys.executable, "build/site.py"], cwd=ROOT, check=True)
    return ROOT / "dist"


def free_port() -> int:
    """A port that nothing listens on."""
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        port: int = trial.getsockname()[1]
        return port


@contextmanager
def served(dist: Path) -> Iterator[str]:
    """The address of a built site, served by the project's own server as its own process."""
    port = free_port()
    address = f"http://localhost:{port}/"
    server = subprocess.Popen(
        [sys.executable, "build/serve.py", "--port", str(port), "--dist", str(dist)],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
    )
    try:
        for _ in range(100):
            try:
                urllib.request.urlopen(address).close()
                break
            except OSError:
                assert server.poll() is None, "the server stopped"
                time.sleep(0.1)
        yield address
    finally:
        server.terminate()
        server.wait()


@pytest.fixture(scope="session")
def site(dist: Path) -> Iterator[str]:
    """The address of the built site."""
    with served(dist) as address:
        yield address


@pytest.fixture(scope="session")
def browser_type_launch_args(
    browser_type_launch_args: dict[str, Any], pytestconfig: pytest.Config
) -> dict[str, Any]:
    """Launches the Chromium that is on the machine or was unpacked by build/chromium.py."""
    found = (pytestconfig.getoption("--shell") and chromium.shell()) or chromium.find()
    assert found, "no Chromium here: python3 build/chromium.py gets one"
    return {
        **browser_type_launch_args,
        "executable_path": str(found.executable),
        "args": found.arguments,
        "env": {**os.environ, **found.variables},
    }


PHONE = {
    "viewport": {"width": 390, "height": 844},
    "device_scale_factor": 2.625,
    "is_mobile": True,
    "has_touch": True,
    "locale": "en",
}


DESK = Path(__file__).with_name("desk_engine.js")

# What a browser says when the site's policy stops a script, a style, a request, or a text on its
# way to become markup or a script.
FORBIDDEN = ("content security policy", "' assignment")


# The cautions were read on this phone: they are asked of a first knitting and of no other.
CARED = "try { localStorage['heelwise.cared'] ??= 'true'; } catch { /* It keeps nothing. */ }"


@pytest.fixture
def service_workers(request: pytest.FixtureRequest) -> Literal["allow", "block"]:
    """Most tests need none, and storing the whole site costs each of them some seconds."""
    return "allow" if request.node.get_closest_marker("stored") else "block"


@pytest.fixture
def at_desk(request: pytest.FixtureRequest) -> bool:
    """Whether the engine answers from here. It is the same one and gives the same answers
    (tests/browser/test_same_answers.py); Python in a browser takes a second to start."""
    return not any(map(request.node.get_closest_marker, ("stored", "pyodide")))


@pytest.fixture
def new_phone(
    browser: Browser, site: str, service_workers: Literal["allow", "block"], at_desk: bool
) -> Iterator[Callable[..., BrowserContext]]:
    """Makes fresh phones: touch, 390 × 844, nothing stored but that the cautions were read, unless
    one is not `cared`. Other keywords change what a phone is.

    Whatever a test is about, it asked no other host and did nothing that the site's policy forbids.
    """
    phones: list[BrowserContext] = []
    wrong: list[str] = []

    def asked(request: Request) -> None:
        if elsewhere(request.url):
            wrong.append(request.url)

    def said(message: ConsoleMessage) -> None:
        if any(words in message.text.casefold() for words in FORBIDDEN):
            wrong.append(f"{message.text} {message.location}")

    usual = {**PHONE, "service_workers": service_workers}

    def make(*, cared: bool = True, **features: Any) -> BrowserContext:
        phones.append(browser.new_context(**{**usual, "base_url": site, **features}))
        phones[-1].on("request", asked)
        phones[-1].on("console", said)
        if cared:
            phones[-1].add_init_script(CARED)
        if at_desk:
            phones[-1].add_init_script(path=DESK)
            phones[-1].expose_function("askDesk", answer_text)
        return phones[-1]

    yield make
    for phone in phones:
        phone.close()
    assert not wrong


def elsewhere(address: str) -> bool:
    """Whether an address leads off this machine; what a page makes itself leads nowhere."""
    parts = urlsplit(address)
    return parts.scheme not in ("data", "blob") and parts.hostname != "localhost"


@pytest.fixture
def phone(new_phone: Callable[..., BrowserContext]) -> BrowserContext:
    """One fresh phone."""
    return new_phone()


@pytest.fixture(scope="session")
def screens() -> Path:
    """Where screenshots are kept, for people to look at."""
    folder = ROOT / ".tools" / "screens"
    folder.mkdir(parents=True, exist_ok=True)
    return folder
