"""The sock in the middle: its sizes by hand, plain and with a leg of two tensions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.say import messages as say
from engine.sections.leg import Band, Leg
from engine.sock import plan as planning
from engine.sock.sock import Sock
from tests.asking import asked
from tests.engine.socks import with_leg

ROUND, TUBE = 25.4 / 9.6, 8 * 25.4  # mm: 9.6 rounds an inch, 60 needles at 7.5 an inch


def sock(*bands: Band) -> Sock:
    """60 slots, a hem of 20, heel and toe of 30 down to 10, 46.4 foot rounds for 9 in."""
    wished = {f"sock.{part}": {"needles": 30, "left": 10} for part in ("heel", "toe")}
    made = with_leg(
        planning.make(asked({**wished, "sock.cuff.rounds": 20})),
        Leg(bands, say.leg_words(why="told")),
    )
    return replace(made.with_foot(46), aimed=9 * 25.4, aimed_sd=2.0)


def test_a_plain_sock() -> None:
    plain = sock(Band(50))
    assert plain.foot_rounds == 46
    assert plain.stitches == {"cuff": 1200, "leg": 3000, "heel": 820, "foot": 2760, "toe": 820}
    assert plain.loops == plain.stitches
    assert plain.tube == pytest.approx(TUBE)
    assert (plain.narrowest, plain.top_tube) == pytest.approx((TUBE, TUBE))
    assert plain.foot_length == pytest.approx(86 * ROUND)
    assert plain.heel_height == pytest.approx(20 * ROUND)
    assert (plain.leg_length, plain.cuff_depth) == pytest.approx((50 * ROUND, 10 * ROUND))
    assert plain.top_above_heel == pytest.approx(60 * ROUND)
    assert plain.top_above_floor == pytest.approx(80 * ROUND)


def test_a_leg_a_quarter_firmer_at_the_top() -> None:
    """Each stitch there takes four fifths of the foot's loop, and each round of its height."""
    firm = sock(Band(20, 1.25), Band(30))
    assert firm.loops["cuff"] == pytest.approx(1200 * 0.8)
    assert firm.loops["leg"] == pytest.approx(60 * (20 * 0.8 + 30))
    assert firm.leg_length == pytest.approx((16 + 30) * ROUND)
    assert firm.cuff_depth == pytest.approx(8 * ROUND)
    assert (firm.narrowest, firm.top_tube) == pytest.approx((TUBE * 0.8, TUBE * 0.8))
    # the heel is 20 rounds high, and 30 more are as the foot
    found = [firm.tube_at(rounds * ROUND)[0] for rounds in (0, 21, 49.9, 50.1, 65)]
    assert found == pytest.approx([TUBE, TUBE, TUBE, TUBE * 0.8, TUBE * 0.8])


def test_a_leg_looser_at_the_top_is_narrowest_at_the_foot() -> None:
    loose = sock(Band(20, 0.8), Band(30))
    assert (loose.narrowest, loose.top_tube) == pytest.approx((TUBE, TUBE * 1.25))


def test_the_range_of_foot_rounds() -> None:
    """2 mm and 2.5 % of 86.4 rounds: hypot(0.756, 2.16) = 2.288, 2.65 %, four times in five 3.39 %:
    46.4 - 2.88 = 43.5 to 46.4 + 2.98 = 49.4, that is 44, 45 ... 49.
    """
    plain = sock(Band(50))
    plain = replace(plain, fabric=replace(plain.fabric, rounds_sd=0.025, along=None))
    assert plain.rounds_sd == pytest.approx(2.2885, abs=1e-3)
    assert plain.rounds_range == (44, 49)
    short = replace(plain, aimed=41 * ROUND)  # 1 round beside heel and toe
    assert short.exact_rounds == pytest.approx(1.0)
    assert short.rounds_range == (0, 2)


@pytest.mark.parametrize(("slots", "length"), [(24, "80 mm"), (36, "80 mm"), (48, "80 mm")])
def test_a_babys_foot_of_80_mm_has_a_sock(slots: int, length: str) -> None:
    """By hand on 48 slots at 46 rounds in 10 cm: 76.8 x 0.46 less 16 and 16 rows are 3.3 rounds."""
    baby = {
        "units": "cm",
        "foot": {"length": length},
        "person": {"child": True, "age": "0.3"},
        "cylinder": {"slots": slots},
        "fabric": {"stitches": "34 / 10 cm", "rounds": "46 / 10 cm"},
    }
    made = planning.make(baby)
    assert made.foot_rounds >= 1
    if slots == 48:
        assert made.foot_rounds == 3
    assert made.foot_length == pytest.approx(0.96 * 80, abs=0.5 / 0.46 + 0.01)
    assert all(made.measures[name].value > 0 for name in made.measures)
