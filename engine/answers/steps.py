"""The whole sock in order, from waste yarn to grafting, as steps to do at the machine.

A step is a dict: `part`, its `title`, `kind` and `text`, where kind is "do" (one thing by hand; one
that sets the tension has `sets`, one that brings the sock further `makes`),
"rounds" (with `rounds`) or "row" (one row of heel or toe, with what `short_row.Row` knows). Needles
of heel and toe are numbered 1 to h from left to right as the knitter faces them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any

from engine import sources
from engine.machine import half_mark
from engine.machine.cylinder import Cylinder, Side
from engine.read.units import ordinal
from engine.sections.cuff import Cuff
from engine.sections.short_row import Pocket, Row

Step = dict[str, Any]

TITLES = {
    "waste": "Waste yarn",
    "cuff": "Cuff",
    "leg": "Leg",
    "heel": "Heel",
    "foot": "Foot",
    "toe": "Toe",
    "finish": "Off the machine",
}
WASTE_ROUNDS = int(sources.WASTE_ROUNDS)
WEIGHT_ROWS = int(sources.WEIGHT_ROWS)


def whole_sock(
    cylinder: Cylinder,
    cuff: Cuff,
    leg: Sequence[tuple[str, int]],
    heel: Pocket,
    foot_rounds: int,
    toe: Pocket,
    back: str,
    tail: str,
) -> list[Step]:
    """Return every step of one sock in order; the sizes are those of a plan that can be knitted.

    `leg` holds each band's tension in words ("" where it stays) and its rounds, from the top down;
    the first one's is set before the cuff. `back` is the tension set before the heel, "" where it
    stays, and `tail` the yarn left for grafting.
    """
    slots = cylinder.slots
    return [
        *_start(slots, cuff),
        *_set("cuff", leg[0][0]),
        *_cuff(slots, cuff),
        *_leg(leg),
        *_set("leg", back),
        *_pocket("heel", cylinder, heel),
        *_rounds("foot", foot_rounds, "Foot"),
        *_pocket("toe", cylinder, toe),
        *_finish(slots, cuff, tail),
    ]


def _do(part: str, text: str) -> Step:
    return {"part": part, "title": TITLES[part], "kind": "do", "text": text}


def _rounds(part: str, rounds: int, title: str) -> Iterator[Step]:
    if rounds:
        plural = "round" if rounds == 1 else "rounds"
        text = f"{title}: knit {rounds} {plural}."
        of_part = {"part": part, "title": TITLES[part]}
        yield {**of_part, "kind": "rounds", "rounds": rounds, "text": text}


def _set(part: str, tension: str) -> Iterator[Step]:
    if tension:
        yield {**_do(part, tension), "sets": "tension"}


def _leg(bands: Sequence[tuple[str, int]]) -> Iterator[Step]:
    for at, (tension, rounds) in enumerate(bands):
        if at:
            yield from _set("leg", tension)
        yield from _rounds("leg", rounds, "Leg" if at == 0 else "Leg, on")


def _start(slots: int, cuff: Cuff) -> Iterator[Step]:
    if cuff.every:
        yield _do(
            "waste",
            f"Take out every {ordinal(cuff.every)} needle: {cuff.needles(slots)} of {slots} stay "
            "in work.",
        )
    yield _do("waste", "Thread waste yarn in a colour other than the sock’s.")
    yield _do("waste", "Cast on over the needles in work.")
    yield _do("waste", "Hang the weight on the cast-on edge, evenly all round.")
    yield from _rounds("waste", WASTE_ROUNDS, "Waste yarn")


def _cuff(slots: int, cuff: Cuff) -> Iterator[Step]:
    if cuff.kind == "rib":
        yield _do("cuff", "Set the ribber on the cylinder.")
        yield _do("cuff", f"Move every second stitch to the ribber: {slots // 2} on each bed.")
    yield _do("cuff", "Change to the sock yarn, and leave a hand’s length of it hanging.")
    yield from _rounds("cuff", cuff.rounds, "Cuff")
    if cuff.kind == "hem":
        yield _do(
            "cuff",
            "Hang the hem: lift each loop of the first round of sock yarn onto its own needle, "
            "and leave the crank alone.",
        )
    elif cuff.kind == "rib":
        yield _do("cuff", "Move the ribber’s stitches back to the cylinder.")
        yield _do("cuff", "Take the ribber off.")
    else:
        yield _do(
            "cuff",
            f"Put back the {slots - cuff.needles(slots)} needles that were out, each with a loop "
            "lifted from the stitch beside it.",
        )


def _pocket(part: str, cylinder: Cylinder, pocket: Pocket) -> Iterator[Step]:
    rest = cylinder.slots - pocket.needles
    yield from (_do(part, text) for text in _before(part, cylinder, pocket.needles))
    rows = pocket.walk(cylinder.carrier)
    for row, text in zip(rows, _row_texts(pocket, cylinder.carrier), strict=True):
        yield _row(part, row, text)
    yield _do(part, f"Put the {rest} held needles back in work.")
    yield _do(part, "Take the heel tension off.")
    yield _do(part, "Take the stronger thread out, if you ran one along.")
    yield _do(part, "Move the weight back to the whole tube.")


@lru_cache(maxsize=256)
def _before(part: str, cylinder: Cylinder, needles: int) -> tuple[str, ...]:
    """Return what is done before the first row, when the last round has come to its end."""
    slots, side = cylinder.slots, cylinder.carrier
    first, last = (half_mark.where(slots, needles, at) for at in (1, needles))
    end, stands = (1, first) if side == "left" else (needles, last)
    stay = f"the {needles} of the {part} stay in work"
    lift = f"Lift the {slots - needles} needles behind the half marks into hold: {stay}."
    if needles != slots // 2:
        stay += f", up to needle {needles}, the {last}"
        lift = f"Lift {slots - needles} needles into hold: {stay}."
    return (
        f"Stop with the yarn carrier {side} of needle {end}, the {stands}.",
        lift,
        f"Hang the heel weight on the {part}. Move it up every {WEIGHT_ROWS} rows.",
        "Put the heel tension on. Without one, take up the slack by hand at each turn.",
        "Run the stronger thread along, if you use one.",
    )


def _row(part: str, row: Row, text: str) -> Step:
    return {
        "part": part,
        "title": TITLES[part],
        "kind": "row",
        "row": row.number,
        "direction": row.direction,
        "back": row.back,
        "knits": [row.first, row.last],
        "hold": row.hold,
        "in_work": row.in_work,
        "text": text,
    }


@lru_cache(maxsize=256)
def _row_texts(pocket: Pocket, carrier: Side) -> tuple[str, ...]:
    return tuple(_row_text(row, pocket.needles) for row in pocket.walk(carrier))


def _row_text(row: Row, needles: int) -> str:
    back = f"Bring needle {row.back} back. " if row.back else ""
    hold = f" Lift needle {row.hold} into hold." if row.hold else ""
    knit = f"Knit to the {row.direction}, needle {row.first} to {row.last}."
    return f"{back}{knit}{hold} {row.in_work} of {needles} in work."


def _finish(slots: int, cuff: Cuff, tail: str) -> Iterator[Step]:
    yield _do("finish", f"Cut the sock yarn, leaving {tail} of it for grafting.")
    yield _do("finish", "Change to waste yarn.")
    yield from _rounds("finish", WASTE_ROUNDS, "Waste yarn")
    yield _do("finish", "Cut the waste yarn.")
    yield _do(
        "finish",
        f"Crank the {slots} stitches off the needles. Mind the weight: it falls with the sock.",
    )
    if cuff.kind != "hem":
        yield _do("finish", "Bind off the first round of the cuff loosely, so that it stretches.")
    yield {**_do("finish", "Graft the toe."), "makes": "grafted"}
    yield _do("finish", "Pull out the waste yarn.")
    yield _do("finish", "Darn in the ends.")
    wash = "Wash the sock, dry it flat and let it rest a day before you measure it."
    yield {**_do("finish", wash), "makes": "washed"}
