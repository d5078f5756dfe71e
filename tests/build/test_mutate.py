"""The count of mutants: what makes it fail, how sure it is, and that its list is not stale."""

from pathlib import Path
from typing import Any

import pytest

from build import mutate
from build.mutate import Survivor

ROOT = Path(__file__).resolve().parents[2]
REASON = {Survivor("judge.fit", "a < b", "a <= b"): "the two are never alike"}


def result(outcome: str, after: str = "a <= b") -> dict[str, Any]:
    line = {"module": "judge.fit", "line": 7, "before": "a < b", "after": after}
    return {**line, "of": 40, "tests": 3, "outcome": outcome, "seconds": 1.0}


def test_all_killed_is_enough() -> None:
    assert mutate.summed_up([result("killed"), result("stopped")], {})[1]


def test_under_nine_in_ten_is_not_enough() -> None:
    """8 of 9 are 88.9 %; 9 of 10 are just enough."""
    lived = result("survived")
    assert not mutate.summed_up([lived, *[result("killed")] * 8], REASON)[1]
    assert mutate.summed_up([lived, *[result("killed")] * 9], REASON)[1]


def test_a_survivor_without_a_reason_is_shown_and_is_not_enough() -> None:
    results = [result("survived", "a > b"), *[result("killed")] * 99]
    lines, enough = mutate.summed_up(results, REASON)
    assert not enough
    assert any("NEW  engine/judge/fit.py:7" in line and "+ a > b" in line for line in lines)


def test_what_differs_only_where_two_floats_are_alike_counts_on_neither_side() -> None:
    results = [result("on a bound"), *[result("killed")] * 8, result("survived")]
    lines, enough = mutate.summed_up(results, REASON)
    assert not enough, "8 of 9"
    assert "8 of 9 killed" in lines[-1]
    assert "Left out: 1 that differ only" in lines[-1]


def test_the_interval_is_wilson_s() -> None:
    """Of 10 of 10 it is n / (n + z^2) = 10 / 13.8416 to 1, with z = 1.96."""
    assert mutate.interval(10, 10) == pytest.approx((0.72246, 1.0), abs=1e-5)
    low, high = mutate.interval(50, 100)
    assert (low, high) == pytest.approx((0.4038, 0.5962), abs=1e-4)


def test_each_survivor_listed_is_a_line_of_its_module() -> None:
    for (module, before, after), why in mutate.known().items():
        source = (ROOT / mutate.path_of(module)).read_text(encoding="utf-8")
        assert before in [line.strip() for line in source.splitlines()], (module, before)
        assert after != before
        assert why
