"""What finished pairs teach for a plan: each tube once, and never those of the plan's own yarn."""

from __future__ import annotations

import random
import time
from typing import Any

import pytest
from numpy.random import default_rng

from engine.answers import finished_pairs
from engine.fabric import knitter
from engine.fabric.knitter import NEWEST, OfYarn
from engine.sock import plan as planning
from tests.asking import answer, asked
from tests.engine import knitters

PLAN = asked({"units": "cm"})


def swatch(length: int, width: float = 102.0) -> dict[str, Any]:
    return {"needles": 60, "rounds": 60, "flat_width": f"{width} mm", "length": f"{length} mm"}


def pair(length: int, came: int, *rows: dict[str, Any], **more: Any) -> dict[str, Any]:
    cloth = {"swatch": swatch(length), "swatches": list(rows)}
    heel = {"needles": 30, "left": 10}
    request = asked({"units": "cm", "fabric": cloth, "sock": {"heel": heel, "toe": heel}})
    return {"request": request, "measured": {"foot_rounds": "50", "length": f"{came} mm"}, **more}


SIX = [pair(150 + i, 226 + 2 * i) for i in range(6)]


def learned(pairs: list[Any], request: Any = PLAN) -> dict[str, Any]:
    found: dict[str, Any] = answer({"do": "knitter", "request": request, "pairs": pairs})
    return found


def test_it_is_what_their_tubes_say_yarn_by_yarn() -> None:
    yarns = []
    for one in SIX:
        found = finished_pairs.read(one)
        assert found
        said = finished_pairs.said(found)
        assert said
        yarns.append(OfYarn((*said.tubes, said.one)))
    assert learned(SIX) == {"pairs": 6, "knitter": knitter.learn(yarns, 6).written()}


def test_fewer_than_three_change_nothing() -> None:
    assert learned(SIX[:2]) == {"pairs": 2, "knitter": None}
    assert learned(SIX[:3])["knitter"]["pairs"] == 3
    assert learned([])["knitter"] is None


def test_whatever_their_order_they_teach_the_same() -> None:
    before = learned(SIX)
    for seed in range(5):
        mixed = random.Random(seed).sample(SIX, len(SIX))
        assert learned(mixed) == before


def test_those_of_the_plans_own_yarn_are_left_out() -> None:
    """By a swatch it shares, by a gauge told alike, or by a sock one that is a tube of the plan."""
    same = {**PLAN, "fabric": {"swatches": [swatch(170), swatch(150)]}}
    assert learned(SIX, same)["pairs"] == 5
    sock = {"kind": "sock", "rounds": 90, "length": "230 mm"}
    as_row = {**PLAN, "fabric": {"swatches": [swatch(170), sock]}}
    assert learned(SIX, as_row)["pairs"] == 5
    told = {**SIX[0], "request": asked({"fabric.stitches": "7.6 / in"})}
    assert learned([*SIX, told])["pairs"] == 7
    other = {**PLAN, "fabric": told["request"]["fabric"], "units": "in"}
    assert learned([*SIX, told], other)["pairs"] == 6


def test_a_sock_that_became_a_row_of_another_plan_counts_once() -> None:
    """So does a swatch that two pairs were planned by."""
    sock = {"kind": "sock", "rounds": 90, "length": "226 mm"}
    by_swatch, with_sock = pair(150, 229), pair(150, 229, sock)
    once = learned([*SIX, by_swatch])["knitter"]
    assert learned([*SIX, with_sock])["knitter"] == once
    assert learned([*SIX[1:], with_sock])["knitter"] != learned([*SIX[1:], by_swatch])["knitter"]


def test_two_socks_alike_are_two_socks() -> None:
    """Also of yarns that measured otherwise: neither makes them one yarn."""
    alike = [pair(140 + 5 * i, 211 + 7 * i) for i in range(4)]
    before = learned(alike)["knitter"]["rounds"]
    after = learned([*alike, *alike])["knitter"]["rounds"]
    assert after["weight"] > before["weight"]
    others = [pair(mm, 226) for mm in (140, 150, 160)]
    assert learned(others)["knitter"]["rounds"]["scatter"] > 0.02, "each by its own swatch"


def test_what_a_pair_was_planned_with_is_not_learned_again() -> None:
    """Her numbers of that day stand in its request; its tubes are what they are."""
    hers = learned(SIX)["knitter"]
    told = [{**one, "request": {**one["request"], "knitter": hers}} for one in SIX]
    assert learned(told) == learned(SIX)


@pytest.mark.parametrize(
    "bad",
    [
        None,
        3,
        {},
        {"request": {}, "measured": {}},
        {"request": PLAN, "measured": {"foot_rounds": "50", "length": "x"}},
        {"request": PLAN, "measured": {"foot_rounds": "50", "unwashed_length": "23 cm"}},
        {"request": PLAN, "measured": {"foot_rounds": "400", "length": "71 mm"}},
    ],
)
def test_what_cannot_be_read_is_passed_over(bad: Any) -> None:
    assert learned([bad, *SIX]) == learned(SIX)


def test_only_the_newest_count_and_many_are_quick() -> None:
    """400 pairs: as quick as the newest, and asked again nothing is planned anew."""
    chance = default_rng(3)
    who = knitters.knitter(chance)
    many = [pair(int(chance.integers(140, 175)), int(chance.normal(230, 4))) for _ in range(400)]
    assert who
    before = time.perf_counter()
    found = learned(many)
    first = time.perf_counter() - before
    assert found["pairs"] == NEWEST
    assert found == learned(many[-NEWEST:])
    assert first < 2.0, "a tenth of that on a quiet machine"


def test_a_plan_with_her_numbers_tells_so_and_keeps_its_counts() -> None:
    hers = learned(SIX)["knitter"]
    one = planning.make({**PLAN, "fabric": {"swatch": swatch(160)}, "knitter": hers})
    assert one.fabric.knitter.pairs == 6
    page = answer({"do": "page", "request": {**PLAN, "knitter": hers}})
    assert page["plan"]["counts"]["foot"]["rounds"] > 0
