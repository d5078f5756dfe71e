"""The ledger: what the swatches and socks of one yarn on one cylinder say together.

At one mark, stitches and rounds per mm are means by the inverse variances of their relative errors.

Over two or more marks, the yarn in one stitch is taken as a line l = a + k x mark, by least squares
with the weights 1 / sd^2 (A. C. Aitken 1935, Proc. R. Soc. Edinburgh 55, 42). The errors are known,
so the covariance is (X' W X)^-1 and is not scaled by the scatter; scatter beyond the upper 1 %
point of chi-square is told instead. Plain knit relaxed has stitches x l = Kw, rounds x l = Kc
(Munden 1959); Kw and Kc are this yarn's own, means over its tubes.

One tube's l is sqrt(Ks / (stitches x rounds)). A larger loop moves both together, so l goes astray
by half the ruler's two errors and all of one tube against the next. Where every tube on the line
was weighed and the yarn's number is known, l = grams a stitch / tex if that is surer. Ks and tex
are the same for all tubes and drop out of what the line foretells.

The mark for a wanted stitch is the line turned round; its interval is Fieller's (E. C. Fieller
1954, J. R. Statist. Soc. B 16, 175): all marks at which l lies within t sd of the one wanted.

Limits: plain knit; a straight line only near the marks that were tried.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import hypot, sqrt
from typing import NamedTuple

from engine import sources
from engine.fabric.swatch import Swatch

_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP


class Mean(NamedTuple):
    """A mean by inverse variances of relative errors, its own, and the tubes' chi-square."""

    value: float
    sd: float
    chi_square: float
    tubes: int


def mean(seen: Sequence[tuple[float, float]]) -> Mean:
    """Return the mean of (value, relative sd)."""
    whole = sum(sd**-2 for _, sd in seen)
    value = sum(one * sd**-2 for one, sd in seen) / whole
    return Mean(
        value, 1 / sqrt(whole), sum(((one / value - 1) / sd) ** 2 for one, sd in seen), len(seen)
    )


def scattered(chi_square: float, free: int) -> bool:
    """Tell whether chi-square lies above its upper 1 % point, by Wilson and Hilferty (1931)."""
    if free < 1:
        return False
    part = 2 / (9 * free)
    return chi_square > free * (1 - part + sources.UPPER_1_PERCENT * sqrt(part)) ** 3


class Point(NamedTuple):
    """A tube on the line: its mark, its loop in mm and the absolute error of that."""

    mark: float
    loop: float
    sd: float


@dataclass(frozen=True)
class Line:
    """l = loop + slope x (mark - middle) in mm, `middle` the weighted mean of the marks.

    There the two are not correlated, so their variances are all there is to know. `wales` and
    `courses` are stitches and rounds per mm times l, `shape_sd` the relative error of both.
    """

    points: tuple[Point, ...]
    middle: float
    loop: float
    slope: float
    loop_sd: float
    slope_sd: float
    wales: float
    courses: float
    shape_sd: float

    @property
    def low(self) -> float:
        """Return the lowest mark that was tried."""
        return min(point.mark for point in self.points)

    @property
    def high(self) -> float:
        """Return the highest mark that was tried."""
        return max(point.mark for point in self.points)

    def off(self, point: Point) -> float:
        """Return how far a tube lies from the line, in its own standard deviations."""
        return (point.loop - self.loop_at(point.mark)[0]) / point.sd

    @property
    def scattered(self) -> bool:
        """Tell whether the tubes lie further from the line than their errors explain."""
        return scattered(sum(self.off(point) ** 2 for point in self.points), len(self.points) - 2)

    def loop_at(self, mark: float) -> tuple[float, float]:
        """Return the loop length in mm at a mark, and its standard deviation."""
        away = mark - self.middle
        return self.loop + self.slope * away, hypot(self.loop_sd, self.slope_sd * away)

    def at(self, mark: float) -> tuple[float, float, float]:
        """Return stitches and rounds per mm at a mark and their relative error.

        Nothing is surer than one tube is like the next. Raises `ValueError` where the line has
        no loop left.
        """
        loop, sd = self.loop_at(mark)
        if loop <= 0:
            raise ValueError("the line ends before this mark")
        error = max(hypot(sd / loop, self.shape_sd), float(sources.SOCK_TO_SWATCH))
        return self.wales / loop, self.courses / loop, error

    @property
    def sure(self) -> bool:
        """Tell whether the mark clearly moves the stitch (one-sided 1 %)."""
        return abs(self.slope) > sources.UPPER_1_PERCENT * self.slope_sd

    def near(self, mark: float) -> bool:
        """Tell whether a mark is no further out than the marks tried lie apart."""
        reach = self.high - self.low
        return self.low - reach <= mark <= self.high + reach

    def mark_for_stitches(self, stitches: float) -> tuple[float, float, float] | None:
        """Return the mark for stitches per mm with its 80 % interval, None if the line is unsure.

        The mark may lie far from those tried: ask `near`.
        """
        if not self.sure:
            return None
        wanted = self.wales / stitches
        own = wanted * self.shape_sd
        gap, t2 = wanted - self.loop, sources.TO_80_PERCENT**2
        # (gap - slope x)^2 = t2 (own^2 + loop_sd^2 + slope_sd^2 x^2), x counted from the middle
        square = self.slope**2 - t2 * self.slope_sd**2
        spread = t2 * (own**2 + self.loop_sd**2)
        root = sqrt(t2 * (self.slope_sd * gap) ** 2 + square * spread)
        ends = sorted((self.slope * gap + side * root) / square for side in (-1, 1))
        at = self.middle
        return at + gap / self.slope, at + ends[0], at + ends[1]


