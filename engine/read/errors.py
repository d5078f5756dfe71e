"""The one way this calculator says no.

Whatever comes in, the calculator either answers or raises `Refused`, which carries every problem it
found at once. A problem names the field of the request, says what is wrong in a sentence, and says
what to do about it in another. Code that reads one piece of text raises `Unreadable`; `fields`
turns that into a problem beside its field, so `Unreadable` never leaves the calculator.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from itertools import islice
from typing import Any

from engine.say import messages as say
from engine.say.message import Message

SHOWN_MOST = 60  # as many as all fields of the page; whoever sends more sent no form


@dataclass(frozen=True)
class Problem:
    """One thing wrong with a request: dotted `field` ("" is the whole), `message`, `way_out`.

    `offers` are texts that would mend it when written into the field.
    """

    field: str
    message: Message
    way_out: Message
    offers: tuple[str, ...] = ()

    def as_dict(self, with_offers: bool = False) -> dict[str, Any]:
        """Return the problem as the answer shows it."""
        shown = {"field": self.field, "message": self.message, "way_out": self.way_out}
        return {**shown, "offers": list(self.offers)} if with_offers else shown


def shown(problems: Collection[Problem], with_offers: bool = False) -> list[dict[str, Any]]:
    """Return problems as an answer shows them: the first `SHOWN_MOST`, and how many more."""
    told = [problem.as_dict(with_offers) for problem in islice(problems, SHOWN_MOST)]
    more = len(problems) - len(told)
    if more:
        rest = Problem("", say.more_wrong(more=more), say.fix_these_first())
        told.append(rest.as_dict(with_offers))
    return told


class Refused(Exception):
    """Raised with every problem of a request, in the order of its fields."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        """Keep the problems; there is at least one."""
        self.problems = tuple(problems)
        super().__init__("; ".join(f"{p.field}: {p.message}" for p in self.problems))

    def as_dict(self, with_offers: bool = False) -> dict[str, list[dict[str, Any]]]:
        """Return `{"errors": [...]}`; a page also wants what could be written instead."""
        return {"errors": shown(self.problems, with_offers)}


class Unreadable(ValueError):
    """Raised by a reader of text: `message` says what is wrong, `way_out` what to write instead.

    `offers` are texts that could have been meant.
    """

    def __init__(self, message: Message, way_out: Message, offers: tuple[str, ...] = ()) -> None:
        """Keep both sentences and the offers."""
        super().__init__(message)
        self.message = message
        self.way_out = way_out
        self.offers = offers
