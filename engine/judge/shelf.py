"""The shelf: which of the knitter's cylinders, yarns and tension marks suit this foot.

Every cylinder is tried with every yarn at every mark it was knitted at. Each sock is weighed by
`comfort`: first come those that are comfortable everywhere, then those that can be worn, then those
that do not fit, last those that cannot be knitted so short; of each kind the smaller score first.
Heel and toe are worked out for each cylinder, as a plan does that tells no more than their kinds.

Where one yarn (rows of one name and number) was knitted at two marks or more that differ clearly,
the line over them (`ledger`) foretells those between: on each cylinder the quarter mark that suits
the ball is tried too. Its errors count as those of a fabric that was told, which they are about.

A yarn's stitches and rounds are taken on every cylinder as told: gauge carries over between the
cylinders of one machine only roughly (common practice, no published source). A yarn with a number
alone is guessed, and its wide error counts in the ranking.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, Literal, NamedTuple

from engine import sources
from engine.fabric import fabric, knitter, swatch, swatch_line, yarn
from engine.fabric.fabric import Fabric
from engine.fabric.knitter import Knitter
from engine.fabric.swatch import Swatch
from engine.fabric.swatch_line import Line
from engine.judge.fit_score import Wearer, Weighed
from engine.machine import cylinder
from engine.read import units
from engine.read.errors import Refused
from engine.read.fields import Fields, Span
from engine.read.quoted import plain
from engine.read.units import System, nearest
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sections import leg, short_row
from engine.sock import plan
from engine.sock.sock import Sock
from engine.sock.wanted import foot_alone

MOST_CYLINDERS, MOST_YARNS, MOST_MARKS = 24, 60, 12
_LONGEST_NAME = 60
_LEFT = Span(say.of_yarn(), 0, 50_000)
_KNOWN_BY = ("colour", "fibre", "left")  # what a yarn is told from others by
# What a part of a sock has of its cylinder.
_OF_CYLINDER = {
    "cuff": ("every", "change_after", "change_every", "flat_width", "pulled_width"),
    "heel": ("needles", "left"),
    "toe": ("needles", "left"),
}
# The foot is read beside the smallest cylinder and the finest fabric, which any foot is long enough
# for: its measures hang on neither.
_LEAST = {"cylinder": {"slots": 24}, "fabric": {"stitches": "20 / in", "rounds": "27 / in"}}


class Kept(NamedTuple):
    """A cylinder on the shelf; whether there is a ribber for it, None where that is not told."""

    slots: int
    name: str
    ribber: bool | None = None


class Knitted(NamedTuple):
    """A yarn at one mark (or none): its fabric, and the group of a request that says it."""

    yarn: int
    name: Words
    mark: Words
    cloth: Fabric
    choose: dict[str, Any]
    left: float | None = None  # of the yarn, in g


class Tried(NamedTuple):
    """One cylinder with one yarn at one mark, weighed."""

    kept: Kept
    knitted: Knitted
    weighed: Weighed


class Shelf(NamedTuple):
    """A shelf read: who it is for, what stands on it, and what of the request it leaves out."""

    system: System
    wearer: Wearer
    cylinders: list[Kept]
    fabrics: list[Knitted]
    adopt: dict[str, Any]
    notes: list[tuple[str | None, Words]]
    lines: list[tuple[Knitted, Line]]
    request: Mapping[str, Any]
    knitter: Knitter


def read(request: object, shelf: object) -> Shelf:
    """Return what a call holds, or raise `Refused` with every problem of request and shelf."""
    whole: Mapping[str, Any] = request if isinstance(request, Mapping) else {}
    system: System = "in" if Fields(whole).choice("units", ("in", "cm")) == "in" else "cm"
    fields = Fields({"shelf": shelf}, system=system).part("shelf")
    fields.only(("cylinders", "ribbers", "yarns"))
    who = knitter.read(Fields(whole).part("knitter"))  # what is wrong there is the plan's to tell
    cylinders, fabrics = _cylinders(fields), _fabrics(fields, who)
    kept, adopt = without_slots(whole)
    wish = leg.read(Fields(kept, "", system, fields.problems).part("sock").part("leg"))
    try:
        base = {**kept, **_LEAST, "sock": _legless(kept.get("sock"))}
        sock = plan.make(base if isinstance(request, Mapping) else request)
    except Refused as refused:
        raise Refused((*refused.problems, *fields.problems)) from None
    if fields.problems:
        raise Refused(fields.problems)
    aimed = sock.aimed, sock.aimed_sd
    heel, toe = short_row.alike(sock.heel), short_row.alike(sock.toe)
    if sock.heel_words["why"] == "flap-suits":  # another fabric asks for another flap
        heel = heel._replace(flap=None)
    ends = heel, toe._replace(before=sock.rounds_before_toe)
    wearer = Wearer(sock.measures, sock.cuff, wish, *aimed, sock.toe_breadth, sock.closer, ends)
    of_foot = foot_alone(kept)[2]  # a count of the least fabric would be nobody's
    asked = [
        (field, say.about_yarn(yarn=knitted.name, question=question))
        for knitted in fabrics
        for field, question in knitted.cloth.questions
    ]
    notes: list[tuple[str | None, Words]] = [*of_foot, *asked]
    lines = _lines(fabrics)
    return Shelf(system, wearer, cylinders, fabrics, adopt, notes, lines, kept, who)


def _legless(sock: object) -> object:
    """Return a sock of a request without its leg, which would be shaped to the cylinder."""
    if not isinstance(sock, Mapping):
        return sock
    return {name: value for name, value in sock.items() if name != "leg"}


def without_slots(request: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return the request without what belongs to one cylinder, and the groups changed by that."""
    adopt: dict[str, Any] = {}
    if request.get("first_sock"):
        adopt["first_sock"] = {}
    sock = request.get("sock")
    if isinstance(sock, Mapping):
        made = {name: _without(value, _OF_CYLINDER.get(name, ())) for name, value in sock.items()}
        made = {name: value for name, value in made.items() if value or name not in _OF_CYLINDER}
        if made != sock:
            adopt["sock"] = made
    return {**request, **adopt}, adopt


