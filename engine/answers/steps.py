"""The whole sock in order, from waste yarn to grafting, as steps to do at the machine.

A step is a dict: `part`, its `title`, `kind` and `text`, where kind is "do" (one thing by hand; one
that sets tension or color has `sets`, one that brings the sock further `makes`), "rounds" (with
`rounds`) or "row" (one row of heel or toe: `row`, `direction`, `back`, `knits`, `hold`, `in_work`,
and `joins`, the needle on which a loop of the heel flap's edge is hung before it).
Needles of heel and toe are numbered 1 to h from left to right as the knitter faces them; where
several come back or are lifted at once, `back` or `hold` is a list. A page writes a row by its
numbers and does without its `title` and `text`: that is half of what a keystroke would send.

`operations` are what the steps are made of, for a machine or another program to run.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any, assert_never

from engine.machine import operations as op
from engine.machine.cylinder import Cylinder
from engine.sections.section import TITLES, Crank, Do, Section, Stage, Turn
from engine.sock.sock import Sock

Step = dict[str, Any]


def whole_sock(sock: Sock, rows_in_words: bool = True) -> list[Step]:
    """Return every step of one sock in order, rows in words or without."""
    return [  # fresh ones, that may be changed without harm to those that are kept
        {**step, "knits": [*step["knits"]]} if "knits" in step else {**step}
        for section, _, stop in sock.placed
        for step in _steps(section, sock.cylinder, stop, rows_in_words)
    ]


def operations(sock: Sock) -> list[dict[str, Any]]:
    """Return every operation of one sock in order: its name `op`, its `section`, its fields."""
    return [{**op.named(one), "section": section.part} for section, one in sock.operations()]


@lru_cache(maxsize=1024)
def _steps(
    section: Section, machine: Cylinder, stop: int | None, rows_in_words: bool
) -> tuple[Step, ...]:
    found = tuple(
        one for stage in section.stages(machine, stop) for one in _apart(step(section, stage))
    )
    return found if rows_in_words else tuple(map(_by_numbers, found))


def _apart(step: Step) -> tuple[Step, ...]:
    """Return a step for each thing of a list to tick."""
    ticks = step.pop("ticks", ())
    return tuple({**step, "text": text} for text in ticks) or (step,)


def _by_numbers(step: Step) -> Step:
    """Return a step without what a page says itself of a row."""
    words = ("title", "text") if step["kind"] == "row" else ()
    return {name: value for name, value in step.items() if name not in words}


def step(section: Section, stage: Stage) -> Step:
    """Return one step of a section; what is done at one stop is one, its things its `ticks`."""
    part = section.part
    match stage:
        case Turn(text, _, row):
            return {
                "part": part,
                "title": TITLES[part],
                "kind": "row",
                "row": row.number,
                "direction": row.direction,
                "back": _needles(row.back),
                "knits": [row.first, row.last],
                "hold": _needles(row.hold),
                "in_work": row.in_work,
                **({"joins": _needles(row.joins)} if row.joins else {}),
                "text": text,
            }
        case Crank(text, _, rounds):
            title = TITLES[part]
            return {"part": part, "title": title, "kind": "rounds", "rounds": rounds, "text": text}
        case Do(text, _, sets, makes, ticks):
            found = {"part": part, "title": TITLES[part], "kind": "do", "text": text}
            told = {"sets": sets, "makes": makes, "ticks": [*ticks]}
            return {**found, **{name: value for name, value in told.items() if value}}
        case _:
            assert_never(stage)


def _needles(needles: tuple[int, ...]) -> int | list[int] | None:
    """Return no needle, the one, or several in a list."""
    if len(needles) > 1:
        return list(needles)
    return needles[0] if needles else None
