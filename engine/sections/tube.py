"""Plain tube: rounds on every needle, as leg or foot.

It is rounds / c high or long and N / w round, w stitches and c rounds per mm on N needles.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Literal, assert_never

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Rounds
from engine.sections.section import TITLES, Crank, Section, Size, Stage, Stroke, said


@dataclass(frozen=True)
class Tube(Section):
    """So many `rounds` of plain knit; `goes_on` after others of the same part."""

    kind: ClassVar[str] = "plain"
    part: Literal["leg", "foot"]
    rounds: int
    goes_on: bool = False

    @property
    def sole(self) -> int:
        """Return the rounds along the sole: those of a foot."""
        match self.part:
            case "foot":
                return self.rounds
            case "leg":
                return 0
            case _:
                assert_never(self.part)

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the rounds; none for none."""
        if not self.rounds:
            return ()
        title = f"{TITLES[self.part]}{', on' if self.goes_on else ''}"
        text = f"{title}: knit {said(self.rounds)}."
        return (Crank(text, (Rounds(self.rounds, stop),), self.rounds),)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return a leg's height or a foot's length."""
        long = self.rounds / cloth.rounds
        girth = machine.slots / cloth.stitches
        sole = self.sole / cloth.rounds
        return Size(long if not sole else 0.0, sole, girth, cloth.pull)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return none: plain tube is its outline."""
        return ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its rounds."""
        return {"rounds": self.rounds}

    def asked(self) -> dict[str, Any]:
        """Return the rounds of a leg; those of a foot follow from its length."""
        match self.part:
            case "leg":
                return {"rounds": self.rounds}
            case "foot":
                return {}
            case _:
                assert_never(self.part)
