"""Heel and toe: short-row pockets on part of the cylinder.

Needles 1 to h stand from left to right as the knitter faces them. Narrowing: each row knits all
needles in work, and those that knitted last are lifted into hold, until b are left. Widening:
before each row the innermost held needle on the side away from the yarn carrier comes back, and the
row knits to it, until all h have knitted again. How many are lifted after each row is what a kind
of pocket is made of (`lifts`), so its halves may differ: n1 rows narrow, n2 = h - b widen.

A heel may begin with a flap: f plain rows on all h needles, and after the widening f rows more,
each joined to the flap as it is knitted: a loop of the flap's edge is hung on the needle that the
row ends at. f is even, so each edge has f / 2 loops and f / 2 rows end there.

Rows alternate in direction, so the carrier is back where it began only if n1 + n2 is even; and the
first needle to come back must be on the side away from it, out of its reach otherwise.

At the heel the narrowing half is the back of the heel, (f + n1) / c high; the widening half lies
on the sole, (n2 + f) / c long (c rounds per mm). At the toe the narrowing half lies on the sole,
the widening one over the toes.

The girth of the fabric round heel and ankle bend, over the pocket, with w stitches per mm and N
needles in all: the instep (N - h)/w, the needles left b/w, and the two slanted seams, one a half,
each (h - b)/2w across and n/c along: (N - h + b)/w + sum of sqrt(((h - b)/2w)^2 + (n/c)^2). The
joined edges of a flap lengthen both seams by f/c, straight on, and take no needle of the instep.

A toe is two layers of fabric, so halfway along it the sock is 2 x ((h + b)/2)/w = (h + b)/w round.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
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
    Lift,
    Needles,
    Operation,
    Return,
    Spring,
    Stand,
    Weight,
)
from engine.machine.operations import Row as CrankRow
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import Courses, Do, Row, Size, Stage, Turn, Unit, gathered
from engine.sections.toe import Toe

PocketPart = Literal["heel", "toe"]
WEIGHT_ROWS = int(sources.WEIGHT_ROWS)


@dataclass(frozen=True)
class Pocket(Toe):
    """A pocket on `needles`, narrowed to `left`; legal by construction of `short_row.read`."""

    usual: ClassVar[str] = "short rows"  # the kind that is meant where none is named
    fewest_lifted: ClassVar[int] = 2  # h - b at least
    rounds = 0
    part: PocketPart
    needles: int
    left: int
    flap: int = 0  # rows before the first needle is lifted, and as many joined after the last
    over: int = field(default=0, kw_only=True)  # each so manyth stitch of the instep is a rib's

    @abstractmethod
    def lifts(self) -> tuple[int, ...]:
        """Return how many needles are lifted after each row of the narrowing half."""

    @cached_property
    def narrowing(self) -> int:
        """Return the rows of the narrowing half, a flap's among them."""
        return self.flap + len(self.lifts())

    @property
    def held(self) -> int:
        """Return the needles that are held by and by, one for each row that widens."""
        return self.needles - self.left

    @property
    def widening(self) -> int:
        """Return the rows of the widening half, those joined to a flap among them."""
        return self.held + self.flap

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
        across = self.held / (2 * w)
        seams = hypot(across, len(self.lifts()) / c) + hypot(across, self.held / c)
        return (slots - self.needles + self.left) / w + seams + 2 * self.flap / c

    def girth_by_rounds(self, slots: int, cloth: Fabric) -> float:
        """Return d ln(girth) / d ln(1/c): only the seams lengthen, and by their rise."""
        across = self.held / (2 * cloth.stitches)
        alongs = [rows / cloth.rounds for rows in (len(self.lifts()), self.held)]
        rise = sum(along * along / hypot(across, along) for along in alongs)
        return (rise + 2 * self.flap / cloth.rounds) / self.girth(slots, cloth)

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

    def courses(self) -> Courses:
        """Return its rows, each as wide as the needles that knit it: two wedges along a seam."""
        rows = self.walk()
        widths = tuple((abs(row.last - row.first) + 1) / self.needles for row in rows)
        return Courses(widths, self.narrowing)

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its needles and rows; `rows_each_way` is that of the widening half."""
        return {
            "needles": self.needles,
            "left": self.left,
            "rows": self.rows,
            "rows_each_way": self.widening,
        }

    def asked(self) -> dict[str, Any]:
        """Return its needles, its kind where it is not the usual one, and its flap."""
        kind = {} if self.kind == self.usual else {"kind": self.kind}
        flap = {"flap": self.flap} if self.flap else {}
        return {**kind, **flap, "left": self.left, "needles": self.needles}

    def closing(self, slots: int, cloth: Fabric) -> float:
        """Return the yarn in mm that grafts a toe: the stitches of the longer of its sides."""
        return max(self.needles, slots - self.needles) * cloth.loop

    def begins(self, machine: Cylinder) -> int:
        """Return the gap at that end of its needles where the carrier stands."""
        end = 1 if machine.carrier == "left" else self.needles + 1
        return self.slot(machine, end)

    def slot(self, machine: Cylinder, needle: int) -> int:
        """Return the slot of needle 1 to h, from 0 at the left half mark."""
        first = half_mark.first_slot(machine.slots, self.needles) - 1
        return (first + needle - 1) % machine.slots

    def waiting(self, machine: Cylinder) -> Needles:
        """Return the slots whose stitches wait on the ribber: the instep's, but at its corners."""
        if not self.over:
            return ()
        near = {self.slot(machine, needle) for needle in range(self.needles + 2)}
        ribs = range(self.over - 1, machine.slots, self.over)
        return tuple(slot for slot in ribs if slot not in near)

    def walk(self, carrier: Side = "left") -> tuple[Row, ...]:
        """Return every row in order; the `carrier` stands at that side before the first."""
        return _walk(self, carrier)

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return what is done before its first row, its rows, and what is done after the last."""
        return _stages(self, machine)


@lru_cache(maxsize=512)
def _walk(pocket: Pocket, carrier: Side) -> tuple[Row, ...]:
    rows, low, high = list[Row](), 1, pocket.needles
    flap, back_again = [0] * pocket.flap, [-1] * pocket.held
    moves = (*flap, *pocket.lifts(), *back_again, *flap)
    for number, move in enumerate(moves, start=1):
        right = (number % 2 == 1) == (carrier == "left")
        back: tuple[int, ...] = ()
        lifted = max(move, 0)
        if move < 0:  # the innermost held needle of the far side comes back
            low, high = (low, high + 1) if right else (low - 1, high)
            back = (high if right else low,)
        first, last = (low, high) if right else (high, low)
        inwards = -1 if right else 1
        hold = tuple(last + inwards * i for i in range(lifted))
        low, high = (low, high - lifted) if right else (low + lifted, high)
        direction: Literal["right", "left"] = "right" if right else "left"
        joins = (last,) if number > len(moves) - pocket.flap else ()
        rows.append(Row(number, direction, back, first, last, hold, high - low + 1, joins))
    return tuple(rows)


@lru_cache(maxsize=512)
def _stages(pocket: Pocket, machine: Cylinder) -> tuple[Stage, ...]:
    stay = {pocket.slot(machine, needle) for needle in range(1, pocket.needles + 1)}
    stay.update(pocket.waiting(machine))
    rest = tuple(slot for slot in range(machine.slots) if slot not in stay)
    rows = pocket.walk(machine.carrier)
    return (
        gathered(say.make_ready(part=pocket.part), _before(pocket, machine, rest)),
        *(Turn(_text(row, pocket), _done(row, pocket, machine), row) for row in rows),
        gathered(say.back_to_the_tube(part=pocket.part), _after(pocket, machine, rest)),
    )


def _after(pocket: Pocket, machine: Cylinder, rest: Needles) -> Iterator[Do]:
    """Yield what is done after the last row."""
    yield Do(say.return_held(held=len(rest)), (Return(rest),))
    if machine.spring is not False:
        yield Do(say.take_heel_tension_off(), (Spring(False),))
    if machine.thread is not False:
        yield Do(say.take_thread_out(thread=_sure(machine.thread)), (Along(None),))
    yield Do(say.weight_on_tube(weights=machine.claws), (Weight("tube"),))
    yield Do(say.lift_corners(part=pocket.part), (Lift(_corners(pocket, machine)),))


def _sure(has: bool | None) -> Literal["yes", "unknown"]:
    """Return whether the machine is known to have what it does not lack."""
    return "yes" if has else "unknown"


def _corners(pocket: Pocket, machine: Cylinder) -> Needles:
    """Return the needles beside a pocket's ends, which take its loose strands."""
    return tuple(pocket.slot(machine, needle) for needle in (0, pocket.needles + 1))


