"""JSON as the standard has it (RFC 8259) and no more: Python's own reader takes NaN and infinities.

What is read here is kept, sent and shown again as JSON, which no other reader could then read.
"""

from __future__ import annotations

import json
from math import isfinite
from typing import Any, NoReturn


class NotJson(Exception):
    """Raised where a text is no JSON, or nests deeper than anything we send."""


def read(text: str | bytes) -> Any:
    """Return the JSON value of a text; raises `NotJson`."""
    try:
        return json.loads(text, parse_constant=_refuse, parse_float=_finite)
    except (ValueError, RecursionError):  # its own error is a ValueError, as those below are
        raise NotJson from None


def _refuse(name: str) -> NoReturn:
    raise ValueError(f"{name} is no JSON")


def _finite(digits: str) -> float:
    value = float(digits)
    if not isfinite(value):
        raise ValueError("a number beyond all numbers")
    return value
