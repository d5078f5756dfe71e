"""Fit: how far the fabric stretches at each place of the foot and leg, and what that feels like.

Wearing stretch is body girth over the fabric's relaxed girth: below 1 the sock is baggy, about 1.05
to 1.18 is comfortable at the ball, above 1.25 tight. Over the heel the question is another one:
whether cuff and leg stretch far enough to get on at all; over the instep, where it was measured,
whether the foot does. The bounds are common practice with no published source; a swatch pulled by
hand replaces the one for getting on.

How sure a verdict is: the stretch is known to the errors of tape (or guess) and of the next sock's
stitches, so its logarithm is taken as normal, and each verdict has its chance. From 3 in 4 on it is
said plainly, from 1 in 2 on as likely; below that it cannot be told.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import erfc, hypot, log, sqrt
from typing import Literal, NamedTuple, assert_never

from engine import sources
from engine.fabric.fabric import Fabric
from engine.people.foot import Measure
from engine.read import units
from engine.read.units import reaches
from engine.sections.cuff import Cuff

Sure = Literal["plain", "likely", "open"]
_PLAIN, _LIKELY = 0.75, 0.5
_LEVELS = ("bad", "loose", "good", "tight", "bad")
_BALL = ("baggy", "a little loose", "comfortable", "snug", "tight")
_CUFF = ("slides down", "may slide", "holds comfortably", "holds firmly", "cuts in")
_LEG = ("slack", "loose", "comfortable", "snug", "tight")

TITLES = {
    "ball": "Ball of the foot",
    "heel": "Round the heel",
    "over_heel": "Getting it on",
    "instep": "Over the instep",
    "ankle": "Ankle",
    "calf": "Calf",
    "cuff": "Cuff",
}
_PARTS = {
    **{"ball": "foot", "heel": "heel", "ankle": "ankle", "calf": "calf"},
    **{"over_heel": "heel", "instep": "instep"},
}
_CURES = {
    ("ball", "bad-"): "A smaller stitch, or a cylinder with fewer needles, would hold it.",
    ("ball", "loose"): "A slightly smaller stitch would hold it better.",
    ("ball", "tight"): "Fine for a snug wearer; else a slightly larger stitch.",
    ("ball", "bad+"): "A larger stitch, or a cylinder with more needles, would ease it.",
    ("heel", "bad-"): "Leave more heel needles in work, for a shallower heel.",
    ("heel", "loose"): "Leave a few more heel needles in work.",
    ("heel", "tight"): "More needles in the heel, or fewer left in work, would make it deeper.",
    (
        "heel",
        "bad+",
    ): "More needles in the heel, or fewer left in work; a larger stitch helps most.",
    ("ankle", "bad-"): "A smaller stitch for the last rounds of the leg would hold it.",
    ("ankle", "loose"): "Usual for a tube that fits the ball; a smaller stitch there cures it.",
    ("ankle", "tight"): "A slightly larger stitch in the leg would ease it.",
    ("ankle", "bad+"): "Too tight for comfort: use a larger stitch in the leg.",
    ("calf", "bad-"): "A smaller stitch up there would hold it.",
    ("calf", "loose"): "It may slide down; a smaller stitch up there would hold it.",
    ("calf", "tight"): "A slightly larger stitch towards the top would ease it.",
    ("calf", "bad+"): "Too tight for comfort: larger stitches towards the top, or a shorter leg.",
}


class Girths(NamedTuple):
    """Relaxed girths of a leg in mm; `top` is that under the cuff."""

    narrowest: float
    ankle: float
    calf: float
    top: float


@dataclass(frozen=True)
class Place:
    """The fit at one place: girths in mm, `stretch` as their ratio, and what it means.

    `chance` is how likely the verdict is right; 1 where that is not worked out.
    """

    place: str
    body: float
    fabric: float
    level: str
    verdict: str
    words: str
    measured: bool
    chance: float = 1.0

    @property
    def sure(self) -> Sure:
        """Return how the verdict may be said, by its `chance` of being right."""
        return "plain" if self.chance >= _PLAIN else "likely" if self.chance >= _LIKELY else "open"

    @property
    def stretch(self) -> float:
        """Return body girth over relaxed fabric girth."""
        return self.body / self.fabric


def wished(bounds: tuple[float, ...], closer: float) -> tuple[float, ...]:
    """Return the bounds where `closer` more of stretch is wished: what is comfortable moves."""
    low_bad, low, high, high_bad = bounds
    return low_bad, low + closer, high + closer, high_bad


def chances(stretch: float, sd: float, bounds: tuple[float, ...]) -> tuple[float, ...]:
    """Return the chance of each of the five verdicts of a stretch with a relative error `sd`."""
    if sd <= 0:
        return tuple(float(at == units.step(stretch, bounds)) for at in range(len(bounds) + 1))
    below = [erfc(log(stretch / bound) / sd / sqrt(2)) / 2 for bound in bounds]
    ends = zip((0.0, *below), (*below, 1.0), strict=True)
    return tuple(round(high - low, 6) for low, high in ends)  # alike in cm and in inches


def _worn(
    place: str,
    body: Measure,
    tube: tuple[float, float],
    bounds: tuple[float, ...],
    verdicts: tuple[str, ...],
) -> Place:
    """Judge a place where the sock stays: `bounds` part the five `verdicts`.

    `tube` is the sock's relaxed girth in mm there and its relative error.
    """
    girth, sd = tube
    stretch = body.value / girth
    likely = chances(stretch, hypot(body.sd / body.value, sd), bounds)
    step = units.step(stretch, bounds)
    level, verdict = _LEVELS[step], verdicts[step]
    side = {0: "-", 4: "+"}.get(step, "")
    cure = _CURES.get((place, level + side), "")
    if level == "bad" and not body.measured and _may_be_good(body, girth, bounds):
        level = _LEVELS[1 if step == 0 else 3]
        cure = "That is by a guess: measure it to be sure."
    found = Place(place, body.value, girth, level, verdict, "", body.measured, likely[step])
    said = _said(found.sure, step, verdicts, likely)
    if found.sure == "open":
        cure = "" if body.measured else "Measure it to be sure."
    words = f"{_stretch_words(place, stretch)}: {said}. {cure}".strip()
    return replace(found, words=words)


def _said(sure: Sure, step: int, verdicts: tuple[str, ...], likely: tuple[float, ...]) -> str:
    """Return a verdict as it may be said; which of two it is, where that cannot be told."""
    match sure:
        case "plain":
            return verdicts[step]
        case "likely":
            return f"likely {verdicts[step]}"
        case "open":
            beside = (at for at in (step - 1, step + 1) if 0 <= at < len(verdicts))
            low, high = sorted((step, max(beside, key=lambda at: likely[at])))
            return f"{verdicts[low]} or {verdicts[high]}, it cannot be told which"
        case _:
            assert_never(sure)


def feels(stretch: float, bounds: tuple[float, ...]) -> tuple[str, str]:
    """Return level and verdict of a stretch on the foot."""
    step = units.step(stretch, bounds)
    return _LEVELS[step], _BALL[step]


def _may_be_good(body: Measure, girth: float, bounds: tuple[float, ...]) -> bool:
    """Tell whether the guessed girth's interval reaches into what is comfortable."""
    return not reaches(body.low / girth, bounds[2]) and reaches(body.high / girth, bounds[1])


