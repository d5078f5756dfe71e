"""The leg: the rounds asked for, or as many as look usual under the foot."""

from __future__ import annotations

from typing import Any

import pytest

from engine.answers import anonymous
from engine.sock import plan as planning
from tests.asking import asked, fit, mm, plan, refused


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


def test_a_footie_has_a_leg_of_0_to_6_rounds() -> None:
    """4 where none are told: common practice, no published source."""
    footie = {"sock.leg.kind": "footie"}
    assert rounds(plan(footie)) == 4
    assert "for a footie" in plan(footie)["counts"]["leg"]["words"]
    assert plan(footie)["range"]["leg"]["words"] == "Exact: set by custom."
    told = plan({**footie, "sock.leg.rounds": 4})
    assert told["range"]["leg"]["words"] == "Exact: you set it."
    for most in (0, 6):
        assert rounds(plan({**footie, "sock.leg.rounds": most})) == most
    problem = refused({**footie, "sock.leg.rounds": 7})["sock.leg.rounds"]
    assert "0 to 6" in problem["way_out"]


@pytest.mark.parametrize(
    "more",
    [
        {"height": "14 in"},
        {"bands": [{"rounds": 4}]},
        {"girths": [{"height": "9 in", "girth": "10 in"}]},
    ],
    ids=("height", "bands", "girths"),
)
def test_a_footie_is_not_shaped(more: dict[str, object]) -> None:
    assert {f"sock.leg.{name}" for name in more} <= set(
        refused({"sock.leg": {"kind": "footie", **more}})
    )


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


BAND = {"rounds": 30, "stitches": "7 / in"}
MARKS = {
    "swatches": [
        {"needles": 60, "flat_width": f"{w} mm", "rounds": 60, "length": f"{long} mm", "mark": at}
        for w, long, at in ((92, 140, 6), (112, 172, 10))
    ],
    "mark": 8,
}


def test_bands_are_knitted_as_they_were_told() -> None:
    """7 stitches for the foot's 7.5 are as much longer, round by round (Munden 1959)."""
    sheet = plan({"sock.leg.bands": [BAND, {"rounds": 20}]})
    leg = sheet["counts"]["leg"]
    assert [(band["rounds"], band["stitches"]["text"]) for band in leg["bands"]] == [
        (30, "7 / in"),
        (20, "7.5 / in"),
    ]
    long = (30 / (9.6 * 7 / 7.5) + 20 / 9.6) * 25.4
    assert mm(sheet, "leg_length") == pytest.approx(long, abs=0.06)
    assert sheet["range"]["leg"]["words"] == "Exact: you set it."
    knitted = [
        step["rounds"] for step in sheet["steps"] if step["part"] == "leg" and "rounds" in step
    ]
    assert knitted == [30, 20]


def test_a_band_at_a_mark_is_what_the_swatches_foretell() -> None:
    told = {
        "fabric": MARKS,
        "sock.leg.bands": [{"rounds": 30, "mark": "10"}, {"rounds": 20, "mark": 8}],
    }
    first, second = plan(told)["counts"]["leg"]["bands"]
    assert (first["mark"], second["mark"]) == (10, 8)
    # 60 stitches in 2 x 112 mm at mark 10; within 3 %, for two tubes make the line.
    assert first["stitches"]["value"] == pytest.approx(60 / 224, rel=0.03)


def test_bands_all_at_the_foots_own_are_a_plain_leg() -> None:
    sheet = plan({"sock.leg.bands": [{"rounds": 30}, {"rounds": 20}]})
    assert sheet["counts"]["leg"]["bands"] == []
    assert rounds(sheet) == 50


