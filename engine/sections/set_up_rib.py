"""A rib with the ribber that begins on a set-up edge, so that nothing is bound off.

Every nth stitch is on the ribber: every 2nd is a rib of one and one, every 3rd of two and one,
every 4th of three and one. The edge is one round on both beds, then two on the cylinder alone, the
ribber idle; from then on its loops cannot run. Published so
(needlesofsteel.org.uk/knitpatterns/pat-csm02.html). Of n rounds in all that is the first three, and
n N - 2 N/e stitches are made on N slots.

The ribs' own stitches, n - 2 of them, set its depth: our derivation, no published source. So is its
width: a rib of one and one narrows as `sources` has it, the others in proportion to their ribs.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Self

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.needle_bed import LOCKS
from engine.machine.operations import Ribber, Rounds, Transfer
from engine.read.fields import Fields
from engine.read.units import ordinal
from engine.sections.cuff import Cuff, Told
from engine.sections.section import Crank, Do, Stage, Stroke, hatched, said

_EDGE = 1 + LOCKS  # rounds of the set-up
_OFFERED = range(2, 7)  # which stitch goes to the ribber
_RIBS = 32  # drawn, over the stitches of one rib


@dataclass(frozen=True)
class SetUpRib(Cuff):
    """A rib on a set-up edge, each `every`th stitch on the ribber."""

    kind: ClassVar[str] = "set-up rib"
    name: ClassVar[str] = "rib"
    open_top: ClassVar[bool] = False
    ribbed: ClassVar[bool] = True
    every: int = 2

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the rib; one of uneven ribs, or of an edge alone, is refused."""
        every = told.every or _OFFERED[0]
        if slots % every or every not in _OFFERED:
            fits = [n for n in _OFFERED if slots % n == 0]
            fields.refuse(
                "every",
                f"Every {ordinal(every)} stitch on the ribber does not make an even rib on "
                f"{slots} slots.",
                f"Move every {' or '.join(ordinal(n) for n in fits)}.",
                tuple(str(n) for n in fits),
            )
        if told.rounds <= _EDGE:
            fields.refuse(
                "rounds",
                f"The set-up edge alone has {_EDGE} rounds.",
                f"Knit {_EDGE + 1} or more in all.",
                (str(_EDGE + 1),),
            )
        return cls(*told.common, every)

    def ribs(self, slots: int) -> tuple[int, ...]:
        """Return the slots whose stitches are on the ribber."""
        return tuple(range(self.every - 1, slots, self.every))

    def before(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return setting up the ribber."""
        ribs, slots = self.ribs(machine.slots), machine.slots
        words = (
            f"Move every {ordinal(self.every)} stitch to the ribber: {slots - len(ribs)} on the "
            f"cylinder, {len(ribs)} on the ribber."
        )
        return (
            Do("Set the ribber on the cylinder.", (Ribber("knits"),)),
            Do(words, (Transfer(ribs, "ribber"),)),
        )

    def knitted(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return the set-up edge, and the rib."""
        idle = "Set the ribber to idle: its needles keep their stitches and do not knit."
        ribbed = self.rounds - _EDGE
        return (
            Crank("Cuff: knit 1 round on both beds.", (Rounds(1),), 1),
            Do(idle, (Ribber("idle"),)),
            Crank(f"Cuff, on: knit {said(LOCKS)} on the cylinder alone.", (Rounds(LOCKS),), LOCKS),
            Do("Set the ribber to knit again.", (Ribber("knits"),)),
            Crank(f"Cuff, on: knit {said(ribbed)} of rib.", (Rounds(ribbed, stop),), ribbed),
        )

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return clearing the ribber."""
        off = "Take the ribber off, and its drive pin out: a pin left in spoils the heel."
        return (
            Do(
                "Move the ribber’s stitches back to the cylinder.",
                (Transfer(self.ribs(machine.slots), "cylinder"),),
            ),
            Do(off, (Ribber("off"),)),
        )

    def girth(self, slots: int, tube: float) -> float:
        """Return its usual girth, where none was measured."""
        if self.flat is not None:
            return self.flat
        return tube * (1 - (1 - sources.RIB_RELAXED_WIDTH) * 2 / self.every)

    def depth(self, cloth: Fabric) -> float:
        """Return the depth of its ribs, in mm."""
        return (self.rounds - LOCKS) / cloth.rounds

    def strokes(self) -> tuple[Stroke, ...]:
        """Return its ribs, and its edge."""
        return (
            *hatched(_RIBS // self.every),
            Stroke("fold", (((0, 0.05), (1, 0.05)),)),
        )

    def asked(self) -> dict[str, Any]:
        """Return its fields."""
        return {**super().asked(), "every": self.every}

    @property
    def words(self) -> str:
        """Return what it is."""
        return f"{self.every - 1}×1 rib on a set-up edge, which is {_EDGE} of the rounds"
