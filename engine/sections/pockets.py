"""Heel and toe for this foot: what is not set is chosen from its measures, in words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.people.foot import Foot
from engine.read import units
from engine.read.units import System
from engine.say import messages as say
from engine.say.message import Message
from engine.sections import short_row
from engine.sections.no_heel import NoHeel
from engine.sections.pocket import Pocket
from engine.sections.short_row import AS_SET, Wish
from engine.sections.toe import BareToe, Toe

Heel = Pocket | NoHeel


def heel(
    wanted: Wish, machine: Cylinder, cloth: Fabric, girth: float | None
) -> tuple[Heel, Message]:
    """Return the heel and why it is so; `girth` is that round the heel in mm, if it was measured.

    Only a measured heel girth moves it away from the customary third, and only where that would not
    be comfortable: an estimated one says no more than that this is a usual foot for its length.
    """
    needles, left, free, kind, bare, *_ = wanted
    if isinstance(bare, NoHeel):
        return bare, AS_SET
    customary = short_row.customary_left(needles, kind)
    made = wanted.pocket("heel", needles, customary if left is None else left)
    if girth is not None and made.flap and wanted.flap is None:
        deep = short_row.flap_for(made, machine.slots, cloth, girth)
        return deep, say.pocket_why(why="flap-suits", usual=needles)
    if left is not None or made.flap:
        return made, AS_SET
    if girth is None:
        return made, say.pocket_why(why="measure-heel", usual=needles)
    usual = needles
    if free:
        needles = short_row.needles_for(machine.slots, usual, cloth, girth, kind)
    left = short_row.left_for(needles, machine.slots, cloth, girth, kind)
    why: Literal["more-needles", "fewer-needles", "deeper", "shallower", "suits-heel"]
    if needles > usual:
        why = "more-needles"
    elif needles < usual:
        why = "fewer-needles"
    elif left < customary:
        why = "deeper"
    elif left > customary:
        why = "shallower"
    else:
        why = "suits-heel"
    return kind("heel", needles, left), say.pocket_why(why=why, usual=usual)


def toe(wanted: Wish, cloth: Fabric, breadth: float | None) -> tuple[Pocket | BareToe, Message]:
    """Return the toe and why it is so: customary without the toes' `breadth` in mm."""
    needles, left, _, kind, bare, *_ = wanted
    if isinstance(bare, BareToe):
        return bare, AS_SET
    if left is not None:
        return kind("toe", needles, left), AS_SET
    customary = short_row.customary_left(needles, kind)
    if breadth is None:
        return kind("toe", needles, customary), say.pocket_why(why="custom", usual=needles)
    left = short_row.toe_left_for(needles, cloth, breadth, kind)
    if left == customary:
        return kind("toe", needles, left), say.pocket_why(why="suits-toes", usual=needles)
    words = say.pocket_why(why="broad-toes", usual=needles)
    if left < customary:
        words = say.pocket_why(why="narrow-toes", usual=needles)
    return kind("toe", needles, left), words


def remarks(
    heel_made: Heel,
    toe_made: Toe,
    machine: Cylinder,
    cloth: Fabric,
    system: System,
    *,
    high_instep: bool = False,
) -> Iterator[tuple[str, Message]]:
    """Yield what pockets on more needles than half do to the rest of the sock, each by its field.

    And for a `high_instep`, which heel suits it.

    The instep lies over the needles that a heel leaves, (N - h)/w wide. A toe on h has N - h
    opposite, and only like sides are grafted one by one. Both by arithmetic.
    """
    slots, half = machine.slots, machine.half
    rest = slots - heel_made.needles if isinstance(heel_made, Pocket) else slots
    if isinstance(heel_made, Pocket) and not heel_made.flap and high_instep:
        yield "sock.heel.kind", say.high_instep()
    if rest < half:
        width, usual = (units.length_text(n / cloth.stitches, system) for n in (rest, half))
        yield (
            "sock.heel.needles",
            say.narrow_instep(needles=rest, width=width, usual=usual),
        )
    if isinstance(toe_made, Pocket) and toe_made.needles != half:
        sides = sorted((toe_made.needles, slots - toe_made.needles))
        yield (
            "sock.toe.needles",
            say.uneven_toe(few=sides[0], many=sides[1]),
        )


def likely_left(
    heel_as: tuple[Heel, Wish],
    toe_as: tuple[Toe, Wish],
    machine: Cylinder,
    cloth: Fabric,
    feet: Foot,
) -> dict[str, tuple[int, int]]:
    """Return the needles left that the ends of a measure's middle 80 % would call for."""
    (heel_made, heel_wish), (toe_made, toe_wish) = heel_as, toe_as
    found, girth, breadth = (
        dict[str, tuple[int, int]](),
        feet.measured.get("heel_girth"),
        feet.toe_breadth,
    )
    chosen = isinstance(heel_made, Pocket) and not heel_made.flap
    if heel_wish.left is None and girth is not None and isinstance(heel_made, Pocket) and chosen:
        by = sources.TO_80_PERCENT * sources.TAPE_ON_GIRTH
        ends = (
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth + by, heel_wish.kind),
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth - by, heel_wish.kind),
        )
        found["heel"] = ends
    if toe_wish.left is None and breadth is not None and isinstance(toe_made, Pocket):
        by = sources.TO_80_PERCENT * sources.TAPE_ON_LENGTH
        ends = (
            short_row.toe_left_for(toe_made.needles, cloth, breadth - by, toe_wish.kind),
            short_row.toe_left_for(toe_made.needles, cloth, breadth + by, toe_wish.kind),
        )
        found["toe"] = ends
    return found
