"""Estimates of unmeasured feet against people who had no part in the figures.

- ANSUR II 2012, public release; columns as in Gordon et al. 2014, NATICK/TR-15/007.
- Snyder et al. 1977, UM-HSRI-77-17.

The rows lie in sample/, and sample/README.md tells where they are from. The judgement of
test_survey_rows.py, for a clone that has not all the rows. What is promised there of all people (77
to 83 % inside the 80 % interval; no more than 2 % further off than least squares) is widened here
by what chance alone does to so few, and by no more: each share by STRAY standard errors of the
binomial at the bound, each comparison by those of the mean difference.
"""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from build import population_table as maker
from build import survey_sample
from engine.people import population, shoe_size
from engine.people.population import MEASURES, Sex
from tests.published.survey import (
    ADULT_KNOWNS,
    CHILD_KNOWNS,
    ROWS_OF,
    SEXES,
    Person,
    coverage,
    equal_sexes,
    judge,
    people_of,
    refitted,
)
from tests.published.test_survey_rows import ADULTS, CHILDREN, needs_survey

LOW, HIGH = 0.77, 0.83  # of test_survey_rows.py
STRAY = 3.29  # standard deviations: 1 in 1,000 normal draws lies beyond on either side
FIGURES = (survey_sample.SAMPLE / survey_sample.FIGURES).read_text(encoding="utf-8")
THEIRS = refitted(FIGURES)
GROWN = maker.adults(survey_sample.SAMPLE / survey_sample.ADULTS)
YOUNG = maker.children(survey_sample.SAMPLE / survey_sample.CHILDREN)
Judged = dict[str, list[tuple[str, float, float]]]
OF_CHILD = ("length", "calf_girth", "ankle_girth")


def adults(sex: Sex | None) -> list[Person]:
    return list(people_of(GROWN, maker.ADULT_COLUMNS, {"weight"}, ROWS_OF[sex]))


def children(sex: Sex | None) -> list[Person]:
    everyone = people_of(YOUNG, maker.CHILD_COLUMNS, set(maker.CHILD_COLUMNS), ROWS_OF[sex])
    return [person for person in everyone if person[1] < population.ADULT_AGE]


def by_chance(share: float, rows: list[tuple[str, float, float]]) -> float:
    """How far the mean of the sexes' shares may stray from `share`."""
    sexes = sorted({row[0] for row in rows})
    numbers = [sum(row[0] == sex for row in rows) for sex in sexes]
    variance = sum(share * (1 - share) / number for number in numbers) / len(sexes) ** 2
    return STRAY * math.sqrt(variance)


def outside(judged: Judged) -> dict[str, float]:
    """The measures whose share in the 80 % interval is not what is promised of all people."""
    shares = {m: coverage(rows) for m, rows in judged.items()}
    return {
        m: round(share, 3)
        for m, share in shares.items()
        if not LOW - by_chance(LOW, judged[m]) <= share <= HIGH + by_chance(HIGH, judged[m])
    }


def test_as_many_as_the_rule_takes() -> None:
    assert [(GROWN.sex == sex).sum() for sex in "MF"] == [201, 207]
    assert [(YOUNG.sex == sex).sum() for sex in "MF"] == [216, 209]


@pytest.mark.parametrize("names", ADULT_KNOWNS, ids="+".join)
@pytest.mark.parametrize("sex", SEXES)
def test_adults_lie_in_the_80_percent_interval(sex: Sex | None, names: tuple[str, ...]) -> None:
    judged = judge(THEIRS, adults(sex), names, sex, [m for m in MEASURES if m not in names])
    assert all(len(rows) > 200 for rows in judged.values())
    assert not outside(judged)


@pytest.mark.parametrize("names", CHILD_KNOWNS, ids=lambda names: "+".join(names) or "age")
@pytest.mark.parametrize("sex", SEXES)
def test_children_lie_in_the_80_percent_interval(sex: Sex | None, names: tuple[str, ...]) -> None:
    """Length, calf and ankle, which the survey measured (the ankle of one in three)."""
    judged = judge(THEIRS, children(sex), names, sex, [m for m in OF_CHILD if m not in names])
    assert all(
        len(rows) > (50 if "ankle" in m + "".join(names) else 180) for m, rows in judged.items()
    )
    assert not outside(judged)


@pytest.mark.parametrize("names", [("length",), ("length", "stature", "weight")])
def test_small_children_of_unknown_age(names: tuple[str, ...]) -> None:
    """Smaller than every adult, sex not told either."""
    small = [person for person in children(None) if person[2]["length"] < 198]
    measures = [m for m in OF_CHILD if m not in names]
    judged = judge(THEIRS, small, names, None, measures, tell_age=False)
    assert all(len(rows) > 40 for rows in judged.values())
    assert not outside(judged)


@pytest.mark.parametrize("names", [("length",), ("length", "ball_girth"), ("stature", "weight")])
def test_errors_of_the_readings_are_carried_on(names: tuple[str, ...]) -> None:
    """Readings made 2 % wrong on purpose, and said to be."""
    noise = np.random.default_rng(1977)
    measures = [m for m in MEASURES if m not in names]
    assert not outside(judge(THEIRS, adults("man"), names, "man", measures, noise=noise))


