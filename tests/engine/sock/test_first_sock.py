"""The first sock corrects the second: what is measured moves the counts as far as it is sure."""

from __future__ import annotations

import math
from typing import Any

import pytest

from engine.sock import first_sock
from tests.asking import noted, plan, refused

TURNED = 20 + 20  # rows of one half each of the customary heel and toe on 60 slots


def second(length: str, **more: Any) -> dict[str, Any]:
    """The plan of the second sock after a first with 49 foot rounds of this washed length."""
    changes = {"foot.heel_girth": None, "first_sock.foot_rounds": 49, "first_sock.length": length}
    return plan({**changes, **{name.replace("__", "."): value for name, value in more.items()}})


def test_as_planned_changes_nothing() -> None:
    """89 rounds at 9.6 per inch are 9.2708 in: the sock says just what was known."""
    before = plan({"foot.heel_girth": None})["counts"]
    after = second(f"{(49 + TURNED) / 9.6:.4f} in")["counts"]
    assert after["foot"]["rounds"] == before["foot"]["rounds"]
    assert after["foot"]["exact"] == pytest.approx(before["foot"]["exact"], abs=0.02)


def test_a_long_first_sock_makes_a_shorter_second_and_the_other_way() -> None:
    rounds = [
        second(f"{inches} in")["counts"]["foot"]["rounds"]
        for inches in (8.75, 9.0, 9.27, 9.5, 9.75)
    ]
    assert rounds == sorted(rounds, reverse=True)
    assert rounds[0] > rounds[2] > rounds[-1]


def test_readings_are_weighed_by_inverse_variance() -> None:
    """The textbook mean of two readings (NIST/SEMATECH e-Handbook, weighted means), by hand."""
    length_mm = 250.0
    seen, seen_sd = (49 + TURNED) / length_mm, math.hypot(1.5 / length_mm, 0.02)
    told, told_sd = 9.6 / 25.4, 0.025
    by_hand = (seen / seen_sd**2 + told / told_sd**2) / (1 / seen_sd**2 + 1 / told_sd**2)
    found = second("250 mm")["fabric"]["rounds"]["value"]
    assert found == pytest.approx(by_hand, abs=1e-5)


@pytest.mark.parametrize(("before", "seen", "both"), [(0.08, 0.06, 0.048), (0.025, 0.02, 0.02)])
def test_two_readings_are_as_sure_as_both_but_no_surer_than_the_next_sock(
    before: float, seen: float, both: float
) -> None:
    """By hand: 8 % and 6 % make 8 x 6 / hypot(8, 6) = 4.8 %. One sock is like the next to 2 %."""
    reading = first_sock._Seen("flat_width", 0.3, seen)
    assert first_sock._combined(0.3, before, reading) == pytest.approx((0.3, both))


def test_a_guess_from_the_yarn_gives_way_to_the_sock() -> None:
    guess = {"fabric.stitches": None, "fabric.rounds": None, "fabric.yarn": "400 m / 100 g"}
    sheet = second("9 in", first_sock__flat_width="4 in", **guess)
    knitted = (49 + TURNED) / 9
    assert sheet["fabric"]["rounds"]["value"] * 25.4 == pytest.approx(knitted, rel=0.005)
    assert sheet["sizes"]["tube_girth"]["value"] / 25.4 == pytest.approx(8, rel=0.01)
    assert not sheet["fabric"]["swatch_first"]


def test_the_second_matches_the_first_but_for_the_foot() -> None:
    first, then = plan({"foot.heel_girth": "32 cm"}), second("9.75 in", foot__heel_girth="32 cm")
    for part in ("cuff", "leg", "heel", "toe"):
        assert then["counts"][part] == first["counts"][part]
    said = noted(then)["first_sock.foot_rounds"]
    assert f"Knit {then['counts']['foot']['rounds']} foot rounds in sock two" in said


def test_the_counts_are_never_less_sure_than_before() -> None:
    before = plan({"foot.heel_girth": None})["range"]["foot"]
    after = second("9.25 in")["range"]["foot"]
    assert after["high"] - after["low"] <= before["high"] - before["low"]


def test_a_sock_that_cannot_be_of_this_fabric_is_asked_about() -> None:
    assert "first_sock.length" in noted(second("7 in"))
    assert "first_sock.length" not in noted(second("9 in"))
    wide = second("9.27 in", first_sock__flat_width="5 in")
    assert "first_sock.flat_width" in noted(wide)


@pytest.mark.parametrize(
    ("sock", "field"),
    [
        ({"foot_rounds": 49}, "first_sock.length"),
        ({"length": "9 in"}, "first_sock.foot_rounds"),
        ({"flat_width": "4 in"}, "first_sock.length"),
        ({"foot_rounds": 49, "length": "9.27 mm"}, "first_sock.length"),
        ({"foot_rounds": 300, "length": "9 in"}, "first_sock.length"),
        ({"foot_rounds": 49, "length": "9 in", "flat_width": "1 in"}, "first_sock.flat_width"),
        ({"rounds": 49}, "first_sock.rounds"),
    ],
)
def test_what_cannot_be_is_said_at_its_field(sock: dict[str, Any], field: str) -> None:
    assert field in refused({"first_sock": sock})


def test_a_first_sock_that_leaves_no_foot_round_is_told() -> None:
    """4.375 in are 42 rounds, 40 of them heel and toe. 42 on 122.4 mm are 0.343 a mm, half way to
    which from 0.378 the foot is 40 rounds long: none is left.
    """
    pockets = {"sock.heel.needles": 30, "sock.heel.left": 10, "sock.toe.left": 10}
    short = {**pockets, "sock.toe.needles": 30, "sock.foot_length_of_sock": "4.375 in"}
    assert plan(short)["counts"]["foot"]["rounds"] == 2
    told = {**short, "first_sock": {"foot_rounds": 2, "length": "122.4 mm"}}
    assert "alone are longer" in refused(told)["first_sock.length"]["message"]
    # 42 on 116.7 mm are 0.360 a mm, half way to which the foot is 41 rounds long: one is left
    told["first_sock"] = {"foot_rounds": 2, "length": "116.7 mm"}
    assert plan(told)["counts"]["foot"]["rounds"] == 1
