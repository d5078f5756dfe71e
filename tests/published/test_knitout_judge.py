"""An outside judge of the needle work: operations, run on a virtual machine that others wrote.

`knitout_writer` turns the operations of a plan into knitout (J. McCann, The "Knitout" (.k) File
Format, v0.5.4, Carnegie Mellon Textiles Lab); the packages knitout-interpreter 0.1.8 and
virtual-knitting-machine 0.0.31 (M. Hofmann, Northeastern University) read and knit it. Counts must
agree exactly. Every warning of theirs is an objection: knitting an empty needle is a needle that
knits in hold, a move without effect is a needle brought back that was not in hold.

Two rules of rows are held against the machine's record rather than by the machine, which would
carry yarn anywhere: a row is one pass of the carriage (the format: directions + and - are those of
rising and falling needles), and it starts beside the needle where the yarn was last, or as many
needles off as were lifted after the row before.

It cannot see what leaves no trace in loops (a weight, a spring, an edge that is never secured): for
those there is the engine's own needle bed.
"""

from __future__ import annotations

import json
import re
import warnings
from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

import pytest

from engine.answers import steps
from engine.sections.registry import BARE_TOES, CUFFS, HEELS, POCKETS
from engine.sock import plan as planning
from tests.asking import answer
from tests.published.knitout_writer import PITCH, Operation, Writer

pytest.importorskip("knitout_interpreter", reason="this Python has no knitout-interpreter")

from knitout_interpreter.knitout_errors.Knitout_Error import Knitout_Error
from knitout_interpreter.knitout_execution import Knitout_Executer
from knitout_interpreter.knitout_execution_structures.Knitout_Knitting_Machine import (
    Knitout_Knitting_Machine,
    Knitout_Machine_Specification,
)
from knitout_interpreter.knitout_language.Knitout_Parser import parse_knitout
from knitout_interpreter.knitout_operations.Knitout_Line import Knitout_No_Op
from knitout_interpreter.knitout_operations.needle_instructions import (
    Loop_Making_Instruction,
    Miss_Instruction,
)

pytestmark = pytest.mark.slow


@dataclass(frozen=True)
class Verdict:
    """Loops knitted by part of the sock, and what the machine or the rules of rows object to."""

    loops: dict[str, int]
    objections: list[str]


def judge(operations: list[Operation], slots: int, side: str = "left") -> Verdict:
    """Knit the operations on the virtual machine."""
    writer = Writer(operations, slots, side)
    # Round a flattened tube the yarn may have far to go; in a row it may not, which is told below.
    beds: Knitout_Machine_Specification[Any] = Knitout_Machine_Specification(
        maximum_float=4 * slots
    )
    machine: Knitout_Knitting_Machine[Any] = Knitout_Knitting_Machine(beds)
    try:
        program = parse_knitout(writer.write())
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            done = Knitout_Executer(program, machine)
    except (Knitout_Error, Warning, ValueError) as no:
        return Verdict({}, [str(no)])
    return Verdict(_loops(done), [*_rows(done, writer.off), *_lost(done, slots, writer.ends)])


def _label(line: Any) -> str:
    return (line.comment or "").strip()


def _loops(done: Knitout_Executer[Any]) -> dict[str, int]:
    made: Counter[str] = Counter()
    for line in done.executed_instructions:
        if isinstance(line, Loop_Making_Instruction) and _label(line) != "hand":
            made[_label(line).partition(" ")[0]] += len(line.made_loops)
    return dict(made)


def _rows(done: Knitout_Executer[Any], off: dict[str, int]) -> list[str]:
    """Rows that are not one pass, or start where the yarn is not."""
    objections, passes, at, row = [], Counter[str](), 0, ""
    for one_pass in done.carriage_passes:
        for name in {_label(line) for line in one_pass if " row " in _label(line)}:
            passes[name] += 1
    objections += [f"{name} takes {n} passes" for name, n in passes.items() if n != 1]
    for line in done.executed_instructions:
        if isinstance(line, Knitout_No_Op):
            objections.append(f"nothing happens: {line}")
        if not isinstance(line, Loop_Making_Instruction | Miss_Instruction):
            continue
        name = _label(line)
        if name == "hand":  # a new yarn's end lies aside; the carrier stands where it was
            continue
        reach = PITCH * off.get(name, 0)
        if reach and name != row and abs(line.needle.position - at) > reach:
            objections.append(f"{name} starts at {line.needle}, the yarn is at {at}")
        at, row = line.needle.position, name
    return objections


