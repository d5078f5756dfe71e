"""What would narrow the foot rounds most is said only where it does, tried out here as a plan."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.asking import plan

LONGER = "measuring over more rounds"


def swatch(rounds: int, length: float) -> dict[str, Any]:
    return {
        "needles": 60,
        "flat_width": "10.2 cm",
        "rounds": rounds,
        "length": f"{length:.2f} mm",
    }


def foot_range(changes: dict[str, Any]) -> tuple[int, int, str]:
    found = plan(changes)["range"]["foot"]
    return found["low"], found["high"], found["words"]


def of(sheet_fabric: dict[str, Any], **changes: Any) -> dict[str, Any]:
    return {"fabric": {"swatch": sheet_fabric}, **changes}


@given(st.integers(10, 160), st.floats(2.4, 2.8), st.integers(200, 300))
def test_a_longer_swatch_is_asked_for_only_where_it_narrows(
    rounds: int, high: float, foot: int
) -> None:
    """A second plan over twice as many rounds of the same fabric is the judge."""
    exact = {"sock.foot_length_of_sock": f"{foot} mm"}  # so that only the fabric is in doubt
    low, top, words = foot_range({**of(swatch(rounds, rounds * high)), **exact})
    twice = foot_range({**of(swatch(2 * rounds, 2 * rounds * high)), **exact})
    narrows = twice[1] - twice[0] < top - low
    assert (LONGER in words) == narrows
    if not narrows and top > low:
        assert words.endswith("The rest is how one tube differs from the next.")


def test_a_short_swatch_is_worth_lengthening_and_a_long_one_is_not() -> None:
    assert LONGER in foot_range(of(swatch(12, 31.2)))[2]
    assert LONGER not in foot_range(of(swatch(200, 520)))[2]


def test_several_tubes_and_marks() -> None:
    short = [{**swatch(12, 31.2), "mark": 6}, {**swatch(12, 33), "mark": 9, "flat_width": "11 cm"}]
    long = [
        {**swatch(200, 520), "mark": 6},
        {**swatch(200, 550), "mark": 9, "flat_width": "11 cm"},
    ]
    exact = {"sock.foot_length_of_sock": "9 in"}
    assert LONGER in foot_range({"fabric": {"swatches": short, "mark": 6}, **exact})[2]
    assert LONGER not in foot_range({"fabric": {"swatches": long, "mark": 6}, **exact})[2]


@pytest.mark.parametrize(
    ("changes", "way"),
    [
        ({"foot.length": None, **of(swatch(200, 520))}, "measuring the foot itself"),
        ({"fabric": {"yarn": "400 m / 100 g"}}, "a swatch, washed and rested"),
        (
            {"fabric": {"swatch": {"needles": 60, "flat_width": "10.2 cm"}}},
            "counting the rounds of the swatch",
        ),
    ],
)
def test_what_is_least_known_is_named(changes: dict[str, Any], way: str) -> None:
    assert way in foot_range(changes)[2]


def test_of_sock_two_no_swatch_is_asked_for() -> None:
    two = {"first_sock": {"foot_rounds": 48, "length": "9 in"}}
    assert "swatch" not in foot_range({**of(swatch(60, 156)), **two})[2]


def test_the_words_hold_one_or_two_sentences() -> None:
    for changes in ({}, of(swatch(60, 156))):
        words = foot_range(changes)[2]
        assert words.startswith("Most likely ")
        assert words.endswith(".")
        assert "  " not in words
