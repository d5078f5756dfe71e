"""Holds a first visit to its promises, by Lighthouse's slow phone: `python3 build/audit.py`.

The built site is served as a host sends it, compressed, and visited three times by a browser that
keeps nothing. The middle one of the three counts: what else the machine does lengthens single
visits. Lighthouse works the times out for a line of 1.6 Mbit a second, 150 ms there and back, and a
processor 4 times slower. On a machine that is busy all the while they say nothing: `--untimed`
leaves them out, and visits once.
"""

from __future__ import annotations

import argparse
import json
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import chromium, install

VISITS = 3
PATIENCE_S = 180  # for one visit, which takes some 15 s
LIGHTHOUSE = install.AUDIT[0].folder / ".bin" / "lighthouse"
DIST = install.ROOT / "dist"
Report = dict[str, Any]


@dataclass(frozen=True)
class Figure:
    """One number of a report, and what is promised of it."""

    name: str
    place: tuple[str | int, ...]
    scale: float = 1
    digits: int = 0
    least: float | None = None
    most: float | None = None
    timed: bool = False

    def of(self, report: Report) -> float | None:
        """The number, if Lighthouse could tell it."""
        found: Any = report
        try:
            for key in self.place:
                found = found[key]
        except (KeyError, IndexError):
            return None
        return None if found is None else found * self.scale

    def kept(self, value: float) -> bool:
        """Whether the promise is."""
        return (self.least is None or value >= self.least) and (
            self.most is None or value <= self.most
        )

    def promise(self) -> str:
        """In words."""
        if self.least is not None:
            return f"at least {self.least:.{self.digits}f}"
        return "" if self.most is None else f"at most {self.most:.{self.digits}f}"


def score(name: str, category: str, least: float, timed: bool = False) -> Figure:
    """Of 100."""
    place = ("categories", category, "score")
    return Figure(name, place, scale=100, least=least, timed=timed)


def measured(name: str, audit: str, **how: Any) -> Figure:
    """A number that goes into the score for performance."""
    return Figure(name, ("audits", audit, "numericValue"), **how)


FIGURES = (
    score("performance", "performance", 95, timed=True),
    score("accessibility", "accessibility", 100),
    score("best practices", "best-practices", 100),
    measured("first paint (FCP), ms", "first-contentful-paint", timed=True),
    measured("largest paint (LCP), ms", "largest-contentful-paint", most=1000, timed=True),
    measured("too busy to react (TBT), ms", "total-blocking-time", timed=True),
    measured("moved about (CLS)", "cumulative-layout-shift", digits=3, most=0.1),
    # What a new connection sends before it first waits to hear back: ten packets of 1460 bytes
    # (RFC 6928). A byte more takes 150 ms more.
    Figure(
        "page and its headers, bytes",
        ("audits", "network-requests", "details", "items", 0, "transferSize"),
        most=14_600,
    ),
)


def judge(
    reports: Sequence[Report], figures: Sequence[Figure] = FIGURES
) -> tuple[list[str], list[str]]:
    """A line for each figure, and one for each promise that the median of the visits breaks."""
    lines, faults = [], []
    for figure in figures:
        values = [value for report in reports if (value := figure.of(report)) is not None]
        if len(values) < len(reports) or not values:
            faults.append(f"{figure.name}: Lighthouse could not tell it in every visit")
            continue
        shown = [f"{value:.{figure.digits}f}" for value in (statistics.median(values), *values)]
        lines.append(
            f"{figure.name:28}{shown[0]:>7}  ({', '.join(shown[1:])})  {figure.promise()}".rstrip()
        )
        if not figure.kept(statistics.median(values)):
            faults.append(f"{figure.name}: {shown[0]}, promised is {figure.promise()}")
    return lines, faults


