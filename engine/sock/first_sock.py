"""The first sock, washed and measured: what it teaches for the second.

A finished sock is the best swatch there is. Its sole holds the foot rounds that were knitted and
the shares of heel and toe, so its length gives rounds per mm (`foot_rounds`); its flat width gives
the stitches, w = N / (2 x width). What was known before and what the sock says are combined by
their errors (inverse variances of the relative errors), so a good swatch is moved a little by a
badly measured sock and a guess from the yarn's number is all but replaced.

The second sock keeps cuff, leg, heel and toe of the first, so that the two match; its foot rounds
are counted anew.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import hypot, log, sqrt
from typing import NamedTuple

from engine import sources
from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES
from engine.read.fields import Fields, Span
from engine.sock import foot_rounds
from engine.sock.sock import Sock

_ROUNDS = Span("the foot rounds of a sock", 1, 400)
LENGTHS = {
    "length": Span("the foot of a sock", 80, 400, rarely=110),
    "flat_width": Span("the flat width of a sock", 25, 250, rarely=55),
}
_BEFORE = {
    "swatch": "your swatch",
    "gauge": "the stitches and rounds you gave",
    "yarn": "a guess from the yarn's length per ball",
}


@dataclass(frozen=True)
class FirstSock:
    """A washed sock: the foot rounds knitted, its foot's length and flat width in mm or None."""

    foot_rounds: int
    length: float
    flat_width: float | None


def read(fields: Fields) -> FirstSock | None:
    """Return the first sock of a request, or None where there is none or a problem was noted."""
    fields.only(("foot_rounds", "length", "flat_width"))
    rounds = fields.count("foot_rounds", _ROUNDS)
    length = fields.length("length", LENGTHS["length"])
    width = fields.length("flat_width", LENGTHS["flat_width"])
    if all(fields.blank(name) for name in ("foot_rounds", "length", "flat_width")):
        return None
    for name, what in (
        ("foot_rounds", "How many foot rounds the first sock has is missing."),
        ("length", "The length of the first sock's foot is missing."),
    ):
        if fields.blank(name):
            fields.refuse(name, what, "Fill it in, or empty the others.")
    if rounds is None or length is None:
        return None
    return FirstSock(rounds, length, width)


def learn(fields: Fields, first: FirstSock, planned: Sock) -> Fabric:
    """Return the fabric after the first sock, which was `planned` with the second's other counts.

    A sock that cannot be is noted in `fields` and teaches nothing; one far from what was known is
    believed as far as its errors go, and asked about.
    """
    before = planned.fabric
    after = replace(
        before,
        way="swatch",
        words=f"from your first sock and {_BEFORE[before.way]}, each weighed by how sure it is",
    )
    per_mm = foot_rounds.per_mm(first.length, first.foot_rounds, planned.sections)
    rounds = _Seen("length", per_mm, _sd(first.length))
    after = _seen_rounds(fields, rounds, before, after)
    if first.flat_width is None:
        return after
    slots = planned.cylinder.slots
    stitches = _Seen("flat_width", slots / (2 * first.flat_width), _sd(first.flat_width))
    return _seen_stitches(fields, stitches, before, after)


class _Seen(NamedTuple):
    """A count per mm seen on the sock, its relative error, and the field it comes from."""

    field: str
    per_mm: float
    sd: float


def _seen_rounds(fields: Fields, seen: _Seen, before: Fabric, after: Fabric) -> Fabric:
    if seen.per_mm not in ROUNDS:
        fields.refuse(
            seen.field,
            "So many rounds do not fit this length.",
            "Measure the washed sock from heel to toe, and check the rounds.",
        )
        return before
    rounds, sd = _combined(before.rounds, before.rounds_sd, seen)
    asked = _asked(fields, before.rounds, before.rounds_sd, seen)
    return replace(after, rounds=rounds, rounds_sd=sd, questions=(*after.questions, *asked))


def _seen_stitches(fields: Fields, seen: _Seen, before: Fabric, after: Fabric) -> Fabric:
    if seen.per_mm not in STITCHES:
        fields.refuse(
            seen.field,
            "So many stitches do not fit this width.",
            "Measure the washed sock lying flat, once across.",
        )
        return before
    stitches, sd = _combined(before.stitches, before.stitches_sd, seen)
    asked = _asked(fields, before.stitches, before.stitches_sd, seen)
    return replace(after, stitches=stitches, stitches_sd=sd, questions=(*after.questions, *asked))


def _asked(
    fields: Fields, before: float, before_sd: float, seen: _Seen
) -> tuple[tuple[str, str], ...]:
    """Return a question where sock and earlier knowledge cannot both be right."""
    if abs(log(seen.per_mm / before)) < sources.FAR_APART * hypot(before_sd, seen.sd):
        return ()
    words = "This is far from what was known of the fabric. Same yarn, same mark? Measure it again."
    return ((fields.where(seen.field), words),)


def _sd(mm: float) -> float:
    return hypot(sources.TAPE_ON_SWATCH / mm, sources.SOCK_TO_SWATCH)


def _combined(before: float, before_sd: float, seen: _Seen) -> tuple[float, float]:
    """Return the mean by inverse variances of relative errors, and its relative error.

    Nothing is surer than one sock is like the next.
    """
    old, new = before_sd**-2, seen.sd**-2
    mean = (old * before + new * seen.per_mm) / (old + new)
    return mean, max(1 / sqrt(old + new), float(sources.SOCK_TO_SWATCH))
