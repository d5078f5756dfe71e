"""Colors by plan: where they change, how much each takes, and what stays as it is without them."""

from __future__ import annotations

from collections import Counter
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine import sources
from engine.judge import supply
from engine.machine.operations import Yarn
from engine.machine.standing import left_behind
from engine.sections.section import Section
from engine.sections.tube import Tube
from engine.sock import plan as planning
from engine.sock.sock import Sock
from tests.asking import answer, asked, drawn, noted, plan, refused

STRIPED = {"cuff": "B", "leg": "4 A, 2 B", "heel": "C", "foot": "10 A, 4 B, A", "toe": "C"}


def made(colors: dict[str, str], **more: Any) -> Sock:
    return planning.make(asked({"sock.colors": colors, **more}))


def by_round(sock: Sock, part: str) -> str:
    """The color of each round of a part, read off the yarns that the machine is fed."""
    found, now = "", ""
    for section, one in sock.operations():
        if isinstance(one, Yarn):
            now = {"main": "A"}.get(one.name, one.name)
        elif section.part == part and type(one).__name__ == "Rounds":
            found += now * one.count  # type: ignore[union-attr]
    return found


def test_stripes_are_repeated_to_the_end_of_the_leg() -> None:
    sock = made({"leg": "4 A, 2 B"}, **{"sock.leg.rounds": 21})
    assert by_round(sock, "leg") == "AAAABBAAAABBAAAABBAAA"
    assert by_round(sock, "foot") == "A" * sock.foot_rounds


def test_a_last_color_without_rounds_goes_on() -> None:
    sock = made({"foot": "10 A, 4 B, A"})
    assert by_round(sock, "foot") == "A" * 10 + "B" * 4 + "A" * (sock.foot_rounds - 14)


def test_stripes_begin_anew_at_the_foot() -> None:
    sock = made({"leg": "3 A, 1 B", "foot": "3 A, 1 B"}, **{"sock.leg.rounds": 5})
    assert by_round(sock, "leg") == "AAABA"
    assert by_round(sock, "foot").startswith("AAAB")


@pytest.mark.parametrize("text", ["4 A, 2 B", "4a,2b", "A4; B 2", "4 A + 2 B", "4 A and 2 B"])
def test_a_list_is_read_however_it_is_written(text: str) -> None:
    assert by_round(made({"leg": text}, **{"sock.leg.rounds": 8}), "leg") == "AAAABBAA"


def test_stripes_run_on_over_bands_of_the_leg() -> None:
    bands = [{"rounds": "5", "stitches": "7.8 / in"}, {"rounds": "7"}]
    sock = made({"leg": "4 A, 2 B"}, **{"sock.leg.bands": bands})
    assert by_round(sock, "leg") == "AAAABBAAAABB"


def test_a_plan_without_colors_answers_as_before() -> None:
    for door in ("plan", "knit", "card"):
        call = {"do": door, "request": asked(), "text": ""}
        blank = {**call, "request": asked({"sock.colors": {"leg": "", "cuff": " "}})}
        assert answer(call) == answer(blank)
    steps = plan()["steps"]
    assert not any("color A" in step["text"] for step in steps)
    assert all(one.get("sets") != "color" for one in steps)


def test_one_color_counts_and_takes_what_none_does() -> None:
    """All of it A: the very yarn and counts of a plan without colors."""
    usual, all_a = plan(), plan({"sock.colors": {"leg": "A"}})
    for name in ("counts", "sizes", "range"):
        assert all_a[name] == usual[name]
    for name in ("metres", "grams", "sections", "stitches", "with_margin"):
        assert all_a["yarn"][name] == usual["yarn"][name]


def test_the_counter_stops_for_every_change() -> None:
    """21 rounds of 4 A, 2 B change six times; heel and foot once each, the toe once."""
    request = asked({"sock.colors": {"leg": "4 A, 2 B", "heel": "C"}, "sock.leg.rounds": 21})
    steps = answer({"do": "knit", "request": request})["steps"]
    changes = [(s["part"], s["text"]) for s in steps if s.get("sets") == "color"]
    counted = Counter(part for part, _ in changes)
    assert counted == {"cuff": 1, "leg": 6, "heel": 1, "foot": 1}
    assert changes[1] == (
        "leg",
        "Change to color B. Leave a hand’s length of both yarns hanging.",
    )
    told = [s["tension"] for s in steps if s["part"] == "leg" and s["kind"] == "rounds"]
    assert told == ["Knit in color A.", "Knit in color B."] * 3 + ["Knit in color A."]
    assert [s["rounds"] for s in steps if s["part"] == "leg" and s["kind"] == "rounds"] == [
        4, 2, 4, 2, 4, 2, 3,
    ]  # fmt: skip


