"""The yarn at hand: colours and balls, whether what is left is a sock, and stripes in step.

The probabilities are checked against scipy's distributions and against a simulation that knows
nothing of the formula; the errors they start from are common practice, no published source.
"""

from __future__ import annotations

from copy import deepcopy
from math import ceil, hypot, log, sqrt
from typing import Any

import numpy as np
import pytest
from scipy import stats

from engine import api
from engine.fabric.fabric import Fabric
from engine.judge import stripes, supply
from engine.judge.supply import Need
from engine.say.message import Message
from tests.asking import answer, asked, noted, plan, refused

# 9 in of sock foot, by hand: 9 x 9.6 = 86.4 rounds, less 20 each for heel and toe: 46 are knitted.
SOCK: dict[str, Any] = {
    "fabric.yarn": "400 m / 100 g",
    "sock": {
        "cuff": {"kind": "hem", "rounds": 20},
        "leg": {"rounds": 50},
        "heel": {"needles": 30, "left": 10},
        "toe": {"needles": 30, "left": 10},
        "foot_length_of_sock": "9 in",
    },
}
# cuff 20 x 60, leg 50 x 60, heel (30 + ... + 11) + (11 + ... + 30) = 820, foot 46 x 60, toe 820
STITCHES = 1200 + 3000 + 820 + 2760 + 820
LOOP = sqrt(23.1 / (7.5 / 25.4 * 9.6 / 25.4))  # mm, Munden 1959: 14.39
TAILS = 2 * 200 + 30 * LOOP  # mm: two ends, and the 30 stitches that are grafted
METRES = (STITCHES * LOOP + TAILS) / 1000  # 124.6
GRAMS = METRES / 4  # 31.14, at 400 m in 100 g


