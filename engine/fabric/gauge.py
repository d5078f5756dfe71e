"""Stitches and rounds per length, by the best of the ways to know them: tubes, told, or the yarn.

Tubes are taken at the mark wanted or the newest one's: by `certainty`, or by the line over marks
where there is one. A tube far from what the others say is asked about, and counts on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, hypot, log, sqrt
from typing import Literal, NamedTuple

from engine import sources
from engine.fabric import certainty, swatch, swatch_line
from engine.fabric.certainty import Foretold, Reading, Scatter, Told
from engine.fabric.knitter import Knitter
from engine.fabric.swatch import ROUNDS, STITCHES, Swatch
from engine.fabric.swatch_line import Line
from engine.fabric.yarn import Yarn
from engine.read import units
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message

UNKNOWN = Foretold(0.0)
_USUAL_SIZES = {"swatch": (150.0, 60), "sock": (235.0, 90)}  # mm, and the rounds over them


Way = Literal["swatch", "gauge", "yarn"]  # how it is known


class Seen(NamedTuple):
    """A tube of the ledger: its `share` of the weight, and how many sd it is `off` the others."""

    tube: Swatch
    share: float
    off: float


@dataclass(frozen=True)
class Gauge:
    """Stitches and rounds per mm (either may lack), what they foretell, and whence."""

    stitches: float | None
    rounds: float | None
    across: Foretold
    along: Foretold
    way: Way
    words: tuple[Message, ...]
    mark: float | None = None
    line: Line | None = None
    seen: tuple[Seen, ...] = ()
    questions: tuple[tuple[str, Message], ...] = ()


def from_tubes(
    fields: Fields,
    tubes: tuple[Swatch, ...],
    wanted: float | None,
    tex: float | None,
    knitter: Knitter,
) -> Gauge | None:
    """Return what tubes say together, the newest first, at the mark wanted or the newest's."""
    line = swatch_line.line(tubes, tex, knitter)
    mark = tubes[0].mark if wanted is None else wanted
    tried = {tube.mark for tube in tubes if tube.mark is not None}
    if line is not None and mark is not None:
        return _on_line(fields, tubes, line, mark)
    if wanted is not None and tried and wanted not in tried:
        only = units.mark(*tried)
        fields.refuse(
            "mark",
            say.one_mark_tried(only=only, wanted=units.mark(wanted)),
            say.try_that_mark(only=only),
        )
        return None
    if line is not None:  # nobody said at which mark the sock is knitted: as the newest was
        tubes = tuple(tube for tube in tubes if tube.mark is None)
    elif mark is None and tried:
        (mark,) = tried
    return _at_one_mark(tubes, mark, line, knitter)


def _at_one_mark(
    tubes: tuple[Swatch, ...],
    mark: float | None,
    line: Line | None,
    knitter: Knitter,
    priors: tuple[Told | None, Told | None] = (None, None),
) -> Gauge:
    sides = [knitter.as_socks(tube) for tube in tubes]
    w, c = certainty.means(sides, priors, knitter.sides)
    shares = [iter(one.shares) if one else iter(()) for one in (w, c)]
    seen, chi = [], 0.0
    for tube, readings in zip(tubes, sides, strict=True):
        parts = [
            (next(share), (reading.log - found.log) / hypot(reading.tape, sources.SOCK_TO_SWATCH))
            for reading, found, share in zip(readings, (w, c), shares, strict=True)
            if reading and found
        ]
        chi += sum(off**2 for _, off in parts)
        share = sum(part for part, _ in parts) / sum(one is not None for one in (w, c))
        seen.append(Seen(tube, share, max((off for _, off in parts), key=abs)))
    words = [_tubes_in_words(tubes)]
    if swatch_line.scattered(chi, sum(len(one.shares) - 1 for one in (w, c) if one)):
        words.append(say.tubes_scattered())
    return Gauge(
        exp(w.log) if w else None,
        exp(c.log) if c else None,
        w.foretold if w else UNKNOWN,
        c.foretold if c else UNKNOWN,
        "swatch",
        tuple(words),
        mark,
        line,
        tuple(seen),
        _asked(seen),
    )


def _on_line(fields: Fields, tubes: tuple[Swatch, ...], line: Line, mark: float) -> Gauge | None:
    low, high = units.mark(line.low), units.mark(line.high)
    at = line.at(mark) if line.near(mark) and line.loop_at(mark)[0] > 0 else None
    if at is None or at[0] not in STITCHES or at[1] not in ROUNDS:
        fields.refuse(
            "mark",
            say.mark_far_off(mark=units.mark(mark), low=low, high=high),
            say.swatch_nearer(),
        )
        return None
    stitches, rounds, _ = at
    foretold = line.foretold(mark)
    on = [tube for tube in tubes if tube.mark is not None]
    whole = sum(point.sd**-2 for point in line.points)
    seen = [
        Seen(tube, point.sd**-2 / whole, line.off(point))
        for tube, point in zip(on, line.points, strict=True)
    ]
    asked = [(f"{tube.field}.mark", say.without_mark()) for tube in tubes if tube.mark is None]
    if not line.low <= mark <= line.high:
        asked.append((fields.where("mark"), say.beyond_marks_tried(low=low, high=high)))
    words = [_tubes_in_words(on), say.at_marks(low=low, high=high)]
    if line.scattered:
        words.append(say.tubes_scattered())
    return Gauge(
        stitches,
        rounds,
        foretold,
        foretold,
        "swatch",
        tuple(words),
        mark,
        line,
        tuple(seen),
        (*asked, *_asked(seen)),
    )


