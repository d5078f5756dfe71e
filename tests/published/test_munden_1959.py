"""Plain knitted fabric against the constants of D. L. Munden.

D. L. Munden, The geometry and dimensional properties of plain-knit fabrics, Journal of the Textile
Institute 50 (1959) T448: with l the yarn in one loop in cm, wales per cm = Kw/l, courses per cm =
Kc/l, loops per cm2 = Ks/l2. The constants of the dry and wet relaxed states are quoted through
lecture tables, not seen in the paper. The fully relaxed ones, with their worked example, stand in
GATE 2015, Textile Engineering and Fibre Science, question 54.

Tolerances: whole loops per cm2 in the worked example; else what the answer is rounded to (0.01 mm
on a loop, 0.00001 per mm on stitches and rounds).
"""

from __future__ import annotations

from math import sqrt

import pytest

from engine import sources
from tests.asking import plan

# state -> Kc, Kw, Ks, R as printed
STATES = {
    "dry relaxed": (5.0, 3.8, 19.0, 1.3),
    "wet relaxed": (5.3, 4.1, 21.6, 1.3),
    "fully relaxed": (5.5, 4.2, 23.1, 1.31),
}
LOOPS = (5.5, 7.0, 10.0, 14.0, 18.0)  # mm; what the engine takes for sock fabric


def told(loop: float) -> dict[str, str]:
    """Stitches and rounds of fully relaxed fabric with a loop in mm, as printed."""
    kc, kw, _, _ = STATES["fully relaxed"]
    return {
        "fabric.stitches": f"{kw / loop * 100:.7f} / 10 cm",
        "fabric.rounds": f"{kc / loop * 100:.7f} / 10 cm",
    }


def test_the_constants_are_those_of_the_fully_relaxed_state() -> None:
    printed = (
        sources.COURSES_TIMES_LOOP,
        sources.WALES_TIMES_LOOP,
        sources.LOOPS_TIMES_LOOP_SQUARED,
    )
    assert printed == STATES["fully relaxed"][:3]


def test_worked_example_of_gate_2015() -> None:
    """Kw 4.2, Kc 5.5 and a loop of 0.5 cm make 92 loops per cm2."""
    loop = 0.5
    stitches, rounds = sources.WALES_TIMES_LOOP / loop, sources.COURSES_TIMES_LOOP / loop
    assert round(stitches * rounds) == 92
    assert round(sources.LOOPS_TIMES_LOOP_SQUARED / loop**2) == 92


def test_worked_example_holds_at_the_loops_of_socks() -> None:
    """A loop of 0.5 cm is finer than any sock; the same law carries its 92.4 to 1.0 cm."""
    fabric = plan(told(10.0))["fabric"]
    per_cm2 = fabric["stitches"]["value"] * fabric["rounds"]["value"] * 100
    assert per_cm2 == pytest.approx(92.4 * (0.5 / 1.0) ** 2, abs=0.01)
    assert fabric["loop_length"]["value"] == pytest.approx(10.0, abs=0.01)


@pytest.mark.parametrize("state", STATES)
def test_each_state_agrees_with_itself(state: str) -> None:
    """Ks = Kc Kw and R = Kc / Kw, to 0.15 loops and 0.03: what two printed figures allow."""
    kc, kw, ks, shape = STATES[state]
    assert kc * kw == pytest.approx(ks, abs=0.15)
    assert kc / kw == pytest.approx(shape, abs=0.03)


@pytest.mark.parametrize("loop", LOOPS)
def test_loop_length_is_found_back_from_a_swatch(loop: float) -> None:
    """The swatch is written to a tenth of a mm, so the loop comes back to 0.5 %."""
    kc, kw, _, _ = STATES["fully relaxed"]
    swatch = {
        "needles": 60,
        "flat_width": f"{60 * loop / kw / 2:.1f} mm",
        "rounds": 60,
        "length": f"{60 * loop / kc:.1f} mm",
    }
    changes = {"fabric.stitches": None, "fabric.rounds": None, "fabric.swatch": swatch}
    found = plan(changes)["fabric"]
    assert found["from"] == "swatch"
    assert found["loop_length"]["value"] == pytest.approx(loop, rel=0.005)


@pytest.mark.parametrize("yarn", ["300 m / 100 g", "400 m / 100 g", "480 m / 100 g"])
def test_the_loop_hangs_on_the_fabric_and_not_on_the_yarn(yarn: str) -> None:
    """Doyle: the stitch density of plain knit depends on the loop length alone."""
    with_yarn, without = plan({"fabric.yarn": yarn}), plan()
    assert with_yarn["fabric"]["loop_length"] == without["fabric"]["loop_length"]


@pytest.mark.parametrize("metres", [250, 300, 400, 425, 500])
def test_an_estimate_from_yarn_keeps_to_the_law(metres: int) -> None:
    """Where only the yarn is known, stitches, rounds and loop still hang together."""
    changes = {"fabric.stitches": None, "fabric.rounds": None}
    fabric = plan({**changes, "fabric.yarn": f"{metres} m / 100 g"})["fabric"]
    loop = fabric["loop_length"]["value"] / 10
    stitches, rounds = fabric["stitches"]["value"] * 10, fabric["rounds"]["value"] * 10
    kc, kw, ks, shape = STATES["fully relaxed"]
    assert stitches * loop == pytest.approx(kw, rel=0.001)
    assert rounds * loop == pytest.approx(kc, rel=0.001)
    assert stitches * rounds * loop**2 == pytest.approx(ks, rel=0.001)
    assert rounds / stitches == pytest.approx(shape, abs=0.005)


@pytest.mark.parametrize(("known", "missing"), [("stitches", "rounds"), ("rounds", "stitches")])
def test_what_was_not_told_follows_from_the_shape(known: str, missing: str) -> None:
    """R = 1.31 rounds to a stitch: 7.5 stitches go with 9.8 rounds per inch, to 0.05."""
    told_rate = {"stitches": "7.5 / in", "rounds": "9.82 / in"}
    fabric = plan({f"fabric.{known}": told_rate[known], f"fabric.{missing}": None})["fabric"]
    expected = {"stitches": 7.5, "rounds": 9.82}[missing]
    assert fabric[missing]["value"] * 25.4 == pytest.approx(expected, abs=0.05)


def test_a_sock_fabric_has_the_loop_and_tightness_worked_out_by_hand() -> None:
    """30 stitches, 39 rounds per 10 cm: l = sqrt(23.1 / 11.7) = 1.405 cm; 238 tex: K = 1.10."""
    rates = {"fabric.stitches": "30 / 10 cm", "fabric.rounds": "39 / 10 cm"}
    loop = plan(rates)["fabric"]["loop_length"]["value"]
    assert loop == pytest.approx(14.05, abs=0.01)
    assert sqrt(238) / loop == pytest.approx(1.10, abs=0.01)
    assert pytest.approx(1.1, abs=0.01) == sources.TIGHTNESS_SOCK


def test_another_state_of_rest_moves_the_loop_by_less_than_a_tenth() -> None:
    """A swatch that was not washed is read with the wrong Ks: that costs at most 10.5 % of yarn."""
    fully = STATES["fully relaxed"][2]
    for _, _, ks, _ in STATES.values():
        assert 1.0 <= sqrt(fully / ks) < 1.105
