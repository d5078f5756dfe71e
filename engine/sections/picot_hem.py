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
from engine.sections.cuff import Notes
from engine.sections.hung_hem import HungHem, hanging
from engine.sections.section import Crank, Do, Stage, Stroke, said

_POINTS = 12  # drawn along its edge


@dataclass(frozen=True)
class PicotHem(HungHem):
    """A hung hem with a row of holes at its fold."""

    kind: ClassVar[str] = "picot hem"
    name: ClassVar[str] = "picot hem"

    def remarks(self, fields: Fields) -> Notes:
        """Return a word on one of unusually few or many rounds."""
        fewest, most = map(int, sources.PICOT_ROUNDS)
        if fewest <= self.rounds <= most:
            return ()
        return ((fields.where("rounds"), f"A picot hem usually has {fewest} to {most} rounds."),)

    def knitted(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return its two halves, and the holes between them."""
        half, slots = self.rounds // 2, machine.slots
        beside = tuple((slot, (slot + 1) % slots) for slot in range(1, slots, 2))
        words = (
            "Move every second stitch onto the needle at its right, all round. "
            "Leave the empty needles in work."
        )
        return (
            Crank(f"Cuff: knit {said(half)}.", (Rounds(half),), half),
            Do(words, (Move(beside, "empty"),)),
            Crank(f"Cuff, on: knit {said(half)}.", (Rounds(half, stop),), half),
        )

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return the hanging."""
        words = (
            "Hang the hem: lift each loop of its first round onto its own needle. "
            "Leave the crank alone."
        )
        return (hanging(tuple(range(machine.slots)), words),)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the points of its edge, and the edge of its inner layer."""
        points = [
            line
            for at in range(_POINTS)
            for line in (
                ((at / _POINTS, 0.12), ((at + 0.5) / _POINTS, 0.0)),
                (((at + 0.5) / _POINTS, 0.0), ((at + 1) / _POINTS, 0.12)),
            )
        ]
        return (Stroke("fold", tuple(points)), *super().strokes())

    @property
    def words(self) -> str:
        """Return what it is."""
        return f"picot hem, folded to {self.rounds // 2}"