@pytest.mark.parametrize(
    ("sex", "system"), [("woman", "US women"), ("man", "US men"), (None, "EU")]
)
def test_adults_by_a_shoe_size_alone(sex: Sex | None, system: str) -> None:
    """As in test_survey_rows.py: a size as far off as labels are said to be stands in."""
    draw = np.random.default_rng(2012)
    judged: Judged = {m: [] for m in MEASURES[1:]}
    sd = shoe_size.foot_length(system, 40.0)[1]
    for row_sex, age, person in adults(sex):
        told = person["length"] + sd * draw.standard_normal()
        worn = round(2 * shoe_size.size(system, told)) / 2
        answer = THEIRS.estimate({"length": shoe_size.foot_length(system, worn)}, sex, age)
        for m, rows in judged.items():
            error = person[m] - answer[m].value
            rows.append((row_sex, error, error / answer[m].sd))
    assert not outside(judged)


@pytest.mark.parametrize("names", ADULT_KNOWNS, ids="+".join)
@pytest.mark.parametrize("sex", SEXES)
def test_adults_as_near_as_ordinary_least_squares(sex: Sex | None, names: tuple[str, ...]) -> None:
    """numpy's least squares on the sample itself, each person left out of their own line.

    What a person is off by once left out is e / (1 - h), with h the row's share in its own fit
    (NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4; D. M. Allen 1974, Technometrics 16,
    125: from memory).
    """
    people = adults(sex)
    measures = [m for m in MEASURES if m not in names]
    ours = judge(THEIRS, people, names, sex, measures)
    share = equal_sexes(people)
    terms = np.array([[1.0, *(p[n] for n in names)] for _, _, p in people])
    inner = np.linalg.inv(terms.T @ (terms * share[:, None]))
    own = share * np.einsum("ij,jk,ik->i", terms, inner, terms)
    for m in measures:
        wanted = np.array([p[m] for _, _, p in people])
        line = inner @ (terms.T @ (share * wanted))
        theirs = ((wanted - terms @ line) / (1 - own)) ** 2
        mine = np.array([error for _, error, _ in ours[m]]) ** 2
        apart = mine - 1.02**2 * theirs
        mean = share @ apart
        chance = STRAY * math.sqrt(float(share**2 @ (apart - mean) ** 2))
        assert mean <= chance, m


@pytest.mark.parametrize("sex", SEXES)
def test_the_figures_shipped_answer_as_those_judged(sex: Sex | None) -> None:
    """The sample is a tenth of the rows or less: leaving it out moves no estimate by more than a
    sixth of the error that is told with it, and no error by more than a tenth."""
    for person in (*adults(sex), *children(sex)):
        of, age, measures = person
        names = ADULT_KNOWNS if age >= population.ADULT_AGE else CHILD_KNOWNS
        for known in names:
            given = {n: (measures[n], 0.0) for n in known}
            if any(math.isnan(value) for value, _ in given.values()):
                continue
            told = sex and of == ROWS_OF[sex] and sex
            judged = THEIRS.estimate(given, told or None, age)
            for m, shipped in population.estimate(given, told or None, age).items():
                if m in known or shipped.sd == 0:
                    continue
                assert abs(shipped.value - judged[m].value) <= shipped.sd / 6, (m, known)
                assert shipped.sd == pytest.approx(judged[m].sd, rel=0.1)


@pytest.mark.parametrize(
    ("seen", "shift", "spread"),
    [("heel_girth", 6.0, 1.0), ("ball_girth", -7.0, 1.0), ("calf_girth", 0.0, 0.6)],
)
def test_so_few_people_notice_figures_that_are_wrong(
    seen: str, shift: float, spread: float
) -> None:
    """A mean that is some millimetres off, an interval that is too narrow."""

    class Wrong:
        @staticmethod
        def estimate(*asked: object) -> dict[str, population.Estimate]:
            answer = dict(THEIRS.estimate(*asked))
            right = answer[seen]
            answer[seen] = replace(right, value=right.value + shift, sd=right.sd * spread)
            return answer

    names = ("length", "ball_girth") if seen != "ball_girth" else ("length", "heel_girth")
    judged = judge(Wrong, adults(None), names, None, [seen])  # type: ignore[arg-type]
    assert seen in outside(judged)


@needs_survey
def test_sample_and_figures_are_what_the_rule_takes(tmp_path: Path) -> None:
    """Nobody chose a person, and no figure was changed by hand."""
    survey_sample.make(ADULTS, CHILDREN, tmp_path)
    assert {path.name for path in tmp_path.iterdir()} | {"README.md"} == {
        path.name for path in survey_sample.SAMPLE.iterdir() if path.is_file()
    }
    for made in tmp_path.iterdir():
        assert made.read_bytes() == (survey_sample.SAMPLE / made.name).read_bytes()
