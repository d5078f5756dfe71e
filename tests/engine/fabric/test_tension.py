"""The screw: its stops are half marks near the marks tried, at which there is a fabric at all."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from engine.fabric import tension
from engine.fabric.fabric import Fabric
from engine.fabric.swatch_line import Line, Point
from engine.fabric.tension import Setting, Span

WIDE = Span(0.0, 10.0)


def over(slope: float, loop: float = 15.0, slope_sd: float = 0.01) -> Line:
    """A line over the marks 1 and 2; stitches times loop are 4.2, rounds times loop 5.5."""
    points = (Point(1.0, loop - slope / 2, 0.1), Point(2.0, loop + slope / 2, 0.1))
    return Line(points, 1.5, loop, slope, 0.01, slope_sd, 4.2, 5.5, 0.01)


def cloth(line: Line | None, mark: float | None) -> Fabric:
    """The fabric of that line at a mark."""
    if line is None or mark is None:
        return Fabric(0.28, 0.37, 0.02, 0.02, "gauge", (), 240.0, True, 1.8, mark=mark, line=line)
    stitches, rounds, sd = line.at(mark)
    told: dict[str, Any] = {"mark": mark, "line": line}
    return Fabric(stitches, rounds, sd, sd, "swatch", (), 240.0, True, 1.8, **told)


def marks(fabric: Fabric, limits: Span = WIDE) -> list[float | None]:
    return [stop.mark for stop in tension.read(fabric, limits).stops]


def test_stops_are_half_marks_as_far_out_as_the_marks_lie_apart() -> None:
    """1 and 2 lie 1 apart: 0 to 3 in halves from the foot's mark, which is told without one."""
    assert marks(cloth(over(1.0), 1.5)) == [0.0, 0.5, 1.0, None, 2.0, 2.5, 3.0]
    assert marks(cloth(over(1.0), 1.75)) == [0.25, 0.75, 1.25, None, 2.25, 2.75]


def test_a_stop_below_mark_0_there_is_none() -> None:
    low = over(1.0)
    low = replace(low, points=(Point(0.5, 14.5, 0.1), Point(1.5, 15.5, 0.1)), middle=1.0)
    assert marks(cloth(low, 1.0)) == [0.0, 0.5, None, 1.5, 2.0, 2.5]


def test_where_the_line_has_no_loop_left_there_is_no_stop() -> None:
    """15 mm at 1.5 and 10 less at each mark: nothing at 0, and 5 mm, no sock's, at 0.5.

    Loops of 4.2 / 0.8 = 5.25 to 4.2 / 0.09 = 46.7 mm and 5.5 / 1.1 = 5 to 55 mm are a sock's: from
    10 x + 0 = 5.25 on, so from 1; up to 3 it is 30.
    """
    assert marks(cloth(over(10.0), 1.5)) == [1.0, None, 2.0, 2.5, 3.0]


def test_the_stop_without_a_turn_is_the_foot_s_own() -> None:
    assert tension.read(cloth(over(1.0), 1.5), WIDE).at(0) == Setting(1.0)


def test_limits_hold() -> None:
    """Stitches per length over the foot's are 15 / l: 15 / 15.5 = 0.968 to 15 / 14.5 = 1.034."""
    assert marks(cloth(over(1.0), 1.5), Span(0.96, 1.04)) == [1.0, None, 2.0]


@pytest.mark.parametrize(
    ("line", "mark"), [(None, 1.5), (over(1.0), None), (over(1.0, slope_sd=1.0), 1.5)]
)
def test_without_a_sure_line_or_a_mark_a_turn_is_a_twentieth_of_a_stitch(
    line: Line | None, mark: float | None
) -> None:
    """e^0.05 = 1.051, e^0.1 = 1.105, e^0.15 = 1.162 are beyond 1.13; e^-0.05 = 0.951."""
    free = tension.read(cloth(line, mark), Span(0.94, 1.13))
    assert [stop.tighter for stop in free.stops] == pytest.approx(
        [0.951, 1, 1.051, 1.105], abs=1e-3
    )
    assert {stop.mark for stop in free.stops} == {None}
    assert free.turns_for(1.0779) == pytest.approx(1.5, abs=0.01)
    assert (free.turns_for(2.0), free.turns_for(0.5)) == (2, -1), "no further than there are stops"
    assert free.mark_for(1.3) is None


def test_turns_to_a_stitch() -> None:
    """The foot at 15 mm; 1.1 as tight is 13.64 mm, mark 0.136, so 2.73 half marks down."""
    found = tension.read(cloth(over(1.0), 1.5), WIDE)
    assert found.mark_for(1.1) == pytest.approx(0.1364, abs=1e-4)
    assert found.turns_for(1.1) == pytest.approx(-2.727, abs=1e-3)
    firmer = found.at(-3)
    assert firmer.tighter == pytest.approx(15 / 13.5)
    assert firmer.mark == 0.0
