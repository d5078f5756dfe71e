"""What would narrow the foot rounds most is said only where it does, tried out here as a plan."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.api import answer
from engine.say.message import Message
from tests.asking import asked, plan

Said = dict[str, Message]  # sentences by id


def swatch(rounds: int, length: float) -> dict[str, Any]:
    return {
        "needles": 60,
        "flat_width": "10.2 cm",
        "rounds": rounds,
        "length": f"{length:.2f} mm",
    }


def foot_range(changes: dict[str, Any]) -> tuple[int, int, Said]:
    """The range of the foot rounds, and what is said of it."""
    found = answer({"do": "plan", "request": asked(changes)})["range"]["foot"]
    words = found["words"]
    return (
        found["low"],
        found["high"],
        {one["say"]: one for one in words.get("sentences", (words,))},
    )


def of(sheet_fabric: dict[str, Any], **changes: Any) -> dict[str, Any]:
    return {"fabric": {"swatch": sheet_fabric}, **changes}


EXACT = {"sock.foot_length_of_sock": "240 mm"}  # so that only the fabric is in doubt


def width_of(span: Message | str) -> int:
    """How wide a range is as it is told."""
    return span["high"] - span["low"] if isinstance(span, Message) else 0


def promised(said: Said) -> tuple[str, int]:
    """The way that is told, and how wide the range is then."""
    return way_of(said), width_of(said["narrow-it"]["span"])


def way_of(said: Said) -> str:
    """The way that is told, "" where none is."""
    return said["narrow-it"]["way"] if "narrow-it" in said else ""


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
    if way_of(words) == "another-swatch":
        _, width = promised(words)
        assert width < top - low
        assert 0.75 * width - 1 <= two[1] - two[0] <= width


def test_measuring_a_short_swatch_over_more_rounds_is_seen_to_narrow_as_was_said() -> None:
    low, top, words = foot_range({**of(swatch(6, 15.6)), **EXACT})
    way, width = promised(words)
    twice = foot_range({**of(swatch(12, 31.2)), **EXACT})
    if way == "more-rounds":
        assert twice[1] - twice[0] == width < top - low
    else:
        assert width <= twice[1] - twice[0] < top - low


def test_a_short_swatch_is_worth_lengthening_and_a_long_one_is_not() -> None:
    short = [swatch(12, 31.2)] * 6
    assert promised(foot_range({"fabric": {"swatches": short}, **EXACT})[2])[0] == "more-rounds"
    assert promised(foot_range(of(swatch(200, 520)))[2])[0] != "more-rounds"


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
    rounds = round(240 * 60 / 156) - 40
    one = {"foot_rounds": rounds, "length": f"{(rounds + 40) * 156 / 60:.2f} mm"}
    two = foot_range({**of(swatch(60, 156)), **EXACT, "first_sock": one})
    width = width_of(words["sock-one-narrows"]["span"])
    assert 0.75 * width - 1 <= two[1] - two[0] <= width


def test_where_nothing_narrows_it_is_said_what_is_left() -> None:
    """Sock two after twenty socks, for a sock whose length was given."""
    rows = [{**swatch(90, 234 + 5 * (at % 3 - 1)), "kind": "sock"} for at in range(20)]
    one = {"foot_rounds": 50, "length": "234 mm"}
    words = foot_range({"fabric": {"swatches": rows}, **EXACT, "first_sock": one})[2]
    assert list(words) == ["foot-range", "rest-is-tubes"]


@pytest.mark.parametrize(
    ("changes", "way"),
    [
        ({"foot.length": None, **of(swatch(200, 520))}, "foot-itself"),
        (of(swatch(60, 156)), "another-swatch"),
        ({"fabric": {"yarn": "400 m / 100 g"}}, "swatch"),
        (
            {"fabric": {"swatch": {"needles": 60, "flat_width": "10.2 cm"}}},
            "count-rounds",
        ),
    ],
)
def test_what_is_least_known_is_named(changes: dict[str, Any], way: str) -> None:
    assert promised(foot_range(changes)[2])[0] == way


def test_of_sock_two_no_swatch_is_asked_for() -> None:
    two = {"first_sock": {"foot_rounds": 48, "length": "9 in"}}
    said = foot_range({**of(swatch(60, 156)), **two})[2]
    assert "swatch" not in way_of(said)


def test_the_words_hold_one_or_two_sentences() -> None:
    for changes in ({}, of(swatch(60, 156))):
        words = plan(changes)["range"]["foot"]["words"]
        assert words.startswith("Most likely ")
        assert words.endswith(".")
        assert "  " not in words
