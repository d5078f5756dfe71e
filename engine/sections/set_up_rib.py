"""A rib with the ribber that begins on a set-up edge, so that nothing is bound off.

Every nth stitch is on the ribber: every 2nd is a rib of one and one, every 3rd of two and one,
every 4th of three and one. The edge is one round on both beds, then two on the cylinder alone, the
ribber idle; from then on its loops cannot run. Published so
(needlesofsteel.org.uk/knitpatterns/pat-csm02.html). Of n rounds in all that is the first three, and
n N - 2 N/e stitches are made on N slots.

A rib may change after a round: of its ribs those stay that a rib of fewer has too, so its nth
needle is a multiple of the one before; the others' stitches move back to the cylinder. Published so
(needlesofsteel.org.uk/knitpatterns/pat-csm03.html: 1×1 for 50 rounds, then 3×1 for 75).

The ribs' own stitches, n - 2 of them, set its depth: our derivation, no published source. So is its
width: a rib of one and one narrows as `sources` has it, the others in proportion to their ribs.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Self

from engine import sources
from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.needle_bed import LOCKS
from engine.machine.operations import Ribber, Rounds, Transfer
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.cuff import Told
from engine.sections.ribbed import Ribbed, every, named
from engine.sections.section import Crank, Do, Stage, Stroke, upright

_EDGE = 1 + LOCKS  # rounds of the set-up
_OFFERED = range(2, 7)  # which stitch goes to the ribber


@dataclass(frozen=True)
class SetUpRib(Ribbed):
    """A rib on a set-up edge, each `every`th stitch on the ribber."""

    kind: ClassVar[str] = "set-up rib"
    name: ClassVar[Message] = say.cuff_name(kind="set-up-rib")
    open_top: ClassVar[bool] = False
    every: int = 2
    change: tuple[int, int] | None = None  # after which round, and its nth needle from there on

    @classmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the rib; one of uneven ribs, or of an edge alone, is refused."""
        nth = told.every or _OFFERED[0]
        if slots % nth or nth not in _OFFERED:
            fits = [n for n in _OFFERED if slots % n == 0]
            fields.refuse(
                "every",
                say.rib_not_even(nth=say.nth(n=nth), slots=slots),
                say.move_either(nths=tuple(say.nth(n=n) for n in fits)),
                tuple(str(n) for n in fits),
            )
        if told.rounds <= _EDGE:
            fields.refuse(
                "rounds",
                say.only_the_edge(rounds=_EDGE),
                say.knit_or_more(rounds=_EDGE + 1),
                (str(_EDGE + 1),),
            )
        change = _change(fields, slots, nth, told)
        return cls(*told.common, every=nth, change=change)

    def ribs(self, slots: int) -> tuple[int, ...]:
        """Return the slots whose stitches are on the ribber at first."""
        return every(self.every, slots)

    @property
    def nth_left(self) -> int:
        """Return which stitch is on the ribber at last."""
        return self.change[1] if self.change else self.every

    def before(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return setting up the ribber."""
        ribs, slots = self.ribs(machine.slots), machine.slots
        stay, over = slots - len(ribs), len(ribs)
        words = say.to_ribber(nth=say.nth(n=self.every), cylinder=stay, ribber=over)
        return (
            Do(say.set_ribber(), (Ribber("knits"),)),
            Do(words, (Transfer(ribs, "ribber"),)),
        )

    def knitted(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return the set-up edge, and the rib."""
        first = self.change[0] if self.change else self.rounds
        last = first == self.rounds
        ribbed = first - _EDGE
        return (
            Crank(say.knit_on_both_beds(), (Rounds(1),), 1),
            Do(say.ribber_idle(), (Ribber("idle"),)),
            Crank(say.knit_on_the_cylinder(rounds=LOCKS), (Rounds(LOCKS),), LOCKS),
            Do(say.ribber_knits(), (Ribber("knits"),)),
            Crank(
                say.knit_rib(rounds=ribbed, rib=named(self.every)),
                (Rounds(ribbed, stop if last else None),),
                ribbed,
            ),
            *self._changed(machine, stop),
        )

    def _changed(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return the change of rib, and what is knitted after it."""
        if self.change is None:
            return ()
        after, every = self.change
        left, rounds = self.ribs_left(machine.slots), self.rounds - after
        back = tuple(slot for slot in self.ribs(machine.slots) if slot not in left)
        words = say.change_rib(back=len(back), nth=say.nth(n=every), left=len(left))
        return (
            Do(words, (Transfer(back, "cylinder"),)),
            Crank(
                say.knit_rib(rounds=rounds, rib=named(every)),
                (Rounds(rounds, stop),),
                rounds,
            ),
        )

    def girth(self, slots: int, tube: float) -> float:
        """Return its usual girth, where none was measured."""
        if self.flat is not None:
            return self.flat
        return tube * (1 - (1 - sources.RIB_RELAXED_WIDTH) * 2 / self.every)

    def depth(self, cloth: Fabric) -> float:
        """Return the depth of its ribs, in mm."""
        return (self.rounds - LOCKS) / cloth.rounds

    def strokes(self) -> tuple[Stroke, ...]:
        """Return its ribs, those after a change apart, and its edge."""
        edge = Stroke("fold", (((0, 0.08), (1, 0.08)),))
        if self.change is None:
            return (*super().strokes(), edge)
        after, every = self.change
        at = after / self.rounds
        return (*upright(self.every, end=at), *upright(every, top=at), edge)

    def asked(self) -> dict[str, Any]:
        """Return its fields."""
        found = {**super().asked(), "every": self.every}
        if self.change:
            found["change_after"], found["change_every"] = self.change
        return found

    @property
    def words(self) -> Message:
        """Return what it is."""
        rib = named(self.every)
        if self.change is None:
            return say.set_up_rib_words(rib=rib, edge=_EDGE)
        after, then = self.change
        return say.changed_rib_words(rib=rib, edge=_EDGE, then=named(then), after=after)


def _change(fields: Fields, slots: int, every: int, told: Told) -> tuple[int, int] | None:
    """Return the change of a rib, None where there is none; one that cannot be is refused."""
    after, then = told.change
    if after is None and then is None:
        return None
    fits = [n for n in _OFFERED if n > every and n % every == 0 and slots % n == 0]
    if then is None or then not in fits:
        if not fits:
            fields.refuse(
                "change_every",
                say.no_rib_to_change_to(rib=named(every), slots=slots),
                say.begin_one_by_one(),
            )
        elif then is not None or fields.blank("change_every"):
            fields.refuse(
                "change_every",
                say.ribber_keeps_some(rib=named(every)),
                say.keep_either(nths=tuple(say.nth(n=n) for n in fits)),
                tuple(str(n) for n in fits),
            )
    if after is None or not _EDGE < after < told.rounds:
        if after is not None or fields.blank("change_after"):
            fields.refuse(
                "change_after",
                say.rib_changes_within(),
                say.write_a_round(low=_EDGE + 1, high=told.rounds - 1),
            )
        return None
    return None if then is None else (after, then)