def complaints(report: Report) -> list[str]:
    """What Lighthouse finds wrong for people with disabilities, or bad practice."""
    return sorted(
        report["audits"][part["id"]]["title"]
        for category in ("accessibility", "best-practices")
        for part in report["categories"][category]["auditRefs"]
        if part["weight"] and (report["audits"][part["id"]]["score"] or 0) < 1
        if report["audits"][part["id"]]["scoreDisplayMode"] != "notApplicable"
    )


def compressed(dist: Path, into: Path) -> None:
    """The site as hosts send it: each file with its .br beside it, but for pictures."""
    import brotli  # only the checks' environment has it

    shutil.copytree(dist, into, copy_function=os.link)
    for file in sorted(path for path in into.rglob("*.*") if path.is_file()):
        content = file.read_bytes()
        # The large ones lightly, to save time: no paint waits for them.
        packed = brotli.compress(content, quality=11 if len(content) < 1e6 else 4)
        if len(packed) < 0.9 * len(content):
            file.with_name(f"{file.name}.br").write_bytes(packed)


def visit(address: str, browser: chromium.Chromium, folder: Path) -> Report:
    """Lighthouse's report on one first visit. Raises Stop if it makes none.

    On a busy machine its own recording may fail (it then reports a runtimeError): once more, then.
    """
    report = one_visit(address, browser, folder)
    return one_visit(address, browser, folder) if "runtimeError" in report else report


def one_visit(address: str, browser: chromium.Chromium, folder: Path) -> Report:
    """What Lighthouse writes down, whole or not. Raises Stop if that is nothing."""
    told = folder / "report.json"
    told.unlink(missing_ok=True)
    flags = browser.arguments or ["--headless=new"]
    if os.geteuid() == 0 and "--no-sandbox" not in flags:
        flags = [*flags, "--no-sandbox"]
    try:
        done = subprocess.run(
            (
                LIGHTHOUSE,
                address,
                "--form-factor=mobile",
                "--only-categories=performance,accessibility,best-practices",
                f"--chrome-flags={' '.join(flags)}",
                "--no-enable-error-reporting",
                "--quiet",
                "--output=json",
                f"--output-path={told}",
            ),
            env={
                **install.environment(),
                **browser.variables,
                "CHROME_PATH": str(browser.executable),
            },
            capture_output=True,
            text=True,
            timeout=PATIENCE_S,
        )
    except subprocess.TimeoutExpired:
        raise install.Stop(f"Lighthouse was not done in {PATIENCE_S} s.") from None
    if not told.is_file():
        raise install.Stop(f"Lighthouse made no report:\n{done.stderr.strip()[-1000:]}")
    report: Report = json.loads(told.read_text())
    return report


def main() -> int:
    """Visits, prints a table, and ends with 1 if a promise is broken."""
    parser = argparse.ArgumentParser(prog="python3 build/audit.py", description=__doc__)
    parser.add_argument("--untimed", action="store_true", help="one visit, and no times")
    untimed = parser.parse_args().untimed
    with install.plainly():
        install.make((*install.CHECK, *install.AUDIT))
        if Path(sys.prefix) != install.VENV:
            os.execve(install.PYTHON, [str(install.PYTHON), *sys.argv], install.environment())  # noqa: S606
        from build import bench, site

        browser = chromium.find()
        if browser is None:
            raise install.Stop(
                "The audit needs Chromium, and there is none. To get one: python3 build/chromium.py"
            )
        site.build(DIST)
        with tempfile.TemporaryDirectory(dir=install.TOOLS) as work:
            compressed(DIST, Path(work, "site"))
            with bench.served(Path(work, "site")) as address:
                visits = range(1 if untimed else VISITS)
                reports = [visit(address, browser, Path(work)) for _ in visits]
    lines, faults = judge(reports, [one for one in FIGURES if not (untimed and one.timed)])
    print("\n".join(["First visits: the middle one (each), and what is promised", *lines]))
    if faults:
        print("\n".join(["", *faults, *complaints(reports[-1])]))
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main())