@pytest.mark.parametrize(
    ("leg", "field"),
    [
        ({"bands": [BAND], "rounds": 50}, "rounds"),
        ({"bands": [BAND], "height": "14 in"}, "height"),
        ({"bands": [BAND], "girths": [{"height": "9 in", "girth": "10 in"}]}, "girths"),
        ({"bands": [{"stitches": "7 / in"}]}, "bands.0.rounds"),
        ({"bands": [{}, {"rounds": 0}]}, "bands.1.rounds"),
        ({"bands": [{"rounds": 600}, {"rounds": 1}]}, "bands"),
        ({"bands": [{"rounds": 1}] * 41}, "bands"),
        ({"bands": [{**BAND, "mark": 9}]}, "bands.0.stitches"),
        ({"bands": [{}, {"rounds": 9, "mark": 9}]}, "bands.1.mark"),
        ({"bands": [{"rounds": 9, "stitches": "70 / in"}]}, "bands.0.stitches"),
        ({"bands": [{"rounds": 9, "tighter": 1}]}, "bands.0.tighter"),
    ],
)
def test_bands_that_cannot_be_are_told_beside_their_field(leg: object, field: str) -> None:
    told = refused({"sock.leg": leg})
    assert set(told) == {f"sock.leg.{field}"}
    assert told[f"sock.leg.{field}"]["way_out"]


def test_a_stitch_whose_rounds_no_sock_has_is_refused() -> None:
    """20 for 7.5 stitches to the inch makes 32 rounds of 12."""
    fine = {"fabric.rounds": "12 / in", "sock.leg.bands": [{"rounds": 9, "stitches": "20 / in"}]}
    assert set(refused(fine)) == {"sock.leg.bands.0.stitches"}


@pytest.mark.parametrize("mark", [1, 15, 900])
def test_a_mark_far_from_those_tried_tells_no_stitch(mark: int) -> None:
    far = {"fabric": MARKS, "sock.leg.bands": [{"rounds": 9, "mark": mark}]}
    told = refused(far)
    assert "too far" in told["sock.leg.bands.0.mark"]["message"]


RIBBED = {"cuff": {"kind": "set-up rib", "rounds": 23}, "leg": {"kind": "ribbed"}}


def test_a_ribbed_leg_has_10_plain_rounds_before_the_heel_unless_more_or_fewer_are_told() -> None:
    usual = plan({"sock": RIBBED})
    assert rounds(usual) == rounds(plan())
    knitted = [
        step["rounds"] for step in usual["steps"] if step["part"] == "leg" and "rounds" in step
    ]
    assert knitted == [rounds(usual) - 10, 10]
    for told, wanted in ((0, [40]), (5, [35, 5]), (40, [40])):
        leg = {"kind": "ribbed", "rounds": 40, "plain": told}
        sheet = plan({"sock": {**RIBBED, "leg": leg}})
        found = [s["rounds"] for s in sheet["steps"] if s["part"] == "leg" and "rounds" in s]
        assert found == wanted
        assert rounds(sheet) == 40


def test_only_a_rib_goes_on_and_only_a_ribbed_leg_is_plain_before_the_heel() -> None:
    assert set(refused({"sock": {**RIBBED, "cuff": {"kind": "hem"}}})) == {"sock.leg.kind"}
    assert set(refused({"sock.leg.plain": 5})) == {"sock.leg.plain"}
    leg = {"kind": "ribbed", "rounds": 20, "plain": 21}
    assert set(refused({"sock": {**RIBBED, "leg": leg}})) == {"sock.leg.plain"}
    for name, value in (("height", "14 in"), ("bands", [{"rounds": 4}])):
        leg = {"kind": "ribbed", name: value}
        assert f"sock.leg.{name}" in refused({"sock": {**RIBBED, "leg": leg}})


