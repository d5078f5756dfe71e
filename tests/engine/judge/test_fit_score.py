"""Comfort: its verdicts are those of `fit`, at and beside each bound; discomfort worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from scipy import integrate, stats

from engine import sources
from engine.fabric.fabric import Fabric
from engine.fabric.gauge import Way
from engine.judge import fit, fit_score
from engine.judge.fit_score import Felt, Wearer
from engine.people.foot import Measure
from engine.sections import short_row
from engine.sections.flap import Flap
from engine.sections.leg import Wish
from engine.sections.pocket import Pocket
from engine.sections.rib import Rib
from engine.sections.short_rows import ShortRows
from engine.sock import plan as planning
from tests.asking import asked, plan

SLOTS, TUBE = 60, 200.0  # 60 needles at 0.3 stitches a mm
CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "swatch", (), 240.0, True, 1.6)
RIB = Rib(20)  # gives as far as the leg does
FOOT = {
    "length": Measure(246.0, 0.0, True),
    "ball_girth": Measure(224.0, 0.0, True),
    "heel_girth": Measure(310.0, 0.0, True),
    "ankle_girth": Measure(220.0, 0.0, True),
    "calf_girth": Measure(360.0, 0.0, True),
}


def weighed(
    place: str, measure: Measure, cloth: Fabric = CLOTH, leg: Wish | None = None
) -> tuple[Felt, fit.Place]:
    """One place of an otherwise sure foot, by comfort and by fit."""
    name = "heel_girth" if place == "over_heel" else f"{place}_girth"
    measures = {**FOOT, name: measure}
    wearer = Wearer(measures, RIB, leg or Wish(rounds=50), 240.0, 0.0)
    heel, _ = wearer.turned(SLOTS, cloth)
    assert isinstance(heel, Pocket)
    girth, top = heel.girth(SLOTS, cloth), wearer.top(heel, cloth)
    judged = fit.judge(measures, TUBE, girth, RIB, cloth, top)
    felt = wearer.weigh(SLOTS, cloth).places
    return (
        next(one for one in felt if one.place == place),
        next(one for one in judged if one.place == place),
    )


# In a tube of 200 mm: 190 mm is a stretch of 0.95, 260 mm one of 1.3; the ball is good from 1.05 to
# 1.18, which is 210 to 236 mm. Four in five lie within 1.28 standard deviations.
@pytest.mark.parametrize(
    ("girth", "sd", "measured", "level"),
    [
        (190.0, 20.0, False, "loose"),  # up to 215.6 mm
        (190.0, 15.0, False, "bad"),  # up to 209.2 mm
        (190.0, 20.0, True, "bad"),
        (260.0, 20.0, False, "tight"),  # from 234.4 mm on
        (260.0, 18.0, False, "bad"),  # from 236.9 mm on
        (260.0, 20.0, True, "bad"),
        (205.0, 20.0, False, "loose"),
        (224.0, 20.0, False, "good"),
        (245.0, 20.0, False, "tight"),
    ],
)
def test_a_guess_that_may_well_be_wrong_damns_no_sock(
    girth: float, sd: float, measured: bool, level: str
) -> None:
    felt, judged = weighed("ball", Measure(girth, sd, measured))
    assert (felt.level, judged.level) == (level, level)


@pytest.mark.parametrize(
    ("girth", "level"),
    [
        *((199.9, "bad"), (200.0, "loose"), (209.9, "loose"), (210.0, "good")),
        *((235.9, "good"), (236.0, "tight"), (249.9, "tight"), (250.0, "bad")),
    ],
)
def test_at_a_bound_the_ball_is_what_comes_after_it(girth: float, level: str) -> None:
    """In 200 mm a stretch of 1, 1.05, 1.18 and 1.25, to the last bit."""
    felt, judged = weighed("ball", Measure(girth, 0.0, True))
    assert (felt.level, judged.level) == (level, level)


@pytest.mark.parametrize(("girth", "level"), [(250.0, "tight"), (250.1, "bad")])
def test_a_calf_passes_just_where_the_leg_gives_as_much(girth: float, level: str) -> None:
    """A tube of 200 mm that gives 1.25 passes 250 mm and no more."""
    tall, gives = Wish(rounds=160), replace(CLOTH, pull=1.25)
    felt, judged = weighed("calf", Measure(girth, 0.0, True), gives, tall)
    assert (felt.level, judged.level) == (level, level)


@pytest.mark.parametrize(
    ("girth", "level"), [(279.0, "good"), (279.1, "tight"), (300.0, "tight"), (300.1, "bad")]
)
def test_a_heel_passes_just_where_the_leg_gives_as_much(girth: float, level: str) -> None:
    """1.5 is all that it gives, and up to 0.93 of it, 279 mm over 200, it is easy."""
    gives = replace(CLOTH, pull=1.5)
    felt, judged = weighed("over_heel", Measure(girth, 0.0, True), gives)
    assert (felt.level, judged.level) == (level, level)


def test_a_guessed_calf_passes_by_the_lower_end_of_its_interval() -> None:
    """260 mm less 1.28 times 10 mm is 247 mm."""
    tall, gives = Wish(rounds=160), replace(CLOTH, pull=1.25)
    felt, judged = weighed("calf", Measure(260.0, 10.0, False), gives, tall)
    assert (felt.level, judged.level) == ("tight", "tight")


def test_the_calf_counts_from_just_where_the_sock_reaches_it() -> None:
    reached = float(sources.CALF_REACHED * sources.CALF_HEIGHT_OVER_FOOT) * FOOT["length"].value
    for height, level in ((reached, "bad"), (reached * (1 - 1e-6), "apart")):
        felt, _ = weighed("calf", FOOT["calf_girth"], leg=Wish(height=height))
        assert felt.level == level


@pytest.mark.parametrize(
    ("value", "discomfort"),
    [
        (0.9, 3.0),
        (1.0, 1.0),
        (1.025, 0.5),
        (1.05, 0.0),
        (1.1, 0.0),
        (1.18, 0.0),
        (1.215, 0.5),
        (1.25, 1.0),
        (1.32, 2.0),
    ],
)
def test_sure_discomfort_grows_in_a_line_and_is_1_at_the_bad_bound(
    value: float, discomfort: float
) -> None:
    """0.05 below the band, 1.05 to 1.18, it is 1, and 0.07 above it."""
    bounds = (1.00, 1.05, 1.18, 1.25)
    found = fit_score.expected_discomfort(value, 0.0, bounds)
    assert found == pytest.approx(discomfort, abs=1e-9)


@pytest.mark.parametrize("sd", [0.05, 1.0, 2.0])
@pytest.mark.parametrize("z", [-4.0, -1.0, 0.0, 1.0, 2.0, 4.0])
def test_the_excess_of_an_uncertain_value_is_the_integral_of_it(z: float, sd: float) -> None:
    """By scipy's quadrature of x above 0 under the normal density."""
    expected, _ = integrate.quad(
        lambda x: x * stats.norm.pdf(x, z * sd, sd), 0, (z + 9) * sd, epsabs=1e-12
    )
    assert fit_score.expected_excess(z * sd, sd) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("metres", "level"), [(None, "apart"), (300.0, "tight"), (412.0, "good"), (800.0, "loose")]
)
def test_firmness_is_that_of_a_told_yarn(metres: float | None, level: str) -> None:
    """l = sqrt(Ks / (w c)); here w c = 0.12 and the loop some 14 mm by Munden's Ks."""
    loop = CLOTH.loop
    firm = {"tight": 1.5, "good": 1.2, "loose": 0.95}.get(level, 1.2)
    cloth = replace(CLOTH, tex=(firm * loop) ** 2, tex_told=metres is not None)
    felt = Wearer(FOOT, RIB, Wish(rounds=50), 240.0, 0.0).weigh(SLOTS, cloth).places[5]
    assert (felt.place, felt.level) == ("firmness", level)
    assert felt.value == pytest.approx(firm)


