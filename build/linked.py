"""What is linked into Pyodide's WebAssembly and its glue, and what each licence asks to be said.

Its package holds neither a list nor a text of them. This one was made for the one version named
here: from its build's libraries, from the modules of Python it holds, and from what can be read in
the file itself (each `mark`; tests/build/test_licences.py looks for them). With another version the
site is not built until somebody has looked anew.

The texts lie in build/notices, as far as a licence asks that a copy without sources carries them.
Those of zlib, bzip2, XZ Utils, SQLite and LLVM's run-time libraries (by its exception for compiled
code) do not; dlmalloc is in the public domain.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

PYODIDE = "314.0.7"
NOTICES = Path(__file__).resolve().parent / "notices"
NOTHING_ASKED = "Its licence does not ask that a copy without sources carries its text."


@dataclass(frozen=True)
class Linked:
    """One piece: its licence's name, a mark by which it is known, what is to be said of it."""

    name: str
    licence: str
    mark: bytes
    notice: str = ""
    terms: tuple[str, ...] = ()
    version: str = ""
    modules: tuple[str, ...] = ()  # of Python's that bring it in
    file: str = "pyodide.asm.wasm"

    def text(self) -> str:
        """Its notice and the terms, or that nothing is asked."""
        terms = [(NOTICES / f"{name}.txt").read_text(encoding="utf-8") for name in self.terms]
        return "\n\n".join(part.strip() for part in (self.notice, *terms) if part) or NOTHING_ASKED


LINKED = (
    Linked(
        "CPython",
        "PSF-2.0",
        b"Copyright (c) 2001 Python Software Foundation.",
        terms=("CPython",),
        version="3.14.2",
    ),
    Linked(
        "Emscripten",
        "MIT",
        b"emscripten_",
        "Copyright (c) 2010-2014 Emscripten authors",
        ("MIT",),
    ),
    Linked(
        "musl",
        "MIT",
        b"__libc_malloc",
        "Copyright © 2005-2020 Rich Felker, et al.",
        ("MIT", "FreeBSDmath", "BSD-2-Clause"),
    ),
    Linked("LLVM's run-time libraries", "Apache-2.0 WITH LLVM-exception", b"__cxa_throw"),
    Linked("dlmalloc", "CC0-1.0", b"emscripten_builtin_malloc"),
    Linked(
        "libffi",
        "MIT",
        b"ffi_prep_cif",
        "libffi - Copyright (c) 1996-2025 Anthony Green, Red Hat, Inc and others.",
        ("MIT",),
        modules=("_ctypes",),
    ),
    Linked("zlib", "Zlib", b" inflate 1.3.1 ", version="1.3.1", modules=("zlib", "binascii")),
    Linked("bzip2", "bzip2-1.0.6", b"bzip2/libbzip2", modules=("_bz2",)),
    Linked("XZ Utils (liblzma)", "0BSD", b"lzma_code", modules=("_lzma",)),
    Linked(
        "Zstandard",
        "BSD-3-Clause",
        b"ZSTD_btopt",
        "Copyright (c) Meta Platforms, Inc. and affiliates. All rights reserved.",
        ("BSD-3-Clause",),
        modules=("_zstd",),
    ),
    Linked("SQLite", "blessing", b"SQLite format 3", modules=("_sqlite3",)),
    Linked(
        "mimalloc",
        "MIT",
        b"mimalloc: error: ",
        "Copyright (c) 2018-2021 Microsoft Corporation, Daan Leijen",
        ("MIT",),
    ),
    Linked(
        "HACL*",
        "MIT",
        b"Modules/_hacl/Hacl_",
        "Copyright (c) 2016-2022 INRIA, CMU and Microsoft Corporation\n"
        "Copyright (c) 2022-2023 HACL* Contributors",
        ("MIT",),
        modules=("_blake2", "_hmac", "_md5", "_sha1", "_sha2", "_sha3"),
    ),
    Linked(
        "Expat",
        "MIT",
        b"expat_2.7.3",
        "Copyright (c) 1998-2000 Thai Open Source Software Center Ltd and Clark Cooper\n"
        "Copyright (c) 2001-2025 Expat maintainers",
        ("MIT",),
        "2.7.3",
        ("pyexpat", "_elementtree"),
    ),
    Linked(
        "libmpdec",
        "BSD-2-Clause",
        b"libmpdec/mpdecimal.c",
        "Copyright (c) 2008-2020 Stefan Krah. All rights reserved.",
        ("BSD-2-Clause",),
        modules=("_decimal",),
    ),
    Linked(
        "Mersenne Twister",
        "BSD-3-Clause",
        b"PyInit__random",
        terms=("MersenneTwister",),
        modules=("_random",),
    ),
    Linked("dtoa", "dtoa", b"PyOS_string_to_double", terms=("dtoa",)),
    Linked(
        "SipHash",
        "MIT",
        b"source_hash",
        "Copyright (c) 2013 Marek Majkowski",
        ("MIT",),
    ),
    Linked(
        "Regular expressions and text of Secret Labs",
        "HPND",
        b"PyInit__sre",
        terms=("SecretLabs",),
        modules=("_sre",),
    ),
    Linked(
        "Unicode's data",
        "Unicode-3.0",
        b"PyInit_unicodedata",
        terms=("Unicode-3.0",),
        modules=("unicodedata",),
    ),
    Linked(
        "uvloop (parts of asyncio)",
        "MIT",
        b"PyInit__asyncio",
        "Copyright (c) 2015-2021 MagicStack Inc. http://magic.io",
        ("MIT",),
        modules=("_asyncio",),
    ),
    Linked("Modules of Python's library", "HPND", b"PyInit__io", terms=("modules",)),
    Linked(
        "error-stack-parser, stackframe",
        "MIT",
        b"StackFrame$$fromString",
        "Copyright (c) 2017 Eric Wendelin and other contributors",
        ("MIT",),
        file="pyodide.mjs",
    ),
)
