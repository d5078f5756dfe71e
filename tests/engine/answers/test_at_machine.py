"""The sock as the counter at the machine gets it: the plan's steps, and what else must be told."""

from __future__ import annotations

import re
from itertools import groupby
from typing import Any

import pytest
from hypothesis import assume, given

from tests.asking import answer, asked, plan, refused
from tests.engine.drawn_requests import knittable
from tests.engine.needle_by_needle import follow, moved, slot_told, slots_told

Step = dict[str, Any]
# What a row has besides the plan’s, and every step from the first that sets tension or color.
MORE = {"half", "back_where", "hold_where", "remind", "tension", "ticks"}


def knit(changes: dict[str, Any] | None = None) -> dict[str, Any]:
    """What the counter gets for a request that can be knitted."""
    found = answer({"do": "knit", "request": asked(changes)})
    assert "errors" not in found, found
    return found


def texts(found: dict[str, Any], *parts: str) -> list[str]:
    """What is done by hand in some parts, in order."""
    done = [s for s in found["steps"] if s["kind"] == "do" and s["part"] in parts]
    return [text for step in done for text in step.get("ticks", [step["text"]])]


def rows(found: dict[str, Any], part: str) -> list[Step]:
    return [step for step in found["steps"] if step["part"] == part and step["kind"] == "row"]


def check(found: dict[str, Any], sheet: dict[str, Any]) -> None:
    """Hold the counter's sock against the plan of the same request, and follow its needles."""
    plain = [
        {**{name: step[name] for name in step if name not in MORE}, "text": text}
        for step in found["steps"]
        for text in step.get("ticks", [step["text"]])
    ]
    assert plain == sheet["steps"]
    slots = sheet["counts"]["needles"]
    assert (found["slots"], found["parts"]) == (slots, sheet["parts"])
    assert found["foot_rounds"] == sheet["counts"]["foot"]["rounds"]
    assert set(found["pockets"]) == {p for p in ("heel", "toe") if "left" in sheet["counts"][p]}
    for part in found["pockets"]:
        pocket, steps = found["pockets"][part], rows(found, part)
        followed = follow(steps, pocket["needles"])
        assert followed.fewest == pocket["left"] == sheet["counts"][part]["left"]
        assert len(steps) == pocket["rows"] == sheet["counts"][part]["rows"]
        widens = pocket["needles"] - pocket["left"]
        halves = ["narrow"] * (len(steps) - widens) + ["widen"] * widens
        assert [step["half"] for step in steps] == halves
        for step in steps:
            for name in ("back", "hold"):
                needles, words = sorted(moved(step[name])), step[f"{name}_where"]
                assert (not needles) is (words is None)
                if needles:
                    at = [(pocket["first_slot"] + one - 2) % slots + 1 for one in needles]
                    assert slots_told(slots, words) == at


@given(knittable())
def test_it_is_the_plan_of_the_same_request(request: dict[str, Any]) -> None:
    found = answer({"do": "knit", "request": request})
    sheet = answer({"do": "plan", "request": request})
    assume("errors" not in sheet)
    check(found, sheet)


@pytest.mark.parametrize("slots", range(24, 121, 2))
def test_every_cylinder(slots: int) -> None:
    fabric = {"fabric.stitches": "40 / 10 cm", "fabric.rounds": "52 / 10 cm"}
    changes = {"foot.length": "36 cm", "foot.heel_girth": None, "cylinder.slots": slots, **fabric}
    found = knit(changes)
    check(found, plan(changes))
    assert found["pockets"]["heel"]["first_slot"] == 1


@pytest.mark.parametrize(("needles", "left"), [(40, 12), (33, 11), (30, 10), (25, 5), (8, 2)])
def test_pockets_of_other_sizes(needles: int, left: int) -> None:
    changes = {"sock.heel": {"needles": needles, "left": left}}
    found = knit(changes)
    check(found, plan(changes))
    beside, lift = texts(found, "heel")[:2]
    assert f"into hold: the {needles} of the heel stay in work" in lift
    assert slot_told(60, beside.rstrip(".")) == found["pockets"]["heel"]["first_slot"]
    assert ("behind the half marks" in lift) is (needles == 30)
    if needles != 30:
        last = (found["pockets"]["heel"]["first_slot"] + needles - 2) % 60 + 1
        assert slot_told(60, lift.partition(f"needle {needles}, ")[2].rstrip(".")) == last


@pytest.mark.parametrize("left", range(2, 29, 2))
def test_the_weight_is_moved_up_as_often_as_it_says(left: int) -> None:
    """Before the row that follows so many rows; so at least once in any so many and one more."""
    found = knit({"sock.heel": {"needles": 30, "left": left}})
    (said,) = [text for text in texts(found, "heel") if "weight on" in text]
    every = int(re.findall(r"every (\d+) rows", said)[0])
    reminded = [s["row"] for s in rows(found, "heel") if "Move the weight up." in s["remind"]]
    assert reminded == list(range(every + 1, 2 * (30 - left) + 1, every))


