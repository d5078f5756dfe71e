"""In the place of the standard library's: Pyodide's core looks names up in it."""

from typing import Any


def __getattr__(name: str) -> Any:
    if name.startswith("__"):
        raise AttributeError(name)
    return None
