"""The machine: a cylinder with a fixed number of slots, one latch needle in each.

The slots fix how many stitches go round. They are even in number, 24 to 120 (common practice, no
published source).

A heel or toe begins with the yarn carrier at one end of its needles: at the left on most machines,
at the right on those that are cranked or threaded the other way (common practice, no published
source). That turns every row over and no count.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from engine.read.fields import Fields, Span
from engine.sources import SLOTS_FEWEST, SLOTS_MOST

Side = Literal["left", "right"]

SLOTS = Span("the slots of a cylinder", SLOTS_FEWEST, SLOTS_MOST)


@dataclass(frozen=True)
class Cylinder:
    """A cylinder with `slots` needles; at the `carrier`'s side a heel or toe begins."""

    slots: int
    carrier: Side = "left"

    @property
    def half(self) -> int:
        """Return the needles of the front half, on which heel and toe are usually knitted."""
        return self.slots // 2


def read(fields: Fields) -> Cylinder | None:
    """Return the cylinder of a request, or None with its problem noted."""
    fields.only(("slots", "carrier"))
    carrier = fields.choice("carrier", get_args(Side))
    slots = fields.count("slots", SLOTS)
    if slots is None:
        if fields.blank("slots"):
            fields.refuse(
                "slots", "The cylinder is missing.", "Count its slots, for example 60 or 72."
            )
        return None
    if slots % 2:
        fields.refuse(
            "slots",
            f"A cylinder has an even number of slots, and {slots} is odd.",
            f"Count again: is it {slots - 1} or {slots + 1}?",
            (str(slots - 1), str(slots + 1)),
        )
        return None
    return Cylinder(slots, "right" if carrier == "right" else "left")
