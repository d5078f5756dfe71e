"""Asking the engine as the page does: through its one door, with what people would type.

`asked` starts from an average woman's foot on a usual machine and changes what a test is about, by
dotted names: `asked({"cylinder.slots": 72, "fabric.rounds": None})`; None takes a field out.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any
from xml.sax.saxutils import escape

from engine import api
from engine.read.errors import Refused
from engine.say.aloud import aloud

# The means of 1,986 women: ANSUR II 2012, Gordon et al. 2014, NATICK/TR-15/007.
AVERAGE_WOMAN = {
    "length": "246.3 mm",
    "ball_girth": "228.1 mm",
    "heel_girth": "310.3 mm",
    "ankle_girth": "215.7 mm",
    "calf_girth": "373.3 mm",
}
MM_PER_INCH = 25.4


def answer(call: object) -> dict[str, Any]:
    """What a door answers, its messages as sentences in English, as a phone shows it."""
    found: dict[str, Any] = aloud(api.answer(call))
    return found


def answer_text(text: str) -> str:
    """The same, both as JSON text."""
    try:
        return json.dumps(answer(api.read_json(text)), ensure_ascii=False)
    except Refused as refused:
        return json.dumps(aloud(refused.as_dict()), ensure_ascii=False)


def asked(changes: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """A request: an average woman's foot, 60 slots, 7.5 stitches and 9.6 rounds per inch."""
    request: dict[str, Any] = {
        "units": "in",
        "foot": dict(AVERAGE_WOMAN),
        "person": {"sex": "woman"},
        "cylinder": {"slots": 60},
        "fabric": {"stitches": "7.5 / in", "rounds": "9.6 / in"},
        "sock": {},
    }
    for dotted, value in (changes or {}).items():
        *groups, name = dotted.split(".")
        at = request
        for group in groups:
            at = at.setdefault(group, {})
        if value is None:
            at.pop(name, None)
        else:
            at[name] = dict(value) if isinstance(value, Mapping) else value
    return request


def plan(changes: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """The plan of a request that can be knitted."""
    found = answer({"do": "plan", "request": asked(changes)})
    assert "errors" not in found, found
    return found


def on_a_page(sheet: Mapping[str, Any]) -> dict[str, Any]:
    """A plan as a page gets it, which says itself what a row is."""
    steps = [
        {name: one for name, one in step.items() if name not in ("title", "text")}
        if step["kind"] == "row"
        else step
        for step in sheet["steps"]
    ]
    return {**sheet, "steps": steps}


def refused(changes: Mapping[str, Any]) -> dict[str, dict[str, str]]:
    """The problems of a request that cannot, by field."""
    found = answer({"do": "plan", "request": asked(changes)})
    assert set(found) == {"errors"}, "this should have been refused"
    return {problem["field"]: problem for problem in found["errors"]}


def drawn(pieces: Sequence[str]) -> str:
    """A drawing as one text: its words, at each odd place, become part of the markup."""
    return "".join(escape(one) if at % 2 else one for at, one in enumerate(pieces))


def noted(sheet: Mapping[str, Any]) -> dict[str | None, str]:
    """What a plan remarks or asks, by field."""
    return {note["field"]: note["text"] for note in sheet["notes"]}


def fit(sheet: Mapping[str, Any], place: str) -> dict[str, Any]:
    """The fit at one place."""
    found: dict[str, Any] = next(one for one in sheet["fit"] if one["place"] == place)
    return found


def mm(sheet: Mapping[str, Any], size: str) -> float:
    """A size of the sock in mm."""
    return float(sheet["sizes"][size]["value"])


def inches(sheet: Mapping[str, Any], size: str) -> float:
    """A size of the sock in inches, from its value in mm."""
    return mm(sheet, size) / MM_PER_INCH
