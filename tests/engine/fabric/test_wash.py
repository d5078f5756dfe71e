"""How a yarn changes in the wash, against numpy's conditioning of the whole normal."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from engine.fabric import wash
from engine.fabric.swatch import Swatch
from tests.asking import mm, noted, plan, refused

READ = [(0.94, 0.01), (0.97, 0.012), (0.95, 0.008)]
SWATCH = {
    "needles": 60,
    "rounds": 60,
    "flat_width": "10.2 cm",
    "length": "15 cm",
    "unwashed_length": "15.75 cm",
}
BASE: dict[str, Any] = {"units": "cm", "foot.heel_girth": None, "fabric": {"swatch": SWATCH}}


def test_it_is_what_numpy_makes_of_a_prior_and_the_readings() -> None:
    """The mean 0 to 6 %, washes 2 % apart: our figures, common practice, no published source."""
    tubes = [Swatch("", drawn_in=(None, by), rounds_tape=tape) for by, tape in READ]
    n = len(READ)
    whole = 0.06**2 * np.ones((n + 1, n + 1)) + 0.02**2 * np.eye(n + 1)
    whole[:n, :n] += np.diag([2 * tape**2 for _, tape in READ])
    gain = whole[n, :n] @ np.linalg.inv(whole[:n, :n])
    found = wash.learn(tubes)
    assert found
    assert found.log == pytest.approx(gain @ np.log([by for by, _ in READ]))
    assert found.sd**2 == pytest.approx(whole[n, n] - gain @ whole[:n, n])


def test_without_both_readings_nothing_is_known_and_it_is_said_how_to_know() -> None:
    assert wash.learn([Swatch(""), Swatch("", drawn_in=(0.9, None))]) is None
    expected = plan()["off_machine"]
    assert expected["length"] is None
    assert "before and after the wash" in expected["words"]
    told = {"first_sock": {"foot_rounds": 49, "unwashed_length": "249 mm"}}
    assert set(refused(told)) == {"first_sock.unwashed_length"}


def test_sock_one_is_expected_longer_by_what_the_wash_takes() -> None:
    sheet = plan(BASE)
    expected = sheet["off_machine"]
    change = expected["length"]["value"] / mm(sheet, "foot_length")
    assert 1.03 < change < 1.05  # 5 %, as the swatch, drawn a little to none at all
    assert expected["low"]["value"] < expected["length"]["value"] < expected["high"]["value"]


def test_an_unwashed_sock_one_counts_as_it_will_be_and_less_surely() -> None:
    before = plan({**BASE, "first_sock": {"foot_rounds": 49, "unwashed_length": "249 mm"}})
    by = plan(BASE)["off_machine"]["length"]["value"] / mm(plan(BASE), "foot_length")
    after = plan({**BASE, "first_sock": {"foot_rounds": 49, "length": f"{249 / by:.2f} mm"}})
    exact = [sheet["counts"]["foot"]["exact"] for sheet in (plan(BASE), before, after)]
    assert exact == sorted(set(exact), reverse=exact[0] > exact[2]), "it moves, and not as far"
    assert "first_sock.unwashed_length" in noted(before)
    assert "first_sock.unwashed_length" not in noted(after)
    assert before["off_machine"] is None


def test_once_it_is_washed_the_reading_before_counts_no_more() -> None:
    washed = {"foot_rounds": 49, "length": "240 mm"}
    both = plan({**BASE, "first_sock": {**washed, "unwashed_length": "249 mm"}})
    assert both["counts"] == plan({**BASE, "first_sock": washed})["counts"]


@pytest.mark.parametrize("length", ["24.9 in", "x", "30 mm"])
def test_what_cannot_be_is_said_at_its_field(length: str) -> None:
    told = {**BASE, "first_sock": {"foot_rounds": 49, "unwashed_length": length}}
    assert set(refused(told)) == {"first_sock.unwashed_length"}


def test_a_change_is_one_of_length_alone() -> None:
    assert math.isclose(mm(plan(BASE), "tube_girth"), 204, abs_tol=0.1)
