"""A sock that can be knitted: the list of its sections, and what follows from walking it.

Lengths in mm. Stitches, rounds and rows are counted by the needle bed, which runs each section from
where the one before left the machine; what it came to is kept by machine, standing and section, so
that typing runs only what has changed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from math import exp
from typing import NamedTuple

from engine import sources
from engine.fabric.fabric import Fabric
from engine.fabric.yarn_at_hand import NOTHING_TOLD, Stock
from engine.machine import needle_bed, standing
from engine.machine.cylinder import Cylinder
from engine.machine.needle_bed import Work
from engine.machine.operations import WASTE, Operation
from engine.machine.standing import Standing
from engine.people.foot import IfHeavy, Measure
from engine.read import units
from engine.say.message import Message, Words
from engine.sections.cuff import Cuff
from engine.sections.leg import Girth, Leg
from engine.sections.no_heel import NoHeel
from engine.sections.pocket import Pocket, PocketPart
from engine.sections.pockets import Heel
from engine.sections.section import Part, Section, Size, Stage, Unit
from engine.sections.shaped_leg import Profile, girth_at
from engine.sections.string import OnWaste
from engine.sections.toe import BareToe
from engine.sock import foot_rounds, string
from engine.sock.colors import Colors, with_foot
from engine.sock.foot_rounds import Others
from engine.sock.origin import Origin
from engine.sock.pair import Pair


class Placed(NamedTuple):
    """A section in its place: the fabric it is knitted in, and the gap where its rounds end."""

    section: Section
    cloth: Fabric
    stop: int | None


@dataclass(frozen=True)
class Piece:
    """A part of a sock as its counts name it: so many rounds or rows, and how a card shows them."""

    part: Part
    sections: tuple[Section, ...]
    count: int
    unit: Unit
    figure: str


@dataclass(frozen=True)
class Sock:
    """One sock: `sections` are all of it, in the order of knitting.

    `aimed` is its foot as aimed at; `ease` the share by which a sock is shorter than its foot,
    `room` the mm that were added to that foot to grow into;
    `leg` how the leg was planned, `leg_body` the girths that it stands on; `stock` the yarn at
    hand; `knitted_rounds` the foot rounds of sock one, `fabric_before` what was known before it and
    `pair` what sock two may be, where this is sock two; `closer` what the wish for a snug or a
    loose sock adds to the wanted stretch; `if_heavy` the measures of a heavy wearer whose weight is
    not told; `colors` those by plan; `string` the pair's place where sock follows sock on the
    machine, and `before` the sock that this one follows there; `likely_left` the fewest and the
    most needles that heel or toe might be left with, where a measure chose them; `origin` whose
    instructions it is from.
    """

    system: units.System
    cylinder: Cylinder
    fabric: Fabric
    measures: dict[str, Measure]
    sections: tuple[Section, ...]
    leg: Leg
    leg_body: Profile
    heel_words: Message
    toe_words: Message
    likely_left: dict[str, tuple[int, int]]
    toe_breadth: float | None
    aimed: float
    aimed_sd: float
    ease: float
    notes: tuple[tuple[str | None, Words], ...]
    stock: Stock = NOTHING_TOLD
    knitted_rounds: int | None = None
    fabric_before: Fabric | None = None
    closer: float = 0.0
    pair: Pair | None = None
    room: float = 0.0
    if_heavy: IfHeavy | None = None
    string: string.Place | None = None
    colors: Colors | None = None
    before: Sock | None = None
    origin: Origin | None = None

    @property
    def for_foot(self) -> float:
        """Return the length of its foot in mm that the wearer's foot asks for."""
        return self.aimed if self.pair is None else self.pair.wanted

    @property
    def by_foot(self) -> bool:
        """Tell whether it is aimed at that length, and not at what sock one came to."""
        return self.pair is None or self.pair.like == "foot"

    @cached_property
    def cuff(self) -> Cuff:
        """Return its cuff."""
        return next(section for section in self.sections if isinstance(section, Cuff))

    @cached_property
    def pockets(self) -> dict[PocketPart, Pocket]:
        """Return its pockets by part; none for a toe of another kind."""
        return {one.part: one for one in self.sections if isinstance(one, Pocket)}

    @cached_property
    def placed(self) -> tuple[Placed, ...]:
        """Return every section in its place."""
        cloth, found = self.fabric, list[Placed]()
        stops = _stops(self.sections, self.cylinder)
        for section, stop in zip(self.sections, stops, strict=True):
            if section.sets is not None:
                cloth = self.fabric.tightened(section.sets)
            found.append(Placed(section, cloth, stop))
        return tuple(found)

    def stages(self) -> Iterator[tuple[Section, Stage]]:
        """Yield all that is done, in order, each with its section."""
        for section, _, stop in self.placed:
            for stage in section.stages(self.cylinder, stop):
                yield section, stage

    def operations(self) -> Iterator[tuple[Section, Operation]]:
        """Yield every operation, in order, each with its section."""
        for section, stage in self.stages():
            for operation in stage.operations:
                yield section, operation

    @cached_property
    def work(self) -> tuple[Work, ...]:
        """Return what each section comes to on the needle bed."""
        found, at = list[Work](), self._begins
        for section, _, stop in self.placed:
            found.append(_run(at, section, self.cylinder, stop))
            at = found[-1].ends
        return tuple(found)

    @property
    def _begins(self) -> Standing:
        """Return how the machine stands before it."""
        if self.before is not None:
            return self.before.work[-1].ends
        if isinstance(self.sections[0], OnWaste):
            return standing.on_waste(self.cylinder)
        return standing.bare(self.cylinder)

    @cached_property
    def sock_two(self) -> Sock:
        """Return the pair's second sock as planned with this one: itself, but in a string."""
        if self.string is None or self.knitted_rounds is not None:
            return self
        sections = string.sock_two(self.sections, self.cylinder, self.string)
        return replace(self, sections=sections, before=self)

    @cached_property
    def stitches(self) -> dict[str, int]:
        """Return the stitches of one sock by part."""
        found: dict[str, int] = {}
        for section, work in zip(self.sections, self.work, strict=True):
            if section.counted:
                found[section.part] = found.get(section.part, 0) + work.stitches
        return found

    @cached_property
    def loops(self) -> dict[str, float]:
        """Return the stitches of one sock by part, each counted by its loop over the foot's."""
        found: dict[str, float] = {}
        for section, work in zip(self.sections, self.work, strict=True):
            if section.counted:
                loops = sum(count / made.tighter for made, count in work.made)
                found[section.part] = found.get(section.part, 0) + loops
        return found

    @cached_property
    def waste_loops(self) -> float:
        """Return the stitches of waste yarn, each counted by its loop over the foot's."""
        return sum(
            count / made.tighter
            for work in self.work
            for made, count in work.made
            if made.yarn == WASTE
        )

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """Return the parts that counts name, in order."""
        found: dict[Part, list[Section]] = {}
        for section in self.sections:
            if section.counted:
                found.setdefault(section.part, []).append(section)
        return tuple(_piece(part, [*sections]) for part, sections in found.items())

    @cached_property
    def foot_rounds(self) -> int:
        """Return the foot rounds."""
        return self._rounds("foot")

    @cached_property
    def leg_rounds(self) -> int:
        """Return the rounds of the leg."""
        return self._rounds("leg")

    @cached_property
    def rounds_before_toe(self) -> int:
        """Return the plain rounds between foot and toe."""
        return self._rounds("before_toe")

    @cached_property
    def end_rounds(self) -> int:
        """Return the rounds after the toe."""
        return self._rounds("end")

    def _rounds(self, part: Part) -> int:
        return sum(one.rounds for one in self.sections if one.part == part)

    @cached_property
    def others(self) -> Others:
        """Return what lies along the sole of all sections but the foot."""
        return foot_rounds.others(self.sections)

    @cached_property
    def exact_rounds(self) -> float:
        """Return the foot rounds before rounding."""
        return foot_rounds.exact(self.aimed, self.fabric.rounds, self.others)

    @cached_property
    def heel(self) -> Heel:
        """Return its heel."""
        ends = (one for one in self.sections if isinstance(one, Pocket | NoHeel))
        return next(one for one in ends if one.part == "heel")

    @cached_property
    def toe(self) -> Pocket | BareToe:
        """Return its toe."""
        ends = (one for one in self.sections if isinstance(one, Pocket | BareToe))
        return next(one for one in ends if one.part == "toe")

    def closing(self, cloth: Fabric) -> float:
        """Return the yarn in mm that closes the toe, of that fabric."""
        return self.toe.closing(self.cylinder.slots, cloth)

    def with_foot(self, rounds: int) -> Sock:
        """Return the same sock with another number of foot rounds."""
        return replace(self, sections=with_foot(self.sections, rounds, self.colors))

    def exact_with(self, pocket: Pocket) -> float:
        """Return the foot rounds before rounding with another pocket in place of that part's."""
        rounds = self.others.rounds - self.pockets[pocket.part].sole + pocket.sole
        others = self.others._replace(rounds=rounds)
        return foot_rounds.exact(self.aimed, self.fabric.rounds, others)

    @cached_property
    def rounds_range(self) -> tuple[int, int]:
        """Return the middle 80 % of the foot rounds that the next sock might need."""
        return self.range_within(self.rounds_sd)

    def range_within(self, sd: float) -> tuple[int, int]:
        """Return the same where the foot rounds were out by `sd`, as a standard deviation."""
        others = self.others.rounds
        whole = self.exact_rounds + others
        reach = exp(sources.TO_80_PERCENT * sd / whole)
        return units.whole_between(
            whole / reach - others, self.exact_rounds, whole * reach - others
        )

    @cached_property
    def rounds_sd(self) -> float:
        """Return how far out the foot rounds may be, as a standard deviation."""
        knitted = self.aimed - self.others.by_hand
        return knitted * self.fabric.rounds * self.fabric.rounds_sd_with(self.aimed_sd / knitted)

    @property
    def tube(self) -> float:
        """Return the relaxed girth of the tube in mm."""
        return self.cylinder.slots / self.fabric.stitches

    @cached_property
    def heel_girth(self) -> float | None:
        """Return the sock's relaxed girth round heel and ankle bend in mm, None without a heel."""
        heel = self.heel
        return heel.girth(self.cylinder.slots, self.fabric) if isinstance(heel, Pocket) else None

    @cached_property
    def sizes(self) -> tuple[Size, ...]:
        """Return the size of every section."""
        return tuple(one.section.size(self.cylinder, one.cloth) for one in self.placed)

    @cached_property
    def _heights(self) -> dict[Part, float]:
        """Return how high each part stands in mm."""
        found: dict[Part, float] = {}
        for section, size in zip(self.sections, self.sizes, strict=True):
            found[section.part] = found.get(section.part, 0.0) + size.height
        return found

    @property
    def cuff_depth(self) -> float:
        """Return the finished depth of the cuff in mm."""
        return self._heights["cuff"]

    @property
    def leg_length(self) -> float:
        """Return the leg between cuff and heel in mm."""
        return self._heights["leg"]

    @property
    def heel_height(self) -> float:
        """Return how high the heel stands above the floor in mm."""
        return self._heights["heel"]

    @property
    def top_above_heel(self) -> float:
        """Return leg and cuff together in mm."""
        return self.leg_length + self.cuff_depth

    @property
    def top_above_floor(self) -> float:
        """Return the height of the sock's top above the floor in mm."""
        return self.heel_height + self.top_above_heel

    @cached_property
    def foot_length(self) -> float:
        """Return the finished length of the sock's foot in mm."""
        return foot_rounds.length(self.fabric.rounds, self.foot_rounds, self.others)

    @cached_property
    def _leg(self) -> list[tuple[float, float, float]]:
        """Return each band of the leg from the top: its height in mm, its tube, how that narrows.

        The tube is its relaxed girth in mm were it plain, of which a rib leaves a share.
        """
        found = list[tuple[float, float, float]]()
        for placed, size in zip(self.placed, self.sizes, strict=True):
            if placed.section.part == "leg" and placed.section.counted:
                tube = self.cylinder.slots / placed.cloth.stitches
                found.append((size.height, tube, size.girth / tube))
        return found

    def tube_at(self, height: float) -> tuple[float, float]:
        """Return tube and narrowing of the leg (`_leg`) at a height above the floor in mm."""
        end = self.heel_height
        for high, tube, narrows in reversed(self._leg):
            end += high
            if height < end:
                return tube, narrows
        return self._leg[0][1:]

    @cached_property
    def foot_narrows(self) -> float:
        """Return the share of its tube that the foot lies round, 1 where it is plain."""
        pairs = zip(self.sections, self.sizes, strict=True)
        girths = (size.girth for one, size in pairs if one.part == "foot" and one.counted)
        return next(girths) / self.tube

    @property
    def narrowest(self) -> float:
        """Return the relaxed girth in mm of the leg, were it plain, where it is narrowest."""
        return min(self.tube, *(tube for _, tube, _ in self._leg))

    @property
    def top_tube(self) -> float:
        """Return the relaxed girth in mm of the leg, were it plain, under the cuff."""
        return self._leg[0][1]

    @property
    def top_of_body(self) -> Girth:
        """Return the leg's own girth in mm where the sock ends."""
        return girth_at(self.leg_body, self.top_above_floor)


def _piece(part: Part, sections: list[Section]) -> Piece:
    counts = [section.count for section in sections]
    count, unit = sum(count for count, _ in counts), counts[0][1]
    figure = sections[0].figure if len(sections) == 1 else str(count)
    return Piece(part, tuple(sections), count, unit, figure)


def _stops(sections: tuple[Section, ...], machine: Cylinder) -> list[int | None]:
    """Return the gap where each section's last round ends, None for home.

    It is where the next pocket begins, if no section with rounds lies between.
    """
    home = standing.home(machine.slots, machine.carrier)
    stops, wanted = list[int | None](), None
    for section in reversed(sections):
        if section.rounds:
            stops.append(wanted)
            wanted = None
        else:
            stops.append(None)
            begins = section.begins(machine)
            wanted = wanted if begins is None else begins if begins != home else None
    return stops[::-1]


@lru_cache(maxsize=1024)
def _run(at: Standing, section: Section, machine: Cylinder, stop: int | None) -> Work:
    stages = section.stages(machine, stop)
    return needle_bed.run(at, (one for stage in stages for one in stage.operations))