GIVES = replace(CLOTH, pull=1.8)  # 310 over 200 mm is 1.55, easy up to 0.93 x 1.8 = 1.67


def wearer(aimed: float = 240.0, leg: Wish | None = None, **girths: float) -> Wearer:
    measures = {
        name: Measure(girths.get(name.removesuffix("_girth"), one.value), 0.0, True)
        for name, one in FOOT.items()
    }
    return Wearer(measures, RIB, leg or Wish(rounds=50), aimed, 0.0)


@pytest.mark.parametrize(
    ("who", "way", "standing"),
    [
        (wearer(), "swatch", fit_score.FITS),
        (wearer(), "yarn", fit_score.WORN),  # a guess fits nobody surely
        (wearer(ball=245.0), "swatch", fit_score.WORN),
        (wearer(ball=260.0), "swatch", fit_score.NOT),
        (wearer(aimed=60.0), "swatch", fit_score.CANNOT),
    ],
)
def test_how_a_sock_stands(who: Wearer, way: Way, standing: int) -> None:
    assert who.weigh(SLOTS, replace(GIVES, way=way)).standing == standing


@pytest.mark.parametrize(
    ("who", "cloth", "place", "discomfort"),
    [
        (wearer(ball=260.0), GIVES, "ball", 0.12 / 0.07),  # 1.30 of 1.18 and 1.25
        (wearer(ball=190.0), GIVES, "ball", 0.10 / 0.05),  # 0.95 of 1.05 and 1
        (wearer(ankle=290.0), GIVES, "ankle", 0.20 / 0.15 / 2),  # 1.45 of 1.25 and 1.40, half
        (wearer(), replace(CLOTH, pull=1.55), "over_heel", 1.0),  # all that it gives
        (wearer(), replace(CLOTH, pull=1.6), "over_heel", (1.55 / 1.6 - 0.93) / 0.07),
        (wearer(aimed=60.0), GIVES, "length", 1.0),
        (wearer(), GIVES, "length", 0.0),
        (wearer(), GIVES, "calf", 0.0),  # not reached
    ],
)
def test_discomfort_of_a_sure_foot_by_hand(
    who: Wearer, cloth: Fabric, place: str, discomfort: float
) -> None:
    found = who.weigh(SLOTS, cloth)
    felt = next(one for one in found.places if one.place == place)
    assert felt.discomfort == pytest.approx(discomfort, abs=1e-9)
    assert found.score == pytest.approx(sum(one.discomfort for one in found.places))


