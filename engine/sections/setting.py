"""A turn of the tension screw between two sections.

By Munden (1959) stitches and rounds per length change by the same factor and the loop by its
inverse; `engine.fabric.tension` finds the marks.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from engine.machine.cylinder import Cylinder
from engine.machine.operations import Tension
from engine.read import units
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import Do, Part, Stage, Unworn


@dataclass(frozen=True)
class Setting(Unworn):
    """The stitch from here on: `tighter` than the foot's, at `mark` where one is known.

    `stitches` is the washed stitch in words; `turn` tells it from the one before, "" at the start.
    """

    kind: ClassVar[str] = "tension"
    rounds = 0
    part: Part
    tighter: float
    mark: float | None
    stitches: str
    turn: Literal["", "smaller", "larger"] = ""

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the one turn of the screw."""
        return (Do(self._text, (Tension(self.tighter, self.mark),), sets="tension"),)

    @property
    def sets(self) -> float:
        """Return the stitch from here on."""
        return self.tighter

    @property
    def _text(self) -> Message:
        if self.mark is not None:
            return say.set_mark(mark=units.mark(self.mark))
        if not self.turn:
            return say.set_stitch(stitches=self.stitches)
        if self.tighter == 1:
            return say.set_foot_stitch(size=self.turn, stitches=self.stitches)
        return say.set_other_stitch(size=self.turn, stitches=self.stitches)
