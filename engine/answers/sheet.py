"""The sheet of counts: a sock written out for a screen, in the user's units and in plain words.

Every quantity is a dict of `value`, `unit`, `text` (the user's system) and `other` (the other one);
lengths have their value in mm. Counts are plain whole numbers.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt
from typing import Any, Literal

from engine import sources
from engine.answers import (
    fabric_sheet,
    leg_sheet,
    narrower,
    off_machine,
    pair_sheet,
    pocket_sheet,
    steps,
    yarn_sheet,
)
from engine.fabric import certainty
from engine.judge import cautions, fit
from engine.people.foot import Measure
from engine.read import units
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sections.leg import Offer
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES
from engine.sock.sock import Sock

_CLEARLY = 0.03  # of a range's width (our choice)
_SEEN = 0.0005  # of a habit: less would be written as none


def write(sock: Sock, worn: list[fit.Place], rows_in_words: bool = True) -> dict[str, Any]:
    """Return the whole answer for a sock, the rows of its steps in words or without.

    `worn` are its `places`.
    """
    counts = _counts(sock)
    notes = (
        *_leg_tight(worn),
        *sock.notes,
        *_weight_asked(sock, worn),
        *yarn_sheet.notes(sock),
    )
    return {
        "units": sock.system,
        "counts": counts,
        "parts": parts(sock),
        "measures": measures(sock.measures, sock.system),
        "fabric": fabric_sheet.write(sock),
        "sizes": _sizes(sock),
        "fit": [_place(place, sock) for place in worn],
        "yarn": yarn_sheet.write(sock),
        "range": _ranges(sock),
        "choices": pocket_sheet.choices(sock),
        "pair": pair_sheet.write(sock),
        "off_machine": off_machine.write(sock),
        "steps": steps.whole_sock(sock, rows_in_words),
        "cautions": cautions.USUAL,
        "origin": sock.origin.words if sock.origin else "",
        "notes": [{"field": field, "text": text} for field, text in notes],
    }


def measures(found: dict[str, Measure], system: units.System) -> dict[str, Any]:
    """Return every measure with its interval and where it is from."""
    return {name: _measure(measure, system) for name, measure in found.items()}


def places(sock: Sock) -> list[fit.Place]:
    """Return the fit at every place; at the cuff where the leg is known, or was asked after."""
    found = _worn(sock, sock.measures)
    body, slots, top = sock.top_of_body, sock.cylinder.slots, sock.top_tube
    if sock.leg.asked or sock.cuff.flat is not None:
        give = sock.cuff.give(slots, sock.fabric, top)
        found.append(
            fit.grip(
                body.girth,
                sock.cuff.girth(slots, top),
                give,
                body.measured,
                sock.cuff.ribbed,
            )
        )
    return found


def _worn(sock: Sock, body: dict[str, Measure]) -> list[fit.Place]:
    """Return the fit on a foot and leg, but for the cuff."""
    foot_length = sock.measures["length"].value
    ankle, ankle_narrows = sock.tube_at(sources.ANKLE_HEIGHT_OVER_FOOT * foot_length)
    calf, calf_narrows = sock.tube_at(sources.CALF_HEIGHT_OVER_FOOT * foot_length)
    narrows = ankle_narrows, calf_narrows
    along = fit.Girths(sock.narrowest, ankle, calf, sock.top_tube, narrows, sock.foot_narrows)
    return fit.judge(
        body,
        sock.tube,
        sock.heel_girth,
        sock.cuff,
        sock.fabric,
        sock.top_above_floor,
        along,
        sock.closer,
    )


def _leg_tight(worn: list[fit.Place]) -> Iterator[tuple[None, Message]]:
    """Yield the caution of a sock that presses the leg, or may not go over the heel."""
    if any(
        one.place in ("over_heel", "ankle", "calf") and one.level == "bad" and one.stretch > 1
        for one in worn
    ):
        yield None, say.leg_is_tight()


def _weight_asked(sock: Sock, worn: list[fit.Place]) -> list[tuple[str, Message]]:
    """Return the question for the weight, where a heavy wearer's fit would be another."""
    if sock.if_heavy is None:
        return []
    weight, body = sock.if_heavy
    others = zip(worn, _worn(sock, body), strict=False)
    if all(place.feels == other.feels for place, other in others):
        return []
    in_lb = units.GRAMS_PER_POUND / 1000
    kg, lb = f"{weight:.0f} kg", f"{weight / in_lb:.0f} lb"
    return [("person.weight", say.weight_asked(weight=lb if sock.system == "in" else kg))]


