"""A tag that goes with a finished pair when it is handed over.

What she writes on it herself (for whom, fibre, washing, the day) is none of the calculator's; here
is what follows from the counts: whom they fit, and a code that opens them so that the same pair can
be knitted again. The code tells nothing of the person, for a tag is anybody's to read.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import anonymous, code, link
from engine.judge import cautions
from engine.people import foot
from engine.read import units
from engine.read.fields import Fields
from engine.sock.sock import Sock
from engine.sources import LENGTH_EASE_USUAL


def without_counts() -> dict[str, Any]:
    """Return the tag of a pair that nothing is known of."""
    return {"facts": [], "code": None, "code_words": "", "caution": cautions.ON_THE_TAG}


def write(sock: Sock, request: Mapping[str, Any], page: str) -> dict[str, Any]:
    """Return the tag of a sock that was planned from `request`.

    `page` is the address at which a link is opened ("" where there is none); `code` is None where
    that makes no code, and then `code_words` say why.
    """
    bare = anonymous.of(request, sock)
    address = f"{page}#{link.write(bare.request)}" if page and bare.request else ""
    return {
        **without_counts(),
        "facts": _facts(sock, request),
        "code": code.on_paper(address),
        "code_words": code.missing(address, bare.words),
    }


def feet(sock: Sock) -> tuple[float, float]:
    """Return the shortest and the longest foot in mm that the sock fits.

    A sock is usually 2 to 6 % shorter than its foot (common practice, no published source); one
    that was meant to be otherwise fits the foot it was meant for too.
    """
    least, most = map(float, LENGTH_EASE_USUAL)
    shortest, longest = min(least, sock.ease), max(most, sock.ease)
    return sock.foot_length / (1 - shortest), sock.foot_length / (1 - longest)


def _facts(sock: Sock, request: Mapping[str, Any]) -> list[dict[str, str]]:
    facts = [{"name": "Fits a foot of", "text": units.length_range(*feet(sock), sock.system)}]
    shoe = foot.read_person(Fields(request).part("person")).shoe
    if shoe is not None:
        system, size = shoe
        facts.append({"name": "Shoe size", "text": f"{system} {units.number(size, 2)}"})
    return facts
