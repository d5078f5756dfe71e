"""Waste yarn, before the sock and after it: scrap that holds the first and the last round.

The sock begins on scrap, which is pulled out once its edges are secured; it ends on scrap, on which
it comes off the needles and is grafted. Common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import (
    WASTE,
    BindOff,
    CastOn,
    CrankOff,
    Cut,
    Graft,
    Ravel,
    Rounds,
    Table,
    Weight,
    Yarn,
)
from engine.sections.section import NOTHING, TOE, TOP, Crank, Do, Section, Size, Stage, Stroke

ROUNDS = int(sources.WASTE_ROUNDS)


class _Waste(Section):
    """Scrap has no size: none of it is worn."""

    counted: ClassVar[bool] = False
    rounds = ROUNDS

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        return NOTHING

    def strokes(self) -> tuple[Stroke, ...]:
        return ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        return {}

    def asked(self) -> dict[str, Any]:
        return {}


def grafting_tail(stitches: int, fabric: Fabric) -> float:
    """Return the yarn in mm to leave for grafting: its stitches, and an end in the needle."""
    return stitches * fabric.loop + sources.TAIL


def _scrap() -> Crank:
    return Crank(f"Waste yarn: knit {ROUNDS} rounds.", (Rounds(ROUNDS),), ROUNDS)


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
            Do("Thread waste yarn in a colour other than the sock’s.", (Yarn(WASTE),)),
            Do("Cast on over the needles in work.", (CastOn(),)),
            Do("Hang the weight on the cast-on edge, evenly all round.", (Weight("tube"),)),
            _scrap(),
        )


@dataclass(frozen=True)
class Finish(_Waste):
    """Off the machine, and to the washed sock; a top that is still open is bound off by hand.

    `tail` is the yarn left for grafting, as a knitter measures it.
    """

    kind: ClassVar[str] = "finish"
    part = "finish"
    tail: str
    top_is_open: bool = False

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the last rounds and what is done at the table."""
        bind_off = "Bind off the first round of the cuff loosely, so that it stretches."
        wash = "Wash the sock, dry it flat and let it rest a day before you measure it."
        return (
            Do(f"Cut the sock yarn, leaving {self.tail} of it for grafting.", (Cut(),)),
            Do("Change to waste yarn.", (Yarn(WASTE, TOE),)),
            _scrap(),
            Do("Cut the waste yarn.", (Cut(),)),
            Do(
                f"Crank the {machine.slots} stitches off the needles. Mind the weight: it falls "
                "with the sock.",
                (CrankOff(),),
            ),
            *([Do(bind_off, (BindOff(TOP),))] if self.top_is_open else []),
            Do("Graft the toe.", (Graft((TOE,)),), makes="grafted"),
            Do("Pull out the waste yarn.", (Ravel(),)),
            Do("Darn in the ends.", (Table("darn"),)),
            Do(wash, (Table("wash"),), makes="washed"),
        )
