"""A rib with the ribber that begins on a set-up edge, so that nothing is bound off.

Every nth stitch is on the ribber: every 2nd is a rib of one and one, every 3rd of two and one,
every 4th of three and one. The edge is one round on both beds, then two on the cylinder alone, the
ribber idle; from then on its loops cannot run. Published so
(needlesofsteel.org.uk/knitpatterns/pat-csm02.html). Of n rounds in all that is the first three, and
n N - 2 N/e stitches are made on N slots.

A rib may change after a round: of its ribs those stay that a rib of fewer has too, so its nth
needle is a multiple of the one before; the others' stitches move back to the cylinder. Published so
(needlesofsteel.org.uk/knitpatterns/pat-csm03.html: 1×1 for 50 rounds, then 3×1 for 75).

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
    change: tuple[int, int] | None = None  # after which round, and its nth needle from there on

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
        return cls(*told.common, every, _change(fields, slots, every, told))

    def ribs(self, slots: int) -> tuple[int, ...]:
        """Return the slots whose stitches are on the ribber at first."""
        return _every(self.every, slots)

    def ribs_left(self, slots: int) -> tuple[int, ...]:
        """Return the slots whose stitches are on the ribber at last."""
        return _every(self.change[1] if self.change else self.every, slots)

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
        first = self.change[0] if self.change else self.rounds
        last = first == self.rounds
        ribbed = first - _EDGE
        return (
            Crank("Cuff: knit 1 round on both beds.", (Rounds(1),), 1),
            Do(idle, (Ribber("idle"),)),
            Crank(f"Cuff, on: knit {said(LOCKS)} on the cylinder alone.", (Rounds(LOCKS),), LOCKS),
            Do("Set the ribber to knit again.", (Ribber("knits"),)),
            Crank(
                f"Cuff, on: knit {said(ribbed)} of {_named(self.every)} rib.",
                (Rounds(ribbed, stop if last else None),),
                ribbed,
            ),
            *self._changed(machine, stop),
        )

    def _changed(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return the change of rib, and what is knitted after it."""
        if self.change is None:
            return ()
        after, every = self.change
        left, rounds = self.ribs_left(machine.slots), self.rounds - after
        back = tuple(slot for slot in self.ribs(machine.slots) if slot not in left)
        words = (
            f"Move {len(back)} of the ribber’s stitches back to the cylinder: every "
            f"{ordinal(every)} stitch stays, {len(left)} in all."
        )
        return (
            Do(words, (Transfer(back, "cylinder"),)),
            Crank(
                f"Cuff, on: knit {said(rounds)} of {_named(every)} rib.",
                (Rounds(rounds, stop),),
                rounds,
            ),
        )

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return clearing the ribber."""
        off = "Take the ribber off, and its drive pin out: a pin left in spoils the heel."
        return (
            Do(
                "Move the ribber’s stitches back to the cylinder.",
                (Transfer(self.ribs_left(machine.slots), "cylinder"),),
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
        found = {**super().asked(), "every": self.every}
        if self.change:
            found["change_after"], found["change_every"] = self.change
        return found

    @property
    def words(self) -> str:
        """Return what it is."""
        words = f"{_named(self.every)} rib on a set-up edge, which is {_EDGE} of the rounds"
        if self.change:
            words += f"; {_named(self.change[1])} after round {self.change[0]}"
        return words


def _every(nth: int, slots: int) -> tuple[int, ...]:
    return tuple(range(nth - 1, slots, nth))


def _named(every: int) -> str:
    """Return a rib as the trade names it: stitches on the cylinder by those on the ribber."""
    return f"{every - 1}×1"


def _change(fields: Fields, slots: int, every: int, told: Told) -> tuple[int, int] | None:
    """Return the change of a rib, None where there is none; one that cannot be is refused."""
    after, then = told.change
    if after is None and then is None:
        return None
    fits = [n for n in _OFFERED if n > every and n % every == 0 and slots % n == 0]
    if then is None or then not in fits:
        if not fits:
            fields.refuse(
                "change_every",
                f"A {_named(every)} rib on {slots} slots has no rib of fewer to change to.",
                "Leave the change out, or begin with a rib of every 2nd stitch.",
            )
        elif then is not None or fields.blank("change_every"):
            fields.refuse(
                "change_every",
                f"After a {_named(every)} rib the ribber keeps some of its stitches, no others.",
                f"Keep every {' or '.join(ordinal(n) for n in fits)}.",
                tuple(str(n) for n in fits),
            )
    if after is None or not _EDGE < after < told.rounds:
        if after is not None or fields.blank("change_after"):
            fields.refuse(
                "change_after",
                "A rib changes after its set-up edge and before its last round.",
                f"Write a round from {_EDGE + 1} to {told.rounds - 1}.",
            )
        return None
    return None if then is None else (after, then)
