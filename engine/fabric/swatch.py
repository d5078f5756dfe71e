"""A swatch, or a finished sock, as it was measured: one observation of a yarn on a cylinder.

A tube of N needles that lies F wide has N / (2 F) stitches per mm; R rounds over a length L are
R / L rounds per mm. A sock's foot counts as such a tube: its rounds are those of the foot and the
rows of one half of heel and toe. A ruler's error, or a round miscounted, counts the less the longer
the tube. The weight
of a tube over all its stitches is the yarn in one stitch, whatever its label says.

What was measured before the wash only is told as it is and marked so; `wash` says what it becomes.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, log, sqrt
from typing import Literal

from engine import sources
from engine.fabric.certainty import Reading
from engine.read.fields import Fields, Span
from engine.read.units import reaches
from engine.say import messages as say
from engine.say.message import Message

STITCHES = Span(say.of_stitches(), 0.09, 0.8)
ROUNDS = Span(say.of_rounds(), 0.1, 1.1)
MARK = Span(say.of_mark(), 0, 1000)
_NEEDLES = Span(say.of_swatch(what="needles"), 8, 200)
_FLAT = Span(say.of_swatch(what="width"), 15, 400)
_ROUNDS_KNITTED = Span(say.of_swatch(what="rounds"), 4, 1000)
_LENGTH = Span(say.of_swatch(what="length"), 10, 2000)
_WHOLE_SOCK = Span(say.of_swatch(what="whole"), 500, 200_000)
_GRAMS = Span(say.of_swatch(what="weight"), 1, 500)
LENGTHS = {
    "flat_width": _FLAT,
    "length": _LENGTH,
    "pulled_width": _FLAT,
    "unwashed_width": _FLAT,
    "unwashed_length": _LENGTH,
}
HUNG = Span(say.of_swatch(what="hung"), 0, 10_000)
WEIGHTS = {"grams": _GRAMS, "hung": HUNG}
KINDS = ("swatch", "sock")
_Change = Literal["narrower", "wider", "shorter", "longer"]
_CHANGES: tuple[tuple[_Change, _Change], ...] = (("narrower", "wider"), ("shorter", "longer"))


@dataclass(frozen=True)
class Swatch:
    """One tube: `stitches` and `rounds` per mm (None if unknown), the ruler's relative errors.

    `pull` is its pulled over its flat width, `grams` the weight of one stitch in g with its
    relative error, `drawn_in` its washed over its unwashed width and length, `unwashed` what of the
    two is known before the wash only, `hung` the weight in g that hung on it.
    """

    field: str
    kind: str = "swatch"
    mark: float | None = None
    stitches: float | None = None
    rounds: float | None = None
    stitches_tape: float = 0.0
    rounds_tape: float = 0.0
    pull: float | None = None
    grams: float | None = None
    grams_sd: float = 0.0
    drawn_in: tuple[float | None, float | None] = (None, None)
    unwashed: tuple[bool, bool] = (False, False)
    questions: tuple[tuple[str, Message], ...] = ()
    needles: int | None = None
    hung: float | None = None

    @property
    def sides(self) -> tuple[Reading | None, Reading | None]:
        """Return what it says of stitches and of rounds."""
        counts = (self.stitches, self.stitches_tape), (self.rounds, self.rounds_tape)
        across, along = (
            Reading(log(n), tape, self.kind == "sock") if n else None for n, tape in counts
        )
        return across, along


def read(fields: Fields, slots: int | None, *, listed: bool = False) -> Swatch | None:
    """Return the tube of a request, None where there is none; problems are noted at their fields.

    Needles left out are the cylinder's `slots`, where those are known. In a list it may say that it
    is a sock.
    """
    of_list = ("kind", "whole_stitches") if listed else ()
    fields.only((*of_list, "needles", "rounds", *LENGTHS, *WEIGHTS, "mark"))
    kind = (fields.choice("kind", KINDS) if listed else None) or "swatch"
    needles, rounds = fields.count("needles", _NEEDLES), fields.count("rounds", _ROUNDS_KNITTED)
    mm = {name: fields.length(name, span) for name, span in LENGTHS.items()}
    grams, mark = fields.grams("grams", _GRAMS), fields.plain("mark", MARK)
    hung = fields.grams("hung", HUNG)
    whole = fields.count("whole_stitches", _WHOLE_SOCK) if listed else None
    if all(fields.blank(name) for name in ("needles", "rounds", *LENGTHS)):
        return None
    asked = []
    across = not (fields.blank("flat_width") and fields.blank("unwashed_width"))
    if fields.blank("needles") and across and slots is not None:
        needles = slots
        asked.append((fields.where("needles"), say.needles_taken(slots=str(slots))))
    width, wet_width = mm["flat_width"], mm["unwashed_width"]
    length, wet_length = mm["length"], mm["unwashed_length"]
    if not asked:
        _together(fields, "needles", "flat_width", say.needles_with_width())
    _together(fields, "rounds", "length", say.rounds_with_length())
    stitches = _per_mm(fields, "width", needles, (width, wet_width), STITCHES, 2)
    per_mm = _per_mm(fields, "length", rounds, (length, wet_length), ROUNDS, 1)
    if stitches is None and per_mm is None:
        return None  # how far it pulls says nothing of how wide it lies
    knitted = needles * rounds if needles and rounds else None
    one, one_sd = _stitch(grams, knitted if kind == "swatch" else whole)
    if kind == "sock" and grams is not None and whole is None:
        asked.append((fields.where("grams"), say.sock_not_weighed()))
    if kind == "swatch" and (rounds or 40) < sources.SWATCH_ROUNDS_FEWEST:
        asked.append((fields.where("rounds"), say.swatch_short()))
    return Swatch(
        fields.path,
        kind,
        mark,
        stitches,
        per_mm,
        _tape(width or wet_width),
        along_tape(kind, length or wet_length, rounds),
        _read_pull(fields, mm["pulled_width"], width or wet_width),
        one,
        one_sd,
        (_ratio(width, wet_width), _ratio(length, wet_length)),
        (
            width is None and wet_width is not None,
            length is None and wet_length is not None,
        ),
        tuple(asked),
        needles,
        hung,
    )


def _together(fields: Fields, one: str, other: str, what: Message) -> None:
    before = f"unwashed_{other.removeprefix('flat_')}"
    there = not (fields.blank(other) and fields.blank(before))
    if fields.blank(one) == there:
        missing = one if fields.blank(one) else other
        fields.refuse(missing, what, say.fill_both_or_neither())


def _per_mm(
    fields: Fields,
    name: str,
    count: int | None,
    sizes: tuple[float | None, float | None],
    span: Span,
    times: int,
) -> float | None:
    """Return a count over `times` a size, of the washed tube if it is known."""
    washed = "flat_width" if name == "width" else name
    found = [
        (field, count / (times * size))
        for field, size in zip((washed, f"unwashed_{name}"), sizes, strict=True)
        if count and size
    ]
    for field, value in found:
        if value not in span:
            size: Literal["small", "large"] = "small" if value > span.high else "large"
            wrong = say.wrong_for_needles if name == "width" else say.wrong_for_rounds
            fields.refuse(field, wrong(size=size), say.measure_flat())
    return found[0][1] if found else None


def _tape(mm: float | None) -> float:
    return sources.TAPE_ON_SWATCH / mm if mm else 0.0


def along_tape(kind: str, mm: float | None, rounds: int | None) -> float:
    """Return the relative error of rounds per mm: of a sock's foot, or of a swatch's rounds."""
    if not mm:
        return 0.0
    if kind == "sock":
        return sources.TAPE_ON_SOCK / mm
    return hypot(sources.TAPE_ON_SWATCH / mm, sqrt(sources.MISCOUNTED) / (rounds or 40))


def _ratio(washed: float | None, before: float | None) -> float | None:
    return washed / before if washed and before else None


def _stitch(grams: float | None, stitches: int | None) -> tuple[float | None, float]:
    """Return the weight of one stitch in g, and its relative error."""
    if grams is None or stitches is None:
        return None, 0.0
    return grams / stitches, sources.SCALE / grams


def _read_pull(fields: Fields, pulled: float | None, width: float | None) -> float | None:
    if pulled is None or width is None:
        return None
    pull = pulled / width
    least, most = sources.USUAL_PULL
    if not (reaches(pull, least) and reaches(most, pull)):
        fields.refuse(
            "pulled_width",
            say.pulled_too_far(),
            say.pull_the_same_tube(),
        )
    return pull


def drew_in(tube: Swatch) -> Message | None:
    """Return how the wash changed a tube, None if that is not known."""
    changes = tuple(
        say.by_the_wash(change=less if ratio < 1 else more, percent=f"{abs(1 - ratio) * 100:.0f}")
        for ratio, (less, more) in zip(tube.drawn_in, _CHANGES, strict=True)
        if ratio is not None
    )
    return say.wash_made_it(changes=changes) if changes else None
