"""What was not measured: the rules of the estimate, apart from how well it fits real people."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scipy import stats

from engine.people import population_table as table
from engine.people.population import (
    BALL_OVER_LENGTH,
    HEEL_OVER_BALL,
    KNOWNS,
    MEASURES,
    ODD,
    RAREST,
    Estimate,
    NothingKnown,
    Sex,
    estimate,
    unlikely,
)
from engine.say import messages as say

SEXES: tuple[Sex | None, ...] = ("woman", "man", None)
ADULT_SPANS = {
    "length": (205.0, 310.0),
    "ball_girth": (195.0, 300.0),
    "heel_girth": (265.0, 400.0),
    "ankle_girth": (172.0, 290.0),
    "calf_girth": (285.0, 500.0),
    "stature": (1450.0, 1980.0),
    "weight": (42.0, 140.0),
}


def adult_moments(sex: Sex | None) -> tuple[np.ndarray, np.ndarray]:
    """Mean and covariance as numpy arrays."""
    key = sex or "either"
    triangle = table.ADULT_SPREADS[key]
    lower = np.array([[*row, *[0.0] * (7 - len(row))] for row in triangle])
    return np.array(table.ADULT_MEANS[key]), lower + np.tril(lower, -1).T


@given(
    sex=st.sampled_from(SEXES),
    known=st.fixed_dictionaries(
        {},
        optional={
            name: st.tuples(st.floats(*span), st.floats(0.0, 8.0))
            for name, span in ADULT_SPANS.items()
        },
    ).filter(bool),
)
def test_adults_follow_the_conditional_normal(
    sex: Sex | None, known: dict[str, tuple[float, float]]
) -> None:
    """numpy's own solution of the formula in the module, readings' errors included."""
    mean, spread = adult_moments(sex)
    names = [n for n in table.ADULT_NAMES if n in known]
    at = [table.ADULT_NAMES.index(n) for n in names]
    values = np.array([math.log(known[n][0]) if n == "weight" else known[n][0] for n in names])
    errors = np.array([known[n][1] / known[n][0] if n == "weight" else known[n][1] for n in names])
    found = estimate(known, sex, 40)
    assert set(found) == set(MEASURES) - set(known)
    for name, one in found.items():
        j = table.ADULT_NAMES.index(name)
        slope = np.linalg.solve(spread[np.ix_(at, at)], spread[at, j])
        variance = spread[j, j] - slope @ spread[at, j] + slope**2 @ errors**2
        assert one.value == pytest.approx(mean[j] + slope @ (values - mean[at]), abs=1e-6)
        assert one.sd == pytest.approx(math.sqrt(variance), abs=1e-6)


def test_an_equal_mix_of_women_and_men() -> None:
    """Within and between: covariance of a half-and-half mixture (law of total covariance)."""
    women, inside_women = adult_moments("woman")
    men, inside_men = adult_moments("man")
    mean, spread = adult_moments(None)
    apart = (men - women) / 2
    assert mean == pytest.approx((women + men) / 2, abs=1e-4)
    expected = (inside_women + inside_men) / 2 + np.outer(apart, apart)
    assert spread == pytest.approx(expected, rel=1e-4)


@given(
    sex=st.sampled_from(SEXES),
    age=st.sampled_from([3, 9.5, 15, 40]),
    names=st.sets(st.sampled_from(KNOWNS), min_size=1, max_size=6),
    more=st.sampled_from(KNOWNS),
)
def test_knowing_more_exactly_never_makes_it_less_sure(
    sex: Sex | None, age: float | None, names: set[str], more: str
) -> None:
    """Values in proportion to the mean, so only the spread is at stake.

    The age is told: where child and adult are both supposed, what tells them apart may say less.
    """
    usual = dict(zip(table.ADULT_NAMES, table.ADULT_MEANS["woman"], strict=True))
    usual["weight"] = math.exp(usual["weight"])
    less = {n: (usual[n], 0.0) for n in names}
    before = estimate(less, sex, age)
    after = estimate({**less, more: (usual[more], 0.0)}, sex, age)
    for name, one in after.items():
        # Children's sd is relative to a value that itself moves.
        scale = one.value / before[name].value if one.people["say"] in CHILDREN else 1.0
        assert one.sd <= before[name].sd * scale * (1 + 1e-9)


def test_a_worse_reading_gives_the_same_value_and_a_wider_spread() -> None:
    near, far = (estimate({"length": (250.0, sd)}, "man", 30) for sd in (1.0, 6.0))
    for name in near:
        assert near[name].value == far[name].value
        assert near[name].sd < far[name].sd


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize("age", [None, 40, 1])
def test_nothing_known_is_refused(sex: Sex | None, age: float | None) -> None:
    with pytest.raises(NothingKnown):
        estimate({}, sex, age)


def test_an_unknown_name_is_refused() -> None:
    with pytest.raises(ValueError, match="shoe_size"):
        estimate({"shoe_size": (39.0, 1.0)}, None, None)


def test_all_known_leaves_nothing_to_estimate() -> None:
    known = dict.fromkeys(MEASURES, (300.0, 1.0))
    assert estimate(known, None, 30) == {}


CHILDREN, GROWN = ("guessed-from-children", "guessed-by-thumb"), ("guessed-from-grown",)


def only(found: dict[str, Estimate], ids: tuple[str, ...]) -> bool:
    """Whether every estimate is from these people."""
    return bool(found) and all(one.people["say"] in ids for one in found.values())


@pytest.mark.parametrize(("sex", "smallest"), [("woman", 198.0), ("man", 216.0), (None, 198.0)])
def test_far_from_the_smallest_adult_it_is_a_childs_or_an_adults(
    sex: Sex | None, smallest: float
) -> None:
    """The shortest woman's foot in the survey is 198 mm, the shortest man's 216 mm.

    There it used to jump; now it is a child's 20 mm below, an adult's 45 mm above.
    """
    assert only(estimate({"length": (smallest - 20, 2.0)}, sex, None), CHILDREN)
    assert only(estimate({"length": (smallest + 45, 2.0)}, sex, None), GROWN)
    between = estimate({"length": (smallest + 5, 2.0)}, sex, None)
    assert only(between, ("guessed-unknown-age",))


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize(("age", "child"), [(None, False), (None, True), (1, False), (7, False),
                                           (16, False), (18, False), (50, False)])  # fmt: skip
def test_no_estimate_jumps_as_a_foot_grows(sex: Sex | None, age: float | None, child: bool) -> None:
    """At most 6 mm to a millimetre of foot, in steps of 0.25 mm from 95 to 360; the spread 4."""
    for sd in (0.0, 2.5, 6.0):
        found = [estimate({"length": (95 + at / 4, sd)}, sex, age, child) for at in range(1061)]
        for before, after in pairwise(found):
            for name, one in after.items():
                assert abs(one.value - before[name].value) <= 6 / 4, name
                assert abs(one.sd - before[name].sd) <= 4 / 4, name


@given(
    sex=st.sampled_from(SEXES),
    name=st.sampled_from(("stature", "weight", *MEASURES[1:])),
    part=st.floats(0, 1),
)
@example(sex="man", name="ankle_girth", part=0.75)  # larger than any man's
def test_no_estimate_jumps_with_any_other_measure(sex: Sex | None, name: str, part: float) -> None:
    """From a small child's to a large adult's: a hundredth of that way never moves 20 mm."""
    spans = {"stature": (800, 2000), "weight": (9, 140), "ball_girth": (110, 300)}
    low, high = spans.get(name, (110, 480))
    value, step = low + part * (high - low), (high - low) / 100
    before, after = (estimate({name: (one, 1.0)}, sex, None) for one in (value, value + step))
    assert all(abs(after[n].value - one.value) < 20 for n, one in before.items())


def test_the_share_of_a_child_by_hand() -> None:
    """Bayes with the table's figures, by scipy's normal and lognormal densities, at 205 mm."""
    (log_mean, adults), variance = (
        (table.AGELESS_MEANS["woman"][0], table.ADULT_MEANS["woman"][0]),
        (table.AGELESS_SPREADS["woman"][0][0], table.ADULT_SPREADS["woman"][0][0]),
    )
    small = stats.lognorm(math.sqrt(variance[0]), scale=math.exp(log_mean)).pdf(205)
    grown = stats.norm(adults, 1.15 * math.sqrt(variance[1])).pdf(205)
    share = 0.05 * small / (0.05 * small + 0.95 * grown)
    known = {"length": (205.0, 0.0)}
    child, adult = estimate(known, "woman", None, child=True), estimate(known, "woman", 40)
    for name, one in estimate(known, "woman", None).items():
        value = share * child[name].value + (1 - share) * adult[name].value
        within = share * child[name].sd ** 2 + (1 - share) * adult[name].sd ** 2
        apart = share * (1 - share) * (child[name].value - adult[name].value) ** 2
        assert one.value == pytest.approx(value)
        assert one.sd == pytest.approx(math.sqrt(within + apart))


def test_age_goes_before_size() -> None:
    assert only(estimate({"length": (190.0, 2.0)}, "woman", 18), GROWN)
    boy = estimate({"length": (260.0, 2.0)}, "man", 17)
    assert only(boy, CHILDREN)
    assert {(one.people["who"], one.people["number"]) for one in boy.values()} == {("man", "1,942")}


def test_without_length_the_stature_tells_a_child() -> None:
    """The smallest person of the adult survey stood 1,409 mm."""
    assert only(estimate({"stature": (1300.0, 10.0)}, None, None), CHILDREN)
    assert only(estimate({"stature": (1550.0, 10.0)}, None, None), GROWN)


def test_childrens_girths_of_the_foot_are_the_rule_of_thumb_and_say_so() -> None:
    """Knitters' guideline: girth 95 % of length, heel diagonal 35 % more than girth."""
    found = estimate({"length": (200.0, 0.0)}, None, 8)
    assert BALL_OVER_LENGTH == 0.95
    assert HEEL_OVER_BALL == 1.35
    assert found["ball_girth"].value == pytest.approx(190.0)
    assert found["heel_girth"].value == pytest.approx(256.5)
    for name, one in found.items():
        assert (one.people["say"] == "guessed-by-thumb") == (name in ("ball_girth", "heel_girth"))
    assert found["ball_girth"].sd == pytest.approx(0.065 * 190.0), "as far as feet stray from it"
    heel = estimate({"ball_girth": (180.0, 0.0)}, None, 8)["heel_girth"]
    assert heel.value == pytest.approx(243.0)
    assert heel.sd == pytest.approx(0.055 * 243.0)


