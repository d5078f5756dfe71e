"""Rules of thumb of people who knit socks on circular machines.

Common practice, no published source. Each test states its rule; tolerances are the rule's own words
("9 to 10") or, where it says "about", an eighth of an inch, what an inch tape shows, unless said.
"""

from __future__ import annotations

import pytest

from tests.asking import fit, inches, noted, plan, refused

EIGHTH = 1 / 8
ROUNDS = ("9 / in", "9.5 / in", "9.6 / in", "10 / in")
FROM_YARN = {"fabric.stitches": None, "fabric.rounds": None}
SOCK_YARNS = ("400 m / 100 g", "412 m / 100 g", "425 m / 100 g")


@pytest.mark.parametrize(
    ("rounds", "foot_rounds"), [("9 / in", {41}), ("9.5 / in", {45, 46}), ("10 / in", {50})]
)
def test_foot_rounds_of_a_sock_foot_of_9_inches(rounds: str, foot_rounds: set[int]) -> None:
    """41 foot rounds at 9 rounds per inch, 45 or 46 at 9 1/2, 50 at 10."""
    sheet = plan({"sock.foot_length_of_sock": "9 in", "fabric.rounds": rounds, **CUSTOMARY})
    assert sheet["counts"]["foot"]["rounds"] in foot_rounds


CUSTOMARY = {
    "sock.heel.needles": 30,
    "sock.heel.left": 10,
    "sock.toe.needles": 30,
    "sock.toe.left": 10,
}


@pytest.mark.parametrize("yarn", SOCK_YARNS)
def test_sock_yarn_on_60_slots_is_about_8_inches_round(yarn: str) -> None:
    """From the yarn alone; about: a quarter of an inch."""
    sheet = plan({**FROM_YARN, "fabric.yarn": yarn})
    assert inches(sheet, "tube_girth") == pytest.approx(8, abs=1 / 4)


@pytest.mark.parametrize("yarn", SOCK_YARNS)
def test_sock_yarn_has_9_to_10_rounds_per_inch(yarn: str) -> None:
    """From the yarn alone; to the nearest tenth of a round, as the rule is told (9.6)."""
    rounds = plan({**FROM_YARN, "fabric.yarn": yarn})["fabric"]["rounds"]["value"] * 25.4
    assert 9 <= round(rounds, 1) <= 10


@pytest.mark.parametrize("rounds", ROUNDS)
def test_a_hem_of_20_rounds_is_about_an_inch_deep(rounds: str) -> None:
    sheet = plan({"sock.cuff.kind": "hem", "sock.cuff.rounds": 20, "fabric.rounds": rounds})
    assert inches(sheet, "cuff_depth") == pytest.approx(1, abs=EIGHTH)


def test_a_hem_is_half_as_deep_as_its_rounds() -> None:
    """And the other cuffs are as deep as theirs; to the 0.1 mm that sizes are rounded to."""
    depth = {
        kind: inches(plan({"sock.cuff.kind": kind, "sock.cuff.rounds": 24}), "cuff_depth")
        for kind in ("hem", "rib", "mock rib")
    }
    assert depth["hem"] == pytest.approx(24 / 2 / 9.6, abs=0.004)
    assert depth["rib"] == depth["mock rib"] == pytest.approx(24 / 9.6, abs=0.004)


@pytest.mark.parametrize(
    ("rounds", "remark"),
    [(10, True), (18, True), (20, False), (30, False), (40, False), (42, True), (60, True)],
)
def test_a_hem_under_20_or_over_40_rounds_is_remarked_on(rounds: int, remark: bool) -> None:
    """It is knitted all the same: the remark is no refusal."""
    sheet = plan({"sock.cuff.rounds": rounds})
    assert sheet["counts"]["cuff"]["rounds"] == rounds
    assert ("sock.cuff.rounds" in noted(sheet)) is remark


@pytest.mark.parametrize("rounds", [19, 21])
def test_a_hem_has_an_even_number_of_rounds(rounds: int) -> None:
    problem = refused({"sock.cuff.rounds": rounds})["sock.cuff.rounds"]
    assert str(rounds + 1) in problem["way_out"]


@pytest.mark.parametrize("rounds", ROUNDS)
def test_50_leg_rounds_reach_6_to_7_inches_above_the_heel(rounds: str) -> None:
    changes = {"sock.cuff.rounds": 20, "sock.leg.rounds": 50, "fabric.rounds": rounds}
    assert 6 <= inches(plan(changes), "top_above_heel") <= 7


@pytest.mark.parametrize("rounds", ROUNDS)
def test_the_heel_adds_about_2_inches_above_the_floor(rounds: str) -> None:
    """About: a quarter of an inch."""
    sheet = plan({"fabric.rounds": rounds, **CUSTOMARY})
    assert inches(sheet, "heel_height") == pytest.approx(2, abs=1 / 4)
    raised = inches(sheet, "top_above_floor") - inches(sheet, "top_above_heel")
    assert raised == pytest.approx(inches(sheet, "heel_height"), abs=0.01)


