"""What is printed or scanned: `card`, `tag`, `code`, `off_sheet`."""

from typing import TypedDict

from engine.answers.contract.shown import Fact


class CardPart(TypedDict):
    """A part of the card, with the rounds or rows that its boxes end with."""

    title: str
    figure: str
    words: str
    boxes: list[int]


class Card(TypedDict):
    """What a card to knit from says; `code_words` tell why there is no code.

    `drawing` is the sock alone, without a word.
    """

    title: str
    drawing: str
    socks: list[str]
    parts: list[CardPart]
    bands: list[str]
    facts: list[Fact]
    code: str | None
    code_words: str


class Tag(TypedDict):
    """What goes with a finished pair."""

    facts: list[Fact]
    drawing: str | None
    code: str | None
    code_words: str
    caution: str


class OffSheet(TypedDict):
    """What a measuring sheet says of a foot, by the fields of a request."""

    fields: dict[str, str]


class Code(TypedDict):
    """A link as a square code."""

    svg: str
    version: int
    across: int
