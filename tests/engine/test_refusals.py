"""What cannot be answered: said at its field with a way out that really is one, and all at once."""

from __future__ import annotations

import re
from copy import deepcopy
from time import process_time
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine import api
from engine.read.errors import SHOWN_MOST, Refused
from engine.say.aloud import text
from engine.sock import plan as planning
from tests.asking import answer, asked, plan, refused
from tests.engine.drawn_requests import Json, knittable
from tests.engine.drawn_requests import plan as plan_of

NAMES = [
    "units", "foot", "person", "cylinder", "fabric", "sock",
    "length", "ball_girth", "heel_girth", "ankle_girth", "calf_girth",
    "sex", "child", "height", "weight", "age", "shoe_size", "system", "size",
    "slots", "stitches", "rounds", "swatch", "yarn", "needles", "flat_width", "pulled_width",
    "cuff", "leg", "heel", "toe", "left", "kind", "every", "length_ease", "foot_length_of_sock",
    "again", "other_foot",
]  # fmt: skip
LEAVES = (
    st.none()
    | st.booleans()
    | st.integers(-10, 400)
    | st.integers(-(10**15), 10**15)
    | st.floats()
    | st.text(max_size=20)
    | st.sampled_from(
        ["24.6 cm", "9 3/8 in", "7.5 / in", "30 / 10 cm", "400 m / 100 g", "hem", "rib", "woman",
         "EU", "4 %", "60 kg", "5 ft 6 in", "", " ", "x" * 200, "cm", "in", "no"]
    )
)  # fmt: skip


def garbage(leaves: st.SearchStrategy[Any] = LEAVES) -> st.SearchStrategy[Any]:
    """Anything JSON can hold, with names of the request among its keys."""
    keys = st.sampled_from(NAMES) | st.text(max_size=8)
    return st.recursive(
        leaves,
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(keys, inner, max_size=6),
        max_leaves=25,
    )


@st.composite
def spoilt(draw: st.DrawFn) -> Json:
    """A request that could be knitted but for one or a few fields, which hold anything."""
    request = draw(knittable())
    request["person"] = {"sex": "woman", "shoe_size": {"system": "EU", "size": 39}}
    for _ in range(draw(st.integers(1, 3))):
        at = request
        while True:
            name = draw(st.sampled_from([*at, draw(st.sampled_from(NAMES))]))
            if isinstance(at.get(name), dict) and draw(st.integers(0, 4)):
                at = at[name]
                continue
            at[name] = draw(garbage())
            break
    return request


def hold(request: object, found: Json) -> None:
    """Assert that an answer is a plan, or a list of whole problems."""
    if "errors" not in found:
        assert found["counts"]["foot"]["rounds"] >= 1
        return
    assert set(found) == {"errors"}
    assert found["errors"]
    for problem in found["errors"]:
        assert set(problem) == {"field", "message", "way_out"}
        assert isinstance(problem["field"], str)
        assert problem["message"].strip()
        assert problem["way_out"].strip()
        assert len(problem["message"]) < 300
        assert "Traceback" not in problem["message"]


@given(garbage())
def test_any_request_is_answered(request: object) -> None:
    hold(request, plan_of(request))


@given(spoilt())
def test_a_spoilt_request_is_answered(request: Json) -> None:
    hold(request, plan_of(request))


@given(garbage())
def test_any_call_is_answered(call: object) -> None:
    found = answer(call)
    assert "errors" in found
    assert all(problem["message"] and problem["way_out"] for problem in found["errors"])


@given(st.dictionaries(st.sampled_from(["foot.length", "foot.heel_girth", "x"]), garbage()))
def test_anything_typed_is_answered(fields: Json) -> None:
    found = answer({"do": "read", "fields": fields, "units": "cm"})
    assert set(found) == {"readings", "errors"}
    assert not set(found["readings"]) & {problem["field"] for problem in found["errors"]}


def put(request: Json, dotted: str, value: object) -> None:
    """Write a value into a request at a dotted name."""
    *groups, name = dotted.split(".")
    at = request
    for group in groups:
        at = at.setdefault(group, {})
    at[name] = value


