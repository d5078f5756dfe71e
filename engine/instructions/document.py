"""The instructions in their order: one layout for all sizes together, and one for a size alone.

Both come from here: a size alone is a set of one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import chain
from typing import Any, Literal

from engine.instructions import blocks, facts, knitting, tables
from engine.instructions.blocks import Block
from engine.instructions.pattern import Pattern
from engine.say import messages as say

_SHOWN_FIRST: tuple[Any, ...] = ("maker", "version", "date", "licence")
_SHOWN_LAST: tuple[Any, ...] = ("errata", "contact")
Of = Literal[
    "made", "care", "sizes", "machine", "yarn", "gauge", "ease", "measures", "terms",
    "instructions", "counts", "row_gauge", "colors", "washing", "sure", "notes", "errata", "access",
]  # fmt: skip


def write(pattern: Pattern) -> list[Block]:
    """Return every block of the instructions."""
    return list(_blocks(pattern))


def _blocks(pattern: Pattern) -> Iterator[Block]:
    yield blocks.heading(1, "title", pattern.title)
    if len(pattern.sizes) == 1:
        yield blocks.text(say.set_one_size(size=pattern.sizes[0].label))
    yield from facts.made(pattern)
    yield from _told(pattern, "made", _SHOWN_FIRST)
    yield _heading("care")
    yield from facts.take_care()
    yield _heading("sizes")
    yield from _reading(pattern)
    yield from tables.sizes(pattern)
    yield from tables.shoes(pattern)
    if pattern.made:
        yield from _to_knit(pattern)
    if pattern.details.notes:
        yield _heading("notes")
        yield from map(blocks.text, pattern.details.notes)
    yield from _told(pattern, "errata", _SHOWN_LAST)
    yield _heading("access")
    yield blocks.text(say.in_turn(sentences=(say.set_access(), say.set_access_rules())))


def _to_knit(pattern: Pattern) -> Iterator[Block]:
    """Yield what sizes that can be knitted are knitted by."""
    told: tuple[tuple[Of, Iterable[Block]], ...] = (
        ("machine", facts.machine(pattern)),
        ("yarn", chain(facts.thread(pattern), tables.yarn(pattern))),
        ("gauge", facts.gauge(pattern)),
        ("ease", facts.ease(pattern)),
        ("measures", tables.measures(pattern)),
        ("terms", facts.words_used()),
        ("instructions", chain(_how_many(pattern), knitting.write(pattern))),
        ("counts", tables.counts(pattern)),
        ("row_gauge", tables.row_gauges(pattern)),
        ("colors", facts.colors(pattern)),
        ("washing", (blocks.text(say.set_washing()),)),
        ("sure", tables.how_sure(pattern)),
    )
    for of, written in told:
        yield _heading(of)
        yield from written


def _how_many(pattern: Pattern) -> Iterator[Block]:
    """Yield how often the instructions are followed."""
    yield blocks.text(say.set_knit_two())
    if pattern.strung:
        yield blocks.text(say.set_no_string())


def _reading(pattern: Pattern) -> Iterator[Block]:
    """Yield how figures over sizes are read."""
    labels = [size.label for size in pattern.sizes]
    if len(labels) > 1:
        shown = f"{labels[0]} ({', '.join(labels[1:])})"
        yield blocks.text(say.set_reading(sizes=shown))
    yield blocks.text(say.chart_sizes_differ())


def _heading(of: Of) -> Block:
    return blocks.heading(2, of.replace("_", "-"), say.set_heading(of=of))


def _told(
    pattern: Pattern, of: Literal["made", "errata"], names: tuple[Any, ...]
) -> Iterator[Block]:
    """Yield the maker's own words as a list; nothing where she told none of these."""
    told = pattern.details.told
    items = [say.set_detail(name=name, words=told[name]) for name in names if told[name]]
    if items:
        if of == "errata":
            yield _heading(of)
        yield blocks.listing(items)
