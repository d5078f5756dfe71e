"""In the place of Pyodide's, which loads packages: none is loaded, and its start asks where to."""

from pyodide_js import loadedPackages  # noqa: F401


class _Place:
    def __init__(self, path: str) -> None:
        self.path = path

    def __str__(self) -> str:
        return self.path


SITE_PACKAGES = _Place("/lib/python3.14/site-packages")
DSO_DIR = _Place("/usr/lib")


def init_loaded_packages() -> None:
    """Do nothing: there are none."""
