"""A set: every size is the plan that a hand would make for it, or is marked with why it is not."""

from __future__ import annotations

import time
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine import api, sources
from engine.people import shoe_size
from tests.asking import answer, asked
from tests.engine.drawn_requests import Json, knittable
from tests.engine.instructions.asking_sets import call, heads, made, refused, request
from tests.engine.instructions.hands import for_size

EU = ["36", "38", "40", "42", "44"]


def by_hand(told: Json, by: str, size: str) -> Json:
    """The plan of a size as anybody would type it: the size, or the length, and the same sock."""
    kept = {name: value for name, value in told.items() if name not in ("foot", "person")}
    if by == "length":
        return answer({"do": "plan", "request": {**kept, "foot": {"length": size}}})
    shoe = {"shoe_size": {"system": by, "size": size}}
    return answer({"do": "plan", "request": {**kept, "person": shoe}})


def agrees(one: Json, plan: Json) -> None:
    """Every figure of a size is that of its plan."""
    assert one["counts"] == plan["parts"]
    sizes = plan["sizes"]
    assert one["finished"] == {
        "foot": sizes["foot_length"],
        "girth": sizes["tube_girth"],
        "height": sizes["top_above_floor"],
    }
    assert one["foot_length"]["value"] == plan["measures"]["length"]["value"]
    assert one["ball_girth"]["value"] == plan["measures"]["ball_girth"]["value"]
    assert one["yarn"]["needed"]["grams"] == plan["yarn"]["grams"]
    assert one["yarn"]["with_margin"] == plan["yarn"]["with_margin"]
    assert [color["needed"]["grams"] for color in one["yarn"]["colors"]] == [
        color["grams"] for color in plan["yarn"]["colors"]
    ]
    assert plan["range"]["foot"]["words"].startswith(one["how_sure"])


@given(knittable(), st.lists(st.integers(1000, 3400), min_size=1, max_size=4, unique=True))
def test_every_count_is_that_of_the_plan_made_by_hand(told: Json, lengths: list[int]) -> None:
    sizes = [f"{length / 10} mm" for length in sorted(lengths)]
    found = answer(call(told, "length", sizes))
    if "errors" in found:  # heel and toe are longer than any foot
        assert {one["field"] for one in found["errors"]} <= {"cylinder.slots", "set.sizes"}
        return
    assert len(found["sizes"]) == len(sizes)
    for one, size in zip(found["sizes"], sizes, strict=True):
        plan = by_hand(told, "length", size)
        if "errors" in plan:
            assert not one["fits"]
            assert one["counts"] == []
            assert one["reason"].startswith(plan["errors"][0]["message"])
        else:
            agrees(one, plan)


@pytest.mark.parametrize("by", shoe_size.SYSTEMS)
def test_a_shoe_size_is_the_plan_for_it(by: str) -> None:
    low, high = shoe_size.RANGE[by]
    sizes = [f"{low + share * (high - low):g}" for share in (0.5, 0.75)]
    told = request(48)
    found = made(told, by, sizes)
    for one, size in zip(found["sizes"], sizes, strict=True):
        sex = {"US men": "man", "US women": "woman"}.get(by)
        person = {"sex": sex, "shoe_size": {"system": by, "size": size}}
        plan = answer({"do": "plan", "request": {**told, "person": person}})
        agrees(one, plan)


def test_the_maker_and_her_pair_are_in_no_size() -> None:
    """Her own measures, sock one and what is left of her yarn change no figure."""
    hers = asked(
        {
            "first_sock": {"foot_rounds": 48, "length": "9 in"},
            "stock": {"left": "31 g", "sock_one": "33 g"},
            "person": {"sex": None, "age": "70"},
            "sock.foot_length_of_sock": "9 in",
        }
    )
    nobody = asked({"foot": {}, "person": {}})
    sets = [made(told, "EU", EU) for told in (hers, nobody)]
    assert sets[0]["sizes"] == sets[1]["sizes"]
    assert sets[0]["document"] == sets[1]["document"]


def test_sizes_come_smallest_first_and_once() -> None:
    found = made(request(), "EU", ["44", "36", 40, "36"])
    assert [one["label"] for one in found["sizes"]] == ["36", "40", "44"]


