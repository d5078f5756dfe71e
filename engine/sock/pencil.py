"""The sock in pencil: made of whatever a request tells so far, what it leaves out being usual.

Cylinder and yarn stand in by common practice, no published source; the foot is everybody's, with
the spread of the surveys (`engine.people.population`).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.read.fields import Fields
from engine.sock import plan
from engine.sock.sock import Sock
from engine.sock.wanted import USUAL_CYLINDER, read
from engine.sources import USUAL_SOCK_YARN_TEX

_USUAL: dict[str, Mapping[str, str]] = {
    "cylinder": {"slots": f"{USUAL_CYLINDER.slots}"},
    "fabric": {"yarn": f"{USUAL_SOCK_YARN_TEX:g} tex"},
}
# What sock one taught and what yarn is at hand come later.
_FIRST = ("units", "foot", "cylinder", "fabric", "other_foot", "person", "sock")


def make(asked: object) -> tuple[Sock, frozenset[str]]:
    """Return the sock of what a request tells, and what it told of foot, cylinder and fabric.

    What it leaves out, or what cannot be read of it, is as usual: everybody's foot, 60 slots, the
    usual sock yarn. Raises `Refused` where even so there is no sock.
    """
    raw = asked if isinstance(asked, Mapping) else {}
    told = {name: raw[name] for name in _FIRST if name in raw}
    fields = Fields(told)
    read(fields)
    wrong = [problem.field.split(".") for problem in fields.problems]
    for path in wrong:
        told = _without(told, path if path[0] not in _USUAL else path[:1])
    usual = {name: group for name, group in _USUAL.items() if name not in told}
    sock = plan.make({**told, **usual}, anybody=True)
    known = {"foot": read(Fields(told)).measures} | {name: told.get(name) for name in _USUAL}
    return sock, frozenset(name for name, found in known.items() if found is not None)


def _without(group: Mapping[str, Any], path: list[str]) -> dict[str, Any]:
    """Return a group without what stands at a path in it."""
    name, *deeper = path
    inner = group.get(name)
    if deeper and isinstance(inner, Mapping):
        return {**group, name: _without(inner, deeper)}
    return {one: value for one, value in group.items() if one != name}
