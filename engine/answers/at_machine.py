"""A sock as it is knitted: its steps as data, so that a phone can count them without the engine.

What the plan's steps do not say, because a list need not: where on the cylinder the needle stands
that is brought back or lifted, and what else is due before a row is cranked.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from engine.answers import off_machine, pair_sheet, sheet, steps
from engine.answers.steps import Step
from engine.machine import half_mark
from engine.machine.cylinder import Cylinder
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.color import Color
from engine.sections.pocket import WEIGHT_ROWS, Pocket
from engine.sections.section import Row, Section, Turn
from engine.sock.sock import Sock


def write(sock: Sock) -> dict[str, Any]:
    """Return all that the counter at the machine knows of one sock.

    `pockets` has each one's `needles`, `left`, `rows` and the slot of its needle 1; `notes` what is
    asked of sock one's measures; a row has, besides what the plan's has, the `half` it belongs to,
    the words of where its needles stand, and what to remember before it (`remind`, often empty); a
    step of a leg with tensions of its own, and each after it, how the `tension` is set there.
    In a string `second` are the steps of sock two, which begins and ends otherwise than sock one.
    """
    slots = sock.cylinder.slots
    return {
        "slots": slots,
        "every": sock.cuff.out_every,
        "half_marks": half_mark.WORDS,
        "pockets": {part: _pocket(slots, pocket) for part, pocket in sock.pockets.items()},
        "parts": sheet.parts(sock),
        "words": say.sock_on_slots(slots=slots, rounds=sock.foot_rounds),
        "origin": sock.origin.words if sock.origin else "",
        "foot_rounds": sock.foot_rounds,
        "pair": pair_sheet.write(sock),
        "off_machine": off_machine.write(sock),
        "notes": [
            {"field": field, "text": text}
            for field, text in sock.notes
            if field is not None and field.startswith("first_sock.")
        ],
        "steps": list(_steps(sock)),
        **({} if sock.sock_two is sock else {"second": list(_steps(sock.sock_two))}),
    }


def _pocket(slots: int, pocket: Pocket) -> dict[str, int]:
    return {
        "needles": pocket.needles,
        "first_slot": half_mark.first_slot(slots, pocket.needles),
        "left": pocket.left,
        "rows": pocket.rows,
    }


def _steps(sock: Sock) -> Iterator[Step]:
    """Yield every step; from the first that sets tension or color on, each says how it is set."""
    told = dict[str, Message]()
    for section, stage in sock.stages():
        step = steps.step(section, stage)
        if "sets" in step:
            told[step["sets"]] = _set(section, step["text"])
        if isinstance(section, Pocket) and isinstance(stage, Turn):
            step |= _row(stage.row, sock.cylinder, section)
        yield {**step, "tension": _in_turn(told)} if told else step


def _set(section: Section, text: Message) -> Message:
    """Return what a step has set, shortly."""
    color = section.letter if isinstance(section, Color) else getattr(section, "color", "")
    return say.color_is(color=color) if color else text


def _in_turn(told: dict[str, Message]) -> Message:
    return next(iter(told.values())) if len(told) == 1 else say.in_turn(sentences=(*told.values(),))


def _row(row: Row, machine: Cylinder, pocket: Pocket) -> Step:
    def where(needles: tuple[int, ...]) -> Message | None:
        slots = machine.slots
        return half_mark.words(slots, pocket.needles, sorted(needles)) if needles else None

    return {
        "half": "widen" if row.back or row.joins else "narrow",
        "back_where": where(row.back),
        "hold_where": where(row.hold),
        **({"joins_where": where(row.joins)} if row.joins else {}),
        "remind": _due(row.number, pocket, machine),
    }


def _due(row: int, pocket: Pocket, machine: Cylinder) -> list[Message]:
    """Return what is to be remembered before a row is cranked."""
    moved = say.move_the_weight(weights=machine.claws)
    due = [moved] if row > 1 and (row - 1) % WEIGHT_ROWS == 0 else []
    if row == pocket.narrowing + 1:
        due.append(say.from_here_back())
    if pocket.flap and row == pocket.rows - pocket.flap + 1:
        due.append(say.from_here_joined())
    return [*due, say.last_row()] if row == pocket.rows else due