def _before(pocket: Pocket, machine: Cylinder, rest: Needles) -> Iterator[Do]:
    """Yield what is done before the first row, when the last round has come to its end."""
    part, needles, side = pocket.part, pocket.needles, machine.carrier
    first, last = (half_mark.words(machine.slots, needles, (at,)) for at in (1, needles))
    end, stands = (1, first) if side == "left" else (needles, last)
    stop = say.stop_at_needle(side=side, needle=end, place=stands)
    yield Do(stop, (Stand(pocket.begins(machine)),))
    stay = len(rest)
    if needles == machine.half:
        lift = say.hold_back_half(part=part, rest=stay, needles=needles)
    else:
        lift = say.hold_the_rest(part=part, rest=stay, needles=needles, place=last)
    yield Do(lift, (Hold(rest),))
    weights = machine.weights or "unknown"
    weight = say.hang_heel_weight(part=part, weights=weights, rows=WEIGHT_ROWS)
    yield Do(weight, (Weight("pocket"),))
    spring = machine.spring is not False
    slack = say.put_heel_tension_on(spring=_sure(machine.spring) if spring else "no")
    yield Do(slack, (Spring(spring),))
    if machine.thread is not False:
        yield Do(say.run_thread_along(thread=_sure(machine.thread)), (Along(REINFORCING),))


def _done(row: Row, pocket: Pocket, machine: Cylinder) -> tuple[Operation, ...]:
    def slots(needles: tuple[int, ...]) -> Needles:
        return tuple(pocket.slot(machine, needle) for needle in needles)

    crank = CrankRow(row.direction, *slots((row.first, row.last)))
    return (
        *([Return(slots(row.back))] if row.back else []),
        *([Lift(slots(row.joins))] if row.joins else []),
        crank,
        *([Hold(slots(row.hold))] if row.hold else []),
    )


def _text(row: Row, pocket: Pocket) -> Message:
    if row.joins:
        return say.join_and_knit(direction=row.direction, first=row.first, last=row.last)
    if not row.back and not row.hold:
        return say.knit_flap_row(direction=row.direction, first=row.first, last=row.last)
    if row.back:
        (back,) = row.back  # one at a time comes back, whatever the kind
        return say.return_and_knit(
            direction=row.direction,
            back=back,
            first=row.first,
            last=row.last,
            stay=row.in_work,
            needles=pocket.needles,
        )
    return say.knit_and_hold(
        direction=row.direction,
        first=row.first,
        last=row.last,
        held=len(row.hold),
        hold=tuple(str(needle) for needle in sorted(row.hold)),
        stay=row.in_work,
        needles=pocket.needles,
    )
