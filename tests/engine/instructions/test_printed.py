"""A stranger knits every size from the print alone, and it is the sock that was planned."""

from __future__ import annotations

from collections import Counter
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine import api
from engine.machine import needle_bed, standing
from engine.machine import operations as op
from engine.machine.cylinder import Cylinder
from engine.sock import plan as planning
from tests.engine.drawn_requests import SLOTS, Json, pockets, toes, tops
from tests.engine.instructions import hands
from tests.engine.instructions.asking_sets import call, prints, request
from tests.engine.instructions.hands import Hands, Lost, Operation

_KINDS = {name: kind for kind, name in op._NAMES.items()}


def on_the_bed(done: list[Operation], slots: int, side: Any) -> dict[str, tuple[int, int, int]]:
    """Rounds, rows and stitches of each part that the needle bed knits, from bare to done."""
    at, found = standing.bare(Cylinder(slots, side)), Counter[tuple[str, int]]()
    for one in done:
        fields = {name: _tuples(v) for name, v in one.items() if name not in ("op", "section")}
        work = needle_bed.run(at, [_KINDS[one["op"]](**fields)])
        for of, count in enumerate((work.rounds, work.rows, work.stitches)):
            found[one["section"], of] += count
        at = work.ends
    assert standing.left_behind(at) is None
    parts = dict.fromkeys(part for part, _ in found)
    return {part: (found[part, 0], found[part, 1], found[part, 2]) for part in parts}


def _tuples(value: Any) -> Any:
    return tuple(map(_tuples, value)) if isinstance(value, list) else value


def planned(asked: Json) -> dict[str, tuple[int, int, int]]:
    """The same of the sock that is planned by hand."""
    sock, found = planning.make(asked), Counter[tuple[str, int]]()
    for section, work in zip(sock.sections, sock.work, strict=True):
        for of, count in enumerate((work.rounds, work.rows, work.stitches)):
            found[section.part, of] += count
    return {
        part: (found[part, 0], found[part, 1], found[part, 2])
        for part in dict.fromkeys(part for part, _ in found)
        if any(found[part, of] for of in range(3))
    }


def knits_the_same(text: str, size: str, by_hand: Json) -> None:
    reader = Hands(text, size)
    knitted = on_the_bed(reader.done, reader.slots, reader.side)
    assert {part: n for part, n in knitted.items() if any(n)} == planned(by_hand)


WHOLE = {
    "hem": {},
    "rib": {"cuff": {"kind": "rib"}},
    "ribbed leg": {
        "cuff": {"kind": "set-up rib", "every": 4},
        "leg": {"kind": "ribbed", "plain": 5},
    },
    "changing rib": {
        "cuff": {"kind": "set-up rib", "change_after": 9, "change_every": 4},
    },
    "mock rib": {"cuff": {"kind": "mock rib", "every": 3}},
    "mock rib hem": {"cuff": {"kind": "mock rib hem", "every": 4}},
    "picot": {"cuff": {"kind": "picot hem", "rounds": 14}},
    "two at first": {"heel": {"kind": "two at first"}, "toe": {"kind": "two at first"}},
    "flap": {"heel": {"kind": "flap"}, "end": {"rounds": 4}},
    "other needles": {"heel": {"needles": 34}, "toe": {"needles": 27, "plain": 5}},
    "tube, gathered": {"heel": {"kind": "none"}, "toe": {"kind": "gathered"}},
    "open": {"toe": {"kind": "left open"}},
    "colors": {"colors": {"cuff": "B", "leg": "4 A, 2 B", "heel": "C", "foot": "10 A, 4 C, A"}},
    "shaped": {"leg": {"height": "32 cm"}},
}


@pytest.mark.parametrize("kind", WHOLE)
@pytest.mark.parametrize("carrier", ["left", "right"])
def test_every_size_is_knitted_from_the_print(kind: str, carrier: str) -> None:
    asked = request(sock=WHOLE[kind])
    asked["cylinder"]["carrier"] = carrier
    together, alone = prints(call(asked, "EU", "36, 39, 42"))
    assert hands.labels(together) == ["36", "39", "42"]
    for size, text in zip(hands.labels(together), alone, strict=True):
        shoe = {"shoe_size": {"system": "EU", "size": size}}
        by_hand = {**asked, "foot": {}, "person": shoe}
        knits_the_same(together, size, by_hand)
        knits_the_same(text, size, by_hand)


@st.composite
def whole(draw: st.DrawFn) -> Json:
    """A plan of any cylinder, fabric and sections."""
    slots = draw(SLOTS)
    stitches = draw(st.floats(26, 60))
    rounds = stitches * draw(st.floats(1.1, 1.6))
    paint: Json = {}
    if draw(st.booleans()):
        runs = st.sampled_from(("A", "B", "4 A, 2 B", "3 b and 1 a", "10 A, 4 C, A"))
        one = st.sampled_from(("A", "B", "C"))
        part = {name: draw(one) for name in ("cuff", "heel", "toe")}
        paint = {"colors": {**part, "leg": draw(runs), "foot": draw(runs)}}
    return {
        "units": draw(st.sampled_from(("in", "cm"))),
        "cylinder": {"slots": slots, "carrier": draw(st.sampled_from(("left", "right")))},
        "fabric": {
            "stitches": f"{stitches:.2f} / 10 cm",
            "rounds": f"{rounds:.2f} / 10 cm",
        },
        "sock": {**draw(tops(slots)), "heel": draw(pockets(slots)), **draw(toes(slots)), **paint},
    }


LENGTHS = st.lists(st.integers(1000, 3400), min_size=1, max_size=5, unique=True)


@given(whole(), LENGTHS)
def test_any_set_is_knitted_from_the_print(asked: Json, lengths: list[int]) -> None:
    sizes = [f"{length / 10} mm" for length in sorted(lengths)]
    found = api.answer(call(asked, "length", sizes))
    assume("errors" not in found)
    together, alone = prints(call(asked, "length", sizes))
    for one, length, text in zip(found["sizes"], sizes, alone, strict=True):
        if one["counts"]:
            by_hand = {**asked, "foot": {"length": length}}
            knits_the_same(together, one["label"], by_hand)
            knits_the_same(text, one["label"], by_hand)


def test_the_reader_is_lost_at_what_nobody_taught_it() -> None:
    together, _ = prints(call(request(), "EU", "36, 39"))
    with pytest.raises(Lost):
        Hands(together.replace("Cast on over", "Throw away"), "36")


def test_a_wrong_count_in_the_print_is_another_sock() -> None:
    """So that the comparison can fail."""
    together, _ = prints(call(request(), "EU", "36, 39"))
    (line,) = [one for one in together.splitlines() if one.startswith("1. Foot: knit")]
    first = line.split(" knit ")[1].split()[0]
    wrong = together.replace(line, line.replace(first, str(int(first) + 1), 1))
    by_hand = {**request(), "person": {"shoe_size": {"system": "EU", "size": "36"}}}
    knits_the_same(together, "36", by_hand)
    with pytest.raises(AssertionError):
        knits_the_same(wrong, "36", by_hand)
