"""A language made up for tests, en-XA: English with accents, in brackets, a third longer.

What a page shows outside of brackets was not said by a catalogue; what does not fit would not fit
in German either. The walks name what they tap by `said`, so they find their way here too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from fluent.syntax import FluentParser, FluentSerializer, ast

LANGUAGE = "en-XA"
_PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_ACCENTED = "áƀçðéƒĝĥîĵķļɱñóþǫŕšţûṽŵẋýžÁƁÇÐÉƑĜĤÎĴĶĻṀÑÓÞǪŔŠŢÛṼŴẊÝŽ"
ACCENTS = str.maketrans(_PLAIN, _ACCENTED)
OPENS, CLOSES = "⟦", "⟧"
_walking: list[bool] = []


def said(words: str) -> str:
    """What the page says, in the language that is walked in."""
    return words.translate(ACCENTS) if _walking else words


@contextmanager
def accented() -> Iterator[None]:
    """Walk in the made-up language."""
    _walking.append(True)
    try:
        yield
    finally:
        _walking.pop()


def _accents(text: str) -> str:
    """Everything but tags with accents."""
    parts = re.split(r"(<[^>]*>)", text)
    return "".join(one if one.startswith("<") else one.translate(ACCENTS) for one in parts)


def _elements(pattern: ast.Pattern) -> int:
    """Put accents on a pattern and what is within; returns how many letters it has at most."""
    letters = 0
    for element in pattern.elements:
        if isinstance(element, ast.TextElement):
            element.value = _accents(element.value)
            letters += len(re.sub(r"<[^>]*>", "", element.value))
        elif isinstance(element.expression, ast.SelectExpression):
            letters += max(_elements(variant.value) for variant in element.expression.variants)
    return letters


def written(text: str) -> str:
    """A catalogue in the made-up language."""
    resource = FluentParser().parse(text)
    for entry in resource.body:
        if isinstance(entry, ast.Message) and entry.value:
            longer = "~" * (_elements(entry.value) // 3)
            more = re.sub("(.{5})", "\\1\u200b", longer)  # may break, and is no word more
            entry.value.elements.insert(0, ast.TextElement(OPENS))
            entry.value.elements.append(ast.TextElement(f"{more}{CLOSES}"))
    made: str = FluentSerializer().serialize(resource)
    return made


def write(root: Path) -> None:
    """Add the language to the catalogues of a copy of the repository."""
    for place in (root / "webapp" / "words", root / "engine" / "say" / "words"):
        folder = place / LANGUAGE
        folder.mkdir(parents=True)
        for path in sorted((place / "en").glob("*.ftl")):
            (folder / path.name).write_text(written(path.read_text("utf-8")), encoding="utf-8")


LEAKS = Path(__file__).with_name("leaks.js").read_text(encoding="utf-8")