@pytest.mark.parametrize(
    ("by", "text", "labels"),
    [
        ("EU", "36, 38, 40", ["36", "38", "40"]),
        ("EU", "36 38 40", ["36", "38", "40"]),
        ("EU", "38,5", ["38.5"]),
        ("EU", "36,38,40", ["36", "38", "40"]),
        ("UK", "6 1/2; 7", ["6.5", "7"]),
        ("US women", "6 to 10", ["6", "7", "8", "9", "10"]),
        ("US women", "5,5-7,5, 9", ["5.5", "6.5", "7.5", "9"]),
        ("EU", "36–38 and 40", ["36", "37", "38", "40"]),
        ("length", "22 cm; 23,5 cm and 25 cm", ["22 cm", "23.5 cm", "25 cm"]),
    ],
)
def test_sizes_may_be_written_as_one_text(by: str, text: str, labels: list[str]) -> None:
    assert [one["label"] for one in made(request(), by, text)["sizes"]] == labels


def test_a_range_of_too_many_sizes_is_refused() -> None:
    found = refused(call(request(), "EU", "16 to 50"))
    assert list(found) == ["set.sizes"]


def test_a_foot_that_heel_and_toe_outgrow_is_marked_and_stays() -> None:
    small, large = made(request(), "length", "90 mm; 240 mm")["sizes"]
    assert (small["fits"], large["fits"]) == (False, True)
    assert "60 slots are many for this foot" in small["reason"]


def test_a_size_that_the_cylinder_does_not_fit_is_marked_and_stays() -> None:
    """By the sock's own stretch around the ball; the cylinder that is named fits it."""
    low_bad, _, _, high_bad = map(float, sources.BALL_STRETCH)
    found = made(request(), "EU", ["20", "26", "30", "36", "40", "44", "48", "52"])
    assert {one["fits"] for one in found["sizes"]} == {True, False}
    for one in found["sizes"]:
        stretch = one["finished"] and one["ball_girth"]["value"] / one["finished"]["girth"]["value"]
        if one["fits"]:
            assert (one["reason"], one["slots"]) == (None, None)
            assert low_bad <= stretch < high_bad
            continue
        assert one["reason"]
        assert f"{one['slots']} slots would fit" in one["reason"]
        (other,) = made(request(one["slots"]), "EU", [one["label"]])["sizes"]
        assert other["fits"]
        girth = other["finished"]["girth"]["value"]
        assert low_bad <= other["ball_girth"]["value"] / girth < high_bad


def test_a_sock_that_is_just_wider_than_its_foot_is_not_0_percent_wider() -> None:
    """60 needles at 7.5 stitches an inch are 8 in around, which some foot's ball just is not."""
    lengths = [f"{mm} mm" for mm in range(205, 219)]
    found = made(asked({"foot": {}, "person": {}, "units": "cm"}), "length", lengths)
    reasons = [one["reason"] for one in found["sizes"] if not one["fits"]]
    assert any("just wider than the foot" in reason for reason in reasons)
    assert not any(" 0 %" in reason for reason in reasons)


def test_a_foot_shorter_than_heel_and_toe_has_a_dash() -> None:
    found = made(request(100), "length", ["12 cm", "25 cm", "27 cm"])
    short, *others = found["sizes"]
    assert (short["counts"], short["finished"], short["yarn"]) == ([], None, None)
    assert short["reason"].startswith("100 slots are many for this foot")
    assert all(one["counts"] for one in others)
    lists = [block for block in found["document"]["all_sizes"] if block["kind"] == "list"]
    (foot,) = (one for block in lists for one in block["items"] if one.startswith("Foot: knit"))
    counts = [part["count"] for one in others for part in one["counts"] if part["part"] == "foot"]
    assert foot == f"Foot: knit – ({counts[0]}, {counts[1]}) rounds."
    assert "instructions" not in heads(found["document"]["one_size"][0])


def test_swatches_stay_those_of_her_own_cylinder() -> None:
    """A swatch of which no needles were told was knitted on hers, whichever would fit."""
    swatch = {"flat_width": "10 cm", "rounds": "60", "length": "15.8 cm"}
    told = {**request(), "fabric": {"swatch": swatch}}
    with_needles = {**request(), "fabric": {"swatch": {**swatch, "needles": "60"}}}
    both = [made(one, "EU", ["26", "52"])["sizes"] for one in (told, with_needles)]
    assert both[0] == both[1]
    assert all(one["slots"] not in (None, 60) for one in both[0])


