"""The measures of a foot and leg, one entry each: what it is, what it can be, where it is judged.

As ISO 8559-1 keeps them apart: foot length (heel to longest toe), girth at the ball, instep girth
(round the middle of the foot, over its highest point; neither survey took it), heel girth (tape
under the back of the heel and over the bend at the front of the ankle), smallest girth above the
ankle bones, largest girth of the calf. All that reads, estimates, shows or judges them goes by this
table.
"""

from __future__ import annotations

from dataclasses import dataclass

from engine.read.fields import Span
from engine.say import messages as say
from engine.sources import TAPE_ON_GIRTH, TAPE_ON_LENGTH


@dataclass(frozen=True)
class BodyMeasure:
    """One measure: what it can be in mm, the `tape`'s sd in mm.

    `estimated` is whether the surveys took it, so that it can be estimated where nobody did;
    `judged` are the places of the fit that tell of it.
    """

    span: Span
    tape: float
    estimated: bool
    judged: tuple[str, ...] = ()


# Below `rarely`: what fewer than one two-year-old in a hundred has, by the child survey
# (`population`; the girths of the foot by its rule of thumb), to the next 5 mm. The least are of a
# baby whose foot is 80 mm long, by the same rules with room below.
MEASURES: dict[str, BodyMeasure] = {
    "length": BodyMeasure(
        Span(say.of_measure(measure="length"), 80, 360, rarely=120), TAPE_ON_LENGTH, estimated=True
    ),
    "ball_girth": BodyMeasure(
        Span(say.of_measure(measure="ball_girth"), 70, 380, rarely=115),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("ball",),
    ),
    "instep_girth": BodyMeasure(
        Span(say.of_measure(measure="instep_girth"), 70, 400, rarely=115),
        TAPE_ON_GIRTH,
        estimated=False,
        judged=("instep",),
    ),
    "heel_girth": BodyMeasure(
        Span(say.of_measure(measure="heel_girth"), 90, 480, rarely=150),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("heel", "over_heel"),
    ),
    "ankle_girth": BodyMeasure(
        Span(say.of_measure(measure="ankle_girth"), 70, 420, rarely=125),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("ankle",),
    ),
    "calf_girth": BodyMeasure(
        Span(say.of_measure(measure="calf_girth"), 85, 650, rarely=165),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("calf",),
    ),
}
ESTIMATED = tuple(name for name, one in MEASURES.items() if one.estimated)
