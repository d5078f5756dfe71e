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
from typing import Literal, NamedTuple, assert_never, get_args

from engine import sources
from engine.fabric.fabric import Fabric
from engine.people.foot import Measure
from engine.read import units
from engine.read.units import reaches
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Cuff

Sure = Literal["plain", "likely", "open"]
Feels = Literal[
    "baggy", "a_little_loose", "comfortable", "snug", "tight", "slack", "loose",
    "slides_down", "may_slide", "holds_comfortably", "holds_firmly", "cuts_in",
    "not_reached", "cannot_pass", "goes_on_easily", "goes_on_with_a_pull", "may_not_go_on",
]  # fmt: skip
Cure = Literal[
    "ball_baggy", "ball_loose", "ball_snug", "ball_tight",
    "heel_baggy", "heel_loose", "heel_snug", "heel_tight",
    "ankle_baggy", "ankle_loose", "ankle_snug", "ankle_tight",
    "calf_baggy", "calf_loose", "calf_snug", "calf_tight",
    "instep", "over_heel", "calf_cannot",
]  # fmt: skip
_PLAIN, _LIKELY = 0.75, 0.5
_LEVELS = ("bad", "loose", "good", "tight", "bad")
_BALL: tuple[Feels, ...] = ("baggy", "a_little_loose", "comfortable", "snug", "tight")
_LEG: tuple[Feels, ...] = ("slack", "loose", "comfortable", "snug", "tight")
_CUFF: tuple[Feels, ...] = (
    "slides_down", "may_slide", "holds_comfortably", "holds_firmly", "cuts_in",
)  # fmt: skip

Worn = Literal["ball", "heel", "ankle", "calf"]  # where the sock stays
Name = Literal["ball", "heel", "over_heel", "instep", "ankle", "calf", "cuff"]
_CURES: dict[tuple[Worn, int], Cure] = {
    ("ball", 0): "ball_baggy", ("ball", 1): "ball_loose",
    ("ball", 3): "ball_snug", ("ball", 4): "ball_tight",
    ("heel", 0): "heel_baggy", ("heel", 1): "heel_loose",
    ("heel", 3): "heel_snug", ("heel", 4): "heel_tight",
    ("ankle", 0): "ankle_baggy", ("ankle", 1): "ankle_loose",
    ("ankle", 3): "ankle_snug", ("ankle", 4): "ankle_tight",
    ("calf", 0): "calf_baggy", ("calf", 1): "calf_loose",
    ("calf", 3): "calf_snug", ("calf", 4): "calf_tight",
}  # fmt: skip
_PARTS: dict[Worn, Literal["foot", "heel", "ankle", "calf"]] = {
    "ball": "foot", "heel": "heel", "ankle": "ankle", "calf": "calf",
}  # fmt: skip
TITLES: dict[str, Message] = {name: say.place(place=name) for name in get_args(Name)}


class Girths(NamedTuple):
    """Relaxed girths of a leg in mm, were it plain; `top` is that under the cuff.

    `narrows` is the share that a rib leaves of them at ankle and calf, `foot` that of the foot; 1
    where it is plain.
    """

    narrowest: float
    ankle: float
    calf: float
    top: float
    narrows: tuple[float, float] = (1.0, 1.0)
    foot: float = 1.0


@dataclass(frozen=True)
class Place:
    """The fit at one place: girths in mm, `stretch` as their ratio, and what it means.

    `feels` is the verdict, `words` say it in sentences. `chance` is how likely it is right; 1 where
    that is not worked out. `perhaps` is whether it is said so, of a guess.
    """

    place: Name
    body: float
    fabric: float
    level: str
    feels: Feels
    words: Message
    measured: bool
    chance: float = 1.0
    perhaps: bool = False

    @property
    def verdict(self) -> Message:
        """Return the verdict as a few words."""
        found = say.verdict(feels=self.feels)
        return say.perhaps(verdict=found) if self.perhaps else found

    @property
    def sure(self) -> Sure:
        """Return how the verdict may be said, by its `chance` of being right."""
        return _sure(self.chance)

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
    place: Worn,
    body: Measure,
    tube: tuple[float, float],
    bounds: tuple[float, ...],
    verdicts: tuple[Feels, ...],
) -> Place:
    """Judge a place where the sock stays: `bounds` part the five `verdicts`.

    `tube` is the sock's relaxed girth in mm there and its relative error.
    """
    girth, sd = tube
    stretch = body.value / girth
    likely = chances(stretch, hypot(body.sd / body.value, sd), bounds)
    step = units.step(stretch, bounds)
    level, kind = _LEVELS[step], _CURES.get((place, step))
    cure = None if kind is None else say.cure(cure=kind)
    if level == "bad" and not body.measured and _may_be_good(body, girth, bounds):
        level = _LEVELS[1 if step == 0 else 3]
        cure = say.only_guessed()
    chance = likely[step]
    sure = _sure(chance)
    if sure == "open":
        cure = None if body.measured else say.measure_to_be_sure()
    words = _stretch_words(place, stretch, _said(sure, step, verdicts, likely))
    words = _in_turn(words, cure)
    return Place(place, body.value, girth, level, verdicts[step], words, body.measured, chance)


