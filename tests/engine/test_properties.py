"""What must hold for every foot and fabric, whatever the figures."""

from __future__ import annotations

import json
import math
import re
from typing import Any

from hypothesis import assume, example, given
from hypothesis import strategies as st

from tests.asking import answer, answer_text, on_a_page
from tests.engine.drawn_requests import Json, knittable, plan

MM_PER_INCH = 25.4  # exact: the international yard and pound agreement of 1959


def rows_of_sole(found: Json) -> int:
    """The rounds and rows along the sole, which are the sock's length.

    Of the heel those that widen it, of the toe those that narrow it, with the rounds before it.
    """
    counts = found["counts"]
    narrow = counts.get("before_toe", {"rounds": 0})["rounds"]
    if "left" in counts["toe"]:
        narrow += counts["toe"]["rows"] - counts["toe"]["needles"] + counts["toe"]["left"]
    return int(
        counts["foot"]["rounds"] + counts["heel"]["needles"] - counts["heel"]["left"] + narrow
    )


def by_hand(found: Json) -> float:
    """What is knitted on by hand, in mm: 5 cm of a toe left open."""
    return 50.0 if found["counts"]["toe"].get("kind") == "left open" else 0.0


def plain(length: float, stitches: float = 30, rounds: float = 38, **more: Any) -> dict[str, Any]:
    """A plain request in metric: length in mm, fabric per 10 cm."""
    return {
        "foot": {"length": f"{length} mm", **more},
        "cylinder": {"slots": 60},
        "fabric": {"stitches": f"{stitches} / 10 cm", "rounds": f"{rounds} / 10 cm"},
    }


def whole_counts(found: Json) -> Json:
    """The counts without the words, which differ by units."""
    return {
        part: {name: n for name, n in count.items() if name not in ("words", "exact")}
        if isinstance(count, dict)
        else count
        for part, count in found["counts"].items()
    }


@example(eighths=48, ball=None, heel=None, slots=54, stitches=24, rounds=50)
@given(
    eighths=st.integers(48, 100),
    ball=st.integers(56, 88) | st.none(),
    heel=st.integers(80, 116) | st.none(),
    slots=st.sampled_from((54, 60, 64, 72)),
    stitches=st.integers(24, 44),
    rounds=st.integers(30, 56),
)
def test_the_same_foot_in_cm_and_inch_has_the_same_counts(
    eighths: int, ball: int | None, heel: int | None, slots: int, stitches: int, rounds: int
) -> None:
    """Eighths of an inch are whole 0.003175 cm and quarter stitches per inch whole to 9 places."""
    measures = {"length": eighths, "ball_girth": ball, "heel_girth": heel}
    taken = {name: n for name, n in measures.items() if n is not None}
    imperial = {
        "units": "in",
        "foot": {name: f"{n // 8} {n % 8}/8 in" for name, n in taken.items()},
        "fabric": {"stitches": f"{stitches / 4} / in", "rounds": f"{rounds / 4} / in"},
    }
    metric = {
        "units": "cm",
        "foot": {name: f"{n * MM_PER_INCH / 80:.6f} cm" for name, n in taken.items()},
        "fabric": {"stitches": f"{stitches} / 10.16 cm", "rounds": f"{rounds} / 10,16 cm"},
    }
    one, other = (plan({**each, "cylinder": {"slots": slots}}) for each in (imperial, metric))
    if "errors" in one:
        problems = [sorted(p["field"] for p in each["errors"]) for each in (one, other)]
        assert problems[0] == problems[1]
        return
    assert whole_counts(one) == whole_counts(other)
    for name, quantity in one["measures"].items():
        assert (quantity["text"], quantity["other"]) == (
            other["measures"][name]["other"],
            other["measures"][name]["text"],
        )


@given(length=st.integers(1800, 3000), more=st.integers(0, 500), rounds=st.integers(28, 60))
def test_a_longer_foot_never_has_fewer_rounds(length: int, more: int, rounds: int) -> None:
    short = plan(plain(length / 10, rounds=rounds))
    long = plan(plain((length + more) / 10, rounds=rounds))
    assume("errors" not in short)
    assert long["counts"]["foot"]["rounds"] >= short["counts"]["foot"]["rounds"]
    assert long["counts"]["leg"]["rounds"] >= short["counts"]["leg"]["rounds"]
    assert long["range"]["foot"]["low"] >= short["range"]["foot"]["low"]
    assert long["range"]["foot"]["high"] >= short["range"]["foot"]["high"]


