"""Pyodide without the 8,300 exports that nothing here asks for.

Its WebAssembly offers nearly every C function of Python and its libraries to extension modules that
may be loaded later, and at each start its glue enters all of them in tables: half of the time that
it takes. No extension module is ever loaded here. So the export section of the WebAssembly is
written anew with what somebody names, and the glue without the lines that fetch the others; nothing
else of either is touched, and all functions stay.

The binary format is that of the WebAssembly Core Specification, 5.2.2 (LEB128) and 5.5 (modules).
"""

import re
from collections.abc import Callable, Iterator

IMPORT, EXPORT = 2, 7  # sections
FUNCTION, TABLE, MEMORY, GLOBAL, TAG = range(5)  # what is imported or exported
ADDRESSES = ("GOT.func", "GOT.mem")  # imports that the glue fills with what is exported
BEGIN, END = "function assignWasmExports(wasmExports){", "}var wasmImports="
FETCHED = re.compile(r'(?:[\w$]+=|Module\["[\w$]+"\]=)+wasmExports\["([\w$]+)"\](?:\.value>>>0)?')
WORD = re.compile(r"[\w$]+")


class OtherPyodide(Exception):
    """This Pyodide is not laid out as the one that this file was written for."""


def lean(wasm: bytes, glue: str, callers: str) -> tuple[bytes, str]:
    """Both without the exports that neither the glue nor `callers`, the text of other scripts,
    names. Raises OtherPyodide."""
    start, end = glue.find(BEGIN) + len(BEGIN), glue.find(END)
    lines = glue[start:end].split(";")
    names = [found[1] if (found := FETCHED.fullmatch(line)) else "" for line in lines]
    declared = glue.rfind(f"var {lines[0].split('=')[0]},", 0, start)
    if start < len(BEGIN) or end < start or "" in names or declared < 0:
        raise OtherPyodide(
            "Its glue fetches exports in a way that build/lean_pyodide.py cannot read."
        )
    stop = glue.index(";", declared)
    asked = {*WORD.findall(glue[:declared] + glue[stop:start] + glue[end:]), *WORD.findall(callers)}
    asked |= _addresses(wasm)
    wasm, left = _without(wasm, lambda name: name in asked or f"_{name}" in asked)

    kept = [line for line, name in zip(lines, names, strict=True) if name in left]
    gone = {line.split("=")[0] for line, name in zip(lines, names, strict=True) if name not in left}
    variables = [one for one in glue[declared + 4 : stop].split(",") if one not in gone]
    parts = (
        glue[:declared],
        "var ",
        ",".join(variables),
        glue[stop:start],
        ";".join(kept),
        glue[end:],
    )
    return wasm, "".join(parts)


def _addresses(wasm: bytes) -> set[str]:
    """Names of imports that are addresses of what the same module exports."""
    content = dict(_sections(wasm))[IMPORT]
    names = set()
    count, at = _number(content, 0)
    for _ in range(count):
        module, at = _name(content, at)
        name, at = _name(content, at)
        at = _past_type(content, at)
        if module in ADDRESSES:
            names.add(name)
    return names


def _past_type(content: bytes, at: int) -> int:
    """Behind the type of an import (5.5.5)."""
    kind, at = content[at], at + 1
    if kind == FUNCTION:
        return _number(content, at)[1]
    if kind == GLOBAL:
        return at + 2
    if kind == TAG:
        return _number(content, at + 1)[1]
    if kind == TABLE:
        at += 1
    with_most, at = content[at] & 1, _number(content, at + 1)[1]
    return _number(content, at)[1] if with_most else at


def _without(wasm: bytes, wanted: Callable[[str], bool]) -> tuple[bytes, set[str]]:
    """The module with those exports alone that are wanted or no function and no global."""
    made, left = [wasm[:8]], set()
    for number, content in _sections(wasm):
        if number == EXPORT:
            kept = []
            count, at = _number(content, 0)
            for _ in range(count):
                begun = at
                name, at = _name(content, at)
                kind = content[at]
                _, at = _number(content, at + 1)
                if kind not in (FUNCTION, GLOBAL) or wanted(name):
                    kept.append(content[begun:at])
                    left.add(name)
            content = _written(len(kept)) + b"".join(kept)
        made += [bytes([number]), _written(len(content)), content]
    return b"".join(made), left


def _sections(wasm: bytes) -> Iterator[tuple[int, bytes]]:
    """Number and content of each, in their order."""
    at = 8
    while at < len(wasm):
        number = wasm[at]
        length, at = _number(wasm, at + 1)
        yield number, wasm[at : at + length]
        at += length


def _name(content: bytes, at: int) -> tuple[str, int]:
    length, at = _number(content, at)
    return content[at : at + length].decode(), at + length


def _number(content: bytes, at: int) -> tuple[int, int]:
    """An unsigned LEB128 number, and where it ends."""
    value = shift = 0
    while True:
        byte = content[at]
        value |= (byte & 0x7F) << shift
        at, shift = at + 1, shift + 7
        if byte < 0x80:
            return value, at


def _written(value: int) -> bytes:
    """The number as unsigned LEB128."""
    out = bytearray()
    while value > 0x7F:
        out.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes([*out, value])
