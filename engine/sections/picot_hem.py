"""A picot hem: a hung hem whose fold is a row of holes, so that its edge stands in points.

Of n rounds the first n/2 are knitted, every second stitch is moved onto the needle beside it, and
n/2 more are knitted before the first round is hung. An emptied needle stays in work and catches
the next round, so each round has a stitch on every needle: n N stitches, n / 2c of depth. Common
practice, no published source: 5 to 10 rounds on each side of the holes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Move, Rounds
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Notes
from engine.sections.hung_hem import HemKind, HungHem
from engine.sections.section import Crank, Do, Stage, Stroke

_POINTS = 12  # drawn along its edge


@dataclass(frozen=True)
class PicotHem(HungHem):
    """A hung hem with a row of holes at its fold."""

    kind: ClassVar[str] = "picot hem"
    name: ClassVar[Message] = say.cuff_name(kind="picot-hem")
    hem: ClassVar[HemKind] = "picot-hem"

    def remarks(self, fields: Fields) -> Notes:
        """Return a word on one of unusually few or many rounds."""
        fewest, most = map(int, sources.PICOT_ROUNDS)
        if fewest <= self.rounds <= most:
            return ()
        return ((fields.where("rounds"), say.picot_usual(low=fewest, high=most)),)

    def knitted(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return its two halves, and the holes between them."""
        half, slots = self.rounds // 2, machine.slots
        beside = tuple((slot, (slot + 1) % slots) for slot in range(1, slots, 2))
        return (
            Crank(say.knit_rounds(part="cuff", rounds=half), (Rounds(half),), half),
            Do(say.picot_stitches(), (Move(beside, "empty"),)),
            Crank(say.knit_more_rounds(part="cuff", rounds=half), (Rounds(half, stop),), half),
        )

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the points of its edge, and the edge of its inner layer."""
        points = [
            line
            for at in range(_POINTS)
            for line in (
                ((at / _POINTS, 0.2), ((at + 0.5) / _POINTS, 0.0)),
                (((at + 0.5) / _POINTS, 0.0), ((at + 1) / _POINTS, 0.2)),
            )
        ]
        return (Stroke("wale", tuple(points)), *super().strokes())

    @property
    def words(self) -> Message:
        """Return what it is."""
        return say.picot_hem_words(rounds=self.rounds // 2)
