"""The pair: sock two like the foot, like sock one or between, against numpy and scipy.

The state is (v, e1, e2), normal and independent before anything is read; sock one's reading is
v + e1 + its tape's error. numpy conditions on it with the whole covariance.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy import optimize, stats

from engine.fabric.certainty import Foretold, t_90
from engine.sock import foot_rounds, pair
from engine.sock import plan as planning
from engine.sock.foot_rounds import Others
from engine.sources import TO_80_PERCENT
from tests.asking import answer, asked, plan, refused

OTHERS = Others(40)
SCATTER, TAPE, BEFORE = 0.02, 3 / 240, 0.03  # relative sds: tube to tube, of reading, of v before
READ = math.log((49 + 40) / 240)


def conditioned(before: float = math.log(9.6 / 25.4)) -> tuple[np.ndarray, np.ndarray]:
    """The mean and covariance of (v, e1, e2) after sock one was read."""
    prior = np.diag([BEFORE**2, SCATTER**2, SCATTER**2])
    mean, seen = np.array([before, 0.0, 0.0]), np.array([1.0, 1.0, 0.0])
    gain = prior @ seen / (seen @ prior @ seen + TAPE**2)
    return mean + gain * (READ - before), prior - np.outer(gain, seen @ prior)


def worked_out(like: pair.Like = "foot", wanted: float = 236.4) -> pair.Pair:
    mean, covariance = conditioned()
    along = Foretold(covariance[0][0], SCATTER**2, 0.0, 30.0)
    known = math.exp(mean[0]), along
    return pair.work_out(like, (wanted, 2.4), (240.0, TAPE, 49), known, OTHERS)


def test_sock_ones_own_length_is_what_numpy_makes_of_it() -> None:
    mean, _ = conditioned()
    assert worked_out().one == pytest.approx(89 * math.exp(-(mean[0] + mean[1])), rel=1e-12)


@pytest.mark.parametrize("at", range(3))
def test_what_is_said_is_the_normal_that_numpy_and_scipy_have(at: int) -> None:
    """The lengths taken straight in the logs; 80 % of a normal about its middle, by scipy."""
    mean, covariance = conditioned()
    found = worked_out()
    wish = found.wishes[at]
    two = (wish.rounds + 40) / math.exp(mean[0])
    wider = t_90(30.0) / TO_80_PERCENT
    off = np.array([-two, 0, -two])
    apart = np.array([found.one - two, found.one, -two])
    for middle, by, said in (
        (two - found.wanted, off, wish.off),
        (two - found.one, apart, wish.apart),
    ):
        sd = math.sqrt(by @ covariance @ by) * (wider if by is apart else 1.0)
        if by is off:
            sd = two * Foretold(covariance[0][0], SCATTER**2, 0.0, 30.0).sd()

        def inside(x: float, middle: float = middle, sd: float = sd) -> float:
            normal = stats.norm(middle, sd)
            return float(normal.cdf(x) - normal.cdf(-x) - 0.8)

        assert said == math.floor(optimize.brentq(inside, 0, 100))


def test_like_sock_one_is_its_length_and_not_its_count() -> None:
    """Long by chance: 250 mm where 89 rounds should have made 235."""
    sock = planning.make(asked(long_one(like="sock one")))
    assert sock.pair
    assert 235.5 < sock.pair.one < 250
    assert sock.foot_rounds > 49
    assert sock.aimed == sock.pair.one


def long_one(**more: str) -> dict[str, Any]:
    return {
        "foot.heel_girth": None,
        "first_sock": {"foot_rounds": 49, "length": "250 mm", **more},
    }


def test_between_lies_between_and_the_foot_is_as_it_was() -> None:
    rounds = [plan(long_one(like=like))["counts"]["foot"]["rounds"] for like in pair.LIKE]
    assert rounds == sorted(set(rounds))
    assert plan(long_one()) == plan(long_one(like="foot"))


def test_each_wish_is_told_with_what_to_expect_and_which_is_chosen() -> None:
    assert plan()["pair"] is None
    for like in pair.LIKE:
        sheet = plan(long_one(like=like))
        wishes = {one["like"]: one for one in sheet["pair"]["wishes"]}
        assert [name for name, one in wishes.items() if one["chosen"]] == [like]
        assert wishes[like]["rounds"] == sheet["counts"]["foot"]["rounds"]
        assert wishes["foot"]["off"]["value"] < wishes["sock one"]["off"]["value"]
        assert wishes["foot"]["apart"]["value"] > wishes["sock one"]["apart"]["value"]


@pytest.mark.parametrize("like", pair.LIKE)
def test_a_link_without_the_foot_knits_the_same(like: str) -> None:
    found = answer({"do": "page", "request": asked(long_one(like=like))})
    bare = answer({"do": "open", "link": found["counts_link"]})["request"]
    again = answer({"do": "plan", "request": bare})
    assert again["counts"]["foot"]["rounds"] == found["plan"]["counts"]["foot"]["rounds"]


def test_another_word_is_refused_and_the_counter_has_the_wishes_too() -> None:
    assert "first_sock.like" in refused(long_one(like="me"))
    at_machine = answer({"do": "knit", "request": asked(long_one(like="between"))})
    assert at_machine["pair"] == plan(long_one(like="between"))["pair"]


def test_what_is_knitted_on_by_hand_neither_scatters_nor_differs() -> None:
    """With 50 mm by hand a sock of 240 mm is as unsure as one of 190 mm."""
    along = Foretold(0.0002, SCATTER**2, 0.0, 30.0)
    by_hand = pair.work_out("foot", (240, 0), (240, TAPE, 49), (89 / 190, along), Others(40, 50.0))
    plain = pair.work_out("foot", (190, 0), (190, TAPE, 49), (89 / 190, along), OTHERS)
    for one, other in zip(by_hand.wishes, plain.wishes, strict=True):
        assert (one.rounds, one.off, one.apart) == (other.rounds, other.off, other.apart)
    assert foot_rounds.length(89 / 190, 49, Others(40, 50.0)) == pytest.approx(240)
