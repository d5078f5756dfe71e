"""The plan: a request read, and the sock that answers it assembled.

The foot rounds (`foot_rounds`) are for T = foot length x (1 - length ease), or the sock length as
given. Below 1 they are refused: such a foot is too short for this cylinder and gauge.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from engine import sources
from engine.fabric import fabric, yarn_at_hand
from engine.fabric.fabric import Fabric
from engine.fabric.yarn_at_hand import Stock
from engine.machine import cylinder
from engine.machine.cylinder import Cylinder
from engine.people import foot
from engine.people.foot import Foot, Measure
from engine.people.population import NothingKnown
from engine.read import units
from engine.read.errors import Problem, Refused
from engine.read.fields import Fields, Span
from engine.read.units import System, nearest, reaches
from engine.sections import leg, pockets, registry, shaped_leg, short_row
from engine.sections.cuff import Cuff
from engine.sections.leg import Leg
from engine.sections.pocket import Pocket
from engine.sections.tube import read_end
from engine.sock import first_sock, foot_rounds, too_short
from engine.sock.in_order import Cloth, cuff_down
from engine.sock.sock import Sock

GROUPS = (
    "units", "foot", "other_foot", "person", "cylinder", "fabric", "sock", "first_sock", "stock",
)  # fmt: skip
_EASE = Span("a length ease", 0.0, sources.LENGTH_EASE_MOST)
SOCK_LENGTH = Span("the foot of a sock", 80, 360, rarely=110)
# Where the cylinder is in doubt the sock is held against a usual one, so that all problems are told
# at once.
_USUAL_CYLINDER = Cylinder(60)
_CLOSENESS = {"snug": float(sources.CLOSER), "usual": 0.0, "loose": -float(sources.CLOSER)}
Notes = list[tuple[str, str]]


@dataclass(frozen=True)
class _Aim:
    """The length to knit to: `ease` as a share, and the sock's own length in mm if it is given."""

    ease: float
    sock_length: float | None

    def of(self, length: Measure) -> tuple[float, float]:
        """Return the length aimed at and its standard deviation in mm."""
        if self.sock_length is not None:
            return self.sock_length, 0.0
        return length.value * (1 - self.ease), length.sd * (1 - self.ease)


@dataclass(frozen=True)
class _Wishes:
    """What a request says of the sock; None where it leaves the choice to us."""

    cuff: Cuff
    leg: leg.Wish
    heel: short_row.Wish
    toe: short_row.Wish
    end_rounds: int
    remarks: tuple[tuple[str, str], ...]
    closer: float = 0.0


class _Told(NamedTuple):
    """A request read; None is what was left out or wrong, with its problem noted."""

    feet: Foot
    machine: Cylinder | None
    cloth: Fabric | None
    aim: _Aim
    wishes: _Wishes | None
    measures: dict[str, Measure] | None
    knitted: first_sock.FirstSock | None
    at_hand: Stock


def make(request: object) -> Sock:
    """Return the sock of a request, or raise `Refused` with every problem in it."""
    if not isinstance(request, Mapping):
        raise Refused([Problem("", "This is not a request for a plan.", "Send a group of fields.")])
    fields = Fields(request)
    feet, machine, cloth, aim, wishes, measures, knitted, at_hand = read(fields)
    if fields.problems or machine is None or cloth is None or wishes is None or measures is None:
        raise Refused(fields.problems)
    sock = _knittable(fields, machine, cloth, wishes, feet, measures, aim)
    sock = replace(sock, stock=at_hand)
    if knitted is not None:
        sock = _second(fields.part("first_sock"), sock, knitted)
    asked = [*_of_another(cloth, machine), *_unlike(feet, sock, aim)]
    return replace(sock, notes=(*sock.notes, *asked))


def read(fields: Fields) -> _Told:
    """Return all that a request says; its problems are noted in `fields`, which learn its units."""
    fields.only(GROUPS)
    fields.system = "in" if fields.choice("units", ("in", "cm")) == "in" else "cm"
    feet = foot.read(fields.part("foot"), fields.part("other_foot"), fields.part("person"))
    machine = cylinder.read(fields.part("cylinder"))
    cloth = fabric.read(fields.part("fabric"), machine.slots if machine else None)
    aim = _read_aim(fields.part("sock"))
    wishes = _read_wishes(fields.part("sock"), machine or _USUAL_CYLINDER)
    measures = _complete(fields, feet, aim)
    knitted = first_sock.read(fields.part("first_sock"))
    at_hand = yarn_at_hand.read(fields.part("stock"))
    return _Told(feet, machine, cloth, aim, wishes, measures, knitted, at_hand)


