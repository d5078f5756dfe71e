"""What the page says: every catalogue is right, and a wrong one is told.

How a message reads is judged by Fluent's own guide (https://projectfluent.org/fluent/guide:
selectors.html, functions.html) and, for plurals, by CLDR as node's Intl has it.
"""

from __future__ import annotations

import json
import re
import subprocess
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from build import install, words, words_python
from build import site as built
from build.catalogue import LIST, NUMBER, Message, WordsError, parts, read, spoken
from build.words_script import module, table, types
from engine.say.aloud import text as aloud
from engine.say.message import Message as Saying

PER_CENT = re.compile(r"[\d}]%")


def test_a_per_cent_is_spelled_in_one_way() -> None:
    """With a space before it: the International System of Units, SI brochure, 5.4.7."""
    folders = ("webapp/words", "engine/say/words")
    found = [path for one in folders for path in (install.ROOT / one).rglob("*.ftl")]
    assert len(found) > 12
    assert {path.name: PER_CENT.findall(path.read_text()) for path in found} == {
        path.name: [] for path in found
    }


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


AMERICAN = (
    "colors?|Colors?|fibers?|Fibers?|gray|centimeters?|meters?|licenses?|program|gauge"
    "|[Bb]ind(ing)? off"
)


def test_what_britain_spells_otherwise_is_written_so() -> None:
    """Of the two spellings of a word, and of the trade's two terms, each language has its own."""
    american = re.compile(rf"\b({AMERICAN})\b")
    left, right = words.catalogues(), words.catalogues(language="en-GB")
    found = 0
    for bundle, messages in left.items():
        for name, message in messages.items():
            said = "".join(one for one in parts(message.pattern) if isinstance(one, str))
            if american.search(said):
                found += 1
                british = right[bundle][name].pattern
                said = "".join(one for one in parts(british) if isinstance(one, str))
                assert not american.search(said), (bundle, name)
    assert found > 10


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


LISTED = """\
a-test-either = Choose { EITHER($ways) }, { NUMBER($n) } ways
a-test-listed = { LIST($parts) } { $n ->
    [0] of none
    [one] of one
   *[other] of { $n }
  }
a-test-in-turn = { SENTENCES($ways) } { $which }
a-test-whose = { $kind ->
    [hem] { $of }, “hem” \\
   *[rib] { $of }'s rib {"{"}
  }
"""


def _given(message: Message) -> Iterator[dict[str, Any]]:
    """Arguments of every kind that a message asks for."""
    for many in range(4):
        yield {
            name: [0, 1, 2, 1234][many]
            if kinds == NUMBER
            else tuple("abcd"[: many + 1])
            if kinds == LIST
            else sorted(kinds)[many % len(kinds)]
            if kinds
            else ["Ann", 5, 2.0, "9 3/8 in"][many]
            for name, kinds in message.arguments.items()
        }


@pytest.mark.parametrize("language", ["en", "en-GB"])
def test_engine_speaks_alike_on_phone_and_terminal(
    catalogue: Callable[[str], dict[str, Message]], tmp_path: Path, language: str
) -> None:
    """Of the engine's messages and some with all that a message may hold; lists as node's Intl
    writes them (CLDR)."""
    ours = words.catalogues(language=language)["engine"]
    messages = {**ours, **catalogue(LISTED)}
    calls = [
        (one.id, given)
        for one in messages.values()
        for given in _given(one)
        if one.id != "so-much-of" or given["part"] in ("heel", "toe")  # no others have rows
    ]
    (tmp_path / "engine.js").write_text(table(messages, language))
    (tmp_path / "ask.mjs").write_text(
        'import engine from "./engine.js";\n'
        f"const calls = {json.dumps(calls)};\n"
        "console.log(JSON.stringify(calls.map(([id, given]) => engine[id](given))));\n"
    )
    (tmp_path / "package.json").write_text('{"type": "module"}')
    found = subprocess.run(
        [install.VENV / "bin" / "node", tmp_path / "ask.mjs"],
        check=True,
        capture_output=True,
        text=True,
    )
    made: dict[str, Any] = {}
    exec(words_python.module(messages, language), made)  # noqa: S102 (ours)
    said = [made["MESSAGES"][name](given) for name, given in calls]
    kept = import_module(f"engine.say.spoken.{language.replace('-', '_')}").MESSAGES
    ours_said = [(name, given) for name, given in calls if name in ours]
    assert [kept[name](given) for name, given in ours_said] == [
        said[at] for at, (name, _) in enumerate(calls) if name in ours
    ], "with what it shares with the language without a region"
    assert said == [spoken(messages[name], given, language) for name, given in calls]
    assert said == json.loads(found.stdout)
    assert len(said) > 200


def test_figures_over_sizes_take_the_plural_of_many(tmp_path: Path) -> None:
    """A text is no number, so it matches no plural but the default: "Selectors" in Fluent's guide.

    On a phone as at a terminal; "1 (1, 2)" too.
    """
    messages = {"knit-rounds": words.catalogues()["engine"]["knit-rounds"]}
    (tmp_path / "engine.js").write_text(table(messages, "en"))
    (tmp_path / "package.json").write_text('{"type": "module"}')
    calls = [{"part": "foot", "rounds": rounds} for rounds in ("46 (50, 54)", "1 (1, 2)")]
    (tmp_path / "ask.mjs").write_text(
        'import engine from "./engine.js";\n'
        f'const said = {json.dumps(calls)}.map(engine["knit-rounds"]);\n'
        "console.log(JSON.stringify(said));\n"
    )
    found = subprocess.run(
        [install.VENV / "bin" / "node", tmp_path / "ask.mjs"],
        check=True,
        capture_output=True,
        text=True,
    )
    said = [aloud(Saying(say="knit-rounds", **call)) for call in calls]
    assert said == ["Foot: knit 46 (50, 54) rounds.", "Foot: knit 1 (1, 2) rounds."]
    assert said == json.loads(found.stdout)


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
