"""What finished pairs teach of a knitter, by scipy and numpy; and that she enters each plan."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import optimize

from engine.fabric import certainty, fabric, knitter, swatch_line
from engine.fabric.certainty import BEFORE, HABIT, Hers, Scatter
from engine.fabric.knitter import UNKNOWN, Knitter, OfYarn
from engine.fabric.swatch import Swatch
from engine.read.fields import Fields
from engine.sock import plan as planning
from tests.asking import answer, asked

HERS = {
    "pairs": 12,
    "stitches": {"scatter": 0.02, "weight": 6, "habit": 1, "habit_sd": 0.01},
    "rounds": {"scatter": 0.016, "weight": 9, "habit": 1.015, "habit_sd": 0.005},
}
SWATCH = {"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}


def tube(kind: str, log: float, tape: float = 0.006, mark: float | None = None) -> Swatch:
    return Swatch("", kind, mark, rounds=math.exp(log), rounds_tape=tape)


def plan(**changes: Any) -> dict[str, Any]:
    return answer({"do": "plan", "request": asked(changes)})


def flat(hers: Hers) -> tuple[float, ...]:
    return (*hers.scatter, hers.habit, hers.unsure)


LOG, TAPE = st.floats(-1.05, -0.95), st.floats(0.003, 0.015)
YARN = st.tuples(
    st.lists(st.tuples(LOG, TAPE), min_size=1, max_size=3),
    st.lists(st.tuples(LOG, TAPE), min_size=1, max_size=2),
)


def of(yarns: list[Any]) -> list[OfYarn]:
    return [
        OfYarn(
            tuple(
                tube(kind, log, tape)
                for kind, rows in zip(("swatch", "sock"), yarn, strict=True)
                for log, tape in rows
            )
        )
        for yarn in yarns
    ]


def likeliest(yarns: list[Any]) -> float:
    """scipy: the mode over log scatter^2 of its prior x the likelihood with every v and habit out.

    That of the contrasts themselves, with the habit's prior variance shared by all gaps: for yarns
    of one reading error each, where means without weights lose nothing.
    """
    within, gaps = [], []
    for swatches, socks in yarns:
        for rows in (swatches, socks):
            logs = [log for log, _ in rows]
            if len(rows) > 1:
                read = np.mean([tape**2 for _, tape in rows])
                within.append((float(np.var(logs, ddof=1)), float(read), len(rows) - 1))
        means = [float(np.mean([log for log, _ in rows])) for rows in (swatches, socks)]
        read = sum(np.mean([tape**2 for _, tape in rows]) / len(rows) for rows in (swatches, socks))
        gaps.append((means[1] - means[0], 1 / len(swatches) + 1 / len(socks), float(read)))
    d, a, b = (np.array(one) for one in zip(*gaps, strict=True))

    def away(log_square: float) -> float:
        square = math.exp(log_square)
        whole = BEFORE.free * (log_square + BEFORE.square / square) / 2
        for z, read, many in within:
            whole += many * (math.log(square + read) + z / (square + read)) / 2
        covariance = np.diag(a * square + b) + HABIT
        whole += np.linalg.slogdet(covariance)[1] / 2 + d @ np.linalg.solve(covariance, d) / 2
        return float(whole)

    best = optimize.minimize_scalar(away, bounds=(math.log(4e-5), math.log(1e-2)), method="bounded")
    return math.exp(best.x)


@settings(max_examples=40)
@given(st.lists(YARN, min_size=3, max_size=12))
def test_the_scatter_is_near_the_mode_that_scipy_finds(yarns: list[Any]) -> None:
    """In the root within 4 %: the steps are few, and a gap far out counts as three of its sd."""
    found = knitter.learn(of(yarns), len(yarns)).along.scatter
    assert math.sqrt(found.square) == pytest.approx(math.sqrt(likeliest(yarns)), rel=0.04)


@settings(max_examples=40)
@given(st.lists(YARN, min_size=1, max_size=12))
def test_the_habit_is_that_of_a_normal_mean(yarns: list[Any]) -> None:
    """numpy: prior N(0, HABIT), the gaps normal about it with scatter and reading of both means."""
    hers = knitter.learn(of(yarns), len(yarns)).along
    square = hers.scatter.square
    gaps = [
        (
            np.mean([log for log, _ in socks]) - np.mean([log for log, _ in swatches]),
            square * (1 / len(swatches) + 1 / len(socks))
            + sum(tape**2 for _, tape in swatches) / len(swatches) ** 2
            + sum(tape**2 for _, tape in socks) / len(socks) ** 2,
        )
        for swatches, socks in yarns
    ]
    logs, sizes = np.array(gaps).T
    precision = 1 / HABIT + (1 / sizes).sum()
    assert hers.habit == pytest.approx((logs / sizes).sum() / precision, abs=5e-4)
    assert hers.unsure == pytest.approx(1 / precision, rel=0.05)


@settings(max_examples=40)
@given(st.lists(YARN, min_size=1, max_size=8), st.randoms())
def test_the_order_of_pairs_does_not_matter(yarns: list[Any], chance: Any) -> None:
    before = knitter.learn(of(yarns), 3)
    chance.shuffle(yarns)
    after = knitter.learn(of(yarns), 3)
    for one, other in zip(before.sides, after.sides, strict=True):
        assert flat(one) == pytest.approx(flat(other), abs=1e-12)


def test_no_pairs_are_the_stated_priors() -> None:
    assert knitter.learn([], 0) == UNKNOWN
    assert UNKNOWN.sides == (Hers(), Hers())
    assert UNKNOWN.scatters == (BEFORE, BEFORE)


def test_never_more_than_so_many_degrees_are_kept() -> None:
    many = [([(-1.0, 0.003)] * 3, [(-1.01, 0.003)] * 2)] * 40
    assert knitter.learn(of(many), 40).along.scatter.free == knitter.MOST


def test_a_blunder_leaves_the_habit_nearly_as_it_is() -> None:
    yarns = [([(-1.0 + i * 0.01, 0.005)], [(-0.99 + i * 0.01, 0.005)]) for i in range(8)]
    before = knitter.learn(of(yarns), 8).along.habit
    wild = knitter.learn(of([*yarns, ([(-1.0, 0.005)], [(-0.2, 0.005)])]), 9).along.habit
    assert abs(wild - before) < 0.012


def test_a_request_tells_of_her_and_nothing_is_lost_on_the_way() -> None:
    made = planning.make(asked({"knitter": HERS})).fabric.knitter
    assert made.written() == HERS
    assert flat(made.along) == pytest.approx((0.016**2, 9, math.log(1.015), 0.005**2))


def test_without_her_or_as_the_priors_a_plan_is_what_it_was() -> None:
    """To the digit: the numbers of nobody are those that stand in the engine."""
    told = {"scatter": math.sqrt(BEFORE.square), "weight": 3, "habit": 1, "habit_sd": 0.0125}
    nobody = {"stitches": told, "rounds": told, "pairs": 0}
    marks = [{**SWATCH, "mark": 9}, {**SWATCH, "length": "16.4 cm", "mark": 11}]
    for cloth in ({"swatch": SWATCH}, {"swatches": marks}, {"stitches": "30 / 10 cm"}):
        bare = plan(fabric=cloth)
        assert plan(fabric=cloth, knitter=None) == bare
        assert plan(fabric=cloth, knitter={"left_out": "no"}) == bare
        with_nobody = plan(fabric=cloth, knitter=nobody)
        assert {**with_nobody, "fabric": None} == {**bare, "fabric": None}


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"rounds": {"scatter": 0.5}}, "knitter.rounds.scatter"),
        ({"rounds": {"weight": 2}}, "knitter.rounds.weight"),
        ({"stitches": {"habit": 2}}, "knitter.stitches.habit"),
        ({"stitches": {"habit_sd": "x"}}, "knitter.stitches.habit_sd"),
        ({"pairs": -3}, "knitter.pairs"),
        ({"heel": 3}, "knitter.heel"),
        (7, "knitter"),
    ],
)
def test_numbers_that_cannot_be_are_refused_at_their_field(told: Any, field: str) -> None:
    assert [one["field"] for one in plan(knitter=told)["errors"]] == [field]


def read(rows: list[dict[str, Any]], who: Knitter) -> fabric.Fabric:
    fields = Fields({"fabric": {"swatches": rows}})
    found = fabric.read(fields.part("fabric"), 60, who)
    assert found
    return found


WHO = Knitter(
    Hers(Scatter(0.02**2, 6), -0.01, 0.006**2), Hers(Scatter(0.016**2, 9), 0.015, 0.005**2), 12
)


def test_a_swatch_is_moved_by_her_habit_and_a_sock_is_not() -> None:
    """Of one swatch all of it; beside a sock by its share in generalized least squares (numpy)."""
    before, after = read([SWATCH], UNKNOWN), read([SWATCH], WHO)
    assert math.log(after.rounds / before.rounds) == pytest.approx(0.015)
    assert math.log(after.stitches / before.stitches) == pytest.approx(-0.01)
    sock = {"kind": "sock", "needles": 60, "rounds": 89, "length": "23.1 cm"}
    both = read([SWATCH, {**sock, "flat_width": "10 cm"}], WHO)
    tubes = [(one, tube.kind == "swatch") for tube, *_ in both.seen if (one := tube.sides[1])]
    assert both.along
    assert [swatch for _, swatch in tubes] == [False, True]
    own = np.array([both.along.scatter + one.tape**2 + 0.005**2 * sw for one, sw in tubes])
    moved = np.array([one.log + 0.015 * swatch for one, swatch in tubes])
    assert math.log(both.rounds) == pytest.approx((moved / own).sum() / (1 / own).sum(), abs=1e-9)
    assert both.along.doubt == pytest.approx(1 / (1 / own).sum(), rel=1e-9)
    assert both.seen[1].tube.rounds == before.seen[0].tube.rounds, "as it was measured"


def test_over_marks_the_line_moves_as_each_swatch_would() -> None:
    marks = [{**SWATCH, "mark": 9}, {**SWATCH, "length": "16.4 cm", "mark": 11}]
    before, after = read(marks, UNKNOWN), read(marks, WHO)
    assert before.line
    assert after.line
    for mark in (9, 10, 11):
        old, new = before.line.at(mark), after.line.at(mark)
        assert math.log(new[1] / old[1]) == pytest.approx(0.015, abs=1e-6)
        assert math.log(new[0] / old[0]) == pytest.approx(-0.01, abs=1e-6)
    unsure = (0.006**2 + 0.005**2) / 2
    assert after.line.habit(10) == pytest.approx(unsure * before.line.habit(10) / HABIT, rel=1e-3)
    # Beforehand as her rounds scatter, with what her stitches lend.
    few = replace(WHO, across=WHO.along)
    lone = swatch_line.line(
        [Swatch("", mark=at, stitches=0.3 - at / 100, rounds=0.4 - at / 75) for at in (0, 1)],
        None,
        few,
    )
    assert lone
    assert lone.scatter.free >= certainty.lend(few.along.scatter, few.across.scatter).free


def test_a_steady_knitter_is_surer_and_an_unsteady_one_less_sure_of_the_first_sock() -> None:
    usual, steady, wild = (
        read([SWATCH], replace(UNKNOWN, along=one, across=one)).rounds_sd
        for one in (Hers(), Hers(Scatter(0.012**2, 12)), Hers(Scatter(0.03**2, 12)))
    )
    assert steady < usual < wild
    told = {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm"}
    sure = [
        planning.make(asked({"fabric": told, "knitter": one})).fabric.rounds_sd
        for one in (None, {"rounds": {"scatter": 0.012, "weight": 15}})
    ]
    assert sure[1] < sure[0]
