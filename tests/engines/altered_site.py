"""The built site with some files changed, for browsers that take no script before a page."""

import os
import shutil
from pathlib import Path


def altered(dist: Path, folder: Path, *, page: str = "", worker: str = "") -> Path:
    """The site in `folder`, with a script that runs before its page's, and one before its worker's.

    Its service worker finds that the page is not the one it knows, and stores nothing.
    """
    shutil.copytree(dist.resolve(), folder, copy_function=os.symlink)
    (folder / "before.js").write_text(page)
    index = folder / "index.html"
    put(index, index.read_text().replace("<head>", '<head><script src="before.js"></script>', 1))
    if worker:
        (script,) = (folder / "assets").glob("worker-*.js")
        put(script, worker + script.read_text())
    return folder


def put(file: Path, content: str | bytes) -> None:
    """Write it in the place of one that is only linked to."""
    file.unlink()
    file.write_bytes(content.encode() if isinstance(content, str) else content)
