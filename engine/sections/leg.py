"""The leg: rounds between cuff and heel, in bands of one tension each.

A plain leg is one band at the foot's tension. Left out, it is as long as the customary 50 rounds
look under an average foot: about half the foot length (common practice, no published source). That
of a footie has 0 to 6 rounds (common practice, no published source). A leg
shaped to girths (`shaped_leg`) has several, and so may one whose bands are told. `tighter` is a
band's stitches per length over the foot's; by Munden (1959) its rounds per length grow and its loop
length shrinks by the same factor.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from engine.fabric.fabric import Fabric
from engine.fabric.swatch import MARK, STITCHES
from engine.fabric.swatch import ROUNDS as ROUNDS_PER_MM
from engine.read.fields import Fields, Span
from engine.read.units import nearest
from engine.say import messages as say
from engine.say.message import Message
from engine.sources import (
    BANDS_MOST,
    FOOTIE_ROUNDS,
    FOOTIE_ROUNDS_MOST,
    GIRTH_RISE_MOST,
    LEG_OVER_FOOT,
    PLAIN_BEFORE_HEEL,
)

ROUNDS = Span(say.counted_on_a_sock(what="leg-rounds"), 0, 600)
HEIGHT = Span(say.counted_on_a_sock(what="leg-height"), 60, 750)
GIRTHS_MOST = 12
BANDS_TOLD_MOST = int(BANDS_MOST)
_BAND_ROUNDS = Span(say.counted_on_a_sock(what="band-rounds"), 1, ROUNDS.high)
_GIRTH_HEIGHT = Span(say.counted_on_a_sock(what="girth-height"), 30, 750)
_GIRTH = Span(say.counted_on_a_sock(what="girth"), 70, 750)
_PLAIN = Span(say.counted_on_a_sock(what="plain"), 0, ROUNDS.high)
_PARTS = ("height", "girth")
OVER_INSTEP = "ribbed instep"
KINDS = ("footie", "ribbed", OVER_INSTEP, "shaped")
SetBy = Literal["", "custom", "you"]
Offer = Literal["", "shaped", "plain"]


class Girth(NamedTuple):
    """A girth of the leg in mm at a height in mm above the floor, and whether it was measured."""

    height: float
    girth: float
    measured: bool = True


class Band(NamedTuple):
    """Rounds at one tension; `mark` is the screw's, None if it is unknown or the foot's own."""

    rounds: int
    tighter: float = 1.0
    mark: float | None = None

    def cloth(self, fabric: Fabric) -> Fabric:
        """Return the foot's fabric as this band knits it."""
        return fabric.tightened(self.tighter)


@dataclass(frozen=True)
class Leg:
    """A leg: its bands from the top down, never none.

    `set_by` tells who set its rounds, "" where they follow from a height; `asked` that its height
    or girths were given; `height_sd` is the error in mm of a height that was given. `plain` are the
    plain rounds before the heel of one that is ribbed above them, None of any other; `instep`
    where its rib goes on over that. `offers` is what one choice of its kind would make of it, where
    nothing else is in the way.
    """

    bands: tuple[Band, ...]
    words: Message
    set_by: SetBy = ""
    asked: bool = False
    height_sd: float = 0.0
    plain: int | None = None
    offers: Offer = ""
    instep: bool = False

    @property
    def shaped(self) -> bool:
        """Tell whether any of it is knitted at another tension than the foot."""
        return any(band.tighter != 1 for band in self.bands)

    @property
    def rounds(self) -> int:
        """Return the rounds of all bands."""
        return sum(band.rounds for band in self.bands)


class BandWish(NamedTuple):
    """A band as a request tells it: its rounds at a mark, or at stitches per mm, or as the foot."""

    row: int  # in the request's list
    rounds: int
    mark: float | None = None
    stitches: float | None = None


