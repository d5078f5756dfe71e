"""Pyodide's WebAssembly without the names of characters, which nothing here asks for.

"LATIN SMALL LETTER A" and 40,950 others are a ninth of all that a first visit waits for, and pack
badly. CPython 3.14 keeps them in three tables (Modules/unicodename_db.h, Tools/unicode/dawg.py):

- all names as a packed graph: each node is the number of names from there on, doubled, odd where
  one ends; then its edges, each the way to its node, quadrupled, with a bit for a label of one
  letter and one for the last edge; then the label, behind its length where that is no one.
- the character of each name, by the name's number.
- for each 256 characters the number of a block, and behind that the blocks: of each character the
  number of its name.

They are recognized by what they say: every count of the graph adds up, the characters are as many
and all different, and each leads back to its number. Then no name is left: to ask for that of a
character raises ValueError, to look for one KeyError. All else that Python knows of characters
stays.
"""

import struct
from collections.abc import Iterable

from build import wasm
from build.wasm_memory import Memory

FEWEST = 20_000  # names
CHARACTERS = 0x110000
BLOCK = 256  # characters


class NotThere(LookupError):
    """These tables are not in this memory."""


def forget(memory: Memory, addresses: Iterable[int]) -> None:
    """Take all names out of `memory`; the tables begin at some of `addresses`. Raises NotThere."""
    starts = sorted(at for at in addresses if 0 < at < memory.size)
    names, end, count = _graph(memory, starts)
    characters, numbers = _characters(memory, starts, count)
    blocks, behind = _blocks(memory, starts, numbers)
    memory.write(names, bytes(end - names))
    memory.write(characters, bytes(4 * count))
    none = struct.pack("<H", count)  # what stands there for a character without a name
    memory.write(blocks, none * ((behind - blocks) // len(none)))


def _graph(memory: Memory, starts: list[int]) -> tuple[int, int, int]:
    """Where the names begin and end, and how many they are."""
    content = memory.read(0, memory.size)
    for at in starts:
        graph = _Graph(content)
        try:
            if FEWEST < wasm.number(content, at)[0] >> 1 < CHARACTERS:
                count = graph.count(at)
                return at, graph.end, count
        except (IndexError, ValueError, RecursionError):
            continue
    raise NotThere("the names of characters")


class _Graph:
    """A walk through a packed graph, as far as what it says adds up."""

    def __init__(self, content: bytes) -> None:
        self.content = content
        self.known = dict[int, int]()
        self.end = 0

    def count(self, node: int) -> int:
        """The names from a node on. Raises ValueError where they are not as many as it says."""
        if node in self.known:
            return self.known[node]
        said, at = wasm.number(self.content, node)
        found, target = said & 1, at
        edge, at = wasm.number(self.content, at)
        more = edge != 0  # 0 stands in the place of a first edge where there is none
        while more:
            length = 1
            if not edge & 2:
                length, at = self.content[at], at + 1
            target, at = target + (edge >> 2), at + length
            found += self.count(target)
            more = not edge & 1
            if more:
                edge, at = wasm.number(self.content, at)
        if found != said >> 1:
            raise ValueError("a count that does not add up")
        self.end = max(self.end, at)
        self.known[node] = found
        return found


def _characters(memory: Memory, starts: list[int], count: int) -> tuple[int, dict[int, int]]:
    """Where the named characters begin, and the number of each one's name."""
    for at in starts:
        if at % 4 or at + 4 * count > memory.size:
            continue
        found = memory.words(at, count)
        if max(found) < CHARACTERS and len(set(found)) == count:
            return at, dict(zip(found, range(count), strict=True))
    raise NotThere("the characters that have names")


def _blocks(memory: Memory, starts: list[int], numbers: dict[int, int]) -> tuple[int, int]:
    """Where the blocks begin and end, which lead each character to the number of its name."""
    for table in starts:
        begin = table + CHARACTERS // BLOCK
        which = memory.read(table, begin - table)
        end = begin + 2 * BLOCK * (max(which) + 1)
        if begin % 2 or end > memory.size:
            continue
        found = memoryview(memory.read(begin, end - begin)).cast("H")
        if all(
            found[which[one // BLOCK] * BLOCK + one % BLOCK] == number
            for one, number in numbers.items()
        ):
            return begin, end
    raise NotThere("the numbers of characters' names")
