"""What sock two may be after sock one, and what to expect: to the foot, like it, or between."""

from __future__ import annotations

from math import floor
from typing import Any, Literal

from engine.read import units
from engine.say import messages as say
from engine.say.message import Message
from engine.sock.pair import Wish
from engine.sock.sock import Sock


def write(sock: Sock) -> dict[str, Any] | None:
    """Return sock one's own length and each wish for sock two, None where this is no sock two.

    `why` says why a sock like sock one has another count, where it has.
    """
    pair = sock.pair
    if pair is None:
        return None
    like_one = next(wish.rounds for wish in pair.wishes if wish.like == "sock one")
    knitted = sock.knitted_rounds
    return {
        "one": units.length(pair.one, sock.system),
        "wishes": [_wish(one, one.like == pair.like, sock.system) for one in pair.wishes],
        "why": _why(knitted, like_one),
    }


def _why(knitted: int | None, like_one: int) -> Message | None:
    if knitted in (None, like_one):
        return None
    again: Literal["shorter", "longer"] = "shorter" if like_one > knitted else "longer"
    return say.like_one_otherwise(one=str(knitted), two=str(like_one), again=again)


def _wish(wish: Wish, chosen: bool, system: units.System) -> dict[str, Any]:
    off, apart = (_short(mm, system) for mm in (wish.off, wish.apart))
    return {
        "like": wish.like,
        "rounds": wish.rounds,
        "chosen": chosen,
        "off": units.length(wish.off, system),
        "apart": units.length(wish.apart, system),
        "words": say.pair_within(rounds=wish.rounds, off=off, apart=apart),
    }


def _short(mm: int, system: units.System) -> str:
    """Write a small distance: in mm, or in eighths of an inch, rounded down like it."""
    if system == "cm":
        return f"{mm}\u00a0mm"
    eighth = units.MM_PER_INCH / 8
    return units.inches(max(1, floor(mm / eighth)) * eighth)
