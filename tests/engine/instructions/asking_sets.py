"""Asking for instructions over sizes, as the page and a terminal do."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from engine import api
from engine.instructions import printed
from tests.asking import answer

Json = dict[str, Any]
GAUGE = {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm", "yarn": "400 m / 100 g"}


def request(slots: int = 60, **more: Any) -> Json:
    """A plan that tells of nobody."""
    return {"units": "cm", "cylinder": {"slots": slots}, "fabric": GAUGE, **more}


def call(asked: Any, by: str, sizes: Any, do: str = "set", **more: Any) -> Json:
    """A call for a set; `details` and `reader` may be in `more`."""
    wanted = {"by": by, "sizes": sizes, "details": more.pop("details", {})}
    return {"do": do, "request": asked, "set": wanted, **more}


def made(asked: Any, by: str, sizes: Any, **more: Any) -> Json:
    """The answer of the door `set`, which must be one."""
    found = answer(call(asked, by, sizes, **more))
    assert "errors" not in found, found
    return found


def refused(called: Json) -> dict[str, str]:
    """The sentences of a call that must be refused, by field."""
    found = answer(called)
    assert set(found) == {"errors"}
    return {one["field"]: f"{one['message']} {one['way_out']}" for one in found["errors"]}


def prints(called: Json) -> tuple[str, list[str]]:
    """The text of all sizes, and that of each alone."""
    found = api.answer(called)
    assert "errors" not in found, found
    document = found["document"]
    return printed.write(document["all_sizes"]), [
        printed.write(blocks) for blocks in document["one_size"]
    ]


def heads(blocks: Sequence[Json]) -> list[str]:
    """The ids of the headings."""
    return [one["id"] for one in blocks if one["kind"] == "heading"]
