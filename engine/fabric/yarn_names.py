"""What yarns are called: the Craft Yarn Council's categories 0 to 7, and the British plies.

Craft Yarn Council, Standard Yarn Weight System (www.YarnStandards.com): number, name and the yarns
that are sold under it. The Council prints stitches and needles and no metres; those here are from
memory of what is sold, but for super fine, whose upper end is a handspinners' journal's (1901 to
2400 yd/lb, 383 to 484 m per 100 g). Plies as categories are common practice, no published source.

A name is a guess: the middle of what is sold so, in proportion, its ends the middle 80 %.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import log, sqrt
from typing import Literal, get_args

from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.say import messages as say
from engine.say.message import Message
from engine.sources import TO_80_PERCENT

Id = Literal[
    "lace", "super_fine", "fine", "light", "medium", "bulky", "super_bulky", "jumbo"
]  # fmt: skip


@dataclass(frozen=True)
class Category:
    """A category of yarns: its `number` and `names`, the first its own; m per 100 g from, to."""

    number: int
    names: tuple[str, ...]
    fewest: float
    most: float

    @property
    def tex(self) -> float:
        """Return the tex in the middle of what is sold under the name."""
        return 1e5 / sqrt(self.fewest * self.most)

    @property
    def sd(self) -> float:
        """Return the relative standard deviation of the tex."""
        return log(self.most / self.fewest) / 2 / TO_80_PERCENT

    @property
    def words(self) -> Message:
        """Return what the guess is from, as it stands in a sentence."""
        ends = {"fewest": f"{self.fewest:.0f}", "most": f"{self.most:.0f}"}
        return say.yarn_category(category=_IDS[self.number], **ends)


_IDS: tuple[Id, ...] = get_args(Id)  # by number
CATEGORIES = (
    Category(0, ("lace", "2 ply"), 500, 900),
    Category(1, ("super fine", "superfine", "fingering", "sock", "4 ply"), 350, 485),
    Category(2, ("fine", "sport", "5 ply"), 250, 340),
    Category(3, ("light", "dk", "double knitting", "light worsted", "8 ply"), 200, 260),
    Category(4, ("medium", "worsted", "aran", "afghan", "10 ply"), 150, 215),
    Category(5, ("bulky", "chunky", "rug", "craft", "12 ply"), 95, 145),
    Category(6, ("super bulky", "roving"), 45, 95),
    Category(7, ("jumbo",), 34, 45),
)
_BY_NAME = {name: one for one in CATEGORIES for name in one.names}
_PARTS = frozenset(part for name in _BY_NAME for part in name.split() if part.isalpha())
_AROUND = re.compile(r"\b(?:weight|yarn|wool|cyc|category|number|no)\b\.?|[#().,;:/]")
_PLY = re.compile(r"(\d+)[ -]*(?:ply|plies|ply's|fold|fach)\b")
_NUMBER = re.compile(r"[0-7]")


def is_part(word: str) -> bool:
    """Tell whether a word stands in the name of a category."""
    return word.casefold() in _PARTS


def read(text: str) -> Category | None:
    """Return the category a text names, None where it says anything else.

    A name may stand with its number (`1 super fine`, `#1`, `category 1`). Raises `Unreadable` where
    two are named, or where a number may be one of plies.
    """
    plain = _PLY.sub(r"\1 ply", text.casefold().replace("-", " "))
    told = bool(_AROUND.search(plain))
    words = " ".join(_AROUND.sub(" ", plain).split())
    found, left = list[Category](), words
    for name in sorted(_BY_NAME, key=len, reverse=True):
        shorter = re.sub(rf"(?<!\w){name}(?!\w)", " ", left)
        if shorter != left:
            found.append(_BY_NAME[name])
            left = shorter
    rest = left.split()
    if not all(_NUMBER.fullmatch(word) for word in rest) or not (found or rest):
        return None
    if not found and not told and f"{words} ply" in _BY_NAME:
        offers = (f"{words} ply", f"category {words}")
        raise Unreadable(
            say.yarn_of_what(text=quoted(words)), say.did_you_mean(offers=offers), offers
        )
    numbers = {one.number for one in found} | {int(word) for word in rest}
    if len(numbers) > 1:
        meant = tuple(CATEGORIES[number].names[0] for number in sorted(numbers))
        raise Unreadable(
            say.yarn_two_names(text=quoted(text)), say.did_you_mean(offers=meant), meant
        )
    return CATEGORIES[numbers.pop()]
