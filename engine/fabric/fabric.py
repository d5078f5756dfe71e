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

from dataclasses import dataclass, replace
from math import hypot, log, sqrt

from engine import sources
from engine.fabric import gauge, swatch, swatch_line, yarn
from engine.fabric.certainty import Foretold
from engine.fabric.gauge import Gauge, Seen
from engine.fabric.swatch import MARK, Swatch
from engine.fabric.swatch_line import Line
from engine.fabric.yarn import Yarn
from engine.read import units
from engine.read.fields import Fields, Span

SWATCHES_MOST = 40
_ANY = "yarn, 412 m per 100 g"  # what is taken for sock yarn of which nothing was told
_STRANDS = Span("the strands of a yarn", 1, 8)
_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP
_LEFT_OUT = "Left out, and the counts hang on it. Measure it; until then we take about"


@dataclass(frozen=True)
class Fabric:
    """Plain knit: `stitches` and `rounds` per mm with relative standard deviations.

    Those are of the next sock, as `Foretold.sd` has them; `across` and `along` hold what they are
    made of, where more than such a figure is known.

    `loop` is the yarn in one stitch in mm, `tex` the yarn's number with its relative error `tex_sd`
    (`tex_told` False where it is guessed: from `yarn_name`, or as the usual sock yarn's), `pull`
    how far the tube stretches over its relaxed girth. `mark` is the tension mark it is knitted at,
    `line` tells what other marks would give, `seen` are the tubes that say so. Where they were
    weighed, loop x tex is a stitch's weight with the relative error `weighed_sd`, `by_weight` being
    the loop so found over that by Munden's constants.
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
    tex_sd: float = float(sources.TEX_AS_TOLD)
    yarn_name: str = ""
    across: Foretold | None = None
    along: Foretold | None = None

    @property
    def loop(self) -> float:
        """Return the loop length in mm: sqrt(Ks / (stitches x rounds)), or as weighed."""
        return swatch_line.loop(self.stitches, self.rounds) * self.by_weight

    @property
    def tightness(self) -> float:
        """Return sqrt(tex) / loop length in mm."""
        return sqrt(self.tex) / self.loop

    def tightened(self, by: float) -> Fabric:
        """Return this yarn with `by` times the stitches and the rounds per mm (Munden 1959)."""
        return replace(self, stitches=self.stitches * by, rounds=self.rounds * by)

    def at(self, mark: float) -> Fabric:
        """Return this yarn at another mark; `LookupError` without a line to say."""
        if self.line is None:
            raise LookupError("one mark says nothing of another")
        stitches, rounds, _ = self.line.at(mark)
        known = self.line.foretold(mark)
        return replace(self, stitches=stitches, rounds=rounds, mark=mark).known(known, known)

    def known(self, across: Foretold, along: Foretold) -> Fabric:
        """Return the same counts, foretold so."""
        return replace(
            self, stitches_sd=across.sd(), rounds_sd=along.sd(), across=across, along=along
        )

    def with_tube(self, fields: Fields, tube: Swatch) -> Fabric:
        """Return it with one more tube of this yarn and mark; as it is where that cannot be."""
        known = self.across or gauge.UNKNOWN, self.along or gauge.UNKNOWN
        before = Gauge(
            self.stitches, self.rounds, *known, self.way, "", self.mark, self.line, self.seen
        )
        tubes = (tube, *(one for one, *_ in self.seen))
        tex = self.tex if self.tex_told else None
        found = gauge.with_one_more(fields, tubes, before, tex)
        if found is None:
            return self
        stitches, rounds = found.stitches or self.stitches, found.rounds or self.rounds
        return replace(self, stitches=stitches, rounds=rounds).known(found.across, found.along)

    def rounds_sd_with(self, sd: float) -> float:
        """Return the relative error of the next sock's rounds with another `sd` besides."""
        return hypot(self.rounds_sd, sd) if self.along is None else self.along.sd(sd**2)


def read(fields: Fields, slots: int | None = None) -> Fabric | None:
    """Return the fabric of a request, knitted on `slots` if they are known.

    None where there is none, with its problems noted.
    """
    fields.only(("stitches", "rounds", "swatch", "swatches", "mark", "yarn", "strands", "along"))
    noted = len(fields.problems)
    thread, mark = _read_yarn(fields), fields.plain("mark", MARK)
    newest = swatch.read(fields.part("swatch"), slots)
    rows = fields.parts("swatches", SWATCHES_MOST)
    others = [swatch.read(row, slots, listed=True) for row in rows]
    told = gauge.told(fields)
    if len(fields.problems) > noted:
        return None
    tubes = swatch.washed(tube for tube in (newest, *reversed(others)) if tube)
    if tubes:
        by_number = thread.tex if thread and not thread.name else None
        found = gauge.from_tubes(fields, tubes, mark, by_number)
    else:
        found = told or (gauge.from_yarn(thread) if thread else None)
        if found is None:
            fields.refuse(
                "",
                "Nothing is known of the fabric yet.",
                "Give a swatch, or stitches and rounds per length, or what its band says.",
            )
        else:
            found = replace(found, mark=mark)
    if found is None:
        return None
    pulls = [tube.pull for tube in tubes if tube.pull]
    thread = thread or Yarn(float(sources.USUAL_SOCK_YARN_TEX), float(sources.TEX_NOT_TOLD), _ANY)
    cloth = _weighed(fields, _complete(fields, found, thread, pulls[0] if pulls else None))
    return _with_questions(fields, cloth) if len(fields.problems) == noted else None


