"""The sock drawn to scale from the side, with its sections and counts on it, as SVG.

One unit of the drawing is 1 mm of the relaxed sock lying flat. A drawing is a list of pieces,
markup and words in turn: sentences are made where they are shown, and become part of the markup
there. The size of words is in `rem`, so that they grow with the reader's text.

It carries classes and no colors: the page's style sheet gives line, fill and type (`sock`,
`part`, `part-cuff` ... `part-toe`, `dashes`, `hatch` for stitches, `wale`, `fold`, `count`, `name`,
`on-cloth` for words that lie on a seam, `outside` for words beside the sock, `measure`,
`measure-line`, and those of `bands`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Any, cast

from engine.drawing import bands
from engine.drawing.bands import Band
from engine.drawing.cloth import area, lines, n, p, stitches, whole
from engine.drawing.course import Course
from engine.drawing.outline import CLEAR, Laid, Outline
from engine.judge.fit import Place
from engine.read import units
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sections.section import Part
from engine.sock.sock import Sock

Drawn = list[Words]  # markup, then words, then markup again, and so on

_LEFT, _RIGHT, _TOP = 52.0, 14.0, 12.0  # margins in mm
_AIR = 3.0  # round the bare sock, for its outline
_LETTER = 0.6  # the widest usual letter, in sizes of type
_LONGEST = 12  # letters of the longest words beside the sock
_PX = 16.0  # one rem of a page that nobody has enlarged
_MOST = 1.7  # times that size, beyond which words would lie on each other
_ROWS = {True: 18, False: 40}  # of stitches over the whole drawing; of the small one
_PARTS: tuple[Part, ...] = ("cuff", "leg", "heel", "foot", "toe")


def draw(at: Outline, sock: Sock, places: Sequence[Place]) -> Drawn:
    """Return the drawing of a sock as one `<svg>` element, sized by its `viewBox` in mm.

    It is in pieces: markup at each even place, words at each odd one. `places` is the sock's fit,
    as `sheet.places` gives it; `at` is where it lies.
    """
    worn = bands.find(at, sock, places)
    below = 2.2 * at.small if any(one.place.place in ("heel", "ball") for one in worn) else 0.0
    beside = at.across(at.fold)[1] + 2 * CLEAR + _LONGEST * _LETTER * at.small
    left, top = at.left - _LEFT, min(at.top, at.front) - _TOP
    wide = max(at.tip + _RIGHT, beside) - left
    high = below + 20 + 1.8 * at.small - top
    shapes: list[str | Drawn] = [
        *_cloth(at, sock, small=False),
        *(
            _path(f"stretch stretch-{bands.density(one.place)}", f"M{p(one.start)}L{p(one.end)}")
            for one in worn
        ),
        *_counts(at, sock, worn),
        *_beside(at, worn),
        *_measures(at, sock, below),
    ]
    opens = (
        '<svg xmlns="http://www.w3.org/2000/svg" class="sock" role="img" overflow="visible" '
        f'viewBox="{n(left)} {n(top)} {n(wide)} {n(high)}"><title>'
    )
    return _joined([[opens, _title(sock, worn), "</title>"], *shapes, "</svg>"])


def bare(at: Outline, sock: Sock, *, knitted: bool = True) -> str:
    """Return the sock's sections alone, without a word or a figure, as one `<svg>` element.

    Stitches and strokes are drawn where it is `knitted`, and not only told in part.
    """
    left, top = at.left - _AIR, min(at.top, at.front) - _AIR
    wide, high = at.tip - left + _AIR, _AIR - top
    told = (_path(kind, whole(d)) for kind, d in parts(at))
    cloth = _cloth(at, sock, small=True) if knitted else told
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" class="sock bare" aria-hidden="true" '
        f'viewBox="{n(left)} {n(top)} {n(wide)} {n(high)}">{"".join(cloth)}</svg>'
    )


def _title(sock: Sock, worn: Sequence[Band]) -> Message:
    """Return what is drawn, in words."""
    parts = tuple(
        say.so_much_of(unit=piece.unit, part=cast("Any", piece.part), count=piece.count)
        for piece in sock.pieces
    )
    told = tuple(
        say.worn_and_felt(stretch=bands.percent(place), verdict=bands.verdict(place))
        for place, *_ in worn
    )
    of_parts = say.sock_from_the_side(parts=parts)
    stretch = (say.stretch_when_worn(places=told),) if told else ()
    return say.in_turn(sentences=(of_parts, *stretch))


def _path(kind: str, d: str) -> str:
    return f'<path class="{kind}" d="{d}"/>'


def _words(
    kind: str, place: complex, words: Words, size: float, anchor: str = "middle", more: str = ""
) -> Drawn:
    """Return words at a place, of a size in mm; `more` says otherwise where they are."""
    where = more or f'x="{n(place.real)}" y="{n(place.imag)}"'
    grows = f"min({size / _PX:.2f}rem,{n(_MOST * size)}px)"
    opens = f'<text class="{kind}" {where} font-size="{grows}"'
    return [f'{opens} text-anchor="{anchor}">', words, "</text>"]


def _joined(pieces: Iterable[str | Drawn]) -> Drawn:
    """Return pieces as one: markup at each even place, words at each odd one."""
    found: Drawn = [""]
    for piece in pieces:
        first, *rest = [piece] if isinstance(piece, str) else piece
        found[-1] = f"{found[-1]}{first}"
        found += rest
    return found


def _of(at: Outline, part: Part) -> list[Laid]:
    """Return what lies of a part; the plain rounds before a toe are drawn as the foot's."""
    return [
        one for one in at.laid if (one.part, part) == ("before_toe", "foot") or one.part == part
    ]


