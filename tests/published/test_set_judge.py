"""The outside judge knits what a stranger reads in a print: each size of a set, on his machine.

The machine is that of `test_knitout_judge`; the reader (`hands`) knows nothing but the print.
"""

from __future__ import annotations

from collections import Counter
from typing import Any

import pytest

from engine.sock import plan as planning
from tests.engine.instructions.asking_sets import call, prints, request
from tests.engine.instructions.hands import Hands
from tests.published.test_knitout_judge import judge

pytestmark = pytest.mark.slow

SETS: dict[str, dict[str, Any]] = {
    "hem": {"cuff": {"rounds": 4}, "leg": {"rounds": 3}},
    "rib that changes": {
        "cuff": {"kind": "set-up rib", "rounds": 7, "change_after": 5, "change_every": 4},
    },
    "stripes": {
        "cuff": {"rounds": 4},
        "leg": {"rounds": 5},
        "colors": {"cuff": "B", "leg": "2 A, 1 B", "heel": "C", "foot": "3 A, B"},
    },
    "picot, two at first": {
        "cuff": {"kind": "picot hem", "rounds": 6},
        "heel": {"kind": "two at first", "needles": 11, "left": 5},
    },
    "mock rib hem, flap, gathered": {
        "cuff": {"kind": "mock rib hem", "rounds": 6, "every": 4},
        "heel": {"kind": "flap", "needles": 11, "left": 5, "flap": 4},
        "toe": {"kind": "gathered"},
    },
    "ribbed leg, small toe, rounds after it": {
        "cuff": {"kind": "rib", "rounds": 6},
        "leg": {"kind": "ribbed", "rounds": 8, "plain": 2},
        "toe": {"needles": 8, "left": 2},
        "end": {"rounds": 2},
    },
}


@pytest.mark.parametrize("kind", SETS)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_an_outside_machine_knits_every_size_of_a_print(kind: str, carrier: str) -> None:
    asked = request(24, sock=SETS[kind])
    asked["cylinder"]["carrier"] = carrier
    sizes = ["100 mm", "108 mm", "116 mm"]
    together, _ = prints(call(asked, "length", sizes))
    for label, length in zip(["10 cm", "10.8 cm", "11.6 cm"], sizes, strict=True):
        reader = Hands(together, label)
        verdict = judge(reader.done, reader.slots, reader.side)
        assert not verdict.objections
        sock, expected = planning.make({**asked, "foot": {"length": length}}), Counter[str]()
        for section, work in zip(sock.sections, sock.work, strict=True):
            expected[section.part] += work.stitches
        assert verdict.loops == {part: n for part, n in expected.items() if n}
