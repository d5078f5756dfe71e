"""Build the site: engine and webapp in, a folder of static files out.

    python3 build/site.py [--dist FOLDER] [--force]

The folder is made beside its place and swapped in when whole; the same inputs give the same bytes.
Installs first what it needs, where that is missing.
"""

import argparse
import base64
import hashlib
import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

import jinja2

from build import licences, linked, words
from build.catalogue import ENGLISH, Message, WordsError
from build.compile_archive import archive
from build.engine_archive import compiled, engine_sources, snapshot, standard_library
from build.headers import OPENING, TYPES
from build.lean_pyodide import OtherPyodide, lean
from build.pages import Pages, address
from build.unused_modules import without_unused

ROOT = Path(__file__).resolve().parent.parent
BUILD = ROOT / "build"
MODULES = BUILD / "node_modules"
PYODIDE = MODULES / "pyodide"
PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
# Of our scripts those that call Pyodide's C functions themselves.
BEHIND_THE_DOOR = (ROOT / "webapp" / "worker" / "snapshot.js", BUILD / "memory_snapshot.mjs")
# Scripts that say something, a bundle each for every language; and what all languages share.
SAYING = {
    "main": "webapp/page/main.js",
    "machine": "webapp/machine/main.js",
    "paper": "webapp/paper/main.js",
    "book": "webapp/book/main.js",
    "copies": "webapp/copies/main.js",
    "behind": "webapp/behind/main.js",
    "sets": "webapp/sets/main.js",
    "updates": "webapp/offline/updates.js",
    "sent": "webapp/sent/main.js",
}
SHARED = {
    "worker": "webapp/worker/worker.js",
    "page": "webapp/style/page.css",
    "shapes": "webapp/style/shapes.css",
    "behind_style": "webapp/style/behind.css",
    "machine_style": "webapp/style/machine.css",
    "paper_style": "webapp/style/paper.css",
    "book_style": "webapp/style/book.css",
    "sets_style": "webapp/style/sets.css",
}
SHOWN = "pictures/"  # by browsers that would install it; not the page's, so no phone stores them
STAMP = ".inputs"  # in the built folder: the hash of what it was built from
# Browsers from 2023 on; all of them run what Pyodide needs.
BROWSERS = "es2022,chrome109,firefox115,safari16.4"


def digest(content: bytes) -> str:
    """A short name for `content`."""
    return hashlib.sha256(content).hexdigest()[:8]


def sri(content: bytes, way: str) -> str:
    """The hash of `content` as browsers are told it (W3C Subresource Integrity, 3.1)."""
    return f"{way}-{base64.b64encode(hashlib.new(way, content).digest()).decode()}"


def inputs_of(root: Path) -> str:
    """The hash of every file that can change the site built from `root`."""
    total = hashlib.sha256()
    files = [
        *(p for p in (root / "webapp").rglob("*") if p.is_file()),
        *(p for p in (root / "engine").rglob("*.*") if p.suffix in (".py", ".ftl")),
        *BUILD.glob("*.py"),
        *BUILD.glob("*.mjs"),
        *(BUILD / "phone").rglob("*.py"),
        *BUILD.glob("notices/*.txt"),
        BUILD / "package-lock.json",
        BUILD / "requirements-site.txt",
    ]
    for path in sorted(files):
        name = path.relative_to(BUILD if path.is_relative_to(BUILD) else root).as_posix()
        total.update(f"{name}\0{digest(path.read_bytes())}\0".encode())
    return total.hexdigest()


def find_node() -> str:
    """The node that build/start.py installed beside this Python, or the machine's."""
    beside = Path(sys.executable).parent / "node"
    node = str(beside) if beside.exists() else shutil.which("node")
    if node is None:
        raise SiteError("Found no node. Run python3 build/start.py, which installs it.")
    return node


