"""A table over sizes: the door `chart`."""

from typing import TypedDict

from engine.answers.contract.shown import Quantity


class ChartRow(TypedDict):
    """A foot of the table; None where heel and toe alone are longer."""

    label: str
    length: Quantity
    rounds: list[int | None]


class OwnRow(ChartRow):
    """The row of this very foot, to stand before the row `at`."""

    at: int


class OwnColumn(TypedDict):
    """The column of this fabric, or the nearest to it."""

    at: int
    exact: bool


class Chart(TypedDict):
    """A table over sizes; `cells` hold it for a file, its head first."""

    title: str
    by: str
    head: str
    columns: list[Quantity]
    rows: list[ChartRow]
    taken: dict[str, str]
    own: OwnRow | None
    column: OwnColumn | None
    assumptions: list[str]
    cells: list[list[str | int | None]]
