"""The sheet of counts: a sock written out for a screen, in the user's units and in plain words.

Every quantity is a dict of `value`, `unit`, `text` (the user's system) and `other` (the other one);
lengths have their value in mm. Counts are plain whole numbers.
"""

from __future__ import annotations

from typing import Any

from engine import sources
from engine.answers import fabric_sheet, leg_sheet, narrower, pocket_sheet, steps, yarn_sheet
from engine.judge import cautions, fit
from engine.people.foot import Measure
from engine.read import units
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES
from engine.sock.sock import Sock

_END = "plain, over the toes: the sole stays as long"


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
        "steps": steps.whole_sock(sock),
        "cautions": cautions.for_sock(
            any(
                p.place in ("over_heel", "ankle", "calf") and p.level == "bad" and p.stretch > 1
                for p in worn
            )
        ),
        "notes": [{"field": field, "text": text} for field, text in notes],
    }


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
        sock.closer,
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
                sock.cuff.ribbed,
            )
        )
    return found


def _counts(sock: Sock) -> dict[str, Any]:
    """Return the counts of every part, with what they are in words."""
    told = {
        "cuff": sock.cuff.words,
        "heel": _turned(sock.pockets["heel"], sock.heel_words),
        "foot": _rounding(sock),
        "toe": _turned(sock.pockets["toe"], sock.toe_words),
        "end": _END,
    }
    found: dict[str, Any] = {"needles": sock.cylinder.slots}
    for section in sock.sections:
        if section.counted:
            words = told.get(section.part)
            found[section.part] = {**section.counts(sock.cylinder), "words": words}
    found["foot"] = {
        "rounds": sock.foot_rounds,
        "exact": round(sock.exact_rounds, 2),
        "words": _rounding(sock),
    }
    found["leg"] = leg_sheet.write(sock)
    return found


def _turned(pocket: Pocket, words: str) -> str:
    manner = f", {pocket.manner}" if pocket.manner else ""
    return f"{pocket.needles} needles down to {pocket.left} and back{manner}: {words}"


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
    whole = sock.aimed * sock.fabric.rounds
    heel, toe = (sock.pockets[part].sole for part in ("heel", "toe"))
    return (
        f"{aimed}; at {rounds} that is {whole:.1f} rounds; less {heel} for the heel "
        f"and {toe} for the toe is {sock.exact_rounds:.1f} rounds"
    )


def parts(sock: Sock) -> list[dict[str, Any]]:
    """Return what is knitted in each part, and how much of it."""
    low, high = sock.rounds_range
    leg = f"{units.length_text(sock.leg_length, sock.system)} {leg_sheet.kind(sock)}"
    foot = f"most likely {low} to {high}"
    details = {"cuff": sock.cuff.words, "leg": leg, "foot": foot, "end": _END}
    for part, one in sock.pockets.items():
        details[part] = f"{one.needles} needles, down to {one.left}, back to {one.needles}"
        details[part] += f"; {one.manner}" if one.manner else ""
    return [
        {
            "part": piece.part,
            "title": TITLES[piece.part],
            "count": piece.count,
            "unit": piece.unit[:-1] if piece.count == 1 else piece.unit,
            "detail": details[piece.part],
        }
        for piece in sock.pieces
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
        "sure": place.sure,
        "chance": round(place.chance, 2),
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
        **({"end": _exact(sock.end_rounds)} if sock.end_rounds else {}),
    }


def _exact(count: int) -> dict[str, Any]:
    return {"low": count, "high": count, "words": "Exact: set by you."}


def _range(sock: Sock) -> dict[str, Any]:
    low, high = sock.rounds_range
    span = f"{low}" if low == high else f"{low} to {high}"
    words = f"Most likely {span} rounds (four times in five). {narrower.words(sock)}"
    return {"low": low, "high": high, "words": words.strip()}
