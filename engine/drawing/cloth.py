"""The cloth of a section as paths: its area, its stitches, and what is drawn on it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from engine.drawing.course import Course, thinned, weights_at
from engine.drawing.outline import Laid
from engine.sections.section import Stroke

_PIECES = 3  # straight pieces of a row of stitches
# Their ends and middles, on any course.
_PLACES = tuple(weights_at(i / (2 * _PIECES)) for i in range(2 * _PIECES + 1))
_DEEP = 0.72  # of a row's height that a stitch is drawn


# One format for several figures takes less time than one for each.
_FIRST, _STITCH = "M%.1f %.1fl", "%.1f %.1f %.1f %.1f "
_FIGURE = re.compile(r"-?\d+\.\d")


def n(value: float) -> str:
    """Return a coordinate in mm, to 0.1 mm."""
    text = f"{value:.1f}"
    return text[:-2] if text.endswith(".0") else text


def p(place: complex) -> str:
    """Return a place as a path writes it."""
    x, y = n(place.real), n(place.imag)
    return x + y if y[0] == "-" else f"{x} {y}"


def whole(d: str) -> str:
    """Return a path in whole mm: it is for a small drawing, and to be short."""
    return _FIGURE.sub(lambda figure: str(round(float(figure[0]))), d)


def area(courses: Sequence[Course]) -> str:
    """Return the path round the cloth between the first of some courses and the last."""
    first, last = courses[0], courses[-1]
    starts = thinned([one.start for one in courses])
    ends = thinned([one.end for one in courses])
    return (
        f"M{p(first.start)}Q{p(first.bend)} {p(first.end)}{_rounded(ends)}"
        f"Q{p(last.bend)} {p(last.start)}{_rounded(starts[::-1]) if starts[2:] else ''}Z"
    )


def _rounded(corners: Sequence[complex]) -> str:
    """Return the way on from the first of some corners to the last, past those between."""
    if len(corners) == 2:
        return f"L{p(corners[1])}"
    found = list[str]()
    for here, after in pairwise(corners[1:]):
        to = after if after is corners[-1] else (here + after) / 2
        found.append(f"Q{p(here)} {p(to)}")
    return "".join(found)


def stitches(laid: Laid, seen: int, each: int) -> str:
    """Return rows of stitches, one for `each` rows, of as many at most as are `seen` across.

    A stitch points to the cuff, as loops do in what is knitted from the cuff down.
    """
    rows = len(laid.widths)
    count, found = max(1, round(rows / each)), list[str]()
    upper = laid.course(0.0).along(_PLACES)
    for row in range(count):
        under = laid.course((row + 1) / count).along(_PLACES)
        across = max(1, round(seen * laid.widths[row * rows // count] / each / _PIECES))
        rise = [(high - low) * _DEEP for high, low in zip(upper, under, strict=True)]
        ends = [low + up * 0.3 for low, up in zip(under[::2], rise[::2], strict=True)]
        for one, other, up in zip(ends, ends[1:], rise[1::2], strict=False):
            half = (other - one) / (2 * across)
            here, back = half + up, half - up
            stitch = _STITCH % (here.real, here.imag, back.real, back.imag)
            found.append(_FIRST % (one.real, one.imag) + stitch * across)
        upper = under
    return "".join(found)


def lines(laid: Sequence[Laid], stroke: Stroke) -> str:
    """Return the lines of a stroke on a section, which lies in one piece or in two halves."""

    def place(x: float, y: float) -> complex:
        at = min(int(y * len(laid)), len(laid) - 1)
        return laid[at].course(y * len(laid) - at).at(x)

    found = list[str]()
    for (x, y), (to_x, to_y) in stroke.lines:
        if y == to_y and abs(to_x - x) == 1:
            course = laid[0].course(y) if len(laid) == 1 else None
            if course:
                found.append(f"M{p(course.start)}Q{p(course.bend)} {p(course.end)}")
                continue
        ways = (0.0, 0.35, 0.7, 0.85, 1.0) if abs(to_y - y) > 0.3 else (0.0, 1.0)
        corners = thinned([place(x + (to_x - x) * w, y + (to_y - y) * w) for w in ways])
        found.append("M" + "L".join(p(corner) for corner in corners))
    return "".join(found)
