"""The leg written out: its bands from the top down, how each is set, how sure its rounds are."""

from __future__ import annotations

from math import hypot
from typing import Any, Literal

from engine import sources
from engine.read import units
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sections.leg import Band
from engine.sections.section import Part
from engine.sock.sock import Sock


def kind(sock: Sock) -> Message:
    """Return what kind of leg it is, in a word or two."""
    if sock.leg.instep:
        return say.leg_kind(kind="instep")
    if sock.leg.plain is not None:
        return say.leg_ribbed(plain=min(sock.leg.plain, sock.leg_rounds))
    if not sock.leg.shaped:
        return say.leg_kind(kind="plain")
    found = [_mark(band, sock) for band in sock.leg.bands]
    marks = sorted(mark for mark in found if mark is not None)
    bands, named = len(found), len(marks) == len(found)
    if bands == 1:
        return say.leg_at_mark(mark=units.mark(marks[0])) if named else say.leg_kind(kind="own")
    if not named:
        return say.leg_in_bands(bands=bands)
    low, high = units.mark(marks[0]), units.mark(marks[-1])
    return say.leg_in_bands_at(bands=bands, low=low, high=high)


def in_colors(sock: Sock, part: Part, detail: Words) -> Words:
    """Return the words of a part with its colors, where those are planned."""
    told = sock.colors.text(part) if sock.colors else ""
    if not told or not detail:
        return detail
    if len(told) == 1:
        return say.in_color(detail=detail, color=told)
    over = sock.colors is not None and sock.colors.repeats(part)
    return (say.in_stripes if over else say.in_rounds)(detail=detail, rounds=told)


def write(sock: Sock) -> dict[str, Any]:
    """Return the count of the leg, with its bands where it is shaped."""
    counted = say.leg_count(rounds=sock.leg_rounds, kind=kind(sock))
    words = say.leg_count_as(count=counted, why=sock.leg.words)
    if not sock.leg.shaped:
        return {"rounds": sock.leg_rounds, "words": words, "bands": []}
    line = sock.fabric.line
    if line is None:
        besides = [say.two_swatches()]
    else:
        tried = {"low": units.mark(line.low), "high": units.mark(line.high)}
        beyond = any(_beyond(band, sock) for band in sock.leg.bands)
        besides = [say.beyond_marks(**tried)] if beyond else []
    if besides:
        words = say.in_turn(sentences=(words, *besides))
    bands, begun, height = list[dict[str, Any]](), 1, sock.top_above_floor - sock.cuff_depth
    for band in sock.leg.bands:
        end = height - band.rounds / band.cloth(sock.fabric).rounds
        bands.append(
            {
                "rounds": band.rounds,
                "from_round": begun,
                "to_round": begun + band.rounds - 1,
                "mark": _mark(band, sock),
                "stitches": units.per_length(band.cloth(sock.fabric).stitches, sock.system),
                "from_height": units.length(height, sock.system),
                "to_height": units.length(end, sock.system),
                "words": _setting(band, sock, units.length_text(end, sock.system)),
            }
        )
        begun, height = begun + band.rounds, end
    return {"rounds": sock.leg_rounds, "words": words, "bands": bands}


def _mark(band: Band, sock: Sock) -> float | None:
    return sock.fabric.mark if band.tighter == 1 else band.mark


def _beyond(band: Band, sock: Sock) -> bool:
    """Tell whether a band's mark lies outside those that were tried."""
    mark, line = _mark(band, sock), sock.fabric.line
    return mark is not None and line is not None and not line.low <= mark <= line.high


def _setting(band: Band, sock: Sock, height: str) -> Message:
    """Return how a band is set, and the height above the floor at which it ends."""
    mark = _mark(band, sock)
    if mark is not None:
        at = {"mark": units.mark(mark), "height": height}
        return say.band_beyond(**at) if _beyond(band, sock) else say.band_at_mark(**at)
    if band.tighter == 1:
        return say.band_as_foot(height=height)
    per = units.per_length(band.cloth(sock.fabric).stitches, sock.system)["text"]
    return say.band_at_stitch(gauge=per, height=height)


def reach(sock: Sock) -> dict[str, Any]:
    """Return the rounds of the leg with their middle 80 %, and what they depend on."""
    rounds, by = sock.leg_rounds, sock.leg.set_by
    if by:
        return {"low": rounds, "high": rounds, "words": say.exact_by(by=by)}
    at_top = sock.leg.bands[0].cloth(sock.fabric).rounds
    sd = hypot(rounds * sock.fabric.rounds_sd, at_top * sock.leg.height_sd)
    reach = sources.TO_80_PERCENT * sd
    low, high = units.whole_between(rounds - reach, rounds, rounds + reach)
    whence: Literal["tape", "fabric"] = "tape" if sock.leg.height_sd else "fabric"
    return {"low": low, "high": high, "words": say.leg_range(by=whence, low=low, high=high)}
