"""Plain tube: rounds on every needle, as leg or foot, or before the toe or after it.

It is rounds / c high or long and N / w round, w stitches and c rounds per mm on N needles. Rounds
after the toe lie over the toes, not along the sole, so they make nothing longer; 4 of them are
published for 84 needles (needlesofsteel.org.uk/knitpatterns/pat-csm03.html). Rounds before it, in
its yarn, are part of the sole, so the foot has as many less; 5 of them soften its corners (common
practice, no published source).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Literal, assert_never

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.operations import Rounds
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.sections.section import Crank, Section, Size, Stage, Stroke
from engine.sections.toe import BareToe

AFTER_TOE = Span(say.counted_on_a_sock(what="after-toe"), 0, 20)
BEFORE_TOE = Span(say.counted_on_a_sock(what="before-toe"), 0, 40)


def read_end(fields: Fields, toe: BareToe | None = None) -> int:
    """Return the rounds after the toe of a request, 0 where none are told.

    After a `toe` that ends the sock there are none.
    """
    fields.only(("rounds",))
    rounds = fields.count("rounds", AFTER_TOE) or 0
    if rounds and toe is not None:
        none = say.toe_has_no_rounds_after(kind=toe.named)
        fields.refuse("rounds", none, say.empty_or_short_rows())
    return rounds


@dataclass(frozen=True)
class Tube(Section):
    """So many `rounds` of plain knit; `goes_on` after others of its part.

    Where it has another color than those, it begins `since` a share of the part, from 0 to 1.
    """

    kind: ClassVar[str] = "plain"
    part: Literal["leg", "foot", "before_toe", "end"]
    rounds: int
    goes_on: bool = False
    since: float = 0.0

    @property
    def sole(self) -> int:
        """Return the rounds along the sole: those of a foot, up to its toe."""
        match self.part:
            case "foot" | "before_toe":
                return self.rounds
            case "leg" | "end":
                return 0
            case _:
                assert_never(self.part)

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the rounds; none for none."""
        if not self.rounds:
            return ()
        text = say.knit_rounds(part=self.part, rounds=self.rounds)
        if self.goes_on:
            text = say.knit_more_rounds(part=self.part, rounds=self.rounds)
        return (Crank(text, (Rounds(self.rounds, stop),), self.rounds),)

    def size(self, machine: Cylinder, cloth: Fabric) -> Size:
        """Return a leg's height or a foot's length."""
        high = self.rounds / cloth.rounds if self.part == "leg" else 0.0
        girth = machine.slots / cloth.stitches
        return Size(high, self.sole / cloth.rounds, girth, cloth.pull)

    def strokes(self) -> tuple[Stroke, ...]:
        """Return the edge of its color, none where it has no other."""
        return (Stroke("wale", (((0.0, 0.0), (1.0, 0.0)),)),) if self.since else ()

    def counts(self, machine: Cylinder) -> dict[str, Any]:
        """Return its rounds."""
        return {"rounds": self.rounds}

    def asked(self) -> dict[str, Any]:
        """Return the rounds of a leg or an end; those of a foot follow from its length."""
        match self.part:
            case "leg" | "end":
                return {"rounds": self.rounds}
            case "foot" | "before_toe":
                return {}
            case _:
                assert_never(self.part)
