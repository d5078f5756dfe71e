"""A knitter's fabric: what her tubes, and what she told, say of the next sock.

Of each side (stitches, rounds) apart, in logarithms of the count per mm, tube i has

    y_i = v - habit [of a swatch] + e_i + reading_i

- v is her mean of this yarn at this mark, of socks; nothing is known of it beforehand but what was
  told, or follows from the yarn's number, with its own error.
- e_i ~ N(0, scatter^2), how one tube differs from the next: hers, the same for all her tubes, and
  beforehand scatter^2 ~ free s^2 / chi-square(free); of a knitter unknown s = `SCATTER_USUAL` and
  `free` = `SCATTER_WEIGHT`. Two tubes or more move it, one cannot.
- habit ~ N(h, `unsure`), shared by all her swatches: how her socks differ from them; of a knitter
  unknown h = 0 and `unsure` = `HABIT`. A swatch's reading is taken here as moved by h (`knitter`).
- reading_i: rule, miscounts, a wash not seen. Known, and of each tube its own.

From that, in closed form: scatter^2 from contrasts that v drops out of (what is left of tubes about
their mean, and the gaps between kinds), by three steps of Fisher's scoring on their gamma
likelihoods times the prior (run on, they come to the mode of prior x REML); each side lends the
other part of what it learned. v by generalized least squares (A. C. Aitken 1935, Proc. R. Soc.
Edinburgh 55, 42) at that scatter. The next sock differs from v by a tube's scatter again, so it
lies within t(dof) sqrt(doubt + scatter^2), with dof after F. E. Satterthwaite (1946), Biometrics
Bulletin 2, 110: only what hangs on the scatter is as unsure as that.

Limits: scatter taken as normal, tubes as independent (of one sitting they may be alike), both sides
as scattering alike but for what their own tubes say, as `swatch_line` takes them to go together.
The figures have no published source: see `sources`.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import NamedTuple

from engine.sources import SCATTER_USUAL, SCATTER_WEIGHT, SWATCH_HABIT, TO_80_PERCENT

HABIT = float(SWATCH_HABIT**2)
_USUAL, _WEIGHT = float(SCATTER_USUAL**2), float(SCATTER_WEIGHT)
# No published source: set so that what is stated holds over the knitters that the tests make up.
_LEAST = 0.004**2  # no knitter is surer than this
_STEPS = 3
_FAR_OUT = 9.0  # a contrast counts no more than three of its sd
_LENT, _LENT_MOST = 0.6, 3.0  # of what one side learned, how much the other takes as its own
# G. W. Hill's expansion of Student's t by the normal: Abramowitz and Stegun, 26.7.5
_Z = float(TO_80_PERCENT)
_G1 = (_Z**3 + _Z) / 4
_G2 = (5 * _Z**5 + 16 * _Z**3 + 3 * _Z) / 96
_G3 = (3 * _Z**7 + 19 * _Z**5 + 17 * _Z**3 - 15 * _Z) / 384
_G4 = (79 * _Z**9 + 776 * _Z**7 + 1482 * _Z**5 - 1920 * _Z**3 - 945 * _Z) / 92160


def t_90(free: float) -> float:
    """Return the 90th percentile of Student's t, to 0.002 from 3 degrees of freedom on."""
    return _Z + (_G1 + (_G2 + (_G3 + _G4 / free) / free) / free) / free


class Reading(NamedTuple):
    """One side of a tube: `log` of its count per mm, the relative error `tape` of reading it."""

    log: float
    tape: float
    sock: bool


class Contrast(NamedTuple):
    """What is left where v has dropped out: E square = by_scatter x scatter^2 + by_reading.

    `square` is a mean over `many` independent squares.
    """

    square: float
    by_scatter: float
    by_reading: float
    many: float


class Scatter(NamedTuple):
    """What is known of scatter^2: its `square`, and as many degrees of freedom, `free`."""

    square: float = _USUAL
    free: float = _WEIGHT


