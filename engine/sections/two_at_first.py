"""A pocket that begins with two needles a side: a smaller hole at its corners.

Two needles are lifted after row 1 and two after row 2, then one after each row. The narrowing half
has h - b - 2 rows, the widening half h - b: at the heel that is two rows less of height, at the toe
two rows less of sole, which the foot makes up. Published so for 60 needles
(needlesofsteel.org.uk/knitpatterns/pat-csm02.html) and for 34 of 72
(needlesofsteel.blogspot.co.uk/2015/05/free-pattern-ribbed-csm-sock-for-72.html).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine.say import messages as say
from engine.say.message import Message
from engine.sections.pocket import Pocket

_FIRST = (2, 2)


@dataclass(frozen=True)
class TwoAtFirst(Pocket):
    """Short rows that hold two needles each in rows 1 and 2, then one a row."""

    kind: ClassVar[str] = "two at first"
    fewest_lifted: ClassVar[int] = sum(_FIRST)

    @property
    def manner(self) -> Message:
        """Return how it differs from the usual."""
        return say.two_at_first_manner()

    def lifts(self) -> tuple[int, ...]:
        """Return two needles for rows 1 and 2, and one for each row after them."""
        return (*_FIRST, *[1] * (self.needles - self.left - sum(_FIRST)))
