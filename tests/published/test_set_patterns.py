"""Worked figures of published patterns come out of a set that is made for them.

As in `test_patterns`, each at its address: only the first tells a gauge, so that its count must be
equal; of the others what they say of needles and rounds must stand in the instructions.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.engine.instructions.asking_sets import call, made, prints, request
from tests.engine.instructions.hands import steps

Json = dict[str, Any]


def rounds(called: Json, size: str) -> dict[str, list[int]]:
    """The rounds of each part in the print of all sizes, as a knitter reads them for hers."""
    text, _ = prints(called)
    found: dict[str, list[int]] = {}
    for part, sentence in steps(text, size):
        words = sentence.rstrip(".").split()
        at = [i for i, word in enumerate(words) if word.startswith("round")]
        if ": knit" in sentence and at:
            found.setdefault(part, []).append(int(words[at[0] - 1]))
    return found


def rows(called: Json, part: str, size: str) -> int:
    text, _ = prints(called)
    return sum(of == part and "Knit to the " in said for of, said in steps(text, size))


def test_64_needles_and_a_sock_foot_of_9_45_in() -> None:
    """sharonwue.blogspot.ca/2015/04/notes-for-american-crew-socks.html: 64 needles, 8 stitches and
    11 rounds an inch, heel and toe 32-10-32, 60 foot rounds. Equal. The size is the sock's foot
    itself, so without ease; sizes on either side stand around it."""
    pocket = {"needles": 32, "left": 10}
    asked = {
        "units": "in",
        "cylinder": {"slots": 64},
        "fabric": {"stitches": "8 / in", "rounds": "11 / in"},
        "sock": {"heel": pocket, "toe": pocket, "length_ease": "0 %"},
    }
    called = call(asked, "length", ["9 in", "9.45 in", "10 in"])
    (middle,) = (one for one in made(asked, "length", ["9.45 in"])["sizes"])
    by_part = {part["part"]: part for part in middle["counts"]}
    assert by_part["foot"]["count"] == 60
    assert by_part["heel"]["figure"] == by_part["toe"]["figure"] == "32→10→32"
    assert rounds(called, middle["label"])["foot"] == [60]
    assert rows(called, "heel", middle["label"]) == rows(called, "toe", middle["label"]) == 44


PATTERNS: dict[str, tuple[int, Json, dict[str, list[int]], int]] = {
    # a round of rib, 2 on the cylinder alone, 70 of rib, 20 plain, the heel by 2 and 2 on 30
    "needlesofsteel.org.uk/knitpatterns/pat-csm02.html": (
        60,
        {
            "cuff": {"kind": "set-up rib", "rounds": 73, "every": 2},
            "leg": {"rounds": 20},
            "heel": {"kind": "two at first", "needles": 30, "left": 10},
        },
        {"cuff": [1, 2, 70], "leg": [20]},
        38,
    ),
    # 50 of 1×1, 75 of 3×1, 10 plain, the heel on 42 down to 12, 4 rounds after the toe; its edge
    # has 2 plain rounds more
    "needlesofsteel.org.uk/knitpatterns/pat-csm03.html": (
        84,
        {
            "cuff": {
                "kind": "set-up rib",
                "rounds": 128,
                "every": 2,
                "change_after": 53,
                "change_every": 4,
            },
            "leg": {"rounds": 10},
            "heel": {"needles": 42, "left": 12},
            "end": {"rounds": 4},
        },
        {"cuff": [1, 2, 50, 75], "leg": [10], "end": [4]},
        60,
    ),
    # 1×1 to round 33 of all, 3×1 to round 60, 5 plain; the heel on 34, 2 and 2, down to 12
    "needlesofsteel.blogspot.co.uk/2015/05/free-pattern-ribbed-csm-sock-for-72.html": (
        72,
        {
            "cuff": {
                "kind": "set-up rib",
                "rounds": 60,
                "every": 2,
                "change_after": 33,
                "change_every": 4,
            },
            "leg": {"rounds": 5},
            "heel": {"kind": "two at first", "needles": 34, "left": 12},
        },
        {"cuff": [1, 2, 30, 27], "leg": [5]},
        42,
    ),
    # 70 rounds of 2×1, 10 plain, the heel on 29 of 54; how its edge is set up is not told
    "angoravalley.com/patterns/easylegare54.html": (
        54,
        {
            "cuff": {"kind": "set-up rib", "rounds": 73, "every": 3},
            "leg": {"rounds": 10},
            "heel": {"needles": 29, "left": 9},
        },
        {"cuff": [1, 2, 70], "leg": [10]},
        40,
    ),
    # a hem of 50 rounds in all and 25 of leg
    "danielkenneth.com/2018/07/": (
        72,
        {"cuff": {"kind": "hem", "rounds": 50}, "leg": {"rounds": 25}},
        {"cuff": [50], "leg": [25]},
        48,
    ),
}


@pytest.mark.parametrize("address", PATTERNS)
def test_what_a_pattern_says_stands_in_the_instructions(address: str) -> None:
    """The same in every size, but for the foot: no gauge is told, so that is not held to theirs."""
    slots, sock, wanted, heel_rows = PATTERNS[address]
    asked = request(slots, sock=sock)
    called = call(asked, "EU", "42, 44, 46")
    for size in ("42", "44", "46"):
        found = rounds(called, size)
        assert {part: found[part] for part in wanted} == wanted
        assert rows(called, "heel", size) == heel_rows


def test_a_toe_left_open_stops_2_in_before_its_end_in_a_set() -> None:
    """katyafrankel.com/2015/12/how-to-shape-star-toe-sock-knitting.html: 2 in or 5 cm. By our sum
    of `test_patterns` 47.5 rounds of a foot of 9 in at 9.6 an inch; within half a round."""
    heel = {"needles": 30, "left": 10}
    asked = {
        "units": "in",
        "cylinder": {"slots": 60},
        "fabric": {"stitches": "7.5 / in", "rounds": "9.6 / in"},
        "sock": {"heel": heel, "toe": {"kind": "left open"}, "length_ease": "0 %"},
    }
    called = call(asked, "length", ["8 in", "9 in", "10 in"])
    (told,) = rounds(called, "9 in")["foot"]
    assert abs(told - 47.5) <= 0.5