def test_childrens_rule_of_thumb_is_wider_than_the_adults_figures() -> None:
    child = estimate({"length": (210.0, 0.0)}, None, 9)["ball_girth"]
    adult = estimate({"length": (210.0, 0.0)}, None, 19)["ball_girth"]
    assert child.sd > 1.2 * adult.sd


def test_a_length_got_from_a_girth_is_coarse_too() -> None:
    found = estimate({"ball_girth": (170.0, 3.0)}, None, 6)
    assert only(found, ("guessed-by-thumb",))
    with_length = estimate({"ball_girth": (170.0, 3.0), "length": (180.0, 2.0)}, None, 6)
    assert with_length["calf_girth"].people["say"] == "guessed-from-children"


def test_a_small_child_is_held_against_those_under_ten() -> None:
    """The survey's rows of ages 2 to 9: 1,710 children."""
    found = estimate({"length": (150.0, 2.0)}, None, None)
    assert only(found, CHILDREN)
    told = {(one.people["number"], one.people["oldest"]) for one in found.values()}
    assert told == {("1,710", "9")}


def test_under_two_years_the_words_say_that_nobody_was_measured() -> None:
    found = estimate({"length": (115.0, 2.0)}, None, 1)
    for one in found.values():
        nobody, whose = one.people["sentences"]
        assert nobody == say.none_so_young(years="2")
        assert whose["say"] in CHILDREN
    assert found["ball_girth"].value == pytest.approx(0.95 * 115.0)


