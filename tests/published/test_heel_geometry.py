"""The girth of a short-row heel, worked out a second way.

The authority is the trade's own formula, common practice with no published source: with N needles
in all, h of them in the heel and b left, w stitches and c rounds per mm, the sock's girth round
heel and ankle bend is

    (N - h)/w + b/w + 2 sqrt(((h - b)/(2w))^2 + ((h - b)/c)^2)

Here the pocket is laid out as a flat pattern from the steps a knitter follows: a stitch is 1/w
wide, a row 1/c high, and a needle's column ends in the row after which it goes into hold. Sewing
the narrowing half to the widening one along these ends makes the pocket; the tape runs from the
ankle bend down one seam, across the needles left, up the other seam and back over the instep.

Tolerances: one row (2.6 mm) on the path, for the staircase that the formula draws as a straight
line (measured: 2.0 mm); 0.1 mm on the formula, what sizes are rounded to.
"""

from __future__ import annotations

from itertools import pairwise
from math import hypot
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.asking import MM_PER_INCH, mm, plan

W, C = 7.5 / MM_PER_INCH, 9.6 / MM_PER_INCH  # stitches and rounds per mm
POCKETS = [  # slots, heel needles, left
    (60, 30, 10),
    (60, 30, 6),
    (60, 30, 14),
    (60, 36, 12),
    (54, 27, 9),
    (72, 36, 12),
    (84, 42, 14),
    (72, 30, 10),
]


def heel(slots: int, needles: int, left: int) -> dict[str, Any]:
    changes = {"sock.heel.needles": needles, "sock.heel.left": left, "cylinder.slots": slots}
    return plan({**changes, "foot.length": "300 mm"})


def formula(slots: int, needles: int, left: int) -> float:
    turned = needles - left
    return (slots - needles + left) / W + 2 * hypot(turned / (2 * W), turned / C)


def ends(sheet: dict[str, Any], half: str) -> dict[int, int]:
    """The row in which each needle's column ends (narrowing) or begins again (widening)."""
    rows = [step for step in sheet["steps"] if step["part"] == "heel" and step["kind"] == "row"]
    which = "hold" if half == "narrowing" else "back"
    return {row[which]: row["row"] for row in rows if row[which] is not None}


def seams(sheet: dict[str, Any], half: str) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """The left and right edge of one half, each a line of (x, y) in mm from the ankle downwards."""
    found, needles = ends(sheet, half), sheet["counts"]["heel"]["needles"]
    rows = sheet["counts"]["heel"]["rows"]

    def depth(needle: int) -> float:
        row = found[needle]
        return (row if half == "narrowing" else rows + 1 - row) / C

    middle = needles / 2
    left = [(n, depth(n)) for n in sorted(found) if n <= middle]
    right = [(needles + 1 - n, depth(n)) for n in sorted(found, reverse=True) if n > middle]
    return tuple(  # type: ignore[return-value]
        np.array([(0.0, 0.0), *[(across / W, y) for across, y in side]]) for side in (left, right)
    )


def along(line: NDArray[np.float64]) -> float:
    """The length of a line through points."""
    return float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum())


@pytest.mark.parametrize("pocket", POCKETS, ids=str)
def test_girth_is_the_path_along_the_seams(pocket: tuple[int, int, int]) -> None:
    slots, needles, left = pocket
    sheet = heel(*pocket)
    across = (needles - len(ends(sheet, "narrowing"))) / W
    for half in ("narrowing", "widening"):
        path = (slots - needles) / W + across + sum(along(side) for side in seams(sheet, half))
        assert path == pytest.approx(mm(sheet, "heel_girth"), abs=1 / C)
    assert left == needles - len(ends(sheet, "widening"))


@pytest.mark.parametrize("pocket", POCKETS, ids=str)
def test_both_halves_have_the_same_seams(pocket: tuple[int, int, int]) -> None:
    """Or they could not be one: needle for needle they end as deep as they begin, to one row."""
    sheet = heel(*pocket)
    narrowing, widening = ends(sheet, "narrowing"), ends(sheet, "widening")
    assert set(narrowing) == set(widening)
    rows = sheet["counts"]["heel"]["rows"]
    for needle, row in narrowing.items():
        assert abs(row - (rows + 1 - widening[needle])) <= 1


@pytest.mark.parametrize("pocket", POCKETS, ids=str)
def test_girth_by_the_formula(pocket: tuple[int, int, int]) -> None:
    assert mm(heel(*pocket), "heel_girth") == pytest.approx(formula(*pocket), abs=0.1)


