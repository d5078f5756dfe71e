"""A sock as a list of operations, written out by hand for the tests of the needle bed.

24 slots, the carrier at either side; a hung hem of 4 rounds, a leg of 3, heel and toe on 12 needles
down to 6 (slots 0 to 11, the whole front half), a foot of 5.
"""

from __future__ import annotations

from collections.abc import Iterator

from engine.machine.cylinder import Side
from engine.machine.operations import (
    Along,
    CastOn,
    CrankOff,
    Cut,
    Graft,
    Hang,
    Hold,
    Operation,
    Ravel,
    Return,
    Rounds,
    Row,
    Spring,
    Stand,
    Table,
    Tension,
    Weight,
    Yarn,
)

SLOTS, POCKET, LEFT = 24, 12, 6
FRONT, BACK = tuple(range(12)), tuple(range(12, 24))
ALL = FRONT + BACK


def rows(needles: int, left: int, side: Side = "left") -> Iterator[Operation]:
    """The rows of a pocket in slots 0 to `needles` - 1, the carrier at a side."""
    low, high, right = 0, needles - 1, side == "left"
    for narrowing in (True, False):
        for _ in range(needles - left):
            if not narrowing:
                back = high + 1 if right else low - 1
                yield Return((back,))
                low, high = min(low, back), max(high, back)
            yield Row("right", low, high) if right else Row("left", high, low)
            if narrowing:
                held = high if right else low
                yield Hold((held,))
                low, high = (low, high - 1) if right else (low + 1, high)
            right = not right


def pocket(side: Side = "left") -> list[Operation]:
    return [
        Stand(0 if side == "left" else 12),
        Hold(BACK),
        Weight("pocket"),
        Spring(True),
        Along("reinforcing"),
        *rows(POCKET, LEFT, side),
        Return(BACK),
        Spring(False),
        Along(None),
        Weight("tube"),
    ]


def sock(side: Side = "left") -> list[Operation]:
    return [
        Yarn("waste"),
        CastOn(),
        Weight("tube"),
        Rounds(2),
        Tension(1.0, 7.0),
        Yarn("main", "top"),
        Rounds(4),
        Weight(None),
        Hang("top", ALL),
        Weight("tube"),
        Rounds(3),
        *pocket(side),
        Rounds(5),
        *pocket(side),
        Cut(),
        Yarn("waste", "toe"),
        Rounds(2),
        Cut(),
        CrankOff(),
        Graft(("toe",)),
        Ravel(),
        Table("darn"),
        Table("wash"),
    ]
