"""How fast a child's foot grows, against children who had no part in the figures.

Snyder et al. 1977, UM-HSRI-77-17: 425 children of `sample/`, as in test_survey_sample.py. Between
two ages the growth is the slope of a straight line through the logarithms of their feet, by numpy's
least squares; it may stray by STRAY standard errors of that slope.
"""

from __future__ import annotations

import numpy as np
import pytest

from engine.people.population import Sex
from tests.published.survey import SEXES
from tests.published.test_survey_sample import STRAY, THEIRS, children

AT = 200.0  # mm, any foot: growth is in proportion to it


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize(("young", "old"), [(2, 6), (4, 8), (6, 10), (8, 12), (14, 18)])
def test_a_foot_grows_as_the_childrens_do(sex: Sex, young: int, old: int) -> None:
    people = [one for one in children(sex) if young <= one[1] < old]
    ages = np.array([age for _, age, _ in people])
    logs = np.log([measures["length"] for _, _, measures in people])
    (slope, _), spread = np.polyfit(ages, logs, 1, cov=True)
    exactly = young + 0.25  # no whole number, which would be one of years completed
    grown = THEIRS.growth(AT, sex, exactly, old - young - 0.5)
    seen = AT * (np.exp(slope * (old - young - 0.5)) - 1)
    reach = STRAY * AT * np.sqrt(spread[0][0]) * (old - young - 0.5)
    assert len(people) > 30
    assert grown == pytest.approx(seen, abs=reach)
    assert reach < 0.5 * AT
    assert grown > 0 if old <= 12 else grown < 15
