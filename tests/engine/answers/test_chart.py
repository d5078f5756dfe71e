"""The table over sizes: the same counts as a plan, cell by cell, and nothing that misleads."""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked, plan

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


def test_its_cells_hold_the_same_figures() -> None:
    found = table({"by": "EU", "first": 36, "last": 40})
    head, *rows = found["cells"]
    assert len(rows) == 5
    assert head[0] == "Shoe size EU"
    assert len(head) == 2 + len(found["columns"])
    for row, shown in zip(rows, found["rows"], strict=True):
        assert row[0] == shown["label"]
        assert float(row[1]) == pytest.approx(shown["length"]["value"], abs=0.05)
        assert row[2:] == shown["rounds"]


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
        ({"by": "length", "first": "7 cm"}, "chart.first"),
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


@pytest.mark.parametrize(
    ("by", "changes"),
    [
        ("length", {}),
        ("EU", {}),
        ("length", {"sock__foot_length_of_sock": "9 in"}),
        ("EU", {"first_sock": {"foot_rounds": 48, "length": "9 in"}}),
        ("US women", {"foot__heel_girth": "13.4 in", "units": "cm"}),
    ],
)
def test_the_row_of_this_foot_says_what_the_plan_says(by: str, changes: dict[str, Any]) -> None:
    """The row next to it said 48, and the plan 46."""
    found = table({"by": by}, **changes)
    named = {name.replace("__", "."): value for name, value in changes.items()}
    sheet = plan(named)
    own, column = found["own"], found["column"]
    assert column["exact"]
    assert own["rounds"][column["at"]] == sheet["counts"]["foot"]["rounds"]
    assert own["length"] == {
        name: sheet["measures"]["length"][name] for name in ("value", "unit", "text", "other")
    }
    lengths = [row["length"]["value"] for row in found["rows"]]
    lengths.insert(own["at"], own["length"]["value"])
    assert lengths == sorted(lengths)
    assert own["label"] not in [row[0] for row in found["cells"]]


def test_the_column_of_the_sock_s_own_fabric_is_named() -> None:
    """9.6 rounds per inch; of columns that were typed, the nearest, and that it is not the one."""
    found = table({"by": "length"}, units="cm")
    assert found["columns"][found["column"]["at"]]["other"] == "9.6 / in"
    typed = table({"by": "length", **BY_HAND})
    assert typed["column"] == {"at": 1, "exact": False}


def test_a_foot_and_a_fabric_outside_the_table_have_no_row_and_no_column() -> None:
    away = table({"by": "length", "first": "27 cm", "loosest": "8 / in", "firmest": "9 / in"})
    assert (away["own"], away["column"]) == (None, None)
    assert table({"by": "EU", "last": 36})["own"] is None


def test_the_table_names_a_flap_and_two_at_first() -> None:
    flap = table({"by": "length"}, sock__heel={"kind": "flap", "flap": 8})
    assert any("after a flap of 8 rows" in line for line in flap["assumptions"])
    two = table({"by": "length"}, sock__heel={"kind": "two at first"})
    assert "The heel: two needles held in rows 1 and 2." in two["assumptions"]
    usual = table({"by": "length"})
    assert len(two["assumptions"]) == len(usual["assumptions"]) + 1
