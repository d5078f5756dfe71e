"""How the courses of a sock lie when it is seen from the side; its outline is their ends.

The leg stands on the heel, the foot lies to the right, the sole on y = 0; one unit is 1 mm of the
relaxed sock lying flat. Heights, lengths and girths are the sections' own sizes, so whatever a
section adds is drawn. How edges are rounded, where a leg passes into its foot and how far courses
sag is our choice.

The heel is two wedges of rows, along one seam from the middle of the sock to the heel's point: each
row ends on it, as far in as the row is wide. A toe is the same on the sole and over the toes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cached_property
from itertools import accumulate
from math import cos, pi, sin
from typing import NamedTuple

from engine import sources
from engine.drawing.course import Course, Line, curve, through
from engine.sections.section import Courses, Part, Section, Size
from engine.sock.sock import Sock

_LEG = (0.0, 0.3, 0.55, 0.75, 0.88, 1.0)  # where courses are taken: closer where it bends
_WEDGE = (0.0, 0.25, 0.5, 0.75, 1.0)
_TUBE = (0.0, 0.5, 1.0)
_DRAWN_UP = 20.0  # at least so much of the foot is drawn as its toe, in mm
_SCRAP = 14.0  # how much of the waste yarn is drawn, in mm
CLEAR = 6.0  # half a band and the air beside it
_DIGITS_WIDE = 2.2  # what a count needs beside it, in sizes of type
_BIG, _SMALL = 0.09, 0.05  # sizes of type over the length of the sock's foot


class Laid(NamedTuple):
    """A section, or one half of a pocket, as it lies: its course at each share of it.

    `cuts` are the shares where its edges bend, `widths` how wide its courses are.
    """

    section: Section
    part: Part
    look: str
    widths: tuple[float, ...]
    cuts: tuple[float, ...]
    course: Callable[[float], Course]

    def courses(self, upto: float = 1.0) -> list[Course]:
        """Return its courses where its edges bend, as far as a share of it."""
        return [self.course(cut * upto) for cut in self.cuts]


class Outline:
    """Where the parts of a sock lie."""

    def __init__(self, sock: Sock) -> None:
        """Place every section of `sock`."""
        sizes = list(zip(sock.sections, sock.sizes, strict=True))
        cloth = sock.fabric
        self.pitch = 1 / cloth.rounds
        self.foot = sock.tube / 2
        legs = [(one, size) for one, size in sizes if one.part == "leg" and one.counted]
        self.cuff = next(size.girth for one, size in sizes if one.part == "cuff" and one.counted)
        self._knots = _knots([(size.height, size.girth / 2) for _, size in legs], self.cuff / 2)
        self.ankle = self._knots[-1][1]
        self.deep, self.long_leg, self.high = sock.cuff_depth, sock.leg_length, sock.heel_height
        self.flat = sum(size.sole for one, size in sizes if one.part == "heel")
        along = sum(size.sole for one, size in sizes if one.part in ("foot", "before_toe"))
        self.tip = self.flat + along + sum(size.sole for one, size in sizes if one.part == "toe")
        # Where nothing is added to the foot, its own last rounds are drawn up.
        self.toe = min(self.flat + along, self.tip - _DRAWN_UP)
        self.top = -(self.high + self.long_leg + self.deep)
        self.fold = self.top + self.deep
        # A leg of hardly a round bends to the instep at once, and its cuff with it.
        self._begins = max(0.0, 1 - self.long_leg / self.foot)
        self._edges()
        self.left = min(
            0.0, (self.ankle - self.cuff / 2) / 2, *(self.edge(u)[0].real for u in _LEG)
        )
        self.big, self.small = (share * self.tip for share in (_BIG, _SMALL))
        # The middle of the ball, where its band lies.
        self.ball = max(min(sources.BALL_OVER_FOOT * self.tip, self.toe - CLEAR), self.flat)
        # In a foot of hardly a round its count stands above the instep instead.
        self.foot_narrow = self.ball - self.middle.real < _DIGITS_WIDE * self.big
        self.laid = tuple(self._lay(sock, legs))

    def _edges(self) -> None:
        """Set the edges of leg, heel, foot and toe, and the middle where they meet."""
        foot, ankle, high, flat = self.foot, self.ankle, self.high, self.flat
        room = max(2.0, (self.toe - ankle) * 0.8)
        r = min(0.5 * foot, max(0.12 * foot, self.long_leg * 0.5), room)
        self.bend = -foot - r  # where the front begins to turn into the instep
        self.front = min(self.top, self.bend - self.deep)  # a footie's rim slants
        heel = curve(
            complex(0, -high), complex(0, -0.4 * high), complex(0.4 * flat, 0), complex(flat, 0), 12
        )
        self.heel = heel
        self.middle = complex(ankle / 2, -0.36 * (foot + high))
        self.back = Line([self.edge(u)[0] for u in _LEG])
        self.sole = Line([complex(flat, 0), complex(self.toe, 0)])
        straight = self.toe > ankle + r + 1
        arc = [
            complex(ankle + r - r * cos(a * pi / 12), self.bend + r * sin(a * pi / 12))
            for a in range(7)
        ]
        corner = arc[3] if straight else complex(min(arc[3].real, self.toe - 1), arc[3].imag)
        upper = arc[:4] if straight else [arc[0], corner]
        self.shin = Line([*(self.edge(u)[1] for u in _LEG[:-1]), *upper])
        end = complex(self.toe, -foot)
        self.instep = Line([*arc[3:], end] if straight else [corner, end])

    def width(self, u: float) -> float:
        """Return how wide the leg lies at a share of its height, from its cuff down."""
        (at, wide), *rest = self._knots
        for to, other in rest:
            if u <= to:
                share = (u - at) / (to - at) if to > at else 1.0
                return wide + (other - wide) * share
            at, wide = to, other
        return wide

    def edge(self, u: float) -> tuple[complex, complex]:
        """Return the back and the front edge at a share of the leg's height."""
        wide = self.width(u)
        left = (self.ankle - wide) / 2
        fore = self.front + self.deep
        return (
            complex(left, self.fold + self.long_leg * u),
            complex(left + wide, fore + (self.bend - fore) * u),
        )

    def across(self, y: float) -> tuple[float, float]:
        """Return where the back and the front edge of the leg are at a height."""
        fore = self.front + self.deep
        back = self.edge(max(0.0, min((y - self.fold) / (self.long_leg or 1.0), 1.0)))[0]
        front = self.edge(max(0.0, min((y - fore) / (self.bend - fore or 1.0), 1.0)))[1]
        return back.real, front.real

    def _leg(self, t: float) -> Course:
        one, other = self.back.at(t), self.shin.at(_bent(t, self.shin.long, self.back.long))
        middle = (one + other) / 2 + 0.022j * self.ankle
        bent = (self._begins + (1 - self._begins) * t) ** 2.2
        return through(one, middle + (self.middle - middle) * bent, other)

    def _foot(self, t: float) -> Course:
        one = self.sole.at(t)
        other = self.instep.at(1 - _bent(1 - t, self.instep.long, self.sole.long))
        middle = (one + other) / 2
        return through(one, middle + (self.middle - middle) * (1 - t) ** 2.2, other)

    def _cuff(self, t: float) -> Course:
        wide = self.cuff / 2 + (self.width(0.0) - self.cuff / 2) * t**3
        left, down = (self.ankle - wide) / 2, 1j * self.deep * t
        one = complex(left, self.top) + down
        other = complex(left + wide, self.front) + down
        return through(one, (one + other) / 2 + self._bow * (0.6 + 0.4 * t), other)

    @cached_property
    def _bow(self) -> complex:
        """Return how far the leg's first course sags."""
        under = self._leg(0.0)
        return under.at(0.5) - (under.start + under.end) / 2

    def _scrap(self, t: float) -> Course:
        up = -1j * _SCRAP * (1 - t)
        return Course(*(place + up for place in self._cuff(0.0)))

    def _past_toe(self, t: float) -> Course:
        half, x = 0.3 * self.foot, self.tip + 2 + _SCRAP * t
        one, other = complex(x, half - self.foot / 2), complex(x, -half - self.foot / 2)
        return through(one, (one + other) / 2 + 3, other)

    def _bare(self, widths: Sequence[float]) -> Callable[[float], Course]:
        """Return the courses of a toe that narrows round the whole tube."""
        long, last, half = self.tip - self.toe, len(widths) - 1, self.foot / 2

        def course(t: float) -> Course:
            i = min(int(t * last), last - 1)
            wide = half * (widths[i] + (widths[i + 1] - widths[i]) * (t * last - i))
            x, axis = self.toe + long * t, complex(0, -half)
            one, other = x + axis + 1j * wide, x + axis - 1j * wide
            return through(one, (one + other) / 2 + 0.04 * half * t, other)

        return course

    def _lay(self, sock: Sock, legs: Sequence[tuple[Section, Size]]) -> Iterator[Laid]:
        """Yield every section that is drawn, in the order of knitting."""
        heights = {
            id(one): size.height for one, size in zip(sock.sections, sock.sizes, strict=True)
        }
        leg_at = list(accumulate((heights[id(one)] for one, _ in legs), initial=0.0))
        spans = {
            id(one): (low / self.long_leg, high / self.long_leg) if self.long_leg else (0.0, 1.0)
            for (one, _), low, high in zip(legs, leg_at, leg_at[1:], strict=False)
        }
        foot_all = sum(one.rounds for one in sock.sections if one.part in ("foot", "before_toe"))
        knitted = 0
        for section in sock.sections:
            made = section.courses()
            # Between its cuff and its heel a leg of no round is cloth all the same.
            if not made.widths and not (section.counted and section.part in ("leg", "foot")):
                continue
            match section.part:
                case "waste":
                    yield _whole(section, made, _TUBE, self._scrap)
                case "cuff":
                    yield _whole(section, made, _TUBE, self._cuff)
                case "leg":
                    low, high = spans[id(section)]
                    yield _whole(section, made, _LEG, _within(self._leg, low, high))
                case "foot" | "before_toe":
                    low, high = (
                        done / max(1, foot_all) for done in (knitted, knitted + section.rounds)
                    )
                    knitted += section.rounds
                    cuts = tuple(1 - cut for cut in reversed(_LEG))
                    yield _whole(section, made, cuts, _within(self._foot, low, high))
                case "heel":
                    first, then = self._leg(1.0).halves()[0], self._foot(0.0).halves()[0]
                    yield from self._wedges(section, made, self.heel, self.heel, (first, then))
                case "toe":
                    if made.turn:
                        yield from self._toe(section, made)
                    else:
                        yield _whole(section, made, _WEDGE, self._bare(made.widths))
                case "finish" | "between":
                    yield _whole(section, made, _TUBE, self._past_toe)
                case "end":  # rounds over the toes, which make nothing longer
                    continue

    def _toe(self, section: Section, made: Courses) -> Iterator[Laid]:
        """Yield a toe of short rows."""
        end, long, foot = self.toe, self.tip - self.toe, self.foot
        tip = complex(self.tip, -0.42 * foot)
        sole = curve(
            complex(end, 0), complex(end + 0.64 * long, 0), complex(self.tip, -0.1 * foot), tip, 8
        )
        over = curve(
            tip,
            complex(self.tip, -0.72 * foot),
            complex(end + 0.54 * long, -foot),
            complex(end, -foot),
            8,
        )
        half = complex(end, -foot / 2)
        first = through(complex(end, 0), complex(end, -foot / 4), half)
        then = through(complex(end, -foot), complex(end, -0.75 * foot), half)
        yield from self._wedges(section, made, sole, over, (first, then))

    def _wedges(
        self, section: Section, made: Courses, one: Line, other: Line, ends: tuple[Course, Course]
    ) -> Iterator[Laid]:
        """Yield the two halves of a pocket, along its seam.

        `one` and `other` are the edges of its halves: the same line for a heel, which turns in its
        middle. `ends` are its first course and its last.
        """
        halves = one is other
        first, last = ends
        corner = one.at(0.5) if halves else one.at(1.0)
        narrow, widen = made.widths[: made.turn], made.widths[made.turn :]
        for widths, edge, whole, back in (
            (narrow, one, first, False),
            (widen[::-1], other, last, True),
        ):
            seam = _seam(widths, whole.end, corner, self.pitch)
            bow = whole.bend - (whole.start + whole.end) / 2
            course = _fan(edge, seam, bow, halves=halves, back=back)
            knitted = widths[::-1] if back else widths
            yield Laid(section, section.part, made.look, knitted, _WEDGE, course)


