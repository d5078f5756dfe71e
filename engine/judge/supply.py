"""Yarn: how much a pair takes, by section and by colour, and whether what is left is a sock.

Yarn in a section = its stitches x the loop length; its weight follows from the yarn's tex (g per
1,000 m). Ends and the grafting tail are a section of their own: every stretch of one colour has two
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
from itertools import groupby
from math import erfc, hypot, log, sqrt
from typing import NamedTuple

from engine import sources
from engine.fabric.fabric import Fabric

SOCKS = 2
MAIN = "Main yarn"


class Colour(NamedTuple):
    """One colour of a pair: the sections knitted in it and its yarn in mm, ends included."""

    name: str
    sections: tuple[str, ...]
    mm: float


class Need(NamedTuple):
    """What sock two takes of the main yarn: the median in g and its relative error."""

    grams: float
    sd: float


def lengths(
    loops: Mapping[str, float], grafted: int, fabric: Fabric, apart: frozenset[str] = frozenset()
) -> dict[str, float]:
    """Return the yarn in mm for a pair, by section, from the stitches of one sock.

    `grafted` are those that close the toe. A stitch of another loop than the foot's counts by its
    loop over the foot's (`Sock.loops`). The sections `apart` are in another colour.
    """
    found = {part: SOCKS * count * fabric.loop for part, count in loops.items()}
    return {**found, "ends": SOCKS * sum(_ends(loops, grafted, fabric, apart).values())}


def colours(
    loops: Mapping[str, float], grafted: int, fabric: Fabric, apart: frozenset[str]
) -> list[Colour]:
    """Return the colours of a pair, the main yarn first."""
    ends = _ends(loops, grafted, fabric, apart)
    found: dict[str, list[str]] = {MAIN: []}
    for part in loops:
        found.setdefault(_colour(part, apart), []).append(part)
    return [
        Colour(
            name,
            tuple(parts),
            SOCKS * (sum(loops[part] for part in parts) * fabric.loop + ends.get(name, 0.0)),
        )
        for name, parts in found.items()
    ]


def _colour(part: str, apart: frozenset[str]) -> str:
    """Return the name of a section's colour; heel and toe apart share one.

    What follows the toe is knitted in its yarn.
    """
    part = "toe" if part == "end" else part
    if part not in apart:
        return MAIN
    return "Heel and toe" if part in ("heel", "toe") and {"heel", "toe"} <= apart else part.title()


def _ends(
    loops: Mapping[str, float], grafted: int, fabric: Fabric, apart: frozenset[str]
) -> dict[str, float]:
    """Return the ends of one sock in mm by colour; the last one grafts as well."""
    knitted = [_colour(part, apart) for part, count in loops.items() if count]
    found = {knitted[-1]: grafted * fabric.loop}
    for colour, _stretch in groupby(knitted):
        found[colour] = found.get(colour, 0.0) + 2 * sources.TAIL
    return found


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