@pytest.mark.parametrize("heel_girth", ["310.3 mm", None], ids=["measured", "not measured"])
def test_60_slots_use_30_needles_narrow_to_10_and_go_back(heel_girth: str | None) -> None:
    """Chosen by the engine itself for an average woman."""
    counts = plan({"foot.heel_girth": heel_girth})["counts"]
    for pocket in (counts["heel"], counts["toe"]):
        assert (pocket["needles"], pocket["left"], pocket["rows"]) == (30, 10, 40)


@pytest.mark.parametrize("slots", [48, 54, 60, 64, 72, 80, 84, 96, 100])
def test_half_of_the_slots_and_about_a_third_left(slots: int) -> None:
    """About: the nearest number that leaves an even number of rows, so at most one off."""
    sheet = plan({"foot.heel_girth": None, "cylinder.slots": slots, "foot.length": "300 mm"})
    for pocket in (sheet["counts"]["heel"], sheet["counts"]["toe"]):
        assert pocket["needles"] == slots // 2
        assert abs(pocket["left"] - pocket["needles"] / 3) <= 1
        assert pocket["rows_each_way"] == pocket["needles"] - pocket["left"]
        assert pocket["rows"] == 2 * pocket["rows_each_way"]


def test_length_ease_is_2_to_6_percent() -> None:
    """4 % where nothing is said; each whole percent of the rule to half a round."""
    half_a_round = 0.5 / 9.6 + 0.002
    foot = 246.3 / 25.4
    for text, share in (("2 %", 0.02), ("3 %", 0.03), ("0.05", 0.05), ("6 %", 0.06), (None, 0.04)):
        made = inches(plan({"sock.length_ease": text}), "foot_length")
        assert made == pytest.approx(foot * (1 - share), abs=half_a_round)


@pytest.mark.parametrize(
    ("stretch", "verdicts"),
    [
        (0.95, {"baggy"}),
        (0.99, {"baggy"}),
        (1.06, {"comfortable"}),
        (1.10, {"comfortable"}),
        (1.17, {"comfortable"}),
        (1.20, {"snug"}),
        (1.26, {"tight"}),
        (1.35, {"tight"}),
    ],
)
def test_comfortable_at_the_ball(stretch: float, verdicts: set[str]) -> None:
    """1.05 to 1.18 is comfortable, below 1 baggy, above about 1.25 tight."""
    ball = fit(plan({"foot.ball_girth": f"{203.2 * stretch:.2f} mm"}), "ball")
    assert ball["verdict"] in verdicts


@pytest.mark.parametrize(
    ("sex", "length", "ball", "heel", "slots"),
    [("woman", 246.3, 228.1, 310.3, 60), ("man", 271.2, 252.0, 343.5, 68)],
)
def test_getting_it_on_asks_for_a_stretch_of_about_1_4_to_1_65(
    sex: str, length: float, ball: float, heel: float, slots: int
) -> None:
    """Average people (ANSUR II) in a tube that fits their ball; plain knit gives 1.6 to 2."""
    foot = {"length": f"{length} mm", "ball_girth": f"{ball} mm", "heel_girth": f"{heel} mm"}
    sheet = plan({"person.sex": sex, "foot": foot, "cylinder.slots": slots})
    assert fit(sheet, "ball")["verdict"] == "comfortable"
    assert 1.4 <= fit(sheet, "over_heel")["stretch"] <= 1.65
    assert fit(sheet, "over_heel")["level"] == "good"


def test_a_tube_that_fits_the_ball_lies_loose_at_the_ankle() -> None:
    """Near 1.0 for an average woman on 60 slots: within 0.1."""
    assert fit(plan(), "ankle")["stretch"] == pytest.approx(1.0, abs=0.1)


@pytest.mark.parametrize(("rounds", "asked"), [(20, True), (39, True), (40, False), (60, False)])
def test_a_swatch_has_at_least_40_rounds(rounds: int, asked: bool) -> None:
    swatch = {
        "needles": 60,
        "flat_width": "4 in",
        "rounds": rounds,
        "length": f"{rounds / 9.6:.3f} in",
    }
    notes = noted(plan({**FROM_YARN, "fabric.swatch": swatch}))
    assert ("fabric.swatch.rounds" in notes) is asked


def test_fabric_known_by_its_yarn_alone_says_swatch_first() -> None:
    by_yarn = plan({**FROM_YARN, "fabric.yarn": SOCK_YARNS[0]})
    assert by_yarn["fabric"]["swatch_first"] is True
    assert plan({"fabric.yarn": SOCK_YARNS[0]})["fabric"]["swatch_first"] is False
    wide = by_yarn["range"]["foot"]["high"] - by_yarn["range"]["foot"]["low"]
    told = plan()["range"]["foot"]["high"] - plan()["range"]["foot"]["low"]
    assert wide > 2 * told


@pytest.mark.parametrize("slots", [22, 24, 120, 122, 61])
def test_cylinders_have_24_to_120_slots_and_an_even_number(slots: int) -> None:
    """A foot of 30 cm is long enough for each, at a finer stitch on the larger ones."""
    changes = {"cylinder.slots": slots, "foot.length": "300 mm", "fabric.rounds": "13 / in"}
    if slots in (24, 120):
        assert plan(changes)["counts"]["needles"] == slots
    else:
        assert "cylinder.slots" in refused(changes)
