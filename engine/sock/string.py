"""Socks of a string in their places: what each begins on, and what follows its end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal, cast

from engine.machine.cylinder import Cylinder
from engine.sections.cuff import Cuff
from engine.sections.section import Section
from engine.sections.string import Between, OnWaste
from engine.sections.waste import Finish, Start

Place = Literal["pair", "first", "between", "last"]
# A pair's place: whether another pair is on the machine before it, and whether one follows.
PLACES: dict[Place, tuple[bool, bool]] = {
    "pair": (False, False),
    "first": (False, True),
    "between": (True, True),
    "last": (True, False),
}
APART = "apart"  # each sock is cast on by itself


def sock_one(sections: Sequence[Section], machine: Cylinder, place: Place) -> tuple[Section, ...]:
    """Return the sections of a pair's first sock in its place; sock two follows it."""
    after, _ = PLACES[place]
    return _placed(sections, machine, after, True)


def sock_two(sections: Sequence[Section], machine: Cylinder, place: Place) -> tuple[Section, ...]:
    """Return the sections of a pair's second sock in its place; it follows sock one."""
    _, followed = PLACES[place]
    return _placed(sections, machine, True, followed)


def _placed(
    sections: Sequence[Section], machine: Cylinder, follows: bool, followed: bool
) -> tuple[Section, ...]:
    _, *worn, last = sections
    cuff = next(one for one in worn if isinstance(one, Cuff))
    start = OnWaste(cuff.first_on_waste(machine)) if follows else Start(cuff.first(machine))
    end = last.end if isinstance(last, Between) else cast("Finish", last)
    return (start, *worn, Between(end) if followed else replace(end, each=True))
