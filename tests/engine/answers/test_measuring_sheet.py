"""A measuring sheet that came back, against a ruler: what was printed too small reads too long."""

from __future__ import annotations

import pytest

from engine.read.reading import read_length
from tests.asking import answer


def off(units: str = "cm", **sheet: str) -> dict[str, str]:
    found: dict[str, str] = answer({"do": "off_sheet", "sheet": sheet, "units": units})["fields"]
    return found


@pytest.mark.parametrize(("bar", "read", "true"), [("97", "25", 242.5), ("10.2 cm", "25", 255)])
def test_the_bar_corrects_what_was_read_on_the_sheet(bar: str, read: str, true: float) -> None:
    """A foot of 242.5 mm covers 250 of a scale whose 100 mm are 97."""
    found = off(bar=bar, length=read)
    assert read_length(found["foot.length"], "cm").mm == pytest.approx(true, abs=0.5)


def test_in_inches_to_an_eighth() -> None:
    found = off("in", bar="97", length="10")
    assert read_length(found["foot.length"], "in").mm == pytest.approx(9.7 * 25.4, abs=25.4 / 16)


@pytest.mark.parametrize("bar", ["", "100", "10 cm"])
def test_a_sheet_in_its_size_is_taken_as_written(bar: str) -> None:
    assert off(bar=bar, length=" 24,5 ") == {"foot.length": " 24,5 "}


def test_a_tape_needs_no_correction() -> None:
    assert off(bar="90", ball_girth="23", toe_breadth="8,8") == {
        "foot.ball_girth": "23",
        "foot.toe_breadth": "8,8",
    }


@pytest.mark.parametrize(
    ("sheet", "field"),
    [
        ({"bar": "60"}, "sheet.bar"),
        ({"bar": "long"}, "sheet.bar"),
        ({"length": "far"}, "sheet.length"),
        ({"width": "9"}, "sheet.width"),
    ],
)
def test_what_cannot_be_is_said_at_its_field(sheet: dict[str, str], field: str) -> None:
    (problem,) = answer({"do": "off_sheet", "sheet": sheet})["errors"]
    assert problem["field"] == field
    assert problem["message"]
    assert problem["way_out"]
