"""The leg written out: its bands from the top down, how each is set, how sure its rounds are."""

from __future__ import annotations

from math import hypot
from typing import Any

from engine import sources
from engine.read import units
from engine.sections.leg import Band
from engine.sections.section import said
from engine.sock.sock import Sock

_TWO_SWATCHES = "two swatches at two marks would give the mark numbers"


def kind(sock: Sock) -> str:
    """Return what kind of leg it is, in a word or two."""
    if not sock.leg.shaped:
        return "plain"
    found = [_mark(band, sock) for band in sock.leg.bands]
    *others, last = [units.mark(mark) for mark in found if mark is not None] or [""]
    named = len(others) + 1 == len(found) and last
    if len(found) == 1:
        return f"at mark {last}" if named else "at its own tension"
    marks = f" at marks {', '.join(others)} and {last}" if named else ""
    return f"in {len(found)} bands{marks}"


def write(sock: Sock) -> dict[str, Any]:
    """Return the count of the leg, with its bands where it is shaped."""
    words = f"{said(sock.leg_rounds)} {kind(sock)}, {sock.leg.words}"
    if not sock.leg.shaped:
        return {"rounds": sock.leg_rounds, "words": words, "bands": []}
    beyond = [mark for band in sock.leg.bands if (mark := _beyond(band, sock))]
    if beyond:
        words += f"; beyond the marks tried, so less sure: {', '.join(beyond)}"
    if sock.fabric.line is None:
        words += f"; {_TWO_SWATCHES}"
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
                "words": f"{_setting(band, sock)}, to {units.length_text(end, sock.system)} above "
                "the floor",
            }
        )
        begun, height = begun + band.rounds, end
    return {"rounds": sock.leg_rounds, "words": words, "bands": bands}


def _mark(band: Band, sock: Sock) -> float | None:
    return sock.fabric.mark if band.tighter == 1 else band.mark


def _beyond(band: Band, sock: Sock) -> str:
    """Return a mark outside those that were tried, else ""."""
    mark, line = _mark(band, sock), sock.fabric.line
    outside = mark is not None and line is not None and not line.low <= mark <= line.high
    return units.mark(mark) if outside and mark is not None else ""


def _setting(band: Band, sock: Sock) -> str:
    mark = _mark(band, sock)
    if mark is not None:
        beyond = ", beyond the marks tried" if _beyond(band, sock) else ""
        return f"tension mark {units.mark(mark)}{beyond}"
    if band.tighter == 1:
        return "the stitch of the foot"
    per = units.per_length(band.cloth(sock.fabric).stitches, sock.system)["text"]
    return f"a stitch of {per}"


def reach(sock: Sock) -> dict[str, Any]:
    """Return the rounds of the leg with their middle 80 %, and what they hang on."""
    rounds = sock.leg_rounds
    if sock.leg.exact:
        return {"low": rounds, "high": rounds, "words": "Exact: set by you."}
    at_top = sock.leg.bands[0].cloth(sock.fabric).rounds
    sd = hypot(rounds * sock.fabric.rounds_sd, at_top * sock.leg.height_sd)
    by = sources.TO_80_PERCENT * sd
    low, high = units.whole_between(rounds - by, rounds, rounds + by)
    sure = "tape and fabric are" if sock.leg.height_sd else "the fabric is"
    words = f"Most likely {low} to {high} rounds for this height, as sure as {sure}."
    return {"low": low, "high": high, "words": words}
