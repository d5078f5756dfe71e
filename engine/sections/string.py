"""A string: sock after sock on the machine, scrap between them, and only the first is cast on.

Where a sock ends, 20 rounds of scrap follow, one of them a ravel cord; the next sock begins on
them. Once all are off the machine the cords are pulled out, and the socks come apart. Common
practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine import sources
from engine.machine.cylinder import Cylinder
from engine.machine.operations import CORD, WASTE, Cut, Rounds, Weight, Yarn
from engine.say import messages as say
from engine.sections.section import TOE, Courses, Crank, Do, Stage, Unworn
from engine.sections.waste import ROUNDS, Finish, scrap

BEFORE_CORD = ROUNDS
AFTER_CORD = int(sources.STRING_ROUNDS) - BEFORE_CORD - 1


@dataclass(frozen=True)
class OnWaste(Unworn):
    """A sock's beginning on the scrap of the one before; `before` is what its cuff wants first."""

    kind: ClassVar[str] = "on waste"
    part = "waste"
    rounds = 0
    before: tuple[Stage, ...] = ()

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return moving the weight up, and what the cuff wants."""
        return (Do(say.weight_up_the_string(), (Weight("tube"),)), *self.before)


@dataclass(frozen=True)
class Between(Unworn):
    """The scrap after a sock that another one follows; `end` is how it would come off alone."""

    kind: ClassVar[str] = "between"
    part = "between"
    rounds = int(sources.STRING_ROUNDS)
    end: Finish

    def courses(self) -> Courses:
        """Return its rounds, in dashes."""
        return super().courses()._replace(look="dashes")

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the scrap, and the cord in it."""
        return (
            Do(self.end.cut, (Cut(),)),
            Do(say.change_to_waste(), (Yarn(WASTE, TOE),)),
            scrap(BEFORE_CORD),
            Do(say.thread_cord(), (Yarn(CORD),)),
            Crank(say.knit_cord(), (Rounds(1),), 1),
            Do(say.change_back_to_waste(), (Yarn(WASTE),)),
            scrap(AFTER_CORD),
        )
