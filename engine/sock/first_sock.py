"""The first sock, washed and measured: what it teaches for the second.

A finished sock is the best swatch there is. Its sole holds the foot rounds that were knitted and
the shares of heel and toe, so its length gives rounds per mm (`foot_rounds`); its flat width gives
the stitches, w = N / (2 x width). It is one more tube beside the swatches and socks that there are,
and weighs as it would among them (`certainty`): a good swatch is moved a little by a badly measured
sock, five socks hardly by a sixth, and a guess from the yarn's number is all but replaced.

The second sock keeps cuff, leg, heel and toe of the first, so that the two match; its foot rounds
are counted anew.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot, log, sqrt

from engine import sources
from engine.fabric import swatch
from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES, Swatch
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
    tube = _tube(fields, first, planned)
    if tube.stitches is None and tube.rounds is None:
        return before
    return replace(
        before.with_tube(fields, tube),
        way="swatch",
        words=f"from your first sock and {_BEFORE[before.way]}, each weighed by how sure it is",
        questions=(*before.questions, *_asked(fields, tube, before)),
    )


def _tube(fields: Fields, first: FirstSock, planned: Sock) -> Swatch:
    """Return the sock as a tube like any other; what cannot be of it is noted and left out."""
    mark, needles = planned.fabric.mark, planned.cylinder.slots
    rounds = first.foot_rounds + foot_rounds.others(planned.sections)
    per_mm = rounds / first.length
    tube = Swatch(
        fields.path,
        "sock",
        mark,
        rounds=per_mm,
        rounds_tape=swatch.along_tape("sock", first.length, rounds),
        needles=needles,
    )
    if per_mm not in ROUNDS:
        fields.refuse(
            "length",
            "So many rounds do not fit this length.",
            "Measure the washed sock from heel to toe, and check the rounds.",
        )
        tube = replace(tube, rounds=None)
    if first.flat_width is None:
        return tube
    stitches = needles / (2 * first.flat_width)
    if stitches not in STITCHES:
        fields.refuse(
            "flat_width",
            "So many stitches do not fit this width.",
            "Measure the washed sock lying flat, once across.",
        )
        return tube
    return replace(tube, stitches=stitches, stitches_tape=sources.TAPE_ON_SWATCH / first.flat_width)


def _asked(fields: Fields, tube: Swatch, before: Fabric) -> Iterator[tuple[str, str]]:
    """Yield a question where sock and earlier knowledge cannot both be right."""
    words = "This is far from what was known of the fabric. Same yarn, same mark? Measure it again."
    known = (before.stitches, before.across), (before.rounds, before.along)
    for name, seen, (value, foretold) in zip(
        ("flat_width", "length"), tube.sides, known, strict=True
    ):
        if seen is None or foretold is None:
            continue
        sd = hypot(sqrt(foretold.doubt), sources.SOCK_TO_SWATCH, seen.tape)
        if abs(seen.log - log(value)) >= sources.FAR_APART * sd:
            yield fields.where(name), words
