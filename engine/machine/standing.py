"""How a machine stands between two operations, and the one way to say that it cannot go on.

Sets of needles are whole numbers, bit s for slot s: small, quick, and equal for equal needles.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from engine.machine.cylinder import Cylinder, Side
from engine.machine.operations import WASTE, Needles

Why = Literal[
    "no-needle-is-named",
    "needle-is-not-on-this-cylinder",
    "needle-is-named-twice",
    "count-is-below-one",
    "yarn-is-in-the-carrier-already",
    "yarn-changes-within-a-pocket",
    "edge-has-no-name",
    "edge-is-named-where-nothing-opens",
    "edge-was-named-before",
    "edge-is-not-open",
    "no-yarn-in-the-carrier",
    "no-thread-runs-along",
    "cast-on-is-not-of-scrap",
    "cast-on-over-loops",
    "round-over-held-needles",
    "round-over-an-empty-needle",
    "round-with-the-heel-spring-on",
    "round-without-the-weight-on-the-tube",
    "carrier-is-not-where-a-round-begins",
    "carrier-would-stop-at-the-wrong-side",
    "carrier-is-elsewhere",
    "row-outside-a-pocket",
    "row-while-the-ribber-knits",
    "row-without-the-weight-on-the-pocket",
    "row-starts-where-the-carrier-is-not",
    "row-over-a-held-needle",
    "row-over-a-needle-out-of-work",
    "row-over-an-empty-needle",
    "row-misses-a-needle-in-work",
    "hold-of-a-needle-not-in-work",
    "hold-of-every-needle",
    "hold-while-the-ribber-knits",
    "hold-leaves-needles-apart",
    "hold-away-from-the-carrier",
    "hold-of-a-needle-that-did-not-knit-last",
    "return-of-a-needle-not-held",
    "return-beside-the-carrier",
    "return-of-a-needle-not-innermost",
    "needle-out-with-its-stitch",
    "needle-is-not-in-work",
    "needle-is-not-out",
    "no-stitch-beside-the-needle",
    "no-stitch-on-the-needle",
    "needles-are-not-neighbours",
    "stitch-onto-an-empty-needle",
    "stitch-moved-within-a-pocket",
    "no-ribber",
    "ribber-off-with-stitches-on-it",
    "ribber-needle-is-taken",
    "needle-has-a-stitch-already",
    "no-stitch-on-the-ribber",
    "edge-hung-on-another-number-of-needles",
    "edge-hung-with-the-weight-on",
    "edge-hung-before-it-can-fold",
    "nothing-on-the-needles",
    "live-stitches-would-run",
    "scrap-drawn-up",
    "stitches-on-the-ribber",
    "needles-in-hold",
    "yarn-is-not-cut",
    "still-on-the-needles",
    "edges-do-not-pair",
    "no-scrap-to-pull-out",
    "cord-beside-live-stitches",
    "no-cord-to-pull-out",
    "socks-are-unlike",
    "socks-hang-together",
    "scrap-out-of-an-open-edge",
    "edge-hung-with-stitches-on-the-ribber",
    "edge-is-open",
    "scrap-is-in-the-sock",
    "thread-runs-along-already",
]


class Refusal(NamedTuple):
    """What is impossible, about which needles (slots), of which name; `at` counts operations."""

    why: Why
    needles: Needles = ()
    name: str = ""
    at: int = 0


class CannotBeDone(Exception):
    """Raised with the `Refusal` of what no machine can do."""

    def __init__(self, why: Why, needles: int = 0, name: str = "", at: int = 0) -> None:
        """Keep the refusal; `needles` as bits by slot."""
        self.refusal = Refusal(why, slots_of(needles), name, at)
        super().__init__(f"operation {at}: {why} {name}{self.refusal.needles or ''}")


class Edge(NamedTuple):
    """An open round of `loops`, and the `rounds` since, as far as they matter."""

    name: str
    loops: int
    rounds: int = 0


class Standing(NamedTuple):
    """How a machine stands; sets of needles are bits by slot."""

    slots: int
    side: Side
    work: int  # in work, with a stitch or without
    held: int = 0
    loops: int = 0  # cylinder needles with a stitch
    catching: int = 0  # emptied in work: the next round makes a stitch there
    ribs: int = 0  # stitches on the ribber, by the slot they face
    ribber: Literal["off", "idle", "knits"] = "off"
    at: int = 0  # the carrier's gap
    knitted: int | None = None  # the slot that a row ended with, until a needle is held
    yarn: str | None = None  # in the carrier
    on: str | None = None  # of the loops on the needles
    along: str | None = None
    tighter: float = 1.0
    weight: Literal["tube", "pocket"] | None = None
    spring: bool = False
    edges: tuple[Edge, ...] = ()
    names: tuple[str, ...] = ()  # of all edges there were
    set_up: int | None = None  # rounds of the newest edge's set-up; None where there is none
    scrap: bool = False  # some is to be pulled out
    below: tuple[tuple[Edge, ...], ...] = ()  # the open edges of each sock below a ravel cord

    @property
    def home(self) -> int:
        """Return the gap where rounds are counted."""
        return home(self.slots, self.side)

    @property
    def knitting(self) -> int:
        """Return the slots at which a round makes a stitch, on either bed."""
        return self.work | self.ribs if self.ribber == "knits" else self.work

    @property
    def in_work(self) -> int:
        """Return how many needles of the cylinder are in work."""
        return self.work.bit_count()


def home(slots: int, side: Side) -> int:
    """Return the gap where rounds begin on a machine with its carrier at `side`."""
    return 0 if side == "left" else slots // 2


def bare(machine: Cylinder) -> Standing:
    """Return a machine before anything is done: every needle in work, no yarn."""
    slots, side = machine.slots, machine.carrier
    return Standing(slots, side, (1 << slots) - 1, at=home(slots, side))


def on_waste(machine: Cylinder) -> Standing:
    """Return a machine that holds the waste yarn on which another sock has ended."""
    start = bare(machine)
    return start._replace(
        loops=start.work, on=WASTE, yarn=WASTE, weight="tube", scrap=True, below=((),)
    )


def left_behind(standing: Standing) -> Refusal | None:
    """Return what a sock that should be done has left behind, None where there is nothing."""
    if stitches := standing.loops | standing.ribs:
        return Refusal("still-on-the-needles", slots_of(stitches))
    if standing.below:
        return Refusal("socks-hang-together")
    if standing.edges:
        return Refusal("edge-is-open", name=standing.edges[0].name)
    return Refusal("scrap-is-in-the-sock") if standing.scrap else None


def named(standing: Standing, needles: Needles) -> int:
    """Return needles as bits; `CannotBeDone` where they are none, unknown or named twice."""
    found = 0
    for slot in needles:
        if not 0 <= slot < standing.slots:
            raise CannotBeDone("needle-is-not-on-this-cylinder", name=str(slot))
        if found >> slot & 1:
            raise CannotBeDone("needle-is-named-twice", 1 << slot)
        found |= 1 << slot
    if not found:
        raise CannotBeDone("no-needle-is-named")
    return found


def slots_of(needles: int) -> Needles:
    """Return the slots of bits, from the lowest."""
    return tuple(slot for slot in range(needles.bit_length()) if needles >> slot & 1)


def stretch(slots: int, first: int, length: int) -> int:
    """Return the bits of `length` slots from `first` rightwards, round the cylinder."""
    whole = ((1 << length) - 1) << first % slots
    return (whole | whole >> slots) & ((1 << slots) - 1)


def refuse(why: Why, needles: int, name: str = "") -> None:
    """Raise `CannotBeDone` where there are any such needles."""
    if needles:
        raise CannotBeDone(why, needles, name)
