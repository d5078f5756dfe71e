"""The needle bed: what it counts, and what it refuses and why; nothing else comes out of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields as fields_of
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.machine import operations as op
from engine.machine.cylinder import Cylinder, Side
from engine.machine.needle_bed import Made, run
from engine.machine.operations import (
    Along,
    BindOff,
    CastOn,
    CrankOff,
    Cut,
    Gather,
    Graft,
    Hang,
    Hold,
    Lift,
    Move,
    Operation,
    PullCord,
    PutIn,
    Ravel,
    Return,
    Ribber,
    Rounds,
    Row,
    Spring,
    Stand,
    Table,
    TakeOut,
    Tension,
    Transfer,
    Weight,
    Yarn,
)
from engine.machine.standing import CannotBeDone, Standing, Why, bare, left_behind
from tests.engine.machine.programs import ALL, BACK, FRONT, SLOTS, sock

Program = list[Operation]

LEFT, RIGHT = bare(Cylinder(SLOTS, "left")), bare(Cylinder(SLOTS, "right"))


@pytest.mark.parametrize("start", [LEFT, RIGHT], ids=["left", "right"])
def test_a_sock_is_counted_and_leaves_nothing_behind(start: Standing) -> None:
    """By hand: 24 a round; a pocket of 12 down to 6 has 12 + 11 ... + 7 and 7 + 8 ... + 12."""
    done = run(start, sock(start.side))
    assert left_behind(done.ends) is None
    assert (done.rounds, done.rows) == (2 + 4 + 3 + 5 + 2, 4 * 6)
    assert dict(done.made) == {
        Made("waste", None, 1.0): 4 * 24,
        Made("main", None, 1.0): 12 * 24,
        Made("main", "reinforcing", 1.0): 2 * (57 + 57),
    }


def test_running_in_two_parts_is_running_on() -> None:
    program = sock()
    for cut in range(len(program)):
        first = run(LEFT, program[:cut])
        second = run(first.ends, program[cut:])
        assert second.ends == run(LEFT, program).ends
        assert first.stitches + second.stitches == run(LEFT, program).stitches


@pytest.mark.parametrize(("start", "first"), [(LEFT, 3), (RIGHT, 9)], ids=["left", "right"])
def test_a_pocket_on_fewer_needles_moves_stitches_to_the_rounds_before(
    start: Standing, first: int
) -> None:
    """The carrier goes 3 needles past its own half mark, and the next round starts there."""
    opening: list[Operation] = [Yarn("main"), Weight("tube")]
    standing = run(start._replace(loops=start.work, on="main"), opening).ends
    before = run(standing, [Rounds(5, first)])
    rest = tuple(slot for slot in ALL if not 3 <= slot < 9)
    turned = run(before.ends, [Stand(first), Hold(rest), Return(rest)])
    after = run(turned.ends, [Rounds(5)])
    assert (before.stitches, after.stitches) == (5 * 24 + 3, 5 * 24 - 3)


def test_a_second_colour_opens_no_edge() -> None:
    program: list[Operation] = [Yarn("main", "top"), Rounds(1), Yarn("blue"), Rounds(2)]
    found = run(run(LEFT, sock()[:4]).ends, program)
    assert dict(found.made) == {Made("main", None, 1.0): 24, Made("blue", None, 1.0): 48}
    assert [edge.name for edge in found.ends.edges] == ["top"]


def test_a_looser_stitch_is_counted_apart() -> None:
    program: list[Operation] = [Tension(0.9), Rounds(1), Tension(1.1), Rounds(2)]
    found = run(run(LEFT, sock()[:7]).ends, program)
    assert dict(found.made) == {Made("main", None, 0.9): 24, Made("main", None, 1.1): 48}


def _string() -> Program:
    """Two socks, a ravel cord in the scrap between them."""
    one, off = sock(), sock().index(CrankOff())
    cord: Program = [Yarn("ravel cord"), Rounds(1), Yarn("waste"), Rounds(2)]
    return [*one[: off - 1], *cord, *one[4 : off + 1], PullCord(), *one[off + 1 :]]


def _on_the_cord(program: Program) -> Program:
    """The same without the scrap after the cord."""
    cord = program.index(Yarn("ravel cord"))
    return program[: cord + 2] + program[cord + 4 :]


def _unhung(program: Program) -> Program:
    """The same but for its last hem."""
    last = len(program) - 1 - program[::-1].index(Hang("top", ALL))
    return program[:last] + program[last + 1 :]


def _set_up(*then: Operation) -> list[Operation]:
    """Waste, then the sock's yarn over both beds: every second stitch on the ribber."""
    moved = tuple(range(1, 24, 2))
    return [
        *sock()[:4],
        Ribber("knits"),
        Transfer(moved, "ribber"),
        Yarn("main", "top"),
        *then,
    ]


