"""Stitches guessed from a yarn's number against the Craft Yarn Council's categories.

Craft Yarn Council, Standard Yarn Weight System (www.YarnStandards.com): stitches in 4 in of plain
knit: 0 lace 33-40, 1 super fine 27-32, 2 fine 23-26, 3 light 21-24, 4 medium 16-20. What sock,
sport and double-knitting yarns measure in 100 g as sold is from memory; the Council prints none.

Tolerance: none on the category; a guess is counted in whole stitches, as the Council's are. A sock
is knitted firmer than a label says, more so the thicker the yarn: from category 4 on the guess is
finer than the label, and that too is held here.
"""

from __future__ import annotations

import pytest

from tests.asking import MM_PER_INCH, plan

CATEGORIES = {0: (33, 40), 1: (27, 32), 2: (23, 26), 3: (21, 24), 4: (16, 20)}


def stitches_in_4_inches(yarn: str) -> int:
    changes = {"fabric.stitches": None, "fabric.rounds": None, "fabric.yarn": yarn}
    fabric = plan(changes)["fabric"]
    assert fabric["from"] == "yarn"
    assert fabric["swatch_first"] is True
    return round(float(fabric["stitches"]["value"]) * 4 * MM_PER_INCH)


@pytest.mark.parametrize(
    ("yarn", "category"),
    [
        ("400 m / 100 g", 1),  # sock yarn
        ("412 m / 100 g", 1),
        ("425 m / 100 g", 1),
        ("210 m / 50 g", 1),
        ("238 tex", 1),
        ("250 tex", 1),
        ("300 m / 100 g", 2),  # sport yarn: from memory
        ("270 m / 100 g", 2),
        ("240 m / 100 g", 3),  # double knitting: from memory
        ("225 m / 100 g", 3),
        ("520 m / 100 g", 0),  # thin sock yarn, between the two: lace begins here
    ],
)
def test_a_yarn_lands_in_its_category(yarn: str, category: int) -> None:
    low, high = CATEGORIES[category]
    assert low <= stitches_in_4_inches(yarn) <= high


def test_usual_sock_yarn_lands_well_inside_super_fine() -> None:
    """Not at an edge: a stitch or more from both."""
    low, high = CATEGORIES[1]
    for yarn in ("400 m / 100 g", "425 m / 100 g"):
        assert low + 1 <= stitches_in_4_inches(yarn) <= high - 1


def test_thick_yarn_is_knitted_firmer_than_its_label() -> None:
    """200 m in 100 g is sold as category 4 (from memory): a sock has more than 20 stitches."""
    assert CATEGORIES[4][1] < stitches_in_4_inches("200 m / 100 g") <= CATEGORIES[4][1] + 2


def test_finer_yarn_never_gives_fewer_stitches() -> None:
    found = [stitches_in_4_inches(f"{metres} m / 100 g") for metres in range(180, 620, 20)]
    assert found == sorted(found)
    assert found[-1] > found[0] + 10
