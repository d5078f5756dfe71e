"""Yarn: what a pair takes, counted a second time from the steps a knitter follows."""

from __future__ import annotations

import re
from itertools import pairwise
from math import ceil, sqrt
from typing import Any

import pytest

from engine import sources
from engine.judge import supply
from engine.sock import plan as planning
from tests.asking import asked, noted, plan, refused

SECTIONS = ["cuff", "leg", "heel", "foot", "toe", "ends"]
CUFFS: list[dict[str, Any]] = [
    {"kind": "hem", "rounds": 20},
    {"kind": "rib", "rounds": 15},
    {"kind": "mock rib", "rounds": 21, "every": 3},
]


def walked(sheet: dict[str, Any]) -> dict[str, int]:
    """The stitches of each section of one sock: needles that knit, step by step."""
    slots, in_cuff = sheet["counts"]["needles"], sheet["counts"]["cuff"]["needles"]
    found = dict.fromkeys(("waste", "cuff", "leg", "heel", "foot", "toe", "finish"), 0)
    for step in sheet["steps"]:
        needles = in_cuff if step["part"] in ("waste", "cuff") else slots
        if step["kind"] == "rounds":
            found[step["part"]] += step["rounds"] * needles
        elif step["kind"] == "row":
            first, last = step["knits"]
            found[step["part"]] += abs(last - first) + 1
    return found


