"""The plan: the sock that answers a request assembled.

The foot rounds (`foot_rounds`) are for T = foot length x (1 - length ease), or the sock length as
given. Below 1 they are refused: such a foot is too short for this cylinder and gauge.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from engine import sources
from engine.fabric.fabric import Fabric
from engine.fabric.gauge import UNKNOWN
from engine.fabric.yarn_at_hand import Stock
from engine.machine.cylinder import Cylinder
from engine.people import foot
from engine.people.foot import Foot, Measure
from engine.read import units
from engine.read.errors import Problem, Refused
from engine.read.fields import Fields
from engine.read.units import nearest, reaches
from engine.say import messages as say
from engine.sections import leg, pockets, shaped_leg, short_row
from engine.sections.leg import Leg
from engine.sections.no_heel import NoHeel
from engine.sections.pockets import Heel
from engine.sections.tube import Tube
from engine.sock import colors, first_sock, foot_rounds, string, too_short
from engine.sock import pair as pairs
from engine.sock.in_order import Cloth, cuff_down
from engine.sock.pair import Pair
from engine.sock.sock import Sock
from engine.sock.wanted import SOCK_LENGTH, Aim, Notes, Wishes, read, room_asked


def make(request: object, *, anybody: bool = False) -> Sock:
    """Return the sock of a request, or raise `Refused` with every problem in it.

    With `anybody` a foot of which nothing is known is everybody's.
    """
    if not isinstance(request, Mapping):
        raise Refused([Problem("", say.no_request(), say.send_fields())])
    fields = Fields(request)
    told = read(fields, anybody=anybody)
    feet, machine, cloth, aim, wishes, measures, knitted, at_hand, whose = told
    if fields.problems or machine is None or cloth is None or wishes is None or measures is None:
        raise Refused(fields.problems)
    sock = _knittable(fields, machine, cloth, wishes, feet, measures, aim, at_hand)
    if knitted is not None:
        sock = _second(fields.part("first_sock"), sock, knitted)
    if wishes.colors is not None:
        painted = colors.put_on(sock.sections, wishes.colors)
        sock = replace(sock, sections=painted, colors=wishes.colors)
    if wishes.string is not None:
        sock = _strung(sock, wishes.string)
    if whose is not None:
        sock = replace(sock, origin=whose)
    asked = [
        *_of_another(cloth, machine),
        *_unlike(feet, sock, aim),
        *room_asked(feet, measures, aim, fields.system),
    ]
    return _noted(sock, asked)


def _strung(sock: Sock, place: string.Place) -> Sock:
    """Return a sock in its place in a string, with a word on it."""
    placed = string.sock_one if sock.knitted_rounds is None else string.sock_two
    sections = placed(sock.sections, sock.cylinder, place)
    is_so = say.string_is(place=place)
    words = say.in_turn(sentences=(is_so, say.string_unmeasured()))
    return _noted(
        replace(sock, sections=sections, string=place),
        [("sock.string", words if sock.knitted_rounds is None else is_so)],
    )


def _of_another(cloth: Fabric, machine: Cylinder) -> Notes:
    """Return a question for each piece of fabric that this cylinder cannot have knitted."""
    words = say.more_needles_than_slots(slots=machine.slots)
    return [
        (f"{tube.field}.needles", words)
        for tube, *_ in cloth.seen
        if tube.needles is not None and tube.needles > machine.slots
    ]


def _unlike(feet: Foot, sock: Sock, aim: Aim) -> Notes:
    """Return the count for the shorter of two feet too unlike for one; its heel and toe the same.

    A sock whose length was given is knitted as it stands, whoever's it is.
    """
    if not feet.unlike or feet.smaller_length is None or aim.sock_length is not None:
        return []
    aimed = aim.from_foot(feet.smaller_length)
    rounds = nearest(foot_rounds.exact(aimed, sock.fabric.rounds, sock.others))
    words = say.unlike_feet()
    if rounds >= 1:
        words = say.unlike_feet_rounds(shorter=rounds, longer=sock.foot_rounds)
    return [("other_foot.length", words)]


def _second(fields: Fields, sock: Sock, typed: first_sock.FirstSock) -> Sock:
    """Return the second sock: the first one's cuff, leg, heel and toe, its foot counted anew."""
    knitted = first_sock.as_washed(fields, typed, sock)
    if knitted is None:
        raise Refused(fields.problems)
    cloth = first_sock.learn(fields, knitted, sock)
    pair = pair_after(sock, knitted, cloth)
    aimed, aimed_sd = pair.chosen.aimed, pair.chosen.aimed_sd
    rounds = nearest(foot_rounds.exact(aimed, cloth.rounds, sock.others))
    if not fields.problems and rounds < 1:
        fields.refuse(knitted.field, say.sock_one_too_short(), say.check_sock_one())
    if fields.problems:
        raise Refused(fields.problems)
    sections = cuff_down(
        sock.cylinder,
        sock.cuff,
        sock.leg.bands,
        (sock.heel, sock.toe),
        rounds,
        Cloth(cloth, sock.system),
        sock.end_rounds,
        sock.leg.plain,
        sock.rounds_before_toe,
        instep=sock.leg.instep,
    )
    second = replace(
        sock,
        fabric=cloth,
        fabric_before=sock.fabric,
        sections=sections,
        knitted_rounds=knitted.foot_rounds,
        aimed=aimed,
        aimed_sd=aimed_sd,
        pair=pair,
    )
    asked = cloth.questions[len(sock.fabric.questions) :]
    like: Literal["foot", "between", "one"] = "one" if pair.like == "sock one" else pair.like
    note = say.knit_sock_two(rounds=second.foot_rounds, before=knitted.foot_rounds, like=like)
    notes = [(fields.where("foot_rounds"), note), *first_sock.after_wash(fields, typed, knitted)]
    return replace(second, notes=(*sock.notes, *notes, *asked))


