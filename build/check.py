"""Checks everything, says what holds and what does not, and ends with 0 only if all holds."""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import engines, install, nginx

BIN = install.VENV / "bin"
NPM_BIN = install.BUILD / "node_modules" / ".bin"
# Several files at a time, each whole, for its tests share what is dear to set up.
AT_ONCE = ("--numprocesses=auto", "--maxprocesses=4", "--dist=loadfile")
PYTEST = (install.PYTHON, "-m", "pytest", "--quiet", *AT_ONCE)


@dataclass(frozen=True)
class Check:
    """One command that must end with 0."""

    name: str
    command: tuple[str | Path, ...]
    place: Path = install.ROOT

    def holds(self) -> bool:
        """Runs it with its output shown."""
        print(f"\n── {self.name}", flush=True)
        return not subprocess.run(
            self.command, cwd=self.place, env=install.environment(), stdin=subprocess.DEVNULL
        ).returncode


def page_check(name: str, tool: str, *arguments: str) -> Check:
    """A check by one of the npm packages, which look for their settings in build/."""
    return Check(name, (NPM_BIN / tool, *arguments), install.BUILD)


QUICK = (
    Check("Python format", (BIN / "ruff", "format", "--check", ".")),
    Check("Python lint", (BIN / "ruff", "check", ".")),
    Check("Python types", (BIN / "mypy", "engine", "build", "tests")),
    Check("Import directions", (BIN / "lint-imports", "--no-cache")),
    page_check(
        "Page format and lint",
        "biome",
        "ci",
        "--colors=off",
        "--error-on-warnings",
        "../webapp",
        ".",
    ),
    page_check("Page types", "tsc", "-p", "tsconfig.json"),
    page_check("Worker types", "tsc", "-p", "tsconfig.worker.json"),
    page_check(
        "HTML",
        "html-validate",
        "--max-warnings=0",
        "--config=htmlvalidate.json",
        "../dist/index.html",
    ),
    Check("Size budget", (install.PYTHON, install.BUILD / "budget.py")),
)
BROWSER = ("tests/browser", "tests/faults")
# A browser's tests wait more than they reckon: with one file more at a time than there are
# processors they took six sevenths of the time.
IN_BROWSER = (*PYTEST, f"--numprocesses={min(os.cpu_count() or 1, 3) + 1}", *BROWSER)
ENGINES = "tests/engines"
NOT_BROWSER = tuple(f"--ignore={folder}" for folder in (*BROWSER, ENGINES))
MILLION = 1_000_000
# An engine's tests after one another, for it starts slowly, and WebKit by itself: beside another
# its first visits may take a minute each. Beside the browser tests all took longer than after them,
# on two processors.
CORE = (*PYTEST, "--dist=loadgroup", ENGINES)
FAST = (*QUICK, Check("Tests that take seconds", (*PYTEST, *NOT_BROWSER, "-m", "not slow")))
ALL = (
    *QUICK,
    Check("Tests", (*PYTEST, *NOT_BROWSER)),
    Check("Browser tests", (*IN_BROWSER, "--shell", "-m", "not (whole or alone or long)")),
    Check(
        "Browser tests that need the whole Chromium",
        (*IN_BROWSER, "-m", "whole and not (alone or long)"),
    ),
    Check("Core on Chromium and Firefox", (*CORE, "-k", "not WebKit")),
    Check("Core on WebKit", (*CORE, "-k", "WebKit")),
    Check(
        "Browser tests that measure time",
        (install.PYTHON, "-m", "pytest", "--quiet", *BROWSER, "-m", "alone"),
    ),
    Check(
        "First visit, without its times", (install.PYTHON, install.BUILD / "audit.py", "--untimed")
    ),
)
HOURS = ("-o", "faulthandler_timeout=10800")  # one of the four tests took 53 minutes
MANY = ("env", "HEELWISE_STARTS=200", "HEELWISE_KILLS=100")
LONG = (
    Check("More looks at every screen", (*IN_BROWSER, "-m", "long")),
    Check(
        "A million inputs", (*PYTEST, *HOURS, "--dist=load", "tests/fuzz", f"--inputs={MILLION}")
    ),
    Check("Known holes in what is pinned", (install.PYTHON, install.BUILD / "advisories.py")),
    Check("Many starts and kills", (*MANY, *PYTEST, *BROWSER, "-k", "many_starts or killed_at")),
)


def prepare(fast: bool) -> None:
    """Installs and builds what the checks look at. Raises Stop if that cannot be done."""
    install.make(install.CHECK)
    with install.timed("Site"):
        install.quietly("The site", (install.PYTHON, install.BUILD / "site.py"))
    if not fast:
        with install.timed("Chromium"):
            install.quietly("Chromium", (install.PYTHON, install.BUILD / "chromium.py"))
        with install.timed("Firefox and WebKit"):
            install.quietly("The engines", (install.PYTHON, install.BUILD / "engines.py"))
        with install.timed("nginx"):
            install.quietly("nginx", (install.PYTHON, install.BUILD / "nginx.py"))


def main() -> int:
    """Runs all checks, whatever fails, and sums up."""
    parser = argparse.ArgumentParser(
        prog="python3 build/check.py",
        description="Format, lint, types, import directions, tests, browser tests, size budget.",
    )
    parser.add_argument("--fast", action="store_true", help="leave out the slow ones (< 2 min)")
    parser.add_argument(
        "--long", action="store_true", help="and what takes hours: a million inputs, 100 kills"
    )
    options = parser.parse_args()
    checks = FAST if options.fast else ALL
    if options.long:
        checks = (*checks, *LONG)
    with install.plainly():
        start = time.monotonic()
        prepare(options.fast)
        rows = []
        for check in checks:
            begun = time.monotonic()
            rows.append((check.holds(), time.monotonic() - begun, check.name))
        print("\n── Summary")
        for held, seconds, name in rows:
            print(f"{'holds' if held else 'FAILS':6} {seconds:7.1f} s  {name}")
        for name in [] if options.fast else [*engines.absent(), *nginx.absent()]:
            print(f"NOT TRIED: {name} is not on this machine and could not be installed.")
        failed = [name for held, _, name in rows if not held]
        print(
            f"{len(rows)} checks in {time.monotonic() - start:.0f} s: "
            + (f"failed: {', '.join(failed)}" if failed else "all hold")
        )
    return bool(failed)


if __name__ == "__main__":
    sys.exit(main())
