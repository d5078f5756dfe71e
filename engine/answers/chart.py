"""A table over sizes: the foot rounds of one machine and yarn for many feet and gauges.

Rows are feet, by shoe size in one system or by length; columns are rounds per length, as a yarn
comes out looser or firmer. A cell is the foot rounds (`foot_rounds`) for a sock as much shorter
than that foot as the sock that the table is made beside, with its heel and toe; it is None where
these alone are longer than the foot. The sock's own foot is a row besides, which in the column of
its own fabric says what the plan says.

`as_cells` gives the same figures as rows of cells, for a file; the page writes it (RFC 4180).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from engine.fabric.swatch import ROUNDS
from engine.people import shoe_size
from engine.people.measures import MEASURES
from engine.read import units
from engine.read.errors import Refused
from engine.read.fields import Fields, Span
from engine.read.units import System, nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.pocket import Pocket
from engine.sock import foot_rounds
from engine.sock.sock import Sock

BY_LENGTH = "length"
MOST_ROWS, MOST_COLUMNS = 60, 12
_COLUMNS = 5  # as many as stand beside each other on a phone
_COLUMN_STEP = {"in": 0.25 / units.MM_PER_INCH, "cm": 0.01}  # rounds per mm
_LENGTHS = {"in": (8 * 25.4, 12 * 25.4, 25.4 / 4), "cm": (200.0, 310.0, 5.0)}  # mm, on a tape
_SIZES = {  # first and last of a usual table
    "EU": (35, 47),
    "UK": (3, 12),
    "US men": (6, 14),
    "US women": (5, 12),
    "Mondopoint": (220, 310),
    "Japan": (22, 30),
    "EU child": (22, 35),
    "UK child": (5, 13),
    "US child": (5, 13),
    "US youth": (1, 7),
}
_STEPS = {"Mondopoint": 5.0, "Japan": 0.5}


class Row(NamedTuple):
    """A foot of the table: its size or mm, its length in mm, and the rounds of each column."""

    at: float
    length: float
    rounds: tuple[int | None, ...]


class Chart(NamedTuple):
    """A table: `by` as asked, `columns` in rounds per mm, and the sock it is made beside.

    Steps are between rows (sizes or mm) and between columns (rounds per mm).
    """

    by: str
    columns: tuple[float, ...]
    column_step: float
    rows: tuple[Row, ...]
    row_step: float
    sock: Sock


def read(fields: Fields, sock: Sock) -> Chart:
    """Return the table a request asks for, or raise `Refused`; what is left out is usual.

    fields: `by` (a system of shoe sizes, or "length"), `first`, `last` and `step` of the rows
    (sizes or lengths), `loosest`, `firmest` and `between` of the columns (counts over a length).
    """
    fields.only(("by", "first", "last", "step", "loosest", "firmest", "between"))
    by = fields.choice("by", (BY_LENGTH, *shoe_size.SYSTEMS)) or BY_LENGTH
    feet, row_step = _feet(fields, by)
    columns, column_step = _columns(fields, sock)
    if fields.problems:
        raise Refused(fields.problems)
    rows = (
        Row(at, length, tuple(_rounds(sock, length, c) for c in columns)) for at, length in feet
    )
    return Chart(by, columns, column_step, tuple(rows), row_step, sock)


def _feet(fields: Fields, by: str) -> tuple[list[tuple[float, float]], float]:
    """Return (size or mm, foot length in mm) of every row, and the step between rows."""
    if by == BY_LENGTH:
        span, step_span = (
            MEASURES["length"].span,
            Span(say.of_chart_step(between="lengths"), 1.0, 50.0),
        )
        first, last = fields.length("first", span), fields.length("last", span)
        step = fields.length("step", step_span)
        usual = _LENGTHS[fields.system]
    else:
        low, high = shoe_size.RANGE[by]
        span = Span(say.of_shoe_size(system=by), low, high)
        first, last = fields.plain("first", span), fields.plain("last", span)
        step = fields.plain("step", Span(say.of_chart_step(between="sizes"), 0.25, 50))
        usual = (*_SIZES[by], _STEPS.get(by, 1.0))
    step = usual[2] if step is None else step
    places = _ladder(
        fields,
        ("first", "last", "step"),
        (usual[0] if first is None else first, usual[1] if last is None else last),
        step,
        MOST_ROWS,
    )
    if by == BY_LENGTH:
        return [(mm, mm) for mm in places], step
    return [(size, shoe_size.foot_length(by, size)[0]) for size in places], step


def _columns(fields: Fields, sock: Sock) -> tuple[tuple[float, ...], float]:
    """Return rounds per mm from loose to firm, and the step between them.

    What is left out stands on both sides of the sock's own.
    """
    step = fields.rate("between", Span(say.of_chart_step(between="columns"), 0.0005, 0.2))
    step = _COLUMN_STEP[sock.system] if step is None else step
    reach = step * (_COLUMNS // 2)
    own = sock.fabric.rounds
    loosest, firmest = fields.rate("loosest", ROUNDS), fields.rate("firmest", ROUNDS)
    ends = (
        own - reach if loosest is None else loosest,
        own + reach if firmest is None else firmest,
    )
    return _ladder(fields, ("loosest", "firmest", "between"), ends, step, MOST_COLUMNS), step


def _ladder(
    fields: Fields, names: tuple[str, str, str], ends: tuple[float, float], step: float, most: int
) -> tuple[float, ...]:
    """Return first, first + step, ... up to last; problems stand at the fields of `names`."""
    first, last = ends
    if last < first:
        typed, way_out = names[1], say.exchange_ends()
        if any(fields.blank(name) for name in names[:2]):  # beside the one that was typed
            typed = names[0] if fields.blank(names[1]) else names[1]
            way_out = say.fill_other_end()
        fields.refuse(typed, say.ends_exchanged(), way_out)
        return ()
    count = int((last - first) / step + 1e-6) + 1
    if count > most:
        fields.refuse(names[2], say.table_too_large(count=count), say.larger_step(most=most))
        return ()
    return tuple(first + step * i for i in range(count))


def _rounds(sock: Sock, length: float, per_mm: float) -> int | None:
    return _count(sock, (length + sock.room) * (1 - sock.ease), per_mm)


def _count(sock: Sock, aimed: float, per_mm: float) -> int | None:
    rounds = nearest(foot_rounds.exact(aimed, per_mm, sock.others))
    return rounds if rounds >= 1 else None


def _label(by: str, at: float, system: System) -> str:
    return units.length_text(at, system) if by == BY_LENGTH else units.number(at, 2)


def write(chart: Chart) -> dict[str, Any]:
    """Return the table for a page: `title`, `head`, `columns`, `rows`, `assumptions`, `cells`.

    `taken` says, by the names `read` knows, what the table goes by, as it could have been typed;
    `own` is the row of the sock itself, to stand before the row `at`, and `column` the one of its
    fabric (`exact` where they are one); each None where it lies outside the table.
    """
    system = chart.sock.system
    return {
        "title": say.chart_title(slots=chart.sock.cylinder.slots),
        "by": chart.by,
        "head": _head(chart),
        "columns": [units.per_length(c, system) for c in chart.columns],
        "rows": [
            {
                "label": _label(chart.by, row.at, system),
                "length": units.length(row.length, system),
                "rounds": list(row.rounds),
            }
            for row in chart.rows
        ],
        "taken": _taken(chart),
        "own": _own(chart),
        "column": _column(chart),
        "assumptions": _assumptions(chart),
        "cells": as_cells(chart),
    }


def _head(chart: Chart) -> Message:
    """Return what the rows go by."""
    by_length = chart.by == BY_LENGTH
    return say.chart_by_length() if by_length else say.chart_by_size(system=chart.by)


def _taken(chart: Chart) -> dict[str, str]:
    def label(at: float) -> str:
        return _label(chart.by, at, chart.sock.system)

    def rate(per_mm: float) -> str:
        return str(units.per_length(per_mm, chart.sock.system)["text"])

    return {
        "first": label(chart.rows[0].at),
        "last": label(chart.rows[-1].at),
        "step": label(chart.row_step),
        "loosest": rate(chart.columns[0]),
        "firmest": rate(chart.columns[-1]),
        "between": rate(chart.column_step),
    }


def _own(chart: Chart) -> dict[str, Any] | None:
    sock, lengths = chart.sock, [row.length for row in chart.rows]
    own = sock.measures["length"].value
    if _nearest(lengths, _row_step_in_mm(chart), own) is None:
        return None
    return {
        "at": sum(length < own for length in lengths),
        "label": say.this_foot(),
        "length": units.length(own, sock.system),
        "rounds": [_count(sock, sock.for_foot, c) for c in chart.columns],
    }


def _column(chart: Chart) -> dict[str, Any] | None:
    own = chart.sock.fabric.rounds
    at = _nearest(chart.columns, chart.column_step, own)
    return None if at is None else {"at": at, "exact": abs(chart.columns[at] - own) < 1e-9}


def _nearest(places: Sequence[float], step: float, own: float) -> int | None:
    """Return which of the places is nearest; None where the own one is over half a step outside."""
    at = min(range(len(places)), key=lambda i: abs(places[i] - own))
    inside = places[0] - step / 2 <= own <= places[-1] + step / 2
    return at if inside else None


def _row_step_in_mm(chart: Chart) -> float:
    if chart.by == BY_LENGTH:
        return chart.row_step
    last = chart.rows[-1]
    return shoe_size.foot_length(chart.by, last.at + chart.row_step)[0] - last.length


def _lengths(sock: Sock) -> Message:
    percent = units.number(sock.ease * 100)
    if not sock.room:
        return say.chart_ease(percent=percent)
    return say.chart_ease_and_room(percent=percent, room=units.length_text(sock.room, sock.system))


def _turned(sock: Sock) -> Message:
    heel, toe = sock.heel, sock.toe
    if not isinstance(heel, Pocket):
        if isinstance(toe, Pocket):
            return say.chart_toe_alone(toe=toe.needles, left=toe.left)
        return say.chart_tube(manner=toe.manner)
    if not isinstance(toe, Pocket):
        return say.chart_heel_and_toe(heel=heel.needles, left=heel.left, manner=toe.manner)
    return say.chart_pockets(
        heel=heel.needles, heelLeft=heel.left, toe=toe.needles, toeLeft=toe.left
    )


def _heel_manner(sock: Sock) -> list[Message]:
    """Return how the heel differs from the usual, a flap by its rows."""
    manner = sock.heel.manner if isinstance(sock.heel, Pocket) else None
    return [say.chart_heel_is(manner=manner)] if manner else []


def _assumptions(chart: Chart) -> list[Message]:
    sock = chart.sock
    lines = [
        _turned(sock),
        *_heel_manner(sock),
        _lengths(sock),
        say.chart_washed(),
    ]
    if chart.by != BY_LENGTH:
        lines.append(say.chart_sizes_differ())
    if any(count is None for row in chart.rows for count in row.rounds):
        lines.append(say.chart_dash())
    return lines


def as_cells(chart: Chart) -> list[list[Message | str | int | None]]:
    """Return the table as rows of cells: a head, then a foot with its length in mm and rounds."""
    per = "in" if chart.sock.system == "in" else "10 cm"
    mm = units.MM_PER_INCH if per == "in" else 100.0
    columns = [say.chart_rounds(rounds=units.number(c * mm, 2), per=per) for c in chart.columns]
    cells: list[list[Message | str | int | None]] = [[_head(chart), say.chart_in_mm(), *columns]]
    for row in chart.rows:
        label = _label(chart.by, row.at, chart.sock.system)
        cells.append([label, units.number(row.length), *row.rounds])
    return cells
