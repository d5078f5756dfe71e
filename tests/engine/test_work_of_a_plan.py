"""How much work a plan is, counted in calls of Python functions and not by the clock.

Whoever types asks for a plan at each keystroke, of the same machine and nearly the same sock. The
calls of one such plan are the same on every machine and at any load, so a plan that becomes a third
slower by doing more is seen here. `MOST` is what it took when this was written and a tenth.
"""

from __future__ import annotations

import sys
from types import FrameType

from build.bench_plans import requests
from engine.api import answer

MOST = 2_030


def calls_of(asked: list[dict[str, object]]) -> int:
    """Return how many Python functions answering all of it enters."""
    calls = 0

    def entered(_frame: FrameType, event: str, _argument: object) -> None:
        nonlocal calls
        calls += event == "call"

    before = sys.getprofile()
    sys.setprofile(entered)
    try:
        for call in asked:
            answer(call)
    finally:
        sys.setprofile(before)
    return calls


def test_a_plan_takes_no_more_calls_than_it_did() -> None:
    asked: list[dict[str, object]] = [{"do": "plan", "request": one} for one in requests()]
    assert all("counts" in answer(call) for call in asked)  # once before, as caches fill
    assert calls_of(asked) / len(asked) <= MOST
