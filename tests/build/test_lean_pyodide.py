"""Pyodide with fewer exports: node's own reading of the WebAssembly is the judge."""

import json
import re
import subprocess
from pathlib import Path

import pytest

from build import site
from build.lean_pyodide import OtherPyodide, lean

WASM, GLUE = "pyodide.asm.wasm", "pyodide.asm.mjs"
SECTIONS = """
import fs from "node:fs";
const module = new WebAssembly.Module(fs.readFileSync(process.argv[1]));
console.log(JSON.stringify({
    exports: WebAssembly.Module.exports(module),
    imports: WebAssembly.Module.imports(module),
}));
"""


def read(wasm: bytes, folder: Path) -> dict[str, list[dict[str, str]]]:
    """Exports and imports as node finds them in a module that it takes for valid."""
    path = folder / WASM
    path.write_bytes(wasm)
    done = subprocess.run(
        [site.find_node(), "--input-type=module", "-e", SECTIONS, path],
        check=True,
        capture_output=True,
        text=True,
    )
    found: dict[str, list[dict[str, str]]] = json.loads(done.stdout)
    return found


def test_what_is_left_is_what_the_glue_fetches(tmp_path: Path) -> None:
    whole = read((site.PYODIDE / WASM).read_bytes(), tmp_path)
    files = site.pyodide()
    small = read(files[WASM], tmp_path)
    assert small["imports"] == whole["imports"]
    left = [one["name"] for one in small["exports"]]
    assert len(left) < len(whole["exports"]) / 20
    assert small["exports"] == [one for one in whole["exports"] if one["name"] in left]
    fetched = re.findall(r'wasmExports\["([\w$]+)"\]', files[GLUE].decode())
    assert set(fetched) <= set(left)
    assert len(fetched) > 200
    kinds = {one["name"]: one["kind"] for one in whole["exports"]}
    # Those that name no function and no address are there for the glue itself.
    assert {name for name, kind in kinds.items() if kind not in ("function", "global")} <= set(left)


def test_nothing_that_the_glue_uses_has_lost_its_variable() -> None:
    """A name that stands in the glue outside its own lines is still given a value there."""
    before = (site.PYODIDE / GLUE).read_text()
    after = site.pyodide()[GLUE].decode()
    given = r'(?<=[;{])([\w$]+)=Module\["[\w$]+"\]=wasmExports'
    gone = set(re.findall(given, before)) - set(re.findall(given, after))
    assert len(gone) > 4000
    rest = re.sub(r'wasmExports\["[\w$]+"\]', "", after)
    assert not gone & set(re.findall(r"[\w$]+", rest))


def test_another_layout_is_refused() -> None:
    wasm, glue = (site.PYODIDE / WASM).read_bytes(), (site.PYODIDE / GLUE).read_text()
    for other in (
        glue.replace("function assignWasmExports(", "function fetchExports("),
        glue.replace('=wasmExports["malloc"];', '=wasmExports["malloc"]??null;'),
        glue.replace("var _set_method_docstring,", "let _set_method_docstring,"),
        "",
    ):
        with pytest.raises(OtherPyodide, match="cannot read"):
            lean(wasm, other, "")


def test_what_a_caller_names_stays() -> None:
    wasm, glue = (site.PYODIDE / WASM).read_bytes(), (site.PYODIDE / GLUE).read_text()
    with_it = lean(wasm, glue, "module._PyObject_GetAttrString(object, name)")
    without = lean(wasm, glue, "")
    export = b"\x16PyObject_GetAttrString\x00"  # its length, its name, a function
    assert [export in one[0] for one in (with_it, without)] == [True, False]
    fetch = '_PyObject_GetAttrString=Module["_PyObject_GetAttrString"]='
    assert [fetch in one[1] for one in (with_it, without)] == [True, False]
