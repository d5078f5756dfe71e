"""A link as a square code that a phone's camera reads: the QR code of ISO/IEC 18004:2015.

Level M, which still reads with some 15 % of the square lost (a thumb, a fold, the sun on a screen),
the smallest version that holds the text, and the quiet zone of 4 modules that a reader needs to
find it. Beyond version 16 a module would be narrower than 4 px on the smallest phones in use, and
a camera at arm's length could not tell one from the next (from memory).
"""

from __future__ import annotations

from itertools import groupby
from typing import Any

from segno import encoder

from engine.read.errors import Problem, Refused
from engine.say import messages as say
from engine.say.message import Message

QUIET = 4  # modules of white on each side: ISO/IEC 18004:2015, 6.3.8
ON_PAPER = 10  # version, 65 modules across: half a mm each on 32 mm of paper
MOST_BYTES = 450  # what version 16 holds at level M: ISO/IEC 18004:2015, table 7


def draw(text: str) -> dict[str, Any]:
    """Return `text` as `svg` with its `version` and the modules `across`, quiet zone and all.

    Raises `Refused` where it is too long, or no address: those have ASCII letters only (RFC 3986).
    """
    if not text or not text.isascii():
        raise _no(say.no_link(), say.load_again())
    if len(text) > MOST_BYTES:
        raise _no(say.link_too_long(), say.copy_link_instead())
    # Byte mode, for a link mixes large and small letters; never more than level M, for a code of
    # larger modules is read from further off.
    made = encoder.encode(  # type: ignore[no-untyped-call]
        text.encode(), error="m", mode="byte", micro=False, boost_error=False
    )
    across = len(made.matrix) + 2 * QUIET
    path = "".join(_row(row, at + QUIET) for at, row in enumerate(made.matrix))
    return {
        "svg": f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {across} {across}" '
        f'aria-hidden="true" shape-rendering="crispEdges">'
        f'<path fill="#fff" d="M0 0h{across}v{across}H0z"/><path fill="#000" d="{path}"/></svg>',
        "version": made.version,
        "across": across,
    }


def on_paper(text: str) -> str | None:
    """Return the svg of `text` for a small print, None where it is none or would be too fine."""
    if not 0 < len(text) <= MOST_BYTES:
        return None
    drawn = draw(text)
    return str(drawn["svg"]) if drawn["version"] <= ON_PAPER else None


def missing(address: str, words: Message | None) -> Message | None:
    """Return in one line why `on_paper` has no code for an address, None where it has one.

    `words` tell what the link of these counts cannot hold (`anonymous.Bare`).
    """
    if address and on_paper(address) is None:
        return say.no_code(why=say.code_too_fine())
    return say.no_code(why=words) if words and not address else None


def _row(modules: bytearray, down: int) -> str:
    """Return the dark runs of a row as pieces of a path."""
    drawn, at = "", QUIET
    for dark, run in groupby(modules):
        wide = len(list(run))
        drawn += f"M{at} {down}h{wide}v1h-{wide}z" if dark else ""
        at += wide
    return drawn


def _no(message: Message, way_out: Message) -> Refused:
    return Refused([Problem("text", message, way_out)])