def _read_yarn(fields: Fields) -> Yarn | None:
    """Return all the strands that run together as one yarn; a guess where one of them is."""
    main, along = fields.read("yarn", yarn.read), fields.read("along", yarn.read)
    strands = fields.count("strands", _STRANDS) or 1
    if main is None:
        for name in ("strands", "along"):
            if fields.blank("yarn") and not fields.blank(name) and fields.text(name) != "1":
                fields.refuse(
                    name,
                    "The number of the yarn itself is missing.",
                    "Write it in its field, or empty this one.",
                )
        return None
    beside, beside_sd, beside_name = along or Yarn(0.0, 0.0)
    tex = main.tex * strands + beside
    sd = hypot(main.tex * strands * main.sd, beside * beside_sd) / tex
    return Yarn(tex, sd, " and ".join(filter(None, (main.name, beside_name))))


def _complete(fields: Fields, found: Gauge, thread: Yarn, pull: float | None) -> Fabric:
    stitches, rounds, words = found.stitches, found.rounds, found.words
    across, along = found.across, found.along
    guessed, asked = "", found.questions
    if rounds is None and stitches is not None:
        rounds, along = stitches * _SHAPE, across.doubted(sources.SHAPE_SD)
        words += "; rounds per length guessed from the stitches"
        guessed = "rounds"
    elif stitches is None and rounds is not None:
        stitches, across = rounds / _SHAPE, along.doubted(sources.SHAPE_SD)
        words += "; stitches per length guessed from the rounds"
        guessed = "stitches"
    if stitches is None or rounds is None:
        raise ValueError("a gauge has stitches or rounds")
    if guessed:
        taken = units.per_length(rounds if guessed == "rounds" else stitches, fields.system)
        asked = (*asked, (_guessed_field(fields, found, guessed), f"{_LEFT_OUT} {taken['text']}."))
    return Fabric(
        stitches,
        rounds,
        across.sd(),
        along.sd(),
        found.way,
        words,
        thread.tex,
        not thread.name,
        pull or float(sources.PLAIN_PULL),
        pull is not None,
        (guessed,) if guessed else (),
        asked,
        found.mark,
        found.line,
        found.seen,
        tex_sd=thread.sd,
        yarn_name=thread.name,
        across=across,
        along=along,
    )


def _weighed(fields: Fields, cloth: Fabric) -> Fabric:
    """Return the fabric with the weight of a stitch as its tubes were weighed."""
    stitches = []
    for tube, *_ in cloth.seen:
        if tube.grams:
            own = swatch_line.loop(*swatch_line.whole(tube)[:2])
            sd = hypot(tube.grams_sd, sources.SOCK_TO_SWATCH)
            stitches.append((tube.grams * cloth.loop / own, sd))
    if not stitches:
        return cloth
    grams, sd, *_ = swatch_line.mean(stitches)
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
        return replace(cloth, tex=tex, tex_told=True, weighed_sd=sd, yarn_name="")
    apart = hypot(sd, sources.TEX_AS_TOLD, sources.LOOP_BY_STATE)
    asked = cloth.questions
    if abs(log(tex / cloth.tex)) > sources.FAR_APART * apart:
        asked = (*asked, (at, "This does not fit the yarn’s length per ball. Weigh it again?"))
    return replace(cloth, by_weight=tex / cloth.tex, weighed_sd=sd, questions=asked)


def _guessed_field(fields: Fields, found: Gauge, guessed: str) -> str:
    if found.seen:
        return f"{found.seen[0].tube.field}.{'rounds' if guessed == 'rounds' else 'flat_width'}"
    return fields.where(guessed)


def _with_questions(fields: Fields, fabric: Fabric) -> Fabric:
    asked = list(fabric.questions)
    at = f"{fabric.seen[0].tube.field}.rounds" if fabric.seen else fields.where("rounds")
    shape = fabric.rounds / fabric.stitches
    least, most = sources.USUAL_SHAPE
    if not (units.reaches(shape, least) and units.reaches(most, shape)):
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
