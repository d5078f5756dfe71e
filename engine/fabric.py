"""The fabric: stitches and rounds per mm of a washed, rested tube, and how sure they are.

Three ways to know it, best first: a swatch as measured (needles / (2 x flat width), rounds /
length), stitches and rounds per length as told, or the yarn's number alone. If only one of stitches
and rounds is known the other follows from plain knit's shape. By Munden (1959), for relaxed plain
knit with loop length l: stitches per length = Kw / l, rounds per length = Kc / l, loops per area =
Ks / l^2; so a swatch gives l, the yarn in one stitch, and a yarn with a usual tightness sqrt(tex) /
l gives both.

Limits: plain knit of one yarn; no figure from a yarn's number alone deserves a pair of socks before
a swatch does.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import hypot, sqrt

from engine import sources, units, yarn
from engine.fields import Fields, Span

STITCHES = Span("stitches per length in a sock", 0.09, 0.8)
ROUNDS = Span("rounds per length in a sock", 0.1, 1.1)
_NEEDLES = Span("the needles of a swatch", 8, 200)
_FLAT = Span("the flat width of a tube", 15, 400)
_ROUNDS_KNITTED = Span("the rounds of a swatch", 4, 1000)
_LENGTH = Span("the length of a swatch", 10, 2000)
SWATCH_LENGTHS = {"flat_width": _FLAT, "length": _LENGTH, "pulled_width": _FLAT}
_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP
_LEFT_OUT = "Left out, and the counts hang on it. Measure it; until then we take about"
_SHORT = "A short swatch says little: knit at least 40 rounds, wash it and let it rest a day."


@dataclass(frozen=True)
class Fabric:
    """Plain knit: `stitches` and `rounds` per mm with relative standard deviations.

    `loop` is the yarn in one stitch in mm, `tex` the yarn's number (`tex_told` False where it is
    the usual sock yarn's), `pull` how far the tube stretches over its relaxed girth.
    """

    stitches: float
    rounds: float
    stitches_sd: float
    rounds_sd: float
    way: str
    words: str
    tex: float
    tex_told: bool
    pull: float
    pull_measured: bool = False
    guessed: tuple[str, ...] = ()
    questions: tuple[tuple[str, str], ...] = ()

    @property
    def loop(self) -> float:
        """Return the loop length in mm: sqrt(Ks / (stitches x rounds))."""
        return sqrt(sources.LOOPS_TIMES_LOOP_SQUARED / (self.stitches * self.rounds))

    @property
    def tightness(self) -> float:
        """Return sqrt(tex) / loop length in mm."""
        return sqrt(self.tex) / self.loop


@dataclass(frozen=True)
class _Gauge:
    stitches: float | None
    rounds: float | None
    stitches_sd: float
    rounds_sd: float
    way: str
    words: str
    questions: tuple[tuple[str, str], ...] = ()


def read(fields: Fields) -> Fabric | None:
    """Return the fabric of a request, or None with its problems noted."""
    fields.only(("stitches", "rounds", "swatch", "yarn"))
    noted = len(fields.problems)
    tex = fields.read("yarn", yarn.read_number)
    swatch = fields.part("swatch")
    gauge, pull = _read_swatch(swatch)
    told = _read_told(fields)
    if len(fields.problems) > noted:
        return None
    gauge = gauge or told or (_from_yarn(tex) if tex else None)
    if gauge is None:
        fields.refuse(
            "",
            "Nothing is known of the fabric yet.",
            "Give a swatch, or stitches and rounds per length, or the yarn's number.",
        )
        return None
    return _complete(fields, gauge, tex, pull)


def _read_swatch(fields: Fields) -> tuple[_Gauge | None, float | None]:
    fields.only(("needles", "flat_width", "rounds", "length", "pulled_width"))
    needles, width = fields.count("needles", _NEEDLES), fields.length("flat_width", _FLAT)
    rounds, length = fields.count("rounds", _ROUNDS_KNITTED), fields.length("length", _LENGTH)
    pulled = fields.length("pulled_width", _FLAT)
    if all(fields.blank(name) for name in ("needles", "flat_width", "rounds", "length")):
        return None, None
    for one, other, what in (
        ("needles", "flat_width", "needles and flat width go together"),
        ("rounds", "length", "rounds and the length over them go together"),
    ):
        if fields.blank(one) != fields.blank(other):
            missing = one if fields.blank(one) else other
            fields.refuse(missing, f"The swatch's {what}.", "Fill in both or neither.")
    stitches = needles / (2 * width) if needles and width else None
    per_mm = rounds / length if rounds and length else None
    for name, value, span in (("flat_width", stitches, STITCHES), ("length", per_mm, ROUNDS)):
        if value is not None and value not in span:
            size = "small" if value > span.high else "large"
            fields.refuse(
                name,
                f"Too {size} for so many {'needles' if name == 'flat_width' else 'rounds'}.",
                "Measure the tube lying flat, and check the unit.",
            )
    pull = _read_pull(fields, pulled, width)
    gauge = _Gauge(
        stitches,
        per_mm,
        hypot(sources.TAPE_ON_SWATCH / width, sources.SOCK_TO_SWATCH) if width else 0.0,
        hypot(sources.TAPE_ON_SWATCH / length, sources.SOCK_TO_SWATCH) if length else 0.0,
        "swatch",
        "from your swatch",
        ((fields.where("rounds"), _SHORT),)
        if (rounds or 40) < sources.SWATCH_ROUNDS_FEWEST
        else (),
    )
    return (gauge if stitches or per_mm else None), pull


def _read_pull(fields: Fields, pulled: float | None, width: float | None) -> float | None:
    if pulled is None or width is None:
        return None
    pull = pulled / width
    if not sources.USUAL_PULL[0] <= pull <= sources.USUAL_PULL[1]:
        fields.refuse(
            "pulled_width",
            "Pulled, a tube is wider than at rest, but not by that much.",
            "Pull the same tube as far as a heel would, and measure it flat.",
        )
    return pull


def _read_told(fields: Fields) -> _Gauge | None:
    stitches, rounds = fields.rate("stitches", STITCHES), fields.rate("rounds", ROUNDS)
    if stitches is None and rounds is None:
        return None
    sd = float(sources.GAUGE_AS_TOLD)
    return _Gauge(stitches, rounds, sd, sd, "gauge", "from the stitches and rounds you gave")


def _from_yarn(tex: float) -> _Gauge:
    loop = sqrt(tex) / sources.TIGHTNESS_SOCK
    return _Gauge(
        sources.WALES_TIMES_LOOP / loop,
        sources.COURSES_TIMES_LOOP / loop,
        sources.STITCHES_FROM_YARN,
        sources.ROUNDS_FROM_YARN,
        "yarn",
        "guessed from the yarn's number, for a sock of usual tightness",
    )


def _complete(fields: Fields, gauge: _Gauge, tex: float | None, pull: float | None) -> Fabric:
    stitches, rounds, words = gauge.stitches, gauge.rounds, gauge.words
    stitches_sd, rounds_sd = gauge.stitches_sd, gauge.rounds_sd
    guessed, asked = "", gauge.questions
    if rounds is None and stitches is not None:
        rounds, rounds_sd = stitches * _SHAPE, hypot(stitches_sd, sources.SHAPE_SD)
        words += "; rounds per length guessed from the stitches"
        guessed = "rounds"
    elif stitches is None and rounds is not None:
        stitches, stitches_sd = rounds / _SHAPE, hypot(rounds_sd, sources.SHAPE_SD)
        words += "; stitches per length guessed from the rounds"
        guessed = "stitches"
    if stitches is None or rounds is None:
        raise ValueError("a gauge has stitches or rounds")
    if guessed:
        taken = units.per_length(rounds if guessed == "rounds" else stitches, fields.system)
        asked = (*asked, (_guessed_field(fields, gauge, guessed), f"{_LEFT_OUT} {taken['text']}."))
    fabric = Fabric(
        stitches,
        rounds,
        stitches_sd,
        rounds_sd,
        gauge.way,
        words,
        tex or float(sources.USUAL_SOCK_YARN_TEX),
        tex is not None,
        pull or float(sources.PLAIN_PULL),
        pull is not None,
        (guessed,) if guessed else (),
        asked,
    )
    return _with_questions(fields, fabric)


def _guessed_field(fields: Fields, gauge: _Gauge, guessed: str) -> str:
    if gauge.way == "swatch":
        return fields.where("swatch.rounds" if guessed == "rounds" else "swatch.flat_width")
    return fields.where(guessed)


def _with_questions(fields: Fields, fabric: Fabric) -> Fabric:
    asked = list(fabric.questions)
    at = fields.where("swatch.rounds" if fabric.way == "swatch" else "rounds")
    shape = fabric.rounds / fabric.stitches
    if not sources.USUAL_SHAPE[0] <= shape <= sources.USUAL_SHAPE[1]:
        asked.append(
            (
                at,
                f"{shape:.2f} rounds to a stitch's width, plain knit has 1.3: are they swapped?",
            )
        )
    if fabric.tex_told and fabric.way != "yarn":
        if fabric.tightness < sources.TIGHTNESS_LOOSE:
            asked.append(
                (
                    fields.where("yarn"),
                    "This is loose fabric for so fine a yarn: it will wear soon.",
                )
            )
        elif fabric.tightness > sources.TIGHTNESS_FIRM:
            asked.append(
                (
                    fields.where("yarn"),
                    "This is very firm fabric for so thick a yarn: it may crank hard.",
                )
            )
    return replace(fabric, questions=tuple(asked))
