"""A gathered toe: the last round of the foot is taken on a thread and drawn up.

Nothing is narrowed, so the foot's own rounds reach to the tip and the toe adds nothing to the sole:
our assumption, no published source. The thread goes round the N stitches twice, 2 N / w long.
Common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Cut, Gather, Table
from engine.say import messages as say
from engine.sections.section import Courses, Do, Size, Stage, Stroke, upright
from engine.sections.toe import BareToe
from engine.sections.waste import Finish

_TIMES = 2
_DRAWN_UP = 0.4  # of its width, as it is drawn


@dataclass(frozen=True)
class DrawnUp(Finish):
    """Off the machine on a thread, which closes the toe: no scrap is needed there."""

    kind: ClassVar[str] = "drawn up"
    rounds = 0

    def off(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return how the sock comes off the needles: onto its own thread."""
        return (
            Do(say.thread_the_end(tail=self.tail), (Cut(),)),
            Do(say.take_onto_thread(stitches=machine.slots), (Gather(),)),
        )

    def closed(self) -> tuple[Stage, ...]:
        """Return drawing the thread up."""
        return (Do(say.draw_up(), (Table("draw up"),), makes="grafted"),)


@dataclass(frozen=True)
class Gathered(BareToe):
    """A toe drawn up."""

    kind: ClassVar[str] = "gathered"
    named: ClassVar[Literal["gathered", "left-open"]] = "gathered"
    comes_off: ClassVar[bool] = True

    def closing(self, slots: int, cloth: Fabric) -> float:
        """Return the thread in mm."""
        return _TIMES * slots / cloth.stitches

    def finish(self, tail: str, top_is_open: bool) -> Finish:
        """Return how the sock comes off the machine: drawn up."""
        return DrawnUp(tail, top_is_open)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return the girth of the foot, that is drawn up."""
        return Size(0.0, 0.0, machine.slots / cloth.stitches, cloth.pull)

    def courses(self) -> Courses:
        """Return the last rounds of the foot, drawn up."""
        return Courses((1.0, 0.9, 0.7, _DRAWN_UP))

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the gathers that run together at its tip."""
        return upright(3)
