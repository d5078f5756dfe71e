"""The foot rounds, for any list of sections: the one place where length becomes a count.

The sole of a sock is what each section lays along it (`Section.sole`, in rounds or rows): of a heel
usually its widening half, of a toe its narrowing one, and R foot rounds between them. What is
knitted on by hand (`Section.by_hand`, H mm) is no round of ours. With T the sock's foot in mm and c
rounds per mm

    T = (R + sum of the others) / c + H,    R = (T - H) c - (sum of the others),
    c = (R + others) / (T - H).

R is knitted to the nearest whole round, halves up; below 1 the foot is too short for the others.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from engine.sections.section import Section


class Others(NamedTuple):
    """What lies along the sole but the foot: `rounds` and rows, and mm knitted on `by_hand`."""

    rounds: int
    by_hand: float = 0.0


def others(sections: Iterable[Section]) -> Others:
    """Return what lies along the sole of all sections but the foot."""
    listed = [section for section in sections if section.part != "foot"]
    return Others(sum(one.sole for one in listed), sum(one.by_hand for one in listed))


def exact(length: float, per_mm: float, others: Others) -> float:
    """Return the foot rounds, unrounded, of a sock's foot of `length` mm at rounds `per_mm`."""
    return (length - others.by_hand) * per_mm - others.rounds


def per_mm(length: float, rounds: float, others: Others) -> float:
    """Return rounds per mm where `rounds` foot rounds make a sock's foot of `length` mm."""
    return (rounds + others.rounds) / (length - others.by_hand)


def length(per_mm: float, rounds: float, others: Others) -> float:
    """Return the length in mm of a sock's foot with so many foot rounds."""
    return (rounds + others.rounds) / per_mm + others.by_hand
