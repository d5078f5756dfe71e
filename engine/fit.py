"""Fit: how far the fabric stretches at each place of the foot and leg, and what that feels like.

Wearing stretch is body girth over the fabric's relaxed girth: below 1 the sock is baggy, about 1.05
to 1.18 is comfortable at the ball, above 1.25 tight. Over the heel the question is another one:
whether cuff and leg stretch far enough to get on at all. The bounds are common practice with no
published source; a swatch pulled by hand replaces the one for getting on.
"""

from __future__ import annotations

from dataclasses import dataclass

from engine import sources
from engine.cuff import Cuff
from engine.fabric import Fabric
from engine.foot import Measure

_LEVELS = ("bad", "loose", "good", "tight", "bad")
_BALL = ("baggy", "a little loose", "comfortable", "snug", "tight")
_LEG = ("slack", "loose", "comfortable", "snug", "tight")

TITLES = {
    "ball": "Ball of the foot",
    "heel": "Round the heel",
    "over_heel": "Getting it on",
    "ankle": "Ankle",
    "calf": "Calf",
}
_CURES = {
    ("ball", "bad-"): "A smaller stitch, or a cylinder with fewer needles, would hold it.",
    ("ball", "loose"): "A slightly smaller stitch would hold it better.",
    ("ball", "tight"): "Fine for a snug wearer; else a slightly larger stitch.",
    ("ball", "bad+"): "A larger stitch, or a cylinder with more needles, would ease it.",
    ("heel", "bad-"): "Leave more needles in the heel for a shallower one.",
    ("heel", "loose"): "Leave a few more needles in the heel.",
    ("heel", "tight"): "Leave fewer needles in the heel for a deeper one.",
    ("heel", "bad+"): "Use more heel needles or leave fewer; a larger stitch helps most.",
    ("ankle", "bad-"): "A smaller stitch for the last rounds of the leg would hold it.",
    ("ankle", "loose"): "Usual for a tube that fits the ball; a smaller stitch there cures it.",
    ("ankle", "tight"): "A slightly larger stitch in the leg would ease it.",
    ("ankle", "bad+"): "Too tight for comfort: use a larger stitch in the leg.",
    ("calf", "bad-"): "A smaller stitch up there would hold it.",
    ("calf", "loose"): "It may slide down; a smaller stitch up there would hold it.",
    ("calf", "tight"): "A slightly larger stitch towards the top would ease it.",
    ("calf", "bad+"): "Too tight for comfort: larger stitches towards the top, or a shorter leg.",
}


@dataclass(frozen=True)
class Place:
    """The fit at one place: girths in mm, `stretch` as their ratio, and what it means."""

    place: str
    body: float
    fabric: float
    level: str
    verdict: str
    words: str
    measured: bool

    @property
    def stretch(self) -> float:
        """Return body girth over relaxed fabric girth."""
        return self.body / self.fabric


def _worn(
    place: str, body: Measure, girth: float, bounds: tuple[float, ...], verdicts: tuple[str, ...]
) -> Place:
    """Judge a place where the sock stays: `bounds` part the five `verdicts`."""
    stretch = body.value / girth
    step = sum(stretch >= bound for bound in bounds)
    level, verdict = _LEVELS[step], verdicts[step]
    side = {0: "-", 4: "+"}.get(step, "")
    cure = _CURES.get((place, level + side), "")
    words = f"{_stretch_words(stretch)}{': ' if verdict else ''}{verdict}. {cure}".strip()
    return Place(place, body.value, girth, level, verdict, words, body.measured)


def _stretch_words(stretch: float) -> str:
    percent = round((stretch - 1) * 100)
    if stretch < 1:
        wider = f"{-percent} % wider" if percent else "just wider"
        return f"The sock is {wider} than the leg or foot here"
    return f"Stretches {percent} %" if percent else "Lies without stretch"


def _getting_on(heel: Measure, girth: float, cuff: Cuff, fabric: Fabric) -> Place:
    """Judge whether cuff and leg pass over the heel."""
    needed, pull = heel.value / girth, cuff.pull(fabric)
    from_swatch = (
        "as your swatch was pulled"
        if fabric.pull_measured
        else "a usual guess; pull a swatch to know"
    )
    if needed <= pull * sources.GOES_ON_EASILY_SHARE:
        level, verdict = "good", "goes on easily"
    elif needed <= pull:
        level, verdict = "tight", "goes on with a pull"
    else:
        level, verdict = "bad", "may not go on"
    words = (
        f"{verdict.capitalize()}: it must stretch to {needed:.2f} times its girth to pass the "
        f"heel, and gives about {pull:.2f} ({from_swatch})."
    )
    if level == "bad":
        words += " A larger stitch, more needles, or a ribbed top would let it pass."
    return Place("over_heel", heel.value, girth, level, verdict, words, heel.measured)


def _calf(calf: Measure, girth: float, top: float, foot_length: float) -> Place:
    """Judge the top of the leg against the calf, where the sock gets near it."""
    height = sources.CALF_HEIGHT_OVER_FOOT * foot_length
    if top < sources.CALF_REACHED * height:
        verdict = "not reached"
        words = "The sock ends below the fullest part of the calf."
        return Place("calf", calf.value, girth, "apart", verdict, words, calf.measured)
    return _worn("calf", calf, girth, sources.LEG_STRETCH, _LEG)


def judge(
    measures: dict[str, Measure],
    tube: float,
    heel: float,
    cuff: Cuff,
    fabric: Fabric,
    top_above_floor: float,
) -> list[Place]:
    """Return the fit at ball, heel, over the heel, ankle and calf.

    `tube` and `heel` are the sock's relaxed girths in mm, `top_above_floor` its height in mm.
    """
    return [
        _worn("ball", measures["ball_girth"], tube, sources.BALL_STRETCH, _BALL),
        _worn("heel", measures["heel_girth"], heel, sources.HEEL_STRETCH, _BALL),
        _getting_on(measures["heel_girth"], tube, cuff, fabric),
        _worn("ankle", measures["ankle_girth"], tube, sources.LEG_STRETCH, _LEG),
        _calf(measures["calf_girth"], tube, top_above_floor, measures["length"].value),
    ]
