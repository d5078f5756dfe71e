"""A long leg: no needles can be added, so the tension shapes it to the girths of the leg.

The body's girth g(z) at height z is piecewise linear between the girths that are known (our choice:
it never runs past what was measured), and level beyond the lowest and the highest. With N needles
and the wanted stretch s, a leg takes w(z) = N s / g(z) stitches per mm. By Munden (1959) stitches
and rounds per length change together, so the rounds of a leg are c0 / w0 times the integral of w(z)
over its height, w0 and c0 being the foot's fabric.

A knitter turns the screw by half a mark, some rounds apart, so that no line shows (`tension`).
Where the leg changes faster, the turns are spread over the rounds before and after. The last ones
lead back to the foot's setting, at which the heel is knitted. A band is the rounds between two
turns, knitted no looser or firmer than the yarn bears, nor so narrow that the heel would not pass.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import ceil, log
from typing import Literal

from engine import sources
from engine.fabric import tension
from engine.fabric.fabric import Fabric
from engine.fabric.swatch import ROUNDS, STITCHES
from engine.fabric.tension import Screw, Setting, Span
from engine.people.foot import Measure
from engine.read import units
from engine.read.errors import Problem, Refused
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Cuff
from engine.sections.leg import Band, Girth, Leg, Offer, Wish, usual_rounds
from engine.sources import BANDS_MOST, LEG_STRETCH_WANTED, TURN_ROUNDS, TURN_STITCH

_GRID = 1.0  # mm, how finely a leg is cut before its bands are found
_SHORT_OF = 0.03  # out of reach by more than this is told (our choice)

Profile = tuple[Girth, ...]
Notes = tuple[tuple[str, Message], ...]


@dataclass(frozen=True)
class Ground:
    """What a leg is knitted on: `bottom` is its lower end above the floor, lengths in mm.

    `closer` is what a wish adds to the stretch that is wanted.
    """

    slots: int
    cloth: Fabric
    bottom: float
    cuff: Cuff
    measures: dict[str, Measure]
    system: units.System
    closer: float = 0.0

    @property
    def scale(self) -> float:
        """Return girth times `Band.tighter` in mm at the wanted stretch."""
        return self.slots * (LEG_STRETCH_WANTED + self.closer) / self.cloth.stitches


def profile(girths: Profile, measures: dict[str, Measure]) -> Profile:
    """Return the girths of a leg from low to high.

    Ankle and calf are added where no girth was taken; guessed, only below or above all that were.
    """
    length, found = measures["length"].value, list(girths)
    for name, share, side in (
        ("ankle_girth", sources.ANKLE_HEIGHT_OVER_FOOT, -1),
        ("calf_girth", sources.CALF_HEIGHT_OVER_FOOT, 1),
    ):
        z, one = share * length, measures[name]
        near = any(abs(z - girth.height) < sources.SAME_PLACE for girth in girths)
        beyond = all(side * (z - girth.height) > 0 for girth in girths)
        if not near and (one.measured or beyond):
            found.append(Girth(z, one.value, one.measured))
    return tuple(sorted(found))


def girth_at(body: Profile, height: float) -> Girth:
    """Return the girth at a height; it counts as measured where both its neighbours were."""
    if height <= body[0].height:
        return Girth(height, *body[0][1:])
    for low, high in pairwise(body):
        if height <= high.height:
            share = (height - low.height) / (high.height - low.height)
            girth = low.girth + share * (high.girth - low.girth)
            return Girth(height, girth, low.measured and high.measured)
    return Girth(height, *body[-1][1:])


def shape(wish: Wish, ground: Ground) -> tuple[Leg, Notes]:
    """Return the leg of a wish, and what is worth saying of it; `Refused` if it is too low.

    Without a girth that was measured it stays plain: a guess is no reason to turn the screw.
    """
    body = profile(wish.girths, ground.measures)
    known = any(girth.measured for girth in body)
    limits = _limits(ground)
    turned = tension.read(ground.cloth, limits)

    def tighter(height: float) -> float:
        if not known:
            return 1.0
        return limits.clip(ground.scale / girth_at(body, height).girth)

    top = _top(wish, ground, tighter)
    bands = _bands(wish, ground, top, tighter, turned)
    for _ in range(3 if wish.height is not None and known else 0):
        # The cuff is knitted at the tension of the band it sits on, and its depth hangs on that.
        top = _under_cuff(wish.height, ground, bands[0].tighter)
        bands = _bands(wish, ground, top, tighter, turned)
    tape = 0.0 if wish.height is None else float(sources.TAPE_ON_LENGTH)
    offers: Offer = "plain" if wish.shaped else ""
    at = "sock.leg.height" if wish.height is not None else "sock.leg.rounds"
    if not known:
        words = say.leg_words(why="height")
        plain = Leg(bands, words, wish.set_by, True, tape, offers=offers)
        return plain, ((at, say.measure_leg()),)
    notes = tuple((at, text) for text in _unreached(body, ground, limits, turned, top))
    words = say.leg_words(why="shaped" if len(bands) > 1 else "one-tension")
    return Leg(bands, words, wish.set_by, True, tape, offers=offers), notes


def tightens(ground: Ground) -> bool:
    """Tell whether a tighter stitch than the foot's can be knitted in its leg."""
    return _limits(ground).high > 1 + TURN_STITCH