@pytest.mark.parametrize("cuff", CUFFS, ids=lambda cuff: cuff["kind"])
@pytest.mark.parametrize("slots", [54, 60, 72])
def test_stitches_are_those_of_the_steps(slots: int, cuff: dict[str, Any]) -> None:
    """Heel and toe on half the needles, so that every round ends at the half mark."""
    changes: dict[str, Any] = {"cylinder.slots": slots, "sock.cuff": cuff}
    changes |= {"foot.length": "270 mm", "sock.heel.needles": slots // 2}
    sheet = plan(changes)
    steps = walked(sheet)
    assert sheet["yarn"]["stitches"] == {part: steps[part] for part in SECTIONS[:-1]}


@pytest.mark.parametrize("yarn", ["412 m / 100 g", "238 tex", "300 m / 100 g"])
def test_yarn_of_a_section_is_its_stitches_and_a_loop_in_each(yarn: str) -> None:
    """For two socks; a loop is shown to 0.01 mm of about 14, hence 1 part in 1,000."""
    sheet = plan({"fabric.yarn": yarn})
    loop = sheet["fabric"]["loop_length"]["value"]
    for part, stitches in sheet["yarn"]["stitches"].items():
        metres = sheet["yarn"]["sections"][part]["metres"]["value"]
        assert metres == pytest.approx(2 * stitches * loop / 1000, rel=0.001)


def test_sections_add_up_to_the_pair_and_waste_stays_apart() -> None:
    """To the 0.01 that each of six figures is rounded to."""
    yarn = plan({"fabric.yarn": "412 m / 100 g"})["yarn"]
    assert list(yarn["sections"]) == SECTIONS
    for what in ("metres", "grams"):
        parts = sum(section[what]["value"] for section in yarn["sections"].values())
        assert yarn[what]["value"] == pytest.approx(parts, abs=0.035)
        assert yarn["waste"][what]["value"] > 0


def test_grams_follow_from_the_label() -> None:
    for metres in (300, 412, 500):
        yarn = plan({"fabric.yarn": f"{metres} m / 100 g"})["yarn"]
        expected = yarn["metres"]["value"] / metres * 100
        assert yarn["grams"]["value"] == pytest.approx(expected, abs=0.01)


def test_a_weight_for_a_yarn_that_was_not_told_says_so() -> None:
    assert "For yours, see its band" in plan()["yarn"]["words"]
    assert "For yours" not in plan({"fabric.yarn": "412 m / 100 g"})["yarn"]["words"]


@pytest.mark.parametrize(
    "apart", [(), ("toe",), ("heel", "toe"), ("cuff", "heel", "toe"), ("heel",), ("cuff",)]
)
def test_colours_hold_all_the_yarn_and_two_tails_of_each_stretch(apart: tuple[str, ...]) -> None:
    """A stretch in one colour has a tail at either end; the toe's is as long as grafting wants."""
    sock = planning.make(asked({"sock.leg.rounds": 50, "stock.apart": ", ".join(apart)}))
    cloth, of = sock.fabric, frozenset(apart)
    found = supply.of_sock(sock)
    parts = supply.lengths(sock.loops, cloth, found)
    assert sum(one.mm for one in found) == pytest.approx(sum(parts.values()), abs=1e-6)
    changes = [part in of for part in ("cuff", "leg", "heel", "foot", "toe")]
    stretches = 1 + sum(one != other for one, other in pairwise(changes))
    if {"heel", "toe"} <= of and "cuff" not in of:
        assert [one.color for one in found] == ["A", "B"]
    grafting = 30 * cloth.loop
    tails = supply.SOCKS * (grafting + 2 * stretches * sources.TAIL)
    assert parts["ends"] == pytest.approx(tails)


def test_there_is_a_tenth_to_spare() -> None:
    yarn = plan()["yarn"]
    for what in ("metres", "grams"):
        assert yarn["with_margin"][what]["value"] == pytest.approx(
            1.1 * yarn[what]["value"], abs=0.02
        )
    assert yarn["with_margin"]["grams"]["text"] in yarn["words"]


@pytest.mark.parametrize("kind", ["hem", "mock rib"])
def test_waste_yarn_is_the_waste_rounds_of_both_ends(kind: str) -> None:
    """For two socks; a mock rib begins with needles out."""
    sheet = plan({"sock.cuff.kind": kind})
    steps = walked(sheet)
    loop = sheet["fabric"]["loop_length"]["value"]
    metres = 2 * (steps["waste"] + steps["finish"]) * loop / 1000
    assert sheet["yarn"]["waste"]["metres"]["value"] == pytest.approx(metres, rel=0.001)


def test_the_grafting_tail_is_as_long_as_the_steps_say() -> None:
    """30 stitches of a loop each (Munden 1959), and 20 cm to hold; a hand, 20 cm, to begin with."""
    sheet = plan({"units": "cm"})
    told = next(step["text"] for step in sheet["steps"] if "for grafting" in step["text"])
    loop = sqrt(23.1 / (7.5 / 25.4 * 9.6 / 25.4))
    tail = 30 * loop + 200
    assert re.findall(r"Leave (\d+) cm for", told) == [str(ceil(tail / 10))]
    ends = sheet["yarn"]["sections"]["ends"]["metres"]["value"] * 1000
    assert ends == pytest.approx(2 * (tail + 200), abs=6)


@pytest.mark.parametrize("slots", [24, 48, 54, 60, 72, 100, 120])
@pytest.mark.parametrize("toe", [None, 1 / 3, 2 / 3])
def test_the_grafting_tail_is_never_too_short(slots: int, toe: float | None) -> None:
    """Four flat widths were, always: 406 mm where 30 stitches take 433 (common practice)."""
    needles = {} if toe is None else {"sock.toe.needles": max(8, int(slots * toe))}
    sheet = plan({"cylinder.slots": slots, "foot.length": "330 mm", **needles})
    told = next(step["text"] for step in sheet["steps"] if "for grafting" in step["text"])
    (inches,) = map(int, re.findall(r"Leave (\d+) in for", told))
    toe_needles = sheet["counts"]["toe"]["needles"]
    grafted = max(toe_needles, slots - toe_needles)
    left_over = inches * 25.4 - grafted * sheet["fabric"]["loop_length"]["value"]
    assert 199 < left_over < 226, "20 cm in the needle, up to a whole inch"


def test_more_leg_takes_more_yarn_by_just_that_leg() -> None:
    short, tall = plan({"sock.leg.rounds": 40}), plan({"sock.leg.rounds": 80})
    for part in ("cuff", "heel", "foot", "toe", "ends"):
        assert short["yarn"]["sections"][part] == tall["yarn"]["sections"][part]
    legs = [sheet["yarn"]["sections"]["leg"]["metres"]["value"] for sheet in (short, tall)]
    assert legs[1] == pytest.approx(2 * legs[0], abs=0.011)


@pytest.mark.parametrize("leg", [50, 60])
def test_a_pair_comes_out_of_a_usual_100_grams(leg: int) -> None:
    """Common practice, no published source: 100 g of sock yarn is a pair for a grown-up."""
    yarn = plan({"fabric.yarn": "400 m / 100 g", "sock.leg.rounds": leg})["yarn"]
    assert 45 < yarn["with_margin"]["grams"]["value"] < 100


@pytest.mark.parametrize(
    ("ball", "asked"),
    [("50 g", False), ("25 g", True), ("75 g", True), ("76 g", False), ("100 g", False)],
)
def test_where_light_balls_would_be_too_few_they_are_to_be_weighed(ball: str, asked: bool) -> None:
    """By hand: 70.1 g with a tenth to spare are 3 balls of 25 g and 1 of 75 g, but 4 of 23 g.

    A ball of 75 g by its label may have 69 g; one of 76 g was weighed, for labels go by 25 g.
    """
    sheet = plan({"fabric.yarn": "410 m / 100 g", "stock.ball": ball, "sock.leg.rounds": 54})
    grams = sheet["yarn"]["with_margin"]["grams"]["value"]
    told = noted(sheet).get("stock.ball")
    light = ceil(grams / (float(ball.removesuffix(" g")) * 0.92))
    assert (told is not None) == asked, grams
    assert told is None or f"{light} ball" in told


def test_a_finished_sock_that_was_weighed_tells_what_the_next_takes() -> None:
    """Kept beside the swatches with its weight: the next sock alike weighs what that one did."""
    label = {"fabric.yarn": "410 m / 100 g", "foot.heel_girth": None, "sock.leg.rounds": 50}
    rounds = plan(label)["counts"]["foot"]["rounds"]
    one = {"foot_rounds": rounds, "length": "236.5 mm", "flat_width": "101.6 mm"}
    two = plan({**label, "first_sock": one})
    keep = {**two["fabric"]["keep"], "length": one["length"], "flat_width": one["flat_width"]}
    assert int(keep["whole_stitches"]) > 60 * (20 + 50 + rounds), "heel, toe and ends besides"
    fabric = {"yarn": "410 m / 100 g", "swatches": [{**keep, "grams": "40 g"}]}
    base = {"foot.heel_girth": None, "sock.leg.rounds": 50, "fabric": fabric}
    sheet = plan(base)
    assert sheet["counts"]["foot"]["rounds"] == rounds
    assert sheet["yarn"]["grams"]["value"] == pytest.approx(2 * 40, rel=0.01)
    assert "a round takes" in sheet["yarn"]["words"]
    assert "a round takes" not in two["yarn"]["words"]
    grams = float(re.findall(r"a round takes ([\d.]+) g", sheet["yarn"]["words"])[0])
    assert grams == pytest.approx(40 * 60 / int(keep["whole_stitches"]), abs=0.006)


def test_with_that_weight_enough_is_told_more_surely() -> None:
    row = {"kind": "sock", "needles": 60, "rounds": 89, "length": "236.5 mm"}
    row |= {"flat_width": "101.6 mm", "whole_stitches": 9500}
    chances = []
    for grams in ({}, {"grams": "31 g"}):
        fabric = {"yarn": "410 m / 100 g", "swatches": [{**row, **grams}]}
        sheet = plan({"foot.heel_girth": None, "fabric": fabric, "stock.left": "36 g"})
        chances.append(abs(sheet["yarn"]["enough"]["probability"] - 0.5))
    assert chances[1] > chances[0]


@pytest.mark.parametrize("whole", ["40", "x", "300000"])
def test_stitches_that_no_sock_has_are_refused(whole: str) -> None:
    row = {"kind": "sock", "needles": 60, "rounds": 89, "length": "24 cm", "flat_width": "10 cm"}
    fabric = {"swatches": [{**row, "whole_stitches": whole}]}
    assert set(refused({"fabric": fabric})) == {"fabric.swatches.0.whole_stitches"}
