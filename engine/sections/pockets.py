"""Heel and toe for this foot: what is not set is chosen from its measures, in words."""

from __future__ import annotations

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.people.foot import Foot
from engine.sections import short_row
from engine.sections.pocket import Pocket
from engine.sections.short_row import AS_SET, Wish


def heel(wanted: Wish, machine: Cylinder, cloth: Fabric, girth: float | None) -> tuple[Pocket, str]:
    """Return the heel and why it is so; `girth` is that round the heel in mm, if it was measured.

    Only a measured heel girth moves it away from the customary third, and only where that would not
    be comfortable: an estimated one says no more than that this is a usual foot for its length.
    """
    needles, left, free, kind = wanted
    if left is not None:
        return kind("heel", needles, left), AS_SET
    customary = short_row.customary_left(needles, kind)
    if girth is None:
        words = "about a third left, by custom; measure round the heel and it is set to that foot"
        return kind("heel", needles, customary), words
    usual = needles
    if free:
        needles = short_row.needles_for(machine.slots, usual, cloth, girth, kind)
    left = short_row.left_for(needles, machine.slots, cloth, girth, kind)
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
    return kind("heel", needles, left), words


def toe(wanted: Wish, cloth: Fabric, breadth: float | None) -> tuple[Pocket, str]:
    """Return the toe and why it is so: customary without the toes' `breadth` in mm."""
    needles, left, _, kind = wanted
    if left is not None:
        return kind("toe", needles, left), AS_SET
    customary = short_row.customary_left(needles, kind)
    if breadth is None:
        return kind("toe", needles, customary), "about a third left, by custom"
    left = short_row.toe_left_for(needles, cloth, breadth, kind)
    if left == customary:
        return kind("toe", needles, left), "the customary third suits toes of this breadth"
    words = "more left than the customary third, for broad toes"
    if left < customary:
        words = "fewer left than the customary third, for narrow toes"
    return kind("toe", needles, left), words


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
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth + by, heel_wish.kind),
            short_row.left_for(heel_made.needles, machine.slots, cloth, girth - by, heel_wish.kind),
        )
        found["heel"] = ends
    if toe_wish.left is None and breadth is not None:
        by = sources.TO_80_PERCENT * sources.TAPE_ON_LENGTH
        ends = (
            short_row.toe_left_for(toe_made.needles, cloth, breadth - by, toe_wish.kind),
            short_row.toe_left_for(toe_made.needles, cloth, breadth + by, toe_wish.kind),
        )
        found["toe"] = ends
    return found
