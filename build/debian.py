"""Programs that only Debian's packages bring, where this machine and this process can have them."""

import os
import shutil

from build import install


def brought(*packages: str) -> bool:
    """Installs them; False where that cannot be done here."""
    if os.geteuid() != 0 or not shutil.which("apt-get"):
        return False
    try:
        install.quietly("apt-get", ("apt-get", "update"))
        install.quietly(
            "apt-get", ("apt-get", "install", "-y", "--no-install-recommends", *packages)
        )
    except install.Stop:
        return False
    return True
