"""How a knitter's socks came out: of each finished pair sock one, planned against measured.

A sock with R foot rounds was expected at (R + others) / c, c the rounds per mm foretold then; its
range held four of five such socks, tape included. What the lengths say of her is what
`finished_pairs` makes of them for her next plans: her scatter from sock to sock, and the habit
between swatch and sock.

Limits: sock one alone is measured.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import exp, sqrt
from typing import Any, Literal, NamedTuple, get_args

from engine.answers import finished_pairs
from engine.answers.finished_pairs import Pair, Said
from engine.fabric.certainty import Hers
from engine.fabric.gauge import UNKNOWN
from engine.fabric.knitter import FEWEST, NEWEST
from engine.read import units
from engine.read.errors import Refused
from engine.read.quoted import plain
from engine.say import messages as say
from engine.say.message import Message
from engine.sock import foot_rounds
from engine.sources import TO_80_PERCENT

MOST_PAIRS = 5000
_NAME_MOST = 100
_Head = Literal["name", "day", "rounds", "planned", "low", "high", "measured", "held"]
_HEADS: tuple[_Head, ...] = get_args(_Head)


class _Came(NamedTuple):
    """One sock: lengths in mm, and what it says of her."""

    name: str
    day: str
    rounds: int
    planned: float
    low: float
    high: float
    measured: float
    said: Said | None
    system: units.System

    @property
    def held(self) -> bool:
        return self.low <= self.measured <= self.high

    @property
    def off(self) -> float:
        return self.measured / self.planned - 1


def write(pairs: object) -> dict[str, Any]:
    """Return `rows`, how many were `held`, what cannot be read (`left_out`), `words` and `cells`.

    `pairs` are objects with a `request`, what was `measured` of sock one, a `name` and a `day`, as
    they stand in a list; a pair that tells no washed length is passed over.
    """
    given = pairs if isinstance(pairs, list) else []
    came, left_out = list[_Came](), 0
    for pair in given[-MOST_PAIRS:]:
        try:
            found = _read(pair) if isinstance(pair, Mapping) else None
        except Refused:
            found, left_out = None, left_out + 1
        came += [found] if found else []
    return {
        "rows": [_row(one) for one in came],
        "held": sum(one.held for one in came),
        "left_out": left_out,
        "words": list(_words(came)),
        "cells": _cells(came),
    }


def _read(pair: Mapping[str, Any]) -> _Came | None:
    found = finished_pairs.read(pair)
    if found is None:
        return None
    name, day = (plain(str(pair.get(one) or ""))[:_NAME_MOST] for one in ("name", "day"))
    return _came(found, name, day)


def _came(pair: Pair, name: str, day: str) -> _Came:
    sock, first = pair
    cloth, others = sock.fabric, sock.others
    planned = foot_rounds.length(cloth.rounds, first.foot_rounds, others)
    reach = TO_80_PERCENT * (cloth.along or UNKNOWN).sd(first.tape(others) ** 2)
    knitted = planned - others.by_hand
    return _Came(
        name,
        day,
        first.foot_rounds,
        planned,
        knitted * exp(-reach) + others.by_hand,
        knitted * exp(reach) + others.by_hand,
        first.length,
        finished_pairs.said(pair),
        sock.system,
    )


def _row(one: _Came) -> dict[str, Any]:
    planned, low, high, measured = (
        units.length(mm, one.system) for mm in (one.planned, one.low, one.high, one.measured)
    )
    ends = (one.low / one.planned - 1, one.high / one.planned - 1)
    words = say.came_out_within if one.held else say.came_out_beyond
    return {
        "name": one.name,
        "day": one.day,
        "planned": planned,
        "low": low,
        "high": high,
        "measured": measured,
        "off": round(one.off, 4),
        "promised": [round(end, 4) for end in ends],
        "held": one.held,
        "words": words(
            planned=planned["text"],
            measured=measured["text"],
            span=units.length_range(one.low, one.high, one.system),
        ),
    }


def _words(came: list[_Came]) -> Iterator[Message]:
    if not came:
        return
    yield say.came_out_held(held=sum(one.held for one in came), socks=len(came))
    listed = [one.said for one in came if one.said][-NEWEST:]
    if len(listed) < FEWEST:
        yield say.came_out_few(fewest=str(FEWEST))
        return
    hers = finished_pairs.learn(listed).along
    scatter = sqrt(hers.scatter.square)
    mean = sum(one.planned for one in came) / len(came)
    about = units.small_length(mean * scatter, came[-1].system)["text"]
    yield say.came_out_scatter(percent=f"{scatter * 100:.1f}", length=about)
    yield _habit(hers)
    yield say.came_out_next()


def _habit(hers: Hers) -> Message:
    """Return her habit in words; more rounds to the mm than the swatch make a shorter sock."""
    if abs(hers.habit) < TO_80_PERCENT * sqrt(hers.unsure):
        return say.came_out_no_habit()
    percent = f"{abs(hers.habit) * 100:.1f}"
    return say.came_out_habit(habit="shorter" if hers.habit > 0 else "longer", percent=percent)


def _cells(came: list[_Came]) -> list[list[Message | str | int | None]]:
    cells: list[list[Message | str | int | None]] = [[say.came_out_head(of=one) for one in _HEADS]]
    for one in came:
        lengths = (one.planned, one.low, one.high, one.measured)
        mm = [units.number(length) for length in lengths]
        cells.append([one.name, one.day, one.rounds, *mm, int(one.held)])
    return cells
