"""Heel and toe: short-row pockets on part of the cylinder.

Needles 1 to h stand from left to right as the knitter faces them. Narrowing: each row knits all
needles in work, and the one that knitted last is lifted into hold, until b are left. Widening:
before each row the innermost held needle on the side away from the yarn carrier comes back, and the
row knits to it, until all h have knitted again. Each half has h - b rows.

Rows alternate in direction, so half of the held needles lie on each side only if h - b is even;
were it odd, the first needle to come back would be on the side where the carrier stands, out of its
reach.

The girth of the fabric round heel and ankle bend, over the pocket, with w stitches and c rounds per
mm and N needles in all: the instep (N - h)/w, the needles left b/w, and the two slanted seams, each
((h - b)/2w across, (h - b)/c along): (N - h)/w + b/w + 2 sqrt(((h - b)/2w)^2 + ((h - b)/c)^2).
It hangs on h - b alone, so more needles deepen a heel only by letting more be held.

A toe is two layers of fabric, so halfway along it the sock is 2 x ((h + b)/2)/w = (h + b)/w round.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from math import hypot
from typing import Literal, NamedTuple

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Side
from engine.read.fields import Fields, Span
from engine.sources import (
    BALL_STRETCH,
    BALL_STRETCH_WANTED,
    HEEL_SHARE_LEAST,
    HEEL_SHARE_MOST,
    HEEL_STRETCH,
    HEEL_STRETCH_WANTED,
    LEFT_SHARES,
    TOE_ROUND_OVER_BREADTH,
)

FEWEST_NEEDLES, FEWEST_LEFT = 8, 2
AS_SET = "as you set it"


class Row(NamedTuple):
    """One row of a pocket; needles are numbered from 1 at the left."""

    number: int
    direction: Literal["right", "left"]
    back: int | None
    first: int
    last: int
    hold: int | None
    in_work: int

    @property
    def stitches(self) -> int:
        """Return the needles that knit in this row."""
        return abs(self.last - self.first) + 1

    def mirrored(self, needles: int) -> Row:
        """Return the same row of a pocket on `needles` with left and right exchanged."""

        def over(needle: int | None) -> int | None:
            return None if needle is None else needles + 1 - needle

        return self._replace(
            direction="left" if self.direction == "right" else "right",
            back=over(self.back),
            first=needles + 1 - self.first,
            last=needles + 1 - self.last,
            hold=over(self.hold),
        )


@dataclass(frozen=True)
class Pocket:
    """A heel or toe on `needles`, narrowed to `left`; legal by construction of `read`."""

    needles: int
    left: int

    @property
    def each_way(self) -> int:
        """Return the rows of one half."""
        return self.needles - self.left

    @property
    def rows(self) -> int:
        """Return the rows of both halves."""
        return 2 * self.each_way

    @property
    def stitches(self) -> int:
        """Return the stitches of the pocket: needles down to left + 1, then left + 1 to needles."""
        return (self.needles + self.left + 1) * self.each_way

    def walk(self, carrier: Side = "left") -> tuple[Row, ...]:
        """Return every row in order; the `carrier` stands at that side before the first."""
        rows = _walk(self.needles, self.left)
        return rows if carrier == "left" else tuple(row.mirrored(self.needles) for row in rows)

    def halfway(self, fabric: Fabric) -> float:
        """Return the girth in mm of a toe, halfway along."""
        return (self.needles + self.left) / fabric.stitches

    def girth(self, slots: int, fabric: Fabric) -> float:
        """Return the sock's own girth in mm round heel and ankle bend."""
        w, c = fabric.stitches, fabric.rounds
        across, along = self.each_way / (2 * w), self.each_way / c
        return (slots - self.needles + self.left) / w + 2 * hypot(across, along)


@lru_cache(maxsize=256)
def _walk(needles: int, left: int) -> tuple[Row, ...]:
    rows, each_way = list[Row](), needles - left
    low, high = 1, needles
    for number in range(1, 2 * each_way + 1):
        right, narrowing = number % 2 == 1, number <= each_way
        if not narrowing:  # the innermost held needle of the far side comes back
            low, high = (low, high + 1) if right else (low - 1, high)
        first, last = (low, high) if right else (high, low)
        if narrowing:
            low, high = (low, high - 1) if right else (low + 1, high)
        rows.append(
            Row(
                number=number,
                direction="right" if right else "left",
                back=None if narrowing else last,
                first=first,
                last=last,
                hold=last if narrowing else None,
                in_work=high - low + 1,
            )
        )
    return tuple(rows)


def customary_left(needles: int) -> int:
    """Return the needles left by custom: the legal number nearest a third."""
    return min(_legal(needles), key=lambda left: (abs(left - needles * LEFT_SHARES[1]), left))


