"""What is the same in all sizes: what is made, machine and tools, yarn, gauge, ease, words used."""

from __future__ import annotations

from collections.abc import Iterator
from math import log
from typing import Any, Literal, get_args

from engine.fabric import yarn, yarn_names
from engine.instructions import blocks, over_sizes
from engine.instructions.blocks import Block
from engine.instructions.pattern import Pattern
from engine.judge import cautions, supply
from engine.read import units
from engine.say import messages as say
from engine.say.message import Words
from engine.sections.pocket import Pocket
from engine.sections.section import TITLES
from engine.sock.sock import Sock
from engine.sources import SWATCH_ROUNDS_FEWEST

Term = Literal[
    "slot", "round", "row", "carrier", "half_mark", "work", "hold", "waste", "graft",
    "cm", "in", "g", "oz", "m", "yd",
]  # fmt: skip
_FOUR_INCHES, _TEN_CM = 4 * units.MM_PER_INCH, 100.0


def made(pattern: Pattern) -> Iterator[Block]:
    """Yield what the instructions make, in a few sentences."""
    sock = pattern.any_size
    heel: Any = sock.heel.kind.replace(" ", "-")
    toe: Any = sock.toe.kind.replace(" ", "-")
    yield blocks.text(
        say.in_turn(
            sentences=(
                say.set_makes(slots=sock.cylinder.slots),
                say.set_cuff(cuff=sock.cuff.name),
                say.set_heel(kind=heel),
                say.set_toe(kind=toe),
            )
        )
    )
    if sock.origin:  # whose work it goes on from
        yield blocks.text(sock.origin.words)


def take_care() -> Iterator[Block]:
    """Yield the customary cautions."""
    yield from map(blocks.caution, cautions.USUAL)


def machine(pattern: Pattern) -> Iterator[Block]:
    """Yield what has to be there before the first round."""
    sock = pattern.any_size
    pocket = isinstance(sock.heel, Pocket) or isinstance(sock.toe, Pocket)
    slots = sock.cylinder.slots
    needs: list[Words] = [say.set_cylinder(slots=slots)]
    if sock.cuff.ribbed:
        needs.append(say.set_tool(tool="ribber"))
    if pocket:
        needs += [say.set_carrier(side=sock.cylinder.carrier), say.set_tool(tool="spring")]
    needs += [say.set_tool(tool=tool) for tool in _tools(sock)]
    yield blocks.listing(needs)


def _tools(sock: Sock) -> Iterator[Literal["weights", "latch", "waste", "darning", "needles"]]:
    yield from ("weights", "latch", "waste", "darning")
    if sock.toe.kind == "left open":
        yield "needles"


def thread(pattern: Pattern) -> Iterator[Block]:
    """Yield what yarn it is: its fibre as told, its length per weight, and its usual name."""
    cloth, fibre = pattern.any_size.fabric, pattern.details.told["fibre"]
    if fibre:
        yield blocks.text(say.set_detail(name="fibre", words=fibre))
    metres = yarn.metres_per_100_g(cloth.tex)
    category = min(yarn_names.CATEGORIES, key=lambda one: abs(log(one.tex / cloth.tex)))
    number = say.set_yarn_number(number=category.number, yarn=category.words)
    if cloth.tex_told:
        long = units.yarn_length(metres * 1000, "cm")
        length = say.set_yarn_length(length=long["text"], other=long["other"])
    else:
        length = say.set_yarn_guessed()
    yield blocks.text(say.in_turn(sentences=(length, number)))


def gauge(pattern: Pattern) -> Iterator[Block]:
    """Yield the washed gauge over 10 cm and 4 in, and how to knit a swatch for it."""
    sock = pattern.any_size
    cloth = sock.fabric
    over = {
        name: units.number(per * mm)
        for name, per, mm in (
            ("stitches", cloth.stitches, _TEN_CM),
            ("rounds", cloth.rounds, _TEN_CM),
            ("stitchesIn", cloth.stitches, _FOUR_INCHES),
            ("roundsIn", cloth.rounds, _FOUR_INCHES),
        )
    }
    yield blocks.text(say.set_gauge(**over))
    if cloth.way == "yarn" or cloth.guessed:
        guessed = say.in_turn(sentences=(*cloth.words, say.set_swatch_first()))
        yield blocks.caution(guessed)
    flat = units.length(sock.tube / 2, sock.system)
    yield blocks.listing(
        (
            say.set_swatch_knit(rounds=int(SWATCH_ROUNDS_FEWEST), slots=sock.cylinder.slots),
            say.set_swatch_wash(),
            say.set_swatch_across(width=flat["text"], other=flat["other"]),
            say.set_swatch_along(),
            say.set_swatch_then(),
        ),
        ordered=True,
    )


def ease(pattern: Pattern) -> Iterator[Block]:
    """Yield by how much the sock is smaller than its foot."""
    sock = pattern.any_size
    percent = units.number(sock.ease * 100)
    if sock.room:
        room = units.length_text(sock.room, sock.system)
        long = say.chart_ease_and_room(percent=percent, room=room)
    else:
        long = say.chart_ease(percent=percent)
    stretch = pattern.each(_stretch)
    around = say.set_around(percent=over_sizes.figures(stretch))
    told = (long, around) if any(one is not None for one in stretch) else (long,)
    yield blocks.text(say.in_turn(sentences=told))


def _stretch(sock: Sock) -> int | None:
    """Return by how many percent it stretches around the ball, None where it lies loose."""
    percent = units.percent(sock.measures["ball_girth"].value / sock.tube - 1)
    return percent if percent >= 0 else None


def words_used() -> Iterator[Block]:
    """Yield the words of the trade and the short forms of units."""
    rows = [(say.set_term(term=term), [say.set_meaning(term=term)]) for term in get_args(Term)]
    yield blocks.table(
        say.set_caption(of="terms"), [say.set_head(of="word"), say.set_head(of="meaning")], rows
    )


def colors(pattern: Pattern) -> Iterator[Block]:
    """Yield which part is knitted in which color."""
    _, sock = pattern.made[0]
    found = _in_colors(sock)
    if len(found) == 1:
        yield blocks.text(say.set_one_color())
        return
    rows: list[blocks.Row] = [
        (name, [say.set_parts(parts=tuple(TITLES[part] for part in parts))])
        for name, parts in found
    ]
    yield blocks.text(say.set_change_color())
    yield blocks.table(
        say.set_caption(of="colors"), [say.set_head(of="color"), say.set_head(of="parts")], rows
    )


def _in_colors(sock: Sock) -> list[tuple[Words, tuple[Any, ...]]]:
    """Return each color of a pair with the parts knitted in it."""
    found = supply.of_sock(sock)
    return [(color.name, color.sections) for color in found if color.sections]
