"""Heel and toe: rows, stitches and neighbours worked by hand, and what a girth can ask for."""

from __future__ import annotations

import pytest

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.sections import short_row
from engine.sections.short_rows import ShortRows
from tests.engine.socks import knitted

CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "gauge", (), 240.0, True, 1.8)


def test_the_smallest_pocket_row_by_row() -> None:
    """8 needles down to 6: narrow 1 to 8 and back, widen on the side away from the carrier."""
    rows = ShortRows("heel", 8, 6).walk()
    assert [(row.direction, row.first, row.last) for row in rows] == [
        *(("right", 1, 8), ("left", 7, 1)),
        *(("right", 2, 8), ("left", 8, 1)),
    ]
    assert [row.hold for row in rows] == [(8,), (1,), (), ()]
    assert [row.back for row in rows] == [(), (), (8,), (1,)]
    assert [row.in_work for row in rows] == [7, 6, 7, 8]
    assert knitted([ShortRows("heel", 8, 6)], Cylinder(24)).stitches == 8 + 7 + 7 + 8
    mirrored = ShortRows("heel", 8, 6).walk("right")
    assert [(row.direction, row.first, row.last) for row in mirrored] == [
        *(("left", 8, 1), ("right", 2, 8)),
        *(("left", 7, 1), ("right", 1, 8)),
    ]


@pytest.mark.parametrize(("needles", "left"), [(30, 10), (32, 10), (27, 9), (8, 2), (36, 12)])
def test_the_customary_number_is_the_legal_one_nearest_a_third(needles: int, left: int) -> None:
    """32 / 3 = 10.7, of which 10 is nearer than 12; 8 / 3 = 2.7."""
    assert short_row.customary_left(needles) == left


@pytest.mark.parametrize(
    ("needles", "numbers"),
    [
        (30, [6, 8, 10, 12, 14]),
        (24, [4, 6, 8, 10, 12]),  # both ends, 24 / 6 and 24 / 2, count
        (27, [5, 7, 9, 11, 13]),
        (8, [2, 4]),
    ],
)
def test_sensible_are_the_legal_ones_from_a_sixth_to_a_half(
    needles: int, numbers: list[int]
) -> None:
    assert short_row.sensible(needles) == numbers


@pytest.mark.parametrize(
    ("left", "lefts"),
    [(10, [6, 8, 10, 12, 14]), (6, [6, 8, 10]), (14, [10, 12, 14]), (4, [4, 6, 8]), (2, [2, 6])],
)
def test_beside_a_pocket_are_two_deeper_and_two_shallower_sensible_ones(
    left: int, lefts: list[int]
) -> None:
    found = short_row.beside(ShortRows("toe", 30, left), 2)
    assert found == tuple(ShortRows("toe", 30, one) for one in lefts)


@pytest.mark.parametrize(("girth", "needles"), [(60.0, 20), (310.0, 30), (900.0, 40)])
def test_a_heel_has_a_third_to_two_thirds_of_the_slots(girth: float, needles: int) -> None:
    """On 60 slots from 20 to 40, however small or large the heel."""
    assert short_row.needles_for(60, 30, CLOTH, girth) == needles


def test_a_pocket_s_girths_by_hand() -> None:
    """30 to 10 on 60 slots: (60 - 30 + 10) / 0.3 = 133.3, and twice hypot(20 / 0.6, 20 / 0.4)."""
    pocket = ShortRows("heel", 30, 10)
    assert pocket.girth(60, CLOTH) == pytest.approx(40 / 0.3 + 2 * 60.0925, abs=1e-3)
    assert pocket.halfway(CLOTH) == pytest.approx(40 / 0.3)
    assert (pocket.narrowing, pocket.widening, pocket.rows) == (20, 20, 40)
    assert knitted([pocket], Cylinder(60)).stitches == 820
