"""Sock after sock on one machine: what each begins on, what its end leaves, and what it saves."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from engine.answers import steps
from engine.machine.cylinder import Side
from engine.machine.operations import CORD, WASTE
from engine.machine.standing import bare, left_behind, on_waste
from engine.sections.registry import CUFFS
from engine.sock import plan as planning
from engine.sock.sock import Sock
from engine.sock.string import PLACES, Place
from tests.asking import answer, asked, noted, plan, refused

CUFF = {"mock rib": {"every": 4}, "mock rib hem": {"every": 4}}


def made(place: str, **changes: Any) -> Sock:
    return planning.make(asked({"sock.string": place, **changes}))


@pytest.mark.parametrize("slots", range(24, 121, 2))
@pytest.mark.parametrize("side", get_args(Side))
@pytest.mark.parametrize("kind", CUFFS)
def test_nothing_is_left_of_a_string_on_any_cylinder(kind: str, side: Side, slots: int) -> None:
    request = asked({"cylinder": {"slots": slots, "carrier": side}})
    request["foot"] = {"length": "36 cm"}
    request["fabric"] = {"stitches": "40 / 10 cm", "rounds": "52 / 10 cm"}
    even = slots % 4 == 0
    every = {"every": 4 if even else 2} if kind in CUFF else {}
    request["sock"] = {"string": "pair", "cuff": {"kind": kind, **every}}
    one = planning.make(request)
    ends = one.sock_two.work[-1].ends
    assert left_behind(ends) is None
    # The next sock finds the machine as one that begins on another's waste yarn takes it to be.
    between, follows = one.work[-1].ends, on_waste(one.cylinder)
    for name in ("work", "held", "loops", "ribs", "at", "yarn", "on", "along", "weight", "scrap"):
        assert getattr(between, name) == getattr(follows, name), name


@pytest.mark.parametrize("place", PLACES)
def test_only_a_pair_before_which_none_is_on_the_machine_is_cast_on(place: Place) -> None:
    after, followed = PLACES[place]
    one = made(place)
    done = [[o["op"] for o in steps.operations(sock)] for sock in (one, one.sock_two)]
    assert [ops.count("cast on") for ops in done] == [not after, 0]
    assert [ops.count("crank off") for ops in done] == [0, not followed]


@pytest.mark.parametrize("place", PLACES)
def test_waste_yarn_is_counted_by_its_rounds(place: Place) -> None:
    """60 needles: 10 rounds to cast on, 19 of scrap and 1 of cord between, 10 to come off."""
    after, followed = PLACES[place]
    one = made(place)
    rounds = (0 if after else 10) + 19 + (19 if followed else 10)
    assert one.waste_loops + one.sock_two.waste_loops == 60 * rounds
    apart = planning.make(asked())
    assert 2 * apart.waste_loops == 60 * 40
    yarns = [
        sum(n for w in s.work for m, n in w.made if m.yarn == CORD) for s in (one, one.sock_two)
    ]
    assert yarns == [60, 60 * followed]


def test_the_grams_of_waste_yarn_follow_from_the_rounds() -> None:
    apart, string = plan()["yarn"]["waste"], plan({"sock.string": "pair"})["yarn"]["waste"]
    saved = 1 - string["grams"]["value"] / apart["grams"]["value"]
    assert saved == pytest.approx(1 / 40, abs=0.01)  # of 40 rounds the cord's one


@pytest.mark.parametrize("place", PLACES)
def test_counts_and_yarn_of_the_sock_are_the_same_in_a_string(place: Place) -> None:
    one, apart = made(place), planning.make(asked())
    for sock in (one, one.sock_two):
        assert sock.stitches == apart.stitches
        assert sock.foot_rounds == apart.foot_rounds
        assert sock.top_above_floor == apart.top_above_floor


def test_a_pair_apart_answers_as_before() -> None:
    told = answer({"do": "knit", "request": asked({"sock.string": "apart"})})
    usual = answer({"do": "knit", "request": asked()})
    assert told == usual
    assert "second" not in usual


def test_the_counter_gets_the_steps_of_both_socks() -> None:
    knit = answer({"do": "knit", "request": asked({"sock.string": "pair"})})
    one, two = knit["steps"], knit["second"]
    assert one[-1]["part"] == "between"
    assert sum(step.get("rounds", 0) for step in one if step["part"] == "between") == 20
    assert two[0]["text"].startswith("Move the weight up to the waste yarn.")
    assert "the next" not in " ".join(step["text"] for step in two)
    texts = [step["text"] for step in two if step["part"] == "finish"]
    assert "Pull out every ravel cord. The socks come apart." in texts
    assert texts.index("Graft the toe of each sock.") > texts.index(
        "Pull out every ravel cord. The socks come apart."
    )
    assert not any("Cast on" in step["text"] for step in two)


def test_a_mock_rib_moves_the_loops_of_the_waste_yarn() -> None:
    one = made("pair", **{"sock.cuff.kind": "mock rib", "sock.cuff.every": 4})
    moved = [o for o in steps.operations(one.sock_two) if o["op"] == "move"]
    assert [(len(o["stitches"]), o["leave"]) for o in moved] == [(15, "out")]
    assert not any(o["op"] == "move" for o in steps.operations(one))


def test_a_string_is_remarked_on_beside_its_field() -> None:
    assert "Sock one hangs below meanwhile" in noted(plan({"sock.string": "pair"}))["sock.string"]


def test_no_sock_follows_a_gathered_toe() -> None:
    problem = refused({"sock.string": "pair", "sock.toe.kind": "gathered"})["sock.string"]
    assert "comes off the needles" in problem["message"]
    assert "another toe" in problem["way_out"]
    assert plan({"sock.string": "pair", "sock.toe.kind": "left open"})["counts"]["toe"]


@pytest.mark.parametrize("place", PLACES)
def test_a_link_without_the_person_keeps_the_string(place: Place) -> None:
    page = answer({"do": "page", "request": asked({"sock.string": place})})
    again = answer({"do": "open", "link": page["counts_link"]})["request"]
    assert again["sock"]["string"] == place


def test_a_card_tells_what_lies_between_the_socks() -> None:
    request = asked({"sock.string": "pair"})
    card = answer({"do": "card", "request": request, "text": ""})
    assert "Between the socks: waste yarn 10, ravel cord 1, waste yarn 9." in card["bands"]


def test_sock_two_measured_before_it_is_knitted_keeps_its_place() -> None:
    """The cord may be pulled early: sock two then is the last of the string."""
    told = {"first_sock": {"foot_rounds": "46", "length": "9.4 in"}, "sock.string": "pair"}
    knit = answer({"do": "knit", "request": asked(told)})
    assert "errors" not in knit, knit
    assert knit["steps"][0]["part"] == "waste"
    assert not any("Cast on" in step["text"] for step in knit["steps"])
    assert "second" not in knit


def test_a_string_begins_on_a_bare_machine_unless_a_pair_is_on_it() -> None:
    first, last = made("first"), made("last")
    assert first._begins == bare(first.cylinder)
    assert last._begins == on_waste(last.cylinder)
    assert last._begins.on == WASTE