def _of_another(cloth: Fabric, machine: Cylinder) -> Notes:
    """Return a question for each piece of fabric that this cylinder cannot have knitted."""
    words = (
        f"More needles than this cylinder’s {machine.slots}: is it of another? Then swatch anew."
    )
    return [
        (f"{tube.field}.needles", words)
        for tube, *_ in cloth.seen
        if tube.needles is not None and tube.needles > machine.slots
    ]


def foot_alone(request: Mapping[str, Any]) -> tuple[System, dict[str, Measure], Notes]:
    """Return system, measures and questions of the foot, before anything is known to knit it with.

    Raises `Refused` where foot and person cannot be read, or tell no length.
    """
    fields = Fields(request)
    fields.system = "in" if fields.choice("units", ("in", "cm")) == "in" else "cm"
    feet = foot.read(fields.part("foot"), fields.part("other_foot"), fields.part("person"))
    measures = _complete(fields, feet, _read_aim(fields.part("sock")))
    if fields.problems or measures is None:
        raise Refused(fields.problems)
    return fields.system, measures, foot.questions(feet)


def _unlike(feet: Foot, sock: Sock, aim: _Aim) -> list[tuple[str, str]]:
    """Return the count for the shorter of two feet too unlike for one; its heel and toe the same.

    A sock whose length was given is knitted as it stands, whoever's it is.
    """
    if not feet.unlike or feet.smaller_length is None or aim.sock_length is not None:
        return []
    aimed = feet.smaller_length * (1 - aim.ease)
    rounds = nearest(foot_rounds.exact(aimed, sock.fabric.rounds, sock.sections))
    count = f", about {rounds} for the shorter foot and {sock.foot_rounds} for the longer"
    words = (
        "That is more than feet usually differ. Two different socks may fit better: knit each to "
        f"its own foot rounds{count if rounds >= 1 else ''}."
    )
    return [("other_foot.length", words)]


def _second(fields: Fields, sock: Sock, knitted: first_sock.FirstSock) -> Sock:
    """Return the second sock: the first one's cuff, leg, heel and toe, its foot counted anew."""
    cloth = first_sock.learn(fields, knitted, sock)
    rounds = nearest(foot_rounds.exact(sock.aimed, cloth.rounds, sock.sections))
    if not fields.problems and rounds < 1:
        fields.refuse(
            "length",
            "By this first sock, heel and toe alone are longer than the foot.",
            "Check its length and rounds, or leave more needles in heel and toe.",
        )
    if fields.problems:
        raise Refused(fields.problems)
    pair = sock.pockets["heel"], sock.pockets["toe"]
    sections = cuff_down(
        sock.cylinder,
        sock.cuff,
        sock.leg.bands,
        pair,
        rounds,
        Cloth(cloth, sock.system),
        sock.end_rounds,
    )
    second = replace(
        sock,
        fabric=cloth,
        fabric_before=sock.fabric,
        sections=sections,
        knitted_rounds=knitted.foot_rounds,
    )
    asked = cloth.questions[len(sock.fabric.questions) :]
    note = (
        f"Knit {second.foot_rounds} foot rounds in sock two, where sock one has "
        f"{knitted.foot_rounds}. Cuff, leg, heel and toe stay, so that the two match."
    )
    return replace(second, notes=(*sock.notes, (fields.where("foot_rounds"), note), *asked))


def _read_aim(fields: Fields) -> _Aim:
    ease = fields.share("length_ease", _EASE)
    return _Aim(
        float(sources.LENGTH_EASE) if ease is None else ease,
        fields.length("foot_length_of_sock", SOCK_LENGTH),
    )


def _read_wishes(fields: Fields, machine: Cylinder) -> _Wishes | None:
    known = ("cuff", "leg", "heel", "toe", "end", "length_ease", "foot_length_of_sock", "closeness")
    fields.only(known)
    made, remarks = registry.read_cuff(fields.part("cuff"), machine.slots)
    closer = _CLOSENESS.get(fields.choice("closeness", _CLOSENESS) or "", 0.0)
    leg_wish = leg.read(fields.part("leg"))
    heel = short_row.read(fields.part("heel"), machine.slots, machine.half)
    toe = short_row.read(fields.part("toe"), machine.slots, machine.half)
    end_rounds = read_end(fields.part("end"))
    if made is None or heel is None or toe is None:
        return None
    notes = (*remarks, *leg_wish.asked)
    return _Wishes(made, leg_wish, heel, toe, end_rounds, notes, closer)


