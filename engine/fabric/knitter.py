"""The knitter: her own scatter and habit, as her finished pairs taught them, for the next plan.

Of each side (stitches across, rounds along) four numbers: how much her tubes scatter and how many
degrees of freedom say so, and by how much her socks differ from her swatches and how sure that is.
Of a knitter unknown they are `certainty`'s own, and every answer is what it is without her.

From the tubes of several yarns, v of each dropping out (`certainty`): what is left within a kind
has scatter^2 alone; the gap of yarn i between socks and swatches is D_i = habit + its error, of the
variance v_i = a_i scatter^2 + b_i. With the prior N(0, `HABIT`) the habit is normal with precision
P = 1/HABIT + sum 1/v_i and mean sum (D_i / v_i) / P, and (D_i - mean)^2 has the expectation
v_i (1 - 1/(v_i P)): as many degrees of freedom as the factor says go to the scatter. The two are
found in turn until they stand. Nothing hangs on the order of pairs.

Limits: her habit is the same for all yarns; no more degrees of freedom are kept than `MOST`, nor
more pairs than the newest `NEWEST`, so that she may change.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp, log, sqrt
from typing import Any, NamedTuple

from engine.fabric import certainty
from engine.fabric.certainty import (
    BEFORE,
    HABIT,
    NOBODY,
    Contrast,
    Gap,
    Hers,
    Reading,
    Scatter,
    Told,
)
from engine.fabric.swatch import Swatch
from engine.read.fields import Fields, Span
from engine.say import messages as say

MOST = 20.0  # degrees of freedom
NEWEST = 50  # pairs
FEWEST = 3  # pairs, to reckon with (our choice)
_IN_TURN = 4
_FAR_OUT = 3.0  # a gap counts no more than so many of its sd
_WEIGHT_LEAST = float(BEFORE.free)
_SPANS = {
    "scatter": Span(say.of_knitter(what="scatter"), 0.004, 0.2),
    "weight": Span(say.of_knitter(what="weight"), _WEIGHT_LEAST, MOST),
    "habit": Span(say.of_knitter(what="habit"), 0.8, 1.25),
    "habit_sd": Span(say.of_knitter(what="unsure"), 0.0, 0.05),
}
_PAIRS = Span(say.of_knitter(what="pairs"), 0, 100_000)
_SIDES = ("stitches", "rounds")


@dataclass(frozen=True)
class Knitter:
    """What is known of her beforehand, and by how many finished `pairs`.

    `left_out` tells that there was more, which whoever sent the plan kept.
    """

    across: Hers = NOBODY
    along: Hers = NOBODY
    pairs: int = 0
    left_out: bool = False

    @property
    def sides(self) -> tuple[Hers, Hers]:
        """Return what is known of stitches and of rounds."""
        return self.across, self.along

    @property
    def scatters(self) -> tuple[Scatter, Scatter]:
        """Return the scatter of stitches and of rounds, each with what the other side lends it."""
        across, along = self.across.scatter, self.along.scatter
        return certainty.lend(across, along), certainty.lend(along, across)

    def moves(self, tube: Swatch) -> tuple[float, float]:
        """Return by what the logs of its counts change to be those of a sock."""
        return (0.0, 0.0) if tube.kind == "sock" else (self.across.habit, self.along.habit)

    def as_socks(self, tube: Swatch) -> tuple[Reading | None, Reading | None]:
        """Return what a tube says of stitches and rounds, a swatch as if it were a sock."""
        across, along = (
            one and one._replace(log=one.log + by)
            for one, by in zip(tube.sides, self.moves(tube), strict=True)
        )
        return across, along

    def written(self) -> dict[str, Any]:
        """Return it as a request carries it."""
        return {
            "pairs": self.pairs,
            **{name: _written(hers) for name, hers in zip(_SIDES, self.sides, strict=True)},
        }


UNKNOWN = Knitter()


def _written(hers: Hers) -> dict[str, float]:
    return {
        "scatter": round(sqrt(hers.scatter.square), 4),
        "weight": round(hers.scatter.free, 1),
        "habit": round(exp(hers.habit), 4),
        "habit_sd": round(sqrt(hers.unsure), 4),
    }


def read(fields: Fields) -> Knitter:
    """Return the knitter of a request, one unknown where it tells of none."""
    fields.only((*_SIDES, "pairs", "left_out"))
    if fields.empty():
        return UNKNOWN
    across, along = (_read(fields.part(name)) for name in _SIDES)
    pairs = fields.count("pairs", _PAIRS) or 0
    return Knitter(across, along, pairs, fields.flag("left_out"))


def _read(fields: Fields) -> Hers:
    fields.only(_SPANS)
    scatter, weight, habit, unsure = (fields.plain(name, span) for name, span in _SPANS.items())
    return Hers(
        Scatter(
            BEFORE.square if scatter is None else scatter**2,
            BEFORE.free if weight is None else weight,
        ),
        0.0 if habit is None else log(habit),
        HABIT if unsure is None else unsure**2,
    )


class OfYarn(NamedTuple):
    """What was knitted of one yarn at one mark; `told` is what else was known of the two sides."""

    tubes: tuple[Swatch, ...]
    told: tuple[Told | None, Told | None] = (None, None)


def learn(yarns: Iterable[OfYarn], pairs: int) -> Knitter:
    """Return the knitter by the tubes of several yarns."""
    listed = list(yarns)
    across, along = (
        _learned(
            [
                ([one for one in (tube.sides[side] for tube in yarn.tubes) if one], yarn.told[side])
                for yarn in listed
            ]
        )
        for side in (0, 1)
    )
    return Knitter(across, along, pairs)


def _learned(yarns: Sequence[tuple[list[Reading], Told | None]]) -> Hers:
    found = [contrast for tubes, _ in yarns for contrast in certainty.within(tubes)]
    gaps = list[Gap]()
    for tubes, told in yarns:
        between = certainty.gap(tubes, told)
        if between is not None and between.by_habit:
            gaps.append(between)
        elif between is not None:
            found.append(Contrast(between.log**2, between.by_scatter, between.by_reading, 1))
    if not found and not gaps:
        return NOBODY
    scatter, mean, precision = BEFORE, 0.0, 1 / HABIT
    for _ in range(_IN_TURN):
        sizes = [one.by_scatter * scatter.square + one.by_reading for one in gaps]
        precision = 1 / HABIT + sum(1 / size for size in sizes)
        mean = (
            sum(
                _near(one.log * one.by_habit, mean, sqrt(size + HABIT)) / size
                for one, size in zip(gaps, sizes, strict=True)
            )
            / precision
        )
        about = [
            _about(one, mean, 1 - 1 / (size * precision))
            for one, size in zip(gaps, sizes, strict=True)
        ]
        scatter = certainty.learn([*found, *about], near=scatter.square)
    return Hers(Scatter(scatter.square, min(scatter.free, MOST)), mean, 1 / precision)


def _near(log: float, mean: float, sd: float) -> float:
    """Return a gap, drawn in where it is a blunder."""
    return min(max(log, mean - _FAR_OUT * sd), mean + _FAR_OUT * sd)


def _about(gap: Gap, mean: float, left: float) -> Contrast:
    """Return what a gap says of the scatter, with the degrees of freedom that the mean left it."""
    off = gap.log * gap.by_habit - mean
    return Contrast(off**2 / left, gap.by_scatter, gap.by_reading, left)
