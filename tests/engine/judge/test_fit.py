"""The fit: five places in order, the bounds of each verdict, and words that agree with the numbers.

The bounds are common practice with no published source; they are written out here once more, so
that a slip in one of the two is noticed.
"""

from __future__ import annotations

import math
import re
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from engine.fabric.fabric import Fabric
from engine.judge import fit as judging
from engine.people.foot import Measure
from engine.say import messages as say
from engine.say.aloud import text
from engine.say.message import Message
from engine.sections.cuff import Cuff
from engine.sections.hung_hem import HungHem
from engine.sections.mock_rib import MockRib
from engine.sections.rib import Rib
from tests.asking import fit, mm, noted, plan

PLACES = ["ball", "heel", "over_heel", "ankle", "calf"]
LEVELS = ("bad", "loose", "good", "tight", "bad")
BALL = ("baggy", "a little loose", "comfortable", "snug", "tight")
LEG = ("slack", "loose", "comfortable", "snug", "tight")
GIVEN_HEEL = {"sock.heel.needles": 30, "sock.heel.left": 10, "sock.leg.rounds": 150}
BOUNDS = {  # place: size of the sock, measure of the wearer, where the verdicts part, verdicts
    "ball": ("tube_girth", "ball_girth", (1.00, 1.05, 1.18, 1.25), BALL),
    "heel": ("heel_girth", "heel_girth", (1.00, 1.08, 1.28, 1.38), BALL),
    "ankle": ("tube_girth", "ankle_girth", (0.90, 1.02, 1.25, 1.40), LEG),
    "calf": ("tube_girth", "calf_girth", (0.90, 1.02, 1.25, 1.40), LEG),
}
SIZES = plan(GIVEN_HEEL)
CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "swatch", (), 240.0, True, 1.5)  # 60 needles are 200 mm
FEET = {
    name: Measure(mm, 0.0, True)
    for name, mm in {
        **{"length": 246.0, "ball_girth": 224.0, "heel_girth": 310.0},
        **{"ankle_girth": 220.0, "calf_girth": 360.0},
    }.items()
}
INSIDE = 0.005  # of stretch, to each side of a bound: 1 mm of girth


def at(place: str, stretch: float) -> dict[str, Any]:
    size, measure, _, _ = BOUNDS[place]
    girth = mm(SIZES, size) * stretch
    return fit(plan({**GIVEN_HEEL, f"foot.{measure}": f"{girth:.2f} mm"}), place)


def test_the_places_come_in_order() -> None:
    assert [one["place"] for one in plan()["fit"]] == PLACES
    assert len({one["title"] for one in plan()["fit"]}) == len(PLACES)


@pytest.mark.parametrize("place", BOUNDS)
def test_each_bound_parts_its_verdicts(place: str) -> None:
    _, _, bounds, verdicts = BOUNDS[place]
    for step, bound in enumerate(bounds):
        below, above = at(place, bound - INSIDE), at(place, bound + INSIDE)
        assert (below["level"], below["verdict"]) == (LEVELS[step], verdicts[step])
        assert (above["level"], above["verdict"]) == (LEVELS[step + 1], verdicts[step + 1])


@pytest.mark.parametrize("place", BOUNDS)
@pytest.mark.parametrize("stretch", [0.88, 0.96, 1.1, 1.3, 1.45])
def test_numbers_and_words_agree(place: str, stretch: float) -> None:
    """The stretch is body over fabric to 0.001, and the words say its percent, or the sock's."""
    found = at(place, stretch)
    ratio = found["body"]["value"] / found["fabric"]["value"]
    assert found["stretch"] == pytest.approx(ratio, abs=0.002)
    assert found["stretch"] == pytest.approx(stretch, abs=0.002)
    said = re.search(r"(\d+) %", found["words"])
    assert said
    more = stretch if stretch > 1 else 1 / stretch  # the sock is so much wider than the body
    assert int(said[1]) == pytest.approx((more - 1) * 100, abs=1)
    assert ("wider than" in found["words"]) is (stretch < 1)
    assert found["verdict"] in found["words"]


@pytest.mark.parametrize("place", BOUNDS)
def test_what_does_not_fit_comes_with_a_cure(place: str) -> None:
    """A sentence after the verdict for whatever is not comfortable, none for what is."""
    for stretch in (0.85, 1.5):
        assert re.search(r"\. \w.+\.$", at(place, stretch)["words"])
    assert not re.search(r"\. \w", at(place, 1.12)["words"])


def test_every_place_says_whether_it_was_measured() -> None:
    only_length = plan({"foot": {"length": "246 mm"}})
    assert {one["from"] for one in only_length["fit"]} == {"estimated"}
    assert {one["from"] for one in plan()["fit"]} == {"measured"}


