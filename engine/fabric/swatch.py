"""A swatch, or a finished sock, as it was measured: one observation of a yarn on a cylinder.

A tube of N needles that lies F wide has N / (2 F) stitches per mm; R rounds over a length L are
R / L rounds per mm. A sock's foot counts as such a tube: its rounds are those of the foot and the
rows of one half of heel and toe. A ruler's error, or a round miscounted, counts the less the longer
the tube. The weight
of a tube over all its stitches is the yarn in one stitch, whatever its label says.

What was measured before the wash only is taken as it would be after: by the shrinkage of this yarn
where another of its tubes was measured before and after, else as it is, with a wide error.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import hypot, log, sqrt

from engine import sources
from engine.fabric.certainty import Reading
from engine.read.fields import Fields, Span
from engine.read.units import reaches

STITCHES = Span("stitches per length in a sock", 0.09, 0.8)
ROUNDS = Span("rounds per length in a sock", 0.1, 1.1)
MARK = Span("a tension mark", 0, 1000)
_NEEDLES = Span("the needles of a swatch", 8, 200)
_FLAT = Span("the flat width of a tube", 15, 400)
_ROUNDS_KNITTED = Span("the rounds of a swatch", 4, 1000)
_LENGTH = Span("the length of a swatch", 10, 2000)
_GRAMS = Span("the weight of a swatch", 1, 500)
LENGTHS = {
    "flat_width": _FLAT,
    "length": _LENGTH,
    "pulled_width": _FLAT,
    "unwashed_width": _FLAT,
    "unwashed_length": _LENGTH,
}
WEIGHTS = {"grams": _GRAMS}
KINDS = ("swatch", "sock")
PLURALS = {"swatch": "swatches", "sock": "socks"}
_SHORT = "A short swatch says little: knit at least 40 rounds, wash it and let it rest a day."
_WHOLE_SOCK = "A whole sock holds more stitches than these: its weight is not used here."
_WASH = "Not washed yet: these counts may be a good way out. Wash it, dry it, measure it again."
_BY_OWN = "Not washed yet: we take it to draw in as this yarn did before."


@dataclass(frozen=True)
class Swatch:
    """One tube: `stitches` and `rounds` per mm (None if unknown), the ruler's relative errors.

    `pull` is its pulled over its flat width, `grams` the weight of one stitch in g with its
    relative error, `drawn_in` its washed over its unwashed width and length, `unwashed` what of the
    two is known before the wash only.
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
    questions: tuple[tuple[str, str], ...] = ()
    needles: int | None = None

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
    fields.only((*(("kind",) if listed else ()), "needles", "rounds", *LENGTHS, *WEIGHTS, "mark"))
    kind = (fields.choice("kind", KINDS) if listed else None) or "swatch"
    needles, rounds = fields.count("needles", _NEEDLES), fields.count("rounds", _ROUNDS_KNITTED)
    mm = {name: fields.length(name, span) for name, span in LENGTHS.items()}
    grams, mark = fields.grams("grams", _GRAMS), fields.plain("mark", MARK)
    if all(fields.blank(name) for name in ("needles", "rounds", *LENGTHS)):
        return None
    asked = []
    across = not (fields.blank("flat_width") and fields.blank("unwashed_width"))
    if fields.blank("needles") and across and slots is not None:
        needles = slots
        asked.append((fields.where("needles"), f"Taken as the cylinder’s {slots}."))
    width, wet_width = mm["flat_width"], mm["unwashed_width"]
    length, wet_length = mm["length"], mm["unwashed_length"]
    if not asked:
        _together(fields, "needles", "flat_width", "needles and flat width go together")
    _together(fields, "rounds", "length", "rounds and the length over them go together")
    stitches = _per_mm(fields, "width", needles, (width, wet_width), STITCHES, 2)
    per_mm = _per_mm(fields, "length", rounds, (length, wet_length), ROUNDS, 1)
    if stitches is None and per_mm is None:
        return None  # how far it pulls says nothing of how wide it lies
    one, one_sd = _stitch(grams, needles, rounds) if kind == "swatch" else (None, 0.0)
    if kind == "sock" and grams is not None:
        asked.append((fields.where("grams"), _WHOLE_SOCK))
    if kind == "swatch" and (rounds or 40) < sources.SWATCH_ROUNDS_FEWEST:
        asked.append((fields.where("rounds"), _SHORT))
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
    )


def _together(fields: Fields, one: str, other: str, what: str) -> None:
    before = f"unwashed_{other.removeprefix('flat_')}"
    there = not (fields.blank(other) and fields.blank(before))
    if fields.blank(one) == there:
        missing = one if fields.blank(one) else other
        fields.refuse(missing, f"The swatch's {what}.", "Fill in both or neither.")


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
            size = "small" if value > span.high else "large"
            fields.refuse(
                field,
                f"Too {size} for so many {'needles' if name == 'width' else 'rounds'}.",
                "Measure the tube lying flat, and check the unit.",
            )
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


def _stitch(
    grams: float | None, needles: int | None, rounds: int | None
) -> tuple[float | None, float]:
    if grams is None or needles is None or rounds is None:
        return None, 0.0
    return grams / (needles * rounds), sources.SCALE / grams


def _read_pull(fields: Fields, pulled: float | None, width: float | None) -> float | None:
    if pulled is None or width is None:
        return None
    pull = pulled / width
    least, most = sources.USUAL_PULL
    if not (reaches(pull, least) and reaches(most, pull)):
        fields.refuse(
            "pulled_width",
            "Pulled, a tube is wider than at rest, but not by that much.",
            "Pull the same tube as far as a heel would, and measure it flat.",
        )
    return pull


def washed(found: Iterable[Swatch]) -> tuple[Swatch, ...]:
    """Return the tubes as they are after the wash."""
    tubes = tuple(found)
    shrinks = [_mean([tube.drawn_in[side] for tube in tubes]) for side in (0, 1)]
    return tuple(_washed(tube, shrinks) for tube in tubes)


def _mean(ratios: list[float | None]) -> float | None:
    known = [ratio for ratio in ratios if ratio is not None]
    return sum(known) / len(known) if known else None


def _washed(tube: Swatch, shrinks: list[float | None]) -> Swatch:
    if not any(tube.unwashed):
        return tube
    values, tapes = [tube.stitches, tube.rounds], [tube.stitches_tape, tube.rounds_tape]
    guessed = False
    for side, shrink in enumerate(shrinks):
        value = values[side]
        if tube.unwashed[side] and value is not None:
            guessed = guessed or shrink is None
            values[side] = value / (shrink or 1.0)
            more = sources.WASH_NOT_KNOWN if shrink is None else sources.WASH_AS_BEFORE
            tapes[side] = hypot(tapes[side], more)
    field = "unwashed_width" if tube.unwashed[0] else "unwashed_length"
    asked = (f"{tube.field}.{field}", _WASH if guessed else _BY_OWN)
    return replace(
        tube,
        stitches=values[0],
        rounds=values[1],
        stitches_tape=tapes[0],
        rounds_tape=tapes[1],
        questions=(*tube.questions, asked),
    )


def drew_in(tube: Swatch) -> str:
    """Return in words how the wash changed a tube, "" if that is not known."""
    said = [
        f"{abs(1 - ratio) * 100:.0f} % {'narrower' if ratio < 1 else 'wider'}"
        if side == 0
        else f"{abs(1 - ratio) * 100:.0f} % {'shorter' if ratio < 1 else 'longer'}"
        for side, ratio in enumerate(tube.drawn_in)
        if ratio is not None
    ]
    return f"the wash made it {' and '.join(said)}" if said else ""
