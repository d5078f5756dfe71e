"""The leg: rounds between cuff and heel, in bands of one tension each.

A plain leg is one band at the foot's tension. Left out, it is as long as the customary 50 rounds
look under an average foot: about half the foot length (common practice, no published source). A leg
shaped to girths (`shaped_leg`) has several. `tighter` is a band's stitches per length over the
foot's; by Munden (1959) its rounds per length grow and its loop length shrinks by the same factor.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import NamedTuple

from engine.fabric.fabric import Fabric
from engine.read.fields import Fields, Span
from engine.sources import GIRTH_RISE_MOST, LEG_OVER_FOOT

ROUNDS = Span("the rounds of a leg", 0, 600)
HEIGHT = Span("the height of a sock's top", 60, 750)
GIRTHS_MOST = 12
_GIRTH_HEIGHT = Span("a height on the leg", 40, 750)
_GIRTH = Span("a girth of a leg", 90, 750)
_PARTS = ("height", "girth")


class Girth(NamedTuple):
    """A girth of the leg in mm at a height in mm above the floor, and whether it was measured."""

    height: float
    girth: float
    measured: bool = True


class Band(NamedTuple):
    """Rounds at one tension; `mark` is the screw's, None if it is unknown or the foot's own."""

    rounds: int
    tighter: float = 1.0
    mark: float | None = None

    def cloth(self, fabric: Fabric) -> Fabric:
        """Return the foot's fabric as this band knits it."""
        return replace(
            fabric, stitches=fabric.stitches * self.tighter, rounds=fabric.rounds * self.tighter
        )


@dataclass(frozen=True)
class Leg:
    """A leg: its bands from the top down, never none.

    `exact` tells that its rounds were given, `asked` that its height or girths were; `height_sd` is
    the error in mm of a height that was given.
    """

    bands: tuple[Band, ...]
    words: str
    exact: bool = False
    asked: bool = False
    height_sd: float = 0.0

    @property
    def shaped(self) -> bool:
        """Tell whether any of it is knitted at another tension than the foot."""
        return any(band.tighter != 1 for band in self.bands)

    @property
    def rounds(self) -> int:
        """Return the rounds of all bands."""
        return sum(band.rounds for band in self.bands)

    def length(self, fabric: Fabric) -> float:
        """Return its length in mm, where `fabric` is the foot's."""
        return sum(band.rounds / band.cloth(fabric).rounds for band in self.bands)

    def at(self, up: float, fabric: Fabric) -> Band:
        """Return the band `up` mm above the leg's lower end; the last one beyond either end."""
        end = 0.0
        for band in reversed(self.bands):
            end += band.rounds / band.cloth(fabric).rounds
            if up < end:
                return band
        return self.bands[0]


@dataclass(frozen=True)
class Wish:
    """What a request says of the leg: rounds, or the top's height in mm; girths, low to high."""

    rounds: int | None = None
    height: float | None = None
    girths: tuple[Girth, ...] = ()
    asked: tuple[tuple[str, str], ...] = ()


def read(fields: Fields) -> Wish:
    """Return the leg of a request; what is left out or wrong is None."""
    fields.only(("rounds", "height", "girths"))
    rounds, height = fields.count("rounds", ROUNDS), fields.length("height", HEIGHT)
    if not fields.blank("rounds") and not fields.blank("height"):
        fields.refuse("height", "Leg rounds are set as well.", "Empty one of the two.")
    girths, asked = list[Girth](), list[tuple[str, str]]()
    for row in fields.parts("girths", GIRTHS_MOST):
        row.only(_PARTS)
        height_of, around = row.length("height", _GIRTH_HEIGHT), row.length("girth", _GIRTH)
        for name, other in (_PARTS, _PARTS[::-1]):
            if row.blank(name) and not row.blank(other):
                row.refuse(name, "Height and girth go together.", "Fill in both or neither.")
        if height_of is None or around is None:
            continue
        girth = Girth(height_of, around)
        if any(girth.height == other.height for other in girths):
            row.refuse("height", "There is a girth at this height already.", "Keep one of them.")
        elif any(_steep(girth, other) for other in girths):
            words = "A leg seldom widens or narrows so fast: measure both girths again?"
            asked.append((row.where("girth"), words))
        girths.append(girth)
    return Wish(rounds, height, tuple(sorted(girths)), tuple(asked))


def _steep(one: Girth, other: Girth) -> bool:
    return abs(one.girth - other.girth) > 10 + GIRTH_RISE_MOST * abs(one.height - other.height)


def usual_rounds(foot_length: float, fabric: Fabric) -> float:
    """Return leg rounds, unrounded, in the customary proportion to a foot of `foot_length` mm."""
    return LEG_OVER_FOOT * foot_length * fabric.rounds
