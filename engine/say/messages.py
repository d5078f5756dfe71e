"""One function for each message of the catalogue: `messages.too_small(shown=...)`.

The ids are not written here. Types for all of them are in messages.pyi, made by `build/words.py`.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from engine.say.message import ID, Message


def __getattr__(name: str) -> Callable[..., Message]:
    """Make the function of an id, once."""
    if name.startswith("_"):
        raise AttributeError(name)
    made = partial(Message, **{ID: name.replace("_", "-")})
    globals()[name] = made
    return made
