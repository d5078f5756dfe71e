"""The ledger: what the swatches and socks of one yarn on one cylinder say together.

Over two or more marks, the yarn in one stitch is taken as a line l = a + k x mark, by least squares
with the weights 1 / sd^2 (A. C. Aitken 1935, Proc. R. Soc. Edinburgh 55, 42), sd as usual tubes
scatter. Her own scatter, learned as `certainty` does, then scales the covariance (X' W X)^-1;
scatter beyond the upper 1 % point of chi-square is told besides. Plain knit relaxed has stitches x
l = Kw, rounds x l = Kc (Munden 1959); Kw and Kc are this yarn's own, means over its tubes.

One tube's l is sqrt(Ks / (stitches x rounds)), so it goes astray by half the ruler's two errors. A
larger loop moves both together, but not alone: stitches and rounds of a tube are taken to scatter
with a correlation of a half, so log l has 3/4 of their variance and stitches x l 1/4. Where every
tube on the line was weighed and the yarn's number is known, l = grams a stitch / tex if that is
surer. Ks and tex are the same for all tubes and drop out of what the line foretells.

The mark for a wanted stitch is the line turned round; its interval is Fieller's (E. C. Fieller
1954, J. R. Statist. Soc. B 16, 175): all marks at which l lies within t sd of the one wanted.

Limits: plain knit; a straight line only near the marks that were tried.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp, hypot, log, sqrt
from typing import NamedTuple

from engine import sources
from engine.fabric import certainty
from engine.fabric.certainty import BEFORE, HABIT, Contrast, Foretold, Scatter
from engine.fabric.knitter import Knitter
from engine.fabric.swatch import Swatch

_SHAPE = sources.COURSES_TIMES_LOOP / sources.WALES_TIMES_LOOP
_OF_LOOP, _OF_SHAPE = 0.75, 0.25  # of a side's scatter, squared


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
    `scatter` is the knitter's, and moves the share `hanging` of the variances of l and of those.
    `swatches` are the weight of swatches (against socks) in loop, in slope and in shape, whose
    habit, of stitches and rounds alike, is known to the variance `unsure`.
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
    scatter: Scatter = BEFORE
    hanging: tuple[float, float] = (0.0, 0.0)
    swatches: tuple[float, float, float] = (1.0, 0.0, 1.0)
    unsure: float = HABIT

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
        """Return stitches and rounds per mm at a mark and the relative error of the next tube's.

        Raises `ValueError` where the line has no loop left.
        """
        foretold = self.foretold(mark)
        loop, _ = self.loop_at(mark)
        return self.wales / loop, self.courses / loop, foretold.sd()

    def foretold(self, mark: float) -> Foretold:
        """Return how well stitches or rounds are known at a mark; `ValueError` as above."""
        loop, sd = self.loop_at(mark)
        if loop <= 0:
            raise ValueError("the line ends before this mark")
        of_loop, of_shape = (sd / loop) ** 2, self.shape_sd**2
        by_loop, by_shape = self.hanging
        return Foretold(
            of_loop + of_shape + self.habit(mark),
            self.scatter.square,
            of_loop * by_loop + of_shape * by_shape,
            self.scatter.free,
        )

    def habit(self, mark: float) -> float:
        """Return the variance that the habit of all swatches adds at a mark."""
        in_loop, in_slope, in_shape = self.swatches
        return self.unsure / 2 * ((in_loop + in_slope * (mark - self.middle)) ** 2 + in_shape**2)

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
        known = self.foretold(self.middle)
        own = wanted * sqrt(known.doubt - (self.loop_sd / self.loop) ** 2)
        t = sources.TO_80_PERCENT * known.mean_sd / sqrt(known.doubt)
        gap, t2 = wanted - self.loop, t**2
        # (gap - slope x)^2 = t2 (own^2 + loop_sd^2 + slope_sd^2 x^2), x counted from the middle
        square = self.slope**2 - t2 * self.slope_sd**2
        spread = t2 * (own**2 + self.loop_sd**2)
        root = sqrt(t2 * (self.slope_sd * gap) ** 2 + square * spread)
        ends = sorted((self.slope * gap + side * root) / square for side in (-1, 1))
        at = self.middle
        return at + gap / self.slope, at + ends[0], at + ends[1]


def line(tubes: Iterable[Swatch], tex: float | None, knitter: Knitter) -> Line | None:
    """Return the line over the marks of tubes, None where fewer than two marks were tried.

    Swatches are taken as socks of this knitter.
    """
    on = [tube for tube in tubes if tube.mark is not None]
    if len({tube.mark for tube in on}) < 2:
        return None
    moves = [knitter.moves(tube) for tube in on]
    wholes = [_moved(whole(tube), move) for tube, move in zip(on, moves, strict=True)]
    loops = [(loop(w, c), hypot(w_tape, c_tape) / 2) for w, c, w_tape, c_tape in wholes]
    weighed = [
        (tube.grams / tex * 1e6 * exp(-sum(move) / 2), tube.grams_sd)
        for tube, move in zip(on, moves, strict=True)
        if tex and tube.grams
    ]
    if len(weighed) == len(on) and (
        sum(sd**2 for _, sd in weighed) < sum(sd**2 for _, sd in loops)
    ):
        loops = weighed
    points = [
        Point(tube.mark or 0.0, mm, mm * hypot(sd, sources.SOCK_TO_SWATCH))
        for tube, (mm, sd) in zip(on, loops, strict=True)
    ]
    tapes = [hypot(*one[2:]) / 2 for one in wholes]
    errors = [hypot(tape, sqrt(_OF_SHAPE) * sources.SOCK_TO_SWATCH) for tape in tapes]
    wales, courses = (
        mean([(one[side] * mm, sd) for one, (mm, _), sd in zip(wholes, loops, errors, strict=True)])
        for side in (0, 1)
    )
    least = _least_squares(points)
    _, prior = knitter.scatters
    scatter = certainty.learn(_contrasts(points, least, wholes, loops), prior)
    (of_loop, by_loop), (of_shape, by_shape) = (
        _scaled(scatter.square, part, sum(sd**2 for sd in read) / len(on), stated)
        for part, read, stated in (
            (_OF_LOOP, [sd for _, sd in loops], 1.0),
            (_OF_SHAPE, tapes, _OF_SHAPE),
        )
    )
    middle, at_middle, slope, loop_sd, slope_sd = least
    return Line(
        tuple(points),
        middle,
        at_middle,
        slope,
        loop_sd * of_loop,
        slope_sd * of_loop,
        wales.value,
        courses.value,
        wales.sd * of_shape,
        scatter,
        (by_loop, by_shape),
        _of_swatches(on, points, middle, errors),
        (knitter.across.unsure + knitter.along.unsure) / 2,
    )


def _moved(
    found: tuple[float, float, float, float], move: tuple[float, float]
) -> tuple[float, float, float, float]:
    """Return the `whole` of a tube as a sock's, by the logs that its two counts move."""
    stitches, rounds, w_tape, c_tape = found
    return stitches * exp(move[0]), rounds * exp(move[1]), w_tape, c_tape


