"""The sizes of a set: for each a foot, the request that plans it by hand, and its sock.

A size is a shoe size of one system, or the length of a foot. Its foot is the one that this size is
meant for (`shoe_size.foot_length`), its girths those that are usual for it (`population`). Of the
plan only what is not of one person stays: units, cylinder, fabric, cuff, leg, heel, toe and ease.

A cylinder fits a size where the sock can be knitted, is neither baggy nor tight around the ball by
the bounds of `fit`, and passes the heel. Here the usual girth is no guess about somebody: the size
is made for it. The cylinder that would fit is tried: those that are about, then any even number of
slots, the nearest to the usual stretch around the ball first.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, NamedTuple

from engine import sources
from engine.answers import sheet
from engine.judge import fit
from engine.judge.shelf import without_slots
from engine.people import shoe_size
from engine.people.measures import MEASURES
from engine.read import units
from engine.read.errors import Refused
from engine.read.fields import Fields, Span
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sock import plan
from engine.sock.sock import Sock
from engine.sock.wanted import foot_alone

BY_LENGTH = "length"
MOST = 16
LONG = MEASURES["length"].span.high  # mm, to leave rounds between any heel and toe
_OF_ONE_PERSON = ("foot", "other_foot", "person", "first_sock")
_OF_ONE_PAIR = ("foot_length_of_sock", "string")  # of a sock: whose, or how a pair is knitted
_OF_STOCK = ("apart", "margin", "ball")
_SEXES = {"US men": "man", "US women": "woman"}
_FROM_TO = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:to|[-–])\s*(\d+(?:[.,]\d+)?)")
_TOO_SHORT = ("foot.length", "cylinder.slots")  # where a foot is, for heel and toe or the tube
_TRIED = 8  # cylinders on either side of the one that the ball asks for


class Misfit(NamedTuple):
    """Why a cylinder does not fit, and the slots of one that would, None where none does."""

    words: Message
    slots: int | None


class Size(NamedTuple):
    """A size: its `label`, its foot in mm, the `request` that plans it, and its sock.

    `sock` is None where it cannot be knitted, `misfit` None where it fits.
    """

    label: str
    length: float
    ball: float
    request: Mapping[str, Any]
    sock: Sock | None
    misfit: Misfit | None


class Wanted(NamedTuple):
    """What sizes are asked for: by which system, or by length, and each size or its mm."""

    by: str
    sizes: list[float]


def read(fields: Fields) -> Wanted:
    """Return the sizes that are asked for, each once, from the smallest.

    fields: `by` (a system of shoe sizes, or "length") and `sizes`, a list of sizes or lengths, or
    one text of them. Problems are noted in them.
    """
    by = fields.choice("by", (BY_LENGTH, *shoe_size.SYSTEMS)) or BY_LENGTH
    return Wanted(by, _listed(fields, by))


def plan_all(request: Mapping[str, Any], wanted: Wanted, whole: Sock) -> list[Size]:
    """Return every size, planned; `whole` is `any_size`. Raises `Refused`."""
    return [_size(request, wanted.by, at, whole) for at in wanted.sizes]


def any_size(request: object) -> Sock:
    """Return a sock that always goes, or raise `Refused` with what is wrong with any of them."""
    if not isinstance(request, Mapping):
        return plan.make(request)
    try:
        return plan.make(asked(request, BY_LENGTH, LONG))
    except Refused as refused:
        raise Refused(
            # Nobody typed that foot: heel and toe are too long for any.
            replace(one, field="cylinder.slots") if one.field == "foot.length" else one
            for one in refused.problems
        ) from None


def _listed(fields: Fields, by: str) -> list[float]:
    raw = fields.raw.get("sizes")
    pieces = raw if isinstance(raw, list) else list(_pieces(fields.text("sizes") or "", by))
    noted = len(fields.problems)
    if len(pieces) > MOST:
        fields.refuse("sizes", say.too_many(number=len(pieces)), say.set_fewer_sizes(most=MOST))
        return []
    one = Fields({str(at): piece for at, piece in enumerate(pieces)}, fields.where("sizes"))
    one.system, one.problems = fields.system, fields.problems
    read: list[float | None] = []
    for name in one.raw:
        if by == BY_LENGTH:
            read.append(one.length(name, MEASURES["length"].span))
        else:
            span = Span(say.of_shoe_size(system=by), *shoe_size.RANGE[by])
            read.append(one.plain(name, span))
    found = sorted({value for value in read if value is not None})
    texts = [label(by, value, fields.system) for value in found]
    for text in dict.fromkeys(text for text in texts if texts.count(text) > 1):
        fields.refuse("sizes", say.set_sizes_alike(size=text), say.set_leave_one_out())
    if not found and len(fields.problems) == noted:
        fields.refuse("sizes", say.set_without_sizes(), say.set_sizes_like(by=_kind(by)))
    return found


def label(by: str, at: float, system: units.System) -> str:
    """Write a size as the instructions name it."""
    return units.length_text(at, system) if by == BY_LENGTH else units.number(at, 2)


def _kind(by: str) -> Any:
    return "length" if by == BY_LENGTH else "size"


def _pieces(text: str, by: str) -> Iterator[str]:
    """Yield the sizes of a text: "36, 38, 40", "22 cm; 23,5 cm", "6 and 6 1/2", "6 to 10"."""
    found = [one for one in re.split(r"[;\n]|,\s|\s+(?:and|&)\s+", text[:2000]) if one.strip()]
    range_alone = _FROM_TO.fullmatch(text.strip())
    if len(found) == 1 and by != BY_LENGTH and "/" not in text and not range_alone:
        found = [one for one in re.split(r"\s+", text.strip()) if one]
        if len(found) == 1 and text.count(",") > 1:
            found = [one for one in text.split(",") if one.strip()]
    for one in found:
        yield from [one.strip()] if by == BY_LENGTH else _from_to(one.strip())


def _from_to(text: str) -> Iterator[str]:
    """Yield the whole steps of "6 to 10" or "5,5-8,5"; where they are too many, one too many."""
    ends = _FROM_TO.fullmatch(text)
    if not ends:
        yield text
        return
    first, last = (float(one.replace(",", ".")) for one in ends.groups())
    for at in range(min(MOST, int(last - first)) + 1):
        yield units.number(first + at, 3)


def of_nobody(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return what of a plan's request is for any size."""
    kept = {name: value for name, value in request.items() if name not in _OF_ONE_PERSON}
    sock, stock = kept.get("sock"), kept.get("stock")
    if isinstance(sock, Mapping):
        sock = {name: value for name, value in sock.items() if name not in _OF_ONE_PAIR}
        if isinstance(sock.get("leg"), Mapping):
            sock["leg"] = {n: v for n, v in sock["leg"].items() if n != "girths"}
        kept["sock"] = sock
    if isinstance(stock, Mapping):
        kept["stock"] = {name: stock[name] for name in _OF_STOCK if name in stock}
    return kept


