"""How figures are written: each worked by hand, at and beside where the writing changes."""

from __future__ import annotations

import pytest

from engine.read import units


@pytest.mark.parametrize(
    ("value", "whole"), [(2.4, 2), (2.5, 3), (3.5, 4), (2.5 - 1e-8, 2), (2.5 - 1e-10, 3), (-0.4, 0)]
)
def test_halves_are_rounded_up_also_where_an_inch_made_them_a_little_less(
    value: float, whole: int
) -> None:
    assert units.nearest(value) == whole


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [(9.0, 1, "9"), (9.25, 2, "9.25"), (9.2, 2, "9.2"), (10.0, 0, "10"), (100.04, 1, "100")],
)
def test_a_number_has_no_zeros_behind_it(value: float, places: int, text: str) -> None:
    assert units.number(value, places) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (6.0, "6"),
        (6.25, "6¼"),
        (6.5, "6½"),
        (6.75, "6¾"),
        (0.5, "½"),
        (6.3, "6.3"),
        (6.333, "6.33"),
    ],
)
def test_a_mark_is_written_in_quarters(value: float, text: str) -> None:
    assert units.mark(value) == text


@pytest.mark.parametrize(
    ("mm", "inches", "cm"),
    [
        (228.6, "9 in", "22.9 cm"),
        (238.125, "9 3/8 in", "23.8 cm"),
        (3.175, "1/8 in", "0.3 cm"),
        (22.225, "7/8 in", "2.2 cm"),
        (25.4, "1 in", "2.5 cm"),
        (1.5, "0 in", "0.1 cm"),
        (1.6, "1/8 in", "0.2 cm"),
    ],
)
def test_a_length_by_the_tape(mm: float, inches: str, cm: str) -> None:
    """An eighth of an inch is 3.175 mm."""
    assert (units.inches(mm), units.centimetres(mm)) == (inches, cm)
    assert units.length_text(mm, "in") == inches
    assert units.length(mm, "cm") == {
        **{"value": round(mm, 1), "unit": "mm"},
        **{"text": cm, "other": inches},
    }


def test_a_range_is_one_length_where_both_read_alike() -> None:
    assert units.length_range(234.95, 241.3, "in") == "9 1/4 to 9 1/2 in"
    assert units.length_range(234.95, 235.2, "in") == "9 1/4 in"


def test_a_stitch_is_written_to_a_tenth_of_a_mm_and_a_hundredth_of_an_inch() -> None:
    """14.24 mm are 0.5606 in."""
    found = units.small_length(14.237, "in")
    assert found == {"value": 14.24, "unit": "mm", "text": "0.56 in", "other": "14.2 mm"}


def test_stitches_per_length() -> None:
    """0.3 a mm are 7.62 an inch and 30 to 10 cm."""
    found = units.per_length(0.2952756, "in")
    assert found == {"value": 0.29528, "unit": "/mm", "text": "7.5 / in", "other": "29.5 / 10 cm"}


def test_a_length_of_yarn() -> None:
    """A yard is 914.4 mm."""
    found = units.yarn_length(91_440, "in")
    assert found == {"value": 91.44, "unit": "m", "text": "100 yd", "other": "91 m"}
    assert units.yarn_length(91_440, "cm", 1)["text"] == "91.4 m"


@pytest.mark.parametrize(
    ("grams", "metric", "imperial"),
    [
        (100.0, "100 g", "3.5 oz"),
        (0.5, "under 1 g", "under 0.1 oz"),
        (0.51, "1 g", "under 0.1 oz"),
        (1.41, "1 g", "under 0.1 oz"),
        (1.42, "1 g", "0.1 oz"),
        (0.6, "1 g", "under 0.1 oz"),
    ],
)
def test_a_weight_of_yarn(grams: float, metric: str, imperial: str) -> None:
    """An ounce is 28.3495 g; 0.05 of it is 1.417 g."""
    found = units.weight(grams)
    assert (found["text"], found["other"]) == (metric, imperial)
    assert found["value"] == grams
    assert units.weight(100.0, 2)["other"] == "3.53 oz"
