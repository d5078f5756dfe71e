"""A plan without the person: a request for the very same counts that holds no measure of anybody.

What is left are cylinder, yarn and fabric as they were told, sock one where this is sock two, and
every count as it was worked out: cuff, leg with its bands, heel, toe, and for the foot rounds the
length of the sock's own foot. A band goes by its mark, where that is not known by its stitches; to
six decimals, so that its ends stay within a hundredth of a mm. The foot's length stands in the
middle of all that round to the same rounds, so it may be written in whole tenths of a mm; that of a
sock two may not, and is written to its thousandths. Foot and other foot, sex, age, height, weight,
shoe size, the yarn at hand and the girths of a leg stay behind.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from engine.read import units
from engine.say import messages as say
from engine.say.message import Message
from engine.sections import cuff, leg
from engine.sections.leg import OVER_INSTEP, Band
from engine.sock.sock import Sock
from engine.sock.wanted import SOCK_LENGTH

_OF_THE_PERSON = ("foot", "other_foot", "person")
_AS_TOLD = ("units", "cylinder", "fabric", "first_sock", "knitter", "origin")


class Bare(NamedTuple):
    """A request without the person, None where there can be none; `words` tell what it lacks."""

    request: Mapping[str, Any] | None
    words: Message | None = None


def of(request: Mapping[str, Any], sock: Sock) -> Bare:
    """Return a request for the counts of `sock`: `request` itself where it tells of nobody."""
    return without_person(request, sock) if personal(request) else Bare(request)


def without_record(request: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return a request that tells that the knitter's own record was left out, where it had one."""
    if not _says(request.get("knitter")):
        return request
    return {**request, "knitter": {"left_out": "yes"}}


def personal(request: Mapping[str, Any]) -> bool:
    """Tell whether a request that was planned says anything of a person."""
    wished = request.get("sock") or {}
    of_leg = wished.get("leg") or {}
    return any(map(_says, (*map(request.get, _OF_THE_PERSON), of_leg.get("girths"))))


def without_person(request: Mapping[str, Any], sock: Sock) -> Bare:
    """Return a request for the counts of `sock`, planned from `request`, without the person."""
    length = _length(sock)
    if length not in SOCK_LENGTH or sock.leg_rounds not in leg.ROUNDS:
        return Bare(None, say.no_bare_link())
    kept = {name: request[name] for name in _AS_TOLD if name in request}
    cuff_told = (request.get("sock") or {}).get("cuff") or {}
    counts: dict[str, Any] = {
        "cuff": {
            **{name: cuff_told[name] for name in cuff.WIDTHS if name in cuff_told},
            **sock.cuff.asked(),
        },
        "leg": _leg(sock),
        "heel": sock.heel.asked(),
        "toe": {**sock.toe.asked(), **_before_toe(sock)},
        "foot_length_of_sock": _written(length, sock),
    }
    if sock.end_rounds:
        counts["end"] = {"rounds": sock.end_rounds}
    if sock.colors:
        bare = {"heel", "toe"} - set(sock.pockets)  # nothing is knitted there that has a color
        asked = sock.colors.asked()
        counts["colors"] = {part: text for part, text in asked.items() if part not in bare}
    if sock.string:
        counts["string"] = sock.string
    return Bare({**kept, "sock": counts})


def _before_toe(sock: Sock) -> dict[str, int]:
    return {"plain": sock.rounds_before_toe} if sock.rounds_before_toe else {}


def _leg(sock: Sock) -> dict[str, Any]:
    if sock.leg.instep:
        return {"kind": OVER_INSTEP, "rounds": sock.leg_rounds}
    if sock.leg.plain is not None:
        plain = min(sock.leg.plain, sock.leg_rounds)
        return {"kind": "ribbed", "rounds": sock.leg_rounds, "plain": plain}
    if not sock.leg.shaped:
        return {"rounds": sock.leg_rounds}
    return {"bands": [_band(band, sock) for band in sock.leg.bands]}


def _band(band: Band, sock: Sock) -> dict[str, int | str]:
    told: dict[str, int | str] = {"rounds": band.rounds}
    if band.mark is not None:
        told["mark"] = f"{band.mark:g}"
    elif band.tighter != 1:
        before = sock.fabric_before or sock.fabric  # a band is told before sock one teaches
        told["stitches"] = rate(before.stitches * band.tighter, sock.system)
    return told


def rate(per_mm: float, system: units.System) -> str:
    """Write a count per mm so that it is read as the same again."""
    if system == "in":
        return f"{units.number(per_mm * units.MM_PER_INCH, 6)} / in"
    return f"{units.number(per_mm * 100, 6)} / 10 cm"


def _length(sock: Sock) -> float:
    """Return a length of the sock's foot in mm that gives its foot rounds.

    For sock two it must also give sock one a foot, before that was known: the length it was aimed
    at did.
    """
    if sock.pair is None:
        return sock.foot_length
    return max(sock.foot_length, sock.aimed) if sock.by_foot else sock.for_foot


def _written(mm: float, sock: Sock) -> str:
    more = 0 if sock.knitted_rounds is None else 2
    if sock.system == "in":
        return f"{units.number(mm / units.MM_PER_INCH, 3 + more)} in"
    return f"{units.number(mm / 10, 2 + more)} cm"


def _says(value: Any) -> bool:
    """Tell whether anything is written anywhere in a value."""
    if isinstance(value, Mapping):
        return any(map(_says, value.values()))
    if isinstance(value, list):
        return any(map(_says, value))
    return bool(value.strip()) if isinstance(value, str) else value is not None
