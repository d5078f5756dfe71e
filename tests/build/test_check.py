"""The command that checks everything fails when one thing fails, and the size budget binds."""

import sys
import threading
from pathlib import Path

import pytest

from build import budget, check, install

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


def test_of_what_holds_one_line_is_shown_and_of_what_fails_all() -> None:
    """And of tests how many passed, in pytest's own words, and what was left out."""
    said = (
        "dots ....\nSKIPPED [1] tests/x.py:1: NOT TRIED: no nginx\n12 passed, 1 skipped in 3.00s\n"
    )
    good = check.Result("Tests", True, 3.25, said).told().splitlines()
    assert good == [
        "holds      3.2 s  Tests",
        "SKIPPED [1] tests/x.py:1: NOT TRIED: no nginx",
        "12 passed, 1 skipped in 3.00s",
    ]
    assert "dots ...." in check.Result("Tests", False, 3.25, said).told()


def test_a_check_says_what_it_said() -> None:
    loud = check.Check("Loud", (sys.executable, "-c", "print('hark'); raise SystemExit(1)"))
    result = loud.run()
    assert (result.held, result.said) == (False, "hark\n")


def fails(*tests: str) -> tuple[str, ...]:
    """A command that fails as pytest does."""
    lines = "".join(f"FAILED {one} - cold hands\n" for one in tests)
    return (sys.executable, "-c", f"print({lines!r}); raise SystemExit(1)")


def test_what_failed_among_others_is_run_by_itself_and_told() -> None:
    holds = (sys.executable, "-c", "print('1 passed in 1.00s')")
    wavers = check.Check("Loom", fails("tests/a.py::one[x]"), alone=holds).run()
    assert wavers.held
    assert "WAVERED, held by itself: tests/a.py::one[x]" in wavers.told().splitlines()
    both = check.Check("Loom", fails("tests/a.py::one"), alone=fails("tests/a.py::one")).run()
    assert not both.held
    assert "WAVERED" not in both.told()
    many = check.Check("Loom", fails("a", "b", "c", "d"), alone=holds).run()
    assert not many.held, "more than may waver"
    assert not check.Check("Loom", BAD.command, alone=holds).run().held, "no test is named"


def test_what_is_run_by_itself_is_what_failed(tmp_path: Path) -> None:
    """The very arguments, on a file of three tests of which one fails the first time only."""
    (tmp_path / "test_wool.py").write_text(
        "from pathlib import Path\n"
        "seen = Path(__file__).with_name('seen')\n"
        "def test_one(): seen.open('a').write('1')\n"
        "def test_two():\n"
        "    first = '2' not in seen.read_text()\n"
        "    seen.open('a').write('2')\n"
        "    assert not first\n"
        "def test_three(): seen.open('a').write('3')\n"
    )
    command = (install.PYTHON, "-m", "pytest", "--quiet", "test_wool.py")
    one = check.Check("Wool", command, tmp_path, alone=(*command, *check.AGAIN)).run()
    assert one.held
    assert (tmp_path / "seen").read_text() == "1232"


def test_early_checks_wait_for_what_they_need_and_not_for_ever(tmp_path: Path) -> None:
    given = tmp_path / "given"
    given.write_text("1")
    step = install.Step("A step", tmp_path / "made", (given,), (("mkdir", tmp_path / "made"),))
    waits = check.Check("Good wool", GOOD.command, needs=step)
    given_up = threading.Event()
    given_up.set()
    assert check.early([waits], given_up) == []
    step.make()
    (result,) = check.early([waits], given_up)
    assert result.held


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
