"""An outside judge of the needle work: the steps, knitted on a virtual machine that others wrote.

`knitout_writer` turns the steps into knitout (J. McCann, The "Knitout" (.k) File Format, v0.5.4,
Carnegie Mellon Textiles Lab); the packages knitout-interpreter 0.1.8 and virtual-knitting-machine
0.0.31 (M. Hofmann, Northeastern University) read and knit it. Counts must agree exactly. Every
warning of theirs is an objection: knitting an empty needle is a needle that knits in hold, a move
without effect is a needle brought back that was not in hold.

Two rules of rows are held against the machine's record rather than by the machine, which would
carry yarn anywhere: a row is one pass of the carriage (the format: directions + and - are those of
rising and falling needles), and it starts beside the needle where the yarn was last.
"""

from __future__ import annotations

import re
import warnings
from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

import pytest

from engine.api import answer
from tests.published.knitout_writer import ENTER, PITCH, Step, Writer

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


@dataclass(frozen=True)
class Verdict:
    """Loops knitted by part of the sock, and what the machine or the rules of rows object to."""

    loops: dict[str, int]
    objections: list[str]


def judge(steps: list[Step], slots: int) -> Verdict:
    """Knit the steps on the virtual machine."""
    pockets = [int(n) for step in steps for _, n in re.findall(ENTER, step["text"])]
    writer = Writer(slots, max([*pockets, slots // 2]))
    hem = any("Hang the hem" in step["text"] for step in steps)
    # Round a flattened tube the yarn may have far to go; in a row it may not, which is told below.
    beds: Knitout_Machine_Specification[Any] = Knitout_Machine_Specification(
        maximum_float=4 * slots
    )
    machine: Knitout_Knitting_Machine[Any] = Knitout_Knitting_Machine(beds)
    try:
        program = parse_knitout(writer.write(steps, hem=hem))
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            done = Knitout_Executer(program, machine)
    except (Knitout_Error, Warning, ValueError) as no:
        return Verdict({}, [str(no)])
    return Verdict(_loops(done), [*_rows(done), *_lost(done, slots)])


def _label(line: Any) -> str:
    return (line.comment or "").strip()


def _loops(done: Knitout_Executer[Any]) -> dict[str, int]:
    made: Counter[str] = Counter()
    for line in done.executed_instructions:
        if isinstance(line, Loop_Making_Instruction) and _label(line) != "hand":
            made[_label(line).partition(" ")[0]] += len(line.made_loops)
    return dict(made)


def _rows(done: Knitout_Executer[Any]) -> list[str]:
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
        if " row " in name and name != row and abs(line.needle.position - at) > PITCH:
            objections.append(f"{name} starts at {line.needle}, the yarn is at {at}")
        at, row = line.needle.position, name
    return objections


def _lost(done: Knitout_Executer[Any], slots: int) -> list[str]:
    """Loops that nothing holds, but for the last round of waste yarn and the three yarn ends."""
    open_loops = sum(1 for _ in done.resulting_knit_graph.terminal_loops)
    return [] if open_loops == slots + 3 else [f"{open_loops} open loops, not {slots} and 3 ends"]


_TOLD = {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm"}


def sock(
    slots: int, sock_length: str = "", fabric: dict[str, Any] = _TOLD, **wishes: Any
) -> dict[str, Any]:
    """A short sock (its foot hardly longer than heel and toe), so that judging is quick."""
    request = {
        "units": "cm",
        "foot": {"length": "24.6 cm"},
        "cylinder": {"slots": slots},
        "fabric": fabric,
        "sock": {"leg": {"rounds": 3}, "foot_length_of_sock": sock_length, **wishes},
    }
    plan = answer({"do": "plan", "request": request})
    assert "errors" not in plan, plan
    return plan


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


@pytest.mark.parametrize(
    "name",
    [name if name in QUICK else pytest.param(name, marks=pytest.mark.slow) for name in SOCKS],
)
def test_a_machine_knits_what_the_plan_counts(name: str) -> None:
    slots, length, wishes = SOCKS[name]
    plan = sock(slots, length, **wishes)
    verdict = judge(plan["steps"], slots)
    assert not verdict.objections
    in_cuff = plan["counts"]["cuff"]["needles"]
    waste = {"waste": 10 * in_cuff, "finish": 10 * slots}  # ten rounds: common practice
    expected = {part: n for part, n in plan["yarn"]["stitches"].items() if n}
    assert verdict.loops == {**expected, **waste}


# What is wrong with a plan, and a word of what the judge must say. The heel has 12 needles.
Fault = Callable[[list[Step], list[int]], None]


def _knits_in_hold(steps: list[Step], rows: list[int]) -> None:
    steps[rows[2]]["knits"][1] = 12  # was lifted in row 1


def _knits_beyond_the_pocket(steps: list[Step], rows: list[int]) -> None:
    steps[rows[0]]["knits"][1] = 13


def _forgets_to_lift(steps: list[Step], rows: list[int]) -> None:
    steps[rows[3]]["hold"] = None


def _lifts_twice(steps: list[Step], rows: list[int]) -> None:
    steps[rows[4]]["hold"] = steps[rows[2]]["hold"]


def _brings_back_one_in_work(steps: list[Step], rows: list[int]) -> None:
    steps[rows[-4]]["back"] = 6


def _brings_back_from_the_near_side(steps: list[Step], rows: list[int]) -> None:
    first, second = (steps[row] for row in rows[len(rows) // 2 :][:2])
    first["back"], second["back"] = second["back"], first["back"]


def _leaves_one_in_hold(steps: list[Step], rows: list[int]) -> None:
    last = steps[rows[-1]]
    last["back"], last["knits"][1] = None, 2


def _direction_wrong(steps: list[Step], rows: list[int]) -> None:
    steps[rows[1]]["direction"] = "right"


def _row_turned_round(steps: list[Step], rows: list[int]) -> None:
    row = steps[rows[1]]
    row["direction"], row["knits"] = "right", row["knits"][::-1]


def _row_missing(steps: list[Step], rows: list[int]) -> None:
    del steps[rows[2]]


def _starts_on_the_wrong_side(steps: list[Step], rows: list[int]) -> None:
    for row in rows:
        step = steps[row]
        step["direction"] = {"right": "left", "left": "right"}[step["direction"]]
        step["knits"] = [13 - needle for needle in step["knits"]]
        for name in ("back", "hold"):
            step[name] = step[name] and 13 - step[name]


def _odd_half(steps: list[Step], rows: list[int]) -> None:
    """Narrow by an odd number of rows: the first needle to come back is on the carrier's side."""
    middle = len(rows) // 2
    del steps[rows[middle - 1] : rows[middle] + 1]


def _rest_forgotten(steps: list[Step], rows: list[int]) -> None:
    del steps[rows[-1] + 1]


FAULTS: dict[str, tuple[Fault, str]] = {
    "a needle knits in hold": (_knits_in_hold, "empty needle"),
    "a needle beyond the pocket knits": (_knits_beyond_the_pocket, "empty needle"),
    "a needle is not lifted": (_forgets_to_lift, "nothing happens|starts at"),
    "a needle is lifted twice": (_lifts_twice, "nothing happens|empty"),
    "one comes back that is in work": (_brings_back_one_in_work, "empty needle"),
    "one comes back on the near side": (_brings_back_from_the_near_side, "empty needle"),
    "one never comes back": (_leaves_one_in_hold, "empty needle"),
    "a row's direction is wrong": (_direction_wrong, "passes"),
    "a row is knitted from its end": (_row_turned_round, "the yarn is at"),
    "a row is missing": (_row_missing, "the yarn is at"),
    "the heel starts on the wrong side": (_starts_on_the_wrong_side, "the yarn is at"),
    "an odd number of rows": (_odd_half, "the yarn is at|empty needle"),
    "the rest of the tube stays in hold": (_rest_forgotten, "empty needle"),
}


def small() -> list[Step]:
    """The steps of a sock on 24 needles with next to no rounds, free to be spoilt."""
    steps: list[Step] = deepcopy(sock(24, "8 cm", cuff={"rounds": 2}, leg={"rounds": 1})["steps"])
    for step in steps:
        if step["part"] in ("waste", "finish") and step["kind"] == "rounds":
            step["rounds"] = 1
    return steps


def test_a_missing_round_shows_in_the_count() -> None:
    steps = small()
    right = judge(steps, 24).loops
    foot = next(step for step in steps if step["part"] == "foot")
    foot["rounds"] -= 1
    wrong = judge(steps, 24).loops
    assert wrong == {**right, "foot": right["foot"] - 24}


@pytest.mark.parametrize("name", FAULTS)
def test_the_judge_objects_to_a_broken_plan(name: str) -> None:
    spoil, words = FAULTS[name]
    steps = small()
    spoil(steps, [i for i, step in enumerate(steps) if step["part"] == "heel" and "row" in step])
    verdict = judge(steps, 24)
    assert verdict.objections
    assert re.search(words, verdict.objections[0], re.I), verdict.objections


def test_a_carrier_that_is_not_stopped_at_needle_1_is_seen() -> None:
    """On fewer than half of the needles; on half, a round ends there of itself."""
    steps = sock(24, "8 cm", cuff={"rounds": 2}, toe={"needles": 8, "left": 2})["steps"]
    assert not judge(steps, 24).objections
    stop = next(
        at for at, step in enumerate(steps) if step["part"] == "toe" and "Stop with" in step["text"]
    )
    first, *_ = judge([*steps[:stop], *steps[stop + 1 :]], 24).objections
    assert re.search("toe row 1 starts at .*the yarn is at", first)