def left_for(needles: int, slots: int, fabric: Fabric, heel_girth: float) -> int:
    """Return the needles left in a heel for `heel_girth` (mm).

    As near to custom as is comfortable, so that heel and toe are alike while they can be, and one
    mm of tape never moves the heel by more than a step. Where nothing is comfortable, what comes
    nearest the wanted stretch. Between a sixth and a half of the needles: fewer make a pointed
    heel, more a shallow one.
    """

    def stretch(left: int) -> float:
        return heel_girth / Pocket(needles, left).girth(slots, fabric)

    return _near_custom(needles, stretch, HEEL_STRETCH, HEEL_STRETCH_WANTED)


def _near_custom(
    needles: int, stretch: Callable[[int], float], bounds: tuple[float, ...], wanted: float
) -> int:
    """Return the needles left nearest to custom whose stretch is comfortable, by `bounds`."""
    customary, legal = customary_left(needles), sensible(needles)
    comfortable = [left for left in legal if bounds[1] <= stretch(left) < bounds[2]]
    if comfortable:
        return min(comfortable, key=lambda left: abs(left - customary))
    return min(legal, key=lambda left: abs(1 / stretch(left) - 1 / wanted))


def needles_for(slots: int, usual: int, fabric: Fabric, heel_girth: float) -> int:
    """Return the heel needles for `heel_girth` (mm): the usual, unless no heel on them would do.

    Where even the deepest is tight, or even the shallowest loose, as few more or fewer as make it
    comfortable, or come nearest.
    """

    def stretch(needles: int, left: int) -> float:
        return heel_girth / Pocket(needles, left).girth(slots, fabric)

    needles = usual
    most, least = int(slots * HEEL_SHARE_MOST), max(FEWEST_NEEDLES, slots * HEEL_SHARE_LEAST)
    while needles + 2 <= most and stretch(needles, sensible(needles)[0]) > HEEL_STRETCH[2]:
        needles += 2
    while needles - 2 >= least and stretch(needles, sensible(needles)[-1]) < HEEL_STRETCH[1]:
        needles -= 2
    return needles


def toe_left_for(needles: int, fabric: Fabric, breadth: float) -> int:
    """Return the needles left in a toe for toes of `breadth` mm, by the rule of `left_for`.

    The stretch is that of the toe halfway (our derivation).
    """

    def stretch(left: int) -> float:
        return breadth * TOE_ROUND_OVER_BREADTH / Pocket(needles, left).halfway(fabric)

    return _near_custom(needles, stretch, BALL_STRETCH, BALL_STRETCH_WANTED)


def sensible(needles: int) -> list[int]:
    """Return the legal numbers left between a sixth and a half of the needles.

    Never none: a third of the fewest needles is more than the step of two.
    """
    least, most = needles * LEFT_SHARES[0], needles * LEFT_SHARES[2]
    return [left for left in _legal(needles) if least <= left <= most]


def beside(pocket: Pocket, most: int) -> list[Pocket]:
    """Return the pocket between up to `most` deeper and `most` shallower ones, deepest first."""
    legal = sensible(pocket.needles)
    near = [pocket.left + 2 * step for step in range(-most, most + 1)]
    return [Pocket(pocket.needles, left) for left in near if left == pocket.left or left in legal]


def _legal(needles: int) -> range:
    return range(FEWEST_LEFT + (needles - FEWEST_LEFT) % 2, needles - 1, 2)


class Wish(NamedTuple):
    """What a request says of a pocket; `free` where its needles are ours to choose."""

    needles: int
    left: int | None
    free: bool


def read(fields: Fields, slots: int, usual: int) -> Wish | None:
    """Return the pocket of a request, or None with its problem noted.

    `usual` is how many needles it has when none are given.
    """
    fields.only(("needles", "left"))
    noted = len(fields.problems)
    most = int(slots * HEEL_SHARE_MOST)
    needles = fields.count("needles", Span("a heel or toe on this cylinder", FEWEST_NEEDLES, most))
    left = fields.count("left", Span("needles left in work", 0, most))
    if len(fields.problems) > noted:
        return None
    free = needles is None and left is None
    needles = usual if needles is None else needles
    if left is None:
        return Wish(needles, None, free)
    if not FEWEST_LEFT <= left < needles:
        nothing = "narrow" if left >= needles else "knit on"
        fields.refuse(
            "left",
            f"{left} left of {needles} leaves nothing to {nothing}.",
            f"Usual is about a third: {customary_left(needles)}.",
            (str(customary_left(needles)),),
        )
        return None
    if (needles - left) % 2:
        choices = [n for n in (left - 1, left + 1) if n in _legal(needles)]
        fields.refuse(
            "left",
            f"From {needles} needles down to {left} is an odd number of rows, so the carrier would "
            "stand on the wrong side when the held needles come back.",
            f"Leave {' or '.join(map(str, choices))}.",
            tuple(map(str, choices)),
        )
        return None
    return Wish(needles, left, free)
