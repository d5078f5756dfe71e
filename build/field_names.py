#!/usr/bin/env python3
"""Write webapp/page/fields.js: the names of a request's fields, typed, as the engine reads them.

The engine's door `fields` tells them; a name that the page misspells is then an error of its types.
`--check` ends with 1 where the file is not what would be written.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from engine.api import answer
from engine.read.listing import ROW

ROOT = install.ROOT
PLACE = ROOT / "webapp" / "page" / "fields.js"
_HEAD = """\
/**
 * The fields of a request as the engine reads them. Made by build/field_names.py: not to be edited.
 * In a list a row's number stands where `Field` has one and `InRow` has ROW.
 *
"""


def text() -> str:
    """Return what the file holds."""
    told = answer({"do": "fields"})
    names = [field["name"] for field in told["fields"]]
    in_rows = [name for name in names if f".{ROW}." in name]
    alone = [name for name in names if name not in in_rows]
    typed = [*map(_quoted, alone), *(f"`{name.replace(ROW, '${number}')}`" for name in in_rows)]
    echoed = [field["name"] for field in told["fields"] if field["echoed"]]
    weights, choices = (
        [field["name"] for field in told["fields"] if field["kind"] == kind]
        for kind in ("weight", "choice")
    )
    return (
        _HEAD
        + _typedef("Field", typed)
        + _typedef("InRow", [_quoted(name) for name in in_rows])
        + _typedef("Group", [_quoted(group) for group in _groups(names)])
        + " */\n\n/** What the engine reads back while it is typed. @type {Field[]} */\n"
        + _list("ECHOED", echoed)
        + "\n/** Weights of yarn. @type {(Field | InRow)[]} */\n"
        + _list("WEIGHTS", weights)
        + "\n/** One of a few. @type {(Field | InRow)[]} */\n"
        + _list("CHOICES", choices)
    )


def _list(name: str, members: list[str]) -> str:
    lines = "".join(f"  {_quoted(member)},\n" for member in members)
    return f"export const {name} = [\n{lines}];\n"


def _groups(names: list[str]) -> list[str]:
    """Return what stands before a dot of any name, lists too, and no row."""
    found = dict[str, None]()
    for name in names:
        parts = name.partition(f".{ROW}")[0].split(".")
        whole = parts if f".{ROW}." in name else parts[:-1]
        for end in range(1, len(whole) + 1):
            found[".".join(whole[:end])] = None
    return list(found)


def _typedef(name: str, members: list[str]) -> str:
    lines = " |\n *   ".join(members)
    return f" * @typedef {{{lines}}} {name}\n *\n"


def _quoted(name: str) -> str:
    return f'"{name}"'


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
    print(f"{PLACE.relative_to(ROOT)} is not up to date: python3 build/field_names.py")
    return 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
