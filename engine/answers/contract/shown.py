"""What any answer may show: quantities, notes, facts, and what is in the way."""

from typing import Literal, NotRequired, TypedDict

Units = Literal["cm", "in"]
Level = Literal["good", "loose", "tight", "bad", "apart"]
PartName = Literal["cuff", "leg", "heel", "foot", "before_toe", "toe", "end"]


class Problem(TypedDict):
    """What is wrong at a field, and the way out; `offers` are texts that would mend it."""

    field: str
    message: str
    way_out: str
    offers: NotRequired[list[str]]


class Note(TypedDict):
    """A question or remark, beside a field where it has one."""

    field: str | None
    text: str


class Quantity(TypedDict):
    """A figure with its unit, in words of both systems."""

    value: float
    unit: str
    text: str
    other: str


class Reach(TypedDict):
    """The middle 80 % of a count."""

    low: int
    high: int
    words: str


class Part(TypedDict):
    """What is knitted in a part, and how much of it; `figure` as a card shows it."""

    part: PartName
    title: str
    count: int
    unit: Literal["rounds", "rows"]
    figure: str
    detail: str


class Fact(TypedDict):
    """A name and its text, "" where it is written in by hand."""

    name: str
    text: str


class Refusal(TypedDict):
    """What any door answers where something is in the way."""

    errors: list[Problem]
