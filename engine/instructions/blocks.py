"""The few kinds of block that instructions are made of, whatever shows them.

They are plain data, as `engine.answers.contract.instructions` has them. Words are messages, or a
person's own; each renderer sets its own look and adds nothing to be read.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from engine.say.message import Words

Block = dict[str, Any]
Row = tuple[Words, Sequence[Words]]


def heading(level: int, name: str, text: Words) -> Block:
    """Return a heading; `name` is unique in its document."""
    return {"kind": "heading", "level": level, "id": name, "text": text}


def text(words: Words) -> Block:
    """Return a paragraph."""
    return {"kind": "text", "text": words}


def caution(words: Words) -> Block:
    """Return a paragraph that is to be seen as a caution."""
    return {"kind": "caution", "text": words}


def listing(items: Iterable[Words], *, ordered: bool = False) -> Block:
    """Return a list, numbered from 1 where it is ordered."""
    return {"kind": "list", "ordered": ordered, "items": list(items)}


def table(caption: Words, head: Sequence[Words], rows: Iterable[Row]) -> Block:
    """Return a table; the first of `head` stands over the heads of rows."""
    made = [{"head": name, "cells": list(cells)} for name, cells in rows]
    return {"kind": "table", "caption": caption, "head": list(head), "rows": made}