def _counts(sock: Sock) -> dict[str, Any]:
    """Return the counts of every part, with what they are in words."""
    told = {
        "cuff": sock.cuff.words,
        "toe": _toe(sock),
        "before_toe": say.rounds_before_toe(),
        "end": say.rounds_after_toe(),
    }
    if isinstance(sock.heel, Pocket):
        told["heel"] = _turned(sock.heel, sock.heel_words)
    found: dict[str, Any] = {"needles": sock.cylinder.slots}
    for section in sock.sections:
        if section.counted:
            words = told.get(section.part)
            found[section.part] = {**section.counts(sock.cylinder), "words": words}
    for part, pocket in sock.pockets.items():
        if pocket.manner:
            found[part]["manner"] = pocket.manner
    found["foot"] = {
        "rounds": sock.foot_rounds,
        "exact": round(sock.exact_rounds, 2),
        "words": working(sock),
    }
    found["leg"] = leg_sheet.write(sock)
    return found


def _toe(sock: Sock) -> Words:
    toe = sock.toe
    return _turned(toe, sock.toe_words) if isinstance(toe, Pocket) else toe.manner


def _turned(pocket: Pocket, words: Words) -> Message:
    told = {"needles": pocket.needles, "left": pocket.left, "why": words}
    if pocket.manner:
        return say.pocket_turned_so(**told, manner=pocket.manner)
    return say.pocket_turned(**told)


def working(sock: Sock) -> Message:
    """Return the working of the foot rounds, as it would be done on paper."""
    aimed = units.length_text(sock.aimed, sock.system)
    said = list[Message]()
    if sock.pair is not None and sock.pair.like != "foot":
        like: Literal["between", "one"] = "one" if sock.pair.like == "sock one" else "between"
        said.append(say.pair_aim(like=like, aimed=aimed))
    elif sock.aimed_sd:
        foot = units.length_text(sock.measures["length"].value, sock.system)
        told = {"foot": foot, "percent": units.number(sock.ease * 100), "aimed": aimed}
        if sock.room:
            room = units.length_text(sock.room, sock.system)
            said.append(say.rounds_aim_and_room(**told, room=room))
        else:
            said.append(say.rounds_aim(**told))
    by_hand = sock.toe.by_hand
    if by_hand:
        left = units.length_text(sock.aimed - by_hand, sock.system)
        hand = units.length_text(by_hand, sock.system)
        said.append(say.rounds_by_hand(aimed=aimed, hand=hand, left=left))
        aimed = left
    total = {
        "aimed": aimed,
        "gauge": units.per_length(sock.fabric.rounds, sock.system)["text"],
        "exact": f"{sock.exact_rounds:.1f}",
    }
    whole = {**total, "whole": f"{(sock.aimed - by_hand) * sock.fabric.rounds:.1f}"}
    before = sock.rounds_before_toe
    heel, toe = sock.heel.sole, sock.toe.sole + before
    if heel and toe:
        said.append(say.rounds_sum(**whole, heel=heel, toe=toe))
    elif heel:
        said.append(say.rounds_sum_one(**whole, part="heel", rows=heel))
    elif toe:
        said.append(say.rounds_sum_one(**whole, part="toe", rows=toe))
    else:
        said.append(say.rounds_sum_plain(**total))
    return say.in_turn(sentences=(*said, _rounded(sock)))


def _rounded(sock: Sock) -> Message:
    off = sock.foot_length - sock.aimed
    if abs(sock.exact_rounds - sock.foot_rounds) < 0.05:
        return say.nothing_to_round()
    by = units.small_length(abs(off), sock.system)["text"]
    return say.rounded(way="up" if off > 0 else "down", rounds=sock.foot_rounds, by=by)


def parts(sock: Sock) -> list[dict[str, Any]]:
    """Return what is knitted in each part, and how much of it."""
    length = units.length_text(sock.leg_length, sock.system)
    details: dict[str, Words] = {
        "cuff": sock.cuff.words,
        "leg": say.leg_detail(length=length, kind=leg_sheet.kind(sock)),
        "foot": say.most_likely(span=narrower.span(sock.rounds_range)),
        "before_toe": say.rounds_before_toe(),
        "end": say.rounds_after_toe(),
        **({} if isinstance(sock.toe, Pocket) else {"toe": sock.toe.manner}),
        **{part: _down_and_back(pocket) for part, pocket in sock.pockets.items()},
    }
    return [
        {
            "part": piece.part,
            "title": TITLES[piece.part],
            "count": piece.count,
            "unit": piece.unit,
            "figure": piece.figure,
            "detail": leg_sheet.in_colors(sock, piece.part, details[piece.part]),
        }
        for piece in sock.pieces
    ]


