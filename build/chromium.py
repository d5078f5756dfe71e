"""A Chromium for the browser tests: the machine's, else Debian's, else one out of an npm package.

The npm package holds a headless build for Linux on x86-64, compressed with brotli, with the
libraries and fonts that a bare machine lacks; it needs no root. `python3 build/chromium.py` gets
one.
"""

from __future__ import annotations

import argparse
import io
import os
import platform
import shutil
import subprocess
import sys
import tarfile
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

from build import debian

PACKED = install.BROWSER[0].folder / "@sparticuz" / "chromium" / "bin"
UNPACKED = install.TOOLS / "chromium"
COMMANDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
MAC_PLACES = ("/Applications/Chromium.app/Contents/MacOS/Chromium",)
SHELL = "chromium-headless-shell"
DEBIAN = ("chromium", "fonts-liberation", "fonts-noto-core", "fonts-noto-color-emoji")
FONTS = """<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>{0}/fonts</dir><cachedir>{0}/font-cache</cachedir></fontconfig>
"""


@dataclass(frozen=True)
class Chromium:
    """How to launch it: the program, further arguments, further variables."""

    executable: Path
    arguments: list[str] = field(default_factory=list)
    variables: dict[str, str] = field(default_factory=dict)

    def runs(self) -> bool:
        """Whether it starts at all (some systems put a signpost to a shop under its name)."""
        try:
            trial = subprocess.run(
                (self.executable, *self.arguments, "--version"),
                env={**os.environ, **self.variables},
                capture_output=True,
                timeout=60,
            )
        except (OSError, subprocess.TimeoutExpired):
            return False
        return trial.returncode == 0


def of_the_machine(commands: tuple[str, ...] = (*COMMANDS, *MAC_PLACES)) -> Chromium | None:
    """The first that runs of those installed on the machine."""
    for name in commands:
        path = shutil.which(name)
        if path and (found := Chromium(Path(path))).runs():
            return found
    return None


def shell() -> Chromium | None:
    """The same engine without windows, if it is on the machine: it spares a third of the time.

    It has no wake lock, no settings, and tells of a crashed page otherwise.
    """
    return of_the_machine((SHELL,))


def unpacked() -> Chromium | None:
    """The one out of the npm package, if it lies there whole and is still the pinned one."""
    done = UNPACKED / ".made-from"
    if not done.is_file() or done.read_text() != install.BROWSER[0].fingerprint():
        return None
    return Chromium(
        UNPACKED / "chromium",
        # --no-zygote: its helper process is not in the package.
        ["--headless=shell", "--no-sandbox", "--no-zygote"],
        {
            "LD_LIBRARY_PATH": str(UNPACKED / "al2023" / "lib"),
            "FONTCONFIG_FILE": str(UNPACKED / "fonts.conf"),
        },
    )


def unpack(packed: Path, into: Path) -> None:
    """Unpacks the package's compressed files: `x.br` is a program, `x.tar.br` a folder."""
    import brotli  # only the checks' environment has it

    shutil.rmtree(into, ignore_errors=True)
    into.mkdir(parents=True)
    for file in sorted(packed.glob("*.br")):
        content = brotli.decompress(file.read_bytes())
        name, *kind = file.name.removesuffix(".br").split(".")
        if kind == ["tar"]:
            with tarfile.open(fileobj=io.BytesIO(content)) as archive:
                # Keeps members inside the folder; the first releases of Python 3.11 lack it.
                archive.extraction_filter = getattr(tarfile, "data_filter", None)
                archive.extractall(into / name)  # noqa: S202
        else:
            (into / name).write_bytes(content)
            (into / name).chmod(0o755)
    (into / "fonts.conf").write_text(FONTS.format(into))


def by_apt() -> Chromium | None:
    """Debian's, where this process may install it."""
    # Where it cannot be, the npm package may still do.
    return of_the_machine() if debian.brought(*DEBIAN) else None


def by_npm() -> Chromium:
    """Out of the npm package. Raises Stop where there is none for this kind of machine."""
    if sys.platform != "linux" or platform.machine() != "x86_64":
        raise install.Stop("The browser tests need Chromium: install it and run this again.")
    install.make(install.BROWSER)
    unpack(PACKED, UNPACKED)
    (UNPACKED / ".made-from").write_text(install.BROWSER[0].fingerprint())
    found = unpacked()
    if not found or not found.runs():
        raise install.Stop(
            "The unpacked Chromium does not start here. Install Chromium and run this again."
        )
    return found


def find() -> Chromium | None:
    """One that is there already."""
    return of_the_machine() or unpacked()


if __name__ == "__main__":
    argparse.ArgumentParser(prog="python3 build/chromium.py", description=__doc__).parse_args()
    with install.plainly():
        find() or by_apt() or by_npm()
        if of_the_machine() and not shell():
            debian.brought(SHELL)  # where it cannot be had, the whole one does