def _lost(done: Knitout_Executer[Any], slots: int, ends: int) -> list[str]:
    """Loops that nothing holds, but for the last round of waste yarn and the ends of yarn."""
    loops, open_loops = slots + ends, sum(1 for _ in done.resulting_knit_graph.terminal_loops)
    return [] if open_loops == loops else [f"{open_loops} open loops, not {slots} and {ends} ends"]


_TOLD = {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm"}


def request(
    slots: int,
    sock_length: str = "",
    fabric: dict[str, Any] = _TOLD,
    carrier: str = "left",
    **wishes: Any,
) -> dict[str, Any]:
    """A short sock (its foot hardly longer than heel and toe), so that judging is quick."""
    return {
        "units": "cm",
        "foot": {"length": "24.6 cm"},
        "cylinder": {"slots": slots, "carrier": carrier},
        "fabric": fabric,
        "sock": {"leg": {"rounds": 3}, "foot_length_of_sock": sock_length, **wishes},
    }


def told(asked_for: dict[str, Any]) -> list[Operation]:
    """The operations of a request that can be knitted, as the terminal tells them."""
    found = answer({"do": "plan", "request": asked_for, "operations": True})
    assert "errors" not in found, found
    operations: list[Operation] = found["operations"]
    return operations


def _girth(height: float, girth: float) -> dict[str, str]:
    return {"height": f"{height} cm", "girth": f"{girth} cm"}


def _swatch(width: float, length: float, mark: float) -> dict[str, str]:
    sizes = {"flat_width": f"{width} cm", "length": f"{length} cm", "mark": str(mark)}
    return {"needles": "60", "rounds": "50", **sizes}


SOCKS: dict[str, tuple[int, str, dict[str, Any]]] = {
    "hem on 60": (60, "11.3 cm", {}),
    "odd half of 54": (54, "10 cm", {"cuff": {"rounds": 4}}),
    "rib on 72": (72, "13.5 cm", {"cuff": {"kind": "rib", "rounds": 6}}),
    "mock rib on 60": (60, "11.3 cm", {"cuff": {"kind": "mock rib", "every": 3, "rounds": 6}}),
    "every 2nd out": (54, "10 cm", {"cuff": {"kind": "mock rib", "every": 2, "rounds": 6}}),
    "deep heel, pointed toe": (
        60,
        "14 cm",
        {"heel": {"needles": 40, "left": 12}, "toe": {"needles": 25, "left": 5}},
    ),
    "small pockets": (
        72,
        "8 cm",
        {"heel": {"needles": 20, "left": 18}, "toe": {"needles": 8, "left": 2}},
    ),
    "smallest cylinder": (24, "8 cm", {"cuff": {"rounds": 2}, "leg": {"rounds": 0}}),
    "leg in bands": (
        24,
        "8 cm",
        {"leg": {"rounds": 30, "girths": [_girth(6, 9), _girth(11, 12)]}, "cuff": {"rounds": 2}},
    ),
    "leg in bands at marks": (
        24,
        "8 cm",
        {
            "leg": {"rounds": 30, "girths": [_girth(6, 9), _girth(11, 12)]},
            "cuff": {"rounds": 2},
            "fabric": {"swatch": _swatch(10, 13.2, 7), "swatches": [_swatch(8, 10.6, 4)]},
        },
    ),
    "largest cylinder": (
        120,
        "9 cm",
        {
            "cuff": {"rounds": 2},
            "leg": {"rounds": 1},
            "heel": {"needles": 60, "left": 40},
            "toe": {"needles": 30, "left": 20},
        },
    ),
}
QUICK = {"odd half of 54", "smallest cylinder", "leg in bands", "leg in bands at marks"}


# What each kind of cuff and pocket is tried with beside the usual; one without a line is untried.
CUFF_TRIES: dict[str, dict[str, Any]] = {
    "hem": {"rounds": 4},
    "rib": {"rounds": 5},
    "mock rib": {"rounds": 5, "every": 3},
    "picot hem": {"rounds": 6},
    "set-up rib": {"rounds": 7, "every": 3},
    "mock rib hem": {"rounds": 6, "every": 4},
}
POCKET_TRIES: dict[str, dict[str, Any]] = {
    "short rows": {"needles": 11, "left": 5},
    "two at first": {"needles": 11, "left": 5},
    "flap": {"needles": 11, "left": 5, "flap": 4},
}


def check(asked_for: dict[str, Any]) -> None:
    """The machine knits what the needle bed counts, part by part, and objects to nothing."""
    cylinder, made = asked_for["cylinder"], planning.make(asked_for)
    verdict = judge(told(asked_for), cylinder["slots"], cylinder["carrier"])
    assert not verdict.objections
    expected = Counter[str]()
    for section, work in zip(made.sections, made.work, strict=True):
        expected[section.part] += work.stitches
    assert verdict.loops == {part: n for part, n in expected.items() if n}


@pytest.mark.parametrize(
    "name",
    [name if name in QUICK else pytest.param(name, marks=pytest.mark.slow) for name in SOCKS],
)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_a_machine_knits_what_the_plan_counts(name: str, carrier: str) -> None:
    slots, length, wishes = SOCKS[name]
    check(request(slots, length, carrier=carrier, **wishes))


@pytest.mark.parametrize("kind", CUFFS)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_every_kind_of_cuff(kind: str, carrier: str) -> None:
    check(request(24, "8 cm", carrier=carrier, cuff={"kind": kind, **CUFF_TRIES[kind]}))


@pytest.mark.parametrize("carrier", ["left", "right"])
def test_a_rib_that_changes(carrier: str) -> None:
    changes = {"kind": "set-up rib", "rounds": 7, "change_after": 5, "change_every": 4}
    check(request(24, "8 cm", carrier=carrier, cuff=changes))


@pytest.mark.parametrize("kind", ["rib", "set-up rib"])
@pytest.mark.parametrize(("slots", "plain"), [(24, 0), (24, 2), (60, 2)])
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_a_rib_that_goes_on_down_the_leg(kind: str, slots: int, plain: int, carrier: str) -> None:
    """To a heel on fewer than half of the needles, before which the carrier stops elsewhere."""
    wishes: dict[str, Any] = {
        "cuff": {"kind": kind, "rounds": 6},
        "leg": {"kind": "ribbed", "rounds": 5, "plain": plain},
        "heel": {"needles": 11, "left": 5},
        "toe": {"needles": 11, "left": 5},
    }
    check(request(slots, "8 cm", carrier=carrier, **wishes))


@pytest.mark.parametrize("cuff", [{"kind": "rib"}, {"kind": "set-up rib", "every": 3}])
@pytest.mark.parametrize("slots", [24, 54])
@pytest.mark.parametrize("needles", [10, 11, 12, 13])
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_a_rib_that_goes_on_over_the_instep(
    cuff: dict[str, Any], slots: int, needles: int, carrier: str
) -> None:
    """Its stitches wait on the ribber while the heel is turned, on half the needles or others."""
    pockets = {"needles": needles, "left": 4 + needles % 2}
    leg = {"kind": "ribbed instep", "rounds": 3}
    cuff = {**cuff, "rounds": 5}
    wishes: dict[str, Any] = {"cuff": cuff, "leg": leg, "heel": pockets, "toe": pockets}
    check(request(slots, "8 cm", carrier=carrier, **wishes))


@pytest.mark.parametrize("carrier", ["left", "right"])
def test_rounds_after_the_toe(carrier: str) -> None:
    """Where the toe does not stand on half the needles too."""
    toe = {"needles": 11, "left": 5}
    check(request(24, "8 cm", carrier=carrier, cuff={"rounds": 2}, toe=toe, end={"rounds": 2}))


@pytest.mark.parametrize("carrier", ["left", "right"])
def test_rounds_before_the_toe(carrier: str) -> None:
    """They end where the toe begins, where that is not on half the needles too."""
    toe = {"needles": 11, "left": 5, "plain": 3}
    check(request(24, "10 cm", carrier=carrier, cuff={"rounds": 2}, toe=toe))


@pytest.mark.parametrize("carrier", ["left", "right"])
def test_colors_by_plan(carrier: str) -> None:
    """Each change is a yarn of its own; heel and toe stand off the half marks."""
    pockets = {"needles": 11, "left": 5}
    colors = {"cuff": "B", "leg": "2 A, 1 B", "heel": "C", "foot": "1 B, A", "toe": "B"}
    leg = {"rounds": 7}
    wishes = {"cuff": {"rounds": 2}, "leg": leg, "heel": pockets, "toe": pockets}
    check(request(24, "9 cm", carrier=carrier, colors=colors, **wishes))


@pytest.mark.parametrize("kind", CUFFS)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_sock_two_on_the_waste_yarn_of_sock_one(kind: str, carrier: str) -> None:
    """Both in one program, a ravel cord between them; heel and toe off the half marks."""
    pockets = {"needles": 11, "left": 5}
    wishes = {"cuff": {"kind": kind, **CUFF_TRIES[kind]}, "heel": pockets, "toe": pockets}
    one = planning.make(request(24, "8 cm", carrier=carrier, string="pair", **wishes))
    both = [*steps.operations(one), *steps.operations(one.sock_two)]
    verdict = judge(json.loads(json.dumps(both)), 24, carrier)
    assert not verdict.objections
    expected = Counter[str]()
    for sock in (one, one.sock_two):
        for section, work in zip(sock.sections, sock.work, strict=True):
            expected[section.part] += work.stitches
    assert verdict.loops == {part: n for part, n in expected.items() if n}
    assert abs(verdict.loops["between"] - 20 * 24) <= 1  # as the toe leaves the carrier


@pytest.mark.parametrize("toe", [{"needles": 11, "left": 5}, {"kind": "gathered"}])
@pytest.mark.parametrize("slots", [24, 60])
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_a_sock_without_a_heel(toe: dict[str, Any], slots: int, carrier: str) -> None:
    wishes: dict[str, Any] = {"cuff": {"rounds": 2}, "heel": {"kind": "none"}, "toe": toe}
    check(request(slots, "8 cm", carrier=carrier, **wishes))


@pytest.mark.parametrize("kind", BARE_TOES)
@pytest.mark.parametrize("slots", [24, 54])
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_every_toe_that_is_no_pocket(kind: str, slots: int, carrier: str) -> None:
    heel = {"needles": 11, "left": 5}
    wishes: dict[str, Any] = {"cuff": {"rounds": 2}, "heel": heel, "toe": {"kind": kind}}
    check(request(slots, "8 cm", carrier=carrier, **wishes))


@pytest.mark.parametrize("kind", HEELS)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_every_kind_of_pocket(kind: str, carrier: str) -> None:
    """As heel and, where it may be one, as toe."""
    tried = {"kind": kind, **POCKET_TRIES[kind]}
    pockets = {"heel": tried, **({"toe": tried} if kind in POCKETS else {})}
    check(request(24, "10 cm", carrier=carrier, cuff={"rounds": 2}, **pockets))


def test_a_flap_that_is_knitted_over_a_needle_in_hold_is_seen() -> None:
    heel = {"kind": "flap", "needles": 12, "left": 4, "flap": 2}
    operations = told(request(24, "10 cm", cuff={"rounds": 2}, heel=heel))
    assert not judge(operations, 24).objections
    rows = [one for one in operations if one["section"] == "heel" and one["op"] == "row"]
    rows[-1]["last"] -= 1  # the last row of those joined to the flap
    assert judge(operations, 24).objections


# What is wrong with the operations, and a word of what the judge must say. `heel` tells where the
# rows of a heel on 12 needles (slots 0 to 11) stand, each after what comes back and before what is
# lifted.
Fault = Callable[[list[Operation], list[int]], None]


def _knits_in_hold(all_of: list[Operation], heel: list[int]) -> None:
    all_of[heel[2]]["last"] = 11  # was lifted in row 1


def _knits_beyond_the_pocket(all_of: list[Operation], heel: list[int]) -> None:
    all_of[heel[0]]["last"] = 12


def _forgets_to_lift(all_of: list[Operation], heel: list[int]) -> None:
    del all_of[heel[3] + 1]


def _lifts_twice(all_of: list[Operation], heel: list[int]) -> None:
    all_of[heel[4] + 1]["needles"] = all_of[heel[2] + 1]["needles"]


def _brings_back_one_in_work(all_of: list[Operation], heel: list[int]) -> None:
    all_of[heel[-4] - 1]["needles"] = [5]


def _brings_back_from_the_near_side(all_of: list[Operation], heel: list[int]) -> None:
    first, second = (all_of[row - 1] for row in heel[len(heel) // 2 :][:2])
    first["needles"], second["needles"] = second["needles"], first["needles"]


def _leaves_one_in_hold(all_of: list[Operation], heel: list[int]) -> None:
    all_of[heel[-1]]["last"] = 1
    del all_of[heel[-1] - 1]


def _direction_wrong(all_of: list[Operation], heel: list[int]) -> None:
    row = all_of[heel[1]]
    row["goes"] = "right"


def _row_turned_round(all_of: list[Operation], heel: list[int]) -> None:
    row = all_of[heel[1]]
    row["goes"], row["first"], row["last"] = "right", row["last"], row["first"]


def _row_missing(all_of: list[Operation], heel: list[int]) -> None:
    del all_of[heel[2] : heel[2] + 2]


def _starts_on_the_wrong_side(all_of: list[Operation], heel: list[int]) -> None:
    for one in all_of[heel[0] : heel[-1] + 1]:
        if one["op"] == "row":
            one["goes"] = {"right": "left", "left": "right"}[one["goes"]]
            one["first"], one["last"] = 11 - one["first"], 11 - one["last"]
        else:
            one["needles"] = [11 - slot for slot in one["needles"]]


def _odd_half(all_of: list[Operation], heel: list[int]) -> None:
    """Narrow by an odd number of rows: the first needle to come back is on the carrier's side."""
    middle = len(heel) // 2
    del all_of[heel[middle - 1] : heel[middle - 1] + 2]
    del all_of[heel[middle] - 2 - 1 : heel[middle] - 2 + 1]


def _rest_forgotten(all_of: list[Operation], heel: list[int]) -> None:
    del all_of[heel[-1] + 1]


FAULTS: dict[str, tuple[Fault, str]] = {
    "a needle knits in hold": (_knits_in_hold, "empty needle"),
    "a needle beyond the pocket knits": (_knits_beyond_the_pocket, "empty needle"),
    "a needle is not lifted": (_forgets_to_lift, "nothing happens|starts at"),
    "a needle is lifted twice": (_lifts_twice, "nothing happens|empty"),
    "one comes back that is in work": (_brings_back_one_in_work, "empty needle"),
    "one comes back on the near side": (_brings_back_from_the_near_side, "empty needle"),
    "one never comes back": (_leaves_one_in_hold, "empty needle"),
    "a row's direction is wrong": (_direction_wrong, "passes|empty needle|the yarn is at"),
    "a row is knitted from its end": (_row_turned_round, "the yarn is at"),
    "a row is missing": (_row_missing, "the yarn is at"),
    "the heel starts on the wrong side": (_starts_on_the_wrong_side, "the yarn is at"),
    "an odd number of rows": (_odd_half, "the yarn is at|empty needle"),
    "the rest of the tube stays in hold": (_rest_forgotten, "empty needle"),
}


def small() -> list[Operation]:
    """The operations of a sock on 24 needles with next to no rounds, free to be spoilt."""
    found = told(request(24, "8 cm", cuff={"rounds": 2}, leg={"rounds": 1}))
    for one in found:
        if one["section"] in ("waste", "finish") and one["op"] == "rounds":
            one["count"] = 1
    return deepcopy(found)


def test_a_missing_round_shows_in_the_count() -> None:
    operations = small()
    right = judge(operations, 24).loops
    foot = next(one for one in operations if one["section"] == "foot")
    foot["count"] -= 1
    wrong = judge(operations, 24).loops
    assert wrong == {**right, "foot": right["foot"] - 24}


@pytest.mark.parametrize("name", FAULTS)
def test_the_judge_objects_to_a_broken_plan(name: str) -> None:
    spoil, words = FAULTS[name]
    operations = small()
    heel = [at for at, one in enumerate(operations) if one["section"] == "heel"]
    spoil(operations, [at for at in heel if operations[at]["op"] == "row"])
    verdict = judge(operations, 24)
    assert verdict.objections
    assert re.search(words, verdict.objections[0], re.I), verdict.objections


def test_a_carrier_that_is_not_stopped_at_needle_1_is_seen() -> None:
    """On fewer than half of the needles; on half, a round ends there of itself."""
    operations = told(request(24, "8 cm", cuff={"rounds": 2}, toe={"needles": 8, "left": 2}))
    assert not judge(operations, 24).objections
    for one in operations:
        if one["op"] == "rounds":
            one["stop"] = None
    first, *_ = judge(operations, 24).objections
    assert re.search("toe row 1 starts at .*the yarn is at", first)
