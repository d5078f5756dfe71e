"""The two doors: what a terminal shows, and the one call of page and worker."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine import api
from engine.__main__ import main
from engine.say.aloud import aloud
from tests.asking import answer, answer_text, asked, on_a_page

ROOT = Path(__file__).resolve().parents[2]
GOOD = json.dumps(asked(), ensure_ascii=False)
WRONG = json.dumps(asked({"foot.length": "9⅜ furlongs", "cylinder.slots": 61}), ensure_ascii=False)


def process(*arguments: str, given: bytes = b"", **variables: str) -> tuple[int, str, str]:
    """Exit code, output and complaints of the engine at the terminal, in a process of its own."""
    done = subprocess.run(
        [sys.executable, "-m", "engine", *arguments],
        cwd=ROOT,
        input=given,
        capture_output=True,
        env={**os.environ, **variables},
        timeout=60,
        check=False,
    )
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def run(*arguments: str, given: bytes = b"") -> tuple[int, str, str]:
    """The same within this process, for starting one is most of such a call's time."""
    written, complaints = io.BytesIO(), io.StringIO()
    output = io.TextIOWrapper(written, "utf-8")
    with pytest.MonkeyPatch.context() as terminal:
        terminal.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(given), "utf-8"))
        terminal.setattr(sys, "stdout", output)
        terminal.setattr(sys, "stderr", complaints)
        try:
            code = main(list(arguments))
        except SystemExit as end:  # of argparse
            code = int(str(end.code))
        output.flush()
    return code, written.getvalue().decode(), complaints.getvalue()


def only_errors(output: str) -> list[dict[str, str]]:
    """The problems of an answer that holds nothing else, on one line."""
    assert output.count("\n") == 1
    found = json.loads(output)
    assert set(found) == {"errors"}
    for problem in found["errors"]:
        assert problem["message"]
        assert problem["way_out"]
    return list(found["errors"])


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where a test's request lies."""
    return tmp_path / "request.json"


def told() -> dict[str, Any]:
    """A plan as the terminal tells it: with operations and ids, which the page does without."""
    call = {"do": "plan", "request": asked()}
    found = api.answer({**call, "operations": True})
    assert found["operations"]
    assert {name: part for name, part in found.items() if name != "operations"} == api.answer(call)
    plan: dict[str, Any] = json.loads(json.dumps(aloud(found, ids=True)))
    return plan


def test_a_plan_from_a_file(file: Path) -> None:
    file.write_text(GOOD, encoding="utf-8")
    code, output, complaints = process("plan", str(file))
    assert (code, complaints) == (0, "")
    assert json.loads(output) == told()


def test_a_plan_from_standard_input_is_the_same() -> None:
    code, output, complaints = process("plan", "-", given=GOOD.encode())
    assert (code, complaints) == (0, "")
    assert json.loads(output) == told()


@pytest.mark.parametrize("way", ["file", "standard input"])
@pytest.mark.parametrize(
    ("written", "fields"),
    [
        (WRONG.encode(), ["foot.length", "cylinder.slots"]),
        (b"", [""]),
        (b"{", [""]),
        (b"[1, 2]", [""]),
        (b"null", [""]),
        (b"\xff\xfe{\x00}\x00", [""]),
        (b'{"foot": "\xe9"}', [""]),
        (b"[" * 100_000, [""]),
        (b"9" * 5000, [""]),
    ],
    ids=["wrong", "empty", "cut", "list", "null", "UTF-16", "Latin-1", "deep", "digits"],
)
def test_what_cannot_be_answered_ends_with_2(
    file: Path, way: str, written: bytes, fields: list[str]
) -> None:
    file.write_bytes(written)
    name = str(file) if way == "file" else "-"
    code, output, complaints = run("plan", name, given=written)
    assert (code, complaints) == (2, "")
    assert [problem["field"] for problem in only_errors(output)] == fields


def test_a_mark_before_the_text_is_no_part_of_it(file: Path) -> None:
    file.write_text(GOOD, encoding="utf-8-sig")
    assert run("plan", str(file))[0] == 0
    assert run("plan", "-", given=file.read_bytes())[0] == 0


def test_half_a_character_comes_back_in_words() -> None:
    """JSON can spell half a character (RFC 8259, section 8.2); no UTF-8 can."""
    code, output, complaints = run("plan", "-", given=b'{"foot": {"\\ud800": 1}}')
    assert (code, complaints) == (2, "")
    assert only_errors(output)


def test_a_terminal_without_utf_8_gets_its_answer() -> None:
    plain = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    code, output, complaints = process("plan", "-", given=WRONG.encode(), **plain)
    assert (code, complaints) == (2, "")
    assert "furlongs" in only_errors(output)[0]["message"]


def test_one_bad_line_costs_no_other() -> None:
    written = GOOD.encode() + b'\n{"foot": "\xe9"}\n' + GOOD.encode()
    code, output, complaints = run("plan", "--lines", "-", given=written)
    assert (code, complaints) == (0, "")
    assert ["errors" in json.loads(line) for line in output.splitlines()] == [False, True, False]


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    for name in (tmp_path / "none.json", tmp_path):
        code, output, complaints = run("plan", str(name))
        assert (code, complaints) == (2, "")
        (problem,) = only_errors(output)
        assert str(name) in problem["message"]


@pytest.mark.parametrize("way", ["file", "standard input"])
def test_one_request_a_line_has_one_answer_a_line(file: Path, way: str) -> None:
    lines = [GOOD, WRONG, "", "{", "  ", "7", GOOD]
    written = "\n".join(lines).encode()
    file.write_bytes(written)
    name = str(file) if way == "file" else "-"
    code, output, complaints = run("plan", "--lines", name, given=written)
    assert (code, complaints) == (0, "")
    found = [json.loads(line) for line in output.splitlines()]
    assert ["errors" in each for each in found] == [False, True, True, True, False]
    assert found[0] == found[-1] == told()


