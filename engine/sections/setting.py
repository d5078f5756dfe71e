"""A turn of the tension screw between two sections.

By Munden (1959) stitches and rounds per length change by the same factor and the loop by its
inverse; `engine.fabric.tension` finds the marks.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Literal

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Tension
from engine.read import units
from engine.sections.section import NOTHING, Do, Part, Section, Size, Stage, Stroke


@dataclass(frozen=True)
class Setting(Section):
    """The stitch from here on: `tighter` than the foot's, at `mark` where one is known.

    `stitches` is the washed stitch in words; `size` tells it from the one before, "" at the start.
    """

    kind: ClassVar[str] = "tension"
    counted: ClassVar[bool] = False
    rounds = 0
    part: Part
    tighter: float
    mark: float | None
    stitches: str
    size_words: Literal["", "smaller", "larger"] = ""

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the one turn of the screw."""
        return (Do(self._text, (Tension(self.tighter, self.mark),), sets="tension"),)

    @property
    def sets(self) -> float:
        """Return the stitch from here on."""
        return self.tighter

    @property
    def _text(self) -> str:
        if self.mark is not None:
            return f"Set the tension mark to {units.mark(self.mark)}."
        if not self.size_words:
            return f"Set the tension for a stitch of {self.stitches} once it is washed."
        foot = ", as in the foot" if self.tighter == 1 else ""
        return (
            f"Set the tension for a {self.size_words} stitch: {self.stitches} once it is "
            f"washed{foot}."
        )

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return nothing: no stitch is made."""
        return NOTHING

    def strokes(self) -> tuple[Stroke, ...]:
        """Return none."""
        return ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return none."""
        return {}

    def asked(self) -> dict[str, Any]:
        """Return nothing: marks follow from a leg's girths."""
        return {}