@dataclass(frozen=True)
class Wish:
    """What a request says of the leg: rounds, or the top's height in mm; girths, low to high.

    Or its `bands` from the top down, and then none of the others. `footie` where that is asked for,
    `shaped` likewise; `plain` are the plain rounds before the heel of a leg that is to be ribbed,
    None of any other, over the `instep` too.
    """

    rounds: int | None = None
    height: float | None = None
    girths: tuple[Girth, ...] = ()
    bands: tuple[BandWish, ...] = ()
    asked: tuple[tuple[str, Message], ...] = ()
    footie: bool = False
    plain: int | None = None
    shaped: bool = False
    instep: bool = False

    @property
    def told_rounds(self) -> int | None:
        """Return the rounds of the leg where they are told, by themselves or in bands."""
        return sum(band.rounds for band in self.bands) if self.bands else self.rounds

    @property
    def set_by(self) -> SetBy:
        """Return who sets the rounds, "" where they follow from a height."""
        if self.told_rounds is not None:
            return "you"
        return "custom" if self.footie else ""


def read(fields: Fields) -> Wish:
    """Return the leg of a request; what is left out or wrong is None."""
    fields.only(("kind", "rounds", "height", "girths", "bands", "plain"))
    kind = fields.choice("kind", KINDS)
    footie = kind == "footie"
    rounds, height = fields.count("rounds", ROUNDS), fields.length("height", HEIGHT)
    if not fields.blank("rounds") and not fields.blank("height"):
        fields.refuse("height", say.rounds_set_too(), say.empty_one())
    girths, asked = _read_girths(fields)
    bands = _read_bands(fields)
    if bands:
        told = {"rounds": rounds, "height": height, "girths": girths, "kind": kind == "shaped"}
        for name, set_too in told.items():
            if set_too not in (None, (), False):
                fields.refuse(name, say.bands_set_too(), say.empty_or_no_bands())
    if footie:
        _refuse_high(fields, rounds)
    instep, shaped = kind == OVER_INSTEP, kind == "shaped"
    plain = _read_plain(fields, kind == "ribbed", rounds)
    if instep:
        plain = 0
        _refuse_shape(fields, say.ribbed_is_plain())
        if rounds == 0:
            fields.refuse("rounds", say.instep_needs_a_leg(), say.knit_or_more(rounds=1), ("1",))
    return Wish(rounds, height, girths, bands, asked, footie, plain, shaped, instep)


def _read_plain(fields: Fields, ribbed: bool, rounds: int | None) -> int | None:
    """Return the plain rounds before the heel of a `ribbed` leg; what is not of one is refused."""
    plain = fields.count("plain", _PLAIN)
    if not ribbed:
        if plain is not None:
            fields.refuse("plain", say.only_a_ribbed_leg(), say.empty_or_ribbed())
        return None
    _refuse_shape(fields, say.ribbed_is_plain())
    if plain is None:
        return min(int(PLAIN_BEFORE_HEEL), rounds or int(PLAIN_BEFORE_HEEL))
    if rounds is not None and plain > rounds:
        too_many = say.too_many_plain(rounds=rounds)
        fields.refuse("plain", too_many, say.write_up_to(most=rounds), (str(rounds),))
    return plain


def _refuse_high(fields: Fields, rounds: int | None) -> None:
    """Refuse what is no leg of a footie."""
    most = int(FOOTIE_ROUNDS_MOST)
    if rounds is not None and rounds > most:
        fields.refuse(
            "rounds",
            say.footie_rounds(most=most),
            say.footie_or_usual(most=most),
            (str(int(FOOTIE_ROUNDS)), str(most)),
        )
    _refuse_shape(fields, say.footie_is_plain())


def _refuse_shape(fields: Fields, why: Message) -> None:
    for name in ("height", "girths", "bands"):
        if not fields.blank(name):
            fields.refuse(name, why, say.empty_or_usual())


