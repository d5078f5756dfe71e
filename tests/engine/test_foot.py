"""The foot where it was not measured, or read in units that were not written."""

from __future__ import annotations

from typing import Any

import pytest

from engine import plan as planning
from tests.asking import asked, noted, plan, refused


@pytest.mark.parametrize(("ease", "mm"), [("4 %", 238.1), ("0", 228.6), ("10 %", 254.0)])
def test_a_sock_of_given_length_is_meant_for_the_foot_it_fits(ease: str, mm: float) -> None:
    """9 in are 228.6 mm, the foot less the ease: 228.6 / 0.96 = 238.1."""
    sock = {"sock.foot_length_of_sock": "9 in", "sock.length_ease": ease}
    length = plan({"foot": {}, **sock})["measures"]["length"]
    assert length["value"] == pytest.approx(mm, abs=0.06)
    assert length["from"] == "estimated"


def test_a_length_that_was_set_is_exact_and_a_measured_one_as_sure_as_the_tape() -> None:
    """246.3 mm less 4 %, by a tape with an error of 2.5 mm (common practice)."""
    given = planning.make(asked({"sock.foot_length_of_sock": "9 in"}))
    assert (given.aimed, given.aimed_sd) == pytest.approx((228.6, 0.0), abs=1e-9)
    measured = planning.make(asked())
    assert (measured.aimed, measured.aimed_sd) == pytest.approx((246.3 * 0.96, 2.5 * 0.96))


@pytest.mark.parametrize(("units", "unit"), [("in", "lb"), ("cm", "kg")])
def test_a_weight_without_a_unit_is_in_the_one_of_the_page(units: str, unit: str) -> None:
    def calf(weight: str) -> Any:
        foot = {"foot": {"length": "246 mm"}, "person.weight": weight}
        return plan({"units": units, **foot})["measures"]["calf_girth"]["value"]

    assert calf("90") == calf(f"90 {unit}")


@pytest.mark.parametrize(("upper", "asked"), [(360, False), (361, True), (140, False), (139, True)])
def test_a_leg_rises_by_a_mm_in_each_and_ten_at_most(upper: int, asked: bool) -> None:
    """From 250 mm at a height of 100: 110 mm more or less at 200 (common practice)."""
    rows = [
        {"height": "100 mm", "girth": "250 mm"},
        {"height": "200 mm", "girth": f"{upper} mm"},
    ]
    notes = noted(plan({"sock.leg.girths": rows, "sock.leg.rounds": 90}))
    assert ("sock.leg.girths.1.girth" in notes) == asked


def test_a_measure_alike_on_both_feet_is_asked_about_at_the_first() -> None:
    rare = {"foot.calf_girth": "600 mm", "other_foot.calf_girth": "600 mm"}
    notes = noted(plan(rare))
    assert "Measure it again" in notes["foot.calf_girth"]
    assert notes["other_foot.calf_girth"] == "Both feet are alike here."


def test_a_shoe_size_without_its_system_is_asked_for_it_and_a_wrong_one_told_once() -> None:
    bare = {"foot": {}, "person.shoe_size": {"size": "39"}}
    assert "needs its system" in refused(bare)["person.shoe_size.system"]["message"]
    wrong = {"foot": {}, "person.shoe_size": {"size": "39", "system": "feet"}}
    assert "needs its system" not in refused(wrong)["person.shoe_size.system"]["message"]


def test_one_said_to_be_a_child_is_held_against_children() -> None:
    """At 230 mm a foot of unknown age is taken for an adult's."""
    told = {"foot": {"length": "230 mm"}, "person": {"child": True}}
    assert "American children" in plan(told)["measures"]["calf_girth"]["words"]
    assert "American" not in plan({**told, "person": {}})["measures"]["calf_girth"]["words"]
