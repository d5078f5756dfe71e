"""Reading what people write: numbers, lengths, weights, and counts over a length.

Numbers come as `9.375`, `9,375` (a comma is a decimal point; nobody's foot has a thousand),
`9 3/8`, `9-3/8`, `9⅜` or `⅜`. A length may have one unit, or a larger and a smaller (`5 ft 6 in`,
`5'6`). A number without a unit is read in the unit the page is set to. Every reader returns a float
in mm, kg or per mm, or raises `Unreadable` with what to write instead.

`93/8` is a missed space far more often than 11 5/8, and `13/16` may be either: a fraction of 1 and
more, and one with several digits over a tape's 2, 4, 8, 16 or 32 and no whole number before it, are
asked about; a whole number, even 0, settles it (`0 13/16`).
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from typing import NamedTuple

from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.read.units import factor
from engine.say import messages as say
from engine.say.message import Message

LONGEST_TEXT = 60
KEPT = 256  # texts of a kind: at a keystroke all but one are as they were

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
_COUNTED = r"(?:st|sts|stitches|r|rd|rds|rnds?|rounds?|rows?|needles?|slots?)"
_ONLY_NUMBER = re.compile(rf"({_NUMBER})(?:\s*{_COUNTED}\.?)?", re.I)
_PER_INCH = re.compile(rf"({_NUMBER})\s*[sr]pi\.?", re.I)  # stitches, rounds per inch
_PAIR = re.compile(  # 28 st x 40 r = 10 cm
    rf"({_NUMBER})\s*({_COUNTED}?)\.?\s*(?:[x×&+]|\bby\b|\band\b|(?<=[a-z.])\s*[,/])\s*"
    rf"({_NUMBER})(?:\s*{_COUNTED}\.?)?"
    rf"(?:\s*(?:/|\b(?:per|over|to|in|on)\b|=)\s*({_PLAIN})?(?:\s*[x×]\s*\4)?\s*(''|\"|[^\W\d_]+\.?)"
    rf"(?:\s*[x×]\s*\4?\s*\5)?)?",
    re.I,
)
_ON_A_TAPE = (2, 4, 8, 16, 32)


class Length(NamedTuple):
    """A length in mm; `number` is what was written before its one unit, else None."""

    mm: float
    number: float | None


def tidy(text: str) -> str:
    """Return text with plain spaces, plain quotes and written-out fractions.

    Raises `Unreadable` when it is empty, too long or holds characters that are not for reading.
    """
    if len(text) > LONGEST_TEXT:
        raise Unreadable(say.too_long(), say.one_number_and_unit())
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


def _value(match: re.Match[str], group: int = 1) -> float:
    """Return the value of a group that matched `_NUMBER`; raises `Unreadable` where it is odd."""
    text = match[group]
    before, slash, last = text.partition("/")
    if not slash:
        return float(text.replace(",", "."))
    *wholes, above = re.split(r"[ -]+", before.strip())
    whole, top, below = sum(map(int, wholes)), int(above), int(last)
    if below == 0:
        raise Unreadable(say.fraction_below_zero(), say.write_it_like(example="9 3/8"))
    crowded = not wholes and len(above) > 1 and below in _ON_A_TAPE
    if crowded or top >= below:
        readings = [] if wholes else _spaced(above, below)
        readings.append(_mixed(whole * below + top, below))
        start, end = match.start(group), match.end(group)
        offers = tuple(match.string[:start] + one + match.string[end:] for one in readings)
        raise Unreadable(
            say.not_clear(text=quoted(match.string)), say.did_you_mean(offers=offers), offers
        )
    return whole + top / below


def _spaced(digits: str, below: int) -> list[str]:
    """Return the readings of a numerator that swallowed the whole number before it."""
    cuts = ((digits[:at], digits[at:]) for at in range(1, len(digits)))
    return [
        f"{whole} {top}/{below}"
        for whole, top in cuts
        if whole[0] != "0" and top[0] != "0" and int(top) < below
    ]


def _mixed(parts: int, below: int) -> str:
    """Write so many parts with their whole number before them, though it be 0."""
    whole, top = divmod(parts, below)
    return f"{whole} {top}/{below}" if top else f"{whole}"


def is_bare(text: str) -> bool:
    """Tell whether a text is a number with no unit; `Unreadable` as `tidy`."""
    return re.fullmatch(_NUMBER, tidy(text)) is not None


@lru_cache(maxsize=KEPT)
def read_number(text: str) -> float:
    """Return a plain number (`39`, `6 1/2`, `6½`, `6,5`)."""
    match = _ONLY_NUMBER.fullmatch(tidy(text))
    if not match:
        raise Unreadable(say.not_a_number(text=quoted(text)), say.number_like())
    return _value(match)


def read_count(text: str) -> float:
    """Return the number of a count of things, which need not be whole yet."""
    try:
        return read_number(text)
    except Unreadable as no:
        if no.offers:
            raise
        if tidy(text).startswith("-"):
            raise Unreadable(say.count_below_zero(), say.write_it_like(example="20")) from None
        raise Unreadable(
            say.not_a_number(text=quoted(text)), say.write_it_like(example="20")
        ) from None


def read_share(text: str) -> float:
    """Return a share: `4 %`, `4%` and `0.04` are the same, and so is a bare `4`."""
    tidied = tidy(text)
    value = read_number(tidied.rstrip("% "))
    return value / 100 if tidied.endswith("%") or value >= 1 else value


def _pieces(text: str, example: Message) -> list[tuple[float, str]]:
    tidied, found, at = tidy(text), list[tuple[float, str]](), 0
    if tidied.startswith("-"):
        raise Unreadable(say.measure_below_zero(), say.write_it_like(example=example))
    while at < len(tidied):
        match = _PIECE.match(tidied, at)
        if not match or len(found) == 2:
            raise _no(text, example)
        found.append((_value(match), match[2] or ""))
        at = match.end()
    if not found:
        raise Unreadable(say.nothing_to_read(), say.write_it_like(example=example))
    return found


def _no(text: str, example: Message) -> Unreadable:
    return Unreadable(say.cannot_be_read(text=quoted(text)), say.write_it_like(example=example))


@lru_cache(maxsize=KEPT)
def read_length(text: str, bare: str, example: Message | None = None) -> Length:
    """Return a length in mm; a number without a unit is read in the unit `bare`."""
    example = example or say.length_example()
    found = _pieces(text, example)
    mm = [value * factor(unit, "millimeter") if unit else value for value, unit in found]
    if len(found) == 1:
        value, unit = found[0]
        return Length(mm[0] if unit else value * factor(bare, "millimeter"), value)
    (_, first), (value, second) = found
    if not first:
        raise _no(text, example)
    larger = factor(first, "millimeter")
    if not second:  # 5'6 and 9" 3/8: feet are followed by inches, inches by a part of one
        step = factor("inch", "millimeter")
        if larger < step or (larger == step and value >= 1):
            raise _no(text, example)
        mm[1] = value * step
    elif factor(second, "millimeter") >= larger:
        raise Unreadable(say.two_measures(text=quoted(text)), say.write_one())
    return Length(mm[0] + mm[1], None)


def read_weight(text: str, bare: str) -> float:
    """Return a person's weight in kg (`60 kg`, `132 lb`, `9 st 6 lb`)."""
    found = _pieces(text, say.person_example())
    return sum(value * factor(unit or bare, "kilogram") for value, unit in found)


