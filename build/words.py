#!/usr/bin/env python3
"""Check what page and engine say, and make modules of it. `build/catalogue.py` reads catalogues.

Scripts write

    import * as say from "words/machine";
    say.leave, say.roundsLeft({ left: 3 })

for the messages `leave` and `rounds-left` of machine.ftl; templates of HTML write
`say("leave")`, of templates.ftl. The engine's Python writes

    from engine.say import messages as say
    say.rounds_left(left=3)

for a message of any file in engine/say/words: they are one bundle. English leads: the types of ids
and arguments come from it, and every other language has the same. A language with a region has only
what it says otherwise than the language without.

    python3 build/words.py [--check]

writes `webapp/words/*.d.ts`, `engine/say/messages.pyi` and `engine/say/spoken/`; `--check` ends
with 1 where they, or a catalogue, are not right.
"""

from __future__ import annotations

import argparse
import keyword
import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from build import words_python
from build.catalogue import ENGLISH, TEXT, Message, WordsError, read, spoken
from build.words_script import module, table, types

ROOT = install.ROOT
TEMPLATES = "templates"
ENGINE = "engine"
Catalogues = dict[str, dict[str, Message]]  # by bundle and id


def languages(root: Path = ROOT) -> list[str]:
    """Those that there are, English first."""
    places = (root / "webapp" / "words", root / ENGINE / "say" / "words")
    found = {path.name for place in places for path in place.glob("*/")}
    return [ENGLISH, *sorted(found - {ENGLISH})]


def catalogues(root: Path = ROOT, language: str = ENGLISH) -> Catalogues:
    """All of a language, by bundle. Raises WordsError with the faults of all of them."""
    general, _, region = language.partition("-")
    found = catalogues(root, general) if region else {}
    faults: list[str] = []
    page = root / "webapp" / "words" / language
    for path in sorted(page.glob("*.ftl")):
        try:
            found[path.stem] = {**found.get(path.stem, {}), **read(path)}
        except WordsError as error:
            faults.append(str(error))
    engine: dict[str, Message] = {}
    for path in sorted((root / ENGINE / "say" / "words" / language).glob("*.ftl")):
        try:
            said = read(path)
        except WordsError as error:
            faults.append(str(error))
            continue
        faults += [f"{path.name}, {name}: also in another file" for name in said if name in engine]
        faults += [
            f"{path.name}, {one.id}: {why}" for one in said.values() for why in _not_python(one)
        ]
        engine |= said
    if faults:
        raise WordsError("\n".join(faults))
    return {**found, ENGINE: {**found.get(ENGINE, {}), **engine}}


def _not_python(message: Message) -> Iterator[str]:
    """What is wrong with it as one of the engine's."""
    if message.marked:
        yield "the engine's messages hold no tags"
    if keyword.iskeyword(words_python.function(message)):
        yield "its id is a word of Python"
    if "say" in message.arguments:
        yield "$say is where its id stands"


def used(root: Path = ROOT) -> set[tuple[str, str]]:
    """What scripts, templates and the engine name: (bundle, name as scripts write it)."""
    found: set[tuple[str, str]] = set()
    for path in sorted((root / "webapp").rglob("*.js")):
        script = path.read_text(encoding="utf-8")
        for alias, bundle in re.findall(r'import \* as (\w+) from "words/(\w+)"', script):
            found.update((bundle, name) for name in re.findall(rf"\b{alias}\.(\w+)", script))
    html = (root / "webapp" / "templates").rglob("*.html")
    for path in sorted([*html, *(root / "webapp").glob("*.webmanifest")]):
        ids = re.findall(r"\bsay\(\s*[\"']([\w-]+)[\"']", path.read_text(encoding="utf-8"))
        found.update((TEMPLATES, Message(one, ()).name) for one in ids)
    for path in sorted(
        set((root / ENGINE).rglob("*.py")) - set((root / ENGINE / "say").rglob("*"))
    ):
        ids = re.findall(r"(?<![.\w])say\.(\w+)", path.read_text(encoding="utf-8"))
        found.update((ENGINE, Message(one.replace("_", "-"), ()).name) for one in ids)
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
        made = (table if bundle == ENGINE else module)(catalogue, language)
        if not path.is_file() or path.read_text(encoding="utf-8") != made:
            beside = path.with_suffix(f".{os.getpid()}")
            beside.write_text(made, encoding="utf-8")
            beside.replace(path)
        options.append(f"--alias:words/{bundle}={path.resolve()}")
    return options


def generated(root: Path = ROOT) -> dict[Path, str]:
    """What is made of the catalogues and kept in the repository: text by place."""
    english = catalogues(root)
    engine = root / ENGINE / "say"
    found = {engine / "messages.pyi": words_python.types(english[ENGINE])}
    for bundle, catalogue in english.items():
        if bundle not in (TEMPLATES, ENGINE):
            found[root / "webapp" / "words" / f"{bundle}.d.ts"] = types(bundle, catalogue)
    for language in languages(root):
        place = engine / "spoken" / f"{language.replace('-', '_')}.py"
        said, (base, _, region) = catalogues(root, language)[ENGINE], language.partition("-")
        general = catalogues(root, base)[ENGINE] if region else None
        found[place] = words_python.module(said, language, general)
    return found


def says(bundle: str, name: str, /, **given: str | float) -> str:
    """What the page says in English under an id, without tags: for tests."""
    return re.sub("<[^>]*>", "", spoken(catalogues()[bundle][name], given))


def main(arguments: list[str]) -> int:
    """Write the types, or with `--check` say whether all is right."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing")
    wanted = parser.parse_args(arguments)
    wrong = faults(ROOT)
    for place, made in generated(ROOT).items() if not wrong else ():
        if place.is_file() and place.read_text(encoding="utf-8") == made:
            continue
        if wanted.check:
            wrong.append(f"{place.relative_to(ROOT)} is not up to date: python3 build/words.py")
        else:
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_text(made, encoding="utf-8")
    print("\n".join(wrong), end="\n" if wrong else "")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
