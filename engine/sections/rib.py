"""A rib of one and one with the ribber: every second stitch is moved to it and knitted there.

It lies narrower than plain tube of its needles and stretches further, so that the leg below it is
the limit. Its first round is bound off by hand once the waste yarn is out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Ribber, Transfer
from engine.read.fields import Fields
from engine.sections.cuff import Cuff, Told
from engine.sections.section import Do, Stage, Stroke, hatched


@dataclass(frozen=True)
class Rib(Cuff):
    """A rib with the ribber."""

    kind: ClassVar[str] = "rib"
    name: ClassVar[str] = "rib"
    ribbed: ClassVar[bool] = True

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Rib | None:
        """Return the rib."""
        return cls(*told.common)

    def girth(self, slots: int, tube: float) -> float:
        """Return its usual girth, where none was measured."""
        return self.flat if self.flat is not None else tube * sources.RIB_RELAXED_WIDTH

    def before(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return setting up the ribber."""
        return (
            Do("Set the ribber on the cylinder.", (Ribber("knits"),)),
            Do(
                f"Move every second stitch to the ribber: {machine.half} on each bed.",
                (Transfer(_every_second(machine), "ribber"),),
            ),
        )

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return clearing the ribber."""
        return (
            Do(
                "Move the ribber’s stitches back to the cylinder.",
                (Transfer(_every_second(machine), "cylinder"),),
            ),
            Do("Take the ribber off.", (Ribber("off"),)),
        )

    def strokes(self) -> tuple[Stroke, ...]:
        """Return close ribs."""
        return hatched(16)

    @property
    def words(self) -> str:
        """Return what it is."""
        return "rib with the ribber"


def _every_second(machine: Cylinder) -> tuple[int, ...]:
    return tuple(range(1, machine.slots, 2))
