"""One script of the site, bundled from sources that a test has changed."""

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

from build import site, words


def bundled(entry: Path, root: Path = site.ROOT) -> str:
    """The script that `entry` and all it imports make, with the words of `root`."""
    options = ["--bundle", "--format=esm", "--charset=utf8", "--log-level=warning"]
    (program,) = site.MODULES.glob("@esbuild/*/bin/esbuild")
    done = subprocess.run(
        [program, entry, *options, *words.aliases(root)],
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
    return bundled(copy / entry, folder)