@pytest.mark.parametrize("sex", SEXES)
def test_children_grow_without_jumps(sex: Sex | None) -> None:
    """From the age alone: never more than 1.5 mm of foot in a tenth of a year, and hardly back."""
    ages = [2.05 + 0.1 * i for i in range(159)]
    lengths = [estimate({}, sex, age)["length"].value for age in ages]
    for before, after in pairwise(lengths):
        assert -0.1 < after - before < 1.5


def test_a_whole_age_means_years_completed() -> None:
    assert estimate({}, "man", 7) == estimate({}, "man", 7.5)
    assert estimate({}, "man", 7)["length"].value > estimate({}, "man", 7.1)["length"].value


@pytest.mark.parametrize(("age", "part"), [(16.5, 0.25), (17, 0.75), (17.9, 0.95)])
def test_between_two_ages_of_the_table_it_is_straight(age: float, part: float) -> None:
    """The boys' rows of 16 and 18 years; 17 is taken for 17.5."""
    sixteen, eighteen = (row[0] for row in table.CHILD_MEANS["man"][-2:])
    assert table.CHILD_AGES[-2:] == (16, 18)
    assert table.CHILD_NAMES[0] == "length"
    logarithm = sixteen + part * (eighteen - sixteen)
    assert estimate({}, "man", age)["length"].value == pytest.approx(math.exp(logarithm))


