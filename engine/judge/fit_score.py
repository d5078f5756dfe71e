"""Comfort: how far a sock is likely to be from comfortable, in one number, to rank socks by.

At each place the stretch has a comfortable band and, outside it, a bound where it turns bad (the
bounds that `fit` judges by). Discomfort is 0 in the band and grows in a straight line, 1 at the bad
bound and on. The stretch is not known but to a normal error: the tape's (or the guess's) on the
body and the swatch's on the fabric. So what counts is the expected discomfort. For a normal x of
mean m and standard deviation s the expected excess over 0 is s phi(m/s) + m Phi(m/s). Summed over
the places with the weights below it is the score: 0 is perfect, 1 is one place just bad.

Getting on is held against the pull of cuff and leg: comfortable to 0.93 of it, bad from 1 on. (The
doubt in the pull is left out: a guessed one is the same for all, and says nothing between them.)
Firmness is sqrt(tex) / loop length (of a told yarn and a told fabric). The length counts with the
chance that heel and toe alone are longer than the foot.

Limits: errors are taken as normal and as independent of place to place; bounds and weights are
common practice and our choice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import erfc, exp, hypot, pi, sqrt
from typing import Literal, NamedTuple

from engine import sources
from engine.fabric.fabric import Fabric
from engine.judge import fit
from engine.machine.cylinder import Cylinder
from engine.people.foot import Measure
from engine.read import units
from engine.read.units import nearest, reaches
from engine.sections import leg, pockets, short_row
from engine.sections.cuff import Cuff
from engine.sections.leg import Wish
from engine.sections.pocket import Pocket
from engine.sections.pockets import Heel
from engine.sections.toe import Toe
from engine.sections.tube import Tube
from engine.sock import foot_rounds

FITS, WORN, NOT, CANNOT = range(4)  # well, can be worn, does not, cannot even be knitted
_LEVELS = ("bad", "loose", "good", "tight", "bad")
# Plain floats: a figure that carries its source computes slowly.
_WEIGHTS = {
    **dict.fromkeys(("ball", "heel", "over_heel", "length"), 1.0),
    **dict.fromkeys(("ankle", "calf", "firmness"), float(sources.DISCOMFORT_LESSER)),
}
_BALL, _HEEL, _LEG, _FIRM = (
    tuple(map(float, bounds))
    for bounds in (
        sources.BALL_STRETCH,
        sources.HEEL_STRETCH,
        sources.LEG_STRETCH,
        sources.FIRMNESS,
    )
)
_EASILY = float(sources.GOES_ON_EASILY_SHARE)
_CALF_FROM = float(sources.CALF_REACHED * sources.CALF_HEIGHT_OVER_FOOT)
_FREE = short_row.free(60)  # whose needles are those of each cylinder
_ROOT_2, _ROOT_2_PI = sqrt(2), sqrt(2 * pi)


_Place = Literal["ankle", "calf"]
_HEIGHTS: dict[_Place, float] = {
    "ankle": float(sources.ANKLE_HEIGHT_OVER_FOOT),
    "calf": float(sources.CALF_HEIGHT_OVER_FOOT),
}


class Felt(NamedTuple):
    """One place: its number, `level` as in `fit`, and the weighted expected discomfort."""

    place: str
    value: float
    level: str
    discomfort: float


class Weighed(NamedTuple):
    """A sock weighed: `standing` from FITS to CANNOT, the `score`, and every place."""

    standing: int
    score: float
    places: tuple[Felt, ...]


def expected_excess(mean: float, sd: float) -> float:
    """Return the expected amount by which a normal error puts a value above 0."""
    if sd <= 0 or abs(mean) > 6 * sd:
        return max(0.0, mean)
    z = mean / sd
    return sd * exp(-z * z / 2) / _ROOT_2_PI + mean * erfc(-z / _ROOT_2) / 2


def expected_discomfort(value: float, sd: float, bounds: tuple[float, ...]) -> float:
    """Return the expected distance from the band, 1 at the bad bound of either side."""
    low_bad, low, high, high_bad = bounds
    return expected_excess(low - value, sd) / (low - low_bad) + expected_excess(
        value - high, sd
    ) / (high_bad - high)


@dataclass(frozen=True)
class Wearer:
    """Who the sock is for and what it shall be: lengths in mm.

    `aimed` is the sock's foot as aimed at, `closer` the stretch more that is wished, `ends` are
    what is wished of heel and toe. A leg is plain or in its cuff's rib: `leg` counts by its rounds
    or height, and its girths wait for the plan.
    """

    measures: dict[str, Measure]
    cuff: Cuff
    leg: Wish
    aimed: float
    aimed_sd: float
    toe_breadth: float | None = None
    closer: float = 0.0
    ends: tuple[short_row.Wish, short_row.Wish] = (_FREE, _FREE)

    @cached_property
    def _bounds(self) -> tuple[tuple[float, ...], tuple[float, ...]]:
        """Return the bounds at the ball and on the leg, as wished."""
        return fit.wished(_BALL, self.closer), fit.wished(_LEG, self.closer)

    @cached_property
    def _girths(self) -> tuple[tuple[Measure, float], ...]:
        """Return (girth, its relative error) of ball, heel, ankle and calf."""
        names = ("ball_girth", "heel_girth", "ankle_girth", "calf_girth")
        return tuple((m, m.sd / m.value) for m in (self.measures[name] for name in names))

    def turned(self, slots: int, cloth: Fabric) -> tuple[Heel, Toe]:
        """Return heel and toe as a plan works them out where none are set."""
        machine = Cylinder(slots)
        of_heel, of_toe = (wish._replace(needles=machine.half) for wish in self.ends)
        girth = self.measures["heel_girth"]
        measured = girth.value if girth.measured else None
        heel, _ = pockets.heel(of_heel, machine, cloth, measured)
        return heel, pockets.toe(of_toe, cloth, self.toe_breadth)[0]

    def top(self, heel: Heel, cloth: Fabric) -> float:
        """Return the height of the sock's top above the floor."""
        if self.leg.height is not None:
            return self.leg.height
        rounds = leg.plain_rounds(self.leg, self.measures["length"].value, cloth)
        return heel.height(cloth) + rounds / cloth.rounds + self.cuff.depth(cloth)

    def weigh(self, slots: int, cloth: Fabric) -> Weighed:
        """Return how a sock on `slots` in this fabric would be felt."""
        ball, ball_sd = self._girths[0]
        at_ball, _ = self._bounds
        tube, w_sd = slots / cloth.stitches, cloth.stitches_sd
        heel, toe = self.turned(slots, cloth)
        before = Tube("before_toe", self.ends[1].before)
        others = foot_rounds.others((heel, before, toe))
        rounds = foot_rounds.exact(self.aimed, cloth.rounds, others)
        places = (
            _felt("ball", ball, tube, hypot(ball_sd, w_sd), at_ball),
            *([self._round_heel(slots, heel, cloth)] if isinstance(heel, Pocket) else []),
            self._over_heel(tube, cloth),
            self._on_leg("ankle", tube, cloth, self._narrows("ankle", slots, heel, cloth)),
            self._calf(
                tube, self.top(heel, cloth), cloth, self._narrows("calf", slots, heel, cloth)
            ),
            _firmness(cloth),
            self._length(rounds, cloth),
        )
        levels = {felt.level for felt in places}
        if places[-1].level == "bad":
            standing = CANNOT
        elif "bad" in levels:
            standing = NOT
        elif levels <= {"good", "apart"} and cloth.way != "yarn":
            standing = FITS
        else:
            standing = WORN
        return Weighed(standing, sum(felt.discomfort for felt in places), places)

    def _round_heel(self, slots: int, heel: Pocket, cloth: Fabric) -> Felt:
        girth, by_rounds = heel.girth(slots, cloth), heel.girth_by_rounds(slots, cloth)
        body, sd = self._girths[1]
        sd = hypot(sd, (1 - by_rounds) * cloth.stitches_sd, by_rounds * cloth.rounds_sd)
        return _felt("heel", body, girth, sd, _HEEL)

    def _over_heel(self, tube: float, cloth: Fabric) -> Felt:
        body, sd = self._girths[1]
        needed, pull = body.value / tube, self.cuff.pull(cloth, tube)
        share = needed / pull
        sd = share * hypot(sd, cloth.stitches_sd)
        easily, passes = reaches(pull * _EASILY, needed), reaches(pull, needed)
        level = "good" if easily else "tight" if passes else "bad"
        felt = expected_excess(share - _EASILY, sd) / (1 - _EASILY)
        return Felt("over_heel", needed, level, _WEIGHTS["over_heel"] * felt)

    def _narrows(self, place: _Place, slots: int, heel: Heel, cloth: Fabric) -> float:
        """Return the share of the tube's girth that the cuff's rib leaves at a place, 1 where none.

        A rib that goes on down the leg ends at the plain rounds before the heel.
        """
        height = _HEIGHTS[place] * self.measures["length"].value
        plain = self.leg.plain
        if plain is None or height <= heel.height(cloth) + plain / cloth.rounds:
            return 1.0
        tube = slots / cloth.stitches
        return self.cuff.girth(slots, tube) / tube

    def _on_leg(self, place: _Place, tube: float, cloth: Fabric, narrows: float) -> Felt:
        """Return a place of the leg, judged as `fit` does where its rib leaves such a share."""
        body, sd = self._girths[2 if place == "ankle" else 3]
        low_bad, low, high, high_bad = self._bounds[1]
        ribbed = low_bad, low, high / narrows, high_bad / narrows
        return _felt(place, body, tube * narrows, hypot(sd, cloth.stitches_sd), ribbed)

    def _calf(self, tube: float, top: float, cloth: Fabric, narrows: float) -> Felt:
        body, _ = self._girths[3]
        if not reaches(top / self.measures["length"].value, _CALF_FROM):
            return Felt("calf", body.value / tube, "apart", 0.0)
        passes = reaches(self.cuff.pull(cloth, tube), body.low / tube)
        felt = self._on_leg("calf", tube, cloth, narrows if passes else 1.0)
        return felt if passes else felt._replace(level="bad")

    def _length(self, rounds: float, cloth: Fabric) -> Felt:
        c = cloth.rounds
        sd = self.aimed * c * cloth.rounds_sd_with(self.aimed_sd / self.aimed)
        short = erfc((rounds - 0.5) / sd / _ROOT_2) / 2 if sd else float(rounds < 0.5)
        level = "good" if nearest(rounds) >= 1 else "bad"
        return Felt("length", rounds, level, _WEIGHTS["length"] * short)


