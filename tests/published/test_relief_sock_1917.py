"""A sock of 1917 knitted as it was ordered.

Red Cross Knitting, The Garden Island (Lihue, Hawaii), volume 13 number 49, 4 December 1917, page 4
(nupepa-hawaii.com): length 11 in from the top of the leg to the division for the heel, leg and foot
4 in wide, foot 10 1/2 to 12 in, 11 and 11 1/2 in on average.

Tolerances: 1/16 in on the width, half a round (1/19 in at 9.6 rounds per inch) on the lengths.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from tests.asking import inches, plan, refused

ROUNDS = 9.6
HALF_A_ROUND = 0.5 / ROUNDS + 0.002  # and what 0.1 mm rounds off
FEET = ["10 1/2 in", "11 in", "11 1/2 in", "12 in"]
NO_FOOT: dict[str, object] = {"foot": {}, "person.sex": "man"}


def inch(text: str) -> float:
    whole, _, half = text.removesuffix(" in").partition(" ")
    return float(whole) + (0.5 if half else 0)


@pytest.mark.parametrize("foot", FEET)
def test_leg_and_foot_are_4_inches_wide_on_60_slots(foot: str) -> None:
    sheet = plan({**NO_FOOT, "sock.foot_length_of_sock": foot})
    assert inches(sheet, "tube_girth") / 2 == pytest.approx(4, abs=1 / 16)


@pytest.mark.parametrize("foot", FEET)
def test_the_foot_is_knitted_as_given(foot: str) -> None:
    """No ease is taken off a sock's own length, whatever ease is asked for."""
    for ease in (None, "0 %", "6 %"):
        changes = {"sock.foot_length_of_sock": foot, "sock.length_ease": ease}
        sheet = plan({**NO_FOOT, **changes})
        assert inches(sheet, "foot_length") == pytest.approx(inch(foot), abs=HALF_A_ROUND)
        counts = sheet["counts"]
        turned = counts["heel"]["rows_each_way"] + counts["toe"]["rows_each_way"]
        assert counts["foot"]["rounds"] == pytest.approx(inch(foot) * ROUNDS - turned, abs=0.5)


def test_the_leg_of_11_inches_down_to_the_heel() -> None:
    """A hem of 20 rounds is 10 deep, so 11 in want 11 x 9.6 - 10 = 95.6 rounds of leg: 96."""
    changes = {"sock.foot_length_of_sock": "11 in", "sock.cuff.rounds": 20, "sock.leg.rounds": 96}
    sheet = plan({**NO_FOOT, **changes})
    assert inches(sheet, "top_above_heel") == pytest.approx(11, abs=HALF_A_ROUND)


def test_the_sizes_stand_in_their_order() -> None:
    found = [plan({**NO_FOOT, "sock.foot_length_of_sock": foot}) for foot in FEET]
    rounds = [sheet["counts"]["foot"]["rounds"] for sheet in found]
    assert rounds == sorted(set(rounds))
    assert [b - a for a, b in pairwise(rounds)] == pytest.approx([ROUNDS / 2] * 3, abs=1)


def test_the_leg_width_read_for_a_foot_is_refused() -> None:
    """4 in would be the sock laid flat: no sock has a foot of 4 in at 60 slots."""
    problem = refused({**NO_FOOT, "sock.foot_length_of_sock": "4 in"})["sock.foot_length_of_sock"]
    assert problem["way_out"]
