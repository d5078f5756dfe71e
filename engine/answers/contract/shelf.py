"""A shelf, ranked: the door `shelf`."""

from typing import Any, Literal, NotRequired, TypedDict

from engine.answers.contract.shown import Level, Note, Quantity


class Reason(TypedDict):
    """How a place of a candidate would be felt."""

    place: str
    title: str
    value: float
    level: Level
    verdict: str
    words: str
    discomfort: float


class EnoughHere(TypedDict):
    """Whether the yarn that is there makes the pair."""

    level: Literal["yes", "maybe", "no"]
    words: str


class Candidate(TypedDict):
    """A cylinder with a yarn at a mark; `choose` holds the groups of a request that adopt it."""

    rank: int
    slots: int
    cylinder: str | None
    yarn: str
    mark: str | None
    left: Quantity | None
    enough: EnoughHere | None
    standing: Literal["fits", "worn", "not"]
    verdict: str
    score: float
    lacks: str | None
    swatch_first: bool
    stitches: Quantity
    rounds: Quantity
    tube: Quantity
    ball: Quantity
    reasons: list[Reason]
    choose: dict[str, Any]


class Wanted(TypedDict):
    """What would fit."""

    words: str
    slots: NotRequired[int]
    yarn: NotRequired[str]
    mark: NotRequired[str]
    stitches: NotRequired[Quantity]
    rounds: NotRequired[Quantity]


class Shelf(TypedDict):
    """A shelf, ranked: the `best` of all, and the best of each of the `yarns`."""

    words: str
    fits: bool
    tried: int
    best: list[Candidate]
    yarns: list[Candidate]
    wanted: list[Wanted]
    assumptions: list[str]
    notes: list[Note]