def test_a_ribbed_leg_holds_where_a_plain_one_lies_loose_and_is_tight_with_it() -> None:
    """Our derivation: it grips from its own girth on, 70 % of the tube's, and not before."""
    ankle = {"foot.ankle_girth": "190 mm"}  # in a tube of 203 mm
    assert fit(plan(ankle), "ankle")["level"] == "loose"
    ribbed = fit(plan({**ankle, "sock": RIBBED}), "ankle")
    assert ribbed["level"] == "good"
    assert ribbed["stretch"] == pytest.approx(190 / (0.7 * 203.2), abs=1e-3)
    for girth in ("235 mm", "250 mm", "270 mm"):
        both = [plan({"foot.ankle_girth": girth, "sock": sock}) for sock in ({}, RIBBED)]
        assert len({fit(sheet, "ankle")["level"] for sheet in both}) == 1


OVER: dict[str, Any] = {"cuff": {"kind": "rib"}, "leg": {"kind": "ribbed instep"}}


def test_a_rib_goes_on_over_the_instep_to_the_toe() -> None:
    """On 60 needles the instep has 30, of which each 2nd is a rib's but for the corner's: 14."""
    over, down = plan({"sock": OVER}), plan({"sock": RIBBED})
    assert over["counts"]["foot"]["rounds"] == down["counts"]["foot"]["rounds"]
    steps = {part: [one["text"] for one in over["steps"] if one["part"] == part]
             for part in ("leg", "heel", "foot")}  # fmt: skip
    assert steps["leg"][1].endswith("except the 14 over the instep.")
    assert any("Lift the 16 needles" in words for words in steps["heel"])
    assert "1×1 rib over the instep and plain on the sole" in steps["foot"][1]
    assert steps["foot"][2] == "Move the ribber’s stitches back to the cylinder."
    assert "ribbed, and on over the instep" in over["counts"]["leg"]["words"]


def test_a_foot_that_is_half_a_rib_grips_where_a_plain_one_is_loose() -> None:
    """203 mm plain; the instep's half narrows by 30 %, so 173 mm: an ankle-slim ball of 190 mm."""
    slim = {"foot.ball_girth": "190 mm", "sock.cuff.kind": "rib"}
    assert fit(plan(slim), "ball")["level"] == "bad"
    ribbed = fit(plan({**slim, "sock.leg.kind": "ribbed instep"}), "ball")
    assert ribbed["fabric"]["value"] == pytest.approx(60 / 7.5 * 25.4 * 0.85, abs=0.1)
    assert ribbed["level"] == "good"


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"cuff": {"kind": "hem"}}, "sock.leg.kind"),
        ({"heel": {"kind": "none"}}, "sock.leg.kind"),
        ({"leg": {**OVER["leg"], "rounds": 0}}, "sock.leg.rounds"),
        ({"leg": {**OVER["leg"], "plain": 5}}, "sock.leg.plain"),
        ({"leg": {**OVER["leg"], "height": "14 in"}}, "sock.leg.height"),
        ({"colors": {"foot": "4 A, 2 B"}}, "sock.colors.foot"),
    ],
)
def test_what_cannot_be_ribbed_over_the_instep(changes: dict[str, Any], field: str) -> None:
    assert set(refused({"sock": {**OVER, **changes}})) == {field}


def test_the_widest_heel_leaves_a_rib_over_the_instep() -> None:
    """16 of 24 needles, and every 6th on the ribber: of 8 less 2 at the corners one is a rib's."""
    small = {"cylinder.slots": 24, "foot": {"length": "10 cm"}}
    cuff = {"kind": "set-up rib", "every": 6, "rounds": 10}
    found = plan({**small, "sock": {**OVER, "cuff": cuff, "heel": {"needles": 16, "left": 8}}})
    told = [step["text"] for step in found["steps"]]
    assert any(words.endswith("except 1 over the instep.") for words in told)


def test_a_link_without_the_person_asks_for_the_rib_again() -> None:
    made = planning.make(asked({"sock": {**OVER, "heel": {"needles": 27, "left": 9}}}))
    bare = anonymous.without_person(asked({"sock": OVER}), made).request
    assert bare is not None
    assert bare["sock"]["leg"] == {"kind": "ribbed instep", "rounds": made.leg_rounds}
    assert made.with_foot(33).foot_rounds == 33
