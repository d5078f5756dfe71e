"""The sock as the counter fills it: its courses, so that a phone can draw it up to any of them."""

from __future__ import annotations

from typing import Any

from engine.drawing.outline import Outline
from engine.sock.sock import Sock

_AIR = 4.0


def write(sock: Sock, *, scrap: bool = True) -> dict[str, Any]:
    """Return the `box` (left, top, width, height) and `cloth`, all in whole mm.

    `cloth` has the pieces in the order of knitting: their `part`, how many `rows` they have,
    whether they are drawn in `dashes`, and `courses`, each the six numbers of a quadratic Bezier.
    Without `scrap` there is only what is worn.
    """
    laid = [one for one in Outline(sock).laid if scrap or one.section.counted]
    places = [place for one in laid for course in one.courses() for place in course]
    left, top = (min(getattr(one, axis) for one in places) - _AIR for axis in ("real", "imag"))
    right, foot = (max(getattr(one, axis) for one in places) + _AIR for axis in ("real", "imag"))
    return {
        "box": [round(left), round(top), round(right - left), round(foot - top)],
        "cloth": [
            {
                "part": one.part,
                "rows": len(one.widths),
                "dashes": one.look == "dashes",
                "courses": [
                    [round(at) for place in course for at in (place.real, place.imag)]
                    for course in one.courses()
                ],
            }
            for one in laid
        ],
    }
