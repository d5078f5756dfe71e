"""The first sock corrects the second: what is measured moves the counts as far as it is sure."""

from __future__ import annotations

import math
from typing import Any

import pytest

from engine.sock import plan as planning
from tests.asking import asked, noted, plan, refused

TURNED = 20 + 20  # rows of one half each of the customary heel and toe on 60 slots
LONG = {"foot_rounds": 49, "length": "250 mm"}


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
    """The textbook mean of two readings (NIST/SEMATECH e-Handbook, weighted means), by hand, of
    logarithms: told to 3 %, and a sock that scatters and was read to 3 mm.
    """
    cloth = planning.make(asked({"foot.heel_girth": None, "first_sock": LONG})).fabric
    assert cloth.along
    seen, told = math.log((49 + TURNED) / 250), math.log(9.6 / 25.4)
    weights = 1 / (cloth.along.scatter + (3 / 250) ** 2), 1 / 0.03**2
    by_hand = (weights[0] * seen + weights[1] * told) / sum(weights)
    assert cloth.rounds == pytest.approx(math.exp(by_hand), rel=1e-9)
    assert cloth.along.doubt == pytest.approx(1 / sum(weights))


def row(length: str, **more: Any) -> dict[str, Any]:
    """A finished sock of 49 foot rounds as a row of the swatches."""
    told = {"needles": 60, "rounds": 49 + TURNED, "length": length, "flat_width": "10 cm"}
    return {"kind": "sock", **told, **more}


def swatch(mark: int, wide: str, long: str) -> dict[str, Any]:
    return {"needles": 60, "rounds": 60, "flat_width": wide, "length": long, "mark": mark}


@pytest.mark.parametrize(
    "rows",
    [
        [row("235 mm"), row("239 mm", flat_width="101 mm"), row("233 mm"), row("236 mm")],
        [{"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}],
        [swatch(5, "9.6 cm", "14.7 cm"), swatch(7, "11 cm", "16.8 cm")],
        [swatch(5, "9.6 cm", "14.7 cm"), row("261 mm", mark=7, flat_width="11 cm")],
    ],
)
def test_sock_one_says_the_same_as_a_row_of_the_swatches(rows: list[dict[str, Any]]) -> None:
    mark = rows[0].get("mark")
    fabric = {"swatches": rows} if mark is None else {"swatches": rows, "mark": mark}
    base = {"foot.heel_girth": None, "fabric": fabric}
    one = {"length": "229 mm", "flat_width": "98 mm"}
    typed = row(**one) if mark is None else row(**one, mark=mark)
    as_row = planning.make(asked({**base, "fabric": {**fabric, "swatches": [typed, *rows]}}))
    as_one = planning.make(asked({**base, "first_sock": {"foot_rounds": 49, **one}}))
    assert as_one.exact_rounds == pytest.approx(as_row.exact_rounds, abs=1e-6)
    assert as_one.rounds_sd == pytest.approx(as_row.rounds_sd, rel=1e-9)


def test_a_sock_one_over_five_tubes_moves_them_by_a_sixth() -> None:
    """Five socks alike of 89 rounds on 235.5 mm, and a sixth 5 % shorter: it weighs a sixth, but
    that the shorter of two is read a little worse. (It was taken as if there were one before.)
    """
    rows = {"fabric": {"swatches": [row("235.5 mm")] * 5}, "foot.heel_girth": None}
    before = planning.make(asked(rows)).fabric.rounds
    one = {"foot_rounds": 49, "length": f"{235.5 / 1.05:.3f} mm"}
    after = planning.make(asked({**rows, "first_sock": one})).fabric.rounds
    assert math.log(after / before) == pytest.approx(math.log(1.05) / 6, rel=0.05)


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


def test_after_a_sock_as_foretold_the_counts_are_surer_and_after_an_odd_one_less() -> None:
    before = plan({"foot.heel_girth": None})["range"]["foot"]
    after, odd = (second(length)["range"]["foot"] for length in ("9.25 in", "8.2 in"))
    widths = [one["high"] - one["low"] for one in (after, before, odd)]
    assert widths == sorted(set(widths))


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
