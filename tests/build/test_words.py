"""What the page says: every catalogue is right, and a wrong one is told.

How a message reads is judged by Fluent's own guide (https://projectfluent.org/fluent/guide:
selectors.html, functions.html) and, for plurals, by CLDR as node's Intl has it.
"""

from __future__ import annotations

import json
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from build import install, words
from build import site as built
from build.catalogue import Message, WordsError, read, spoken
from build.words_script import module, types

SOME = """\
plain = Back and forth
emails =
    { $unread ->
        [0] You have no mail.
        [one] You have { $unread } unread mail.
       *[other] You have { $unread } unread mails.
    }
gone = { $who } left `{ "{" }x` ${ LOWER($place) } with { NUMBER($share) }
marked =
    Sock <b>{ $number }</b> & { $which ->
        [one] its <em>mate</em>
       *[none] no other
    }
"""
# One that is chosen by a plural or a name.
EITHER = "{{ $n ->\n  [{}] A\n *[{}] B\n }}"


@pytest.fixture
def catalogue(tmp_path: Path) -> Callable[[str], dict[str, Message]]:
    def made(text: str) -> dict[str, Message]:
        path = tmp_path / "some.ftl"
        path.write_text(text, encoding="utf-8")
        return read(path)

    return made


def test_the_catalogues_in_the_repository_are_right() -> None:
    assert words.faults() == []
    assert words.main(["--check"]) == 0


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("broken", "line 1"),
        ("one = A\none = B", "there twice"),
        ("one = " + EITHER.format("row", "other"), r"row beside \*\[other\]"),
        ("one = " + EITHER.format("0", "two"), r"0 beside \*\[two\]"),
        ("one = " + EITHER.format("other", "two"), r"other beside \*\[two\]"),
        (f"one = {EITHER.format('one', 'other')} {EITHER.format('a', 'b')}", "a number here"),
        ("one = <a href='x'>there</a>", "no tag"),
        ("one = <b>bold", "no tag"),
        ("one = 3 < 4", "no tag"),
        ("one = { two }\ntwo = B", "not compiled"),
        ("one = { DATETIME($day) }", "not compiled"),
        ("-one = A", "terms"),
        ("one = A\n    .title = B", "attributes"),
        ("One = A", "small letters"),
        ("delete = A", "word of scripts"),
        (f"one = {'word ' * 31}", "31 words"),
        (
            f"one = {'word ' * 25}{EITHER.format('one', 'other').replace('B', 'y y y y y y')}",
            "31 words",
        ),
    ],
)
def test_what_is_wrong_in_a_catalogue_is_told(
    catalogue: Callable[[str], dict[str, Message]], text: str, told: str
) -> None:
    with pytest.raises(WordsError, match=told):
        catalogue(text)


def test_a_message_is_spoken_as_it_is_compiled(
    catalogue: Callable[[str], dict[str, Message]], tmp_path: Path
) -> None:
    """In node and at build time alike, each plural and each of a closed set."""
    messages = catalogue(SOME)
    calls: list[tuple[str, dict[str, str | float]]] = [
        ("emails", {"unread": 0}),
        ("emails", {"unread": 1}),
        ("emails", {"unread": 2}),
        ("emails", {"unread": 21}),
        ("gone", {"who": "Ann", "place": "Heel", "share": 1234.5}),
    ]
    asked = [[messages[name].name, given] for name, given in calls]
    (tmp_path / "some.mjs").write_text(module(messages, "en").replace('"lit-html"', '"./lit.mjs"'))
    (tmp_path / "lit.mjs").write_text("export const html = (...parts) => parts;")
    (tmp_path / "ask.mjs").write_text(
        'import * as say from "./some.mjs";\n'
        f"const said = {json.dumps(asked)}.map(([name, given]) => say[name](given));\n"
        "const marked = say.marked({ number: 2, which: 'one' });\n"
        "console.log(JSON.stringify([say.plain, said, marked]));\n"
    )
    done = subprocess.run(
        [install.VENV / "bin" / "node", tmp_path / "ask.mjs"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    plain, said, marked = json.loads(done.stdout)
    assert plain == "Back and forth"
    assert said[:3] == [
        "You have no mail.",
        "You have 1 unread mail.",
        "You have 2 unread mails.",
    ]
    assert said[4] == "Ann left `{x` $heel with 1,234.5"
    assert said == [spoken(messages[name], given) for name, given in calls]
    # A tag stands in lit-html's own text, an argument never does.
    assert marked == [["Sock <b>", "</b> &amp; ", ""], 2, [["its <em>mate</em>"]]]


def test_arguments_are_typed(catalogue: Callable[[str], dict[str, Message]]) -> None:
    text = types("some", catalogue(SOME))
    assert "export const plain: string;" in text
    assert "export function emails(given: { unread: number }): string;" in text
    assert "place: string; share: number; who: string | number }): string;" in text
    assert 'which: "none" | "one" }): TemplateResult;' in text


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, "takes unread"),
        ({"unread": 1, "more": 2}, "takes unread"),
    ],
)
def test_an_argument_too_few_or_too_many_is_told(
    catalogue: Callable[[str], dict[str, Message]], given: dict[str, float], told: str
) -> None:
    with pytest.raises(WordsError, match=told):
        spoken(catalogue(SOME)["emails"], given)


