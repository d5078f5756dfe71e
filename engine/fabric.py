"""The fabric: stitches and rounds per mm of a washed, rested tube, and how sure they are.

Three ways to know it, best first: swatches and socks as measured (`swatch`, and `ledger` for what
several say together), stitches and rounds per length as told, or the yarn's number alone. If only
one of stitches and rounds is known the other follows from plain knit's shape. By Munden (1959), for
relaxed plain knit with loop length l: stitches per length = Kw / l, rounds per length = Kc / l,
loops per area = Ks / l^2; so a swatch gives l, the yarn in one stitch, and a yarn with a usual
tightness sqrt(tex) / l gives both.

Strands run together add their tex. What a stitch weighs beats tex x l: where tubes were weighed, l
is that weight over the yarn's tex, or the yarn's tex is that weight over l.

Limits: plain knit of one yarn; no figure from a yarn's number alone deserves a pair of socks before
a swatch does.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot, log, sqrt
from typing import NamedTuple

from engine import ledger, sources, swatch, units, yarn
from engine.fields import Fields, Span
from engine.ledger import Line
from engine.swatch import MARK, ROUNDS, STITCHES, Swatch

SWATCHES_MOST = 40
_STRANDS = Span("the strands of a yarn", 1, 8)
_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP
_LEFT_OUT = "Left out, and the counts hang on it. Measure it; until then we take about"
_FAR = "This is far from what the others say. Same yarn, same mark? Measure it again."


class Seen(NamedTuple):
    """A tube of the ledger: its `share` of the weight, and how many sd it is `off` the others."""

    tube: Swatch
    share: float
    off: float


@dataclass(frozen=True)
class Fabric:
    """Plain knit: `stitches` and `rounds` per mm with relative standard deviations.

    `loop` is the yarn in one stitch in mm, `tex` the yarn's number (`tex_told` False where it is
    the usual sock yarn's), `pull` how far the tube stretches over its relaxed girth. `mark` is the
    tension mark it is knitted at, `line` tells what other marks would give, `seen` are the tubes
    that say so. Where they were weighed, loop x tex is a stitch's weight with the relative error
    `weighed_sd`, `by_weight` being the loop so found over that by Munden's constants.
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
    mark: float | None = None
    line: Line | None = None
    seen: tuple[Seen, ...] = ()
    weighed_sd: float | None = None
    by_weight: float = 1.0

    @property
    def loop(self) -> float:
        """Return the loop length in mm: sqrt(Ks / (stitches x rounds)), or as weighed."""
        return ledger.loop(self.stitches, self.rounds) * self.by_weight

    @property
    def tightness(self) -> float:
        """Return sqrt(tex) / loop length in mm."""
        return sqrt(self.tex) / self.loop

    def at(self, mark: float) -> Fabric:
        """Return this yarn at another mark; `LookupError` without a line to say."""
        if self.line is None:
            raise LookupError("one mark says nothing of another")
        stitches, rounds, sd = self.line.at(mark)
        return replace(
            self, stitches=stitches, rounds=rounds, stitches_sd=sd, rounds_sd=sd, mark=mark
        )


@dataclass(frozen=True)
class _Gauge:
    stitches: float | None
    rounds: float | None
    stitches_sd: float
    rounds_sd: float
    way: str
    words: str
    mark: float | None = None
    line: Line | None = None
    seen: tuple[Seen, ...] = ()
    questions: tuple[tuple[str, str], ...] = ()


def read(fields: Fields) -> Fabric | None:
    """Return the fabric of a request, or None with its problems noted."""
    fields.only(("stitches", "rounds", "swatch", "swatches", "mark", "yarn", "strands", "along"))
    noted = len(fields.problems)
    tex, mark = _read_tex(fields), fields.plain("mark", MARK)
    newest = swatch.read(fields.part("swatch"))
    others = [swatch.read(row, listed=True) for row in fields.parts("swatches", SWATCHES_MOST)]
    told = _read_told(fields)
    if len(fields.problems) > noted:
        return None
    tubes = swatch.washed(tube for tube in (newest, *reversed(others)) if tube)
    if tubes:
        gauge = _from_tubes(fields, tubes, mark, tex)
    else:
        gauge = told or (_from_yarn(tex) if tex else None)
        if gauge is None:
            fields.refuse(
                "",
                "Nothing is known of the fabric yet.",
                "Give a swatch, or stitches and rounds per length, or the yarn's number.",
            )
        else:
            gauge = replace(gauge, mark=mark)
    if gauge is None:
        return None
    pulls = [tube.pull for tube in tubes if tube.pull]
    cloth = _weighed(fields, _complete(fields, gauge, tex, pulls[0] if pulls else None))
    return _with_questions(fields, cloth) if len(fields.problems) == noted else None


