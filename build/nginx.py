"""An nginx for the test of what build/headers.py prints: the machine's, else Debian's, unpacked.

It is taken out of Debian's package into a folder of our own and not installed: installed, it would
begin to serve. Where none can be had it is left out, and whoever runs the checks is told so.
`python3 build/nginx.py` gets one.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import debian, install

NAME = "nginx"
UNPACKED = install.TOOLS / NAME
PACKAGES = (NAME, "libnginx-mod-http-brotli-static")
BROTLI = "ngx_http_brotli_static_module.so"


def find() -> Path | None:
    """One that is there already and runs."""
    own = UNPACKED / "usr" / "sbin" / NAME
    return next(filter(runs, (Path("/usr/sbin", NAME), Path("/usr/local/sbin", NAME), own)), None)


def runs(program: Path) -> bool:
    """Whether it starts at all; its libraries may be missing."""
    try:
        return not subprocess.run((program, "-v"), capture_output=True, timeout=60).returncode
    except (OSError, subprocess.TimeoutExpired):
        return False


def brotli(program: Path) -> Path | None:
    """The module that sends files compressed by brotli beforehand, of this nginx."""
    folder = program.parents[2] / "usr" / "lib" / NAME / "modules"
    return folder / BROTLI if (folder / BROTLI).is_file() else None


def absent() -> list[str]:
    """Its name, if it is not here."""
    return [] if find() else [NAME]


def main() -> int:
    """Gets it where it is not here; says nothing where it cannot be had."""
    argparse.ArgumentParser(prog="python3 build/nginx.py", description=__doc__).parse_args()
    with install.plainly():
        find() or debian.unpacked(UNPACKED, *PACKAGES)
    return 0


if __name__ == "__main__":
    sys.exit(main())