def test_yarn_by_color_is_its_stitches_and_two_ends_for_each_stretch() -> None:
    """By hand: 60 stitches a round; of 12 leg rounds 8 are A and 4 B, in two stripes each."""
    sock = made({"leg": "4 A, 2 B", "heel": "B"}, **{"sock.leg.rounds": 12})
    loop = sock.fabric.loop
    main, b = supply.of_sock(sock)
    heel, tail = sock.stitches["heel"], 2 * sources.TAIL
    # cuff and first stripe are one stretch of A, then B, A, B with the heel, and A to the toe
    assert b.mm == pytest.approx(2 * ((4 * 60 + heel) * loop + 2 * tail))
    parts = sock.stitches
    rest = parts["cuff"] + 8 * 60 + parts["foot"] + parts["toe"]
    assert main.mm == pytest.approx(2 * (rest * loop + 3 * tail + sock.closing(sock.fabric)))
    assert main.sections == ("cuff", "leg", "foot", "toe")
    assert b.sections == ("leg", "heel")


def test_yarn_by_color_has_its_margin_and_is_all_the_yarn() -> None:
    yarn = plan({"sock.colors": STRIPED, "stock.ball": "50"})["yarn"]
    assert [one["name"] for one in yarn["colors"]] == ["Color A", "Color B", "Color C"]
    total = sum(one["metres"]["value"] for one in yarn["colors"])
    assert total == pytest.approx(yarn["metres"]["value"], abs=0.3)
    for one in yarn["colors"]:
        ratio = one["with_margin"]["grams"]["value"] / one["grams"]["value"]
        assert ratio == pytest.approx(1 + sources.YARN_MARGIN, abs=0.005)
        assert one["balls"] >= 1


def test_what_is_left_is_held_against_the_main_color_alone() -> None:
    """22 g are a sock's main yarn where heel and stripes take the rest, and no sock without."""
    left = {"stock.left": "22 g", "fabric.yarn": "400 m / 100 g"}
    striped = plan({"sock.colors": {"leg": "4 B, 2 A", "foot": "B", "heel": "B"}, **left})
    usual = plan(left)
    assert striped["yarn"]["enough"]["level"] == "yes"
    assert "main yarn" in striped["yarn"]["enough"]["words"]
    assert usual["yarn"]["enough"]["level"] == "no"


def test_parts_and_card_name_their_colors() -> None:
    found = {one["part"]: one["detail"] for one in plan({"sock.colors": STRIPED})["parts"]}
    assert found["cuff"].endswith(", in color B")
    assert found["leg"].endswith(", in 4 A, 2 B, over and over")
    assert found["foot"].endswith(", in 10 A, 4 B, A")
    assert found["heel"].endswith(", in color C")
    card = answer({"do": "card", "request": asked({"sock.colors": STRIPED}), "text": ""})
    assert card["parts"][1]["words"].endswith(", in 4 A, 2 B, over and over")


def test_a_stripe_is_drawn_where_it_begins() -> None:
    def lines(colors: dict[str, str]) -> int:
        picture = answer({"do": "page", "request": asked({"sock.colors": colors})})["picture"]
        return drawn(picture).count('class="wale"')

    sock = made({"leg": "4 A, 2 B", "foot": "B"})
    stripes = [one for one in sock.sections if isinstance(one, Tube) and one.part == "leg"]
    assert lines({"leg": "4 A, 2 B", "foot": "B"}) - lines({}) == len(stripes) - 1


def test_a_link_without_the_person_keeps_the_colors() -> None:
    page = answer({"do": "page", "request": asked({"sock.colors": STRIPED})})
    again = answer({"do": "open", "link": page["counts_link"]})["request"]
    assert again["sock"]["colors"] == STRIPED
    one, two = (planning.make(request) for request in (asked({"sock.colors": STRIPED}), again))
    assert [o for _, o in one.operations()] == [o for _, o in two.operations()]