def test_a_set_up_edge_locks_after_two_rounds_on_the_cylinder() -> None:
    """One round of both beds, two of the cylinder's 12 needles, then rib on 24."""
    locked: Program = [Rounds(1), Ribber("idle"), Rounds(2), Ribber("knits"), Rounds(3)]
    found = run(LEFT, _set_up(*locked))
    assert dict(found.made)[Made("main", None, 1.0)] == 24 + 2 * 12 + 3 * 24
    assert not found.ends.edges
    never: list[Program] = [[], [Rounds(2)], [*locked[:2], Rounds(1), *locked[3:]]]
    for open_still in never:
        assert run(LEFT, _set_up(*open_still)).ends.edges


def test_a_picot_row_catches_the_next_round_on_every_needle() -> None:
    pairs = tuple((slot, slot + 1) for slot in range(0, 24, 2))
    program = [*sock()[:7], Move(pairs, "empty"), Rounds(4)]
    done = run(LEFT, program)
    assert dict(done.made)[Made("main", None, 1.0)] == 8 * 24
    assert done.ends.loops == (1 << 24) - 1


def test_a_mock_rib_knits_on_what_stayed_in() -> None:
    out = tuple(range(2, 24, 3))
    done = run(LEFT, [TakeOut(out), *sock()[:7], PutIn(out), Rounds(1)])
    assert dict(done.made) == {
        Made("waste", None, 1.0): 2 * 16,
        Made("main", None, 1.0): 4 * 16 + 24,
    }


# A fault is a program spoilt; beside it the reason that must be given.
Fault = tuple[Why, Callable[[], Program]]


def _without(*unwanted: Operation) -> Program:
    program = sock()
    for one in unwanted:
        program.remove(one)
    return program


def _before(mark: Operation, *added: Operation) -> Program:
    program = sock()
    at = program.index(mark)
    return [*program[:at], *added, *program[at:]]


def _instead(old: Operation, *new: Operation) -> Program:
    program = sock()
    at = program.index(old)
    return [*program[:at], *new, *program[at + 1 :]]


def _heel(spoil: Callable[[Program], None]) -> Program:
    """The heel's rows from the first on: every third or second operation is a `Row`."""
    program = sock()
    at = program.index(Along("reinforcing")) + 1
    end = at + 24
    heel = program[at:end]
    spoil(heel)
    return [*program[:at], *heel, *program[end:]]


def _row(heel: Program, number: int) -> int:
    """Where row `number` (from 1) of the heel stands."""
    return [i for i, one in enumerate(heel) if isinstance(one, Row)][number - 1]


def _replace_row(number: int, row: Row) -> Callable[[Program], None]:
    def spoil(heel: Program) -> None:
        heel[_row(heel, number)] = row

    return spoil


def _drop(first: int, last: int) -> Callable[[Program], None]:
    def spoil(heel: Program) -> None:
        del heel[first:last]

    return spoil


def _put(at: int, *new: Operation) -> Callable[[Program], None]:
    def spoil(heel: Program) -> None:
        heel[at : at + 1] = new

    return spoil


RIBS = tuple(range(1, 24, 2))
ON_RIBBER: Program = [Ribber("knits"), Transfer(RIBS, "ribber")]

