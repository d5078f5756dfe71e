"""No heel: the leg's tube goes on as the foot's, a tube sock.

Nothing is knitted, so it adds neither height nor sole: the foot is as long as the sole, and the leg
begins at the floor. Common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import Stage, Unworn


@dataclass(frozen=True)
class NoHeel(Unworn):
    """A sock's heel where it has none."""

    kind: ClassVar[str] = "none"
    part = "heel"
    rounds = 0

    @property
    def no_needles(self) -> Message:
        """Return why none can be told of it."""
        return say.no_heel_no_needles()

    def height(self, cloth: Fabric) -> float:
        """Return how high it stands above the floor."""
        return 0.0

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return none."""
        return ()

    def asked(self) -> dict[str, Any]:
        """Return its kind."""
        return {"kind": self.kind}
