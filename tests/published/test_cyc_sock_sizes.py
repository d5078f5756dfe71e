"""Planned socks against the Craft Yarn Council's table of feet.

Craft Yarn Council, foot sizes (www.YarnStandards.com), all from memory: girth, height and length in
inches by US shoe size. Each row covers several sizes and says not which of them its figures are
for; the length fits the largest size of the adults' rows and the middle one of the children's.

Tolerances: 1/2 in on the length (5/8 in for children), that is one and a half to two shoe sizes,
half of what a row covers; the height of adults' socks between the engine's height above the heel
and its height above the floor, as the table does not say which it is; 1 in on the children's.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import fit, inches, plan

Row = tuple[float, float, float, float, float]
# first and last size, girth, height, length
ROWS: dict[str, list[Row]] = {
    "US child": [
        (0, 4, 4.5, 2.5, 4),
        (4, 8, 5.5, 3.5, 5),
        (7, 11, 6, 4.5, 6),
        (10, 15, 6.5, 5.5, 7.5),  # 10 to 2: the count goes on from 13 with 1, so 2 is 15
    ],
    "US youth": [(2, 6, 7, 6.5, 8)],
    "US women": [(3, 6, 7, 6.5, 9), (6, 9, 8, 7, 10), (8, 12, 9, 7.5, 11)],
    "US men": [
        (6, 8, 7, 7, 9.5),
        (8.5, 10, 8, 7.5, 10.5),
        (10.5, 12, 9, 8, 11),
        (12.5, 14, 10, 8.5, 11.5),
    ],
}
ADULTS = [(system, row) for system in ("US women", "US men") for row in ROWS[system]]
CHILDREN = [(system, row) for system in ("US child", "US youth") for row in ROWS[system]]


def sock(system: str, size: float, girth: float) -> dict[str, Any]:
    """A sock for a shoe size and nothing else, on the cylinder nearest the printed girth."""
    slots = 2 * round(girth * 7.5 / 2)
    who = {"US women": "woman", "US men": "man"}.get(system)
    changes: dict[str, Any] = {
        "foot": {},
        "person": {"sex": who, "shoe_size": {"system": system, "size": size}},
        "cylinder.slots": slots,
    }
    return plan(changes)


@pytest.mark.parametrize(("system", "row"), ADULTS, ids=str)
def test_foot_of_adults(system: str, row: Row) -> None:
    _, last, girth, _, length = row
    assert inches(sock(system, last, girth), "foot_length") == pytest.approx(length, abs=1 / 2)


@pytest.mark.parametrize(("system", "row"), CHILDREN, ids=str)
def test_foot_of_children(system: str, row: Row) -> None:
    first, last, girth, _, length = row
    middle = sock(system, (first + last) / 2, girth)
    assert inches(middle, "foot_length") == pytest.approx(length, abs=5 / 8)


@pytest.mark.parametrize("system", ROWS)
def test_the_rows_stand_in_the_same_order(system: str) -> None:
    feet = [
        inches(sock(system, (first + last) / 2, girth), "foot_length")
        for first, last, girth, _, _ in ROWS[system]
    ]
    assert feet == sorted(set(feet))


@pytest.mark.parametrize(("system", "row"), ADULTS, ids=str)
def test_height_of_adults(system: str, row: Row) -> None:
    """With the leg left to the engine."""
    _, last, girth, height, _ = row
    made = sock(system, last, girth)
    assert inches(made, "top_above_heel") < height < inches(made, "top_above_floor")


@pytest.mark.parametrize(("system", "row"), CHILDREN, ids=str)
def test_height_of_children(system: str, row: Row) -> None:
    first, last, girth, height, _ = row
    made = sock(system, (first + last) / 2, girth)
    assert inches(made, "top_above_heel") == pytest.approx(height, abs=1)


@pytest.mark.parametrize("size", [6, 7, 8, 9])
def test_the_printed_girth_of_the_middle_woman_is_comfortable(size: float) -> None:
    """8 in, a 60-slot tube, for sizes 6 to 9; the outer rows leave more stretch to the knitter."""
    made = sock("US women", size, 8)
    assert made["counts"]["needles"] == 60
    assert fit(made, "ball")["verdict"] == "comfortable"