FAULTS: dict[str, Fault] = {
    "cast on with the sock yarn": ("cast-on-is-not-of-scrap", lambda: [Yarn("main"), CastOn()]),
    "cast on twice": ("cast-on-over-loops", lambda: _before(Rounds(2), CastOn())),
    "cranked without yarn": ("no-yarn-in-the-carrier", lambda: _without(Yarn("waste"))),
    "never cast on": ("round-over-an-empty-needle", lambda: _without(CastOn())),
    "weight never hung": (
        "round-without-the-weight-on-the-tube",
        lambda: [one for one in sock() if one != Weight("tube")],
    ),
    "no round at all": ("count-is-below-one", lambda: _instead(Rounds(3), Rounds(0))),
    "hem never hung": (
        "scrap-out-of-an-open-edge",
        lambda: [one for one in sock() if not isinstance(one, Hang)],
    ),
    "hem hung with the weight on": ("edge-hung-with-the-weight-on", lambda: _without(Weight(None))),
    "hem hung on one needle fewer": (
        "edge-hung-on-another-number-of-needles",
        lambda: _instead(Hang("top", ALL), Hang("top", ALL[1:])),
    ),
    "hem hung after one round": (
        "edge-hung-before-it-can-fold",
        lambda: _instead(Rounds(4), Rounds(1)),
    ),
    "hem hung twice": ("edge-is-not-open", lambda: _before(Weight("tube"), Hang("top", ALL))),
    "another edge hung": (
        "edge-is-not-open",
        lambda: _instead(Hang("top", ALL), Hang("toe", ALL)),
    ),
    "sock begun without naming its edge": (
        "edge-has-no-name",
        lambda: _instead(Yarn("main", "top"), Yarn("main")),
    ),
    "an edge where none opens": (
        "edge-is-named-where-nothing-opens",
        lambda: _before(Rounds(3), Yarn("blue", "stripe")),
    ),
    "two edges of one name": (
        "edge-was-named-before",
        lambda: _instead(Yarn("waste", "toe"), Yarn("waste", "top")),
    ),
    "carrier at the other side": ("carrier-is-elsewhere", lambda: sock("right")),
    "carrier not stopped at the pocket": (
        "carrier-is-elsewhere",
        lambda: _instead(Stand(0), Stand(2)),
    ),
    "round stopped half a cylinder off": (
        "carrier-would-stop-at-the-wrong-side",
        lambda: _instead(Rounds(3), Rounds(3, 12)),
    ),
    "rest not lifted at the heel": ("row-outside-a-pocket", lambda: _without(Hold(BACK))),
    "one of the rest not lifted": (
        "row-misses-a-needle-in-work",
        lambda: _instead(Hold(BACK), Hold(BACK[1:])),
    ),
    "rest lifted in two places": (
        "hold-leaves-needles-apart",
        lambda: _instead(Hold(BACK), Hold((*BACK[1:], 3))),
    ),
    "lifted away from the carrier": (
        "hold-away-from-the-carrier",
        lambda: _instead(Hold(BACK), Hold((*BACK[2:], 0, 1))),
    ),
    "all needles lifted": ("hold-of-every-needle", lambda: _instead(Hold(BACK), Hold(ALL))),
    "weight not on the heel": (
        "row-without-the-weight-on-the-pocket",
        lambda: [one for one in sock() if one != Weight("pocket")],
    ),
    "row the wrong way": (
        "row-starts-where-the-carrier-is-not",
        lambda: _heel(_replace_row(2, Row("right", 0, 10))),
    ),
    "row begun one needle on": (
        "row-misses-a-needle-in-work",
        lambda: _heel(_replace_row(1, Row("right", 1, 11))),
    ),
    "row stops short": (
        "row-misses-a-needle-in-work",
        lambda: _heel(_replace_row(1, Row("right", 0, 10))),
    ),
    "row knits a held needle": (
        "row-over-a-held-needle",
        lambda: _heel(_replace_row(3, Row("right", 1, 11))),
    ),
    "row over a needle taken out": (
        "row-over-a-needle-out-of-work",
        lambda: [
            TakeOut((12,)),
            Yarn("main"),
            Weight("pocket"),
            Hold(BACK[1:]),
            Row("right", 0, 12),
        ],
    ),
    "row beyond the pocket": (
        "row-over-a-held-needle",
        lambda: _heel(_replace_row(1, Row("right", 0, 12))),
    ),
    "a row is missing": ("hold-of-a-needle-that-did-not-knit-last", lambda: _heel(_drop(2, 3))),
    "a row and its needle are missing": (
        "row-starts-where-the-carrier-is-not",
        lambda: _heel(_drop(2, 4)),
    ),
    "a needle is not lifted": (
        "row-misses-a-needle-in-work",
        lambda: _heel(_drop(1, 2)),
    ),
    "the wrong needle is lifted": (
        "hold-of-a-needle-that-did-not-knit-last",
        lambda: _heel(_put(1, Hold((0,)))),
    ),
    "a needle is lifted twice": (
        "hold-of-a-needle-not-in-work",
        lambda: _heel(_put(1, Hold((11,)), Hold((11,)))),
    ),
    "a needle comes back that is in work": (
        "return-of-a-needle-not-held",
        lambda: _heel(_put(12, Return((5,)))),
    ),
    "a needle comes back beside the carrier": (
        "return-beside-the-carrier",
        lambda: _heel(_put(12, Return((2,)))),
    ),
    "the second needle comes back first": (
        "return-of-a-needle-not-innermost",
        lambda: _heel(_put(12, Return((10,)))),
    ),
    "a needle never comes back": (
        "row-over-a-held-needle",
        lambda: _heel(_drop(22, 23)),
    ),
    "an odd number of rows": (
        "return-beside-the-carrier",
        lambda: _heel(_drop(10, 12)),
    ),
    "rest not returned after the heel": ("round-over-held-needles", lambda: _without(Return(BACK))),
    "spring left on": (
        "round-with-the-heel-spring-on",
        lambda: _without(Spring(False)),
    ),
    "weight left on the heel": (
        "round-without-the-weight-on-the-tube",
        lambda: _instead(Rounds(5), Weight("pocket"), Rounds(5)),
    ),
    "thread along never taken out": (
        "thread-runs-along-already",
        lambda: _without(Along(None)),
    ),
    "thread taken out that is not there": (
        "no-thread-runs-along",
        lambda: _without(Along("reinforcing")),
    ),
    "yarn changed within the heel": (
        "yarn-changes-within-a-pocket",
        lambda: _heel(_put(1, Hold((11,)), Yarn("blue"))),
    ),
    "yarn changed to itself": (
        "yarn-is-in-the-carrier-already",
        lambda: _before(Rounds(3), Yarn("main")),
    ),
    "needle taken out with its stitch": (
        "needle-out-with-its-stitch",
        lambda: _before(Rounds(3), TakeOut((3,))),
    ),
    "needle out that is out": (
        "needle-is-not-in-work",
        lambda: [TakeOut((3,)), TakeOut((3,))],
    ),
    "needle put in that is in": ("needle-is-not-out", lambda: _before(Rounds(3), PutIn((3,)))),
    "needle put in beside no stitch": (
        "no-stitch-beside-the-needle",
        lambda: [TakeOut((3,)), PutIn((3,))],
    ),
    "picot two needles away": (
        "needles-are-not-neighbours",
        lambda: _before(Rounds(3), Move(((0, 2),), "empty")),
    ),
    "picot onto an emptied needle": (
        "stitch-onto-an-empty-needle",
        lambda: _before(Rounds(3), Move(((0, 1), (1, 2)), "empty")),
    ),
    "picot of no stitch": (
        "no-stitch-on-the-needle",
        lambda: _before(Rounds(3), Move(((0, 1),), "empty"), Move(((0, 1),), "empty")),
    ),
    "stitch moved in the heel": (
        "stitch-moved-within-a-pocket",
        lambda: _heel(_put(1, Hold((11,)), Move(((4, 5),), "out"))),
    ),
    "strand lifted where no stitch is": (
        "no-stitch-on-the-needle",
        lambda: [Lift((0,))],
    ),
    "stitches to a ribber that is not there": (
        "no-ribber",
        lambda: _before(Rounds(3), Transfer((1,), "ribber")),
    ),
    "two stitches to one ribber needle": (
        "ribber-needle-is-taken",
        lambda: _before(Rounds(3), Ribber("knits"), Transfer((2, 3), "ribber")),
    ),
    "a second stitch to a ribber needle": (
        "ribber-needle-is-taken",
        lambda: _before(Rounds(3), *ON_RIBBER, Transfer((0,), "ribber")),
    ),
    "ribber off with its stitches": (
        "ribber-off-with-stitches-on-it",
        lambda: _before(Rounds(3), *ON_RIBBER, Rounds(2), Ribber("off")),
    ),
    "stitch back that is not on the ribber": (
        "no-stitch-on-the-ribber",
        lambda: _before(Rounds(3), *ON_RIBBER, Transfer((0,), "cylinder")),
    ),
    "stitch back onto another": (
        "needle-has-a-stitch-already",
        lambda: _before(Rounds(3), *ON_RIBBER, PutIn((1,)), Transfer((1,), "cylinder")),
    ),
    "hem hung with ribs on the ribber": (
        "edge-hung-with-stitches-on-the-ribber",
        lambda: _instead(
            Hang("top", ALL), *ON_RIBBER, *(PutIn((slot,)) for slot in RIBS), Hang("top", ALL)
        ),
    ),
    "ribber knits in the heel": (
        "hold-while-the-ribber-knits",
        lambda: _instead(Hold(BACK), *ON_RIBBER, Hold(tuple(BACK[::2]))),
    ),
    "ribber set to knit within the heel": (
        "row-while-the-ribber-knits",
        lambda: _instead(
            Hold(BACK),
            Ribber("idle"),
            Transfer(BACK[1::2], "ribber"),
            Hold(BACK[::2]),
            Ribber("knits"),
        ),
    ),
    "set-up never locked": (
        "scrap-out-of-an-open-edge",
        lambda: [
            *_set_up(Rounds(1), Ribber("idle"), Rounds(1), Ribber("knits"), Rounds(9)),
            Transfer(RIBS, "cylinder"),
            Ribber("off"),
            *sock()[-9:],
        ],
    ),
    "live sock cranked off": (
        "live-stitches-would-run",
        lambda: _without(Yarn("waste", "toe"), Rounds(2), Cut()),
    ),
    "waste threaded but never knitted": (
        "live-stitches-would-run",
        lambda: [
            one
            for at, one in enumerate(sock())
            if at < 5 or not isinstance(one, Rounds) or one.count != 2
        ],
    ),
    "cranked off with the yarn on": (
        "yarn-is-not-cut",
        lambda: [*sock()[: sock().index(CrankOff()) - 1], CrankOff()],
    ),
    "cranked off with the ribber on": (
        "stitches-on-the-ribber",
        lambda: _before(CrankOff(), *ON_RIBBER),
    ),
    "cranked off in the heel": (
        "needles-in-hold",
        lambda: _instead(Return(BACK), CrankOff()),
    ),
    "cranked off twice": ("nothing-on-the-needles", lambda: _before(Graft(("toe",)), CrankOff())),
    "waste drawn up": ("scrap-drawn-up", lambda: _instead(CrankOff(), Gather())),
    "cut twice": ("no-yarn-in-the-carrier", lambda: _before(CrankOff(), Cut())),
    "grafted on the machine": (
        "still-on-the-needles",
        lambda: _before(CrankOff(), Graft(("toe",))),
    ),
    "grafted to an edge that is closed": (
        "edge-is-not-open",
        lambda: _instead(Graft(("toe",)), Graft(("toe", "top"))),
    ),
    "nothing grafted": ("edges-do-not-pair", lambda: _instead(Graft(("toe",)), Graft(()))),
    "toe never grafted": ("scrap-out-of-an-open-edge", lambda: _without(Graft(("toe",)))),
    "bound off where nothing is open": (
        "edge-is-not-open",
        lambda: _before(Ravel(), BindOff("top")),
    ),
    "waste pulled out twice": ("no-scrap-to-pull-out", lambda: _before(Table("darn"), Ravel())),
    "a cord on the sock itself": (
        "cord-beside-live-stitches",
        lambda: _instead(Yarn("waste", "toe"), Yarn("ravel cord", "toe")),
    ),
    "the sock on a cord": (
        "cord-beside-live-stitches",
        lambda: _on_the_cord(_string()),
    ),
    "a cord pulled out that is not there": (
        "no-cord-to-pull-out",
        lambda: _before(Graft(("toe",)), PullCord()),
    ),
    "toes grafted before the socks are apart": (
        "socks-hang-together",
        lambda: [one for one in _string() if one != PullCord()],
    ),
    "one of two hems not hung": ("socks-are-unlike", lambda: _unhung(_string())),
    "a needle beyond the cylinder": (
        "needle-is-not-on-this-cylinder",
        lambda: _instead(Hold(BACK), Hold((*BACK, 24))),
    ),
    "a needle named twice": (
        "needle-is-named-twice",
        lambda: _instead(Hold(BACK), Hold((*BACK, 12))),
    ),
    "no needle named": ("no-needle-is-named", lambda: _instead(Hold(BACK), Hold(()))),
    "a row over an empty needle": (
        "row-over-an-empty-needle",
        lambda: [Yarn("main"), Weight("pocket"), Hold(BACK), Row("right", 0, 11)],
    ),
    "rounds begun in the middle of the back": (
        "carrier-is-not-where-a-round-begins",
        lambda: _heel(_drop(23, 24)),
    ),
}


