"""A plan passed on without its person: the very same counts, and nothing said of anybody."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine.sock import plan as planning
from tests.asking import answer, asked, drawn
from tests.engine.drawn_requests import Json, knittable

HOST = "https://heelwise.example/#"
BYTES_OF_VERSION_10_M = 213  # ISO/IEC 18004:2015, table 7 (from memory)
OF_THE_PERSON = {
    *("foot", "other_foot", "person", "girths", "height", "again", "toe_breadth", "stock"),
    *("ball_girth", "heel_girth", "ankle_girth", "calf_girth"),
    *("sex", "child", "age", "weight", "shoe_size", "size"),
}


def page(request: Json) -> Json:
    return answer({"do": "page", "request": request})


def opened(link: str) -> Json:
    request: Json = answer({"do": "open", "link": link})["request"]
    return request


def whole_counts(found: Json) -> Json:
    """Every count as whole numbers, the bands of a leg with their marks, and no words."""
    counts = {
        part: {
            name: value for name, value in count.items() if name not in ("words", "exact", "bands")
        }
        if isinstance(count, dict)
        else count
        for part, count in found["plan"]["counts"].items()
    }
    bands = [
        {name: band[name] for name in ("rounds", "from_round", "to_round", "mark")}
        for band in found["plan"]["counts"]["leg"]["bands"]
    ]
    return {**counts, "bands": bands}


def in_mm(found: Json) -> dict[str, Any]:
    """Every size of the sock, and each band's lower end and stitches, to what a ruler cannot see.

    A stitch goes along with six decimals, so a size may end in another tenth of a mm.
    """
    plan = found["plan"]
    bands = plan["counts"]["leg"]["bands"]
    return {
        **{name: pytest.approx(size["value"], abs=0.11) for name, size in plan["sizes"].items()},
        "ends": [pytest.approx(band["to_height"]["value"], abs=0.11) for band in bands],
        "stitches": [pytest.approx(band["stitches"]["value"], rel=1e-4) for band in bands],
    }


def names_in(value: Any) -> set[str]:
    """Every field's name, however deep."""
    if isinstance(value, dict):
        return set(value).union(*map(names_in, value.values()))
    return set().union(*map(names_in, value)) if isinstance(value, list) else set()


@st.composite
def at_marks(draw: st.DrawFn) -> Json:
    """A yarn swatched at two or three marks, so that the bands of a leg have marks of their own."""
    tubes = [
        {
            "needles": 60,
            "flat_width": f"{width} mm",
            "rounds": 60,
            "length": f"{draw(st.integers(140, 180))} mm",
            "mark": mark,
        }
        for width, mark in zip((92, 100, 108), (6, 8, 10), strict=True)
    ]
    return {"swatches": tubes[: draw(st.sampled_from((2, 3)))], "mark": draw(st.integers(6, 10))}


@st.composite
def of_a_person(draw: st.DrawFn) -> Json:
    """A request that can be knitted, with all that may be known of a person and of sock one."""
    request = draw(knittable())
    request["foot"]["toe_breadth"] = f"{draw(st.integers(60, 110))} mm"
    request["other_foot"] = {"length": f"{draw(st.integers(150, 330))} mm"}
    request["person"] = {
        "sex": draw(st.sampled_from(("woman", "man"))),
        "age": draw(st.integers(16, 90)),
        "height": f"{draw(st.integers(150, 200))} cm",
        "weight": f"{draw(st.integers(45, 120))} kg",
        "shoe_size": {"system": "EU", "size": str(draw(st.integers(35, 47)))},
    }
    if draw(st.booleans()):
        girths = draw(st.lists(st.integers(180, 450), min_size=1, max_size=3))
        request["sock"]["leg"] = {
            "height": f"{draw(st.integers(200, 500))} mm",
            "girths": [
                {"height": f"{100 + 90 * at} mm", "girth": f"{girth} mm"}
                for at, girth in enumerate(girths)
            ],
        }
    if draw(st.booleans()):
        request["fabric"] = draw(at_marks())
    if draw(st.booleans()):
        request["sock"]["length_ease"] = draw(st.sampled_from(("0", "2 %", "0.1")))
    if draw(st.booleans()):
        request["first_sock"] = {
            "foot_rounds": draw(st.integers(20, 90)),
            "length": f"{draw(st.integers(150, 320))} mm",
        }
    if draw(st.booleans()):
        request["stock"] = {"left": "40 g"}
    return request


