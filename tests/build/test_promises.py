"""tests/PROMISES.md names what is there: each promise a test, each test of a fault a promise."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
ENGINES = ("Chromium", "Firefox", "WebKit")
RESULTS = re.compile(r"holds|not tried|cannot: .+|no browser")
ON_ALL = "tests/engines/"  # the one folder whose tests run on three engines


def rows() -> list[dict[str, str]]:
    """The table's rows by the titles of its columns."""
    table = [
        [cell.strip() for cell in line.strip("|").split("|")]
        for line in (ROOT / "tests" / "PROMISES.md").read_text().splitlines()
        if line.startswith("|")
    ]
    titles, _, *rest = table
    return [dict(zip(titles, row, strict=True)) for row in rest]


def named(row: dict[str, str]) -> list[tuple[Path, str]]:
    """File and test of each test that a row names."""
    found = re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", row["How it is tested"])
    return [(ROOT / path, name) for path, name in found]


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["Case"])
def test_a_promise_names_tests_and_results(row: dict[str, str]) -> None:
    assert row["Promise"]
    assert named(row) or re.search(r"`(build/\w+\.py)[ \w-]*`", row["How it is tested"])
    for path, name in named(row):
        assert re.search(rf"^(async )?def {name}\(", path.read_text(), re.MULTILINE), name
    for engine in ENGINES:
        assert RESULTS.fullmatch(row[engine]), row[engine]
    if not any(path.is_relative_to(ROOT / ON_ALL) for path, _ in named(row)):
        elsewhere = {row["Firefox"], row["WebKit"]}
        assert "holds" not in elsewhere, "only tests/engines run there"


def test_every_test_of_a_fault_stands_behind_a_promise() -> None:
    promised = {one for row in rows() for one in named(row)}
    for folder in ("faults", "engines"):
        for path in (ROOT / "tests" / folder).glob("test_*.py"):
            for name in re.findall(r"^def (test_\w+)\(", path.read_text(), re.MULTILINE):
                assert (path, name) in promised, f"{path.name}::{name} is in no row of it"