def _stretch_words(place: str, stretch: float) -> str:
    if not reaches(stretch, 1):
        percent = units.percent(1 / stretch - 1)
        wider = f"{percent} % wider" if percent else "just wider"
        return f"The sock is {wider} than the {_PARTS[place]}"
    percent = units.percent(stretch - 1)
    return f"Stretches {percent} %" if percent else "Lies without stretch"


def _getting_on(heel: Measure, sock: Girths, cuff: Cuff, fabric: Fabric) -> Place:
    """Judge whether cuff and leg pass over the heel, whichever gives less."""
    girth, pull = sock.top, cuff.pull(fabric, sock.top)
    if not reaches(sock.narrowest * fabric.pull / (girth * pull), 1):
        girth, pull = sock.narrowest, fabric.pull
    whence = _whence(fabric.pull_measured or cuff.pulled is not None)
    if fabric.pull_measured and cuff.pulled is None and not reaches(pull, fabric.pull):
        whence += f", less what a {cuff.name} takes of it"
    cure = "A larger stitch, more needles, or a ribbed top would let it pass."
    return _passing("over_heel", heel, girth, pull, whence, cure)


def _over_the_instep(instep: Measure, tube: float, fabric: Fabric) -> Place:
    """Judge whether the foot of the sock passes over the instep: common practice, no source."""
    cure = "A larger stitch, or more needles, would let it pass."
    return _passing("instep", instep, tube, fabric.pull, _whence(fabric.pull_measured), cure)


def _whence(pulled: bool) -> str:
    return "as your swatch was pulled" if pulled else "a usual guess; pull a swatch to know"