def pair_after(sock: Sock, knitted: first_sock.FirstSock, cloth: Fabric) -> Pair:
    """Return what sock two may be after sock one, in the fabric that this taught."""
    return pairs.work_out(
        knitted.like,
        (sock.aimed, sock.aimed_sd),
        (knitted.length, knitted.tape(sock.others), knitted.foot_rounds),
        (cloth.rounds, cloth.along or UNKNOWN),
        sock.others,
    )


def _knittable(
    fields: Fields,
    machine: Cylinder,
    cloth: Fabric,
    wishes: Wishes,
    feet: Foot,
    measures: dict[str, Measure],
    aim: Aim,
    at_hand: Stock,
) -> Sock:
    system = fields.system
    heel_girth = feet.measured.get("heel_girth")
    heel, heel_words = pockets.heel(wishes.heel, machine, cloth, heel_girth)
    toe, toe_words = pockets.toe(wishes.toe, cloth, feet.toe_breadth)
    aimed, aimed_sd = aim.of(measures["length"])
    before = Tube("before_toe", wishes.toe.before)
    others = foot_rounds.others((heel, before, toe))
    rounds = nearest(foot_rounds.exact(aimed, cloth.rounds, others))
    if rounds < 1:

        def heel_at(rounds: float) -> Heel:
            finer = replace(cloth, rounds=rounds)
            return pockets.heel(wishes.heel, machine, finer, heel_girth)[0]

        short = too_short.Case(heel_at, wishes.heel, toe, machine, cloth, aimed, system, before)
        given = aim.sock_length is not None
        ball = measures["ball_girth"].value
        raise Refused(
            [too_short.problem(short, SOCK_LENGTH if given else None, aim.foot_for, ball)]
        )
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
            made.plain,
            before.rounds,
            instep=made.instep,
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
        room=aim.room or 0.0,
        if_heavy=foot.if_heavy(feet, measures),
        stock=at_hand,
        closer=wishes.closer,
        notes=(
            *foot.questions(feet),
            *cloth.questions,
            *wishes.remarks,
            *leg_notes,
            *pockets.remarks(
                heel,
                toe,
                machine,
                cloth,
                system,
                high_instep="instep_girth" in feet.measured,
            ),
        ),
    )
    return _noted(sock, _high(sock))


def _noted(sock: Sock, notes: Notes) -> Sock:
    """Return the sock with more notes; without any the same, with all that was worked out of it."""
    return replace(sock, notes=(*sock.notes, *notes)) if notes else sock


def _leg(
    fields: Fields,
    wishes: Wishes,
    machine: Cylinder,
    cloth: Fabric,
    heel: Heel,
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
    bottom = heel.height(cloth)
    on = machine.slots, cloth, bottom, wishes.cuff, measures, system
    ground = shaped_leg.Ground(*on, closer=wishes.closer)
    if wish.height is not None or wish.girths or wish.shaped:
        return shaped_leg.shape(wish, ground)
    rounds = leg.plain_rounds(wish, measures["length"].value, cloth)
    if isinstance(heel, NoHeel) and not wish.set_by:  # as high as over a usual heel
        rounds += machine.half - short_row.customary_left(machine.half)
    bands = (leg.Band(rounds),)
    words = say.leg_words(why="custom")
    if wish.footie:
        words = say.leg_words(why="footie")
    elif wish.rounds is not None:
        words = say.leg_words(why="told")
    plain = wish.footie or wish.plain is not None
    able = not plain and measures["ankle_girth"].measured and shaped_leg.tightens(ground)
    offers: leg.Offer = "shaped" if able else ""
    return Leg(bands, words, wish.set_by, plain=wish.plain, offers=offers, instep=wish.instep), ()


def _high(sock: Sock) -> Notes:
    """Return a remark where the top of the sock would stand at the knee."""
    knee = sources.KNEE_HEIGHT_OVER_FOOT * sock.measures["length"].value
    if not reaches(sock.top_above_floor / knee, 1):
        return []
    height = units.length_text(sock.top_above_floor, sock.system)
    return [("sock.leg.rounds", say.top_at_knee(height=height))]
