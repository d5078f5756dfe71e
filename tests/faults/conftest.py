"""Phones with a storage that stays."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright

from tests.conftest import PHONE
from tests.faults.kept_phone import KeptPhone
from tests.faults.played_host import PlayedHost, played, small

# The first file of each bundle and style, so that none of them is the same in a next version.
IN_EACH = (
    *("page/main.js", "machine/main.js", "book/main.js", "copies/main.js", "paper/main.js"),
    *("worker/worker.js", "offline/updates.js", "sent/main.js"),
)
STYLES = ("page", "machine", "book", "paper")


@pytest.fixture(scope="session")
def first(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small site."""
    return small(tmp_path_factory.mktemp("first"))


@pytest.fixture(scope="session")
def second(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its next version, of which every script and every style is another: none of the first's is
    left on the host. It keeps all as it was."""

    def change(root: Path) -> None:
        for name in IN_EACH:
            with (root / "webapp" / name).open("a") as script:
                script.write("\nglobalThis.second = true;\n")
        for name in STYLES:
            with (root / "webapp" / "style" / f"{name}.css").open("a") as style:
                style.write("\nbody { outline: 0 solid }\n")

    return small(tmp_path_factory.mktemp("second"), change)


@pytest.fixture
def host(first: Path) -> Iterator[PlayedHost]:
    """A host of the first version."""
    with played(first) as host:
        yield host


@pytest.fixture
def kept_phone(
    playwright: Playwright, browser_type_launch_args: dict[str, Any], tmp_path: Path
) -> Callable[..., KeptPhone]:
    """Makes a phone with nothing stored yet; keywords change what it is."""

    def make(folder: str = "storage", **features: Any) -> KeptPhone:
        return KeptPhone(
            playwright, tmp_path / folder, {**browser_type_launch_args, **PHONE, **features}
        )

    return make
