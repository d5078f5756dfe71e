"""The page's own writer and reader of copies, in node."""

import json
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from build import install, words
from build import site as built

Json = Any


@pytest.fixture(scope="module")
def take(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[[Json], Json]]:
    """The page's writer and reader of files, as a process that stays."""
    script = tmp_path_factory.mktemp("reader") / "reader.mjs"
    (program,) = built.MODULES.glob("@esbuild/*/bin/esbuild")
    environment = {**install.environment(), "NODE_PATH": str(built.MODULES)}
    entry = Path(__file__).with_name("import_file.js")
    command: list[str | Path] = [
        program,
        entry,
        "--bundle",
        "--format=esm",
        "--platform=node",
        f"--outfile={script}",
        *words.aliases(),
    ]
    subprocess.run([*command, "--log-level=warning"], env=environment, check=True)
    with subprocess.Popen(
        [install.VENV / "bin" / "node", "--max-old-space-size=256", script],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=environment,
    ) as reader:  # fmt: skip
        assert reader.stdin
        assert reader.stdout

        def ask(question: Json) -> Json:
            assert reader.stdin
            assert reader.stdout
            reader.stdin.write(json.dumps(question) + "\n")
            reader.stdin.flush()
            line = reader.stdout.readline()
            assert line, "the reader has died"
            return json.loads(line)

        yield ask
        reader.stdin.close()
