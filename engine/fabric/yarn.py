"""How thick a yarn is, as a band or a label says it: its length and weight, a number, or a name.

Everything becomes tex, the weight in grams of 1,000 m (ISO 1144). Conversions after ASTM D2260-03:
tex = 1000/Nm = 100000/(m per 100 g) = den/9 = 590.541/Ne (cotton) = 885.812/Ne (worsted)
= 1653.52/lea (linen) = 310.034/run (woollen). A label's `8/2` or `2/28` names the single and
the strands: the yarn is as thick as all its strands together. What is only named, as the Craft Yarn
Council names it, is a guess over the yarns that are sold so (`yarn_names`).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from math import log
from typing import NamedTuple

from engine.fabric import yarn_names
from engine.read import reading, units
from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.say import messages as say
from engine.say.message import Message
from engine.sources import TEX_AS_TOLD, USUAL_SOCK_YARN_TEX, Cited

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
EXAMPLE = say.yarn_like()
_USUAL_BALLS = ("50 g", "100 g")
_ALIKE = 0.06  # relative, lengths or weights that a band says in two units, both rounded

_NUMBER = r"\d{1,9}(?:[.,]\d{1,9})?"
_COUNT = rf"({_NUMBER})(?:\s*/\s*({_NUMBER}))?"
_WORD_FIRST = re.compile(rf"([^\W\d_]+)\.?\s*{_COUNT}", re.I)
_WORD_LAST = re.compile(rf"{_COUNT}\s*([^\W\d_]+)\.?", re.I)
# What a band says is taken piece by piece: quantities (`4 m / g`: where no number stands it is
# one), and between them signs and words that say nothing.
_PIECE = re.compile(rf"\s*(?:({_NUMBER})?\s*([^\W\d_]+)\.?|[-/=,;:()~≈+])\s*", re.I)
_FIBRE = re.compile(rf"[,;/+&]?\s*{_NUMBER}\s*%\s*(?:[^\W\d_]+\s*){{0,3}}")  # 75 % virgin wool
_EMPTY_WORDS = {
    *("a", "an", "the", "of", "per", "to", "in", "on", "is", "has", "each", "yarn", "wool"),
    *("about", "approx", "approximately", "roughly", "ca", "circa"),
    *("ball", "balls", "hank", "hanks", "skein", "skeins"),
    *("merino", "superwash", "virgin", "nylon", "polyamide", "polyester", "acrylic", "cotton"),
    *("linen", "silk", "alpaca", "mohair", "cashmere", "bamboo", "viscose"),
    *("ll", "lauflänge", "auf", "je", "pro"),  # as German bands say it
}


class Yarn(NamedTuple):
    """A yarn's `tex` with its relative error; `name` is the category it is guessed from, if any."""

    tex: float
    sd: float
    name: Message | None = None


@lru_cache(maxsize=reading.KEPT)
def read(text: str) -> Yarn:
    """Return the yarn that a text tells (`400 m / 100 g`, `238 tex`, `Nm 8/2`, `fingering`).

    Raises `Unreadable` when it is none, or one no sock is knitted from.
    """
    tidied = reading.tidy(text)
    tidied = _FIBRE.sub(" ", tidied).strip() or tidied
    tex = _by_system(tidied)
    if tex is None:
        named = yarn_names.read(tidied)
        if named:
            return Yarn(named.tex, named.sd, named.words)
        tex = _by_band(tidied)
    if not FINEST <= tex <= THICKEST:
        told = {"text": quoted(text), "tex": f"{tex:.3g}"}
        message = say.yarn_too_fine(**told) if tex < FINEST else say.yarn_too_thick(**told)
        raise Unreadable(message, EXAMPLE)
    return Yarn(tex, float(TEX_AS_TOLD))


def _by_system(tidied: str) -> float | None:
    """Return the tex of a number with the word of its system, None where there is no such word."""
    for shape, word, first in ((_WORD_FIRST, 1, 2), (_WORD_LAST, 3, 1)):
        match = shape.fullmatch(tidied)
        if match and match[word].casefold() in _SYSTEMS:
            return _by_count(match[word], match[first], match[first + 1])
    return None


def _by_band(tidied: str) -> float:
    """Return the tex of a length and its weight, in either order, each perhaps in two units."""
    if re.fullmatch(r"\d{2,4}", tidied) and FINEST <= 1e5 / int(tidied) <= THICKEST:
        meant = (f"{tidied} m / 100 g",)
        raise Unreadable(
            say.yarn_length_of_what(text=quoted(tidied)),
            say.did_you_mean(offers=meant),
            meant,
        )
    no = Unreadable(say.yarn_unreadable(text=quoted(tidied)), EXAMPLE)
    lengths, weights, at = list[float](), list[float](), 0
    while at < len(tidied):
        match = _PIECE.match(tidied, at)
        if not match:
            raise no
        at = match.end()
        number, word = match.groups()
        if word is None or (number is None and _says_nothing(word)):
            continue
        if units.is_weight(word):
            weights.append(_float(number, 1) * units.factor(word, "gram"))
        elif units.is_length(word):
            lengths.append(_float(number, 1) * units.factor(word, "millimeter"))
        else:
            raise no
    if not lengths:
        raise no
    if not weights:
        raise _weightless(tidied, lengths[0])
    if not _alike(lengths) or not _alike(weights):
        raise Unreadable(say.yarn_two_bands(text=quoted(tidied)), EXAMPLE)
    return weights[0] / lengths[0] * 1e6


def _says_nothing(word: str) -> bool:
    return word.casefold() in _EMPTY_WORDS or yarn_names.is_part(word)


def _alike(sizes: Sequence[float]) -> bool:
    return max(sizes) <= min(sizes) * (1 + _ALIKE)


def _weightless(tidied: str, mm: float) -> Unreadable:
    """Ask what so long a yarn weighs, the ball nearest to a sock yarn's first."""

    def away(ball: str) -> float:
        return abs(log(reading.read_grams(ball) / mm * 1e6 / USUAL_SOCK_YARN_TEX))

    meant = tuple(f"{tidied} / {ball}" for ball in sorted(_USUAL_BALLS, key=away))
    return Unreadable(say.yarn_weighs_what(), say.did_you_mean(offers=meant), meant)


def _float(text: str | None, default: float) -> float:
    if text and re.fullmatch(r"[1-9]\d{0,2},\d{3}", text):
        text = text.replace(",", "")  # 1,900 yd: no ball is written to a thousandth of one
    value = float(text.replace(",", ".")) if text else default
    if value <= 0:
        raise Unreadable(say.yarn_number_zero(), EXAMPLE)
    return value


def _by_count(word: str, first: str, second: str | None) -> float:
    constant, thicker = _SYSTEMS[word.casefold()]
    one, two = _float(first, 1), _float(second, 1)
    if thicker:  # 60 tex x 4 is written 60/4 or 4/60: strands are the smaller number
        return constant * one * two
    single, strands = max(one, two), min(one, two)
    return constant * (strands if second else 1.0) / (single if second else one)


def metres_per_100_g(tex: float) -> float:
    """Return the metres in 100 g of a yarn of this tex."""
    return 1e5 / tex
