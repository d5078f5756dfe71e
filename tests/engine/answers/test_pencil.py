"""The sock in pencil: whatever is told, there is one, and each thing told narrows its range.

How long women's feet are: ANSUR II 2012, Gordon et al. 2014, NATICK/TR-15/007, 246.3 mm on average
with a standard deviation of 12.4. The working of the foot rounds is common practice, no published
source.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.asking import answer, asked, plan
from tests.engine.answers.test_anonymous import of_a_person
from tests.engine.drawn_requests import Json

FABRIC = {"stitches": "7.5 / in", "rounds": "9.6 / in"}
WOMAN = {"sex": "woman"}
# In the order of the form; each is told besides the ones before.
STEPS: list[dict[str, Any]] = [
    {"units": "in"},
    {"person": WOMAN},
    {"foot": {"length": "246.3 mm"}},
    {"cylinder": {"slots": "60"}},
    {"fabric": FABRIC},
]


def drawn(request: object) -> dict[str, Any]:
    return answer({"do": "pencil", "request": request})


def width(found: dict[str, Any]) -> int:
    return int(found["foot"]["high"] - found["foot"]["low"])


def test_each_thing_told_narrows_it() -> None:
    told: dict[str, Any] = {}
    widths, known = [], []
    for step in STEPS:
        told |= step
        found = drawn(told)
        widths.append(width(found))
        known.append(found["told"])
    assert widths == sorted(widths, reverse=True)
    assert widths[0] > 3 * widths[-1]
    assert known[0] == known[1] == []
    assert known[2:] == [["foot"], ["cylinder", "foot"], ["cylinder", "fabric", "foot"]]


def test_eight_women_in_ten_are_within() -> None:
    """z = 1.2816 either way: feet of 230.4 and 262.2 mm, socks 4 % shorter, at 9.6 to the inch less
    20 rounds each for heel and toe: 83.6 - 40 = 43.6 and 95.1 - 40 = 55.1 rounds."""
    found = drawn({"person": WOMAN, "cylinder": {"slots": 60}, "fabric": FABRIC})["foot"]
    assert found["low"] <= 43.6 <= 55.1 <= found["high"]
    assert found["low"] >= 42
    assert found["high"] <= 58


def test_all_told_it_is_the_plan() -> None:
    sheet, found = plan(), drawn(asked())
    assert found["foot"] == {name: sheet["range"]["foot"][name] for name in ("low", "high")}


@pytest.mark.parametrize(
    ("field", "wrong"),
    [
        ("foot.heel_girth", "abc"),
        ("person.weight", "1 t"),
        ("sock.cuff.kind", "nonsense"),
        ("first_sock.length", "7"),
        ("more", 3),
    ],
)
def test_what_is_wrong_takes_nothing_else_along(field: str, wrong: object) -> None:
    assert drawn(asked({field: wrong})) == drawn(asked())


def test_a_cylinder_or_a_fabric_that_is_wrong_is_as_usual() -> None:
    assert drawn(asked({"cylinder.slots": "61"}))["told"] == ["fabric", "foot"]
    assert drawn(asked({"fabric.rounds": "x"}))["told"] == ["cylinder", "foot"]
    usual = drawn(asked({"cylinder.slots": "61"}))
    assert usual["foot"] == drawn(asked())["foot"], "60 is usual, and what was asked"


def test_a_length_that_is_wrong_is_anybodys() -> None:
    found = drawn(asked({"foot": {"length": "abc"}}))
    assert found["told"] == ["cylinder", "fabric"]
    assert width(found) > width(drawn(asked()))


@given(of_a_person(), st.sets(st.sampled_from(["foot", "person", "cylinder", "fabric", "sock"])))
def test_there_is_always_a_sock_or_a_reason(request: Json, untold: set[str]) -> None:
    """A foot too short for the cylinder that was told has none even so."""
    found = drawn({name: group for name, group in request.items() if name not in untold})
    if "errors" in found:
        assert found["errors"]
    else:
        assert found["picture"].startswith("<svg")
        assert "<text" not in found["picture"]
        assert 0 <= found["foot"]["low"] <= found["foot"]["high"]


@pytest.mark.parametrize("request_", ["x", None, [], {"foot": 3, "person": [], "sock": "y"}])
def test_no_request_is_a_sock_of_nothing_told(request_: object) -> None:
    assert drawn(request_) == drawn({})
