"""The outline of a sock seen from the side: where its parts lie, and the pen that draws on it.

One unit is 1 mm of the relaxed sock lying flat; x runs to the right, y downwards.
"""

from __future__ import annotations

from engine import sources
from engine.read import units
from engine.sock.sock import Sock

_MARGIN_LEFT, _MARGIN_TOP, _MARGIN_RIGHT = 52.0, 12.0, 14.0
_BIG, _SMALL = 0.09, 0.05  # sizes of type over the length of the sock's foot
_DIGITS_WIDE = 2.2  # what a count needs beside it, in sizes of type
LETTER = 0.6  # the widest usual letter, in sizes of type
_LONGEST = 11  # letters of the longest word of a verdict
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
        self.heel_end = self.back + sock.heel.each_way / c
        self.toe_start = self.heel_end + sock.foot_rounds / c
        self.tip = self.toe_start + sock.toe.each_way / c
        # In a very short sock the toe's upper edge still starts in front of the leg.
        self.toe_top = max(self.toe_start, self.front + 1)
        # A sock with hardly a leg is drawn a little low at the instep, to stay below its cuff.
        self.instep = max(min(self.sole - self.width, self.ankle), self.fold)
        self.half = (self.sole + self.instep) / 2
        self.middle = ((self.back + self.front) / 2, self.half)
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
