"""The cuff: a hung hem, a rib made with the ribber, or a mock rib with needles taken out.

A hung hem is knitted twice as long as it is deep: an even number of rounds, then the first round is
hung back on the needles. Rib and mock rib are single. Common practice, no published source: a hem
of fewer than 20 rounds does poorly, one of more than 40 fits the leg badly.
"""

from __future__ import annotations

from dataclasses import dataclass

from engine import sources
from engine.fabric import Fabric
from engine.fields import Fields, Span

KINDS = ("hem", "rib", "mock rib")
_ROUNDS = Span("the rounds of a cuff", 2, 200)
_EVERY = Span("a mock rib", 2, 12)


@dataclass(frozen=True)
class Cuff:
    """A cuff of `kind` with `rounds`; `every` is the nth needle that a mock rib takes out."""

    kind: str
    rounds: int
    every: int | None = None

    def needles(self, slots: int) -> int:
        """Return the needles that knit in the cuff."""
        return slots - slots // self.every if self.every else slots

    def depth(self, fabric: Fabric) -> float:
        """Return the finished depth in mm."""
        return self.rounds / fabric.rounds / (2 if self.kind == "hem" else 1)

    def pull(self, fabric: Fabric) -> float:
        """Return how far cuff and leg stretch together, over the plain tube's relaxed girth.

        A rib stretches further than the plain leg below it, so the leg is the limit there.
        """
        share = {"hem": sources.HEM_PULL_SHARE, "mock rib": sources.MOCK_RIB_PULL_SHARE}
        return fabric.pull * share.get(self.kind, 1.0)

    def relaxed_share(self, slots: int) -> float:
        """Return the cuff's relaxed girth over the plain tube's."""
        if self.kind == "rib":
            return float(sources.RIB_RELAXED_WIDTH)
        return self.needles(slots) / slots

    @property
    def words(self) -> str:
        """Return what the cuff is, in words."""
        if self.kind == "hem":
            return f"hung hem, folded to {self.rounds // 2}"
        if self.kind == "rib":
            return "rib with the ribber"
        return f"mock rib: every {ordinal(self.every or 0)} needle out"


def ordinal(number: int) -> str:
    """Write 2nd, 3rd, 4th (numbers below 20)."""
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number, 'th') }"


def read(fields: Fields, slots: int) -> tuple[Cuff | None, list[tuple[str, str]]]:
    """Return the cuff of a request (None with its problem noted) and what is worth saying of it."""
    fields.only(("kind", "rounds", "every"))
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
    if len(fields.problems) > noted:
        return None, []
    if kind == "mock rib" and every is None:
        every = next(n for n in (4, 3, 5, 2) if slots % n == 0)
    cuff = Cuff(kind, int(sources.HEM_ROUNDS) if rounds is None else rounds, every)
    return cuff, list(_remarks(fields, cuff))


def _remarks(fields: Fields, cuff: Cuff) -> list[tuple[str, str]]:
    if cuff.kind != "hem":
        return []
    at = fields.where("rounds")
    if cuff.rounds < sources.HEM_ROUNDS:
        return [(at, "A hem of fewer than 20 rounds tends to roll and grip poorly.")]
    if cuff.rounds > sources.HEM_ROUNDS_MOST:
        return [(at, "A hem of more than 40 rounds tends to fit the leg badly.")]
    return []
