"""Holding an answer against its type in `engine.answers.contract`, name by name."""

from __future__ import annotations

from collections.abc import Iterator
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints, is_typeddict


def strays(value: Any, wanted: Any, path: str = "answer") -> Iterator[str]:
    """Yield each place where a value is not what its type says: missing, foreign or of a kind."""
    origin = get_origin(wanted)
    if wanted is Any:
        return
    if is_typeddict(wanted):
        yield from _of_dict(value, wanted, path)
    elif origin in (Union, UnionType):
        if not any(not list(strays(value, one, path)) for one in get_args(wanted)):
            yield f"{path}: {value!r} is none of {wanted}"
    elif origin is Literal:
        if value not in get_args(wanted):
            yield f"{path}: {value!r} is not among {get_args(wanted)}"
    elif origin is list:
        if not isinstance(value, list):
            yield f"{path}: {value!r} is no list"
            return
        for at, one in enumerate(value):
            yield from strays(one, get_args(wanted)[0], f"{path}[{at}]")
    elif origin is dict:
        if not isinstance(value, dict) or not all(isinstance(name, str) for name in value):
            yield f"{path}: {value!r} is no group by name"
            return
        for name, one in value.items():
            yield from strays(one, get_args(wanted)[1], f"{path}.{name}")
    elif not _is(value, wanted):
        yield f"{path}: {value!r} is no {wanted}"


def _is(value: Any, wanted: Any) -> bool:
    if wanted in (None, NoneType):
        return value is None
    if wanted is float:  # a whole number is one, as JSON has it
        return isinstance(value, int | float) and not isinstance(value, bool)
    if wanted is int:
        return isinstance(value, int) and not isinstance(value, bool)
    return isinstance(value, wanted)


def _of_dict(value: Any, wanted: Any, path: str) -> Iterator[str]:
    if not isinstance(value, dict):
        yield f"{path}: {value!r} is no {wanted.__name__}"
        return
    for name in sorted(wanted.__required_keys__ - set(value)):
        yield f"{path}: {name} is missing"
    hints = get_type_hints(wanted)
    for name, one in value.items():
        if name in hints:
            yield from strays(one, hints[name], f"{path}.{name}")
        else:
            yield f"{path}: {name} is not in {wanted.__name__}"
