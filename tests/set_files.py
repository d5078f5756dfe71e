"""The files of a set by the page's own writers, without a browser: of several kinds of sets."""

from __future__ import annotations

import json
import subprocess
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from build import install, site, words
from engine import api
from engine.say.aloud import aloud

# As the page names one: a letter, and a UUID without its lines (RFC 9562).
SET_ID = "s0f0f0f0f1e1e4d2d8c3c123456789abc"
GAUGE = {"stitches": "30 / 10 cm", "rounds": "38 / 10 cm", "yarn": "400 m / 100 g"}


class Kind(NamedTuple):
    """A set: what is asked of the engine, in which language, and which size alone (else all)."""

    request: dict[str, Any]
    wanted: dict[str, Any]
    language: str = "en"
    size: int | None = None


def _request(slots: int, units: str = "cm", **more: Any) -> dict[str, Any]:
    return {"units": units, "cylinder": {"slots": slots}, "fabric": GAUGE, **more}


KINDS = {
    "twelve sizes, in colors": Kind(
        _request(72, sock={"colors": {"heel": "B", "leg": "3 A, 1 C"}}),
        {
            "by": "EU",
            "sizes": "35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46",
            "details": {
                "title": 'Invented: Plain & <b>warm</b> "socks"',
                "maker": "Invented Ada & Bo",
                "version": "1.2",
                "date": "2026-11-28",
                "licence": "CC BY 4.0",
                "contact": "ada@example.org",
                "errata": "https://example.org/errata?a=1&b=<2>",
                "fibre": "80 % wool, 20 % nylon",
                "notes": "One.\nTwo <i>x</i> \u0001 and \ufffe.\n\U0001f9e6 ]]>",
            },
        },
    ),
    "British, with sizes that do not fit": Kind(
        _request(54, "in"),
        {"by": "UK", "sizes": "1, 4, 7, 13", "details": {"title": "Invented: grey"}},
        "en-GB",
    ),
    "for children, flap and gathered": Kind(
        _request(48, sock={"heel": {"kind": "flap"}, "toe": {"kind": "gathered"}}),
        {"by": "EU child", "sizes": "20, 24, 28", "details": {"date": "2026-02-31"}},
    ),
    "one length alone, a tube": Kind(
        _request(60, sock={"heel": {"kind": "none"}, "toe": {"kind": "left open"}}),
        {"by": "length", "sizes": "22 cm; 24 cm", "details": {}},
        size=1,
    ),
}


def written(kind: Kind, folder: Path) -> Path:
    """Write set.epub, set.html and set.txt of it; returns the folder."""
    call = {"do": "set", "request": kind.request, "set": kind.wanted}
    found = aloud(api.answer(call), kind.language)
    assert "errors" not in found, found
    document = found["document"]
    blocks = document["all_sizes"] if kind.size is None else document["one_size"][kind.size]
    told = {"id": SET_ID, "made": 0, "words": kind.wanted["details"], "plan": {}}
    facts = {"set": told, "title": found["title"], "language": kind.language}
    subprocess.run(
        [install.VENV / "bin" / "node", _script(kind.language), folder],
        input=json.dumps({"blocks": blocks, "facts": facts}),
        env=install.environment(),
        text=True,
        check=True,
    )
    return folder


@cache
def _script(language: str) -> Path:
    """The writers with the words of a language."""
    made = install.TOOLS / "set-files" / f"{language}.mjs"
    (program,) = site.MODULES.glob("@esbuild/*/bin/esbuild")
    options = ("--bundle", "--format=esm", "--platform=node", "--log-level=warning")
    subprocess.run(
        [
            program,
            Path(__file__).with_name("set_files.js"),
            *options,
            f"--outfile={made}",
            *words.aliases(install.ROOT, language),
        ],
        env={**install.environment(), "NODE_PATH": str(site.MODULES)},
        check=True,
    )
    return made
