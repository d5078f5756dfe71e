"""Weights of yarn in what was kept or sent before grams were usual beside inches too.

Until then a weight without a unit was in ounces where the page was set to inches; now it is in
grams everywhere, as sock yarn is sold and scales show it. What is written from now on has its unit
with it, so a bare weight beside inches in a link is one of those ounces.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from engine.fabric import swatch, yarn_at_hand
from engine.read import reading
from engine.read.errors import Unreadable


def told_in(request: Mapping[str, Any], unit: str) -> dict[str, Any]:
    """Return the request with `unit` behind each bare weight, if it is one in inches."""
    told = dict(request)
    if str(request.get("units")).strip().casefold() != "in":
        return told
    _spell(told, "stock", yarn_at_hand.WEIGHTS, unit)
    fabric = told.get("fabric")
    if isinstance(fabric, Mapping):
        told["fabric"] = dict(fabric)
        _spell(told["fabric"], "swatch", swatch.WEIGHTS, unit)
        rows = fabric.get("swatches")
        if isinstance(rows, list):
            group = dict(enumerate(rows))
            for at in group:
                _spell(group, at, swatch.WEIGHTS, unit)
            told["fabric"]["swatches"] = list(group.values())
    return told


def _spell(within: dict[Any, Any], name: Any, weights: Mapping[str, Any], unit: str) -> None:
    """Put a copy of the group `name` in its place, its bare weights with their unit."""
    group = within.get(name)
    if isinstance(group, Mapping):
        within[name] = {
            field: f"{text} {unit}" if field in weights and _bare(text) else text
            for field, text in group.items()
        }


def _bare(text: Any) -> bool:
    try:
        return not isinstance(text, bool) and reading.is_bare(str(text))
    except Unreadable:
        return False
