"""Draw the usual sock for the page, which shows it where no counts are told: the marks of the book.

    python3 build/usual_sock.py

Writes webapp/drawings/usual_sock.js, the drawing of the sock that stands there before anything is
told (`engine.sock.pencil`) as the engine gives it to the counter.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from engine.drawing import progress
from engine.sock import pencil

WRITTEN = Path(__file__).resolve().parents[1] / "webapp" / "drawings" / "usual_sock.js"


def script() -> str:
    """Return the script."""
    sock, _ = pencil.make({})
    drawing = progress.write(sock, scrap=False)
    cloth = ",\n    ".join(json.dumps(piece) for piece in drawing["cloth"])
    return (
        "/** The usual sock, drawn by build/usual_sock.py. */\n"
        "// biome-ignore-all format: a row is a piece of cloth\n"
        '/** @type {import("../page/answers").Drawing} */\n'
        f"export const USUAL = {{\n  box: {json.dumps(drawing['box'])},\n"
        f"  cloth: [\n    {cloth},\n  ],\n}};\n"
    )


def main(arguments: list[str]) -> int:
    """Write the file."""
    argparse.ArgumentParser(description=__doc__).parse_args(arguments)
    WRITTEN.write_text(script(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
