"""What holds the page's thread: reckoned by hand from a recording of a few events."""

from typing import Any

import pytest

from build import blocking

PAGE, WORKER = (7, 1), (7, 2)


def event(name: str, thread: tuple[int, int], at: int, ms: float, **data: Any) -> dict[str, Any]:
    """One that began at a millisecond, and of whose time its thread worked half: so many ms."""
    return {
        **{"name": name, "pid": thread[0], "tid": thread[1], "ts": at * 1000},
        **{"dur": 2000 * ms, "tdur": 1000 * ms, "args": {"data": data}},
    }


PAINTED = {"name": "firstContentfulPaint", "pid": 7, "tid": 1, "ts": 100_000}
EVENTS = [
    event("ParseHTML", PAGE, 10, 1),
    event("RunTask", PAGE, 10, 30),  # over before anything is painted
    PAINTED,
    event("RunTask", PAGE, 200, 20),  # 80 ms on a phone: 30 too long
    event("v8.evaluateModule", PAGE, 201, 15, fileName="https://a.example/assets/main-1.js"),
    event("Layout", PAGE, 230, 1),
    event("RunTask", PAGE, 300, 12),  # 48 ms
    event("RunTask", PAGE, 400, 25),  # 100 ms: 50 too long
    event("RunTask", WORKER, 200, 900),
]


def test_only_what_is_long_after_the_first_paint_blocks() -> None:
    found = blocking.tasks(EVENTS)
    assert [one.length for one in found] == [80, 48, 100]
    assert [one.blocks for one in found] == [30, 0, 50]
    assert [one.begun for one in found] == [100, 200, 300]
    assert found[0].ran == ("v8.evaluateModule main-1.js",)


def test_without_a_paint_nothing_can_be_told() -> None:
    with pytest.raises(LookupError):
        blocking.tasks([one for one in EVENTS if one is not PAINTED])
