"""Socks and machines made by hand, for tests of what looks at them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from engine.fabric.fabric import Fabric
from engine.machine.cylinder import Cylinder
from engine.machine.needle_bed import Work, run
from engine.machine.standing import Standing, bare
from engine.sections.leg import Leg
from engine.sections.section import Section
from engine.sock.in_order import Cloth, cuff_down
from engine.sock.sock import Sock


def with_leg(sock: Sock, leg: Leg, fabric: Fabric | None = None) -> Sock:
    """The same sock with another leg, in its own fabric or another."""
    cloth = fabric or sock.fabric
    pockets = sock.pockets["heel"], sock.pockets["toe"]
    screw = Cloth(cloth, sock.system)
    sections = cuff_down(sock.cylinder, sock.cuff, leg.bands, pockets, sock.foot_rounds, screw)
    return replace(sock, leg=leg, fabric=cloth, sections=sections)


def on_a_tube(machine: Cylinder, at: int | None = None) -> Standing:
    """A machine in the middle of a sock, a stitch on every needle, the carrier at a gap."""
    start = bare(machine)
    return start._replace(
        loops=start.work,
        yarn="main",
        on="main",
        weight="tube",
        at=start.at if at is None else at,
    )


def knitted(sections: Sequence[Section], machine: Cylinder) -> Work:
    """What sections come to in the middle of a sock."""
    begins = sections[0].begins(machine)
    stages = [stage for section in sections for stage in section.stages(machine)]
    operations = [one for stage in stages for one in stage.operations]
    return run(on_a_tube(machine, begins), operations)