def test_only_the_first_row_of_widening_says_that_needles_come_back_from_here() -> None:
    found = knit()
    for part in ("heel", "toe"):
        pocket = rows(found, part)
        assert [step["row"] for step in pocket if "The last row" in str(step["remind"])] == [
            len(pocket)
        ]
        said = [step["row"] for step in pocket if "From here" in str(step["remind"])]
        widens = [step["row"] for step in rows(found, part) if step["back"] is not None]
        assert said == widens[:1]


@pytest.mark.parametrize("part", ["heel", "toe"])
def test_what_is_put_on_for_a_pocket_is_taken_off_after_it(part: str) -> None:
    """One list to tick; the carrier stands at needle 1 before a needle is lifted."""
    found = knit()
    (before,), (after,) = (
        [step["ticks"] for step in steps]
        for kind, steps in groupby(
            [step for step in found["steps"] if step["part"] == part], lambda s: s["kind"]
        )
        if kind == "do"
    )
    for text, words in zip(
        before,
        ("left of needle 1", "Lift the 30", "weight on", "spring on", "reinforcing thread along"),
        strict=True,
    ):
        assert words in text
    for text, words in zip(
        after,
        (
            "the 30 held needles back",
            "spring off",
            "thread out",
            "weight back",
            f"strand at each corner of the {part}",
        ),
        strict=True,
    ):
        assert words in text


HANGING = ["Take the weight off", "Hang the hem", "Check that each needle holds both loops"]
CUFFS: dict[str, tuple[dict[str, Any], int | None, list[str]]] = {
    "hem": (
        {},
        None,
        ["Thread waste", "Cast on", "Hang the weight", "Change to the sock yarn", *HANGING],
    ),
    "rib": (
        {"sock.cuff.kind": "rib"},
        None,
        [
            "Thread waste",
            "Cast on",
            "Hang the weight",
            "Set the ribber",
            "Move every second stitch to the ribber: 30 on each bed",
            "Change to the sock yarn",
            "Move the ribber’s stitches back",
            "Take the ribber off",
        ],
    ),
    "mock rib": (
        {"sock.cuff.kind": "mock rib", "sock.cuff.every": 3},
        3,
        [
            "Take out every 3rd needle: 40 of 60",
            "Thread waste",
            "Cast on",
            "Hang the weight",
            "Change to the sock yarn",
            "Put back the 20 needles",
        ],
    ),
    "set-up rib": (
        {"sock.cuff.kind": "set-up rib", "sock.cuff.every": 3},
        None,
        [
            "Thread waste",
            "Cast on",
            "Hang the weight",
            "Set the ribber on",
            "Move every 3rd stitch to the ribber: 40 on the cylinder, 20 on the ribber",
            "Change to the sock yarn",
            "Set the ribber to idle",
            "Set the ribber to knit again",
            "Move the ribber’s stitches back",
            "Take the ribber off, and its drive pin out",
        ],
    ),
    "picot hem": (
        {"sock.cuff.kind": "picot hem"},
        None,
        [
            "Thread waste",
            "Cast on",
            "Hang the weight",
            "Change to the sock yarn",
            "Move every second stitch onto the needle at its right",
            *HANGING,
        ],
    ),
    "mock rib hem": (
        {"sock.cuff.kind": "mock rib hem", "sock.cuff.every": 4},
        4,
        [
            "Take out every 4th needle: 45 of 60",
            "Thread waste",
            "Cast on",
            "Hang the weight",
            "Change to the sock yarn",
            "Take the weight off",
            "Hang the hem: lift each of the 45 loops",
            "Check that each needle holds both loops",
            "Put back the 15 needles",
        ],
    ),
}


@pytest.mark.parametrize("kind", CUFFS)
def test_a_cuff_is_begun_and_ended_one_thing_at_a_time(kind: str) -> None:
    changes, every, begins = CUFFS[kind]
    found = knit(changes)
    assert found["every"] == every
    for text, words in zip(texts(found, "waste", "cuff"), begins, strict=True):
        assert text.startswith(words)
    assert any("Bind off" in text for text in texts(found, "finish")) is (
        kind in ("rib", "mock rib")
    )


def test_a_shaped_leg_stops_for_every_mark() -> None:
    """Between two marks stand just the rounds of the band that the first of them sets."""
    tubes = [
        {"needles": 60, "rounds": 60, "mark": mark, "flat_width": width, "length": length}
        for mark, width, length in ((7, "101.6 mm", "158.8 mm"), (3, "71.4 mm", "111.6 mm"))
    ]
    changes: dict[str, Any] = {
        "cylinder.slots": 84,
        "sock.leg.height": "36 cm",
        "foot.ankle_girth": "230 mm",
        "foot.calf_girth": "340 mm",
        "fabric": {"swatch": tubes[0], "swatches": tubes[1:]},
    }
    found, bands = knit(changes), plan(changes)["counts"]["leg"]["bands"]
    assert len(bands) > 2
    told: list[tuple[str, int]] = []
    for step in found["steps"]:
        if step["text"].startswith("Set the tension mark"):
            told.append((step["text"].split()[-1].rstrip("."), 0))
        elif step["part"] == "leg" and step["kind"] == "rounds":
            told[-1] = (told[-1][0], told[-1][1] + step["rounds"])
    assert [rounds for _, rounds in told] == [*(band["rounds"] for band in bands), 0]
    assert told[-1][0] == "7"
    stands = ""
    for step in found["steps"]:
        stands = step["text"] if step["text"].startswith("Set the tension mark") else stands
        assert step.get("tension", "") == stands
    assert [next(iter(mark)) for mark, _ in told[:-1]] == [str(int(band["mark"])) for band in bands]


