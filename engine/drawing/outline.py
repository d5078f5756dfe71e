"""The outline of a sock seen from the side: where its parts lie, and the pen that draws on it.

One unit is 1 mm of the relaxed sock lying flat; x runs to the right, y downwards.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import assert_never

from engine import sources
from engine.read import units
from engine.sections.section import Part
from engine.sock.sock import Sock

_MARGIN_LEFT, _MARGIN_TOP, _MARGIN_RIGHT = 52.0, 12.0, 14.0
_BIG, _SMALL = 0.09, 0.05  # sizes of type over the length of the sock's foot
_DIGITS_WIDE = 2.2  # what a count needs beside it, in sizes of type
LETTER = 0.6  # the widest usual letter, in sizes of type
_LONGEST = 12  # letters of the longest word of a verdict, with its mark
CLEAR = 6.0  # half a band and the air beside it


def n(value: float) -> str:
    """Return a coordinate in mm, to 0.1 mm."""
    return units.number(value, 1)


def path(kind: str, d: str) -> str:
    """Return a path of a class."""
    return f'<path class="{kind}" d="{d}"/>'


def text(kind: str, x: float, y: float, words: str, size: float, anchor: str = "middle") -> str:
    """Return words of a class at a place, all in mm."""
    return (
        f'<text class="{kind}" x="{n(x)}" y="{n(y)}" font-size="{n(size)}" '
        f'text-anchor="{anchor}">{words}</text>'
    )


Box = Callable[[float, float], tuple[float, float]]  # from a section's own box to mm


class Outline:
    """Where the parts of a sock lie: x to the right, y downwards, the sole on y = `sole`."""

    def __init__(self, sock: Sock, lowered: float = 0.0) -> None:
        """Place every part of `sock`, all of it `lowered` to leave room above."""
        c = sock.fabric.rounds
        self.width = sock.tube / 2
        self.top = _MARGIN_TOP + lowered
        self.fold = self.top + sock.cuff_depth
        self.ankle = self.fold + sock.leg_length
        self.sole = self.ankle + sock.heel_height
        self.back = _MARGIN_LEFT
        self.front = self.back + self.width
        heel, toe = sock.pockets["heel"], sock.pockets["toe"]
        self.heel_end = self.back + heel.sole / c
        self.toe_start = self.heel_end + sock.foot_rounds / c
        self.tip = self.toe_start + toe.sole / c
        # In a very short sock the toe's upper edge still starts in front of the leg.
        self.toe_top = max(self.toe_start, self.front + 1)
        # A sock with hardly a leg is drawn a little low at the instep, to stay below its cuff.
        self.instep = max(min(self.sole - self.width, self.ankle), self.fold)
        self.half = (self.sole + self.instep) / 2
        self.middle = ((self.back + self.front) / 2, self.half)
        self.corner = min(self.heel_end - self.back, self.sole - self.ankle) * 0.45
        long = self.tip - self.back
        self.big, self.small = (share * long for share in (_BIG, _SMALL))
        self.ball = max(
            min(sources.BALL_OVER_FOOT * long, self.toe_start - self.back - CLEAR) + self.back,
            self.heel_end,
        )
        # In a foot of hardly a round its count stands above the instep instead.
        self.foot_narrow = self.ball - self.middle[0] < _DIGITS_WIDE * self.big
        self.right = max(
            self.tip + _MARGIN_RIGHT,
            self.front + 2 * CLEAR + _LONGEST * LETTER * self.small + 2,
        )

    def box(self, part: Part) -> Box | None:
        """Return where a section of a part is drawn, None where it is not."""
        match part:
            case "cuff":
                return self._tube(self.top, self.fold)
            case "leg":
                return self._tube(self.fold, self.ankle)
            case "heel":
                outer = (self.back + self.corner * 0.3, self.sole - self.corner * 0.3)
                return _along(outer, self.middle)
            case "foot":
                return _lying((self.heel_end, self.toe_start), (self.instep, self.sole))
            case "toe":
                inner = ((self.toe_start + self.toe_top) / 2, self.half)
                return _along((self.tip, self.half), inner)
            case "waste" | "end" | "finish":
                return None
            case _:
                assert_never(part)

    def _tube(self, top: float, end: float) -> Box:
        return _lying((self.back, self.front), (top, end))


def _lying(across: tuple[float, float], down: tuple[float, float]) -> Box:
    """Return an upright box."""
    (left, right), (top, end) = across, down
    return lambda x, y: (left + (right - left) * x, top + (end - top) * y)


def _along(start: tuple[float, float], end: tuple[float, float]) -> Box:
    """Return the box along a seam; what is drawn there lies on it."""
    across, down = end[0] - start[0], end[1] - start[1]
    return lambda x, _: (start[0] + across * x, start[1] + down * x)