def _limits(ground: Ground) -> Span:
    """Return what yarn, heel and a fabric bear; the foot's own tension is always borne."""
    cloth = ground.cloth
    firm = cloth.tightness if cloth.tex_told else float(sources.TIGHTNESS_SOCK)
    over_heel = (
        ground.slots
        * cloth.pull
        * sources.GOES_ON_EASILY_SHARE
        / (cloth.stitches * ground.measures["heel_girth"].value)
    )
    finest = min(STITCHES.high / cloth.stitches, ROUNDS.high / cloth.rounds)
    coarsest = max(STITCHES.low / cloth.stitches, ROUNDS.low / cloth.rounds)
    return Span(
        min(1.0, max(sources.TIGHTNESS_LOOSE / firm, coarsest)),
        max(1.0, min(sources.TIGHTNESS_FIRM / firm, over_heel, finest)),
    )


def _top(wish: Wish, ground: Ground, tighter: Callable[[float], float]) -> float:
    """Return the height of the leg's upper end."""
    cloth, bottom = ground.cloth, ground.bottom
    if wish.height is not None:
        return _under_cuff(wish.height, ground, tighter(wish.height))
    if wish.rounds is None:
        return bottom + usual_rounds(ground.measures["length"].value, cloth) / cloth.rounds
    top, knitted = bottom, 0.0
    while knitted < wish.rounds:
        knitted += _GRID * cloth.rounds * tighter(top + _GRID / 2)
        top += _GRID
    return top


def _under_cuff(height: float | None, ground: Ground, tighter: float) -> float:
    """Return the height of the leg's upper end; that of the sock's top and the cuff are given."""
    top = (height or 0.0) - ground.cuff.depth(ground.cloth) / tighter
    if (top - ground.bottom) * ground.cloth.rounds < 1:
        raise Refused([_too_low(ground, tighter)])
    return top


def _too_low(ground: Ground, tighter: float) -> Problem:
    heel, cuff = ground.bottom, ground.cuff.depth(ground.cloth) / tighter
    least = ceil((heel + cuff + 2 / ground.cloth.rounds) / 5) * 5
    return Problem(
        "sock.leg.height",
        say.too_low_a_top(height=units.length_text(heel + cuff, ground.system)),
        say.higher_or_shallower(height=units.length_text(least, ground.system)),
    )


def _bands(
    wish: Wish, ground: Ground, top: float, tighter: Callable[[float], float], screw: Screw
) -> tuple[Band, ...]:
    """Cut the leg from `top` down where the screw is turned."""
    count = max(1, ceil((top - ground.bottom) / _GRID))
    step = (top - ground.bottom) / count
    wanted = [tighter(top - (i + 0.5) * step) for i in range(count)]
    rounds = [ground.cloth.rounds * step * one for one in wanted]
    apart = max(TURN_ROUNDS, sum(rounds) / (BANDS_MOST - 4))
    turns = _gentle([screw.turns_for(one) for one in wanted], [one / apart for one in rounds])
    pieces = [(len(list(run)), at) for at, run in groupby(map(nearest, turns))]
    per_step = ground.cloth.rounds * step
    exact = [(steps * per_step * screw.at(at).tighter, at) for steps, at in pieces]
    return _whole([(one, screw.at(at)) for one, at in _long(exact)], wish.rounds)


