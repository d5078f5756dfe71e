"""The table over sizes: the same counts as a plan, cell by cell, and nothing that misleads."""

from __future__ import annotations

import csv
import io
from typing import Any

import pytest

from engine.api import answer
from tests.asking import asked, plan

BY_HAND = {"loosest": "9 / in", "firmest": "10 / in", "between": "0.5 / in"}


def table(chart: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """A table beside the usual sock of `tests.asking`, with changes by dotted names (`__`)."""
    request = asked({name.replace("__", "."): value for name, value in changes.items()})
    return answer({"do": "chart", "request": request, "chart": chart})


def test_a_nine_inch_sock_as_the_trade_counts_it() -> None:
    """41 rounds at 9 per inch, 45 or 46 at 9.5, 50 at 10: common practice, no published source."""
    nine = {"by": "length", "first": "9 in", "last": "9 in", "step": "1 in", **BY_HAND}
    found = table(nine, sock__length_ease=0)
    (row,) = found["rows"]
    assert row["label"] == "9 in"
    assert [column["text"] for column in found["columns"]] == ["9 / in", "9.5 / in", "10 / in"]
    assert row["rounds"][0] == 41
    assert row["rounds"][1] in (45, 46)
    assert row["rounds"][2] == 50


@pytest.mark.parametrize(
    "by", ["EU", "UK", "US men", "US women", "Japan", "Mondopoint", "US child"]
)
def test_every_cell_is_what_a_plan_of_that_foot_says(by: str) -> None:
    """A plan without a measured heel, so that both take the customary one."""
    found = table({"by": by})
    assert "errors" not in found, found
    for row in found["rows"][::3]:
        size = row["label"]
        for column, rounds in zip(found["columns"], row["rounds"], strict=True):
            sheet = answer(
                {
                    "do": "plan",
                    "request": asked(
                        {
                            "foot": {},
                            "person": {"shoe_size": {"system": by, "size": size}},
                            "fabric.rounds": f"{column['value'] * 25.4:.6f} / in",
                        }
                    ),
                }
            )
            if rounds is None:
                assert [problem["field"] for problem in sheet["errors"]] == ["foot.length"]
            else:  # the shown gauge is rounded in its fifth place
                assert abs(sheet["counts"]["foot"]["rounds"] - rounds) <= 1
                exact = sheet["counts"]["foot"]["exact"]
                assert abs(exact - rounds) <= 0.51


def test_longer_feet_and_finer_gauges_never_take_fewer_rounds() -> None:
    rows = [row["rounds"] for row in table({"by": "length"})["rows"]]
    for row in rows:
        assert row == sorted(row)
    for column in zip(*rows, strict=True):
        assert list(column) == sorted(column)


def test_a_foot_too_short_is_a_dash_and_is_explained() -> None:
    small = {"by": "length", "first": "4 in", "last": "6 in", "step": "1 in"}
    found = table(small)
    assert found["rows"][0]["rounds"] == [None] * 5
    assert any("dash" in line for line in found["assumptions"])
    ordinary = table({"by": "length"})
    assert not any("dash" in line for line in ordinary["assumptions"])


def test_the_csv_holds_the_same_figures() -> None:
    """RFC 4180 through Python's own reader; no cell can be taken for a formula."""
    found = table({"by": "EU", "first": 36, "last": 40})
    head, *rows = csv.reader(io.StringIO(found["csv"], newline=""))
    assert found["csv"].count("\r\n") == 6
    assert head[0] == "shoe size EU"
    assert len(head) == 2 + len(found["columns"])
    for row, shown in zip(rows, found["rows"], strict=True):
        assert row[0] == shown["label"]
        assert float(row[1]) == pytest.approx(shown["length"]["value"], abs=0.05)
        assert [int(cell) for cell in row[2:]] == shown["rounds"]
    assert not any(cell.startswith(("=", "+", "-", "@")) for row in (head, *rows) for cell in row)


def test_the_assumptions_name_heel_toe_ease_and_what_a_size_is() -> None:
    found = table({"by": "EU"}, sock__heel={"needles": 32, "left": 12}, sock__length_ease="5 %")
    words = " ".join(found["assumptions"])
    for said in ("Heel 32 needles down to 12", "toe 30 down to 10", "5 %", "Measure if you can"):
        assert said in words
    assert "Measure if you can" not in " ".join(table({"by": "length"})["assumptions"])


@pytest.mark.parametrize(
    ("chart", "field"),
    [
        ({"by": "barleycorns"}, "chart.by"),
        ({"by": "EU", "first": 44, "last": 40}, "chart.last"),
        ({"by": "EU", "first": 4}, "chart.first"),
        ({"by": "length", "first": "9 cm"}, "chart.first"),
        ({"by": "length", "step": "1 mm"}, "chart.step"),
        ({"by": "EU", "step": 0}, "chart.step"),
        ({"loosest": "2 / in", "firmest": "20 / in"}, "chart.between"),
        ({"loosest": "15 / in"}, "chart.loosest"),  # beyond the firmest that is taken
        ({"firmest": "6 / in"}, "chart.firmest"),
        ({"between": "0 / in"}, "chart.between"),
        ({"rows": 3}, "chart.rows"),
        ("all of them", "chart"),
    ],
)
def test_what_makes_no_table_is_said_at_its_field(chart: Any, field: str) -> None:
    found = table(chart)
    assert set(found) == {"errors"}
    assert field in [problem["field"] for problem in found["errors"]]
    assert all(problem["message"] and problem["way_out"] for problem in found["errors"])


def test_a_plan_that_cannot_be_has_no_table() -> None:
    assert table({"by": "EU"}, cylinder__slots=61)["errors"][0]["field"] == "cylinder.slots"


def test_the_plan_itself_stands_in_its_own_column() -> None:
    own = {"by": "length", "first": "246.3 mm", "last": "246.3 mm", "step": "1 in"}
    found = table(own, foot__heel_girth=None)
    middle = len(found["columns"]) // 2
    assert (
        found["rows"][0]["rounds"][middle]
        == (plan({"foot.heel_girth": None})["counts"]["foot"]["rounds"])
    )


def test_what_was_taken_can_be_typed_and_gives_the_same_table() -> None:
    for by, units in (("EU", "cm"), ("length", "in"), ("length", "cm"), ("Japan", "in")):
        left_out = table({"by": by}, units=units)
        typed = table({"by": by, **left_out["taken"]}, units=units)
        assert typed["taken"] == left_out["taken"]
        labels = [[row["label"] for row in found["rows"]] for found in (left_out, typed)]
        assert labels[0] == labels[1]
        assert len(typed["columns"]) == len(left_out["columns"])


def test_the_row_and_column_of_the_sock_itself_are_named() -> None:
    """A foot of 246.3 mm, by half centimetres and at 9.6 rounds per inch."""
    found = table({"by": "length"}, units="cm")
    own = found["nearest"]
    assert found["rows"][own["row"]]["label"] == "24.5 cm"
    assert found["columns"][own["column"]]["other"] == "9.6 / in"
    away = table({"by": "length", "first": "27 cm", "loosest": "8 / in", "firmest": "9 / in"})
    assert away["nearest"] == {"row": None, "column": None}
    by_size = table({"by": "EU"})
    row = by_size["rows"][by_size["nearest"]["row"]]["length"]["value"]
    assert abs(row - 246.3) <= min(
        abs(other["length"]["value"] - 246.3) for other in by_size["rows"]
    )
    assert table({"by": "EU", "last": 36})["nearest"]["row"] is None
