"""What the phone's Python gets: the standard library, and the engine with what it stands on.

Both leave here as zip files of compiled modules (see ``compile_archive.py``).
"""

import importlib.metadata
import re
import zipfile
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from build.compile_archive import archive
from build.inside_pyodide import made

# pint, what pint imports under Pyodide's Python, and segno, as installed (pinned by hash) here.
LIBRARIES = ("pint", "flexcache", "flexparser", "platformdirs", "segno")
# Of segno the encoder alone: its package file imports writers of a dozen kinds of picture, and with
# them XML and gzip. A blank one stands in its place.
ENCODER = ("encoder.py", "consts.py")
BLANK = "segno/__init__.py"
# platformdirs for other systems than the phone's Python takes itself for, and its tools.
OTHERS = "windows|macos|android|_android|ios|testing|pytest_plugin|__main__"
SCRIPT = "pint_convert.py"  # a program for a terminal
LICENCES = ("LICENSE", "LICENCE", "COPYING", "AUTHORS", "METADATA")
# Standard modules that nothing here uses: other people's file formats, servers, debuggers,
# character sets of old machines (but cp437, that of zip files), and twins of what Pyodide has in C.
# tests/build/test_engine_archive.py watches over it.
UNUSED = re.compile(
    r"""
    (__phello__|_pyrepl|ctypes|curses|ensurepip|html|http|idlelib|multiprocessing|pydoc_data|sqlite3
    |tkinter|tomllib|turtledemo|unittest|venv|wsgiref|xml|xmlrpc)/
    |(_pydatetime|_pyio|antigravity|bdb|cProfile|cmd|colorsys|compileall|configparser|doctest
    |fileinput|ftplib|imaplib|mailbox|mimetypes|modulefinder|netrc|nturl2path|optparse|pdb
    |pickletools|plistlib|poplib|profile|pstats|pty|pyclbr|pydoc|rlcompleter|shelve|smtplib
    |socketserver|symtable|tabnanny|tarfile|this|timeit|trace|turtle|uuid|wave|webbrowser|zipapp)\.py
    |asyncio/(__main__|proactor_events|tools|windows_events|windows_utils)
    |(concurrent/interpreters|email/mime|logging/(config|handlers)|pyodide/console)
    |(difflib|filecmp|getopt|graphlib|robotparser|sched|statistics|tracemalloc)\.py
    |urllib/(error|request|response|robotparser)
    |(_ast_unparse|_markupbase|_py_abc|_strptime|_sysconfigdata\w+|_threading_local|argparse|calendar
    |code|getpass|gettext|gzip|pkgutil|py_compile|queue|runpy|secrets|shlex|sre_\w+|stringprep|tty)\.py
    |(json/tool|email/(_header_value_parser|contentmanager|generator|headerregistry|policy))\.py
    |(sysconfig|zoneinfo)/|concurrent/futures/(interpreter|process|thread)
    |importlib/(metadata/diagnose|readers|resources/(_adapters|_itertools|readers|simple)|simple)
    |pyodide/(_nodesock_transport|http)
    |encodings/(idna|punycode|utf_16|utf_32|utf_7|mbcs|oem|palmos|ptcp|quopri|rot_13|tis_620|uu_codec
    |_win_cp|base64|bz2|hex|zlib)
    |encodings/(?!cp437)(cp|iso|mac_|koi|big5|euc|gb|hp|hz|johab|kz|shift)
    |.*/$
    """,
    re.VERBOSE,
)


def engine_sources(root: Path) -> bytes:
    """An archive of the folder `root`/engine and its libraries, with their licences."""
    members = {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in (root / "engine").rglob("*.py")
        # Neither the terminal's door, nor types that nothing asks for while it runs.
        if path.stem not in ("__main__", "contract")
    }
    for library in LIBRARIES:
        for file in importlib.metadata.files(library) or ():
            if _wanted(PurePosixPath(file)):
                members[file.as_posix()] = Path(str(file.locate())).read_bytes()
    members[BLANK] = b""
    return archive(members)


def _wanted(file: PurePosixPath) -> bool:
    if "testsuite" in file.parts or ".." in file.parts:
        return False
    if (file.parts[0] == "platformdirs" and re.fullmatch(OTHERS, file.stem)) or file.name == SCRIPT:
        return False
    if file.parts[0] == "segno" and file.name not in ENCODER:
        return False
    is_licence = ".dist-info" in file.parts[0] and file.name.startswith(LICENCES)
    return file.suffix == ".py" or is_licence


def standard_library(pyodide: Path) -> bytes:
    """An archive of Pyodide's own standard library without the parts that nothing here uses."""
    with zipfile.ZipFile(pyodide / "python_stdlib.zip") as given:
        return archive(
            {name: given.read(name) for name in given.namelist() if not UNUSED.match(name)}
        )


def compiled(sources: bytes, node: str, build: Path, kept: Path) -> bytes:
    """`sources` with every module compiled by Pyodide under node; see `inside_pyodide.made`."""
    recipe = ("compile_archive.mjs", "compile_archive.py")
    return made(recipe, {"sources.zip": sources}, node, build, kept)


def snapshot(
    pyodide: Mapping[str, bytes], engine: bytes, node: str, build: Path, kept: Path
) -> bytes:
    """Python's memory with the compiled archives imported and warm: its library, which is among the
    files of `pyodide` (content by name), and `engine`."""
    recipe = ("memory_snapshot.mjs", "warm_up.py")
    names = ("python_stdlib.zip", "pyodide.asm.mjs", "pyodide.asm.wasm")
    inputs = {name: pyodide[name] for name in names} | {"engine.zip": engine}
    return made(recipe, inputs, node, build, kept)