@given(of_a_person())
def test_the_very_same_counts_and_nothing_of_the_person(request: Json) -> None:
    found = page(request)
    assume("errors" not in found)
    assert opened(found["link"])["person"] == request["person"], "the whole link stays whole"
    assert found["counts_link"], found["counts_link_words"]
    bare = opened(found["counts_link"])
    sock = {name: told for name, told in bare.get("sock", {}).items() if name != "colors"}
    assert not names_in(sock) & OF_THE_PERSON, "but a color has the name of its part"
    assert not names_in(bare.get("first_sock")) & (OF_THE_PERSON - {"length"})
    assert set(bare) <= {"units", "cylinder", "fabric", "sock", "first_sock"}
    again = page(bare)
    assert "errors" not in again, again
    assert whole_counts(again) == whole_counts(found)
    assert in_mm(again) == in_mm(found)
    assert again["counts_link"] == again["link"] == found["counts_link"], "passed on as it came"
    assert found["counts_link_words"] == "", "nothing that is knitted stays behind"


def test_a_sock_two_whose_foot_is_just_under_half_a_round_stays_so() -> None:
    """Written to a tenth of a mm, its length came to a round more."""
    request = {
        "units": "cm",
        "foot": {"length": "176.0 mm", "toe_breadth": "60 mm"},
        "cylinder": {"slots": 40},
        "fabric": {"stitches": "52.00 / 10 cm", "rounds": "57.20 / 10 cm"},
        "other_foot": {"length": "150 mm"},
        "first_sock": {"foot_rounds": 20, "length": "150 mm"},
    }
    found = page(request)
    again = page(opened(found["counts_link"]))
    assert whole_counts(again) == whole_counts(found)


@pytest.mark.parametrize(
    "changes",
    [
        {"foot": {}, "person": None, "sock.foot_length_of_sock": "9 in"},
        {"foot": {"length": " "}, "person": {"sex": ""}, "sock.foot_length_of_sock": "9 in"},
    ],
)
def test_where_nothing_was_said_of_a_person_there_is_one_link(changes: Json) -> None:
    found = page(asked(changes))
    assert found["counts_link"] == found["link"]
    assert found["counts_link_words"] == ""


@pytest.mark.parametrize(
    "changes",
    [
        {"foot": {"length": "9 in"}, "person": None},
        {"foot": {}, "person": {"child": True}, "sock.foot_length_of_sock": "6 in"},
        {"foot": {}, "person": None, "other_foot": {"length": "9 in"}},
        {
            "foot": {},
            "person": None,
            "sock": {
                "foot_length_of_sock": "9 in",
                "leg": {"girths": [{"height": "8 in", "girth": "11 in"}]},
            },
        },
    ],
)
def test_whatever_is_said_of_a_person_makes_two(changes: Json) -> None:
    found = page(asked(changes))
    assert found["counts_link"] != found["link"]
    assert not names_in(opened(found["counts_link"])) & OF_THE_PERSON


SHAPED: Json = {"sock.leg": {"height": "16 in", "girths": [{"height": "12 in", "girth": "15 in"}]}}
MARKED: Json = {
    "fabric": {
        "swatches": [
            {
                "needles": 60,
                "flat_width": f"{w} mm",
                "rounds": 60,
                "length": f"{long} mm",
                "mark": at,
            }
            for w, long, at in ((92, 140, 6), (112, 172, 10))
        ],
        "mark": 8,
        "yarn": "400 m / 100 g",
    }
}


