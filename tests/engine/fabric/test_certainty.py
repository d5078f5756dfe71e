"""What tubes foretell, against scipy and numpy: the scatter, her mean, and Student's t."""

from __future__ import annotations

import math
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import optimize, stats

from engine.fabric import certainty
from engine.fabric.certainty import BEFORE, HABIT, Contrast, Foretold, Reading, Scatter, Told

USUAL, WEIGHT, H = 0.019**2, 3.0, 0.0125**2  # as `sources` states them


@pytest.mark.parametrize("free", [3, 3.5, 4, 5, 7, 10, 20, 60, 1000])
def test_students_t_is_scipys(free: float) -> None:
    assert certainty.t_90(free) == pytest.approx(stats.t.ppf(0.9, free), abs=2e-3)


def test_of_a_knitter_unknown_the_stated_prior_is_taken() -> None:
    assert pytest.approx((USUAL, WEIGHT)) == BEFORE
    assert pytest.approx(H) == HABIT
    assert certainty.learn([]) == BEFORE


def mode(found: list[Contrast]) -> float:
    """The mode of scaled inverse chi-square prior x the contrasts' gamma likelihoods, by scipy.

    Over log scatter^2, with one degree more in the prior as its density there has.
    """

    def away(log_square: float) -> float:
        square = math.exp(log_square)
        whole = WEIGHT * (log_square + USUAL / square) / 2
        for z, a, b, many in found:
            v = a * square + b
            whole += many * (math.log(v) + z / v) / 2
        return whole

    best = optimize.minimize_scalar(away, bounds=(math.log(1e-5), math.log(1e-2)), method="bounded")
    return math.exp(best.x)


SQUARES = st.floats(0.006**2, 0.05**2)


@given(st.lists(st.tuples(SQUARES, st.integers(1, 9)), min_size=1, max_size=3))
def test_where_readings_are_exact_the_scatter_is_scipys_mode(
    seen: list[tuple[float, int]],
) -> None:
    found = [Contrast(z, 1.0, 0.0, many) for z, many in seen if z < 9 * USUAL]
    assert certainty.learn(found).square == pytest.approx(mode(found), rel=2e-3)
    assert certainty.learn(found).free == pytest.approx(WEIGHT + sum(one.many for one in found))


@given(st.floats(0.012**2, 0.04**2), st.integers(1, 9), st.floats(0.002**2, 0.012**2))
def test_where_they_are_not_three_steps_come_near_it(z: float, many: int, read: float) -> None:
    found = [Contrast(z, 1.0, read, many)]
    assert certainty.learn(found).square == pytest.approx(mode(found), rel=0.06)


def test_one_blunder_counts_as_three_of_its_sd() -> None:
    wild, far = (certainty.learn([Contrast(z, 1.0, 0.0, 1)]) for z in (1.0, 0.3**2))
    assert wild == far


LOGS, TAPE = st.floats(-1, 1), st.floats(0.001, 0.03)
TUBES = st.lists(st.builds(Reading, LOGS, TAPE, st.booleans()), min_size=1, max_size=9)


@given(TUBES)
def test_tubes_tell_of_the_scatter_by_what_their_means_leave(tubes: list[Reading]) -> None:
    """By numpy: the sample variance within each kind, and the variance of a gap of two means."""
    kinds = [[one for one in tubes if one.sock is sock] for sock in (False, True)]
    wanted = list[tuple[float, ...]]()
    gap = list[tuple[float, float, float]]()
    for kind, shared in zip(kinds, (H, 0.0), strict=True):
        logs, read = [one.log for one in kind], [one.tape**2 for one in kind]
        if len(kind) > 1:
            wanted.append((float(np.var(logs, ddof=1)), 1, float(np.mean(read)), len(kind) - 1))
        if kind:
            mean, read_mean = float(np.mean(logs)), float(np.mean(read))
            gap.append((mean, 1 / len(kind), read_mean / len(kind) + shared))
    if len(gap) == 2:
        (one, at_one, read_one), (two, at_two, read_two) = gap
        wanted.append(((one - two) ** 2, at_one + at_two, read_one + read_two, 1))
    found = certainty.contrasts(tubes)
    assert len(found) == len(wanted)
    for contrast, told in zip(found, wanted, strict=True):
        assert tuple(contrast) == pytest.approx(told, rel=1e-9, abs=1e-15)


