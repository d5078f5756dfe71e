"""Yarn: how much a pair takes, section by section, waste yarn apart.

Yarn in a section = its stitches x the loop length; its weight follows from the yarn's tex (g per
1,000 m). Ends and the grafting tail are a section of their own.
"""

from __future__ import annotations

from collections.abc import Mapping

from engine import sources
from engine.fabric import Fabric

SOCKS = 2


def lengths(stitches: Mapping[str, float], slots: int, fabric: Fabric) -> dict[str, float]:
    """Return the yarn in mm for a pair, by section, from the stitches of one sock.

    A stitch of another loop than the foot's counts by its loop over the foot's (`Sock.loops`).
    """
    found = {part: SOCKS * count * fabric.loop for part, count in stitches.items()}
    flat_width = slots / fabric.stitches / 2
    ends = 2 * sources.TAIL + sources.GRAFTING_TAIL_WIDTHS * flat_width
    return {**found, "ends": SOCKS * ends}


def waste_length(cuff_needles: int, slots: int, fabric: Fabric) -> float:
    """Return the waste yarn in mm for a pair: rounds before the cuff and after the toe."""
    return SOCKS * sources.WASTE_ROUNDS * (cuff_needles + slots) * fabric.loop


def grams(mm: float, fabric: Fabric) -> float:
    """Return the weight in g of a length of the yarn in mm."""
    return mm * fabric.tex / 1e6
