"""The foot as it is known, and how a sock fits it."""

from typing import Literal, NotRequired, TypedDict

from engine.answers.contract.shown import Level, Note, Quantity

_Whence = TypedDict("_Whence", {"from": Literal["measured", "estimated"]})


class Measure(Quantity, _Whence):
    """A measure of the foot with its middle 80 %."""

    low: float
    high: float
    range_text: str
    words: str


class Place(_Whence):
    """The fit at one place; `stretch` is body over fabric.

    `chance` is how likely the verdict is right, and `sure` how it may be said for that; `offers` is
    the kind of leg that one choice would make of it.
    """

    place: str
    title: str
    body: Quantity
    fabric: Quantity
    stretch: float
    level: Level
    verdict: str
    sure: Literal["plain", "likely", "open"]
    chance: float
    offers: NotRequired[Literal["shaped", "plain"]]
    words: str


class FootAlone(TypedDict):
    """What the foot tells before there is a plan."""

    measures: dict[str, Measure]
    notes: list[Note]
