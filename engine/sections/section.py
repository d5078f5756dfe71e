"""What every section of a sock can tell: the one protocol behind which each construction stands.

A sock is a list of sections, from waste yarn to grafting. A section is one construction on one part
of it; it says what it is made of (`counts`, `asked`), what is done at the machine (`stages`, each
with its words and its operations), how large it comes out of a fabric (`size`) and how it is drawn
(`strokes`). What it takes of rounds, rows, stitches and yarn the needle bed counts.

Everything else walks the list. A new construction is a file here and a line in `registry`.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Any, ClassVar, Literal, NamedTuple

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Operation

Part = Literal["waste", "cuff", "leg", "heel", "foot", "toe", "end", "finish"]
Unit = Literal["rounds", "rows"]

TITLES: dict[Part, str] = {
    "waste": "Waste yarn",
    "cuff": "Cuff",
    "leg": "Leg",
    "heel": "Heel",
    "foot": "Foot",
    "toe": "Toe",
    "end": "After the toe",
    "finish": "Off the machine",
}
# The names of a sock's open edges, by what they become.
TOP, TOE = "top", "toe"


class Row(NamedTuple):
    """One row of a pocket; needles are numbered from 1 at the left, as the knitter faces them.

    `back` are those that come back before it, `hold` those that are lifted after it.
    """

    number: int
    direction: Literal["right", "left"]
    back: tuple[int, ...]
    first: int
    last: int
    hold: tuple[int, ...]
    in_work: int


class Do(NamedTuple):
    """One thing by hand; it `sets` the tension, or `makes` the sock something it was not."""

    text: str
    operations: tuple[Operation, ...]
    sets: str = ""
    makes: str = ""


class Crank(NamedTuple):
    """Rounds, one after the other."""

    text: str
    operations: tuple[Operation, ...]
    rounds: int


class Turn(NamedTuple):
    """One row of a pocket."""

    text: str
    operations: tuple[Operation, ...]
    row: Row


Stage = Do | Crank | Turn


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


class Stroke(NamedTuple):
    """Lines drawn on a section, each from (x, y) to (x, y) in its own box.

    The box of a piece of tube is 1 wide from back to front and 1 high from its upper edge down; a
    pocket's lies along its seam, x from 0 at the seam's outer end to 1. `kind` is a class of the
    style sheet: two constructions differ by their strokes, never by colour.
    """

    kind: Literal["fold", "hatch", "seam"]
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

    @abstractmethod
    def strokes(self) -> tuple[Stroke, ...]:
        """Return how it is drawn; plain tube is the bare outline."""

    @abstractmethod
    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its counts as a plan answers them."""

    @abstractmethod
    def asked(self) -> dict[str, Any]:
        """Return the fields of a request that ask for just this, {} where none do."""

    def begins(self, machine: Cylinder) -> int | None:
        """Return the gap where the carrier must stand before it, None where it need not."""
        return None


def said(rounds: int) -> str:
    """Return a number of rounds in words."""
    return f"{rounds} round" if rounds == 1 else f"{rounds} rounds"


def hatched(count: int) -> tuple[Stroke, ...]:
    """Return upright lines that part a piece of tube into `count` ribs."""
    return (Stroke("hatch", tuple(((i / count, 0), (i / count, 1)) for i in range(1, count))),)