def pulled(needed: float, gives: float) -> dict[str, Any]:
    """A sock with a rib on top, so that leg alone decides, whose swatch was pulled by `gives`."""
    swatch = {
        "needles": 60,
        "flat_width": "100 mm",
        "rounds": 75,
        "length": "200 mm",
        "pulled_width": f"{100 * gives:.1f} mm",
    }
    changes = {
        "fabric": {"swatch": swatch},
        "sock.cuff.kind": "rib",
        "foot.heel_girth": f"{200 * needed:.1f} mm",
        "sock.heel.left": 10,
    }
    return fit(plan(changes), "over_heel")


@pytest.mark.parametrize(
    ("gives", "level", "verdict"),
    [
        (1.45, "bad", "may not go on"),
        (1.495, "bad", "may not go on"),
        (1.505, "tight", "goes on with a pull"),
        (1.60, "tight", "goes on with a pull"),
        (1.63, "good", "goes on easily"),
        (1.90, "good", "goes on easily"),
    ],
)
def test_getting_on_is_held_against_the_pulled_swatch(
    gives: float, level: str, verdict: str
) -> None:
    """A heel of 300 mm through a tube of 200 mm needs 1.5; up to 93 % of the pull it is easy."""
    found = pulled(1.5, gives)
    assert found["stretch"] == pytest.approx(1.5, abs=0.001)
    assert (found["level"], found["verdict"]) == (level, verdict)
    assert f"{gives:.2f}" in found["words"] or f"{gives - 0.005:.2f}" in found["words"]


def test_the_calf_is_judged_only_where_the_sock_reaches_it() -> None:
    short, tall = plan({"sock.leg.rounds": 50}), plan({"sock.leg.rounds": 120})
    assert fit(short, "calf")["level"] == "apart"
    assert fit(short, "calf")["verdict"] == "not reached"
    assert fit(tall, "calf")["level"] == "bad"
    assert fit(tall, "calf")["verdict"] == "cannot pass"
    slim = plan({"sock.leg.rounds": 120, "foot.calf_girth": "12 in"})
    assert (fit(slim, "calf")["level"], fit(slim, "calf")["verdict"]) == ("bad", "tight")


def test_a_calf_that_cannot_pass_is_told_by_how_much() -> None:
    """360 mm over 200 mm is 1.8; the leg under a rib gives its 1.5."""
    found = judging.judge(FEET, 200.0, 270.0, Rib(20), CLOTH, 400.0)[4]
    told = found.words["sentences"][0]
    assert told == say.cannot_pass_calf(needed="1.80", gives="1.50")


@pytest.mark.parametrize(
    ("cuff", "whence"),
    [
        (HungHem(20), ("as-pulled-less", HungHem.name)),
        (MockRib(20, every=4), ("as-pulled-less", MockRib.name)),
        (Rib(20), ("as-pulled", None)),  # gives as much as the leg
        (HungHem(20, flat=190.0, pulled=290.0), ("as-pulled", None)),
    ],
    ids=("hem", "mock rib", "rib", "measured"),
)
def test_only_a_cuff_not_measured_takes_from_what_the_swatch_was_pulled(
    cuff: Cuff, whence: tuple[str, Message | None]
) -> None:
    """A measured cuff is told by its own swatch: 290 over 200 mm, and no share taken off it."""
    cloth = replace(CLOTH, pull_measured=True)
    measures = {**FEET, "heel_girth": Measure(270.0, 0.0, True)}
    found = judging.judge(measures, 200.0, 270.0, cuff, cloth, 100.0)[2]
    pulled = found.words["sentences"][1]
    assert (pulled["say"], pulled.get("cuff")) == whence


def test_a_leg_up_to_the_knee_is_remarked() -> None:
    """Knee: 1.73 foot lengths above the floor (ANSUR II 2012): 426 mm for a foot of 246.3 mm."""
    below, above = plan({"sock.leg.rounds": 120}), plan({"sock.leg.rounds": 140})
    assert below["sizes"]["top_above_floor"]["value"] < 426
    assert above["sizes"]["top_above_floor"]["value"] > 426
    assert "sock.leg.rounds" not in noted(below)
    assert "knee" in noted(above)["sock.leg.rounds"]


