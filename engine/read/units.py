"""Units: the only place that knows how long an inch is, and how a figure is written out.

A pint registry of our own holds the few units of the craft, so that nothing has to be read from a
file at start. Conversion factors are taken from it once and kept; everything inside the calculator
is plain floats in mm, g, kg, m and tex.

A figure is shown to the precision of the tool it is read with: an inch tape to 1/8 in, a metric
tape to 1 mm. Every shown quantity carries both systems, the user's own in `text`, the other in
`other`.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import lru_cache
from math import floor
from typing import Any, Literal

from pint import UnitRegistry
from pint.errors import DimensionalityError, UndefinedUnitError

from engine.read.errors import Unreadable
from engine.read.quoted import quoted
from engine.say import messages as say

System = Literal["in", "cm"]
Quantity = dict[str, Any]

_DEFINITIONS = """
millimeter = [length] = mm = millimeters = millimetre = millimetres
centimeter = 10 * millimeter = cm = centimeters = centimetre = centimetres
meter = 1000 * millimeter = m = meters = metre = metres = mtr
inch = 25.4 * millimeter = in = inches = ins
foot = 12 * inch = ft = feet
yard = 3 * foot = yd = yards = yds
gram = [mass] = g = grams = gr = gramme = grammes = gm
kilogram = 1000 * gram = kg = kilograms = kilo = kilos
pound = 453.59237 * gram = lb = pounds = lbs
ounce = pound / 16 = oz = ounces
stone = 14 * pound = st = stones
"""

_MARKS = {'"': "inch", "''": "inch", "'": "foot"}


def _registry() -> UnitRegistry[Any]:
    registry: UnitRegistry[Any] = UnitRegistry(None)
    for line in _DEFINITIONS.strip().splitlines():
        registry.define(line)
    return registry


REGISTRY = _registry()  # build/unit_table.py makes a table of it


@lru_cache(maxsize=512)
def factor(unit: str, into: str) -> float:
    """Return how many `into` one `unit` is.

    `unit` is as people write it ("in", "Inches", '"', "cm."); `into` is a name of the registry.
    Raises `Unreadable` when the unit is unknown or measures something else.
    """
    word = _MARKS.get(unit, unit).casefold().rstrip(".")
    if not word.isalpha():
        raise Unreadable(say.no_such_unit(unit=quoted(unit)), say.write_unit(of=_kind(into)))
    try:
        return float(REGISTRY.convert(1.0, word, into))
    except (UndefinedUnitError, DimensionalityError, ValueError):  # the last: "nan" is no unit
        raise Unreadable(
            say.other_unit(unit=quoted(unit), of=_kind(into)), say.write_unit(of=_kind(into))
        ) from None


def is_weight(unit: str) -> bool:
    """Tell whether a unit as people write it is one of weight."""
    return _is(unit, "gram")


def is_length(unit: str) -> bool:
    """Tell whether a unit as people write it is one of length."""
    return _is(unit, "millimeter")


@lru_cache(maxsize=512)  # by itself, for `factor` keeps nothing that it refuses
def _is(unit: str, kind: str) -> bool:
    try:
        return factor(unit, kind) > 0
    except Unreadable:
        return False


def _kind(into: str) -> Literal["length", "weight"]:
    return "length" if into == "millimeter" else "weight"


MM_PER_INCH = factor("inch", "millimeter")
MM_PER_YARD = factor("yard", "millimeter")
GRAMS_PER_OUNCE = factor("ounce", "gram")
GRAMS_PER_POUND = factor("pound", "gram")

_EIGHTHS = ("", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")


NUDGE = 1e-9  # lets 9 3/8 in and 23.8125 cm round, and be judged, the same way


def nearest(value: float) -> int:
    """Return the nearest whole number, halves up, the same for a foot in cm and in inches."""
    return floor(value + 0.5 + NUDGE)


def whole_between(low: float, likely: float, high: float) -> tuple[int, int]:
    """Return the whole numbers from `low` to `high`, and the nearest to `likely`; none below 0.

    They are as many as the interval is long, on average, so that they hold as often as it does.
    """
    middle = max(0, nearest(likely))
    return min(middle, max(0, floor(low + 1 + NUDGE))), max(middle, floor(high + NUDGE))


def reaches(value: float, bound: float) -> bool:
    """Tell whether a ratio (about 1) is at a bound or above, the same in cm and in inches."""
    return value + NUDGE >= bound


def percent(share: float) -> int:
    """Return a share of about 1 in whole percent, rounded as `nearest`."""
    return nearest((share + NUDGE) * 100)


def times(ratio: float) -> str:
    """Write a ratio to two places, rounded as `nearest` ("1.66")."""
    return f"{percent(ratio) / 100:.2f}"


def step(value: float, bounds: Sequence[float]) -> int:
    """Return how many of `bounds`, from the lowest, a ratio reaches."""
    return bisect_right(bounds, value + NUDGE)


def number(value: float, places: int = 1) -> str:
    """Write a number with at most `places` decimals and no trailing zeros."""
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if places else text


def ordinal(number: int) -> str:
    """Write 1st, 2nd, 11th, 23rd."""
    teens = number // 10 % 10 == 1
    return f"{number}{'th' if teens else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"


def mark(value: float) -> str:
    """Write a tension mark, quarters as a fraction ("6¼")."""
    whole, quarters = divmod(value * 4, 4)
    if quarters in (1, 2, 3):
        return f"{f'{whole:.0f}' if whole else ''}{' ¼½¾'[int(quarters)]}"
    return number(value, 2)


def inches(mm: float) -> str:
    """Write a length in inches to the nearest 1/8 ("9 3/8 in")."""
    whole, part = divmod(round(mm / MM_PER_INCH * 8), 8)
    if not part:
        return f"{whole} in"
    return f"{whole} {_EIGHTHS[part]} in" if whole else f"{_EIGHTHS[part]} in"


def centimetres(mm: float) -> str:
    """Write a length in cm to the nearest mm ("23.8 cm")."""
    return f"{f'{mm / 10:.1f}'.removesuffix('.0')} cm"


def length_text(mm: float, system: System) -> str:
    """Write a length in the user's system, to the precision of a tape."""
    return inches(mm) if system == "in" else centimetres(mm)


