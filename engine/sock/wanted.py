"""A request read: foot, cylinder, fabric, and what is wished of the sock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from engine import sources
from engine.fabric import fabric, knitter, yarn_at_hand
from engine.fabric.fabric import Fabric
from engine.fabric.yarn_at_hand import Stock
from engine.machine import cylinder
from engine.machine.cylinder import Cylinder
from engine.people import foot
from engine.people.foot import Foot, Measure
from engine.people.population import NothingKnown
from engine.read.errors import Refused
from engine.read.fields import Fields, Span
from engine.read.units import System
from engine.say import messages as say
from engine.say.message import Message
from engine.sections import leg, registry, short_row
from engine.sections.color import LETTERS
from engine.sections.cuff import Cuff
from engine.sections.toe import BareToe
from engine.sections.tube import read_end
from engine.sock import colors, first_sock, origin, string
from engine.sock.colors import Colors
from engine.sock.origin import Origin

GROUPS = (
    "units", "foot", "other_foot", "person", "cylinder", "fabric", "sock", "first_sock", "stock",
    "knitter", "origin",
)  # fmt: skip
_ROOM = Span(say.room_to_grow(), 0.0, sources.GROWING_ROOM_MOST)
_OF_SOCK = (
    "cuff", "leg", "heel", "toe", "end", "length_ease", "foot_length_of_sock", "growing_room",
    "closeness", "string", "colors",
)  # fmt: skip
_EASE = Span(say.length_ease(), 0.0, sources.LENGTH_EASE_MOST)
SOCK_LENGTH = Span(say.foot_of_sock(), 70, 360, rarely=110)
# Where the cylinder is in doubt the sock is held against a usual one, so that all problems are told
# at once.
USUAL_CYLINDER = Cylinder(60)
_CLOSENESS = {"snug": float(sources.CLOSER), "usual": 0.0, "loose": -float(sources.CLOSER)}
Notes = list[tuple[str, Message]]


@dataclass(frozen=True)
class Aim:
    """The length to knit to: `ease` as a share, and the sock's own length in mm if it is given.

    `room` is what is added in mm to a foot that grows, None where nobody said.
    """

    ease: float
    sock_length: float | None
    room: float | None

    def of(self, length: Measure) -> tuple[float, float]:
        """Return the length aimed at and its standard deviation in mm."""
        if self.sock_length is not None:
            return self.sock_length, 0.0
        return self.from_foot(length.value), length.sd * (1 - self.ease)

    def from_foot(self, mm: float) -> float:
        """Return the length in mm of the sock's foot for one of `mm`."""
        return (mm + (self.room or 0.0)) * (1 - self.ease)

    def foot_for(self, mm: float) -> float:
        """Return the foot in mm that a sock's foot of `mm` is aimed at."""
        return mm / (1 - self.ease) - (self.room or 0.0)


@dataclass(frozen=True)
class Wishes:
    """What a request says of the sock; None where it leaves the choice to us."""

    cuff: Cuff
    leg: leg.Wish
    heel: short_row.Wish
    toe: short_row.Wish
    end_rounds: int
    remarks: tuple[tuple[str, Message], ...]
    closer: float = 0.0
    string: string.Place | None = None
    colors: Colors | None = None

    @property
    def not_knitted(self) -> frozenset[str]:
        """Return which of heel and toe are not knitted at all."""
        pockets = (("heel", self.heel), ("toe", self.toe))
        return frozenset(part for part, wish in pockets if wish.bare is not None)


class Told(NamedTuple):
    """A request read; None is what was left out or wrong, with its problem noted."""

    feet: Foot
    machine: Cylinder | None
    cloth: Fabric | None
    aim: Aim
    wishes: Wishes | None
    measures: dict[str, Measure] | None
    knitted: first_sock.FirstSock | None
    at_hand: Stock
    origin: Origin | None


def read(fields: Fields, *, anybody: bool = False) -> Told:
    """Return all that a request says; its problems are noted in `fields`, which learn its units."""
    fields.only(GROUPS)
    fields.system = "in" if fields.choice("units", ("in", "cm")) == "in" else "cm"
    feet = foot.read(fields.part("foot"), fields.part("other_foot"), fields.part("person"))
    machine = cylinder.read(fields.part("cylinder"))
    who = knitter.read(fields.part("knitter"))
    cloth = fabric.read(fields.part("fabric"), machine.slots if machine else None, who)
    aim = _read_aim(fields.part("sock"))
    wishes = _read_wishes(fields.part("sock"), machine or USUAL_CYLINDER)
    measures = _complete(fields, feet, aim, anybody)
    knitted = first_sock.read(fields.part("first_sock"))
    at_hand = yarn_at_hand.read(fields.part("stock"))
    if wishes is not None and at_hand.apart:
        if wishes.colors is not None:
            fields.part("stock").refuse("apart", say.colors_set_too(), say.empty_one())
        wishes = replace(wishes, colors=colors.apart(at_hand.apart - wishes.not_knitted))
    whose = origin.read(fields.part("origin"))
    return Told(feet, machine, cloth, aim, wishes, measures, knitted, at_hand, whose)


