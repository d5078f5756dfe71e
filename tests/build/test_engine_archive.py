"""What was left out of the phone's standard library is nothing that its Python could want."""

import ast
import io
import json
import re
import subprocess
import zipfile
from pathlib import Path

import pytest

from build import engine_archive
from tests.build.in_pyodide import stock, told

ROOT = Path(__file__).resolve().parents[2]
PYODIDE = ROOT / "build" / "node_modules" / "pyodide"


def modules(names: list[str]) -> set[str]:
    """Dotted names of the modules among an archive's files."""
    return {
        name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        for name in names
        if name.endswith(".py")
    }


def imported(source: bytes) -> set[str]:
    """Every module that a source may import, at its start or ever."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and not node.level and node.module:
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


@pytest.fixture(scope="module")
def left_out() -> set[str]:
    """Modules that Pyodide's library has and ours has not, and its WebAssembly neither."""
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        given = modules(archive.namelist())
    with zipfile.ZipFile(io.BytesIO(engine_archive.standard_library(PYODIDE))) as archive:
        kept = modules(archive.namelist())
    assert kept < given
    return given - kept - engine_archive.FROZEN


def test_nothing_that_engine_or_pint_may_import_is_left_out(left_out: set[str]) -> None:
    """Also what a function imports only when it is called."""
    sources = zipfile.ZipFile(io.BytesIO(engine_archive.engine_sources(ROOT)))
    assert "engine/api.py" in sources.namelist()
    wanted = {
        (name, module)
        for name in sources.namelist()
        if name.endswith(".py")
        for module in imported(sources.read(name)) & left_out
    }
    assert not wanted


def test_of_segno_goes_the_encoder_with_its_licence() -> None:
    with zipfile.ZipFile(io.BytesIO(engine_archive.engine_sources(ROOT))) as archive:
        names = {name for name in archive.namelist() if name.startswith("segno")}
        assert archive.read("segno/__init__.py") == b""
    assert {name for name in names if name.endswith(".py")} == {
        *("segno/__init__.py", "segno/consts.py", "segno/encoder.py"),
    }
    assert any(name.endswith("/LICENSE") for name in names)


def test_nothing_that_those_modules_import_at_their_start_is_left_out(
    left_out: set[str],
) -> None:
    """The library's own imports at the top of each module, followed to the end."""
    library = zipfile.ZipFile(io.BytesIO(engine_archive.standard_library(PYODIDE)))
    names = {
        name.removesuffix(".py").removesuffix("/__init__").replace("/", "."): name
        for name in library.namelist()
        if name.endswith(".py")
    }
    sources = zipfile.ZipFile(io.BytesIO(engine_archive.engine_sources(ROOT)))
    waiting = {
        module
        for name in sources.namelist()
        if name.endswith(".py")
        for module in imported(sources.read(name))
    }
    seen: set[str] = set()
    while waiting:
        module = waiting.pop()
        assert module not in left_out
        if module in seen or module not in names:
            continue
        seen.add(module)
        # By its lines, not by ast: this library is of a newer Python than may run here.
        source = library.read(names[module]).decode()
        waiting |= set(re.findall(r"^(?:from|import) ([a-zA-Z_][\w.]*)", source, re.MULTILINE))
    assert "json" in seen


FROZEN = """
import json, sys
from importlib.machinery import FrozenImporter

def facts():
    there = sys.modules.items()
    return json.dumps([name for name, one in there if one.__loader__ is FrozenImporter])
"""


def test_what_is_left_out_as_frozen_is_never_read_from_the_library(tmp_path: Path) -> None:
    """Pyodide's own start, with its library as it comes, takes all of them from elsewhere."""
    frozen = set(json.loads(told(stock(), FROZEN, tmp_path / "stock")))
    assert frozen >= engine_archive.FROZEN


RAISES = """
def facts():
    try:
        [][3]
    except IndexError as error:
        raise ValueError("invented") from error
"""


def test_an_error_is_told_as_before(tmp_path: Path) -> None:
    """With where it went through, and what it was raised from."""
    ours = {**stock(), "python_stdlib.zip": engine_archive.standard_library(PYODIDE)}
    errors = []
    for name, files in (("stock", stock()), ("ours", ours)):
        with pytest.raises(subprocess.CalledProcessError) as caught:
            told(files, RAISES, tmp_path / name)
        text: str = caught.value.stderr
        errors.append(re.findall(r"  File.*told.*|\w+Error: .*", text))
    assert errors[0] == errors[1]
    assert any("IndexError" in line for line in errors[0])
    assert "ValueError: invented" in errors[0]
