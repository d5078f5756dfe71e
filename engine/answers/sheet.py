"""The sheet of counts: a sock written out for a screen, in the user's units and in plain words.

Every quantity is a dict of `value`, `unit`, `text` (the user's system) and `other` (the other one);
lengths have their value in mm. Counts are plain whole numbers.
"""

from __future__ import annotations

from math import ceil
from typing import Any

from engine import sources
from engine.answers import fabric_sheet, leg_sheet, narrower, pocket_sheet, steps, yarn_sheet
from engine.judge import cautions, fit, supply
from engine.people.foot import Measure
from engine.read import units
from engine.sections.short_row import Pocket
from engine.sock.sock import Sock


def write(sock: Sock) -> dict[str, Any]:
    """Return the whole answer for a sock."""
    worn = places(sock)
    counts = _counts(sock)
    notes = (*sock.notes, *yarn_sheet.notes(sock))
    return {
        "units": sock.system,
        "counts": counts,
        "parts": parts(sock),
        "measures": measures(sock.measures, sock.system),
        "fabric": fabric_sheet.write(sock),
        "sizes": _sizes(sock),
        "fit": [_place(place, sock.system) for place in worn],
        "yarn": yarn_sheet.write(sock),
        "range": _ranges(sock),
        "choices": pocket_sheet.choices(sock),
        "steps": steps_of(sock),
        "cautions": cautions.for_sock(
            any(
                p.place in ("over_heel", "ankle", "calf") and p.level == "bad" and p.stretch > 1
                for p in worn
            )
        ),
        "notes": [{"field": field, "text": text} for field, text in notes],
    }


def steps_of(sock: Sock) -> list[steps.Step]:
    """Return every step of the sock in order."""
    return steps.whole_sock(
        sock.cylinder,
        sock.cuff,
        leg_sheet.tensions(sock),
        sock.heel,
        sock.foot_rounds,
        sock.toe,
        leg_sheet.back(sock),
        _tail(sock),
    )


def _tail(sock: Sock) -> str:
    """Return the yarn to leave for grafting, up to a whole cm or inch: never too little."""
    whole = units.MM_PER_INCH if sock.system == "in" else 10.0
    mm = supply.grafting_tail(sock.grafted, sock.fabric)
    return units.length_text(ceil(mm / whole) * whole, sock.system)


def measures(found: dict[str, Measure], system: units.System) -> dict[str, Any]:
    """Return every measure with its interval and where it is from."""
    return {name: _measure(measure, system) for name, measure in found.items()}


def places(sock: Sock) -> list[fit.Place]:
    """Return the fit at every place; at the cuff where the leg is known, or was asked after."""
    foot_length = sock.measures["length"].value
    along = fit.Girths(
        sock.narrowest,
        sock.tube_at(sources.ANKLE_HEIGHT_OVER_FOOT * foot_length),
        sock.tube_at(sources.CALF_HEIGHT_OVER_FOOT * foot_length),
        sock.top_tube,
    )
    found = fit.judge(
        sock.measures,
        sock.tube,
        sock.heel_girth,
        sock.cuff,
        sock.fabric,
        sock.top_above_floor,
        along,
    )
    body, slots, top = sock.top_of_body, sock.cylinder.slots, sock.top_tube
    if sock.leg.asked or sock.cuff.flat is not None:
        give = sock.cuff.give(slots, sock.fabric, top)
        found.append(
            fit.grip(
                body.girth,
                sock.cuff.girth(slots, top),
                give,
                body.measured,
                sock.cuff.kind == "rib",
            )
        )
    return found


def _counts(sock: Sock) -> dict[str, Any]:
    slots = sock.cylinder.slots
    return {
        "needles": slots,
        "cuff": {
            "kind": sock.cuff.kind,
            "rounds": sock.cuff.rounds,
            "needles": sock.cuff.needles(slots),
            "words": sock.cuff.words,
        },
        "leg": leg_sheet.write(sock),
        "heel": _pocket(sock.heel, sock.heel_words),
        "foot": {
            "rounds": sock.foot_rounds,
            "exact": round(sock.exact_rounds, 2),
            "words": _rounding(sock),
        },
        "toe": _pocket(sock.toe, sock.toe_words),
    }


