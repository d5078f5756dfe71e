"""Pyodide's WebAssembly without the modules of Python that nothing here imports.

91 modules written in C are linked into it: other people's file formats, character sets of old
machines, tests of Python itself. They are cut out with what only they call. Nothing is numbered
anew: the body of a function that nothing can reach becomes one that traps, data that nobody reads
becomes zeros, which cost a line next to nothing.

- A module is reached through the table of modules (`PyImport_Inittab`, pairs of a name's and a
  function's address), from which it is left out, and through addresses of its functions in data.
- Functions lie in the order in which files were linked, so each module's lie together, and so do
  their addresses in the table of addresses, given in the same order. An address is dropped where
  both agree that it is an unused module's; like functions were folded into one, so a function
  that has two addresses, or a name of its own, may be another module's and stays.
- From what is exported and the other addresses calls are followed.
- The East Asian character tables (`struct dbcs_index`) and the texts of help that begin with a
  signature are zeroed within their exact bounds, and only if nothing points into their middle.

What it cannot recognize raises OtherPyodide. A function cut wrongly traps when it is called;
tests compare thousands of answers with those of Python here.
"""

import re
import struct
from bisect import bisect_right
from collections import Counter

from build import unicode_names, wasm
from build.lean_pyodide import OtherPyodide
from build.wasm_memory import Memory

UNUSED = frozenset(
    re.findall(
        r"\w+",
        """
    _asyncio _blake2 _bz2 _codecs_cn _codecs_hk _codecs_iso2022 _codecs_jp _codecs_kr
    _codecs_tw _csv _ctypes _decimal _elementtree _heapq _hmac _locale _lsprof _lzma _md5
    _multibytecodec _opcode _pickle _posixsubprocess _queue _random _remote_debugging _sha1
    _sha2 _sha3 _socket _sqlite3 _statistics _sysconfig _testbuffer _testcapi _testclinic
    _testclinic_limited _testinternalcapi _testlimitedcapi _xxtestfuzz _zoneinfo _zstd array
    cmath fcntl mmap pyexpat select termios xxsubtype
    """,
    )
)
# Of one module; the libraries that modules stand on, as they lie, and how their names begin.
_ALSO = {"PyInit__testcapi_datetime": "_testcapi"}
_LIBRARIES = {
    "lzma": re.compile("lzma_"),
    "sqlite": re.compile("sqlite3"),
    "zstd": re.compile("ERR_|FSE_|HIST_|HUF_|POOL_|ZSTD|COVER_|ZDICT|divsufsort|divbwt"),
    "bzip2": re.compile("BZ2_"),
}
_FOLDED = {"zcalloc"}  # zlib's, which a like function of bzip2's stands for
_CHARACTER_SETS = 400_000  # bytes that they have at least
_OTHERS = "what follows on the modules"
_HELP = re.compile(rb"(?<=\0)[A-Za-z_][\w.]*\([^\0]*?\)\n--\n\n[^\0]*(?=\0)")


def without_unused(stock: bytes, lean: bytes) -> bytes:
    """`lean`, which is `stock` with fewer exports, without the unused modules.

    Raises OtherPyodide.
    """
    try:
        return _Cut(stock, lean).made()
    except (wasm.Unreadable, LookupError, struct.error) as error:
        raise OtherPyodide(
            f"build/unused_modules.py cannot read how its WebAssembly is laid out: {error}"
        ) from error


