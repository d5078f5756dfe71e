"""The sock drawn to scale from the side, with its sections and counts on it, as SVG.

One unit of the drawing is 1 mm of the relaxed sock lying flat. The leg stands on the heel, the foot
runs to the right. Seen from the side the heel is the corner between the last leg round and the
first foot round; its seam runs from the back of the heel towards the middle of the sock.

The drawing carries classes and no colours: the page's style sheet gives line, fill and type
(`sock`, `part`, `part-cuff` ... `part-toe`, `seam`, `fold`, `hatch`, `count`, `name`, `outside` for
words beside the sock, `measure`, `measure-line`, and those of `bands`).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from engine.drawing import bands
from engine.drawing.outline import Box, Outline, n, path, text
from engine.judge.fit import Place
from engine.read import units
from engine.sections.section import Part
from engine.sock.sock import Sock

_MARGIN_BOTTOM = 40.0
_KEY = "The denser a band, the tighter."


def draw(sock: Sock, places: Sequence[Place]) -> str:
    """Return the drawing of a sock as one `<svg>` element, sized by its `viewBox` in mm.

    `places` is its fit, as `sheet.places` gives it.
    """
    at = Outline(sock)
    worn = bands.find(at, sock, places)
    lines, over = bands.beside(at, worn)
    if over > 0:
        at = Outline(sock, over)
        worn = bands.find(at, sock, places)
        lines, _ = bands.beside(at, worn)
    height = at.sole + _MARGIN_BOTTOM + (bands.room_below(at) + 1.5 * at.small if worn else 0)
    shapes = [
        *_shapes(at),
        *_strokes(at, sock),
        *(path(f"stretch stretch-{bands.density(place)}", d) for place, _, d in worn),
        *_names(at, sock, [y for place, y, _ in worn if place.place in ("ankle", "calf")]),
        *lines,
        *bands.below(at, worn),
        *_measures(at, sock, bands.room_below(at) if worn else 0),
    ]
    if worn:
        shapes.append(text("worn", at.right / 2, height - at.small * 0.6, _KEY, at.small))
    told = ", ".join(f"{bands.percent(place)} {bands.verdict(place)}" for place, _, _ in worn)
    count = {piece.part: piece.count for piece in sock.pieces}
    title = (
        f"The sock from the side: cuff {count['cuff']} rounds, leg {count['leg']}, "
        f"heel {count['heel']} rows, foot {count['foot']} rounds, toe {count['toe']} rows."
        f"{f' Stretch when worn: {told}.' if told else ''}"
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="sock" role="img" '
        f'viewBox="0 0 {n(at.right)} {n(height)}"><title>{title}</title>{"".join(shapes)}</svg>'
    )


def _shapes(at: Outline) -> list[str]:
    mid_x, mid_y = n(at.middle[0]), n(at.middle[1])
    back, front, sole = n(at.back), n(at.front), n(at.sole)
    fold, ankle, instep = n(at.fold), n(at.ankle), n(at.instep)
    heel_end, toe_start, tip = n(at.heel_end), n(at.toe_start), n(at.tip)
    toe_top = n(at.toe_top)
    corner = at.corner
    nose = (at.tip - at.toe_start) * 0.9
    return [
        path("part part-cuff", f"M{back} {n(at.top)}H{front}V{fold}H{back}Z"),
        path(
            "part part-leg",
            f"M{back} {fold}H{front}V{instep}L{mid_x} {mid_y}L{back} {ankle}Z",
        ),
        path(
            "part part-heel",
            f"M{back} {ankle}L{mid_x} {mid_y}L{heel_end} {sole}H{n(at.back + corner)}"
            f"Q{back} {sole} {back} {n(at.sole - corner)}Z",
        ),
        path(
            "part part-foot",
            f"M{front} {instep}H{toe_top}L{toe_start} {sole}H{heel_end}L{mid_x} {mid_y}Z",
        ),
        path(
            "part part-toe",
            f"M{toe_top} {instep}Q{n(max(at.toe_start + nose, at.toe_top))} {instep} {tip} "
            f"{mid_y}"
            f"Q{n(at.toe_start + nose)} {sole} {toe_start} {sole}Z",
        ),
    ]


def _strokes(at: Outline, sock: Sock) -> list[str]:
    """Return the strokes of every section, each laid in its own box."""
    return [
        path(stroke.kind, "".join(_line(box, *line) for line in stroke.lines))
        for section in sock.sections
        if (box := at.box(section.part))
        for stroke in section.strokes()
    ]


def _line(box: Box, start: tuple[float, float], end: tuple[float, float]) -> str:
    (x, y), (to_x, to_y) = box(*start), box(*end)
    if n(y) == n(to_y):
        return f"M{n(x)} {n(y)}H{n(to_x)}"
    if n(x) == n(to_x):
        return f"M{n(x)} {n(y)}V{n(to_y)}"
    return f"M{n(x)} {n(y)}L{n(to_x)} {n(to_y)}"


def _names(at: Outline, sock: Sock, crossed: list[float]) -> list[str]:
    """Return counts and names of the parts, that of the leg clear of its crossing bands."""
    across = (at.back + at.front) / 2
    edges = [at.fold, *sorted(crossed), min(at.ankle, at.half - at.small)]
    upper, lower = max(pairwise(edges), key=lambda gap: gap[1] - gap[0])
    foot_x, foot_y = (at.middle[0] * 0.45 + at.ball * 0.55), at.half
    outside = " outside" if at.foot_narrow else ""
    if outside:
        foot_x, foot_y = at.front + at.big * 1.7, at.instep - at.big
    # The cuff is shallow: its name and count stand on one line.
    counts = {piece.part: piece.count for piece in sock.pieces}
    words = f"cuff {counts['cuff']}"
    found = [text("count", across, (at.top + at.fold + at.small) / 2, words, at.small * 1.1)]
    places: dict[Part, tuple[float, float]] = {
        "leg": (across, (upper + lower) / 2 - at.small / 2),
        "heel": ((at.back + at.heel_end) / 2, (at.ankle + at.sole) / 2),
        "foot": (foot_x, foot_y),
        "toe": ((at.toe_start + at.toe_top) * 0.28 + at.tip * 0.44, at.half),
    }
    for name, (x, y) in places.items():
        count = counts[name]
        if not count:
            continue
        kind = outside if name == "foot" else ""
        found.append(text(f"count{kind}", x, y + at.big * 0.15, str(count), at.big))
        found.append(text(f"name{kind}", x, y + at.big * 0.2 + at.small, name, at.small))
    return found


def _measures(at: Outline, sock: Sock, lowered: float) -> list[str]:
    below, left = at.sole + 12 + lowered, at.back - 12
    tick = 4.0
    foot = units.length_text(sock.foot_length, sock.system)
    height = units.length_text(sock.top_above_floor, sock.system)
    middle = (at.top + at.sole) / 2
    return [
        path(
            "measure-line",
            f"M{n(at.back)} {n(below - tick)}V{n(below + tick)}M{n(at.back)} {n(below)}"
            f"H{n(at.tip)}M{n(at.tip)} {n(below - tick)}V{n(below + tick)}",
        ),
        text("measure", (at.back + at.tip) / 2, below + 5 + at.small, foot, at.small * 1.2),
        path(
            "measure-line",
            f"M{n(left - tick)} {n(at.top)}H{n(left + tick)}M{n(left)} {n(at.top)}"
            f"V{n(at.sole)}M{n(left - tick)} {n(at.sole)}H{n(left + tick)}",
        ),
        f'<text class="measure" font-size="{n(at.small * 1.2)}" text-anchor="middle" '
        f'transform="translate({n(left - 8)} {n(middle)}) rotate(-90)">{height}</text>',
    ]
