"""Heel and toe for this foot: what is not set is chosen from its measures, in words."""

from __future__ import annotations

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.people.foot import Foot
from engine.sections import short_row
from engine.sections.short_row import AS_SET, Pocket, Wish


def heel(wanted: Wish, machine: Cylinder, cloth: Fabric, feet: Foot) -> tuple[Pocket, str]:
    """Return the heel and why it is so.

    Only a measured heel girth moves it away from the customary third, and only where that would not
    be comfortable: an estimated one says no more than that this is a usual foot for its length.
    """
    needles, left, free = wanted
    if left is not None:
        return Pocket(needles, left), AS_SET
    girth = feet.measured.get("heel_girth")
    customary = short_row.customary_left(needles)
    if girth is None:
        words = "about a third left, by custom; measure round the heel and it is set to that foot"
        return Pocket(needles, customary), words
    usual = needles
    if free:
        needles = short_row.needles_for(machine.slots, usual, cloth, girth)
    left = short_row.left_for(needles, machine.slots, cloth, girth)
    if needles > usual:
        words = f"more needles than half, as no heel on {usual} is deep enough for this heel girth"
    elif needles < usual:
        words = f"fewer needles than half, as every heel on {usual} is too deep for this heel girth"
    elif left < customary:
        words = "fewer left than the customary third: a deeper heel for this heel girth"
    elif left > customary:
        words = "more left than the customary third: a shallower heel for this heel girth"
    else:
        words = "the customary third suits this heel girth"
    return Pocket(needles, left), words


def toe(wanted: Wish, cloth: Fabric, feet: Foot) -> tuple[Pocket, str]:
    """Return the toe and why it is so; without the toes' breadth it is the customary one."""
    needles, left, _ = wanted
    if left is not None:
        return Pocket(needles, left), AS_SET
    customary = short_row.customary_left(needles)
    if feet.toe_breadth is None:
        return Pocket(needles, customary), "about a third left, by custom"
    left = short_row.toe_left_for(needles, cloth, feet.toe_breadth)
    if left == customary:
        return Pocket(needles, left), "the customary third suits toes of this breadth"
    words = "more left than the customary third, for broad toes"
    if left < customary:
        words = "fewer left than the customary third, for narrow toes"
    return Pocket(needles, left), words


def likely_left(
    heel_as: tuple[Pocket, Wish],
    toe_as: tuple[Pocket, Wish],
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
    if heel_wish.left is None and girth is not None:
        by = sources.TO_80_PERCENT * sources.TAPE_ON_GIRTH
        ends = (
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth + by),
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth - by),
        )
        found["heel"] = ends
    if toe_wish.left is None and breadth is not None:
        by = sources.TO_80_PERCENT * sources.TAPE_ON_LENGTH
        ends = (
            short_row.toe_left_for(toe_made.needles, cloth, breadth - by),
            short_row.toe_left_for(toe_made.needles, cloth, breadth + by),
        )
        found["toe"] = ends
    return found
