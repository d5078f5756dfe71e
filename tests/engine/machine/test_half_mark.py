"""Where a needle stands: the words, read back as a slot, are held against a count of the slots."""

from __future__ import annotations

import re

import pytest

from engine.machine.half_mark import first_slot, words
from engine.say import messages as say
from engine.say.aloud import text
from tests.engine.needle_by_needle import slot_told

SEEN_FROM_BEHIND = {"left": "right", "right": "left", "before": "past", "past": "before"}


def where(slots: int, needles: int, *which: int) -> str:
    return text(words(slots, needles, which))


def mirrored(told: str) -> str:
    return re.sub("left|right|before|past", lambda word: SEEN_FROM_BEHIND[word[0]], told)


@pytest.mark.parametrize("slots", range(24, 121, 2))
def test_the_words_lead_to_every_needle_of_every_pocket(slots: int) -> None:
    """From needle 1 on each stands in the next slot; the nearer mark is counted from."""
    half = slots // 2
    for needles in range(8, slots * 2 // 3 + 1):
        told = [where(slots, needles, needle) for needle in range(1, needles + 1)]
        assert len(set(told)) == needles
        first = first_slot(slots, needles)
        expected = [(first - 1 + step) % slots + 1 for step in range(needles)]
        assert [slot_told(slots, one) for one in told] == expected
        assert all(int(re.findall(r"\d+", one)[0]) <= (half + 1) // 2 for one in told)


@pytest.mark.parametrize("slots", range(24, 121, 2))
def test_a_pocket_stands_in_the_middle_and_the_odd_one_at_the_right(slots: int) -> None:
    half = slots // 2
    for needles in range(8, slots * 2 // 3 + 1):
        places = [first_slot(slots, needles)]
        if places[0] > half:  # behind the left mark
            places[0] -= slots
        left, right = places[0] - 1, half - (places[0] + needles - 1)
        assert left + right == half - needles
        assert abs(right) - abs(left) == (half - needles) % 2
        if left == right:
            told = [where(slots, needles, needle) for needle in range(1, needles + 1)]
            assert [mirrored(one) for one in told] == told[::-1]


@pytest.mark.parametrize(
    ("slots", "needles", "needle", "told"),
    [
        (60, 30, 1, "1st needle from the left half mark"),
        (60, 30, 15, "15th needle from the left half mark"),
        (60, 30, 16, "15th needle from the right half mark"),
        (60, 30, 28, "3rd needle from the right half mark"),
        (54, 27, 14, "middle needle, 14th from both half marks"),
        (60, 25, 1, "3rd needle from the left half mark"),
        (60, 25, 25, "4th needle from the right half mark"),
        (60, 40, 1, "5th needle before the left half mark"),
        (60, 40, 40, "5th needle past the right half mark"),
        (60, 33, 1, "1st needle before the left half mark"),
        (60, 33, 33, "2nd needle past the right half mark"),
        (120, 60, 38, "23rd needle from the right half mark"),
    ],
)
def test_by_hand(slots: int, needles: int, needle: int, told: str) -> None:
    assert where(slots, needles, needle) == told


def test_two_at_one_mark_are_told_together() -> None:
    assert where(60, 30, 29, 30) == "2nd and 1st needle from the right half mark"
    both = where(60, 30, 15, 16)
    assert both.split(" and ") == [where(60, 30, 15), where(60, 30, 16)]


def test_ordinals() -> None:
    """As English has them up to the most needles from a mark, 60 of 120 slots."""
    told = [text(say.nth(n=n)) for n in range(1, 61)]
    ends = {1: "st", 2: "nd", 3: "rd"}
    teens = range(11, 14)
    assert told == [f"{n}{'th' if n in teens else ends.get(n % 10, 'th')}" for n in range(1, 61)]
