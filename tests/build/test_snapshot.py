"""The memory that phones start from: the same bytes every time, and nothing missing in it."""

import json
import re
import struct
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from build import engine_archive, site

ROOT = Path(__file__).resolve().parents[2]
PAGE = 4096  # as build/memory_snapshot.mjs has it


def inputs(root: Path = ROOT) -> tuple[bytes, bytes]:
    """The compiled archives of library and engine."""
    node, kept = site.find_node(), ROOT / ".tools" / "compiled"
    library = engine_archive.standard_library(site.PYODIDE)
    return (
        engine_archive.compiled(library, node, ROOT / "build", kept),
        engine_archive.compiled(engine_archive.engine_sources(root), node, ROOT / "build", kept),
    )


def made(kept: Path, engine: bytes | None = None) -> bytes:
    library, usual = inputs()
    pyodide = site.pyodide() | {"python_stdlib.zip": library}
    return engine_archive.snapshot(pyodide, engine or usual, site.find_node(), ROOT / "build", kept)


def facts(snapshot: bytes) -> tuple[dict[str, Any], bytes]:
    (length,) = struct.unpack_from("<I", snapshot)
    return json.loads(snapshot[4 : 4 + length]), snapshot[4 + length :]


@pytest.mark.slow
def test_two_are_alike_and_tell_nothing_of_where_they_were_made(tmp_path: Path) -> None:
    """With nothing kept from before, so that Pyodide really runs twice."""
    first, second = made(tmp_path / "first"), made(tmp_path / "second")
    assert first == second
    for trace in (str(ROOT), str(tmp_path), "warm_up("):
        assert trace.encode() not in first
    # Memory given back had "/root_units" in it, which tells of no home.
    assert not re.search(re.escape(str(Path.home())).encode() + rb"(?!\w)", first)


def test_layout_is_whole() -> None:
    about, pages = facts(made(ROOT / ".tools" / "compiled"))
    assert about["size"] % 65536 == 0  # whole pages of WebAssembly
    ends = [bound for run in about["runs"] for bound in run]
    assert ends == sorted(ends)
    assert ends[-1] <= about["size"]
    assert not any(bound % PAGE for bound in ends)
    assert sum(end - start for start, end in about["runs"]) == len(pages)
    # Half of the memory was never touched or is as WebAssembly lays it out: it is left out.
    assert len(pages) < about["size"] / 2


@pytest.mark.slow
def test_engine_that_leaves_a_file_open_is_refused(tmp_path: Path) -> None:
    """It could not be read on the phone: files are not part of the memory."""
    (tmp_path / "root").mkdir()
    subprocess.run(["cp", "-r", ROOT / "engine", tmp_path / "root"], check=True)
    with (tmp_path / "root" / "engine" / "api.py").open("a") as api:
        api.write('\n_LEFT = open("/engine.zip", "rb")\n')
    with pytest.raises(subprocess.CalledProcessError) as failure:
        made(tmp_path, inputs(tmp_path / "root")[1])
    assert "still open: " in failure.value.stderr
    assert "/engine.zip" in failure.value.stderr


def test_calls_after_the_warm_up_import_nothing_more() -> None:
    """What was not imported by then is not on the phone (natively, by another Python)."""
    code = """
import json, sys
from build import warm_up
from tests.asking import answer_text
from tests.browser.test_same_answers import calls
texts = calls()
for call in warm_up.calls():
    answer_text(json.dumps(call))
before = set(sys.modules)
for text in texts:
    answer_text(text)
print(sorted(set(sys.modules) - before))
"""
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, check=True, capture_output=True, text=True
    )
    assert done.stdout.strip() == "[]"
