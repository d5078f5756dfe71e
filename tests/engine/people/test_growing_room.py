"""Room to grow: what a child's foot is given, what is asked of it, and where it is counted.

Expected lengths are worked out by hand: (foot + room) less 4 %, at 378 rounds per m.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked, noted, plan, refused

FIELD = "sock.growing_room"
CHILD: dict[str, Any] = {
    "units": "cm",
    "foot": {"length": "17 cm"},
    "person": {"child": True, "age": 5},
    "cylinder.slots": 48,
    "fabric": {"stitches": "3 / cm", "rounds": "3.78 / cm"},
}


@pytest.mark.parametrize(
    ("room", "exact"), [("0", 61.69 - 32), ("5 mm", 63.50 - 32), ("1/4 in", 63.99 - 32)]
)
def test_it_is_added_to_the_foot_before_the_ease(room: str, exact: float) -> None:
    found = plan({**CHILD, FIELD: room})["counts"]["foot"]
    assert found["exact"] == pytest.approx(exact, abs=0.01)


def test_left_out_none_is_added_and_a_childs_is_asked_for() -> None:
    without = plan(CHILD)
    assert (
        without["counts"]["foot"]["exact"] == plan({**CHILD, FIELD: "0"})["counts"]["foot"]["exact"]
    )
    assert "4 mm" in noted(without)[FIELD]
    for told in ({FIELD: "0"}, {FIELD: "4 mm"}, {"sock.foot_length_of_sock": "17 cm"}):
        assert FIELD not in noted(plan({**CHILD, **told}))
    assert FIELD in noted(answer({"do": "foot", "request": asked(CHILD)}))


def test_without_an_age_the_age_is_asked_for() -> None:
    assert "age" in noted(plan({**CHILD, "person": {"child": True}}))[FIELD]


@pytest.mark.parametrize("person", [{"sex": "woman"}, {"age": 18}, {"sex": "woman", "age": 17}])
def test_of_the_grown_nobody_asks(person: dict[str, object]) -> None:
    assert FIELD not in noted(plan({"person": person}))


def test_too_much_is_refused_and_5_beside_cm_is_asked_about() -> None:
    found = refused({**CHILD, FIELD: "5"})[FIELD]
    assert "5 mm" in found["way_out"]
    assert FIELD in refused({**CHILD, FIELD: "31 mm"})


def test_the_shortest_foot_that_is_offered_counts_it_in() -> None:
    """Without the room that foot has to be as much longer."""
    shortest = []
    for room in ("0", "10 mm"):
        foot = {"length": "9 cm", "ball_girth": "205 mm"}  # which the tube is not wider than
        short = {**CHILD, "foot": foot, "cylinder.slots": 60, FIELD: room}
        words = refused(short)["foot.length"]["way_out"]
        at = words.split("with these settings is ")[1].split(" cm")[0]
        there = {**short, "foot": {**foot, "length": f"{at} cm"}}
        assert plan(there)["counts"]["foot"]["rounds"] == 1
        shortest.append(float(at))
    assert shortest[0] - shortest[1] == pytest.approx(1.0, abs=0.051)


def test_the_table_of_feet_has_it_too() -> None:
    """The row of this foot's length says what this foot gets."""
    request = asked({**CHILD, FIELD: "8 mm"})
    call = {"do": "chart", "request": request, "chart": {"first": "17 cm", "last": "18 cm"}}
    found = answer(call)
    row = next(one for one in found["rows"] if one["length"]["value"] == pytest.approx(170))
    assert row["rounds"] == found["own"]["rounds"]
    assert (
        row["rounds"][found["column"]["at"]]
        == plan({**CHILD, FIELD: "8 mm"})["counts"]["foot"]["rounds"]
    )
    assert any("8 mm" in line or "0.8 cm" in line for line in found["assumptions"])


def test_a_link_without_the_person_knits_the_same() -> None:
    whole = answer({"do": "page", "request": asked({**CHILD, FIELD: "8 mm"})})
    sent = answer({"do": "open", "link": whole["counts_link"]})["request"]
    assert "8 mm" not in str(sent)
    again = answer({"do": "plan", "request": sent})
    assert again["counts"]["foot"]["rounds"] == whole["plan"]["counts"]["foot"]["rounds"]
