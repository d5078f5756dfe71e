"""How far heel and toe narrow: what a request says, what custom leaves, what suits a measure.

A pocket on h needles narrows to b and widens again (`pocket`). Its carrier is back where it began
only if h - b is even.

The girth of a heel hangs on h - b alone, so more needles deepen it only by letting more be held.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from engine.fabric.fabric import Fabric
from engine.read.fields import Fields, Span
from engine.sections.pocket import Pocket
from engine.sections.registry import POCKETS
from engine.sections.short_rows import ShortRows
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


def customary_left(needles: int, kind: type[Pocket] = ShortRows) -> int:
    """Return the needles left by custom: the legal number nearest a third."""
    return min(_legal(needles, kind), key=lambda left: (abs(left - needles * LEFT_SHARES[1]), left))


def left_for(
    needles: int, slots: int, fabric: Fabric, heel_girth: float, kind: type[Pocket] = ShortRows
) -> int:
    """Return the needles left in a heel for `heel_girth` (mm).

    As near to custom as is comfortable, so that heel and toe are alike while they can be, and one
    mm of tape never moves the heel by more than a step. Where nothing is comfortable, what comes
    nearest the wanted stretch. Between a sixth and a half of the needles: fewer make a pointed
    heel, more a shallow one.
    """

    def stretch(left: int) -> float:
        return heel_girth / kind("heel", needles, left).girth(slots, fabric)

    return _near_custom(needles, kind, stretch, (HEEL_STRETCH, HEEL_STRETCH_WANTED))


def _near_custom(
    needles: int,
    kind: type[Pocket],
    stretch: Callable[[int], float],
    felt: tuple[tuple[float, ...], float],
) -> int:
    """Return the needles left nearest to custom whose stretch is comfortable.

    `felt` are the bounds of what is, and the stretch that is wanted.
    """
    customary, legal = customary_left(needles, kind), sensible(needles, kind)
    bounds, wanted = felt
    comfortable = [left for left in legal if bounds[1] <= stretch(left) < bounds[2]]
    if comfortable:
        return min(comfortable, key=lambda left: abs(left - customary))
    return min(legal, key=lambda left: abs(1 / stretch(left) - 1 / wanted))


def needles_for(
    slots: int, usual: int, fabric: Fabric, heel_girth: float, kind: type[Pocket] = ShortRows
) -> int:
    """Return the heel needles for `heel_girth` (mm): the usual, unless no heel on them would do.

    Where even the deepest is tight, or even the shallowest loose, as few more or fewer as make it
    comfortable, or come nearest.
    """

    def stretch(needles: int, left: int) -> float:
        return heel_girth / kind("heel", needles, left).girth(slots, fabric)

    needles = usual
    most, least = int(slots * HEEL_SHARE_MOST), max(FEWEST_NEEDLES, slots * HEEL_SHARE_LEAST)
    while needles + 2 <= most and stretch(needles, sensible(needles, kind)[0]) > HEEL_STRETCH[2]:
        needles += 2
    while needles - 2 >= least and stretch(needles, sensible(needles, kind)[-1]) < HEEL_STRETCH[1]:
        needles -= 2
    return needles


def toe_left_for(
    needles: int, fabric: Fabric, breadth: float, kind: type[Pocket] = ShortRows
) -> int:
    """Return the needles left in a toe for toes of `breadth` mm, by the rule of `left_for`.

    The stretch is that of the toe halfway (our derivation).
    """

    def stretch(left: int) -> float:
        return breadth * TOE_ROUND_OVER_BREADTH / kind("toe", needles, left).halfway(fabric)

    return _near_custom(needles, kind, stretch, (BALL_STRETCH, BALL_STRETCH_WANTED))


def sensible(needles: int, kind: type[Pocket] = ShortRows) -> list[int]:
    """Return the legal numbers left between a sixth and a half of the needles.

    Never none: a third of the fewest needles is more than the step of two.
    """
    least, most = needles * LEFT_SHARES[0], needles * LEFT_SHARES[2]
    return [left for left in _legal(needles, kind) if least <= left <= most]


@lru_cache(maxsize=256)
def beside(pocket: Pocket, most: int) -> tuple[Pocket, ...]:
    """Return the pocket between up to `most` deeper and `most` shallower ones, deepest first."""
    legal = sensible(pocket.needles, type(pocket))
    near = [pocket.left + 2 * step for step in range(-most, most + 1)]
    return tuple(
        replace(pocket, left=left) for left in near if left == pocket.left or left in legal
    )


def _legal(needles: int, kind: type[Pocket] = ShortRows) -> range:
    least = FEWEST_LEFT + (needles - FEWEST_LEFT) % 2
    return range(least, needles - kind.fewest_lifted + 1, 2)


class Wish(NamedTuple):
    """What a request says of a pocket; `free` where its needles are ours to choose."""

    needles: int
    left: int | None
    free: bool
    kind: type[Pocket] = ShortRows


def free(slots: int) -> Wish:
    """Return the wish of whoever says nothing: half the slots, narrowed as we choose."""
    return Wish(slots // 2, None, True)


def read(fields: Fields, slots: int, usual: int) -> Wish | None:
    """Return the pocket of a request, or None with its problem noted.

    `usual` is how many needles it has when none are given.
    """
    fields.only(("kind", "needles", "left"))
    noted = len(fields.problems)
    kind = POCKETS[fields.choice("kind", POCKETS) or next(iter(POCKETS))]
    most = int(slots * HEEL_SHARE_MOST)
    needles = fields.count("needles", Span("a heel or toe on this cylinder", FEWEST_NEEDLES, most))
    left = fields.count("left", Span("needles left in work", 0, most))
    if len(fields.problems) > noted:
        return None
    free = needles is None and left is None
    needles = usual if needles is None else needles
    if left is None:
        return Wish(needles, None, free, kind)
    if not FEWEST_LEFT <= left < needles:
        nothing = "narrow" if left >= needles else "knit on"
        fields.refuse(
            "left",
            f"{left} left of {needles} leaves nothing to {nothing}.",
            f"Usual is about a third: {customary_left(needles, kind)}.",
            (str(customary_left(needles, kind)),),
        )
        return None
    if (needles - left) % 2:
        choices = [n for n in (left - 1, left + 1) if n in _legal(needles, kind)]
        fields.refuse(
            "left",
            f"From {needles} needles down to {left} is an odd number of rows, so the carrier would "
            "stand on the wrong side when the held needles come back.",
            f"Leave {' or '.join(map(str, choices))}.",
            tuple(map(str, choices)),
        )
        return None
    if left > needles - kind.fewest_lifted:
        most = needles - kind.fewest_lifted
        fields.refuse(
            "left",
            f"Lifting two needles in rows 1 and 2 leaves fewer than {left} of {needles}.",
            f"Leave {most} or fewer, or lift one needle a row.",
            (str(most),),
        )
        return None
    return Wish(needles, left, free, kind)
