"""Heel and toe: short-row pockets on part of the cylinder.

Needles 1 to h stand from left to right as the knitter faces them. Narrowing: each row knits all
needles in work, and those that knitted last are lifted into hold, until b are left. Widening:
before each row the innermost held needle on the side away from the yarn carrier comes back, and the
row knits to it, until all h have knitted again. How many are lifted after each row is what a kind
of pocket is made of (`lifts`), so its halves may differ: n1 rows narrow, n2 = h - b widen.

Rows alternate in direction, so the carrier is back where it began only if n1 + n2 is even; and the
first needle to come back must be on the side away from it, out of its reach otherwise.

At the heel the narrowing half is the back of the heel, n1 / c high; the widening half lies on the
sole, n2 / c long (c rounds per mm). At the toe the narrowing half lies on the sole, the widening
one over the toes.

The girth of the fabric round heel and ankle bend, over the pocket, with w stitches per mm and N
needles in all: the instep (N - h)/w, the needles left b/w, and the two slanted seams, one a half,
each (h - b)/2w across and n/c along: (N - h + b)/w + sum of sqrt(((h - b)/2w)^2 + (n/c)^2).

A toe is two layers of fabric, so halfway along it the sock is 2 x ((h + b)/2)/w = (h + b)/w round.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import hypot
from typing import Any, ClassVar, Literal, assert_never

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine import half_mark
from engine.machine.cylinder import Cylinder, Side
from engine.machine.operations import (
    REINFORCING,
    Along,
    Hold,
    Needles,
    Operation,
    Return,
    Spring,
    Stand,
    Weight,
)
from engine.machine.operations import Row as CrankRow
from engine.sections.section import Do, Row, Section, Size, Stage, Stroke, Turn, Unit

PocketPart = Literal["heel", "toe"]
WEIGHT_ROWS = int(sources.WEIGHT_ROWS)
# Along a seam: open in its middle, where the count stands.
_SEAM = Stroke("seam", (((0.0, 0.0), (0.22, 0.0)), ((0.8, 0.0), (1.0, 0.0))))


@dataclass(frozen=True)
class Pocket(Section):
    """A pocket on `needles`, narrowed to `left`; legal by construction of `short_row.read`."""

    usual: ClassVar[str] = "short rows"  # the kind that is meant where none is named
    fewest_lifted: ClassVar[int] = 2  # h - b at least
    manner: ClassVar[str] = ""  # how it differs from the usual one, in words
    rounds = 0
    part: PocketPart
    needles: int
    left: int

    @abstractmethod
    def lifts(self) -> tuple[int, ...]:
        """Return how many needles are lifted after each row of the narrowing half."""

    @property
    def narrowing(self) -> int:
        """Return the rows of the narrowing half."""
        return len(self.lifts())

    @property
    def widening(self) -> int:
        """Return the rows of the widening half."""
        return self.needles - self.left

    @property
    def rows(self) -> int:
        """Return the rows of both halves."""
        return self.narrowing + self.widening

    @property
    def sole(self) -> int:
        """Return the rows along the sole."""
        match self.part:
            case "heel":
                return self.widening
            case "toe":
                return self.narrowing
            case _:
                assert_never(self.part)

    @property
    def count(self) -> tuple[int, Unit]:
        """Return its rows."""
        return self.rows, "rows"

    @property
    def figure(self) -> str:
        """Return its needles as they go: down, and back."""
        return f"{self.needles}→{self.left}→{self.needles}"

    def height(self, cloth: Fabric) -> float:
        """Return how high in mm it stands above the floor."""
        match self.part:
            case "heel":
                return self.narrowing / cloth.rounds
            case "toe":
                return 0.0
            case _:
                assert_never(self.part)

    def halfway(self, cloth: Fabric) -> float:
        """Return the girth in mm of a toe, halfway along."""
        return (self.needles + self.left) / cloth.stitches

    def girth(self, slots: int, cloth: Fabric) -> float:
        """Return the sock's own girth in mm round heel and ankle bend."""
        w, c = cloth.stitches, cloth.rounds
        across = self.widening / (2 * w)
        seams = hypot(across, self.narrowing / c) + hypot(across, self.widening / c)
        return (slots - self.needles + self.left) / w + seams

    def girth_by_rounds(self, slots: int, cloth: Fabric) -> float:
        """Return d ln(girth) / d ln(1/c): only the slanted seams lengthen, and by their rise."""
        across = self.widening / (2 * cloth.stitches)
        alongs = [rows / cloth.rounds for rows in (self.narrowing, self.widening)]
        rise = sum(along * along / hypot(across, along) for along in alongs)
        return rise / self.girth(slots, cloth)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return its height, its share of the sole, and its girth."""
        match self.part:
            case "heel":
                girth = self.girth(machine.slots, cloth)
            case "toe":
                girth = self.halfway(cloth)
            case _:
                assert_never(self.part)
        return Size(self.height(cloth), self.sole / cloth.rounds, girth, cloth.pull)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return its seam."""
        return (_SEAM,)

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its needles and rows; `rows_each_way` is that of the widening half."""
        return {
            "needles": self.needles,
            "left": self.left,
            "rows": self.rows,
            "rows_each_way": self.widening,
        }

    def asked(self) -> dict[str, Any]:
        """Return its needles, and its kind where it is not the usual one."""
        kind = {} if self.kind == self.usual else {"kind": self.kind}
        return {**kind, "left": self.left, "needles": self.needles}

    def grafted(self, slots: int) -> int:
        """Return the stitches that close a toe; of two unlike sides the longer one's."""
        return max(self.needles, slots - self.needles)

    def begins(self, machine: Cylinder) -> int:
        """Return the gap at that end of its needles where the carrier stands."""
        end = 1 if machine.carrier == "left" else self.needles + 1
        return self.slot(machine, end)

    def slot(self, machine: Cylinder, needle: int) -> int:
        """Return the slot of needle 1 to h, from 0 at the left half mark."""
        first = half_mark.first_slot(machine.slots, self.needles) - 1
        return (first + needle - 1) % machine.slots

    def walk(self, carrier: Side = "left") -> tuple[Row, ...]:
        """Return every row in order; the `carrier` stands at that side before the first."""
        return _walk(self, carrier)

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return what is done before its first row, its rows, and what is done after the last."""
        return _stages(self, machine)


@lru_cache(maxsize=512)
def _walk(pocket: Pocket, carrier: Side) -> tuple[Row, ...]:
    rows, low, high = list[Row](), 1, pocket.needles
    lifts = (*pocket.lifts(), *[0] * pocket.widening)
    for number, lifted in enumerate(lifts, start=1):
        right = (number % 2 == 1) == (carrier == "left")
        back: tuple[int, ...] = ()
        if not lifted:  # the innermost held needle of the far side comes back
            low, high = (low, high + 1) if right else (low - 1, high)
            back = (high if right else low,)
        first, last = (low, high) if right else (high, low)
        inwards = -1 if right else 1
        hold = tuple(last + inwards * i for i in range(lifted))
        low, high = (low, high - lifted) if right else (low + lifted, high)
        direction: Literal["right", "left"] = "right" if right else "left"
        rows.append(Row(number, direction, back, first, last, hold, high - low + 1))
    return tuple(rows)


@lru_cache(maxsize=512)
def _stages(pocket: Pocket, machine: Cylinder) -> tuple[Stage, ...]:
    stay = {pocket.slot(machine, needle) for needle in range(1, pocket.needles + 1)}
    rest = tuple(slot for slot in range(machine.slots) if slot not in stay)
    rows = pocket.walk(machine.carrier)
    return (
        *_before(pocket, machine, rest),
        *(Turn(_text(row, pocket), _done(row, pocket, machine), row) for row in rows),
        Do(f"Put the {len(rest)} held needles back in work.", (Return(rest),)),
        Do("Take the heel tension off.", (Spring(False),)),
        Do("Take the stronger thread out, if you ran one along.", (Along(None),)),
        Do("Move the weight back to the whole tube.", (Weight("tube"),)),
    )


def _before(pocket: Pocket, machine: Cylinder, rest: Needles) -> Iterator[Do]:
    """Yield what is done before the first row, when the last round has come to its end."""
    part, needles, side = pocket.part, pocket.needles, machine.carrier
    first, last = (half_mark.where(machine.slots, needles, at) for at in (1, needles))
    end, stands = (1, first) if side == "left" else (needles, last)
    stop = f"Stop with the yarn carrier {side} of needle {end}, the {stands}."
    yield Do(stop, (Stand(pocket.begins(machine)),))
    stay = f"the {needles} of the {part} stay in work"
    lift = f"Lift the {len(rest)} needles behind the half marks into hold: {stay}."
    if needles != machine.half:
        stay += f", up to needle {needles}, the {last}"
        lift = f"Lift {len(rest)} needles into hold: {stay}."
    yield Do(lift, (Hold(rest),))
    weight = f"Hang the heel weight on the {part}. Move it up every {WEIGHT_ROWS} rows."
    yield Do(weight, (Weight("pocket"),))
    slack = "Put the heel tension on. Without one, take up the slack by hand at each turn."
    yield Do(slack, (Spring(True),))
    yield Do("Run the stronger thread along, if you use one.", (Along(REINFORCING),))


def _done(row: Row, pocket: Pocket, machine: Cylinder) -> tuple[Operation, ...]:
    def slots(needles: tuple[int, ...]) -> Needles:
        return tuple(pocket.slot(machine, needle) for needle in needles)

    crank = CrankRow(row.direction, *slots((row.first, row.last)))
    return (
        *([Return(slots(row.back))] if row.back else []),
        crank,
        *([Hold(slots(row.hold))] if row.hold else []),
    )


def _text(row: Row, pocket: Pocket) -> str:
    back = f"Bring {_named(row.back)} back. " if row.back else ""
    hold = f" Lift {_named(row.hold)} into hold." if row.hold else ""
    knit = f"Knit to the {row.direction}, needle {row.first} to {row.last}."
    return f"{back}{knit}{hold} {row.in_work} of {pocket.needles} in work."


def _named(needles: tuple[int, ...]) -> str:
    if len(needles) == 1:
        return f"needle {needles[0]}"
    *others, last = map(str, sorted(needles))
    return f"needles {', '.join(others)} and {last}"
