"""What would narrow the range of the foot rounds most, tried out before it is said.

Each way is reckoned as if it had been done, and only one that narrows the range in whole rounds is
told: measuring a foot once more, or at all; a swatch, where the fabric was told or guessed; its
rounds counted over twice the length. A longer tube is no surer than one tube is like the next
(`SOCK_TO_SWATCH`), so once that rules no ruler helps, and that is said instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import sqrt

from engine import sources
from engine.fabric import certainty, gauge, swatch
from engine.fabric.certainty import Foretold, Reading
from engine.sock.sock import Sock

_USUAL_SWATCH, _USUAL_ROUNDS = 150.0, 60  # mm, and the rounds over them


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
        yield "a swatch, washed and rested", _known_to(sock, _of_a_swatch())
    elif "rounds" in cloth.guessed:
        words = "counting the rounds of the swatch over a length too"
        yield words, _known_to(sock, _of_a_swatch())
    elif sock.knitted_rounds is None:
        longer = gauge.if_longer(cloth.seen, cloth.mark, cloth.line, cloth.tex)
        if longer is not None:
            yield "measuring over more rounds of swatch", _known_to(sock, longer)


def _of_a_swatch() -> Foretold:
    tape = swatch.along_tape("swatch", _USUAL_SWATCH, _USUAL_ROUNDS)
    return certainty.mean([Reading(0.0, tape, sock=False)], certainty.BEFORE).foretold


def _known_to(sock: Sock, along: Foretold) -> Sock:
    cloth = sock.fabric
    return replace(sock, fabric=cloth.known(cloth.across or along, along))
