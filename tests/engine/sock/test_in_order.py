"""The sections of a sock in order: which there are, and where the screw is turned."""

from __future__ import annotations

import pytest

from engine.machine.cylinder import Cylinder
from engine.machine.operations import Tension
from engine.say.aloud import text
from engine.sections.hung_hem import HungHem
from engine.sections.leg import Band
from engine.sections.section import Section
from engine.sections.short_rows import ShortRows
from engine.sock import plan as planning
from engine.sock.in_order import Cloth, cuff_down
from tests.asking import asked


def sections(mark: float | None, *bands: Band) -> tuple[Section, ...]:
    """A sock of 7.5 stitches an inch with those bands, the foot knitted at `mark`."""
    cloth = planning.make(asked({"fabric.mark": mark})).fabric
    pockets = ShortRows("heel", 30, 10), ShortRows("toe", 30, 10)
    return cuff_down(Cylinder(60), HungHem(20), bands, pockets, 46, Cloth(cloth, "in"))


def settings(mark: float | None, *bands: Band) -> list[str]:
    """What is done at the screw, in words."""
    stages = [stage for one in sections(mark, *bands) for stage in one.stages(Cylinder(60))]
    return [text(one.text) for one in stages if isinstance(one.operations[0], Tension)]


def test_a_sock_from_its_top() -> None:
    order = [one.part for one in sections(None, Band(50))]
    assert order == ["waste", "cuff", "leg", "heel", "foot", "toe", "finish"]


def test_rounds_after_the_toe_come_before_the_waste_yarn() -> None:
    pair = ShortRows("heel", 30, 10), ShortRows("toe", 30, 10)
    cloth = Cloth(planning.make(asked()).fabric, "in")
    whole = cuff_down(Cylinder(60), HungHem(20), [Band(50)], pair, 46, cloth, 4)
    assert [(one.part, one.rounds) for one in whole[-3:]] == [
        ("toe", 0),
        ("end", 4),
        ("finish", 10),
    ]


def test_a_shaped_leg_turns_the_screw_before_each_band_and_before_the_heel() -> None:
    order = [(one.part, one.kind) for one in sections(None, Band(20, 1.2), Band(10), Band(30, 1.2))]
    turn, tube = ("leg", "tension"), ("leg", "plain")
    shaped = [("cuff", "tension"), ("cuff", "hem"), tube, turn, tube, turn, tube, turn]
    assert order[1:-4] == shaped


def test_how_each_tension_is_set() -> None:
    """7.5 stitches an inch, a fifth more are 9; back to the foot's before the heel."""
    foot_s = "Set the tension for a larger stitch, as in the foot: 7.5 / in once it is washed."
    assert settings(None, Band(20, 1.2), Band(10), Band(30, 1.2)) == [
        "Set the tension for a stitch of 9 / in once it is washed.",
        foot_s,
        "Set the tension for a smaller stitch: 9 / in once it is washed.",
        foot_s,
    ]


@pytest.mark.parametrize(
    ("mark", "band", "found"),
    [
        (None, Band(20), []),
        (7.0, Band(20), ["Set the tension mark to 7."]),
        (7.0, Band(20, 1.2, 6.0), ["Set the tension mark to 6.", "Set the tension mark to 7."]),
    ],
)
def test_a_mark_is_set_by_its_number(mark: float | None, band: Band, found: list[str]) -> None:
    assert settings(mark, band) == found
