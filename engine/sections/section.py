"""What every section of a sock can tell: the one protocol behind which each construction stands.

A sock is a list of sections, from waste yarn to grafting. A section is one construction on one part
of it; it says what it is made of (`counts`, `asked`), what is done at the machine (`stages`, each
with its words and its operations), how large it comes out of a fabric (`size`) and how it is drawn
(`courses` and `strokes`). What it takes of rounds, rows, stitches and yarn the needle bed counts.

Everything else walks the list. A new construction is a file here and a line in `registry`.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable
from typing import Any, ClassVar, Literal, NamedTuple, get_args

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Operation
from engine.say import messages as say
from engine.say.message import Message

Part = Literal[
    "waste", "cuff", "leg", "heel", "foot", "before_toe", "toe", "end", "between", "finish"
]
Unit = Literal["rounds", "rows"]

TITLES: dict[Part, Message] = {part: say.part_title(part=part) for part in get_args(Part)}
# The names of a sock's open edges, by what they become.
TOP, TOE = "top", "toe"


class Row(NamedTuple):
    """One row of a pocket; needles are numbered from 1 at the left, as the knitter faces them.

    `back` are those that come back before it, `hold` those that are lifted after it; `joins` are
    those on which a loop of the heel flap's edge is hung before it.
    """

    number: int
    direction: Literal["right", "left"]
    back: tuple[int, ...]
    first: int
    last: int
    hold: tuple[int, ...]
    in_work: int
    joins: tuple[int, ...] = ()


class Do(NamedTuple):
    """One thing by hand; it `sets` tension or color, or `makes` the sock something it was not.

    Where it is several at one stop, they are the `ticks`, in order.
    """

    text: Message
    operations: tuple[Operation, ...]
    sets: str = ""
    makes: str = ""
    ticks: tuple[Message, ...] = ()


class Crank(NamedTuple):
    """Rounds, one after the other."""

    text: Message
    operations: tuple[Operation, ...]
    rounds: int


class Turn(NamedTuple):
    """One row of a pocket."""

    text: Message
    operations: tuple[Operation, ...]
    row: Row


Stage = Do | Crank | Turn


def gathered(text: Message, things: Iterable[Do]) -> Do:
    """Return things done at one stop as one, under a heading."""
    listed = tuple(things)
    operations = tuple(one for thing in listed for one in thing.operations)
    return Do(text, operations, ticks=tuple(thing.text for thing in listed))


def said(stage: Stage) -> tuple[Message, ...]:
    """Return the sentences of a stage, one for each thing that is done."""
    ticks = stage.ticks if isinstance(stage, Do) else ()
    return ticks or (stage.text,)


class Size(NamedTuple):
    """What a section is of a washed sock, in mm.

    `height` it adds above the floor and `sole` to the foot; `girth` is its own round about, relaxed
    (0 for what is not worn), `give` how far that stretches, `layers` how many lie on each other.
    """

    height: float
    sole: float
    girth: float
    give: float
    layers: int = 1


NOTHING = Size(0.0, 0.0, 0.0, 1.0, 0)


class Courses(NamedTuple):
    """The courses that a section is drawn with, one a round or row, in the order of knitting.

    `widths` has the share of the section's stitches that each is knitted on. Those of a pocket
    narrow for `turn` rows and widen again; they lie along its seam. `look` is what is seen of them:
    their stitches, the wales of a rib, or dashes where it is scrap or made by hand.
    """

    widths: tuple[float, ...]
    turn: int = 0
    look: Literal["stitches", "wales", "dashes"] = "stitches"


class Stroke(NamedTuple):
    """Lines drawn on a section, each from (x, y) to (x, y) in its own box.

    x is 0 at the back or the sole and 1 at the front or, in a pocket, at its seam; y is 0 before
    its first course and 1 after its last. `kind` is a class of the style sheet: two constructions
    differ by courses and strokes, never by color.
    """

    kind: Literal["fold", "wale"]
    lines: tuple[tuple[tuple[float, float], tuple[float, float]], ...]


class Section(ABC):
    """One section of a sock. Subclasses are frozen dataclasses, so that work can be kept by them.

    `part` is where it lies in a sock, `kind` what it is; `counted` tells whether the counts of a
    plan name it, being worn.
    """

    kind: ClassVar[str]
    counted: ClassVar[bool] = True
    part: Part
    rounds: int  # that the crank makes on the tube

    @property
    def sets(self) -> float | None:
        """Return the stitches per length over the foot's that it sets, None where they stay."""
        return None

    @property
    def sole(self) -> int:
        """Return how many rounds or rows of it lie along the sole."""
        return 0

    @property
    def by_hand(self) -> float:
        """Return how long in mm what is knitted on by hand lies along the sole."""
        return 0.0

    @property
    def count(self) -> tuple[int, Unit]:
        """Return how much of it is knitted, as a knitter counts it."""
        return self.rounds, "rounds"

    @property
    def figure(self) -> str:
        """Return the count as a card shows it."""
        return str(self.count[0])

    @abstractmethod
    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return what is done, in order; its last round ends at the gap `stop`, None for home."""

    @abstractmethod
    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return its size, where `cloth` is the fabric as this section is knitted."""

    def courses(self) -> Courses:
        """Return the courses it is drawn with: its rounds, unless it says otherwise."""
        return Courses((1.0,) * self.rounds)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return what is drawn on them; nothing on plain knit."""
        return ()

    @abstractmethod
    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its counts as a plan answers them."""

    @abstractmethod
    def asked(self) -> dict[str, Any]:
        """Return the fields of a request that ask for just this, {} where none do."""

    def begins(self, machine: Cylinder) -> int | None:
        """Return the gap where the carrier must stand before it, None where it need not."""
        return None


class Unworn(Section):
    """A section of which nothing is on the finished sock: without size and counts."""

    counted: ClassVar[bool] = False

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return nothing."""
        return NOTHING

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return none."""
        return {}

    def asked(self) -> dict[str, Any]:
        """Return nothing: no request asks for just this."""
        return {}


SEEN = 30  # needles drawn across the side that is seen: half of a usual cylinder


def upright(
    every: int, kind: Literal["fold", "wale"] = "wale", top: float = 0.0, end: float = 1.0
) -> tuple[Stroke, ...]:
    """Return a line along each nth of the wales that are seen, from `top` to `end`."""
    count = SEEN // every
    places = (i / count for i in range(1, count))
    return (Stroke(kind, tuple(((x, top), (x, end)) for x in places)),)
