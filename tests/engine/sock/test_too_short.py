"""A foot too short for heel and toe: each way out worked by hand.

Heel and toe of 30 needles down to 10 take 20 rounds of the sole each. At 0.4 rounds a mm that is
100 mm, and with half a round, from which on there is one, 101.25 mm.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.read.errors import Problem
from engine.say import messages as say
from engine.say.aloud import text
from engine.say.message import Message, Words
from engine.sections.left_open import LeftOpen
from engine.sections.short_row import Wish
from engine.sections.short_rows import ShortRows
from engine.sock import too_short, wanted
from engine.sock.too_short import Case

CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "gauge", (), 240.0, True, 1.8)
HEEL, TOE = ShortRows("heel", 30, 10), ShortRows("toe", 30, 10)
CASE = Case(lambda _: HEEL, Wish(30, 10, False), TOE, Cylinder(60), CLOTH, 100.0, "cm")
BALL = 224.0  # mm; a tube of 60 / 0.3 = 200 mm is not too wide


def ways(found: Problem) -> tuple[Words, ...]:
    """What is offered as a way out, one or several."""
    way_out = found.way_out
    assert isinstance(way_out, Message)
    return tuple(way_out.get("ways", (way_out,)))


def foot_for(mm: float) -> float:
    """The foot that a sock of some mm is for: 4 % longer."""
    return mm / 0.96


def test_of_a_foot_all_ways_out() -> None:
    """101.25 / 0.96 = 105.5 mm, in whole mm 106. 40.5 rounds on 100 mm and 0.5 % more are 40.7.

    floor(40 - 0.5) = 39 rows have room: 20 + 18, by 10 and 12 left.
    """
    found = too_short.problem(CASE, None, foot_for, BALL)
    assert found.field == "foot.length"
    assert found.message == say.too_short(turned="10 cm", aimed="10 cm")
    assert ways(found) == (
        say.leave_in_heel_and_toe(heel=10, toe=12),
        say.shortest_that_works(thing="foot", length="10.6 cm"),
        say.knit_finer(rounds="40.7 / 10 cm"),
    )
    assert text(found.way_out) == (
        "One of these helps. Leave 10 needles in the heel and 12 in the toe. The shortest foot "
        "that works with these settings is 10.6 cm. Knit finer, with rounds at 40.7 / 10 cm "
        "or more."
    )


@pytest.mark.parametrize(("system", "shortest"), [("cm", "10.2 cm"), ("in", "4 in")])
def test_of_a_sock_the_shortest_is_in_whole_steps_of_the_tape(system: str, shortest: str) -> None:
    """101.25 mm: 102 in whole mm, 101.6 in eighths of an inch (31.9 of them, so 32)."""
    case = CASE._replace(system="in" if system == "in" else "cm")
    found = too_short.problem(case, wanted.SOCK_LENGTH, foot_for, BALL)
    assert found.field == "sock.foot_length_of_sock"
    assert say.shortest_that_works(thing="sock", length=shortest) in ways(found)


@pytest.mark.parametrize(
    ("aimed", "left"),
    [
        (100.0, (10, 12)),  # room for 39 rows
        (101.24, (10, 12)),  # 39.996, so 39 too
        (97.0, (10, 12)),  # floor(38.3) = 38, which 20 + 18 just fill
        (96.0, (12, 12)),  # 37: 18 + 18
        (82.0, (14, 14)),  # 32: half of 30 is 15, so 14 may stay of either
        (78.0, (14, 16)),  # floor(30.7) = 30, but neither may leave more than half, 15
    ],
)
def test_the_deepest_that_fit_are_left_most_alike(aimed: float, left: tuple[int, int]) -> None:
    found = too_short.problem(CASE._replace(aimed=aimed), None, foot_for, BALL)
    fewer = say.leave_in_heel_and_toe(heel=left[0], toe=left[1])
    assert (ways(found)[0] == fewer) == (aimed != 78.0)


def test_just_half_may_be_left() -> None:
    """28 needles down to 14 twice are 28 rows, which 72 mm have room for: floor(28.8 - 0.5)."""
    case = CASE._replace(
        heel_at=lambda _: ShortRows("heel", 28, 10),
        heel=Wish(28, 10, False),
        toe=ShortRows("toe", 28, 10),
    )
    found = too_short.problem(case._replace(aimed=72.0), None, foot_for, BALL)
    assert ways(found)[0] == say.leave_in_heel_and_toe(heel=14, toe=14)


def test_where_nothing_else_helps_a_smaller_cylinder_does() -> None:
    """0.1 a mm want 405 mm of foot; 30 mm of foot 1.36 rounds a mm, which nobody knits."""
    case = CASE._replace(cloth=replace(CLOTH, rounds=0.1), aimed=30.0)
    found = too_short.problem(case, wanted.SOCK_LENGTH, foot_for, BALL)
    assert ways(found) == (say.fewer_slots(),)


@pytest.mark.parametrize(("ball", "slots"), [(200.0, None), (199.9, 54), (150.0, 40)])
def test_a_tube_wider_than_the_ball_is_told(ball: float, slots: int | None) -> None:
    """150 / 1.10 x 0.3 = 40.9 needles, 40 in pairs; 199.9 / 1.10 x 0.3 = 54.5, 54."""
    message = too_short.problem(CASE, None, foot_for, ball).message
    said = (
        f"60 slots are many for this foot: about {slots} would suit it. " if slots else "Heel and"
    )
    assert text(message).startswith(said)


def test_of_a_tube_wider_than_the_foot_fewer_slots_alone_make_a_sock() -> None:
    """Heel and toe of 14 needles left would do it by rounds, and the sock be half as wide again."""
    found = too_short.problem(CASE._replace(aimed=82.0), None, foot_for, 150.0)
    assert (found.field, ways(found)) == ("cylinder.slots", (say.fewer_slots(),))
    fewest = CASE._replace(machine=Cylinder(24), aimed=20.0)
    assert too_short.problem(fewest, None, foot_for, 60.0).field == "foot.length", "none has fewer"


def test_a_finer_fabric_may_call_for_a_deeper_heel() -> None:
    """Above 0.405 rounds a mm the heel takes 22: 42.5 on 100 mm and 0.5 % more are 0.427."""
    case = CASE._replace(heel_at=lambda rounds: replace(HEEL, left=8 if rounds > 0.405 else 10))
    found = too_short.problem(case, None, foot_for, BALL)
    assert ways(found)[-1] == say.knit_finer(rounds="42.7 / 10 cm")


def test_a_toe_left_open_takes_its_5_cm() -> None:
    """By hand: 20 rows of heel at 0.4 a mm are 50 mm, with 50 mm of toe 100 mm; 101.25 / 0.96."""
    found = too_short.problem(CASE._replace(toe=LeftOpen()), None, foot_for, BALL)
    assert found.message == say.heel_too_long(turned="10 cm", aimed="10 cm")
    assert ways(found)[:2] == (
        say.leave_in(part="heel", left=12),
        say.shortest_that_works(thing="foot", length="10.6 cm"),
    )
