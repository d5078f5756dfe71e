"""The reference checker of EPUB, for the books that the page saves: the machine's, else Debian's.

It is the W3C's own and runs in Java, which comes with it. Where it cannot be had it is left out,
and whoever runs the checks is told so. `python3 build/epub_checker.py` gets it.
"""

from __future__ import annotations

import argparse
import shutil
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import debian, install

NAME = "EPUB's reference checker"
PACKAGE = "epubcheck"
JAR = Path("/usr/share/java/epubcheck.jar")


def find() -> tuple[str | Path, ...] | None:
    """The command that runs it, None where it is not here."""
    java = shutil.which("java")
    # The quick compiler alone: a run is over before the thorough one has paid for itself.
    return (java, "-XX:TieredStopAtLevel=1", "-jar", JAR) if java and JAR.is_file() else None


def absent() -> list[str]:
    """Its name, if it is not here."""
    return [] if find() else [NAME]


def main() -> int:
    """Gets it where it is not here; says nothing where it cannot be had."""
    argparse.ArgumentParser(prog="python3 build/epub_checker.py", description=__doc__).parse_args()
    with install.plainly():
        find() or debian.brought(PACKAGE)
    return 0


if __name__ == "__main__":
    sys.exit(main())
