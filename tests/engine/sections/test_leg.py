"""The leg: the rounds asked for, or as many as look usual under the foot."""

from __future__ import annotations

import pytest

from tests.asking import mm, plan, refused


def rounds(sheet: dict[str, dict[str, dict[str, int]]]) -> int:
    return sheet["counts"]["leg"]["rounds"]


@pytest.mark.parametrize("asked_for", [0, 1, 50, 200])
def test_rounds_asked_for_are_knitted(asked_for: int) -> None:
    sheet = plan({"sock.leg.rounds": asked_for})
    assert rounds(sheet) == asked_for
    assert mm(sheet, "leg_length") == pytest.approx(asked_for / 9.6 * 25.4, abs=0.06)
    knitted = [step["rounds"] for step in sheet["steps"] if step["part"] == "leg"]
    assert knitted == ([asked_for] if asked_for else [])


def test_one_round_is_one_round() -> None:
    sheet = plan({"sock.leg.rounds": 1})
    assert "1 round " in sheet["counts"]["leg"]["words"]
    assert "1 rounds" not in str(sheet["steps"])


def test_left_out_an_average_woman_has_about_50() -> None:
    """Within 2: the customary 50 is a round figure."""
    assert rounds(plan()) == pytest.approx(50, abs=2)


def test_left_out_it_keeps_its_length_whatever_the_fabric() -> None:
    """To half a round of the coarser fabric."""
    fine, coarse = plan({"fabric.rounds": "12 / in"}), plan({"fabric.rounds": "8 / in"})
    assert mm(fine, "leg_length") == pytest.approx(
        mm(coarse, "leg_length"), abs=0.5 / 8 * 25.4 + 1.1
    )
    assert rounds(fine) > rounds(coarse)


def test_left_out_it_grows_with_the_foot() -> None:
    found = [rounds(plan({"foot.length": f"{length} mm"})) for length in range(210, 300, 10)]
    assert found == sorted(found)
    assert found[-1] - found[0] > 10


@pytest.mark.parametrize("wrong", [-5, 601, "12.5", "many"])
def test_what_is_no_leg_is_refused(wrong: object) -> None:
    assert refused({"sock.leg.rounds": wrong})["sock.leg.rounds"]["way_out"]


def test_half_a_girth_among_whole_ones_is_asked_for() -> None:
    whole = {"height": "100 mm", "girth": "250 mm"}
    no_girth = [whole, {"height": "200 mm"}, {"height": "300 mm", "girth": "300 mm"}]
    assert set(refused({"sock.leg.girths": no_girth})) == {"sock.leg.girths.1.girth"}
    no_height = [whole, {"girth": "260 mm"}, {"height": "300 mm", "girth": "300 mm"}]
    assert set(refused({"sock.leg.girths": no_height})) == {"sock.leg.girths.1.height"}


def test_leg_and_cuff_are_what_stands_above_the_heel() -> None:
    """To the 0.1 mm each of them is rounded to."""
    sheet = plan()
    parts = mm(sheet, "leg_length") + mm(sheet, "cuff_depth")
    assert mm(sheet, "top_above_heel") == pytest.approx(parts, abs=0.11)
    assert mm(sheet, "top_above_floor") == pytest.approx(parts + mm(sheet, "heel_height"), abs=0.16)