def yarn(stock: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """The yarn of the sock above with something told of the stock."""
    found: dict[str, Any] = plan(deepcopy({**SOCK, "stock": stock, **changes}))["yarn"]
    return found


def advice(stock: dict[str, Any]) -> list[Message]:
    """What is said of whether the yarn is enough, as messages."""
    request = asked(deepcopy({**SOCK, "stock": stock}))
    found = api.answer({"do": "plan", "request": request})["yarn"]["enough"]["words"]
    return list(found["sentences"])


def test_the_worked_sock() -> None:
    """To the 0.01 that is shown."""
    assert STITCHES == 8600
    assert pytest.approx(124.56, abs=0.01) == METRES
    need = yarn({"left": "40 g"})["enough"]["needed"]["value"]
    assert need == pytest.approx(GRAMS, abs=0.01)


def test_weighed_by_hand() -> None:
    """31 g sock, 33 g left, scale 1 g, socks alike to 2 %, every step on paper:

    sock one is known to 1 / 31 = 3.23 %, sock two to sqrt(3.23^2 + 2^2) = 3.80 %, against the scale
    again sqrt(3.80^2 + 3.23^2) = 4.98 %; ln(33 / 31) = 6.25 %, which is 1.255 such errors, and a
    normal table has 0.8953 below 1.255.
    """
    enough = yarn({"left": "33 g", "sock_one": "31 g"})["enough"]
    assert enough["probability"] == pytest.approx(0.8953, abs=0.0003)
    assert enough["level"] == "maybe"
    assert "90 %" in enough["words"]


@pytest.mark.parametrize("left", [5, 25, 30, 31, 33, 36, 45, 100])
def test_the_probability_is_scipys(left: float) -> None:
    """scipy.stats.norm of the logarithm, and scipy.stats.lognorm of the weight: the same."""
    need = Need(31.0, 0.07)
    spread = hypot(0.07, 1 / 31)
    found = supply.probability(left, need)
    assert found == pytest.approx(stats.norm.cdf(log(left / 31) / spread), abs=1e-12)
    assert found == pytest.approx(stats.lognorm.cdf(left, s=spread, scale=31), abs=1e-12)


@pytest.mark.parametrize("left", [28, 30, 32, 34, 36])
def test_weighed_against_a_simulation(left: float) -> None:
    """400,000 true weights behind the readings; the formula is within 1 in 100 of them."""
    chance = np.random.default_rng(20)
    one = 31 + chance.normal(0, 1, 400_000)
    two = one * (1 + chance.normal(0, 0.02, one.size))
    simulated = np.mean(left + chance.normal(0, 1, one.size) >= two)
    assert supply.probability(left, supply.weighed(31, 1)) == pytest.approx(simulated, abs=0.01)


@pytest.mark.parametrize("left", [27, 30, 33, 36])
def test_reckoned_against_a_simulation(left: float) -> None:
    """Gauge told (2.5 % each, together), Munden's constant, label, sock to sock and scale."""
    cloth = Fabric(7.5 / 25.4, 9.6 / 25.4, 0.025, 0.025, "gauge", (), 250, True, 1.8)
    chance = np.random.default_rng(21)
    size = 400_000
    together = 1 + chance.normal(0, 0.025, size)
    constant = 23.1 * (1 + chance.normal(0, 0.034, size)) ** 2
    loop = np.sqrt(constant / (7.5 / 25.4 * together * 9.6 / 25.4 * together))
    tex = 250 * (1 + chance.normal(0, 0.05, size))
    grams = (STITCHES * loop + TAILS) * tex / 1e6 * (1 + chance.normal(0, 0.02, size))
    simulated = np.mean(left + chance.normal(0, 1, size) >= grams)
    found = supply.probability(left, supply.reckoned(METRES * 1000, cloth))
    assert found == pytest.approx(simulated, abs=0.012)


def test_more_left_is_never_less_likely_and_weighing_is_surer() -> None:
    likely = [yarn({"left": f"{left} g"})["enough"]["probability"] for left in range(0, 60, 3)]
    assert likely == sorted(likely)
    assert (likely[0], likely[-1]) == (0.0, 1.0)
    left = f"{GRAMS * 1.15:.1f} g"
    reckoned = yarn({"left": left})["enough"]
    weighed = yarn({"left": left, "sock_one": f"{GRAMS:.1f} g"})["enough"]
    assert weighed["probability"] > reckoned["probability"]
    assert "Weigh sock one" in reckoned["words"]
    assert "Weigh sock one" not in weighed["words"]


def test_the_rounds_to_leave_out_are_just_enough() -> None:
    """The plan with that shorter leg says yes, and with one round more it does not."""
    enough = yarn({"left": "28 g"})["enough"]
    assert enough["level"] == "no"
    (fewer,) = (one["rounds"] for one in advice({"left": "28 g"}) if "rounds" in one)
    levels = [
        yarn({"left": "28 g"}, **{"sock.leg.rounds": 50 - n})["enough"]["level"]
        for n in (fewer, fewer - 1)
    ]
    assert levels == ["yes", "maybe"]


@pytest.mark.parametrize(
    ("left", "apart", "parts"),
    [
        ("31 g", [], ["toe"]),
        ("27 g", [], ["heel", "toe"]),
        ("27 g", ["toe"], ["heel"]),
        ("21 g", [], []),
        ("27 g", ["heel", "toe"], []),
    ],
)
def test_another_yarn_is_advised_for_both_socks_and_only_where_it_is_enough(
    left: str, apart: list[str], parts: list[str]
) -> None:
    """A cuff in another yarn shows, and sock one has its own already: toes, or heels and toes."""
    enough = yarn({"left": left, "apart": apart}, units="cm")["enough"]
    words = enough["words"]
    assert enough["level"] != "yes"
    assert "cuff" not in words
    if not parts:
        assert "ravel sock one" not in words
        return
    named = {"heel": "both heels", "toe": "both toes"}
    knit = "heels and toes" if len(parts) > 1 else named[parts[0]]
    assert f"knit {knit} in another yarn" in words
    assert ("back to its leg" if "heel" in parts else "back to its foot") in words
    # What is ravelled of sock one: 820 stitches each, by hand.
    back = len(parts) * 820 * LOOP / 1000 / 4
    assert float(words.split("saves about ")[1].split()[0]) == pytest.approx(2 * back, abs=0.51)
    in_hand = f"{float(left.split()[0]) + back:.3f} g"
    assert yarn({"left": in_hand, "apart": [*apart, *parts]})["enough"]["level"] == "yes"


def test_the_least_that_will_do_is_advised() -> None:
    """Between two advices: where the toes alone are enough, no heel is ravelled."""
    for grams in range(20, 36):
        words = yarn({"left": f"{grams} g"}, units="cm")["enough"]["words"]
        if "heels and toes" in words:
            back = 820 * LOOP / 1000 / 4
            in_hand = f"{grams + back:.3f} g"
            # The toe's end is grafted in its own yarn too: 30 stitches that the advice leaves out.
            found = yarn({"left": in_hand, "apart": ["toe"]})["enough"]
            assert found["probability"] < 0.975


def test_nothing_helps_where_nothing_helps() -> None:
    assert "get-more-yarn" in [one["say"] for one in advice({"left": "5 g"})]


def test_sock_two_of_other_counts_takes_its_share_of_sock_one() -> None:
    """A sock one knitted short makes sock two longer: its weight grows with its yarn."""
    changes = {"first_sock": {"foot_rounds": 40, "length": "8 in"}, "foot.length": "9 3/8 in"}
    sheet = plan({**SOCK, "stock": {"left": "40 g", "sock_one": "30 g"}, **changes})
    loop = sheet["fabric"]["loop_length"]["value"]
    two = sum(sheet["yarn"]["stitches"].values())
    one = two - 60 * (sheet["counts"]["foot"]["rounds"] - 40)
    assert sheet["counts"]["foot"]["rounds"] != 40
    ratio = (two * loop + TAILS) / (one * loop + TAILS)
    assert sheet["yarn"]["enough"]["needed"]["value"] == pytest.approx(30 * ratio, rel=0.001)


def test_colours_share_out_the_pair() -> None:
    """By hand: heel and toe apart take 2 x 1640 stitches, 2 x 2 stretches and the grafting."""
    found = yarn({"apart": ["heel", "toe"], "ball": "50 g", "margin": "20 %"})
    main, other = found["colors"]
    assert (main["name"], other["name"]) == ("Color A", "Color B")
    assert main["sections"] == ["cuff", "leg", "foot"]
    apart = 2 * (1640 * LOOP + 4 * 200 + 30 * LOOP) / 1000
    plain = 2 * (6960 * LOOP + 4 * 200) / 1000
    assert other["metres"]["value"] == pytest.approx(apart, abs=0.01)
    assert main["metres"]["value"] == pytest.approx(plain, abs=0.01)
    assert found["metres"]["value"] == pytest.approx(apart + plain, abs=0.02)
    assert main["with_margin"]["grams"]["value"] == pytest.approx(1.2 * plain / 4, abs=0.01)
    assert (main["balls"], other["balls"]) == (ceil(1.2 * plain / 4 / 50), 1) == (2, 1)
    whole = yarn({})
    assert [colour["name"] for colour in whole["colors"]] == ["Main yarn"]
    assert whole["colors"][0]["metres"] == whole["metres"]
    assert (whole["enough"], whole["stripes"]) == (None, None)


@pytest.mark.parametrize("apart", ["cuff", "heel", "toe", "cuff and heel", "cuff, heel and toe"])
def test_colours_always_add_up(apart: str) -> None:
    found = yarn({"apart": apart})
    total = sum(colour["metres"]["value"] for colour in found["colors"])
    assert total == pytest.approx(found["metres"]["value"], abs=0.03)
    parts = [part for colour in found["colors"] for part in colour["sections"]]
    assert sorted(parts) == sorted(found["stitches"])


def test_stripes_are_in_step_where_sock_two_starts() -> None:
    """What sock one took and what is wound off are whole repeats; a round takes 60 loops."""
    for stock, repeat in (
        ({"repeat": "40 m"}, 40.0),
        ({"repeat_rounds": "20"}, 20 * 60 * LOOP / 1000),
    ):
        found = yarn(stock)["stripes"]
        assert found["rounds_per_repeat"] == pytest.approx(repeat * 1000 / 60 / LOOP, abs=0.05)
        repeats = (METRES + found["wind_off"]["length"]["value"]) / repeat
        assert repeats == pytest.approx(round(repeats), abs=0.01)
        assert not found["wind_off"]["by_eye"]
        assert found["wind_off"]["length"]["text"] in found["words"]


def test_many_repeats_are_left_to_the_eye() -> None:
    found = yarn({"repeat": "5.2 m"})["stripes"]
    assert found["wind_off"]["by_eye"]
    assert "by eye" in found["words"]


def test_the_reach_of_stripes_against_a_simulation() -> None:
    """Where sock one truly ends in the yarn, four times in five within the reach (to 2 %)."""
    chance = np.random.default_rng(22)
    loop_sd = 0.04
    used, repeat = 124_530.0, 40_000.0
    found = stripes.work_out(used, 60 * LOOP, loop_sd, repeat, None)
    assert found is not None
    true_use = used * (1 + chance.normal(0, loop_sd, 200_000))
    true_repeat = repeat * (1 + chance.normal(0, 0.02, true_use.size))
    off = true_use / true_repeat * repeat - used
    assert np.quantile(np.abs(off), 0.8) == pytest.approx(found.reach, rel=0.02)


def test_questions_of_the_stock() -> None:
    notes = noted(plan({**SOCK, "stock": {"sock_one": "90 g"}}))
    assert "Weigh it again" in notes["stock.sock_one"]
    assert "what is left" in notes["stock.left"]
    notes = noted(plan({**SOCK, "stock": {"repeat": "20 m", "repeat_rounds": "60"}}))
    assert "both" in notes["stock.repeat_rounds"]
    assert not noted(plan({**SOCK, "stock": {"sock_one": "31 g", "left": "35 g"}}))


def test_what_cannot_be_is_refused_with_a_way_out() -> None:
    found = refused(
        {
            "stock": {
                "apart": "leg",
                "left": "-3",
                "ball": "3 cm",
                "repeat": "5 g",
                "sock_one": "2",  # grams, though the page is set to inches
                "margin": "200 %",
                "repeat_rounds": "0",
            }
        }
    )
    assert set(found) == {
        f"stock.{name}"
        for name in ("apart", "left", "ball", "repeat", "sock_one", "margin", "repeat_rounds")
    }
    assert "2 oz" in found["stock.sock_one"]["way_out"]


def test_typed_stock_is_read_back_in_the_other_units() -> None:
    """1 oz = 28.35 g and 1 yd = 0.9144 m (international yard and pound, 1959)."""
    typed = {"stock.left": "1.6 oz", "stock.repeat": "10"}
    inch = answer({"do": "read", "units": "in", "fields": typed})["readings"]
    assert (inch["stock.left"]["text"], inch["stock.repeat"]["other"]) == ("45 g", "9.1 m")
    typed = {"stock.left": "45", "stock.repeat": "9,1"}
    metric = answer({"do": "read", "units": "cm", "fields": typed})["readings"]
    assert (metric["stock.left"]["other"], metric["stock.repeat"]["other"]) == ("1.59 oz", "10 yd")


def test_the_words_of_stripes_by_hand() -> None:
    """40 m are 46.3 rounds of 60 loops, 124.56 m are 3.1 of them, and to four 35.44 m are wanting.

    That is 38.8 yd, 41.1 rounds, and 8.86 g. It is out by hypot(0.0363, 0.034, 0.02) =
    0.0536 of 124.56 m (0.0363 is 3 % told and 1.9 % of scatter), and 1.2816 times that four times
    in five: 8.56 m, 9.3 yd. The heel has 820 stitches, 13.7 rounds.
    """
    found = yarn({"repeat": "40 m", "left": "35 g"})["stripes"]
    assert found["words"] == (
        "One repeat makes 46.3 rounds of plain tube. The heel takes the yarn of 13.7 rounds, so "
        "the stripes move on there. Sock one takes 3.1 repeats. Before sock two, wind off 38.8 yd "
        "(41.1 rounds), right to within 9.3 yd four times in five. Then look for the color that "
        "sock one began with. It weighs about 9 g: subtract that from what is left."
    )
    assert found["rounds_per_repeat"] == 46.3
    wind_off = found["wind_off"]
    assert (wind_off["rounds"], wind_off["length"]["text"]) == (41.1, "38.8 yd")
    assert wind_off["within"]["text"] == "9.3 yd"
    assert "The heel takes" not in yarn({"repeat": "40 m", "apart": "heel"})["stripes"]["words"]


@pytest.mark.parametrize(
    ("left", "level", "start", "share"),
    [
        ("60 g", "yes", "Yes: ", "more than 99 %"),
        ("33 g", "maybe", "Perhaps: ", "%"),
        ("31.2 g", "maybe", "Perhaps: ", "51 %"),
        ("31 g", "no", "No: ", "48 %"),
        ("5 g", "no", "No: ", "less than 1 %"),
    ],
)
def test_enough_in_words(left: str, level: str, start: str, share: str) -> None:
    """31.13 g are needed: as likely enough as not where that is left."""
    found = yarn({"left": left})["enough"]
    assert found["level"] == level
    assert found["words"].startswith(start)
    assert f"{share}." in found["words"]
    assert ("Weigh sock one to make this much surer" in found["words"]) == (
        level != "yes" and share != "less than 1 %"
    )
    assert "main yarn" not in found["words"]
    assert "of main yarn is left" in yarn({"left": left, "apart": "toe"})["enough"]["words"]


def test_beside_grams_small_weights_are_written_to_a_hundredth_of_an_ounce() -> None:
    """33 g are 1.164 oz, 32 g 1.129; sock yarn is weighed in grams beside inches too."""
    found = yarn({"left": "33 g", "sock_one": "32 g"})["enough"]
    assert (found["left"]["text"], found["needed"]["text"]) == ("33 g", "32 g")
    assert (found["left"]["other"], found["needed"]["other"]) == ("1.16 oz", "1.13 oz")
    assert "33 g is left, and sock two takes about 32 g." in found["words"]


@pytest.mark.parametrize("units", ["in", "cm"])
def test_a_bare_weight_is_in_grams_whatever_feet_are_measured_in(units: str) -> None:
    typed = {"stock.left": "27", "stock.ball": 50, "fabric.swatch.grams": "1 oz"}
    found = answer({"do": "read", "units": units, "fields": typed})["readings"]
    grams = {name: quantity["value"] for name, quantity in found.items()}
    assert grams == {"stock.left": 27, "stock.ball": 50, "fabric.swatch.grams": 28.35}


def test_the_pair_by_hand() -> None:
    """A tenth to spare; waste yarn for ten rounds of 60 before each cuff and after each toe."""
    found = yarn({})
    assert found["metres"]["value"] == pytest.approx(2 * METRES, abs=0.01)
    assert found["grams"]["value"] == pytest.approx(2 * GRAMS, abs=0.01)
    assert found["with_margin"]["grams"]["value"] == pytest.approx(2.2 * GRAMS, abs=0.01)
    assert found["waste"]["metres"]["value"] == pytest.approx(2 * 10 * 120 * LOOP / 1000, abs=0.01)
    sections = {"cuff": 1200, "leg": 3000, "heel": 820, "foot": 2760, "toe": 820}
    for part, stitches in sections.items():
        by_hand = 2 * stitches * LOOP / 1000
        assert found["sections"][part]["metres"]["value"] == pytest.approx(by_hand, abs=0.01)
    assert found["sections"]["ends"]["metres"]["value"] == pytest.approx(2 * TAILS / 1000, abs=0.01)
