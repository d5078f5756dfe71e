"""Instructions as plain text, for a terminal: 78 columns, nothing told by its looks alone.

Headings are underlined, steps are numbered, and what goes on in a next line is indented. A table
that is wider than a line is written row by row, each cell behind its head.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from textwrap import wrap
from typing import Any

from engine.say import aloud
from engine.say import messages as say

_WIDTH = 78
_LINES = {1: "=", 2: "-", 3: "."}  # under a heading of that level


def write(blocks: Iterable[Mapping[str, Any]], language: str = "en") -> str:
    """Return blocks, as the door `set` answers them, as lines of text in a language."""
    found = (_block(aloud.aloud(block, language), language) for block in blocks)
    return "\n\n".join("\n".join(lines) for lines in found) + "\n"


def _block(block: Mapping[str, Any], language: str) -> Iterator[str]:
    match block["kind"]:
        case "heading":
            title = _folded(block["text"])
            yield from title
            if block["level"] in _LINES:
                yield _LINES[block["level"]] * max(map(len, title))
        case "caution":
            yield from _folded(aloud.text(say.set_caution(words=block["text"]), language))
        case "list":
            numbered = block["ordered"]
            for at, item in enumerate(block["items"], start=1):
                yield from _folded(item, f"{at}. " if numbered else "- ")
        case "table":
            yield from _table(block)
        case "text" | "schematic":
            yield from _folded(block["text"])
        case other:
            raise ValueError(f"no such block: {other}")


def _folded(text: str, first: str = "") -> list[str]:
    """Return a text in lines; all but the first, which begins so, are indented under it."""
    folded = wrap(text, _WIDTH - len(first), break_long_words=False, break_on_hyphens=False)
    return [f"{' ' * len(first) if at else first}{line}" for at, line in enumerate(folded or [""])]


def _table(table: Mapping[str, Any]) -> Iterator[str]:
    yield from _folded(f"{table['caption']}:")
    rows = [[row["head"], *row["cells"]] for row in table["rows"]]
    wide = [max(map(len, column)) for column in zip(table["head"], *rows, strict=True)]
    if sum(wide) + 2 * len(wide) <= _WIDTH:
        for row in (table["head"], *rows):
            cells = (cell.ljust(width) for cell, width in zip(row, wide, strict=True))
            yield "  ".join(cells).rstrip()
        return
    for row in rows:
        named = zip(table["head"], row, strict=True)
        yield from _folded("; ".join(f"{name}: {cell}" for name, cell in named), "- ")
