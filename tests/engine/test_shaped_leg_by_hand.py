"""The parts of a shaped leg, each worked by hand: girths, limits, pieces, whole rounds."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.fabric.fabric import Fabric
from engine.fabric.tension import Setting
from engine.people.foot import Measure
from engine.read.errors import Refused
from engine.say import messages as say
from engine.sections import shaped_leg
from engine.sections.leg import Girth
from engine.sections.rib import Rib
from engine.sections.shaped_leg import Ground

CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "gauge", (), 240.0, True, 1.8)
ANKLE, CALF = 0.43 * 200, 1.37 * 200  # heights on a foot of 200 mm: 86 and 274


def body(ankle_measured: bool = True, calf_measured: bool = True) -> dict[str, Measure]:
    return {
        "length": Measure(200.0, 0.0, True),
        "heel_girth": Measure(310.0, 0.0, True),
        "ankle_girth": Measure(210.0, 0.0, ankle_measured),
        "calf_girth": Measure(350.0, 0.0, calf_measured),
    }


def test_girths_lie_on_straight_lines_and_are_level_beyond() -> None:
    """Measured is what lies between two that were."""
    known = (Girth(100, 200), Girth(200, 300, False), Girth(300, 320), Girth(400, 330))
    found = [
        shaped_leg.girth_at(known, z)[1:] for z in (50, 100, 150, 200, 250, 300, 350, 400, 450)
    ]
    assert found == [
        *((200, True), (200, True), (250, False), (300, False)),
        *((310, False), (320, False), (325, True), (330, True), (330, True)),
    ]


@pytest.mark.parametrize(
    ("height", "measured", "added"),
    [
        (100.0, (True, True), ["calf"]),  # 14 mm from the ankle: of one place
        (106.1, (True, True), ["ankle", "calf"]),  # 20.1 mm
        (105.9, (True, True), ["calf"]),
        (150.0, (False, False), ["ankle", "calf"]),  # guesses below and above all that was taken
        (60.0, (False, False), ["calf"]),  # a guessed ankle above it is none
        (300.0, (False, False), ["ankle"]),
        (300.0, (False, True), ["ankle", "calf"]),
        (60.0, (True, False), ["ankle", "calf"]),
    ],
)
def test_ankle_and_calf_are_added_where_no_girth_was_taken(
    height: float, measured: tuple[bool, bool], added: list[str]
) -> None:
    taken = Girth(height, 250.0)
    own = {
        "ankle": Girth(ANKLE, 210.0, measured[0]),
        "calf": Girth(CALF, 350.0, measured[1]),
    }
    found = shaped_leg.profile((taken,), body(*measured))
    wanted = sorted([(height, taken), *((ANKLE if n == "ankle" else CALF, own[n]) for n in added)])
    assert [girth[1:] for girth in found] == [girth[1:] for _, girth in wanted]
    assert [girth.height for girth in found] == pytest.approx([height for height, _ in wanted])


@pytest.mark.parametrize(
    ("tex", "told", "heel", "low", "high"),
    [
        # sqrt(tex) / l is 1.2: 0.9 / 1.2 and 1.6 / 1.2; the heel: 60 x 1.8 x 0.93 / (0.3 x girth)
        (1.2, True, 310.0, 0.75, 1.08),
        (1.2, True, 200.0, 0.75, 4 / 3),
        (1.2, True, 400.0, 0.75, 1.0),  # 0.837: what the foot has is always borne
        (1.2, False, 200.0, 0.9 / 1.1, 1.6 / 1.1),
        (0.8, True, 200.0, 1.0, 1.674),
        (1.7, True, 200.0, 0.9 / 1.7, 1.0),
    ],
)
def test_what_yarn_and_heel_bear(
    tex: float, told: bool, heel: float, low: float, high: float
) -> None:
    cloth = replace(CLOTH, tex=(tex * CLOTH.loop) ** 2, tex_told=told)
    measures = {**body(), "heel_girth": Measure(heel, 0.0, True)}
    ground = Ground(60, cloth, 50.0, Rib(20), measures, "cm")
    assert shaped_leg._limits(ground) == pytest.approx((low, high))
    assert ground.scale == pytest.approx(60 * 1.135 / 0.3)


def test_turns_lie_as_far_apart_as_they_must() -> None:
    """A quarter turn a place at most; below the last place the foot's own is half a turn away.

    A leap of 2 turns is the middle of a rise that ends with it and of one that begins there.
    """
    quarter = [0.25] * 16
    leap = shaped_leg._gentle([0.0] * 8 + [2.0] * 8, quarter)
    assert leap[4:12] == pytest.approx([0.5, 0.625, 0.75, 0.875, 1.125, 1.25, 1.375, 1.5])
    assert leap[12:] == [1.5, 1.25, 1.0, 0.75], "0.5 and a quarter for each place, from below"
    assert shaped_leg._gentle([0.1, 0.2, 0.3, 0.4], quarter[:4]) == [0.1, 0.2, 0.3, 0.4]
    assert shaped_leg._gentle([-9.0] * 4, quarter[:4]) == [-1.5, -1.25, -1.0, -0.75]


@pytest.mark.parametrize(
    ("pieces", "left"),
    [
        ([(9.0, 0), (1.9, 1), (9.0, 0)], [(19.9, 0)]),  # not worth two turns
        ([(9.0, 0), (2.0, 1), (9.0, 0)], [(9.0, 0), (2.0, 1), (9.0, 0)]),
        ([(1.0, 2), (9.0, 1), (1.0, 0)], [(10.0, 1), (1.0, 0)]),
        ([(9.0, 0), (1.0, 1), (9.0, 2)], [(9.0, 0), (1.0, 1), (9.0, 2)]),
        ([(1.0, 0)], [(1.0, 0)]),
    ],
)
def test_what_is_too_short_for_two_turns_is_left_out(
    pieces: list[tuple[float, int]], left: list[tuple[float, int]]
) -> None:
    assert shaped_leg._long(pieces) == left


@pytest.mark.parametrize(
    ("pieces", "wanted", "bands"),
    [
        # 20.8 rounds are 21, of which the first ends at 10.5: 11
        ([(10.4, 1.0), (10.4, 1.2)], None, [(11, 1.0), (10, 1.2)]),
        ([(10.4, 1.0), (10.4, 1.2)], 30, [(15, 1.0), (15, 1.2)]),
        ([(10.0, 1.1), (0.2, 1.05), (8.8, 1.0)], None, [(10, 1.1), (9, 1.0)]),
        ([(5.0, 1.0), (15.0, 1.2)], 4, [(1, 1.0), (3, 1.2)]),
        ([(0.0, 1.0)], 0, [(0, 1.0)]),
    ],
)
def test_ends_are_rounded_so_that_nothing_adds_up(
    pieces: list[tuple[float, float]], wanted: int | None, bands: list[tuple[int, float]]
) -> None:
    found = shaped_leg._whole([(rounds, Setting(tighter)) for rounds, tighter in pieces], wanted)
    assert [(band.rounds, band.tighter) for band in found] == bands


def test_the_least_top_leaves_two_rounds_of_leg() -> None:
    """Under a cuff of 20 rounds, 50 mm at 0.4 a mm: at 100 mm and 2.5 more there is one round."""
    ground = Ground(60, CLOTH, 50.0, Rib(20), body(), "cm")
    assert shaped_leg._under_cuff(102.5, ground, 1.0) == pytest.approx(52.5)
    with pytest.raises(Refused):
        shaped_leg._under_cuff(102.4, ground, 1.0)
    # a cuff twice as tight is half as deep
    assert shaped_leg._under_cuff(102.4, ground, 2.0) == pytest.approx(77.4)
    assert shaped_leg._too_low(ground, 1.0).way_out == say.higher_or_shallower(height="10.5 cm")
