"""The sheet's part about yarn: what the pair takes, whether what is left is enough, and stripes."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, hypot, log
from typing import Any, Literal

from engine import sources
from engine.judge import stripes, supply
from engine.judge.stripes import Stripes
from engine.judge.supply import InColor, Need, Swap
from engine.read import units
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sock.colors import MAIN
from engine.sock.sock import Sock

_Notes = tuple[tuple[str, Message], ...]


def write(sock: Sock) -> dict[str, Any]:
    """Return the yarn of a pair: `metres`, `grams`, `with_margin`, `sections`, `colors` ...

    `enough` and `stripes` are None where nothing was told of them.
    """
    cloth, system, stock = sock.fabric, sock.system, sock.stock
    parts = supply.lengths(sock.loops, cloth, _colors(sock))
    pair = sum(parts.values())
    waste = (sock.waste_loops + sock.sock_two.waste_loops) * cloth.loop

    def amount(mm: float) -> dict[str, Any]:
        return {
            "metres": units.yarn_length(mm, system),
            "grams": units.weight(supply.grams(mm, cloth)),
        }

    with_margin = amount(pair * (1 + stock.margin))
    words = say.yarn_for_pair(
        weight=with_margin["grams"]["text"], length=with_margin["metres"]["text"]
    )
    if cloth.weighed_sd is not None:
        grams = supply.grams(sock.cylinder.slots * cloth.loop, cloth)
        a_round = say.grams_a_round(weight=f"{units.number(grams, 2)} g")
        words = say.in_turn(sentences=(words, a_round))
    elif cloth.yarn_name is not None:
        words = say.in_turn(sentences=(words, say.weight_is_usual(yarn=cloth.yarn_name)))
    return {
        **amount(pair),
        "words": words,
        "with_margin": with_margin,
        "sections": {part: amount(mm) for part, mm in parts.items()},
        "stitches": sock.stitches,
        "waste": amount(waste),
        "colors": [_color(sock, color, amount) for color in _colors(sock)],
        "enough": _enough(sock),
        "stripes": _stripes(sock),
    }


def notes(sock: Sock) -> _Notes:
    """Return what is worth asking of the yarn at hand."""
    stock, asked = sock.stock, list[tuple[str, Message]]()
    if stock.sock_one is not None:
        by_number = supply.reckoned(_whole(_sock_one(sock)), sock.fabric)
        apart = abs(log(stock.sock_one / by_number.grams))
        sd = hypot(by_number.sd, supply.weighed(stock.sock_one, 1).sd)
        if apart > sources.FAR_APART * sd:
            text = units.weight(by_number.grams)["text"]
            asked.append(("stock.sock_one", say.sock_one_weighs(weight=text)))
    if stock.sock_one is not None and stock.left is None:
        asked.append(("stock.left", say.weigh_the_rest()))
    if (most := _if_light(sock)) is not None:
        asked.append(("stock.ball", say.balls_if_light(balls=most)))
    found = _striped(sock)
    if found and not found.agree:
        asked.append(("stock.repeat_rounds", say.repeat_at_odds()))
    return tuple(asked)


def _sock_one(sock: Sock) -> Sock:
    """Return the first sock as it was knitted."""
    knitted = sock.knitted_rounds
    return sock if knitted is None else sock.with_foot(knitted)


def _colors(sock: Sock) -> list[InColor]:
    return supply.of_sock(sock)


def _whole(sock: Sock) -> float:
    """Return the yarn of one sock in mm, all colors."""
    return sum(color.mm for color in _colors(sock)) / supply.SOCKS


def stitches_of_one(sock: Sock) -> int:
    """Return the stitches whose yarn sock one holds, of the foot's loop, its ends included."""
    return nearest(_whole(_sock_one(sock)) / sock.fabric.loop)


def _main(sock: Sock) -> float:
    """Return the main yarn of one sock in mm."""
    return _colors(sock)[0].mm / supply.SOCKS


def _color(sock: Sock, color: InColor, amount: Callable[[float], dict[str, Any]]) -> dict[str, Any]:
    with_margin, ball = color.mm * (1 + sock.stock.margin), sock.stock.ball
    balls = None if ball is None else _balls(sock, color, ball)
    return {
        "name": color.name,
        "sections": list(color.sections),
        **amount(color.mm),
        "with_margin": amount(with_margin),
        "balls": balls,
    }


def _balls(sock: Sock, color: InColor, ball: float) -> int:
    with_margin = color.mm * (1 + sock.stock.margin)
    return ceil(supply.grams(with_margin, sock.fabric) / ball)


def _if_light(sock: Sock) -> int | None:
    """Return the balls of all colors if they are light, None where that makes no more of them.

    A weight that no label says was weighed, and is as it is.
    """
    ball = sock.stock.ball
    if ball is None or ball % sources.LABEL_STEP:
        return None
    usual, light = (
        sum(_balls(sock, color, by * ball) for color in _colors(sock))
        for by in (1.0, sources.BALL_LIGHTEST)
    )
    return light if light > usual else None


