"""A hung hem: knitted twice as long as it is deep, then its first round is hung on the needles.

An even number n of rounds makes n / 2c of depth, of two layers. Common practice, no published
source: one of fewer than 20 rounds does poorly, one of more than 40 fits the leg badly. The first
round is closed by hanging, so nothing is bound off.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal, Self

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Hang, Needles, Weight
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Cuff, Notes, Told
from engine.sections.section import TOP, Do, Stage, Stroke

HemKind = Literal["hem", "picot-hem", "mock-rib-hem"]


def even(fields: Fields, rounds: int, kind: HemKind) -> bool:
    """Tell whether a hem of a `kind` can be folded; an odd number of rounds is refused."""
    if rounds % 2:
        around = (str(rounds - 1), str(rounds + 1))
        odd = say.hem_is_odd(kind=kind, rounds=rounds)
        fields.refuse("rounds", odd, say.knit_either(rounds=around), around)
    return rounds % 2 == 0


def hanging(needles: Needles, words: Message) -> tuple[Do, ...]:
    """Return hanging the first round on needles; the weight is off meanwhile."""
    return (
        Do(say.weight_off_tube(), (Weight(None),)),
        Do(words, (Hang(TOP, needles),)),
        Do(say.hem_is_hung(), (Weight("tube"),)),
    )


@dataclass(frozen=True)
class HungHem(Cuff):
    """A hung hem."""

    kind: ClassVar[str] = "hem"
    name: ClassVar[Message] = say.cuff_name(kind="hem")
    hem: ClassVar[HemKind] = "hem"
    layers: ClassVar[int] = 2
    pull_share: ClassVar[float] = float(sources.HEM_PULL_SHARE)
    open_top: ClassVar[bool] = False

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the hem; an odd number of rounds is refused."""
        return cls(*told.common) if even(fields, told.rounds, cls.hem) else None

    def remarks(self, fields: Fields) -> Notes:
        """Return a word on a hem of too few or too many rounds."""
        at = fields.where("rounds")
        if self.rounds < sources.HEM_ROUNDS:
            return ((at, say.hem_too_short(rounds=int(sources.HEM_ROUNDS))),)
        if self.rounds > sources.HEM_ROUNDS_MOST:
            return ((at, say.hem_too_long(rounds=int(sources.HEM_ROUNDS_MOST))),)
        return ()

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return the hanging; the weight is off meanwhile."""
        return hanging(tuple(range(machine.slots)), say.hang_hem())

    def depth(self, cloth: Fabric) -> float:
        """Return half its rounds, in mm."""
        return self.rounds / cloth.rounds / 2

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the edge of its inner layer, a little above its lower end."""
        return (Stroke("fold", (((0, 0.88), (1, 0.88)),)),)

    @property
    def words(self) -> Message:
        """Return what it is."""
        return say.hem_words(rounds=self.rounds // 2)
