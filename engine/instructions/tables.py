"""The tables of a set: its sizes, what they measure, their counts, yarn, and other row gauges."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from engine.answers import narrower, sheet, yarn_sheet
from engine.instructions import blocks, over_sizes, schematic
from engine.instructions.blocks import Block
from engine.instructions.pattern import Pattern
from engine.instructions.sizes import BY_LENGTH, Size
from engine.people import shoe_size
from engine.read import units
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Words
from engine.sock import foot_rounds
from engine.sock.sock import Sock

_STEP = {"in": 0.25 / units.MM_PER_INCH, "cm": 0.01}  # rounds per mm from one gauge to the next
_GROWN = ("EU", "UK", "US women", "US men", "Japan")
_CHILD = ("EU child", "UK child", "US child", "US youth")
_SMALL = 215.0  # mm of foot, below which children's sizes are told too (our choice)
_STEPS = (-2, -1, 0, 1, 2)
Cells = list[str | int | float | Words | None]


def _label(size: Size) -> Words:
    return size.label


def _head(*names: Any) -> list[Words]:
    return [say.set_head(of=name) for name in names]


def sizes(pattern: Pattern) -> Iterator[Block]:
    """Yield the sizes: whose foot each is for, and what the washed sock measures."""
    system = pattern.system

    def length(mm: float) -> str:
        return units.length_text(mm, system)

    rows = [
        (
            _label(size),
            [
                length(size.length),
                length(size.ball),
                *(
                    [over_sizes.NONE] * 3
                    if size.sock is None
                    else map(length, finished(size.sock).values())
                ),
                say.set_fits(fits="no" if size.misfit else "yes"),
            ],
        )
        for size in pattern.sizes
    ]
    by_length = pattern.by == BY_LENGTH
    first = say.set_head(of="size") if by_length else say.chart_by_size(system=pattern.by)
    head = _head("foot", "ball", "sock_foot", "sock_girth", "sock_height", "fits")
    yield blocks.table(say.set_caption(of="sizes"), [first, *head], rows)
    misfits = [(size.label, size.misfit.words) for size in pattern.sizes if size.misfit]
    for label, words in misfits:
        yield blocks.caution(say.set_misfit(size=label, words=words))


def shoes(pattern: Pattern) -> Iterator[Block]:
    """Yield about which shoe sizes feet of each size wear, in halves, by ISO 19407 and JIS.

    A scale in which none of them is sold is left out.
    """
    child = pattern.by.endswith(("child", "youth"))
    small = pattern.by == BY_LENGTH and pattern.sizes[0].length < _SMALL
    scales = (*(() if child else _GROWN), *(_CHILD if child or small else ()))
    told = {
        scale: [_shoe(scale, size.length) for size in pattern.sizes]
        for scale in scales
        if scale != pattern.by
    }
    shown = {scale: sold for scale, sold in told.items() if set(sold) != {over_sizes.NONE}}
    if shown:
        rows = [
            (_label(size), [sold[at] for sold in shown.values()])
            for at, size in enumerate(pattern.sizes)
        ]
        yield blocks.table(say.set_caption(of="shoes"), [*_head("size"), *shown], rows)


def _shoe(scale: str, mm: float) -> str:
    """Write the shoe size of a foot of `mm`, a dash where none is sold."""
    low, high = shoe_size.RANGE[scale]
    found = nearest(2 * shoe_size.size(scale, mm)) / 2
    return units.number(found) if low <= found <= high else over_sizes.NONE


def finished(sock: Sock) -> dict[str, float]:
    """Return foot, girth and height of the washed sock in mm."""
    return {"foot": sock.foot_length, "girth": sock.tube, "height": sock.top_above_floor}


def measures(pattern: Pattern) -> Iterator[Block]:
    """Yield the sock's drawing and what its letters are in each size."""
    made = pattern.made
    middle = made[len(made) // 2][1]
    yield schematic.draw(middle)
    head = [
        say.set_head(of="size"),
        *(say.set_letter(letter=letter) for letter in schematic.letters(middle)),
    ]
    rows = [(_label(size), schematic.texts(sock)) for size, sock in made]
    yield blocks.table(say.set_letters(), head, rows)


def counts(pattern: Pattern) -> Iterator[Block]:
    """Yield a table of its counts for each size."""
    for size, sock in pattern.made:
        rows = [(part["title"], [_count(part), part["detail"]]) for part in sheet.parts(sock)]
        caption = say.set_counts(size=size.label)
        yield blocks.table(caption, _head("part", "knit", "what"), rows)


def _count(part: dict[str, Any]) -> Words:
    return say.set_count(unit=part["unit"], count=part["count"])


def yarn(pattern: Pattern) -> Iterator[Block]:
    """Yield what a pair of each size takes of each color."""
    rows: list[blocks.Row] = []
    for size, sock in pattern.made:
        for color in yarn_sheet.write(sock)["colors"]:
            margin = color["with_margin"]
            grams, metres = margin["grams"], margin["metres"]
            cells = [
                color["name"],
                color["grams"]["text"],
                _both(grams["text"], grams["other"]),
                _both(metres["text"], metres["other"]),
            ]
            rows.append((size.label, cells))
    head = _head("size", "color", "pair_takes", "have", "have_length")
    yield blocks.table(say.set_yarn_table(), head, rows)


def _both(text: str, other: str) -> Words:
    return say.set_both(text=text, other=other)


def how_sure(pattern: Pattern) -> Iterator[Block]:
    """Yield how sure the foot rounds of each size are."""
    rows = [
        (_label(size), [str(sock.foot_rounds), narrower.span(sock.rounds_range)])
        for size, sock in pattern.made
    ]
    yield blocks.text(say.set_how_sure())
    yield blocks.table(say.set_caption(of="sure"), _head("size", "foot_rounds", "likely"), rows)


def row_gauges(pattern: Pattern) -> Iterator[Block]:
    """Yield the foot rounds of each size at other row gauges, and the rule in words."""
    any_size, made = pattern.any_size, pattern.made
    system = pattern.system
    step = _STEP[system]
    rates = [any_size.fabric.rounds + by * step for by in _STEPS]
    shown = [units.per_length(rate, system) for rate in rates]
    aims = [units.length_text(sock.aimed, system) for _, sock in made]
    own = units.per_length(any_size.fabric.rounds, system)
    others = over_sizes.figures(pattern.each(lambda sock: sock.others.rounds))
    rule = [say.set_row_rule(others=others)]
    if any_size.toe.by_hand:
        hand = units.length_text(any_size.toe.by_hand, system)
        rule.append(say.set_row_rule_by_hand(length=hand))
    rule.append(say.set_row_others(gauge=own["text"]))
    yield blocks.text(say.in_turn(sentences=tuple(rule)))
    size, sock = made[0]
    example = say.set_example(size=size.label, gauge=own["text"])
    yield blocks.text(say.in_turn(sentences=(example, sheet.working(sock))))
    rows = [
        (_label(size), [aim, *(_rounds(sock, rate) for rate in rates)])
        for (size, sock), aim in zip(made, aims, strict=True)
    ]
    columns = [say.set_rounds_at(gauge=one["text"]) for one in shown]
    head = [*_head("size", "aim"), *columns]
    yield blocks.table(say.set_row_table(), head, rows)


def _rounds(sock: Sock, rate: float) -> str:
    rounds = nearest(foot_rounds.exact(sock.aimed, rate, sock.others))
    return str(rounds) if rounds >= 1 else over_sizes.NONE


def as_rows(pattern: Pattern) -> list[Cells]:
    """Return sizes and counts as rows of cells, for a file: a head, then a row for each size."""
    parts = dict.fromkeys(
        (piece["part"], piece["title"]) for _, sock in pattern.made for piece in sheet.parts(sock)
    )
    head: Cells = [
        *_head("size", "foot_mm", "ball_mm", "sock_foot_mm", "sock_girth_mm", "sock_height_mm"),
        *(say.set_count_of(part=title) for _, title in parts),
        *_head("grams", "metres", "fits", "slots"),
    ]
    return [head, *(_row(size, [part for part, _ in parts]) for size in pattern.sizes)]


def _row(size: Size, parts: list[str]) -> Cells:
    found: Cells = [size.label, round(size.length, 1), round(size.ball, 1)]
    sock, misfit = size.sock, size.misfit
    if sock is None:
        found += [None] * (3 + len(parts) + 2)
    else:
        counts = {piece["part"]: piece["figure"] for piece in sheet.parts(sock)}
        margin = yarn_sheet.write(sock)["with_margin"]
        found += [round(mm, 1) for mm in finished(sock).values()]
        found += [counts.get(part) for part in parts]
        found += [margin["grams"]["value"], margin["metres"]["value"]]
    slots = misfit.slots if misfit else None
    return [*found, say.set_fits(fits="no" if misfit else "yes"), slots]
