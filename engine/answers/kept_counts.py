"""Counts as they are kept with a pair, and beside them what the same request counts by now.

What was knitted stays as it was knitted, whatever a newer version of this calculator would count;
`engine.VERSION` says which one counted. Where the two differ, both are told and what moved.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine import VERSION
from engine.answers import card
from engine.sections.section import TITLES
from engine.sock.sock import Sock


def write(sock: Sock, request: Mapping[str, Any]) -> dict[str, Any]:
    """Return what is kept of a sock planned from `request`.

    `engine` is the version that counted, `figures` the counts by part as text, `facts` what they
    were counted for: cylinder, yarn, fabric and length, as words of that day.
    """
    slots = {"name": "Cylinder", "text": f"{sock.cylinder.slots} slots"}
    return {
        "engine": VERSION,
        "figures": _figures(sock),
        "facts": [slots, *(fact for fact in card.facts(sock, request) if fact["text"])],
    }


def again(sock: Sock, kept: object) -> dict[str, Any]:
    """Return how a sock as it is counted now differs from what `write` gave some time ago.

    `moved` has the `title`, what it was `then` and is `now`, for each part that differs; a part
    that was not kept is not compared.
    """
    before = kept.get("figures") if isinstance(kept, Mapping) else None
    then = before if isinstance(before, Mapping) else {}
    moved = [
        {"title": TITLES[piece.part], "then": str(then[piece.part]), "now": piece.figure}
        for piece in sock.pieces
        if piece.part in then and str(then[piece.part]) != piece.figure
    ]
    return {"engine": VERSION, "moved": moved, "words": _words(moved, kept)}


def _figures(sock: Sock) -> dict[str, str]:
    return {piece.part: piece.figure for piece in sock.pieces}


def _words(moved: list[dict[str, str]], kept: object) -> str:
    if not moved:
        return ""
    told = [f"{one['title'].lower()} {one['now']}, not {one['then']}" for one in moved]
    version = kept.get("engine") if isinstance(kept, Mapping) else None
    since = f" since version {version}" if isinstance(version, str) and version != VERSION else ""
    return (
        f"The calculator counts this otherwise{since}: {'; '.join(told)}. "
        "What was knitted stays as it was."
    )
