"""The bands across the drawn sock that show how far it stretches when worn, and their words.

A band lies wherever `fit` judges the sock worn, its percent and verdict beside it: the denser the
band, the tighter the sock. A band stays on its own part: where the toe of a short sock reaches
over the ball, it is drawn at the toe's edge. Classes: `stretch`, `stretch-baggy` ...
`stretch-cuts`, `lead` (from a band to its words), `worn` (the words).
"""

from __future__ import annotations

from collections.abc import Sequence

from engine import sources
from engine.drawing.outline import CLEAR, LETTER, Outline, n, path, text
from engine.judge.fit import Place
from engine.read import units
from engine.read.units import reaches
from engine.sock.sock import Sock

_LINE = 1.15  # height of a line, in sizes of type

Band = tuple[Place, float, str]  # a place, the height of its band in mm, the band's path


def density(place: Place) -> str:
    """Return the name of a place's band, from the emptiest to the fullest.

    They are `baggy`, `loose`, `good`, `tight` and `cuts`.
    """
    if place.level == "bad":
        return "cuts" if reaches(place.stretch, 1) else "baggy"
    return place.level


def percent(place: Place) -> str:
    """Return place and stretch; below 1 as `fit` words it, by how much the sock is wider."""
    if not reaches(place.stretch, 1):
        return f"{place.place} {units.percent(1 / place.stretch - 1)} % wider"
    return f"{place.place} +{units.percent(place.stretch - 1)} %"


def find(at: Outline, sock: Sock, places: Sequence[Place]) -> list[Band]:
    """Return each place where the sock is worn, the height of its band and the band's path."""
    foot = sock.measures["length"].value
    ankle = at.sole - sources.ANKLE_HEIGHT_OVER_FOOT * foot
    reached = ankle >= at.fold
    # Where a wide tube's instep lies above the ankle, the band stays on the leg.
    ankle = max(min(ankle, at.instep - CLEAR), at.fold + CLEAR)
    calf = max(at.sole - sources.CALF_HEIGHT_OVER_FOOT * foot, at.fold + CLEAR)
    lean = max(at.toe_top - at.toe_start, 0.0)  # as the toe's edge leans in a very short sock
    # Round heel and ankle bend: only the upper half, for the heel's count stands on the lower one.
    heel = f"M{n(at.middle[0])} {n(at.half)}L{n(at.front)} {n(at.instep)}"
    bands = {
        "cuff": (at.top, _across(at, at.top)),
        "calf": (calf, _across(at, calf)),
        "ankle": (ankle, _across(at, ankle)),
        "heel": (at.sole, heel),
        "ball": (
            at.sole,
            f"M{n(at.ball + lean)} {n(at.instep)}L{n(at.ball)} {n(at.sole)}",
        ),
    }
    found = {place.place: place for place in places if place.level != "apart"}
    if not reached:
        found.pop("ankle", None)
    return [(found[name], *band) for name, band in bands.items() if name in found]


def _across(at: Outline, y: float) -> str:
    return f"M{n(at.back)} {n(y)}H{n(at.front)}"


def verdict(place: Place) -> str:
    """Return the verdict, with a mark where it is not sure."""
    return place.verdict if place.sure == "plain" else f"{place.verdict}?"


def _label(at: Outline, place: Place, letters: float) -> list[str]:
    """Return the words of a band in lines of so many letters, parted between words."""
    lines = list[str]()
    for words in (percent(place), verdict(place)):
        line = ""
        for word in words.replace(" %", "\u00a0%").split(" "):
            if line and len(line) + 1 + len(word) > letters:
                lines.append(line)
                line = word
            else:
                line = f"{line} {word}".strip()
        lines.append(line)
    return lines


def beside(at: Outline, worn: list[Band]) -> tuple[list[str], float]:
    """Return the words to the right of the leg, and by how much they want more room above."""
    left, deep = at.front + 2 * CLEAR, _LINE * at.small
    letters = (at.right - left) / (LETTER * at.small)
    labels = [
        (y, _label(at, place, letters))
        for place, y, _ in worn
        if place.place in ("cuff", "calf", "ankle")
    ]
    floor = at.instep - (2 * at.big if at.foot_narrow else at.small)
    tops = list[float]()
    # From the lowest up: each stands beside its band, or as low as the next one lets it.
    for y, lines in reversed(labels):
        tops.append(min(y - at.small * 0.6, floor - len(lines) * deep))
        floor = tops[-1] - at.small * 0.5
    found = list[str]()
    for (y, lines), top in zip(labels, reversed(tops), strict=True):
        reach = f"M{n(at.front)} {n(y)}L{n(left - 2)} {n(top + at.small * 0.6)}"
        found.append(path("lead", reach))
        found += [
            text("worn", left, top + at.small + deep * i, line, at.small, "start")
            for i, line in enumerate(lines)
        ]
    return found, (2.0 - tops[-1]) if tops else 0.0


def room_below(at: Outline) -> float:
    """Return how deep in mm the words under the sole are."""
    return 2 * _LINE * at.small + 6


def below(at: Outline, worn: list[Band]) -> list[str]:
    """Return the words of heel and ball under the sole, two lines each."""
    long = at.tip - at.back
    where = {"heel": (at.back, "start"), "ball": (at.tip - 0.21 * long, "middle")}
    return [
        text(
            "worn",
            where[place.place][0],
            at.sole + 6 + at.small * (1 + _LINE * i),
            line,
            at.small,
            where[place.place][1],
        )
        for place, _, _ in worn
        if place.place in where
        for i, line in enumerate((percent(place), verdict(place)))
    ]