def pair_takes(sock: Sock) -> Need:
    """Return what a pair takes of the main yarn, by its stitches and the yarn's number."""
    return supply.reckoned(_colors(sock)[0].mm, sock.fabric)


def takes(sock: Sock) -> Need:
    """Return what the sock takes of the main yarn: by the weight of sock one where it is known."""
    main, one = _main(sock), sock.stock.sock_one
    if one is None:
        return supply.reckoned(main, sock.fabric)
    return supply.weighed(one, main / _whole(_sock_one(sock)))


def _enough(sock: Sock) -> dict[str, Any] | None:
    left, one = sock.stock.left, sock.stock.sock_one
    if left is None:
        return None
    main, need = _main(sock), takes(sock)
    likely = supply.probability(left, need)
    level = supply.level(likely)
    quantity = units.weight(left, 2)
    needed = units.weight(need.grams, 2)
    told = {"left": quantity["text"], "needed": needed["text"], "chance": _percent(likely)}
    enough = say.enough_of_main if len(_colors(sock)) > 1 else say.enough
    words = [enough(level=level, **told)]
    if level != "yes":
        words += _advice(sock, left, need, main)
        if one is None and likely > 0.005:
            words.append(say.weigh_sock_one())
    return {
        "probability": round(likely, 4),
        "level": level,
        "words": say.in_turn(sentences=tuple(words)),
        "left": quantity,
        "needed": needed,
    }


def _percent(likely: float) -> Message | str:
    if likely > 0.995:
        return say.nearly_sure()
    return say.hardly() if likely < 0.005 else f"{likely * 100:.0f} %"


def _advice(sock: Sock, left: float, need: Need, main: float) -> list[Message]:
    """Return what would make it enough."""
    loop, apart = sock.fabric.loop, _apart(sock)
    loops = sock.loops if sock.colors is None else supply.loops_by_color(sock)[MAIN]
    a_round = loops.get("leg", 0.0) / max(sock.leg_rounds, 1) * loop / main
    fewer = supply.fewer_rounds(left, need, a_round, sock.leg_rounds)
    shares = {str(part): loops[part] * loop / main for part in sock.pockets if part not in apart}
    swapped = supply.swap(left, need, shares)
    ways = [_swapped(swapped)] if swapped else []
    if fewer is not None:
        shorter = say.or_shorter_leg if swapped else say.shorter_leg
        ways.append(shorter(rounds=fewer))
    return ways or [say.get_more_yarn()]


def _apart(sock: Sock) -> frozenset[str]:
    """Return the parts in another color than the main yarn."""
    if sock.colors is None:
        return frozenset()
    return frozenset(part for part in sock.pockets if MAIN not in sock.colors.text(part))


def _swapped(swap: Swap) -> Message:
    saved = units.weight(swap.grams, 2)["text"]
    parts: Literal["toe", "heel", "heel-and-toe"] = "heel-and-toe"
    if len(swap.parts) == 1:
        parts = "heel" if "heel" in swap.parts else "toe"
    return say.in_another_yarn(parts=parts, saved=saved)


def _striped(sock: Sock) -> Stripes | None:
    stock, cloth = sock.stock, sock.fabric
    if stock.repeat is None and stock.repeat_rounds is None:
        return None
    return stripes.work_out(
        _main(_sock_one(sock)),
        sock.cylinder.slots * cloth.loop,
        supply.loop_sd(cloth),
        stock.repeat,
        stock.repeat_rounds,
    )


def _stripes(sock: Sock) -> dict[str, Any] | None:
    found = _striped(sock)
    if found is None:
        return None

    def text(mm: float) -> str:
        return str(units.yarn_length(mm, sock.system, 1)["text"])

    words = [say.repeat_makes(rounds=units.number(found.rounds))]
    if "heel" in sock.pockets and "heel" not in _apart(sock):
        rounds = units.number(sock.stitches["heel"] / sock.cylinder.slots)
        words.append(say.heel_moves_stripes(rounds=rounds))
    words.append(say.sock_one_repeats(repeats=units.number(found.repeats)))
    if found.by_eye:
        words.append(say.wind_off_by_eye(reach=text(found.reach)))
    else:
        rounds, reach = units.number(found.wind_rounds), text(found.reach)
        words.append(say.wind_off(length=text(found.wind_off), rounds=rounds, reach=reach))
        if sock.stock.left is not None:
            weight = units.weight(supply.grams(found.wind_off, sock.fabric), 2)
            words.append(say.wind_off_weighs(weight=weight["text"]))
    wind_off = {
        "length": units.yarn_length(found.wind_off, sock.system, 1),
        "rounds": round(found.wind_rounds, 1),
        "within": units.yarn_length(found.reach, sock.system, 1),
        "by_eye": found.by_eye,
    }
    return {
        "rounds_per_repeat": round(found.rounds, 1),
        "wind_off": wind_off,
        "words": say.in_turn(sentences=tuple(words)),
    }
