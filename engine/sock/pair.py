"""The pair: what sock two shall be like, and what to expect of either wish.

Sock one is long or short by its own chance besides what it teaches. Of the log of its rounds per
mm, c1 = v + e1, its reading y1 tells a share g = s / (s + r1), s the scatter from tube to tube and
r1 the tape's error (both squared), so that c1 is taken as v + g (y1 - v): that gives its own length
l1. Sock two may be knitted to the length T that the foot asks for, to l1, or half way between.

It comes out at l2 e^-(e2 + dv), l2 the length so aimed at, with dv the error of the mean v. Its
distance from T has the variance l2^2 (V + s), V that of v; the difference of the two socks, for
both share v and sock one told part of it,

    l2^2 (V + s) + l1^2 (g r1 + (1 - g)^2 V) - 2 l1 l2 (1 - g) V.

What is stated holds four times in five: the smallest distance within which a normal with that
middle and variance lies so often, wider by t(free) over z for a scatter that is not known
(`certainty`). In whole mm that is rounded down, as a range of rounds is drawn in to those that lie
in it: to the nearest it held 3 points too often over the knitters that the tests make up. What is
knitted on by hand neither scatters nor differs.

"Like sock one" is not the same count: a sock that is long by its own chance wants more rounds in
its partner than it has. Limits: two socks of one sitting are taken to scatter as any two tubes.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import erfc, exp, floor, log, sqrt
from typing import Literal, get_args

from engine.fabric.certainty import Foretold, t_90
from engine.read.units import nearest
from engine.sock import foot_rounds
from engine.sock.foot_rounds import Others
from engine.sources import TO_80_PERCENT

Like = Literal["foot", "between", "sock one"]
LIKE: tuple[Like, ...] = get_args(Like)
_WITHIN = 0.8
_HALVINGS = 40


@dataclass(frozen=True)
class Wish:
    """Sock two as one of `LIKE`: the length aimed at and its sd in mm, and the foot `rounds`.

    Four times in five it comes out within `off` mm of the length for the foot, and within `apart`
    mm of sock one.
    """

    like: Like
    aimed: float
    aimed_sd: float
    rounds: int
    off: int
    apart: int


@dataclass(frozen=True)
class Pair:
    """A sock one, and what sock two may be: `wanted` is the foot's length in mm, `one` its own.

    `like` is what was asked for, `wishes` are all of `LIKE` in order.
    """

    like: Like
    wanted: float
    one: float
    wishes: tuple[Wish, ...]

    @property
    def chosen(self) -> Wish:
        """Return what was asked for."""
        return self.wishes[LIKE.index(self.like)]


def work_out(
    like: Like,
    wanted: tuple[float, float],
    knitted: tuple[float, float, int],
    known: tuple[float, Foretold],
    others: Others,
) -> Pair:
    """Return the pair after sock one.

    `wanted` is the length for the foot and its sd in mm; `knitted` sock one's measured length in
    mm, the relative error of measuring it, and its foot rounds; `known` the rounds per mm with it
    and what they foretell; `others` as in `foot_rounds`.
    """
    (asked, asked_sd), (mm, tape, rounds), (per_mm, along) = wanted, knitted, known
    v, doubt, scatter = log(per_mm), along.doubt, along.scatter
    share = scatter / (scatter + tape**2)
    read = log(foot_rounds.per_mm(mm, rounds, others))
    one = foot_rounds.length(exp(v + share * (read - v)), rounds, others)
    # Of the count alone: what of sock one's length is not known, where v is not known either.
    one_sd = (one - others.by_hand) * sqrt(max(0.0, share * tape**2 + (share**2 - 1) * doubt))
    aims = {
        "foot": (asked, asked_sd),
        "between": ((asked + one) / 2, sqrt(asked_sd**2 + one_sd**2) / 2),
        "sock one": (one, one_sd),
    }

    def wish(name: Like) -> Wish:
        aimed, sd = aims[name]
        count = max(1, nearest(foot_rounds.exact(aimed, per_mm, others)))
        two = foot_rounds.length(per_mm, count, others)
        made, before = two - others.by_hand, one - others.by_hand
        difference = (
            made**2 * (doubt + scatter)
            + before**2 * (share * tape**2 + (1 - share) ** 2 * doubt)
            - 2 * before * made * (1 - share) * doubt
        )
        apart = sqrt(difference) * t_90(along.free) / TO_80_PERCENT
        off = made * along.sd()
        ends = _within(two - asked, off), _within(two - one, apart)
        return Wish(name, aimed, sd, count, *ends)

    return Pair(like, asked, one, tuple(wish(name) for name in LIKE))


def _within(middle: float, sd: float) -> int:
    """Return how far from 0 a normal in mm lies four times in five."""
    low, high = 0.0, abs(middle) + 4 * sd
    for _ in range(_HALVINGS):
        at = (low + high) / 2
        inside = (erfc((-at - middle) / sd / sqrt(2)) - erfc((at - middle) / sd / sqrt(2))) / 2
        low, high = (at, high) if inside < _WITHIN else (low, at)
    return floor(high)