BEFORE = Scatter()  # of a knitter of whom nothing is known


class Hers(NamedTuple):
    """What is known of a knitter beforehand, of one side: four numbers.

    Her `scatter`, and the habit between her swatches and her socks: its mean, of the log of a
    sock's count per mm over a swatch's, and how `unsure` that is, as a variance.
    """

    scatter: Scatter = BEFORE
    habit: float = 0.0
    unsure: float = HABIT


NOBODY = Hers()


class Foretold(NamedTuple):
    """What is known of a count per mm, in relative variances.

    `doubt` is that of her mean v, of which `hanging` goes up and down with `scatter`, the square of
    how one tube differs from the next; of that `free` degrees of freedom are known.
    """

    doubt: float
    scatter: float = _USUAL
    hanging: float = 0.0
    free: float = _WEIGHT

    def sd(self, more: float = 0.0) -> float:
        """Return how far out the next sock may be, as the sd of a normal with the same middle 80 %.

        `more` is a relative variance that comes besides, of a foot's length say.
        """
        return self._wide(self.doubt + self.scatter + more, self.scatter + self.hanging)

    @property
    def mean_sd(self) -> float:
        """Return the same of her mean alone, without the next tube's own scatter."""
        return self._wide(self.doubt, self.hanging)

    def _wide(self, whole: float, hanging: float) -> float:
        if hanging <= 0:
            return sqrt(whole)
        return sqrt(whole) * t_90(self.free * (whole / hanging) ** 2) / _Z

    def after(self, tape: float, shared: float) -> Foretold:
        """Return what one more tube makes of it that comes out as foretold and is read to `tape`.

        `shared` is the part of the doubt that this tube has too: it stays as it is.
        """
        own, read = self.doubt - shared, self.scatter + tape**2
        share = own / (own + read)
        hanging = (1 - share) ** 2 * self.hanging + share**2 * self.scatter
        return self._replace(doubt=share * read + shared, hanging=hanging)

    def doubted(self, sd: float) -> Foretold:
        """Return the same with a relative error more in the mean."""
        return self._replace(doubt=self.doubt + sd**2)


def told(sd: float, scatter: Scatter = BEFORE) -> Foretold:
    """Return what is known where nothing was knitted, and the mean to a relative error."""
    return Foretold(sd**2, scatter.square, 0.0, scatter.free)


class Mean(NamedTuple):
    """Her mean `log`, what that foretells, and each tube's share in it."""

    log: float
    foretold: Foretold
    shares: tuple[float, ...]


class Told(NamedTuple):
    """A count per mm known otherwise than by tubes: its `log` and the variance of that."""

    log: float
    variance: float


def learn(found: Sequence[Contrast], prior: Scatter = BEFORE, near: float | None = None) -> Scatter:
    """Return the scatter after some contrasts; its square is sought from `near` it on."""
    square, weights = near or prior.square, 0.0
    for _ in range(_STEPS):
        over, weights = prior.free * prior.square, 0.0
        for z, a, b, many in found:
            whole = a * square + b
            weight = many * (a * square / whole) ** 2
            over += weight * (min(z, _FAR_OUT * whole) - b) / a
            weights += weight
        square = max(over / (prior.free + weights), _LEAST)
    return Scatter(square, prior.free + weights)


def lend(own: Scatter, other: Scatter) -> Scatter:
    """Return the scatter of one side with part of what the other side learned."""
    count = other.free - _WEIGHT
    if count <= 0:
        return own
    learned = (other.free * other.square - _WEIGHT * _USUAL) / count
    share = min(_LENT * count, _LENT_MOST)
    square = (own.free * own.square + share * learned) / (own.free + share)
    return Scatter(max(square, _LEAST), own.free + share)


