"""The yarn at hand, as a request tells it: colors, balls, what is left on the scale, a repeat.

All of it may be left out. Nothing here is worked out: that is done in `supply` and `stripes`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from engine import sources
from engine.read.fields import Fields, Span
from engine.read.quoted import quoted
from engine.say import messages as say

APART = ("cuff", "heel", "toe")
_MARGIN = Span(say.of_stock(what="margin"), 0, 1)
WEIGHTS = {
    "ball": Span(say.of_stock(what="ball"), 5, 5000),
    "left": Span(say.of_stock(what="left"), 0, 5000),
    "sock_one": Span(say.of_stock(what="sock"), 3, 400),
}
LENGTHS = {"repeat": Span(say.of_stock(what="repeat"), 300, 300_000)}
_REPEAT_ROUNDS = Span(say.of_stock(what="repeat_rounds"), 0.5, 300)


@dataclass(frozen=True)
class Stock:
    """The sections `apart` are in another color; weights in g, `repeat` in mm, None if not told.

    `margin` is the share to have over.
    """

    apart: frozenset[str] = frozenset()
    margin: float = float(sources.YARN_MARGIN)
    ball: float | None = None
    left: float | None = None
    sock_one: float | None = None
    repeat: float | None = None
    repeat_rounds: float | None = None


NOTHING_TOLD = Stock()


def read(fields: Fields) -> Stock:
    """Return the yarn at hand of a request; problems are noted at their fields."""
    fields.only(("apart", "margin", *WEIGHTS, *LENGTHS, "repeat_rounds"))
    margin = fields.share("margin", _MARGIN)
    return Stock(
        _read_apart(fields),
        float(sources.YARN_MARGIN) if margin is None else margin,
        **{name: fields.grams(name, span) for name, span in WEIGHTS.items()},
        repeat=fields.yarn("repeat", LENGTHS["repeat"]),
        repeat_rounds=fields.plain("repeat_rounds", _REPEAT_ROUNDS),
    )


def _read_apart(fields: Fields) -> frozenset[str]:
    """Read `["heel", "toe"]` as well as "heel and toe"."""
    raw = fields.raw.get("apart")
    text = ", ".join(map(str, raw)) if isinstance(raw, list) else fields.text("apart")
    words = [word for word in re.split(r",|\band\b", (text or "").casefold()) if word.strip()]
    named = frozenset(word.strip() for word in words)
    for word in sorted(named - set(APART)):
        no = say.no_color_apart(text=quoted(word))
        fields.refuse("apart", no, say.name_what_is_apart())
    return named & set(APART)
