"""A stretch that lies exactly on a bound is judged the same in inches and in centimetres.

Girths and gauges are worked out as fractions, so that a bound is met exactly in one of the systems:
an inch is 25.4 mm, exact by the international yard and pound agreement of 1959. In the other system
the same figures are written out, to nine decimals where they have no end.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine import sources
from tests.asking import answer, drawn
from tests.engine.drawn_requests import Json

INCH = Fraction("25.4")
HEM = Fraction(str(sources.HEM_PULL_SHARE)) * Fraction(str(sources.PLAIN_PULL))
EASILY = HEM * Fraction(str(sources.GOES_ON_EASILY_SHARE))


def exact(bounds: tuple[float, ...]) -> list[Fraction]:
    return [Fraction(str(float(bound))) for bound in bounds]


PLACES = {
    "ball_girth": exact(sources.BALL_STRETCH),
    "ankle_girth": exact(sources.LEG_STRETCH),
    "calf_girth": exact(sources.LEG_STRETCH),
    "heel_girth": [Fraction(1), HEM, EASILY],  # getting it on, over a hung hem
}
# Halves of a percent, where the words would round up or down.
HALVES = [Fraction(n, 1000) for n in range(905, 1405, 10)]


def ends(value: Fraction) -> bool:
    """Whether a fraction has an end as a decimal, within nine places."""
    return (value * 10**9).denominator == 1


def text(value: Fraction) -> str:
    return f"{float(round(value, 9)):.9f}"


def request(metric: bool, slots: int, per_mm: Fraction, mm: dict[str, Fraction]) -> Json:
    """The same request with every figure in one system."""
    unit, size = ("cm", Fraction(10)) if metric else ("in", INCH)
    over, long = ("10 cm", Fraction(100)) if metric else ("in", INCH)
    return {
        "units": unit,
        "foot": {
            "length": f"{text(Fraction(240) / size)} {unit}",
            **{name: f"{text(girth / size)} {unit}" for name, girth in mm.items()},
        },
        "cylinder": {"slots": slots},
        "fabric": {
            "stitches": f"{text(per_mm * long)} / {over}",
            "rounds": f"{text(per_mm * long * Fraction('1.3'))} / {over}",
        },
        "sock": {"leg": {"height": "35.56 cm"}, "cuff": {"kind": "hem", "rounds": 20}},
    }


def judged(one: Json) -> list[tuple[Any, ...]]:
    """What plan, drawing and shelf say of each place, without lengths; nothing of no plan."""
    found = answer({"do": "page", "request": one})
    if "errors" in found:
        return []
    shelf = {
        "cylinders": [{"slots": one["cylinder"]["slots"]}],
        "yarns": [{"name": "a", **one["fabric"]}],
    }
    (ranked,) = answer({"do": "shelf", "request": one, "shelf": shelf})["best"]
    return [
        *((p["place"], p["level"], p["verdict"], p["words"]) for p in found["plan"]["fit"]),
        *((r["place"], r["level"], r["verdict"]) for r in ranked["reasons"]),
        (ranked["verdict"], drawn(found["picture"]).count("wider")),
    ]


@given(
    place=st.sampled_from(sorted(PLACES)),
    at=st.integers(0, 60),
    slots=st.integers(20, 50).map(lambda half: 2 * half),
    eighths=st.integers(40, 84),
    metric=st.booleans(),
)
def test_on_a_bound_both_systems_are_judged_alike(
    place: str, at: int, slots: int, eighths: int, metric: bool
) -> None:
    bounds = [*PLACES[place], *HALVES]
    per_mm = Fraction(eighths, 8) / INCH if not metric else Fraction(eighths, 2) / 100
    girth = bounds[at % len(bounds)] * slots / per_mm
    size = Fraction(10) if metric else INCH
    assume(ends(girth / size))
    mm = {place: girth}
    one = judged(request(True, slots, per_mm, mm))
    assume(one)
    assert one == judged(request(False, slots, per_mm, mm))


@pytest.mark.parametrize("metric", [False, True])
@pytest.mark.parametrize(
    ("at", "level"), list(enumerate(("loose", "good", "tight", "bad"))), ids=lambda one: str(one)
)
def test_a_bound_belongs_to_what_is_above_it(metric: bool, at: int, level: str) -> None:
    """Ball on 60 slots at 7.5 stitches per inch: a tube of 8 in, common practice."""
    per_mm = Fraction("7.5") / INCH
    girth = exact(sources.BALL_STRETCH)[at] * 8 * INCH
    found = judged(request(metric, 60, per_mm, {"ball_girth": girth}))
    assert next(one[1] for one in found if one[0] == "ball") == level
