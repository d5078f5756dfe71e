#!/usr/bin/env python3
"""Write webapp/page/answers.d.ts: what the engine's doors answer, as types for the page.

They are made from `engine.answers.contract`, against which the engine's tests hold every answer.
`--check` ends with 1 where the file is not what would be written.
"""

from __future__ import annotations

import argparse
import sys
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints, is_typeddict

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from engine.answers import contract

ROOT = install.ROOT
PLACE = ROOT / "webapp" / "page" / "answers.d.ts"
_HEAD = """\
/** What the engine's doors answer. Made by build/answer_types.py: not to be edited. */
"""
_PLAIN: dict[Any, str] = {
    str: "string", int: "number", float: "number", bool: "boolean", NoneType: "null", Any: "any",
}  # fmt: skip


def text() -> str:
    """Return what the file holds."""
    shown, unions = list[Any](), dict[str, Any]()
    for module in iter_modules(contract.__path__):
        there = vars(import_module(f"{contract.__name__}.{module.name}"))
        own = [one for one in there.values() if getattr(one, "__module__", "") == there["__name__"]]
        shown += [one for one in own if is_typeddict(one) and not one.__name__.startswith("_")]
        unions |= {name: one for name, one in there.items() if isinstance(one, UnionType)}
    return (
        _HEAD
        + "".join(map(_interface, shown))
        + "".join(f"export type {name} = {spelled(one)};\n" for name, one in unions.items())
    )


def _interface(told: Any) -> str:
    hints = get_type_hints(told)
    lines = [f"/** {told.__doc__} */\nexport interface {told.__name__} {{\n"]
    for name, wanted in hints.items():
        may = "" if name in told.__required_keys__ else "?"
        lines.append(f"  {name}{may}: {spelled(wanted)};\n")
    return "".join([*lines, "}\n"])


def spelled(wanted: Any) -> str:
    """Return a type of the contract as TypeScript has it."""
    if wanted in _PLAIN:
        return _PLAIN[wanted]
    if is_typeddict(wanted):
        return str(wanted.__name__)
    origin, inner = get_origin(wanted), get_args(wanted)
    if origin in (Union, UnionType):
        return " | ".join(map(spelled, inner))
    if origin is Literal:
        return " | ".join(f'"{one}"' for one in inner)
    if origin is list:
        item = spelled(inner[0])
        return f"({item})[]" if "|" in item else f"{item}[]"
    if origin is dict:
        return f"Record<string, {spelled(inner[1])}>"
    raise TypeError(f"no type of the page's for {wanted}")


def main(arguments: list[str]) -> int:
    """Write the file, or with `--check` say whether it is up to date."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing")
    wanted: Any = parser.parse_args(arguments)
    if not wanted.check:
        PLACE.write_text(text(), encoding="utf-8")
        return 0
    if PLACE.is_file() and PLACE.read_text(encoding="utf-8") == text():
        return 0
    print(f"{PLACE.relative_to(ROOT)} is not up to date: python3 build/answer_types.py")
    return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
