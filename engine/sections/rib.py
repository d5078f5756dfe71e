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
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Told
from engine.sections.ribbed import Ribbed
from engine.sections.section import Do, Stage


@dataclass(frozen=True)
class Rib(Ribbed):
    """A rib with the ribber."""

    kind: ClassVar[str] = "rib"
    name: ClassVar[Message] = say.cuff_name(kind="rib")

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
            Do(say.set_ribber(), (Ribber("knits"),)),
            Do(
                say.half_to_ribber(each=machine.half),
                (Transfer(self.ribs_left(machine.slots), "ribber"),),
            ),
        )

    @property
    def nth_left(self) -> int:
        """Return that every second stitch is on the ribber."""
        return 2

    @property
    def words(self) -> Message:
        """Return what it is."""
        return say.rib_words()
