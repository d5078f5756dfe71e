"""Waste yarn, before the sock and after it: scrap that holds the first and the last round.

The sock begins on scrap, which is pulled out once its edges are secured; it ends on scrap, on which
it comes off the needles and is grafted. Common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import (
    WASTE,
    BindOff,
    CastOn,
    CrankOff,
    Cut,
    Graft,
    PullCord,
    Ravel,
    Rounds,
    Table,
    Weight,
    Yarn,
)
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import (
    TOE,
    TOP,
    Courses,
    Crank,
    Do,
    Stage,
    Unworn,
)

ROUNDS = int(sources.WASTE_ROUNDS)


class _Waste(Unworn):
    """Scrap: none of it is worn."""

    rounds = ROUNDS

    def courses(self) -> Courses:
        """Return its rounds, in dashes."""
        return super().courses()._replace(look="dashes")


def scrap(rounds: int = ROUNDS) -> Crank:
    """Return so many rounds of waste yarn."""
    words = say.knit_rounds(part="waste", rounds=rounds)
    return Crank(words, (Rounds(rounds),), rounds)


@dataclass(frozen=True)
class Start(_Waste):
    """The cast-on and the rounds before the cuff; `before` is what the cuff wants done first."""

    kind: ClassVar[str] = "start"
    part = "waste"
    before: tuple[Stage, ...] = ()

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the cast-on."""
        return (
            *self.before,
            Do(say.thread_waste(), (Yarn(WASTE),)),
            Do(say.cast_on(), (CastOn(),)),
            Do(say.hang_weight_on_edge(), (Weight("tube"),)),
            scrap(),
        )


@dataclass(frozen=True)
class Finish(_Waste):
    """Off the machine, and to the washed sock; a top that is still open is bound off by hand.

    `tail` is the yarn left where it is cut, as a knitter measures it. A toe of another kind has its
    own way `off` the machine, or is `closed` otherwise. The last of a string ends it for `each`.
    """

    kind: ClassVar[str] = "finish"
    part = "finish"
    tail: str
    top_is_open: bool = False
    each: bool = False

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the last rounds and what is done at the table."""
        return (
            *self.off(machine),
            *([Do(say.pull_cord(), (PullCord(),))] if self.each else []),
            *([self._bound_off] if self.top_is_open else []),
            *self.closed(),
            Do(say.pull_out_waste(socks=self.socks), (Ravel(),)),
            Do(say.darn_ends(socks=self.socks), (Table("darn"),)),
            Do(say.wash_and_rest(socks=self.socks), (Table("wash"),), makes="washed"),
        )

    @property
    def _bound_off(self) -> Stage:
        return Do(say.bind_off_top(socks=self.socks), (BindOff(TOP),))

    @property
    def socks(self) -> Literal["one", "each"]:
        """Return whose it is, in messages."""
        return "each" if self.each else "one"

    def off(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return how the sock comes off the needles: on scrap."""
        return (
            Do(self.cut, (Cut(),)),
            Do(say.change_to_waste(), (Yarn(WASTE, TOE),)),
            scrap(),
            Do(say.cut_waste(), (Cut(),)),
            Do(say.crank_off(stitches=machine.slots), (CrankOff(),)),
        )

    @property
    def cut(self) -> Message:
        """Return where the sock yarn is cut, in words."""
        return say.cut_for_grafting(tail=self.tail)

    def closed(self) -> tuple[Stage, ...]:
        """Return how the toe is closed, off the machine."""
        return (Do(say.graft_toe(socks=self.socks), (Graft((TOE,)),), makes="grafted"),)
