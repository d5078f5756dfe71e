"""The wash: how much longer, or wider, or the reverse, a yarn's tubes become, by tubes read twice.

Of tube i the log of its washed over its unwashed size is y_i = m + e_i + its readings, m of this
yarn and mark. Before any was read m ~ N(0, `WASH_NOT_KNOWN`^2); e_i ~ N(0, `WASH_AS_BEFORE`^2), how
one wash differs from the next. Both readings count with the tape's error. By the plain updates of
normals the next tube's change has the mean and variance that `learn` returns.

What of a tube was measured before the wash only is taken as that change makes it, with its error
besides. A yarn none of whose tubes was read twice is taken as not changed by the mean.

Limits: one yarn, washed alike each time; width and length are learned apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import exp, hypot, log, sqrt
from typing import Final, Literal, NamedTuple

from engine.fabric.swatch import Swatch
from engine.say import messages as say
from engine.sources import WASH_AS_BEFORE, WASH_NOT_KNOWN

Side = Literal[0, 1]
WIDTH: Final = 0
LENGTH: Final = 1


class Change(NamedTuple):
    """A tube's change in the wash: the `log` of its washed over its unwashed size, and its sd."""

    log: float
    sd: float


_ANY = Change(0.0, hypot(WASH_NOT_KNOWN, WASH_AS_BEFORE))


def learn(tubes: Iterable[Swatch], side: Side = LENGTH) -> Change | None:
    """Return how the next tube changes on a side, None where none was read before and after."""
    read = [
        (log(by), 1 / (WASH_AS_BEFORE**2 + 2 * tape**2))
        for tube in tubes
        for by, tape in [(tube.drawn_in[side], (tube.stitches_tape, tube.rounds_tape)[side])]
        if by is not None
    ]
    if not read:
        return None
    whole = WASH_NOT_KNOWN**-2 + sum(weight for _, weight in read)
    mean = sum(weight * y for y, weight in read) / whole
    return Change(mean, sqrt(1 / whole + WASH_AS_BEFORE**2))


def washed(tubes: Sequence[Swatch]) -> tuple[Swatch, ...]:
    """Return the tubes as they are after the wash."""
    if not any(any(tube.unwashed) for tube in tubes):
        return tuple(tubes)
    across, along = learn(tubes, WIDTH), learn(tubes, LENGTH)
    return tuple(_washed(tube, across, along) for tube in tubes)


def _washed(tube: Swatch, across: Change | None, along: Change | None) -> Swatch:
    if not any(tube.unwashed):
        return tube
    counts = [(tube.stitches, tube.stitches_tape), (tube.rounds, tube.rounds_tape)]
    guessed = False
    for side, change in ((WIDTH, across), (LENGTH, along)):
        count, tape = counts[side]
        if not tube.unwashed[side] or count is None:
            continue
        guessed = guessed or change is None
        by, sd = change or _ANY
        counts[side] = count * exp(-by), hypot(tape, sd)
    field = "unwashed_width" if tube.unwashed[WIDTH] else "unwashed_length"
    asked = (f"{tube.field}.{field}", say.not_washed() if guessed else say.not_washed_as_before())
    (stitches, stitches_tape), (rounds, rounds_tape) = counts
    return replace(
        tube,
        stitches=stitches,
        rounds=rounds,
        stitches_tape=stitches_tape,
        rounds_tape=rounds_tape,
        questions=(*tube.questions, asked),
    )