def test_the_document_is_of_its_kinds_and_one_size_has_no_others() -> None:
    found = made(request(), "EU", EU, details={"title": "Plain", "errata": "e"})
    document = found["document"]
    wanted = ["sizes", "machine", "yarn", "gauge", "measures", "terms", "instructions", "counts"]
    for blocks in (document["all_sizes"], *document["one_size"]):
        names = heads(blocks)
        assert len(names) == len(set(names))
        assert set(wanted) <= set(names)
        assert blocks[0] == {"kind": "heading", "level": 1, "id": "title", "text": "Plain"}
        levels = [block["level"] for block in blocks if block["kind"] == "heading"]
        assert all(after <= before + 1 for before, after in pairwise(levels))
        for block in blocks:
            if block["kind"] == "table":
                assert all(len(row["cells"]) == len(block["head"]) - 1 for row in block["rows"])
    for size, blocks in zip(EU, document["one_size"], strict=True):
        assert {"kind": "text", "text": f"For size {size} alone."} in blocks
        items = [one for block in blocks if block["kind"] == "list" for one in block["items"]]
        assert not [one for one in items if "38 (" in one or "–" in one]


def test_other_row_gauges_say_what_their_plans_say() -> None:
    found = made(request(), "EU", EU)
    (table,) = (
        block
        for block in found["document"]["all_sizes"]
        if block["kind"] == "table" and block["caption"] == "Foot rounds at other row gauges"
    )
    gauges = [head.removeprefix("Rounds at ") for head in table["head"][2:]]
    assert len(gauges) >= 3
    for row in table["rows"]:
        for gauge, rounds in zip(gauges, row["cells"][1:], strict=True):
            told = request()
            told["fabric"] = {**told["fabric"], "rounds": gauge}
            assert by_hand(told, "EU", row["head"])["counts"]["foot"]["rounds"] == int(rounds)


@pytest.mark.parametrize("fabric", [{"yarn": "400 m / 100 g"}, {"stitches": "30 / 10 cm"}])
def test_a_guessed_gauge_is_cautioned_against(fabric: Json) -> None:
    told = {**request(), "fabric": fabric}
    whole = (made(one, "EU", "38")["document"]["all_sizes"] for one in (told, request()))
    guessed, known = (
        [block["text"] for block in blocks if "Knit the swatch before" in str(block)]
        for blocks in whole
    )
    assert known == []
    assert len(guessed) == 1
    assert "uessed" in guessed[0]


def test_rows_for_a_file_hold_the_counts() -> None:
    found = made(request(), "EU", EU)
    head, *rows = found["rows"]
    assert all(len(row) == len(head) for row in rows)
    for one, row in zip(found["sizes"], rows, strict=True):
        told = dict(zip(head, row, strict=True))
        assert told["Size"] == one["label"]
        assert [told[f"{part['title']}, knit"] for part in one["counts"]] == [
            part["figure"] for part in one["counts"]
        ]


def test_a_leg_that_is_knitted_otherwise_in_some_sizes_has_a_list_for_each() -> None:
    """A short leg is plain where the plain rounds before the heel are all of it."""
    told = request(24, sock={"cuff": {"kind": "rib"}, "leg": {"kind": "ribbed", "plain": 20}})
    sizes = ["9 cm", "12 cm", "14 cm"]
    counts = [by_hand(told, "length", size)["counts"]["leg"]["rounds"] for size in sizes]
    assert counts[0] <= 20 < counts[1] < counts[2]
    blocks = made(told, "length", sizes)["document"]["all_sizes"]
    ways = [
        (block["text"], after["items"])
        for block, after in pairwise(blocks)
        if block["kind"] == "text"
        and block["text"].startswith("For size")
        and block["text"].endswith(":")
    ]
    small, others = "For size 9 cm:", "For sizes 12 cm and 14 cm:"
    assert [of for of, _ in ways] == [small, small, others]
    (_, cuff), (_, leg), (_, long_leg) = ways
    cleared = [
        any(step.startswith("Take the ribber off") for step in steps)
        for steps in (cuff, leg, long_leg)
    ]
    assert cleared == [True, False, True]
    assert leg == [f"Leg: knit {counts[0]} rounds."]
    assert long_leg[0] == f"Leg: knit – ({counts[1] - 20}, {counts[2] - 20}) rounds of 1×1 rib."


def test_stripes_stand_once_as_far_as_all_sizes_go() -> None:
    """Then each size goes on by itself: 4 and 2 rounds in turn, over all of the leg."""
    told = request(sock={"colors": {"leg": "4 A, 2 B"}})
    sizes = ["36", "40", "44"]
    found = made(told, "EU", sizes)
    blocks = found["document"]["all_sizes"]
    at = next(number for number, block in enumerate(blocks) if block.get("id") == "leg")
    end = next(n for n, block in enumerate(blocks) if block.get("id") == "heel")
    wanted = {one["label"]: one["counts"][1]["count"] for one in found["sizes"]}
    read = dict.fromkeys(sizes, 0)
    mine = sizes
    for block in blocks[at:end]:
        if block["kind"] == "text":
            mine = [size for size in sizes if size in block["text"]]
        for item in block.get("items", ()) if block["kind"] == "list" else ():
            for size in mine if ": knit" in item else ():
                told_here = for_size(item, sizes.index(size), len(sizes))
                read[size] += int(told_here.split(" knit ")[1].split()[0])
    assert read == wanted
    lists = [block["items"] for block in blocks[at:end] if block["kind"] == "list"]
    assert len(lists[0]) > 10
    assert all(len(items) < 10 for items in lists[1:])


