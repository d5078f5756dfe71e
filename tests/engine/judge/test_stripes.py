"""Stripes worked by hand: rounds of a repeat, what to wind off, which of two tellings counts."""

from __future__ import annotations

from math import hypot

import pytest

from engine.judge import stripes

USED, AROUND, LOOP_SD = 100_000.0, 850.0, 0.03  # mm of sock one, mm of a round


def test_told_by_its_length() -> None:
    """11 repeats of 9 m are 99 m; sock one ends 1 m into the next, so 8 m go before it begins anew.

    hypot(0.03, 0.02) = 0.03606 of 100 m, four times in five 1.2816 times that: 4.62 m.
    """
    found = stripes.work_out(USED, AROUND, LOOP_SD, 9_000.0, None)
    assert found
    assert found.rounds == pytest.approx(9000 / 850)
    assert found.repeats == pytest.approx(11.1111, abs=1e-4)
    assert found.wind_off == pytest.approx(8_000)
    assert found.wind_rounds == pytest.approx(8000 / 850)
    assert found.reach == pytest.approx(4_621, abs=1)
    assert found.agree


def test_counted_in_rounds() -> None:
    """10 rounds are 8.5 m; half a round of them is 5 %: hypot(0.05, 0.02) = 0.0539, 6.9 m."""
    found = stripes.work_out(USED, AROUND, LOOP_SD, None, 10.0)
    assert found
    assert (found.repeat, found.rounds) == pytest.approx((8_500, 10))
    assert found.wind_off == pytest.approx(12 * 8_500 - USED)
    assert found.reach == pytest.approx(1.2816 * hypot(0.05, 0.02) * USED)


@pytest.mark.parametrize(
    ("told", "counted", "repeat"),
    [(9_000.0, 10.0, 9_000), (34_000.0, 40.0, 34_000), (33_000.0, 40.0, 34_000)],
)
def test_of_two_tellings_the_surer_counts(told: float, counted: float, repeat: float) -> None:
    """0.0361 told, against 0.0539 of 10 rounds and hypot(0.5 / 40, 0.02) = 0.0236 of 40."""
    found = stripes.work_out(USED, AROUND, LOOP_SD, told, counted)
    assert found
    assert found.repeat == pytest.approx(repeat)


@pytest.mark.parametrize(
    ("counted", "agree"), [(12.0, True), (13.0, False), (9.0, True), (7.0, False)]
)
def test_two_tellings_that_cannot_be_one_repeat(counted: float, agree: bool) -> None:
    """9 m against 10.2 m: ln 1.133 = 0.125 of 3.5 x 0.0586 = 0.205; 11.05 m: 0.205 of 0.197."""
    found = stripes.work_out(USED, AROUND, LOOP_SD, 9_000.0, counted)
    assert found
    assert found.agree == agree


@pytest.mark.parametrize(("told", "by_eye"), [(9_000.0, True), (9_240.0, True), (9_250.0, False)])
def test_beyond_half_a_repeat_it_is_left_to_the_eye(told: float, by_eye: bool) -> None:
    """4.621 m reach beyond half of 9.24 m, and not beyond half of 9.25."""
    found = stripes.work_out(USED, AROUND, LOOP_SD, told, None)
    assert found
    assert found.by_eye == by_eye


def test_of_nothing_told_nothing_is_known() -> None:
    assert stripes.work_out(USED, AROUND, LOOP_SD, None, None) is None
