"""Yarn numbers: how thick a yarn is, in any of the systems a label may use.

Everything becomes tex, the weight in grams of 1,000 m (ISO 1144). Conversions after ASTM D2260-03:
tex = 1000/Nm = 100000/(m per 100 g) = den/9 = 590.541/Ne (cotton) = 885.812/Ne (worsted)
= 1653.52/lea (linen) = 310.034/run (woollen). A label's `8/2` or `2/28` names the single and
the strands: the yarn is as thick as all its strands together.
"""

from __future__ import annotations

import re

from engine.read import reading, units
from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.sources import Cited

_ASTM = "ASTM D2260-03 (2013), Tables of Conversion Factors for yarn numbers"
_NE_COTTON = Cited(590.541, _ASTM)
_NE_WORSTED = Cited(885.812, _ASTM)
_LEA_LINEN = Cited(1653.52, _ASTM)
_RUN_WOOLLEN = Cited(310.034, _ASTM)

# word on the label -> (constant, True where a larger number is a thicker yarn)
_SYSTEMS: dict[str, tuple[float, bool]] = {
    "tex": (1.0, True),
    "dtex": (0.1, True),
    "ktex": (1000.0, True),
    "den": (1 / 9, True),
    "denier": (1 / 9, True),
    "td": (1 / 9, True),
    "nm": (1000.0, False),
    "ne": (float(_NE_COTTON), False),
    "nec": (float(_NE_COTTON), False),
    "cotton": (float(_NE_COTTON), False),
    "worsted": (float(_NE_WORSTED), False),
    "nek": (float(_NE_WORSTED), False),
    "lea": (float(_LEA_LINEN), False),
    "linen": (float(_LEA_LINEN), False),
    "run": (float(_RUN_WOOLLEN), False),
    "woollen": (float(_RUN_WOOLLEN), False),
}
FINEST, THICKEST = 10.0, 3000.0  # tex; a sewing thread and a rug yarn
EXAMPLE = "Write it like 400 m / 100 g, 238 tex, Nm 4.2 or 437 yd / 100 g."

_NUMBER = r"\d{1,9}(?:[.,]\d{1,9})?"
_PER_WEIGHT = re.compile(
    # A word between the two must stand alone: "cotton" holds a "to".
    rf"({_NUMBER})\s*([^\W\d_]+)\s*"
    rf"(?:/|(?<![^\W\d_])(?:per|to)(?![^\W\d_])|=|-)\s*({_NUMBER})?\s*([^\W\d_]+)\.?",
    re.I,
)
_COUNT = rf"({_NUMBER})(?:\s*/\s*({_NUMBER}))?"
_WORD_FIRST = re.compile(rf"([^\W\d_]+)\.?\s*{_COUNT}", re.I)
_WORD_LAST = re.compile(rf"{_COUNT}\s*([^\W\d_]+)\.?", re.I)


def read_number(text: str) -> float:
    """Return the tex of a yarn number as written on a label (`400 m / 100 g`, `238 tex`, `Nm 8/2`).

    Raises `Unreadable` when it is no yarn number, or names a yarn no sock is knitted from.
    """
    tidied = reading.tidy(text)
    match = _PER_WEIGHT.fullmatch(tidied)
    if match:
        tex = _by_weight(*match.groups())
    elif match := _WORD_FIRST.fullmatch(tidied):
        tex = _by_count(match[1], match[2], match[3])
    elif match := _WORD_LAST.fullmatch(tidied):
        tex = _by_count(match[3], match[1], match[2])
    else:
        meant = f"{tidied} m / 100 g"
        if re.fullmatch(r"\d{2,4}", tidied) and FINEST <= 1e5 / int(tidied) <= THICKEST:
            raise Unreadable(
                f"“{tidied}” of what? A yarn number needs its system.",
                f"Did you mean {meant}?",
                (meant,),
            )
        raise Unreadable(f"{quoted(text)} is not a yarn number we know.", EXAMPLE)
    if not FINEST <= tex <= THICKEST:
        thickness = "finer than sewing thread" if tex < FINEST else "thicker than rug yarn"
        raise Unreadable(f"{quoted(text)} would be {thickness} ({tex:.3g} tex).", EXAMPLE)
    return tex


def _float(text: str | None, default: float) -> float:
    value = float(text.replace(",", ".")) if text else default
    if value <= 0:
        raise Unreadable("A yarn number cannot be 0.", EXAMPLE)
    return value


def _by_weight(first: str, first_unit: str, second: str | None, second_unit: str) -> float:
    one, two = (_float(first, 1), first_unit), (_float(second, 1), second_unit)
    if units.is_weight(first_unit):  # 50 g = 210 m
        one, two = two, one
    mm = one[0] * units.factor(one[1], "millimeter")
    return two[0] * units.factor(two[1], "gram") / mm * 1e6


def _by_count(word: str, first: str, second: str | None) -> float:
    if word.casefold() not in _SYSTEMS:
        raise Unreadable(f"{quoted(word)} is not a yarn number system we know.", EXAMPLE)
    constant, thicker = _SYSTEMS[word.casefold()]
    one, two = _float(first, 1), _float(second, 1)
    if thicker:  # 60 tex x 4 is written 60/4 or 4/60: strands are the smaller number
        return constant * one * two
    single, strands = max(one, two), min(one, two)
    return constant * (strands if second else 1.0) / (single if second else one)


def metres_per_100_g(tex: float) -> float:
    """Return the metres in 100 g of a yarn of this tex."""
    return 1e5 / tex
