"""Yarn that stripes by itself: rounds to one repeat, and how sock two starts in step with sock one.

A round takes slots x loop, so a repeat of P mm makes P / (slots x loop) rounds of plain tube; heel
and toe knit on part of the needles and move the stripes on by their own stitches. Sock one takes L
mm from its first stitch to its last, L / P repeats; sock two starts at the same color after
(-L) mod P more is wound off.

How sure: an error of the share r in L / P puts the start out by r x L, and beyond half a repeat a
reckoned start is no better than any other. r is the loop's error beside that of the repeat's
length; where rounds of a repeat were counted on sock one the loop cancels and r is the counting's.
All of it is derived here; the errors are common practice, no published source.
"""

from __future__ import annotations

from math import hypot, log
from typing import NamedTuple

from engine import sources


class Stripes(NamedTuple):
    """Lengths in mm: the repeat, what to wind off, and its 80 % reach either way."""

    repeat: float
    rounds: float
    repeats: float
    wind_off: float
    wind_rounds: float
    reach: float
    agree: bool

    @property
    def by_eye(self) -> bool:
        """Tell whether the reckoning says nothing: it reaches beyond half a repeat."""
        return self.reach > self.repeat / 2


def work_out(
    used: float, around: float, loop_sd: float, told: float | None, counted: float | None
) -> Stripes | None:
    """Return the stripes, or None where no repeat is known.

    `used` is sock one's yarn and `around` that of one round in mm; the repeat is `told` in mm, or
    `counted` in rounds on sock one. Of the two the surer is taken, and `agree` says whether both
    can be right.
    """
    ways = []
    if told is not None:
        ways.append((hypot(loop_sd, sources.REPEAT_EVEN), told))
    if counted is not None:
        ways.append((hypot(sources.ROUND_SEEN / counted, sources.REPEAT_EVEN), counted * around))
    if not ways:
        return None
    sd, repeat = min(ways)
    apart = abs(log(ways[0][1] / ways[-1][1]))
    wind_off = -used % repeat
    return Stripes(
        repeat,
        repeat / around,
        used / repeat,
        wind_off,
        wind_off / around,
        sources.TO_80_PERCENT * sd * used,
        apart <= sources.FAR_APART * hypot(ways[0][0], ways[-1][0]),
    )
