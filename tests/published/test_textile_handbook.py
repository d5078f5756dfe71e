"""The weight of fabric against the formulae of a textile handbook.

Texcoms Textile Technical Handbook (2023), page 147, Knitting, general formulae for the grams in a
square metre of plain fabric, with courses and wales per inch and the stitch length in mm:

    (a) CPI x WPI x stitch length x 39.37^2 x tex / (1000 x 1000)
    (b) WPI x CPI x stitch length x 0.9155 / Ne

The engine never works in grams per square metre: it counts stitches, lays a loop in each and weighs
the length. Here its leg is weighed by area instead.

Tolerance: 2 parts in 1,000, for what the answer rounds (0.01 g in 8 to 30, 0.01 mm in a loop of 10
to 15) and for the four figures of the printed constants.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import mm, plan

FABRICS = [("7.5 / in", "9.6 / in"), ("8.4 / in", "10.9 / in"), ("10 / in", "13 / in")]


def weighed(sheet: dict[str, Any]) -> float:
    """Grams in a square metre of the leg: two legs, each a tube of its length and girth."""
    grams = float(sheet["yarn"]["sections"]["leg"]["grams"]["value"])
    return grams / (2 * mm(sheet, "leg_length") * mm(sheet, "tube_girth") * 1e-6)


def leg_of(stitches: str, rounds: str, yarn: str, slots: int) -> dict[str, Any]:
    return plan(
        {
            "fabric.stitches": stitches,
            "fabric.rounds": rounds,
            "fabric.yarn": yarn,
            "cylinder.slots": slots,
            "sock.leg.rounds": 120,
        }
    )


@pytest.mark.parametrize("slots", [60, 84])
@pytest.mark.parametrize(("stitches", "rounds"), FABRICS)
def test_weight_by_tex(stitches: str, rounds: str, slots: int) -> None:
    sheet = leg_of(stitches, rounds, "238 tex", slots)
    loop = sheet["fabric"]["loop_length"]["value"]
    wales, courses = float(stitches.split()[0]), float(rounds.split()[0])
    printed = courses * wales * loop * 39.37**2 * 238 / (1000 * 1000)
    assert weighed(sheet) == pytest.approx(printed, rel=0.002)


@pytest.mark.parametrize("slots", [60, 84])
@pytest.mark.parametrize(("stitches", "rounds"), FABRICS)
def test_weight_by_english_cotton_number(stitches: str, rounds: str, slots: int) -> None:
    sheet = leg_of(stitches, rounds, "Ne 2.5", slots)
    loop = sheet["fabric"]["loop_length"]["value"]
    wales, courses = float(stitches.split()[0]), float(rounds.split()[0])
    assert weighed(sheet) == pytest.approx(wales * courses * loop * 0.9155 / 2.5, rel=0.002)
