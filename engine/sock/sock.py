"""A sock that can be knitted: every count fixed, and the sizes that follow from the counts.

Lengths in mm. The sole of the sock is the widening half of the heel, the foot rounds and one half
of the toe; its height is cuff, leg and the narrowing half of the heel.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from engine import sources
from engine.fabric.fabric import Fabric
from engine.fabric.yarn_at_hand import NOTHING_TOLD, Stock
from engine.machine.cylinder import Cylinder
from engine.people.foot import Measure
from engine.read import units
from engine.read.units import nearest
from engine.sections.cuff import Cuff
from engine.sections.leg import Girth, Leg
from engine.sections.shaped_leg import Profile, girth_at
from engine.sections.short_row import Pocket


@dataclass(frozen=True)
class Sock:
    """One sock: `aimed` is its foot as aimed at, `exact_rounds` the foot rounds before rounding.

    `ease` is the share by which a sock is shorter than its foot; `leg_body` the girths of the leg
    that its leg stands on; `stock` the yarn at hand; `knitted_rounds` the foot rounds of sock one
    and `fabric_before` what was known before it, where this is sock two; `likely_left` the fewest
    and the most needles that heel or toe might be left with, where a measure chose them.
    """

    system: units.System
    cylinder: Cylinder
    fabric: Fabric
    measures: dict[str, Measure]
    cuff: Cuff
    leg: Leg
    leg_body: Profile
    heel: Pocket
    heel_words: str
    toe: Pocket
    toe_words: str
    likely_left: dict[str, tuple[int, int]]
    toe_breadth: float | None
    aimed: float
    aimed_sd: float
    ease: float
    exact_rounds: float
    notes: tuple[tuple[str | None, str], ...]
    stock: Stock = NOTHING_TOLD
    knitted_rounds: int | None = None
    fabric_before: Fabric | None = None

    @property
    def foot_rounds(self) -> int:
        """Return the foot rounds, rounded to the nearest, halves up."""
        return nearest(self.exact_rounds)

    @property
    def leg_rounds(self) -> int:
        """Return the rounds of the leg."""
        return self.leg.rounds

    @property
    def stitches(self) -> dict[str, int]:
        """Return the stitches of one sock by section."""
        slots = self.cylinder.slots
        return {
            "cuff": self.cuff.rounds * self.cuff.needles(slots),
            "leg": self.leg_rounds * slots,
            "heel": self.heel.stitches,
            "foot": self.foot_rounds * slots,
            "toe": self.toe.stitches,
        }

    @property
    def grafted(self) -> int:
        """Return the stitches that close the toe; of two unlike sides the longer one's."""
        return max(self.toe.needles, self.cylinder.slots - self.toe.needles)

    @property
    def loops(self) -> dict[str, float]:
        """Return the stitches of one sock by section, each counted by its loop over the foot's."""
        slots, top = self.cylinder.slots, self.leg.bands[0].tighter
        return {
            **self.stitches,
            "cuff": self.stitches["cuff"] / top,
            "leg": sum(slots * band.rounds / band.tighter for band in self.leg.bands),
        }

    @property
    def rounds_range(self) -> tuple[int, int]:
        """Return the middle 80 % of the foot rounds."""
        reach = sources.TO_80_PERCENT * self.rounds_sd
        return max(0, nearest(self.exact_rounds - reach)), nearest(self.exact_rounds + reach)

    @property
    def rounds_sd(self) -> float:
        """Return the standard deviation of the foot rounds."""
        c = self.fabric.rounds
        return hypot(c * self.aimed_sd, self.aimed * c * self.fabric.rounds_sd)

    @property
    def tube(self) -> float:
        """Return the relaxed girth of the tube in mm."""
        return self.cylinder.slots / self.fabric.stitches

    @property
    def heel_girth(self) -> float:
        """Return the sock's relaxed girth round heel and ankle bend in mm."""
        return self.heel.girth(self.cylinder.slots, self.fabric)

    @property
    def cuff_depth(self) -> float:
        """Return the finished depth of the cuff in mm."""
        return self.cuff.depth(self.leg.bands[0].cloth(self.fabric))

    @property
    def top_above_heel(self) -> float:
        """Return leg and cuff together in mm."""
        return self.leg_length + self.cuff_depth

    @property
    def foot_length(self) -> float:
        """Return the finished length of the sock's foot in mm."""
        return (self.foot_rounds + self.heel.each_way + self.toe.each_way) / self.fabric.rounds

    @property
    def leg_length(self) -> float:
        """Return the leg between cuff and heel in mm."""
        return self.leg.length(self.fabric)

    @property
    def heel_height(self) -> float:
        """Return the narrowing half of the heel in mm."""
        return self.heel.each_way / self.fabric.rounds

    @property
    def top_above_floor(self) -> float:
        """Return the height of the sock's top above the floor in mm."""
        return self.heel_height + self.top_above_heel

    def tube_at(self, height: float) -> float:
        """Return the relaxed girth of the leg in mm at a height above the floor."""
        return self.tube / self.leg.at(height - self.heel_height, self.fabric).tighter

    @property
    def narrowest(self) -> float:
        """Return the relaxed girth of the leg in mm where it is narrowest."""
        return self.tube / max(1.0, *(band.tighter for band in self.leg.bands))

    @property
    def top_tube(self) -> float:
        """Return the relaxed girth of the leg in mm under the cuff."""
        return self.tube / self.leg.bands[0].tighter

    @property
    def top_of_body(self) -> Girth:
        """Return the leg's own girth in mm where the sock ends."""
        return girth_at(self.leg_body, self.top_above_floor)