def asked(request: Mapping[str, Any], by: str, at: float) -> dict[str, Any]:
    """Return the request that plans a size by hand."""
    told = request.get("person")
    sex = told.get("sex") if isinstance(told, Mapping) else None
    if by == BY_LENGTH:
        foot, person = {"length": f"{at:.4f} mm"}, {"sex": sex}
    else:
        foot = {}
        if by in _SEXES:
            sex = _SEXES[by]
        elif by.endswith(("child", "youth")):
            sex = None
        person = {"sex": sex, "shoe_size": {"system": by, "size": units.number(at, 3)}}
    return {**of_nobody(request), "foot": foot, "person": person}


def _size(request: Mapping[str, Any], by: str, at: float, whole: Sock) -> Size:
    asks = asked(request, by, at)
    sock: Sock | None = None
    short: Message | None = None
    try:
        sock = plan.make(asks)
    except Refused as refused:
        (first, *more) = refused.problems
        if more or first.field not in _TOO_SHORT:  # that is not of this foot alone
            raise
        short = first.message
    measures = foot_alone(asks)[1] if sock is None else sock.measures
    length, ball = measures["length"].value, measures["ball_girth"].value
    wrong = short or (None if sock is None else _wrong(sock))
    misfit = None if wrong is None else _misfit(wrong, asks, whole, ball)
    return Size(label(by, at, whole.system), length, ball, asks, sock, misfit)


def _wrong(sock: Sock) -> Message | None:
    """Return why the cylinder does not fit the size that a sock is for, None where it does."""
    stretch = sock.measures["ball_girth"].value / sock.tube
    level, feels = fit.feels(stretch, fit.wished(sources.BALL_STRETCH, sock.closer))
    if level == "bad":
        if units.reaches(stretch, 1):
            verdict = say.verdict(feels=feels)
            return say.set_stretches(percent=units.percent(stretch - 1), verdict=verdict)
        percent = units.percent(1 / stretch - 1)
        return say.set_too_wide(percent=percent) if percent else say.set_unstretched()
    over = (one for one in sheet.places(sock) if one.place == "over_heel" and one.level == "bad")
    return next((say.set_not_over_heel() for _ in over), None)


def _misfit(wrong: Message, asks: Mapping[str, Any], whole: Sock, ball: float) -> Misfit:
    slots = next(_that_fit(asks, whole, ball), None)
    way = say.set_no_cylinder() if slots is None else say.set_other_cylinder(slots=slots)
    return Misfit(say.in_turn(sentences=(wrong, way)), slots)


def _that_fit(asks: Mapping[str, Any], whole: Sock, ball: float) -> Iterator[int]:
    """Yield the slots of cylinders that fit, the usual ones first, the nearest to what the ball
    asks for before others.
    """
    free = {**without_slots(asks)[0], "fabric": _knitted_on(asks.get("fabric"), whole)}
    wanted = sources.BALL_STRETCH_WANTED + whole.closer
    suited = 2 * nearest(ball / wanted * whole.fabric.stitches / 2)
    around = range(suited - 2 * _TRIED, suited + 2 * _TRIED + 1, 2)
    usual = (slots for slots in map(int, sources.SLOTS_USUAL) if slots in around)
    for slots in (
        *sorted(usual, key=lambda slots: abs(slots - suited)),
        *sorted(around, key=lambda slots: (abs(slots - suited), slots)),
    ):
        if sources.SLOTS_FEWEST <= slots <= sources.SLOTS_MOST:
            cylinder = {"slots": slots, "carrier": whole.cylinder.carrier}
            try:
                sock = plan.make({**free, "cylinder": cylinder})
            except Refused:
                continue
            if _wrong(sock) is None:
                yield slots


def _knitted_on(fabric: object, whole: Sock) -> object:
    """Return the fabric of a request where another cylinder is no longer that of its swatches."""
    if not isinstance(fabric, Mapping):
        return fabric
    needles = {"needles": whole.cylinder.slots}
    rows = fabric.get("swatches")
    told = dict(fabric)
    if fabric.get("swatch"):
        told["swatch"] = _with_needles(fabric["swatch"], needles)
    if isinstance(rows, list):
        told["swatches"] = [_with_needles(row, needles) for row in rows]
    return told


def _with_needles(swatch: object, needles: Mapping[str, int]) -> object:
    if not isinstance(swatch, Mapping) or not swatch or not Fields(swatch).blank("needles"):
        return swatch
    return {**swatch, **needles}
