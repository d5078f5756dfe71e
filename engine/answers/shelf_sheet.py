"""What is said of a shelf: the ranking written out in the user's units and in plain words.

Where nothing on the shelf fits, it says what would: for each yarn, at the mark at which it does
best, the number of slots, and for each cylinder the stitches per length, of those that put the ball
between its two bad bounds.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import ceil, floor
from typing import Any, Literal

from engine import sources
from engine.answers import yarn_sheet
from engine.fabric import certainty, swatch
from engine.fabric.fabric import Fabric
from engine.judge import fit, fit_score, supply
from engine.judge.fit_score import Felt, Wearer
from engine.judge.shelf import (
    Kept,
    Knitted,
    Shelf,
    Tried,
    chosen,
    lacks_ribber,
    made_of,
    rank,
)
from engine.machine import cylinder
from engine.read import units
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sections.pocket import Pocket

SHOWN = 12
Standing = Literal["fits", "worn", "not"]
Firmness = Literal["usual", "far-loose", "loose", "far-firm", "firm"]
_STANDINGS: tuple[Standing, ...] = ("fits", "worn", "not", "not")
_STEPS = 10  # of stretch, between a ball that is baggy and one that is tight


def write(shelf: Shelf) -> dict[str, Any]:
    """Return the answer: `words`, the `best`, the best of each yarn in `yarns`, what is `wanted`.

    A candidate has `rank` (from 1), `slots`, `cylinder`, `yarn`, `mark`, its `standing` and that in
    words (`verdict`), `score`, `left` (of the yarn), what it `lacks` (words or None),
    `swatch_first`, `tube` and `ball` (girths), `reasons`, weightiest first, and `choose`: groups of
    a request that take the place of its own. `wanted` says what would fit where nothing does.
    """
    ranked = rank(shelf)
    of_yarn: dict[int, int] = {}
    for at, one in enumerate(ranked):
        of_yarn.setdefault(one.knitted.yarn, at)
    some = ranked[0].weighed.standing <= fit_score.WORN
    shown = {
        at: _candidate(shelf, at, ranked[at])
        for at in {*range(min(SHOWN, len(ranked))), *of_yarn.values()}
    }
    return {
        "words": _summary(ranked),
        "fits": some,
        "tried": len(ranked),
        "best": [shown[at] for at in range(min(SHOWN, len(ranked)))],
        "yarns": [shown[at] for at in of_yarn.values()],
        "wanted": [] if some else list(_wanted(shelf, ranked)),
        "assumptions": list(_assumptions(shelf)),
        "notes": [{"field": field, "text": text} for field, text in shelf.notes],
    }


def _summary(ranked: list[Tried]) -> Message:
    well = sum(one.weighed.standing == fit_score.FITS for one in ranked)
    worn = sum(one.weighed.standing == fit_score.WORN for one in ranked)
    if not well and not worn:
        return say.shelf_nothing()
    ways = len(ranked)
    if ways == 1:
        return say.shelf_only(fit="fits" if well else "worn")
    if not well:
        return say.shelf_none_well(ways=ways, worn=worn)
    if not worn:
        return say.shelf_well(ways=ways, well=well)
    return say.shelf_well_and_worn(ways=ways, well=well, worn=worn)


def _assumptions(shelf: Shelf) -> Iterable[Message]:
    yield say.shelf_ranked()
    yield say.shelf_turned()
    if shelf.wearer.leg.height is not None or shelf.wearer.leg.girths:
        yield say.shelf_plain_leg()
    if len(shelf.cylinders) > 1 and any(one.cloth.way != "yarn" for one in shelf.fabrics):
        yield say.shelf_one_gauge()
    if shelf.lines:
        yield say.shelf_between_marks()
    if any(one.cloth.way == "yarn" for one in shelf.fabrics):
        yield say.shelf_by_band()
    if any(not one.cloth.tex_told for one in shelf.fabrics):
        yield say.shelf_firmness()


def _candidate(shelf: Shelf, at: int, one: Tried) -> dict[str, Any]:
    kept, knitted, weighed = one
    cloth, system = knitted.cloth, shelf.system
    ball = shelf.wearer.measures["ball_girth"].value
    return {
        "rank": at + 1,
        "slots": kept.slots,
        "cylinder": kept.name or None,
        "yarn": knitted.name,
        "mark": knitted.mark or None,
        "left": None if knitted.left is None else units.weight(knitted.left),
        "standing": _STANDINGS[weighed.standing],
        "verdict": say.standing(standing=_STANDINGS[weighed.standing]),
        "score": round(weighed.score, 4),
        "lacks": say.no_ribber_here() if lacks_ribber(shelf, kept) else None,
        "swatch_first": cloth.way == "yarn",
        "stitches": units.per_length(cloth.stitches, system),
        "rounds": units.per_length(cloth.rounds, system),
        "tube": units.length(kept.slots / cloth.stitches, system),
        "ball": units.length(ball, system),
        "reasons": _reasons(shelf.wearer, one),
        "enough": _enough(shelf, one),
        "choose": chosen(kept, knitted, shelf),
    }


def _enough(shelf: Shelf, one: Tried) -> dict[str, Any] | None:
    """Return whether the yarn there is a pair, None where nobody says how much there is."""
    left = one.knitted.left
    sock = None if left is None else made_of(shelf, one)
    if left is None or sock is None:
        return None
    need = yarn_sheet.pair_takes(sock)
    level = supply.level(supply.probability(left, need))
    needed = units.weight(need.grams)["text"]
    words = say.shelf_enough(level=level, left=units.weight(left)["text"], needed=needed)
    return {"level": level, "words": words}


def _reasons(wearer: Wearer, one: Tried) -> list[dict[str, Any]]:
    """Return every place with its number and words: what is bad first, then the weightiest."""
    slots, cloth = one.kept.slots, one.knitted.cloth
    heel, _ = wearer.turned(slots, cloth)
    girth = heel.girth(slots, cloth) if isinstance(heel, Pocket) else None
    top = wearer.top(heel, cloth)
    judged: dict[str, tuple[Words, Words, Words]] = {
        place.place: (fit.TITLES[place.place], place.verdict, place.words)
        for place in fit.judge(
            wearer.measures,
            slots / cloth.stitches,
            girth,
            wearer.cuff,
            cloth,
            top,
            closer=wearer.closer,
        )
    }
    reasons = list[dict[str, Any]]()
    for felt in sorted(one.weighed.places, key=_weight):
        if felt.place == "length":
            judged["length"] = _length_words(felt.value)
        elif felt.place == "firmness":
            judged["firmness"] = _firmness_words(felt.value, felt.level, cloth)
        title, verdict, words = judged[felt.place]
        reasons.append(
            {
                "place": felt.place,
                "title": title,
                "value": felt.value,
                "level": felt.level,
                "verdict": verdict,
                "words": words,
                "discomfort": round(felt.discomfort, 4),
            }
        )
    return reasons


def _weight(felt: Felt) -> tuple[bool, bool, float]:
    """Return what reasons are sorted by: what cannot be knitted, what is bad, what weighs most."""
    bad = felt.level == "bad"
    return not (bad and felt.place == "length"), not bad, -felt.discomfort


def _length_words(exact: float) -> tuple[Message, Message, Message]:
    """Return title, verdict and words of whether the foot is long enough."""
    rounds, title = nearest(exact), say.place_besides(place="length")
    if rounds < 1:
        return title, say.length_felt(level="bad"), say.heel_and_toe_longer()
    return title, say.length_felt(level="good"), say.rounds_between(rounds=rounds)


def _firmness_words(value: float, level: str, cloth: Fabric) -> tuple[Message, Message, Message]:
    """Return title, verdict and words of how firm the fabric is."""
    title = say.place_besides(place="firmness")
    if level == "apart":
        why: Literal["guessed", "length"] = "guessed" if cloth.way == "yarn" else "length"
        return title, say.firmness_felt(felt="unjudged"), say.firmness_unjudged(why=why)
    by_level: dict[str, Firmness] = {
        "good": "usual",
        "loose": "far-loose" if value < sources.TIGHTNESS_LOOSE else "loose",
        "tight": "far-firm" if value > sources.TIGHTNESS_FIRM else "firm",
    }
    felt = by_level[level]
    words = say.firmness_words(felt=felt, value=f"{value:.2f}")
    return title, say.firmness_felt(felt=felt), words


def _wanted(shelf: Shelf, ranked: list[Tried]) -> Iterable[dict[str, Any]]:
    """Return what would fit, each with `words` and `slots`, and `yarn` or `stitches`."""
    wearer, told = shelf.wearer, False
    best_of_yarn = {one.knitted.yarn: one.knitted for one in reversed(ranked)}
    for _, knitted in sorted(best_of_yarn.items()):
        if slots := _slots_for(wearer, knitted):
            told = True
            of = {"yarn": knitted.name, "slots": slots}
            words = (
                say.slots_for_mark(**of, mark=knitted.mark)
                if knitted.mark
                else say.slots_for_yarn(**of)
            )
            yield {"yarn": knitted.name, "mark": knitted.mark, "slots": slots, "words": words}
    for kept in dict.fromkeys(shelf.cylinders):
        if cloth := _fabric_for(wearer, kept, shelf.fabrics[0].cloth):
            told = True
            stitches = units.per_length(cloth.stitches, shelf.system)
            rounds = units.per_length(cloth.rounds, shelf.system)
            words = say.gauge_for_slots(
                slots=kept.slots, stitches=stitches["text"], rounds=rounds["text"]
            )
            yield {"slots": kept.slots, "stitches": stitches, "rounds": rounds, "words": words}
    if not told:
        yield {"words": say.no_tube_fits()}


def _slots_for(wearer: Wearer, knitted: Knitted) -> int | None:
    """Return the slots with which a fabric suits best, None where no cylinder does."""
    whole = wearer.measures["ball_girth"].value * knitted.cloth.stitches
    fewest, most = (whole / sources.BALL_STRETCH[end] / 2 for end in (-1, 0))
    tries = (
        (wearer.weigh(slots, knitted.cloth)[:2], slots)
        for slots in range(2 * ceil(fewest), 2 * floor(most) + 1, 2)
        if slots in cylinder.SLOTS
    )
    (standing, _), slots = min(tries, default=((fit_score.NOT, 0.0), 0))
    return slots if standing <= fit_score.WORN else None


def _fabric_for(wearer: Wearer, kept: Kept, like: Fabric) -> Fabric | None:
    """Return the fabric that suits a cylinder best, in the shape of another; None if none does."""
    shape, ball = like.rounds / like.stitches, wearer.measures["ball_girth"].value
    loosest, tightest = sources.BALL_STRETCH[0], sources.BALL_STRETCH[-1]
    best: tuple[tuple[int, float], Fabric | None] = (fit_score.NOT, 0.0), None
    known = [certainty.told(sources.GAUGE_AS_TOLD, one) for one in like.knitter.scatters]
    for at in range(_STEPS + 1):
        w = kept.slots * (loosest + (tightest - loosest) * at / _STEPS) / ball
        if w in swatch.STITCHES and w * shape in swatch.ROUNDS:
            cloth = replace(
                like,
                stitches=w,
                rounds=w * shape,
                way="gauge",
                tex_told=False,
            ).known(*known)
            best = min(
                best, (wearer.weigh(kept.slots, cloth)[:2], cloth), key=lambda found: found[0]
            )
    return best[1]
