"""People of two surveys, and how well the engine's estimates of their feet do.

- ANSUR II 2012, public release; columns as in Gordon et al. 2014, NATICK/TR-15/007.
- Snyder et al. 1977, UM-HSRI-77-17.
"""

from __future__ import annotations

import importlib.util
import math
import sys
from collections.abc import Iterator, Sequence
from types import ModuleType

import numpy as np

from build import population_table as maker
from engine.people.population import Sex

SEXES: tuple[Sex | None, ...] = ("woman", "man", None)
ROWS_OF = {"woman": "F", "man": "M", None: "FM"}

# What a person at the page usually knows.
ADULT_KNOWNS = (
    ("length",),
    ("ball_girth",),
    ("length", "ball_girth"),
    ("length", "heel_girth"),
    ("length", "ankle_girth"),
    ("length", "calf_girth"),
    ("length", "weight"),
    ("ball_girth", "heel_girth"),
    ("ankle_girth", "calf_girth"),
    ("length", "ball_girth", "heel_girth"),
    ("length", "ball_girth", "ankle_girth"),
    ("length", "ball_girth", "heel_girth", "ankle_girth"),
    ("length", "stature"),
    ("length", "stature", "weight"),
    ("length", "ball_girth", "stature", "weight"),
    ("length", "ball_girth", "heel_girth", "ankle_girth", "stature", "weight"),
    ("length", "ball_girth", "heel_girth", "calf_girth", "stature", "weight"),
    ("ball_girth", "heel_girth", "ankle_girth", "calf_girth", "stature", "weight"),
    ("weight",),
    ("stature",),
    ("stature", "weight"),
)
CHILD_KNOWNS = (
    (),
    ("length",),
    ("stature",),
    ("stature", "weight"),
    ("length", "stature"),
    ("length", "stature", "weight"),
    ("length", "calf_girth"),
    ("length", "ankle_girth"),
)
NORMAL_80 = 1.2816  # NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1


def refitted(text: str) -> ModuleType:
    """The engine's `population` over another table of figures, as a module of its own."""
    figures = ModuleType("engine.people.population_table")
    exec(compile(text, "figures made for a test", "exec"), figures.__dict__)  # noqa: S102
    spec = importlib.util.find_spec("engine.people.population")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    table, estimates = "engine.people.population_table", "engine.people.population"
    kept = sys.modules[table], sys.modules[estimates]
    package = sys.modules["engine.people"]
    try:
        sys.modules[table] = figures
        sys.modules[estimates] = module  # dataclasses look their module up
        package.population_table = figures  # type: ignore[attr-defined]
        spec.loader.exec_module(module)
    finally:
        sys.modules[table], sys.modules[estimates] = kept
        package.population_table = kept[0]  # type: ignore[attr-defined]
    return module


Person = tuple[str, float, dict[str, float]]  # sex, age, measures in mm and kg
Fold = tuple[ModuleType, maker.Survey, maker.Survey, maker.Survey, maker.Survey]


def people_of(
    survey: maker.Survey, columns: dict[str, str], logged: set[str], sexes: str
) -> Iterator[Person]:
    """Those of the survey's rows with sex in `sexes`."""
    for sex, age, row in zip(survey.sex, survey.age, survey.values, strict=True):
        if sex in sexes:
            pairs = zip(columns, map(float, row), strict=True)
            yield sex, float(age), {n: math.exp(x) if n in logged else x for n, x in pairs}


def judge(
    module: ModuleType,
    people: Sequence[Person],
    names: tuple[str, ...],
    sex: Sex | None,
    measures: list[str],
    *,
    noise: np.random.Generator | None = None,
    tell_age: bool = True,
) -> dict[str, list[tuple[str, float, float]]]:
    """By measure, each one's sex, error in mm and error in sd; with noise readings are 2 % off."""
    found: dict[str, list[tuple[str, float, float]]] = {m: [] for m in measures}
    for row_sex, age, person in people:
        if any(math.isnan(person[n]) for n in names):
            continue
        known = {n: (person[n], 0.0) for n in names}
        if noise is not None:
            known = {
                n: (v * (1 + 0.02 * noise.standard_normal()), 0.02 * v)
                for n, (v, _) in known.items()
            }
        answer = module.estimate(known, sex, age if tell_age else None)
        for m in measures:
            if not math.isnan(person[m]):
                error = person[m] - answer[m].value
                found[m].append((row_sex, error, error / answer[m].sd))
    return found


def coverage(rows: list[tuple[str, float, float]]) -> float:
    """Share inside the 80 % interval; each sex that is there counts the same."""
    shares = []
    for sex in sorted({row[0] for row in rows}):
        inside = [abs(off) < NORMAL_80 for row_sex, _, off in rows if row_sex == sex]
        shares.append(sum(inside) / len(inside))
    return sum(shares) / len(shares)


def equal_sexes(people: Sequence[Person]) -> maker.Array:
    """What each person counts for, so that each sex that is there counts the same; 1 in sum."""
    sexes = np.array([sex for sex, _, _ in people])
    share: maker.Array = np.zeros(len(people))
    for sex in set(sexes):
        share[sexes == sex] = 1 / np.sum(sexes == sex) / len(set(sexes))
    return share
