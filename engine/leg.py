"""The leg: plain rounds between cuff and heel.

Left out, it is as long as the customary 50 rounds look under an average foot: about half the foot
length (common practice, no published source).
"""

from __future__ import annotations

from engine.fabric import Fabric
from engine.fields import Fields, Span
from engine.sources import LEG_OVER_FOOT
from engine.units import nearest

_ROUNDS = Span("the rounds of a leg", 0, 600)


def read(fields: Fields) -> int | None:
    """Return the leg rounds of a request, None where they are left out or wrong."""
    fields.only(("rounds",))
    return fields.count("rounds", _ROUNDS)


def usual_rounds(foot_length: float, fabric: Fabric) -> int:
    """Return leg rounds in the customary proportion to a foot of `foot_length` mm."""
    return nearest(LEG_OVER_FOOT * foot_length * fabric.rounds)