def _read_bands(fields: Fields) -> tuple[BandWish, ...]:
    found = list[BandWish]()
    for at, row in enumerate(fields.parts("bands", BANDS_TOLD_MOST)):
        row.only(("rounds", "mark", "stitches"))
        rounds = row.count("rounds", _BAND_ROUNDS)
        mark, stitches = row.plain("mark", MARK), row.rate("stitches", STITCHES)
        if not row.blank("mark") and not row.blank("stitches"):
            row.refuse("stitches", say.mark_set_too(), say.empty_one())
        if row.blank("rounds") and not row.empty():
            row.refuse("rounds", say.band_rounds_missing(), say.fill_them_in())
        if rounds is not None:
            found.append(BandWish(at, rounds, mark, stitches))
    if sum(band.rounds for band in found) > ROUNDS.high:
        most = say.most_rounds(most=int(ROUNDS.high))
        fields.refuse("bands", say.bands_too_long(), most)
    return tuple(found)


def as_told(fields: Fields, told: tuple[BandWish, ...], fabric: Fabric) -> Leg:
    """Return the leg of the bands that were told; one that cannot be is noted in `fields`.

    A band's mark is read off the line over marks, as `tension` reads it.
    """
    bands = tuple(
        _as_told(
            Fields({}, fields.where(f"bands.{band.row}"), fields.system, fields.problems),
            band,
            fabric,
        )
        for band in told
    )
    return Leg(bands, say.leg_words(why="told-bands"), "you")


def _as_told(row: Fields, told: BandWish, fabric: Fabric) -> Band:
    if told.stitches is not None:
        tighter = told.stitches / fabric.stitches
        if fabric.rounds * tighter not in ROUNDS_PER_MM:
            row.refuse("stitches", say.no_such_stitch(), say.check_the_figure())
        return Band(told.rounds, tighter)
    if told.mark is None or told.mark == fabric.mark:
        return Band(told.rounds)
    if fabric.line is None:
        row.refuse("mark", say.mark_is_unknown(), say.stitches_or_swatch())
        return Band(told.rounds)
    if not fabric.line.near(told.mark) or fabric.line.loop_at(told.mark)[0] <= 0:
        stitches = rounds = 0.0
    else:
        stitches, rounds, _ = fabric.line.at(told.mark)
    if stitches not in STITCHES or rounds not in ROUNDS_PER_MM:
        row.refuse("mark", say.mark_is_far(), say.nearer_or_swatch())
        return Band(told.rounds)
    return Band(told.rounds, stitches / fabric.stitches, told.mark)


def _read_girths(fields: Fields) -> tuple[tuple[Girth, ...], tuple[tuple[str, Message], ...]]:
    """Return the girths of a leg, low to high, and what is worth asking of them."""
    girths, asked = list[Girth](), list[tuple[str, Message]]()
    for row in fields.parts("girths", GIRTHS_MOST):
        row.only(_PARTS)
        height_of, around = row.length("height", _GIRTH_HEIGHT), row.length("girth", _GIRTH)
        for name, other in (_PARTS, _PARTS[::-1]):
            if row.blank(name) and not row.blank(other):
                row.refuse(name, say.height_with_girth(), say.fill_both())
        if height_of is None or around is None:
            continue
        girth = Girth(height_of, around)
        if any(girth.height == other.height for other in girths):
            row.refuse("height", say.girth_is_there(), say.keep_one())
        elif any(_steep(girth, other) for other in girths):
            asked.append((row.where("girth"), say.steep_leg()))
        girths.append(girth)
    return tuple(sorted(girths)), tuple(asked)


def _steep(one: Girth, other: Girth) -> bool:
    return abs(one.girth - other.girth) > 10 + GIRTH_RISE_MOST * abs(one.height - other.height)


def plain_rounds(wish: Wish, foot_length: float, fabric: Fabric) -> int:
    """Return the rounds of a leg that is not shaped: those told, else the usual ones."""
    told = wish.told_rounds
    if told is not None:
        return told
    return int(FOOTIE_ROUNDS) if wish.footie else nearest(usual_rounds(foot_length, fabric))


def usual_rounds(foot_length: float, fabric: Fabric) -> float:
    """Return leg rounds, unrounded, in the customary proportion to a foot of `foot_length` mm."""
    return LEG_OVER_FOOT * foot_length * fabric.rounds