@pytest.mark.parametrize("changes", [SHAPED, {**SHAPED, **MARKED}])
def test_the_bands_of_a_leg_go_along(changes: Json) -> None:
    """A shaped leg opened as so many plain rounds, lower and tighter at the calf."""
    found = page(asked(changes))
    bands = found["plan"]["counts"]["leg"]["bands"]
    assert len(bands) > 1
    bare = opened(found["counts_link"])
    assert set(bare["sock"]["leg"]) == {"bands"}
    known = {"rounds", "mark"} if changes != SHAPED else {"rounds", "stitches"}
    assert all(set(band) <= known for band in bare["sock"]["leg"]["bands"])
    again = page(bare)
    assert whole_counts(again) == whole_counts(found)
    assert in_mm(again) == in_mm(found)
    assert again["plan"]["steps"] == found["plan"]["steps"]


def test_a_sock_beyond_what_can_be_set_says_so() -> None:
    """A foot of 80 mm, the shortest there is, less 15 % of ease, at rounds 7 mm high."""
    tiny: Json = {
        "units": "cm",
        "foot": {"length": "80 mm"},
        "cylinder": {"slots": 24},
        "fabric": {"stitches": "16 / 10 cm", "rounds": "14 / 10 cm"},
        "sock": {
            "length_ease": 0.15,
            "heel": {"needles": 8, "left": 6},
            "toe": {"needles": 8, "left": 6},
        },
    }
    found = page(tiny)
    assert found["plan"]["sizes"]["foot_length"]["value"] >= 70
    assert found["counts_link"]
    tiny["fabric"]["rounds"] = "13 / 10 cm"
    short = page(tiny)
    assert short["plan"]["sizes"]["foot_length"]["value"] < 70
    assert short["counts_link"] is None
    assert short["counts_link_words"].endswith(".")


@pytest.mark.parametrize(
    ("system", "two", "form", "mm"),
    [
        ("in", False, r"\d+\.\d{3} in", 25.4),
        ("in", True, r"\d+\.\d{5} in", 25.4),
        ("cm", False, r"\d+\.\d{2} cm", 10.0),
        ("cm", True, r"\d+\.\d{4} cm", 10.0),
    ],
)
def test_the_length_is_written_as_finely_as_it_is_wanted_and_no_finer(
    system: str, two: bool, form: str, mm: float
) -> None:
    """In tenths of a mm or thousandths of an inch, for a sock two a hundred times finer."""
    sock_one = {"first_sock": {"foot_rounds": 51, "length": "227 mm"}} if two else {}
    request = asked({"units": system, "foot.length": "243.7 mm", **sock_one})
    told = opened(page(request)["counts_link"])["sock"]["foot_length_of_sock"]
    assert re.fullmatch(form, told)
    sock = planning.make(request)
    exact = max(sock.foot_length, sock.aimed) if two else sock.foot_length
    last = 10.0 ** -len(told.split()[0].partition(".")[2])
    assert float(told.split()[0]) == pytest.approx(exact / mm, abs=0.51 * last)


def test_an_ordinary_plan_fits_a_code_of_version_10() -> None:
    swatch = {
        "swatch": {
            **{"needles": "60", "flat_width": "10.2 cm", "rounds": "60", "length": "15,6 cm"},
            "pulled_width": "18 cm",
        },
        "yarn": "400 m / 100 g",
    }
    for changes in ({}, {"units": "cm"}, {"fabric": swatch}, {"fabric": swatch, "units": "cm"}):
        found = page(asked(changes))
        for link in (found["counts_link"], found["link"]):
            assert len(HOST + link) <= BYTES_OF_VERSION_10_M
            assert answer({"do": "code", "text": HOST + link})["version"] <= 10
        assert json.dumps(opened(found["counts_link"]))


def test_no_fit_is_judged_on_a_foot_that_is_not_there() -> None:
    """The second phone said that it fits, of a foot guessed from the sock itself."""
    found = page(asked())
    assert found["plan"]["fit"]
    again = page(opened(found["counts_link"]))
    assert again["plan"]["fit"] == []
    assert again["plan"]["counts"]["foot"]["rounds"] == found["plan"]["counts"]["foot"]["rounds"]
    assert "comfortable" in drawn(found["picture"])
    assert "comfortable" not in drawn(again["picture"])
