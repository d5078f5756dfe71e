"""A mock rib worked as a hung hem: needles out as for a mock rib, then folded and hung.

It is knitted on N - N/e needles, every eth out of work, and hung on those, loop for loop; then the
others are put back. So nothing is bound off. Its depth is half its rounds, in two layers. Common
practice, no published source, as is how far it gives: what a hem and a mock rib take of it, both.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Self

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Told
from engine.sections.hung_hem import HungHem, even, hanging
from engine.sections.mock_rib import MockRib
from engine.sections.section import Stage, Stroke


@dataclass(frozen=True)
class MockRibHem(MockRib):
    """A hung hem with each `every`th needle out."""

    kind: ClassVar[str] = "mock rib hem"
    name: ClassVar[Message] = say.cuff_name(kind="mock-rib-hem")
    layers: ClassVar[int] = HungHem.layers
    pull_share: ClassVar[float] = float(sources.HEM_PULL_SHARE * sources.MOCK_RIB_PULL_SHARE)
    open_top: ClassVar[bool] = False

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the hem; rounds that are odd and needles that leave some over are refused."""
        folds = even(fields, told.rounds, "mock-rib-hem")
        made = super().read(fields, slots, told)
        return made if folds else None

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return the hanging, and putting back the needles that were out."""
        out = set(self.out(machine.slots))
        stayed = tuple(slot for slot in range(machine.slots) if slot not in out)
        words = say.hang_hem_on(loops=len(stayed))
        return (*hanging(stayed, words), *super().after(machine))

    def depth(self, cloth: Fabric) -> float:
        """Return half its rounds, in mm."""
        return self.rounds / cloth.rounds / 2

    def strokes(self) -> tuple[Stroke, ...]:
        """Return its ladders, and the edge of its inner layer."""
        return (*super().strokes(), *HungHem(self.rounds).strokes())

    @property
    def words(self) -> Message:
        """Return what it is."""
        return say.mock_rib_hem_words(nth=say.nth(n=self.every), rounds=self.rounds // 2)
