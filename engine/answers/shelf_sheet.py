"""What is said of a shelf: the ranking written out in the user's units and in plain words.

Where nothing on the shelf fits, it says what would: for each yarn, at the mark at which it does
best, the number of slots, and for each cylinder the stitches per length, of those that put the ball
between its two bad bounds.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import ceil, floor
from typing import Any

from engine import sources
from engine.fabric import certainty, swatch
from engine.fabric.fabric import Fabric
from engine.judge import fit, fit_score
from engine.judge.fit_score import Felt, Wearer
from engine.judge.shelf import Kept, Knitted, Shelf, Tried, lacks_ribber, rank
from engine.machine import cylinder
from engine.read import units
from engine.read.units import nearest

SHOWN = 12
_VERDICTS = ("fits well", "can be worn", "does not fit", "does not fit")
_TITLES = {**fit.TITLES, "firmness": "Firmness", "length": "Length of the foot"}
_RIBBERLESS = "No ribber for this cylinder: a hem or a mock rib needs none."
_STEPS = 10  # of stretch, between a ball that is baggy and one that is tight


def write(shelf: Shelf) -> dict[str, Any]:
    """Return the answer: `words`, the `best`, the best of each yarn in `yarns`, what is `wanted`.

    A candidate has `rank` (from 1), `slots`, `cylinder`, `yarn`, `mark`, `verdict`, `score`,
    `left` (of the yarn), what it `lacks` (words or None), `swatch_first`, `tube` and `ball`
    (girths), `reasons`, weightiest first, and `choose`: groups of a request that take the place of
    its own. `wanted` says what would fit
    where nothing does.
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


def _summary(ranked: list[Tried]) -> str:
    well = sum(one.weighed.standing == fit_score.FITS for one in ranked)
    worn = sum(one.weighed.standing == fit_score.WORN for one in ranked)
    if not well and not worn:
        return "Nothing on this shelf fits this foot."
    if len(ranked) == 1:
        return f"There is one way to knit it, and it {'would fit well' if well else 'can be worn'}."
    of = f"Of {len(ranked)} ways to knit it"
    if not well:
        return f"{of}, none would fit well, and {worn} can be worn."
    return f"{of}, {well} would fit well" + (f" and {worn} more can be worn." if worn else ".")


def _assumptions(shelf: Shelf) -> Iterable[str]:
    yield (
        "Ranked by how far each place is likely to be outside what is comfortable, with the doubt "
        "of tape and fabric counted in. Ankle, calf and firmness count half."
    )
    yield "Heel and toe are worked out anew for each cylinder."
    if shelf.wearer.leg.height is not None or shelf.wearer.leg.girths:
        yield "The leg is taken as a plain tube here; the plan shapes it by the tension."
    if len(shelf.cylinders) > 1 and any(one.cloth.way != "yarn" for one in shelf.fabrics):
        yield (
            "Stitches and rounds are taken as told on every cylinder. From one to another of one "
            "machine they carry over only roughly: swatch on the one you choose."
        )
    if shelf.lines:
        yield "A mark between two that you knitted is foretold from them: swatch there first."
    if any(one.cloth.way == "yarn" for one in shelf.fabrics):
        yield "A length per ball alone is a guess, and ranks with that doubt: swatch first."
    if any(not one.cloth.tex_told for one in shelf.fabrics):
        yield "Firmness is judged only where the yarn’s length per ball is given."


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
        "verdict": _VERDICTS[weighed.standing],
        "score": round(weighed.score, 4),
        "lacks": _RIBBERLESS if lacks_ribber(shelf, kept) else None,
        "swatch_first": cloth.way == "yarn",
        "stitches": units.per_length(cloth.stitches, system),
        "rounds": units.per_length(cloth.rounds, system),
        "tube": units.length(kept.slots / cloth.stitches, system),
        "ball": units.length(ball, system),
        "reasons": _reasons(shelf.wearer, one),
        "choose": {"cylinder": {"slots": kept.slots}, "fabric": knitted.choose, **shelf.adopt},
    }


