"""Heel and toe beside their neighbours: what a deeper one buys, and how sure each is.

A neighbour has the same needles and two more or fewer of them left. Its girth is that round heel
and ankle bend, or halfway along the toe; foot rounds follow so that the sock keeps its length.
"""

from __future__ import annotations

from typing import Any

from engine import sources
from engine.judge import fit
from engine.read import units
from engine.read.units import nearest
from engine.say import messages as say
from engine.sections import short_row
from engine.sections.pocket import Pocket
from engine.sock.sock import Sock

_EACH_SIDE = 2


def choices(sock: Sock) -> dict[str, list[dict[str, Any]]]:
    """Return the heels and the toes beside those of the sock, deepest first."""
    heel, heel_girth = sock.pockets.get("heel"), sock.measures["heel_girth"]
    toes = sock.toe_breadth and sock.toe_breadth * sources.TOE_ROUND_OVER_BREADTH
    heels = [
        _choice(
            sock,
            pocket,
            pocket.girth(sock.cylinder.slots, sock.fabric),
            (heel_girth.value, heel_girth.measured, sources.HEEL_STRETCH),
        )
        for pocket in (short_row.beside(heel, _EACH_SIDE) if heel else ())
    ]
    toe = sock.pockets.get("toe")
    tips = [
        _choice(
            sock,
            pocket,
            pocket.halfway(sock.fabric),
            (toes, True, sources.BALL_STRETCH) if toes else None,
        )
        for pocket in (short_row.beside(toe, _EACH_SIDE) if toe else ())
    ]
    return {
        part: [choice for choice in found if choice["foot_rounds"] >= 1]
        for part, found in (("heel", heels), ("toe", tips))
        if found
    }


def _choice(
    sock: Sock,
    pocket: Pocket,
    girth: float,
    body: tuple[float, bool, tuple[sources.Cited, ...]] | None,
) -> dict[str, Any]:
    found: dict[str, Any] = {
        "needles": pocket.needles,
        "left": pocket.left,
        "rows": pocket.rows,
        "girth": units.length(girth, sock.system),
        "foot_rounds": nearest(sock.exact_with(pocket)),
        "chosen": pocket == sock.pockets[pocket.part],
        "stretch": None,
        "verdict": "",
        "level": "",
    }
    shown = {"needles": pocket.needles, "left": pocket.left, "girth": found["girth"]["text"]}
    if body is None:
        words = say.pocket_choice(**shown)
    else:
        around, measured, bounds = body
        level, feels = fit.feels(around / girth, bounds)
        feel = say.verdict(feels=feels)
        feel = feel if measured else say.perhaps(verdict=feel)
        found |= {"stretch": round(around / girth, 3), "verdict": feel, "level": level}
        words = say.pocket_choice_feels(**shown, feel=feel)
    rounds = say.foot_rounds_then(rounds=found["foot_rounds"])
    found["words"] = say.in_turn(sentences=(words, rounds))
    return found


def reach(sock: Sock) -> dict[str, dict[str, Any]]:
    """Return the needles left in heel and toe that the errors of the tape allow.

    They go by twos, so the ends of the tape's middle 80 % hold more: 95 to 98 % by trial.
    """
    found = dict[str, dict[str, Any]]()
    why = {"heel": sock.heel_words, "toe": sock.toe_words}
    for part, pocket in sock.pockets.items():
        words = why[part]
        low, high = sock.likely_left.get(part, (pocket.left, pocket.left))
        if part not in sock.likely_left:
            said = say.exact_by(by="you" if words["why"] == "told" else "custom")
        elif low == high:
            said = say.left_whatever(left=low)
        else:
            said = say.left_range(low=low, high=high)
        found[part] = {"low": low, "high": high, "words": said}
    return found
