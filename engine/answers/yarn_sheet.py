"""The sheet's part about yarn: what the pair takes, whether what is left is enough, and stripes."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, hypot, log
from typing import Any

from engine import sources
from engine.judge import stripes, supply
from engine.judge.stripes import Stripes
from engine.judge.supply import Colour, Need, Swap
from engine.read import units
from engine.sock.sock import Sock

_Notes = tuple[tuple[str, str], ...]


def write(sock: Sock) -> dict[str, Any]:
    """Return the yarn of a pair: `metres`, `grams`, `with_margin`, `sections`, `colours` ...

    `enough` and `stripes` are None where nothing was told of them.
    """
    cloth, system, stock = sock.fabric, sock.system, sock.stock
    parts = supply.lengths(sock.loops, sock.grafted, cloth, stock.apart)
    pair = sum(parts.values())
    waste = supply.SOCKS * sock.waste_loops * cloth.loop

    def amount(mm: float) -> dict[str, Any]:
        return {
            "metres": units.yarn_length(mm, system),
            "grams": units.weight(supply.grams(mm, cloth)),
        }

    with_margin = amount(pair * (1 + stock.margin))
    words = (
        f"For the pair, ends and grafting included, waste yarn apart. Have "
        f"{with_margin['grams']['text']} ({with_margin['metres']['text']}) to be safe."
    )
    if not cloth.tex_told:
        words += f" The weight is for a usual {cloth.yarn_name}; its band says what yours has."
    return {
        **amount(pair),
        "words": words,
        "with_margin": with_margin,
        "sections": {part: amount(mm) for part, mm in parts.items()},
        "stitches": sock.stitches,
        "waste": amount(waste),
        "colours": [_colour(sock, colour, amount) for colour in _colours(sock)],
        "enough": _enough(sock),
        "stripes": _stripes(sock),
    }


def notes(sock: Sock) -> _Notes:
    """Return what is worth asking of the yarn at hand."""
    stock, asked = sock.stock, list[tuple[str, str]]()
    if stock.sock_one is not None:
        by_number = supply.reckoned(_whole(_sock_one(sock)), sock.fabric)
        apart = abs(log(stock.sock_one / by_number.grams))
        sd = hypot(by_number.sd, supply.weighed(stock.sock_one, 1).sd)
        if apart > sources.FAR_APART * sd:
            text = units.weight(by_number.grams)["text"]
            words = f"By its stitches and the yarn's length per ball sock one weighs about {text}. "
            asked.append(("stock.sock_one", f"{words}Weigh again, or check the length per ball."))
    if stock.sock_one is not None and stock.left is None:
        asked.append(("stock.left", "Weigh what is left too, to see whether it is a sock."))
    found = _striped(sock)
    if found and not found.agree:
        words = "These rounds and this length cannot both be one repeat: look at both again."
        asked.append(("stock.repeat_rounds", words))
    return tuple(asked)


def _sock_one(sock: Sock) -> Sock:
    """Return the first sock as it was knitted."""
    knitted = sock.knitted_rounds
    return sock if knitted is None else sock.with_foot(knitted)


def _colours(sock: Sock) -> list[Colour]:
    return supply.colours(sock.loops, sock.grafted, sock.fabric, sock.stock.apart)


def _whole(sock: Sock) -> float:
    """Return the yarn of one sock in mm, all colours."""
    return sum(colour.mm for colour in _colours(sock)) / supply.SOCKS


def _main(sock: Sock) -> float:
    """Return the main yarn of one sock in mm."""
    return _colours(sock)[0].mm / supply.SOCKS


def _colour(
    sock: Sock, colour: Colour, amount: Callable[[float], dict[str, Any]]
) -> dict[str, Any]:
    with_margin, ball = colour.mm * (1 + sock.stock.margin), sock.stock.ball
    balls = None if ball is None else ceil(supply.grams(with_margin, sock.fabric) / ball)
    return {
        "name": colour.name,
        "sections": list(colour.sections),
        **amount(colour.mm),
        "with_margin": amount(with_margin),
        "balls": balls,
    }


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
    level = "yes" if likely > sources.SURE else "maybe" if likely >= 0.5 else "no"
    quantity = units.weight(left, 2)
    needed = units.weight(need.grams, 2)
    start = {"yes": "Yes", "maybe": "Perhaps", "no": "No"}[level]
    yarn = "main yarn are" if sock.stock.apart else "yarn are"
    words = (
        f"{start}: {quantity['text']} of {yarn} left and sock two takes about {needed['text']}. "
        f"That is enough with {_percent(likely)} likelihood."
    )
    if level != "yes":
        words += f" {_advice(sock, left, need, main)}"
        if one is None and likely > 0.005:
            words += " Weigh sock one, and this is much surer."
    return {
        "probability": round(likely, 4),
        "level": level,
        "words": words,
        "left": quantity,
        "needed": needed,
    }


def _percent(likely: float) -> str:
    if likely > 0.995:
        return "more than 99 %"
    return "less than 1 %" if likely < 0.005 else f"{likely * 100:.0f} %"


def _advice(sock: Sock, left: float, need: Need, main: float) -> str:
    """Return what would make it enough."""
    loop, apart = sock.fabric.loop, sock.stock.apart
    loops = sock.loops
    a_round = loops["leg"] / max(sock.leg_rounds, 1) * loop / main
    fewer = supply.fewer_rounds(left, need, a_round, sock.leg_rounds)
    shares = {part: loops[part] * loop / main for part in ("heel", "toe") if part not in apart}
    ways = []
    swapped = supply.swap(left, need, shares)
    if swapped:
        ways.append(_swapped(swapped))
    if fewer is not None:
        rounds = "1 round" if fewer == 1 else f"{fewer} rounds"
        ways.append(f"knit sock two’s leg {rounds} shorter than sock one’s.")
    if not ways:
        return "Neither a shorter leg nor another yarn for heels and toes would do: get more."
    return f"To be sure, {' Or '.join(ways)}"


def _swapped(swap: Swap) -> str:
    saved = units.weight(swap.grams, 2)["text"]
    parts = " and ".join(f"{part}s" for part in swap.parts)
    back = "leg" if "heel" in swap.parts else "foot"
    return (
        f"knit the {parts} of both socks in another yarn, so that the pair matches: ravel sock one "
        f"back to its {back}. That saves about {saved}."
    )


def _striped(sock: Sock) -> Stripes | None:
    stock, cloth = sock.stock, sock.fabric
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

    words = f"One repeat makes {units.number(found.rounds)} rounds of plain tube."
    if "heel" not in sock.stock.apart:
        rounds = units.number(sock.stitches["heel"] / sock.cylinder.slots)
        words += f" The heel takes the yarn of {rounds} rounds, so the stripes move on there."
    words += f" Sock one takes {units.number(found.repeats)} repeats."
    if found.by_eye:
        words += (
            f" Reckoned over so many, the start may be out by {text(found.reach)}, more than half "
            "a repeat: wind off by eye, until the colour comes that sock one began with."
        )
    else:
        rounds = units.number(found.wind_rounds)
        words += (
            f" Before sock two, wind off {text(found.wind_off)} ({rounds} rounds), "
            f"right to within {text(found.reach)} four times in five; then look for the colour "
            "that sock one began with."
        )
        if sock.stock.left is not None:
            weight = units.weight(supply.grams(found.wind_off, sock.fabric), 2)
            words += f" It weighs about {weight['text']}: take that off what is left."
    wind_off = {
        "length": units.yarn_length(found.wind_off, sock.system, 1),
        "rounds": round(found.wind_rounds, 1),
        "within": units.yarn_length(found.reach, sock.system, 1),
        "by_eye": found.by_eye,
    }
    return {"rounds_per_repeat": round(found.rounds, 1), "wind_off": wind_off, "words": words}
