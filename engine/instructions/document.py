"""The instructions in their order: one layout for all sizes together, and one for a size alone.

Both come from here: a size alone is a set of one.
"""

from __future__ import annotations

from collections.abc import Iterator
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
    yield _heading("machine")
    yield from facts.machine(pattern)
    yield _heading("yarn")
    yield from facts.thread(pattern)
    yield from tables.yarn(pattern)
    yield _heading("gauge")
    yield from facts.gauge(pattern)
    yield _heading("ease")
    yield from facts.ease(pattern)
    yield _heading("measures")
    yield from tables.measures(pattern)
    yield _heading("terms")
    yield from facts.words_used()
    yield _heading("instructions")
    yield blocks.text(say.set_knit_two())
    if pattern.strung:
        yield blocks.text(say.set_no_string())
    yield from knitting.write(pattern)
    yield _heading("counts")
    yield from tables.counts(pattern)
    yield _heading("row_gauge")
    yield from tables.row_gauges(pattern)
    yield _heading("colors")
    yield from facts.colors(pattern)
    yield _heading("washing")
    yield blocks.text(say.set_washing())
    yield _heading("sure")
    yield from tables.how_sure(pattern)


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