def within(tubes: Sequence[Reading]) -> list[Contrast]:
    """Return what tubes of one mark leave about the mean of their kind."""
    found = []
    for kind in _kinds(tubes):
        n = len(kind)
        if n > 1:
            mean = sum(one.log for one in kind) / n
            square = sum((one.log - mean) ** 2 for one in kind) / (n - 1)
            read = sum(one.tape**2 for one in kind) / n
            found.append(Contrast(square, 1.0, read, n - 1))
    return found


def _kinds(tubes: Sequence[Reading]) -> list[list[Reading]]:
    """Return the swatches, and the socks."""
    return [[one for one in tubes if one.sock is sock] for sock in (False, True)]


class Gap(NamedTuple):
    """The mean log of tubes, less that of another kind or what was told; E as in `Contrast`.

    `by_habit` is how often a sock's habit is in it: 1 of socks less swatches, -1 of swatches less
    what was told of socks.
    """

    log: float
    by_scatter: float
    by_reading: float
    by_habit: int


def gap(tubes: Sequence[Reading], prior: Told | None = None) -> Gap | None:
    """Return by how much socks of one mark differ from swatches, or one kind from what was told."""
    swatches, socks = kinds = _kinds(tubes)
    means = [sum(one.log for one in kind) / len(kind) if kind else 0.0 for kind in kinds]
    read = sum(sum(one.tape**2 for one in kind) / len(kind) ** 2 for kind in kinds if kind)
    if swatches and socks:
        return Gap(means[1] - means[0], 1 / len(swatches) + 1 / len(socks), read, 1)
    if prior is None or not tubes:
        return None
    return Gap(sum(means) - prior.log, 1 / len(tubes), read + prior.variance, -1 if swatches else 0)


def contrasts(
    tubes: Sequence[Reading], prior: Told | None = None, unsure: float = HABIT
) -> list[Contrast]:
    """Return what tubes of one mark say of the scatter; their habit is known to `unsure`."""
    found, between = within(tubes), gap(tubes, prior)
    if between is not None:
        log, by_scatter, by_reading, by_habit = between
        found.append(Contrast(log**2, by_scatter, by_reading + abs(by_habit) * unsure, 1))
    return found


def mean(
    tubes: Sequence[Reading], scatter: Scatter, prior: Told | None = None, unsure: float = HABIT
) -> Mean:
    """Return her mean by tubes of one mark (some, or a prior) and what it foretells."""
    square = scatter.square
    weights = [1 / (square + one.tape**2) for one in tubes]
    swatches = sum(w for w, one in zip(weights, tubes, strict=True) if not one.sock)
    # swatches share their habit: together they are never surer than that
    less = 1 / (1 + unsure * swatches)
    weights = [w if one.sock else w * less for w, one in zip(weights, tubes, strict=True)]
    before = 0.0 if prior is None else 1 / prior.variance
    whole = sum(weights) + before
    log = sum(w * one.log for w, one in zip(weights, tubes, strict=True))
    if prior is not None:
        log += before * prior.log
    shares = tuple(w / whole for w in weights)
    hanging = square * sum(share**2 for share in shares)
    return Mean(log / whole, Foretold(1 / whole, square, hanging, scatter.free), shares)


Side = Reading | None


def means(
    tubes: Sequence[tuple[Side, Side]],
    priors: tuple[Told | None, Told | None],
    hers: tuple[Hers, Hers] = (NOBODY, NOBODY),
) -> tuple[Mean | None, Mean | None]:
    """Return her mean of stitches and of rounds by all tubes of one mark, None of what is unknown.

    `priors` are what else is known of each, `hers` what is of the knitter.
    """
    sides = [[one for one in side if one is not None] for side in zip(*tubes, strict=True)]
    known = list(zip(sides, priors, hers, strict=True))
    own = [learn(contrasts(side, prior, one.unsure), one.scatter) for side, prior, one in known]
    across, along = (
        mean(side, lend(*scatters), prior, one.unsure) if side or prior else None
        for (side, prior, one), scatters in zip(known, (own, own[::-1]), strict=True)
    )
    return across, along
