"""Makes `engine/people/population_table.py`, the figures about people, from two public surveys.

    python3 build/population_table.py ADULTS.csv CHILDREN.csv [--out FILE]

Adults are kept as means and covariances, of women, of men, and of an equal mix of the two (within
and between the sexes), with the weight as its natural logarithm: body weight is lopsided, its
logarithm is not. Children grow, so everything about them is kept in logarithms: means at certain
ages with straight lines between, and covariances of what is left once age is allowed for; and once
more without age, for a small child of unknown age.

The ankles of two thirds of the children were not measured (a part of the survey taken at random),
so the ankle's figures are carried over by its regression on the other measures in the rows that
have it: the maximum-likelihood answer for values missing in such steps (T. W. Anderson 1957,
J. American Statistical Association 52, 200; from memory).
"""

from __future__ import annotations

import argparse
import csv
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

import numpy as np
import numpy.typing as npt

Array: TypeAlias = npt.NDArray[np.float64]

ADULT_COLUMNS = {
    "length": "footlength",
    "ball_girth": "balloffootcircumference",
    "heel_girth": "heelanklecircumference",
    "ankle_girth": "anklecircumference",
    "calf_girth": "calfcircumference",
    "stature": "stature",
    "weight": "weightkg",
}
CHILD_COLUMNS = {  # the ankle last: the one that most rows lack
    "length": "footlength",
    "calf_girth": "calfcircumference",
    "stature": "stature",
    "weight": "weight_kg",
    "ankle_girth": "anklecircumference",
}
SEXES = {"woman": "F", "man": "M", "either": "FM"}
AGES = (2, 4, 6, 8, 10, 12, 14, 16, 18)  # years, where the growth curves bend
CURVE_UNTIL = 19  # years: rows that bear the last knot
AGELESS_UNTIL = 10  # years: whom a foot shorter than every adult's mostly belongs to

HEADER = '''\
"""Figures about people: made by build/population_table.py, not by hand.

Adults: ANSUR II, 2012 survey of US Army personnel, public release; columns as defined in Gordon et
al. 2014, NATICK/TR-15/007. Children: Snyder et al. 1977, UM-HSRI-77-17, the US child survey of
1975-77. Lengths in mm, weight in kg; logarithms are natural.

A covariance is its lower triangle, one row for each name. `either` is an equal mix of the sexes.
"""

from __future__ import annotations

from typing import TypeAlias

Row: TypeAlias = tuple[float, ...]
Rows: TypeAlias = tuple[Row, ...]
'''


@dataclass(frozen=True)
class Survey:
    """Rows of a survey: sex "F" or "M", age in years, values (row, column), NaN if not measured."""

    sex: npt.NDArray[np.str_]
    age: Array
    values: Array

    def only(self, keep: npt.NDArray[np.bool_]) -> Survey:
        """These rows of it."""
        return Survey(self.sex[keep], self.age[keep], self.values[keep])

    def shares(self, sexes: str) -> Array:
        """What each row weighs: 0 outside `sexes`, and each sex the same in sum; total 1."""
        parts = [(self.sex == s) / np.sum(self.sex == s) for s in sexes]
        total: Array = np.sum(parts, axis=0) / len(parts)
        return total


def read(path: Path, columns: dict[str, str], age: str) -> Survey:
    """The rows that state age, sex and all `columns` but the last, which may be missing (NaN)."""
    with path.open(newline="", encoding="utf-8") as lines:
        rows = list(csv.DictReader(lines))
    needed = [age, "sex", *list(columns.values())[:-1]]
    rows = [r for r in rows if all(r[c] for c in needed)]
    values = [[float(r[c]) if r[c] else np.nan for c in columns.values()] for r in rows]
    return Survey(
        np.array([r["sex"] for r in rows]),
        np.array([float(r[age]) for r in rows]),
        np.array(values),
    )


def adults(path: Path) -> Survey:
    """The adults' rows: `ADULT_COLUMNS`, weight in logarithms."""
    survey = read(path, ADULT_COLUMNS, "age")
    survey.values[:, -1] = np.log(survey.values[:, -1])
    return survey


def children(path: Path) -> Survey:
    """The children's rows: `CHILD_COLUMNS`, all in logarithms."""
    survey = read(path, CHILD_COLUMNS, "age_years")
    return Survey(survey.sex, survey.age, np.log(survey.values))


def moments(survey: Survey, sexes: str) -> tuple[Array, Array]:
    """Mean and covariance of the mix; a single sex's covariance with n - 1 to within 0.1 %."""
    share = survey.shares(sexes)
    mean = share @ survey.values
    apart = survey.values - mean
    return mean, (apart * share[:, None]).T @ apart


def growth(survey: Survey, sexes: str, ages: Sequence[float]) -> tuple[Array, Array]:
    """Means (ages, columns) at `ages` and covariance about the lines between them, ages apart.

    One age means no curve. The last column may have gaps: it is fitted on age and on what the other
    columns leave, in the rows that have it.
    """
    share = survey.shares(sexes)
    hats = np.array([np.interp(survey.age, ages, one) for one in np.eye(len(ages))]).T
    whole, last = survey.values[:, :-1], survey.values[:, -1]
    curves = _fit(hats, whole, share)
    rest = whole - hats @ curves
    covariance = (rest * share[:, None]).T @ rest
    has = ~np.isnan(last)
    terms = np.hstack([hats, rest])[has]
    weight = share[has] / share[has].sum()
    found = _fit(terms, last[has], weight)
    curve, slope = found[: len(ages)], found[len(ages) :]
    unexplained = weight @ (last[has] - terms @ found) ** 2
    beside = covariance @ slope
    corner = np.array([[unexplained + slope @ beside]])
    means = np.column_stack([curves, curve])
    return means, np.block([[covariance, beside[:, None]], [beside[None, :], corner]])