class _Cut:
    def __init__(self, stock: bytes, lean: bytes) -> None:
        self.parts = dict(wasm.sections(lean))
        self.names = dict[int, list[str]]()
        for name, kind, index, _ in wasm.exports(dict(wasm.sections(stock))[wasm.EXPORT]):
            if kind == wasm.FUNCTION:
                self.names.setdefault(index, []).append(name)
        self.first = sum(
            kind == wasm.FUNCTION for *_, kind in wasm.imports(self.parts[wasm.IMPORT])
        )
        self.bodies = wasm.bodies(self.parts[wasm.CODE])
        self.operands = [wasm.operands(body) for body in self.bodies]
        self.slots = _slots(self.parts[wasm.ELEMENT])
        self.memory = Memory(self.parts[wasm.DATA])

    def made(self) -> bytes:
        unused = self._leave_out()
        reached = self._reached(unused)
        bodies = self._bodies(reached)
        self._zero_character_sets(reached)
        self._zero_help()
        unicode_names.forget(self.memory, {n for _, numbers in self.operands for n in numbers})
        self.parts[wasm.CODE] = wasm.code(bodies)
        self.parts[wasm.DATA] = self.memory.section()
        return wasm.module(self.parts.items())

    def _leave_out(self) -> set[int]:
        """Close up the table of modules; return the addresses of the functions it leaves out."""
        table = self._modules()
        missing = UNUSED - {name for name, _ in table.values()}
        if missing:
            raise OtherPyodide(f"It has no module {min(missing)}: see build/unused_modules.py.")
        at, end = min(table), max(table) + 8
        kept = [self.memory.read(one, 8) for one, (name, _) in table.items() if name not in UNUSED]
        self.memory.write(at, b"".join(kept).ljust(end - at, b"\0"))
        return {slot for name, slot in table.values() if name in UNUSED}

    def _modules(self) -> dict[int, tuple[str, int]]:
        """The table of modules: name and address of the function, by where it stands."""
        places = [
            at
            for name in self.memory.find(b"\0_asyncio\0")
            for at in self.memory.pointing(name + 1)
        ]
        found = [at for at in places if (one := self._module(at)) and one[0] == "_asyncio"]
        if len(found) != 1:
            raise OtherPyodide("Its table of modules was not found: see build/unused_modules.py.")
        at = found[0]
        while self._module(at - 8):
            at -= 8
        table = dict[int, tuple[str, int]]()
        while one := self._module(at):
            table[at] = one
            at += 8
        return table

    def _module(self, at: int) -> tuple[str, int] | None:
        name, slot = self.memory.words(at, 2)
        text = self.memory.text(name)
        known = not slot or slot in self.slots  # some are made in another way, and have none
        return (text, slot) if known and re.fullmatch(r"[A-Za-z_]\w*", text) else None

    def _reached(self, unused: set[int]) -> set[int]:
        """Functions that can still be called."""
        roots = {
            index
            for _, kind, index, _ in wasm.exports(self.parts[wasm.EXPORT])
            if kind == wasm.FUNCTION
        }
        dropped = unused | self._dropped()
        roots |= {function for slot, function in self.slots.items() if slot not in dropped}
        reached, waiting = set[int](), list(roots)
        while waiting:
            function = waiting.pop()
            if function in reached or function < self.first:
                continue
            reached.add(function)
            waiting += self.operands[function - self.first][0]
        return reached

    def _dropped(self) -> set[int]:
        """Addresses that order and place alike tell to be an unused module's."""
        stretches = self._stretches()
        starts = [start for start, _ in stretches]
        numbers = {
            slot: bisect_right(starts, function) - 1 for slot, function in self.slots.items()
        }
        in_order = _longest_rising([(slot, number) for slot, number in sorted(numbers.items())])
        unused, slots = set[int](), Counter(self.slots.values())
        for slot in in_order:
            function = self.slots[slot]
            module = stretches[numbers[slot]][1] if numbers[slot] >= 0 else ""
            if self._is_of(module, self.names.get(function, [])):
                unused.add(slot)
        here = Counter(self.slots[slot] for slot in unused)
        return {slot for slot in unused if here[self.slots[slot]] == slots[self.slots[slot]]}

    def _is_of(self, module: str, names: list[str]) -> bool:
        if module in _LIBRARIES:
            return all(_LIBRARIES[module].match(name) for name in names)
        return module in UNUSED and not names

    def _stretches(self) -> list[tuple[int, str]]:
        """Where each module's functions begin, in their order, and each library's."""
        begin = {
            index: _ALSO.get(name, name.removeprefix("PyInit_"))
            for index, names in self.names.items()
            for name in names
            if name.startswith("PyInit_")
        }
        named = sorted(self.names)
        for library, ours in _LIBRARIES.items():
            own = [at for at, one in enumerate(named) if all(map(ours.match, self.names[one]))]
            between = named[own[0] : own[-1]]
            if any(
                not any(map(ours.match, self.names[one])) and not _FOLDED & {*self.names[one]}
                for one in between
            ):
                raise OtherPyodide(f"Functions of {library} do not lie together.")
            begin[named[own[0]]] = library
            end = named[own[-1] + 1]
        begin[end] = _OTHERS
        return sorted(begin.items())

    def _bodies(self, reached: set[int]) -> list[bytes]:
        return [
            body if number in reached else wasm.NOTHING
            for number, body in enumerate(self.bodies, self.first)
        ]

    def _zero_character_sets(self, reached: set[int]) -> None:
        """Each is an index of 256 `{map, bottom, top}`, whose address only unused code has."""
        used, unused = set[int](), set[int]()
        for function, (_, numbers) in enumerate(self.operands, self.first):
            (used if function in reached else unused).update(numbers)
        if sum(map(self._zero_index, unused - used)) < _CHARACTER_SETS:
            raise OtherPyodide("Its character sets were not found: see build/unused_modules.py.")

    def _zero_index(self, index: int) -> int:
        """Zero what an index of 256 leads to; return the bytes, 0 where it is no such index."""
        extents = list[tuple[int, int]]()
        if not 0 < index <= self.memory.size - 8 * 256 or index % 4:
            return 0
        for at in range(index, index + 8 * 256, 8):
            start, ends = self.memory.words(at, 2)
            bottom, top = ends & 0xFF, ends >> 8
            if not start and not ends:
                continue
            # They lie one after the other in one table.
            behind = sum(extents[-1]) if extents else start
            if not start or start != behind or not bottom <= top <= 0xFF:
                return 0
            extents.append((start, 2 * (top - bottom + 1)))
        if len(extents) < 2 or sum(extents[-1]) > self.memory.size:
            return 0
        length = sum(extents[-1]) - extents[0][0]
        self.memory.write(extents[0][0], bytes(length))
        return length

    def _zero_help(self) -> None:
        """Texts that help(...) shows, a signature first; those that something points into stay."""
        pointed = sorted(
            {*self.memory.all_words(), *(n for _, numbers in self.operands for n in numbers)}
        )
        for found in list(_HELP.finditer(self.memory.image)):
            start, end = found.span()
            if bisect_right(pointed, start) == bisect_right(pointed, end):
                self.memory.write(start, bytes(end - start))


def _slots(content: bytes) -> dict[int, int]:
    """Functions by their addresses, of an element section."""
    count, at = wasm.number(content, 0)
    first, at = wasm.placed(content, at)
    if count != 1:
        raise OtherPyodide("Its functions have their addresses in more than one table.")
    count, at = wasm.number(content, at)
    slots = {}
    for slot in range(first, first + count):
        slots[slot], at = wasm.number(content, at)
    return slots


def _longest_rising(pairs: list[tuple[int, int]]) -> list[int]:
    """Of (key, number) the keys of a longest run, gaps allowed, whose numbers never fall."""
    ends, last, before = list[int](), list[int](), list[int]()
    for place, (_, number) in enumerate(pairs):
        at = bisect_right(ends, number)
        before.append(last[at - 1] if at else -1)
        ends[at : at + 1] = [number]
        last[at : at + 1] = [place]
    keys, place = list[int](), last[-1] if last else -1
    while place >= 0:
        keys.append(pairs[place][0])
        place = before[place]
    return keys
