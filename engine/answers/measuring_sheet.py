"""A measuring sheet that came back filled in: what it says of one foot, as a request has it.

Printers seldom keep the size they were given. The sheet has a bar that should be 100 mm long; what
was read on the sheet's own scales is as much too long as the bar is too short. What a tape told is
taken as it is.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.people.foot import TOE_BREADTH
from engine.people.measures import MEASURES
from engine.read import reading, units
from engine.read.errors import Refused, Unreadable
from engine.read.fields import Fields, Span
from engine.say import messages as say

BAR = 100.0  # mm, as it is drawn
# A page drawn to the other paper, or with the margins that a printer adds, comes out from 0.9 to
# 1.1 as large (worked out from A4 and Letter); beyond this it was no printer's doing.
_BAR = Span(say.of_bar(), 80.0, 125.0)
_BY_TAPE = {
    **{name: one.span for name, one in MEASURES.items() if name != "length"},
    "toe_breadth": TOE_BREADTH,
}


def write(call: Mapping[str, Any]) -> dict[str, Any]:
    """Return `fields`, the texts of a request's fields by their dotted names.

    `sheet` in the call holds `bar` (a bare number is in mm; left out, it is right), `length` as
    read on the sheet and what a tape told; `units` what bare numbers are in. Raises Refused.
    """
    system: units.System = "in" if call.get("units") == "in" else "cm"
    raw = call.get("sheet")
    raw = dict(raw) if isinstance(raw, Mapping) else {}
    raw["bar"] = _in_mm(raw.get("bar"))
    fields = Fields(raw, "sheet", system)
    fields.only(("bar", "length", *_BY_TAPE))
    drawn = fields.length("bar", _BAR) or BAR
    length = fields.length("length", MEASURES["length"].span)
    by_tape = [name for name, span in _BY_TAPE.items() if fields.length(name, span) is not None]
    if fields.problems:
        raise Refused(fields.problems)
    told = {name: fields.text(name) or "" for name in by_tape}
    if length is not None:
        true = units.length_text(length * drawn / BAR, system)
        told["length"] = true if drawn != BAR else fields.text("length") or ""
    return {"fields": {f"foot.{name}": text for name, text in told.items()}}


def _in_mm(bar: object) -> object:
    """Return what was written of the bar, a bare number with its unit."""
    try:
        return f"{bar.strip()} mm" if isinstance(bar, str) and reading.is_bare(bar) else bar
    except Unreadable:
        return bar  # its own reader says what is wrong with it
