"""What would narrow the foot rounds most is said only where it does, tried out here as a plan."""

from __future__ import annotations

import re
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


THEN = re.compile(r"narrow it most: (.*?) \(then (\d+)(?: to (\d+))?\)")
EXACT = {"sock.foot_length_of_sock": "240 mm"}  # so that only the fabric is in doubt


def promised(words: str) -> tuple[str, int]:
    """The way that is told, and how wide the range is then."""
    found = THEN.search(words)
    assert found, words
    way, low, high = found.groups()
    return way, int(high or low) - int(low)


@given(st.integers(20, 160), st.floats(2.4, 2.8), st.integers(200, 300))
def test_another_swatch_is_seen_to_narrow_as_was_said(rounds: int, high: float, foot: int) -> None:
    """A second plan, with a usual swatch besides that came out as the first, is the judge.

    Tubes alike tell of less scatter besides, which is no more foretold than that it is theirs.
    """
    exact = {"sock.foot_length_of_sock": f"{foot} mm"}
    one, usual = swatch(rounds, rounds * high), swatch(60, 60 * high)
    low, top, words = foot_range({**of(one), **exact})
    two = foot_range({"fabric": {"swatches": [one, usual]}, **exact})
    assert two[1] - two[0] <= top - low
    if "another swatch" in words:
        _, width = promised(words)
        assert width < top - low
        assert 0.75 * width - 1 <= two[1] - two[0] <= width


def test_measuring_a_short_swatch_over_more_rounds_is_seen_to_narrow_as_was_said() -> None:
    low, top, words = foot_range({**of(swatch(6, 15.6)), **EXACT})
    way, width = promised(words)
    twice = foot_range({**of(swatch(12, 31.2)), **EXACT})
    if way.startswith(LONGER):
        assert twice[1] - twice[0] == width < top - low
    else:
        assert width <= twice[1] - twice[0] < top - low


def test_a_short_swatch_is_worth_lengthening_and_a_long_one_is_not() -> None:
    short = [swatch(12, 31.2)] * 6
    assert LONGER in foot_range({"fabric": {"swatches": short}, **EXACT})[2]
    assert LONGER not in foot_range(of(swatch(200, 520)))[2]


def test_several_tubes_and_marks() -> None:
    short = [{**swatch(12, 31.2), "mark": 6}, {**swatch(12, 33), "mark": 9, "flat_width": "11 cm"}]
    low, top, words = foot_range({"fabric": {"swatches": short, "mark": 6}, **EXACT})
    _, width = promised(words)
    more = [*short, {**swatch(60, 156), "mark": 6}]
    found = foot_range({"fabric": {"swatches": more, "mark": 6}, **EXACT})
    assert found[1] - found[0] <= width + 1 < top - low


def test_sock_one_is_seen_to_narrow_as_was_said() -> None:
    """It comes out as foretold: 240 mm at the rounds per mm of the swatch."""
    words = foot_range({**of(swatch(60, 156)), **EXACT})[2]
    found = re.search(r"measured, makes it (\d+) to (\d+) for sock two", words)
    assert found
    rounds = round(240 * 60 / 156) - 40
    one = {"foot_rounds": rounds, "length": f"{(rounds + 40) * 156 / 60:.2f} mm"}
    two = foot_range({**of(swatch(60, 156)), **EXACT, "first_sock": one})
    width = int(found[2]) - int(found[1])
    assert 0.75 * width - 1 <= two[1] - two[0] <= width


def test_where_nothing_narrows_it_is_said_what_is_left() -> None:
    """Sock two after twenty socks, for a sock whose length was given."""
    rows = [{**swatch(90, 234 + 5 * (at % 3 - 1)), "kind": "sock"} for at in range(20)]
    one = {"foot_rounds": 50, "length": "234 mm"}
    words = foot_range({"fabric": {"swatches": rows}, **EXACT, "first_sock": one})[2]
    assert words.endswith("The rest is how one tube differs from the next.")


@pytest.mark.parametrize(
    ("changes", "way"),
    [
        ({"foot.length": None, **of(swatch(200, 520))}, "measuring the foot itself"),
        (of(swatch(60, 156)), "another swatch"),
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
