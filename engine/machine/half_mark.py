"""Where a needle of heel or toe stands on the cylinder, counted from the nearer half mark.

The half marks part the front half of a cylinder from its back half, one at the knitter's left and
one at her right (common practice, no published source). Of N slots the first to the right of the
left mark is slot 1, the last before the right mark slot N/2, and the back half goes on from there
round to slot N, the first to the left of the left mark.

A pocket of h needles stands in the middle of the front half. Let M = N/2 - h, which is below 0 for
a pocket that reaches behind the marks. At its left the pocket leaves (or overlaps by) M/2 slots
without the fraction, so that the odd one is at the right either way, and needle i has the place
p = i + trunc(M/2), counted from the left mark: slot p where p > 0, else slot N + p.

A needle of the front half is the p-th from the left mark and the (N/2 + 1 - p)-th from the right
one; the smaller number is told, and where they are equal it is the middle needle. Behind the marks
it is the (1 - p)-th before the left one or the (p - N/2)-th past the right one.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal, NamedTuple

from engine.say import messages as say
from engine.say.message import Message

WORDS = say.half_marks()
Side = Literal["before-left", "past-right", "left", "right", "middle"]


class Place(NamedTuple):
    """Where a needle stands: the `nth` from a half mark, at that side of it."""

    side: Side
    nth: int


def first_slot(slots: int, needles: int) -> int:
    """Return the slot (1 to `slots`) of needle 1 of a pocket on `needles`."""
    return _left_over(slots, needles) % slots + 1


def words(slots: int, needles: int, which: Iterable[int]) -> Message:
    """Return where needles of a pocket stand ("3rd needle from the right ..."), one or more."""
    found: dict[Side, list[Message]] = {}
    for needle in which:
        place = where(slots, needles, needle)
        found.setdefault(place.side, []).append(say.nth(n=place.nth))
    told = [say.needle_from_mark(where=side, nths=tuple(nths)) for side, nths in found.items()]
    return told[0] if len(told) == 1 else say.needles_from_marks(places=tuple(told))


def where(slots: int, needles: int, needle: int) -> Place:
    """Return where needle 1 to `needles` of a pocket stands."""
    half, place = slots // 2, needle + _left_over(slots, needles)
    from_right = half + 1 - place
    if place < 1:
        return Place("before-left", 1 - place)
    if from_right < 1:
        return Place("past-right", 1 - from_right)
    if place == from_right:
        return Place("middle", place)
    return Place("left" if place < from_right else "right", min(place, from_right))


def _left_over(slots: int, needles: int) -> int:
    """Return how many slots of the front half lie left of a pocket, below 0 where it overlaps."""
    return int((slots // 2 - needles) / 2)