def test_sock_two_keeps_the_colors_with_a_foot_of_its_own() -> None:
    told = {"first_sock": {"foot_rounds": "46", "length": "9.8 in"}}
    two = made(STRIPED, **told)
    assert two.foot_rounds != made(STRIPED).foot_rounds
    assert by_round(two, "foot") == "A" * 10 + "B" * 4 + "A" * (two.foot_rounds - 14)
    again = two.with_foot(30)
    assert by_round(again, "foot") == "A" * 10 + "B" * 4 + "A" * 16


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("leg", "4 A, two B", "cannot read"),
        ("leg", "A, 2 B", "Only the last color"),
        ("foot", "0 A, 2 B", "cannot read"),
        ("heel", "4 A", "cannot read"),
        ("toe", "G", "cannot read"),
        ("cuff", "red", "cannot read"),
    ],
)
def test_what_is_no_color_is_refused_at_its_field(field: str, text: str, words: str) -> None:
    problem = refused({"sock.colors": {field: text}})[f"sock.colors.{field}"]
    assert words in problem["message"]
    assert "Write one letter" in problem["way_out"]


@pytest.mark.parametrize(
    ("told", "planned"),
    [
        ("heel and toe", {"heel": "B", "toe": "B"}),
        ("cuff", {"cuff": "B"}),
        ("cuff, toe", {"cuff": "C", "toe": "B"}),
    ],
)
def test_parts_bought_apart_are_knitted_apart(told: str, planned: dict[str, str]) -> None:
    """Told with the yarn at hand or with the sock, the same: steps, counts, yarn and drawing."""
    by_yarn = {"stock": {"apart": told}}
    for door in ("plan", "knit", "card"):
        text = {"text": "x"} if door == "card" else {}
        one, other = (
            answer({"do": door, "request": asked(said), **text})
            for said in (by_yarn, {"sock": {"colors": planned}})
        )
        one.pop("counted", None), other.pop("counted", None)
        assert one == other


def test_what_is_not_knitted_has_no_color_of_its_own() -> None:
    gathered = {"sock.toe.kind": "gathered", "stock.apart": "toe"}
    assert [one["name"] for one in plan(gathered)["yarn"]["colors"]] == ["Main yarn"]


def test_a_part_that_cannot_have_its_own_color_is_refused() -> None:
    ribbed = {"sock.cuff.kind": "rib", "sock.leg.kind": "ribbed"}
    assert (
        "one color"
        in refused({**ribbed, "sock.colors": {"leg": "4 A, 2 B"}})["sock.colors.leg"]["message"]
    )
    assert plan({**ribbed, "sock.colors": {"leg": "B"}})["counts"]["leg"]
    bare = {"sock.toe.kind": "gathered", "sock.heel.kind": "none"}
    problems = refused({**bare, "sock.colors": {"toe": "B", "heel": "B"}})
    assert set(problems) == {"sock.colors.toe", "sock.colors.heel"}
    apart = refused({"sock.colors": {"toe": "B"}, "stock.apart": "toe"})
    assert "planned as well" in apart["stock.apart"]["message"]
    every = dict.fromkeys(("cuff", "leg", "heel", "foot", "toe"), "B")
    assert "main yarn" in refused({"sock.colors": every})["sock.colors.foot"]["message"]


@given(
    st.lists(st.tuples(st.integers(1, 9), st.sampled_from("ABC")), min_size=1, max_size=6),
    st.integers(0, 60),
    st.sampled_from((24, 54, 60, 72, 120)),
)
def test_any_stripes_leave_nothing_behind_and_every_stitch_counted(
    runs: list[tuple[int, str]], rounds: int, slots: int
) -> None:
    text = ", ".join(f"{count} {letter}" for count, letter in runs)
    changes = {
        "cylinder.slots": slots,
        "sock.leg.rounds": rounds,
        "sock.foot_length_of_sock": "13 in",
    }
    plain = planning.make(asked(changes))
    sock = made({"leg": text, "foot": text, "heel": "A"}, **changes)
    assert left_behind(sock.work[-1].ends) is None
    assert sock.stitches == plain.stitches
    assert sock.waste_loops == plain.waste_loops
    told = "".join(letter * count for count, letter in runs)
    assert by_round(sock, "leg") == (told * 60)[:rounds]
    assert by_round(sock, "foot") == (told * 300)[: sock.foot_rounds]


def test_colors_in_a_string_begin_again_with_each_sock() -> None:
    one = made(STRIPED, **{"sock.string": "pair"})
    assert by_round(one.sock_two, "cuff") == by_round(one, "cuff") == "B" * 20
    assert left_behind(one.sock_two.work[-1].ends) is None
    assert "sock.string" in noted(plan({"sock.colors": STRIPED, "sock.string": "pair"}))


def test_sections_of_a_sock_without_colors_are_the_same_objects() -> None:
    """What is not in stripes runs off the same cache."""
    plain: tuple[Section, ...] = planning.make(asked()).sections
    heel = next(one for one in made({"leg": "4 A, 2 B"}).sections if one.part == "heel")
    assert heel in plain