@given(
    length=st.integers(1800, 3000),
    rounds=st.integers(280, 600),
    finer=st.integers(0, 100),
    stitches=st.integers(240, 440),
)
def test_a_finer_fabric_never_has_fewer_rounds(
    length: int, rounds: int, finer: int, stitches: int
) -> None:
    coarse = plan(plain(length / 10, stitches / 10, rounds / 10))
    fine = plan(plain(length / 10, stitches / 10, (rounds + finer) / 10))
    assume("errors" not in coarse)
    assert fine["counts"]["foot"]["rounds"] >= coarse["counts"]["foot"]["rounds"]


@given(request=knittable(), more=st.integers(0, 400))
def test_the_sole_never_shrinks_with_a_longer_foot(request: Json, more: int) -> None:
    """Whatever else is asked, heel girth measured or not."""
    length = float(request["foot"]["length"].removesuffix(" mm"))
    longer = {**request, "foot": {**request["foot"], "length": f"{length + more / 10:.1f} mm"}}
    one, other = plan(request), plan(longer)
    assume("errors" not in one and "errors" not in other)
    assert rows_of_sole(other) >= rows_of_sole(one)


@given(knittable())
def test_the_sock_is_as_long_as_it_was_aimed_at_to_half_a_round(request: Json) -> None:
    """T = foot length x (1 - 4 %): common practice, no published source."""
    found = plan(request)
    assume("errors" not in found)
    per_mm = float(request["fabric"]["rounds"].removesuffix(" / 10 cm")) / 100
    aimed = float(request["foot"]["length"].removesuffix(" mm")) * 0.96 - by_hand(found)
    assert abs(rows_of_sole(found) - aimed * per_mm) <= 0.5 + 1e-6
    assert found["counts"]["foot"]["rounds"] >= 1
    long = rows_of_sole(found) / per_mm + by_hand(found)
    assert abs(found["sizes"]["foot_length"]["value"] - long) <= 0.051


def _quantities(value: object) -> list[Json]:
    if isinstance(value, dict):
        inner = [found for each in value.values() for found in _quantities(each)]
        return [value, *inner] if {"text", "other", "value", "unit"} <= set(value) else inner
    if isinstance(value, list):
        return [found for each in value for found in _quantities(each)]
    return []


@given(knittable())
def test_an_answer_is_whole(request: Json) -> None:
    """JSON there and back, finite numbers, words everywhere, and the sum is that of its parts."""
    found = plan(request)
    if "errors" in found:
        return
    text = json.dumps(found, allow_nan=False)
    assert json.loads(text) == found
    assert json.loads(answer_text(json.dumps({"do": "plan", "request": request}))) == found
    shown = _quantities(found)
    assert len(shown) > 30
    for quantity in shown:
        assert math.isfinite(quantity["value"])
        assert quantity["text"].strip()
        assert quantity["other"].strip()
        assert not re.search(r"nan|inf\b|e[+-]?\d", quantity["text"] + quantity["other"])
    for measure in found["measures"].values():
        assert measure["low"] <= measure["value"] <= measure["high"]
    low, high = found["range"]["foot"]["low"], found["range"]["foot"]["high"]
    assert low <= found["counts"]["foot"]["rounds"] <= high
    parts = found["yarn"]["sections"].values()
    assert abs(sum(p["grams"]["value"] for p in parts) - found["yarn"]["grams"]["value"]) < 0.05
    all_of = ["cuff", "leg", "heel", "foot", "before_toe", "toe", "end"]
    order = [part for part in all_of if part in found["counts"]]
    assert [part["part"] for part in found["parts"]] == order
    assert found == plan(request), "the same question has the same answer"


@given(knittable())
def test_a_page_holds_plan_picture_and_link(request: Json) -> None:
    page = answer({"do": "page", "request": request})
    if "errors" in page:
        bare = [{**problem} for problem in page["errors"]]
        for problem in bare:
            assert all(isinstance(offer, str) and offer for offer in problem.pop("offers"))
        assert {"errors": bare} == plan(request)
        return
    assert page["plan"] == on_a_page(plan(request))
    assert page["picture"][0].startswith("<svg")
    opened = answer({"do": "open", "link": "#" + page["link"]})
    assert on_a_page(plan(opened["request"])) == page["plan"]