def test_two_socks_of_a_string_leave_nothing_behind() -> None:
    """What is done at the table is done to both; a round of cord is no waste yarn."""
    done = run(LEFT, _string())
    assert left_behind(done.ends) is None
    assert dict(done.made)[Made("ravel cord", None, 1.0)] == 24
    assert dict(done.made)[Made("main", None, 1.0)] == 2 * 12 * 24
    assert dict(done.made)[Made("waste", None, 1.0)] == (2 + 2 + 2 + 2) * 24
    apart = _string()[: _string().index(PullCord())]
    hanging = left_behind(run(LEFT, apart).ends)
    assert hanging is not None
    assert hanging.why == "socks-hang-together"


@pytest.mark.parametrize("name", FAULTS)
def test_a_planted_fault_is_refused_with_its_reason(name: str) -> None:
    why, spoil = FAULTS[name]
    with pytest.raises(CannotBeDone) as no:
        run(LEFT, spoil())
    assert no.value.refusal.why == why


def test_every_reason_has_its_fault() -> None:
    """Those that `left_behind` gives are tried below."""
    of_the_end = {"edge-is-open", "scrap-is-in-the-sock"}
    assert {why for why, _ in FAULTS.values()} | of_the_end == set(get_args(Why))


@pytest.mark.parametrize(
    ("last", "why"),
    [
        (CrankOff(), "still-on-the-needles"),
        (Graft(("toe",)), "edge-is-open"),
        (Ravel(), "scrap-is-in-the-sock"),
    ],
)
def test_what_is_left_behind_is_seen(last: Operation, why: Why) -> None:
    program = sock()
    found = left_behind(run(LEFT, program[: program.index(last)]).ends)
    assert found is not None
    assert found.why == why


