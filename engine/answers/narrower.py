"""What would narrow the range of the foot rounds most, tried out before it is said.

Each way is reckoned as if it had been done and had come out as foretold: measuring a foot once
more, or at all; a swatch, or another one; its rounds counted over twice the length; and sock one,
finished and measured, for sock two. The scatter from tube to tube stays as it is known, so what is
said is about what is seen then. A way is told, with the range it gives, if that is narrower in
whole rounds. What no way narrows is how one sock differs from the next, and that is said instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt
from typing import Literal

from engine import sources
from engine.fabric import gauge
from engine.fabric.certainty import Foretold
from engine.say import messages as say
from engine.say.message import Message
from engine.sock.sock import Sock

Way = Literal[
    "foot-again", "foot-itself", "swatch", "count-rounds", "another-swatch", "more-rounds"
]


def words(sock: Sock) -> tuple[Message, ...]:
    """Return a sentence or two, none where there is nothing to say."""
    width = _width(sock.rounds_range)
    if not width:
        return ()
    said = list[Message]()
    whole = sock.aimed * sock.fabric.rounds
    ways = [(whole * sd, way, sock.range_within(whole * sd)) for way, sd in _ways(sock)]
    tried = [one for one in ways if _width(one[2]) < width]
    if tried:
        _, way, after = min(tried, key=lambda one: one[0])
        width = _width(after)
        said.append(say.narrow_it(way=way, span=span(after)))
    if sock.knitted_rounds is None:
        finished = sock.range_within(whole * _known_to(sock, _one_more("sock", sock)))
        if _width(finished) < width:
            said.append(say.sock_one_narrows(span=span(finished)))
    by_length = sock.fabric.rounds * sock.aimed_sd
    if not said and sock.fabric.way == "swatch" and sock.rounds_sd > sqrt(2) * by_length:
        return (say.rest_is_tubes(),)
    return tuple(said)


def _width(found: tuple[int, int]) -> int:
    low, high = found
    return high - low


def span(found: tuple[int, int]) -> Message | str:
    """Return a range of counts in words."""
    low, high = found
    return f"{low}" if low == high else say.span(low=low, high=high)


def _ways(sock: Sock) -> Iterator[tuple[Way, float]]:
    """Yield what could be done before knitting on, and how far out the rounds were then.

    That is a relative error of the foot's length in rounds.
    """
    cloth = sock.fabric
    if sock.aimed_sd and sock.by_foot:
        if sock.measures["length"].measured:
            yield "foot-again", _to(sock, sock.aimed_sd / sqrt(2))
        else:
            by_tape = float(sources.TAPE_ON_LENGTH) * (1 - sock.ease)
            yield "foot-itself", _to(sock, by_tape)
    if cloth.way != "swatch":
        yield "swatch", _known_to(sock, _one_more("swatch", sock))
    elif "rounds" in cloth.guessed:
        yield "count-rounds", _known_to(sock, _one_more("swatch", sock))
    elif sock.knitted_rounds is None:
        yield "another-swatch", _known_to(sock, _one_more("swatch", sock))
        now = cloth.along or gauge.UNKNOWN
        longer = gauge.if_longer(cloth.seen, cloth.mark, cloth.line, cloth.tex, now, cloth.knitter)
        if longer is not None:
            yield "more-rounds", _known_to(sock, longer)


def _one_more(kind: str, sock: Sock) -> Foretold:
    cloth = sock.fabric
    now = cloth.along or gauge.UNKNOWN
    return gauge.if_one_more(kind, cloth.seen, cloth.mark, cloth.line, now, cloth.knitter)


def _to(sock: Sock, aimed_sd: float) -> float:
    """Return the relative error where the foot is known to `aimed_sd` mm."""
    return sock.fabric.rounds_sd_with(aimed_sd / sock.aimed)


def _known_to(sock: Sock, along: Foretold) -> float:
    """Return the relative error where the rounds are known to `along`."""
    return along.sd((sock.aimed_sd / sock.aimed) ** 2)
