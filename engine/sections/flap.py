"""A heel that begins with a flap: deeper, for a high instep, and the instep keeps its needles.

Some rows are knitted back and forth before the first needle is lifted, and as many after the last
has come back, each joined to the edge of that flap. What it adds to height, sole and girth stands
in `pocket`: our derivation, no published source. That loops of a flap's edge are hung on needles is
one knitter's diary (soxophoneplayer.com/?cat=5); to join row by row so is common practice on any
knitting machine, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine import sources
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import Stroke
from engine.sections.short_rows import ShortRows


@dataclass(frozen=True)
class Flap(ShortRows):
    """Short rows after a flap of `flap` rows, to which as many are joined."""

    kind: ClassVar[str] = "flap"
    flap: int = int(sources.FLAP_ROWS)

    @property
    def manner(self) -> Message:
        """Return how it differs from the usual."""
        return say.flap_manner(rows=self.flap)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return where the flap ends, and where the rows joined to it begin."""
        end = self.flap / self.rows
        return (Stroke("fold", tuple(((0.0, at), (1.0, at)) for at in (end, 1 - end))),)