def _pocket(pocket: Pocket, words: str) -> dict[str, Any]:
    return {
        "needles": pocket.needles,
        "left": pocket.left,
        "rows": pocket.rows,
        "rows_each_way": pocket.each_way,
        "words": f"{pocket.needles} needles down to {pocket.left} and back: {words}",
    }


def _rounding(sock: Sock) -> str:
    off = sock.foot_length - sock.aimed
    by = units.small_length(abs(off), sock.system)["text"]
    if abs(sock.exact_rounds - sock.foot_rounds) < 0.05:
        return f"{_sum(sock)}: nothing to round"
    way, longer = ("up", "longer") if off > 0 else ("down", "shorter")
    rounded = f"rounded {way} to {sock.foot_rounds}: the sock is {by} {longer} than aimed at"
    return f"{_sum(sock)}, {rounded}"


def _sum(sock: Sock) -> str:
    """Return the working of the foot rounds, as it would be done on paper."""
    aimed = units.length_text(sock.aimed, sock.system)
    if sock.aimed_sd:
        foot = units.length_text(sock.measures["length"].value, sock.system)
        aimed = f"{foot} less {units.number(sock.ease * 100)} % is {aimed}"
    rounds = units.per_length(sock.fabric.rounds, sock.system)["text"]
    whole = sock.exact_rounds + sock.heel.each_way + sock.toe.each_way
    return (
        f"{aimed}; at {rounds} that is {whole:.1f} rounds; less {sock.heel.each_way} for the heel "
        f"and {sock.toe.each_way} for the toe is {sock.exact_rounds:.1f} rounds"
    )


def parts(sock: Sock) -> list[dict[str, Any]]:
    """Return what is knitted in each part, and how much of it."""

    def turn(pocket: Pocket) -> str:
        return f"{pocket.needles} needles, down to {pocket.left}, back to {pocket.needles}"

    low, high = sock.rounds_range
    rows = (
        ("cuff", sock.cuff.rounds, "rounds", sock.cuff.words),
        (
            "leg",
            sock.leg_rounds,
            "rounds",
            f"{units.length_text(sock.leg_length, sock.system)} {leg_sheet.kind(sock)}",
        ),
        ("heel", sock.heel.rows, "rows", turn(sock.heel)),
        ("foot", sock.foot_rounds, "rounds", f"most likely {low} to {high}"),
        ("toe", sock.toe.rows, "rows", turn(sock.toe)),
    )
    return [
        {
            "part": part,
            "title": steps.TITLES[part],
            "count": count,
            "unit": unit[:-1] if count == 1 else unit,
            "detail": detail,
        }
        for part, count, unit, detail in rows
    ]


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
    sizes = {
        "tube_girth": sock.tube,
        "cuff_depth": sock.cuff_depth,
        "leg_length": sock.leg_length,
        "heel_height": sock.heel_height,
        "top_above_heel": sock.top_above_heel,
        "top_above_floor": sock.top_above_floor,
        "foot_length": sock.foot_length,
        "heel_girth": sock.heel_girth,
    }
    return {name: units.length(mm, sock.system) for name, mm in sizes.items()}


def _place(place: fit.Place, system: units.System) -> dict[str, Any]:
    return {
        "place": place.place,
        "title": fit.TITLES[place.place],
        "body": units.length(place.body, system),
        "fabric": units.length(place.fabric, system),
        "stretch": round(place.stretch, 3),
        "level": place.level,
        "verdict": place.verdict,
        "words": place.words,
        "from": "measured" if place.measured else "estimated",
    }


def _ranges(sock: Sock) -> dict[str, Any]:
    cuff = sock.cuff.rounds
    by = "you" if sock.cuff.told else "custom"
    return {
        "cuff": {"low": cuff, "high": cuff, "words": f"Exact: set by {by}."},
        "leg": leg_sheet.reach(sock),
        **pocket_sheet.reach(sock),
        "foot": _range(sock),
    }


def _range(sock: Sock) -> dict[str, Any]:
    low, high = sock.rounds_range
    span = f"{low}" if low == high else f"{low} to {high}"
    words = f"Most likely {span} rounds (four times in five). {narrower.words(sock)}"
    return {"low": low, "high": high, "words": words.strip()}