def _read_tex(fields: Fields) -> float | None:
    tex, along = fields.read("yarn", yarn.read_number), fields.read("along", yarn.read_number)
    strands = fields.count("strands", _STRANDS)
    if tex is None:
        for name in ("strands", "along"):
            if fields.blank("yarn") and not fields.blank(name) and fields.text(name) != "1":
                fields.refuse(
                    name,
                    "The number of the yarn itself is missing.",
                    "Write it in its field, or empty this one.",
                )
        return None
    return tex * (strands or 1) + (along or 0.0)


def _from_tubes(
    fields: Fields, tubes: tuple[Swatch, ...], wanted: float | None, tex: float | None
) -> _Gauge | None:
    """Return what tubes say together, the newest first, at the mark wanted or the newest's."""
    line = ledger.line(tubes, tex)
    mark = tubes[0].mark if wanted is None else wanted
    tried = {tube.mark for tube in tubes if tube.mark is not None}
    if line is not None and mark is not None:
        return _on_line(fields, tubes, line, mark)
    if wanted is not None and tried and wanted not in tried:
        only = units.mark(*tried)
        fields.refuse(
            "mark",
            f"Only mark {only} was tried, which says nothing of mark {units.mark(wanted)}.",
            f"Knit a swatch at another mark too, or write {only}.",
        )
        return None
    if line is not None:  # nobody said at which mark the sock is knitted: as the newest was
        tubes = tuple(tube for tube in tubes if tube.mark is None)
    elif mark is None and tried:
        (mark,) = tried
    return _at_one_mark(tubes, mark, line)


def _at_one_mark(tubes: tuple[Swatch, ...], mark: float | None, line: Line | None) -> _Gauge:
    across = [(tube.stitches, tube.stitches_sd) for tube in tubes if tube.stitches]
    along = [(tube.rounds, tube.rounds_sd) for tube in tubes if tube.rounds]
    w, c = (ledger.mean(one) if one else None for one in (across, along))
    floor = float(sources.SOCK_TO_SWATCH)  # nothing is surer than one tube is like the next
    seen = []
    for tube in tubes:
        parts = [
            ((sd / found.sd) ** -2, (value / found.value - 1) / sd)
            for value, sd, found in (
                (tube.stitches, tube.stitches_sd, w),
                (tube.rounds, tube.rounds_sd, c),
            )
            if value and found
        ]
        share = sum(part for part, _ in parts) / sum(one is not None for one in (w, c))
        seen.append(Seen(tube, share, max((off for _, off in parts), key=abs)))
    words = _tubes_in_words(tubes)
    chi = sum(one.chi_square for one in (w, c) if one)
    if ledger.scattered(chi, sum(one.tubes - 1 for one in (w, c) if one)):
        words += f"; {_SCATTERED}"
    return _Gauge(
        w.value if w else None,
        c.value if c else None,
        max(w.sd, floor) if w else 0.0,
        max(c.sd, floor) if c else 0.0,
        "swatch",
        words,
        mark,
        line,
        tuple(seen),
        _asked(seen),
    )


_SCATTERED = "they differ by more than rulers explain: were all of this yarn, at these marks?"


