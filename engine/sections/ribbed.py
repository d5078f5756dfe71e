"""What a cuff with the ribber has: stitches on it, and clearing it, after the cuff or the leg.

A rib may go on down the leg. Then the ribber is cleared there, some plain rounds before the heel:
5, 10 and 20 are published (needlesofsteel.blogspot.co.uk/2015/05/free-pattern-ribbed-csm-sock-for-
72.html, needlesofsteel.org.uk/knitpatterns/pat-csm03.html and pat-csm02.html).

It may also go on over the instep, where the foot's half of it stays on the ribber while the heel is
turned, and is cleared before the toe; the sole is plain, and so are the stitches beside the heel's
corners, whose loose strands are lifted onto them (common practice, no published source).

A rib draws in, and opens again before its stitches are stretched: so it grips where a plain tube of
its stitches would lie loose, and grows tight where that tube would. Our derivation, no published
source.
"""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass
from typing import Any, ClassVar

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Ribber, Rounds, Transfer
from engine.say import messages as say
from engine.sections.cuff import Cuff
from engine.sections.pocket import Pocket
from engine.sections.section import Courses, Crank, Do, Section, Size, Stage, Stroke, upright


@dataclass(frozen=True)
class Ribbed(Cuff):
    """A cuff with the ribber; it `goes_on` where the rib does, down the leg."""

    ribbed: ClassVar[bool] = True
    goes_on: bool = False

    @property
    @abstractmethod
    def nth_left(self) -> int:
        """Return which stitch, counted on, is on the ribber at the cuff's end."""

    def ribs_left(self, slots: int) -> tuple[int, ...]:
        """Return the slots whose stitches are on the ribber at last."""
        return every(self.nth_left, slots)

    def cleared(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return clearing the ribber."""
        return (
            Do(say.ribber_back(), (Transfer(self.ribs_left(machine.slots), "cylinder"),)),
            Do(say.ribber_and_pin_off(part="heel"), (Ribber("off"),)),
        )

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return clearing the ribber, where the rib ends."""
        return () if self.goes_on else self.cleared(machine)

    def courses(self) -> Courses:
        """Return its rounds, of which the wales are seen."""
        return super().courses()._replace(look="wales")

    def strokes(self) -> tuple[Stroke, ...]:
        """Return its ribs."""
        return upright(self.nth_left)


@dataclass(frozen=True)
class RibbedLeg(Section):
    """The part of a leg that is knitted in the `rib` of its cuff, above so many `plain` rounds."""

    kind: ClassVar[str] = "ribbed"
    part = "leg"
    rounds: int
    rib: Ribbed
    plain: int
    heel: Pocket | None = None  # over whose instep the rib goes on

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return its rounds, and clearing the ribber, of all or of what is not the instep."""
        words = say.knit_leg_rib(rounds=self.rounds, rib=named(self.rib.nth_left))
        rounds = Crank(words, (Rounds(self.rounds, stop),), self.rounds)
        if self.heel is None:
            return (rounds, *self.rib.cleared(machine))
        stay = self.heel.waiting(machine)
        back = tuple(slot for slot in self.rib.ribs_left(machine.slots) if slot not in stay)
        return (
            rounds,
            Do(say.instep_stays(stay=len(stay)), (Transfer(back, "cylinder"),)),
            Do(say.ribber_waits(), (Ribber("idle"),)),
        )

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return its height, and the girth of its rib."""
        slots = machine.slots
        tube = slots / cloth.stitches
        girth, give = self.rib.girth(slots, tube), self.rib.give(slots, cloth, tube)
        return Size(self.rounds / cloth.rounds, 0.0, girth, give)

    def courses(self) -> Courses:
        """Return its rounds, of which the wales are seen."""
        return super().courses()._replace(look="wales")

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the ribs that its cuff ends with."""
        return upright(self.rib.nth_left)

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its rounds."""
        return {"rounds": self.rounds}

    def asked(self) -> dict[str, Any]:
        """Return what asks for all of such a leg."""
        if self.heel is not None:
            return {"kind": RibbedFoot.kind, "rounds": self.rounds}
        return {"kind": self.kind, "rounds": self.rounds + self.plain, "plain": self.plain}


@dataclass(frozen=True)
class RibbedFoot(Section):
    """A foot that is plain on the sole, and knitted in the `rib` of its cuff over the instep."""

    kind: ClassVar[str] = "ribbed instep"
    part = "foot"
    rounds: int
    rib: Ribbed
    heel: Pocket

    @property
    def sole(self) -> int:
        """Return its rounds."""
        return self.rounds

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return its rounds with the ribber, and clearing it."""
        words = say.knit_instep_rib(rounds=self.rounds, rib=named(self.rib.nth_left))
        back = (Transfer(self.heel.waiting(machine), "cylinder"),)
        return (
            Do(say.ribber_knits(), (Ribber("knits"),)),
            Crank(words, (Rounds(self.rounds, stop),), self.rounds),
            Do(say.ribber_back(), back),
            Do(say.ribber_and_pin_off(part="toe"), (Ribber("off"),)),
        )

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return its length along the sole, and its girth, of which the instep's share is a rib's.

        It gives as far as a plain tube of its stitches.
        """
        tube = machine.slots / cloth.stitches
        instep = (machine.slots - self.heel.needles) / machine.slots
        girth = tube * (1 - instep) + self.rib.girth(machine.slots, tube) * instep
        return Size(0.0, self.rounds / cloth.rounds, girth, cloth.pull * tube / girth)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the ribs of the instep."""
        (ribs,) = upright(self.rib.nth_left)
        return (ribs._replace(lines=tuple(line for line in ribs.lines if line[0][0] > 1 / 2)),)

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its rounds."""
        return {"rounds": self.rounds}

    def asked(self) -> dict[str, Any]:
        """Return nothing: its leg asks for it, and its rounds follow from the foot's length."""
        return {}


def every(nth: int, slots: int) -> tuple[int, ...]:
    """Return each nth slot."""
    return tuple(range(nth - 1, slots, nth))


def named(nth: int) -> str:
    """Return a rib as the trade names it: stitches on the cylinder by those on the ribber."""
    return f"{nth - 1}×1"
