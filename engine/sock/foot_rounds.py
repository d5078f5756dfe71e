"""The foot rounds, for any list of sections: the one place where length becomes a count.

The sole of a sock is what each section lays along it (`Section.sole`, in rounds or rows): of a heel
usually its widening half, of a toe its narrowing one, and R foot rounds between them. With T the
sock's foot in mm and c rounds per mm

    T = (R + sum of the others) / c,    R = T c - (sum of the others),    c = (R + others) / T.

R is knitted to the nearest whole round, halves up; below 1 the foot is too short for the others.
"""

from __future__ import annotations

from collections.abc import Iterable

from engine.sections.section import Section


def others(sections: Iterable[Section]) -> int:
    """Return the rounds and rows along the sole of all sections but the foot."""
    return sum(section.sole for section in sections if section.part != "foot")


def exact(length: float, per_mm: float, sections: Iterable[Section]) -> float:
    """Return the foot rounds, unrounded, of a sock's foot of `length` mm at rounds `per_mm`."""
    return length * per_mm - others(sections)


def per_mm(length: float, rounds: float, sections: Iterable[Section]) -> float:
    """Return rounds per mm where `rounds` foot rounds make a sock's foot of `length` mm."""
    return (rounds + others(sections)) / length


def length(per_mm: float, rounds: float, sections: Iterable[Section]) -> float:
    """Return the length in mm of a sock's foot with so many foot rounds."""
    return (rounds + others(sections)) / per_mm
