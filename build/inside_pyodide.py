"""Files that only Pyodide itself can make, under node: compiled modules, and its memory.

They take seconds and their inputs change seldom, so results are kept in a folder, named by what
they are made of.
"""

import hashlib
import subprocess
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

PINS = "package-lock.json"  # which Pyodide


def made(
    recipe: Sequence[str], inputs: Mapping[str, bytes], node: str, build: Path, kept: Path
) -> bytes:
    """What `recipe` makes of the files `inputs`, content by name.

    The first name in `recipe` is a script in the folder `build`, run as `node SCRIPT INPUT... OUT`,
    the inputs all in one folder; the others are files it reads beside itself. Raises
    subprocess.CalledProcessError, its `stderr` telling what Pyodide found wrong.
    """
    key = hashlib.sha256()
    for content in (*((build / name).read_bytes() for name in (*recipe, PINS)), *inputs.values()):
        key.update(hashlib.sha256(content).digest())
    result = kept / key.hexdigest()[:32]
    if not result.exists():
        kept.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=kept) as work:
            given = {Path(work, name): content for name, content in inputs.items()}
            for path, content in given.items():
                path.write_bytes(content)
            out = Path(work, "out")
            subprocess.run(
                [node, build / recipe[0], *given, out], check=True, capture_output=True, text=True
            )
            out.replace(result)  # whole or not at all
        old = sorted(filter(Path.is_file, kept.iterdir()), key=lambda path: path.stat().st_mtime)
        for path in old[:-12]:
            path.unlink(missing_ok=True)
    return result.read_bytes()
