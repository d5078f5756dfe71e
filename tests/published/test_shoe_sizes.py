"""Shoe sizes against figures printed by others.

- ISO 19407:2023, table 2, third hand: adults' sizes by foot length. The rows are printed to half a
  size; the formulas agree within 0.25 EU and 0.30 of the other scales.
- ISO 9407:2019: Mondopoint is the foot's length in mm. JIS S 5037:1998: the size is it in cm.
- The Brannock scale: men's 1 at 7 2/3 in, 1/3 in a size (from memory).
"""

from __future__ import annotations

import pytest

from engine.people.shoe_size import foot_length, size
from tests.engine.instructions.asking_sets import made, request

ROWS = [  # foot in mm, EU, UK, US men, US women
    (220, 35, 3, 4, 5),
    (230, 36.5, 4, 5, 6),
    (240, 38, 5.5, 6.5, 7.5),
    (250, 39.5, 6.5, 7.5, 8.5),
    (260, 41, 7.5, 8.5, 9.5),
    (270, 42.5, 9, 10, 11),
    (280, 44, 10, 11, 12),
    (290, 45.5, 11, 12, 13),
    (300, 47, 12.5, 13.5, 14.5),
]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row[0]} mm")
def test_adult_sizes_of_iso_19407(row: tuple[float, ...]) -> None:
    """The tolerances are the rounding of the printed rows."""
    mm, eu, uk, us_men, us_women = row
    assert size("EU", mm) == pytest.approx(eu, abs=0.25)
    assert size("UK", mm) == pytest.approx(uk, abs=0.30)
    assert size("US men", mm) == pytest.approx(us_men, abs=0.30)
    assert size("US women", mm) == pytest.approx(us_women, abs=0.30)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row[0]} mm")
def test_feet_of_iso_19407_lie_within_one_spread(row: tuple[float, ...]) -> None:
    """From a printed size back to the foot it is printed beside."""
    for system, printed in zip(("EU", "UK", "US men", "US women"), row[1:], strict=True):
        mm, sd = foot_length(system, printed)
        assert abs(mm - row[0]) < sd


@pytest.mark.parametrize(
    ("system", "a_size", "formula"),
    [
        ("EU", 39, (39 - 2) / 0.15),
        ("EU child", 30, 30 / 0.162),
        ("UK", 6.5, (6.5 + 23) / 3 * 25.4),
        ("UK child", 11, (11 + 12) / 3.24 * 25.4),
        ("US men", 9, (9 - 1 + 23) / 3 * 25.4),
        ("US women", 9, (9 - 2 + 23) / 3 * 25.4),
        ("US child", 11, (11 - 1 / 3 + 12) / 3.24 * 25.4),
    ],
)
def test_formulas_of_iso_19407(system: str, a_size: float, formula: float) -> None:
    """EU 0.15 mm + 2 (child 0.162 mm); UK 3 in - 23 (child 3.24 in - 12); US + 1, + 2, + 1/3."""
    assert foot_length(system, a_size)[0] == pytest.approx(formula, abs=0.05)


@pytest.mark.parametrize(("cm", "mm"), [(19.5, 195), (20.0, 200), (25.0, 250)])
def test_japanese_sizes_and_mondopoint_are_the_foot(cm: float, mm: float) -> None:
    """JIS S 5037:1998: the size is the foot in cm; ISO 9407:2019: it is the foot in mm."""
    assert foot_length("Japan", cm)[0] == pytest.approx(mm)
    assert foot_length("Mondopoint", mm)[0] == pytest.approx(mm)
    assert size("Japan", mm) == pytest.approx(cm)


@pytest.mark.parametrize("inches_over", [0, 1, 2, 4])
def test_mens_us_size_on_the_brannock_scale(inches_over: float) -> None:
    """1 at 7 2/3 in, three sizes an inch: the same line as ISO's, to the rounding of a float."""
    assert size("US men", (7 + 2 / 3 + inches_over) * 25.4) == pytest.approx(1 + 3 * inches_over)


def test_childrens_uk_sizes_run_on_into_the_adults() -> None:
    """After child 13 comes adult 1: the scale starts again at 13 (from memory)."""
    assert foot_length("UK child", 14)[0] == pytest.approx(foot_length("UK", 1)[0], abs=1.0)


def test_the_shoe_sizes_of_a_set_are_those_of_iso_19407() -> None:
    """A set's sizes by length; both round to half a size, so a cell may be half a size off."""
    table = made(request(), "length", [f"{row[0]} mm" for row in ROWS])
    (shoes,) = (
        block
        for block in table["document"]["all_sizes"]
        if block["kind"] == "table" and "EU" in block["head"]
    )
    assert shoes["head"][1:] == ["EU", "UK", "US women", "US men", "Japan"]
    for row, (mm, eu, uk, us_men, us_women) in zip(shoes["rows"], ROWS, strict=True):
        assert float(row["cells"][4]) == mm / 10, "JIS S 5037:1998"
        told = [float(cell) for cell in row["cells"][:4]]
        assert told == pytest.approx([eu, uk, us_women, us_men], abs=0.5)
