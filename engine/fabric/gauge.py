"""Stitches and rounds per length, by the best of the ways to know them: tubes, told, or the yarn.

What `ledger` makes of the tubes is chosen here: at the mark wanted or the newest one's, by the line
over marks where there is one. A tube far from what the others say is asked about, and counts on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot, sqrt
from typing import NamedTuple

from engine import sources
from engine.fabric import swatch, swatch_line
from engine.fabric.swatch import ROUNDS, STITCHES, Swatch
from engine.fabric.swatch_line import Line
from engine.fabric.yarn import Yarn
from engine.read import units
from engine.read.fields import Fields

_FAR = "This is far from what the others say. Same yarn, same mark? Measure it again."
_SCATTERED = "they differ by more than rulers explain: were all of this yarn, at these marks?"


class Seen(NamedTuple):
    """A tube of the ledger: its `share` of the weight, and how many sd it is `off` the others."""

    tube: Swatch
    share: float
    off: float


@dataclass(frozen=True)
class Gauge:
    """Stitches and rounds per mm (either may lack), their relative errors, and whence."""

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


def from_tubes(
    fields: Fields, tubes: tuple[Swatch, ...], wanted: float | None, tex: float | None
) -> Gauge | None:
    """Return what tubes say together, the newest first, at the mark wanted or the newest's."""
    line = swatch_line.line(tubes, tex)
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


def _at_one_mark(tubes: tuple[Swatch, ...], mark: float | None, line: Line | None) -> Gauge:
    across = [(tube.stitches, tube.stitches_sd) for tube in tubes if tube.stitches]
    along = [(tube.rounds, tube.rounds_sd) for tube in tubes if tube.rounds]
    w, c = (swatch_line.mean(one) if one else None for one in (across, along))
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
    if swatch_line.scattered(chi, sum(one.tubes - 1 for one in (w, c) if one)):
        words += f"; {_SCATTERED}"
    return Gauge(
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


def _on_line(fields: Fields, tubes: tuple[Swatch, ...], line: Line, mark: float) -> Gauge | None:
    low, high = units.mark(line.low), units.mark(line.high)
    at = line.at(mark) if line.near(mark) and line.loop_at(mark)[0] > 0 else None
    if at is None or at[0] not in STITCHES or at[1] not in ROUNDS:
        fields.refuse(
            "mark",
            f"Mark {units.mark(mark)} is far from the marks tried, {low} to {high}.",
            "Knit a swatch nearer to it, or choose a mark nearer to those.",
        )
        return None
    stitches, rounds, sd = at
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
    return Gauge(
        stitches, rounds, sd, sd, "swatch", words, mark, line, tuple(seen), (*asked, *_asked(seen))
    )


def rounds_sd_if_longer(
    seen: Sequence[Seen], mark: float | None, line: Line | None, tex: float | None
) -> float | None:
    """Return the relative error of the rounds, had each tube been measured over twice as many.

    None where no washed tube says anything of the rounds. The ruler counts half as much then; that
    one tube differs from the next, and what a wash may do, stay.
    """
    tubes = [
        tube if tube.unwashed[1] else replace(tube, rounds_tape=tube.rounds_tape / 2)
        for tube, *_ in seen
    ]
    if line is not None and mark is not None:
        again = swatch_line.line(tubes, tex)
        return again.at(mark)[2] if again else None
    along = [(tube.rounds, tube.rounds_sd) for tube in tubes if tube.rounds]
    if not along:
        return None
    return max(swatch_line.mean(along).sd, float(sources.SOCK_TO_SWATCH))


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


def told(fields: Fields) -> Gauge | None:
    """Return the stitches and rounds per length that were told, None where they were not."""
    stitches = fields.rate("stitches", STITCHES)
    rounds = fields.rate("rounds", ROUNDS, second=True)
    if fields.blank("rounds") and len(fields.rates("stitches")) > 1:  # both stand in one field
        rounds = fields.rate("stitches", ROUNDS, second=True)
    elif fields.blank("stitches") and len(fields.rates("rounds")) > 1:
        stitches = fields.rate("rounds", STITCHES)
    if stitches is None and rounds is None:
        return None
    sd = float(sources.GAUGE_AS_TOLD)
    return Gauge(stitches, rounds, sd, sd, "gauge", "from the stitches and rounds you gave")


def from_yarn(thread: Yarn) -> Gauge:
    """Return a guess by the yarn's number or name and the tightness usual in a sock.

    Loops go with the root of the tex: what a name leaves open beyond a band's number counts half.
    """
    loop = sqrt(thread.tex) / sources.TIGHTNESS_SOCK
    more = sqrt(max(0.0, thread.sd**2 - sources.TEX_AS_TOLD**2)) / 2
    known_by = f"its name alone ({thread.name})" if thread.name else "its length per ball"
    return Gauge(
        sources.WALES_TIMES_LOOP / loop,
        sources.COURSES_TIMES_LOOP / loop,
        hypot(sources.STITCHES_FROM_YARN, more),
        hypot(sources.ROUNDS_FROM_YARN, more),
        "yarn",
        f"guessed from {known_by}, for a sock of usual tightness",
    )