def _passing(place: str, body: Measure, girth: float, pull: float, whence: str, cure: str) -> Place:
    """Judge whether a sock of relaxed `girth` mm that gives `pull` times it passes over a place."""
    what, needed = _PARTS[place], body.value / girth
    if reaches(pull * sources.GOES_ON_EASILY_SHARE, needed):
        level, verdict = "good", "goes on easily"
    elif reaches(pull, needed):
        level, verdict = "tight", "goes on with a pull"
    else:
        level, verdict = "bad", "may not go on"
    if reaches(1, needed):
        words = f"{verdict.capitalize()}: it need not stretch to pass the {what}."
        return Place(place, body.value, girth, level, verdict, words, body.measured)
    words = (
        f"{verdict.capitalize()}: it must stretch to {units.times(needed)} times its girth to "
        f"pass the {what}, and gives about {units.times(pull)} ({whence})."
    )
    if level == "bad":
        words += f" {cure}"
    return Place(place, body.value, girth, level, verdict, words, body.measured)


def _calf(
    calf: Measure,
    tube: tuple[float, float],
    top: float,
    foot_length: float,
    pull: float,
    bounds: tuple[float, ...],
) -> Place:
    """Judge the top of the leg against the calf, where the sock gets near it."""
    girth, height = tube[0], sources.CALF_HEIGHT_OVER_FOOT * foot_length
    if not reaches(top / height, sources.CALF_REACHED):
        verdict = "not reached"
        words = "The sock ends below the fullest part of the calf."
        return Place("calf", calf.value, girth, "apart", verdict, words, calf.measured)
    if not reaches(pull, calf.low / girth):
        verdict, needed = "cannot pass", units.times(calf.value / girth)
        words = (
            f"It would have to stretch to {needed} times its girth and gives about "
            f"{units.times(pull)}: it cannot be worn this high. A shorter leg, or larger stitches."
        )
        return Place("calf", calf.value, girth, "bad", verdict, words, calf.measured)
    return _worn("calf", calf, tube, bounds, _LEG)


def grip(body: float, girth: float, give: float, measured: bool, ribbed: bool = False) -> Place:
    """Judge whether a cuff of relaxed `girth` mm holds a leg of `body` mm where the sock ends.

    What counts is the share of its `give` (pulled over relaxed girth) that is in use: nothing in
    use and it slides, nearly all and it cuts in. The bounds are common practice, no published
    source.
    """
    used = (body / girth - 1) / (give - 1)
    step = units.step(used, sources.CUFF_GIVE)
    level, verdict = _LEVELS[step], _CUFF[step]
    if not measured and level != "good":
        level, verdict = _LEVELS[1 if step < 2 else 3], f"perhaps {verdict}"
    percent = units.percent(used)
    in_use = f"{percent} % of what it gives is in use" if percent > 0 else "no stretch in use"
    words = f"{verdict.capitalize()} where the sock ends: {in_use}."
    or_rib = "" if ribbed else ", or a rib,"
    if not measured:
        words += " The leg there is guessed: measure it to be sure."
    elif level in ("loose", "bad") and step < 2:
        words += f" A smaller stitch{or_rib} would hold it."
    elif level != "good":
        words += f" A larger stitch at the top{or_rib} would ease it."
    return Place("cuff", body, girth, level, verdict, words, measured)


def judge(
    measures: dict[str, Measure],
    tube: float,
    heel: float,
    cuff: Cuff,
    fabric: Fabric,
    top_above_floor: float,
    along: Girths | None = None,
    closer: float = 0.0,
) -> list[Place]:
    """Return the fit at ball, heel, over heel and measured instep, at ankle and calf.

    `tube` and `heel` are the sock's relaxed girths in mm, `top_above_floor` its height in mm;
    `along` the girths of a leg that is shaped, `closer` the stretch more that is wished.
    """
    sock, sd = along or Girths(tube, tube, tube, tube), fabric.stitches_sd
    at_ball, on_leg = wished(sources.BALL_STRETCH, closer), wished(sources.LEG_STRETCH, closer)
    instep = measures.get("instep_girth")
    return [
        _worn("ball", measures["ball_girth"], (tube, sd), at_ball, _BALL),
        _worn("heel", measures["heel_girth"], (heel, sd), sources.HEEL_STRETCH, _BALL),
        _getting_on(measures["heel_girth"], sock, cuff, fabric),
        *([] if instep is None else [_over_the_instep(instep, tube, fabric)]),
        _worn("ankle", measures["ankle_girth"], (sock.ankle, sd), on_leg, _LEG),
        _calf(
            measures["calf_girth"],
            (sock.calf, sd),
            top_above_floor,
            measures["length"].value,
            cuff.pull(fabric, sock.top),
            on_leg,
        ),
    ]
