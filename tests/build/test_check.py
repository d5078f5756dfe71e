"""The command that checks everything fails when one thing fails, and the size budget binds."""

import sys
from pathlib import Path

import pytest

from build import budget, check

GOOD = check.Check("Good wool", (sys.executable, "-c", "pass"))
BAD = check.Check("Moth", (sys.executable, "-c", "raise SystemExit(3)"))


@pytest.mark.parametrize(
    ("checks", "code", "end"),
    [((GOOD,), 0, "all hold"), ((BAD, GOOD), 1, "failed: Moth")],
)
def test_one_failure_fails_the_whole(
    checks: tuple[check.Check, ...],
    code: int,
    end: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(check, "prepare", lambda fast: None)
    monkeypatch.setattr(check, "FAST", checks)
    monkeypatch.setattr(sys, "argv", ["check.py", "--fast"])
    assert check.main() == code
    said = capsys.readouterr().out
    assert said.rstrip().endswith(end)
    assert "holds " in said  # the good one ran, though another failed before it


def test_budget_binds(tmp_path: Path) -> None:
    (tmp_path / "a.js").write_bytes(b"x" * 1000)
    (tmp_path / "b.js").write_bytes(b"x" * 500)
    fits: budget.Group = {"files": ["*.js"], "max_bytes": 1500, "max_brotli_bytes": 100}
    lines, faults = budget.measure({"page": fits}, tmp_path)
    assert (len(lines), faults) == (2, [])
    tight: budget.Group = {"files": ["*.js"], "max_bytes": 1499}
    assert budget.measure({"page": tight}, tmp_path)[1] == ["page: 1 bytes too many"]
    packed: budget.Group = {"files": ["a.js"], "max_brotli_bytes": 3}
    assert "by brotli too many" in budget.measure({"page": packed}, tmp_path)[1][0]
    gone: budget.Group = {"files": ["a.js", "worker-*.js"], "max_bytes": 2000}
    assert budget.measure({"page": gone}, tmp_path)[1] == [
        "page: nothing in the site is called worker-*.js"
    ]
