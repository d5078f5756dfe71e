"""The cuff: a hung hem, a rib made with the ribber, or a mock rib with needles taken out.

A hung hem is knitted twice as long as it is deep: an even number of rounds, then the first round is
hung back on the needles. Rib and mock rib are single. Common practice, no published source: a hem
of fewer than 20 rounds does poorly, one of more than 40 fits the leg badly.

How wide it lies and how far it gives are usual figures, until a swatch of that very cuff on all the
needles was measured lying flat and pulled.
"""

from __future__ import annotations

from dataclasses import dataclass

from engine import sources
from engine.fabric.fabric import Fabric
from engine.read.fields import Fields, Span
from engine.read.units import ordinal, reaches

KINDS = ("hem", "rib", "mock rib")
_ROUNDS = Span("the rounds of a cuff", 2, 200)
_EVERY = Span("a mock rib", 2, 12)
_FLAT = Span("the flat width of a cuff", 20, 400)
WIDTHS = {"flat_width": _FLAT, "pulled_width": _FLAT}


@dataclass(frozen=True)
class Cuff:
    """A cuff of `kind` with `rounds`; `every` is the nth needle that a mock rib takes out.

    `flat` and `pulled` are its girths in mm where a swatch of it was measured; `told` where its
    rounds were given.
    """

    kind: str
    rounds: int
    every: int | None = None
    flat: float | None = None
    pulled: float | None = None
    told: bool = False

    def needles(self, slots: int) -> int:
        """Return the needles that knit in the cuff."""
        return slots - slots // self.every if self.every else slots

    def depth(self, fabric: Fabric) -> float:
        """Return the finished depth in mm."""
        return self.rounds / fabric.rounds / (2 if self.kind == "hem" else 1)

    def pull(self, fabric: Fabric, tube: float) -> float:
        """Return how far cuff and leg stretch together, over the relaxed girth `tube` of the leg.

        A rib stretches further than the plain leg below it, so the leg is the limit there.
        """
        if self.pulled is not None:
            return min(fabric.pull, self.pulled / tube)
        share = {"hem": sources.HEM_PULL_SHARE, "mock rib": sources.MOCK_RIB_PULL_SHARE}
        return fabric.pull * share.get(self.kind, 1.0)

    def girth(self, slots: int, tube: float) -> float:
        """Return the cuff's relaxed girth in mm under which a leg of girth `tube` hangs."""
        if self.flat is not None:
            return self.flat
        if self.kind == "rib":
            return tube * sources.RIB_RELAXED_WIDTH
        return tube * self.needles(slots) / slots

    def give(self, slots: int, fabric: Fabric, tube: float) -> float:
        """Return how far the cuff alone stretches over its relaxed girth."""
        if self.flat is not None and self.pulled is not None:
            return self.pulled / self.flat
        return self.pull(fabric, tube) * tube / self.girth(slots, tube)

    @property
    def words(self) -> str:
        """Return what the cuff is, in words."""
        if self.kind == "hem":
            return f"hung hem, folded to {self.rounds // 2}"
        if self.every:
            return f"mock rib: every {ordinal(self.every)} needle out"
        return "rib with the ribber"


def read(fields: Fields, slots: int) -> tuple[Cuff | None, list[tuple[str, str]]]:
    """Return the cuff of a request (None with its problem noted) and what is worth saying of it."""
    fields.only(("kind", "rounds", "every", *WIDTHS))
    noted = len(fields.problems)
    kind = fields.choice("kind", KINDS) or "hem"
    rounds = fields.count("rounds", _ROUNDS)
    every = fields.count("every", _EVERY)  # read for any cuff: nothing unread goes into a link
    if kind != "mock rib":
        every = None
    if kind == "hem" and rounds is not None and rounds % 2:
        fields.refuse(
            "rounds",
            f"A hung hem needs an even number of rounds, and {rounds} is odd.",
            f"Knit {rounds - 1} or {rounds + 1}.",
            (str(rounds - 1), str(rounds + 1)),
        )
    if every is not None and slots % every:
        fits = [n for n in range(2, 9) if slots % n == 0]
        fields.refuse(
            "every",
            f"Every {ordinal(every)} needle does not come out even on {slots} slots.",
            f"Take out every {' or '.join(ordinal(n) for n in fits)}.",
            tuple(str(n) for n in fits),
        )
    flat, pulled = _widths(fields)
    if len(fields.problems) > noted:
        return None, []
    if kind == "mock rib" and every is None:
        every = next(n for n in (4, 3, 5, 2) if slots % n == 0)
    cuff = Cuff(
        kind,
        int(sources.HEM_ROUNDS) if rounds is None else rounds,
        every,
        flat,
        pulled,
        rounds is not None,
    )
    return cuff, list(_remarks(fields, cuff))


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


def _remarks(fields: Fields, cuff: Cuff) -> list[tuple[str, str]]:
    if cuff.kind != "hem":
        return []
    at = fields.where("rounds")
    if cuff.rounds < sources.HEM_ROUNDS:
        return [(at, "A hem of fewer than 20 rounds tends to roll and grip poorly.")]
    if cuff.rounds > sources.HEM_ROUNDS_MOST:
        return [(at, "A hem of more than 40 rounds tends to fit the leg badly.")]
    return []