@given(st.lists(st.builds(Reading, LOGS, TAPE, st.just(True)), min_size=1, max_size=5), LOGS)
def test_of_one_kind_what_was_told_before_is_the_other_mean(
    tubes: list[Reading], told: float
) -> None:
    last = certainty.contrasts(tubes, Told(told, 0.02**2))[-1]
    gap = np.mean([one.log for one in tubes]) - told
    read = np.mean([one.tape**2 for one in tubes]) / len(tubes)
    wanted = (gap**2, 1 / len(tubes), read + 0.02**2, 1)
    assert tuple(last) == pytest.approx(wanted, rel=1e-9, abs=1e-15)


def test_the_other_side_lends_part_of_what_it_learned() -> None:
    """Nine degrees at (3 %)^2 beside the prior's three: 3 of them come to this side's three."""
    learned = Scatter((3 * USUAL + 9 * 0.03**2) / 12, 12)
    lent = certainty.lend(BEFORE, learned)
    assert lent == pytest.approx(((3 * USUAL + 3 * 0.03**2) / 6, 6))
    assert certainty.lend(learned, BEFORE) == learned


TUBE = st.builds(Reading, st.floats(-1.1, -0.9), st.floats(0.002, 0.06), st.booleans())


@given(st.lists(TUBE, min_size=1, max_size=8), st.floats(0.008, 0.05), st.booleans())
def test_the_mean_is_that_of_generalized_least_squares(
    tubes: list[Reading], scatter: float, told: bool
) -> None:
    """numpy, with the whole covariance: scatter and reading of each, the swatches' shared habit."""
    prior = Told(-1.0, 0.03**2) if told else None
    y = np.array([one.log for one in tubes] + [-1.0] * told)
    own = [scatter**2 + one.tape**2 for one in tubes] + [0.03**2] * told
    swatch = np.array([float(not one.sock) for one in tubes] + [0.0] * told)
    inverse = np.linalg.inv(np.diag(own) + H * np.outer(swatch, swatch))
    doubt = 1 / inverse.sum()
    weights = inverse.sum(axis=0) * doubt
    found = certainty.mean(tubes, Scatter(scatter**2, 5.0), prior)
    assert found.log == pytest.approx(float(weights @ y), abs=1e-10)
    assert found.shares == pytest.approx(tuple(weights[: len(tubes)]), abs=1e-10)
    assert found.foretold.doubt == pytest.approx(doubt, rel=1e-9)
    hanging = scatter**2 * float((weights[: len(tubes)] ** 2).sum())
    assert found.foretold.hanging == pytest.approx(hanging, rel=1e-9)


def test_the_next_sock_adds_its_own_scatter_by_hand() -> None:
    """Doubt 2 %, scatter 1.5 %, half of the doubt's square hanging on it, 5 degrees; a foot 1 %."""
    known = Foretold(0.02**2, 0.015**2, 0.02**2 / 2, 5.0)
    whole, hanging = 0.02**2 + 0.015**2, 0.015**2 + 0.02**2 / 2
    t = stats.t.ppf(0.9, 5 * (whole / hanging) ** 2)
    assert known.sd() == pytest.approx(math.sqrt(whole) * t / 1.2816, rel=1e-3)
    more = whole + 0.01**2
    t = stats.t.ppf(0.9, 5 * (more / hanging) ** 2)
    assert known.sd(0.01**2) == pytest.approx(math.sqrt(more) * t / 1.2816, rel=1e-3)
    t = stats.t.ppf(0.9, 5 * 2**2)
    assert known.mean_sd == pytest.approx(0.02 * t / 1.2816, rel=1e-3)
    assert certainty.told(0.08).mean_sd == pytest.approx(0.08)


def test_their_order_does_not_matter() -> None:
    tubes = [Reading(-1.0, 0.01, sock=False), Reading(-0.97, 0.02, sock=True)]
    tubes.append(Reading(-1.04, 0.015, sock=False))
    found = [
        certainty.means([(one, one) for one in some], (None, None)) for some in permutations(tubes)
    ]
    for across, along in found:
        assert across
        assert along
        assert across.log == pytest.approx(along.log)
        assert across.foretold == pytest.approx(found[0][0].foretold if found[0][0] else ())


def test_a_side_that_no_tube_tells_is_unknown_or_as_told() -> None:
    one = Reading(-1.0, 0.01, sock=True)
    across, along = certainty.means([(one, None)] * 3, (None, None))
    assert across
    assert along is None
    _, told = certainty.means([(one, None)] * 3, (None, Told(-0.9, 0.03**2)))
    assert told
    assert (told.log, told.shares) == (-0.9, ())
    assert told.foretold.doubt == pytest.approx(0.03**2)
    assert told.foretold.scatter < USUAL, "three tubes alike tell of the other side too"
