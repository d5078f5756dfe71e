"""The engine's messages as Python: sentences for a terminal, and types of their functions."""

from __future__ import annotations

import re

from build.catalogue import Message, Pattern, Select

_SPOKEN = '''\
"""Made by build/words.py of engine/say/words/{language}: not to be edited."""

from collections.abc import Callable, Mapping
from typing import Any

from engine.say.grammar import grammar, written as _t
{general}
_g = grammar("{language}")
MESSAGES: Mapping[str, Callable[[Mapping[str, Any]], str]] = {{
'''
_GENERAL = "from engine.say.spoken.{name} import MESSAGES as _general\n"
_TYPES = '''\
"""Made by build/words.py of engine/say/words/en: not to be edited."""

from typing import Literal

from engine.say.message import Message

'''


def module(
    catalogue: dict[str, Message], language: str, general: dict[str, Message] | None = None
) -> str:
    """One Python module with a function for each id.

    Of a language with a region, `general` is what is said without it: the module holds only what
    differs, in its words or by its grammar.
    """
    without = _GENERAL.format(name=language.partition("-")[0]) if general else ""
    lines = [_SPOKEN.format(language=language, general=without)]
    lines += ["    **_general,\n"] if general else []
    for one in catalogue.values():
        said = _expression(one.pattern)
        if general is None or one != general[one.id] or "_g." in said:
            lines.append(f"    {one.id!r}: lambda m: {said},\n")
    return "".join([*lines, "}\n"])


def _expression(pattern: Pattern) -> str:
    said = []
    for part in pattern:
        if isinstance(part, str):
            said.append(repr(part))
        elif isinstance(part, Select):
            said.append(_choice(part))
        else:
            value = f'm["{part.name}"]'
            match part.function:
                case "NUMBER":
                    said.append(f'f"{{{value.replace(chr(34), chr(39))}:,}}"')
                case "SENTENCES":
                    said.append(f'" ".join({value})')
                case "LOWER":
                    said.append(f"_t({value}).lower()")
                case "LIST":
                    said.append(f"_g.listed({value})")
                case "EITHER":
                    said.append(f"_g.either({value})")
                case _:
                    said.append(f"_t({value})")
    return " + ".join(said) or '""'


def _choice(select: Select) -> str:
    script = _expression(dict(select.variants)[select.default])
    value = f'm["{select.name}"]'
    for key, pattern in reversed(select.variants):
        if key == select.default:
            continue
        asked = f'{value} == "{key}"'
        if select.plural:
            asked = f"{value} == {key}" if key.isdigit() else f'_g.plural({value}) == "{key}"'
        script = f"{_expression(pattern)} if {asked} else {script}"
    return f"({script})"


def function(message: Message) -> str:
    """Return its name as the engine's Python writes it."""
    return message.id.replace("-", "_")


def types(catalogue: dict[str, Message]) -> str:
    """The stub of `engine.say.messages`: a function for each id, its arguments by name."""
    lines = [_TYPES]
    for one in sorted(catalogue.values(), key=function):
        given = ", ".join(f"{name}: {_type(one, name)}" for name in one.arguments)
        star = "*, " if given else ""
        lines.append(f"def {function(one)}({star}{given}) -> Message: ...\n")
    return re.sub(r"\n\n\n+", "\n\n", "".join(lines))


def _type(message: Message, name: str) -> str:
    kinds = message.arguments[name]
    if kinds == frozenset({"NUMBER"}):
        return "float"
    if kinds == frozenset({"LIST"}):
        return "tuple[Message | str, ...]"
    if kinds:
        return f"Literal[{', '.join(repr(kind) for kind in sorted(kinds))}]".replace("'", '"')
    return "Message | str | float"