@pytest.mark.parametrize(
    ("wanted", "field", "words"),
    [
        ({"by": "EU"}, "set.sizes", "No sizes are chosen yet."),
        ({"by": "EU", "sizes": []}, "set.sizes", "No sizes are chosen yet."),
        ({"by": "EU", "sizes": "36, shoe"}, "set.sizes.1", "“shoe” is not a number."),
        ({"by": "EU", "sizes": [3]}, "set.sizes.0", "too small for a shoe size in EU"),
        ({"by": "Mars", "sizes": [3]}, "set.by", "“Mars” is not one of the choices."),
        ({"by": "length", "sizes": ["24"] * 17}, "set.sizes", "Choose 16 sizes or fewer."),
        (
            {"by": "length", "sizes": ["24.61 cm", "24.62 cm"]},
            "set.sizes",
            "Two of these are both 24.6 cm on the tape. Leave one of them out.",
        ),
        ({"by": "length", "sizes": ["9 miles"]}, "set.sizes.0", "“miles”"),
        ({"by": "EU", "sizes": "38", "colour": 1}, "set.colour", "is not known here"),
        ({"by": "EU", "sizes": "38", "details": {"maker": "x" * 201}}, "set.details.maker", "long"),
        (
            {"by": "EU", "sizes": "38", "details": {"notes": "x" * 4001}},
            "set.details.notes",
            "4000",
        ),
        ([], "set", "group"),
        ("x", "set", "group"),
    ],
)
def test_what_cannot_be_is_told_beside_its_field(wanted: Any, field: str, words: str) -> None:
    found = refused({"do": "set", "request": request(), "set": wanted})
    assert words in found[field]


def test_what_is_wrong_with_plan_and_set_is_told_at_once() -> None:
    found = refused(call(request(61), "EU", "3"))
    assert set(found) == {"cylinder.slots", "set.sizes.0"}
    assert refused({"do": "set", "request": None})


def test_heel_and_toe_that_leave_no_rounds_in_any_foot_are_refused_at_the_cylinder() -> None:
    told = request(120)
    told["fabric"] = {"stitches": "12 / 10 cm", "rounds": "14 / 10 cm"}
    found = refused(call(told, "length", ["25 cm"]))
    assert set(found) == {"cylinder.slots"}


def test_her_words_stand_as_she_wrote_them_and_turn_nothing_round() -> None:
    details = {"maker": "Invented: \u202eA. Maker", "notes": "One\u0007.\n\nTwo.", "fibre": "wool"}
    blocks = made(request(), "EU", "38, 40", details=details)["document"]["all_sizes"]
    items = [item for block in blocks if block["kind"] == "list" for item in block["items"]]
    assert "By Invented: A. Maker" in items
    texts = [block["text"] for block in blocks if block["kind"] == "text"]
    assert "One." in texts
    assert "Two." in texts
    assert "Fiber: wool" in texts


DEAR: dict[str, tuple[Json, str, range]] = {
    "usual": ({}, "EU", range(36, 48)),
    "stripes of a round": (
        {"colors": {"leg": "1 A, 1 B", "foot": "1 A, 1 B", "heel": "C"}},
        "EU",
        range(36, 48),
    ),
    "a shaped leg": (
        {"leg": {"bands": [{"rounds": 20, "stitches": "26 / 10 cm"}, {"rounds": 30}]}},
        "EU",
        range(36, 48),
    ),
    "none fits": ({}, "EU child", range(20, 32)),
}


@pytest.mark.alone
@pytest.mark.parametrize("kind", DEAR)
def test_twelve_sizes_take_less_than_300_ms(kind: str) -> None:
    sock, by, all_sizes = DEAR[kind]
    sizes = [str(size) for size in all_sizes]
    told = request(sock=sock)
    api.answer(call(told, by, sizes))
    took = []
    for rounds in range(380, 385):  # another fabric each time, so that nothing is kept
        told["fabric"] = {**told["fabric"], "rounds": f"{rounds / 10} / 10 cm"}
        start = time.process_time()
        found = api.answer(call(told, by, sizes))
        took.append(time.process_time() - start)
        assert len(found["document"]["one_size"]) == 12
    assert min(took) < 0.3
