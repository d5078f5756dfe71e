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
from engine.say import messages as say
from engine.sources import SLOTS_FEWEST, SLOTS_MOST

Side = Literal["left", "right"]
Weights = Literal["one", "claws"]

SLOTS = Span(say.cylinder_slots(), SLOTS_FEWEST, SLOTS_MOST)


@dataclass(frozen=True)
class Cylinder:
    """A cylinder with `slots` needles; at the `carrier`'s side a heel or toe begins.

    Whether there is a heel `spring` or a `ribber`, and a reinforcing `thread` is run along, is None
    where nobody said; `weights` likewise: one that is moved to heel and toe, or claws for these.
    """

    slots: int
    carrier: Side = "left"
    spring: bool | None = None
    thread: bool | None = None
    ribber: bool | None = None
    weights: Weights | None = None

    @property
    def claws(self) -> Literal["claws", "unknown"]:
        """Return whether heel and toe are known to have weights of their own."""
        return "claws" if self.weights == "claws" else "unknown"

    @property
    def half(self) -> int:
        """Return the needles of the front half, on which heel and toe are usually knitted."""
        return self.slots // 2


def read(fields: Fields) -> Cylinder | None:
    """Return the cylinder of a request, or None with its problem noted."""
    fields.only(("slots", "carrier", "spring", "thread", "ribber", "weights"))
    carrier = fields.choice("carrier", get_args(Side))
    spring, thread, ribber = (_has(fields, name) for name in ("spring", "thread", "ribber"))
    told = fields.choice("weights", get_args(Weights))
    weights = next((one for one in get_args(Weights) if one == told), None)
    slots = fields.count("slots", SLOTS)
    if slots is None:
        if fields.blank("slots"):
            fields.refuse("slots", say.cylinder_missing(), say.count_the_slots())
        return None
    if slots % 2:
        around = (str(slots - 1), str(slots + 1))
        fields.refuse(
            "slots", say.slots_are_odd(slots=slots), say.count_again(slots=around), around
        )
        return None
    side: Side = "right" if carrier == "right" else "left"
    return Cylinder(slots, side, spring, thread, ribber, weights)


def _has(fields: Fields, name: str) -> bool | None:
    """Return a yes or no, None where it is left out."""
    told = fields.choice(name, ("yes", "no"))
    return None if told is None else told == "yes"
