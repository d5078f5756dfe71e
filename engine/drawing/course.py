"""A course as it is drawn: the line of one round or row on the sock seen from the side.

It runs from the back or sole edge to the front or instep edge, or to a pocket's seam. A place is a
complex number, x + yj in mm; x runs to the right, y downwards.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

_FLAT = 0.2  # mm that a corner may stand off the line past it, to be left out


class Course(NamedTuple):
    """A curve (a quadratic Bezier) from `start` to `end`, drawn towards `bend`."""

    start: complex
    bend: complex
    end: complex

    def at(self, x: float) -> complex:
        """Return the place at a share of it."""
        a, b, c = weights_at(x)
        return a * self.start + b * self.bend + c * self.end

    def along(self, weights: Sequence[tuple[float, float, float]]) -> list[complex]:
        """Return the places whose `weights` are given, as `weights_at` has them."""
        start, bend, end = self
        return [a * start + b * bend + c * end for a, b, c in weights]

    def halves(self) -> tuple[Course, Course]:
        """Return its two halves."""
        one, other = (self.start + self.bend) / 2, (self.bend + self.end) / 2
        middle = (one + other) / 2
        return Course(self.start, one, middle), Course(middle, other, self.end)


def weights_at(x: float) -> tuple[float, float, float]:
    """Return how much the start, the bend and the end of a course count at a share of it."""
    left = 1 - x
    return left * left, 2 * x * left, x * x


def through(start: complex, middle: complex, end: complex) -> Course:
    """Return the course that passes `middle` halfway."""
    return Course(start, 2 * middle - (start + end) / 2, end)


class Line:
    """Corners joined by straight lines, that knows the place at a share of its length."""

    def __init__(self, corners: Sequence[complex]) -> None:
        """Measure it; there are two corners at least."""
        self.corners, far = corners, [0.0]
        for one, other in pairwise(corners):
            far.append(far[-1] + abs(other - one))
        self._far = far
        self.long = far[-1]

    def at(self, share: float) -> complex:
        """Return the place at a share of its length."""
        far, want = self._far, share * self.long
        i = min(bisect_left(far, want, 1), len(far) - 1)
        one, other = self.corners[i - 1], self.corners[i]
        step = far[i] - far[i - 1]
        return one + (other - one) * ((want - far[i - 1]) / step) if step else other


def curve(one: complex, by: complex, then: complex, other: complex, corners: int) -> Line:
    """Return a cubic Bezier as a line of so many pieces."""
    places = list[complex]()
    for i in range(corners + 1):
        t = i / corners
        left = 1 - t
        places.append(
            left**3 * one + 3 * left * left * t * by + 3 * left * t * t * then + t**3 * other
        )
    return Line(places)


def thinned(places: Sequence[complex]) -> list[complex]:
    """Return places without those that lie on the line past them."""
    kept = [places[0]]
    for here, after in pairwise(places[1:]):
        along = after - kept[-1]
        aside = ((here - kept[-1]) * along.conjugate()).imag
        if abs(aside) > _FLAT * abs(along):
            kept.append(here)
    return [*kept, places[-1]]