def foot_alone(request: Mapping[str, Any]) -> tuple[System, dict[str, Measure], Notes]:
    """Return system, measures and questions of the foot, before anything is known to knit it with.

    Raises `Refused` where foot and person cannot be read, or tell no length.
    """
    fields = Fields(request)
    fields.system = "in" if fields.choice("units", ("in", "cm")) == "in" else "cm"
    feet = foot.read(fields.part("foot"), fields.part("other_foot"), fields.part("person"))
    aim = _read_aim(fields.part("sock"))
    measures = _complete(fields, feet, aim)
    if fields.problems or measures is None:
        raise Refused(fields.problems)
    asked = room_asked(feet, measures, aim, fields.system)
    return fields.system, measures, [*foot.questions(feet), *asked]


def room_asked(feet: Foot, measures: dict[str, Measure], aim: Aim, system: System) -> Notes:
    """Return the question how much room a child's foot is to have, until it was said."""
    if aim.room is not None or aim.sock_length is not None:
        return []
    asked = foot.room_to_grow(feet, measures["length"].value, system)
    return [("sock.growing_room", asked)] if asked else []


def _read_aim(fields: Fields) -> Aim:
    ease = fields.share("length_ease", _EASE)
    return Aim(
        float(sources.LENGTH_EASE) if ease is None else ease,
        fields.length("foot_length_of_sock", SOCK_LENGTH),
        fields.length("growing_room", _ROOM),
    )


def _read_wishes(fields: Fields, machine: Cylinder) -> Wishes | None:
    fields.only(_OF_SOCK)
    made, remarks = registry.read_cuff(fields.part("cuff"), machine.slots)
    closer = _CLOSENESS.get(fields.choice("closeness", _CLOSENESS) or "", 0.0)
    leg_wish = leg.read(fields.part("leg"))
    if leg_wish.plain is not None and made is not None and not made.ribbed:
        fields.part("leg").refuse("kind", say.cuff_has_no_rib(), say.choose_a_rib())
    if made is not None and made.ribbed and machine.ribber is False:
        fields.part("cuff").refuse("kind", say.no_ribber(), say.cuff_without_ribber())
    heel = short_row.read_heel(fields.part("heel"), machine.slots, machine.half)
    if leg_wish.instep and heel is not None and heel.bare is not None:
        fields.part("leg").refuse("kind", say.instep_needs_a_heel(), say.heel_or_the_leg_alone())
    toe = short_row.read_toe(fields.part("toe"), machine.slots, machine.half)
    bare = toe.bare if toe and isinstance(toe.bare, BareToe) else None
    end_rounds = read_end(fields.part("end"), bare)
    place = _read_string(fields, bare)
    shades = _read_colors(fields.part("colors"), leg_wish, heel, toe)
    if made is None or heel is None or toe is None:
        return None
    notes = (*remarks, *leg_wish.asked)
    return Wishes(made, leg_wish, heel, toe, end_rounds, notes, closer, place, shades)


def _read_colors(
    fields: Fields, top: leg.Wish, heel: short_row.Wish | None, toe: short_row.Wish | None
) -> Colors | None:
    """Return the colors by plan; where a part cannot have its own, that is refused."""
    told = colors.read(fields)
    if told is None:
        return None
    ribbed = {"leg": top.plain is not None, "foot": top.instep}
    for part in (part for part, is_so in ribbed.items() if is_so and len(told.text(part)) > 1):
        fields.refuse(part, say.ribbed_in_one_color(), say.one_letter(last=LETTERS[-1]))
    for part, wish in (("heel", heel), ("toe", toe)):
        if wish is not None and wish.bare is not None and not fields.blank(part):
            fields.refuse(part, say.nothing_knitted_there(), say.empty_this())
    parts = ("cuff", "heel", "toe", "leg", "foot")
    if not any(colors.MAIN in told.text(part) for part in parts):
        fields.refuse("foot", say.main_color_unused(), say.call_it_a())
    return told


def _read_string(fields: Fields, bare: BareToe | None) -> string.Place | None:
    """Return a pair's place in a string, None where each sock is cast on by itself."""
    told = fields.choice("string", (string.APART, *string.PLACES))
    place = next((one for one in string.PLACES if one == told), None)
    if place and bare is not None and bare.comes_off:
        fields.refuse("string", say.gathered_ends_a_string(), say.another_toe_or_apart())
    return place


def _complete(
    fields: Fields, feet: Foot, aim: Aim, anybody: bool = False
) -> dict[str, Measure] | None:
    try:
        return foot.complete(feet, aim.sock_length, aim.ease, anybody=anybody)
    except NothingKnown:
        tried = ("foot", "other_foot", "person", "sock.foot_length")
        if not any(problem.field.startswith(tried) for problem in fields.problems):
            fields.part("foot").refuse(
                "length",
                say.no_length(),
                say.measure_or_size(),
            )
        return None
