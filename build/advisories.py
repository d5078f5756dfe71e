"""Asks whether a hole is known in any package that is pinned here: `python3 build/advisories.py`.

pip-audit and npm ask where the packages come from. A hole that is known fails. Where no answer can
be had that is told, loudly, and fails nothing. `build/check.py` leaves this to `--long`: what
others find out about a package must not fail a change that did not touch it.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

PATIENCE_S = 300
PIP_AUDIT = install.ADVISORIES[0].folder / "bin" / "pip-audit"
NPM = install.VENV / "bin" / "npm"
# Looks nothing up but what is known of the pinned versions; installs nothing.
PYTHON_COMMAND = (PIP_AUDIT, "--require-hashes", "--disable-pip", "--progress-spinner=off")
NPM_COMMAND = (NPM, "audit", "--package-lock-only", "--json")


@dataclass(frozen=True)
class Told:
    """What was said of a lock: of so many packages something, of so many nothing; the holes."""

    packages: int = 0
    untold: int = 0
    holes: tuple[str, ...] = ()


def of_python(text: str) -> Told:
    """What pip-audit's JSON says. Raises ValueError where it says nothing.

    A package that the registry does not know it passes over as sound; here that is no answer.
    """
    packages = _read(text)["dependencies"]
    holes = [
        f"{one['name']} {one['version']}: {hole['id']}"
        for one in packages
        for hole in one.get("vulns", ())
    ]
    untold = sum("skip_reason" in one for one in packages)
    return Told(len(packages), untold, tuple(holes))


def of_npm(text: str) -> Told:
    """What npm's JSON says. Raises ValueError where it says nothing."""
    said = _read(text)
    holes = [
        f"{name} {one['range']}: {cause.get('url', cause['title'])}"
        for name, one in said["vulnerabilities"].items()
        for cause in one["via"]
        if isinstance(cause, dict)  # else the name of a package that has one of its own
    ]
    return Told(said["metadata"]["dependencies"]["total"], 0, tuple(holes))


def _read(text: str) -> dict[str, Any]:
    said = json.loads(text[text.find("{") :])
    if not isinstance(said, dict) or not {"dependencies", "vulnerabilities"} & set(said):
        raise ValueError("no answer")
    return said


def asked(command: Sequence[str | Path], place: Path, read: Callable[[str], Told]) -> Told | None:
    """What a command finds, or None where it finds out nothing."""
    try:
        done = subprocess.run(
            command,
            cwd=place,
            env=install.environment(),
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            timeout=PATIENCE_S,
        )
        return read(done.stdout)
    except (ValueError, KeyError, OSError, subprocess.TimeoutExpired):
        return None


def locks() -> Iterator[tuple[str, Told | None]]:
    """Each lock by its name, and what is told of it."""
    for lock in sorted(install.BUILD.glob("requirements-*.txt")):
        command = (*PYTHON_COMMAND, "--format=json", "--requirement", lock)
        yield lock.name, asked(command, install.BUILD, of_python)
    for lock in sorted(install.BUILD.glob("**/package-lock.json")):
        if "node_modules" not in lock.parts:
            name = lock.relative_to(install.BUILD).as_posix()
            yield name, asked(NPM_COMMAND, lock.parent, of_npm)


def main() -> int:
    """1 if a hole is known, else 0, whatever could not be asked."""
    argparse.ArgumentParser(prog="python3 build/advisories.py", description=__doc__).parse_args()
    with install.plainly():
        install.make((*install.CHECK, *install.ADVISORIES))
        holes = 0
        for name, told in locks():
            if told is None or told.untold == told.packages:
                print(f"NOT TRIED: {name}: nobody who could be asked knows of holes.")
                continue
            holes += len(told.holes)
            for hole in told.holes:
                print(f"KNOWN HOLE: {name}: {hole}")
            known = told.packages - told.untold
            print(
                f"{name}: of {known} of {told.packages} packages {len(told.holes)} holes are known."
            )
            if told.untold:
                print(f"NOT TRIED: {name}: of {told.untold} packages nothing is told.")
    if holes:
        print("Pin a version without the hole (DEVELOPERS.md, “Change a pinned package”).")
    return bool(holes)


if __name__ == "__main__":
    sys.exit(main())
