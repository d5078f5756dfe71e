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
from engine.sections import short_row
from engine.sections.pocket import Pocket
from engine.sock import foot_rounds
from engine.sock.sock import Sock

_EACH_SIDE = 2


def choices(sock: Sock) -> dict[str, list[dict[str, Any]]]:
    """Return the heels and the toes beside those of the sock, deepest first."""
    heel_girth = sock.measures["heel_girth"]
    toes = sock.toe_breadth and sock.toe_breadth * sources.TOE_ROUND_OVER_BREADTH
    heels = [
        _choice(
            sock,
            pocket,
            pocket.girth(sock.cylinder.slots, sock.fabric),
            (heel_girth.value, heel_girth.measured, sources.HEEL_STRETCH),
        )
        for pocket in short_row.beside(sock.pockets["heel"], _EACH_SIDE)
    ]
    tips = [
        _choice(
            sock,
            pocket,
            pocket.halfway(sock.fabric),
            (toes, True, sources.BALL_STRETCH) if toes else None,
        )
        for pocket in short_row.beside(sock.pockets["toe"], _EACH_SIDE)
    ]
    return {
        part: [choice for choice in found if choice["foot_rounds"] >= 1]
        for part, found in (("heel", heels), ("toe", tips))
    }


def _choice(
    sock: Sock,
    pocket: Pocket,
    girth: float,
    body: tuple[float, bool, tuple[sources.Cited, ...]] | None,
) -> dict[str, Any]:
    sections = sock.with_pocket(pocket)
    exact = foot_rounds.exact(sock.aimed, sock.fabric.rounds, sections)
    found: dict[str, Any] = {
        "needles": pocket.needles,
        "left": pocket.left,
        "rows": pocket.rows,
        "girth": units.length(girth, sock.system),
        "foot_rounds": nearest(exact),
        "chosen": pocket == sock.pockets[pocket.part],
        "stretch": None,
        "verdict": "",
        "level": "",
    }
    feel = ""
    if body:
        around, measured, bounds = body
        level, verdict = fit.feels(around / girth, bounds)
        perhaps = "" if measured else "perhaps "
        found |= {"stretch": round(around / girth, 3), "verdict": perhaps + verdict, "level": level}
        feel = f", {perhaps}{verdict}"
    rounds = found["foot_rounds"]
    found["words"] = (
        f"{pocket.needles} needles down to {pocket.left}: {found['girth']['text']} round{feel}. "
        f"{rounds} foot round{'' if rounds == 1 else 's'}."
    )
    return found


def reach(sock: Sock) -> dict[str, dict[str, Any]]:
    """Return the needles left in heel and toe that the errors of the tape allow.

    They go by twos, so the ends of the tape's middle 80 % hold more: 95 to 98 % by trial.
    """
    found = {}
    for part, pocket, words in (
        ("heel", sock.pockets["heel"], sock.heel_words),
        ("toe", sock.pockets["toe"], sock.toe_words),
    ):
        low, high = sock.likely_left.get(part, (pocket.left, pocket.left))
        if part not in sock.likely_left:
            said = f"Exact: set by {'you' if words == short_row.AS_SET else 'custom'}."
        elif low == high:
            said = f"{low} left, whatever the tape was out by."
        else:
            said = f"{low} to {high} left (19 times in 20), by the error of the tape."
        found[part] = {"low": low, "high": high, "words": said}
    return found
