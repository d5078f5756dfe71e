"""One script of the site, bundled from sources that a test has changed."""

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

from build import site


def bundled(entry: Path) -> str:
    """The script that `entry` and all it imports make."""
    (program,) = site.MODULES.glob("@esbuild/*/bin/esbuild")
    done = subprocess.run(
        [program, entry, "--bundle", "--format=esm", "--charset=utf8", "--log-level=warning"],
        env={**os.environ, "NODE_PATH": str(site.MODULES)},
        capture_output=True,
        text=True,
        check=True,
    )
    return done.stdout


def changed(folder: Path, entry: str, change: Callable[[Path], None]) -> str:
    """The script of `entry` of webapp once `change` has had its copy in `folder`."""
    copy = folder / "webapp"
    shutil.copytree(site.ROOT / "webapp", copy)
    change(copy)
    return bundled(copy / entry)
