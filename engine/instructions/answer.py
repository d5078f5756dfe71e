"""The door `set`: the instructions of a plan over sizes, with every figure beside them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import narrower, sheet, yarn_sheet
from engine.instructions import details, document, passed_on, sizes, tables
from engine.instructions.pattern import Pattern
from engine.instructions.sizes import Size
from engine.read import units
from engine.read.errors import Refused
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Words
from engine.sock.sock import Sock
from engine.sock.string import APART

_OF_ALL = ("fabric", "sock.cuff", "sock.heel", "sock.toe")  # fields that ask no foot


def read(request: object, wanted: object) -> Pattern:
    """Return the set that a call asks for, or raise `Refused`.

    `request` is the plan's; `wanted` has `by` and `sizes` (`sizes.read`) and `details`
    (`details.read`).
    """
    told: Mapping[str, Any] = request if isinstance(request, Mapping) else {}
    system: units.System = "in" if Fields(told).choice("units", ("in", "cm")) == "in" else "cm"
    fields = Fields({"set": wanted}, system=system).part("set")
    fields.only(("by", "sizes", "details"))
    words, asked = details.read(fields.part("details")), sizes.read(fields)
    try:
        whole = sizes.any_size(request)
    except Refused as refused:
        raise Refused((*refused.problems, *fields.problems)) from None
    if fields.problems:
        raise Refused(fields.problems)
    return Pattern(asked.by, sizes.plan_all(told, asked, whole), words, whole, strung(told))


def strung(request: Mapping[str, Any]) -> bool:
    """Tell whether a plan is of socks in a string."""
    sock = request.get("sock")
    told = sock.get("string") if isinstance(sock, Mapping) else None
    return isinstance(told, str) and told.strip() not in ("", APART)


def write(
    pattern: Pattern, request: Mapping[str, Any], wanted: Mapping[str, Any]
) -> dict[str, Any]:
    """Return the whole set; see `engine.answers.contract.instructions`."""
    return {
        "units": pattern.system,
        "title": pattern.title,
        "by": pattern.by,
        "sizes": [_size(size, pattern.system) for size in pattern.sizes],
        "document": {
            "all_sizes": document.write(pattern),
            "one_size": [document.write(pattern.only(size)) for size in pattern.sizes],
        },
        "rows": tables.as_rows(pattern),
        "link": passed_on.write(pattern, request, wanted),
        "notes": [
            {"field": field, "text": text}
            for field, text in pattern.any_size.notes
            if field is not None and field.startswith(_OF_ALL)
        ],
    }


def _size(size: Size, system: units.System) -> dict[str, Any]:
    sock, misfit = size.sock, size.misfit
    return {
        "label": size.label,
        "foot_length": units.length(size.length, system),
        "ball_girth": units.length(size.ball, system),
        "fits": misfit is None,
        "reason": misfit and misfit.words,
        "slots": misfit and misfit.slots,
        "finished": None if sock is None else _finished(sock),
        "counts": [] if sock is None else sheet.parts(sock),
        "yarn": None if sock is None else _yarn(sock),
        "how_sure": "" if sock is None else _how_sure(sock),
    }


def _finished(sock: Sock) -> dict[str, Any]:
    found = tables.finished(sock)
    return {name: units.length(mm, sock.system) for name, mm in found.items()}


def _yarn(sock: Sock) -> dict[str, Any]:
    found = yarn_sheet.write(sock)
    return {
        "needed": {name: found[name] for name in ("metres", "grams")},
        "with_margin": found["with_margin"],
        "colors": [
            {
                "name": color["name"],
                "sections": color["sections"],
                "needed": {name: color[name] for name in ("metres", "grams")},
                "with_margin": color["with_margin"],
            }
            for color in found["colors"]
        ],
    }


def _how_sure(sock: Sock) -> Words:
    low, high = sock.rounds_range
    return say.foot_range(span=narrower.span((low, high)), high=high)