def test_a_slip_is_called_unlikely() -> None:
    """Heel and ball girth changed over: both stand out; put right, neither does."""
    right = {"length": (246.0, 2.5), "ball_girth": (228.0, 3.0), "heel_girth": (310.0, 3.0)}
    slip = {**right, "ball_girth": right["heel_girth"], "heel_girth": right["ball_girth"]}
    assert unlikely(right, "woman", 30) == []
    found = {name: (one_in, side) for name, one_in, side in unlikely(slip, "woman", 30)}
    assert found["ball_girth"] == (RAREST, "large")
    assert found["heel_girth"] == (RAREST, "small")


@pytest.mark.parametrize(("off", "listed"), [(2.7, False), (2.9, True), (-2.9, True)])
def test_one_in_two_hundred_is_the_line(off: float, listed: bool) -> None:
    """Two-sided normal: 1 in 200 lies at 2.807 sd, 1 in 268 at 2.9 sd (any table of the normal)."""
    usual = estimate({"length": (260.0, 2.5)}, "man", 30)["ball_girth"]
    ball = usual.value + off * math.hypot(usual.sd, 3.0)
    found = unlikely({"length": (260.0, 2.5), "ball_girth": (ball, 3.0)}, "man", 30)
    entry = [one for one in found if one[0] == "ball_girth"]
    assert entry == ([("ball_girth", 268, "large" if off > 0 else "small")] if listed else [])
    assert all(one_in >= ODD for _, one_in, _ in found)


def test_a_single_measure_is_held_against_everyone() -> None:
    """A woman's foot of 310 mm: mean 246.3, sd 12.4 (NATICK/TR-15/007), so 5 sd."""
    assert unlikely({"length": (310.0, 2.5)}, "woman", 30) == [("length", RAREST, "large")]
    assert unlikely({"length": (265.0, 2.5)}, "woman", 30) == []


def test_children_are_not_called_unlikely() -> None:
    assert unlikely({"length": (150.0, 2.5), "ball_girth": (300.0, 3.0)}, None, 4) == []
