"""One sentence for all sizes: 46 (50, 54, 58), the smallest size first, always in one order.

A sentence is the same message in each size. Where its figures differ they stand behind one another,
the first and then the others in parentheses, as the Craft Yarn Council has it (Standards and
Guidelines for Knitting and Crochet); where they are equal they stand once. A size that a sentence
is not for has a dash in its place.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from engine.say.message import Message, Words

NONE = "–"


def figures(found: Sequence[object]) -> str:
    """Write a figure for each size: once where all are equal, None as a dash."""
    told = [NONE if one is None else str(one) for one in found]
    first, *others = told
    same = {one for one in told if one != NONE}
    if len(same) < 2:
        return next(iter(same), NONE)
    return f"{first} ({', '.join(others)})"


def shape(words: Words) -> Hashable:
    """Return what two sentences share that differ at most in figures."""
    if not isinstance(words, Message):
        return _shape(words)
    return tuple((name, _shape(value)) for name, value in words.items())


def _shape(value: object) -> Hashable:
    if isinstance(value, Message):
        return value  # a sentence within is the same, or another
    if isinstance(value, bool | int | float):
        return "a number"
    if isinstance(value, str) and any(letter.isnumeric() for letter in value):
        return "a figure"
    return value if isinstance(value, str | tuple) else str(value)


def one(found: Sequence[Words | None]) -> Words:
    """Return one sentence for all sizes, from sentences of one shape; None is of no size."""
    there = [words for words in found if words is not None]
    first = there[0]
    if all(words == first for words in there):
        return first
    if not isinstance(first, Message):
        return figures(found)
    made = Message(first)
    for name in first:
        values = [words[name] if isinstance(words, Message) else None for words in found]
        if any(value != first[name] for value in values if value is not None):
            made[name] = figures(values)
    return made
