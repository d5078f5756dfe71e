"""What finished pairs say of the knitter: the tubes of each, put together by yarn, and folded.

A pair tells the tubes that its plan was made by, and sock one as one tube more. Pairs that share a
swatch are of one yarn, and it counts once; a row of their swatches that is a sock of one of these
pairs counts there alone. The yarn of the plan that all this is for is left out, as its own tubes
count in that plan. Tubes are the same where all that was measured of them is: of a sock its rounds
and length are enough, for its width may be measured later, so one that only chances to measure the
same may be passed over.

A pair by a gauge that was told, or a yarn's number alone, has no tube to share: it stands for
itself, and says little.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from math import log
from typing import Any, NamedTuple

from engine.fabric import knitter
from engine.fabric.certainty import Foretold, Told
from engine.fabric.fabric import Fabric
from engine.fabric.knitter import FEWEST, NEWEST, Knitter, OfYarn
from engine.fabric.swatch import Swatch
from engine.read.errors import Refused
from engine.read.fields import Fields
from engine.sock import first_sock, plan
from engine.sock.first_sock import FirstSock
from engine.sock.sock import Sock

_Key = tuple[object, ...]  # what tells one tube from another
_DIGITS = 9
_LOOKED_AT = 2 * NEWEST  # of the newest; some are of the plan's own yarn


class Pair(NamedTuple):
    """A finished pair: how it was planned, and its washed sock one."""

    planned: Sock
    one: FirstSock


class Said(NamedTuple):
    """What a pair says: the tubes it was planned by, sock one, and what was told in their place.

    `yarn` is what tells its yarn from others: the keys of its tubes, or what was told.
    """

    tubes: tuple[Swatch, ...]
    one: Swatch
    told: tuple[Told | None, Told | None]
    yarn: frozenset[_Key]


def read(pair: object) -> Pair | None:
    """Return a pair, None where it tells no washed length; raises `Refused` as a plan does."""
    if not isinstance(pair, Mapping):
        return None
    sock = plan.make(pair.get("request"))
    fields = Fields({"first_sock": pair.get("measured")}, system=sock.system)
    one = first_sock.read(fields.part("first_sock"))
    if fields.problems:
        raise Refused(fields.problems)
    return None if one is None or not one.washed or sock.pair is not None else Pair(sock, one)


def said(pair: Pair) -> Said | None:
    """Return what a pair says, None where its sock cannot be."""
    sock = pair.planned
    fields = Fields({}, "first_sock", sock.system)
    tube = first_sock.as_tube(fields, pair.one, sock)
    if fields.problems:
        return None
    cloth = sock.fabric
    seen = tuple(tube for tube, *_ in cloth.seen)
    sides = (cloth.stitches, cloth.across), (cloth.rounds, cloth.along)
    across, along = (None if seen else _told(*side) for side in sides)
    return Said(seen, tube, (across, along), _of_yarn(cloth) | {_key(tube)})


def _of_yarn(cloth: Fabric) -> frozenset[_Key]:
    """Return what tells a fabric's yarn from others."""
    if not cloth.seen:
        return frozenset({("told", round(cloth.stitches, _DIGITS), round(cloth.rounds, _DIGITS))})
    return frozenset(_key(tube) for tube, *_ in cloth.seen)


def _told(per_mm: float, known: Foretold | None) -> Told | None:
    return None if known is None else Told(log(per_mm), known.doubt)


def learn(all_said: Iterable[Said]) -> Knitter:
    """Return the knitter by what pairs say."""
    listed = list(all_said)
    measured = {_key(one.one) for one in listed}
    yarns = [one for yarn in _yarns(listed) for one in _marks(yarn, measured)]
    return knitter.learn(yarns, len(listed))


def _yarns(listed: list[Said]) -> list[list[Said]]:
    """Return the pairs that share swatches together."""
    yarns = list[tuple[set[_Key], list[Said]]]()
    for one in listed:
        keys, together = {_key(tube) for tube in one.tubes if tube.kind == "swatch"}, [one]
        apart = []
        for others in yarns:
            if keys & others[0]:
                keys, together = keys | others[0], [*others[1], *together]
            else:
                apart.append(others)
        yarns = [*apart, (keys, together)]
    return [together for _, together in yarns]


def _marks(yarn: list[Said], measured: set[_Key]) -> Iterable[OfYarn]:
    """Yield the tubes of a yarn by their marks: all socks of pairs, and each other tube once.

    `measured` are the socks of all pairs.
    """
    socks = [one.one for one in yarn]
    others = {_key(tube): tube for one in yarn for tube in one.tubes}
    tubes = [*(tube for key, tube in others.items() if key not in measured), *socks]
    told = next((one.told for one in yarn if any(one.told)), yarn[0].told)
    for mark in dict.fromkeys(tube.mark for tube in tubes):
        yield OfYarn(tuple(tube for tube in tubes if tube.mark == mark), told)


def _key(tube: Swatch) -> _Key:
    """Return what tells a tube from others."""
    if tube.kind == "swatch" or tube.rounds is None:
        return (replace(tube, field="", questions=()),)
    return tube.mark, round(tube.rounds, _DIGITS), round(tube.rounds_tape, _DIGITS)


@lru_cache(maxsize=2 * _LOOKED_AT)
def _said_of(pair: str) -> Said | None:
    """Return what a pair says, kept: it is planned once, however often the knitter is asked for."""
    try:
        found = read(json.loads(pair))
    except Refused:
        return None
    return None if found is None else said(found)


def write(request: object, pairs: object) -> dict[str, Any]:
    """Return the `knitter` of a plan by her finished `pairs`, the newest last, and how many taught.

    None where those are too few to reckon with. `pairs` are objects with a `request` and what was
    `measured` of sock one; the newest `NEWEST` count that are not of the plan's own yarn.
    """
    own, found = _of_yarn(plan.make(request).fabric), list[Said]()
    listed = pairs if isinstance(pairs, list) else []
    for pair in reversed(listed[-_LOOKED_AT:]):
        one = _said_of(json.dumps(_bare(pair), sort_keys=True))
        if one is not None and not own & one.yarn:
            found.append(one)
        if len(found) == NEWEST:
            break
    hers = learn(reversed(found)) if len(found) >= FEWEST else None
    return {"knitter": hers and hers.written(), "pairs": len(found)}


def _bare(pair: object) -> object:
    """Return as much of a pair as is read here."""
    if not isinstance(pair, Mapping):
        return None
    return {name: pair.get(name) for name in ("request", "measured")}