def parts(at: Outline, by: complex = 0j) -> Iterator[tuple[str, str]]:
    """Yield the classes of every part there is and the path round it, from the top down.

    All of it is moved `by` so much.
    """
    for part in _PARTS:
        laid = _of(at, part)
        courses = [one.courses() for one in laid]
        if by:
            courses = [[Course(*(place + by for place in one)) for one in each] for each in courses]
        if part not in ("heel", "toe"):
            courses = [[course for one in courses for course in one]]
        if laid:
            dashes = " dashes" if laid[0].look == "dashes" else ""
            yield f"part part-{part}{dashes}", "".join(map(area, courses))


@lru_cache(maxsize=1)
def _areas(at: Outline) -> tuple[tuple[str, str], ...]:
    """Return the parts of an outline, which is drawn large and small, one after the other."""
    return tuple(parts(at))


def _cloth(at: Outline, sock: Sock, *, small: bool) -> Iterator[str]:
    """Yield the areas of all parts, then what is seen on each section."""
    yield from (_path(kind, d) for kind, d in _areas(at))
    each = max(1, round(max(at.tip, -at.top) / _ROWS[small] / at.pitch))
    seen = sock.cylinder.half
    for _, group in groupby(at.laid, key=lambda one: id(one.section)):
        laid = [*group]
        section, look = laid[0].section, laid[0].look
        if section.part not in (*_PARTS, "before_toe"):
            continue
        if look == "stitches" and len(laid[0].widths) > 3:
            of = [stitches(one, seen // (2 if len(laid) == 2 else 1), each) for one in laid]
            yield _path("hatch", "".join(of))
        yield from (_path(stroke.kind, lines(laid, stroke)) for stroke in section.strokes())


def _counts(at: Outline, sock: Sock, worn: Sequence[Band]) -> Iterator[Drawn]:
    """Yield counts and names of the parts, that of the leg clear of its crossing bands."""
    counts = {piece.part: piece.count for piece in sock.pieces}
    centre = at.ankle / 2
    # The cuff is shallow: its name and count stand on one line.
    words = say.cuff_and_rounds(rounds=counts["cuff"])
    rim = complex(centre, (at.top + at.front) / 2 + at.deep / 2 + at.small * 0.4)
    yield _words("count on-cloth", rim, words, at.small * 1.1)
    crossed = [one.start.imag for one in worn if one.place.place in ("ankle", "calf")]
    edges = [at.fold, *sorted(crossed), min(at.fold + at.long_leg, at.middle.imag)]
    upper, lower = max(pairwise(edges), key=lambda gap: gap[1] - gap[0])
    foot = complex(at.middle.real * 0.45 + at.ball * 0.55, -at.foot / 2)
    over = complex(at.shin.corners[-1].real + at.big * 1.7, -at.foot - at.big)
    foot = over if at.foot_narrow else foot
    toe, low = at.tip - at.toe, at.long_leg < 2 * at.big
    places = {
        "leg": over if low else complex(centre, (upper + lower) / 2),
        "heel": complex(at.flat * 0.42, -0.4 * at.small),
        "foot": foot,
        "toe": complex(at.toe + toe * 0.45, -at.foot * 0.5),
    }
    kinds = {"heel": " on-cloth", "toe": " on-cloth"}
    kinds |= {"leg": " outside"} if low else {"foot": " outside"} if at.foot_narrow else {}
    sizes = {"heel": at.big * min(1.0, at.high / (2.4 * at.big))}
    for name, place in places.items():
        count = counts.get(cast("Part", name))
        if count:
            kind, size = kinds.get(name, ""), sizes.get(name, at.big)
            # One hangs from the other by its own size, however large text is.
            heel = f"{-1.15 * at.small / size:.2f}em"
            up, down = (heel, "0em") if name == "heel" else ("0.15em", "1.1em")
            where = f'x="{n(place.real)}" y="{n(place.imag)}" dy='
            yield _words(f"count{kind}", place, str(count), size, more=f'{where}"{up}"')
            named = say.drawn_part(part=cast("Any", name))
            yield _words(f"name{kind}", place, named, at.small, more=f'{where}"{down}"')


def _beside(at: Outline, worn: Sequence[Band]) -> Iterator[Drawn]:
    """Yield the words of the bands: to the right of the leg, of heel and ball under the sole."""
    floor, deep = -at.foot - at.small * (2.6 if at.foot_narrow else 0.6), 1.3 * at.small
    for place, _, end in reversed(worn):
        words = bands.percent(place)
        if place.place in ("heel", "ball"):
            heel = place.place == "heel"
            under = f'x="{n(0 if heel else at.tip)}" y="5" dy="0.8em"'
            yield _words("worn", 0j, words, at.small, "start" if heel else "end", under)
        else:
            y = min(end.imag + at.small * 0.35, floor)
            floor = y - deep
            yield _words("worn", complex(end.real + CLEAR, y), words, at.small, "start")


def _measures(at: Outline, sock: Sock, lowered: float) -> Iterator[str | Drawn]:
    """Yield how long the foot is and how high the top stands, along their lines."""
    below, left = 10 + lowered, at.left - 12
    foot = units.length_text(sock.foot_length, sock.system)
    height = units.length_text(sock.top_above_floor, sock.system)
    hung = f'x="{n(at.tip / 2)}" y="{n(below + 3)}" dy="0.9em"'
    turned = f'transform="translate({n(left - 6)} {n(at.top / 2)}) rotate(-90)"'
    for one, other, words, where in (
        (complex(0, below), complex(at.tip, below), foot, hung),
        (complex(left, 0), complex(left, at.top), height, turned),
    ):
        tick = 4j * (other - one) / abs(other - one)
        lines = ((one - tick, one + tick), (one, other), (other - tick, other + tick))
        yield _path("measure-line", "".join(f"M{p(a)}L{p(b)}" for a, b in lines))
        yield _words("measure", 0j, words, at.small * 1.2, more=where)
