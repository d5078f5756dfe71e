"""The steps of a sock, written as knitout.

Knitout is the open format for machine knitting (J. McCann, The "Knitout" (.k) File Format, v0.5.4,
Carnegie Mellon Textiles Lab, textiles-lab.github.io/knitout/knitout.html; opcodes and parameters as
in its tables). It knows two flat beds and no round cylinder, so the tube lies flattened: the
needles of heel and toe on the front bed, the others on the back bed, every second needle of each,
so that the needle across from each one is free.

- A round goes right along the front (+) and left along the back (-): one loop on each needle.
- A needle in hold has handed its loop across (`xfer`), where no row reaches it. Knitting it is then
  knitting an empty needle, which an interpreter notices.
- A hung hem keeps the loops of its first round across (`split`), and hanging brings them back.
- Rib hands every second loop across and knits it there.
- A loop lifted by hand onto a needle put back is a tuck, and a cast-on is one on every needle.
- A yarn's hanging end is a tuck on a needle of its own beside the sock.

The writer does what the steps say, right or wrong. It reads what is to be done by hand from the
words, as a knitter does; words it does not understand are an error.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

Step = dict[str, Any]

SOCK, WASTE = 1, 2  # carriers
PITCH = 2  # slots of a bed from one needle of the cylinder to the next
ENTER = r"Lift (?:the )?(\d+) needles .*?into hold: the (\d+) of the (?:heel|toe) stay in work"
_HEADER = (";!knitout-2", ";;Machine: SWG091N2", ";;Carriers: 1 2", ";;Position: Keep")
_AT_THE_TABLE = ("Bind off", "Graft", "Pull out the waste yarn", "Darn", "Wash")
_OF_NO_LOOP = (
    "Thread waste yarn",
    "Set the ribber on",
    "Take the ribber off",
    "Set the tension",
    "Hang the heel weight",
    "Hang the weight on the cast-on edge",
    "Put the heel tension on",
    "Run the stronger thread",
    "Take the heel tension off",
    "Take the stronger thread out",
    "Move the weight back",
    "Cut the waste yarn",
)


def label(step: Step) -> str:
    """What a knitout line says it belongs to: its part, and its row where it has one."""
    return f"{step['part']} row {step['row']}" if step["kind"] == "row" else str(step["part"])


class Writer:
    """Writes knitout for a cylinder with `slots`, whose widest pocket has `front` needles."""

    def __init__(self, slots: int, front: int) -> None:
        self.lines = list(_HEADER)
        self._slots, self._front = slots, front
        self._carrier, self._offset, self._pocket = WASTE, 0, 0
        self._out: list[int] = []  # needles taken out
        self._across: set[int] = set()  # needles whose loops knit on the other bed
        self._stopped = False  # the carrier beside needle 1, which only a pocket can place
        self._first_round = 0  # 2 before the first round of sock yarn, 1 before the second
        self._ends: list[str] = []
        self._doings: tuple[tuple[str, Callable[[Step, re.Match[str]], None]], ...] = (
            (r"Take out every (\d+)\w+ needle", self._take_out),
            (r"Cast on over the needles in work", self._cast_on),
            (r"Move every second stitch to the ribber", self._set_ribber),
            (r"Change to the sock yarn", self._change_to_sock),
            (r"Hang the hem", self._hang),
            (r"Move the ribber’s stitches back", self._clear_ribber),
            (r"Put back the (\d+) needles that were out", self._put_back),
            (r"Stop with the yarn carrier left of needle 1", self._stop),
            (ENTER, self._enter),
            (r"Put the (\d+) held needles back", self._leave),
            (r"Cut the sock yarn", self._cut_sock),
            (r"Change to waste yarn", self._change_to_waste),
            (r"Crank the (\d+) stitches off", self._crank_off),
        )

    def write(self, steps: Iterable[Step], *, hem: bool) -> str:
        """Return the knitout of all steps; a hem's first round is kept for hanging."""
        self._keep_first = hem
        for step in steps:
            if step["kind"] == "rounds":
                for _ in range(step["rounds"]):
                    self._round(step)
            elif step["kind"] == "row":
                self._row(step)
            else:
                self._do(step)
        return "\n".join(self.lines) + "\n"

    def _say(self, operation: str, step: Step, extra: str = "") -> None:
        self.lines.append(f"{operation} ;{extra or label(step)}")

    def _needle(self, index: int, *, across: bool = False) -> str:
        """The needle of the beds for a needle of the cylinder, counted from 0 in a round."""
        front, base = index < self._front, 2 * self._slots
        place = index if front else 2 * self._front - 1 - index
        slot = base + PITCH * place + (0 if front else 1)
        return f"{'f' if front != across else 'b'}{slot}"

    def _sweep(self, index: int) -> str:
        return "+" if index < self._front else "-"

    def _of_pocket(self, needle: int) -> int:
        return (self._offset + needle - 1) % self._slots

    def _in_work(self) -> list[int]:
        return [index for index in range(self._slots) if index not in self._out]

    def _round(self, step: Step) -> None:
        keep = self._keep_first and self._first_round == 1
        for index in self._in_work():
            on = self._needle(index, across=index in self._across)
            if keep:
                other = self._needle(index, across=True)
                self._say(f"split {self._sweep(index)} {on} {other} {self._carrier}", step)
            else:
                self._say(f"knit {self._sweep(index)} {on} {self._carrier}", step)
        self._first_round -= 1

    def _row(self, step: Step) -> None:
        if step["back"] is not None:
            self._bring_back(self._of_pocket(step["back"]), step)
        first, last = step["knits"]
        towards = 1 if last >= first else -1
        sign = "+" if step["direction"] == "right" else "-"
        for needle in range(first, last + towards, towards):
            self._say(f"knit {sign} {self._needle(self._of_pocket(needle))} {self._carrier}", step)
        if step["hold"] is not None:
            self._hold(self._of_pocket(step["hold"]), step)

    def _hold(self, index: int, step: Step) -> None:
        self._say(f"xfer {self._needle(index)} {self._needle(index, across=True)}", step, "hand")

    def _bring_back(self, index: int, step: Step) -> None:
        self._say(f"xfer {self._needle(index, across=True)} {self._needle(index)}", step, "hand")

    def _do(self, step: Step) -> None:
        for words, doing in self._doings:
            if found := re.search(words, step["text"]):
                doing(step, found)
                return
        if not step["text"].startswith((*_AT_THE_TABLE, *_OF_NO_LOOP)):
            raise ValueError(f"no knitout for: {step['text']}")

    def _take_out(self, _: Step, words: re.Match[str]) -> None:
        every = int(words[1])
        self._out = list(range(every - 1, self._slots, every))

    def _thread(self, carrier: int, step: Step) -> None:
        end = f"f{2 * self._slots - PITCH * (len(self._ends) + 1)}"
        self._ends.append(end)
        self._say(f"inhook {carrier}", step)
        self._say(f"tuck - {end} {carrier}", step, "hand")
        self._say(f"releasehook {carrier}", step)
        self._carrier = carrier

    def _cast_on(self, step: Step, _: re.Match[str]) -> None:
        self._thread(WASTE, step)
        for index in self._in_work():
            self._say(f"tuck {self._sweep(index)} {self._needle(index)} {WASTE}", step, "hand")

    def _change_to_sock(self, step: Step, _: re.Match[str]) -> None:
        self._say(f"outhook {WASTE}", step)
        self._thread(SOCK, step)
        self._first_round = 2

    def _cut_sock(self, step: Step, _: re.Match[str]) -> None:
        self._say(f"outhook {SOCK}", step)

    def _change_to_waste(self, step: Step, _: re.Match[str]) -> None:
        self._thread(WASTE, step)

    def _crank_off(self, step: Step, words: re.Match[str]) -> None:
        self._say(f"outhook {WASTE}", step)
        if int(words[1]) != len(self._in_work()):
            raise ValueError(f"{len(self._in_work())} needles are in work: {step['text']}")
        for needle in [*map(self._needle, self._in_work()), *self._ends]:
            self._say(f"drop {needle}", step, "hand")

    def _hang(self, step: Step, _: re.Match[str]) -> None:
        for index in range(self._slots):
            self._bring_back(index, step)

    def _set_ribber(self, step: Step, _: re.Match[str]) -> None:
        self._across = set(range(1, self._slots, 2))
        for index in sorted(self._across):
            self._hold(index, step)

    def _clear_ribber(self, step: Step, _: re.Match[str]) -> None:
        for index in sorted(self._across):
            self._bring_back(index, step)
        self._across = set()

    def _put_back(self, step: Step, words: re.Match[str]) -> None:
        if int(words[1]) != len(self._out):
            raise ValueError(f"{len(self._out)} needles are out: {step['text']}")
        for index in self._out:
            self._say(f"tuck {self._sweep(index)} {self._needle(index)} {SOCK}", step, "hand")
        self._out = []

    def _resting(self) -> list[int]:
        pocket = {self._of_pocket(needle) for needle in range(1, self._pocket + 1)}
        return [index for index in range(self._slots) if index not in pocket]

    def _stop(self, _: Step, __: re.Match[str]) -> None:
        self._stopped = True

    def _enter(self, step: Step, words: re.Match[str]) -> None:
        rest, self._pocket = int(words[1]), int(words[2])
        self._offset = (self._front - self._pocket) // 2
        if rest != len(self._resting()):
            raise ValueError(f"{self._slots} needles in all: {step['text']}")
        for index in self._resting():
            self._hold(index, step)
        if self._stopped:
            self._say(f"miss - {self._needle(self._of_pocket(1))} {SOCK}", step, "hand")

    def _leave(self, step: Step, words: re.Match[str]) -> None:
        if int(words[1]) != len(self._resting()):
            raise ValueError(f"{len(self._resting())} are in hold: {step['text']}")
        for index in self._resting():
            self._bring_back(index, step)
        self._stopped = False
