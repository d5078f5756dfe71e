"""A mock rib: every nth needle stands out of work, and its gap in the tube looks like a rib.

It is knitted on N - N/n needles and so lies narrower than the leg; before the leg the needles are
put back, each with a loop from its neighbour. Its first round is bound off by hand.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Self

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import PutIn, TakeOut
from engine.read.fields import Fields
from engine.read.units import ordinal
from engine.sections.cuff import Cuff, Told
from engine.sections.section import Do, Stage, Stroke, hatched

_USUAL = (4, 3, 5, 2)  # which needle is taken out, the most usual first
_OFFERED = range(2, 9)


@dataclass(frozen=True)
class MockRib(Cuff):
    """A mock rib with each `every`th needle out."""

    kind: ClassVar[str] = "mock rib"
    name: ClassVar[str] = "mock rib"
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
                f"Every {ordinal(every)} needle does not come out even on {slots} slots.",
                f"Take out every {' or '.join(ordinal(n) for n in fits)}.",
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
        words = (
            f"Take out every {ordinal(self.every)} needle: {self.needles(slots)} of {slots} stay "
            "in work."
        )
        return (Do(words, (TakeOut(self.out(slots)),)),)

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return putting them back."""
        out = self.out(machine.slots)
        words = (
            f"Put back the {len(out)} needles that were out, each with a loop lifted from the "
            "stitch beside it."
        )
        return (Do(words, (PutIn(out),)),)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return wide ribs."""
        return hatched(8)

    def asked(self) -> dict[str, Any]:
        """Return its fields."""
        return {**super().asked(), "every": self.every}

    @property
    def words(self) -> str:
        """Return what it is."""
        return f"mock rib: every {ordinal(self.every)} needle out"