def _felt(place: str, body: Measure, girth: float, sd: float, bounds: tuple[float, ...]) -> Felt:
    """Return a place where the sock stays; `sd` is the stretch's relative error."""
    stretch = body.value / girth
    _, low, high, _ = bounds
    step = units.step(stretch, bounds)
    level = _LEVELS[step]
    if (
        level == "bad"
        and not body.measured
        and not reaches(body.low / girth, high)
        and reaches(body.high / girth, low)
    ):
        level = _LEVELS[1 if step == 0 else 3]  # a guess that may well be wrong damns no sock
    felt = expected_discomfort(stretch, stretch * sd, bounds)
    return Felt(place, stretch, level, _WEIGHTS[place] * felt)


def _firmness(cloth: Fabric) -> Felt:
    """Return the firmness; of a guessed fabric it is the usual one by assumption."""
    firm = cloth.tightness
    if cloth.way == "yarn" or not cloth.tex_told:
        return Felt("firmness", firm, "apart", 0.0)
    sd = firm * hypot(cloth.stitches_sd, cloth.rounds_sd) / 2
    low_bad, low, high, high_bad = _FIRM
    # Outside the bounds fabric wears soon or cranks hard: a fault, but not of the fit.
    level = "tight" if reaches(firm, high) else "good" if reaches(firm, low) else "loose"
    felt = expected_discomfort(firm, sd, (low_bad, low, high, high_bad))
    return Felt("firmness", firm, level, _WEIGHTS["firmness"] * felt)