def offers(problem: dict[str, str]) -> list[str]:
    """What "Did you mean …?" offers."""
    found = re.fullmatch(r"Did you mean (.+)\?", problem["way_out"])
    return re.split(", or | or |, ", found[1]) if found else []


@pytest.mark.parametrize(
    ("changes", "field", "offered"),
    [
        ({"cylinder.slots": 61}, "cylinder.slots", ["60", "62"]),
        ({"sock.cuff.rounds": 21}, "sock.cuff.rounds", ["20", "22"]),
        ({"sock.heel.needles": 30, "sock.heel.left": 11}, "sock.heel.left", ["10", "12"]),
        # 30 - 29 would leave nothing to narrow but one, and 30 is all of them
        ({"sock.heel.needles": 30, "sock.heel.left": 29}, "sock.heel.left", ["28"]),
        ({"sock.heel.needles": 30, "sock.heel.left": 3}, "sock.heel.left", ["2", "4"]),
        ({"sock.heel.needles": 30, "sock.heel.left": 1}, "sock.heel.left", ["10"]),
        ({"sock.heel.needles": 30, "sock.heel.left": 30}, "sock.heel.left", ["10"]),
        # 54 = 2 x 27 = 3 x 18 = 6 x 9; of 2 to 8
        (
            {"cylinder.slots": 54, "sock.cuff.kind": "mock rib", "sock.cuff.every": 4},
            "sock.cuff.every",
            ["2", "3", "6"],
        ),
    ],
)
def test_what_does_not_come_out_even_is_offered_its_neighbours(
    changes: Json, field: str, offered: list[str]
) -> None:
    with pytest.raises(Refused) as told:
        planning.make(asked(changes))
    (problem,) = told.value.problems
    assert (problem.field, problem.offers) == (field, tuple(offered))
    for offer in offered:
        assert offer in text(problem.way_out)


LENGTHS = ["foot.length", "foot.ball_girth", "foot.heel_girth", "foot.ankle_girth",
           "foot.calf_girth", "person.height", "sock.foot_length_of_sock"]  # fmt: skip


@given(
    field=st.sampled_from(LENGTHS),
    tenths=st.integers(1, 30000),
    unit=st.sampled_from(["", " cm", " in", " mm", " m", " ft", '"']),
    units=st.sampled_from(["in", "cm"]),
)
def test_an_offered_length_mends_its_field(field: str, tenths: int, unit: str, units: str) -> None:
    request = asked({"units": units, field: f"{tenths / 10:g}{unit}"})
    for problem in plan_of(request).get("errors", []):
        for offer in offers(problem):
            assert problem["field"] == field
            put(request, field, offer)
            after = plan_of(request).get("errors", [])
            assert not [p for p in after if re.search("too (small|large)", p["message"])]


@given(
    field=st.sampled_from(["fabric.stitches", "fabric.rounds"]),
    tenths=st.integers(1, 3000),
    over=st.sampled_from(["", " / in", " / cm", " / 10 cm", " / 4 in", " / mm"]),
    units=st.sampled_from(["in", "cm"]),
)
def test_an_offered_gauge_mends_its_field(field: str, tenths: int, over: str, units: str) -> None:
    request = asked({"units": units, field: f"{tenths / 10:g}{over}"})
    for problem in plan_of(request).get("errors", []):
        for offer in offers(problem):
            assert problem["field"] == field
            put(request, field, offer)
            after = plan_of(request).get("errors", [])
            assert not [p for p in after if p["field"] == field]


