"""A sock as it is knitted: its steps as data, so that a phone can count them without the engine.

What the plan's steps do not say, because a list need not: where on the cylinder the needle stands
that is brought back or lifted, and what else is due before a row is cranked.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from engine.answers import sheet, steps
from engine.answers.steps import Step
from engine.machine import half_mark
from engine.sections.pocket import WEIGHT_ROWS, Pocket
from engine.sections.section import Row, Turn, said
from engine.sock.sock import Sock

_WEIGHT = "Move the weight up."
_HALFWAY = "From here a needle comes back before each row."


def write(sock: Sock) -> dict[str, Any]:
    """Return all that the counter at the machine knows of one sock.

    `pockets` has each one's `needles`, `left`, `rows` and the slot of its needle 1; `notes` what is
    asked of sock one's measures; a row has, besides what the plan's has, the `half` it belongs to,
    the words of where its needles stand, and what to remember before it (`remind`, often empty); a
    step of a leg with tensions of its own, and each after it, how the `tension` is set there.
    """
    slots = sock.cylinder.slots
    return {
        "slots": slots,
        "every": sock.cuff.out_every,
        "half_marks": half_mark.WORDS,
        "pockets": {part: _pocket(slots, pocket) for part, pocket in sock.pockets.items()},
        "parts": sheet.parts(sock),
        "words": f"{slots} slots, foot {said(sock.foot_rounds)}",
        "foot_rounds": sock.foot_rounds,
        "notes": [
            {"field": field, "text": text}
            for field, text in sock.notes
            if field is not None and field.startswith("first_sock.")
        ],
        "steps": list(_steps(sock)),
    }


def _pocket(slots: int, pocket: Pocket) -> dict[str, int]:
    return {
        "needles": pocket.needles,
        "first_slot": half_mark.first_slot(slots, pocket.needles),
        "left": pocket.left,
        "rows": pocket.rows,
    }


def _steps(sock: Sock) -> Iterator[Step]:
    """Yield every step; from the first that sets the tension on, each says how it is set."""
    tension = ""
    for section, stage in sock.stages():
        step = steps.step(section, stage)
        if "sets" in step:
            tension = step["text"]
        if isinstance(section, Pocket) and isinstance(stage, Turn):
            step |= _row(stage.row, sock.cylinder.slots, section)
        yield {**step, "tension": tension} if tension else step


def _row(row: Row, slots: int, pocket: Pocket) -> Step:
    def where(needles: tuple[int, ...]) -> str | None:
        found = [half_mark.where(slots, pocket.needles, needle) for needle in sorted(needles)]
        counts, ends = [one.partition(" needle ")[0] for one in found], _ends(found)
        if len(found) > 1 and len(ends) == 1:
            return f"{' and '.join(counts)} needle {ends.pop()}"
        return " and ".join(found) or None

    return {
        "half": "widen" if row.back else "narrow",
        "back_where": where(row.back),
        "hold_where": where(row.hold),
        "remind": _due(row.number, pocket),
    }


def _ends(found: list[str]) -> set[str]:
    """Return from where the needles are counted, each mark once."""
    return {one.partition(" needle ")[2] for one in found}


def _due(row: int, pocket: Pocket) -> list[str]:
    """Return what is to be remembered before a row is cranked."""
    due = [_WEIGHT] if row > 1 and (row - 1) % WEIGHT_ROWS == 0 else []
    return [*due, _HALFWAY] if row == pocket.narrowing + 1 else due
