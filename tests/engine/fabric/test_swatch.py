"""A swatch read: every figure of one tube by hand, and what the wash does to it."""

from __future__ import annotations

from math import hypot, log, sqrt
from typing import Any

import numpy as np
import pytest

from engine.fabric import swatch
from engine.fabric.swatch import Swatch
from engine.say.aloud import text
from engine.sock import plan as planning
from tests.asking import asked, noted, plan, refused

RULER, SCALE = 1.5, 1.0  # mm and g, one standard deviation (common practice)
MISCOUNTED = sqrt(0.15)  # rounds, likewise
ANY_WASH = hypot(0.06, 0.02)  # what a first wash may do, and one against another; likewise
NO_TELLING: dict[str, Any] = {"fabric.stitches": None, "fabric.rounds": None}


def tube(**more: Any) -> dict[str, Any]:
    told = {"needles": 60, "flat_width": "10 cm", "rounds": 50, "length": "12.5 cm", **more}
    return {name: value for name, value in told.items() if value is not None}


def seen(newest: dict[str, Any], *others: dict[str, Any]) -> list[Swatch]:
    request = {**NO_TELLING, "fabric.swatch": newest, "fabric.swatches": list(others)}
    return [one.tube for one in planning.make(asked(request)).fabric.seen]


def test_one_tube_by_hand() -> None:
    """60 needles on a tube of 20 cm, 50 rounds on 12.5 cm; 3000 stitches weigh 9 g."""
    (found,) = seen(tube(pulled_width="18 cm", grams="9 g"))
    assert (found.stitches, found.rounds) == pytest.approx((0.3, 0.4))
    assert found.stitches_tape == pytest.approx(RULER / 100)
    assert found.rounds_tape == pytest.approx(hypot(RULER / 125, MISCOUNTED / 50))
    across, along = found.sides
    assert across
    assert along
    assert tuple(across) == pytest.approx((log(0.3), found.stitches_tape, False))
    assert tuple(along) == pytest.approx((log(0.4), found.rounds_tape, False))
    assert found.pull == pytest.approx(1.8)
    assert found.grams == pytest.approx(0.003)
    assert found.grams_sd == pytest.approx(SCALE / 9)
    assert found.unwashed == (False, False)
    assert found.needles == 60
    assert found.questions == ()


def test_a_finished_sock_is_read_from_heel_to_toe() -> None:
    """To 3 mm, and its rounds were counted by the machine."""
    _, found = seen(tube(), tube(kind="sock", length="25 cm", rounds=100))
    assert found.rounds_tape == pytest.approx(3 / 250)


def test_what_was_measured_before_and_after_the_wash() -> None:
    (found,) = seen(tube(unwashed_width="11.1 cm", unwashed_length="12 cm"))
    assert found.drawn_in == pytest.approx((100 / 111, 125 / 120))
    assert found.stitches == pytest.approx(0.3), "the washed one counts"
    drew_in = swatch.drew_in(found)
    assert drew_in is not None
    assert text(drew_in) == "The wash made it 10 % narrower and 4 % longer."


@pytest.mark.parametrize(
    ("ratios", "words"),
    [
        ((0.9, None), "The wash made it 10 % narrower."),
        ((None, 0.94), "The wash made it 6 % shorter."),
        ((1.05, 1.06), "The wash made it 5 % wider and 6 % longer."),
    ],
)
def test_the_wash_in_words(ratios: tuple[float | None, float | None], words: str) -> None:
    found = swatch.drew_in(Swatch("", drawn_in=ratios))
    assert found is not None
    assert text(found) == words
    assert swatch.drew_in(Swatch("")) is None


UNWASHED = tube(flat_width=None, length=None, unwashed_width="11 cm", unwashed_length="13 cm")


def test_before_the_first_wash_it_is_taken_as_it_is_with_a_wide_error() -> None:
    (found,) = seen(UNWASHED)
    assert (found.stitches, found.rounds) == pytest.approx((60 / 220, 50 / 130))
    assert found.stitches_tape == pytest.approx(hypot(RULER / 110, ANY_WASH))
    assert found.rounds_tape == pytest.approx(hypot(RULER / 130, MISCOUNTED / 50, ANY_WASH))
    assert found.unwashed == (True, True)


