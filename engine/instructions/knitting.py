"""What is done at the machine, part by part, for all sizes at once.

The sentences are those of the sections themselves, which the counter shows too. Sizes that are
knitted alike but for their counts share a list; from where a part is knitted otherwise in some,
each way has its own, headed by its sizes. The rows of a heel or toe stand once for each that is
another.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping
from itertools import groupby
from typing import NamedTuple

from engine.instructions import blocks, over_sizes
from engine.instructions.blocks import Block
from engine.instructions.pattern import Pattern
from engine.say import messages as say
from engine.say.message import Words
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES, Part, Section, Stage, Turn, said
from engine.sock.sock import Sock

_LEVEL = 3


class Run(NamedTuple):
    """The sentences of one list; `pocket` is the heel or toe whose rows they are, None else."""

    sentences: tuple[Words, ...]
    pocket: Pocket | None

    def way(self, at: int) -> Hashable:
        """Return what is shared by runs that go alike there; rows, where all of them are equal."""
        return over_sizes.shape(self.sentences[at]) if self.pocket is None else self


def write(pattern: Pattern) -> Iterator[Block]:
    """Yield every part of the sock, from waste yarn to grafting."""
    told = [None if sock is None else _parts(sock) for sock in pattern.socks]
    parts = dict.fromkeys(part for found in told if found for part in found)
    pocket = next((part for part in ("heel", "toe") if part in parts), None)
    for part in sorted(parts, key=list(TITLES).index):
        yield blocks.heading(_LEVEL, part.replace("_", "-"), TITLES[part])
        if part == pocket:
            yield blocks.text(say.half_marks())
        yield from _part(part, pattern, [found.get(part) if found else None for found in told])


def _parts(sock: Sock) -> dict[Part, list[Run]]:
    """Return the runs of each part of a sock; the rows of a pocket are a run of their own."""
    found: dict[Part, list[Run]] = {}
    for (part, rows), group in groupby(sock.stages(), key=_where):
        of, sentences = zip(
            *((section, text) for section, stage in group for text in said(stage)), strict=True
        )
        pocket = of[0] if rows and isinstance(of[0], Pocket) else None
        found.setdefault(part, []).append(Run(sentences, pocket))
    return found


def _where(one: tuple[Section, Stage]) -> tuple[Part, bool]:
    section, stage = one
    return section.part, isinstance(stage, Turn)


def _part(part: Part, pattern: Pattern, told: list[list[Run] | None]) -> Iterator[Block]:
    """Yield a part: each run of it in order, once for all sizes that share it."""
    for at in range(max(len(runs) for runs in told if runs)):
        found = [runs[at] if runs and at < len(runs) else None for runs in told]
        yield from _run(f"{part.replace('_', '-')}-{at + 1}", pattern, found)


def _run(name: str, pattern: Pattern, found: list[Run | None]) -> Iterator[Block]:
    """Yield one run: a list as far as all sizes go alike, then one for each way on."""
    runs = {at: run for at, run in enumerate(found) if run is not None}
    for number, (sizes, first, last) in enumerate(_alike(runs, 0), start=1):
        pocket = runs[sizes[0]].pocket
        if pocket is not None:
            yield blocks.heading(_LEVEL + 1, f"{name}-{number}", _rows_title(pocket))
        if len(sizes) < len(pattern.made):
            labels = tuple(pattern.sizes[at].label for at in sizes)
            yield blocks.text(say.set_for_sizes(count=len(labels), sizes=labels))
        yield blocks.listing(_merged(found, sizes, first, last), ordered=True)


def _alike(runs: Mapping[int, Run], first: int) -> Iterator[tuple[list[int], int, int]]:
    """Yield sizes and from which to before which sentence they go alike; then how each goes on."""
    ways: dict[Hashable, dict[int, Run]] = {}
    for at, run in runs.items():
        if first < len(run.sentences):
            ways.setdefault(run.way(first), {})[at] = run
    for some in ways.values():
        last = first + 1
        ends = min(len(run.sentences) for run in some.values())
        while last < ends and len({run.way(last) for run in some.values()}) == 1:
            last += 1
        yield list(some), first, last
        yield from _alike(some, last)


def _merged(found: list[Run | None], sizes: list[int], first: int, last: int) -> Iterator[Words]:
    """Yield each of some sentences for all of `sizes` at once."""
    for at in range(first, last):
        said = (
            None if run is None or number not in sizes else run.sentences[at]
            for number, run in enumerate(found)
        )
        yield over_sizes.one(list(said))


def _rows_title(pocket: Pocket) -> Words:
    return say.set_rows(part=pocket.part, needles=pocket.needles, left=pocket.left)