def _without(group: object, names: tuple[str, ...]) -> object:
    """Return a group without some of its fields; what is no group stays as it is."""
    if not isinstance(group, Mapping):
        return group
    return {name: value for name, value in group.items() if name not in names}


def _cylinders(fields: Fields) -> list[Kept]:
    """Return the cylinders, each with whether its slots are among those told to have a ribber."""
    kept, with_ribber = _kept(fields), set[int]()
    if fields.blank("ribbers"):
        return kept
    for piece in _pieces(fields.text("ribbers") or ""):
        slots = [one.slots for one in kept if str(one.slots) == piece]
        if kept and not slots:
            message = say.no_such_cylinder(slots=plain(piece[:20]))
            fields.refuse("ribbers", message, say.write_those_with_ribber())
        with_ribber.update(slots)
    return [one._replace(ribber=one.slots in with_ribber) for one in kept]


def _pieces(text: str) -> list[str]:
    return [piece for piece in re.split(r"[\s,;/+&]+|\band\b", text[:400]) if piece]


def _kept(fields: Fields) -> list[Kept]:
    raw = fields.raw.get("cylinders")
    if isinstance(raw, str | int):
        return _written(fields, str(raw))
    found: list[Kept] = []
    for one in fields.parts("cylinders", MOST_CYLINDERS):
        if one.empty():
            continue
        machine = cylinder.read(
            Fields({"slots": one.raw.get("slots")}, one.path, one.system, one.problems)
        )
        name = _name(one)
        one.only(("slots", "name"))
        if machine is not None:
            found.append(Kept(machine.slots, name))
    return _some(fields, "cylinders", found, say.write_slots_of_each())


def _written(fields: Fields, text: str) -> list[Kept]:
    """Return the cylinders of a text like "54, 60 and 72"; problems stand at the one field."""
    found: dict[int, Kept] = {}
    pieces = _pieces(text)
    for piece in pieces:
        one = Fields({"slots": piece[:20]})
        machine = cylinder.read(one)
        for problem in one.problems:
            fields.refuse("cylinders", problem.message, problem.way_out)
        if machine is not None:
            found[machine.slots] = Kept(machine.slots, "")
    if len(pieces) > MOST_CYLINDERS:
        fields.refuse(
            "cylinders",
            say.too_many(number=str(len(pieces))),
            say.write_fewer_cylinders(most=str(MOST_CYLINDERS)),
        )
    return _some(fields, "cylinders", list(found.values()), say.write_slots_of_each())


def _some(
    fields: Fields, name: Literal["cylinders", "yarns"], found: list[Any], way_out: Message
) -> list[Any]:
    told = any(problem.field.startswith(fields.where(name)) for problem in fields.problems)
    if not found and not told:
        fields.refuse(name, say.shelf_without(what=name), way_out)
    return found


def _name(fields: Fields, key: str = "name") -> str:
    name = plain(fields.text(key) or "").strip()
    if len(name) > _LONGEST_NAME:
        enough = say.so_many_letters(most=str(_LONGEST_NAME))
        fields.refuse(key, say.name_too_long(), enough)
    return name


def named(fields: Fields, at: int) -> Words:
    """Return what a yarn is called: its name and colour, or its place on the shelf (from 0)."""
    name, colour = _name(fields), _name(fields, "colour")
    both = ", ".join(word for word in (name, colour) if word)
    return both or say.yarn_on_shelf(number=str(at + 1))


def grams_left(fields: Fields) -> float | None:
    """Return how much of a yarn is there, in g; None where it is not told."""
    return fields.grams("left", _LEFT)


def _fabrics(fields: Fields, who: Knitter) -> list[Knitted]:
    found: list[Knitted] = []
    for at, one in enumerate(fields.parts("yarns", MOST_YARNS)):
        found += _of_yarn(at, one, who)
    return _some(fields, "yarns", found, say.tell_of_a_yarn())