def test_before_the_wash_it_draws_in_as_its_yarn_did() -> None:
    """0.90 and 0.86 in width, one 0.95 in length, each drawn to none at all by numpy's normals."""
    others = [
        tube(unwashed_width=f"{10 / 0.90:.6f} cm", unwashed_length=f"{12.5 / 0.95:.6f} cm"),
        tube(unwashed_width=f"{10 / 0.86:.6f} cm"),
    ]
    found, *read = seen(UNWASHED, *others)
    across, across_sd = next_tube([0.90, 0.86], [one.stitches_tape for one in read])
    along, along_sd = next_tube([0.95], [next(one.rounds_tape for one in read if one.drawn_in[1])])
    assert found.stitches == pytest.approx(60 / 220 / across, rel=1e-5)
    assert found.rounds == pytest.approx(50 / 130 / along, rel=1e-5)
    assert found.stitches_tape == pytest.approx(hypot(RULER / 110, across_sd))
    assert found.rounds_tape == pytest.approx(hypot(RULER / 130, MISCOUNTED / 50, along_sd))


def next_tube(read: list[float], tapes: list[float]) -> tuple[float, float]:
    """The next tube's change, and its sd, by numpy: the mean 0 to 6 %, washes 2 % apart.

    Both figures are common practice, no published source.
    """
    n = len(read)
    whole = 0.06**2 * np.ones((n + 1, n + 1)) + 0.02**2 * np.eye(n + 1)
    whole[:n, :n] += np.diag([2 * tape**2 for tape in tapes])
    gain = whole[n, :n] @ np.linalg.inv(whole[:n, :n])
    change, variance = gain @ np.log(read), whole[n, n] - gain @ whole[:n, n]
    return float(np.exp(change)), float(np.sqrt(variance))


def test_half_washed_only_the_other_half_is_guessed() -> None:
    half = tube(length=None, unwashed_length="13 cm")
    (found,) = seen(half)
    assert found.unwashed == (False, True)
    assert found.stitches_tape == pytest.approx(RULER / 100)
    assert found.rounds_tape == pytest.approx(hypot(RULER / 130, MISCOUNTED / 50, ANY_WASH))
    asked_at = noted(plan({**NO_TELLING, "fabric.swatch": half}))
    assert "Not washed yet" in asked_at["fabric.swatch.unwashed_length"]


@pytest.mark.parametrize(
    ("pulled", "wrong"),
    [("10.4 cm", True), ("10.5 cm", False), ("35 cm", False), ("35.1 cm", True)],
)
def test_a_tube_pulls_to_between_1_05_and_3_5_of_its_width(pulled: str, wrong: bool) -> None:
    request = {**NO_TELLING, "fabric.swatch": tube(pulled_width=pulled)}
    if wrong:
        assert set(refused(request)) == {"fabric.swatch.pulled_width"}
    else:
        assert planning.make(asked(request)).fabric.pull_measured


@pytest.mark.parametrize(
    ("left_out", "missing"),
    [
        ({"flat_width": None}, "flat_width"),
        ({"rounds": None}, "rounds"),
        ({"length": None}, "length"),
    ],
)
def test_a_count_and_its_size_go_together(left_out: dict[str, Any], missing: str) -> None:
    request = {**NO_TELLING, "fabric.swatch": tube(**left_out)}
    assert set(refused(request)) == {f"fabric.swatch.{missing}"}


@pytest.mark.parametrize("width", ["flat_width", "unwashed_width"])
def test_needles_left_out_are_the_cylinders(width: str) -> None:
    """A swatch is knitted on the cylinder that the sock is for; the words beside it say so."""
    told = {"flat_width": None, "needles": None} | {width: "10 cm"}
    (found, kept) = seen(tube(**told), tube(kind="sock", **told))
    assert (found.needles, kept.needles) == (60, 60)
    assert found.stitches == pytest.approx(0.3)
    notes = noted(plan({**NO_TELLING, "fabric.swatch": tube(needles=None)}))
    assert notes["fabric.swatch.needles"] == "Left empty: taken as the cylinder’s 60."
    problems = refused({**NO_TELLING, "fabric.swatch": tube(needles=None), "cylinder.slots": None})
    assert set(problems) == {"cylinder.slots", "fabric.swatch.needles"}


def test_a_whole_sock_is_not_weighed_by_its_foot_and_may_be_short() -> None:
    sock = tube(kind="sock", grams="30 g", rounds=30, length="7.5 cm")
    found = seen(tube(), sock)[-1]
    assert (found.kind, found.grams, found.grams_sd) == ("sock", None, 0.0)
    notes = noted(plan({**NO_TELLING, "fabric.swatch": tube(), "fabric.swatches": [sock]}))
    assert "Fill in how many" in notes["fabric.swatches.0.grams"]
    assert "fabric.swatches.0.rounds" not in notes
