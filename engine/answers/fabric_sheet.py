"""The fabric written out: how sure it is, the tubes that say so, and the mark that suits a foot."""

from __future__ import annotations

from math import ceil, floor
from typing import Any, Literal

from engine import sources
from engine.answers import yarn_sheet
from engine.fabric import swatch
from engine.fabric.fabric import Fabric
from engine.fabric.gauge import Seen
from engine.fabric.swatch_line import Line
from engine.read import units
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sock.sock import Sock


def write(sock: Sock) -> dict[str, Any]:
    """Return the fabric of a sock; `keep` is sock one as a row of the swatches, but for its sizes.

    Where no tube was measured, `keep` has the `flat_width` that follows from what is known of the
    stitches: whoever told them need not measure them again.
    """
    cloth = sock.fabric
    return {
        "stitches": units.per_length(cloth.stitches, sock.system),
        "rounds": units.per_length(cloth.rounds, sock.system),
        "loop_length": units.small_length(cloth.loop, sock.system),
        "from": cloth.way,
        "swatch_first": cloth.way == "yarn",
        "guessed": list(cloth.guessed),
        "mark": cloth.mark,
        "line": _line(cloth.line) if cloth.line else None,
        "mark_for_ball": _mark_for_ball(sock, cloth.line) if cloth.line else None,
        "observations": [_observation(one, sock.system) for one in cloth.seen],
        "keep": _keep(sock),
        "words": _words(cloth),
    }


def _words(cloth: Fabric) -> Message:
    return say.fabric_known(
        known=say.in_turn(sentences=cloth.words),
        stitches=_percent(cloth.stitches_sd),
        rounds=_percent(cloth.rounds_sd),
    )


def _percent(sd: float) -> str:
    """Write how far out the next sock may be; to a tenth, so that another tube is seen to help."""
    return f"{sd * sources.TO_80_PERCENT * 100:.1f} %"


def _observation(seen: Seen, system: units.System) -> dict[str, Any]:
    tube, share, off = seen
    stitches, rounds = (
        units.per_length(one, system) if one else None for one in (tube.stitches, tube.rounds)
    )
    counted = (
        *([say.counted_across(gauge=stitches["text"])] if stitches else []),
        *([say.counted_along(gauge=rounds["text"])] if rounds else []),
    )
    percent = f"{share * 100:.0f}"
    kind: Literal["sock", "swatch"] = "sock" if tube.kind == "sock" else "swatch"
    if tube.mark is None:
        words = say.tube_seen(kind=kind, counted=counted, share=percent)
    else:
        mark = units.mark(tube.mark)
        words = say.tube_seen_at(kind=kind, mark=mark, counted=counted, share=percent)
    changed = swatch.drew_in(tube)
    return {
        "field": tube.field,
        "mark": tube.mark,
        "stitches": stitches,
        "rounds": rounds,
        "share": round(share, 3),
        "off": round(off, 2),
        "words": say.in_turn(sentences=(words, changed)) if changed else words,
    }


def _line(line: Line) -> Message:
    low, high = units.mark(line.low), units.mark(line.high)
    percent = abs(line.slope) / line.loop * 100
    if not line.sure:
        return say.marks_tell_nothing(low=low, high=high)
    size: Literal["larger", "smaller"] = "larger" if line.slope > 0 else "smaller"
    return say.marks_tell(size=size, low=low, high=high, percent=f"{percent:.0f}")


def _mark_for_ball(sock: Sock, line: Line) -> dict[str, Any] | None:
    """Return the mark at which the tube fits the ball of the foot as it should."""
    ball = sock.measures["ball_girth"].value
    wanted = sources.BALL_STRETCH_WANTED + sock.closer
    found = line.mark_for_stitches(sock.cylinder.slots * wanted / ball)
    if found is None:
        return None
    mark, low, high = found
    about = units.mark(nearest(mark * 4) / 4)
    if not line.near(mark):
        return {
            "mark": None,
            "low": None,
            "high": None,
            "use": None,
            "words": say.mark_too_far(mark=about),
        }
    return {
        "mark": round(mark, 2),
        "low": round(low, 2),
        "high": round(high, 2),
        "use": about,
        "words": say.mark_for_ball(
            girth=units.length_text(ball, sock.system),
            mark=about,
            low=units.mark(floor(low * 4) / 4),
            high=units.mark(ceil(high * 4) / 4),
        ),
    }


def _keep(sock: Sock) -> dict[str, str] | None:
    if sock.knitted_rounds is None:
        return None
    by_hand = nearest(sock.others.by_hand * sock.fabric.rounds)
    rounds = sock.knitted_rounds + sock.others.rounds + by_hand
    kept = {"kind": "sock", "needles": str(sock.cylinder.slots), "rounds": str(rounds)}
    if not sock.fabric.seen:
        width = sock.cylinder.slots / sock.fabric.stitches / 2
        kept["flat_width"] = f"{units.number(width / 10, 2)} cm"
    kept["whole_stitches"] = str(yarn_sheet.stitches_of_one(sock))
    return kept if sock.fabric.mark is None else {**kept, "mark": f"{sock.fabric.mark:g}"}
