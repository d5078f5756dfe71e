"""A sock that is told in part: `pencil`."""

from typing import Literal, TypedDict


class Span(TypedDict):
    """From the least to the most of a count."""

    low: int
    high: int


class Pencil(TypedDict):
    """A sock that is told in part; `told` is what it stands on so far."""

    picture: str
    foot: Span
    told: list[Literal["foot", "cylinder", "fabric"]]
