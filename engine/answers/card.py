"""A card to knit a pair from on paper: the counts, boxes to tick every ten rounds, and their code.

Boxes are numbered by the round or row they end with; the last one ends the part. Where this is sock
two, its boxes stand alone, for sock one is knitted. The code is that of the link without the
person, which is anybody's to scan.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import anonymous, code, leg_sheet
from engine.read import units
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES
from engine.sections.string import AFTER_CORD, BEFORE_CORD, Between
from engine.sock.sock import Piece, Sock

EVERY = 10  # rounds or rows a box


def write(sock: Sock, request: Mapping[str, Any], address: str) -> dict[str, Any]:
    """Return the card of a sock that was planned from `request`.

    `address` opens its counts ("" where nothing can); `code` is None where that makes no code, and
    then `code_words` say why.
    """
    return {
        "title": say.card_title(
            socks="pair" if sock.knitted_rounds is None else "second", slots=sock.cylinder.slots
        ),
        "socks": ["1", "2"] if sock.knitted_rounds is None else ["2"],
        "parts": _parts(sock),
        "bands": [*map(_band, leg_sheet.write(sock)["bands"]), *_between(sock)],
        "facts": facts(sock, request),
        "code": code.on_paper(address),
        "code_words": code.missing(address, anonymous.of(request, sock).words) or "",
    }


def _band(band: dict[str, Any]) -> Message:
    """Return how the screw is set from a round of the leg on."""
    first, mark = band["from_round"], band["mark"]
    if mark is None:
        return say.card_band_stitch(first=first, gauge=band["stitches"]["text"])
    return say.card_band(first=first, mark=units.mark(mark))


def _between(sock: Sock) -> list[Message]:
    """Return the rounds of scrap after a sock that another one follows."""
    if not isinstance(sock.sections[-1], Between):
        return []
    return [say.string_on_a_card(before=BEFORE_CORD, after=AFTER_CORD)]


def _parts(sock: Sock) -> list[dict[str, Any]]:
    return [_part(sock, piece) for piece in sock.pieces]


def _part(sock: Sock, piece: Piece) -> dict[str, Any]:
    rounds = piece.count
    words: dict[str, Message] = {
        "cuff": say.card_rounds(rounds=rounds, words=sock.cuff.words),
        "leg": say.card_rounds(rounds=rounds, words=leg_sheet.kind(sock)),
        "foot": say.card_foot(rounds=rounds),
        "before_toe": say.card_rounds(rounds=rounds, words=say.rounds_before_toe()),
        "end": say.card_end(rounds=rounds),
        **{part: _turned(pocket) for part, pocket in sock.pockets.items()},
    }
    if not isinstance(sock.toe, Pocket):
        words["toe"] = say.card_rounds(rounds=rounds, words=sock.toe.manner)
    return {
        "title": TITLES[piece.part],
        "figure": piece.figure,
        "words": leg_sheet.in_colors(sock, piece.part, words[piece.part]),
        "boxes": _boxes(piece.count),
    }


def _turned(pocket: Pocket) -> Message:
    rows = {"down": pocket.narrowing, "back": pocket.widening}
    if pocket.manner:
        return say.card_pocket_so(**rows, manner=pocket.manner)
    return say.card_pocket(**rows)


def _boxes(count: int) -> list[int]:
    return [*range(EVERY, count, EVERY), *([count] if count else [])]


def facts(sock: Sock, request: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Return what the card says of yarn and fabric; "" is left to be written in by hand."""
    told = request.get("fabric") or {}
    cloth, system = sock.fabric, sock.system
    stitches, rounds = (
        units.per_length(count, system)["text"] for count in (cloth.stitches, cloth.rounds)
    )
    across, _, _ = stitches.partition(" / ")
    mark = "" if cloth.mark is None else units.mark(cloth.mark)
    whose = sock.origin
    return [
        {"name": say.fact(name="yarn"), "text": _yarn(told)},
        {"name": say.fact(name="tension"), "text": say.at_mark(mark=mark) if mark else ""},
        {"name": say.fact(name="gauge"), "text": f"{across} × {rounds}"},
        {"name": say.fact(name="foot"), "text": units.length_text(sock.foot_length, system)},
        *([{"name": say.fact(name="origin"), "text": whose.words}] if whose else []),
    ]


def _yarn(told: Mapping[str, Any]) -> Message | str:
    """Return the yarn as it was typed, since that is how the knitter knows it."""
    number, strands, along = (
        str(told.get(name) or "").strip() for name in ("yarn", "strands", "along")
    )
    if not number:
        return ""
    one = say.strands_of(strands=strands, yarn=number) if strands not in ("", "1") else number
    return say.with_along(yarn=one, along=along) if along else one
