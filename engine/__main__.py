"""The same door for a terminal.

`plan FILE` prints one JSON object and ends with 0, or prints `{"errors": [...]}` and ends with 2.
`plan --lines FILE` answers one request a line and ends with 0. `-` is standard input.
"""

from __future__ import annotations

import argparse
import json
import sys
from typing import Any, BinaryIO

from engine import api
from engine.read.errors import Problem, Refused

_NOT_TEXT = Problem("", "This is not text in UTF-8.", "Save it as UTF-8 and try again.")


def _answer(data: bytes) -> dict[str, Any]:
    try:
        text = data.decode("utf-8-sig")  # some editors put a mark before the text
        return api.answer({"do": "plan", "request": api.read_json(text), "operations": True})
    except UnicodeDecodeError:
        return Refused([_NOT_TEXT]).as_dict()
    except Refused as refused:
        return refused.as_dict()


def _print(answer: dict[str, Any]) -> None:
    text = json.dumps(answer, ensure_ascii=False)
    # Half a character, as JSON can spell it, comes back in a message; it has no UTF-8.
    sys.stdout.buffer.write(text.encode("utf-8", "backslashreplace") + b"\n")


def _plan(source: BinaryIO, lines: bool) -> int:
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
    parser = argparse.ArgumentParser(prog=f"{sys.executable} -m engine", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    plan = commands.add_parser("plan", help="work out a sock")
    plan.add_argument("--lines", action="store_true", help="one request a line")
    plan.add_argument("file", help="a JSON file, or - for standard input")
    chosen = parser.parse_args(arguments)
    if chosen.file == "-":
        return _plan(sys.stdin.buffer, chosen.lines)
    try:
        with open(chosen.file, "rb") as source:
            return _plan(source, chosen.lines)
    except OSError:
        problem = Problem(
            "", f"{chosen.file} cannot be read.", "Name a JSON file, or - to type it."
        )
        _print(Refused([problem]).as_dict())
        return 2


if __name__ == "__main__":
    sys.exit(main())
