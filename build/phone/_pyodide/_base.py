"""In the place of Pyodide's: what its own start asks for, and the import that the worker makes."""

from importlib import import_module as pyimport_impl
from typing import Any

__all__ = ["eval_code", "pyimport_impl"]


def eval_code(source: str, names: Any = None, *_: Any, **__: Any) -> Any:
    """Run statements parted by semicolons; return the value of the last, an expression."""
    first, _, last = source.rpartition(";")
    names = {} if names is None else names
    exec(first, names)  # noqa: S102 - Pyodide's own lines, a handful
    return eval(last.strip(), names)  # noqa: S307