def test_a_guess_is_not_condemned_where_it_may_fit() -> None:
    """An 8 in tube on a short foot: by the guessed girth baggy, by its interval perhaps not."""
    guessed = fit(plan({"foot": {"length": "200 mm"}, "person.age": 30}), "ball")
    assert guessed["from"] == "estimated"
    assert guessed["stretch"] < 1
    assert (guessed["level"], guessed["verdict"], guessed["sure"]) == ("loose", "baggy", "likely")
    assert "likely baggy" in guessed["words"]
    assert "guess" in guessed["words"]
    measured = {"length": "200 mm", "ball_girth": f"{guessed['body']['value']} mm"}
    assert fit(plan({"foot": measured, "person.age": 30}), "ball")["level"] == "bad"


@given(st.floats(0.8, 1.6), st.floats(0.004, 0.1))
def test_each_verdict_has_the_chance_that_scipy_gives_it(stretch: float, sd: float) -> None:
    """A normal error of the logarithm: scipy.stats.lognorm between the bounds."""
    bounds = (1.00, 1.05, 1.18, 1.25)
    below = stats.lognorm(sd, scale=stretch).cdf([0.0, *bounds, math.inf])
    found = judging.chances(stretch, sd, bounds)
    assert found == pytest.approx(list(below[1:] - below[:-1]), abs=2e-6)
    assert sum(found) == pytest.approx(1, abs=5e-6)


def test_without_any_error_a_verdict_is_certain() -> None:
    assert judging.chances(1.1, 0.0, (1.00, 1.05, 1.18, 1.25)) == (0, 0, 1, 0, 0)


@pytest.mark.parametrize(
    ("ball", "sd", "sure", "words"),
    [
        (222.0, 0.0, "plain", "Stretches 11 %: comfortable."),
        (222.0, 6.0, "plain", "Stretches 11 %: comfortable."),
        (243.0, 14.0, "open", "Stretches 22 %: snug or tight, too close to tell."),
        (243.0, 8.0, "likely", "Stretches 22 %: likely snug. Fine for someone"),
        (237.0, 10.0, "open", "Stretches 19 %: comfortable or snug, too close to tell."),
        (262.0, 6.0, "plain", "Stretches 31 %: tight. A larger stitch"),
        (252.0, 6.0, "likely", "Stretches 26 %: likely tight. A larger stitch"),
        (197.0, 6.0, "likely", "likely baggy. A smaller stitch"),
    ],
)
def test_a_verdict_is_said_as_surely_as_it_is_right(
    ball: float, sd: float, sure: str, words: str
) -> None:
    """By hand, of 200 mm of tube: 8 mm are 3.3 % of 243, where log(1.25 / 1.215) is 2.8 % and
    log(1.215 / 1.18) 2.9 %: within 0.86 and 0.89 sd lie 62 %; with 14 mm within half a sd 38 %.
    """
    measures = {**FEET, "ball_girth": Measure(ball, sd, True)}
    found = judging.judge(measures, 200.0, 270.0, Rib(20), CLOTH, 100.0)[0]
    assert (found.sure, words in text(found.words)) == (sure, True), (found.words, found.chance)


def test_the_doubt_of_the_next_socks_stitches_counts() -> None:
    measures = {**FEET, "ball_girth": Measure(243.0, 0.0, True)}
    for sd, sure in ((0.0, "plain"), (0.035, "likely"), (0.06, "open")):
        cloth = replace(CLOTH, stitches_sd=sd)
        found = judging.judge(measures, 200.0, 270.0, Rib(20), cloth, 100.0)[0]
        assert found.sure == sure, found.chance
    guessed = {**FEET, "ball_girth": Measure(243.0, 12.0, False)}
    found = judging.judge(guessed, 200.0, 270.0, Rib(20), CLOTH, 100.0)[0]
    assert found.words["sentences"][-1] == say.measure_to_be_sure()


def test_a_larger_cylinder_never_stretches_more() -> None:
    for place in ("ball", "over_heel", "ankle"):
        found = [
            fit(plan({"cylinder.slots": slots, "foot.length": "300 mm"}), place)["stretch"]
            for slots in range(48, 90, 6)
        ]
        assert found == sorted(found, reverse=True)
        assert len(set(found)) == len(found)


