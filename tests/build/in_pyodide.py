"""What a module tells inside a Pyodide, under node."""

import subprocess
from collections.abc import Mapping
from pathlib import Path

from build import site

RUN = """
import { readFile } from "node:fs/promises";
import { pathToFileURL } from "node:url";
const [folder, pyodide] = process.argv.slice(1);
const { loadPyodide } = await import(pathToFileURL(`${pyodide}/pyodide.mjs`).href);
const packages = JSON.parse(await readFile(`${pyodide}/pyodide-lock.json`, "utf8"));
const { default: create } = await import(pathToFileURL(`${folder}/pyodide.asm.mjs`).href);
const python = await loadPyodide({
    indexURL: folder,
    createPyodideModule: create,
    stdLibURL: pathToFileURL(`${folder}/python_stdlib.zip`).href,
    lockFileContents: { info: packages.info, packages: {} },
});
python.FS.writeFile("told.py", await readFile(`${folder}/told.py`));
try {
    console.log(python.pyimport("told").facts());
} catch (error) {
    console.error(error.message); // without Pyodide's own source around it
    process.exit(1);
}
"""


def stock() -> dict[str, bytes]:
    """Pyodide's files as they come."""
    names = (*site.PYODIDE_FILES, "python_stdlib.zip")
    return {name: (site.PYODIDE / name).read_bytes() for name in names}


def told(files: Mapping[str, bytes], source: str, folder: Path) -> str:
    """What `facts()` of a Python source returns there, a text."""
    folder.mkdir()
    for name, content in {**files, "told.py": source.encode()}.items():
        (folder / name).write_bytes(content)
    node = [site.find_node(), "--input-type=module", "-e", RUN, folder, site.PYODIDE]
    done = subprocess.run([*map(str, node)], check=True, capture_output=True, text=True)
    return done.stdout
