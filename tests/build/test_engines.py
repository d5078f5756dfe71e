"""An engine that is not on the machine is named, and the others are not held up by it."""

import sys

import pytest

from build import check, debian, engines

LACKING = engines.Engine("Lacking", (sys.executable, "no-such-command"), ("no-such-package",))


def test_one_without_its_programs_is_told_in_the_end(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    there = engines.Engine("There", (sys.executable,), ())
    monkeypatch.setattr(engines, "BOTH", (there, LACKING))
    assert engines.absent() == ["Lacking"]
    monkeypatch.setattr(check, "prepare", lambda fast: None)
    monkeypatch.setattr(check, "ALL", (check.Check("Good wool", (sys.executable, "-c", "pass")),))
    monkeypatch.setattr(sys, "argv", ["check.py"])
    assert check.main() == 0
    assert "NOT TRIED: Lacking is not on this machine" in capsys.readouterr().out


def test_without_the_means_nothing_is_brought(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("os.geteuid", lambda: 1000)
    assert not debian.brought(*LACKING.packages)