@pytest.mark.parametrize(
    ("leg", "measured", "level", "verdict", "words"),
    [
        (
            199.0,
            True,
            "bad",
            "slides down",
            "none of its stretch is used. A smaller stitch or a rib",
        ),
        (
            200.0,
            True,
            "loose",
            "may slide",
            "none of its stretch is used. A smaller stitch or a rib",
        ),
        (204.0, True, "loose", "may slide", "4 % of its stretch is used. A smaller stitch"),
        (230.0, True, "good", "holds comfortably", "30 % of its stretch is used."),
        (270.0, True, "tight", "holds firmly", "70 % of its stretch is used. A larger stitch"),
        (290.0, True, "bad", "cuts in", "90 % of its stretch is used. A larger stitch"),
        (199.0, False, "loose", "perhaps slides down", "The leg there is guessed"),
        (204.0, False, "loose", "perhaps may slide", "The leg there is guessed"),
        (230.0, False, "good", "holds comfortably", "The leg there is guessed"),
        (270.0, False, "tight", "perhaps holds firmly", "The leg there is guessed"),
        (290.0, False, "tight", "perhaps cuts in", "The leg there is guessed"),
    ],
)
def test_a_cuff_is_judged_by_the_share_of_its_give_in_use(
    leg: float, measured: bool, level: str, verdict: str, words: str
) -> None:
    """A cuff of 200 mm that gives half as much again: 230 mm is 15 of 50 %, so 30 % of its give."""
    found = judging.grip(leg, 200.0, 1.5, measured)
    assert (found.level, text(found.verdict)) == (level, verdict)
    assert text(found.words).startswith(f"Where the sock ends, it {verdict}: ")
    assert words in text(found.words)
    ribbed = judging.grip(leg, 200.0, 1.5, measured, ribbed=True)
    assert "rib" not in text(ribbed.words)


@pytest.mark.parametrize(
    ("ball", "words"),
    [
        (100.0, "100 % wider"),
        (190.0, "5 % wider"),  # 200 / 190 is 1.053
        (199.2, "just wider"),
        (200.0, "Not stretched"),
        (200.6, "Not stretched"),
        (230.0, "Stretches 15 %"),
        (320.0, "Stretches 60 %"),
    ],
)
def test_the_words_of_a_stretch_by_hand(ball: float, words: str) -> None:
    measures = {**FEET, "ball_girth": Measure(ball, 0.0, True)}
    found = judging.judge(measures, 200.0, 270.0, Rib(20), CLOTH, 100.0)[0]
    assert words in text(found.words)


@pytest.mark.parametrize(
    ("heel", "level", "words"),
    [
        (200.0, "good", "it passes the heel without stretch"),
        (200.1, "good", "it must stretch to 1.00 times its"),
        (279.0, "good", "must stretch to 1.40 times"),  # 93 % of 1.5 is 1.395
        (279.1, "tight", "must stretch to 1.40 times"),
        (
            300.0,
            "tight",
            "must stretch to 1.50 times its girth, and can reach about 1.50",
        ),
        (300.1, "bad", "A larger stitch, more needles, or a ribbed top would help it go on."),
    ],
)
def test_getting_on_by_hand(heel: float, level: str, words: str) -> None:
    """A tube of 200 mm that gives 1.5 passes 300 mm and no more; nothing is needed up to 200."""
    measures = {**FEET, "heel_girth": Measure(heel, 0.0, True)}
    found = judging.judge(measures, 200.0, 270.0, Rib(20), CLOTH, 100.0)[2]
    assert (found.level, words in text(found.words)) == (level, True), found.words


@pytest.mark.parametrize(
    ("narrowest", "gives", "girth"), [(150.0, 1.8, 150.0), (199.0, 1.8, 200.0), (199.9, 1.5, 200.0)]
)
def test_a_sock_passes_the_heel_by_what_gives_less(
    narrowest: float, gives: float, girth: float
) -> None:
    """A hem of 200 mm gives 0.92 of what plain does: 184 mm of plain leg give as little."""
    cloth = replace(CLOTH, pull=gives)
    along = judging.Girths(narrowest, 210.0, 220.0, 200.0)
    found = judging.judge(FEET, 200.0, 270.0, HungHem(20), cloth, 100.0, along)[2]
    assert found.fabric == girth
    slim = judging.Girths(183.9, 210.0, 220.0, 200.0)
    assert judging.judge(FEET, 200.0, 270.0, HungHem(20), cloth, 9.0, slim)[2].fabric == 183.9


@pytest.mark.parametrize(("ball", "level"), [(199.9, "bad"), (200.0, "loose"), (250.0, "bad")])
def test_at_a_bound_it_is_what_comes_after_it(ball: float, level: str) -> None:
    """200 mm is a stretch of 1 and 250 mm one of 1.25, to the last bit."""
    measures = {**FEET, "ball_girth": Measure(ball, 0.0, True)}
    assert judging.judge(measures, 200.0, 270.0, Rib(20), CLOTH, 100.0)[0].level == level


def test_what_a_stretch_feels_like_at_each_bound() -> None:
    bounds = (1.00, 1.05, 1.18, 1.25)
    found = [judging.feels(stretch, bounds) for stretch in (0.999, 1.00, 1.05, 1.18, 1.25)]
    assert [text(say.verdict(feels=feels)) for _, feels in found] == list(BALL)
    assert [level for level, _ in found] == list(LEVELS)
