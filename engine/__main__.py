"""The same door for a terminal.

`python -m engine plan FILE` prints one JSON object and ends with 0, or prints `{"errors": [...]}`
and ends with 2. `python -m engine plan --lines FILE` answers one request a line and ends with 0.
`-` is standard input.
"""

from __future__ import annotations

import argparse
import json
import sys
from typing import Any, TextIO

from engine import api
from engine.errors import Problem, Refused


def _answer(text: str) -> dict[str, Any]:
    try:
        return api.answer({"do": "plan", "request": api.read_json(text)})
    except Refused as refused:
        return refused.as_dict()


def _print(answer: dict[str, Any]) -> None:
    print(json.dumps(answer, ensure_ascii=False))


def _plan(source: TextIO, lines: bool) -> int:
    if lines:
        for line in source:
            if line.strip():
                _print(_answer(line))
        return 0
    answer = _answer(source.read())
    _print(answer)
    return 2 if "errors" in answer else 0


def main(arguments: list[str] | None = None) -> int:
    """Run the command line and return its exit code."""
    parser = argparse.ArgumentParser(prog="python -m engine", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    plan = commands.add_parser("plan", help="work out a sock")
    plan.add_argument("--lines", action="store_true", help="one request a line")
    plan.add_argument("file", help="a JSON file, or - for standard input")
    chosen = parser.parse_args(arguments)
    if chosen.file == "-":
        return _plan(sys.stdin, chosen.lines)
    try:
        with open(chosen.file, encoding="utf-8") as source:
            return _plan(source, chosen.lines)
    except (OSError, UnicodeDecodeError):
        problem = Problem(
            "", f"{chosen.file} cannot be read.", "Name a JSON file, or - to type it."
        )
        _print(Refused([problem]).as_dict())
        return 2


if __name__ == "__main__":
    sys.exit(main())
