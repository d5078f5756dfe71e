"""Every door answers what its type says, over many requests, and the types say no more."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine import api
from engine.answers import contract
from engine.answers.contract.shown import Refusal
from tests.asking import answer, asked
from tests.engine.answers.test_anonymous import MARKED, SHAPED, of_a_person
from tests.engine.conforming import strays
from tests.engine.drawn_requests import Json

SHELF = {
    "cylinders": [{"slots": 60, "name": "the old one"}, {"slots": 72}],
    "yarns": [
        {"name": "grey", "yarn": "400 m / 100 g", "left": "40 g"},
        {
            "name": "blue",
            "yarn": "420 m / 100 g",
            "marks": [
                {"mark": "6", "stitches": "8 / in", "rounds": "10.4 / in"},
                {"mark": "9", "stitches": "7 / in", "rounds": "9.1 / in"},
            ],
        },
    ],
}
MEASURED = {"foot_rounds": "48", "length": "23 cm"}
SET = {"by": "EU", "sizes": "36, 46", "details": {"title": "Plain", "notes": "One.\nTwo."}}
HAND = {"left": "30 g", "ball": "50 g", "repeat": "40 m"}
WORKED: list[Json] = [
    asked(),
    asked(SHAPED),
    asked({**SHAPED, **MARKED, "stock": HAND, "foot.toe_breadth": "88 mm"}),
    asked({"fabric": {"yarn": "400 m / 100 g"}, "sock.cuff": {"kind": "mock rib"}}),
    asked({"first_sock": {"foot_rounds": 48, "length": "9 in", "flat_width": "4 in"}, **MARKED}),
    asked({"foot": {}, "sock.foot_length_of_sock": "9 in", "stock": {"left": "31 g"}}),
    asked({"cylinder.slots": 61}),
]


def calls(request: Json) -> dict[str, Json]:
    """A call of every door about one request."""
    text = "https://heelwise.example/#1.AbCdEfGh"
    page = answer({"do": "page", "request": request})
    kept = {"engine": "0.9", "figures": {"foot": "1", "toe": "30→10→30"}}
    link = page.get("link", "")
    more: dict[str, Json] = {
        "again": {"counted": kept},
        "used": {"shelf": SHELF},
        "card": {"text": text},
        "tag": {"text": text},
        "off_sheet": {"sheet": {"bar": "98", "length": "24,5"}, "units": "cm"},
        "code": {"text": text},
        "chart": {"chart": {"by": "EU"}},
        "set": {"set": SET},
        "adopt": {"set": SET, "reader": {"size": "36"}},
        "shelf": {"shelf": SHELF},
        "open": {"link": link},
        "record": {"pairs": [{"request": request, "measured": MEASURED, "name": "a", "day": "1"}]},
        "read": {"fields": {"foot.length": "9 3/8", "stock.left": "far"}, "units": "in"},
    }
    return {do: {"do": do, "request": request, **more.get(do, {})} for do in contract.DOORS}


def off(do: str, found: Json) -> list[str]:
    """Where an answer strays; a refusal is an answer too, and `read` has both."""
    refused = set(found) == {"errors"}
    return list(strays(found, Refusal if refused else contract.DOORS[do], do))


def test_every_door_has_a_type() -> None:
    assert set(contract.DOORS) == set(api._DOORS)


@pytest.mark.parametrize("at", range(len(WORKED)))
@pytest.mark.parametrize("do", contract.DOORS)
def test_a_door_answers_as_its_type_says(do: str, at: int) -> None:
    assert off(do, answer(calls(WORKED[at])[do])) == []


@given(of_a_person(), st.sampled_from(list(contract.DOORS)))
def test_every_door_does_over_any_request(request: Json, do: str) -> None:
    assert off(do, answer(calls(request)[do])) == []


def test_the_check_itself_notices() -> None:
    whole: Any = answer({"do": "foot", "request": asked()})
    assert off("foot", whole) == []
    length = whole["measures"]["length"]
    for spoilt, said in (
        ({**whole, "more": 1}, "more is not in FootAlone"),
        ({"notes": []}, "measures is missing"),
        ({**whole, "notes": {}}, "is no list"),
        ({**whole, "notes": [{"field": 3, "text": ""}]}, "is none of"),
        ({**whole, "measures": []}, "is no group"),
        ({**whole, "measures": {"length": {**length, "from": "told"}}}, "is not among"),
        ({**whole, "measures": {"length": {**length, "low": True}}}, "is no <class 'float'>"),
        ({**whole, "measures": {"length": None}}, "is no Measure"),
    ):
        (stray,) = off("foot", spoilt)
        assert said in stray
