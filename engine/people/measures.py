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
from engine.sources import TAPE_ON_GIRTH, TAPE_ON_LENGTH


@dataclass(frozen=True)
class BodyMeasure:
    """One measure: its `title` in a sentence, what it can be in mm, the `tape`'s sd in mm.

    `estimated` is whether the surveys took it, so that it can be estimated where nobody did;
    `judged` are the places of the fit that tell of it.
    """

    title: str
    span: Span
    tape: float
    estimated: bool
    judged: tuple[str, ...] = ()


# Below `rarely`: what fewer than one two-year-old in a hundred has, by the child survey
# (`population`; the girths of the foot by its rule of thumb), to the next 5 mm.
MEASURES: dict[str, BodyMeasure] = {
    "length": BodyMeasure(
        "foot length", Span("a foot length", 95, 360, rarely=120), TAPE_ON_LENGTH, estimated=True
    ),
    "ball_girth": BodyMeasure(
        "girth at the ball",
        Span("a girth round the ball of the foot", 90, 380, rarely=115),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("ball",),
    ),
    "instep_girth": BodyMeasure(
        "girth at the instep",
        Span("a girth round the instep", 90, 400, rarely=115),
        TAPE_ON_GIRTH,
        estimated=False,
        judged=("instep",),
    ),
    "heel_girth": BodyMeasure(
        "girth round the heel",
        Span("a girth round heel and ankle bend", 120, 480, rarely=150),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("heel", "over_heel"),
    ),
    "ankle_girth": BodyMeasure(
        "girth above the ankle",
        Span("a girth above the ankle", 90, 420, rarely=125),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("ankle",),
    ),
    "calf_girth": BodyMeasure(
        "girth of the calf",
        Span("a girth of a calf", 120, 650, rarely=165),
        TAPE_ON_GIRTH,
        estimated=True,
        judged=("calf",),
    ),
}
ESTIMATED = tuple(name for name, one in MEASURES.items() if one.estimated)
