"""Yarn of socks against what a journal for handspinners prints.

- Its chart of yarn weights (spinoffmagazine.com/yarn-chart, "Yarn Standards for Spinners", 2024):
  super fine yarn has 1901 to 2400 yards to the pound. The row is quoted, the chart was not seen.
- A column retelling its articles on measuring yarn (interweave.com, "How Big is Your Yarn? It
  Depends."): a medium pair of socks is about 260 square inches of knitted fabric.

Tolerances: 1 m per 100 g on the row; one stitch per 4 in beyond the category's 27 to 32; 15 % on
the fabric of a pair, which the journal gives as "about" and for hand-knitted socks.
"""

from __future__ import annotations

import pytest

from engine import sources
from engine.fabric.yarn import metres_per_100_g, read
from tests.asking import MM_PER_INCH, plan

SUPER_FINE = (1901, 2400)


def test_super_fine_in_metres() -> None:
    """1901 to 2400 yards to the pound are 383 to 484 m in 100 g."""
    finest_and_thickest = [metres_per_100_g(read(f"{yards} yd/lb").tex) for yards in SUPER_FINE]
    assert finest_and_thickest == pytest.approx([383, 484], abs=1)


def test_what_the_engine_takes_for_usual_is_super_fine() -> None:
    low, high = SUPER_FINE
    usual = float(sources.USUAL_SOCK_YARN_TEX)
    assert read(f"{high} yd/lb").tex < usual < read(f"{low} yd/lb").tex


@pytest.mark.parametrize("yards", [*SUPER_FINE, 2000, 2100, 2200])
def test_super_fine_yarn_gives_super_fine_stitches(yards: int) -> None:
    changes = {"fabric.stitches": None, "fabric.rounds": None, "fabric.yarn": f"{yards} yd/lb"}
    per_4_inches = plan(changes)["fabric"]["stitches"]["value"] * 4 * MM_PER_INCH
    assert 27 - 1 <= per_4_inches <= 32 + 1


def test_fabric_of_a_medium_pair() -> None:
    """All the stitches of two socks, at 7.5 x 9.6 to a square inch."""
    stitches = sum(plan({"sock.leg.rounds": 50})["yarn"]["stitches"].values())
    assert 2 * stitches / (7.5 * 9.6) == pytest.approx(260, rel=0.15)
