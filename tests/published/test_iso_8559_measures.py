"""One measure, one meaning: ISO 8559-1.

ISO 8559-1:2017, Size designation of clothes, Part 1: Anthropometric definitions for body
measurement, defines foot length, ankle girth, smallest leg girth and calf girth one by one (the
clauses themselves were not seen). So each is asked for by itself, moves what it is for and nothing
else, and is never read for another.

Tolerance: none; what is not moved stays the same to the last character.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import AVERAGE_WOMAN, fit, plan

# measure -> the places of the fit that it bears on, and what of the counts it may move
BEARS_ON = {
    "ball_girth": {"ball"},
    "heel_girth": {"heel", "over_heel"},
    "ankle_girth": {"ankle"},
    "calf_girth": {"calf"},
}
PLACES = ("ball", "heel", "over_heel", "ankle", "calf")
HEEL = {"sock.heel.needles": 30, "sock.heel.left": 10, "sock.leg.rounds": 150}


def changed(measure: str) -> dict[str, Any]:
    """The plan with one measure 12 mm larger, on a heel and leg that are given."""
    larger = float(AVERAGE_WOMAN[measure].split()[0]) + 12
    return plan({**HEEL, f"foot.{measure}": f"{larger} mm"})


def test_each_measure_is_kept_as_it_was_taken() -> None:
    measures = plan()["measures"]
    assert set(measures) == set(AVERAGE_WOMAN)
    for name, text in AVERAGE_WOMAN.items():
        assert measures[name]["from"] == "measured"
        assert f"{measures[name]['value']:.1f} mm" == text


@pytest.mark.parametrize("measure", BEARS_ON)
def test_a_girth_moves_its_own_places_and_no_other(measure: str) -> None:
    before, after = plan(HEEL), changed(measure)
    moved = {place for place in PLACES if fit(before, place) != fit(after, place)}
    assert moved == BEARS_ON[measure]
    assert after["counts"] == before["counts"]


def test_a_length_moves_the_rounds_and_no_girth() -> None:
    before, after = plan(HEEL), changed("length")
    assert after["counts"]["foot"]["rounds"] > before["counts"]["foot"]["rounds"]
    for place in ("ball", "heel", "over_heel", "ankle"):
        assert fit(after, place) == fit(before, place)


@pytest.mark.parametrize("measure", BEARS_ON)
def test_a_girth_left_out_is_estimated_and_says_so(measure: str) -> None:
    sheet = plan({f"foot.{measure}": None})
    assert sheet["measures"][measure]["from"] == "estimated"
    assert "US Army" in sheet["measures"][measure]["words"]
    for place in BEARS_ON[measure]:
        assert fit(sheet, place)["from"] == "estimated"
