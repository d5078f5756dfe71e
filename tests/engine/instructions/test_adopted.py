"""A reader's plan: the size she chose, or her own foot, in her own gauge."""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked
from tests.engine.instructions.asking_sets import Json, call, made, refused, request

DETAILS = {"title": "Plain", "maker": "Invented: A. Maker", "version": "2"}
MARKS: Json = {
    "swatch": {"needles": "60", "rounds": "50", "flat_width": "10 cm", "length": "13.2 cm"},
    "mark": "7",
}
MAKERS: dict[str, Json] = {
    "told": request(),
    "hers": asked(
        {"foot": {"length": "23 cm"}, "first_sock": {"foot_rounds": 48, "length": "9 in"}}
    ),
    "by swatch": {**request(), "fabric": {"swatch": MARKS["swatch"]}},
    "rib and colors": request(
        sock={"cuff": {"kind": "set-up rib", "rounds": 30}, "toe": {"kind": "gathered"}},
        stock={"apart": "cuff", "margin": "20 %"},
    ),
}


def adopted(maker: Json, reader: Any, details: Json = DETAILS) -> Json:
    found = answer(call(maker, "EU", "36, 40", do="adopt", details=details, reader=reader))
    assert "errors" not in found, found
    return found


@pytest.mark.parametrize("maker", MAKERS)
def test_a_size_in_the_makers_gauge_has_the_counts_of_the_set(maker: str) -> None:
    told = MAKERS[maker]
    for one in made(told, "EU", "36, 40")["sizes"]:
        found = adopted(told, {"size": one["label"]})
        plan = answer({"do": "plan", "request": found["request"]})
        assert [part["figure"] for part in plan["parts"]] == [
            part["figure"] for part in one["counts"]
        ]


def test_her_own_foot_and_gauge_are_planned_as_her_own() -> None:
    gauge = {"stitches": "28 / 10 cm", "rounds": "36 / 10 cm"}
    foot = {"length": "24.6 cm", "ball_girth": "22.8 cm"}
    found = adopted(request(), {"foot": foot, "fabric": gauge})
    plan = answer({"do": "plan", "request": found["request"]})
    by_hand = {"units": "cm", "cylinder": {"slots": 60}, "fabric": gauge, "foot": foot}
    assert plan["counts"] == answer({"do": "plan", "request": by_hand})["counts"]
    knit = answer({"do": "knit", "request": found["request"]})
    assert knit["foot_rounds"] == plan["counts"]["foot"]["rounds"]


def test_the_cylinder_that_would_fit_is_planned_on() -> None:
    """The needles told of the maker's heel stay with her cylinder."""
    maker = request(sock={"heel": {"needles": 34, "left": 12}})
    (large,) = made(maker, "EU", "50")["sizes"]
    assert not large["fits"]
    asked_for = {"size": "50", "cylinder": {"slots": str(large["slots"]), "carrier": "right"}}
    found = answer(call(maker, "EU", "36, 50", do="adopt", details=DETAILS, reader=asked_for))
    plan = answer({"do": "plan", "request": found["request"]})
    assert plan["counts"]["needles"] == large["slots"]
    assert plan["counts"]["heel"]["needles"] == large["slots"] // 2
    same = {"size": "36", "cylinder": {"slots": 60, "carrier": "right"}}
    assert adopted(maker, same)["request"]["sock"]["heel"] == {"needles": 34, "left": 12}


def test_nothing_of_the_maker_but_her_sock_is_in_it() -> None:
    hers = asked({"knitter": {}, "foot": {"length": "23.11 cm"}, "person": {"age": "47"}})
    found = adopted(hers, {"size": "36"})
    assert "23.11" not in str(found)
    assert "47" not in str(found["request"])
    assert not {"knitter", "first_sock", "other_foot"} & set(found["request"])


def test_bands_at_marks_become_stitches_which_any_machine_has() -> None:
    swatches = [{"needles": "60", "rounds": "50", "flat_width": "8 cm", "length": "10.6 cm"}]
    fabric = {
        "swatch": {**MARKS["swatch"], "mark": "7"},
        "swatches": [{**swatches[0], "mark": "4"}],
        "mark": "7",
    }
    maker = {**request(), "fabric": fabric}
    maker["sock"] = {"leg": {"bands": [{"rounds": 20, "mark": "6"}, {"rounds": 20, "mark": "7"}]}}
    one = made(maker, "EU", "40")["sizes"][0]
    plan = answer({"do": "plan", "request": adopted(maker, {"size": "40"})["request"]})
    assert "errors" not in plan, plan
    assert [part["figure"] for part in plan["parts"]] == [part["figure"] for part in one["counts"]]


