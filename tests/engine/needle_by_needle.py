"""A machine of the tests' own, which follows the rows of a heel or toe needle by needle.

What is legal is common practice (no published source): a row knits the needles in work, from the
side where the yarn carrier stands to the other; a needle in hold does not knit; the needle that
comes back stands on the far side from the carrier, next to those in work; the needles that are
lifted are the ones that knitted last.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import Any


def moved(told: Any) -> list[int]:
    """The needles that a step tells of: none, one, or a list of several."""
    if told is None:
        return []
    if isinstance(told, list):
        assert len(told) > 1, "one needle is a number"
        return told
    return [told]


class Pocket:
    """Needles 1 to h, all in work at first, the carrier at a `side`."""

    def __init__(self, needles: int, side: str = "left") -> None:
        self.needles = needles
        self.in_work = list(range(1, needles + 1))
        self.side = side
        self.loops: Counter[int] = Counter()
        self.fewest = needles

    def knit(self, row: dict[str, Any]) -> None:
        """Follow one row; AssertionError where it cannot be done."""
        goes = row["direction"]
        assert goes in ("right", "left")
        assert goes != self.side, "the carrier stands at the other end"
        if row["back"] is not None:
            far = self.in_work[-1] + 1 if goes == "right" else self.in_work[0] - 1
            assert row["back"] == far, "not the innermost held needle of the far side"
            assert 1 <= far <= self.needles
            self.in_work = sorted([*self.in_work, far])
        knits = self.in_work if goes == "right" else self.in_work[::-1]
        assert row["knits"] == [knits[0], knits[-1]], "a row knits all needles in work and no other"
        assert self.in_work == list(range(self.in_work[0], self.in_work[-1] + 1)), "a gap"
        self.loops.update(knits)
        self.side = goes
        held = moved(row["hold"])
        if held:
            assert held == knits[::-1][: len(held)], "not the needles that knitted last"
            self.in_work = [needle for needle in self.in_work if needle not in held]
        assert row["in_work"] == len(self.in_work)
        self.fewest = min(self.fewest, len(self.in_work))


def follow(steps: list[dict[str, Any]], needles: int, side: str = "left") -> Pocket:
    """Follow the rows among the steps of one pocket."""
    pocket = Pocket(needles, side)
    rows = [step for step in steps if step["kind"] == "row"]
    assert [row["row"] for row in rows] == list(range(1, len(rows) + 1))
    for row in rows:
        pocket.knit(row)
    return pocket


def slot_told(slots: int, words: str) -> int:
    """The slot (from 1 at the left half mark, round the cylinder) that the words lead to."""
    count = int(re.findall(r"(\d+)(?:st|nd|rd|th)", words)[0])
    half = slots // 2
    if words.endswith("from the left half mark") or words.startswith("middle"):
        return count
    if words.endswith("from the right half mark"):
        return half + 1 - count
    if words.endswith("before the left half mark"):
        return slots + 1 - count
    assert words.endswith("past the right half mark"), words
    return half + count


def slots_told(slots: int, words: str) -> list[int]:
    """The slots that words of one needle or of several lead to, in their order."""
    found = list[int]()
    for phrase in words.split(" and "):
        end = words[words.index(" needle ") :]
        whole = phrase if "needle" in phrase else f"{phrase}{end}"
        found.append(slot_told(slots, whole))
    return found