def _fit(terms: Array, values: Array, share: Array) -> Array:
    """Least squares of `values` on `terms`, rows weighed by `share`."""
    root = np.sqrt(share)
    weighed = values * (root if values.ndim == 1 else root[:, None])
    found = np.linalg.lstsq(terms * root[:, None], weighed, rcond=None)[0]
    return np.asarray(found, dtype=np.float64)


def _rows(rows: Sequence[Sequence[float]], digits: str, indent: str) -> str:
    """A tuple of tuples as ruff would lay it out."""
    lines = [", ".join(f"{float(x):{digits}}" for x in row) for row in rows]
    lines = [
        f"{indent}    ({line}{',' if len(row) == 1 else ''}),"
        for line, row in zip(lines, rows, strict=True)
    ]
    return "(\n" + "\n".join(lines) + f"\n{indent})"


def _triangle(covariance: Array) -> list[list[float]]:
    return [list(row[: i + 1]) for i, row in enumerate(covariance)]


def _named(name: str, kind: str, entries: dict[str, str]) -> str:
    inside = "".join(f'    "{key}": {text},\n' for key, text in entries.items())
    return f"{name}: dict[str, {kind}] = {{\n{inside}}}\n"


def _names(name: str, columns: dict[str, str]) -> str:
    inside = "".join(f'    "{key}",\n' for key in columns)
    return f"{name} = (\n{inside})\n"


def table(grown: Survey, young: Survey) -> str:
    """The text of the module."""
    with_curve, small = young.only(young.age < CURVE_UNTIL), young.only(young.age < AGELESS_UNTIL)
    means, spreads, smallest = {}, {}, {}
    curves, residuals, ageless_means, ageless_spreads = {}, {}, {}, {}
    counts = {}
    for key, sexes in SEXES.items():
        mean, covariance = moments(grown, sexes)
        means[key] = "(" + ", ".join(f"{x:.5f}" for x in mean) + ")"
        spreads[key] = _rows(_triangle(covariance), ".7g", "    ")
        least = np.min(grown.values[np.isin(grown.sex, list(sexes))], axis=0)
        smallest[key] = "(" + ", ".join(f"{x:.0f}" for x in [*least[:-1], np.exp(least[-1])]) + ")"
        curve, covariance = growth(with_curve, sexes, AGES)
        curves[key] = _rows(curve.tolist(), ".6f", "    ")
        residuals[key] = _rows(_triangle(covariance), ".7g", "    ")
        curve, covariance = growth(small, sexes, (0.0,))
        ageless_means[key] = "(" + ", ".join(f"{x:.6f}" for x in curve[0]) + ")"
        ageless_spreads[key] = _rows(_triangle(covariance), ".7g", "    ")
        number = [int(np.sum(np.isin(s.sex, list(sexes)))) for s in (grown, with_curve, small)]
        counts[key] = f"({number[0]}, {number[1]}, {number[2]})"
    parts = [
        HEADER,
        "# Rows used: adults; children with age; small children without age.\n"
        + _named("PEOPLE", "tuple[int, int, int]", counts),
        "# Adults; mm, weight as a logarithm.\n" + _names("ADULT_NAMES", ADULT_COLUMNS),
        _named("ADULT_MEANS", "Row", means),
        _named("ADULT_SPREADS", "Rows", spreads),
        "# The smallest of each measure among these adults; mm and kg.\n"
        + _named("ADULT_SMALLEST", "Row", smallest),
        "# Children; all as logarithms.\n" + _names("CHILD_NAMES", CHILD_COLUMNS),
        f"CHILD_AGES = {AGES!r}  # years, one row of means for each\n"
        f"CHILD_UNTIL = {CURVE_UNTIL}  # years, whose rows were used\n",
        _named("CHILD_MEANS", "Rows", curves),
        _named("CHILD_SPREADS", "Rows", residuals),
        "# Small children, age not allowed for.\n"
        f"AGELESS_UNTIL = {AGELESS_UNTIL}  # years, as above\n",
        _named("AGELESS_MEANS", "Row", ageless_means),
        _named("AGELESS_SPREADS", "Rows", ageless_spreads),
    ]
    return "\n".join(parts)


def main(arguments: Sequence[str] | None = None) -> int:
    """Write the module; 0 when done."""
    parser = argparse.ArgumentParser(
        prog="python3 build/population_table.py",
        description="Makes the engine's figures about people.",
    )
    parser.add_argument("adults", type=Path, help="foot and leg columns of ANSUR II")
    parser.add_argument("children", type=Path, help="foot and leg columns of the 1977 survey")
    people = Path(__file__).resolve().parents[1] / "engine" / "people"
    parser.add_argument("--out", type=Path, default=people / "population_table.py")
    chosen = parser.parse_args(arguments)
    chosen.out.write_text(table(adults(chosen.adults), children(chosen.children)), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
