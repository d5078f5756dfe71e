"""A foot too short for cylinder and gauge: what is in the way, and what is nearest that works.

Heel and toe alone take rounds of the sole (`foot_rounds.others`). Where no foot round is left
between them the way out is fewer rows in both, a longer foot, finer rounds, or fewer slots.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import ceil, floor
from typing import NamedTuple

from engine import sources
from engine.fabric import swatch
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.people.measures import MEASURES
from engine.read import units
from engine.read.errors import Problem
from engine.read.fields import Span
from engine.read.units import nearest
from engine.sections.pocket import Pocket
from engine.sections.short_row import Wish
from engine.sock import foot_rounds


class Case(NamedTuple):
    """What was to be knitted: the sock's foot `aimed` at in mm, over heel and toe.

    `heel_at` is the heel at rounds per mm: a finer fabric may call for a deeper one. `heel` is what
    was asked of it: its needles are those once the needles left are set.
    """

    heel_at: Callable[[float], Pocket]
    heel: Wish
    toe: Pocket
    machine: Cylinder
    cloth: Fabric
    aimed: float
    system: units.System

    @property
    def turned(self) -> int:
        """Return the rounds that heel and toe take of the sole."""
        return foot_rounds.others((self.heel_at(self.cloth.rounds), self.toe))


def problem(short: Case, of_sock: Span | None, ease: float, ball: float) -> Problem:
    """Return the problem with its ways out.

    `of_sock` is what a sock's foot may measure where its length was given, `ease` the share taken
    off a foot, `ball` its girth in mm.
    """
    cloth, system = short.cloth, short.system
    thing, field = ("sock", "sock.foot_length_of_sock") if of_sock else ("foot", "foot.length")
    heel = short.heel_at(cloth.rounds)
    shortest = (short.turned + 0.5) / cloth.rounds / (1 if of_sock else 1 - ease)
    step = units.MM_PER_INCH / 8 if system == "in" else 1.0  # what a tape of that system shows
    shortest = ceil(shortest / step) * step
    finer = _finer(short)
    ways = []
    room = floor(short.aimed * cloth.rounds - 0.5)
    wished = short.heel.kind("heel", short.heel.needles, heel.left)
    shallower = _shallower(wished, short.toe, room)
    if shallower:
        ways.append(f"leave {shallower[0]} needles in the heel and {shallower[1]} in the toe")
    if shortest in (of_sock or MEASURES["length"].span):
        ways.append(
            f"the shortest {thing} that works as it stands is {units.length_text(shortest, system)}"
        )
    if finer in swatch.ROUNDS:
        ways.append(f"knit finer, at {units.per_length(finer, system)['text']} rounds or more")
    ways = ways or ["use a cylinder with fewer slots"]
    if len(ways) > 1:
        ways[-1] = f"or {ways[-1]}"
    way_out = "; ".join(ways)
    turned = units.length_text(short.turned / cloth.rounds, system)
    return Problem(
        field,
        f"{_slots(short, ball)}Heel and toe alone make {turned}, which leaves no foot rounds for a "
        f"sock of {units.length_text(short.aimed, system)}.",
        f"{way_out[0].upper()}{way_out[1:]}.",
    )


def _slots(short: Case, ball: float) -> str:
    """Say how many slots would suit the foot, where this cylinder is far too large for it."""
    slots, stitches = short.machine.slots, short.cloth.stitches
    if units.reaches(ball * stitches / slots, 1):
        return ""
    suited = 2 * nearest(ball / sources.BALL_STRETCH_WANTED * stitches / 2)
    return f"{slots} slots are many for this foot: about {suited} would suit it. "


def _finer(short: Case) -> float:
    """Return rounds per mm at which heel and toe leave a foot round, with a little to spare."""
    rounds = short.cloth.rounds
    while (least := _least(short, rounds) * 1.005) > rounds:
        rounds = least
    return rounds


def _least(short: Case, rounds: float) -> float:
    """Return the rounds per mm that half a foot round needs, with the heel as it is at `rounds`."""
    return foot_rounds.per_mm(short.aimed, 0.5, (short.heel_at(rounds), short.toe))


def _shallower(heel: Pocket, toe: Pocket, room: int) -> tuple[int, int] | None:
    """Return needles left in heel and toe that fit in `room` rows, at most half left, or None."""
    pairs = [
        (h, t)
        for h in range(heel.left, heel.needles // 2 + 1, 2)
        for t in range(toe.left, toe.needles // 2 + 1, 2)
        if foot_rounds.others((replace(heel, left=h), replace(toe, left=t))) <= room
    ]
    return min(pairs, key=lambda pair: (sum(pair), abs(pair[0] - pair[1])), default=None)
