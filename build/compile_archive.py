"""Turn an archive of Python sources into one of compiled modules.

This file runs inside Pyodide (``compile_archive.mjs`` starts it there), because a compiled module
only serves the Python that compiled it. Compiling is most of what a stock start of Pyodide spends
its time on, and a phone would do it again at every visit.

The compiled modules carry the hash of their source and are marked "unchecked" (PEP 552), so that
Python takes them as they are, and the archive depends on nothing but its input.
"""

import importlib.util
import io
import zipfile
from importlib import _bootstrap_external

# The oldest date a zip file can hold: one fixed date keeps two builds alike.
NO_DATE = (1980, 1, 1, 0, 0, 0)


def archive(members: dict[str, bytes]) -> bytes:
    """Bytes of a zip file holding `members` (name -> content), the same bytes every time.

    Not compressed: a host does that better, across members, and Python reads it sooner.
    """
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as out:
        for name in sorted(members):
            info = zipfile.ZipInfo(name, NO_DATE)
            info.external_attr = 0o644 << 16
            info.create_system = 3
            out.writestr(info, members[name])
    return buffer.getvalue()


def compiled(sources: bytes) -> bytes:
    """The archive `sources` with every NAME.py replaced by NAME.pyc; other files as they are."""
    members: dict[str, bytes] = {}
    with zipfile.ZipFile(io.BytesIO(sources)) as given:
        for name in given.namelist():
            if name.endswith("/"):
                continue
            content = given.read(name)
            if name.endswith(".py"):
                # Level 2: no docstrings, which nobody reads on a phone, and no assertions.
                code = compile(content, name, "exec", dont_inherit=True, optimize=2)
                content = bytes(
                    _bootstrap_external._code_to_hash_pyc(  # type: ignore[attr-defined]
                        code, importlib.util.source_hash(content), False
                    )
                )
                name += "c"
            members[name] = content
    return archive(members)


def compile_file(source: str, target: str) -> None:
    """Read the archive at `source`, write its compiled twin to `target`."""
    with open(source, "rb") as given:
        result = compiled(given.read())
    with open(target, "wb") as out:
        out.write(result)
