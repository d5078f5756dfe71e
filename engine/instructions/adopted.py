"""A plan for one who knits from a set: a size of it or her own foot, and her own gauge.

It is a request like any other, so that it can be corrected, knitted at the counter and kept. Of the
maker it holds the sock alone: neither her swatches nor her record. Where the reader tells no gauge
it is the maker's, to six decimals, and the counts are those of the set.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from engine.answers.anonymous import rate
from engine.instructions.pattern import Pattern
from engine.instructions.sizes import Size, of_nobody
from engine.judge.shelf import without_slots
from engine.read.errors import Problem, Refused
from engine.read.fields import Fields
from engine.read.quoted import quoted
from engine.say import messages as say
from engine.sock import wanted
from engine.sock.origin import Origin
from engine.sock.sock import Sock

_OF_YARN = ("yarn", "strands", "along")  # what is read off a band


def write(pattern: Pattern, request: Mapping[str, Any], reader: object) -> dict[str, Any]:
    """Return `request` for the reader's plan, which tells whose instructions it is from.

    `request` is the maker's. `reader` has `size`, the label of one, or `foot` and `person` as a
    request has them, and `fabric` and `cylinder`; what is left out is the set's. Needles that were
    told of the maker's cylinder are none of another one's. Raises `Refused`.
    """
    fields = Fields({"reader": reader}, system=pattern.system).part("reader")
    fields.only(("size", "foot", "person", "fabric", "cylinder"))
    foot, person, fabric = (fields.part(name) for name in ("foot", "person", "fabric"))
    own_cylinder = fields.part("cylinder")
    own = not (foot.empty() and person.empty())
    size = _size(fields, pattern, asked=not own)
    if fields.problems:
        raise Refused(fields.problems)
    kept = {name: value for name, value in of_nobody(request).items() if name != "knitter"}
    wearer = {"foot": dict(foot.raw), "person": dict(person.raw)}
    if not own and size is not None:
        wearer = {name: size.request[name] for name in wearer}
    sock = (size and size.sock) or pattern.any_size
    plan = {
        **kept,
        **wearer,
        "fabric": of_maker(request, pattern.any_size) if fabric.empty() else dict(fabric.raw),
        "sock": _without_marks(kept.get("sock"), sock),
        "origin": _whence(pattern),
    }
    adopted = _on(own_cylinder, plan, pattern.any_size)
    if unreadable := _unreadable(adopted, own=own, by_size=size is not None):
        raise Refused(unreadable)
    return {"request": adopted}


def _unreadable(request: Mapping[str, Any], *, own: bool, by_size: bool) -> list[Problem]:
    """Return what cannot be read of what the reader told, at the reader's fields.

    What can be read and not be knitted is told with the plan, where all else can be changed too.
    """
    fields = Fields(request)
    wanted.read(fields)
    told = ("foot.", "person.", "fabric.", "cylinder.") if own or not by_size else ("fabric.",)
    return [
        replace(one, field=f"reader.{one.field}")
        for one in fields.problems
        if one.field.startswith(told)
    ]


def _whence(pattern: Pattern) -> dict[str, str]:
    """Return what tells whose the set is."""
    told = pattern.details.told
    slots = "" if told["title"] else str(pattern.any_size.cylinder.slots)
    whose = Origin(told["title"], told["maker"], told["version"], slots)
    return {name: text for name, text in whose._asdict().items() if text}


def _size(fields: Fields, pattern: Pattern, *, asked: bool) -> Size | None:
    label = (fields.text("size") or "").strip()
    found = next((size for size in pattern.sizes if size.label == label), None)
    if label and found is None:
        labels = tuple(size.label for size in pattern.sizes)
        no = say.set_no_such_size(size=quoted(label))
        fields.refuse("size", no, say.choose(choices=labels), labels)
    elif asked and not label:
        fields.refuse("size", say.set_no_foot(), say.set_foot_or_size())
    return found


def _on(own: Fields, plan: dict[str, Any], sock: Sock) -> dict[str, Any]:
    """Return a plan on the reader's own cylinder, where she tells of one."""
    if own.empty():
        return plan
    on = {**plan, "cylinder": {**plan["cylinder"], **own.raw}}
    same = own.blank("slots") or own.text("slots") == str(sock.cylinder.slots)
    return on if same else without_slots(on)[0]


def of_maker(request: Mapping[str, Any], sock: Sock) -> dict[str, Any]:
    """Return the maker's gauge, with what her yarn's band says."""
    told, cloth = request.get("fabric"), sock.fabric
    band = told if isinstance(told, Mapping) else {}
    return {
        "stitches": rate(cloth.stitches, sock.system),
        "rounds": rate(cloth.rounds, sock.system),
        **{name: band[name] for name in _OF_YARN if name in band},
    }


def _without_marks(told: object, sock: Sock) -> Any:
    """Return the sock's fields with a stitch in place of each mark, which is of one machine."""
    leg = told.get("leg") if isinstance(told, Mapping) else None
    if not isinstance(told, Mapping) or not isinstance(leg, Mapping) or not leg.get("bands"):
        return {} if told is None else told
    bands = [
        {"rounds": band.rounds, "stitches": rate(sock.fabric.stitches * band.tighter, sock.system)}
        for band in sock.leg.bands
    ]
    return {**told, "leg": {**leg, "bands": bands}}
