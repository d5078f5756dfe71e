"""Heel and toe chosen for a foot: needles and needles left, their neighbours, and how sure.

The bounds of stretch are common practice, no published source; the toe's rule is our derivation.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ellipe

from engine import sources
from tests.asking import fit, noted, plan, refused

W0, C0 = 7.5 / 25.4, 9.6 / 25.4  # stitches and rounds per mm of `asked`


def heel(girth: float, **changes: Any) -> dict[str, Any]:
    sheet = plan({"foot.heel_girth": f"{girth:.4f} mm", **changes})
    found: dict[str, Any] = sheet["counts"]["heel"]
    return found


def test_half_the_needles_as_long_as_a_heel_on_them_will_do() -> None:
    assert heel(310.3)["needles"] == 30
    assert heel(330)["needles"] == 30


def test_a_high_instep_gets_more_heel_needles() -> None:
    """By hand: 30 needles down to 6 (a sixth is 5, and 24 held is even) make the tube's 203.2 mm
    plus 24 x (sqrt((1/w)^2 + (2/c)^2) - 1/w) = 24 x 2.894 mm: 272.7 mm, 1.28 of which is 349 mm."""
    deepest = 60 / W0 + 24 * (((1 / W0) ** 2 + (2 / C0) ** 2) ** 0.5 - 1 / W0)
    assert heel(deepest * 1.28 - 1)["needles"] == 30
    high = heel(deepest * 1.28 + 3)
    assert high["needles"] == 32
    assert "more needles than half" in high["words"]
    sheet = plan({"foot.heel_girth": f"{deepest * 1.28 + 3:.2f} mm"})
    assert fit(sheet, "heel")["level"] == "good"


def test_a_low_heel_gets_fewer() -> None:
    low = heel(240)
    assert low["needles"] < 30
    assert "fewer needles than half" in low["words"]


def test_a_heel_stays_customary_and_like_the_toe_while_that_is_comfortable() -> None:
    """72 slots, heel girth 37.5 cm: 14 of 36 were left, where 12 fit too and match the toe."""
    sheet = plan({"cylinder.slots": 72, "foot.heel_girth": "37.5 cm"})
    assert sheet["counts"]["heel"]["left"] == sheet["counts"]["toe"]["left"] == 12
    assert fit(sheet, "heel")["verdict"] == "comfortable"
    assert "the customary third suits" in sheet["counts"]["heel"]["words"]


@given(st.integers(180, 460), st.sampled_from((48, 54, 60, 72, 84)), st.floats(6, 10))
def test_a_heel_departs_from_custom_only_where_custom_is_not_comfortable(
    girth: int, slots: int, stitches: float
) -> None:
    of = {
        "foot.length": "300 mm",
        "foot.heel_girth": f"{girth} mm",
        "cylinder.slots": slots,
        "fabric.stitches": f"{stitches:.2f} / in",
        "fabric.rounds": f"{stitches * 1.3:.2f} / in",
    }
    custom = plan({**of, "foot.heel_girth": None})["counts"]["heel"]
    set_so = {f"sock.heel.{name}": custom[name] for name in ("needles", "left")}
    level = fit(plan({**of, **set_so}), "heel")["level"]
    chosen = plan(of)["counts"]["heel"]
    assert (chosen["left"] == custom["left"]) or level != "good"
    if level == "good":
        assert chosen["needles"] == custom["needles"]


@pytest.mark.parametrize(("breadth", "left"), [(80, 8), (81, 10), (90, 10), (91, 12)])
def test_a_toe_stays_customary_while_that_is_comfortable(breadth: int, left: int) -> None:
    """By hand: 40 stitches are 135.5 mm; 1.77 t over them is 1.045, 1.058, 1.176 and 1.189, and
    comfortable is 1.05 to 1.18 (common practice, no published source)."""
    assert toe(breadth)["left"] == left


def test_needles_that_are_set_stay() -> None:
    assert heel(400, **{"sock.heel.needles": 30})["needles"] == 30
    left = heel(400, **{"sock.heel.left": 10})
    assert (left["needles"], left["left"]) == (30, 10)


@given(st.integers(180, 420), st.integers(0, 60), st.sampled_from((48, 54, 60, 72)))
def test_a_higher_instep_never_has_a_shallower_heel(girth: int, more: int, slots: int) -> None:
    of = {"foot.length": "300 mm", "cylinder.slots": slots}
    small, large = heel(girth, **of), heel(girth + more, **of)
    assert large["rows_each_way"] >= small["rows_each_way"]
    assert large["needles"] >= small["needles"]
    for found in (small, large):
        assert slots / 3 <= found["needles"] <= slots * 2 / 3
        assert (found["needles"] - found["left"]) % 2 == 0


def toe(breadth: float | None, **changes: Any) -> dict[str, Any]:
    taken = {"foot.toe_breadth": f"{breadth} mm"} if breadth else {}
    found: dict[str, Any] = plan({**taken, **changes})["counts"]["toe"]
    return found


def test_toes_left_unmeasured_or_usual_have_the_customary_third() -> None:
    """60 slots, 30 to 10 and back: common practice, no published source."""
    assert toe(None)["left"] == 10
    assert "custom" in toe(None)["words"]
    assert toe(84)["left"] == 10


def test_broad_toes_keep_more_needles_and_narrow_ones_fewer() -> None:
    """By hand: (30 + b) / w = 1.77 t / 1.10; t = 92 mm asks for b = 13.7, 78 mm for 7.06;
    of what is comfortable, 8 and 12 are nearest to the customary 10."""
    assert toe(92)["left"] == 12
    assert toe(78)["left"] == 8
    found = [toe(breadth)["left"] for breadth in range(60, 120, 2)]
    assert found == sorted(found)
    assert (found[0], found[-1]) == (6, 14)  # a sixth and a half of 30, in even numbers of rows


def test_a_toe_that_is_set_stays() -> None:
    assert toe(100, **{"sock.toe.left": 6})["left"] == 6


def test_an_ellipse_a_quarter_as_thick_as_broad() -> None:
    """Perimeter = 4 a E(1 - (b/a)^2): complete elliptic integral of scipy.special; to 0.01."""
    around = 4 * 0.5 * ellipe(1 - 0.25**2)
    assert float(sources.TOES_ROUND_OVER_BREADTH) == pytest.approx(around, abs=0.01)


def test_the_usual_toe_is_the_customary_one() -> None:
    """40 stitches at 7.5 per inch, stretched 1.10, round toes of 84 mm; to 0.01."""
    found = 40 / W0 * 1.10 / 84
    assert float(sources.TOE_ROUND_OVER_BREADTH) == pytest.approx(found, abs=0.01)


def test_toes_rounder_than_the_ball_are_asked_about() -> None:
    assert "Measure both" in noted(plan({"foot.toe_breadth": "110 mm"}))["foot.toe_breadth"]
    assert "foot.toe_breadth" not in noted(plan({"foot.toe_breadth": "90 mm"}))
    assert refused({"foot.toe_breadth": "20 cm"})["foot.toe_breadth"]["way_out"]


@pytest.mark.parametrize("part", ["heel", "toe"])
def test_each_neighbour_is_what_would_come_of_it(part: str) -> None:
    """Taken, a choice gives the very sock it promised: girth, stretch, verdict, foot rounds."""
    known = {"foot.toe_breadth": "88 mm"}
    sheet = plan(known)
    found = sheet["choices"][part]
    assert [one["left"] for one in found] == sorted(one["left"] for one in found)
    assert 3 <= len(found) <= 5
    assert [one["left"] for one in found if one["chosen"]] == [sheet["counts"][part]["left"]]
    for choice in found:
        taken = {f"sock.{part}.{name}": choice[name] for name in ("needles", "left")}
        after = plan({**known, **taken})
        assert after["counts"]["foot"]["rounds"] == choice["foot_rounds"]
        assert after["counts"][part]["rows"] == choice["rows"]
        if part == "heel":
            place = fit(after, "heel")
            assert after["sizes"]["heel_girth"] == choice["girth"]
            assert (place["stretch"], place["verdict"]) == (choice["stretch"], choice["verdict"])
        else:
            around = (choice["needles"] + choice["left"]) / W0
            assert choice["girth"]["value"] == pytest.approx(around, abs=0.06)
            assert choice["stretch"] == pytest.approx(1.77 * 88 / around, abs=0.001)


def test_a_deeper_heel_is_wider_and_leaves_fewer_foot_rounds() -> None:
    found = plan()["choices"]["heel"]
    girths = [one["girth"]["value"] for one in found]
    assert girths == sorted(girths, reverse=True)
    rounds = [one["foot_rounds"] for one in found]
    assert rounds == sorted(rounds)


@pytest.mark.parametrize(("length", "rounds"), [("4.375 in", [2, 4, 6]), ("4.2708 in", [1, 3, 5])])
@pytest.mark.parametrize("part", ["heel", "toe"])
def test_a_pocket_that_leaves_no_foot_round_is_not_offered(
    part: str, length: str, rounds: list[int]
) -> None:
    """4.375 in are 42 rounds, heel and toe take 20 each: two more in one of them leave none."""
    set_so = {"sock.heel.needles": 30, "sock.heel.left": 10}
    set_so |= {"sock.toe.needles": 30, "sock.toe.left": 10}
    found = plan({**set_so, "sock.foot_length_of_sock": length})["choices"][part]
    assert [one["foot_rounds"] for one in found] == rounds
    assert found[0]["words"].endswith(f" {rounds[0]} foot round{'s' * (rounds[0] > 1)}.")
    assert found[1]["words"].endswith(f" {rounds[1]} foot rounds.")
    assert "30 needles down to 10: " in found[0]["words"]


def test_the_toe_s_range_is_what_its_ends_would_choose() -> None:
    """The tape on a length is out by 2.5 mm (one sd), so by 3.2 mm four times in five."""
    found = plan({"foot.toe_breadth": "88 mm"})["range"]["toe"]
    ends = [
        plan({"foot.toe_breadth": f"{88 + by} mm"})["counts"]["toe"]["left"]
        for by in (-3.204, 3.204)
    ]
    assert [found["low"], found["high"]] == ends
    assert ends[0] < ends[1]
    set_so = {"foot.toe_breadth": "88 mm", "sock.toe.left": 10}
    assert plan(set_so)["range"]["toe"]["words"] == "Exact: you set it."


@pytest.mark.parametrize(
    ("breadth", "words"),
    [
        ("66 mm", "fewer left than the customary third, for narrow toes"),
        ("84 mm", "the customary third suits toes of this breadth"),
        ("98 mm", "more left than the customary third, for broad toes"),
    ],
)
def test_the_toe_in_words(breadth: str, words: str) -> None:
    """84 mm suit 30 needles down to 10 at 7.5 an inch (`TOE_ROUND_OVER_BREADTH`)."""
    sheet = plan({"foot.toe_breadth": breadth})
    assert sheet["counts"]["toe"]["words"].endswith(f"{words}.")
    for choice in sheet["choices"]["toe"]:
        assert choice["verdict"]
        assert "perhaps" not in choice["words"], "toes are measured, or nothing is said of them"


def test_without_toes_nothing_is_said_of_their_stretch() -> None:
    assert {one["stretch"] for one in plan()["choices"]["toe"]} == {None}


def test_every_count_has_a_range() -> None:
    sheet = plan({"foot.toe_breadth": "88 mm", "sock.leg.rounds": 50})
    counts = {"cuff": "rounds", "leg": "rounds", "heel": "left", "foot": "rounds", "toe": "left"}
    assert set(sheet["range"]) == set(counts)
    for part, name in counts.items():
        found = sheet["range"][part]
        assert found["low"] <= sheet["counts"][part][name] <= found["high"]
        assert found["words"].endswith(".")
    assert sheet["range"]["cuff"]["words"] == "Exact: set by custom."
    assert sheet["range"]["leg"]["words"] == "Exact: you set it."
    customary = plan({"foot.heel_girth": None})["range"]
    assert customary["heel"]["words"] == customary["toe"]["words"] == "Exact: set by custom."
    assert plan({"sock.heel.left": 10})["range"]["heel"]["words"] == "Exact: you set it."


def test_the_heel_s_range_is_what_its_ends_would_choose() -> None:
    """The tape on a girth is out by 3 mm (one sd), so by 3.84 mm four times in five."""
    found = plan()["range"]["heel"]
    deep, shallow = (heel(310.3 + by)["left"] for by in (3.8447, -3.8447))
    assert (found["low"], found["high"]) == (deep, shallow)


def remarks(changes: dict[str, Any]) -> dict[str, str]:
    return {note["field"]: note["text"] for note in plan(changes)["notes"] if note["field"]}


def test_a_heel_on_more_than_half_says_what_it_takes_of_the_instep() -> None:
    """By hand: at 7.5 an inch 26 needles are 3.47 in wide, 30 are 4 in."""
    found = remarks({"sock.heel": {"needles": 34, "left": 12}})["sock.heel.needles"]
    assert found.startswith("26 needles are left for the instep: 3 1/2 in wide")
    assert "half the cylinder makes 4 in" in found
    for needles in (30, 28):
        assert "sock.heel.needles" not in remarks({"sock.heel": {"needles": needles, "left": 10}})


@pytest.mark.parametrize("needles", [26, 34])
def test_a_toe_of_unlike_sides_says_how_it_is_grafted(needles: int) -> None:
    found = remarks({"sock.toe": {"needles": needles, "left": 10}})["sock.toe.needles"]
    assert "have 26 and 34 stitches" in found
    assert "sock.toe.needles" not in remarks({"sock.toe": {"needles": 30}})


def test_a_flap_makes_room_for_a_high_instep_and_takes_no_needle_of_it() -> None:
    """By hand: 30 needles down to 10 make 40/w + 40 x sqrt((1/2w)^2 + (1/c)^2), and each two rows
    of a flap 4/c more; the foot has as many rounds less as the flap has rows."""
    short = plan({"sock.heel": {"needles": 30, "left": 10}})
    deep = plan({"sock.heel": {"kind": "flap", "needles": 30, "left": 10, "flap": 12}})
    seams = 40 * ((1 / (2 * W0)) ** 2 + (1 / C0) ** 2) ** 0.5
    girth = deep["sizes"]["heel_girth"]["value"]
    assert girth == pytest.approx(40 / W0 + seams + 24 / C0, abs=0.1)
    assert deep["sizes"]["heel_height"]["value"] == pytest.approx((12 + 20) / C0, abs=0.1)
    assert deep["counts"]["foot"]["rounds"] == short["counts"]["foot"]["rounds"] - 12
    assert deep["counts"]["heel"]["rows"] == 40 + 24
    assert "sock.heel.needles" not in noted(deep)


@pytest.mark.parametrize(("girth", "rows"), [(330, 2), (347, 2), (350, 4), (400, 10)])
def test_a_flap_has_as_few_rows_as_the_heel_girth_asks(girth: float, rows: int) -> None:
    """The heel without a flap has 261.1 mm; each two rows add 10.58 mm. 1.28 times that, the most
    that is comfortable (common practice, no source), is 347.8 mm with 2 rows, 361.3 with 4, 388.4
    with 8, 401.9 with 10."""
    told = {"sock.heel.kind": "flap", "foot.heel_girth": f"{girth} mm"}
    found = plan(told)["counts"]["heel"]
    assert found["rows"] == 40 + 2 * rows


def test_a_high_instep_is_led_to_the_heel_that_suits_it() -> None:
    high = {"foot.instep_girth": "26 cm"}
    assert "after a flap" in noted(plan(high))["sock.heel.kind"]
    assert "sock.heel.kind" not in noted(plan({**high, "sock.heel.kind": "flap"}))
    assert "sock.heel.kind" not in noted(plan())


def test_rounds_before_the_toe_are_the_toes_and_the_foot_has_as_many_less() -> None:
    """The sole keeps its length, and both socks their stitches."""
    usual, plain = (plan({"sock.toe": {"plain": n}, "stock.apart": "toe"}) for n in (0, 5))
    assert plain["counts"]["before_toe"]["rounds"] == 5
    assert plain["counts"]["foot"]["rounds"] == usual["counts"]["foot"]["rounds"] - 5
    assert plain["sizes"]["foot_length"] == usual["sizes"]["foot_length"]
    assert sum(plain["yarn"]["stitches"].values()) == sum(usual["yarn"]["stitches"].values())
    order = list(dict.fromkeys(step["part"] for step in plain["steps"]))
    assert order[-4:] == ["foot", "before_toe", "toe", "finish"]
    of_toe = next(one for one in plain["yarn"]["colors"] if "toe" in one["sections"])
    assert of_toe["sections"] == ["before_toe", "toe"]


def test_rows_of_a_flap_are_even_and_of_a_flap_alone() -> None:
    odd = refused({"sock.heel": {"kind": "flap", "flap": 7}})["sock.heel.flap"]
    assert odd["way_out"] == "Knit 6 or 8 rows."
    assert [*refused({"sock.heel": {"flap": 8}})] == ["sock.heel.flap"]
    assert [*refused({"sock.toe": {"kind": "flap"}})] == ["sock.toe.kind"]
