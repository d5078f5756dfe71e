"""Which fields a reader knows, found by letting it read: names cannot drift from what is read.

A `Listing` stands in for `Fields`. It is never blank, so that a reader that looks at one field only
where another was filled in looks at all; each reading is noted with its kind and gives something in
the middle of what makes sense. A list has one row, whose number is `ROW`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any, Literal, TypeVar

from engine.read.fields import Fields, Span

T = TypeVar("T")

ROW = "ROW"
Kind = Literal[
    "length", "yarn", "weight", "rate", "count", "number", "share", "yes or no", "choice", "text"
]


@dataclass
class Found:
    """What was read: kinds by dotted name, the most rows by list, and every name that is known."""

    kinds: dict[str, Kind] = field(default_factory=dict)
    rows: dict[str, int] = field(default_factory=dict)
    known: set[str] = field(default_factory=set)


@dataclass
class Listing(Fields):
    """A request in which every field is asked for and none is written."""

    found: Found = field(default_factory=Found)

    def _note(self, name: str, kind: Kind) -> None:
        self.found.kinds.setdefault(self.where(name), kind)

    def _inner(self, path: str) -> Listing:
        return Listing({}, path, self.system, found=self.found)

    def part(self, name: str) -> Listing:
        """Return the group at `name`."""
        return self._inner(self.where(name))

    def parts(self, name: str, most: int) -> list[Fields]:
        """Return one row of the list at `name`."""
        self.found.rows[self.where(name)] = most
        return [self._inner(self.where(f"{name}.{ROW}"))]

    def only(self, known: Iterable[str]) -> None:
        """Note every name that is known here."""
        self.found.known |= {self.where(name) for name in known}

    def blank(self, name: str) -> bool:
        """Nothing is."""
        return False

    def empty(self) -> bool:
        """It never is."""
        return False

    def text(self, name: str) -> str | None:
        """Note a field whose text is taken as it stands."""
        self._note(name, "text")
        return None

    def read(self, name: str, reader: Callable[[str], T]) -> T | None:
        """Note a field that a reader of its own understands."""
        self._note(name, "text")
        return None

    def length(self, name: str, span: Span, **_: Any) -> float:
        """Note a length."""
        self._note(name, "length")
        return _middle(span)

    def yarn(self, name: str, span: Span, **_: Any) -> float:
        """Note a length of yarn."""
        self._note(name, "yarn")
        return _middle(span)

    def grams(self, name: str, span: Span, **_: Any) -> float:
        """Note a weight of yarn."""
        self._note(name, "weight")
        return _middle(span)

    def rate(self, name: str, span: Span, **_: Any) -> float:
        """Note a count over a length."""
        self._note(name, "rate")
        return _middle(span)

    def count(self, name: str, span: Span, **_: Any) -> int:
        """Note a whole number."""
        self._note(name, "count")
        return int(_middle(span)) // 2 * 2

    def plain(self, name: str, span: Span, **_: Any) -> float:
        """Note a number without a unit."""
        self._note(name, "number")
        return _middle(span)

    def share(self, name: str, span: Span, **_: Any) -> float:
        """Note a share of one."""
        self._note(name, "share")
        return _middle(span)

    def flag(self, name: str) -> bool:
        """Note a yes or no."""
        self._note(name, "yes or no")
        return False

    def choice(self, name: str, choices: Iterable[str]) -> str:
        """Note one of several words."""
        self._note(name, "choice")
        return next(iter(choices))


def _middle(span: Span) -> float:
    return (span.low + span.high) / 2