def _fan(
    edge: Line, seam: Line, bow: complex, *, halves: bool, back: bool
) -> Callable[[float], Course]:
    """Return the courses between an edge and a seam; `back` where they are knitted towards it."""

    def course(t: float) -> Course:
        outer = edge.at((t + back) / 2 if halves else t)
        far = 1 - t if back else t  # from the whole course to the seam's end
        inner = seam.at(far)
        return Course(outer, (outer + inner) / 2 + bow * (1 - far) ** 2, inner)

    return course


def _seam(widths: Sequence[float], start: complex, corner: complex, pitch: float) -> Line:
    """Return the line on which the rows of a half end, one piece for each row.

    A row whose ends draw in is longer on the seam: it is the hypotenuse of that and its height.
    """
    reach = abs(corner - start)
    end = corner + (start - corner) * max(min(widths), 0.12)
    steps = [
        abs(complex((one - other) * reach, pitch))
        for one, other in zip(widths, [*widths[1:], widths[-1]], strict=True)
    ]
    whole = sum(steps)
    return Line([start + (end - start) * (far / whole) for far in accumulate(steps, initial=0.0)])


def _whole(
    section: Section, made: Courses, cuts: tuple[float, ...], course: Callable[[float], Course]
) -> Laid:
    return Laid(section, section.part, made.look, made.widths, cuts, course)


def _within(
    course: Callable[[float], Course], low: float, high: float
) -> Callable[[float], Course]:
    """Return the courses from a share of some to another."""
    return lambda t: course(low + (high - low) * t)


def _bent(u: float, short: float, long: float) -> float:
    """Return the share along the shorter of two edges: as far where both are straight."""
    if long <= short or not short:
        return u
    power = max(1.0, min(2.4, 0.75 * long / (long - short)))
    share: float = (u * long - (long - short) * u**power) / short
    return max(0.0, share)


def _knots(bands: Sequence[tuple[float, float]], cuff: float) -> list[tuple[float, float]]:
    """Return how wide a leg of (height, width) bands is, at shares of its height.

    Cloth passes from one width to the next: a band has its own in its middle, the leg's last one
    its own down to the heel.
    """
    whole = sum(high for high, _ in bands)
    if not whole:
        return [(0.0, bands[-1][1]), (1.0, bands[-1][1])]
    found, run = [(0.0, (cuff + bands[0][1]) / 2), (0.12, bands[0][1])], 0.0
    for high, wide in bands:
        middle = (run + high / 2) / whole
        if middle > found[-1][0] and len(bands) > 1:
            found.append((middle, wide))
        run += high
    return [*found, (1.0, bands[-1][1])]