def _on_line(fields: Fields, tubes: tuple[Swatch, ...], line: Line, mark: float) -> _Gauge | None:
    low, high = units.mark(line.low), units.mark(line.high)
    try:
        if not line.near(mark):
            raise ValueError("far out")
        stitches, rounds, sd = line.at(mark)
        if stitches not in STITCHES or rounds not in ROUNDS:
            raise ValueError("no fabric")
    except ValueError:
        fields.refuse(
            "mark",
            f"Mark {units.mark(mark)} is far from the marks tried, {low} to {high}.",
            "Knit a swatch nearer to it, or choose a mark nearer to those.",
        )
        return None
    on = [tube for tube in tubes if tube.mark is not None]
    whole = sum(point.sd**-2 for point in line.points)
    seen = [
        Seen(tube, point.sd**-2 / whole, line.off(point))
        for tube, point in zip(on, line.points, strict=True)
    ]
    asked = [
        (f"{tube.field}.mark", "Without its mark it is left out.")
        for tube in tubes
        if tube.mark is None
    ]
    if not line.low <= mark <= line.high:
        words = f"Beyond the marks tried, {low} to {high}: less sure. A swatch there would tell."
        asked.append((fields.where("mark"), words))
    words = f"{_tubes_in_words(on)} at marks {low} to {high}"
    if line.scattered:
        words += f"; {_SCATTERED}"
    return _Gauge(
        stitches, rounds, sd, sd, "swatch", words, mark, line, tuple(seen), (*asked, *_asked(seen))
    )


def _tubes_in_words(tubes: Sequence[Swatch]) -> str:
    if len(tubes) == 1:
        return f"from your {tubes[0].kind}"
    counts = [(sum(tube.kind == kind for tube in tubes), kind) for kind in swatch.KINDS]
    said = [f"{n} {kind if n == 1 else swatch.PLURALS[kind]}" for n, kind in counts if n]
    return f"from {' and '.join(said)}"


def _asked(seen: Sequence[Seen]) -> tuple[tuple[str, str], ...]:
    asked = [one for seen_one in seen for one in seen_one.tube.questions]
    for tube, _, off in seen:
        if abs(off) > sources.FAR_APART:
            name = "flat_width" if tube.stitches else "length"
            asked.append((f"{tube.field}.{name}", _FAR))
    return tuple(asked)


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
    return Fabric(
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
        gauge.mark,
        gauge.line,
        gauge.seen,
    )


def _weighed(fields: Fields, cloth: Fabric) -> Fabric:
    """Return the fabric with the weight of a stitch as its tubes were weighed."""
    stitches = []
    for tube, *_ in cloth.seen:
        if tube.grams:
            own = ledger.loop(*ledger.whole(tube)[:2])
            sd = hypot(tube.grams_sd, sources.SOCK_TO_SWATCH)
            stitches.append((tube.grams * cloth.loop / own, sd))
    if not stitches:
        return cloth
    grams, sd, *_ = ledger.mean(stitches)
    tex = grams / cloth.loop * 1e6
    at = next(f"{tube.field}.grams" for tube, *_ in cloth.seen if tube.grams)
    if not yarn.FINEST <= tex <= yarn.THICKEST:
        Fields({}, at, fields.system, fields.problems).refuse(
            "",
            "So many stitches of a sock cannot weigh that.",
            "Weigh the swatch alone, and check the unit.",
        )
        return cloth
    if not cloth.tex_told:
        return replace(cloth, tex=tex, tex_told=True, weighed_sd=sd)
    apart = hypot(sd, sources.TEX_AS_TOLD, sources.LOOP_BY_STATE)
    asked = cloth.questions
    if abs(log(tex / cloth.tex)) > sources.FAR_APART * apart:
        asked = (*asked, (at, "This does not fit the yarn’s number. Weigh it again?"))
    return replace(cloth, by_weight=tex / cloth.tex, weighed_sd=sd, questions=asked)


def _guessed_field(fields: Fields, gauge: _Gauge, guessed: str) -> str:
    if gauge.seen:
        return f"{gauge.seen[0].tube.field}.{'rounds' if guessed == 'rounds' else 'flat_width'}"
    return fields.where(guessed)


def _with_questions(fields: Fields, fabric: Fabric) -> Fabric:
    asked = list(fabric.questions)
    at = f"{fabric.seen[0].tube.field}.rounds" if fabric.seen else fields.where("rounds")
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