def _in_turn(*sentences: Message | None) -> Message:
    """Return those of some sentences that there are, one after the other."""
    there = tuple(one for one in sentences if one is not None)
    return there[0] if len(there) == 1 else say.in_turn(sentences=there)


def _sure(chance: float) -> Sure:
    return "plain" if chance >= _PLAIN else "likely" if chance >= _LIKELY else "open"


def _said(sure: Sure, step: int, verdicts: tuple[Feels, ...], likely: tuple[float, ...]) -> Message:
    """Return a verdict as it may be said; which of two it is, where that cannot be told."""
    match sure:
        case "plain":
            return say.verdict(feels=verdicts[step])
        case "likely":
            return say.likely(verdict=say.verdict(feels=verdicts[step]))
        case "open":
            beside = (at for at in (step - 1, step + 1) if 0 <= at < len(verdicts))
            both = sorted((step, max(beside, key=lambda at: likely[at])))
            low, high = (say.verdict(feels=verdicts[at]) for at in both)
            return say.either_of_two(verdict=low, other=high)
        case _:
            assert_never(sure)


def feels(stretch: float, bounds: tuple[float, ...]) -> tuple[str, Feels]:
    """Return level and verdict of a stretch on the foot."""
    step = units.step(stretch, bounds)
    return _LEVELS[step], _BALL[step]


def _may_be_good(body: Measure, girth: float, bounds: tuple[float, ...]) -> bool:
    """Tell whether the guessed girth's interval reaches into what is comfortable."""
    return not reaches(body.low / girth, bounds[2]) and reaches(body.high / girth, bounds[1])


def _stretch_words(place: Worn, stretch: float, verdict: Message) -> Message:
    if reaches(stretch, 1):
        percent = units.percent(stretch - 1)
        if not percent:
            return say.lies_without_stretch(verdict=verdict)
        return say.stretches(percent=str(percent), verdict=verdict)
    percent, part = units.percent(1 / stretch - 1), _PARTS[place]
    if not percent:
        return say.just_wider(part=part, verdict=verdict)
    return say.wider(part=part, percent=str(percent), verdict=verdict)


def _getting_on(heel: Measure, sock: Girths, cuff: Cuff, fabric: Fabric) -> Place:
    """Judge whether cuff and leg pass over the heel, whichever gives less."""
    girth, pull = sock.top, cuff.pull(fabric, sock.top)
    if not reaches(sock.narrowest * fabric.pull / (girth * pull), 1):
        girth, pull = sock.narrowest, fabric.pull
    whence = _whence(fabric.pull_measured or cuff.pulled is not None)
    if fabric.pull_measured and cuff.pulled is None and not reaches(pull, fabric.pull):
        whence = say.as_pulled_less(cuff=cuff.name)
    return _passing("over_heel", heel, girth, pull, whence)


def _over_the_instep(instep: Measure, tube: float, fabric: Fabric) -> Place:
    """Judge whether the foot of the sock passes over the instep: common practice, no source."""
    return _passing("instep", instep, tube, fabric.pull, _whence(fabric.pull_measured))


def _whence(pulled: bool) -> Message:
    return say.as_pulled() if pulled else say.pull_guessed()


def _passing(
    place: Literal["over_heel", "instep"],
    body: Measure,
    girth: float,
    pull: float,
    whence: Message,
) -> Place:
    """Judge whether a sock of relaxed `girth` mm that gives `pull` times it passes over a place."""
    needed = body.value / girth
    feels: Literal["goes_on_easily", "goes_on_with_a_pull", "may_not_go_on"]
    if reaches(pull * sources.GOES_ON_EASILY_SHARE, needed):
        level, feels = "good", "goes_on_easily"
    elif reaches(pull, needed):
        level, feels = "tight", "goes_on_with_a_pull"
    else:
        level, feels = "bad", "may_not_go_on"
    if reaches(1, needed):
        words = say.passes_at_rest(part="instep" if place == "instep" else "heel")
        return Place(place, body.value, girth, level, feels, words, body.measured)
    words = say.passes(feels=feels, needed=units.times(needed), gives=units.times(pull))
    cure = say.cure(cure=place) if level == "bad" else None
    words = _in_turn(words, whence, cure)
    return Place(place, body.value, girth, level, feels, words, body.measured)


