"""Counts as they are kept with a pair, and beside them what the same request counts by now.

What was knitted stays as it was knitted, whatever a newer version of this calculator would count;
`engine.VERSION` says which one counted. Where the two differ, both are told and what moved.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine import VERSION
from engine.answers import card
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.section import TITLES
from engine.sock.sock import Sock


def write(sock: Sock, request: Mapping[str, Any]) -> dict[str, Any]:
    """Return what is kept of a sock planned from `request`.

    `engine` is the version that counted, `figures` the counts by part as text, `facts` what they
    were counted for: cylinder, yarn, fabric and length, as words of that day.
    """
    slots = {
        "name": say.fact(name="cylinder"),
        "text": say.so_many_slots(slots=sock.cylinder.slots),
    }
    return {
        "engine": VERSION,
        "figures": _figures(sock),
        "facts": [slots, *(fact for fact in card.facts(sock, request) if fact["text"])],
    }


def again(sock: Sock, kept: object) -> dict[str, Any]:
    """Return how a sock as it is counted now differs from what `write` gave some time ago.

    `moved` has the `part` and its `title`, what it was `then` and is `now`, for each part that
    differs; a part that was not kept is not compared.
    """
    before = kept.get("figures") if isinstance(kept, Mapping) else None
    then = before if isinstance(before, Mapping) else {}
    moved = [
        {
            "part": piece.part,
            "title": TITLES[piece.part],
            "then": str(then[piece.part]),
            "now": piece.figure,
        }
        for piece in sock.pieces
        if piece.part in then and str(then[piece.part]) != piece.figure
    ]
    return {"engine": VERSION, "moved": moved, "words": _words(moved, kept) or ""}


def _figures(sock: Sock) -> dict[str, str]:
    """Return what is counted; a toe for which nothing is knitted at the machine has no figure."""
    return {one.part: one.figure for one in sock.pieces if one.count or one.part != "toe"}


def _words(moved: list[dict[str, Any]], kept: object) -> Message | None:
    if not moved:
        return None
    told = tuple(
        say.part_moved(part=one["part"], now=one["now"], before=one["then"]) for one in moved
    )
    version = kept.get("engine") if isinstance(kept, Mapping) else None
    if isinstance(version, str) and version != VERSION:
        return say.counts_moved_since(version=version, moved=told)
    return say.counts_moved(moved=told)
