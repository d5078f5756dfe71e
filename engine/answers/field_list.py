"""Every field of a request by its dotted name, as its own reader tells it; for the page's build."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from engine.read.listing import Listing
from engine.sock import wanted


def write(echoed: Collection[str]) -> dict[str, Any]:
    """Return `fields` (a `name`, its `kind`, and whether it is `echoed`) and `lists` of rows.

    The name of a field in a list has `ROW` where the row's number goes; `echoed` are those that the
    door `read` reads back while they are typed; `most` is how many rows a list can have.
    """
    asked = Listing({})
    wanted.read(asked)
    return {
        "fields": [
            {"name": name, "kind": kind, "echoed": name in echoed}
            for name, kind in asked.found.kinds.items()
        ],
        "lists": [{"name": name, "most": most} for name, most in asked.found.rows.items()],
    }
