"""A reader who has nothing but printed instructions, and does at a machine what they say.

It knows English, what a cylinder is, and common practice where a sentence leaves it to the hand:
every nth needle is counted from the left half mark, and a hem is hung with the first round. It
knows nothing of the engine. What it does are operations as a plan answers them, so that the needle
bed and the outside judge can run them. A sentence that it does not understand is an error.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from tests.engine.needle_by_needle import slot_told

Operation = dict[str, Any]

PARTS = {
    "Waste yarn": "waste",
    "Cuff": "cuff",
    "Leg": "leg",
    "Heel": "heel",
    "Foot": "foot",
    "Before the toe": "before_toe",
    "Toe": "toe",
    "After the toe": "end",
    "Off the machine": "finish",
}
_OVER_SIZES = re.compile(r"(\S+) \(([^()]*)\)")


class Lost(Exception):
    """Raised for a sentence that no hand could follow."""


def paragraphs(text: str) -> list[list[str]]:
    """The paragraphs of a print, each as its lines."""
    return [part.splitlines() for part in text.strip().split("\n\n")]


def joined(lines: list[str]) -> str:
    """A paragraph that was folded, as one line."""
    return " ".join(line.strip() for line in lines)


def labels(text: str) -> list[str]:
    """The sizes of a print in their order."""
    for lines in paragraphs(text):
        alone = re.match(r"For size (.+) alone\.", joined(lines))
        if alone:
            return [alone[1]]
        many = re.match(r"Sizes: (.+?) \(([^()]*)\)\. Counts", joined(lines))
        if many:
            return [many[1], *many[2].split(", ")]
    raise Lost("no sizes")


def for_size(sentence: str, at: int, sizes: int) -> str:
    """A sentence with the figures of one size: the one in its place, of as many as there are."""

    def chosen(found: re.Match[str]) -> str:
        figures = [found[1], *found[2].split(", ")]
        return figures[at] if len(figures) == sizes else found[0]

    return _OVER_SIZES.sub(chosen, sentence) if sizes > 1 else sentence


def steps(text: str, size: str) -> list[tuple[str, str]]:
    """Part and sentence of each step of a size, in order."""
    order = labels(text)
    at, found = order.index(size), list[tuple[str, str]]()
    part, mine, reading = "", True, False
    for lines in paragraphs(text):
        under = lines[-1] if len(lines) > 1 else ""
        if set(under) == {"-"}:
            reading = lines[0] == "Instructions"
        elif not reading:
            continue
        elif set(under) == {"."}:
            part = PARTS[lines[0]]
        elif lines[0].startswith("For size"):
            told = re.match(r"For sizes? (.*):$", joined(lines))
            mine = told is not None and size in re.split(r", and |, | and ", told[1])
        elif lines[0].startswith("1. "):
            if mine:
                found += [(part, for_size(one, at, len(order))) for one in items(lines)]
            mine = True
    return found


def items(lines: list[str]) -> list[str]:
    """The items of a numbered list, which counts from 1 without a gap."""
    found = list[str]()
    for line in lines:
        number = re.match(r"(\d+)\. ", line)
        if number:
            assert int(number[1]) == len(found) + 1, "a list counts on"
            found.append(line[number.end() :])
        else:
            found[-1] += f" {line.strip()}"
    return found


class Hands:
    """Does the steps of one size, at a machine as the print describes it."""

    def __init__(self, text: str, size: str) -> None:
        whole = " ".join(joined(lines) for lines in paragraphs(text))
        slots = re.search(r"sock machine with (\d+) slots", whole)
        side = re.search(r"yarn carrier that stands at the (left|right)", whole)
        assert slots, "no cylinder"
        self.slots, self.side = int(slots[1]), side[1] if side else "left"
        self.done = list[Operation]()
        self._part, self._first, self._needles = "", 0, 0
        self._rest, self._ribs, self._out = list[int](), list[int](), list[int]()
        for part, sentence in steps(text, size):
            self._part = part
            self._follow(sentence)

    def _do(self, op: str, **fields: Any) -> None:
        self.done.append({"op": op, **fields, "section": self._part})

    def _follow(self, sentence: str) -> None:
        for shape, doing in _SENTENCES:
            found = re.fullmatch(shape, sentence)
            if found:
                doing(self, found)
                return
        raise Lost(f"{self._part}: {sentence}")

    def slot(self, needle: int) -> int:
        """The slot of a needle of heel or toe, from 0 at the left half mark."""
        return (self._first + needle - 1) % self.slots

    def _every(self, nth: int) -> list[int]:
        return list(range(nth - 1, self.slots, nth))

    def _nothing(self, _: re.Match[str]) -> None:
        """Something that no needle feels."""

    def _rounds(self, found: re.Match[str]) -> None:
        self._do("rounds", count=int(found["n"]), stop=None)

    def _stop(self, found: re.Match[str]) -> None:
        """The last round ends where the pocket begins."""
        told = slot_told(self.slots, found["place"]) - 1
        needle = int(found["needle"])
        self._first = (told - needle + 1) % self.slots
        gap = told if found["side"] == "left" else (told + 1) % self.slots
        home = 0 if self.side == "left" else self.slots // 2
        last = next(one for one in reversed(self.done) if one["op"] in ("rounds", "row"))
        if last["op"] == "rounds" and gap != home:
            last["stop"] = gap
        self._do("stand", at=gap)

    def _hold_rest(self, found: re.Match[str]) -> None:
        self._needles = int(found["needles"])
        stay = {self.slot(needle) for needle in range(1, self._needles + 1)}
        self._rest = [slot for slot in range(self.slots) if slot not in stay]
        assert len(self._rest) == int(found["rest"])
        self._do("hold", needles=self._rest)

    def _return_rest(self, found: re.Match[str]) -> None:
        assert len(self._rest) == int(found["n"])
        self._do("return", needles=self._rest)

    def _row(self, found: re.Match[str]) -> None:
        told = found.groupdict()
        if told.get("back"):
            self._do("return", needles=[self.slot(int(told["back"]))])
        if told.get("joins"):
            self._do("lift", needles=[self.slot(int(told["joins"]))])
        ends = {name: self.slot(int(told[name])) for name in ("first", "last")}
        self._do("row", goes=told["goes"], **ends)
        if told.get("hold"):
            held = [self.slot(int(needle)) for needle in re.findall(r"\d+", told["hold"])]
            self._do("hold", needles=held)

    def _corners(self, _: re.Match[str]) -> None:
        self._do("lift", needles=[self.slot(0), self.slot(self._needles + 1)])

    def _take_out(self, found: re.Match[str]) -> None:
        self._out = self._every(int(found["nth"]))
        assert self.slots - len(self._out) == int(found["stay"])
        self._do("take out", needles=self._out)

    def _put_back(self, found: re.Match[str]) -> None:
        assert len(self._out) == int(found["n"])
        self._do("put in", needles=self._out)

    def _hang(self, found: re.Match[str]) -> None:
        stay = [slot for slot in range(self.slots) if slot not in self._out]
        told = found.groupdict().get("n")
        assert told is None or len(stay) == int(told)
        self._do("hang", edge="top", needles=stay)

    def _picot(self, _: re.Match[str]) -> None:
        beside = [[slot, (slot + 1) % self.slots] for slot in range(1, self.slots, 2)]
        self._do("move", stitches=beside, leave="empty")

    def _to_ribber(self, found: re.Match[str]) -> None:
        self._ribs = self._every(int(found.groupdict().get("nth") or 2))
        assert len(self._ribs) == int(found["n"])
        self._do("transfer", needles=self._ribs, to="ribber")

    def _fewer_ribs(self, found: re.Match[str]) -> None:
        left = self._every(int(found["nth"]))
        back = [slot for slot in self._ribs if slot not in left]
        assert len(back) == int(found["n"])
        assert len(left) == int(found["left"])
        self._ribs = left
        self._do("transfer", needles=back, to="cylinder")

    def _ribs_back(self, _: re.Match[str]) -> None:
        self._do("transfer", needles=self._ribs, to="cylinder")

    def _tension(self, _: re.Match[str]) -> None:
        self._do("tension", tighter=1.0, mark=None)

    def _begin_in(self, found: re.Match[str]) -> None:
        self._do("yarn", name=_yarn(found["color"]), edge="top")

    def _change_color(self, found: re.Match[str]) -> None:
        self._do("yarn", name=_yarn(found["color"]), edge=None)

    def _crank_off(self, found: re.Match[str]) -> None:
        assert int(found["n"]) == self.slots
        self._do("crank off")

    def _gather(self, found: re.Match[str]) -> None:
        assert int(found["n"]) == self.slots
        self._do("gather")


def _yarn(color: str) -> str:
    """A is the main yarn."""
    return "main" if color == "A" else color


Doing = Callable[[Hands, "re.Match[str]"], None]


def _plainly(op: str, **fields: Any) -> Doing:
    return lambda hands, _: hands._do(op, **fields)


_N = r"(?P<n>\d+)"
_ACROSS = r"to the (?P<goes>right|left), needle (?P<first>\d+) to (?P<last>\d+)\."
_IN_WORK = r" \d+ of \d+ in work\."
_SENTENCES: list[tuple[str, Doing]] = [
    (
        r"Thread waste yarn in a color other than the sock’s\.",
        _plainly("yarn", name="waste", edge=None),
    ),
    (r"Cast on over the needles in work\.", _plainly("cast on")),
    (r"Hang the weight on the cast-on edge, .*", _plainly("weight", on="tube")),
    (r"Change to the sock yarn\. .*", _plainly("yarn", name="main", edge="top")),
    (r"Change to color (?P<color>[A-F])\. .* of it hanging\.", Hands._begin_in),
    (r"Change to color (?P<color>[A-F])\. .* of both yarns hanging\.", Hands._change_color),
    (r"Cut the sock yarn\. Leave \d.*", _plainly("cut")),
    (r"Change to waste yarn\.", _plainly("yarn", name="waste", edge="toe")),
    (r"Cut the waste yarn\.", _plainly("cut")),
    (rf"Crank the {_N} stitches off the needles\. .*", Hands._crank_off),
    (r"Bind off the first round of the cuff loosely, .*", _plainly("bind off", edge="top")),
    (r"Graft the toe\.", _plainly("graft", edges=["toe"])),
    (r"Pull out the waste yarn\.", _plainly("ravel")),
    (r"Weave in the ends\.", _plainly("table", what="darn")),
    (r"Wash the sock and dry it flat\. .*", _plainly("table", what="wash")),
    (rf"With the darning needle, take all {_N} stitches off .*", Hands._gather),
    (r"Draw the toe up tight, .*", _plainly("table", what="draw up")),
    (r"Put the last round of sock yarn on knitting needles, .*", _plainly("knit on", edge="toe")),
    (rf"Cuff: knit {_N} round on both beds\.", Hands._rounds),
    (rf"Cuff, continued: knit {_N} rounds? on the cylinder alone\.", Hands._rounds),
    (rf"[A-Z][a-z ]+(, continued)?: knit {_N} rounds?( of \d+×1 rib)?\.", Hands._rounds),
    (r"Take the weight off before you hang the hem\.", _plainly("weight", on=None)),
    (r"Check that each needle holds both loops\. .*", _plainly("weight", on="tube")),
    (r"Hang the hem: lift each loop of the first sock round onto its own needle\. .*", Hands._hang),
    (rf"Hang the hem: lift each of the {_N} loops .*", Hands._hang),
    (r"Take out every (?P<nth>\d+).. needle: (?P<stay>\d+) of \d+ stay in work\.", Hands._take_out),
    (rf"Put back the {_N} needles that were out, .*", Hands._put_back),
    (r"Move every second stitch onto the needle at its right, .*", Hands._picot),
    (r"Set the ribber on the cylinder\.", _plainly("ribber", state="knits")),
    (rf"Move every second stitch to the ribber: {_N} on each bed\.", Hands._to_ribber),
    (
        rf"Move every (?P<nth>\d+).. stitch to the ribber: \d+ on the cylinder, {_N} on .*\.",
        Hands._to_ribber,
    ),
    (r"Set the ribber to idle: .*", _plainly("ribber", state="idle")),
    (r"Set the ribber to knit again\.", _plainly("ribber", state="knits")),
    (
        rf"Move {_N} of the ribber’s stitches back to the cylinder: "
        r"every (?P<nth>\d+).. stitch stays, (?P<left>\d+) in all\.",
        Hands._fewer_ribs,
    ),
    (r"Move the ribber’s stitches back to the cylinder\.", Hands._ribs_back),
    (r"Take the ribber off, and its drive pin out: .*", _plainly("ribber", state="off")),
    (r"Set the tension (mark to|for a) .*", Hands._tension),
    (
        r"Stop with the yarn carrier (?P<side>left|right) of needle (?P<needle>\d+), "
        r"the (?P<place>.*)\.",
        Hands._stop,
    ),
    (
        r"Lift (the )?(?P<rest>\d+) needles (behind the half marks )?into hold: "
        r"the (?P<needles>\d+) of the (heel|toe) stay in work.*\.",
        Hands._hold_rest,
    ),
    (r"Hang the heel weight on the (heel|toe)\. .*", _plainly("weight", on="pocket")),
    (r"Put the heel spring on\. .*", _plainly("spring", on=True)),
    (r"Run the reinforcing thread along, .*", _plainly("along", thread="reinforcing")),
    (rf"Put the {_N} held needles back in work, latches open\.", Hands._return_rest),
    (r"Take the heel spring off\.", _plainly("spring", on=False)),
    (r"Take the reinforcing thread out, .*", _plainly("along", thread=None)),
    (r"Move the weight back to the whole tube\.", _plainly("weight", on="tube")),
    (r"Lift the loose strand at each corner of the (heel|toe) .*", Hands._corners),
    (
        rf"Knit {_ACROSS} Lift needles? (?P<hold>[\d, and]+) into hold\.{_IN_WORK}",
        Hands._row,
    ),
    (rf"Bring needle (?P<back>\d+) back\. Knit {_ACROSS}{_IN_WORK}", Hands._row),
    (rf"Knit a row of the flap {_ACROSS}", Hands._row),
    (rf"Hang a loop of the flap’s edge on needle (?P<joins>\d+)\. Knit {_ACROSS}", Hands._row),
]
