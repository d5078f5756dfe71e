"""A set of instructions over sizes, and a plan made from one: the doors `set` and `adopt`."""

from typing import Any, Literal, TypedDict

from engine.answers.contract.plan import Amount
from engine.answers.contract.shown import Note, Part, Quantity, Units


class Heading(TypedDict):
    """A heading; `id` is unique in its document, for links to it."""

    kind: Literal["heading"]
    level: int
    id: str
    text: str


class Paragraph(TypedDict):
    """Some sentences; a `caution` is to be seen as one without color alone."""

    kind: Literal["text", "caution"]
    text: str


class Listing(TypedDict):
    """A list, numbered where it is `ordered`."""

    kind: Literal["list"]
    ordered: bool
    items: list[str]


class TableRow(TypedDict):
    """A row of a table: its own head, then a cell for each further column."""

    head: str
    cells: list[str]


class Table(TypedDict):
    """A table; the first of `head` stands over the heads of rows."""

    kind: Literal["table"]
    caption: str
    head: list[str]
    rows: list[TableRow]


class SchematicPath(TypedDict):
    """A path in mm: an outline, or the line of a measure."""

    kind: Literal["part", "measure"]
    d: str


class SchematicLetter(TypedDict):
    """A letter in its place, by its middle, in mm."""

    letter: str
    x: float
    y: float


class Schematic(TypedDict):
    """The sock from the side, its measures lettered; `text` says what is to be seen.

    The table after it says what the letters are in each size.
    """

    kind: Literal["schematic"]
    text: str
    width: float
    height: float
    letter_height: float
    paths: list[SchematicPath]
    letters: list[SchematicLetter]


Block = Heading | Paragraph | Listing | Table | Schematic


class Finished(TypedDict):
    """A washed sock, lying without stretch."""

    foot: Quantity
    girth: Quantity
    height: Quantity


class ColorNeeded(TypedDict):
    """One color of a pair, and the same with the margin."""

    name: str
    sections: list[str]
    needed: Amount
    with_margin: Amount


class YarnNeeded(TypedDict):
    """What a pair takes of yarn, in all and by color."""

    needed: Amount
    with_margin: Amount
    colors: list[ColorNeeded]


class SetSize(TypedDict):
    """One size of a set.

    `reason` says why the cylinder does not fit it, and what would; `slots` are those of the
    cylinder that would. What cannot be knitted on this one has no counts (None, and no parts).
    """

    label: str
    foot_length: Quantity
    ball_girth: Quantity
    fits: bool
    reason: str | None
    slots: int | None
    finished: Finished | None
    counts: list[Part]
    yarn: YarnNeeded | None
    how_sure: str


class SetDocument(TypedDict):
    """The instructions: all sizes in one, and one for each size in its order."""

    all_sizes: list[Block]
    one_size: list[list[Block]]


class InstructionSet(TypedDict):
    """A set of instructions over sizes, `by` a system or "length".

    `rows` hold its counts for a file, their head first; `link` opens it on another phone, None
    where it would be too long.
    """

    units: Units
    title: str
    by: str
    sizes: list[SetSize]
    document: SetDocument
    rows: list[list[str | int | float | None]]
    link: str | None
    notes: list[Note]


class Adopted(TypedDict):
    """A plan made from a set: the request for it, which tells its origin."""

    request: dict[str, Any]
