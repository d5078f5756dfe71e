"""What would narrow the range of the foot rounds most, tried out before it is said.

Each way is reckoned as if it had been done and had come out as foretold: measuring a foot once
more, or at all; a swatch, or another one; its rounds counted over twice the length; and sock one,
finished and measured, for sock two. The scatter from tube to tube stays as it is known, so what is
said is about what is seen then. A way is told, with the range it gives, if that is narrower in
whole rounds. What no way narrows is how one sock differs from the next, and that is said instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import sqrt

from engine import sources
from engine.fabric import gauge
from engine.fabric.certainty import Foretold
from engine.sock.sock import Sock


def words(sock: Sock) -> str:
    """Return a sentence or two, "" where there is nothing to say."""
    width = _width(sock)
    if not width:
        return ""
    said = []
    tried = [(after.rounds_sd, way, after) for way, after in _ways(sock) if _width(after) < width]
    if tried:
        _, way, after = min(tried, key=lambda one: one[0])
        width = _width(after)
        said.append(f"What would narrow it most: {way} (then {_span(after)}).")
    if sock.knitted_rounds is None:
        finished = _known_to(sock, _one_more("sock", sock))
        if _width(finished) < width:
            said.append(f"Sock one, washed and measured, makes it {_span(finished)} for sock two.")
    by_length = sock.fabric.rounds * sock.aimed_sd
    if not said and sock.fabric.way == "swatch" and sock.rounds_sd > sqrt(2) * by_length:
        return "The rest is how one tube differs from the next."
    return " ".join(said)


def _width(sock: Sock) -> int:
    low, high = sock.rounds_range
    return high - low


def _span(sock: Sock) -> str:
    low, high = sock.rounds_range
    return f"{low}" if low == high else f"{low} to {high}"


def _ways(sock: Sock) -> Iterator[tuple[str, Sock]]:
    """Yield what could be done before knitting on, and the sock as if it had been."""
    if sock.aimed_sd:
        if sock.measures["length"].measured:
            yield "measuring the foot once more", replace(sock, aimed_sd=sock.aimed_sd / sqrt(2))
        else:
            by_tape = float(sources.TAPE_ON_LENGTH) * (1 - sock.ease)
            yield "measuring the foot itself", replace(sock, aimed_sd=by_tape)
    cloth = sock.fabric
    if cloth.way != "swatch":
        yield "a swatch, washed and rested", _known_to(sock, _one_more("swatch", sock))
    elif "rounds" in cloth.guessed:
        words = "counting the rounds of the swatch over a length too"
        yield words, _known_to(sock, _one_more("swatch", sock))
    elif sock.knitted_rounds is None:
        yield "another swatch", _known_to(sock, _one_more("swatch", sock))
        now = cloth.along or gauge.UNKNOWN
        longer = gauge.if_longer(cloth.seen, cloth.mark, cloth.line, cloth.tex, now)
        if longer is not None:
            yield "measuring over more rounds of swatch", _known_to(sock, longer)


def _one_more(kind: str, sock: Sock) -> Foretold:
    cloth = sock.fabric
    now = cloth.along or gauge.UNKNOWN
    return gauge.if_one_more(kind, cloth.seen, cloth.mark, cloth.line, now)


def _known_to(sock: Sock, along: Foretold) -> Sock:
    cloth = sock.fabric
    return replace(sock, fabric=cloth.known(cloth.across or along, along))
