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

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot, log, sqrt
from typing import Literal

from engine import sources
from engine.fabric import gauge, swatch, swatch_line, wash, yarn
from engine.fabric.certainty import Foretold
from engine.fabric.gauge import Gauge, Seen, Way
from engine.fabric.knitter import UNKNOWN, Knitter
from engine.fabric.swatch import HUNG, MARK, Swatch
from engine.fabric.swatch_line import Line
from engine.fabric.yarn import Yarn
from engine.read import units
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.say.message import Message

SWATCHES_MOST = 40
_KNOWN = (
    "stitches", "rounds", "swatch", "swatches", "mark", "hung", "yarn", "strands", "along",
)  # fmt: skip
_ANY = say.yarn_usual(length="412")  # what is taken for sock yarn of which nothing was told
_STRANDS = Span(say.of_strands(), 1, 8)
_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP


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
    way: Way
    words: tuple[Message, ...]
    tex: float
    tex_told: bool
    pull: float
    pull_measured: bool = False
    guessed: tuple[str, ...] = ()
    questions: tuple[tuple[str, Message], ...] = ()
    mark: float | None = None
    line: Line | None = None
    seen: tuple[Seen, ...] = ()
    weighed_sd: float | None = None
    by_weight: float = 1.0
    tex_sd: float = float(sources.TEX_AS_TOLD)
    yarn_name: Message | None = None
    across: Foretold | None = None
    along: Foretold | None = None
    knitter: Knitter = UNKNOWN

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
            self.stitches, self.rounds, *known, self.way, (), self.mark, self.line, self.seen
        )
        tubes = (tube, *(one for one, *_ in self.seen))
        tex = self.tex if self.tex_told else None
        found = gauge.with_one_more(fields, tubes, before, tex, self.knitter)
        if found is None:
            return self
        stitches, rounds = found.stitches or self.stitches, found.rounds or self.rounds
        return replace(self, stitches=stitches, rounds=rounds).known(found.across, found.along)

    def rounds_sd_with(self, sd: float) -> float:
        """Return the relative error of the next sock's rounds with another `sd` besides."""
        return hypot(self.rounds_sd, sd) if self.along is None else self.along.sd(sd**2)


def read(fields: Fields, slots: int | None = None, knitter: Knitter = UNKNOWN) -> Fabric | None:
    """Return the fabric of a request, by this knitter, on `slots` if they are known.

    None where there is none, with its problems noted.
    """
    fields.only(_KNOWN)
    noted = len(fields.problems)
    thread, mark = _read_yarn(fields), fields.plain("mark", MARK)
    newest = swatch.read(fields.part("swatch"), slots)
    rows = fields.parts("swatches", SWATCHES_MOST)
    others = [swatch.read(row, slots, listed=True) for row in rows]
    told, hung = gauge.told(fields, knitter), fields.grams("hung", HUNG)
    if len(fields.problems) > noted:
        return None
    tubes = wash.washed([tube for tube in (newest, *reversed(others)) if tube])
    if tubes:
        by_number = thread.tex if thread and not thread.name else None
        found = gauge.from_tubes(fields, tubes, mark, by_number, knitter)
    else:
        found = told or (gauge.from_yarn(thread, knitter) if thread else None)
        if found is None:
            fields.refuse(
                "",
                say.nothing_of_fabric(),
                say.tell_of_fabric(),
            )
        else:
            found = replace(found, mark=mark)
    if found is None:
        return None
    pulls = [tube.pull for tube in tubes if tube.pull]
    thread = thread or Yarn(float(sources.USUAL_SOCK_YARN_TEX), float(sources.TEX_NOT_TOLD), _ANY)
    whole = _complete(fields, found, thread, pulls[0] if pulls else None)
    cloth = _weighed(fields, replace(whole, knitter=knitter))
    if len(fields.problems) > noted:
        return None
    cloth = replace(cloth, questions=(*cloth.questions, *_hung_otherwise(tubes, hung)))
    return _with_questions(fields, cloth)


def _hung_otherwise(tubes: tuple[Swatch, ...], hung: float | None) -> Iterator[tuple[str, Message]]:
    """Yield a remark for each tube that was knitted with another weight than the sock.

    Nothing told of the sock, it gets what the newest tube had.
    """
    known = [tube for tube in tubes if tube.hung is not None]
    here = next((tube.hung for tube in known), None) if hung is None else hung
    for tube in known:
        if here is None or tube.hung is None:
            continue
        if abs(tube.hung - here) > sources.HUNG_ALIKE * max(here, tube.hung):
            there, text = (str(units.weight(one)["text"]) for one in (tube.hung, here))
            yield f"{tube.field}.hung", say.hung_otherwise(there=there, here=text)


def _read_yarn(fields: Fields) -> Yarn | None:
    """Return all the strands that run together as one yarn; a guess where one of them is."""
    main, along = fields.read("yarn", yarn.read), fields.read("along", yarn.read)
    strands = fields.count("strands", _STRANDS) or 1
    if main is None:
        for name in ("strands", "along"):
            if fields.blank("yarn") and not fields.blank(name) and fields.text(name) != "1":
                fields.refuse(name, say.yarn_itself_missing(), say.fill_its_field())
        return None
    beside, beside_sd, beside_name = along or Yarn(0.0, 0.0)
    tex = main.tex * strands + beside
    sd = hypot(main.tex * strands * main.sd, beside * beside_sd) / tex
    names = tuple(name for name in (main.name, beside_name) if name)
    both = say.yarns_together(yarns=names) if len(names) > 1 else None
    return Yarn(tex, sd, both or next(iter(names), None))


def _complete(fields: Fields, found: Gauge, thread: Yarn, pull: float | None) -> Fabric:
    stitches, rounds, words = found.stitches, found.rounds, found.words
    across, along = found.across, found.along
    guessed: Literal["", "rounds", "stitches"] = ""
    asked = found.questions
    if rounds is None and stitches is not None:
        rounds, along = stitches * _SHAPE, across.doubted(sources.SHAPE_SD)
        guessed = "rounds"
    elif stitches is None and rounds is not None:
        stitches, across = rounds / _SHAPE, along.doubted(sources.SHAPE_SD)
        guessed = "stitches"
    if stitches is None or rounds is None:
        raise ValueError("a gauge has stitches or rounds")
    if guessed:
        taken = units.per_length(rounds if guessed == "rounds" else stitches, fields.system)
        left_out = say.left_out(rate=str(taken["text"]))
        asked = (*asked, (_guessed_field(fields, found, guessed), left_out))
        words = (*words, say.guessed_by_shape(side=guessed))
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
            say.stitches_too_heavy(),
            say.weigh_swatch_alone(),
        )
        return cloth
    if not cloth.tex_told:
        return replace(cloth, tex=tex, tex_told=True, weighed_sd=sd, yarn_name=None)
    apart = hypot(sd, sources.TEX_AS_TOLD, sources.LOOP_BY_STATE)
    asked = cloth.questions
    if abs(log(tex / cloth.tex)) > sources.FAR_APART * apart:
        asked = (*asked, (at, say.weight_does_not_fit()))
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
        asked.append((at, say.odd_shape(shape=f"{shape:.2f}")))
    if fabric.tex_told and fabric.way != "yarn":
        if fabric.tightness < sources.TIGHTNESS_LOOSE:
            asked.append((fields.where("yarn"), say.fabric_loose()))
        elif fabric.tightness > sources.TIGHTNESS_FIRM:
            asked.append((fields.where("yarn"), say.fabric_firm()))
    return replace(fabric, questions=tuple(asked))
