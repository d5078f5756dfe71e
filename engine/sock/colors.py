"""Colors by plan: which part is knitted in which, and stripes as a list of rounds.

Cuff, heel and toe are one color each. Leg and foot are one too, or a list of rounds, "4 A, 2 B",
which begins anew in each of them and is repeated to its end; where its last color has no rounds,
that color goes on instead ("10 A, 4 B, A"). What comes before and after the toe is knitted in its
color. Common practice, no published source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import cycle
from typing import NamedTuple

from engine.read.errors import Unreadable
from engine.read.fields import Fields
from engine.read.quoted import quoted
from engine.say import messages as say
from engine.sections.color import LETTERS, Color
from engine.sections.cuff import Cuff
from engine.sections.pocket import Pocket
from engine.sections.ribbed import RibbedFoot
from engine.sections.section import Section
from engine.sections.tube import Tube

MAIN = LETTERS[0]
_MOST, _ROUNDS_MOST = 12, 400
_ITEM = re.compile(rf"(?:(\d{{1,3}})\s*)?([{LETTERS}])|([{LETTERS}])\s*(\d{{1,3}})", re.IGNORECASE)
WHOLE, IN_ROUNDS = ("cuff", "heel", "toe"), ("leg", "foot")


class Run(NamedTuple):
    """So many rounds in a color; None to the part's end."""

    letter: str
    rounds: int | None


@dataclass(frozen=True)
class Colors:
    """The colors of cuff, heel and toe, and the runs of leg and foot."""

    cuff: str = MAIN
    leg: tuple[Run, ...] = (Run(MAIN, None),)
    heel: str = MAIN
    foot: tuple[Run, ...] = (Run(MAIN, None),)
    toe: str = MAIN

    def asked(self) -> dict[str, str]:
        """Return the fields of a request that ask for them."""
        return {part: self.text(part) for part in (*WHOLE, *IN_ROUNDS)}

    def text(self, part: str) -> str:
        """Return the colors of a part as one writes them; "" where it has none of its own."""
        part = "toe" if part in ("before_toe", "end") else part
        told = getattr(self, part)
        return told if isinstance(told, str) else ", ".join(map(_written, told))

    def repeats(self, part: str) -> bool:
        """Tell whether a part's list of rounds is begun again at its end."""
        told = getattr(self, part, "")
        return not isinstance(told, str) and told[-1].rounds is not None


def _written(run: Run) -> str:
    return run.letter if run.rounds is None else f"{run.rounds} {run.letter}"


def read(fields: Fields) -> Colors | None:
    """Return the colors of a request, None where it names none; what is wrong is refused."""
    fields.only((*WHOLE, *IN_ROUNDS))
    whole = {part: fields.read(part, _one) for part in WHOLE}
    runs = {part: fields.read(part, _runs) for part in IN_ROUNDS}
    told = {name: value for name, value in {**whole, **runs}.items() if value is not None}
    return Colors(**told) if told else None  # type: ignore[arg-type]  # each reader has its part


def apart(parts: frozenset[str]) -> Colors | None:
    """Return the colors of a sock some of whose parts are not in the main one; heel and toe alike.

    None where none is.
    """
    others = dict.fromkeys(parts & {"heel", "toe"}, LETTERS[1])
    if "cuff" in parts:
        others["cuff"] = LETTERS[2 if others else 1]
    return Colors(**others) if others else None  # type: ignore[arg-type]  # these are in one color


def _one(text: str) -> str:
    found = text.strip().upper()
    if len(found) != 1 or found not in LETTERS:
        raise Unreadable(say.no_such_color(text=quoted(text)), say.one_letter(last=LETTERS[-1]))
    return found


