"""Every construction there is: what each must have, so that none is taken for another."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder, Side
from engine.machine.needle_bed import run
from engine.machine.operations import Operation
from engine.machine.standing import bare, left_behind
from engine.say.aloud import text
from engine.sections.color import Color
from engine.sections.cuff import Cuff
from engine.sections.flap import Flap
from engine.sections.gathered import DrawnUp, Gathered
from engine.sections.hung_hem import HungHem
from engine.sections.left_open import LeftOpen, ToKnitOn
from engine.sections.leg import Band
from engine.sections.mock_rib import MockRib
from engine.sections.mock_rib_hem import MockRibHem
from engine.sections.no_heel import NoHeel
from engine.sections.picot_hem import PicotHem
from engine.sections.pockets import Heel
from engine.sections.registry import ALL, BARE_TOES, CUFFS, HEELS, POCKETS
from engine.sections.rib import Rib
from engine.sections.ribbed import RibbedFoot, RibbedLeg
from engine.sections.section import TITLES, Crank, Section, Turn, said
from engine.sections.set_up_rib import SetUpRib
from engine.sections.setting import Setting
from engine.sections.short_row import customary_left
from engine.sections.short_rows import ShortRows
from engine.sections.string import Between, OnWaste
from engine.sections.toe import Toe
from engine.sections.tube import Tube
from engine.sections.two_at_first import TwoAtFirst
from engine.sections.waste import Finish, Start
from engine.sock import plan as planning
from engine.sock.in_order import Cloth, cuff_down
from tests import asking as api
from tests.asking import asked, drawn
from tests.engine.socks import knitted

CLOTH = Fabric(0.3, 0.4, 0.0, 0.0, "gauge", (), 240.0, True, 1.8)
MACHINE = Cylinder(60)
BASE = planning.make(asked())  # of which only its list is exchanged
CYLINDERS = [Cylinder(slots, side) for slots in range(24, 121, 2) for side in get_args(Side)]

# One of each, and by hand (0.3 stitches and 0.4 rounds a mm, 60 needles, so 200 mm round) its
# height, its share of the sole, its girth in mm, and its layers. One without a line fails.
SIZES: dict[type[Section], tuple[Section, tuple[float, float, float, int]]] = {
    Start: (Start(), (0, 0, 0, 0)),
    OnWaste: (OnWaste(MockRib(20, every=4).first_on_waste(MACHINE)), (0, 0, 0, 0)),
    Between: (Between(Finish("60 cm")), (0, 0, 0, 0)),
    Color: (Color("leg", "B"), (0, 0, 0, 0)),
    Setting: (Setting("leg", 1.1, None, "8 / in"), (0, 0, 0, 0)),
    HungHem: (HungHem(20), (25, 0, 200, 2)),
    Rib: (Rib(20), (50, 0, 140, 1)),
    MockRib: (MockRib(20, every=4), (50, 0, 150, 1)),
    # 18 rounds of ribs / c; 200 mm less 30 %, and of every 3rd stitch 20 %
    SetUpRib: (SetUpRib(20, every=3), (45, 0, 160, 1)),
    PicotHem: (PicotHem(20), (25, 0, 200, 2)),
    MockRibHem: (MockRibHem(20, every=4), (25, 0, 150, 2)),
    Tube: (Tube("leg", 50), (125, 0, 200, 1)),
    RibbedLeg: (RibbedLeg(40, Rib(20), 10), (100, 0, 140, 1)),
    # the half of it that is the instep's narrows by 30 %: 100 + 70
    RibbedFoot: (
        RibbedFoot(40, Rib(20), ShortRows("heel", 30, 10, over=2)),
        (0, 100, 170, 1),
    ),
    ShortRows: (ShortRows("heel", 30, 10), (50, 50, 253.518, 1)),
    # 18 rows up and 20 along: (30 + 10) / w, and hypot(33.333, 45) + hypot(33.333, 50)
    TwoAtFirst: (TwoAtFirst("heel", 30, 10), (45, 50, 249.427, 1)),
    # 8 rows more of each, and 8 rows of seam at each side: 253.518 + 2 x 8 / c
    Flap: (Flap("heel", 30, 10), (70, 70, 293.518, 1)),
    # 5 cm by hand, which go from 60 stitches to none
    LeftOpen: (LeftOpen(), (0, 50, 100, 1)),
    NoHeel: (NoHeel(), (0, 0, 0, 0)),
    Gathered: (Gathered(), (0, 0, 200, 1)),
    Finish: (Finish("60 cm"), (0, 0, 0, 0)),
    DrawnUp: (DrawnUp("60 cm"), (0, 0, 0, 0)),
    ToKnitOn: (ToKnitOn("20 cm"), (0, 0, 0, 0)),
}


def test_every_section_is_tried_here_and_no_other() -> None:
    assert set(SIZES) == set(ALL)


@pytest.mark.parametrize("kind", ALL)
def test_every_section_has_its_size(kind: type[Section]) -> None:
    section, size = SIZES[kind]
    found = section.size(MACHINE, CLOTH)
    assert (found.height, found.sole, found.girth) == pytest.approx(size[:3], abs=1e-3)
    assert found.layers == size[3]
    assert found.give >= 1
    assert section.sole + section.by_hand * CLOTH.rounds == pytest.approx(found.sole * CLOTH.rounds)


@pytest.mark.parametrize("kind", ALL)
def test_every_section_says_what_to_do(kind: type[Section]) -> None:
    """A sentence for every stage, and something done at each."""
    section, _ = SIZES[kind]
    assert section.part in TITLES
    for stage in section.stages(MACHINE):
        for words in map(text, (stage.text, *said(stage))):
            assert words[0].isupper()
            assert words.endswith(".")
            assert all(len(one.split()) <= 20 for one in re.split(r"(?<=[.:]) ", words))
        assert stage.operations
    rounds = [one.rounds for one in section.stages(MACHINE) if isinstance(one, Crank)]
    assert sum(rounds) == section.rounds


@pytest.mark.parametrize("kind", ALL)
def test_every_section_has_its_courses(kind: type[Section]) -> None:
    """One for each round or row that its steps crank; what is worn and not cranked has some too."""
    section, _ = SIZES[kind]
    courses = section.courses()
    stages = section.stages(MACHINE)
    cranked = sum(one.rounds for one in stages if isinstance(one, Crank))
    rows = [one.row for one in stages if isinstance(one, Turn)]
    if section.counted and not cranked and not rows:
        assert len(courses.widths) > 1
    else:
        assert len(courses.widths) == cranked + len(rows)
    assert all(0 < width <= 1 for width in courses.widths)
    narrow = courses.widths[: courses.turn]
    assert courses.turn == sum(not (row.back or row.joins) for row in rows)
    assert list(narrow) == sorted(narrow, reverse=True)


@pytest.mark.parametrize("kind", ALL)
def test_every_section_lies_in_its_box(kind: type[Section]) -> None:
    lines = [line for stroke in SIZES[kind][0].strokes() for line in stroke.lines]
    assert all(0 <= at <= 1 for line in lines for point in line for at in point)


@pytest.mark.parametrize("kinds", [CUFFS, HEELS])
def test_kinds_of_one_part_are_told_apart(kinds: dict[str, type[Section]]) -> None:
    """By name, courses and strokes, and words: a cuff never looks like another."""
    found = [SIZES[kind][0] for kind in kinds.values()]
    assert [one.kind for one in found] == [*kinds]
    cuffs = [one for one in found if isinstance(one, Cuff)]
    assert len({one.words for one in cuffs}) == len(cuffs)
    assert len({(one.courses(), one.strokes()) for one in found}) == len(found)
    assert all(one.strokes() for one in cuffs)


@pytest.mark.parametrize("kind", [*CUFFS, *HEELS])
def test_what_a_plan_counts_asks_for_the_same_again(kind: str) -> None:
    """A link without the person holds it; so do kept counts."""
    part = "cuff" if kind in CUFFS else "heel"
    first = planning.make(asked({f"sock.{part}.kind": kind}))
    made = first.cuff if kind in CUFFS else first.pockets["heel"]
    assert made.kind == kind
    again = planning.make(asked({f"sock.{part}": made.asked()}))
    told = again.cuff if kind in CUFFS else again.pockets["heel"]
    assert told.asked() == made.asked()
    assert told.counts(MACHINE) == made.counts(MACHINE)


@pytest.mark.parametrize("kind", BARE_TOES)
def test_a_toe_that_is_no_pocket_asks_for_itself_again(kind: str) -> None:
    made = planning.make(asked({"sock.toe.kind": kind})).toe
    assert made.kind == kind
    assert planning.make(asked({"sock.toe": made.asked()})).toe == made


@pytest.mark.parametrize("kind", CUFFS)
def test_every_cuff_is_drawn_counted_and_knitted(kind: str) -> None:
    """Through the door that a page asks at: nothing takes it for another kind."""
    page = api.answer({"do": "page", "request": asked({"sock.cuff.kind": kind})})
    assert page["plan"]["counts"]["cuff"]["kind"] == kind
    strokes = SIZES[CUFFS[kind]][0].strokes()
    assert all(f'class="{stroke.kind}"' in drawn(page["picture"]) for stroke in strokes)
    steps = [one for one in page["plan"]["steps"] if one["part"] == "cuff"]
    rounds = [one["rounds"] for one in steps if one["kind"] == "rounds"]
    assert sum(rounds) == page["plan"]["counts"]["cuff"]["rounds"]


def whole(sections: tuple[Section, ...], machine: Cylinder) -> list[Operation]:
    """The operations of a list of sections on a bare machine, as a sock lays them."""
    sock = replace(BASE, cylinder=machine, sections=sections)
    return [one for _, one in sock.operations()]


def cuffs(machine: Cylinder) -> Iterator[Cuff]:
    yield from (HungHem(2), Rib(3), PicotHem(2))
    for n in range(2, 9):
        if machine.slots % n == 0:
            yield from (MockRib(3, every=n), MockRibHem(2, every=n))
        if machine.slots % n == 0 and n < 7:
            yield SetUpRib(4, every=n)
    if machine.slots % 4 == 0:
        yield SetUpRib(6, every=2, change=(4, 4))


def pockets(machine: Cylinder) -> Iterator[tuple[Heel, Toe]]:
    """The usual, the smallest, the widest, and such as begin an odd needle off the half mark."""
    half, most = machine.half, 2 * machine.slots // 3
    for needles in (half, half + 1, most):
        yield NoHeel(), ShortRows("toe", needles, customary_left(needles))
    for toe in BARE_TOES.values():
        yield NoHeel(), toe
        for needles in (half, half + 1, most):
            yield ShortRows("heel", needles, customary_left(needles)), toe
    for kind in POCKETS.values():
        for needles in {half, half - 1, half + 1, half - 2, 8, most}:
            fewest = 2 + needles % 2
            for left in {customary_left(needles, kind), fewest, needles - kind.fewest_lifted}:
                made = kind("heel", needles, left)
                yield made, kind("toe", half, customary_left(half, kind))
                yield kind("heel", half, customary_left(half, kind)), kind("toe", needles, left)
    for rows in (2, 8, 40):
        for needles in (8, half - 1, half, half + 1, most):
            made = Flap("heel", needles, customary_left(needles), rows)
            yield made, ShortRows("toe", half, customary_left(half))


@pytest.mark.parametrize("machine", CYLINDERS, ids=lambda one: f"{one.slots} {one.carrier}")
def test_every_section_runs_clean_on_every_cylinder(machine: Cylinder) -> None:
    """Each cuff over a leg and over none, each pocket; nothing is refused or left behind."""
    screw, half = Cloth(CLOTH, "cm"), machine.half
    usual: tuple[Heel, Toe] = (
        ShortRows("heel", half, customary_left(half)),
        ShortRows("toe", half, 2 + half % 2),
    )
    shaped = [Band(2, 1.1), Band(1)]
    tries = [(cuff, usual, bands) for cuff in cuffs(machine) for bands in ([Band(0)], shaped)]
    tries += [(HungHem(2), pair, [Band(1)]) for pair in pockets(machine)]
    ribs = [cuff for cuff in cuffs(machine) if cuff.ribbed]
    ribbed = [(cuff, usual, [Band(3)], plain) for cuff in ribs for plain in (0, 2, 3)]
    ribbed += [(cuff, pair, [Band(3)], 0) for cuff in ribs[:1] for pair in pockets(machine)]
    on = [(cuff, usual, [Band(3)], 0, True) for cuff in ribs]
    on += [(ribs[0], pair, [Band(3)], 0, True) for pair in pockets(machine)]
    off = [(*one, False) for one in (*((*one, None) for one in tries), *ribbed)]
    for cuff, pair, bands, plain, instep in [*off, *on]:
        sections = cuff_down(machine, cuff, bands, pair, 1, screw, plain=plain, instep=instep)
        done = run(bare(machine), whole(sections, machine))
        assert left_behind(done.ends) is None
        assert done.ends.at == bare(machine).at


@pytest.mark.parametrize("side", get_args(Side))
def test_every_pocket_there_can_be_on_one_cylinder(side: Side) -> None:
    """Needles knit twice as often as rows pass them; the counts by hand are those of the bed."""
    machine = Cylinder(36, side)
    for needles in range(8, 25):
        for left in range(2 + needles % 2, needles - 1, 2):
            work = knitted([ShortRows("toe", needles, left)], machine)
            assert work.rows == 2 * (needles - left)
            assert work.stitches == (needles + left + 1) * (needles - left)
            assert work.ends.in_work == 36


@st.composite
def narrowed(draw: st.DrawFn, slots: int) -> tuple[int, int]:
    """Needles of a pocket, and those left."""
    needles = draw(st.integers(8, 2 * slots // 3))
    return needles, needles - 2 * draw(st.integers(1, (needles - 2) // 2))


@settings(max_examples=60)
@given(
    slots=st.integers(12, 60).map(lambda half: 2 * half),
    side=st.sampled_from(get_args(Side)),
    rounds=st.tuples(st.integers(1, 20), st.integers(0, 60), st.integers(1, 80)),
    kind=st.sampled_from([HungHem, Rib, MockRib, PicotHem, MockRibHem]),
    data=st.data(),
)
def test_stitches_of_a_whole_sock_are_rounds_and_rows(
    slots: int, side: Side, rounds: tuple[int, int, int], kind: type[Any], data: st.DataObject
) -> None:
    """Wherever its pockets begin, what one section gains another loses."""
    machine = Cylinder(slots, side)
    gaps = issubclass(kind, MockRib)
    cuff = kind(2 * rounds[0], every=2) if gaps else kind(2 * rounds[0])
    heel, toe = data.draw(narrowed(slots)), data.draw(narrowed(slots))
    pair = ShortRows("heel", *heel), ShortRows("toe", *toe)
    sections = cuff_down(machine, cuff, [Band(rounds[1])], pair, rounds[2], Cloth(CLOTH, "cm"))
    sock = replace(BASE, cylinder=machine, sections=sections)
    assert left_behind(sock.work[-1].ends) is None
    made = sum(work.stitches for work in sock.work)
    by_hand = (10 + 2 * rounds[0]) * cuff.needles(slots) + (sum(rounds[1:]) + 10) * slots
    by_hand += sum((h + b + 1) * (h - b) for h, b in (heel, toe))
    # a mock rib that ends where a heel begins (no leg) may have gaps there
    assert abs(made - by_hand) <= (slots // 6 if gaps and not rounds[1] else 0)
    assert sock.foot_rounds == rounds[2]
