"""Yarn numbers that are left half unsaid or out of reach, and how sure enough is written."""

from __future__ import annotations

import pytest

from engine.answers import yarn_sheet
from engine.fabric import yarn
from engine.read.errors import Unreadable


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("50 g = 210 m", 50 / 210 * 1000),
        ("210 m / 50 g", 50 / 210 * 1000),
        ("420 m / 100 g", 100 / 420 * 1000),
        ("4 m / g", 250.0),  # where no number stands it is one
        ("Nm 15/3", 200.0),
        ("Nm 3/15", 200.0),
        ("Nm 15", 1000 / 15),
        ("tex 60/4", 240.0),
    ],
)
def test_numbers_by_hand(text: str, tex: float) -> None:
    assert yarn.read_number(text) == pytest.approx(tex)


@pytest.mark.parametrize(
    ("text", "words"),
    [("1 tex", "finer than sewing thread"), ("9000 tex", "thicker than rug yarn")],
)
def test_out_of_reach_on_either_side(text: str, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        yarn.read_number(text)


@pytest.mark.parametrize("text", ["0 tex", "0 m / 100 g", "Nm 0", "400 m / 0 g"])
def test_none_of_it_is_no_yarn(text: str) -> None:
    with pytest.raises(Unreadable, match="cannot be 0"):
        yarn.read_number(text)


@pytest.mark.parametrize(
    ("likely", "text"),
    [
        (0.9951, "more than 99 %"),
        (0.9949, "99 %"),
        (0.504, "50 %"),
        (0.0051, "1 %"),
        (0.0049, "less than 1 %"),
    ],
)
def test_a_likelihood_is_never_written_as_none_or_all(likely: float, text: str) -> None:
    assert yarn_sheet._percent(likely) == text