def _runs(text: str) -> tuple[Run, ...]:
    items = [item.strip() for item in re.split(r"[,;+]|\band\b", text) if item.strip()]
    found = [_run(item) for item in items]
    if not found or len(found) > _MOST or None in found:
        raise Unreadable(say.no_such_color(text=quoted(text)), say.rounds_and_letters())
    runs = tuple(run for run in found if run is not None)
    if any(run.rounds is None for run in runs[:-1]):
        raise Unreadable(say.only_the_last_goes_on(), say.rounds_and_letters())
    return runs


def _run(item: str) -> Run | None:
    match = _ITEM.fullmatch(item)
    if match is None:
        return None
    rounds, letter = match[1] or match[4], (match[2] or match[3]).upper()
    if rounds is not None and not 1 <= int(rounds) <= _ROUNDS_MOST:
        return None
    return Run(letter, None if rounds is None else int(rounds))


def put_on(sections: Sequence[Section], colors: Colors) -> tuple[Section, ...]:
    """Return a sock's sections in their colors, with a change before each that has another."""
    return tuple(_colored(_in_one_color(sections), colors))


def with_foot(
    sections: Sequence[Section], rounds: int, colors: Colors | None
) -> tuple[Section, ...]:
    """Return the same sections with another number of foot rounds."""
    found = tuple(
        replace(one, rounds=rounds)
        if isinstance(one, Tube | RibbedFoot) and one.part == "foot"
        else one
        for one in _in_one_color(sections)
    )
    return found if colors is None else put_on(found, colors)


def _in_one_color(sections: Sequence[Section]) -> Iterator[Section]:
    """Yield sections as they are without colors: each tube whole."""
    tube: Tube | None = None
    for one in (one for one in sections if not isinstance(one, Color)):
        if isinstance(one, Tube) and tube is not None and one.part == tube.part:
            tube = replace(tube, rounds=tube.rounds + one.rounds)
            continue
        if tube is not None:
            yield tube
        tube = one if isinstance(one, Tube) else None
        if tube is None:
            yield one
    if tube is not None:
        yield tube


def _colored(sections: Iterator[Section], colors: Colors) -> Iterator[Section]:
    listed = list(sections)
    now, runs = "", dict[str, Iterator[str]]()
    whole = {part: _rounds(listed, part) for part in IN_ROUNDS}
    done = dict.fromkeys(IN_ROUNDS, 0)
    for one in listed:
        if isinstance(one, Cuff):
            now = colors.cuff
            yield replace(one, color=now)
        elif isinstance(one, Tube) and one.part in ("leg", "foot"):
            part = one.part
            each = runs.setdefault(part, _each_round(getattr(colors, part)))
            for letter, rounds, first in _pieces(each, one.rounds):
                since = done[part] / whole[part] if letter != now else 0.0
                if letter != now:
                    yield Color(part, letter)
                now = letter
                yield replace(one, rounds=rounds, goes_on=one.goes_on or not first, since=since)
                done[part] += rounds
            if not one.rounds:
                yield one
        else:
            wanted = colors.text(one.part) if _knitted(one) else now
            if wanted != now:
                yield Color(one.part, wanted)
            now = wanted
            yield one


def _knitted(one: Section) -> bool:
    """Tell whether anything of a section is knitted in the sock's yarn at the machine."""
    return one.counted and (one.rounds > 0 or isinstance(one, Pocket))


def _rounds(sections: Sequence[Section], part: str) -> int:
    return sum(one.rounds for one in sections if one.part == part)


def _each_round(runs: tuple[Run, ...]) -> Iterator[str]:
    """Yield the color of each round of a part."""
    for run in cycle(runs):
        if run.rounds is None:
            yield from cycle(run.letter)
        yield from run.letter * (run.rounds or 0)


def _pieces(each: Iterator[str], rounds: int) -> Iterator[tuple[str, int, bool]]:
    """Yield the color and the rounds of each run of so many rounds, and whether it is the first."""
    letters = [next(each) for _ in range(rounds)]
    begun = 0
    for at in range(1, rounds + 1):
        if at == rounds or letters[at] != letters[begun]:
            yield letters[begun], at - begun, begun == 0
            begun = at
