"""Holds the built site to its size: `build/budget.json` names groups of files and their most bytes.

A group is {"files": [patterns in dist/], "but": [patterns of those that do not count], "max_bytes":
most as they are, "max_brotli_bytes": most as a host sends them}; all but the first may be left out.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TypedDict

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

import brotli


class Group(TypedDict, total=False):
    """Files that are loaded together, and their bounds."""

    files: list[str]
    but: list[str]
    max_bytes: int
    max_brotli_bytes: int


SIZES: dict[str, Callable[[Path], int]] = {
    "max_bytes": lambda file: file.stat().st_size,
    "max_brotli_bytes": lambda file: len(brotli.compress(file.read_bytes(), quality=9)),
}


def measure(groups: dict[str, Group], dist: Path) -> tuple[list[str], list[str]]:
    """A line for each bound of each group, and a line for each fault found."""
    lines, faults = [], []
    for name, group in groups.items():
        files: set[Path] = set()
        for pattern in group["files"]:
            found = {path for path in dist.glob(pattern) if path.is_file()}
            if not found:
                faults.append(f"{name}: nothing in the site is called {pattern}")
            files |= found
        for pattern in group.get("but", ()):
            files -= set(dist.glob(pattern))
        for bound, most in group.items():
            if bound not in SIZES or not isinstance(most, int):
                continue
            size = sum(map(SIZES[bound], files))
            unit = "bytes" if bound == "max_bytes" else "bytes by brotli"
            lines.append(f"{name}: {size:,} of {most:,} {unit} ({size / most:.0%})")
            if size > most:
                faults.append(f"{name}: {size - most:,} {unit} too many")
    return lines, faults


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python3 build/budget.py", description=__doc__).parse_args()
    lines, faults = measure(
        json.loads((install.BUILD / "budget.json").read_text()), install.ROOT / "dist"
    )
    print("\n".join(lines))
    sys.exit("\n".join(faults) or None)
