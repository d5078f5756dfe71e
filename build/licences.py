"""Whose work the site carries, and under which licence: one text file of the site, made anew.

The packages' own words, from the packages as they are installed here. Pyodide's package holds no
text of its licence; its name and where its source is stand for it, as that licence (MPL 2.0) asks.
What is linked into its WebAssembly is told in `linked`. Nothing is taken from the builder's own
Python: the same sources give the same text whatever builds them.
"""

import importlib.metadata
import json
from dataclasses import dataclass
from pathlib import Path

from build import linked
from build.engine_archive import LIBRARIES, LICENCES

# For the build alone, and what Pyodide needs in node: nothing of them reaches the site.
TOOLS = {"esbuild", "ws"}
CHANGED = {"pyodide": "Shipped without what this site does not use: parts of its library, exports."}


@dataclass(frozen=True)
class Shipped:
    """One piece of other people's work: its licence by name, and in full where it has the text."""

    name: str
    version: str
    licence: str
    text: str


def of_page(build: Path) -> list[Shipped]:
    """The npm packages that page, worker and service worker are made with, and what those need."""
    found: dict[str, Shipped] = {}
    wanted = [
        name
        for name in json.loads((build / "package.json").read_text())["dependencies"]
        if name not in TOOLS
    ]
    while wanted:
        name = wanted.pop()
        folder = build / "node_modules" / name
        facts = json.loads((folder / "package.json").read_text())
        texts = sorted(path for path in folder.iterdir() if path.name.startswith(LICENCES[:3]))
        where = facts.get("homepage", "")
        text = texts[0].read_text(encoding="utf-8") if texts else f"Its source: {where}"
        text = "\n".join([text, *filter(None, [CHANGED.get(name)])])
        found[name] = Shipped(name, facts["version"], facts["license"], text)
        needs = {one for one in facts.get("dependencies", ()) if not one.startswith("@types/")}
        wanted += needs - TOOLS - set(found)
    return [found[name] for name in sorted(found)]


def of_engine() -> list[Shipped]:
    """Python with all that is linked to it, and the Python packages that the engine stands on."""
    return [*of_python(), *map(_library, LIBRARIES)]


def of_python() -> list[Shipped]:
    """Python itself first, then what is linked to it."""
    return [Shipped(one.name, one.version, one.licence, one.text()) for one in linked.LINKED]


def _library(name: str) -> Shipped:
    about = importlib.metadata.metadata(name)
    kinds = [
        word.rpartition(" :: ")[2]
        for field in ("License-Expression", "License", "Classifier")
        for word in about.get_all(field) or ()
        if field != "Classifier" or word.startswith("License")
    ]
    files = importlib.metadata.files(name) or ()
    texts = [file.read_text() for file in files if file.name.startswith(LICENCES[:3])]
    return Shipped(name, about["Version"], next(filter(None, kinds)), "\n\n".join(texts))


def written(shipped: list[Shipped]) -> str:
    """All of them as one text: a list first, then each licence in full."""
    titles = {one: f"{one.name} {one.version}".strip() + f": {one.licence}" for one in shipped}
    whole = "\n\n\n".join(f"{titles[one]}\n\n{one.text.strip()}" for one in shipped)
    return "\n".join(["This site carries:", "", *titles.values(), "", "", whole, ""])
