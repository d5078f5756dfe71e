"""The leg written out: its bands from the top down, how each is set, how sure its rounds are."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from engine import sources, units
from engine.leg import Band
from engine.sock import Sock
from engine.units import nearest

_TWO_SWATCHES = "two swatches at two marks would give the mark numbers"


def kind(sock: Sock) -> str:
    """Return what kind of leg it is, in a word or two."""
    bands = len(sock.leg.bands)
    if bands > 1:
        return f"in {bands} bands"
    return "at its own tension" if sock.leg.shaped else "plain"


def write(sock: Sock) -> dict[str, Any]:
    """Return the count of the leg, with its bands where it is shaped."""
    rounds = "1 round" if sock.leg_rounds == 1 else f"{sock.leg_rounds} rounds"
    words = f"{rounds} {kind(sock)}, {sock.leg.words}"
    if not sock.leg.shaped:
        return {"rounds": sock.leg_rounds, "words": words, "bands": []}
    if any(band.mark is None for band in sock.leg.bands):
        words += f"; {_TWO_SWATCHES}"
    bands, begun, height = list[dict[str, Any]](), 1, sock.top_above_floor - sock.cuff_depth
    for band in sock.leg.bands:
        end = height - band.rounds / band.cloth(sock.fabric).rounds
        bands.append(
            {
                "rounds": band.rounds,
                "from_round": begun,
                "to_round": begun + band.rounds - 1,
                "mark": band.mark,
                "stitches": units.per_length(band.cloth(sock.fabric).stitches, sock.system),
                "from_height": units.length(height, sock.system),
                "to_height": units.length(end, sock.system),
                "words": f"{_setting(band, sock)}, to {units.length_text(end, sock.system)} above "
                "the floor",
            }
        )
        begun, height = begun + band.rounds, end
    return {"rounds": sock.leg_rounds, "words": words, "bands": bands}


def _setting(band: Band, sock: Sock) -> str:
    if band.mark is not None:
        return f"tension mark {units.number(band.mark, 2)}"
    if band.tighter == 1:
        return "the stitch of the foot"
    per = units.per_length(band.cloth(sock.fabric).stitches, sock.system)["text"]
    return f"a stitch of {per}"


def tensions(sock: Sock) -> list[tuple[str, int]]:
    """Return each band's tension in words, "" where it need not be set, and its rounds."""
    first, *_ = bands = sock.leg.bands
    words = [_set(first, sock, None) if sock.leg.shaped else _foot(sock)]
    words += [_set(band, sock, before) for before, band in pairwise(bands)]
    return [(text, band.rounds) for text, band in zip(words, bands, strict=True)]


def _foot(sock: Sock) -> str:
    mark = sock.fabric.mark
    return "" if mark is None else f"Set the tension mark to {units.mark(mark)}."


def back(sock: Sock) -> str:
    """Return how to set the tension before the heel, "" where it stands as the foot wants it."""
    last = sock.leg.bands[-1]
    if last.tighter == 1:
        return ""
    return _set(Band(0, 1.0, sock.leg.foot_mark), sock, last)


def _set(band: Band, sock: Sock, before: Band | None) -> str:
    if band.mark is not None:
        return f"Set the tension mark to {units.number(band.mark, 2)}."
    per = units.per_length(band.cloth(sock.fabric).stitches, sock.system)["text"]
    if before is None:
        return f"Set the tension for a stitch of {per} once it is washed."
    size = "smaller" if band.tighter > before.tighter else "larger"
    foot = ", as in the foot" if band.tighter == 1 else ""
    return f"Set the tension for a {size} stitch: {per} once it is washed{foot}."


def reach(sock: Sock) -> dict[str, Any]:
    """Return the rounds of the leg with their middle 80 %, and what they hang on."""
    rounds = sock.leg_rounds
    if sock.leg.exact:
        return {"low": rounds, "high": rounds, "words": "Exact: set by you."}
    by = sources.TO_80_PERCENT * rounds * sock.fabric.rounds_sd
    low, high = max(0, nearest(rounds - by)), nearest(rounds + by)
    words = f"Most likely {low} to {high} rounds for this height, as sure as the fabric is."
    return {"low": low, "high": high, "words": words}
