"""The site that build/bench.py measures: ours, with stock Pyodide and a floor beside it.

The page is the real one, but for its main.js: build/bench/page.js starts the engine in one of the
ways that are compared. All of them are stored by the same service worker.
"""

import importlib.metadata
import json
import shutil
from pathlib import Path

from build import site
from build.compile_archive import archive

HERE = Path(__file__).resolve().parent / "bench"
# What pint stands on where Python is older than Pyodide's is not among them.
LIBRARIES = ("pint", "flexcache", "flexparser", "platformdirs", "segno")
STOCK = (*site.PYODIDE_FILES, "python_stdlib.zip", "pyodide-lock.json")


class BenchSite(site.Site):
    """The site with a folder bench/ more."""

    def python(self) -> None:
        """Ours, then what stock Pyodide takes: its own files, wheels, the engine's sources."""
        super().python()
        for name in STOCK:
            self.put(f"bench/{name}", (site.PYODIDE / name).read_bytes())
        wheels = [self.put(f"bench/{name}.whl", wheel(name)) for name in LIBRARIES]
        names = [name.removeprefix("bench/") for name in wheels]
        self.put("bench/wheels.json", json.dumps({"wheels": names}).encode())
        sources = {
            path.relative_to(self.root).as_posix(): path.read_bytes()
            for path in (self.root / "engine").rglob("*.py")
        }
        self.put("bench/engine.zip", archive(sources))
        for name in ("stock.js", "floor.js"):
            self.put(f"bench/{name}", (HERE / name).read_bytes())


def wheel(library: str) -> bytes:
    """The files of an installed package, as its wheel holds them."""
    return archive(
        {
            file.as_posix(): Path(str(file.locate())).read_bytes()
            for file in importlib.metadata.files(library) or ()
            if ".." not in file.parts and file.suffix != ".pyc"
        }
    )


def make(folder: Path) -> Path:
    """Builds it; returns the folder to serve."""
    root, out = folder / "root", folder / "dist"
    for name in ("engine", "webapp"):
        shutil.copytree(site.ROOT / name, root / name)
    shutil.copy(HERE / "page.js", root / "webapp" / "page" / "main.js")
    out.mkdir()
    BenchSite(root, out.resolve()).make()
    return out
