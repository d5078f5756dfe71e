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
from math import exp, hypot, log, sqrt

from engine import sources
from engine.fabric import swatch, wash
from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES, Swatch
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.say.message import Message
from engine.sock import foot_rounds
from engine.sock.foot_rounds import Others
from engine.sock.pair import LIKE, Like
from engine.sock.sock import Sock

_ROUNDS = Span(say.first_sock_rounds(), 1, 400)
LENGTHS = {
    "length": Span(say.foot_of_sock(), 70, 400, rarely=110),
    "unwashed_length": Span(say.foot_of_sock(), 70, 400, rarely=110),
    "flat_width": Span(say.first_sock_width(), 25, 250, rarely=55),
}


@dataclass(frozen=True)
class FirstSock:
    """A washed sock: the foot rounds knitted, its foot's length and flat width in mm or None.

    `like` is what the knitter wants of sock two. Where it is not `washed` yet, the length is that
    of before; `wash_sd` is how unsure that makes the length once it is taken as after the wash.
    """

    foot_rounds: int
    length: float
    flat_width: float | None
    like: Like = "foot"
    washed: bool = True
    wash_sd: float = 0.0

    @property
    def field(self) -> str:
        """Return where its length was typed."""
        return "unwashed_length" if self.wash_sd or not self.washed else "length"

    def tape(self, others: Others) -> float:
        """Return the relative error of its rounds per mm."""
        rounds = self.foot_rounds + others.rounds
        return hypot(swatch.along_tape("sock", self.length, rounds), self.wash_sd)


def read(fields: Fields) -> FirstSock | None:
    """Return the first sock of a request, or None where there is none or a problem was noted."""
    fields.only(("foot_rounds", *LENGTHS, "like"))
    wished = fields.choice("like", LIKE)
    like = next((one for one in LIKE if one == wished), LIKE[0])
    rounds = fields.count("foot_rounds", _ROUNDS)
    length = fields.length("length", LENGTHS["length"])
    before = fields.length("unwashed_length", LENGTHS["unwashed_length"])
    width = fields.length("flat_width", LENGTHS["flat_width"])
    if all(fields.blank(name) for name in ("foot_rounds", *LENGTHS)):
        return None
    if fields.blank("foot_rounds"):
        fields.refuse("foot_rounds", say.sock_one_missing(what="rounds"), say.fill_or_empty())
    if fields.blank("length") and fields.blank("unwashed_length"):
        fields.refuse("length", say.sock_one_missing(what="length"), say.fill_or_empty())
    if rounds is None:
        return None
    if length is not None:
        return FirstSock(rounds, length, width, like)
    return None if before is None else FirstSock(rounds, before, width, like, washed=False)


def as_washed(fields: Fields, first: FirstSock, planned: Sock) -> FirstSock | None:
    """Return a first sock as it will be after the wash, None where that cannot be told.

    What is missing for it is noted in `fields`.
    """
    if first.washed:
        return first
    change = wash.learn(tube for tube, *_ in planned.fabric.seen)
    if change is None:
        fields.refuse("unwashed_length", say.wash_not_known(), say.wash_or_swatch())
        return None
    length = first.length * exp(change.log)
    return replace(first, length=length, washed=True, wash_sd=change.sd)


def after_wash(fields: Fields, typed: FirstSock, washed: FirstSock) -> list[tuple[str, Message]]:
    """Return the remark of how a sock that is not washed yet was taken."""
    if typed.washed:
        return []
    by = washed.length / typed.length - 1
    percent, longer = f"{abs(by) * 100:.0f}", by > 0
    words = say.taken_after_wash(change="longer" if longer else "shorter", percent=percent)
    return [(fields.where("unwashed_length"), words)]


def learn(fields: Fields, first: FirstSock, planned: Sock) -> Fabric:
    """Return the fabric after the first sock, which was `planned` with the second's other counts.

    A sock that cannot be is noted in `fields` and teaches nothing; one far from what was known is
    believed as far as its errors go, and asked about.
    """
    before = planned.fabric
    tube = as_tube(fields, first, planned)
    if tube.stitches is None and tube.rounds is None:
        return before
    return replace(
        before.with_tube(fields, tube),
        way="swatch",
        words=(say.from_first_sock(way=before.way),),
        questions=(*before.questions, *_asked(fields, first, tube, before)),
    )


def as_tube(fields: Fields, first: FirstSock, planned: Sock) -> Swatch:
    """Return the sock as a tube like any other; what cannot be of it is noted and left out."""
    mark, needles = planned.fabric.mark, planned.cylinder.slots
    per_mm = foot_rounds.per_mm(first.length, first.foot_rounds, planned.others)
    tube = Swatch(
        fields.path,
        "sock",
        mark,
        rounds=per_mm,
        rounds_tape=first.tape(planned.others),
        needles=needles,
    )
    if per_mm not in ROUNDS:
        fields.refuse(first.field, say.rounds_and_length(), say.measure_sock_one())
        tube = replace(tube, rounds=None)
    if first.flat_width is None:
        return tube
    stitches = needles / (2 * first.flat_width)
    if stitches not in STITCHES:
        fields.refuse("flat_width", say.stitches_and_width(), say.measure_across())
        return tube
    return replace(tube, stitches=stitches, stitches_tape=sources.TAPE_ON_SWATCH / first.flat_width)


def _asked(
    fields: Fields, first: FirstSock, tube: Swatch, before: Fabric
) -> Iterator[tuple[str, Message]]:
    """Yield a question where sock and earlier knowledge cannot both be right."""
    known = (before.stitches, before.across), (before.rounds, before.along)
    for name, seen, (value, foretold) in zip(
        ("flat_width", first.field), tube.sides, known, strict=True
    ):
        if seen is None or foretold is None:
            continue
        sd = hypot(sqrt(foretold.doubt), sources.SOCK_TO_SWATCH, seen.tape)
        if abs(seen.log - log(value)) >= sources.FAR_APART * sd:
            yield fields.where(name), say.sock_one_far_off()