def _down_and_back(pocket: Pocket) -> Message:
    needles = {"needles": pocket.needles, "left": pocket.left}
    if pocket.manner:
        return say.pocket_detail_so(**needles, manner=pocket.manner)
    return say.pocket_detail(**needles)


def _measure(measure: Measure, system: units.System) -> dict[str, Any]:
    return {
        **units.length(measure.value, system),
        "low": round(measure.low, 1),
        "high": round(measure.high, 1),
        "range_text": units.length_range(measure.low, measure.high, system),
        "from": "measured" if measure.measured else "estimated",
        "words": measure.words,
    }


def _sizes(sock: Sock) -> dict[str, Any]:
    girth = sock.heel_girth
    sizes = {
        "tube_girth": sock.tube,
        "cuff_depth": sock.cuff_depth,
        "leg_length": sock.leg_length,
        **({} if girth is None else {"heel_height": sock.heel_height}),
        "top_above_heel": sock.top_above_heel,
        "top_above_floor": sock.top_above_floor,
        "foot_length": sock.foot_length,
        **({} if girth is None else {"heel_girth": girth}),
    }
    return {name: units.length(mm, sock.system) for name, mm in sizes.items()}


def _place(place: fit.Place, sock: Sock) -> dict[str, Any]:
    system, offer = sock.system, _offer(place, sock.leg.offers)
    return {
        "place": place.place,
        "title": fit.TITLES[place.place],
        "body": units.length(place.body, system),
        "fabric": units.length(place.fabric, system),
        "stretch": round(place.stretch, 3),
        "level": place.level,
        "verdict": place.verdict,
        "sure": place.sure,
        "chance": round(place.chance, 2),
        "words": place.words,
        "from": "measured" if place.measured else "estimated",
        **({"offers": offer} if offer else {}),
    }


def _offer(place: fit.Place, leg: Offer) -> Offer:
    """Return what the leg is offered to be at a place: shaped where it is loose, or plain again."""
    if place.place != "ankle" or (leg == "shaped" and place.feels not in ("slack", "loose")):
        return ""
    return leg


def _ranges(sock: Sock) -> dict[str, Any]:
    cuff = sock.cuff.rounds
    by: Literal["you", "custom"] = "you" if sock.cuff.told else "custom"
    return {
        "cuff": _exact(cuff, by),
        "leg": leg_sheet.reach(sock),
        "toe": _exact(0, "you"),
        **pocket_sheet.reach(sock),
        "foot": _range(sock),
        **{
            part: _exact(rounds, "you")
            for part, rounds in (("before_toe", sock.rounds_before_toe), ("end", sock.end_rounds))
            if rounds
        },
    }


def _exact(count: int, by: Literal["you", "custom"]) -> dict[str, Any]:
    return {"low": count, "high": count, "words": say.exact_by(by=by)}


def _range(sock: Sock) -> dict[str, Any]:
    low, high = sock.rounds_range
    words = say.foot_range(span=narrower.span((low, high)), high=high)
    said = _in_turn(words, *_of_knitter(sock), *narrower.words(sock))
    return {"low": low, "high": high, "words": said}


def _of_knitter(sock: Sock) -> Iterator[Message]:
    """Yield what her finished pairs change, or that they were left out of a link."""
    who = sock.fabric.knitter
    if who.left_out:
        yield say.record_left_out()
    if not who.pairs:
        return
    _, scatter = who.scatters
    wide, usual = certainty.told(0.0, scatter).sd(), certainty.told(0.0).sd()
    percent, habit = f"{sqrt(scatter.square) * 100:.1f}", who.along.habit
    range_is: Literal["narrower", "wider", "same"] = "same"
    if abs(wide / usual - 1) > _CLEARLY:
        range_is = "narrower" if wide < usual else "wider"
    yield say.pairs_taught(pairs=who.pairs, percent=percent, range=range_is)
    if any(tube.kind == "swatch" for tube, *_ in sock.fabric.seen) and abs(habit) > _SEEN:
        by = f"{abs(habit) * 100:.1f}"
        yield say.habit_taken(size="shorter" if habit > 0 else "longer", percent=by)


def _in_turn(first: Message, *others: Message) -> Message:
    return say.in_turn(sentences=(first, *others)) if others else first
