"""A plan with what is kept of it, and what becomes of that: `page`, `again`, `used`, `open`."""

from typing import Any, NotRequired, TypedDict

from engine.answers.contract.plan import Plan
from engine.answers.contract.shown import Fact, PartName, Quantity


class Counted(TypedDict):
    """What is kept of a sock's counts: the version that counted, by part, and for what."""

    engine: str
    figures: dict[str, str]
    facts: list[Fact]


class Page(TypedDict):
    """A plan with its picture and links; `counts_link` holds no person, None where it cannot.

    The picture is in pieces to be joined: markup at each even place, words at each odd one; `bare`
    is the sock alone, without a word.
    """

    plan: Plan
    picture: list[str]
    bare: str
    link: str
    counts_link: str | None
    link_with_record: str | None
    counts_link_with_record: str | None
    counts_link_words: str
    counted: Counted


class Moved(TypedDict):
    """A count that is another by now."""

    part: PartName
    title: str
    then: str
    now: str


class Again(TypedDict):
    """What is counted otherwise by now; no words where nothing is."""

    engine: str
    moved: list[Moved]
    words: str


class OffTheShelf(TypedDict):
    """A yarn of the shelf before and after a sock."""

    row: int
    name: str
    left: Quantity
    after: str
    likely: bool


class Used(TypedDict):
    """What a sock took off the shelf."""

    takes: Quantity
    yarns: list[OffTheShelf]


class Sent(TypedDict):
    """Five counts as a sender's phone counted them: the figures by part."""

    slots: int
    figures: dict[str, str]
    two: bool


class Opened(TypedDict):
    """What a link holds; older ones bring no counts."""

    request: dict[str, Any]
    sent: NotRequired[Sent]
    set: NotRequired[dict[str, Any]]


class CameOut(TypedDict):
    """One finished sock; `off` and the ends of what was `promised` are shares of the planned."""

    name: str
    day: str
    planned: Quantity
    low: Quantity
    high: Quantity
    measured: Quantity
    off: float
    promised: list[float]
    held: bool
    words: str


class KnittedRecord(TypedDict):
    """How finished socks came out; `cells` hold it for a file, its head first."""

    rows: list[CameOut]
    held: int
    left_out: int
    words: list[str]
    cells: list[list[str | int | None]]


class OfSide(TypedDict):
    """Her scatter (relative), the degrees of freedom of it, a sock over its swatch, and its sd."""

    scatter: float
    weight: float
    habit: float
    habit_sd: float


class Knitter(TypedDict):
    """What finished pairs taught of a knitter, as a request carries it."""

    pairs: int
    stitches: OfSide
    rounds: OfSide


class OfKnitter(TypedDict):
    """What of her finished pairs a plan reckons with; None where they are too few."""

    knitter: Knitter | None
    pairs: int
