"""The one way this calculator says no.

Whatever comes in, the calculator either answers or raises `Refused`, which carries every problem it
found at once. A problem names the field of the request, says what is wrong in a sentence, and says
what to do about it in another. Code that reads one piece of text raises `Unreadable`; `fields`
turns that into a problem beside its field, so `Unreadable` never leaves the calculator.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Problem:
    """One thing wrong with a request: dotted `field` ("" is the whole), `message`, `way_out`."""

    field: str
    message: str
    way_out: str

    def as_dict(self) -> dict[str, str]:
        """Return the problem as the answer shows it."""
        return {"field": self.field, "message": self.message, "way_out": self.way_out}


class Refused(Exception):
    """Raised with every problem of a request, in the order of its fields."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        """Keep the problems; there is at least one."""
        self.problems = tuple(problems)
        super().__init__("; ".join(f"{p.field}: {p.message}" for p in self.problems))

    def as_dict(self) -> dict[str, list[dict[str, str]]]:
        """Return `{"errors": [...]}`."""
        return {"errors": [problem.as_dict() for problem in self.problems]}


class Unreadable(ValueError):
    """Raised by a reader of text: `message` says what is wrong, `way_out` what to write instead."""

    def __init__(self, message: str, way_out: str) -> None:
        """Keep both sentences."""
        super().__init__(message)
        self.message = message
        self.way_out = way_out
