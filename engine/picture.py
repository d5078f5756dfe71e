"""The sock drawn to scale from the side, with its sections and counts on it, as SVG.

One unit of the drawing is 1 mm of the relaxed sock lying flat. The leg stands on the heel, the foot
runs to the right. Seen from the side the heel is the corner between the last leg round and the
first foot round; its seam runs from the back of the heel towards the middle of the sock.

The drawing carries classes and no colours: the page's style sheet gives line, fill and type
(`sock`, `part`, `part-cuff` ... `part-toe`, `seam`, `fold`, `hatch`, `count`, `name`, `measure`,
`measure-line`).
"""

from __future__ import annotations

from engine import units
from engine.cuff import Cuff
from engine.sock import Sock

_MARGIN_LEFT, _MARGIN_TOP, _MARGIN_RIGHT, _MARGIN_BOTTOM = 52.0, 12.0, 14.0, 40.0
_BIG, _SMALL = 0.09, 0.05  # sizes of type over the length of the sock's foot
_DIGITS_WIDE = 2.2  # what a count needs beside it, in sizes of type


def _n(value: float) -> str:
    return units.number(value, 1)


def _path(kind: str, d: str) -> str:
    return f'<path class="{kind}" d="{d}"/>'


def _text(kind: str, x: float, y: float, words: str, size: float, anchor: str = "middle") -> str:
    return (
        f'<text class="{kind}" x="{_n(x)}" y="{_n(y)}" font-size="{_n(size)}" '
        f'text-anchor="{anchor}">{words}</text>'
    )


class _Outline:
    """Where the parts of a sock lie: x to the right, y downwards, the sole on y = `sole`."""

    def __init__(self, sock: Sock) -> None:
        """Place every part of `sock`."""
        c = sock.fabric.rounds
        self.width = sock.tube / 2
        self.top = _MARGIN_TOP
        self.fold = self.top + sock.cuff_depth
        self.ankle = self.fold + sock.leg_length
        self.sole = self.ankle + sock.heel_height
        self.back = _MARGIN_LEFT
        self.front = self.back + self.width
        self.heel_end = self.back + sock.heel.each_way / c
        self.toe_start = self.heel_end + sock.foot_rounds / c
        self.tip = self.toe_start + sock.toe.each_way / c
        # In a very short sock the toe's upper edge still starts in front of the leg.
        self.toe_top = max(self.toe_start, self.front + 1)
        # A sock with hardly a leg is drawn a little low at the instep, to stay below its cuff.
        self.instep = max(min(self.sole - self.width, self.ankle), self.fold)
        self.half = (self.sole + self.instep) / 2
        self.middle = ((self.back + self.front) / 2, self.half)
        self.big, self.small = (share * (self.tip - self.back) for share in (_BIG, _SMALL))


def draw(sock: Sock) -> str:
    """Return the drawing of a sock as one `<svg>` element, sized by its `viewBox` in mm."""
    at = _Outline(sock)
    width, height = at.tip + _MARGIN_RIGHT, at.sole + _MARGIN_BOTTOM
    shapes = [*_shapes(at), *_hatch(at, sock.cuff), *_names(at, sock), *_measures(at, sock)]
    title = (
        f"The sock from the side: cuff {sock.cuff.rounds} rounds, leg {sock.leg_rounds}, "
        f"heel {sock.heel.rows} rows, foot {sock.foot_rounds} rounds, toe {sock.toe.rows} rows."
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="sock" role="img" '
        f'viewBox="0 0 {_n(width)} {_n(height)}"><title>{title}</title>{"".join(shapes)}</svg>'
    )


def _shapes(at: _Outline) -> list[str]:
    mid_x, mid_y = _n(at.middle[0]), _n(at.middle[1])
    back, front, sole = _n(at.back), _n(at.front), _n(at.sole)
    fold, ankle, instep = _n(at.fold), _n(at.ankle), _n(at.instep)
    heel_end, toe_start, tip = _n(at.heel_end), _n(at.toe_start), _n(at.tip)
    toe_top = _n(at.toe_top)
    corner = min(at.heel_end - at.back, at.sole - at.ankle) * 0.45
    nose = (at.tip - at.toe_start) * 0.9
    return [
        _path("part part-cuff", f"M{back} {_n(at.top)}H{front}V{fold}H{back}Z"),
        _path(
            "part part-leg",
            f"M{back} {fold}H{front}V{instep}L{mid_x} {mid_y}L{back} {ankle}Z",
        ),
        _path(
            "part part-heel",
            f"M{back} {ankle}L{mid_x} {mid_y}L{heel_end} {sole}H{_n(at.back + corner)}"
            f"Q{back} {sole} {back} {_n(at.sole - corner)}Z",
        ),
        _path(
            "part part-foot",
            f"M{front} {instep}H{toe_top}L{toe_start} {sole}H{heel_end}L{mid_x} {mid_y}Z",
        ),
        _path(
            "part part-toe",
            f"M{toe_top} {instep}Q{_n(max(at.toe_start + nose, at.toe_top))} {instep} {tip} "
            f"{mid_y}"
            f"Q{_n(at.toe_start + nose)} {sole} {toe_start} {sole}Z",
        ),
        _seam((at.back + corner * 0.3, at.sole - corner * 0.3), at.middle),
        _seam((at.tip, at.half), ((at.toe_start + at.toe_top) / 2, at.half)),
    ]


