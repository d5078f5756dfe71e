"""The names of a request's fields: all that its readers know, and nothing that they do not."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given

from engine.read.listing import Listing
from engine.sock import wanted
from tests.asking import answer, asked
from tests.engine.answers.test_anonymous import of_a_person
from tests.engine.drawn_requests import Json, plan

TOLD: Json = answer({"do": "fields"})
KINDS: dict[str, str] = {field["name"]: field["kind"] for field in TOLD["fields"]}
TEMPLATES = Path(__file__).resolve().parents[3] / "webapp" / "templates"


def names_in(value: Any, path: str = "") -> Iterator[str]:
    """The dotted name of every leaf, with ROW for a row's number."""
    if isinstance(value, dict):
        for name, inner in value.items():
            yield from names_in(inner, f"{path}.{name}" if path else name)
    elif isinstance(value, list):
        for inner in value:
            yield from names_in(inner, f"{path}.ROW")
    else:
        yield path


@given(of_a_person())
def test_every_field_that_is_taken_is_told(request: Json) -> None:
    assert set(names_in(request)) <= set(KINDS)


def test_a_reader_that_knows_a_name_reads_it() -> None:
    asking = Listing({})
    wanted.read(asking)
    groups = {
        name.rsplit(".", levels)[0] for name in KINDS for levels in range(1, name.count(".") + 1)
    }
    assert asking.found.known == {name for name in {*KINDS, *groups} if not name.endswith(".ROW")}


@pytest.mark.parametrize("name", KINDS)
def test_no_field_that_is_told_is_unknown(name: str) -> None:
    """Whatever stands in it is read, and an error is not that there is no such field."""
    request = {**asked(), **_nested(name)}
    for problem in plan(request).get("errors", []):
        assert "not known here" not in problem["message"]


def _nested(name: str) -> Json:
    """A request with one field."""
    value: Any = "1"
    for part in reversed(name.split(".")):
        value = [value] if part == "ROW" else {part: value}
    return dict(value)


def test_every_input_of_the_form_is_a_field() -> None:
    """What the macro `field` makes an input of; the table's and the shelf's are no request's."""
    drawn = " ".join(path.read_text(encoding="utf-8") for path in TEMPLATES.glob("*.html"))
    named = set(re.findall(r'\bfield\("([a-z_.A-Z]+)"', drawn))
    of_request = {name for name in named if not name.startswith(("chart.", "shelf.", "yarns."))}
    assert len(of_request) > 20
    assert {name for name in of_request if name.partition(".")[0] in wanted.GROUPS} <= set(KINDS)


def test_what_is_echoed_is_read_back() -> None:
    echoed = [field["name"] for field in TOLD["fields"] if field["echoed"]]
    assert {KINDS[name] for name in echoed} == {"length", "yarn", "weight"}
    found = answer({"do": "read", "fields": dict.fromkeys(echoed, "99 of them"), "units": "cm"})
    assert {problem["field"] for problem in found["errors"]} == set(echoed)
    others = sorted(set(KINDS) - set(echoed))[:1]
    refused = answer({"do": "read", "fields": dict.fromkeys(others, "1"), "units": "cm"})
    assert "not known here" in refused["errors"][0]["message"]


def test_lists_tell_how_many_rows_they_take() -> None:
    for one in TOLD["lists"]:
        over = _nested(f"{one['name']}.ROW.x")
        inner = over
        for part in one["name"].split(".")[:-1]:
            inner = inner[part]
        inner[one["name"].split(".")[-1]] = [{}] * (one["most"] + 1)
        found = plan({**asked(), **over})
        assert [p["message"] for p in found["errors"]] == [f"{one['most'] + 1} are too many."]
