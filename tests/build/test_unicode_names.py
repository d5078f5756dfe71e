"""Pyodide's WebAssembly without the names of characters: the one with them is the judge.

All else that Python tells of all 1,114,112 characters (the Unicode Standard's properties and normal
forms) is as in Pyodide as it comes.
"""

import json
from collections.abc import Mapping
from pathlib import Path

import pytest

from build import engine_archive, site, unicode_names, wasm
from build.wasm_memory import Memory
from tests.build.in_pyodide import stock, told

TOLD = """
import json, sys, unicodedata as told, zlib

FORMS = ("NFC", "NFD", "NFKC", "NFKD")
KINDS = ("isalnum", "isalpha", "isdecimal", "isdigit", "isidentifier", "islower", "isnumeric")
KINDS += ("isprintable", "isspace", "istitle", "isupper", "lower", "upper", "title", "casefold")

def of(one):
    yield told.category(one), told.bidirectional(one), told.combining(one), told.mirrored(one)
    yield told.east_asian_width(one), told.decomposition(one), told.numeric(one, None)
    yield from (told.normalize(form, one) for form in FORMS)
    yield from (getattr(one, kind)() for kind in KINDS)

def missed(ask, error):
    try:
        return ask()
    except error as caught:
        return type(caught).__name__

def facts():
    sums = [
        zlib.crc32(repr([[*of(chr(code))] for code in range(at, at + 4096)]).encode())
        for at in range(0, sys.maxunicode, 4096)
    ]
    names = [missed(lambda: told.name(one), ValueError) for one in "a\\u0416\\u20ac\\U0001f9e6"]
    return json.dumps([sums, names, missed(lambda: told.lookup("SOCKS"), KeyError)])
"""


def facts(files: Mapping[str, bytes], folder: Path) -> tuple[list[int], list[str], str]:
    """What Python in this Pyodide tells: sums of all characters, some names, one of a name."""
    sums, names, found = json.loads(told(files, TOLD, folder))
    return sums, names, found


def test_all_but_the_names_is_told_as_before(tmp_path: Path) -> None:
    before = facts(stock(), tmp_path / "stock")
    ours = {**site.pyodide(), "python_stdlib.zip": engine_archive.standard_library(site.PYODIDE)}
    after = facts(ours, tmp_path / "ours")
    assert len(before[0]) == 272
    assert after[0] == before[0]
    # The names are those of the Unicode Character Database.
    letters = ["LATIN SMALL LETTER A", "CYRILLIC CAPITAL LETTER ZHE", "EURO SIGN", "SOCKS"]
    assert before[1:] == (letters, "\U0001f9e6")
    assert after[1:] == (["ValueError"] * 4, "KeyError")


class Noting(Memory):
    """One that remembers where it was written over."""

    written: list[tuple[int, int]]

    def write(self, at: int, content: bytes) -> None:
        super().write(at, content)
        self.written = [*getattr(self, "written", []), (at, len(content))]


def test_tables_that_do_not_add_up_are_refused() -> None:
    parts = dict(wasm.sections((site.PYODIDE / "pyodide.asm.wasm").read_bytes()))
    memory = Noting(parts[wasm.DATA])
    whole = memory.read(0, memory.size)
    numbers = {one for body in wasm.bodies(parts[wasm.CODE]) for one in wasm.operands(body)[1]}
    memory.written.clear()
    unicode_names.forget(memory, numbers)
    tables = memory.written[:]
    (names, _), (characters, length), (blocks, _) = tables
    first = blocks - unicode_names.CHARACTERS // 256
    assert sum(length for _, length in tables) > 400_000
    letter = blocks + 512 * whole[first] + 2 * ord("A")
    for place in (names, characters, characters + length - 1, first, letter):
        memory.write(0, whole)
        memory.write(place, bytes([whole[place] ^ 1]))
        with pytest.raises(unicode_names.NotThere):
            unicode_names.forget(memory, {names, characters, first})
    memory.write(0, whole)
    unicode_names.forget(memory, {names, characters, first})
    assert memory.written[-3:] == tables
