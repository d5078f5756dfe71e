"""Checks everything, says what holds and what does not, and ends with 0 only if all holds.

What needs no built site runs while that is made and browsers are fetched. Of a check that holds one
line is shown, and of tests how many passed and what was not tried; of one that fails all it said.
"""

from __future__ import annotations

import argparse
import os
import re
import subprocess
import sys
import threading
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import engines, epub_checker, install, nginx

BIN = install.VENV / "bin"
NPM_BIN = install.BUILD / "node_modules" / ".bin"
# Several files at a time; tests/conftest.py says which tests share a process.
AT_ONCE = ("--numprocesses=auto", "--maxprocesses=4", "--dist=loadfile", "--no-loadscope-reorder")
PYTEST = (install.PYTHON, "-m", "pytest", "--quiet", *AT_ONCE)


LOGS = install.TOOLS / "check"
# pytest's last line of all, and what it says of tests that were left out.
CLOSING = re.compile(r"^(=+ )?\d+ (passed|failed|errors?|skipped|deselected|xfailed|warnings?)\b")
LEFT_OUT = re.compile(r"^SKIPPED|NOT TRIED|WAVERED")
FAILED = re.compile(r"^(?:FAILED|ERROR) (\S+)", re.MULTILINE)
WAVERING = 3  # tests of a check that may fail among others and hold by themselves


@dataclass(frozen=True)
class Result:
    """How a check ended, after how long, and all it said."""

    name: str
    held: bool
    seconds: float
    said: str

    def told(self) -> str:
        """One line, and what of its words is to be read."""
        line = f"{'holds' if self.held else 'FAILS':6} {self.seconds:7.1f} s  {self.name}"
        words = self.said.rstrip().splitlines()
        if self.held:
            words = [one for one in words if LEFT_OUT.search(one) or CLOSING.match(one)]
        return "\n".join([line, *words])


@dataclass(frozen=True)
class Check:
    """One command that must end with 0; it may run as soon as `needs` is made."""

    name: str
    command: tuple[str | Path, ...]
    place: Path = install.ROOT
    needs: install.Step | None = None  # None: all of them, and the site
    alone: tuple[str | Path, ...] = ()  # runs what failed once more, with nothing beside it

    def run(self) -> Result:
        """Runs it, and what failed of it once more where that is told for it.

        Several browsers at a time on two processors now and then make one of them wait for longer
        than any test does. What fails by itself too, fails; what does not is told as wavering; and
        where more than WAVERING fail, something is wrong with all of them.
        """
        result = self._once(self.command, "")
        failed = dict.fromkeys(FAILED.findall(result.said))  # an error after it names it again
        if result.held or not self.alone or not 0 < len(failed) <= WAVERING:
            return result
        again = self._once(self.alone, "-alone")
        wavered = "".join(f"WAVERED, held by itself: {one}\n" for one in failed)
        return Result(
            self.name,
            again.held,
            result.seconds + again.seconds,
            result.said + again.said + (wavered if again.held else ""),
        )

    def _once(self, command: tuple[str | Path, ...], which: str) -> Result:
        """What it says goes to a file, where it is even if this is stopped half-way."""
        LOGS.mkdir(parents=True, exist_ok=True)
        log = LOGS / f"{re.sub(r'[^a-z0-9]+', '-', self.name.lower())}{which}.log"
        begun = time.monotonic()
        with log.open("wb") as output:
            code = subprocess.run(
                command,
                cwd=self.place,
                env=install.environment(),
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
            ).returncode
        said = log.read_text(encoding="utf-8", errors="replace")
        return Result(self.name, not code, time.monotonic() - begun, said)


PYTHON_PACKAGES, NPM_PACKAGES = install.CHECK


def python_check(name: str, tool: str, *arguments: str) -> Check:
    """A check by one of the Python packages."""
    return Check(name, (BIN / tool, *arguments), needs=PYTHON_PACKAGES)


def page_check(name: str, tool: str, *arguments: str, site: bool = False) -> Check:
    """A check by one of the npm packages, which look for their settings in build/."""
    command: tuple[str | Path, ...] = (NPM_BIN / tool, *arguments)
    return Check(name, command, install.BUILD, needs=None if site else NPM_PACKAGES)


