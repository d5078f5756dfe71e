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
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES
from engine.sock.sock import Piece, Sock

EVERY = 10  # rounds or rows a box


def write(sock: Sock, request: Mapping[str, Any], address: str) -> dict[str, Any]:
    """Return the card of a sock that was planned from `request`.

    `address` opens its counts ("" where nothing can); `code` is None where that makes no code, and
    then `code_words` say why.
    """
    return {
        "title": f"{'A pair' if sock.knitted_rounds is None else 'Sock two'} on "
        f"{sock.cylinder.slots} slots",
        "socks": ["1", "2"] if sock.knitted_rounds is None else ["2"],
        "parts": _parts(sock),
        "bands": [
            f"Rounds {band['from_round']} to {band['to_round']}: {band['words']}"
            for band in leg_sheet.write(sock)["bands"]
        ],
        "facts": facts(sock, request),
        "code": code.on_paper(address),
        "code_words": code.missing(address, anonymous.of(request, sock).words),
    }


def _parts(sock: Sock) -> list[dict[str, Any]]:
    return [_part(sock, piece) for piece in sock.pieces]


def _part(sock: Sock, piece: Piece) -> dict[str, Any]:
    unit = piece.unit[:-1] if piece.count == 1 else piece.unit
    words: dict[str, str] = {
        "cuff": f"{unit}, {sock.cuff.words}",
        "leg": f"{unit}, {leg_sheet.kind(sock)}",
        "foot": f"{unit}, from heel to toe",
        "end": f"{unit}, before the waste yarn",
        **{part: _turned(pocket) for part, pocket in sock.pockets.items()},
    }
    return {
        "title": TITLES[piece.part],
        "figure": piece.figure,
        "words": words[piece.part],
        "boxes": _boxes(piece.count),
    }


def _turned(pocket: Pocket) -> str:
    manner = f"; {pocket.manner}" if pocket.manner else ""
    return f"needles, {pocket.narrowing} rows down and {pocket.widening} back{manner}"


def _boxes(count: int) -> list[int]:
    return [*range(EVERY, count, EVERY), *([count] if count else [])]


def facts(sock: Sock, request: Mapping[str, Any]) -> list[dict[str, str]]:
    """Return what the card says of yarn and fabric; "" is left to be written in by hand."""
    told = request.get("fabric") or {}
    cloth, system = sock.fabric, sock.system
    stitches, rounds = (
        units.per_length(count, system)["text"] for count in (cloth.stitches, cloth.rounds)
    )
    across, _, _ = stitches.partition(" / ")
    mark = "" if cloth.mark is None else units.mark(cloth.mark)
    return [
        {"name": "Yarn", "text": _yarn(told)},
        {"name": "Tension", "text": f"mark {mark}" if mark else ""},
        {"name": "Stitches × rounds", "text": f"{across} × {rounds}"},
        {"name": "Sock’s foot", "text": units.length_text(sock.foot_length, system)},
    ]


def _yarn(told: Mapping[str, Any]) -> str:
    """Return the yarn as it was told, since that is how she knows it."""
    number, strands, along = (
        str(told.get(name) or "").strip() for name in ("yarn", "strands", "along")
    )
    if not number:
        return ""
    several = f"{strands} × " if strands not in ("", "1") else ""
    return f"{several}{number}{f', with {along}' if along else ''}"
