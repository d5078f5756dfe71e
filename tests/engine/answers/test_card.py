"""The card as the engine tells it: every count of the plan, and boxes that end where it does."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given

from tests.asking import answer, asked
from tests.engine.drawn_requests import Json, knittable, plan

# A foot of 95 mm, the shortest there is, less 15 % of ease, at rounds 9 mm high: no sock can be set
# to be so short.
BEYOND: Json = {
    "foot": {"length": "80 mm"},
    "cylinder.slots": 24,
    "fabric": {"stitches": "16 / 10 cm", "rounds": "10.5 / 10 cm"},
    "sock": {
        "length_ease": 0.15,
        "heel": {"needles": 8, "left": 6},
        "toe": {"needles": 8, "left": 6},
    },
}
ADDRESS = "https://heelwise.example/#1.AbCdEfGh"


PARTS = {
    "cuff": "Cuff",
    "leg": "Leg",
    "heel": "Heel",
    "foot": "Foot",
    "before_toe": "Before the toe",
    "toe": "Toe",
    "end": "After the toe",
}


def card(request: Json, address: object = ADDRESS) -> Json:
    return answer({"do": "card", "request": request, "text": address})


@given(knittable())
def test_every_count_stands_on_it_and_its_boxes_end_there(request: Json) -> None:
    found = plan(request)
    assume("errors" not in found)
    counts, made = found["counts"], card(request, "")  # a code is dear to draw
    titles = [part["title"] for part in made["parts"]]
    names = [*PARTS] if "before_toe" in counts else [n for n in PARTS if n != "before_toe"]
    names = names if "end" in counts else names[:-1]
    assert titles == [PARTS[name] for name in names]
    for name, part in zip(names, made["parts"], strict=True):
        count = counts[name]
        if "rows" in count:
            turned = f"{count['needles']}→{count['left']}→{count['needles']}"
            assert (part["figure"], part["boxes"][-1]) == (turned, count["rows"])
        else:
            rounds = count.get("rounds", 0)  # none of a toe that is gathered or left open
            assert part["figure"] == str(rounds)
            assert part["boxes"][-1:] == ([rounds] if rounds else [])
        ends = [0, *part["boxes"]]
        assert all(0 < end - begun <= 10 for begun, end in pairwise(ends))
        assert all(end % 10 == 0 for end in part["boxes"][:-1])


def test_sock_two_has_boxes_of_its_own() -> None:
    assert card(asked())["socks"] == ["1", "2"]
    knitted = asked({"first_sock": {"foot_rounds": 48, "length": "9 in"}})
    two = card(knitted)
    assert two["socks"] == ["2"]
    assert two["parts"][3]["figure"] == str(plan(knitted)["counts"]["foot"]["rounds"])


def test_the_yarn_as_it_was_told_and_a_line_to_write_on_where_it_was_not() -> None:
    def yarn(changes: Json) -> str:
        facts = {one["name"]: one["text"] for one in card(asked(changes))["facts"]}
        return str(facts["Yarn"])

    assert yarn({}) == ""
    assert yarn({"fabric.yarn": " Nm 4.2 "}) == "Nm 4.2"
    assert yarn({"fabric.yarn": "Nm 9", "fabric.strands": 2}) == "2 × Nm 9"
    along = {"fabric.yarn": "Nm 9", "fabric.strands": "1", "fabric.along": "20 tex"}
    assert yarn(along) == "Nm 9, with 20 tex"


def test_the_bands_of_a_leg_stand_on_it() -> None:
    leg = {"height": "16 in", "girths": [{"height": "12 in", "girth": "15 in"}]}
    shaped = card(asked({"sock.leg": leg}))
    bands = plan(asked({"sock.leg": leg}))["counts"]["leg"]["bands"]
    assert len(shaped["bands"]) == len(bands) > 0
    last = bands[-1]
    assert shaped["bands"][-1] == f"Round {last['from_round']}: {last['stitches']['text']}"
    line = [
        {
            "needles": 60,
            "rounds": 60,
            "flat_width": f"{width} cm",
            "length": f"{width * 1.55:.2f} cm",
            "mark": mark,
        }
        for width, mark in ((10.2, 7), (9.0, 5))
    ]
    marked = asked({"sock.leg": leg, "fabric": {"swatches": line, "mark": 7}})
    assert card(marked)["bands"][-1].split(": ")[1] in ("mark 6½", "mark 7½")
    assert card(asked())["bands"] == []


@pytest.mark.parametrize(
    ("address", "drawn"),
    [(ADDRESS, True), ("h" * 213, True), ("h" * 214, False), ("h" * 999, False), ("", False)],
)
def test_a_code_only_where_paper_can_hold_it(address: str, drawn: bool) -> None:
    """213 bytes are version 10 at level M: ISO/IEC 18004:2015, table 7 (from memory)."""
    assert (card(asked(), address)["code"] is not None) == drawn


def test_why_there_is_no_code_is_said_in_one_line() -> None:
    assert card(asked())["code_words"] == ""
    assert "too long" in card(asked(), "h" * 214)["code_words"]
    assert card(asked(), "")["code_words"] == "", "no address was asked for"
    tiny = asked(BEYOND)
    assert "this short or this tall" in card(tiny, "")["code_words"]


def test_no_plan_no_card() -> None:
    assert "errors" in card(asked({"cylinder.slots": 61}))
    assert card(asked(), None)["code"] is None
