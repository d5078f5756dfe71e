"""Estimates of unmeasured feet against figures printed by others.

- ANSUR II 2012: Gordon et al. 2014, NATICK/TR-15/007 (means and sd of all 1,986 women and 4,082
  men; the rows used here are 5,068 of them).
- Snyder et al. 1977, UM-HSRI-77-17: children's foot length by age.
- JIS S 5037:1998: ball girth of a shoe by length and width.
"""

from __future__ import annotations

import math

import pytest

from engine.people import population_table
from engine.people.population import Sex, estimate

SEXES: tuple[Sex | None, ...] = ("woman", "man", None)


@pytest.mark.parametrize(
    ("sex", "measure", "mean", "sd"),
    [
        ("man", "length", 271.2, 13.1),
        ("man", "ball_girth", 252.0, 12.9),
        ("man", "heel_girth", 343.5, 16.6),
        ("man", "ankle_girth", 229.3, 14.7),
        ("man", "calf_girth", 392.3, 29.7),
        ("woman", "length", 246.3, 12.4),
        ("woman", "ball_girth", 228.1, 11.8),
        ("woman", "heel_girth", 310.3, 15.3),
        ("woman", "ankle_girth", 215.7, 14.9),
        ("woman", "calf_girth", 373.3, 28.5),
    ],
)
def test_means_and_spread_of_the_whole_adult_survey(
    sex: Sex, measure: str, mean: float, sd: float
) -> None:
    """NATICK/TR-15/007. Five sixths of its rows are here: within 0.3 mm and 2 %."""
    place = population_table.ADULT_NAMES.index(measure)
    assert population_table.ADULT_MEANS[sex][place] == pytest.approx(mean, abs=0.3)
    variance = population_table.ADULT_SPREADS[sex][place][place]
    assert math.sqrt(variance) == pytest.approx(sd, rel=0.02)


@pytest.mark.parametrize(
    ("length", "ball"), [(230, 210), (246, 228), (258, 240), (271, 252), (290, 270)]
)
def test_pooled_line_of_the_heel(length: float, ball: float) -> None:
    """ANSUR II, all rows: heel = 3.9 + 0.720 length + 0.570 ball, residual sd 8.2 mm.

    That line counts each man and woman once, ours each sex as half: within 1 mm.
    """
    heel = estimate({"length": (length, 0), "ball_girth": (ball, 0)}, None, 30)["heel_girth"]
    assert heel.value == pytest.approx(3.9 + 0.720 * length + 0.570 * ball, abs=1.0)
    assert heel.sd == pytest.approx(8.2, abs=0.3)


@pytest.mark.parametrize("sex", SEXES)
def test_length_alone_tells_little_of_the_ball(sex: Sex | None) -> None:
    """ANSUR II: residual sd of the ball girth 9 to 11 mm."""
    ball = estimate({"length": (255, 0)}, sex, None)["ball_girth"]
    assert 9 <= ball.sd <= 11


@pytest.mark.parametrize(
    ("age", "mean", "sd"),
    [
        (2, 143, 10),
        (4, 167, 10),
        (6, 185, 11),
        (8, 203, 12),
        (10, 221, 13),
        (12, 237, 14),
        (14, 248, 17),
    ],
)
def test_childrens_foot_length_by_age(age: int, mean: float, sd: float) -> None:
    """UM-HSRI-77-17, both sexes, age in years completed: within 2.5 mm, the sd within 3 mm.

    The curve is straight between even ages, and one relative spread serves all ages.
    """
    length = estimate({}, None, age)["length"]
    assert length.value == pytest.approx(mean, abs=2.5)
    assert length.sd == pytest.approx(sd, abs=3.0)


@pytest.mark.parametrize(
    ("sex", "length", "width_a"),
    [("man", 250.0, 189 + 10 * 3), ("man", 270.0, 189 + 14 * 3), ("woman", 235.0, 183 + 8 * 3)],
)
def test_ball_girth_lies_among_the_widths_that_shoes_are_made_in(
    sex: Sex, length: float, width_a: float
) -> None:
    """JIS S 5037:1998: A at men's 20.0 is 189 mm, at women's 19.5 183 mm; + 3 mm for 0.5 cm, + 6 mm
    for a width. The usual foot should wear neither the narrowest (A) nor the widest (EEEE, + 42).
    """
    ball = estimate({"length": (length, 0)}, sex, None)["ball_girth"]
    assert width_a + 6 < ball.value < width_a + 36
