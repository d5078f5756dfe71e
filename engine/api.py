"""The one door: a plain dict in, a plain dict out. The page, the terminal and the tests use it.

A call names what it wants in `do`:

- `plan` with `request`: the answer of `sheet.write`; where `operations` is true also these, the
  whole sock as data for a machine or another program, as `steps.operations`.
- `page` with `request`: `{"plan": ..., "picture": svg, "link": text, "counts_link": text}`, all a
  screen needs; its rows by their numbers alone. `counts_link` holds the same counts and nothing of
  the person (None where it cannot), `counts_link_words` tells what else it lacks. The record of the
  knitter is in neither, but in `link_with_record` and `counts_link_with_record` where there is one.
  `counted` is what is kept of it with the pair, as `counted.write`.
- `pencil` with `request`: the sock as far as it is told, what is not told being usual, as
  `pencil.write`.
- `again` with `request` and the `counted` of its `page` or `knit` from some time ago: what is
  counted otherwise by now, as `counted.again`.
- `used` with `request` and `shelf`: what the sock took off the shelf, as `used.write`.
- `knit` with `request`: one sock as the counter at the machine follows it, the answer of
  `at_machine.write`; with a `first_sock` in the request, sock two.
- `card` with `request` and `text`, the address of its counts: what a card to knit from says, as
  `card.write`.
- `tag` with `request` and `text`, the address of the page: what goes with the finished pair, as
  `tag.write`; of a pair that has no counts it says nothing of them.
- `off_sheet` with `sheet` and `units`: a measuring sheet that came back, as
  `measuring_sheet.write`.
- `code` with `text`: a link as a code to scan, as `qr_code.draw`.
- `foot` with `request`: the `measures` and `notes` of a plan, as far as the foot alone tells.
- `chart` with `request` and `chart` (see `chart.read`): a table over sizes, as `chart.write`.
- `set` with `request` and `set` (see `instructions.answer.read`): the plan's instructions over
  sizes, to publish, as `instructions.answer.write`.
- `adopt` with `request` and `set` as before, and `reader` (see `adopted.read`): the plan of one who
  knits from them, as `adopted.write`.
- `shelf` with `request` and `shelf` (see `shelf.read`): cylinders, yarns and marks, ranked.
- `record` with `pairs` that are finished: how they came out, as `knitted_record.write`.
- `knitter` with `request` and `pairs` that are finished: what they taught of her for this plan, as
  `finished_pairs.write`.
- `open` with `link`: `{"request": ...}`, what a link holds, and the counts `sent` with it, as its
  sender's phone counted them.
- `fields`: the name and the kind of every field of a request, as `field_list.write`.
- `read` with `fields` (dotted name: text) and `units`: lengths and weights read while being typed,
  before there is enough for a plan, as `{"readings": {name: quantity}, "errors": [...]}`.

Whatever comes in, the door answers: with the above or with `{"errors": [...]}`. It never raises. An
error has `field`, `message` and `way_out`; all but `plan` add `offers`, texts that would mend it.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

from engine.answers import (
    anonymous,
    at_machine,
    card,
    chart,
    code,
    field_list,
    finished_pairs,
    kept_counts,
    knitted_record,
    link,
    measuring_sheet,
    pencil,
    sent_counts,
    sheet,
    shelf_sheet,
    steps,
    tag,
    yarn_used,
)
from engine.drawing import picture, progress
from engine.drawing.outline import Outline
from engine.fabric import swatch, yarn_at_hand
from engine.instructions import adopted
from engine.instructions import answer as instructions
from engine.judge import fit, shelf
from engine.people import foot
from engine.people.measures import MEASURES
from engine.read import errors, plain_json, units
from engine.read.errors import Problem, Refused
from engine.read.fields import Fields
from engine.read.plain_json import NotJson
from engine.say import messages as say
from engine.sections import cuff, leg
from engine.sock import first_sock, plan, wanted
from engine.sock import pencil as in_pencil
from engine.sock.sock import Sock

_NOT_A_CALL = Problem("", say.not_a_call(), say.send_one_object())


def _pencil(call: Mapping[str, Any]) -> dict[str, Any]:
    sock, told = in_pencil.make(call.get("request"))
    return {**pencil.write(sock, told), "picture": picture.bare(Outline(sock), sock, knitted=False)}


def _worn(request: Mapping[str, Any], sock: Sock) -> list[fit.Place]:
    """Return the fit at every place; at none where nothing is said of whose foot it is."""
    return sheet.places(sock) if anonymous.personal(request) else []


def _plan(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    found = sheet.write(sock, _worn(call["request"], sock))
    return {**found, "operations": steps.operations(sock)} if call.get("operations") else found


def _page(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    request: Mapping[str, Any] = call["request"]
    bare, worn = anonymous.of(request, sock), _worn(request, sock)
    at = Outline(sock)
    counts = sent_counts.pack(sock)

    def sent(request: Mapping[str, Any]) -> str:
        return link.write(request, counts)

    with_record = sent(request) if sock.fabric.knitter.pairs else None
    return {
        "plan": sheet.write(sock, worn, rows_in_words=False),
        "picture": picture.draw(at, sock, worn),
        "bare": picture.bare(at, sock),
        "link": sent(anonymous.without_record(request)),
        "counts_link": bare.request and sent(anonymous.without_record(bare.request)),
        "link_with_record": with_record,
        "counts_link_with_record": with_record and bare.request and sent(bare.request),
        "counts_link_words": bare.words or "",
        "counted": kept_counts.write(sock, request),
    }


def _knit(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    kept = kept_counts.write(sock, call["request"])
    return {**at_machine.write(sock), "drawing": progress.write(sock), "counted": kept}


def _again(call: Mapping[str, Any]) -> dict[str, Any]:
    return kept_counts.again(plan.make(call.get("request")), call.get("counted"))


def _used(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    return yarn_used.write(sock, call["request"], call.get("shelf"))


def _card(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    written = card.write(sock, call["request"], _text(call, "text"))
    return {**written, "drawing": picture.bare(Outline(sock), sock)}


def _tag(call: Mapping[str, Any]) -> dict[str, Any]:
    try:
        sock = plan.make(call.get("request"))
    except Refused:
        return tag.without_counts()
    written = tag.write(sock, call["request"], _text(call, "text"))
    return {**written, "drawing": picture.bare(Outline(sock), sock)}


def _code(call: Mapping[str, Any]) -> dict[str, Any]:
    return code.draw(_text(call, "text"))


def _text(call: Mapping[str, Any], name: str) -> str:
    text = call.get(name)
    return text if isinstance(text, str) else ""


def _foot(call: Mapping[str, Any]) -> dict[str, Any]:
    request = call.get("request")
    system, measures, notes = wanted.foot_alone(request if isinstance(request, Mapping) else {})
    return {
        "measures": sheet.measures(measures, system),
        "notes": [{"field": field, "text": text} for field, text in notes],
    }


def _chart(call: Mapping[str, Any]) -> dict[str, Any]:
    sock = plan.make(call.get("request"))
    wanted = Fields({"chart": call.get("chart")}, system=sock.system)
    return chart.write(chart.read(wanted.part("chart"), sock))


def _set(call: Mapping[str, Any]) -> dict[str, Any]:
    pattern = instructions.read(call.get("request"), call.get("set"))
    return instructions.write(pattern, call["request"], call.get("set") or {})


def _adopt(call: Mapping[str, Any]) -> dict[str, Any]:
    pattern = instructions.read(call.get("request"), call.get("set"))
    return adopted.write(pattern, call["request"], call.get("reader"))


def _shelf(call: Mapping[str, Any]) -> dict[str, Any]:
    return shelf_sheet.write(shelf.read(call.get("request"), call.get("shelf")))


def _record(call: Mapping[str, Any]) -> dict[str, Any]:
    return knitted_record.write(call.get("pairs"))


def _knitter(call: Mapping[str, Any]) -> dict[str, Any]:
    return finished_pairs.write(call.get("request"), call.get("pairs"))


def _open(call: Mapping[str, Any]) -> dict[str, Any]:
    return link.read(_text(call, "link"))


# Every length of a request, by its dotted name.
_LENGTHS = {
    **{
        f"{group}.{name}": one.span
        for group in ("foot", "foot.again", "other_foot", "other_foot.again")
        for name, one in MEASURES.items()
    },
    **{f"{one}.toe_breadth": foot.TOE_BREADTH for one in ("foot", "other_foot")},
    "person.height": foot.STATURE,
    **{f"fabric.swatch.{name}": span for name, span in swatch.LENGTHS.items()},
    "sock.foot_length_of_sock": wanted.SOCK_LENGTH,
    "sock.leg.height": leg.HEIGHT,
    **{f"sock.cuff.{name}": span for name, span in cuff.WIDTHS.items()},
    **{f"first_sock.{name}": span for name, span in first_sock.LENGTHS.items()},
}


_YARN = {f"stock.{name}": span for name, span in yarn_at_hand.LENGTHS.items()}
_WEIGHTS = {
    **{f"stock.{name}": span for name, span in yarn_at_hand.WEIGHTS.items()},
    **{f"fabric.swatch.{name}": span for name, span in swatch.WEIGHTS.items()},
}


def _read(call: Mapping[str, Any]) -> dict[str, Any]:
    raw, system = call.get("fields"), call.get("units")
    fields = Fields(
        raw if isinstance(raw, Mapping) else {}, system="in" if system == "in" else "cm"
    )
    fields.only((*_LENGTHS, *_YARN, *_WEIGHTS))
    lengths = {name: fields.length(name, span, asked=False) for name, span in _LENGTHS.items()}
    yarns = {name: fields.yarn(name, span) for name, span in _YARN.items()}
    weights = {name: fields.grams(name, span) for name, span in _WEIGHTS.items()}
    shown = {
        **{name: units.length(mm, fields.system) for name, mm in _told(lengths)},
        **{name: units.yarn_length(mm, fields.system, 1) for name, mm in _told(yarns)},
        **{name: units.weight(g, 2) for name, g in _told(weights)},
    }
    return {
        "readings": shown,
        "errors": errors.shown(fields.problems, with_offers=True),
    }


def _fields(_call: Mapping[str, Any]) -> dict[str, Any]:
    return field_list.write((*_LENGTHS, *_YARN, *_WEIGHTS))


def _told(found: Mapping[str, float | None]) -> list[tuple[str, float]]:
    return [(name, value) for name, value in found.items() if value is not None]


_DOORS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "plan": _plan,
    "page": _page,
    "pencil": _pencil,
    "knit": _knit,
    "again": _again,
    "used": _used,
    "card": _card,
    "tag": _tag,
    "off_sheet": measuring_sheet.write,
    "code": _code,
    "foot": _foot,
    "chart": _chart,
    "set": _set,
    "adopt": _adopt,
    "shelf": _shelf,
    "record": _record,
    "knitter": _knitter,
    "open": _open,
    "fields": _fields,
    "read": _read,
}


def answer(call: object) -> dict[str, Any]:
    """Return the answer to one call; problems come back as `{"errors": [...]}`."""
    try:
        if not isinstance(call, Mapping) or not isinstance(call.get("do"), str):
            raise Refused([_NOT_A_CALL])
        door = _DOORS.get(call["do"])
        if door is None:
            known = say.known(names=tuple(_DOORS))
            raise Refused([Problem("do", say.no_such_door(), known)])
        return door(call)
    except Refused as refused:
        of_page = isinstance(call, Mapping) and call.get("do") != "plan"
        return refused.as_dict(with_offers=of_page)


def read_json(text: str) -> Any:
    """Return the JSON value of a text, or raise `Refused`."""
    try:
        return plain_json.read(text)
    except NotJson:
        raise Refused([_NOT_A_CALL]) from None


def answer_text(text: str) -> str:
    """Return the answer to one call, both as JSON text."""
    try:
        result = answer(read_json(text))
    except Refused as refused:
        result = refused.as_dict()
    return json.dumps(result, ensure_ascii=False, separators=(",", ":"))