def test_one_that_is_none_of_its_set_is_told(
    catalogue: Callable[[str], dict[str, Message]],
) -> None:
    with pytest.raises(WordsError, match="none of one, none: two"):
        spoken(catalogue(SOME)["marked"], {"number": 1, "which": "two"})


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A page that says two things, in two languages."""
    for name, text in {
        "page/main.js": 'import * as say from "words/page";\nsay.hello({ who: "x" }, say.twoOf);\n',
        "words/en/page.ftl": "hello = Hello, { $who }\ntwo-of = Two\n",
        "words/de/page.ftl": "hello = Hallo, { $who }\ntwo-of = Zwei\n",
        "templates/index.html": "",
    }.items():
        path = tmp_path / "webapp" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    assert words.faults(tmp_path) == []
    return tmp_path


@pytest.mark.parametrize(
    ("name", "text", "told"),
    [
        (
            "page/main.js",
            'import * as say from "words/page";\nsay.hello;',
            "page.ftl, two-of: used",
        ),
        ("words/en/page.ftl", "hello = Hello, { $who }", "page.ftl: no twoOf, which is used"),
        ("templates/index.html", '{{ say("top") }}', "templates.ftl: no top, which is used"),
        ("words/de/page.ftl", "hello = Hallo, { $who }", "de/page.ftl, two-of: missing"),
        ("words/de/more.ftl", "three = Drei", "de/more.ftl, three: not in English"),
        ("words/de/page.ftl", "hello = Hallo\ntwo-of = Zwei", "hello: other arguments"),
        (
            "words/de/page.ftl",
            f"hello = {EITHER.format('x', 'you').replace('$n', '$who')}\ntwo-of = Zwei",
            r"\$who is never x, you",
        ),
    ],
)
def test_what_is_missing_or_of_no_use_is_told(root: Path, name: str, text: str, told: str) -> None:
    path = root / "webapp" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    with pytest.raises(WordsError, match=told):
        raise WordsError("\n".join(words.faults(root)))


def test_a_wrong_id_or_argument_is_an_error_of_types(tmp_path: Path) -> None:
    """By the project's own tsc and settings."""
    wrong = {
        "say.nothingOfThisName": "TS2339",
        "say.doneShort({ done: 1 })": "TS2741",
        'say.sockName({ sock: "three" })': "TS2322",
        'say.leftWords({ left: "3", unit: "row" })': "TS2322",
        'say.sockName({ sock: "one", more: 1 })': "TS2353",
    }
    script = "\n".join(['import * as say from "words/machine";', *(f"{one};" for one in wrong)])
    (tmp_path / "wrong.js").write_text(script + "\n")
    settings = json.loads((install.BUILD / "tsconfig.json").read_text())
    options = settings["compilerOptions"]
    options["paths"] = {
        "*": [f"{install.BUILD}/node_modules/*"],
        "words/*": [f"{install.ROOT}/webapp/words/*"],
    }
    options["types"] = []
    (tmp_path / "tsconfig.json").write_text(
        json.dumps({"compilerOptions": options, "files": ["wrong.js"]})
    )
    done = subprocess.run(
        [install.BUILD / "node_modules" / ".bin" / "tsc", "-p", tmp_path],
        capture_output=True, text=True, env=install.environment(),
    )  # fmt: skip
    told = re.findall(r"wrong\.js\((\d+),\d+\): error (TS\d+)", done.stdout)
    assert told == [(str(at), code) for at, code in enumerate(wrong.values(), 2)]


def test_old_types_are_noticed_and_written_anew(
    root: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(words, "ROOT", root)
    assert words.main(["--check"]) == 1
    assert "build/words.py" in capsys.readouterr().out
    assert words.main([]) == 0
    assert words.main(["--check"]) == 0
    assert "twoOf: string" in (root / "webapp" / "words" / "page.d.ts").read_text()


def test_a_wrong_catalogue_builds_no_site(root: Path, tmp_path: Path) -> None:
    (root / "webapp" / "words" / "en" / "page.ftl").write_text("broken")
    with pytest.raises(built.SiteError, match=r"page\.ftl, line 1"):
        built.Site(root, tmp_path / "out").words()
