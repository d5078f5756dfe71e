"""What would narrow the range of the foot rounds most, tried out before it is said.

Each way is reckoned as if it had been done, and only one that narrows the range in whole rounds is
told: measuring a foot once more, or at all; a swatch, where the fabric was told or guessed; its
rounds counted over twice the length. A longer tube is no surer than one tube is like the next
(`SOCK_TO_SWATCH`), so once that rules no ruler helps, and that is said instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot, sqrt

from engine import sources
from engine.fabric import gauge
from engine.sock.sock import Sock

_USUAL_SWATCH = 150.0  # mm, some 60 rounds


def words(sock: Sock) -> str:
    """Return a sentence, "" where there is nothing to say."""
    low, high = sock.rounds_range
    if low == high:
        return ""
    tried = [(after.rounds_sd, way) for way, after in _ways(sock) if _width(after) < high - low]
    if tried:
        return f"What would narrow it most: {min(tried)[1]}."
    by_length = sock.fabric.rounds * sock.aimed_sd
    if sock.fabric.way == "swatch" and sock.rounds_sd > sqrt(2) * by_length:
        return "The rest is how one tube differs from the next."
    return ""


def _width(sock: Sock) -> int:
    low, high = sock.rounds_range
    return high - low


def _ways(sock: Sock) -> Iterator[tuple[str, Sock]]:
    """Yield what could be done, and the sock as if it had been."""
    if sock.aimed_sd:
        if sock.measures["length"].measured:
            yield "measuring the foot once more", replace(sock, aimed_sd=sock.aimed_sd / sqrt(2))
        else:
            by_tape = float(sources.TAPE_ON_LENGTH) * (1 - sock.ease)
            yield "measuring the foot itself", replace(sock, aimed_sd=by_tape)
    cloth = sock.fabric
    if cloth.way != "swatch":
        sd = hypot(sources.TAPE_ON_SWATCH / _USUAL_SWATCH, sources.SOCK_TO_SWATCH)
        yield "a swatch, washed and rested", _known_to(sock, sd)
    elif "rounds" in cloth.guessed:
        sd = hypot(sources.TAPE_ON_SWATCH / _USUAL_SWATCH, sources.SOCK_TO_SWATCH)
        yield "counting the rounds of the swatch over a length too", _known_to(sock, sd)
    elif sock.knitted_rounds is None:
        longer = gauge.rounds_sd_if_longer(cloth.seen, cloth.mark, cloth.line, cloth.tex)
        if longer is not None:
            yield "measuring over more rounds of swatch", _known_to(sock, longer)


def _known_to(sock: Sock, rounds_sd: float) -> Sock:
    return replace(sock, fabric=replace(sock.fabric, rounds_sd=rounds_sd))
