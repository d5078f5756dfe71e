"""Every construction there is, by part and kind: what a request may name, and what is looped over.

A new one is its file and a line here; whatever it lacks fails in `tests/engine/sections`.
"""

from __future__ import annotations

from engine import sources
from engine.read.fields import Fields
from engine.read.units import reaches
from engine.sections.cuff import EVERY, ROUNDS, WIDTHS, Cuff, Notes, Told
from engine.sections.hung_hem import HungHem
from engine.sections.mock_rib import MockRib
from engine.sections.mock_rib_hem import MockRibHem
from engine.sections.picot_hem import PicotHem
from engine.sections.pocket import Pocket
from engine.sections.rib import Rib
from engine.sections.section import Section
from engine.sections.set_up_rib import SetUpRib
from engine.sections.setting import Setting
from engine.sections.short_rows import ShortRows
from engine.sections.tube import Tube
from engine.sections.two_at_first import TwoAtFirst
from engine.sections.waste import Finish, Start

# The first of each is meant where a request names none.
CUFFS: dict[str, type[Cuff]] = {
    kind.kind: kind for kind in (HungHem, Rib, MockRib, PicotHem, MockRibHem, SetUpRib)
}
POCKETS: dict[str, type[Pocket]] = {kind.kind: kind for kind in (ShortRows, TwoAtFirst)}
ALL: tuple[type[Section], ...] = (
    Start,
    Setting,
    *CUFFS.values(),
    Tube,
    *POCKETS.values(),
    Finish,
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
            fields.refuse("flat_width", "Its width lying flat is missing.", "Measure both.")
        return None, None
    low, high = sources.USUAL_PULL
    pull = low if pulled is None else pulled / flat
    if not (reaches(pull, low) and reaches(high, pull)):
        fields.refuse(
            "pulled_width",
            "Pulled, a cuff is wider than at rest, but not by that much.",
            "Measure the same cuff lying flat and pulled.",
        )
    return 2 * flat, None if pulled is None else 2 * pulled
