"""The bands across the drawn sock that show how far it stretches when worn, and their words.

A band lies wherever `fit` judges the sock worn, its percent beside it: the denser the band, the
tighter the sock. A band stays on its own part. Classes: `stretch`, `stretch-baggy` ...
`stretch-cuts`, `worn` (the words).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple, cast

from engine import sources
from engine.drawing.outline import CLEAR, Outline
from engine.judge.fit import Place
from engine.read import units
from engine.read.units import reaches
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sock.sock import Sock

Drawable = Literal["cuff", "calf", "ankle", "heel", "ball"]


class Band(NamedTuple):
    """Where a place's band runs."""

    place: Place
    start: complex
    end: complex


def density(place: Place) -> str:
    """Return the name of a place's band, from the emptiest to the fullest.

    They are `baggy`, `loose`, `good`, `tight` and `cuts`.
    """
    if place.level == "bad":
        return "cuts" if reaches(place.stretch, 1) else "baggy"
    return place.level


def percent(place: Place) -> Message:
    """Return place and stretch as `fit` words it: below 1, by how much the sock is wider."""
    at = cast("Drawable", place.place)
    wider = not reaches(place.stretch, 1)
    percent = units.percent(1 / place.stretch - 1 if wider else place.stretch - 1)
    if not percent:
        return say.worn_alike(place=at)
    return (say.worn_wider if wider else say.worn_stretched)(place=at, percent=percent)


def verdict(place: Place) -> Words:
    """Return the verdict, with a mark where it is not sure."""
    return place.verdict if place.sure == "plain" else say.not_sure(verdict=place.verdict)


def find(at: Outline, sock: Sock, places: Sequence[Place]) -> list[Band]:
    """Return each place where the sock is worn and the ends of its band, from the top down."""
    foot = sock.measures["length"].value
    ankle = -sources.ANKLE_HEIGHT_OVER_FOOT * foot
    found = {place.place: place for place in places if place.level != "apart"}
    if ankle < at.fold:
        found.pop("ankle", None)
    # Where a wide tube's instep lies above the ankle, the band stays on the leg.
    ankle = max(min(ankle, at.bend - CLEAR), at.fold + CLEAR)
    calf = max(-sources.CALF_HEIGHT_OVER_FOOT * foot, at.fold + CLEAR)
    rim = next(one for one in at.laid if one.part == "cuff").course(0.0)
    (calf_left, calf_right), (left, right) = at.across(calf), at.across(ankle)
    ends = {
        "cuff": (rim.start, rim.end),
        "calf": (complex(calf_left, calf), complex(calf_right, calf)),
        "ankle": (complex(left, ankle), complex(right, ankle)),
        # Round heel and ankle bend: only the upper half, for the heel's count is on the lower one.
        "heel": (at.middle, at.shin.corners[-1]),
        "ball": (complex(at.ball, -at.foot), complex(at.ball, 0)),
    }
    return [Band(found[name], *band) for name, band in ends.items() if name in found]
