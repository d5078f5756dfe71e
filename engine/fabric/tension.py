"""The tension screw: what a band of the leg can be set to.

Where the line over tension marks is sure, a band is set to a quarter mark near those tried, and its
stitch is what the line foretells there: the counts are then of what the machine will knit. Else any
stitch will do, and finding its mark is left to the knitter.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import NamedTuple

from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES

_STEP = 4  # stops to a mark: quarters can be told apart (common practice, no published source)
_AS_THE_FOOT = 0.015  # a change this small is not worth turning the screw for (our choice)


class Setting(NamedTuple):
    """A stitch as stitches per length over the foot's; `mark` None if unknown or the foot's own."""

    tighter: float
    mark: float | None = None


class Span(NamedTuple):
    """How loose and how tight a band may be, as `Setting.tighter`."""

    low: float
    high: float

    def clip(self, tighter: float) -> float:
        """Return the nearest that may be."""
        return min(max(tighter, self.low), self.high)


@dataclass(frozen=True)
class Screw:
    """The screw under a fabric: `stops` are the settings it has, none where any stitch will do."""

    cloth: Fabric
    stops: tuple[Setting, ...] = ()

    def nearest(self, tighter: float) -> Setting:
        """Return what to set for a stitch; the foot's own setting where that is as good."""
        if abs(tighter - 1) < _AS_THE_FOOT:
            return Setting(1.0)
        wanted, own = self.mark_for(tighter), self.cloth.mark
        if wanted is None or own is None:
            return Setting(tighter)

        def away(stop: Setting) -> float:
            return abs((own if stop.mark is None else stop.mark) - wanted)

        return min(self.stops, key=away)

    def mark_for(self, tighter: float) -> float | None:
        """Return the mark of a stitch, however far from those tried, None where it is unknown."""
        line = self.cloth.line
        found = line.mark_for_stitches(self.cloth.stitches * tighter) if line else None
        return found[0] if found and self.stops else None


def read(cloth: Fabric, limits: Span) -> Screw:
    """Return the screw of a fabric, with the stops that lie within `limits`."""
    line, own = cloth.line, cloth.mark
    if line is None or own is None or not line.sure:
        return Screw(cloth)
    reach = line.high - line.low
    first = ceil(max(0.0, line.low - reach) * _STEP)
    stops = [Setting(1.0)]
    for mark in (at / _STEP for at in range(first, floor((line.high + reach) * _STEP) + 1)):
        if mark == own or line.loop_at(mark)[0] <= 0:
            continue
        stitches, rounds, _ = line.at(mark)
        tighter = stitches / cloth.stitches
        if tighter == limits.clip(tighter) and stitches in STITCHES and rounds in ROUNDS:
            stops.append(Setting(tighter, mark))
    return Screw(cloth, tuple(stops))
