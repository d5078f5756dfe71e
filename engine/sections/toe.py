"""What every toe has: how the sock is closed at its end, and the yarn that takes.

Short rows end on waste yarn and are grafted; a gathered toe and one that is left open knit nothing
more at the machine. Each is a file of its own; `registry` lists them.
"""

from __future__ import annotations

from abc import abstractmethod
from typing import Any, ClassVar, Literal

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import Section, Stage
from engine.sections.waste import Finish


class Toe(Section):
    """A section that may end a sock."""

    @property
    def manner(self) -> Message | None:
        """Return how it differs from the usual, in words."""
        return None

    @abstractmethod
    def closing(self, slots: int, cloth: Fabric) -> float:
        """Return the yarn in mm that closes it, its end apart."""

    def tail(self, slots: int, cloth: Fabric) -> float:
        """Return the yarn in mm to leave where it is cut: what closes it, and an end to hold."""
        return self.closing(slots, cloth) + sources.TAIL

    def finish(self, tail: str, top_is_open: bool) -> Finish:
        """Return how the sock comes off the machine, with that much yarn left: on scrap."""
        return Finish(tail, top_is_open)


class BareToe(Toe):
    """A toe for which nothing is knitted at the machine; `named` is its kind in messages."""

    named: ClassVar[Literal["gathered", "left-open"]]
    comes_off: ClassVar[bool] = False  # onto its own thread, so that nothing follows it
    part = "toe"
    rounds = 0

    @property
    def manner(self) -> Message:
        """Return what it is, in words."""
        return say.toe_manner(kind=self.named)

    @property
    def no_needles(self) -> Message:
        """Return why none can be told of it."""
        return say.toe_has_no_needles(kind=self.named)

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return none: it is made as the sock comes off the machine, or after that."""
        return ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its kind."""
        return {"kind": self.kind}

    def asked(self) -> dict[str, Any]:
        """Return its kind."""
        return {"kind": self.kind}