QUICK = (
    python_check("Python format", "ruff", "format", "--check", "."),
    python_check("Python lint", "ruff", "check", "."),
    python_check("Python types", "mypy", "engine", "build", "tests"),
    python_check("Import directions", "lint-imports", "--no-cache"),
    Check(
        "Words of the page",
        (install.PYTHON, install.BUILD / "words.py", "--check"),
        needs=PYTHON_PACKAGES,
    ),
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
        site=True,
    ),
    Check("Size budget", (install.PYTHON, install.BUILD / "budget.py")),
)
BROWSER = ("tests/browser", "tests/faults")
# A browser's tests wait more than they reckon: with one file more at a time than there are
# processors they took six sevenths of the time.
IN_BROWSER = (*PYTEST, f"--numprocesses={min(os.cpu_count() or 1, 3) + 1}", *BROWSER)
SHELL = ("--shell", "-m", "not (whole or alone or long)")
WHOLE = ("-m", "whole and not (alone or long)")
AGAIN = ("--last-failed", "--last-failed-no-failures=none")
ENGINES = "tests/engines"
NOT_BROWSER = tuple(f"--ignore={folder}" for folder in (*BROWSER, ENGINES))
MILLION = 1_000_000
# Beside the browser tests they took longer than after them, on two processors.
CORE = (*PYTEST, ENGINES)
FAST = (*QUICK, Check("Tests that take seconds", (*PYTEST, *NOT_BROWSER, "-m", "not slow")))
ALL = (
    *QUICK,
    Check("Tests", (*PYTEST, *NOT_BROWSER)),
    Check(
        "Browser tests",
        (*IN_BROWSER, *SHELL),
        alone=(install.PYTHON, "-m", "pytest", "--quiet", *BROWSER, *SHELL, *AGAIN),
    ),
    Check(
        "Browser tests that need the whole Chromium",
        (*IN_BROWSER, *WHOLE),
        alone=(install.PYTHON, "-m", "pytest", "--quiet", *BROWSER, *WHOLE, *AGAIN),
    ),
    Check(
        "Core on three engines",
        CORE,
        alone=(install.PYTHON, "-m", "pytest", "--quiet", ENGINES, *AGAIN),
    ),
    Check(
        "Browser tests that measure time",
        (install.PYTHON, "-m", "pytest", "--quiet", *BROWSER, "-m", "alone"),
    ),
    Check(
        "First visit, without its times", (install.PYTHON, install.BUILD / "audit.py", "--untimed")
    ),
)
HOURS = ("-o", "faulthandler_timeout=10800")  # one of a million inputs took 53 minutes
MANY = ("env", "HEELWISE_STARTS=200", "HEELWISE_KILLS=100")
LONG = (
    Check("More looks at every screen", (*IN_BROWSER, "-m", "long")),
    Check(
        "A million inputs", (*PYTEST, *HOURS, "--dist=load", "tests/fuzz", f"--inputs={MILLION}")
    ),
    Check("Known holes in what is pinned", (install.PYTHON, install.BUILD / "advisories.py")),
    Check(
        "Many starts and kills", (*MANY, *PYTEST, *HOURS, *BROWSER, "-k", "many_starts or killed")
    ),
)


# What the machine itself may lack; each gets it by Debian's means, or leaves it.
PROGRAMS = ("chromium.py", "engines.py", "nginx.py", "epub_checker.py")


def prepare(fast: bool) -> None:
    """Installs and builds what the checks look at. Raises Stop if that cannot be done."""
    install.make(install.CHECK[:1])
    with ThreadPoolExecutor(1) as beside:
        fetched = None if fast else beside.submit(_fetch)
        install.make(install.CHECK)
        with install.timed("Site"):
            install.quietly("The site", (install.PYTHON, install.BUILD / "site.py"))
        if fetched:
            with install.timed("Browsers and other programs"):
                fetched.result()


def _fetch() -> None:
    """One after the other: Debian lets nobody else in meanwhile."""
    for script in PROGRAMS:
        install.quietly(script.removesuffix(".py"), (install.PYTHON, install.BUILD / script))


def absent() -> list[str]:
    """Names of the programs that are not on this machine."""
    return [*engines.absent(), *nginx.absent(), *epub_checker.absent()]


def early(checks: Sequence[Check], given_up: threading.Event) -> list[Result]:
    """The results of these, each begun once what it needs is made; fewer if that is given up."""
    results: list[Result] = []
    for check in checks:
        while check.needs and not check.needs.done():
            if given_up.wait(0.2):
                return results
        results.append(check.run())
    return results


def run(checks: Sequence[Check], fast: bool) -> list[Result]:
    """All results, each told as it comes."""
    given_up = threading.Event()
    with ThreadPoolExecutor(1) as beside:
        meanwhile = beside.submit(early, [one for one in checks if one.needs], given_up)
        try:
            prepare(fast)
        finally:  # all is there now, or nothing more will come
            given_up.set()
        results = meanwhile.result()
    for result in results:
        print(result.told(), flush=True)
    for check in checks:
        if not check.needs:
            results.append(check.run())
            print(results[-1].told(), flush=True)
    return results


def main() -> int:
    """Runs all checks, whatever fails, and sums up."""
    parser = argparse.ArgumentParser(
        prog="python3 build/check.py",
        description="Format, lint, types, import directions, tests, browser tests, size budget.",
    )
    parser.add_argument("--fast", action="store_true", help="leave out the slow ones (about 90 s)")
    parser.add_argument(
        "--long", action="store_true", help="and what takes hours: a million inputs, 100 kills"
    )
    options = parser.parse_args()
    checks = FAST if options.fast else ALL
    if options.long:
        checks = (*checks, *LONG)
    with install.plainly():
        start = time.monotonic()
        results = run(checks, options.fast)
        for name in [] if options.fast else absent():
            print(f"NOT TRIED: {name} is not on this machine and could not be installed.")
        failed = [one.name for one in results if not one.held]
        print(
            f"{len(results)} checks in {time.monotonic() - start:.0f} s: "
            + (f"failed: {', '.join(failed)}" if failed else "all hold")
        )
    return bool(failed)


if __name__ == "__main__":
    sys.exit(main())
