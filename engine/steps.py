"""The whole sock in order, from waste yarn to grafting, as steps to do at the machine.

A step is a dict: `part`, `kind` and `text`, where kind is "do" (something by hand), "rounds" (with
`rounds`) or "row" (one row of heel or toe, with what `short_row.Row` knows). Needles of heel and
toe are numbered 1 to h from left to right as the knitter faces them. A machine that enters the heel
the other way is read with left and right exchanged.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any

from engine import sources
from engine.cuff import Cuff, ordinal
from engine.short_row import Pocket, Row

Step = dict[str, Any]

WASTE_ROUNDS = int(sources.WASTE_ROUNDS)


def whole_sock(
    slots: int,
    cuff: Cuff,
    leg: Sequence[tuple[str, int]],
    heel: Pocket,
    foot_rounds: int,
    toe: Pocket,
    back: str = "",
) -> list[Step]:
    """Return every step of one sock in order; the sizes are those of a plan that can be knitted.

    `leg` holds each band's tension in words ("" where it stays) and its rounds, from the top down;
    the first one's is set before the cuff. `back` is the tension set before the heel.
    """
    return [
        *_start(slots, cuff),
        *_set("cuff", leg[0][0]),
        *_cuff(slots, cuff),
        *_leg(leg),
        *_set("leg", back),
        *_pocket("heel", slots, heel),
        *_rounds("foot", foot_rounds, "Foot"),
        *_pocket("toe", slots, toe),
        *_finish(slots, cuff),
    ]


def _do(part: str, text: str) -> Step:
    return {"part": part, "kind": "do", "text": text}


def _rounds(part: str, rounds: int, title: str) -> Iterator[Step]:
    if rounds:
        plural = "round" if rounds == 1 else "rounds"
        text = f"{title}: knit {rounds} {plural}."
        yield {"part": part, "kind": "rounds", "rounds": rounds, "text": text}


def _set(part: str, tension: str) -> Iterator[Step]:
    if tension:
        yield _do(part, tension)


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
    yield _do("waste", "Thread waste yarn in another colour and cast on over the needles in work.")
    yield from _rounds("waste", WASTE_ROUNDS, "Waste yarn")


def _cuff(slots: int, cuff: Cuff) -> Iterator[Step]:
    if cuff.kind == "rib":
        yield _do(
            "cuff",
            "Set the ribber and move every second stitch to its needles: half of the "
            f"{slots} stitches knit on each bed.",
        )
    yield _do(
        "cuff", "Change to the sock yarn, leave a hand's length hanging, and set the count to 0."
    )
    yield from _rounds("cuff", cuff.rounds, "Cuff")
    if cuff.kind == "hem":
        yield _do(
            "cuff",
            "Hang the hem: lift the loops of the first round of sock yarn back on, each on its own "
            "needle, all the way round. Crank nothing while your fingers are at the hooks.",
        )
    elif cuff.kind == "rib":
        yield _do(
            "cuff", "Move the ribber's stitches back to the cylinder and take the ribber off."
        )
    else:
        yield _do(
            "cuff",
            f"Put back the {slots - cuff.needles(slots)} needles that were out, each with a loop "
            "lifted from the stitch beside it.",
        )


def _pocket(part: str, slots: int, pocket: Pocket) -> Iterator[Step]:
    rest = slots - pocket.needles
    yield _do(
        part,
        f"Lift {rest} needles into hold and keep the {pocket.needles} of the {part} in work, "
        f"those at the front. Hang the {part} weight on them, run the stronger thread along if "
        "you use one, and stop with the yarn carrier left of needle 1, where a round begins.",
    )
    yield _do(
        part,
        "Crank to and fro, one row each way: first narrow, then widen. Take up the slack at each "
        "turn, and move the weight up as the pocket grows. Where a carrier can only come from the "
        "right, read left for right.",
    )
    for row in pocket.walk():
        yield _row(part, row, pocket)
    yield _do(
        part,
        f"Put the {rest} held needles back in work, take the stronger thread out, and move the "
        "weight back to the whole tube.",
    )


def _row(part: str, row: Row, pocket: Pocket) -> Step:
    return {
        "part": part,
        "kind": "row",
        "row": row.number,
        "direction": row.direction,
        "back": row.back,
        "knits": [row.first, row.last],
        "hold": row.hold,
        "in_work": row.in_work,
        "text": _row_text(row, pocket.needles),
    }


@lru_cache(maxsize=4096)
def _row_text(row: Row, needles: int) -> str:
    back = f"Bring needle {row.back} back. " if row.back else ""
    hold = f" Lift needle {row.hold} into hold." if row.hold else ""
    knit = f"Knit to the {row.direction}, needle {row.first} to {row.last}."
    return f"{back}{knit}{hold} {row.in_work} of {needles} in work."


def _finish(slots: int, cuff: Cuff) -> Iterator[Step]:
    yield _do("finish", "Cut the sock yarn, leaving four flat widths of it for grafting.")
    yield _do("finish", "Change to waste yarn.")
    yield from _rounds("finish", WASTE_ROUNDS, "Waste yarn")
    yield _do("finish", f"Cut the yarn and crank the {slots} stitches off the needles.")
    if cuff.kind != "hem":
        yield _do("finish", "Bind off the first round of the cuff loosely, so that it stretches.")
    yield _do("finish", "Graft the toe, then pull out the waste yarn. Darn in the ends.")
    yield _do("finish", "Wash the sock, dry it flat and let it rest a day before you measure it.")