def test_no_line_has_no_answer() -> None:
    assert run("plan", "--lines", "-") == (0, "", "")


SET = json.dumps({"request": asked(), "set": {"by": "EU", "sizes": "38, 40"}})


def test_a_set_is_printed_as_plain_text(file: Path) -> None:
    file.write_text(SET, encoding="utf-8")
    code, output, complaints = run("set", str(file))
    assert (code, complaints) == (0, "")
    assert output.startswith("Socks on 60 slots\n=================\n")
    assert "Sizes: 38 (40)." in output
    assert max(map(len, output.splitlines())) <= 78
    assert run("set", "-", given=SET.encode()) == (code, output, complaints)


def test_one_size_of_a_set_and_another_language(file: Path) -> None:
    file.write_text(SET, encoding="utf-8")
    code, output, _ = run("set", "--size", "40", "--language", "en-GB", str(file))
    assert code == 0
    assert "For size 40 alone." in output
    assert "Thread waste yarn in a colour" in output
    assert "38 (" not in output


@pytest.mark.parametrize(
    ("given", "arguments", "field"),
    [
        (SET.encode(), ["--size", "39"], "size"),
        (b'{"request": {}, "set": {}}', [], "cylinder.slots"),
        (b"[]", [], ""),
        (b"\xff", [], ""),
        (b"{", [], ""),
    ],
)
def test_a_set_that_cannot_be_ends_with_2(given: bytes, arguments: list[str], field: str) -> None:
    code, output, complaints = run("set", *arguments, "-", given=given)
    assert (code, complaints) == (2, "")
    assert field in {problem["field"] for problem in only_errors(output)}


def test_a_wrong_command_is_explained() -> None:
    for arguments in ([], ["knit"], ["plan"]):
        code, output, complaints = run(*arguments)
        assert code == 2
        assert not output
        assert f"usage: {sys.executable} -m engine" in complaints
        assert "Traceback" not in complaints
    assert run("--help")[0] == 0


CALLS: list[tuple[Any, str]] = [
    (None, ""),
    (7, ""),
    ("plan", ""),
    ([], ""),
    ({}, ""),
    ({"do": 1}, ""),
    ({"do": ["plan"]}, ""),
    ({"do": "crank"}, "do"),
    ({"do": "knit"}, ""),
    ({"do": "knit", "request": []}, ""),
    ({"do": "plan"}, ""),
    ({"do": "page"}, ""),
    ({"do": "page", "request": []}, ""),
    ({"do": "open"}, "link"),
    ({"do": "open", "link": 7}, "link"),
]


@pytest.mark.parametrize(("call", "field"), CALLS)
def test_a_wrong_call_is_answered(call: Any, field: str) -> None:
    (problem,) = answer(call)["errors"]
    assert problem["field"] == field
    assert problem["message"]
    assert problem["way_out"]
    assert json.loads(answer_text(json.dumps(call))) == answer(call)


@given(st.text())
def test_any_text_has_an_answer(text: str) -> None:
    assert "errors" in json.loads(answer_text(text))


def test_the_page_gets_plan_picture_and_links() -> None:
    page = answer({"do": "page", "request": asked()})
    links = {"link", "counts_link", "counts_link_words"}
    links |= {f"{name}_with_record" for name in ("link", "counts_link")}
    assert set(page) == {"plan", "picture", "bare", "counted", *links}
    plan = answer({"do": "plan", "request": asked()})
    assert page["plan"] == on_a_page(plan)
    assert page == json.loads(answer_text(json.dumps({"do": "page", "request": asked()})))
    assert "errors" in answer({"do": "page", "request": asked({"cylinder.slots": 61})})


def test_lengths_are_read_while_they_are_typed() -> None:
    typed = {"foot.length": "23,8 cm", "foot.ball_girth": "9⅜", "foot.heel_girth": "x"}
    found = answer({"do": "read", "fields": {**typed, "foot.ankle_girth": ""}, "units": "in"})
    assert found["readings"] == {
        "foot.length": {"value": 238.0, "unit": "mm", "text": "9 3/8 in", "other": "23.8 cm"},
        "foot.ball_girth": {"value": 238.1, "unit": "mm", "text": "9 3/8 in", "other": "23.8 cm"},
    }
    assert [problem["field"] for problem in found["errors"]] == ["foot.heel_girth"]
    metric = answer({"do": "read", "fields": {"foot.length": "23.8"}, "units": "cm"})
    assert metric["readings"]["foot.length"]["text"] == "23.8 cm"
    assert metric["readings"]["foot.length"]["other"] == "9 3/8 in"
    assert answer({"do": "read", "fields": None}) == {"readings": {}, "errors": []}


def test_the_engine_opens_no_file_and_asks_no_clock() -> None:
    """Imports aside, an answer needs nothing outside: the interpreter's own audit hooks tell."""
    script = (
        "import sys, json\n"
        "from engine.api import answer_text\n"
        "call = sys.stdin.read()\n"
        "answer_text(call)\n"
        "seen = []\n"
        "sys.addaudithook(lambda event, _: seen.append(event))\n"
        "answer_text(call)\n"
        "bad = {e for e in seen if e.split('.')[0] in {'open', 'os', 'socket', 'subprocess',\n"
        "    'urllib', 'import', 'exec', 'compile'}}\n"
        "sys.stdout.write(json.dumps(sorted(bad)))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=ROOT,
        input=json.dumps({"do": "page", "request": asked()}),
        capture_output=True,
        text=True,
        check=True,
    )
    assert json.loads(done.stdout) == []
