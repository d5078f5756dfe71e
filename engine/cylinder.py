"""The machine: a cylinder with a fixed number of slots, one latch needle in each.

The slots fix how many stitches go round. They are even in number, 24 to 120 (common practice, no
published source).
"""

from __future__ import annotations

from dataclasses import dataclass

from engine.fields import Fields, Span
from engine.sources import SLOTS_FEWEST, SLOTS_MOST

SLOTS = Span("the slots of a cylinder", SLOTS_FEWEST, SLOTS_MOST)


@dataclass(frozen=True)
class Cylinder:
    """A cylinder with `slots` needles."""

    slots: int

    @property
    def half(self) -> int:
        """Return the needles of the front half, on which heel and toe are usually knitted."""
        return self.slots // 2


def read(fields: Fields) -> Cylinder | None:
    """Return the cylinder of a request, or None with its problem noted."""
    fields.only(("slots",))
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
    return Cylinder(slots)
