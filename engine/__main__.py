"""The same door for a terminal.

`plan FILE` prints one JSON object and ends with 0, or prints `{"errors": [...]}` and ends with 2.
`plan --lines FILE` answers one request a line and ends with 0. `-` is standard input. Messages are
spoken in `--language`; `ids` beside them tells which they are.

`set FILE` prints instructions over sizes as plain text, or the errors as above. FILE is one JSON
object: the plan's `request`, and `set` with `by` (a system of shoe sizes, or length), `sizes` and
`details`. `--size SIZE` prints those for one of its sizes alone.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from typing import Any, BinaryIO

from engine import api
from engine.instructions import printed
from engine.read.errors import Problem, Refused
from engine.read.quoted import quoted
from engine.say import messages as say
from engine.say.aloud import LANGUAGES, aloud

_NOT_TEXT = Problem("", say.not_utf8(), say.save_as_utf8())


def _answer(data: bytes) -> dict[str, Any]:
    return _asked(
        data, lambda told: api.answer({"do": "plan", "request": told, "operations": True})
    )


def _asked(data: bytes, ask: Callable[[Any], dict[str, Any]]) -> dict[str, Any]:
    """Return what is answered to JSON as bytes."""
    try:
        text = data.decode("utf-8-sig")  # some editors put a mark before the text
        return ask(api.read_json(text))
    except UnicodeDecodeError:
        return Refused([_NOT_TEXT]).as_dict()
    except Refused as refused:
        return refused.as_dict()


def _print(answer: dict[str, Any], language: str) -> None:
    text = json.dumps(aloud(answer, language, ids=True), ensure_ascii=False)
    # Half a character, as JSON can spell it, comes back in a message; it has no UTF-8.
    sys.stdout.buffer.write(text.encode("utf-8", "backslashreplace") + b"\n")


def _plan(source: BinaryIO, lines: bool, language: str) -> int:
    if lines:
        for line in source:
            if line.strip():
                _print(_answer(line), language)
        return 0
    answer = _answer(source.read())
    _print(answer, language)
    return 2 if "errors" in answer else 0


def _call(told: object) -> object:
    return {**told, "do": "set"} if isinstance(told, dict) else told


def _set(data: bytes, size: str | None, language: str) -> int:
    answer = _asked(data, lambda call: api.answer(_call(call)))
    if "errors" not in answer and size is not None:
        labels = tuple(one["label"] for one in answer["sizes"])
        if size not in labels:
            no = say.set_no_such_size(size=quoted(size))
            answer = Refused([Problem("size", no, say.choose(choices=labels))]).as_dict()
    if "errors" in answer:
        _print(answer, language)
        return 2
    document = answer["document"]
    alone = {
        one["label"]: blocks
        for one, blocks in zip(answer["sizes"], document["one_size"], strict=True)
    }
    blocks = document["all_sizes"] if size is None else alone[size]
    sys.stdout.buffer.write(printed.write(blocks, language).encode("utf-8", "backslashreplace"))
    return 0


def _run(chosen: argparse.Namespace, source: BinaryIO) -> int:
    if chosen.command == "set":
        return _set(source.read(), chosen.size, chosen.language)
    return _plan(source, chosen.lines, chosen.language)


def main(arguments: list[str] | None = None) -> int:
    """Run the command line and return its exit code."""
    parser = argparse.ArgumentParser(prog=f"{sys.executable} -m engine", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True)
    plan = commands.add_parser("plan", help="work out a sock")
    plan.add_argument("--lines", action="store_true", help="one request a line")
    sizes = commands.add_parser("set", help="write instructions over sizes")
    sizes.add_argument("--size", help="for this one of its sizes alone")
    for command in (plan, sizes):
        command.add_argument("--language", choices=LANGUAGES, default="en", help="of the sentences")
        command.add_argument("file", help="a JSON file, or - for standard input")
    chosen = parser.parse_args(arguments)
    if chosen.file == "-":
        return _run(chosen, sys.stdin.buffer)
    try:
        with open(chosen.file, "rb") as source:
            return _run(chosen, source)
    except OSError:
        problem = Problem("", say.no_such_file(file=chosen.file), say.name_a_file())
        _print(Refused([problem]).as_dict(), chosen.language)
        return 2


if __name__ == "__main__":
    sys.exit(main())
