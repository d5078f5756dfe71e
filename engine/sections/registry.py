"""Every construction there is, by part and kind: what a request may name, and what is looped over.

A new one is its file and a line here; whatever it lacks fails in `tests/engine/sections`.
"""

from __future__ import annotations

from engine import sources
from engine.read.fields import Fields
from engine.read.units import reaches
from engine.say import messages as say
from engine.sections.color import Color
from engine.sections.cuff import EVERY, ROUNDS, WIDTHS, Cuff, Notes, Told
from engine.sections.flap import Flap
from engine.sections.gathered import DrawnUp, Gathered
from engine.sections.hung_hem import HungHem
from engine.sections.left_open import LeftOpen, ToKnitOn
from engine.sections.mock_rib import MockRib
from engine.sections.mock_rib_hem import MockRibHem
from engine.sections.no_heel import NoHeel
from engine.sections.picot_hem import PicotHem
from engine.sections.pocket import Pocket
from engine.sections.rib import Rib
from engine.sections.ribbed import RibbedFoot, RibbedLeg
from engine.sections.section import Section
from engine.sections.set_up_rib import SetUpRib
from engine.sections.setting import Setting
from engine.sections.short_rows import ShortRows
from engine.sections.string import Between, OnWaste
from engine.sections.toe import BareToe
from engine.sections.tube import Tube
from engine.sections.two_at_first import TwoAtFirst
from engine.sections.waste import Finish, Start

# The first of each is meant where a request names none.
CUFFS: dict[str, type[Cuff]] = {
    kind.kind: kind for kind in (HungHem, Rib, MockRib, PicotHem, MockRibHem, SetUpRib)
}
POCKETS: dict[str, type[Pocket]] = {kind.kind: kind for kind in (ShortRows, TwoAtFirst)}
HEELS: dict[str, type[Pocket]] = {**POCKETS, Flap.kind: Flap}  # pockets that a heel may be
NO_HEEL = {NoHeel.kind: NoHeel()}
BARE_TOES: dict[str, BareToe] = {toe.kind: toe for toe in (Gathered(), LeftOpen())}
ALL: tuple[type[Section], ...] = (
    Start,
    OnWaste,
    Setting,
    Color,
    *CUFFS.values(),
    Tube,
    RibbedLeg,
    RibbedFoot,
    *HEELS.values(),
    *map(type, (*NO_HEEL.values(), *BARE_TOES.values())),
    Between,
    Finish,
    DrawnUp,
    ToKnitOn,
)


def read_cuff(fields: Fields, slots: int) -> tuple[Cuff | None, Notes]:
    """Return the cuff of a request (None with its problem noted) and what is worth saying of it."""
    fields.only(("kind", "rounds", "every", "change_after", "change_every", *WIDTHS))
    noted = len(fields.problems)
    kind = CUFFS[fields.choice("kind", CUFFS) or next(iter(CUFFS))]
    rounds = fields.count("rounds", ROUNDS)
    every = fields.count("every", EVERY)  # read for any cuff: nothing unread goes into a link
    change = fields.count("change_after", ROUNDS), fields.count("change_every", EVERY)
    flat, pulled = _widths(fields)
    usual = int(sources.HEM_ROUNDS)
    told = Told(
        usual if rounds is None else rounds, flat, pulled, rounds is not None, every, change
    )
    made = kind.read(fields, slots, told)
    if made is None or len(fields.problems) > noted:
        return None, ()
    return made, made.remarks(fields)


def _widths(fields: Fields) -> tuple[float | None, float | None]:
    """Return the girths of a measured cuff, lying and pulled; pulled tells nothing alone."""
    flat, pulled = (fields.length(name, span) for name, span in WIDTHS.items())
    if flat is None:
        if not fields.blank("pulled_width") and fields.blank("flat_width"):
            fields.refuse("flat_width", say.width_is_missing(), say.measure_both())
        return None, None
    low, high = sources.USUAL_PULL
    pull = low if pulled is None else pulled / flat
    if not (reaches(pull, low) and reaches(high, pull)):
        fields.refuse("pulled_width", say.no_such_pull(), say.measure_the_same_cuff())
    return 2 * flat, None if pulled is None else 2 * pulled
