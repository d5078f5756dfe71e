"""In the place of the standard library's: what dataclasses and Pyodide's core ask of it."""

from typing import Any


def signature(*_: Any, **__: Any) -> Any:
    """Raise ValueError, as for an object without a signature."""
    raise ValueError("no signatures here")


def unwrap(func: Any, **_: Any) -> Any:
    """Return what a decorated function was made of."""
    while hasattr(func, "__wrapped__"):
        func = func.__wrapped__
    return func


def iscoroutinefunction(_: Any) -> bool:
    """Return False: there are none."""
    return False
