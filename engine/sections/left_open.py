"""A toe left open: the foot ends on waste yarn, and its toe is knitted on by hand.

Where to stop is published, 2 in or 5 cm before the end
(katyafrankel.com/2015/12/how-to-shape-star-toe-sock-knitting.html). That toe goes from N stitches
to none in even steps, so on L mm at c rounds per mm it has N L c / 2 stitches: our derivation.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import KnitOn
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import TOE, Courses, Do, Size, Stage
from engine.sections.toe import BareToe
from engine.sections.waste import Finish


@dataclass(frozen=True)
class ToKnitOn(Finish):
    """Off the machine on scrap, and on with needles."""

    kind: ClassVar[str] = "to knit on"

    @property
    def cut(self) -> Message:
        """Return where the sock yarn is cut, in words."""
        return say.cut_sock_yarn(tail=self.tail)

    def closed(self) -> tuple[Stage, ...]:
        """Return finishing the toe."""
        return (Do(say.knit_toe_by_hand(socks=self.socks), (KnitOn(TOE),), makes="grafted"),)


@dataclass(frozen=True)
class LeftOpen(BareToe):
    """A toe to be finished by hand."""

    kind: ClassVar[str] = "left open"
    named: ClassVar[Literal["gathered", "left-open"]] = "left-open"

    @property
    def by_hand(self) -> float:
        """Return the length in mm that is knitted on."""
        return float(sources.TOE_BY_HAND)

    def closing(self, slots: int, cloth: Fabric) -> float:
        """Return the yarn in mm of that toe."""
        return slots * self.by_hand * cloth.rounds / 2 * cloth.loop

    def tail(self, slots: int, cloth: Fabric) -> float:
        """Return an end: the toe is knitted from the ball."""
        return float(sources.TAIL)

    def finish(self, tail: str, top_is_open: bool) -> Finish:
        """Return how the sock comes off the machine: to be knitted on."""
        return ToKnitOn(tail, top_is_open)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return what it adds to the sole, and its girth halfway."""
        return Size(0.0, self.by_hand, machine.slots / cloth.stitches / 2, cloth.pull)

    def courses(self) -> Courses:
        """Return a toe that narrows evenly, in dashes: none of it is knitted at the machine."""
        return Courses((1.0, 0.55, 0.2), look="dashes")
