#!/usr/bin/env python3
"""Check what the page says, and make modules of it. What a catalogue is: `build/catalogue.py`.

Scripts write

    import * as say from "words/machine";
    say.leave, say.roundsLeft({ left: 3 })

for the messages `leave` and `rounds-left` of machine.ftl; templates of HTML write
`say("leave")`, of templates.ftl. English leads: the types of ids and arguments come from it, and
every other language has the same.

    python3 build/words.py [--check]

writes `webapp/words/*.d.ts`; `--check` ends with 1 where they, or a catalogue, are not right.
"""

from __future__ import annotations

import argparse
import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from build.catalogue import ENGLISH, TEXT, Message, WordsError, read, spoken
from build.words_script import module, types

ROOT = install.ROOT
TEMPLATES = "templates"
Catalogues = dict[str, dict[str, Message]]  # by bundle and id


def languages(root: Path = ROOT) -> list[str]:
    """Those that there are, English first."""
    found = {path.name for path in (root / "webapp" / "words").iterdir() if path.is_dir()}
    return [ENGLISH, *sorted(found - {ENGLISH})]


def catalogues(root: Path = ROOT, language: str = ENGLISH) -> Catalogues:
    """All of a language, by bundle. Raises WordsError with the faults of all of them."""
    folder = root / "webapp" / "words" / language
    found: Catalogues = {}
    faults: list[str] = []
    for path in sorted(folder.glob("*.ftl")):
        try:
            found[path.stem] = read(path)
        except WordsError as error:
            faults.append(str(error))
    if faults:
        raise WordsError("\n".join(faults))
    return found


def used(root: Path = ROOT) -> set[tuple[str, str]]:
    """What scripts and templates name: (bundle, name as scripts write it)."""
    found: set[tuple[str, str]] = set()
    for path in sorted((root / "webapp").rglob("*.js")):
        script = path.read_text(encoding="utf-8")
        for alias, bundle in re.findall(r'import \* as (\w+) from "words/(\w+)"', script):
            found.update((bundle, name) for name in re.findall(rf"\b{alias}\.(\w+)", script))
    html = (root / "webapp" / "templates").rglob("*.html")
    for path in sorted([*html, *(root / "webapp").glob("*.webmanifest")]):
        ids = re.findall(r"\bsay\(\s*[\"']([\w-]+)[\"']", path.read_text(encoding="utf-8"))
        found.update((TEMPLATES, Message(one, ()).name) for one in ids)
    return found


def faults(root: Path = ROOT) -> list[str]:
    """What is wrong with any language, or between the catalogues and what uses them."""
    try:
        english = catalogues(root)
    except WordsError as error:
        return str(error).splitlines()
    wrong: list[str] = []
    there = {
        (bundle, one.name): one.id for bundle, those in english.items() for one in those.values()
    }
    calls = used(root)
    wrong += [
        f"{b}.ftl: no {name}, which is used" for b, name in sorted(calls) if (b, name) not in there
    ]
    wrong += [
        f"{key[0]}.ftl, {name}: used nowhere" for key, name in there.items() if key not in calls
    ]
    for language in languages(root)[1:]:
        try:
            wrong += _against(english, catalogues(root, language), language)
        except WordsError as error:
            wrong += [f"{language}/{line}" for line in str(error).splitlines()]
    return wrong


def _against(english: Catalogues, other: Catalogues, language: str) -> Iterator[str]:
    """What another language lacks, has besides, or asks otherwise."""
    for bundle in sorted({*english, *other}):
        ours, theirs = english.get(bundle, {}), other.get(bundle, {})
        for name in sorted({*ours, *theirs}):
            where = f"{language}/{bundle}.ftl, {name}"
            if name not in theirs or name not in ours:
                yield f"{where}: {'missing' if name in ours else 'not in English'}"
                continue
            one, same = ours[name], theirs[name]
            if one.arguments.keys() != same.arguments.keys() or one.marked != same.marked:
                yield f"{where}: other arguments, or tags, than in English"
            for argument, kinds in same.arguments.items():
                # What it does not tell apart is its own affair, but not what nobody gives.
                if not kinds <= one.arguments.get(argument, TEXT):
                    yield f"{where}: ${argument} is never {', '.join(sorted(kinds))}"


def aliases(root: Path = ROOT, language: str = ENGLISH) -> list[str]:
    """Write a language's modules to `root`/.tools; what tells esbuild where they are.

    Raises WordsError where a catalogue is not right.
    """
    folder = root / ".tools" / "words" / language
    folder.mkdir(parents=True, exist_ok=True)
    options = []
    for bundle, catalogue in catalogues(root, language).items():
        if bundle == TEMPLATES:
            continue
        path = folder / f"{bundle}.js"
        made = module(catalogue, language)
        if not path.is_file() or path.read_text(encoding="utf-8") != made:
            beside = path.with_suffix(f".{os.getpid()}")
            beside.write_text(made, encoding="utf-8")
            beside.replace(path)
        options.append(f"--alias:words/{bundle}={path.resolve()}")
    return options


def says(bundle: str, name: str, /, **given: str | float) -> str:
    """What the page says in English under an id, without tags: for tests."""
    return re.sub("<[^>]*>", "", spoken(catalogues()[bundle][name], given))


def main(arguments: list[str]) -> int:
    """Write the types, or with `--check` say whether all is right."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing")
    wanted = parser.parse_args(arguments)
    wrong = faults(ROOT)
    folder = ROOT / "webapp" / "words"
    for bundle, catalogue in catalogues(ROOT).items() if not wrong else ():
        place, made = folder / f"{bundle}.d.ts", types(bundle, catalogue)
        if bundle == TEMPLATES or (place.is_file() and place.read_text(encoding="utf-8") == made):
            continue
        if wanted.check:
            wrong.append(f"{place.relative_to(ROOT)} is not up to date: python3 build/words.py")
        else:
            place.write_text(made, encoding="utf-8")
    print("\n".join(wrong), end="\n" if wrong else "")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