@pytest.mark.parametrize(
    ("field", "value", "offer"),
    [
        ("foot.length", "24.6 in", "24.6 cm"),
        ("foot.length", "24.6", "24.6 cm"),
        ("foot.length", "246", "246 mm"),
        ("foot.length", "246 cm", "246 mm"),
        ("foot.length", "9 mm", "9 in"),
        ("foot.length", "9 3/8 mm", "9.375 in"),
        ("foot.heel_girth", "31 in", "31 cm"),
        ("person.height", "168 in", "168 cm"),
        ("sock.foot_length_of_sock", "23.6 in", "23.6 cm"),
        ("fabric.rounds", "38 / in", "38 / 10 cm or 38 / 4 in"),
        ("fabric.stitches", "7.5 / 10 cm", "7.5 / in or 7.5 / cm"),
        ("sock.length_ease", "0.4", "0.4 %"),
    ],
)
def test_sense_is_caught_not_type_alone(field: str, value: str, offer: str) -> None:
    assert refused({field: value})[field]["way_out"] == f"Did you mean {offer}?"
    for each in offer.split(" or "):
        assert plan({field: each})


def test_all_problems_are_told_at_once() -> None:
    wrong = {
        "units": "furlongs",
        "foot.length": "24.6 in",
        "foot.heel_girth": "round",
        "person.sex": "goat",
        "person.weight": "6000 kg",
        "person.shoe_size": {"system": "EU", "size": "390"},
        "cylinder.slots": 61,
        "fabric.stitches": "lots",
        "fabric.rounds": "96 / in",
        "fabric.yarn": "thin",
        "sock.cuff": {"kind": "hem", "rounds": 21},
        "sock.leg": {"rounds": -1},
        "sock.heel": {"needles": 30, "left": 11},
        "sock.toe": {"needles": 300},
        "sock.length_ease": "40 %",
        "sock.colour": "red",
    }
    fields = set(refused(wrong))
    whole = {"person.shoe_size": "person.shoe_size.size", "sock.cuff": "sock.cuff.rounds",
             "sock.leg": "sock.leg.rounds", "sock.heel": "sock.heel.left",
             "sock.toe": "sock.toe.needles"}  # fmt: skip
    assert fields == {whole.get(field, field) for field in wrong}


@pytest.mark.parametrize(
    ("changes", "field", "ways"),
    [
        ({"cylinder.slots": 61}, "cylinder.slots", [60, 62]),
        ({"sock.cuff": {"rounds": 21}}, "sock.cuff.rounds", [20, 22]),
        ({"sock.heel": {"needles": 30, "left": 11}}, "sock.heel.left", [10, 12]),
        ({"sock.toe": {"needles": 31, "left": 10}}, "sock.toe.left", [9, 11]),
        ({"sock.toe": {"needles": 8, "left": 7}}, "sock.toe.left", [6]),
        ({"sock.heel": {"needles": 30, "left": 30}}, "sock.heel.left", [10]),
        (
            {"sock.cuff": {"kind": "mock rib", "every": 7}},
            "sock.cuff.every",
            [2, 3, 4, 5, 6],
        ),
    ],
)
def test_each_number_that_is_offered_works(changes: Json, field: str, ways: list[int]) -> None:
    request = asked(changes)
    (problem,) = plan_of(request)["errors"]
    assert problem["field"] == field
    assert [int(n) for n in re.findall(r"\d+", problem["way_out"])] == ways
    for way in ways:
        put(request, field, way)
        assert "errors" not in plan_of(request)


# What each way out writes into which field.
WAYS = {
    "leave-in-heel-and-toe": {"sock.heel.left": "heel", "sock.toe.left": "toe"},
    "leave-in": {"sock.heel.left": "left"},
    "shortest-that-works": {"": "length"},
    "knit-finer": {"fabric.rounds": "rounds"},
}


@given(request=knittable(), shorter=st.integers(950, 1900), of_sock=st.booleans())
def test_each_way_out_of_too_short_works(request: Json, shorter: int, of_sock: bool) -> None:
    """A foot that heel and toe alone outgrow, whether a heel girth was measured or not."""
    field = "sock.foot_length_of_sock" if of_sock else "foot.length"
    put(request, field, f"{shorter / 10} mm")
    found = api.answer({"do": "plan", "request": request})
    assume("errors" in found)
    (problem,) = found["errors"]
    way_out = problem["way_out"]
    if problem["field"] == "cylinder.slots":
        assert way_out["say"] == "fewer-slots"
        return
    assert problem["field"] == field
    for way in way_out.get("ways", [way_out]):
        if way["say"] == "fewer-slots":
            continue
        mended = deepcopy(request)
        for name, value in WAYS[way["say"]].items():
            put(mended, name or field, way[value])
        assert "errors" not in plan_of(mended), way


