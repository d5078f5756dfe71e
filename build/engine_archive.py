"""What the phone's Python gets: the standard library, and the engine with what it stands on.

Both leave here as zip files of compiled modules (see ``compile_archive.py``).
"""

import importlib.metadata
import re
import zipfile
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from build import unit_table
from build.compile_archive import archive
from build.inside_pyodide import made

# As installed (pinned by hash) here.
LIBRARIES = ("segno",)
# Of segno the encoder alone: its package file imports writers of a dozen kinds of picture, and with
# them XML and gzip. A blank one stands in its place.
ENCODER = ("encoder.py", "consts.py")
BLANK = "segno/__init__.py"
# Small modules that stand for larger ones, of which Pyodide's start and the engine ask little.
PHONE = Path(__file__).resolve().parent / "phone"
LICENCES = ("LICENSE", "LICENCE", "COPYING", "AUTHORS", "METADATA")
# Standard modules that nothing here uses: other people's file formats, servers, debuggers, tasks,
# character sets of old machines (but cp437, that of zip files), and twins of what Pyodide has in C.
# tests/build/test_engine_archive.py watches over it.
UNUSED = re.compile(
    r"""
    (__phello__|_pyrepl|asyncio|compression|concurrent|ctypes|curses|email|ensurepip|html|http|idlelib
    |logging|multiprocessing|pathlib|pydoc_data|site-packages|sqlite3|string|sysconfig|tkinter|tomllib
    |turtledemo|unittest|urllib|venv|wsgiref|xml|xmlrpc|zipfile|zoneinfo)/
    |importlib/(metadata/|readers|resources/|simple)
    |json/(tool|__main__)
    |pyodide/(_core|_nodesock_transport|_run_js|common|console|ffi/wrappers|http|webloop)
    |(__hello__|_ast_unparse|_colorize|_compat_pickle|_markupbase|_opcode_metadata|_py_abc
    |_pydatetime|_pyio|_ssl|_strptime|_sysconfigdata[\w-]+|_threading_local|antigravity|argparse|bdb
    |bz2|cProfile|calendar|cmd|code|codeop|colorsys|compileall|configparser|csv|decimal|difflib|dis
    |doctest|filecmp|fileinput|fnmatch|fractions|ftplib|getopt|getpass|gettext|glob|graphlib|gzip
    |hashlib|heapq|hmac|imaplib|inspect|ipaddress|linecache|locale|lzma|mailbox|mimetypes
    |modulefinder|netrc|ntpath|nturl2path|numbers|opcode|optparse|pdb|pickle|pickletools|pkgutil
    |platform|plistlib|poplib|pprint|profile|pstats|pty|py_compile|pyclbr|pydoc|queue|quopri|random
    |rlcompleter|runpy|sched|secrets|selectors|shelve|shlex|shutil|signal|smtplib|socket
    |socketserver|sre_\w+|ssl|statistics|stringprep|subprocess|symtable|tabnanny|tarfile|tempfile
    |textwrap|this|threading|timeit|token|tokenize|trace|traceback|tracemalloc|tty|turtle|uuid|wave
    |webbrowser|zipapp)\.py
    |encodings/(idna|punycode|utf_16|utf_32|utf_7|mbcs|oem|palmos|ptcp|quopri|rot_13|tis_620|uu_codec
    |_win_cp|base64|bz2|hex|undefined|zlib)
    |encodings/(?!cp437)(cp|iso|mac_|koi|big5|euc|gb|hp|hz|johab|kz|shift)
    |.*/$
    """,
    re.VERBOSE,
)

# These lie in the WebAssembly (CPython's Python/frozen.c), and are never looked for elsewhere.
FROZEN = {
    *("_collections_abc", "_sitebuiltins", "abc", "codecs", "genericpath", "importlib._bootstrap"),
    *("importlib._bootstrap_external", "importlib.machinery", "importlib.util", "io", "os"),
    *("posixpath", "site", "stat", "zipimport"),
}


def engine_sources(root: Path) -> bytes:
    """An archive of the folder `root`/engine and its libraries, with their licences."""
    members = {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in (root / "engine").rglob("*.py")
        # Neither what the terminal alone needs, nor types that nothing asks for while it runs.
        if path.stem not in ("__main__", "aloud", "grammar", "printed")
        and path.parent.name not in ("contract", "spoken")
    }
    for library in LIBRARIES:
        for file in importlib.metadata.files(library) or ():
            if _wanted(PurePosixPath(file)):
                members[file.as_posix()] = Path(str(file.locate())).read_bytes()
    members[BLANK] = b""
    members |= unit_table.modules()
    return archive(members)


def _wanted(file: PurePosixPath) -> bool:
    if "testsuite" in file.parts or ".." in file.parts:
        return False
    if file.parts[0] == "segno" and file.name not in ENCODER:
        return False
    is_licence = ".dist-info" in file.parts[0] and file.name.startswith(LICENCES)
    return file.suffix == ".py" or is_licence


def standard_library(pyodide: Path) -> bytes:
    """An archive of Pyodide's own standard library without what nothing here uses or is frozen."""
    frozen = {f"{name.replace('.', '/')}.py" for name in FROZEN}
    with zipfile.ZipFile(pyodide / "python_stdlib.zip") as given:
        names = [one for one in given.namelist() if one not in frozen and not UNUSED.match(one)]
        kept = {name: given.read(name) for name in names}
    ours = {path.relative_to(PHONE).as_posix(): path.read_bytes() for path in PHONE.rglob("*.py")}
    return archive(kept | ours)


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