def _gentle(wanted: list[float], steps: list[float]) -> list[float]:
    """Return turns as near to those `wanted` as can be turned, from the top down.

    `steps` are what may be turned along each stretch of leg. It is the middle of what stays below
    the wanted and what stays above, each turned no faster; below the last the foot's setting, 0, is
    half a turn away at most.
    """
    above = [-turns for turns in _below([-turns for turns in wanted], steps)]
    found, most = list[float](), 0.5
    pairs = zip(_below(wanted, steps), above, steps, strict=True)
    for low, high, step in reversed([*pairs]):
        most += step
        found.append(min(max((low + high) / 2, -most), most))
    return found[::-1]


def _below(wanted: list[float], steps: list[float]) -> list[float]:
    """Return the most turns, nowhere more than are `wanted`, with no more than `steps` between."""
    found = [*wanted]
    for at in range(len(found) - 1, 0, -1):
        found[at - 1] = min(found[at - 1], found[at] + steps[at])
    for at in range(1, len(found)):
        found[at] = min(found[at], found[at - 1] + steps[at])
    return found


def _long(pieces: list[tuple[float, int]]) -> list[tuple[float, int]]:
    """Return (rounds, turns) without those that are too short to be worth two turns.

    Short are the first, and one between two that are alike: other turns lie as far apart as wanted.
    """
    found = list[tuple[float, int]]()
    for rounds, turns in pieces:
        if found and found[-1][1] == turns:
            rounds += found.pop()[0]
        elif len(found) > 1 and found[-2][1] == turns and found[-1][0] < TURN_ROUNDS:
            rounds += found.pop()[0] + found.pop()[0]
        elif len(found) == 1 and found[0][0] < TURN_ROUNDS:
            rounds += found.pop()[0]
        found.append((rounds, turns))
    return found


def _whole(pieces: list[tuple[float, Setting]], wanted: int | None) -> tuple[Band, ...]:
    """Return bands in whole rounds from (exact rounds, setting); `wanted` is their sum if set.

    Ends are rounded, not bands, so that nothing adds up; one without a round is none.
    """
    exact = sum(rounds for rounds, _ in pieces)
    total = nearest(exact) if wanted is None else wanted
    bands, run, ended = list[Band](), 0.0, 0
    for rounds, setting in pieces:
        run += rounds
        end = nearest(run * total / exact) if exact else 0
        if end > ended or len(pieces) == 1:
            bands.append(Band(end - ended, *setting))
        ended = end
    return tuple(bands)


def _unreached(
    body: Profile, ground: Ground, limits: Span, turned: Screw, top: float
) -> list[Message]:
    """Return a sentence for the widest and for the slimmest place that no stitch here can suit."""
    places = [girth_at(body, z) for z in (ground.bottom, top)]
    places += [girth for girth in body if ground.bottom < girth.height < top]
    found = list[Message]()
    ends: tuple[tuple[Girth, float, Literal["loosest", "firmest"]], ...] = (
        (max(places, key=lambda one: one.girth), limits.low, "loosest"),
        (min(places, key=lambda one: one.girth), limits.high, "firmest"),
    )
    for place, limit, side in ends:
        wanted = ground.scale / place.girth
        height = units.length_text(place.height, ground.system)
        borne = limits.clip(wanted)
        mark = turned.mark_for(borne)
        nearest_stop = turned.at(nearest(turned.turns_for(borne)))
        if mark is not None and abs(log(nearest_stop.tighter / borne)) > _SHORT_OF:
            about = units.mark(nearest(mark * 4) / 4)
            found.append(say.mark_beyond_leg(height=height, mark=about))
        if (limit / wanted if side == "loosest" else wanted / limit) < 1 + _SHORT_OF:
            continue
        needles = 2 * nearest(ground.slots * limit / wanted / 2)
        girth = units.length_text(place.girth, ground.system)
        stretch = place.girth * ground.cloth.stitches * limit / ground.slots
        slots = ground.slots
        if stretch >= 1:
            percent = f"{(stretch - 1) * 100:.0f}"
            words = say.leg_unreached(
                side=side, height=height, girth=girth, needles=needles, slots=slots, percent=percent
            )
        else:
            words = say.leg_unreached_loose(
                side=side, height=height, girth=girth, needles=needles, slots=slots
            )
        found.append(words)
    return found
