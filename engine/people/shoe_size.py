"""Shoe sizes: a foot's length from a size, and back.

A shoe is labelled by its last. By ISO 19407:2023 the last is taken as the foot and two size units
for adults, as 1.08 times the foot for children; each scale then counts its unit from its own zero:

    EU    Paris points of 2/3 cm
    UK    barleycorns of 1/3 in from 25 of them (children: from 12)
    US    the UK's count and 1 for men, 2 for women, 1/3 for children; after 13 1/2 a child's count
          starts at 1 again, here called US youth

Mondopoint (ISO 9407:2019) is the length of the foot in mm, the Japanese size (JIS S 5037:1998) the
same in cm. So every scale is a straight line of the foot's length.

A size is never a measurement. Its spread has three parts, independent of each other: feet of people
who fit one shoe differ, labels differ by maker, and a size stands for all feet up to half a step
away. Besides, shops often count women's US sizes from the men's by 1.5 where the standard has 1.
`foot_length` says how unsure it is, and whoever shows it should add: measure if you can.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from engine.sources import Cited

# --- Constants of the scales ---------------------------------------------------------------------
_ISO = (
    "ISO 19407:2023, Footwear - Sizing - Conversion of sizing systems (through third-hand tables)"
)
PARIS_POINT = Cited(20 / 3, _ISO + ": 2/3 cm")  # mm
BARLEYCORN = Cited(25.4 / 3, _ISO + ": 1/3 in")  # mm
ADULT_TOE_ROOM = Cited(2.0, _ISO)  # size units by which an adult's last is longer than the foot
CHILD_LAST = Cited(1.08, _ISO)  # a child's last over the foot
UK_ADULT_START = Cited(25.0, _ISO)  # barleycorns of last at size 0
UK_CHILD_START = Cited(12.0, _ISO)
US_MEN_OVER_UK = Cited(1.0, _ISO)
US_WOMEN_OVER_UK = Cited(2.0, _ISO)
US_CHILD_OVER_UK = Cited(1 / 3, _ISO)
US_YOUTH_RESTART = Cited(13.0, "after the child's 13 1/2 the count starts at 1 again: from memory")
JAPAN_UNIT = Cited(10.0, "JIS S 5037:1998: centimetres of foot length")  # mm
MONDOPOINT_UNIT = Cited(1.0, "ISO 9407:2019: millimetres of foot length")  # mm
JAPAN_STEP = Cited(0.5, "JIS S 5037:1998")  # units from one size to the next
MONDOPOINT_STEP = Cited(7.5, "ISO 9407:2019: 5 or 7.5; the wider")  # units, as above
LABEL_SPREAD = Cited(0.5, "assumption: half a size, as makers differ; no published source")  # sizes
PEOPLE_SPREAD = Cited(4.0, "assumption: feet that wear one shoe; no published source")  # mm, one sd
SHOP_HABIT = Cited(0.5, "retail habit, men + 1.5 where ISO 19407 has + 1; from memory")  # sizes
# -------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Scale:
    """size = per_mm * foot length + start; sensible sizes; one sd of the foot's length, mm."""

    per_mm: float
    start: float
    smallest: float
    largest: float
    sd: float


def _scale(
    unit: float,
    start: float,
    sizes: tuple[float, float],
    *,
    last: float = 1.0,
    step: float = 1.0,
    doubt: float = 0.0,
) -> _Scale:
    """A scale of `unit` mm whose last is `last` times the foot; a size is `step` units.

    `doubt` adds to the label spread, in sizes. Half a size of spread is never taken for less than
    half a Paris point: finer labels do not make feet better known.
    """
    mm = unit / last
    label = LABEL_SPREAD * max(step * mm, PARIS_POINT)
    rounding = step * mm / math.sqrt(12)  # a step's feet, spread evenly
    spread = math.hypot(PEOPLE_SPREAD, label, rounding)
    return _Scale(1 / mm, start, sizes[0], sizes[1], math.hypot(spread, doubt * step * mm))


_UK = ADULT_TOE_ROOM - UK_ADULT_START
_US_CHILD = US_CHILD_OVER_UK - UK_CHILD_START

# The sizes are those that are sold, from toddler or smallest adult to the largest made in series:
# no published source; they serve to catch a slip of the pen or the wrong scale.
_SCALES: dict[str, _Scale] = {
    "EU": _scale(PARIS_POINT, ADULT_TOE_ROOM, (16, 52)),
    "UK": _scale(BARLEYCORN, _UK, (1, 17)),
    "US men": _scale(BARLEYCORN, _UK + US_MEN_OVER_UK, (2, 18)),
    "US women": _scale(BARLEYCORN, _UK + US_WOMEN_OVER_UK, (3, 18), doubt=SHOP_HABIT),
    "Mondopoint": _scale(MONDOPOINT_UNIT, 0.0, (90, 340), step=MONDOPOINT_STEP),
    "Japan": _scale(JAPAN_UNIT, 0.0, (9, 34), step=JAPAN_STEP),
    "EU child": _scale(PARIS_POINT, 0.0, (16, 40), last=CHILD_LAST),
    "UK child": _scale(BARLEYCORN, -UK_CHILD_START, (0, 13.5), last=CHILD_LAST),
    "US child": _scale(BARLEYCORN, _US_CHILD, (0, 13.5), last=CHILD_LAST),
    "US youth": _scale(BARLEYCORN, _US_CHILD - US_YOUTH_RESTART, (1, 7), last=CHILD_LAST),
}

SYSTEMS = tuple(_SCALES)
RANGE: dict[str, tuple[float, float]] = {
    system: (scale.smallest, scale.largest) for system, scale in _SCALES.items()
}
"""Smallest and largest size that makes sense, by system; the caller says so in words."""


def foot_length(system: str, size: float) -> tuple[float, float]:
    """The length of the foot that a size is meant for, and its standard deviation, both in mm.

    Works outside RANGE too. Raises KeyError for a system not in SYSTEMS.
    """
    scale = _SCALES[system]
    return (size - scale.start) / scale.per_mm, scale.sd


def size(system: str, mm: float) -> float:
    """The size, not rounded to what is sold, for a foot of this length in mm; KeyError as above."""
    scale = _SCALES[system]
    return scale.per_mm * mm + scale.start
