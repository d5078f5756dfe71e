"""What the maker says of her instructions: their name, whose they are, and where faults are told.

All of it may be left out. It is kept as it was written, but for characters that turn the direction
of the words around them.
"""

from __future__ import annotations

from typing import Literal, NamedTuple, get_args

from engine.read.fields import Fields
from engine.read.quoted import plain
from engine.say import messages as say

Name = Literal["title", "maker", "version", "date", "licence", "contact", "errata", "fibre"]
NAMES: tuple[Name, ...] = get_args(Name)
LONGEST, LONGEST_NOTES = 200, 4000  # letters


class Details(NamedTuple):
    """The maker's own words by `NAMES`, "" where nothing was told; `notes` by paragraph."""

    told: dict[Name, str]
    notes: tuple[str, ...]


def read(fields: Fields) -> Details:
    """Return the details of a set; what is too long is noted in its fields."""
    fields.only((*NAMES, "notes"))
    told = {name: plain(_text(fields, name, LONGEST)) for name in NAMES}
    notes = _text(fields, "notes", LONGEST_NOTES)
    paragraphs = (plain(line).strip() for line in notes.splitlines())
    return Details(told, tuple(line for line in paragraphs if line))


def _text(fields: Fields, name: str, most: int) -> str:
    text = (fields.text(name) or "").strip()
    if len(text) > most:
        fields.refuse(name, say.name_too_long(), say.so_many_letters(most=str(most)))
        return ""
    return text