def _scaled(square: float, part: float, read: float, stated: float) -> tuple[float, float]:
    """Return what her scatter makes of a stated sd, times, and its share in the variance then.

    `part` of her scatter's `square` counts, where `stated` of the usual one did, besides `read`.
    """
    own = part * square
    usual = stated * sources.SOCK_TO_SWATCH**2
    return sqrt((own + read) / (usual + read)), own / (own + read)


def _contrasts(
    points: Sequence[Point],
    least: tuple[float, ...],
    wholes: Sequence[tuple[float, float, float, float]],
    loops: Sequence[tuple[float, float]],
) -> list[Contrast]:
    """Return what tubes say of the scatter: by their loops about the line, and by their shapes."""
    n, (middle, at_middle, slope, *_) = len(points), least
    shapes = [log(c / w) / 2 for w, c, *_ in wholes]
    mean_shape = sum(shapes) / n
    square = sum((one - mean_shape) ** 2 for one in shapes) / (n - 1)
    read = sum(w**2 + c**2 for *_, w, c in wholes) / n / 4
    found = [Contrast(square, _OF_SHAPE, read, n - 1)]
    if n > 2:
        off = (one.loop - at_middle - slope * (one.mark - middle) for one in points)
        square = sum((mm / at_middle) ** 2 for mm in off) / (n - 2)
        found.append(Contrast(square, _OF_LOOP, sum(sd**2 for _, sd in loops) / n, n - 2))
    return found


def _of_swatches(
    tubes: Sequence[Swatch], points: Sequence[Point], middle: float, errors: Sequence[float]
) -> tuple[float, float, float]:
    """Return how far an error that all swatches share moves loop, slope and shape."""
    weighed = [
        (one.sd**-2, one.mark - middle, tube.kind == "swatch", sd**-2)
        for tube, one, sd in zip(tubes, points, errors, strict=True)
    ]
    whole, shape = sum(w for w, *_ in weighed), sum(w for *_, w in weighed)
    across = sum(w * away**2 for w, away, *_ in weighed)
    return (
        sum(w for w, _, swatch, _ in weighed if swatch) / whole,
        sum(w * away for w, away, swatch, _ in weighed if swatch) / across,
        sum(w for *_, swatch, w in weighed if swatch) / shape,
    )


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
