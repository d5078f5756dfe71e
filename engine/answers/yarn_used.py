"""What a finished sock took off the shelf, of each yarn whose weight is told there.

Only the main yarn is taken; what is in another color, and waste yarn, are not. The weight of sock
one where she has it, else stitches times loop length times the yarn's number (`supply`).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import yarn_sheet
from engine.judge import shelf
from engine.read import units
from engine.read.errors import Refused
from engine.read.fields import Fields
from engine.sock.sock import Sock


def write(sock: Sock, request: Mapping[str, Any], kept: object) -> dict[str, Any]:
    """Return what a sock took, and each yarn of the shelf before and after it.

    `takes` is a weight; a yarn has its `row` on the shelf (from 0), `name`, what is `left`, the
    text to write there `after` it, and whether it is `likely` the one: of the number the sock was
    planned with. Raises `Refused` where the shelf cannot be read.
    """
    takes = yarn_sheet.takes(sock).grams
    fields = Fields({"shelf": kept}, system=sock.system)
    number = _plain((request.get("fabric") or {}).get("yarn"))
    yarns = []
    for row, one in enumerate(fields.part("shelf").parts("yarns", shelf.MOST_YARNS)):
        left = shelf.grams_left(one)
        if left is not None:
            yarns.append(
                {
                    "row": row,
                    "name": shelf.named(one, row),
                    "left": units.weight(left),
                    "after": _after(left - takes),
                    "likely": bool(number) and number == _plain(one.raw.get("yarn")),
                }
            )
    if fields.problems:
        raise Refused(fields.problems)
    return {"takes": units.weight(takes), "yarns": yarns}


def _after(grams: float) -> str:
    """Return what stays of a yarn as one would write it; where all of it went, nothing stays."""
    return str(units.weight(grams)["text"]) if grams > 0.5 else "0 g"


def _plain(number: object) -> str:
    """Return a yarn's number as she wrote it, but for how it is spaced."""
    return "".join(str(number or "").casefold().split())
