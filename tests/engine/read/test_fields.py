"""Lists in a request: each group keeps its place, and what is no list is told so."""

from __future__ import annotations

from engine.read.fields import Fields


def test_each_group_of_a_list_keeps_its_place() -> None:
    fields = Fields({"girths": [{"height": "10 cm"}, None, {"height": "x"}]})
    rows = fields.parts("girths", 3)
    assert [row.where("height") for row in rows] == [f"girths.{n}.height" for n in range(3)]
    assert [row.empty() for row in rows] == [False, True, False]
    assert fields.parts("left_out", 3) == []
    assert not fields.problems


def test_what_is_no_list_of_groups_is_refused_beside_its_field() -> None:
    wrong: tuple[object, ...] = ("x", {"0": {}}, ["x"], [{}, {}, {}, {}])
    for raw in wrong:
        fields = Fields({"girths": raw})
        assert fields.parts("girths", 3) == []
        assert [problem.field for problem in fields.problems] == ["girths"]
        assert next(iter(fields.problems)).way_out