def _reasons(wearer: Wearer, one: Tried) -> list[dict[str, Any]]:
    """Return every place with its number and words: what is bad first, then the weightiest."""
    slots, cloth = one.kept.slots, one.knitted.cloth
    heel, _ = wearer.turned(slots, cloth)
    girth, top = heel.girth(slots, cloth), wearer.top(heel, cloth)
    judged = {
        place.place: (place.verdict, place.words)
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
    reasons = []
    for felt in sorted(one.weighed.places, key=_weight):
        if felt.place == "length":
            verdict, words = _length_words(felt.value)
        elif felt.place == "firmness":
            verdict, words = _firmness_words(felt.value, felt.level, cloth)
        else:
            verdict, words = judged[felt.place]
        reasons.append(
            {
                "place": felt.place,
                "title": _TITLES[felt.place],
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


def _length_words(exact: float) -> tuple[str, str]:
    rounds = nearest(exact)
    if rounds < 1:
        return "too short", "Heel and toe alone are longer than this foot: fewer slots would do."
    return "long enough", f"{rounds} foot rounds between heel and toe."


def _firmness_words(value: float, level: str, cloth: Fabric) -> tuple[str, str]:
    if level == "apart":
        why = (
            "guessed as usual" if cloth.way == "yarn" else "the yarn’s length per ball is not given"
        )
        return "not judged", f"Not judged: {why}."
    low, high = sources.TIGHTNESS_LOOSE, sources.TIGHTNESS_FIRM
    if level == "good":
        return "usual", f"{value:.2f}: usual for a sock."
    if level == "loose":
        verdict, ends = (
            "loose",
            "it will wear soon" if value < low else "a finer stitch wears longer",
        )
    else:
        verdict, ends = (
            "firm",
            "it may crank hard" if value > high else "it wears well, and is stiff",
        )
    return verdict, f"{value:.2f}, where 1.1 is usual: {verdict} fabric; {ends}."


def _wanted(shelf: Shelf, ranked: list[Tried]) -> Iterable[dict[str, Any]]:
    """Return what would fit, each with `words` and `slots`, and `yarn` or `stitches`."""
    wearer, told = shelf.wearer, False
    best_of_yarn = {one.knitted.yarn: one.knitted for one in reversed(ranked)}
    for _, knitted in sorted(best_of_yarn.items()):
        if slots := _slots_for(wearer, knitted):
            told = True
            name = f"{knitted.name}, mark {knitted.mark}" if knitted.mark else knitted.name
            words = f"For {name}: a cylinder of about {slots} slots."
            yield {"yarn": knitted.name, "mark": knitted.mark, "slots": slots, "words": words}
    for kept in dict.fromkeys(shelf.cylinders):
        if cloth := _fabric_for(wearer, kept, shelf.fabrics[0].cloth):
            told = True
            stitches = units.per_length(cloth.stitches, shelf.system)
            rounds = units.per_length(cloth.rounds, shelf.system)
            words = f"{stitches['text']} stitches and {rounds['text']} rounds"
            words = f"On {kept.slots} slots: about {words}."
            yield {"slots": kept.slots, "stitches": stitches, "rounds": rounds, "words": words}
    if not told:
        yield {"words": "No plain tube fits this foot as it stands: what is in the way is below."}


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
    for at in range(_STEPS + 1):
        w = kept.slots * (loosest + (tightest - loosest) * at / _STEPS) / ball
        if w in swatch.STITCHES and w * shape in swatch.ROUNDS:
            known = certainty.told(sources.GAUGE_AS_TOLD)
            cloth = replace(
                like,
                stitches=w,
                rounds=w * shape,
                way="gauge",
                tex_told=False,
            ).known(known, known)
            best = min(
                best, (wearer.weigh(kept.slots, cloth)[:2], cloth), key=lambda found: found[0]
            )
    return best[1]