def pyodide() -> dict[str, bytes]:
    """Its files for a phone by name, without what neither they nor our scripts ask for.

    Raises SiteError if it is another Pyodide than we know.
    """
    version = json.loads((PYODIDE / "package.json").read_text())["version"]
    if version != linked.PYODIDE:
        raise SiteError(
            f"Pyodide {version} is another than {linked.PYODIDE}: look anew what is linked into it "
            "and what its licences ask, in build/linked.py."
        )
    files = {name: (PYODIDE / name).read_bytes() for name in PYODIDE_FILES}
    callers = (files["pyodide.mjs"], *(path.read_bytes() for path in BEHIND_THE_DOOR))
    glue = files["pyodide.asm.mjs"].decode()
    try:
        stock = files["pyodide.asm.wasm"]
        wasm, glue = lean(stock, glue, b"\n".join(callers).decode())
        wasm = without_unused(stock, wasm)
    except OtherPyodide as error:
        raise SiteError(str(error)) from error
    return files | {"pyodide.asm.wasm": wasm, "pyodide.asm.mjs": glue.encode()}


class Site:
    """One build of `root`'s engine and webapp into the empty folder `out`.

    Each language has a page and scripts of its own; what holds no words they share.
    """

    def __init__(self, root: Path, out: Path) -> None:
        self.root = root
        self.languages = words.languages(root)
        self.webapp = root / "webapp"
        self.out = out
        self.shipped = [*licences.of_engine(), *licences.of_page(BUILD)]
        within = {one.name for one in licences.of_python()[1:]}
        self.made_with = [one.name for one in self.shipped if one.name not in within]
        self.assets: dict[str, str] = {"service_worker": "sw.js"}
        # By language: its scripts' addresses, where esbuild finds its words, those of templates.
        self.scripts: dict[str, dict[str, str]] = {}
        self.said: dict[str, list[str]] = {}
        self.catalogue: dict[str, dict[str, Message]] = {}
        self.templates: Pages

    def make(self) -> None:
        """Every step in order: each uses names that an earlier one gave."""
        self.words()
        self.markup()
        self.python()
        self.scripts_and_style()
        self.icons()
        self.licences()
        self.pages()
        self.service_worker()

    def put(self, name: str, content: bytes) -> str:
        """Write one file of the site; returns its address, relative to the site."""
        target = self.out / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)
        return name

    def words(self) -> None:
        """What the page says, as modules. Raises SiteError where a catalogue is not right."""
        try:
            for language in self.languages:
                self.said[language] = words.aliases(self.root, language)
                found = words.catalogues(self.root, language)
                self.catalogue[language] = found.get(words.TEMPLATES, {})
        except WordsError as error:
            raise SiteError(str(error)) from error

    def markup(self) -> None:
        """What opens from the steps, as a module of each language beside its words."""
        try:
            self.templates = Pages(self.webapp, self.catalogue, {"made_with": self.made_with})
        except WordsError as error:
            raise SiteError(str(error)) from error
        self.scripts = {language: {} for language in self.languages}
        for language, content in self.rendered("behind.html").items():
            place = self.root / ".tools" / "words" / language / "markup.js"
            place.write_text(
                f"export default {json.dumps(content.decode(), ensure_ascii=False)};\n"
            )
            self.said[language].append(f"--alias:words/markup={place.resolve()}")

    def python(self) -> None:
        """Pyodide in a folder named by its content, the engine as one archive, and a snapshot of
        the memory of the first with the second in it."""
        node = find_node()
        kept = ROOT / ".tools" / "compiled"
        files = pyodide()
        library = compiled(standard_library(PYODIDE), node, BUILD, kept)
        files |= {"python_stdlib.zip": library, "empty.zip": archive({})}
        folder = f"pyodide-{linked.PYODIDE}-{digest(b''.join(files.values()))}/"
        for name, content in files.items():
            self.put(folder + name, content)
        engine = compiled(engine_sources(self.root), node, BUILD, kept)
        self.assets["pyodide"] = folder
        self.assets["engine"] = self.put(f"engine-{digest(engine)}.zip", engine)
        memory = snapshot(files, engine, node, BUILD, kept)
        self.assets["snapshot"] = self.put(f"snapshot-{digest(memory)}.bin", memory)

    def scripts_and_style(self) -> None:
        """The page and, apart from it, what it loads later: bundled, minified, named by content."""
        # What a start waits for, with its bytes: Python's files and the engine's are here by now.
        sizes = {name: (self.out / name).stat().st_size for name in self.files()}
        told = f"--define:SIZES={json.dumps(sizes)}"
        self.assets |= self.bundles(SHARED, "assets/", told)
        for language in self.languages:
            folder = "assets/" if language == ENGLISH else f"assets/{language}/"
            sentences = {"words": f".tools/words/{language}/engine.js"}
            self.scripts[language] = self.bundles(
                SAYING | sentences, folder, told, *self.said[language]
            )

    def bundles(self, entries: dict[str, str], folder: str, *options: str) -> dict[str, str]:
        """Bundle each of some scripts and styles into a folder; returns addresses by name."""
        made = self.esbuild(
            *(f"{name}={path}" for name, path in entries.items()),
            *options,
            "--format=esm",
            f"--entry-names={folder}[name]-[hash]",
        )
        names = {path: name for name, path in entries.items()}
        entry = {output: facts.get("entryPoint") for output, facts in made.items()}
        return {names[path]: output for output, path in entry.items() if path in names}

    def esbuild(self, *arguments: str) -> dict[str, Any]:
        """Run esbuild from the root into the site; returns its outputs by address in the site."""
        program = next(iter(sorted(MODULES.glob("@esbuild/*/bin/esbuild"))), None)
        if program is None:
            raise SiteError("Found no esbuild. Run python3 build/start.py, which installs it.")
        with tempfile.TemporaryDirectory() as work:
            facts = Path(work, "facts.json")
            done = subprocess.run(
                [
                    program,
                    *arguments,
                    "--bundle",
                    "--minify",
                    "--charset=utf8",
                    "--legal-comments=eof",
                    f"--target={BROWSERS}",
                    '--define:process.env.NODE_ENV="production"',
                    f"--outdir={self.out}",
                    f"--metafile={facts}",
                    "--log-level=warning",
                ],
                cwd=self.root,
                env={**os.environ, "NODE_PATH": str(MODULES)},
                capture_output=True,
                text=True,
            )
            if done.returncode or done.stderr.strip():
                raise SiteError(f"esbuild found a mistake:\n{done.stderr.strip()}")
            made = json.loads(facts.read_text())
        outputs = made["outputs"]
        licensed = {one.name for one in self.shipped}
        for source in made["inputs"]:
            _, within, package = source.rpartition("node_modules/")
            if within and package.split("/")[0] not in licensed:
                raise SiteError(f"{package} would be shipped without its licence.")
        return {
            Path(os.path.normpath(self.root / name)).relative_to(self.out).as_posix(): fact
            for name, fact in outputs.items()
        }

    def licences(self) -> None:
        """Of all that is not ours, as one text."""
        self.put("licences.txt", licences.written(self.shipped).encode())

    def opening(self) -> str:
        """The page's first script, which stands in the page itself. Raises SiteError if the hosts'
        headers do not name it."""
        (made,) = self.esbuild("opening=webapp/page/opening.js", "--format=iife")
        script = (self.out / made).read_text().strip()
        (self.out / made).unlink()
        named = sri(script.encode(), "sha256")
        if named != OPENING:
            raise SiteError(
                "webapp/page/opening.js has changed: the policy in build/headers.py must name it, "
                f"OPENING = {named}"
            )
        return script

    def icons(self) -> None:
        """As they are; and the pictures by which a phone shows what it would install."""
        for folder in ("icons", "pictures"):
            for path in sorted((self.webapp / folder).iterdir()):
                self.put(f"{folder}/{path.name}", path.read_bytes())

    def pages(self) -> None:
        """Each language's page and install manifest."""
        self.templates.facts["opening"] = self.opening()
        for language, content in self.rendered("manifest.webmanifest").items():
            name = address(language).replace(".html", ".webmanifest") or "manifest.webmanifest"
            self.scripts[language]["manifest"] = self.put(name, content)
        # The version is the hash of everything else, the pages without their version included.
        rest = [name.encode() + (self.out / name).read_bytes() for name in self.files()]
        rest += self.rendered("index.html").values()
        self.version = digest(b"\0".join(rest))
        for language, content in self.rendered("index.html", self.version).items():
            self.put(address(language) or "index.html", content)

    def rendered(self, template: str, version: str = "") -> dict[str, bytes]:
        """A template by language. Raises SiteError where it is not right."""
        try:
            return {
                one: self.templates.render(
                    template, one, {**self.assets, **self.scripts[one]}, version
                )
                for one in self.languages
            }
        except (jinja2.TemplateError, WordsError) as error:
            raise SiteError(f"The template {template} is not right: {error}") from error

    def service_worker(self) -> None:
        """sw.js, told every file of the site, its hash, and what it must read byte for byte."""
        entries = []
        # On a first visit the page's own downloads go before the rest.
        for name in sorted(self.files(), key=self.late):
            if name.startswith(SHOWN):
                continue
            content = (self.out / name).read_bytes()
            entries.append(
                {
                    "url": name,
                    "revision": digest(content),
                    "integrity": sri(content, "sha384"),
                    "size": len(content),
                }
            )
        self.esbuild(
            "sw=webapp/offline/service_worker.js",
            "--format=iife",
            "--entry-names=[name]",
            f"--define:PRECACHE={json.dumps(entries)}",
            f"--define:VERSION={json.dumps(self.version)}",
            f"--define:TYPES={json.dumps(TYPES)}",
        )

    def late(self, name: str) -> int:
        """How late a file is stored: other languages than English after it, the snapshot last."""
        others = [one for one in self.languages if one != ENGLISH]
        other = any(name.startswith((f"assets/{one}/", f"{one}.")) for one in others)
        return 2 if name == self.assets["snapshot"] else int(other)

    def files(self) -> list[str]:
        """Addresses of all files made so far, in a fixed order."""
        found = (path.relative_to(self.out).as_posix() for path in self.out.rglob("*.*"))
        return sorted(name for name in found if (self.out / name).is_file())