@pytest.mark.parametrize("pocket", POCKETS, ids=str)
def test_girth_lies_between_the_shortest_path_and_the_outer_edges(
    pocket: tuple[int, int, int],
) -> None:
    """A tape drawn tight over the same fabric takes the straight line from each ankle corner to the
    middle of the needles left; no path along the pocket's edges is longer than down and across.
    """
    slots, needles, left = pocket
    turned = needles - left
    shortest = (slots - needles) / W + 2 * hypot(needles / (2 * W), turned / C)
    longest = (slots - needles) / W + needles / W + 2 * turned / C
    assert shortest < mm(heel(*pocket), "heel_girth") < longest
    assert mm(heel(*pocket), "heel_girth") / shortest < 1.08


def test_fewer_needles_left_make_a_roomier_heel() -> None:
    girths = [mm(heel(60, 30, left), "heel_girth") for left in range(2, 28, 2)]
    assert all(deep > shallow for deep, shallow in pairwise(girths))


def test_more_heel_needles_make_a_roomier_heel() -> None:
    """With the same third left; a high instep is helped by either."""
    girths = [mm(heel(60, needles, needles // 3), "heel_girth") for needles in (24, 30, 36)]
    assert all(narrow < wide for narrow, wide in pairwise(girths))


def test_without_a_pocket_it_would_be_the_tube() -> None:
    """The nearer b comes to h, the nearer the girth comes to the tube's own: by 4 rows to 5 %."""
    sheet = heel(60, 30, 28)
    assert mm(sheet, "heel_girth") == pytest.approx(mm(sheet, "tube_girth"), rel=0.05)
    assert mm(sheet, "heel_girth") > mm(sheet, "tube_girth")


@pytest.mark.parametrize("pocket", POCKETS, ids=str)
def test_height_and_sole_are_a_half_of_the_rows_each(pocket: tuple[int, int, int]) -> None:
    """The narrowing half stands up behind the heel, the widening half lies under it."""
    sheet = heel(*pocket)
    turned = pocket[1] - pocket[2]
    toe = sheet["counts"]["toe"]["rows_each_way"]
    assert mm(sheet, "heel_height") == pytest.approx(turned / C, abs=0.1)
    sole = mm(sheet, "foot_length") - (sheet["counts"]["foot"]["rounds"] + toe) / C
    assert sole == pytest.approx(turned / C, abs=0.1)


@pytest.mark.parametrize("girth", [283, 300, 310, 330, 334])
def test_the_customary_heel_is_kept_while_it_is_comfortable(girth: int) -> None:
    """Stretched by 8 to 28 % (common practice, no published source)."""
    assert 1.08 < girth / formula(60, 30, 10) < 1.28
    left = plan({"foot.heel_girth": f"{girth} mm"})["counts"]["heel"]["left"]
    assert left == 10


@pytest.mark.parametrize("girth", [270, 276, 281, 340, 345])
def test_where_it_is_not_the_engine_departs_as_little_as_comfort_asks(girth: int) -> None:
    """Of all numbers a knitter could leave (a sixth to a half), the comfortable one next to 10."""
    assert not 1.08 < girth / formula(60, 30, 10) < 1.28
    comfortable = [b for b in range(6, 16, 2) if 1.08 <= girth / formula(60, 30, b) < 1.28]
    left = plan({"foot.heel_girth": f"{girth} mm"})["counts"]["heel"]["left"]
    assert left == min(comfortable, key=lambda b: abs(b - 10)) != 10


@pytest.mark.parametrize("slots", [48, 60, 72, 96])
def test_a_mm_of_tape_moves_the_heel_by_no_more_than_a_step(slots: int) -> None:
    """Two needles held more or fewer, or two needles more in the heel."""
    found = [
        plan({"cylinder.slots": slots, "foot.length": "300 mm", "foot.heel_girth": f"{mm} mm"})[
            "counts"
        ]["heel"]["rows_each_way"]
        for mm in range(240, 400)
    ]
    assert max(after - before for before, after in pairwise(found)) <= 2


def test_a_larger_heel_never_gets_a_shallower_pocket() -> None:
    """A pocket is as deep as it holds needles: its girth hangs on those alone."""
    held = [
        plan({"foot.heel_girth": f"{girth} mm"})["counts"]["heel"]["rows_each_way"]
        for girth in range(250, 380, 5)
    ]
    assert held == sorted(held)
    assert held[0] < held[-1]
