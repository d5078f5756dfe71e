"""One sock as the counter follows it: the door `knit`."""

from typing import Literal, NotRequired, TypedDict

from engine.answers.contract.kept import Counted
from engine.answers.contract.plan import OffMachine, Pair
from engine.answers.contract.shown import Note, Part, PartName


class PocketPlace(TypedDict):
    """A heel or toe on the cylinder; `first_slot` is its needle 1, from the left half mark."""

    needles: int
    first_slot: int
    left: int
    rows: int


class _Due(TypedDict):
    part: PartName | Literal["waste", "between", "finish"]
    title: str
    text: str
    tension: NotRequired[str]


class KnitDo(_Due):
    """One thing by hand; `makes` is how far the sock is once it is done."""

    kind: Literal["do"]
    sets: NotRequired[Literal["tension", "color"]]
    makes: NotRequired[Literal["grafted", "washed"]]
    ticks: NotRequired[list[str]]


class KnitRounds(_Due):
    """Rounds of the whole tube."""

    kind: Literal["rounds"]
    rounds: int


class KnitRow(_Due):
    """One row of heel or toe; needles are numbered from 1 in the pocket."""

    kind: Literal["row"]
    row: int
    direction: Literal["right", "left"]
    half: Literal["narrow", "widen"]
    back: int | list[int] | None
    knits: list[int]
    hold: int | list[int] | None
    in_work: int
    back_where: str | None
    hold_where: str | None
    joins: NotRequired[int]
    joins_where: NotRequired[str]
    remind: list[str]


KnitStep = KnitDo | KnitRounds | KnitRow


class DrawnCloth(TypedDict):
    """A piece of the drawn sock: its `courses` from the first of its `rows` on, in mm.

    A course is a quadratic Bezier, six numbers.
    """

    part: PartName | Literal["waste", "between", "finish"]
    rows: int
    dashes: bool
    courses: list[list[int]]


class Drawing(TypedDict):
    """The sock from the side, to be filled; `box` is left, top, width and height."""

    box: list[int]
    cloth: list[DrawnCloth]


class Knit(TypedDict):
    """One sock as the counter follows it; older ones that are kept lack `drawing` or `origin`."""

    slots: int
    every: int | None
    half_marks: str
    pockets: dict[str, PocketPlace]
    parts: list[Part]
    words: str
    origin: NotRequired[str]
    foot_rounds: int
    pair: Pair | None
    off_machine: OffMachine | None
    notes: list[Note]
    steps: list[KnitStep]
    second: NotRequired[list[KnitStep]]
    drawing: NotRequired[Drawing]
    counted: Counted
