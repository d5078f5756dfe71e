"""The tag as the engine tells it: whom the pair fits, and a code for the same counts again."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given

from tests.asking import answer, asked, mm
from tests.engine.answers.test_card import BEYOND
from tests.engine.drawn_requests import Json, knittable, plan
from tests.published.code_reader import pixels, read

PAGE = "https://heelwise.example/"


def tag(request: Json, page: object = PAGE) -> Json:
    return answer({"do": "tag", "request": request, "text": page})


def facts(request: Json) -> dict[str, str]:
    """What it says beside its code, which is dear to draw."""
    return {one["name"]: one["text"] for one in tag(request, "")["facts"]}


def range_in_cm(request: Json) -> tuple[float, float]:
    first, last = re.findall(r"[\d.]+", facts({**request, "units": "cm"})["Fits a foot of"])
    return float(first), float(last)


def test_it_fits_feet_two_to_six_percent_longer_than_the_sock() -> None:
    """Common practice, no published source."""
    request = asked({"sock.foot_length_of_sock": "9 in"})
    sock = mm(plan(request), "foot_length") / 10
    assert range_in_cm(request) == pytest.approx((sock / 0.98, sock / 0.94), abs=0.051)


@given(knittable())
def test_the_foot_it_was_planned_on_is_among_them(request: Json) -> None:
    found = plan(request)
    assume("errors" not in found)
    assume(not (request.get("sock") or {}).get("foot_length_of_sock"))
    ends = range_in_cm(request)
    round_of_it = 5 / found["fabric"]["rounds"]["value"] / 100  # half a round, in cm
    foot = found["measures"]["length"]["value"] / 10
    assert min(ends) - 0.06 - round_of_it <= foot <= max(ends) + 0.06 + round_of_it


def test_a_sock_that_was_meant_tight_fits_its_own_foot() -> None:
    request = asked({"sock.length_ease": "12 %"})
    low, high = range_in_cm(request)
    assert low < 24.6 * 0.95
    assert high == pytest.approx(24.63, abs=0.2)


def test_in_the_knitters_units() -> None:
    assert re.fullmatch(r"\d+( \d/\d)? to \d+( \d/\d)? in", facts(asked())["Fits a foot of"])


@pytest.mark.parametrize(
    ("system", "size", "text"),
    [("EU", "39", "EU 39"), ("US women", "8½", "US women 8.5"), ("UK", " 6.50 ", "UK 6.5")],
)
def test_the_shoe_size_where_it_was_told(system: str, size: str, text: str) -> None:
    told = asked({"person.shoe_size": {"system": system, "size": size}})
    assert facts(told)["Shoe size"] == text
    assert "Shoe size" not in facts(asked())


def test_a_shoe_size_follows_from_the_feet_that_the_sock_fits() -> None:
    """ISO 19407 (third-hand): EU counts Paris points of 2/3 cm and two more; women's US sizes are
    one above men's."""
    request = {**asked({"person": None}), "units": "cm"}
    low, high = range_in_cm(request)
    sizes = facts(request)["Shoe size, about"]
    first, last = map(int, re.findall(r"\d+", sizes))
    assert sizes.startswith("EU ")
    assert (first, last) == pytest.approx((low * 1.5 + 2, high * 1.5 + 2), abs=0.6)
    both = facts(asked({"person": None}))["Shoe size, about"]
    women, men = (re.findall(r"[\d.]+", part) for part in both.split(","))
    assert [float(one) - float(other) for one, other in zip(women, men, strict=True)] == [1, 1]
    assert "US men" not in facts(asked())["Shoe size, about"]  # a woman's


def test_its_code_opens_the_same_counts_and_nothing_of_the_person() -> None:
    request = asked({"person.shoe_size": {"system": "EU", "size": "39"}, "person.height": "1.7 m"})
    address = read(pixels(tag(request)["code"]))
    assert address == PAGE + "#" + answer({"do": "page", "request": request})["counts_link"]
    opened = answer({"do": "open", "link": address.partition("#")[2]})["request"]
    assert not {"foot", "other_foot", "person"} & set(opened)
    assert plan(opened)["counts"]["foot"]["rounds"] == plan(request)["counts"]["foot"]["rounds"]


def test_sock_two_is_told_by_its_own_length() -> None:
    longer = asked({"first_sock": {"foot_rounds": 48, "length": "9 in"}})
    first, last = range_in_cm(longer)
    assert first == pytest.approx(mm(plan(longer), "foot_length") / 9.8, abs=0.051)
    assert last > first


@pytest.mark.parametrize("page", ["", None, "https://heelwise.example/" + "x" * 200])
def test_no_code_where_there_is_no_address_or_paper_could_not_hold_it(page: object) -> None:
    assert tag(asked(), page)["code"] is None
    assert ("too long" in tag(asked(), page)["code_words"]) == bool(page)


def test_why_a_pair_has_no_code_is_said_and_a_code_needs_no_words() -> None:
    assert tag(asked())["code_words"] == ""
    beyond = tag(asked(BEYOND))
    assert beyond["code"] is None
    assert "this short or this tall" in beyond["code_words"]


def test_its_code_opens_the_bands_of_a_shaped_leg() -> None:
    leg = {"height": "16 in", "girths": [{"height": "12 in", "girth": "15 in"}]}
    request = asked({"sock.leg": leg})
    address = read(pixels(tag(request)["code"]))
    again = answer({"do": "open", "link": address.partition("#")[2]})["request"]
    bands = [plan(one)["counts"]["leg"]["bands"] for one in (request, again)]
    assert len(bands[0]) > 1
    assert [one["rounds"] for one in bands[0]] == [one["rounds"] for one in bands[1]]


def test_its_one_line_of_cautions() -> None:
    said = tag(asked())["caution"].casefold()
    for word in ("wash before", "wool", "elastic", "allerg", "diabetic", "numb", "clinician"):
        assert word in said
    assert len(said) < 220, "one small line"


@pytest.mark.parametrize("request_", [{}, None, asked({"cylinder.slots": 61})])
def test_a_pair_without_counts_has_a_tag_that_says_nothing_of_them(request_: Json) -> None:
    bare = tag(request_)
    assert (bare["facts"], bare["code"]) == ([], None)
    assert bare["caution"] == tag(asked())["caution"]


def test_after_a_short_sock_one_it_fits_the_feet_that_both_fit() -> None:
    """As long as the longer less 2 %, as long as the shorter less 6 %; in between by half each.

    Common practice, no published source: a sock is 2 to 6 % shorter than its foot.
    """
    request = asked({"first_sock": {"foot_rounds": "55", "length": "23 cm"}})
    found = plan(request)
    two, one = mm(found, "foot_length") / 10, found["pair"]["one"]["value"] / 10
    assert one < two
    ends = sorted((two / 0.98, one / 0.94))
    assert range_in_cm(request) == pytest.approx(ends, abs=0.051)


def test_the_sock_on_it_is_the_one_that_is_planned() -> None:
    request = asked()
    assert tag(request, "")["drawing"] == answer({"do": "page", "request": request})["bare"]
    assert tag({"units": "cm"})["drawing"] is None
