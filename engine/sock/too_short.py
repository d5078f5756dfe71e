"""A foot too short for cylinder and gauge: what is in the way, and what is nearest that works.

Heel and toe alone take rounds of the sole (`foot_rounds.others`). Where no foot round is left
between them the way out is fewer rows in both, a longer foot, finer rounds, or fewer slots. Where
the tube is wider than a foot that is told, only fewer slots make a sock.
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
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.pocket import Pocket
from engine.sections.pockets import Heel
from engine.sections.short_row import Wish
from engine.sections.toe import Toe
from engine.sections.tube import Tube
from engine.sock import foot_rounds
from engine.sock.foot_rounds import Others


class Case(NamedTuple):
    """What was to be knitted: the sock's foot `aimed` at in mm, over heel and toe.

    `heel_at` is the heel at rounds per mm: a finer fabric may call for a deeper one. `heel` is what
    was asked of it: its needles are those once the needles left are set.
    """

    heel_at: Callable[[float], Heel]
    heel: Wish
    toe: Toe
    machine: Cylinder
    cloth: Fabric
    aimed: float
    system: units.System
    before: Tube = Tube("before_toe", 0)

    @property
    def turned(self) -> Others:
        """Return what heel and toe take of the sole."""
        return foot_rounds.others((self.heel_at(self.cloth.rounds), self.before, self.toe))


def problem(
    short: Case, of_sock: Span | None, foot_for: Callable[[float], float], ball: float
) -> Problem:
    """Return the problem with its ways out.

    `of_sock` is what a sock's foot may measure where its length was given, `foot_for` the foot in
    mm that a sock of some mm is for, `ball` its girth in mm.
    """
    cloth, system = short.cloth, short.system
    many = _slots(short, ball)
    words = say.in_turn(sentences=(many, _taken(short))) if many else _taken(short)
    if many and not of_sock:  # whose length alone is told may have been mistyped
        return Problem("cylinder.slots", words, say.fewer_slots())
    field = "sock.foot_length_of_sock" if of_sock else "foot.length"
    heel = short.heel_at(cloth.rounds)
    shortest = foot_rounds.length(cloth.rounds, 0.5, short.turned)
    shortest = shortest if of_sock else foot_for(shortest)
    step = units.MM_PER_INCH / 8 if system == "in" else 1.0  # what a tape of that system shows
    shortest = ceil(shortest / step) * step
    finer = _finer(short)
    ways = list[Message]()
    knitted = short.aimed - short.turned.by_hand
    room = floor(knitted * cloth.rounds - 0.5) - short.before.rounds
    if isinstance(heel, Pocket):
        heel = replace(heel, needles=short.heel.needles)
    shallower = _shallower(heel, short.toe, room)
    if shallower:
        ways.append(_leaving(*shallower))
    if shortest in (of_sock or MEASURES["length"].span):
        length = units.length_text(shortest, system)
        ways.append(say.shortest_that_works(thing="sock" if of_sock else "foot", length=length))
    if finer in swatch.ROUNDS:
        ways.append(say.knit_finer(rounds=units.per_length(finer, system)["text"]))
    ways = ways or [say.fewer_slots()]
    return Problem(
        field,
        words,
        ways[0] if len(ways) == 1 else say.one_of_these(ways=tuple(ways)),
    )


def _taken(short: Case) -> Message:
    """Say what heel and toe alone take of the sole."""
    rounds, system = short.cloth.rounds, short.system
    turned = units.length_text(foot_rounds.length(rounds, 0, short.turned), system)
    aimed = units.length_text(short.aimed, system)
    if not isinstance(short.heel_at(rounds), Pocket):
        return say.toe_too_long(turned=turned, aimed=aimed)
    if isinstance(short.toe, Pocket):
        return say.too_short(turned=turned, aimed=aimed)
    return say.heel_too_long(turned=turned, aimed=aimed)


def _slots(short: Case, ball: float) -> Message | None:
    """Say how many slots would suit the foot, where this cylinder is far too large for it."""
    slots, stitches = short.machine.slots, short.cloth.stitches
    if units.reaches(ball * stitches / slots, 1):
        return None
    suited = 2 * nearest(ball / sources.BALL_STRETCH_WANTED * stitches / 2)
    suited = max(suited, int(sources.SLOTS_FEWEST))
    if suited >= slots:
        return None
    return say.too_many_slots(slots=slots, suited=suited)


def _finer(short: Case) -> float:
    """Return rounds per mm at which heel and toe leave a foot round, with a little to spare."""
    rounds = short.cloth.rounds
    while (least := _least(short, rounds) * 1.005) > rounds:
        rounds = least
    return rounds


def _least(short: Case, rounds: float) -> float:
    """Return the rounds per mm that half a foot round needs, with the heel as it is at `rounds`."""
    others = foot_rounds.others((short.heel_at(rounds), short.before, short.toe))
    return foot_rounds.per_mm(short.aimed, 0.5, others)


def _shallower(heel: Heel, toe: Toe, room: int) -> tuple[Heel, Toe] | None:
    """Return heel and toe that fit in `room` rows, at most half of their needles left, or None."""
    heels = _with_more_left(heel) if isinstance(heel, Pocket) else [heel]
    toes = _with_more_left(toe) if isinstance(toe, Pocket) else [toe]
    pairs: list[tuple[Heel, Toe]] = [
        (one, other)
        for one in heels
        for other in toes
        if foot_rounds.others((one, other)).rounds <= room
    ]

    def unlike(pair: tuple[Heel, Toe]) -> tuple[int, int]:
        left = [one.left for one in pair if isinstance(one, Pocket)]
        return sum(left), max(left) - min(left)

    return min(pairs, key=unlike, default=None)


def _with_more_left(pocket: Pocket) -> list[Pocket]:
    return [replace(pocket, left=n) for n in range(pocket.left, pocket.needles // 2 + 1, 2)]


def _leaving(heel: Heel, toe: Toe) -> Message:
    if isinstance(heel, Pocket) and isinstance(toe, Pocket):
        return say.leave_in_heel_and_toe(heel=heel.left, toe=toe.left)
    (pocket,) = (one for one in (heel, toe) if isinstance(one, Pocket))
    return say.leave_in(part=pocket.part, left=pocket.left)