@pytest.mark.parametrize(
    ("details", "words"),
    [
        (DETAILS, "From “Plain” by Invented: A. Maker, version 2."),
        ({"title": "Plain", "maker": "Invented: A."}, "From “Plain” by Invented: A.."),
        ({"title": "Plain", "version": "2"}, "From “Plain”, version 2."),
        ({}, "From “Socks on 60 slots”."),
    ],
)
def test_it_says_whose_it_is(details: Json, words: str) -> None:
    """Wherever the plan is shown, and in whatever link it goes on by."""
    planned = adopted(request(), {"size": "36"}, details)["request"]
    page = answer({"do": "page", "request": planned})
    assert page["plan"]["origin"] == words
    assert answer({"do": "knit", "request": planned})["origin"] == words
    assert words in [fact["text"] for fact in page["counted"]["facts"]]
    card = answer({"do": "card", "request": planned, "text": ""})
    assert words in [fact["text"] for fact in card["facts"]]
    for link in (page["link"], page["counts_link"]):
        again = answer({"do": "open", "link": link})["request"]
        assert again["origin"] == planned["origin"]


def test_an_adopted_plan_still_makes_a_code() -> None:
    """With the longest words that a set's own link holds, and a foot of the reader's own."""
    details = {
        "title": "Invented: " + "Ä" * 60,
        "maker": "Invented: B. " + "x" * 60,
        "version": "9",
    }
    maker = made(request(), "EU", "36, 40", details=details)
    assert maker["link"]
    reader = {"foot": {"length": "24.6 cm", "ball_girth": "22.8 cm"}}
    page = answer({"do": "page", "request": adopted(request(), reader, details)["request"]})
    text = f"https://example.org/socks/#{page['link']}"
    assert answer({"do": "code", "text": text})["svg"]


def test_a_set_made_from_an_adopted_plan_says_whose_it_goes_on_from() -> None:
    """And its own readers' plans are from it."""
    planned = adopted(request(), {"size": "36"})["request"]
    found = made(planned, "EU", "38", details={"title": "Invented: mine"})
    texts = [block.get("text") for block in found["document"]["all_sizes"]]
    assert "From “Plain” by Invented: A. Maker, version 2." in texts
    linked = answer({"do": "open", "link": found["link"]})
    again = answer({"do": "adopt", **linked, "reader": {"size": "38"}})["request"]
    assert again["origin"] == {"title": "Invented: mine"}


@pytest.mark.parametrize("origin", [{"title": "x" * 900}, {"maker": "\u202eA\x00"}, {"version": 3}])
def test_a_foreign_origin_is_shown_as_plain_words(origin: Json) -> None:
    words = answer({"do": "plan", "request": asked({"origin": origin})})["origin"]
    assert words.startswith("From “")
    assert len(words) < 250
    assert "\u202e" not in words


@pytest.mark.parametrize(
    ("reader", "field", "words"),
    [
        ({}, "reader.size", "Choose a size of this set, or measure your foot."),
        (None, "reader.size", "Choose a size of this set, or measure your foot."),
        (
            {"foot": {"length": "far"}},
            "reader.foot.length",
            "“far” cannot be read. Write it like",
        ),
        (
            {"foot": {"length": "24 cm", "ball_girth": "2 m"}},
            "reader.foot.ball_girth",
            "is too large for a girth around the ball of the foot",
        ),
        (
            {"size": "40", "fabric": {"stitches": "x", "rounds": "38 / 10 cm"}},
            "reader.fabric.stitches",
            "“x” cannot be read as a count over a length.",
        ),
        ({"size": "39"}, "reader.size", "This set has no size “39”. Choose 36 or 40."),
        ({"shoe": "39"}, "reader.shoe", "is not known here"),
        ([], "reader", "group"),
    ],
)
def test_what_cannot_be_is_told_beside_its_field(reader: Any, field: str, words: str) -> None:
    found = refused(call(request(), "EU", "36, 40", do="adopt", reader=reader))
    assert words in found[field]
