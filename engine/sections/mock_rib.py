"""A mock rib: every nth needle stands out of work, and its gap in the tube looks like a rib.

It is knitted on N - N/n needles and so lies narrower than the leg; before the leg the needles are
put back, each with a loop from its neighbour. Its first round is bound off by hand.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Self

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Move, PutIn, TakeOut
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Cuff, Told
from engine.sections.section import Do, Stage, Stroke, upright

_USUAL = (4, 3, 5, 2)  # which needle is taken out, the most usual first
_OFFERED = range(2, 9)


@dataclass(frozen=True)
class MockRib(Cuff):
    """A mock rib with each `every`th needle out."""

    kind: ClassVar[str] = "mock rib"
    name: ClassVar[Message] = say.cuff_name(kind="mock-rib")
    pull_share: ClassVar[float] = float(sources.MOCK_RIB_PULL_SHARE)
    every: int = 4

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the mock rib; needles that do not come out even are refused."""
        every = told.every or next(n for n in _USUAL if slots % n == 0)
        if slots % every:
            fits = [n for n in _OFFERED if slots % n == 0]
            fields.refuse(
                "every",
                say.needles_not_even(nth=say.nth(n=every), slots=slots),
                say.take_out_either(nths=tuple(say.nth(n=n) for n in fits)),
                tuple(str(n) for n in fits),
            )
            return None
        return cls(*told.common, every)

    @property
    def out_every(self) -> int:
        """Return which needle stands out."""
        return self.every

    def needles(self, slots: int) -> int:
        """Return those that stay in work."""
        return slots - slots // self.every

    def out(self, slots: int) -> tuple[int, ...]:
        """Return the slots of those that stand out of work."""
        return tuple(range(self.every - 1, slots, self.every))

    def first(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return taking them out, before anything is on them."""
        slots = machine.slots
        stay, nth = self.needles(slots), say.nth(n=self.every)
        words = say.take_out_needles(nth=nth, stay=stay, slots=slots)
        return (Do(words, (TakeOut(self.out(slots)),)),)

    def first_on_waste(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return taking them out, their loops moved to the needle beside."""
        slots = machine.slots
        stay, nth = self.needles(slots), say.nth(n=self.every)
        words = say.move_and_take_out(nth=nth, stay=stay, slots=slots)
        moved = tuple((slot, slot - 1) for slot in self.out(slots))
        return (Do(words, (Move(moved, "out"),)),)

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return putting them back."""
        out = self.out(machine.slots)
        return (Do(say.put_needles_back(out=len(out)), (PutIn(out),)),)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the ladders where needles stand out."""
        return upright(self.every, "fold")

    def asked(self) -> dict[str, Any]:
        """Return its fields."""
        return {**super().asked(), "every": self.every}

    @property
    def words(self) -> Message:
        """Return what it is."""
        return say.mock_rib_words(nth=say.nth(n=self.every))
