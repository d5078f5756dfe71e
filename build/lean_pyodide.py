"""Pyodide without the 8,300 exports that nothing here asks for.

Its WebAssembly offers nearly every C function of Python and its libraries to extension modules that
may be loaded later, and at each start its glue enters all of them in tables: half of the time that
it takes. No extension module is ever loaded here. So the export section of the WebAssembly is
written anew with what somebody names, and the glue without the lines that fetch the others; nothing
else of either is touched, and all functions stay. `unused_modules` then cuts out what nobody calls.
"""

import re
from collections.abc import Callable

from build import wasm

ADDRESSES = ("GOT.func", "GOT.mem")  # imports that the glue fills with what is exported
BEGIN, END = "function assignWasmExports(wasmExports){", "}var wasmImports="
FETCHED = re.compile(r'(?:[\w$]+=|Module\["[\w$]+"\]=)+wasmExports\["([\w$]+)"\](?:\.value>>>0)?')
WORD = re.compile(r"[\w$]+")


class OtherPyodide(Exception):
    """This Pyodide is not laid out as the one that this file was written for."""


def lean(stock: bytes, glue: str, callers: str) -> tuple[bytes, str]:
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
    asked |= _addresses(stock)
    content, left = _without(stock, lambda name: name in asked or f"_{name}" in asked)

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
    return content, "".join(parts)


def _addresses(content: bytes) -> set[str]:
    """Names of imports that are addresses of what the same module exports."""
    found = wasm.imports(dict(wasm.sections(content))[wasm.IMPORT])
    return {name for module, name, _ in found if module in ADDRESSES}


def _without(content: bytes, wanted: Callable[[str], bool]) -> tuple[bytes, set[str]]:
    """The module with those exports alone that are wanted or no function and no global."""
    parts = dict(wasm.sections(content))
    kept = {
        name: export
        for name, kind, _, export in wasm.exports(parts[wasm.EXPORT])
        if kind not in (wasm.FUNCTION, wasm.GLOBAL) or wanted(name)
    }
    parts[wasm.EXPORT] = wasm.written(len(kept)) + b"".join(kept.values())
    return wasm.module(parts.items()), set(kept)
