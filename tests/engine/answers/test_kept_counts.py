"""What is kept of counts stays what was knitted, and a newer way of counting cannot pass unseen."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest
from hypothesis import assume, given

from engine import VERSION
from tests.asking import answer, asked
from tests.engine.drawn_requests import Json, knittable

SMALL: Json = {"foot": {}, "person": {}, "cylinder.slots": 48}  # a child's or an adult's

FIVE: list[Json] = [
    {
        **{"kind": "sock", "needles": 60, "rounds": 89, "flat_width": "10.2 cm"},
        "length": f"{length} mm",
    }
    for length in (233, 235, 236, 237, 239)
]
SHORT: Json = {"foot_rounds": 49, "length": "222 mm"}
MARKED: list[Json] = [
    {"needles": 60, "rounds": 60, "flat_width": width, "length": length, "mark": mark}
    for width, length, mark in (("9.6 cm", "14.7 cm", 5), ("11 cm", "16.8 cm", 7))
]
UNWASHED: Json = {
    **{"needles": 60, "rounds": 60},
    **{"unwashed_width": "11.2 cm", "unwashed_length": "17.2 cm"},
}
BOTH: Json = {**UNWASHED, "flat_width": "10 cm", "length": "15 cm"}
KNITTED: Json = {"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}
SHORTER: Json = {
    "pairs": 12,
    "stitches": {"scatter": 0.025, "weight": 12.0, "habit": 1.01, "habit_sd": 0.006},
    "rounds": {"scatter": 0.03, "weight": 12.0, "habit": 0.96, "habit_sd": 0.006},
}

LONG: Json = {"cylinder.slots": 84, "foot.ankle_girth": "230 mm", "foot.calf_girth": "340 mm"}

ONE_MORE_TUBE: list[tuple[Json, str]] = [
    ({}, "20 50 30→10→30 49 30→10→30"),
    ({"foot.heel_girth": "13.4 in"}, "20 50 30→8→30 47 30→10→30"),
    (
        {"sock.heel": {"needles": 27, "left": 9}, "sock.toe": {"needles": 34, "left": 12}},
        "20 50 27→9→27 49 34→12→34",
    ),
    ({"first_sock": {"foot_rounds": 49, "length": "9 in"}}, "20 50 30→10→30 51 30→10→30"),
    ({"fabric": {"swatches": FIVE}}, "20 50 30→10→30 49 30→10→30"),
    ({"fabric": {"swatches": FIVE}, "first_sock": SHORT}, "20 50 30→10→30 50 30→10→30"),
    ({"fabric": {"swatches": MARKED, "mark": 6}}, "20 51 30→10→30 50 30→10→30"),
]
WASHED = [
    *ONE_MORE_TUBE,
    ({"fabric": {"swatch": UNWASHED, "swatches": [BOTH]}}, "20 53 30→10→30 54 30→10→30"),
    ({"fabric": {"swatch": KNITTED}}, "20 51 30→10→30 51 30→10→30"),
    ({"fabric": {"swatch": KNITTED}, "knitter": SHORTER}, "20 49 30→10→30 47 30→10→30"),
]

# What a version counted, as phones have it in their books: these are never changed. Where it counts
# otherwise on purpose, the calculator gets another VERSION, and the new counts rows of their own.
COUNTED: dict[str, list[tuple[Json, str]]] = {
    "1.0.0": [
        ({}, "20 50 30→10→30 49 30→10→30"),
        ({"cylinder.slots": 72, "fabric.stitches": "9 / in"}, "20 50 36→18→36 47 36→12→36"),
        ({"sock.foot_length_of_sock": "9 in"}, "20 50 30→10→30 46 30→10→30"),
        ({"sock.leg": {"height": "14 in"}}, "20 95 30→10→30 49 30→10→30"),
        ({"foot.heel_girth": "13.4 in"}, "20 50 30→6→30 45 30→10→30"),
    ],
    # Heel and toe leave custom only as far as comfort asks.
    "1.1.0": [
        ({}, "20 50 30→10→30 49 30→10→30"),
        ({"cylinder.slots": 72, "fabric.stitches": "9 / in"}, "20 50 36→12→36 41 36→12→36"),
        ({"cylinder.slots": 72, "foot.heel_girth": "37.5 cm"}, "20 50 36→12→36 41 36→12→36"),
        ({"sock.foot_length_of_sock": "9 in"}, "20 50 30→10→30 46 30→10→30"),
        ({"sock.leg": {"height": "14 in"}}, "20 95 30→10→30 49 30→10→30"),
        ({"foot.heel_girth": "13.4 in"}, "20 50 30→8→30 47 30→10→30"),
        ({"foot.toe_breadth": "88 mm"}, "20 50 30→10→30 49 30→10→30"),
        ({"foot.toe_breadth": "92 mm"}, "20 50 30→10→30 51 30→12→30"),
    ],
    # Where no age is told, child and adult are both supposed.
    "1.2.0": [
        ({}, "20 50 30→10→30 49 30→10→30"),
        ({"cylinder.slots": 72, "fabric.stitches": "9 / in"}, "20 50 36→12→36 41 36→12→36"),
        ({"foot.heel_girth": "13.4 in"}, "20 50 30→8→30 47 30→10→30"),
        ({"foot.toe_breadth": "92 mm"}, "20 50 30→10→30 51 30→12→30"),
        ({"sock.leg": {"height": "14 in"}}, "20 95 30→10→30 49 30→10→30"),
        ({**SMALL, "foot": {"ball_girth": "7 3/4 in"}}, "20 43 24→8→24 44 24→8→24"),
        ({**SMALL, "person": {"height": "55 in"}}, "20 44 24→8→24 47 24→8→24"),
    ],
    # Stitches are counted where they are knitted; of the figures none moved.
    "1.3.0": [
        ({}, "20 50 30→10→30 49 30→10→30"),
        ({"foot.heel_girth": "13.4 in"}, "20 50 30→8→30 47 30→10→30"),
        (
            {"sock.heel": {"needles": 27, "left": 9}, "sock.toe": {"needles": 34, "left": 12}},
            "20 50 27→9→27 49 34→12→34",
        ),
    ],
    # Sock one weighs as one more of the tubes that there are.
    "1.4.0": ONE_MORE_TUBE,
    # The wash is learned, and drawn to none at all; what is learned of the knitter counts.
    "1.5.0": WASHED,
    # A leg is shaped by half a mark at a time, and back to the foot's before the heel.
    "1.6.0": [
        *WASHED,
        (
            {"foot.ankle_girth": "7.5 in", "sock.leg": {"kind": "shaped"}},
            "20 52 30→10→30 49 30→10→30",
        ),
        ({**LONG, "sock.leg": {"height": "36 cm"}}, "20 132 28→14→28 47 42→14→42"),
    ],
}


def counted(request: Json, door: str = "knit") -> Json:
    found: Json = answer({"do": door, "request": request})["counted"]
    return found


def again(request: Json, kept: object) -> Json:
    return answer({"do": "again", "request": request, "counted": kept})


@pytest.mark.parametrize(("changes", "figures"), COUNTED[VERSION])
def test_whoever_counts_otherwise_is_another_version(changes: Json, figures: str) -> None:
    assert " ".join(counted(asked(changes))["figures"].values()) == figures


@given(knittable())
def test_what_is_kept_is_the_plan_and_is_counted_the_same_by_the_same_version(
    request: Json,
) -> None:
    plan = answer({"do": "plan", "request": request})
    assume("errors" not in plan)
    kept, counts = counted(request), plan["counts"]
    assert kept == counted(request, "page")
    assert kept["engine"] == VERSION
    assert kept["facts"][0] == {"name": "Cylinder", "text": f"{counts['needles']} slots"}
    for part in ("cuff", "leg", "foot"):
        assert kept["figures"][part] == str(counts[part]["rounds"])
    for part in ("heel", "toe"):
        pocket, turned = counts[part], None  # a toe of another kind has no figure
        if "left" in pocket:
            turned = f"{pocket['needles']}→{pocket['left']}→{pocket['needles']}"
        assert kept["figures"].get(part) == turned
    assert again(request, kept) == {"engine": VERSION, "moved": [], "words": ""}


def test_both_are_told_and_what_moved() -> None:
    kept = deepcopy(counted(asked()))
    now = kept["figures"]["foot"]
    kept["engine"] = "0.9"
    kept["figures"] |= {"foot": "47", "toe": "30→12→30"}
    found = again(asked(), kept)
    assert found["moved"] == [
        {"part": "foot", "title": "Foot", "then": "47", "now": now},
        {"part": "toe", "title": "Toe", "then": "30→12→30", "now": "30→10→30"},
    ]
    moved = f"foot {now}, not 47 and toe 30→10→30, not 30→12→30"
    assert f"since version 0.9: {moved}." in found["words"]


@pytest.mark.parametrize("kept", [None, 7, "x", [], {}, {"figures": 3}, {"figures": {"arm": "9"}}])
def test_what_was_not_kept_is_not_compared(kept: Any) -> None:
    assert again(asked(), kept)["moved"] == []


def test_a_request_that_cannot_be_counted_any_more_says_why() -> None:
    kept = counted(asked())
    errors = again(asked({"cylinder.slots": 61}), kept)["errors"]
    assert [error["field"] for error in errors] == ["cylinder.slots"]
