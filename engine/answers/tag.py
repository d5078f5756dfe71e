"""A tag that goes with a finished pair when it is handed over.

What she writes on it herself (for whom, fibre, washing, the day) is none of the calculator's; here
is what follows from the counts: whom they fit, and a code that opens them so that the same pair can
be knitted again. The code tells nothing of the person, for a tag is anybody's to read.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.answers import anonymous, code, link, sent_counts
from engine.judge import cautions
from engine.people import foot, shoe_size
from engine.read import units
from engine.read.fields import Fields
from engine.say import messages as say
from engine.sock.sock import Sock
from engine.sources import LENGTH_EASE_USUAL

_US = {"woman": "US women", "man": "US men"}


def without_counts() -> dict[str, Any]:
    """Return the tag of a pair that nothing is known of."""
    return {
        "facts": [],
        "drawing": None,
        "code": None,
        "code_words": "",
        "caution": cautions.ON_THE_TAG,
    }


def write(sock: Sock, request: Mapping[str, Any], page: str) -> dict[str, Any]:
    """Return the tag of a sock that was planned from `request`.

    `page` is the address at which a link is opened ("" where there is none); `code` is None where
    that makes no code, and then `code_words` say why.
    """
    bare = anonymous.of(request, sock)
    address = ""
    if page and bare.request:
        address = f"{page}#{link.write(bare.request, sent_counts.pack(sock))}"
    return {
        **without_counts(),
        "facts": _facts(sock, request),
        "code": code.on_paper(address),
        "code_words": code.missing(address, bare.words) or "",
    }


def feet(sock: Sock) -> tuple[float, float]:
    """Return the shortest and the longest foot in mm that the sock fits.

    A sock is usually 2 to 6 % shorter than its foot (common practice, no published source); one
    that was meant to be otherwise fits the foot it was meant for too. Where sock one came out
    otherwise than sock two is to be, it is the feet that both fit.
    """
    least, most = map(float, LENGTH_EASE_USUAL)
    shortest, longest = min(least, sock.ease), max(most, sock.ease)
    both = [sock.foot_length, sock.pair.one if sock.pair else sock.foot_length]
    ends = max(both) / (1 - shortest), min(both) / (1 - longest)
    return min(ends), max(ends)  # of two socks that no foot is between, what lies between them


def _facts(sock: Sock, request: Mapping[str, Any]) -> list[dict[str, Any]]:
    facts = [{"name": say.fact(name="fits"), "text": units.length_range(*feet(sock), sock.system)}]
    person = foot.read_person(Fields(request).part("person"))
    if person.shoe is not None:
        system, size = person.shoe
        text, name = f"{system} {units.number(size, 2)}", say.fact(name="shoe")
    else:
        text, name = ", ".join(_shoes(feet(sock), person, sock.system)), say.fact(name="shoes")
    return [*facts, {"name": name, "text": text}] if text else facts


def _shoes(ends: tuple[float, float], person: foot.Person, system: units.System) -> list[str]:
    """Return the shoe sizes that feet between two lengths in mm wear, as ISO 19407 counts them.

    In whole EU sizes beside cm, in halves of US sizes beside inches: those of women and men where
    it is not said whose foot it is.
    """
    if system == "cm":
        scales = ["EU child" if person.child else "EU"]
    elif person.child:
        scales = ["US child", "US youth"]
    else:
        scales = [name for sex, name in _US.items() if person.sex in (None, sex)]
    step = 1.0 if system == "cm" else 0.5
    found = []
    for scale in scales:
        low, high = (round(shoe_size.size(scale, mm) / step) * step for mm in ends)
        least, most = shoe_size.RANGE[scale]
        if least <= low <= high <= most:
            sizes = dict.fromkeys((units.number(low), units.number(high)))
            found.append(f"{scale} {'–'.join(sizes)}")
    return found[:1] if person.child else found
