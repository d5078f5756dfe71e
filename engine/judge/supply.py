"""Yarn: how much a pair takes, by section and by color, and whether what is left is a sock.

Yarn in a section = its stitches x the loop length; its weight follows from the yarn's tex (g per
1,000 m). Ends and the grafting tail are a section of their own: every stretch of one color has two
ends, and the toe is grafted with its own yarn. Grafting makes a row of stitches by hand, so it
takes its stitches x the loop length, and an end to hold (common practice; the loop by Munden 1959).

Enough? What sock two takes is a product of factors that are each a few per cent out (loop length,
yarn number, one sock against the next), so its logarithm is taken as normal about ln W with
variance s^2, the sum of the squares of those relative errors, and the scale's error of e grams adds
(e / W)^2. With g grams left, P(enough) = Phi(ln(g / W) / sqrt(s^2 + (e / W)^2)).

- Nothing weighed: W = stitches x loop x tex. Stitches and rounds per mm go astray together (a
  looser loop moves both), and loop = sqrt(Ks / (w c)), so the loop's error is half the sum of
  theirs, besides that of Ks.
- Sock one weighed: W = its weight x yarn of sock two / yarn of sock one, s = the scale's e / weight
  and one sock against the next.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import erfc, hypot, log, sqrt
from typing import Literal, NamedTuple

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.operations import Yarn
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.color import LETTERS, letter
from engine.sock.sock import Sock

SOCKS = 2


class InColor(NamedTuple):
    """One color of a pair: the sections knitted in it and its yarn in mm, ends included.

    `color` is its letter, "" where all is one color.
    """

    color: str
    sections: tuple[str, ...]
    mm: float

    @property
    def name(self) -> Message:
        """Return what it is called."""
        return say.color_letter(color=self.color) if self.color else say.main_yarn()


class Need(NamedTuple):
    """What sock two takes of the main yarn: the median in g and its relative error."""

    grams: float
    sd: float


def lengths(loops: Mapping[str, float], fabric: Fabric, colors: list[InColor]) -> dict[str, float]:
    """Return the yarn in mm for a pair, by section, from the stitches of one sock.

    A stitch of another loop than the foot's counts by its loop over the foot's (`Sock.loops`). What
    the `colors` take besides are their ends, and closing the toe.
    """
    found = {part: SOCKS * count * fabric.loop for part, count in loops.items()}
    return {**found, "ends": sum(one.mm for one in colors) - sum(found.values())}


def of_sock(sock: Sock) -> list[InColor]:
    """Return the colors of a pair, the main yarn first."""
    if sock.colors is None:
        return _in_one(sock)
    cloth, closing = sock.fabric, sock.closing(sock.fabric)
    knitted = loops_by_color(sock)
    stretches = [letter(one.name) for _, one in sock.operations() if isinstance(one, Yarn)]
    stretches = [one for one in stretches if one in LETTERS]
    ends = {one: 2 * sources.TAIL * stretches.count(one) for one in stretches}
    ends[stretches[-1]] += closing
    return [
        InColor(
            one,
            tuple(parts),
            SOCKS * (sum(parts.values()) * cloth.loop + ends[one]),
        )
        for one, parts in sorted(knitted.items())
    ]


def loops_by_color(sock: Sock) -> dict[str, dict[str, float]]:
    """Return the stitches of one sock by its planned color and part, as `Sock.loops` has them."""
    found: dict[str, dict[str, float]] = {}
    for section, work in zip(sock.sections, sock.work, strict=True):
        for made, count in work.made if section.counted else ():
            parts = found.setdefault(letter(made.yarn), {})
            parts[section.part] = parts.get(section.part, 0.0) + count / made.tighter
    return found


def _in_one(sock: Sock) -> list[InColor]:
    """Return the yarn of a pair in one color."""
    mm = sum(sock.loops.values()) * sock.fabric.loop + sock.closing(sock.fabric) + 2 * sources.TAIL
    return [InColor("", tuple(sock.loops), SOCKS * mm)]


def grams(mm: float, fabric: Fabric) -> float:
    """Return the weight in g of a length of the yarn in mm."""
    return mm * fabric.tex / 1e6


def loop_sd(fabric: Fabric) -> float:
    """Return the relative error of the next sock's loop length."""
    return hypot((fabric.stitches_sd + fabric.rounds_sd) / 2, sources.LOOP_BY_STATE)


def reckoned(mm: float, fabric: Fabric) -> Need:
    """Return what a sock of `mm` of yarn takes, by its stitches and what one of them weighs.

    That is known by weighing swatches, else by the yarn's number.
    """
    if fabric.weighed_sd is not None:
        return Need(grams(mm, fabric), hypot(fabric.weighed_sd, sources.SOCK_TO_SWATCH))
    return Need(grams(mm, fabric), hypot(loop_sd(fabric), fabric.tex_sd))


def weighed(sock_one: float, ratio: float) -> Need:
    """Return what sock two takes where sock one weighs `sock_one` g, at `ratio` of its yarn."""
    return Need(sock_one * ratio, hypot(sources.SCALE / sock_one, sources.SOCK_TO_SWATCH))


def probability(left: float, need: Need) -> float:
    """Return how likely `left` g are enough."""
    if left <= 0:
        return 0.0
    z = log(left / need.grams) / hypot(need.sd, sources.SCALE / need.grams)
    return erfc(-z / sqrt(2)) / 2


Level = Literal["yes", "maybe", "no"]


def level(likely: float) -> Level:
    """Return how surely yarn that is `likely` enough may be said to be."""
    return "yes" if likely > sources.SURE else "maybe" if likely >= 0.5 else "no"


def less(need: Need, share: float) -> Need:
    """Return the need without a `share` of it."""
    return Need(need.grams * max(1 - share, 1e-6), need.sd)


def fewer_rounds(left: float, need: Need, round_share: float, most: int) -> int | None:
    """Return how many of `most` rounds must go for `left` g to be surely enough, None if more.

    One round is `round_share` of the yarn needed.
    """
    tried = range(1, most + 1)
    enough = (n for n in tried if probability(left, less(need, n * round_share)) > sources.SURE)
    return next(enough, None)


class Swap(NamedTuple):
    """Sections that both socks get in another yarn, and what that saves of the main one in g."""

    parts: tuple[str, ...]
    grams: float


def swap(left: float, need: Need, shares: Mapping[str, float]) -> Swap | None:
    """Return what both socks need in another yarn for `left` g to be surely enough, None if no way.

    So that the pair matches: the toes, or heels and toes, whichever will do. Sock one is ravelled
    back for it (a toe is knitted anew from the last plain round: common practice), so its yarn
    comes to what is left. `shares` are what heel and toe take of the yarn needed, where they are
    knitted in it.
    """
    for tried in (("toe",), ("heel", "toe")):
        parts = tuple(part for part in tried if part in shares)
        share = sum(shares[part] for part in parts)
        back = need.grams * share
        if parts and probability(left + back, less(need, share)) > sources.SURE:
            return Swap(parts, SOCKS * back)
    return None
