"""The steps of a sock, followed needle by needle on a machine of the test's own."""

from __future__ import annotations

import re
from itertools import groupby
from typing import Any

import pytest
from hypothesis import assume, given

from tests.engine.drawn_requests import knittable, plan
from tests.engine.needle_by_needle import Pocket, follow

PARTS = ["waste", "cuff", "leg", "heel", "foot", "before_toe", "toe", "end", "between", "finish"]


def check(found: dict[str, Any], carrier: str = "left") -> None:
    """Follow a whole plan, and count; the carrier begins and ends a pocket at its own side."""
    counts, stitches = found["counts"], found["yarn"]["stitches"]
    parts = {part: list(steps) for part, steps in groupby(found["steps"], lambda s: s["part"])}
    assert list(parts) == [part for part in PARTS if part in parts]
    assert sum(map(len, parts.values())) == len(found["steps"]), "a part comes once, in its place"
    pockets = [part for part in ("heel", "toe") if "left" in counts[part]]
    for part in pockets:
        count = counts[part]
        pocket = follow(parts[part], count["needles"], carrier)
        assert pocket.side == carrier, "the carrier is where the next round starts"
        assert pocket.in_work == list(range(1, count["needles"] + 1)), "all in work again"
        assert set(pocket.loops) == set(pocket.in_work), "each needle has knitted"
        assert pocket.fewest == count["left"]
        rows = sum(step["kind"] == "row" for step in parts[part])
        saved = 2 * two_at_first(parts[part])  # rows of the narrowing half
        assert rows == count["rows"] == 2 * count["rows_each_way"] - saved
        assert sum(pocket.loops.values()) == stitches[part]
    # The rounds before a pocket end where it begins, some needles before or past the half mark.
    heel, toe = (
        past_home(counts["needles"], counts[p]["needles"], carrier) if p in pockets else 0
        for p in ("heel", "toe")
    )
    before_heel = "leg" if counts["leg"]["rounds"] else "cuff"
    for part, needles, moved in (
        ("cuff", counts["cuff"]["needles"], heel * (before_heel == "cuff")),
        ("leg", counts["needles"], heel * (before_heel == "leg")),
        ("foot", counts["needles"], toe * ("before_toe" not in counts) - heel),
    ):
        rounds = sum(step.get("rounds", 0) for step in parts.get(part, []))
        assert rounds == counts[part]["rounds"]
        if needles == counts["needles"]:  # a mock rib may have gaps where it ends
            idle = ribs_idle(parts[part]) if part in parts else 0
            assert rounds * needles + moved - idle == stitches[part]
        else:
            assert abs(stitches[part] - rounds * needles) <= abs(moved)
    assert all(step["text"].strip() for step in found["steps"])


def ribs_idle(steps: list[dict[str, Any]]) -> int:
    """The stitches that a ribber does not knit while it is idle, of a rib's set-up edge."""
    alone: int = sum(s["rounds"] for s in steps if "on the cylinder alone" in s["text"])
    told = [re.search(r"(\d+) on the ribber", s["text"]) for s in steps]
    return alone * sum(int(one[1]) for one in told if one)


def two_at_first(steps: list[dict[str, Any]]) -> bool:
    """Whether a pocket begins with two needles a side."""
    return isinstance(next(s["hold"] for s in steps if s["kind"] == "row"), list)


def past_home(slots: int, needles: int, carrier: str) -> int:
    """How many needles past its half mark the carrier stops for a pocket; below 0 before it.

    A pocket stands in the middle of the front half, its odd needle at the right.
    """
    left = int((slots / 2 - needles) / 2)
    return left if carrier == "left" else slots // 2 - needles - left


@given(knittable())
def test_steps_are_legal_needle_by_needle(request: dict[str, Any]) -> None:
    found = plan(request)
    assume("errors" not in found)
    check(found)


@given(knittable())
def test_a_carrier_at_the_right_turns_rows_over_and_no_count(request: dict[str, Any]) -> None:
    left = plan(request)
    assume("errors" not in left)
    right = plan({**request, "cylinder": {**request["cylinder"], "carrier": "right"}})
    check(right, "right")
    assert right["counts"] == left["counts"]
    by_hand = [s for s in right["steps"] if s["part"] == "heel" and s["kind"] == "do"]
    stop = next(s["text"] for s in by_hand if s.get("sets") != "color")
    assert f"right of needle {right['counts']['heel']['needles']}, " in stop


def test_a_carrier_stands_at_one_of_two_sides() -> None:
    request = {
        "foot": {"length": "24 cm"},
        "cylinder": {"slots": 60, "carrier": "front"},
        "fabric": {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm"},
    }
    (problem,) = plan(request)["errors"]
    assert problem["field"] == "cylinder.carrier"
    assert "left" in problem["way_out"]
    assert "right" in problem["way_out"]


@pytest.mark.parametrize("slots", range(24, 121, 2))
def test_steps_are_legal_on_every_cylinder(slots: int) -> None:
    found = plan(
        {
            "foot": {"length": "36 cm"},
            "cylinder": {"slots": slots},
            "fabric": {"stitches": "40 / 10 cm", "rounds": "52 / 10 cm"},
        }
    )
    assert found["counts"]["heel"]["needles"] == slots // 2
    check(found)


@pytest.mark.parametrize("needles", [8, 9, 15, 30, 41, 60, 80])
def test_every_pocket_that_is_allowed_is_legal(needles: int) -> None:
    """Every number left, of few needles and of many: the even ends of rows and no other."""
    accepted = 0
    for left in range(2, needles):
        found = plan(
            {
                "foot": {"length": "36 cm"},
                "cylinder": {"slots": 120},
                "fabric": {"stitches": "60 / 10 cm", "rounds": "78 / 10 cm"},
                "sock": {"heel": {"needles": needles, "left": left}, "leg": {"rounds": 1}},
            }
        )
        odd = (needles - left) % 2
        assert ("errors" in found) == bool(odd)
        if not odd:
            check(found)
            accepted += 1
    assert accepted == needles // 2 - 1


ROW = {"direction": "right", "back": None, "knits": [1, 8], "hold": 8, "in_work": 7}


@pytest.mark.parametrize(
    "fault",
    [
        {"direction": "left"},
        {"knits": [8, 1]},
        {"knits": [1, 7]},
        {"hold": 7},
        {"hold": None},
        {"in_work": 8},
        {"back": 8},
    ],
)
def test_the_machine_of_this_test_sees_a_fault(fault: dict[str, Any]) -> None:
    Pocket(8).knit(ROW)
    with pytest.raises(AssertionError):
        Pocket(8).knit({**ROW, **fault})
