"""How her socks came out: what was planned and promised against what was measured."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from numpy.random import Generator, default_rng
from scipy import optimize

from engine import api
from engine.sock import plan as planning
from tests.asking import answer, asked
from tests.engine import knitters

SWATCH = {"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}
BASE: dict[str, Any] = {"units": "cm", "foot.heel_girth": None, "fabric": {"swatch": SWATCH}}


def pair(length: str, rounds: int = 49, swatch: str = "15.6 cm", **more: Any) -> dict[str, Any]:
    measured = {"foot_rounds": str(rounds), "length": length}
    return {
        "request": asked({**BASE, "fabric": {"swatch": {**SWATCH, "length": swatch}}}),
        "measured": measured,
        "name": "Invented",
        "day": "1 May",
        **more,
    }


def record(*pairs: Any) -> dict[str, Any]:
    found: dict[str, Any] = answer({"do": "record", "pairs": list(pairs)})
    return found


def said(*pairs: Any) -> list[str]:
    return [one["say"] for one in api.answer({"do": "record", "pairs": list(pairs)})["words"]]


def test_a_sock_was_planned_at_its_own_rounds_over_the_rounds_per_mm() -> None:
    """89 rounds at 60 on 156 mm are 231.4 mm; 40 of them are heel and toe."""
    (row,) = record(pair("23.7 cm"))["rows"]
    assert row["planned"]["value"] == pytest.approx(89 * 156 / 60, abs=0.06)
    assert row["off"] == pytest.approx(237 / (89 * 2.6) - 1, abs=1e-4)
    assert row["promised"][0] < 0 < row["promised"][1]


def test_the_promised_range_is_that_of_the_plan_and_the_tape() -> None:
    """By the plan's own t at its degrees of freedom, 3 mm of tape on the measured sock beside."""
    sock = planning.make(asked(BASE))
    assert sock.fabric.along
    reach = 1.2816 * sock.fabric.along.sd((3 / 237) ** 2)
    (row,) = record(pair("23.7 cm"))["rows"]
    assert row["promised"] == pytest.approx([math.exp(-reach) - 1, math.exp(reach) - 1], abs=1e-3)
    assert row["held"]
    (far,) = record(pair("26 cm"))["rows"]
    assert not far["held"]


def test_what_was_not_washed_or_cannot_be_read_is_not_among_them() -> None:
    unwashed = {**pair(""), "measured": {"foot_rounds": "49", "unwashed_length": "24 cm"}}
    lost = [{"request": {}, "measured": {}}, {"request": 3}, pair("x"), None, 4]
    found = record(unwashed, *lost, pair("23.7 cm"))
    assert len(found["rows"]) == 1
    assert found["left_out"] == 3
    assert record()["words"] == []
    assert answer({"do": "record", "pairs": "none"})["rows"] == []


def test_of_three_on_her_scatter_is_told_and_her_habit_where_it_is_clear() -> None:
    assert said(pair("23.7 cm"), pair("24 cm")) == ["came-out-held", "came-out-few"]
    even = [pair(f"{mm} mm") for mm in (228, 232, 235, 231)]
    assert "came-out-no-habit" in said(*even)
    long = [
        pair(f"{round(mm * 1.483 * 1.045)} mm", swatch=f"{mm} mm")
        for mm in (150, 152, 156, 158, 161, 163)
    ]
    found = api.answer({"do": "record", "pairs": long})["words"]
    habit = next(one for one in found if one["say"] == "came-out-habit")
    assert habit["habit"] == "longer"
    assert 1.0 < float(habit["percent"]) < 5.0


def test_the_scatter_is_the_mode_that_scipy_finds() -> None:
    """Of one yarn, flat in its mean: swatch and seven socks, the habit with its prior (Harville).

    D. A. Harville (1974), Biometrika 61, 383: the likelihood with the mean integrated out.
    """
    lengths = (225, 240, 229, 238, 233, 226, 243)
    swatch = planning.make(asked(BASE)).fabric.seen[0].tube.sides[1]
    assert swatch
    y = np.array([swatch.log, *(math.log(89 / mm) for mm in lengths)])
    tapes = np.array([swatch.tape**2 + 0.0125**2, *((3 / mm) ** 2 for mm in lengths)])

    def less_likely(square: float) -> float:
        weights = 1 / (square + tapes)
        about = y - (weights @ y) / weights.sum()
        restricted = -np.log(weights).sum() + math.log(weights.sum()) + weights @ about**2
        return float(restricted + 3 * math.log(square) + 3 * 0.019**2 / square)

    best = optimize.minimize_scalar(less_likely, bounds=(1e-5, 0.01), method="bounded").x
    words = api.answer({"do": "record", "pairs": [pair(f"{mm} mm") for mm in lengths]})["words"]
    told = next(one for one in words if one["say"] == "came-out-scatter")
    assert float(told["percent"]) == pytest.approx(math.sqrt(best) * 100, abs=0.1)


def test_the_file_has_every_row_in_mm() -> None:
    cells = record(pair("23.7 cm"), pair("9 in"))["cells"]
    assert [len(row) for row in cells] == [8, 8, 8]
    assert cells[0][0] == "Pair"
    assert cells[1][2:] == [49, "231.4", cells[1][4], cells[1][5], "237", 1]


@pytest.mark.slow
def test_over_made_up_knitters_the_record_tells_the_steady_from_the_unsteady() -> None:
    """After 12 pairs, each with a swatch of its own; and four in five came out as promised."""
    told: dict[float, list[float]] = {}
    held = []
    for scatter in (0.012, 0.03):
        chance: Generator = default_rng(82)
        for _ in range(12):
            who = knitters.knitter(chance, scatter)
            pairs = [a_pair(who) for _ in range(12)]
            found = api.answer({"do": "record", "pairs": pairs})
            held.append(found["held"] / len(found["rows"]))
            percent = next(one for one in found["words"] if one["say"] == "came-out-scatter")
            told.setdefault(scatter, []).append(float(percent["percent"]))
    steady, unsteady = (float(np.median(one)) for one in told.values())
    assert 1.0 < steady < 1.8
    assert 2.4 < unsteady < 3.6
    assert 0.72 <= float(np.mean(held)) <= 0.9


def a_pair(who: knitters.Knitter) -> dict[str, Any]:
    request = {
        "units": "cm",
        "foot": {"length": "25 cm"},
        "person": {"sex": "woman"},
        "cylinder": {"slots": 60},
        "fabric": {"swatch": who.swatch()},
        "sock": {"heel": {"needles": 30, "left": 10}, "toe": {"needles": 30, "left": 10}},
    }
    return {"request": request, "measured": who.first(who.tube(), 50), "name": "", "day": ""}