_slot = st.integers(-1, SLOTS)
_needles = st.one_of(
    st.sampled_from([ALL, FRONT, BACK, RIBS]), st.lists(_slot, max_size=3).map(tuple)
)
_name = st.sampled_from(["main", "waste", "blue", "top", "toe"])
_FIELDS: dict[str, st.SearchStrategy[Any]] = {
    "needles": _needles,
    "name": _name,
    "edge": _name,
    "edges": st.lists(_name, max_size=2).map(tuple),
    "count": st.integers(0, 3),
    "at": _slot,
    "first": _slot,
    "last": _slot,
    "stitches": st.lists(st.tuples(_slot, _slot), max_size=2).map(tuple),
    "tighter": st.sampled_from([0.9, 1.0]),
}


def _any(kind: type[Any]) -> st.SearchStrategy[Any]:
    """An operation of a kind, its fields from a handful of likely values, else by their type."""
    known = {one.name: _FIELDS[one.name] for one in fields_of(kind) if one.name in _FIELDS}
    return st.builds(kind, **known)


_anything = st.one_of([_any(kind) for kind in op.Operation.__args__])
_edits = st.lists(
    st.tuples(st.sampled_from(["cut", "put", "twice"]), st.integers(0, 200), _anything), max_size=4
)


def _spoilt(program: Program, edits: list[tuple[str, int, Operation]]) -> Program:
    for how, where, other in edits:
        at = where % len(program)
        match how:
            case "cut":
                del program[at]
            case "put":
                program.insert(at, other)
            case _:
                program.insert(at, program[at])
    return program