class SiteError(Exception):
    """The site cannot be built; the message says why and what to do."""


def build(dist: Path, root: Path = ROOT, force: bool = False) -> bool:
    """Build `root`'s site into `dist`; False if it was there already, made of the same inputs.

    Raises SiteError; `dist` is then as it was.
    """
    inputs = inputs_of(root)
    stamp = dist / STAMP
    if not force and stamp.is_file() and stamp.read_text() == inputs:
        return False
    beside = dist.parent / ".tools"  # on the same disk, so that moving is one step
    beside.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="site-", dir=beside) as work:
        out = Path(work).resolve() / "new"
        out.mkdir()
        try:
            Site(root.resolve(), out).make()
        except subprocess.CalledProcessError as error:
            raise SiteError(
                f"Pyodide could not take the engine in:\n{error.stderr.strip()}"
            ) from error
        (out / STAMP).write_text(inputs)
        if dist.exists():
            dist.rename(Path(work) / "old")
        out.rename(dist)
    return True


def main() -> int:
    """Builds; 1 if that cannot be done, after saying why."""
    parser = argparse.ArgumentParser(
        prog="python3 build/site.py", description="Build the site into a folder of static files."
    )
    parser.add_argument("--dist", type=Path, default=ROOT / "dist", help="the folder to make")
    parser.add_argument("--force", action="store_true", help="build even if nothing changed")
    options = parser.parse_args()
    try:
        built = build(options.dist, force=options.force)
    except SiteError as error:
        print(error, file=sys.stderr)
        return 1
    print(f"{options.dist}: {'built' if built else 'nothing changed'}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
