"""Phones of three engines. One that is not on the machine is left out by name."""

import shutil
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Playwright

from build import engines
from tests.browser.host import Host
from tests.conftest import PHONE, free_port
from tests.engines.phone import Phone
from tests.engines.playwright_phone import PlaywrightPhone
from tests.engines.webkit_phone import WebKitPhone

NewPhone = Callable[[str], Phone]
ENGINES = ("Chromium", "Firefox", "WebKit")


@pytest.fixture(scope="session")
def display() -> Iterator[str]:
    """A screen that nobody sees."""
    command = ["Xvfb", "-displayfd", "1", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as server:
        assert server.stdout
        yield f":{server.stdout.readline().decode().strip()}"
        server.terminate()


@pytest.fixture(scope="session")
def browsers(
    playwright: Playwright,
    browser_type_launch_args: dict[str, Any],
    tmp_path_factory: pytest.TempPathFactory,
) -> Iterator[Callable[[str], tuple[Browser, Path]]]:
    """Chromium or Firefox, started when it is first wanted, and the folder of what it saves."""
    started: dict[str, tuple[Browser, Path]] = {}

    def browser(engine: str) -> tuple[Browser, Path]:
        if engine not in started:
            saved = tmp_path_factory.mktemp("saved")
            started[engine] = (start(saved, engine), saved)
        return started[engine]

    def start(saved: Path, engine: str) -> Browser:
        if engine == "Chromium":
            return playwright.chromium.launch(**browser_type_launch_args, downloads_path=saved)
        return playwright.firefox.launch(
            channel="moz-firefox",
            executable_path=shutil.which("firefox-esr"),
            firefox_user_prefs=engines.FIREFOX_SETTINGS,
            downloads_path=saved,
        )

    yield browser
    for one, _ in started.values():
        one.close()


@pytest.fixture(scope="session")
def begun(
    browsers: Callable[[str], tuple[Browser, Path]],
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
) -> NewPhone:
    """Begins a fresh phone by the name of its engine; who asks for it closes it."""

    def begin(engine: str) -> Phone:
        if engine in engines.absent():
            pytest.skip(f"{engine} is not on this machine")
        if engine == "WebKit":
            return WebKitPhone(
                tmp_path_factory.mktemp("webkit"), request.getfixturevalue("display")
            )
        browser, saved = browsers(engine)
        touch = engine == "Chromium"  # Playwright cannot touch in Firefox
        features: dict[str, Any] = dict(PHONE)
        if not touch:
            del features["has_touch"], features["is_mobile"]
        return PlaywrightPhone(browser.new_context(**features), saved, touch)

    return begin


@pytest.fixture
def new_phone(begun: NewPhone) -> Iterator[NewPhone]:
    """Makes fresh phones, gone when the test is over."""
    phones: list[Phone] = []

    def make(engine: str) -> Phone:
        phones.append(begun(engine))
        return phones[-1]

    yield make
    for phone in phones:
        phone.close()


@pytest.fixture(params=ENGINES)
def engine(request: pytest.FixtureRequest) -> str:
    """Each engine in turn."""
    return str(request.param)


@pytest.fixture
def phone(engine: str, new_phone: NewPhone) -> Phone:
    """A fresh phone of each engine."""
    return new_phone(engine)


@pytest.fixture
def host(dist: Path) -> Iterator[Host]:
    """A server of the built site that a test can stop."""
    host = Host(free_port())
    host.serve(dist)
    yield host
    host.stop()
