"""Programs that only Debian's packages bring, where this machine and this process can have them."""

import os
import shutil
import tempfile
from pathlib import Path

from build import install


def brought(*packages: str) -> bool:
    """Installs them; False where that cannot be done here."""
    return _fetched("install", "-y", "--no-install-recommends", *packages)


def unpacked(into: Path, *packages: str) -> bool:
    """Their files alone in the folder `into`, for a program that would begin to serve if it were
    installed. False where that cannot be done here; the folder is then gone."""
    shutil.rmtree(into, ignore_errors=True)
    with tempfile.TemporaryDirectory() as work:
        if not _fetched("download", *packages, place=Path(work)):
            return False
        try:
            for package in sorted(Path(work).glob("*.deb")):
                install.quietly("dpkg-deb", ("dpkg-deb", "--extract", package, into))
        except install.Stop:
            shutil.rmtree(into, ignore_errors=True)
            return False
    return True


def _fetched(*wanted: str, place: Path = install.ROOT) -> bool:
    """Whether apt-get did as it was told, once it had looked what there is."""
    if os.geteuid() != 0 or not shutil.which("apt-get"):
        return False
    try:
        install.quietly("apt-get", ("apt-get", "update"))
        # As root in a folder of root's own: it would else warn that it cannot be anyone less.
        install.quietly("apt-get", ("apt-get", "-oAPT::Sandbox::User=root", *wanted), cwd=place)
    except install.Stop:
        return False
    return True
