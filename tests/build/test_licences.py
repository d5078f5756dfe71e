"""All that is shipped and not ours is named with its licence, in full where its package has it."""

import json
import re
from pathlib import Path

import pytest

from build import licences, linked, site
from build.engine_archive import LIBRARIES

SHIPPED = [*licences.of_engine(), *licences.of_page(site.BUILD)]


# Licences that ask nothing of a copy without sources (see build/linked.py).
ASK_NOTHING = {
    "0BSD",
    "Apache-2.0 WITH LLVM-exception",
    "CC0-1.0",
    "Zlib",
    "blessing",
    "bzip2-1.0.6",
}


@pytest.mark.parametrize("one", SHIPPED, ids=lambda one: one.name)
def test_each_has_a_licence(one: licences.Shipped) -> None:
    """Pyodide's package has no text, and MPL 2.0 asks that one be told where the source is."""
    assert one.licence.strip()
    if one.name == "pyodide":
        assert one.text.startswith("Its source: https://")
    elif one.licence in ASK_NOTHING:
        assert one.text == linked.NOTHING_ASKED
    else:
        assert len(one.text) > 500
        assert "copyright" in one.text.lower()


@pytest.mark.parametrize("one", linked.LINKED, ids=lambda one: one.name)
def test_what_is_said_to_be_linked_is_in_the_file(one: linked.Linked) -> None:
    assert one.mark in (site.PYODIDE / one.file).read_bytes()


# Modules of Python's in C that hold nothing but Python's own (PSF-2.0).
OWN = set(
    re.findall(
        r"\w+",
        """
        _abc _ast _bisect _codecs _codecs_cn _codecs_hk _codecs_iso2022 _codecs_jp _codecs_kr
        _codecs_tw
        _collections _contextvars _csv _datetime _functools _heapq _imp _io _json _locale _lsprof
        _multibytecodec _opcode _operator _pickle _posixsubprocess _pyodide_core _queue
        _remote_debugging _signal _socket _stat _statistics _string _struct _suggestions _symtable
        _sysconfig _testbuffer _testcapi _testcapi_datetime _testclinic _testclinic_limited
        _testinternalcapi _testlimitedcapi _thread _tokenize _tracemalloc _types _typing _weakref
        _xxtestfuzz _zoneinfo array atexit cmath errno faulthandler fcntl gc itertools math mmap
        posix select termios time xxsubtype
        """,
    )
)


def test_every_module_linked_is_pythons_own_or_told() -> None:
    """Each module in C has a function PyInit_NAME (Python's documentation, Extending)."""
    found = re.findall(rb"PyInit_(\w+)", (site.PYODIDE / "pyodide.asm.wasm").read_bytes())
    told = {name for one in linked.LINKED for name in one.modules}
    assert not OWN & told
    assert {name.decode() for name in found} == OWN | told


def test_another_pyodide_is_not_built_unlooked_at(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(linked, "PYODIDE", "314.0.6")
    with pytest.raises(site.SiteError, match=r"look anew what is linked .* build/linked.py"):
        site.pyodide()


def test_every_notice_is_used() -> None:
    used = {f"{name}.txt" for one in linked.LINKED for name in one.terms}
    assert {path.name for path in linked.NOTICES.iterdir()} == used


def test_what_is_bundled_and_what_the_engine_imports_are_among_them() -> None:
    """What only builds is not; a package that comes in by another is."""
    names = {one.name for one in SHIPPED}
    wanted = json.loads((site.BUILD / "package.json").read_text())["dependencies"]
    assert {*LIBRARIES, "CPython", "workbox-core"} | set(wanted) - {"esbuild"} <= names
    assert not names & {"esbuild", "ws"}


def test_the_site_carries_the_text_and_the_page_leads_there(dist: Path) -> None:
    text = (dist / "licences.txt").read_text(encoding="utf-8")
    for one in SHIPPED:
        assert f"{one.name} {one.version}".strip() + f": {one.licence}" in text
        assert one.text.strip() in text
    (settings,) = (dist / "assets").glob("behind-*.js")  # a page of it opens from the steps
    assert 'href="licences.txt"' in settings.read_text(encoding="utf-8").replace("\\", "")
    assert "licences.txt" in (dist / "sw.js").read_text(encoding="utf-8"), "without a network too"


def test_nothing_is_shipped_without_its_licence(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    made = site.Site(site.ROOT, tmp_path)
    made.words()
    made.markup()
    monkeypatch.setattr(made, "shipped", [one for one in SHIPPED if one.name != "idb"])
    with pytest.raises(site.SiteError, match=r"idb/.* without its licence"):
        made.scripts_and_style()
