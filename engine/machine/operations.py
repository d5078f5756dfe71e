"""What a hand or the crank does at the machine, as plain data: a closed set.

Slots count from 0 at the left half mark, rightwards over the front half and on round the back.
Gap g lies to the left of slot g; the yarn carrier stands in a gap. A round is counted at the gap of
the carrier's own half mark (`home`): gap 0 and rightwards where the carrier is at the left, gap N/2
and leftwards where it is at the right (N slots).

`needle_bed` runs them. Names of yarns are the sock's own ("main"), but for `SCRAP`, which is pulled
out again. An *edge* is a round of loops that would run once the scrap beside it is pulled out; it
has a name from the moment the yarn changes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

Needles = tuple[int, ...]  # slots, each once, in no order that matters

MAIN, WASTE, CORD = "main", "waste", "ravel cord"
SCRAP = frozenset({WASTE, CORD})
REINFORCING = "reinforcing"


@dataclass(frozen=True)
class Yarn:
    """Thread the carrier with another yarn.

    `edge` names the round of loops on the needles where the change is between scrap and sock.
    """

    name: str
    edge: str | None = None


@dataclass(frozen=True)
class Cut:
    """Cut the yarn in the carrier."""


@dataclass(frozen=True)
class Along:
    """Run a second thread along with the yarn, or, with None, take it out."""

    thread: str | None


@dataclass(frozen=True)
class CastOn:
    """Loop scrap yarn over every needle in work."""


@dataclass(frozen=True)
class Rounds:
    """Crank `count` rounds, counted at home.

    The carrier then stands at home or, where a pocket comes next, at the gap `stop`, some needles
    before or past it.
    """

    count: int
    stop: int | None = None


@dataclass(frozen=True)
class Stand:
    """See that the carrier stands in gap `at`; nothing moves."""

    at: int


@dataclass(frozen=True)
class Row:
    """Crank one row of a pocket from slot `first` to slot `last`, both included."""

    goes: Literal["right", "left"]
    first: int
    last: int


@dataclass(frozen=True)
class Hold:
    """Lift needles out of the cams' reach, with their stitches."""

    needles: Needles


@dataclass(frozen=True)
class Return:
    """Put held needles back in work."""

    needles: Needles


@dataclass(frozen=True)
class TakeOut:
    """Take empty needles out of work."""

    needles: Needles


@dataclass(frozen=True)
class PutIn:
    """Put needles in work, each with a loop lifted from a stitch beside it."""

    needles: Needles


@dataclass(frozen=True)
class Move:
    """Move stitches (from, to) onto the needle beside.

    The emptied needle stays in work and catches the next round, or goes out of work.
    """

    stitches: tuple[tuple[int, int], ...]
    leave: Literal["empty", "out"]


@dataclass(frozen=True)
class Transfer:
    """Move stitches to the ribber's needles that face these slots, or back from them.

    A cylinder needle is out of work while its stitch is on the ribber.
    """

    needles: Needles
    to: Literal["ribber", "cylinder"]


@dataclass(frozen=True)
class Ribber:
    """Take the ribber off, or set it on: to knit, or idle, its stitches waiting."""

    state: Literal["off", "idle", "knits"]


@dataclass(frozen=True)
class Hang:
    """Lift the loops of an edge onto needles, one each."""

    edge: str
    needles: Needles


@dataclass(frozen=True)
class Lift:
    """Lift the strand beside each of these needles onto it, against a hole at a corner."""

    needles: Needles


@dataclass(frozen=True)
class Tension:
    """Set the stitch: `tighter` is its stitches per length over the foot's, `mark` the screw's."""

    tighter: float
    mark: float | None = None


@dataclass(frozen=True)
class Weight:
    """Hang the weight on the whole tube or on a pocket, or take it off."""

    on: Literal["tube", "pocket"] | None


@dataclass(frozen=True)
class Spring:
    """Set the heel spring, which takes up the slack of the turns, or clear it."""

    on: bool


@dataclass(frozen=True)
class Gather:
    """Take every stitch onto a thread."""


@dataclass(frozen=True)
class CrankOff:
    """Crank the fabric off the needles, with no yarn in the carrier."""


@dataclass(frozen=True)
class PullCord:
    """Pull every ravel cord out: the socks of a string come apart.

    What is done at the table from then on is done to each of them.
    """


@dataclass(frozen=True)
class BindOff:
    """Bind off an edge by hand."""

    edge: str


@dataclass(frozen=True)
class Graft:
    """Graft an edge folded flat, or two edges to each other, loop to loop."""

    edges: tuple[str, ...]


@dataclass(frozen=True)
class KnitOn:
    """Take an edge on needles, and knit and close it by hand."""

    edge: str


@dataclass(frozen=True)
class Ravel:
    """Pull all scrap out."""


@dataclass(frozen=True)
class Table:
    """Do what needs no machine: draw a thread up; darn in the ends; wash and dry."""

    what: Literal["draw up", "darn", "wash"]


Operation = (
    Yarn
    | Cut
    | Along
    | CastOn
    | Rounds
    | Stand
    | Row
    | Hold
    | Return
    | TakeOut
    | PutIn
    | Move
    | Transfer
    | Ribber
    | Hang
    | Lift
    | Tension
    | Weight
    | Spring
    | Gather
    | CrankOff
    | PullCord
    | BindOff
    | Graft
    | KnitOn
    | Ravel
    | Table
)


def named(operation: Operation) -> dict[str, Any]:
    """Return an operation as JSON takes it: `op`, its name, and its fields."""
    return {"op": _NAMES[type(operation)], **vars(operation)}


def _spelt(kind: type) -> str:
    """Return a class's name in lower case, its words parted."""
    return "".join(f" {letter.lower()}" if letter.isupper() else letter for letter in kind.__name__)


_NAMES = {kind: _spelt(kind).strip() for kind in Operation.__args__}
