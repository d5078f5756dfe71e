"""The weight is asked for only where a heavy wearer's fit would be judged otherwise.

The heaviest tenth of women of a foot length: by the survey's own covariance (`population_table`),
conditioned by numpy.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from engine.people import population
from engine.people import population_table as table
from tests.asking import AVERAGE_WOMAN, noted, plan

FIELD = "person.weight"
LENGTH: dict[str, Any] = {"foot": {"length": "246 mm"}}


def test_where_the_heaviest_tenth_begins_is_what_numpy_makes_of_the_survey() -> None:
    names = table.ADULT_NAMES
    length, weight = names.index("length"), names.index("weight")
    rows = table.ADULT_SPREADS["woman"]
    whole = np.array(
        [[rows[max(i, j)][min(i, j)] for j in range(len(names))] for i in range(len(names))]
    )
    mean = np.array(table.ADULT_MEANS["woman"])
    gain = whole[weight, length] / whole[length, length]
    middle = mean[weight] + gain * (260.0 - mean[length])
    sd = math.sqrt(whole[weight, weight] - gain * whole[length, weight])
    found = population.heavy({"length": (260.0, 0.0)}, "woman", 30, child=False)
    assert found
    assert found.begins == pytest.approx(math.exp(middle + 1.2816 * sd), rel=1e-4)
    assert found.middle == pytest.approx(math.exp(middle + 1.6449 * sd), rel=1e-4)


@pytest.mark.parametrize(
    ("known", "age", "child"),
    [
        ({}, 30, False),
        ({"length": (246.0, 2.5), "weight": (70.0, 1.0)}, 30, False),
        ({"length": (180.0, 2.5)}, 8, False),
        ({"length": (230.0, 2.5)}, None, True),
    ],
)
def test_of_a_child_or_a_known_weight_there_is_nothing_to_ask(
    known: dict[str, tuple[float, float]], age: float | None, child: bool
) -> None:
    assert population.heavy(known, None, age, child) is None


def test_it_is_asked_for_where_girths_are_guessed_and_a_verdict_depends_on_it() -> None:
    assert FIELD in noted(plan(LENGTH))
    assert "lb" in noted(plan(LENGTH))[FIELD]
    assert "kg" in noted(plan({**LENGTH, "units": "cm"}))[FIELD]
    for told in ({"person.weight": "60 kg"}, {"person": {"age": 12}}, {"foot": AVERAGE_WOMAN}):
        assert FIELD not in noted(plan({**LENGTH, **told}))
    assert FIELD not in noted(plan({"foot": None, "sock.foot_length_of_sock": "9 in"}))


def test_where_no_verdict_depends_on_it_nobody_asks() -> None:
    """Of an average woman: a heavier one's heel is judged otherwise, her ball is not."""
    for name, asked in (("ball_girth", False), ("heel_girth", True)):
        girths = {one: mm for one, mm in AVERAGE_WOMAN.items() if one != name}
        assert (FIELD in noted(plan({"foot": girths}))) == asked


def test_no_count_moves_by_it() -> None:
    told = plan({**LENGTH, "person.weight": "140 kg"})
    assert told["counts"]["foot"] == plan(LENGTH)["counts"]["foot"]
