"""Sheets put together field by field: the page's own code in node, beside a plain account of it.

That two sides come to the same in whatever order they hear of each other is what the literature
asks of a last-writer-wins map (Shapiro, Preguiça, Baquero, Zawirski: A comprehensive study of
Convergent and Commutative Replicated Data Types, INRIA research report 7506, 2011, section 3.2:
commutative, associative, idempotent).
"""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from build import install
from build import site as built

Dated = dict[str, dict[str, Any]]
Call = Callable[..., Any]
NAMES = ("foot.length", "foot.ball_girth", "who")


def sheet(fields: dict[str, tuple[str, int]]) -> Dated:
    """A record of fields, each a text and a date."""
    return {
        "values": {name: text for name, (text, _) in fields.items() if text},
        "changed": {name: at for name, (_, at) in fields.items() if at},
    }


names = st.sampled_from(NAMES)
texts = st.sampled_from(["", "7", "24 cm", "woman"])
dates = st.integers(0, 4)
fields = st.dictionaries(names, st.tuples(texts, dates))
units = st.dictionaries(st.just("units"), st.tuples(st.sampled_from(["cm", "in"]), dates))
sides = st.builds(lambda one, other: sheet({**one, **other}), fields, units)
alike = sides.map(lambda side: {**side, "values": {**side["values"], "units": "cm"}})


@pytest.fixture(scope="module")
def call(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Call]:
    """The page's module in a process that stays."""
    script = tmp_path_factory.mktemp("dated") / "dated.mjs"
    (program,) = built.MODULES.glob("@esbuild/*/bin/esbuild")
    entry = Path(__file__).with_name("dated.js")
    options = ["--bundle", "--format=esm", "--platform=node", "--log-level=warning"]
    subprocess.run([program, entry, *options, f"--outfile={script}"], check=True)
    with subprocess.Popen(
        [install.VENV / "bin" / "node", script],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=install.environment(),
    ) as node:  # fmt: skip
        stdin, stdout = node.stdin, node.stdout
        assert stdin
        assert stdout

        def ask(*what: Any) -> Any:
            stdin.write(json.dumps(what) + "\n")
            stdin.flush()
            return json.loads(stdout.readline())

        yield ask
        stdin.close()


def at(side: Dated, name: str) -> tuple[int, str]:
    """When a field was changed, and what stands there."""
    return side["changed"].get(name, 0), side["values"].get(name, "")


@settings(max_examples=300, deadline=None)
@given(alike, alike)
def test_the_later_change_of_each_field_stays(call: Call, one: Dated, other: Dated) -> None:
    both = call("merge", one, other)
    for name in NAMES:
        assert at(both, name) == max(at(one, name), at(other, name))


@settings(max_examples=300, deadline=None)
@given(alike, alike, alike)
def test_in_whatever_order_they_meet(call: Call, one: Dated, two: Dated, three: Dated) -> None:
    assert call("merge", one, two) == call("merge", two, one)
    left = call("merge", call("merge", one, two), three)
    assert left == call("merge", one, call("merge", two, three))
    assert call("merge", left, one) == left


@settings(max_examples=300, deadline=None)
@given(sides, sides)
def test_a_bare_number_keeps_the_units_it_was_typed_in(
    call: Call, one: Dated, other: Dated
) -> None:
    def meant(side: Dated, name: str) -> str:
        text, units = side["values"].get(name, ""), side["values"].get("units", "")
        return f"{text} {units}" if text == "7" and name != "who" else text

    both = call("merge", one, other)
    assert both == call("merge", other, one)
    if not (one["values"].get("units") and other["values"].get("units")):
        return
    for name in NAMES:
        assert meant(both, name) in (meant(one, name), meant(other, name))


@settings(max_examples=300, deadline=None)
@given(alike, st.dictionaries(names, st.sampled_from(["", "7", "9"])), st.integers(0, 6))
def test_what_is_typed_after_something_is_later_whatever_the_clock_says(
    call: Call, before: Dated, typed: dict[str, str], now: int
) -> None:
    after = call("change", before, typed, {"now": now})
    assert after["values"] == {name: text for name, text in typed.items() if text}
    for name in {*NAMES, "units"}:
        same = typed.get(name, "") == before["values"].get(name, "")
        was, by_now = before["changed"].get(name, 0), after["changed"].get(name, 0)
        assert by_now == was if same else by_now >= max(now, was + 1)
    merged = call("merge", before, after)
    assert merged["values"] == after["values"]


def test_what_nobody_touched_has_no_date(call: Call) -> None:
    usual = {"way": "swatch", "units": "cm"}
    nothing: Dated = {"values": {}, "changed": {}}
    begun = call("change", nothing, {**usual, "foot.length": "24"}, {"usual": usual, "now": 5})
    assert begun["changed"] == {"foot.length": 5}
    chosen = call("change", begun, {**usual, "way": "yarn"}, {"usual": usual, "now": 6})
    assert chosen["changed"] == {"foot.length": 6, "way": 6}
    back = call("change", chosen, {"way": "swatch"}, {"usual": usual, "now": 7})
    assert back["changed"]["way"] == 7


def test_of_storage_only_dates_are_read(call: Call) -> None:
    raw = {"a": 5, "b": -1, "c": "7", "d": 1.5, "e": 1e300, "f": None}
    assert call("datesOf", raw) == {"a": 5}
    nones: list[Any] = [None, "text", 7, []]
    for none in nones:
        assert call("datesOf", none) == {}
    assert call("newest", {"a": 5, "b": 9}) == 9
    assert call("newest", {}) == 0
