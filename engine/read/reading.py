"""Reading what people write: numbers, lengths, weights, and counts over a length.

Numbers come as `9.375`, `9,375` (a comma is a decimal point; nobody's foot has a thousand),
`9 3/8`, `9-3/8`, `9⅜` or `⅜`. A length may have one unit, or a larger and a smaller (`5 ft 6 in`,
`5'6`). A number without a unit is read in the unit the page is set to. Every reader returns a float
in mm, kg or per mm, or raises `Unreadable` with what to write instead.
"""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple

from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.read.units import factor

LONGEST_TEXT = 60

_QUOTES = str.maketrans(
    {"″": '"', "”": '"', "“": '"', "’": "'", "‘": "'", "′": "'", "⁄": "/", "∕": "/", "−": "-"}
)
_PLAIN = r"\d{1,9}(?:[.,]\d{1,9})?|[.,]\d{1,9}"
_NUMBER = rf"(?:(?:\d{{1,9}}[ -]*[ -])?\d{{1,4}}\s*/\s*\d{{1,4}}|{_PLAIN})"
_PIECE = re.compile(rf"\s*({_NUMBER})\s*(''|[\"']|[^\W\d_]+\.?)?", re.UNICODE)
_RATE = re.compile(
    rf"({_NUMBER})\s*(?:[^\W\d_]+\.?)??\s*(?:/|\b(?:per|over|to|in|on|an?)\b|=)\s*"
    rf"(?:the\s|an?\s)?\s*({_PLAIN})?\s*(''|\"|[^\W\d_]+\.?)",
    re.UNICODE,
)
_ONLY_NUMBER = re.compile(
    rf"({_NUMBER})(?:\s*(?:st|sts|stitches|r|rd|rds|rounds?|rows?|needles?|slots?)\.?)?", re.I
)


class Length(NamedTuple):
    """A length in mm; `number` is what was written before its one unit, else None."""

    mm: float
    number: float | None


def tidy(text: str) -> str:
    """Return text with plain spaces, plain quotes and written-out fractions.

    Raises `Unreadable` when it is empty, too long or holds characters that are not for reading.
    """
    if len(text) > LONGEST_TEXT:
        raise Unreadable("That is too long to be a measure.", "Write one number and its unit.")
    if text.isascii():
        return text.strip()
    shown = []
    for character in text:
        spread = unicodedata.normalize("NFKD", character)
        if unicodedata.category(character) == "No" and "⁄" in spread:
            shown.append(f" {spread}")
        elif character.isspace():
            shown.append(" ")
        else:
            shown.append(character)
    return "".join(shown).translate(_QUOTES).strip()


def _value(text: str) -> float:
    """Return the value of text that matched `_NUMBER`."""
    whole, slash, below = text.partition("/")
    if not slash:
        return float(text.replace(",", "."))
    parts = re.split(r"[ -]+", whole.strip())
    if int(below) == 0:
        raise Unreadable("A fraction cannot have 0 below its line.", "Write it like 9 3/8.")
    return sum(int(part) for part in parts[:-1]) + int(parts[-1]) / int(below)


def read_number(text: str) -> float:
    """Return a plain number (`39`, `6 1/2`, `6½`, `6,5`)."""
    match = _ONLY_NUMBER.fullmatch(tidy(text))
    if not match:
        raise Unreadable(f"{quoted(text)} is not a number.", "Write a number like 20 or 6 1/2.")
    return _value(match[1])


def read_count(text: str) -> float:
    """Return the number of a count of things, which need not be whole yet."""
    try:
        return read_number(text)
    except Unreadable:
        if tidy(text).startswith("-"):
            raise Unreadable("A count cannot be below zero.", "Write it like 20.") from None
        raise Unreadable(f"{quoted(text)} is not a number.", "Write it like 20.") from None


def read_share(text: str) -> float:
    """Return a share: `4 %`, `4%` and `0.04` are the same, and so is a bare `4`."""
    tidied = tidy(text)
    value = read_number(tidied.rstrip("% "))
    return value / 100 if tidied.endswith("%") or value >= 1 else value


def _pieces(text: str, example: str) -> list[tuple[float, str]]:
    tidied, found, at = tidy(text), list[tuple[float, str]](), 0
    if tidied.startswith("-"):
        raise Unreadable("A measure cannot be below zero.", f"Write it like {example}.")
    while at < len(tidied):
        match = _PIECE.match(tidied, at)
        if not match or len(found) == 2:
            raise Unreadable(f"{quoted(text)} cannot be read.", f"Write it like {example}.")
        found.append((_value(match[1]), match[2] or ""))
        at = match.end()
    if not found:
        raise Unreadable("There is nothing to read here.", f"Write it like {example}.")
    return found


def read_length(text: str, bare: str, example: str = "23.8 cm or 9 3/8 in") -> Length:
    """Return a length in mm; a number without a unit is read in the unit `bare`."""
    found = _pieces(text, example)
    mm = [value * factor(unit, "millimeter") if unit else value for value, unit in found]
    if len(found) == 1:
        value, unit = found[0]
        return Length(mm[0] if unit else value * factor(bare, "millimeter"), value)
    (_, first), (value, second) = found
    if not first:
        raise Unreadable(f"{quoted(text)} cannot be read.", f"Write it like {example}.")
    larger = factor(first, "millimeter")
    if not second:  # 5'6 and 9" 3/8: feet are followed by inches, inches by a part of one
        step = factor("inch", "millimeter")
        if larger < step or (larger == step and value >= 1):
            raise Unreadable(f"{quoted(text)} cannot be read.", f"Write it like {example}.")
        mm[1] = value * step
    elif factor(second, "millimeter") >= larger:
        raise Unreadable(f"{quoted(text)} holds two measures.", "Write one of them.")
    return Length(mm[0] + mm[1], None)


def read_weight(text: str, bare: str) -> float:
    """Return a person's weight in kg (`60 kg`, `132 lb`, `9 st 6 lb`)."""
    found = _pieces(text, "60 kg or 132 lb")
    return sum(value * factor(unit or bare, "kilogram") for value, unit in found)


def read_grams(text: str, bare: str) -> float:
    """Return a weight of yarn in g (`50 g`, `1.8 oz`); a bare number is in the unit `bare`."""
    found = _pieces(text, "50 g or 1.8 oz")
    return sum(value * factor(unit or bare, "gram") for value, unit in found)


def read_rate(text: str, bare: str) -> tuple[float, float]:
    """Return (count per mm, the count as written).

    Reads `7.5 / in`, `7.5 st/in`, `30 st / 10 cm`, `34 rounds over 10 cm`; a number alone is per
    inch where `bare` is "in", per 10 cm where it is "cm".
    """
    tidied = tidy(text)
    alone = _ONLY_NUMBER.fullmatch(tidied)
    if alone and "/" not in alone[1]:
        count = _value(alone[1])
        return count / (factor("in", "millimeter") if bare == "in" else 100.0), count
    match = _RATE.fullmatch(tidied)
    if not match:
        raise Unreadable(
            f"{quoted(text)} cannot be read as a count over a length.",
            "Write it like 7.5 / in or 30 / 10 cm.",
        )
    count = _value(match[1])
    over = _value(match[2]) if match[2] else 1.0
    if over == 0:
        raise Unreadable("A count over no length says nothing.", "Write it like 30 / 10 cm.")
    return count / (over * factor(match[3], "millimeter")), count
