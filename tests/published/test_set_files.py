"""Judges of files read those that are saved of sets, and have nothing to object.

Books are read by the W3C's own checker: Debian 12 has version 4.2.6, which knows EPUB 3.2, and
version 5.3.0 (EPUB 3.3) found the same in these books. Of its severities FATAL, ERROR and WARNING
are faults; USAGE tells of a feature that is used. Web pages are read by html-validate, which knows
the elements of WHATWG's HTML and what may stand in each.
"""

from __future__ import annotations

import json
import subprocess
import zipfile
from pathlib import Path

import pytest

from build import epub_checker, install
from tests.set_files import KINDS, written

COMMAND = epub_checker.find()
pytestmark = pytest.mark.slow
needs_checker = pytest.mark.skipif(
    COMMAND is None,
    reason="NOT TRIED: no checker of EPUB is here (python3 build/epub_checker.py gets one)",
)
FAULTS = ("FATAL", "ERROR", "WARNING")


def faults(book: Path) -> list[str]:
    """What the checker objects to."""
    said = book.with_suffix(".json")
    subprocess.run([*(COMMAND or ()), book, "--json", said], capture_output=True, check=False)
    report = json.loads(said.read_text(encoding="utf-8"))
    return [
        f"{one['ID']} {one['severity']}: {one['message']}"
        for one in report["messages"]
        if one["severity"] in FAULTS
    ]


@needs_checker
@pytest.mark.parametrize("kind", KINDS)
def test_the_checker_finds_nothing(kind: str, tmp_path: Path) -> None:
    assert faults(written(KINDS[kind], tmp_path) / "set.epub") == []


@needs_checker
def test_the_checker_finds_a_fault(tmp_path: Path) -> None:
    """A book without its reading order and with a loose end of markup."""
    good = written(KINDS["one length alone, a tube"], tmp_path) / "set.epub"
    bad = tmp_path / "bad.epub"
    with zipfile.ZipFile(good) as inside, zipfile.ZipFile(bad, "w") as made:
        for one in inside.infolist():
            text = inside.read(one)
            made.writestr(one, text.replace(b"</main>", b""))
    assert any("FATAL" in one for one in faults(bad))


# The page writes what HTML and XML read alike, so that one writer is enough: <meta ... />.
HTML_RULES = {"extends": ["html-validate:recommended"], "rules": {"void-style": "off"}}


def objections(page: Path) -> str:
    """What html-validate says of a page, "" if nothing."""
    rules = page.with_name("rules.json")
    rules.write_text(json.dumps(HTML_RULES), encoding="utf-8")
    program = install.BUILD / "node_modules" / ".bin" / "html-validate"
    done = subprocess.run(
        [program, "--max-warnings=0", f"--config={rules}", page],
        env=install.environment(),
        capture_output=True,
        text=True,
        check=False,
    )
    assert not done.stderr
    return done.stdout


@pytest.mark.parametrize("kind", KINDS)
def test_a_web_page_is_html(kind: str, tmp_path: Path) -> None:
    page = written(KINDS[kind], tmp_path) / "set.html"
    assert objections(page) == ""
    page.write_text(page.read_text(encoding="utf-8").replace("</caption>", "", 1))
    assert "caption" in objections(page)
