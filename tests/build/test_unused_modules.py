"""Pyodide's WebAssembly without unused modules: node's own reading of it is one judge.

Another is that Python in it answers as Python here does: tests/browser/test_same_answers.py.
"""

import json
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest

from build import site, unused_modules, wasm
from build.lean_pyodide import OtherPyodide
from build.unused_modules import without_unused
from build.wasm_memory import Memory

STOCK = (site.PYODIDE / "pyodide.asm.wasm").read_bytes()
FACTS = """
import fs from "node:fs";
const facts = process.argv.slice(1).map((path) => {
    const module = new WebAssembly.Module(fs.readFileSync(path));
    return [WebAssembly.Module.exports(module), WebAssembly.Module.imports(module)];
});
console.log(JSON.stringify(facts));
"""


@pytest.fixture(scope="module")
def cut() -> bytes:
    return without_unused(STOCK, STOCK)


def test_it_is_valid_and_what_it_gives_and_wants_is_as_before(cut: bytes, tmp_path: Path) -> None:
    paths = [tmp_path / name for name in ("stock.wasm", "cut.wasm")]
    for path, content in zip(paths, (STOCK, cut), strict=True):
        path.write_bytes(content)
    node = [site.find_node(), "--input-type=module", "-e", FACTS, *map(str, paths)]
    done = subprocess.run(node, check=True, capture_output=True, text=True)
    before, after = json.loads(done.stdout)
    assert before == after


def test_functions_keep_their_numbers(cut: bytes) -> None:
    """Each body is as it was, or one that traps; where all is exported, named ones stay."""
    before, after = (
        wasm.bodies(dict(wasm.sections(content))[wasm.CODE]) for content in (STOCK, cut)
    )
    assert len(before) == len(after)
    gone = sum(new == wasm.NOTHING != old for old, new in zip(before, after, strict=True))
    assert gone > 2000
    assert all(new in (old, wasm.NOTHING) for old, new in zip(before, after, strict=True))


def test_far_more_goes_where_little_is_exported() -> None:
    with_few = site.pyodide()["pyodide.asm.wasm"]
    assert len(with_few) < len(STOCK) * 0.72


def test_the_table_of_modules_is_closed_up(cut: bytes) -> None:
    """One place less points to a dropped module's name; each other's are as many as before."""

    def pointing(content: bytes, name: str) -> int:
        memory = Memory(dict(wasm.sections(content))[wasm.DATA])
        places = memory.find(b"\0" + name.encode() + b"\0")
        return sum(len(list(memory.pointing(place + 1))) for place in places)

    for name in ("_sqlite3", "_zoneinfo", "unicodedata", "zlib"):
        less = int(name in unused_modules.UNUSED)
        assert pointing(cut, name) == pointing(STOCK, name) - less > 0, name


def test_another_layout_is_refused() -> None:
    with pytest.raises(OtherPyodide, match="no module _statistics"):
        without_unused(STOCK, STOCK.replace(b"\0_statistics\0", b"\0_statistisc\0"))
    with pytest.raises(OtherPyodide, match="table of modules"):
        without_unused(STOCK, STOCK.replace(b"\0_asyncio\0", b"\0_asyncoi\0"))
    names = STOCK.replace(b"BZ2_bzCompressInit", b"XXX_bzCompressInit")
    with pytest.raises(OtherPyodide, match="do not lie together"):
        without_unused(names, STOCK)


def test_numbers_rise_as_long_as_can_be() -> None:
    """Against trying every choice."""
    numbers = [3, 1, 2, 2, 9, 4, 4, 0, 5]
    best = max(
        (
            [place for place in range(len(numbers)) if mask >> place & 1]
            for mask in range(1 << len(numbers))
        ),
        key=lambda places: (
            len(places) if all(numbers[a] <= numbers[b] for a, b in pairwise(places)) else 0
        ),
    )
    found = unused_modules._longest_rising(list(enumerate(numbers)))
    assert len(found) == len(best) == 6
    values = [numbers[place] for place in sorted(found)]
    assert values == sorted(values)


def test_numbers_are_written_as_the_core_specification_says() -> None:
    """5.2.2: in sevens of bits, the lowest first; signed, the highest bit says that it is negative.

    624485 is written e5 8e 26 in the DWARF standard 4, 7.6, figure 22; 128 by hand.
    """
    assert wasm.written(624485) == bytes.fromhex("e58e26") == wasm.signed(624485)
    assert wasm.written(64) == b"\x40"
    assert wasm.signed(64) == b"\xc0\x00"  # 0x40 alone were -64
    for value in (0, 1, 63, 64, 127, 128, 8191, 8192, 3_335_328):
        assert wasm.number(wasm.written(value), 0)[0] == value
        assert wasm.placed(b"\0\x41" + wasm.signed(value) + b"\x0b", 0)[0] == value
