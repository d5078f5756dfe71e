"""Plain tube: rounds on every needle, as leg or foot, or after the toe.

It is rounds / c high or long and N / w round, w stitches and c rounds per mm on N needles. Rounds
after the toe lie over the toes, not along the sole, so they make nothing longer; 4 of them are
published for 84 needles (needlesofsteel.org.uk/knitpatterns/pat-csm03.html).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Literal, assert_never

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Rounds
from engine.read.fields import Fields, Span
from engine.sections.section import TITLES, Crank, Section, Size, Stage, Stroke, said

AFTER_TOE = Span("the rounds after a toe", 0, 20)


def read_end(fields: Fields) -> int:
    """Return the rounds after the toe of a request, 0 where none are told."""
    fields.only(("rounds",))
    return fields.count("rounds", AFTER_TOE) or 0


@dataclass(frozen=True)
class Tube(Section):
    """So many `rounds` of plain knit; `goes_on` after others of the same part."""

    kind: ClassVar[str] = "plain"
    part: Literal["leg", "foot", "end"]
    rounds: int
    goes_on: bool = False

    @property
    def sole(self) -> int:
        """Return the rounds along the sole: those of a foot."""
        match self.part:
            case "foot":
                return self.rounds
            case "leg" | "end":
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
        high = self.rounds / cloth.rounds if self.part == "leg" else 0.0
        girth = machine.slots / cloth.stitches
        return Size(high, self.sole / cloth.rounds, girth, cloth.pull)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return none: plain tube is its outline."""
        return ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its rounds."""
        return {"rounds": self.rounds}

    def asked(self) -> dict[str, Any]:
        """Return the rounds of a leg or an end; those of a foot follow from its length."""
        match self.part:
            case "leg" | "end":
                return {"rounds": self.rounds}
            case "foot":
                return {}
            case _:
                assert_never(self.part)
