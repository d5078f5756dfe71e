"""The sock from the side with a letter at each measure; a table says what they are in each size.

The drawing is that of a middle size: the others have its shape. Measures lie beside the sock, each
with its letter on the far side of it, so that no letter touches a line; letters above one another
keep apart.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from engine.drawing import picture
from engine.drawing.cloth import n
from engine.drawing.outline import Outline
from engine.instructions.blocks import Block
from engine.read import units
from engine.say import messages as say
from engine.sock.sock import Sock

Letter = Literal["A", "B", "C", "D", "E", "F"]
_AIR, _TICK, _LARGEST = 8.0, 3.0, 24.0  # mm around the sock, for lines and for letters
_BESIDE = 0.55  # from a line's ticks to the middle of its letter, in sizes of type
MEASURES: dict[Letter, Callable[[Sock], float]] = {
    "A": lambda sock: sock.foot_length,
    "B": lambda sock: sock.tube,
    "C": lambda sock: sock.top_above_floor,
    "D": lambda sock: sock.cuff_depth,
    "E": lambda sock: sock.leg_length,
    "F": lambda sock: sock.heel_height,
}
LETTERS = tuple(MEASURES)


def letters(sock: Sock) -> tuple[Letter, ...]:
    """Return the letters that this kind of sock has: one without a heel has no heel's height."""
    return LETTERS if sock.heel_girth is not None else LETTERS[:-1]


def texts(sock: Sock) -> list[str]:
    """Return its measures in the maker's units, in the order of `letters`."""
    return [units.length_text(MEASURES[one](sock), sock.system) for one in letters(sock)]


def draw(sock: Sock) -> Block:
    """Return the drawing of a sock, x to the right and y downwards in mm."""
    at = Outline(sock)
    size = min(at.big, _LARGEST)
    beside = _TICK + _BESIDE * size
    of_leg = [(at.top, at.fold), (at.fold, -at.high), (-at.high, 0.0)][: len(letters(sock)) - 3]
    middles = _apart([(one + other) / 2 for one, other in of_leg], 1.2 * size)
    highest = min(at.top, at.front, middles[0] - size / 2)
    by = complex(3 * _AIR + 3 * beside + size / 2 - at.left, _AIR - highest)
    back, sole = by.real, by.imag
    tip, top = at.tip + by.real, at.top + by.imag
    instep, low = sole - at.foot, sole + 2 * _AIR
    near = at.left + by.real - _AIR
    far = near - 2 * beside - _AIR
    fore = tip + _AIR
    lines = [
        (_along(back, tip, low), ((back + tip) / 2, low + size)),
        (_upright(fore, instep, sole), (fore + beside, (sole + instep) / 2)),
        (_upright(far, top, sole), (far - beside, (top + sole) / 2)),
        *(
            (_upright(near, one + sole, other + sole), (near - beside, middle + sole))
            for (one, other), middle in zip(of_leg, middles, strict=True)
        ),
    ]
    return {
        "kind": "schematic",
        "text": say.set_schematic(),
        "width": round(fore + beside + size / 2 + _AIR, 1),
        "height": round(max(low + size, middles[-1] + sole) + size / 2 + _AIR, 1),
        "letter_height": round(size, 1),
        "paths": [
            *({"kind": "part", "d": d} for _, d in picture.parts(at, by)),
            *({"kind": "measure", "d": d} for d, _ in lines),
        ],
        "letters": [
            {"letter": letter, "x": round(x, 1), "y": round(y, 1)}
            for letter, (_, (x, y)) in zip(letters(sock), lines, strict=True)
        ],
    }


def _apart(places: Sequence[float], least: float) -> list[float]:
    """Return where letters stand above one another: at their places, `least` apart from the next.

    Those that are too close are moved by the same, up and down.
    """
    groups: list[list[float]] = []
    for place in places:
        groups.append([place])
        while len(groups) > 1 and _first(groups[-1], least) < _last(groups[-2], least) + least:
            groups[-2:] = [groups[-2] + groups[-1]]
    return [_first(group, least) + at * least for group in groups for at in range(len(group))]


def _first(group: Sequence[float], least: float) -> float:
    return sum(group) / len(group) - (len(group) - 1) / 2 * least


def _last(group: Sequence[float], least: float) -> float:
    return _first(group, least) + (len(group) - 1) * least


def _along(start: float, end: float, y: float) -> str:
    ticks = "".join(f"M{n(x)} {n(y - _TICK)}V{n(y + _TICK)}" for x in (start, end))
    return f"M{n(start)} {n(y)}H{n(end)}{ticks}"


def _upright(x: float, top: float, low: float) -> str:
    ticks = "".join(f"M{n(x - _TICK)} {n(y)}H{n(x + _TICK)}" for y in (top, low))
    return f"M{n(x)} {n(top)}V{n(low)}{ticks}"
