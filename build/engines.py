"""Firefox and WebKit, for what must hold on every engine: the machine's, else Debian's.

One that is neither here nor to be had is left out, and whoever runs the checks is told so.
`python3 build/engines.py` gets both. Chromium, without which there is no check, is got by
chromium.py.
"""

from __future__ import annotations

import argparse
import shutil
import sys
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import debian, install

_STORING = "dom.storageManager.prompt.testing"
# Without an answer ready, the question whether to store for good is never answered.
FIREFOX_SETTINGS: dict[str, str | float | bool] = {_STORING: True, f"{_STORING}.allow": True}


@dataclass(frozen=True)
class Engine:
    """What it is called, the programs it needs, and the packages that hold them."""

    name: str
    commands: tuple[str, ...]
    packages: tuple[str, ...]

    def here(self) -> bool:
        """Whether all of its programs are on the machine."""
        return all(map(shutil.which, self.commands)) and (
            self is not WEBKIT or bool(mini_browser())
        )


FIREFOX = Engine("Firefox", ("firefox-esr",), ("firefox-esr",))
WEBKIT = Engine("WebKit", ("WebKitWebDriver", "Xvfb"), ("webkit2gtk-driver", "xvfb"))
BOTH = (FIREFOX, WEBKIT)


def mini_browser() -> Path | None:
    """The browser that WebKit's driver drives; no command, for it is there for tests alone."""
    found = sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))
    return found[-1] if found else None


def absent() -> list[str]:
    """Names of those that are not here."""
    return [engine.name for engine in BOTH if not engine.here()]


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python3 build/engines.py", description=__doc__).parse_args()
    with install.plainly():
        for engine in BOTH:
            engine.here() or debian.brought(*engine.packages)
