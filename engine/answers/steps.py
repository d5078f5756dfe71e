"""The whole sock in order, from waste yarn to grafting, as steps to do at the machine.

A step is a dict: `part`, its `title`, `kind` and `text`, where kind is "do" (one thing by hand; one
that sets the tension has `sets`, one that brings the sock further `makes`), "rounds" (with
`rounds`) or "row" (one row of heel or toe: `row`, `direction`, `back`, `knits`, `hold`, `in_work`).
Needles of heel and toe are numbered 1 to h from left to right as the knitter faces them; where
several come back or are lifted at once, `back` or `hold` is a list.

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


def whole_sock(sock: Sock) -> list[Step]:
    """Return every step of one sock in order."""
    return [
        _fresh(step)
        for section, _, stop in sock.placed
        for step in _steps(section, sock.cylinder, stop)
    ]


def operations(sock: Sock) -> list[dict[str, Any]]:
    """Return every operation of one sock in order: its name `op`, its `section`, its fields."""
    return [{**op.named(one), "section": section.part} for section, one in sock.operations()]


@lru_cache(maxsize=1024)
def _steps(section: Section, machine: Cylinder, stop: int | None) -> tuple[Step, ...]:
    return tuple(step(section, stage) for stage in section.stages(machine, stop))


def _fresh(step: Step) -> Step:
    """Return a step that may be changed without harm to those that are kept."""
    return {**step, "knits": step["knits"].copy()} if "knits" in step else step.copy()


def step(section: Section, stage: Stage) -> Step:
    """Return one step of a section."""
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
                "text": text,
            }
        case Crank(text, _, rounds):
            title = TITLES[part]
            return {"part": part, "title": title, "kind": "rounds", "rounds": rounds, "text": text}
        case Do(text, _, sets, makes):
            found = {"part": part, "title": TITLES[part], "kind": "do", "text": text}
            told = {"sets": sets, "makes": makes}
            return {**found, **{name: value for name, value in told.items() if value}}
        case _:
            assert_never(stage)


def _needles(needles: tuple[int, ...]) -> int | list[int] | None:
    """Return no needle, the one, or several in a list."""
    if len(needles) > 1:
        return list(needles)
    return needles[0] if needles else None
