"""A set as a link: the maker's sock and gauge, the sizes, and whose it is.

What a reader's phone plans from it is counted there. Notes, contact and yarn stay behind, and more
of the maker's words where they would make it too long for a code that every phone reads.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import link
from engine.instructions.adopted import of_maker
from engine.instructions.details import Name
from engine.instructions.pattern import Pattern
from engine.instructions.sizes import of_nobody

LONGEST = 400  # bytes of a link, without the address before it
# What goes along of the maker's words, from all to the least that says whose it is.
_WORDS: tuple[tuple[Name, ...], ...] = (
    ("title", "maker", "version", "date", "licence", "errata"),
    ("title", "maker", "version", "licence"),
    ("title", "maker", "version"),
)


def write(pattern: Pattern, request: Mapping[str, Any], wanted: Mapping[str, Any]) -> str | None:
    """Return the link (without `#`) of a set made from `request`, None where none is short enough.

    `wanted` are its `by` and `sizes`, as `sizes.read` has them.
    """
    kept = {name: value for name, value in of_nobody(request).items() if name != "knitter"}
    fabric = of_maker(request, pattern.any_size)
    asked = {name: wanted[name] for name in ("by", "sizes") if name in wanted}
    for names in _WORDS:
        details = {name: pattern.details.told[name] for name in names}
        text = link.write_set({**kept, "fabric": fabric}, {**asked, "details": details})
        if len(text) <= LONGEST:
            return text
    return None
