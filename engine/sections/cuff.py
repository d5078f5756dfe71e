"""What every cuff has: rounds on the waste yarn's edge, and how wide it lies and how far it gives.

Both are usual figures, until a swatch of that very cuff on all the needles was measured lying flat
and pulled. Each kind of cuff is a file of its own; `registry` reads them from a request.
"""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass, field
from typing import Any, ClassVar, NamedTuple, Self

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import MAIN, Rounds, Yarn
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.say.message import Message
from engine.sections.color import yarn
from engine.sections.section import TOP, Crank, Do, Section, Size, Stage

ROUNDS = Span(say.counted_on_a_sock(what="cuff-rounds"), 2, 200)
EVERY = Span(say.counted_on_a_sock(what="every"), 2, 12)
_FLAT = Span(say.counted_on_a_sock(what="cuff-width"), 20, 400)
WIDTHS = {"flat_width": _FLAT, "pulled_width": _FLAT}
Notes = tuple[tuple[str, Message], ...]


class Told(NamedTuple):
    """What a request says of any cuff: girths in mm where it was measured.

    `told` where its rounds were given; `every` is the nth needle of a mock rib or a ribber's rib,
    `change` the round after which a rib changes, and its nth needle from there on.
    """

    rounds: int
    flat: float | None = None
    pulled: float | None = None
    told: bool = False
    every: int | None = None
    change: tuple[int | None, int | None] = (None, None)

    @property
    def common(self) -> tuple[int, float | None, float | None, bool]:
        """Return what a cuff of any kind is made with."""
        return self.rounds, self.flat, self.pulled, self.told


@dataclass(frozen=True)
class Cuff(Section):
    """A cuff.

    `flat` and `pulled` are its girths in mm where a swatch of it was measured; `told` where its
    rounds were given. Of its kind: `name` in words, `layers` of fabric, `pull_share`, how far it
    gives over how far plain tube does, `open_top`, whether its first round is bound off in the end,
    `ribbed`, whether it needs a ribber.
    """

    name: ClassVar[Message]
    layers: ClassVar[int] = 1
    pull_share: ClassVar[float] = 1.0
    open_top: ClassVar[bool] = True
    ribbed: ClassVar[bool] = False
    part = "cuff"
    rounds: int
    flat: float | None = None
    pulled: float | None = None
    told: bool = False
    color: str = field(default="", kw_only=True)  # its letter, "" where the sock has one yarn

    @classmethod
    @abstractmethod
    def read(cls, fields: Fields, slots: int, told: Told) -> Self | None:
        """Return the cuff of a request, or None with what is wrong with it noted."""

    @property
    def out_every(self) -> int | None:
        """Return which needle, counted on, stands out of work all through it; None where none."""
        return None

    @property
    @abstractmethod
    def words(self) -> Message:
        """Return what it is, in words."""

    def remarks(self, fields: Fields) -> Notes:
        """Return what is worth saying of it, each beside a field."""
        return ()

    def first(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return what is done before anything is cast on."""
        return ()

    def first_on_waste(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return the same where the needles hold the waste yarn of a sock before."""
        return ()

    def before(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return what is done before its first round, on the waste yarn."""
        return ()

    def after(self, machine: Cylinder) -> tuple[Stage, ...]:
        """Return what is done after its last round."""
        return ()

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return its rounds, and what is done before and after them."""
        return (
            *self.before(machine),
            self._begun,
            *self.knitted(machine, stop),
            *self.after(machine),
        )

    @property
    def _begun(self) -> Stage:
        if not self.color:
            return Do(say.change_to_sock_yarn(), (Yarn(MAIN, TOP),))
        return Do(say.begin_color(color=self.color), (Yarn(yarn(self.color), TOP),), sets="color")

    def knitted(self, machine: Cylinder, stop: int | None) -> tuple[Stage, ...]:
        """Return its rounds, and what is done between them."""
        words = say.knit_rounds(part="cuff", rounds=self.rounds)
        return (Crank(words, (Rounds(self.rounds, stop),), self.rounds),)

    def needles(self, slots: int) -> int:
        """Return the needles that knit in the cuff."""
        return slots

    def depth(self, cloth: Fabric) -> float:
        """Return the finished depth in mm."""
        return self.rounds / cloth.rounds

    def pull(self, fabric: Fabric, tube: float) -> float:
        """Return how far cuff and leg stretch together, over the relaxed girth `tube` of the leg.

        Where the cuff stretches further than the plain leg below it, the leg is the limit.
        """
        if self.pulled is not None:
            return min(fabric.pull, self.pulled / tube)
        return fabric.pull * self.pull_share

    def girth(self, slots: int, tube: float) -> float:
        """Return the cuff's relaxed girth in mm under which a leg of girth `tube` hangs."""
        return self.flat if self.flat is not None else tube * self.needles(slots) / slots

    def give(self, slots: int, fabric: Fabric, tube: float) -> float:
        """Return how far the cuff alone stretches over its relaxed girth."""
        if self.flat is not None and self.pulled is not None:
            return self.pulled / self.flat
        return self.pull(fabric, tube) * tube / self.girth(slots, tube)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return its depth and girth."""
        slots = machine.slots
        tube = slots / cloth.stitches
        girth, give = self.girth(slots, tube), self.give(slots, cloth, tube)
        return Size(self.depth(cloth), 0.0, girth, give, self.layers)

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its kind, rounds and needles."""
        needles = self.needles(machine.slots)
        return {"kind": self.kind, "rounds": self.rounds, "needles": needles}

    def asked(self) -> dict[str, Any]:
        """Return its kind and rounds."""
        return {"kind": self.kind, "rounds": self.rounds}