def _quantity(value: float, unit: str, imperial: str, metric: str, system: System) -> Quantity:
    text, other = (imperial, metric) if system == "in" else (metric, imperial)
    return {"value": value, "unit": unit, "text": text, "other": other}


def length(mm: float, system: System) -> Quantity:
    """Return a length as a quantity, value in mm rounded to 0.1 mm."""
    imperial, metric = inches(mm), centimetres(mm)
    text, other = (imperial, metric) if system == "in" else (metric, imperial)
    return {"value": round(mm, 1), "unit": "mm", "text": text, "other": other}


def length_range(low: float, high: float, system: System) -> str:
    """Write a range of lengths ("9 1/4 to 9 1/2 in")."""
    first, last = length_text(low, system), length_text(high, system)
    return first if first == last else f"{first.rpartition(' ')[0]} to {last}"


def small_length(mm: float, system: System) -> Quantity:
    """Return a length too small for a tape (a stitch) as a quantity, value in mm."""
    return _quantity(
        round(mm, 2), "mm", f"{number(mm / MM_PER_INCH, 2)} in", f"{number(mm)} mm", system
    )


def per_length(per_mm: float, system: System) -> Quantity:
    """Return stitches or rounds per length as a quantity, value per mm."""
    imperial, metric = f"{number(per_mm * MM_PER_INCH, 2)} / in", f"{number(per_mm * 100)} / 10 cm"
    return _quantity(round(per_mm, 5), "/mm", imperial, metric, system)


def yarn_length(mm: float, system: System, places: int = 0) -> Quantity:
    """Return a length of yarn as a quantity, value in m."""
    metres = mm / 1000
    imperial, metric = f"{number(mm / MM_PER_YARD, places)} yd", f"{number(metres, places)} m"
    return _quantity(round(metres, 2), "m", imperial, metric, system)


def weight(grams: float, places: int = 1) -> Quantity:
    """Return a weight of yarn as a quantity, value in g; `places` are those of ounces.

    Sock yarn is sold and weighed in grams where feet are measured in inches too: grams are always
    the text, ounces the other.
    """
    metric = f"{number(grams, 0)} g" if grams > 0.5 else "under 1 g"
    ounces = grams / GRAMS_PER_OUNCE
    imperial = f"{number(ounces, places)} oz" if ounces >= 0.05 else "under 0.1 oz"
    return _quantity(round(grams, 2), "g", imperial, metric, "cm")
