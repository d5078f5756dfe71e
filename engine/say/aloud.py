"""Answers with their messages as sentences, for a terminal. The phone has its own way to speak."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any, cast

from engine.say import spoken
from engine.say.message import ID, Message

LANGUAGES = tuple(sorted(one.name.replace("_", "-") for one in iter_modules(spoken.__path__)))


def aloud(answer: Any, language: str = "en", *, ids: bool = False) -> Any:
    """Return an answer with each message as its sentence, in one of `LANGUAGES`.

    With `ids`, an object with messages in it also has these under the same names in `ids`.
    """
    return _aloud(answer, _sentences(language), ids)


def text(message: Message | str, language: str = "en") -> str:
    """Return a message as its sentence."""
    return str(_aloud(message, _sentences(language), False))


@cache
def _sentences(language: str) -> Mapping[str, Callable[[Mapping[str, Any]], str]]:
    found = import_module(f"engine.say.spoken.{language.replace('-', '_')}").MESSAGES
    return cast("Mapping[str, Callable[[Mapping[str, Any]], str]]", found)


def _aloud(value: Any, sentences: Mapping[str, Any], ids: bool) -> Any:
    if isinstance(value, Message):
        given = {name: _aloud(one, sentences, ids) for name, one in value.items()}
        return sentences[value[ID]](given)
    if isinstance(value, dict):
        said = {name: _aloud(one, sentences, ids) for name, one in value.items()}
        found = {name: _ids(one) for name, one in value.items() if _ids(one)} if ids else {}
        return {**said, "ids": found} if found else said
    if isinstance(value, list | tuple):
        return [_aloud(one, sentences, ids) for one in value]
    return value


def _ids(value: Any) -> Any:
    """Return the id of a message, or those of a list of messages."""
    if isinstance(value, Message):
        return value[ID]
    if isinstance(value, list) and value and all(isinstance(one, Message) for one in value):
        return [one[ID] for one in value]
    return None