def rounds(whose: Wearer) -> float:
    """The foot rounds that the length is judged by."""
    return next(one.value for one in whose.weigh(SLOTS, CLOTH).places if one.place == "length")


def test_top_and_rounds_by_hand() -> None:
    """0.4 rounds a mm: (50 + 20) / 0.4 + 20 / 0.4; 0.54 x 246 mm of leg are 53 rounds; half of 60
    down to 10 is 20 rounds, of the toe as of the heel.
    """
    heel = ShortRows("heel", 30, 10)
    assert wearer().top(heel, CLOTH) == pytest.approx(225)
    assert wearer(leg=Wish(height=180.0)).top(heel, CLOTH) == 180
    assert wearer(leg=Wish()).top(heel, CLOTH) == pytest.approx(73 / 0.4 + 50)
    usual = replace(wearer(), measures={**FOOT, "heel_girth": Measure(310.0, 0.0, False)})
    assert rounds(usual) == pytest.approx(96 - 40)
    toes = replace(usual, toe_breadth=88.0)  # 1.77 x 88 mm over 40 / 0.3 are 1.168: comfortable
    assert rounds(toes) == pytest.approx(96 - 40)
    toes = replace(usual, toe_breadth=90.0)  # 159.3 mm over 40 / 0.3 is tight, over 42 / 0.3 not
    assert rounds(toes) == pytest.approx(96 - 20 - 18)


@pytest.mark.parametrize("aimed", [84.0, 85.0, 86.0, 86.5, 87.5, 88.75, 95.0])
def test_a_length_counts_with_the_chance_that_no_round_is_left(aimed: float) -> None:
    """By scipy, for an error of 2.5 mm at 0.4 rounds a mm; what is sure is short or is not."""
    sure = wearer(aimed=aimed, heel=260.0)
    felt = replace(sure, aimed_sd=2.5).weigh(SLOTS, GIVES).places[-1]
    assert felt.discomfort == pytest.approx(float(stats.norm.cdf(0.5, felt.value, 1.0)), abs=1e-9)
    assert sure.weigh(SLOTS, GIVES).places[-1].discomfort == float(felt.value < 0.5)
    assert felt.level == ("good" if felt.value >= 0.5 else "bad")


def test_half_a_round_is_knitted_as_one() -> None:
    """Halves are rounded up, as is what lies below one by a figure's last bits only."""
    for rounds in (0.5, 0.5 - 5e-10):
        assert wearer()._length(rounds, GIVES).level == "good"
    assert wearer()._length(0.5, GIVES).discomfort == 0
    assert wearer()._length(0.499, GIVES).level == "bad"


def test_a_flap_and_rounds_before_the_toe_are_of_the_length() -> None:
    """Each row of the flap and each round before the toe is one foot round less."""
    toe = short_row.free(SLOTS)._replace(before=5)
    ends = short_row.free(SLOTS, Flap)._replace(flap=8), toe
    usual, tried = (
        next(one for one in made.weigh(SLOTS, CLOTH).places if one.place == "length").value
        for made in (wearer(), replace(wearer(), ends=ends))
    )
    assert usual - tried == pytest.approx(8 + 5)


def felt_at(who: Wearer, place: str) -> Felt:
    return next(one for one in who.weigh(SLOTS, CLOTH).places if one.place == place)


def test_a_ribbed_leg_is_weighed_as_its_rib() -> None:
    """A rib of one and one leaves 70 % of the tube, so the ankle stretches it by 1/0.7 as far."""
    plain = wearer(leg=Wish(rounds=60))
    ribbed = replace(plain, leg=Wish(rounds=60, plain=5))
    assert felt_at(ribbed, "ankle").value == pytest.approx(felt_at(plain, "ankle").value / 0.7)
    # Down to the plain rounds alone, which reach above the ankle where there are enough of them.
    low = replace(plain, leg=Wish(rounds=60, plain=40))
    assert felt_at(low, "ankle") == felt_at(plain, "ankle")


def test_the_shelf_weighs_a_ribbed_leg_as_the_plan_judges_it() -> None:
    changes = {
        "sock.cuff.kind": "rib",
        "sock.leg.kind": "ribbed",
        "sock.leg.rounds": 70,
        "sock.leg.plain": 5,
    }
    places = {one["place"]: one["stretch"] for one in plan(changes)["fit"]}
    made = planning.make(asked(changes))
    wish = Wish(rounds=70, plain=5)
    who = Wearer(made.measures, made.cuff, wish, made.aimed, made.aimed_sd)
    weighed = {one.place: one.value for one in who.weigh(60, made.fabric).places}
    for place in ("ankle", "calf", "ball"):
        assert weighed[place] == pytest.approx(places[place], abs=6e-4)