@settings(max_examples=400)
@given(
    st.one_of(
        st.lists(_anything, max_size=12),
        st.builds(_spoilt, st.builds(sock, st.sampled_from(["left", "right"])), _edits),
    ),
    st.sampled_from(["left", "right"]),
)
def test_any_operations_are_run_or_refused(program: Program, side: Side) -> None:
    """Nothing else comes of them, and no needle is ever in two states."""
    standing = bare(Cylinder(SLOTS, side))
    for operation in program:
        try:
            work = run(standing, [operation])
        except CannotBeDone:
            return
        standing = work.ends
        whole = (1 << SLOTS) - 1
        assert not standing.work & standing.held
        assert not standing.loops & standing.catching
        assert (standing.loops | standing.catching) & ~(standing.work | standing.held) == 0
        assert (standing.work | standing.held | standing.ribs) & ~whole == 0
        assert 0 <= standing.at < SLOTS
        assert all(count > 0 for _, count in work.made)


def test_operations_are_told_as_json_takes_them() -> None:
    assert op.named(Rounds(3, 2)) == {"op": "rounds", "count": 3, "stop": 2}
    assert op.named(CastOn()) == {"op": "cast on"}
    assert op.named(Ribber("idle")) == {"op": "ribber", "state": "idle"}
    assert op.named(Row("left", 11, 0))["goes"] == "left"
    assert len({op.named(one)["op"] for one in [*sock(), *ON_RIBBER]}) == 19
