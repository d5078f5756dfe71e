"""The tension screw: the turns that it has from the foot's setting, and the stitch at each.

A knitter turns it by half a mark at a time, or a leg shows a line where its stitch changes (common
practice, no published source). Where the line over tension marks is sure, a turn is half a mark
near those tried, and its stitch is what the line foretells there: the counts are then of what the
machine will knit. Else a turn is a stitch firmer or looser by a small share, and finding its mark
is left to the knitter.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import count, takewhile
from math import exp, log
from typing import NamedTuple

from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES
from engine.fabric.swatch_line import Line
from engine.sources import TURN_MARK, TURN_STITCH


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
    """The screw under a fabric: `stops` are the settings it has, loosest mark or stitch first.

    That at `own` is the foot's. `marked` tells whether they are those of known marks.
    """

    cloth: Fabric
    stops: tuple[Setting, ...]
    own: int
    marked: bool

    def turns_for(self, tighter: float) -> float:
        """Return how many turns from the foot's setting a stitch is, as far as the stops reach.

        Turns are below 0 towards the first stop; between two stops there are parts of one.
        """
        mark, own = self.mark_for(tighter), self.cloth.mark
        if mark is None or own is None:
            turns = log(tighter) / TURN_STITCH
        else:
            turns = (mark - own) / TURN_MARK
        return min(max(turns, -self.own), len(self.stops) - 1 - self.own)

    def at(self, turns: int) -> Setting:
        """Return the setting so many turns from the foot's."""
        return self.stops[self.own + turns]

    def mark_for(self, tighter: float) -> float | None:
        """Return the mark of a stitch, however far from those tried, None where it is unknown."""
        line = self.cloth.line
        found = line.mark_for_stitches(self.cloth.stitches * tighter) if line else None
        return found[0] if found and self.marked else None


def read(cloth: Fabric, limits: Span) -> Screw:
    """Return the screw of a fabric, with the stops that lie within `limits`, the foot's among them.

    `limits` hold the foot's own.
    """
    line, own = cloth.line, cloth.mark
    marked = line is not None and own is not None and line.sure
    found = _by_stitch(limits)
    if line is not None and own is not None and line.sure:
        found = _by_mark(cloth.stitches, line, own, limits)
    down = _until_none(found, -1)
    return Screw(cloth, (*down[::-1], Setting(1.0), *_until_none(found, 1)), len(down), marked)


def _until_none(found: Callable[[int], Setting | None], step: int) -> tuple[Setting, ...]:
    """Return the settings of one turn, two and so on, up to the first that there is not."""
    settings = (found(turns) for turns in count(step, step))
    return tuple(one for one in takewhile(lambda one: one is not None, settings) if one)


def _by_mark(foot: float, line: Line, own: float, limits: Span) -> Callable[[int], Setting | None]:
    """Return the stop at so many half marks from the foot's mark, None where there is none."""
    reach = line.high - line.low
    near = Span(max(0.0, line.low - reach), line.high + reach)

    def found(turns: int) -> Setting | None:
        mark = own + turns * TURN_MARK
        if mark != near.clip(mark) or line.loop_at(mark)[0] <= 0:
            return None
        stitches, rounds, _ = line.at(mark)
        tighter = stitches / foot
        there = tighter == limits.clip(tighter) and stitches in STITCHES and rounds in ROUNDS
        return Setting(tighter, mark) if there else None

    return found


def _by_stitch(limits: Span) -> Callable[[int], Setting | None]:
    def found(turns: int) -> Setting | None:
        tighter = exp(turns * TURN_STITCH)
        return Setting(tighter) if tighter == limits.clip(tighter) else None

    return found
