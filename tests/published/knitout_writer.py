"""The operations of a sock, written as knitout.

Knitout is the open format for machine knitting (J. McCann, The "Knitout" (.k) File Format, v0.5.4,
Carnegie Mellon Textiles Lab, textiles-lab.github.io/knitout/knitout.html; opcodes and parameters as
in its tables). It knows two flat beds and no round cylinder, so the tube lies flattened: the
needles of the widest pocket, or of the front half, on the front bed, the others on the back bed,
every second needle of each, so that the needle across from each one is free. The back bed lies
flush with the front one where the carrier stands between rounds.

- A round goes right along the front (+) and left along the back (-), or the other way round: one
  loop on each needle.
- A needle in hold has handed its loop across (`xfer`), where no row reaches it. Knitting it is then
  knitting an empty needle, which an interpreter notices.
- An edge that is hung later keeps its loops across (`split`), and hanging brings them back.
- The ribber's stitches are handed across and knitted there.
- A stitch moved beside goes over a slider of the other bed, racked; the emptied needle tucks.
- A loop lifted by hand onto a needle put back is a tuck, and a cast-on is one on every needle.
- A yarn's hanging end is a tuck on a needle of its own beside the sock.

The writer does what the operations say, right or wrong. It reads them as a plan answers them, so
that it knows nothing of the engine; one that it does not know is an error.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from typing import Any

Operation = dict[str, Any]

PITCH = 2  # slots of a bed from one needle of the cylinder to the next
_HEADER = (";!knitout-2", ";;Machine: SWG091N2", ";;Carriers: 1 2 3 4 5", ";;Position: Keep")
_CARRIERS = {"main": 1, "waste": 2, "ravel cord": 3, "B": 4, "C": 5}
_OF_NO_LOOP = ("stand", "lift", "tension", "weight", "spring", "along")
_AT_THE_TABLE = ("pull cord", "bind off", "graft", "knit on", "ravel", "table")


def widest(operations: Iterable[Operation], slots: int) -> tuple[int, int]:
    """The first slot and the needles of the widest pocket, at least the front half."""
    found, ribs, held = (0, slots // 2), set[int](), set[int]()
    for one in operations:
        if one["op"] == "transfer":
            moved = set(one["needles"])
            ribs = ribs | moved if one["to"] == "ribber" else ribs - moved
        elif one["op"] == "return":
            held -= set(one["needles"])
        elif one["op"] == "hold":
            stay = set(range(slots)) - set(one["needles"]) - ribs
            if not held and len(stay) > found[1]:  # the rest of the tube, not one needle of a row
                first = next(slot for slot in stay if (slot - 1) % slots not in stay)
                found = (first, len(stay))
            held |= set(one["needles"])
    return found


class Writer:
    """Writes knitout for a cylinder with `slots` whose carrier stands at a `side`."""

    def __init__(self, operations: list[Operation], slots: int, side: str = "left") -> None:
        self.lines = list(_HEADER)
        self.off = dict[str, int]()  # by how many needles a row may start beside the yarn
        self._operations, self._slots, self._side = operations, slots, side
        self._first, self._front = widest(operations, slots)
        self._hung = {one["edge"] for one in operations if one["op"] == "hang"}
        self._carrier, self._gap = 0, self._home
        self._out, self._held, self._ribs = set[int](), set[int](), set[int]()
        self._emptied = set[int]()
        self._ribber = "off"
        self._kept: dict[int, int] | None = None  # visits since an edge that is hung
        self._row, self._section, self._lifted = 0, "", 0
        self._rows_of = Counter[str]()  # of each section, in all socks of a string
        self._ends: list[str] = []
        self._doings: dict[str, Callable[[Operation], None]] = {
            "yarn": self._yarn,
            "cut": self._cut,
            "cast on": self._cast_on,
            "rounds": self._rounds,
            "row": self._knit_row,
            "hold": self._hold,
            "return": self._return,
            "take out": lambda one: self._out.update(one["needles"]),
            "put in": self._put_in,
            "move": self._move,
            "transfer": self._transfer,
            "ribber": self._set_ribber,
            "hang": self._hang,
            "crank off": self._off_the_needles,
            "gather": self._off_the_needles,  # a thread holds the loops, as scrap does
        }

    def write(self) -> str:
        """The knitout of all operations."""
        for one in self._operations:
            if one["section"] != self._section:
                self._section, self._row = one["section"], 0
            if one["op"] in self._doings:
                self._doings[one["op"]](one)
            elif one["op"] not in (*_OF_NO_LOOP, *_AT_THE_TABLE):
                raise ValueError(f"no knitout for: {one}")
        return "\n".join(self.lines) + "\n"

    @property
    def ends(self) -> int:
        """How many ends of yarn hang beside the sock."""
        return len(self._ends)

    @property
    def _home(self) -> int:
        return 0 if self._side == "left" else self._slots // 2

    @property
    def _goes(self) -> int:
        return 1 if self._side == "left" else -1

    def _say(self, operation: str, label: str = "hand") -> None:
        self.lines.append(f"{operation} ;{label}")

    def _at(self, slot: int) -> tuple[bool, int]:
        """Whether a needle lies on the front bed, and at which slot of it."""
        index, base = (slot - self._first) % self._slots, 2 * self._slots
        if index < self._front:
            return True, base + PITCH * index
        last = self._slots if self._side == "left" else 2 * self._front
        return False, base + PITCH * (last - 1 - index) + 1

    def _needle(self, slot: int, across: bool = False) -> str:
        front, at = self._at(slot)
        return f"{'f' if front != across else 'b'}{at}"

    def _sign(self, slot: int, goes: int) -> str:
        return "+" if (goes > 0) == self._at(slot)[0] else "-"

    def _loop(self, slot: int, goes: int, label: str) -> None:
        """One stitch on the needle of a slot, wherever it is."""
        where = self._needle(slot, slot in self._ribs)
        sign = self._sign(slot, goes)
        visit = 0
        if self._kept is not None:
            visit = self._kept[slot] = self._kept.get(slot, 0) + 1
        if slot in self._emptied:
            self._emptied.remove(slot)
            self._say(f"tuck {sign} {where} {self._carrier}", label)
        elif visit == 2:
            across = self._needle(slot, across=True)
            self._say(f"split {sign} {where} {across} {self._carrier}", label)
        else:
            self._say(f"knit {sign} {where} {self._carrier}", label)

    def _past(self, gap: int) -> int:
        """How many slots a gap is past home as the carrier goes, below 0 where before it."""
        past = (gap - self._home) * self._goes % self._slots
        return past if past <= self._slots // 2 else past - self._slots

    def _rounds(self, one: Operation) -> None:
        stop = self._home if one["stop"] is None else one["stop"]
        passed = one["count"] * self._slots + self._past(stop) - self._past(self._gap)
        for step in range(passed):
            slot = (self._gap + step if self._goes > 0 else self._gap - 1 - step) % self._slots
            waits = slot in self._ribs and self._ribber != "knits"
            if not waits and (slot not in self._out or slot in self._ribs):
                self._loop(slot, self._goes, one["section"])
        self._gap = stop

    def _knit_row(self, one: Operation) -> None:
        self._row += 1
        self._rows_of[one["section"]] += 1
        label = f"{one['section']} row {self._rows_of[one['section']]}"
        self.off[label], self._lifted = max(self._lifted, 1), 0
        goes, slot = (1 if one["goes"] == "right" else -1), one["first"]
        for _ in range((one["last"] - slot) * goes % self._slots + 1):
            self._loop(slot, goes, label)
            slot = (slot + goes) % self._slots
        self._gap = slot if goes > 0 else (slot + 1) % self._slots

    def _over(self, slot: int, back: bool = False) -> None:
        ends = [self._needle(slot), self._needle(slot, across=True)]
        self._say(f"xfer {' '.join(ends[::-1] if back else ends)}")

    def _hold(self, one: Operation) -> None:
        self._lifted = len(one["needles"]) if self._row else 0
        for slot in one["needles"]:
            self._over(slot)

    def _return(self, one: Operation) -> None:
        for slot in one["needles"]:
            self._over(slot, back=True)

    def _put_in(self, one: Operation) -> None:
        self._out -= set(one["needles"])
        for slot in one["needles"]:
            self._say(f"tuck {self._sign(slot, 1)} {self._needle(slot)} {self._carrier}")

    def _move(self, one: Operation) -> None:
        for start, end in one["stitches"]:
            (front, here), (other, there) = self._at(start), self._at(end)
            by, across = (1, "b") if front else (-1, "f")
            if front == other:
                self._say(f"xfer {self._needle(start)} {across}s{here}")
                self._say(f"rack {by * (there - here)}")
                self._say(f"xfer {across}s{here} {self._needle(end)}")
            else:
                self._say(f"rack {by * (here - there)}")
                self._say(f"xfer {self._needle(start)} {self._needle(end)}")
            self._say("rack 0")
            (self._emptied if one["leave"] == "empty" else self._out).add(start)

    def _transfer(self, one: Operation) -> None:
        for slot in one["needles"]:
            self._over(slot, back=one["to"] == "cylinder")
        if one["to"] == "ribber":
            self._ribs |= set(one["needles"])
        else:
            self._ribs -= set(one["needles"])

    def _set_ribber(self, one: Operation) -> None:
        self._ribber = one["state"]

    def _hang(self, one: Operation) -> None:
        for slot in one["needles"]:
            self._over(slot, back=True)
        self._kept = None

    def _cut(self, _: Operation) -> None:
        self._say(f"outhook {self._carrier}")
        self._carrier = 0

    def _yarn(self, one: Operation) -> None:
        if self._carrier:
            self._cut(one)
        self._carrier = _CARRIERS[one["name"]]
        end = f"f{2 * self._slots - PITCH * (len(self._ends) + 1)}"
        self._ends.append(end)
        self._say(f"inhook {self._carrier}")
        self._say(f"tuck - {end} {self._carrier}")
        self._say(f"releasehook {self._carrier}")
        if one["edge"] in self._hung:
            self._kept = {}

    def _cast_on(self, _: Operation) -> None:
        for step in range(self._slots):
            slot = (self._home + step if self._goes > 0 else self._home - 1 - step) % self._slots
            if slot not in self._out:
                sign = self._sign(slot, self._goes)
                self._say(f"tuck {sign} {self._needle(slot)} {self._carrier}")

    def _off_the_needles(self, _: Operation) -> None:
        stay = [self._needle(slot) for slot in range(self._slots) if slot not in self._out]
        for needle in [*stay, *self._ends]:
            self._say(f"drop {needle}")