def line(tubes: Iterable[Swatch], tex: float | None) -> Line | None:
    """Return the line over the marks of tubes, None where fewer than two marks were tried."""
    on = [tube for tube in tubes if tube.mark is not None]
    if len({tube.mark for tube in on}) < 2:
        return None
    wholes = [whole(tube) for tube in on]
    loops = [(loop(w, c), hypot(w_tape, c_tape) / 2) for w, c, w_tape, c_tape in wholes]
    weighed = [(tube.grams / tex * 1e6, tube.grams_sd) for tube in on if tex and tube.grams]
    if len(weighed) == len(on) and (
        sum(sd**2 for _, sd in weighed) < sum(sd**2 for _, sd in loops)
    ):
        loops = weighed
    points = [
        Point(tube.mark or 0.0, mm, mm * hypot(sd, sources.SOCK_TO_SWATCH))
        for tube, (mm, sd) in zip(on, loops, strict=True)
    ]
    # One tube against the next moves l and leaves stitches x l as it is: there the ruler counts.
    products = [
        mean(
            [
                (one[side] * mm, hypot(*one[2:]) / 2)
                for one, (mm, _) in zip(wholes, loops, strict=True)
            ]
        )
        for side in (0, 1)
    ]
    wales, courses = products
    return Line(tuple(points), *_least_squares(points), wales.value, courses.value, wales.sd)


def _least_squares(points: Sequence[Point]) -> tuple[float, float, float, float, float]:
    """Return the middle, the loop there and the slope, and the standard deviations of the two."""
    weighed = [(point, point.sd**-2) for point in points]
    whole = sum(weight for _, weight in weighed)
    middle = sum(weight * point.mark for point, weight in weighed) / whole
    loop = sum(weight * point.loop for point, weight in weighed) / whole
    across = sum(weight * (point.mark - middle) ** 2 for point, weight in weighed)
    along = sum(weight * (point.mark - middle) * point.loop for point, weight in weighed)
    return middle, loop, along / across, whole**-0.5, across**-0.5


def loop(stitches: float, rounds: float) -> float:
    """Return the loop length in mm: sqrt(Ks / (stitches x rounds))."""
    return sqrt(sources.LOOPS_TIMES_LOOP_SQUARED / (stitches * rounds))


def whole(tube: Swatch) -> tuple[float, float, float, float]:
    """Return stitches, rounds and the ruler's errors; what is missing follows by the shape."""
    stitches, rounds = tube.stitches, tube.rounds
    w_tape, c_tape = tube.stitches_tape, tube.rounds_tape
    if stitches is None and rounds is not None:
        stitches, w_tape = rounds / _SHAPE, hypot(c_tape, sources.SHAPE_SD)
    elif rounds is None and stitches is not None:
        rounds, c_tape = stitches * _SHAPE, hypot(w_tape, sources.SHAPE_SD)
    if stitches is None or rounds is None:
        raise ValueError("a tube has stitches or rounds")
    return stitches, rounds, w_tape, c_tape
