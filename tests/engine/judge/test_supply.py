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
from tests.asking import asked, plan

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
    assert "its band says what yours has" in plan()["yarn"]["words"]
    assert "its band says" not in plan({"fabric.yarn": "412 m / 100 g"})["yarn"]["words"]


@pytest.mark.parametrize(
    "apart", [(), ("toe",), ("heel", "toe"), ("cuff", "heel", "toe"), ("heel",), ("cuff",)]
)
def test_colours_hold_all_the_yarn_and_two_tails_of_each_stretch(apart: tuple[str, ...]) -> None:
    """A stretch in one colour has a tail at either end; the toe's is as long as grafting wants."""
    sock = planning.make(asked({"sock.leg.rounds": 50}))
    cloth, of = sock.fabric, frozenset(apart)
    found = supply.colours(sock.loops, sock.grafted, cloth, of)
    parts = supply.lengths(sock.loops, sock.grafted, cloth, of)
    assert sum(one.mm for one in found) == pytest.approx(sum(parts.values()), abs=1e-6)
    changes = [part in of for part in ("cuff", "leg", "heel", "foot", "toe")]
    stretches = 1 + sum(one != other for one, other in pairwise(changes))
    if {"heel", "toe"} <= of and "cuff" not in of:
        assert [one.name for one in found] == [supply.MAIN, "Heel and toe"]
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
    assert re.findall(r"leaving (\d+) cm of it", told) == [str(ceil(tail / 10))]
    ends = sheet["yarn"]["sections"]["ends"]["metres"]["value"] * 1000
    assert ends == pytest.approx(2 * (tail + 200), abs=6)


@pytest.mark.parametrize("slots", [24, 48, 54, 60, 72, 100, 120])
@pytest.mark.parametrize("toe", [None, 1 / 3, 2 / 3])
def test_the_grafting_tail_is_never_too_short(slots: int, toe: float | None) -> None:
    """Four flat widths were, always: 406 mm where 30 stitches take 433 (common practice)."""
    needles = {} if toe is None else {"sock.toe.needles": max(8, int(slots * toe))}
    sheet = plan({"cylinder.slots": slots, "foot.length": "330 mm", **needles})
    told = next(step["text"] for step in sheet["steps"] if "for grafting" in step["text"])
    (inches,) = map(int, re.findall(r"leaving (\d+) in of it", told))
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