def _calf(
    calf: Measure,
    tube: tuple[float, float],
    top: float,
    foot_length: float,
    pull: float,
    bounds: tuple[float, ...],
    narrows: float,
) -> Place:
    """Judge the top of the leg against the calf, where the sock gets near it."""
    girth, height = tube[0], sources.CALF_HEIGHT_OVER_FOOT * foot_length
    if not reaches(top / height, sources.CALF_REACHED):
        words = say.ends_below_calf()
        return Place("calf", calf.value, girth, "apart", "not_reached", words, calf.measured)
    if not reaches(pull, calf.low / girth):
        needed, gives = units.times(calf.value / girth), units.times(pull)
        words = _in_turn(
            say.cannot_pass_calf(needed=needed, gives=gives), say.cure(cure="calf_cannot")
        )
        return Place("calf", calf.value, girth, "bad", "cannot_pass", words, calf.measured)
    return _on_leg("calf", calf, tube, bounds, narrows)


def _on_leg(
    place: Literal["ankle", "calf"],
    body: Measure,
    tube: tuple[float, float],
    bounds: tuple[float, ...],
    narrows: float,
) -> Place:
    """Judge a place of the leg whose rib leaves a share `narrows` of a plain tube's girth.

    A rib opens before its stitches are stretched, so it holds from its own girth on, and grows
    tight where a plain tube of its stitches would: our derivation, no published source.
    """
    return _worn(place, body, *_narrowed(tube, bounds, narrows), _LEG)


def _narrowed(
    tube: tuple[float, float], bounds: tuple[float, ...], narrows: float
) -> tuple[tuple[float, float], tuple[float, ...]]:
    """Return girth with its error, and bounds, of a tube of which a rib leaves a share."""
    girth, sd = tube
    low_bad, low, high, high_bad = bounds
    return (girth * narrows, sd), (low_bad, low, high / narrows, high_bad / narrows)


def grip(body: float, girth: float, give: float, measured: bool, ribbed: bool = False) -> Place:
    """Judge whether a cuff of relaxed `girth` mm holds a leg of `body` mm where the sock ends.

    What counts is the share of its `give` (pulled over relaxed girth) that is in use: nothing in
    use and it slides, nearly all and it cuts in. The bounds are common practice, no published
    source.
    """
    used = (body / girth - 1) / (give - 1)
    step = units.step(used, sources.CUFF_GIVE)
    level, feels = _LEVELS[step], _CUFF[step]
    perhaps = not measured and level != "good"
    if perhaps:
        level = _LEVELS[1 if step < 2 else 3]
    cure = None
    if not measured:
        cure = say.leg_guessed()
    elif step < 2:
        cure = say.hold_by_stitch() if ribbed else say.hold_by_rib()
    elif step > 2:
        cure = say.ease_by_stitch() if ribbed else say.ease_by_rib()
    found = Place("cuff", body, girth, level, feels, say.leg_guessed(), measured, perhaps=perhaps)
    percent, verdict = units.percent(used), found.verdict
    words = (
        say.grips(verdict=verdict, percent=str(percent))
        if percent > 0
        else say.grips_unused(verdict=verdict)
    )
    return replace(found, words=_in_turn(words, cure))


def judge(
    measures: dict[str, Measure],
    tube: float,
    heel: float | None,
    cuff: Cuff,
    fabric: Fabric,
    top_above_floor: float,
    along: Girths | None = None,
    closer: float = 0.0,
) -> list[Place]:
    """Return the fit at ball, heel, over heel and measured instep, at ankle and calf.

    `tube` and `heel` (None without one) are the sock's relaxed girths in mm, `top_above_floor` its
    height in mm; `along` the girths of a leg that is shaped, `closer` the stretch more that is
    wished.
    """
    sock, sd = along or Girths(tube, tube, tube, tube), fabric.stitches_sd
    at_ball, on_leg = wished(sources.BALL_STRETCH, closer), wished(sources.LEG_STRETCH, closer)
    instep, around = measures.get("instep_girth"), measures["heel_girth"]
    return [
        _worn("ball", measures["ball_girth"], *_narrowed((tube, sd), at_ball, sock.foot), _BALL),
        *([_worn("heel", around, (heel, sd), sources.HEEL_STRETCH, _BALL)] if heel else []),
        _getting_on(around, sock, cuff, fabric),
        *([] if instep is None else [_over_the_instep(instep, tube, fabric)]),
        _on_leg("ankle", measures["ankle_girth"], (sock.ankle, sd), on_leg, sock.narrows[0]),
        _calf(
            measures["calf_girth"],
            (sock.calf, sd),
            top_above_floor,
            measures["length"].value,
            cuff.pull(fabric, sock.top),
            on_leg,
            sock.narrows[1],
        ),
    ]
