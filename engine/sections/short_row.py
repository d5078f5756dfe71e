"""How far heel and toe narrow: what a request says, what custom leaves, what suits a measure.

A pocket on h needles narrows to b and widens again (`pocket`). Its carrier is back where it began
only if h - b is even.

The girth of a heel hangs on h - b alone, so more needles deepen it only by letting more be held.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

from engine.fabric.fabric import Fabric
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.sections.no_heel import NoHeel
from engine.sections.pocket import Pocket, PocketPart
from engine.sections.registry import BARE_TOES, HEELS, NO_HEEL, POCKETS
from engine.sections.short_rows import ShortRows
from engine.sections.toe import BareToe
from engine.sections.tube import BEFORE_TOE
from engine.sources import (
    BALL_STRETCH,
    BALL_STRETCH_WANTED,
    FLAP_ROWS_MOST,
    HEEL_SHARE_LEAST,
    HEEL_SHARE_MOST,
    HEEL_STRETCH,
    HEEL_STRETCH_WANTED,
    LEFT_SHARES,
    TOE_ROUND_OVER_BREADTH,
)

FEWEST_NEEDLES, FEWEST_LEFT = 8, 2
_FLAP = Span(say.counted_on_a_sock(what="flap"), 2, float(FLAP_ROWS_MOST))
AS_SET = say.pocket_why(why="told", usual=0)


@lru_cache(maxsize=1024)
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


def flap_for(heel: Pocket, slots: int, fabric: Fabric, heel_girth: float) -> Pocket:
    """Return a heel that has a flap with the rows for `heel_girth` (mm).

    As few as make it comfortable; where none do, those that come nearest.
    """
    tried = [replace(heel, flap=rows) for rows in range(int(_FLAP.low), int(_FLAP.high) + 1, 2)]
    bound = HEEL_STRETCH[2]
    easy = (one for one in tried if heel_girth / one.girth(slots, fabric) < bound)
    return next(easy, tried[-1])


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


Bare = BareToe | NoHeel  # what takes the place of a pocket


class Wish(NamedTuple):
    """What a request says of heel or toe; `free` where its needles are ours to choose.

    `bare` is a toe that is no pocket, or no heel at all; `flap` the rows of a heel's flap,
    `before` the plain rounds before a toe, in its yarn.
    """

    needles: int
    left: int | None
    free: bool
    kind: type[Pocket] = ShortRows
    bare: Bare | None = None
    flap: int | None = None
    before: int = 0

    def pocket(self, part: PocketPart, needles: int, left: int) -> Pocket:
        """Return the pocket of this kind, with the flap that was told."""
        made = self.kind(part, needles, left)
        return made if self.flap is None else replace(made, flap=self.flap)


def free(slots: int, kind: type[Pocket] = ShortRows) -> Wish:
    """Return the wish of whoever tells a kind at most: half the slots, narrowed as we choose."""
    return Wish(slots // 2, None, True, kind)


def alike(made: Pocket | Bare) -> Wish:
    """Return the wish for another of the same kind, its needles left to us."""
    if isinstance(made, Pocket):
        return Wish(made.needles, None, True, type(made), flap=made.flap or None)
    return Wish(FEWEST_NEEDLES, None, True, bare=made)


def read_heel(fields: Fields, slots: int, usual: int) -> Wish | None:
    """Return the heel of a request, or None with its problem noted, as `read` does."""
    return read(fields, slots, usual, HEELS, NO_HEEL)


def read_toe(fields: Fields, slots: int, usual: int) -> Wish | None:
    """Return the toe of a request, or None with its problem noted, as `read` does."""
    rounds = fields.count("plain", BEFORE_TOE) or 0
    wish = read(fields, slots, usual, POCKETS, BARE_TOES)
    return wish and wish._replace(before=rounds)


def read(
    fields: Fields,
    slots: int,
    usual: int,
    pockets: Mapping[str, type[Pocket]] = POCKETS,
    others: Mapping[str, Bare] = MappingProxyType({}),
) -> Wish | None:
    """Return the pocket of a request, or None with its problem noted.

    `usual` is how many needles it has when none are given; `pockets` are the kinds there are, and
    `others` what may be asked for in their place.
    """
    flaps = any(kind.flap for kind in pockets.values())
    fields.only(("kind", "needles", "left", "flap" if flaps else "plain"))
    noted = len(fields.problems)
    named = fields.choice("kind", (*pockets, *others)) or next(iter(pockets))
    flap = _read_flap(fields, pockets.get(named)) if flaps else None
    if named in others:
        return _bare(fields, others[named], usual)
    kind = pockets[named]
    most = int(slots * HEEL_SHARE_MOST)
    needles = fields.count(
        "needles", Span(say.counted_on_a_sock(what="needles"), FEWEST_NEEDLES, most)
    )
    left = fields.count("left", Span(say.counted_on_a_sock(what="left"), 0, most))
    if len(fields.problems) > noted:
        return None
    free = needles is None and left is None
    needles = usual if needles is None else needles
    if left is None:
        return Wish(needles, None, free, kind, flap=flap)
    if not FEWEST_LEFT <= left < needles:
        third = customary_left(needles, kind)
        fields.refuse(
            "left",
            say.nothing_to_narrow(
                what="narrow" if left >= needles else "knit", left=left, needles=needles
            ),
            say.usual_third(left=third),
            (str(third),),
        )
        return None
    if (needles - left) % 2:
        choices = tuple(str(n) for n in (left - 1, left + 1) if n in _legal(needles, kind))
        odd = say.odd_rows(needles=needles, left=left)
        fields.refuse("left", odd, say.leave_either(left=choices), choices)
        return None
    if left > needles - kind.fewest_lifted:
        most = needles - kind.fewest_lifted
        fields.refuse(
            "left",
            say.two_at_first_leaves(left=left, needles=needles),
            say.fewer_or_one_a_row(left=most),
            (str(most),),
        )
        return None
    return Wish(needles, left, free, kind, flap=flap)


def _read_flap(fields: Fields, kind: type[Pocket] | None) -> int | None:
    """Return the rows of a flap; odd ones, and those of what has none, are refused."""
    rows = fields.count("flap", _FLAP)
    if rows is None:
        return None
    if kind is None or not kind.flap:
        fields.refuse("flap", say.no_flap(), say.empty_or_flap())
    elif rows % 2:
        around = (str(rows - 1), str(rows + 1))
        fields.refuse("flap", say.odd_flap(rows=rows), say.knit_rows(rows=around), around)
    return rows


def _bare(fields: Fields, bare: Bare, usual: int) -> Wish | None:
    """Return the wish of what is no pocket; needles told of it are refused."""
    told = [name for name in ("needles", "left") if not fields.blank(name)]
    for name in told:
        fields.refuse(name, bare.no_needles, say.empty_or_short_rows())
    return None if told else Wish(usual, None, True, bare=bare)