def if_longer(
    seen: Sequence[Seen],
    mark: float | None,
    line: Line | None,
    tex: float | None,
    now: Foretold,
    knitter: Knitter,
) -> Foretold | None:
    """Return what the rounds would be foretold by, had each tube been measured over twice as many.

    None where no washed tube says anything of the rounds. The ruler counts half as much then; that
    one tube differs from the next, and what a wash may do, stay. `now` is what foretells them.
    """
    tubes = [
        tube if tube.unwashed[1] else replace(tube, rounds_tape=tube.rounds_tape / 2)
        for tube, *_ in seen
    ]
    if line is not None and mark is not None:
        again = swatch_line.line(tubes, tex, knitter)
        return again.foretold(mark) if again else None
    along = [one for one in (tube.sides[1] for tube in tubes) if one is not None]
    if not along:
        return None
    scatter = Scatter(now.scatter, now.free)
    return certainty.mean(along, scatter, None, knitter.along.unsure).foretold


def if_one_more(
    kind: str,
    seen: Sequence[Seen],
    mark: float | None,
    line: Line | None,
    now: Foretold,
    knitter: Knitter,
) -> Foretold:
    """Return what the rounds would be foretold by after one more tube, if it came out as foretold.

    It is a usual swatch, or a finished sock; `now` is what foretells them. A first swatch takes the
    place of what was told, a sock comes beside it.
    """
    tape = swatch.along_tape(kind, *_USUAL_SIZES[kind])
    if line is not None and mark is not None:
        return now.after(tape, line.habit(mark) if kind == "swatch" else 0.0)
    along = [one for one in (tube.sides[1] for tube, *_ in seen) if one is not None]
    prior = None if along or kind == "swatch" else Told(0.0, now.doubt)
    along.append(Reading(0.0, tape, kind == "sock"))
    scatter = Scatter(now.scatter, now.free)
    return certainty.mean(along, scatter, prior, knitter.along.unsure).foretold


def with_one_more(
    fields: Fields,
    tubes: tuple[Swatch, ...],
    before: Gauge,
    tex: float | None,
    knitter: Knitter,
) -> Gauge | None:
    """Return what is known with the first of `tubes` besides the others; None where it cannot be.

    Of a side that none of the others tells, what was known `before` counts beside it.
    """
    if before.line is not None and before.mark is not None:
        line = swatch_line.line(tubes, tex, knitter)
        return _on_line(fields, tubes, line, before.mark) if line else None
    sides = (before.stitches, before.across), (before.rounds, before.along)
    across, along = (
        Told(log(value), known.doubt)
        if value and not any(one.sides[side] for one in tubes[1:])
        else None
        for side, (value, known) in enumerate(sides)
    )
    return _at_one_mark(tubes, before.mark, before.line, knitter, (across, along))


def _tubes_in_words(tubes: Sequence[Swatch]) -> Message:
    socks = sum(tube.kind == "sock" for tube in tubes)
    swatches = len(tubes) - socks
    if socks and swatches:
        return say.from_swatches_and_socks(swatches=swatches, socks=socks)
    return say.from_socks(socks=socks) if socks else say.from_swatches(swatches=swatches)


def _asked(seen: Sequence[Seen]) -> tuple[tuple[str, Message], ...]:
    asked = [one for seen_one in seen for one in seen_one.tube.questions]
    for tube, _, off in seen:
        if abs(off) > sources.FAR_APART:
            name = "flat_width" if tube.stitches else "length"
            asked.append((f"{tube.field}.{name}", say.far_from_others()))
    return tuple(asked)


def told(fields: Fields, knitter: Knitter) -> Gauge | None:
    """Return the stitches and rounds per length that were told, None where they were not."""
    stitches = fields.rate("stitches", STITCHES)
    rounds = fields.rate("rounds", ROUNDS, second=True)
    if fields.blank("rounds") and len(fields.rates("stitches")) > 1:  # both stand in one field
        rounds = fields.rate("stitches", ROUNDS, second=True)
    elif fields.blank("stitches") and len(fields.rates("rounds")) > 1:
        stitches = fields.rate("rounds", STITCHES)
    if stitches is None and rounds is None:
        return None
    across, along = (certainty.told(sources.GAUGE_AS_TOLD, one) for one in knitter.scatters)
    return Gauge(stitches, rounds, across, along, "gauge", (say.from_gauge(),))


def from_yarn(thread: Yarn, knitter: Knitter) -> Gauge:
    """Return a guess by the yarn's number or name and the tightness usual in a sock.

    Loops go with the root of the tex: what a name leaves open beyond a band's number counts half.
    """
    loop = sqrt(thread.tex) / sources.TIGHTNESS_SOCK
    more = sqrt(max(0.0, thread.sd**2 - sources.TEX_AS_TOLD**2)) / 2
    name = thread.name
    words = say.guessed_from_name(yarn=name) if name else say.guessed_from_length()
    across, along = knitter.scatters
    return Gauge(
        sources.WALES_TIMES_LOOP / loop,
        sources.COURSES_TIMES_LOOP / loop,
        certainty.told(hypot(sources.STITCHES_FROM_YARN, more), across),
        certainty.told(hypot(sources.ROUNDS_FROM_YARN, more), along),
        "yarn",
        (words,),
    )