def test_sock_two_differs_from_sock_one_in_its_foot_alone() -> None:
    one = knit()
    measured = {"first_sock.foot_rounds": one["foot_rounds"], "first_sock.length": "9.6 in"}
    two = knit(measured)
    check(two, plan(measured))
    assert two["foot_rounds"] < one["foot_rounds"], "sock one came out long"
    apart = [(a, b) for a, b in zip(one["steps"], two["steps"], strict=True) if a != b]
    first, *rest = [(a["part"], b["part"]) for a, b in apart]
    assert first == ("foot", "foot")
    assert rest in ([], [("finish", "finish")]), "the end for grafting goes with the stitch"
    assert two["words"] == f"60 slots, {two['foot_rounds']} foot rounds"
    assert f"Knit {two['foot_rounds']} foot rounds in sock two" in two["notes"][0]["text"]
    assert one["notes"] == []


def test_a_sock_one_that_cannot_be_is_told_beside_its_field() -> None:
    request = asked({"first_sock.foot_rounds": 46, "first_sock.length": "9 furlongs"})
    (problem,) = answer({"do": "knit", "request": request})["errors"]
    assert problem["field"] == "first_sock.length"
    assert problem["way_out"]
    assert set(problem) == {"field", "message", "way_out", "offers"}


def test_what_is_read_at_arms_length_is_short() -> None:
    """The longest is a pocket that is not half of the needles, with its last one's place."""
    for changes in (
        {},
        {"sock.heel": {"needles": 40, "left": 12}},
        *(c for c, *_ in CUFFS.values()),
    ):
        found = knit(changes)
        assert max(len(step["text"]) for step in found["steps"]) <= 140
        assert all(step["title"] for step in found["steps"])


@pytest.mark.parametrize("part", ["heel", "toe"])
def test_what_is_done_at_one_stop_is_one_step_at_the_counter(part: str) -> None:
    """Five things before a pocket and five after it, each said once; on paper each stands alone."""
    found, sheet = knit(), plan()
    lists = [s for s in found["steps"] if s["part"] == part and "ticks" in s]
    assert [len(step["ticks"]) for step in lists] == [5, 5]
    told = [text for step in lists for text in step["ticks"]]
    assert len(set(told)) == 10
    on_paper = [s["text"] for s in sheet["steps"] if s["part"] == part and s["kind"] == "do"]
    assert on_paper == told
    assert all("ticks" not in step for step in sheet["steps"])


def test_words_follow_from_what_the_machine_has() -> None:
    def ticks(**has: str) -> str:
        changes = {f"cylinder.{name}": one for name, one in has.items()}
        steps = knit(changes)["steps"]
        return " ".join(text for step in steps for text in step.get("ticks", ()))

    unknown, has = ticks(), ticks(spring="yes", thread="yes")
    lacks = ticks(spring="no", thread="no")
    assert "Without one, take up the slack" in unknown
    assert "if you use one" in unknown
    assert "Without one" not in has
    assert "Put the heel spring on." in has
    assert "Run the reinforcing thread along. " in has
    one, claws = ticks(weights="one"), ticks(weights="claws")
    assert "Hang the heel weight on the heel. Move it up" in unknown
    assert "Move the weight to the middle of the heel." in one
    assert claws.count("Hang a claw between the 2nd and 3rd needle from each side.") == 2
    assert claws.count("Take both claws off.") == 2
    remind = [text for step in knit({"cylinder.weights": "claws"})["steps"]
              for text in step.get("remind", ())]  # fmt: skip
    assert "Move both claws up." in remind
    assert "Move the weight up." not in remind
    assert "spring" not in lacks
    assert "Take up the slack by hand at each turn." in lacks
    assert "reinforcing" not in lacks
    assert plan({"cylinder.spring": "no"})["counts"] == plan()["counts"]
    problem = refused({"cylinder.spring": "perhaps"})["cylinder.spring"]
    assert "yes" in problem["way_out"]
    assert set(refused({"cylinder.weights": "many"})) == {"cylinder.weights"}


def test_a_machine_without_a_ribber_knits_no_rib() -> None:
    ribs = [{"kind": "rib"}, {"kind": "set-up rib"}, {"kind": "mock rib"}]
    lacks = [answer({"do": "plan", "request": asked({"cylinder.ribber": "no", "sock.cuff": cuff})})
             for cuff in ribs]  # fmt: skip
    told = [[error["field"] for error in found.get("errors", ())] for found in lacks]
    assert told == [["sock.cuff.kind"], ["sock.cuff.kind"], []]
    assert "counts" in plan({"cylinder.ribber": "yes", "sock.cuff.kind": "rib"})
