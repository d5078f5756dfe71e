"""The foot where it was not measured, or read in units that were not written."""

from __future__ import annotations

from typing import Any

import pytest

from engine.sock import plan as planning
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
    broad = noted(plan({"foot.toe_breadth": "110 mm", "other_foot.toe_breadth": "110 mm"}))
    assert "Measure both again" in broad["foot.toe_breadth"]
    assert broad["other_foot.toe_breadth"] == "Both feet are alike here."


@pytest.mark.parametrize(("mm", "words"), [("283.34", "268"), ("310", "5,000 or fewer")])
def test_how_rare_a_measure_is_and_that_a_survey_cannot_tell_what_is_rarer(
    mm: str, words: str
) -> None:
    """The survey's women: 246.37 mm, variance 156.23, and the tape's 2.5 mm beside it, so an sd of
    12.75. 283.34 mm are 2.9 of them off, as 1 in 268 is (any table of the normal), 310 mm are 5.
    """
    note = noted(plan({"foot": {"length": f"{mm} mm"}}))["foot.length"]
    assert f"about 1 foot in {words} is like that." in note


def test_a_guess_says_whose_feet_it_is_from() -> None:
    """1,654 women and 3,414 men of the survey have all the measures (`population_table`)."""
    length = {"foot": {"length": "246 mm"}}

    def ball(person: dict[str, Any]) -> str:
        found: str = plan({**length, "person": person})["measures"]["ball_girth"]["words"]
        return found

    army = "of the US Army in 2012"
    assert ball({"sex": "woman"}).startswith(f"From 1,654 women {army}")
    assert ball({"sex": "man"}).startswith(f"From 3,414 men {army}")
    assert ball({}).startswith(f"From 1,654 women and 3,414 men {army}")
    assert ball({"age": 12}).startswith("Very roughly: a knitters’ rule of thumb")


def test_a_shoe_size_without_its_system_is_asked_for_it_and_a_wrong_one_told_once() -> None:
    bare = {"foot": {}, "person.shoe_size": {"size": "39"}}
    assert "system of this shoe size" in refused(bare)["person.shoe_size.system"]["message"]
    wrong = {"foot": {}, "person.shoe_size": {"size": "39", "system": "feet"}}
    assert "system of this shoe size" not in refused(wrong)["person.shoe_size.system"]["message"]


def test_a_length_by_the_shoe_is_a_guess_and_asks_for_the_tape() -> None:
    told = {"foot": {}, "person.shoe_size": {"size": "39", "system": "EU"}}
    length = plan(told)["measures"]["length"]
    assert length["from"] == "estimated"
    assert length["words"] == "By shoe size EU 39. Measure the foot if you can."


def test_one_said_to_be_a_child_is_held_against_children() -> None:
    """At 230 mm a foot of unknown age is taken for an adult's."""
    told = {"foot": {"length": "230 mm"}, "person": {"child": True}}
    assert "American children" in plan(told)["measures"]["calf_girth"]["words"]
    assert "American" not in plan({**told, "person": {}})["measures"]["calf_girth"]["words"]


@pytest.mark.parametrize(
    ("sex", "whom"), [("woman", "for a woman"), ("man", "for a man"), (None, "for an adult")]
)
def test_a_lone_measure_is_rare_among_people_and_beside_nothing(sex: str | None, whom: str) -> None:
    """340 mm is longer than any foot of ANSUR II 2012 (4,082 men, 1,986 women)."""
    lone = noted(plan({"foot": {"length": "340 mm"}, "person.sex": sex, "person.age": 40}))
    assert lone["foot.length"].startswith(f"This is large {whom}: ")
    two = {"length": "340 mm", "ball_girth": "228 mm"}
    beside = noted(plan({"foot": two, "person.sex": sex, "person.age": 40}))
    assert "beside the other measures" in beside["foot.length"]
    assert whom not in beside["foot.length"]