def _seam(start: tuple[float, float], end: tuple[float, float]) -> str:
    """Return a seam of short rows, open in the middle where the count stands."""
    x, y = start
    across, down = end[0] - x, end[1] - y
    ends = "".join(
        f"M{_n(x + across * a)} {_n(y + down * a)}L{_n(x + across * b)} {_n(y + down * b)}"
        for a, b in ((0.0, 0.22), (0.8, 1.0))
    )
    return _path("seam", ends)


def _hatch(at: _Outline, cuff: Cuff) -> list[str]:
    """Return strokes that tell the cuffs apart without colour: a fold, a close or a wide rib."""
    if cuff.kind == "hem":
        inside = _n(at.fold - (at.fold - at.top) * 0.12)
        return [_path("fold", f"M{_n(at.back)} {inside}H{_n(at.front)}")]
    count = 16 if cuff.kind == "rib" else 8
    step = at.width / count
    top, fold = _n(at.top), _n(at.fold)
    strokes = "".join(f"M{_n(at.back + step * i)} {top}V{fold}" for i in range(1, count))
    return [_path("hatch", strokes)]


def _names(at: _Outline, sock: Sock) -> list[str]:
    across = (at.back + at.front) / 2
    foot_x, foot_y = (at.middle[0] * 0.45 + at.toe_start * 0.55), at.half
    if at.toe_start - at.middle[0] < _DIGITS_WIDE * at.big:  # no room: above the instep instead
        foot_x, foot_y = at.front + at.big * 1.2, at.instep - at.big
    # The cuff is shallow: its name and count stand on one line.
    words = f"cuff {sock.cuff.rounds}"
    found = [_text("count", across, (at.top + at.fold + at.small) / 2, words, at.small * 1.1)]
    for x, y, name, count in (
        (across, (at.fold + at.ankle) / 2 - at.small / 2, "leg", sock.leg_rounds),
        ((at.back + at.heel_end) / 2, (at.ankle + at.sole) / 2, "heel", sock.heel.rows),
        (foot_x, foot_y, "foot", sock.foot_rounds),
        ((at.toe_start + at.toe_top) * 0.28 + at.tip * 0.44, at.half, "toe", sock.toe.rows),
    ):
        if not count:
            continue
        found.append(_text("count", x, y + at.big * 0.15, str(count), at.big))
        found.append(_text("name", x, y + at.big * 0.2 + at.small, name, at.small))
    return found


def _measures(at: _Outline, sock: Sock) -> list[str]:
    below, left = at.sole + 12, at.back - 12
    tick = 4.0
    foot = units.length_text(sock.foot_length, sock.system)
    height = units.length_text(sock.top_above_floor, sock.system)
    middle = (at.top + at.sole) / 2
    return [
        _path(
            "measure-line",
            f"M{_n(at.back)} {_n(below - tick)}V{_n(below + tick)}M{_n(at.back)} {_n(below)}"
            f"H{_n(at.tip)}M{_n(at.tip)} {_n(below - tick)}V{_n(below + tick)}",
        ),
        _text("measure", (at.back + at.tip) / 2, below + 5 + at.small, foot, at.small * 1.2),
        _path(
            "measure-line",
            f"M{_n(left - tick)} {_n(at.top)}H{_n(left + tick)}M{_n(left)} {_n(at.top)}"
            f"V{_n(at.sole)}M{_n(left - tick)} {_n(at.sole)}H{_n(left + tick)}",
        ),
        f'<text class="measure" font-size="{_n(at.small * 1.2)}" text-anchor="middle" '
        f'transform="translate({_n(left - 8)} {_n(middle)}) rotate(-90)">{height}</text>',
    ]
