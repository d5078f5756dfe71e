"""The sock in pencil: what can be said before all is told, so there is always something to see."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from engine.sock.sock import Sock


def write(sock: Sock, told: Collection[str]) -> dict[str, Any]:
    """Return the range of foot rounds of a sock of which `told` is known so far."""
    low, high = sock.rounds_range
    return {"foot": {"low": low, "high": high}, "told": sorted(told)}