def _complete(fields: Fields, feet: Foot, aim: _Aim) -> dict[str, Measure] | None:
    try:
        return foot.complete(feet, aim.sock_length, aim.ease)
    except NothingKnown:
        tried = ("foot", "other_foot", "person", "sock.foot_length")
        if not any(problem.field.startswith(tried) for problem in fields.problems):
            fields.part("foot").refuse(
                "length",
                "There is no length to knit to.",
                "Measure the foot from the heel to the longest toe, or give a shoe size.",
            )
        return None


def _knittable(
    fields: Fields,
    machine: Cylinder,
    cloth: Fabric,
    wishes: _Wishes,
    feet: Foot,
    measures: dict[str, Measure],
    aim: _Aim,
) -> Sock:
    system = fields.system
    heel_girth = feet.measured.get("heel_girth")
    heel, heel_words = pockets.heel(wishes.heel, machine, cloth, heel_girth)
    toe, toe_words = pockets.toe(wishes.toe, cloth, feet.toe_breadth)
    aimed, aimed_sd = aim.of(measures["length"])
    rounds = nearest(foot_rounds.exact(aimed, cloth.rounds, (heel, toe)))
    if rounds < 1:

        def heel_at(rounds: float) -> Pocket:
            finer = replace(cloth, rounds=rounds)
            return pockets.heel(wishes.heel, machine, finer, heel_girth)[0]

        short = too_short.Case(heel_at, wishes.heel, toe, machine, cloth, aimed, system)
        given = aim.sock_length is not None
        ball = measures["ball_girth"].value
        raise Refused([too_short.problem(short, SOCK_LENGTH if given else None, aim.ease, ball)])
    made, leg_notes = _leg(fields.part("sock"), wishes, machine, cloth, heel, measures)
    sock = Sock(
        system=system,
        cylinder=machine,
        fabric=cloth,
        measures=measures,
        sections=cuff_down(
            machine,
            wishes.cuff,
            made.bands,
            (heel, toe),
            rounds,
            Cloth(cloth, system),
            wishes.end_rounds,
        ),
        leg=made,
        leg_body=shaped_leg.profile(wishes.leg.girths, measures),
        heel_words=heel_words,
        toe_words=toe_words,
        likely_left=pockets.likely_left(
            (heel, wishes.heel), (toe, wishes.toe), machine, cloth, feet
        ),
        toe_breadth=feet.toe_breadth,
        aimed=aimed,
        aimed_sd=aimed_sd,
        ease=aim.ease,
        closer=wishes.closer,
        notes=(*foot.questions(feet), *cloth.questions, *wishes.remarks, *leg_notes),
    )
    return replace(sock, notes=(*sock.notes, *_high(sock)))


def _leg(
    fields: Fields,
    wishes: _Wishes,
    machine: Cylinder,
    cloth: Fabric,
    heel: Pocket,
    measures: dict[str, Measure],
) -> tuple[Leg, shaped_leg.Notes]:
    """Return the leg and what is worth saying of it; one that nobody asked to shape is plain.

    `fields` are the sock's. Raises `Refused` where the bands that were told cannot be knitted.
    """
    wish, system = wishes.leg, fields.system
    if wish.bands:
        told = leg.as_told(fields.part("leg"), wish.bands, cloth)
        if fields.problems:
            raise Refused(fields.problems)
        return told, ()
    if wish.height is not None or wish.girths:
        bottom = heel.height(cloth)
        on = machine.slots, cloth, bottom, wishes.cuff, measures, system
        ground = shaped_leg.Ground(*on, closer=wishes.closer)
        return shaped_leg.shape(wish, ground)
    exact = wish.rounds is not None
    if wish.footie:
        return Leg((leg.Band(wish.rounds or 0),), "for a footie", exact), ()
    words = "in the customary proportion to the foot, about half its length"
    bands = (leg.Band(leg.plain_rounds(wish, measures["length"].value, cloth)),)
    return Leg(bands, "as you set it" if exact else words, exact), ()


def _high(sock: Sock) -> list[tuple[str, str]]:
    """Return a remark where the top of the sock would stand at the knee."""
    knee = sources.KNEE_HEIGHT_OVER_FOOT * sock.measures["length"].value
    if not reaches(sock.top_above_floor / knee, 1):
        return []
    height = units.length_text(sock.top_above_floor, sock.system)
    words = f"The top would stand {height} above the floor, at the knee or over it."
    return [("sock.leg.rounds", words)]