def read_grams(text: str) -> float:
    """Return a weight of yarn in g (`50 g`, `1.8 oz`); a bare number is grams, as scales say it."""
    found = _pieces(text, say.grams_example())
    return sum(value * factor(unit or "gram", "gram") for value, unit in found)


class Rate(NamedTuple):
    """A count over a length, and the count as `written`."""

    per_mm: float
    written: float


@lru_cache(maxsize=KEPT)
def read_rates(text: str, bare: str) -> tuple[Rate, ...]:
    """Return a count over a length, or two: stitches, then rounds.

    Reads `7.5 / in`, `7.5 st/in`, `9 rpi`, `30 st / 10 cm`, `34 rounds over 10 cm` and, of both,
    `28 st x 40 r = 10 cm`; a number alone is per inch where `bare` is "in", per 10 cm where it is
    "cm".
    """
    tidied = tidy(text)
    usual = factor("in", "millimeter") if bare == "in" else 100.0
    alone = _ONLY_NUMBER.fullmatch(tidied)
    crossed = alone and re.fullmatch(r"(\d+)\s*/\s*(\d+)", alone[1])
    if crossed:  # 71/2 lacks a space, 30/4 is over 4 of something
        above, below = crossed.groups()
        offers = (*_spaced(above, int(below)), f"{above} / {below} {bare}")
        raise Unreadable(say.not_clear(text=quoted(text)), say.did_you_mean(offers=offers), offers)
    if alone:
        return (_over(_value(alone), usual),)
    if match := _PER_INCH.fullmatch(tidied):
        return (_over(_value(match), factor("in", "millimeter")),)
    if match := _RATE.fullmatch(tidied):
        return (_over(_value(match), _length_under(match, 2, 3)),)
    if match := _PAIR.fullmatch(tidied):
        mm = _length_under(match, 4, 5) if match[5] else usual
        rates = _over(_value(match), mm), _over(_value(match, 3), mm)
        return rates[::-1] if match[2].casefold().startswith("r") else rates
    raise Unreadable(say.not_over_a_length(text=quoted(text)), say.over_a_length_like())


def _over(count: float, mm: float) -> Rate:
    return Rate(count / mm, count)


def _length_under(match: re.Match[str], number: int, unit: int) -> float:
    """Return the length in mm that a count is over, from the groups of its number and its unit."""
    over = _value(match, number) if match[number] else 1.0
    if over == 0:
        raise Unreadable(say.over_no_length(), say.ten_cm_like())
    return over * factor(match[unit], "millimeter")
