"""The sections of a sock, put in order: waste yarn, cuff, leg, heel, foot, toe, waste yarn.

Where some are wished for, rounds of plain tube come before the toe, or follow it.

The rib of a cuff may go on down the leg, to some plain rounds before the heel, or over the instep
to the toe.

A leg of several bands is a tube for each, with a turn of the screw before it. The first band's
tension is set before the cuff, which is knitted at it; the foot's before the heel.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import ceil
from typing import Literal

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.read import units
from engine.sections.cuff import Cuff
from engine.sections.leg import Band
from engine.sections.pocket import Pocket
from engine.sections.pockets import Heel
from engine.sections.ribbed import Ribbed, RibbedFoot, RibbedLeg
from engine.sections.section import Part, Section
from engine.sections.setting import Setting
from engine.sections.toe import Toe
from engine.sections.tube import Tube
from engine.sections.waste import Start


def cuff_down(
    machine: Cylinder,
    cuff: Cuff,
    bands: Sequence[Band],
    ends: tuple[Heel, Toe],
    foot_rounds: int,
    cloth: Cloth,
    end_rounds: int = 0,
    plain: int | None = None,
    before_toe: int = 0,
    *,
    instep: bool = False,
) -> tuple[Section, ...]:
    """Return every section of a sock that is knitted from its top; `ends` are heel and toe.

    `end_rounds` are those after the toe, `plain` those before the heel where the cuff's rib goes on
    down to them, `before_toe` those between foot and toe. Over the `instep` it goes on where there
    is a rib, and a heel that is turned.
    """
    heel, toe = ends
    foot: Section = Tube("foot", foot_rounds)
    under: Pocket | None = None
    if instep and isinstance(cuff, Ribbed) and isinstance(heel, Pocket):
        heel = under = replace(heel, over=cuff.nth_left)
        foot = RibbedFoot(foot_rounds, replace(cuff, goes_on=True), under)
    cuff, leg = _leg(cuff, bands, cloth, plain, under)
    return (
        Start(cuff.first(machine)),
        *cloth.at_first(bands),
        cuff,
        *leg,
        *cloth.back(bands[-1]),
        heel,
        foot,
        *([Tube("before_toe", before_toe)] if before_toe else []),
        toe,
        *([Tube("end", end_rounds)] if end_rounds else []),
        toe.finish(cloth.tail(toe, machine.slots), cuff.open_top),
    )


def _leg(
    cuff: Cuff, bands: Sequence[Band], cloth: Cloth, plain: int | None, under: Pocket | None
) -> tuple[Cuff, list[Section]]:
    """Return the leg's sections, and the cuff as it goes on into them."""
    rounds = bands[0].rounds
    if plain is None or plain >= rounds or not isinstance(cuff, Ribbed):
        return cuff, list(_plain(bands, cloth))
    cuff = replace(cuff, goes_on=True)
    leg: list[Section] = [RibbedLeg(rounds - plain, cuff, plain, under)]
    return cuff, [*leg, *([Tube("leg", plain, goes_on=True)] if plain else [])]


def _plain(bands: Sequence[Band], cloth: Cloth) -> Iterator[Section]:
    yield Tube("leg", bands[0].rounds)
    for before, band in pairwise(bands):
        yield cloth.turned("leg", band, before)
        yield Tube("leg", band.rounds, goes_on=True)


class Cloth:
    """What sections want to know of their fabric: how the screw is turned, the tail to graft with.

    Lengths are in words of a system of units.
    """

    def __init__(self, fabric: Fabric, system: units.System) -> None:
        """Keep the foot's fabric."""
        self._fabric, self._system = fabric, system

    def at_first(self, bands: Sequence[Band]) -> tuple[Setting, ...]:
        """Return the setting before the cuff, none where nothing is known to be set."""
        if self._mark(bands[0]) is None and all(band.tighter == 1 for band in bands):
            return ()
        return (self._setting("cuff", bands[0], ""),)

    def turned(self, part: Part, band: Band, before: Band) -> Setting:
        """Return the setting between two bands."""
        return self._setting(part, band, "smaller" if band.tighter > before.tighter else "larger")

    def back(self, last: Band) -> tuple[Setting, ...]:
        """Return the foot's setting before the heel, none where it stands as the foot wants it."""
        return () if last.tighter == 1 else (self.turned("leg", Band(0), last),)

    def tail(self, toe: Toe, slots: int) -> str:
        """Return the yarn to leave for closing a toe, rounded up to a whole cm or inch."""
        whole = units.MM_PER_INCH if self._system == "in" else 10.0
        mm = toe.tail(slots, self._fabric)
        return units.length_text(ceil(mm / whole) * whole, self._system)

    def _mark(self, band: Band) -> float | None:
        return self._fabric.mark if band.tighter == 1 else band.mark

    def _setting(self, part: Part, band: Band, size: Literal["", "smaller", "larger"]) -> Setting:
        mark, stitches = self._mark(band), ""
        if mark is None:
            cloth = band.cloth(self._fabric)
            stitches = str(units.per_length(cloth.stitches, self._system)["text"])
        return Setting(part, band.tighter, mark, stitches, size)