def _of_yarn(at: int, fields: Fields, who: Knitter) -> Iterable[Knitted]:
    """Return a yarn at each of its marks, as told without one, or as guessed from its number."""
    fields.only(("name", "yarn", "marks", "stitches", "rounds", *_KNOWN_BY))
    name, left = named(fields, at), grams_left(fields)
    _name(fields, "fibre")
    number = None if fields.read("yarn", yarn.read) is None else fields.raw["yarn"]
    marks = [one for one in fields.parts("marks", MOST_MARKS) if not one.empty()]
    if not marks and all(fields.blank(key) for key in fields.raw if key != "marks"):
        return  # a blank row
    told = [one for one in (fields, *marks) if not (one.blank("stitches") and one.blank("rounds"))]
    for one in marks:
        one.only(("mark", "stitches", "rounds"))
        if one not in told:
            one.refuse("stitches", say.mark_without_fabric(), say.tell_of_the_mark())
    if not told and number is None and fields.blank("yarn"):
        fields.refuse("yarn", say.yarn_unknown(), yarn.EXAMPLE)
    if not told and number is not None and not marks:
        told = [fields]
    for one in told:
        group = {key: one.raw[key] for key in ("stitches", "rounds") if not one.blank(key)}
        if number is not None:
            group["yarn"] = number
        cloth = fabric.read(Fields(group, one.path, one.system, one.problems), knitter=who)
        mark = plain((one.text("mark") if one is not fields else None) or "").strip()
        if len(mark) > _LONGEST_NAME // 4:
            one.refuse("mark", say.mark_too_long(), say.mark_as_on_dial())
        if cloth is not None:
            yield Knitted(at, name, mark, cloth, group, left)


def _lines(fabrics: list[Knitted]) -> list[tuple[Knitted, Line]]:
    """Return the line over the marks of each yarn that has a sure one, with its first row.

    What was told of a mark is taken as told, whoever's swatch it was.
    """
    yarns: dict[tuple[Words, object], list[tuple[Knitted, Swatch]]] = {}
    for one in fabrics:
        cloth = one.cloth
        mark = Fields({"mark": one.mark}).plain("mark", swatch.MARK)
        if mark is not None and cloth.way == "gauge" and not cloth.guessed:
            errors = float(sources.GAUGE_AS_TOLD), float(sources.GAUGE_AS_TOLD)
            tube = Swatch("", "swatch", mark, cloth.stitches, cloth.rounds, *errors)
            yarns.setdefault((one.name, one.choose.get("yarn")), []).append((one, tube))
    found = [
        (rows[0][0], swatch_line.line([tube for _, tube in rows], None, knitter.UNKNOWN))
        for rows in yarns.values()
    ]
    return [(one, line) for one, line in found if line and line.sure and not line.scattered]


def between(shelf: Shelf, kept: Kept) -> Iterable[Knitted]:
    """Return each yarn with a line at the mark that suits the ball on a cylinder, if untried."""
    ball = shelf.wearer.measures["ball_girth"].value
    for like, line in shelf.lines:
        wanted = sources.BALL_STRETCH_WANTED + shelf.wearer.closer
        found = line.mark_for_stitches(kept.slots * wanted / ball)
        mark = nearest(found[0] * 4) / 4 if found else line.low
        if line.low < mark < line.high and all(point.mark != mark for point in line.points):
            stitches, rounds, _ = line.at(mark)
            told = {
                "stitches": _rate(stitches, shelf.system),
                "rounds": _rate(rounds, shelf.system),
            }
            group = {**like.choose, **told}
            cloth = fabric.read(Fields(group, "", shelf.system), knitter=shelf.knitter)
            if cloth is not None:
                between_two = say.mark_between(mark=units.mark(mark))
                yield Knitted(like.yarn, like.name, between_two, cloth, group)


def _rate(per_mm: float, system: System) -> str:
    return str(units.per_length(per_mm, system)["text"])


def rank(shelf: Shelf) -> list[Tried]:
    """Return every sock the shelf could make, best first; of alike ones, those without a lack."""
    tried = [
        Tried(kept, knitted, shelf.wearer.weigh(kept.slots, knitted.cloth))
        for kept in shelf.cylinders
        for knitted in (*shelf.fabrics, *between(shelf, kept))
    ]
    return sorted(
        tried,
        key=lambda one: (one.weighed.standing, lacks_ribber(shelf, one.kept), one.weighed.score),
    )


def chosen(kept: Kept, knitted: Knitted, shelf: Shelf) -> dict[str, Any]:
    """Return the groups of a request that adopt a cylinder and a yarn."""
    return {"cylinder": {"slots": kept.slots}, "fabric": knitted.choose, **shelf.adopt}


def made_of(shelf: Shelf, tried: Tried) -> Sock | None:
    """Return the sock of a cylinder and a yarn, None where it cannot be knitted."""
    try:
        return plan.make({**shelf.request, **chosen(tried.kept, tried.knitted, shelf)})
    except Refused:
        return None


def lacks_ribber(shelf: Shelf, kept: Kept) -> bool:
    """Return whether the cuff is ribbed, which this cylinder is told to have no ribber for."""
    return shelf.wearer.cuff.ribbed and kept.ribber is False
