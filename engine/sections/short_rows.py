"""The usual pocket: one needle is lifted after each row, so each half has h - b rows."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine.sections.pocket import Pocket


@dataclass(frozen=True)
class ShortRows(Pocket):
    """Short rows, one needle at a time."""

    kind: ClassVar[str] = "short rows"

    def lifts(self) -> tuple[int, ...]:
        """Return one needle for each row."""
        return (1,) * (self.needles - self.left)