@pytest.mark.parametrize(
    "dotted",
    ["colour", "foot.lenght", "person.name", "cylinder.needles", "fabric.gauge",
     "fabric.swatch.width", "sock.heels", "sock.heel.rows", "sock.cuff.depth", "sock.leg.length",
     "person.shoe_size.number"],
)  # fmt: skip
def test_a_misspelt_name_is_not_passed_over(dotted: str) -> None:
    problem = refused({dotted: "1"})[dotted]
    assert dotted.rpartition(".")[2] in problem["message"]
    assert problem["way_out"].startswith("Known: ")


HUGE = [10**400, -(10**400), 10**4000, float("inf"), float("nan"), 1e308]


@pytest.mark.parametrize(
    "value",
    [*HUGE, [1], {"a": 1}, True, "\ud800", "x" * 10_000],
    ids=lambda value: ascii(value)[:12],
)
@pytest.mark.parametrize(
    "field",
    ["cylinder.slots", "foot.length", "person.age", "person.shoe_size.system", "sock.cuff.every",
     "sock.leg.rounds", "fabric.swatch.needles", "fabric.yarn", "units"],
)  # fmt: skip
def test_what_no_field_can_hold_is_said_once(field: str, value: object) -> None:
    request = asked({field: value})
    found = answer({"do": "page", "request": request})
    assert set(found) == {"errors"}
    assert [p["field"] for p in found["errors"]].count(field) == 1
    assert not [p for p in found["errors"] if "missing" in p["message"]]


def test_nothing_unread_goes_into_a_link() -> None:
    deep: Json = {}
    for _ in range(3000):
        deep = {"a": deep}
    for junk in (deep, "\ud800", 10**4000, "y" * 9999):
        for cuff in ("hem", "rib"):
            request = asked({"sock.cuff": {"kind": cuff, "every": junk}})
            assert "errors" in answer({"do": "page", "request": request})
        request = asked({"person.shoe_size": {"system": junk}})
        assert "errors" in answer({"do": "page", "request": request})


def unknown_names(many: int) -> float:
    """Processor time in s to answer a request with so many names that nobody knows."""
    request = asked({f"n{at}": at for at in range(many)})
    start = process_time()
    found = answer({"do": "plan", "request": request})
    assert "errors" in found
    return process_time() - start


def test_many_unknown_names_are_refused_in_a_time_that_grows_with_them() -> None:
    """Four times as many: four times as long if each is looked at once, 16 if with all before."""
    few, many = (min(unknown_names(count) for _ in range(3)) for count in (5_000, 20_000))
    assert many < 8 * few


@pytest.mark.parametrize("door", ["plan", "page", "read"])
def test_errors_are_cut_and_say_how_many_more(door: str) -> None:
    names = {f"n{at}": at for at in range(20_000)}
    call = {"do": door, "fields": names, "request": asked(names)}
    errors = answer(call)["errors"]
    assert len(errors) == SHOWN_MOST + 1
    assert [error["field"] for error in errors[:SHOWN_MOST]] == list(names)[:SHOWN_MOST]
    assert errors[-1]["field"] == ""
    assert errors[-1]["message"] == f"{20_000 - SHOWN_MOST:,} more things are wrong."
    assert errors[-1]["way_out"]


def test_as_many_errors_as_are_shown_are_all_of_them() -> None:
    for many, last in ((SHOWN_MOST, f"n{SHOWN_MOST - 1}"), (SHOWN_MOST + 1, "")):
        errors = answer({"do": "plan", "request": asked({f"n{at}": at for at in range(many)})})
        assert errors["errors"][-1]["field"] == last
    assert errors["errors"][-1]["message"] == "1 more thing is wrong."
