"""The cuff: hem, rib and mock rib; which needles knit, how deep it is, what it lets pass."""

from __future__ import annotations

import re
from typing import Any

import pytest

from engine.fabric.fabric import Fabric
from engine.sections.hung_hem import HungHem
from engine.sections.mock_rib import MockRib
from engine.sections.rib import Rib
from engine.sections.set_up_rib import SetUpRib
from tests.asking import answer, asked, fit, mm, noted, plan, refused


def cuff(kind: str, slots: int = 60, **fields: Any) -> dict[str, Any]:
    """A plan with a cuff of one kind; the foot is long enough for any of these cylinders."""
    changes = {f"sock.cuff.{name}": value for name, value in fields.items()}
    length = {"foot.length": "300 mm", "cylinder.slots": slots}
    return plan({**length, **changes, "sock.cuff.kind": kind})


def gives(sheet: dict[str, Any]) -> float:
    """How far cuff and leg stretch, as the fit over the heel says it."""
    found = re.search(r"can reach about (\d\.\d+)", fit(sheet, "over_heel")["words"])
    assert found
    return float(found[1])


def test_left_out_it_is_a_hem_of_20_rounds() -> None:
    counts = plan()["counts"]["cuff"]
    assert (counts["kind"], counts["rounds"], counts["needles"]) == ("hem", 20, 60)
    assert "10" in counts["words"]


@pytest.mark.parametrize("rounds", [2, 20, 30, 44])
def test_a_hem_is_folded_to_half(rounds: int) -> None:
    assert mm(cuff("hem", rounds=rounds), "cuff_depth") == pytest.approx(
        rounds / 2 / 9.6 * 25.4, abs=0.06
    )


@pytest.mark.parametrize("kind", ["rib", "mock rib"])
def test_ribs_are_single_and_may_have_an_odd_number_of_rounds(kind: str) -> None:
    assert mm(cuff(kind, rounds=25), "cuff_depth") == pytest.approx(25 / 9.6 * 25.4, abs=0.06)


@pytest.mark.parametrize(("rounds", "offered"), [(3, "2 or 4"), (19, "18 or 20"), (41, "40 or 42")])
def test_an_odd_hem_is_refused_with_the_two_that_work(rounds: int, offered: str) -> None:
    problem = refused({"sock.cuff.kind": "hem", "sock.cuff.rounds": rounds})["sock.cuff.rounds"]
    assert offered in problem["way_out"]


@pytest.mark.parametrize(
    ("slots", "every", "ribs", "name"),
    [(60, 2, 30, "1×1"), (72, 2, 36, "1×1"), (54, 3, 18, "2×1"), (84, 4, 21, "3×1")],
)
def test_a_rib_on_a_set_up_edge(slots: int, every: int, ribs: int, name: str) -> None:
    """One round on both beds and two on the cylinder alone, published so
    (needlesofsteel.org.uk/knitpatterns/pat-csm02.html); the ribs rest in those two."""
    sheet = cuff("set-up rib", slots, rounds=23, every=every)
    assert sheet["counts"]["cuff"]["words"].startswith(f"{name} rib on a set-up edge")
    assert sheet["yarn"]["stitches"]["cuff"] == 23 * slots - 2 * ribs
    steps = [one for one in sheet["steps"] if one["part"] == "cuff" and one["kind"] == "rounds"]
    assert [one["rounds"] for one in steps] == [1, 2, 20]
    assert "Bind off" not in str(sheet["steps"])
    assert mm(sheet, "cuff_depth") == pytest.approx(21 / 9.6 * 25.4, abs=0.06)


@pytest.mark.parametrize(
    ("every", "share"), [(2, 0.7), (3, 0.8), (4, 0.85)], ids=("1×1", "2×1", "3×1")
)
def test_a_rib_of_fewer_ribs_is_wider(every: int, share: float) -> None:
    """1×1 at 70 %: common practice; the others in proportion to their ribs, our derivation."""
    assert SetUpRib(20, every=every).girth(60, 200.0) == pytest.approx(200 * share)
    assert SetUpRib(20, flat=180.0, every=every).girth(60, 200.0) == pytest.approx(180)


@pytest.mark.parametrize(
    ("wrong", "field", "offer"),
    [
        ({"cylinder.slots": 54, "sock.cuff.every": 4}, "every", "2nd, 3rd, or 6th"),
        ({"sock.cuff.every": 12}, "every", "2nd, 3rd, 4th, 5th, or 6th"),
        ({"sock.cuff.rounds": 3}, "rounds", "4 or more"),
    ],
)
def test_a_rib_that_cannot_be_set_up_is_offered_what_can(
    wrong: dict[str, Any], field: str, offer: str
) -> None:
    asked_for = {"foot.length": "300 mm", "sock.cuff.kind": "set-up rib", **wrong}
    assert offer in refused(asked_for)[f"sock.cuff.{field}"]["way_out"]


@pytest.mark.parametrize(
    ("wrong", "field", "offer"),
    [
        ({"change_every": 3, "change_after": 10}, "change_every", "4th or 6th"),
        ({"change_after": 10}, "change_every", "4th or 6th"),
        ({"change_every": 4}, "change_after", "4 to 19"),
        ({"change_every": 4, "change_after": 3}, "change_after", "4 to 19"),
        ({"change_every": 4, "change_after": 20}, "change_after", "4 to 19"),
        ({"change_every": 8, "change_after": 10, "every": 4}, "change_every", "Leave the change"),
    ],
)
def test_a_rib_changes_only_to_fewer_of_its_ribs(
    wrong: dict[str, Any], field: str, offer: str
) -> None:
    asked_for = {f"sock.cuff.{name}": value for name, value in wrong.items()}
    problems = refused({"sock.cuff.kind": "set-up rib", **asked_for})
    assert [*problems] == [f"sock.cuff.{field}"]
    assert offer in problems[f"sock.cuff.{field}"]["way_out"]


def test_a_change_means_nothing_to_another_cuff() -> None:
    """A page keeps the field while another kind is chosen."""
    assert cuff("hem", change_after=10, change_every=4)["counts"]["cuff"]["needles"] == 60


@pytest.mark.parametrize("kind", ["picot hem", "mock rib hem"])
@pytest.mark.parametrize(("rounds", "offered"), [(9, "8 or 10"), (25, "24 or 26")])
def test_other_hems_are_even_too(kind: str, rounds: int, offered: str) -> None:
    problem = refused({"sock.cuff.kind": kind, "sock.cuff.rounds": rounds})["sock.cuff.rounds"]
    assert kind in problem["message"]
    assert offered in problem["way_out"]
    folded = cuff(kind, rounds=rounds + 1)
    depth = (rounds + 1) / 2 / 9.6 * 25.4
    assert mm(folded, "cuff_depth") == pytest.approx(depth, abs=0.06)
    assert "Bind off" not in str(folded["steps"])


def test_a_picot_hem_has_a_stitch_on_every_needle_in_every_round() -> None:
    """The needle that was emptied catches the next round: 2 k N stitches, by hand."""
    sheet = cuff("picot hem", rounds=16)
    assert sheet["yarn"]["stitches"]["cuff"] == 16 * 60
    steps = [one for one in sheet["steps"] if one["part"] == "cuff"]
    assert [one.get("rounds") for one in steps] == [None, 8, None, 8, None, None, None]


@pytest.mark.parametrize(("rounds", "said"), [(8, True), (10, False), (20, False), (22, True)])
def test_a_picot_hem_is_remarked_on_beyond_its_usual_rounds(rounds: int, said: bool) -> None:
    """5 to 10 rounds each side of the holes: common practice, no published source."""
    assert ("sock.cuff.rounds" in noted(cuff("picot hem", rounds=rounds))) is said


def test_a_mock_rib_hem_is_hung_on_the_needles_that_knitted_it() -> None:
    """3 and 1 on 60 slots work 45 needles: common practice, no published source."""
    sheet = cuff("mock rib hem", rounds=24, every=4)
    count = sheet["counts"]["cuff"]
    assert (count["kind"], count["needles"]) == ("mock rib hem", 45)
    assert sheet["yarn"]["stitches"]["cuff"] == 24 * 45
    told = [one["text"] for one in sheet["steps"] if one["part"] == "cuff"]
    first = [text.split()[0] for text in told]
    assert first == ["Change", "Cuff:", "Take", "Hang", "Check", "Put"]


def test_a_mock_rib_hem_tells_both_that_are_wrong() -> None:
    wrong = {"sock.cuff.kind": "mock rib hem", "sock.cuff.every": 7, "sock.cuff.rounds": 21}
    assert {"sock.cuff.every", "sock.cuff.rounds"} <= set(refused(wrong))


@pytest.mark.parametrize("slots", [54, 60, 62, 64, 70, 72, 84])
def test_a_mock_rib_left_to_us_comes_out_even(slots: int) -> None:
    counts = cuff("mock rib", slots)["counts"]["cuff"]
    out = slots - counts["needles"]
    assert 0 < out <= slots / 2
    assert slots % out == 0


@pytest.mark.parametrize(
    ("slots", "every"),
    [(60, "4th"), (84, "4th"), (54, "3rd"), (66, "3rd"), (70, "5th"), (62, "2nd")],
)
def test_a_mock_rib_left_to_us_takes_every_4th_or_the_next_best(slots: int, every: str) -> None:
    """The 4th where 4 divides the slots, else the 3rd, the 5th, the 2nd: our choice."""
    words = cuff("mock rib", slots)["counts"]["cuff"]["words"]
    assert words.endswith(f"mock rib: every {every} needle out"), words


@pytest.mark.parametrize(
    ("slots", "every", "needles"), [(60, 4, 45), (60, 3, 40), (72, 6, 60), (54, 2, 27)]
)
def test_a_mock_rib_takes_out_every_nth_needle(slots: int, every: int, needles: int) -> None:
    sheet = cuff("mock rib", slots, every=every, rounds=24)
    assert sheet["counts"]["cuff"]["needles"] == needles
    assert sheet["yarn"]["stitches"]["cuff"] == 24 * needles
    assert (
        f"every {every}{ {2: 'nd', 3: 'rd'}.get(every, 'th') } needle"
        in sheet["counts"]["cuff"]["words"]
    )


def test_a_measured_cuff_gives_what_it_was_pulled_to() -> None:
    """150 mm pulled to 360 is 2.4, though the leg below, of 200 mm, gives no more than 320 mm."""
    cloth = Fabric(0.3, 0.4, 0.0, 0.0, "swatch", (), 240.0, True, 1.6)
    assert Rib(20, flat=150.0, pulled=360.0).give(60, cloth, 200.0) == pytest.approx(2.4)
    assert Rib(20, flat=150.0).give(60, cloth, 200.0) == pytest.approx(320 / 150)


def test_a_cuff_lies_as_wide_as_its_kind_does() -> None:
    """Under a leg 200 mm round: a rib at 70 % of it (common practice), 45 of 60 needles at 3/4."""
    assert HungHem(20).girth(60, 200.0) == pytest.approx(200)
    assert Rib(20).girth(60, 200.0) == pytest.approx(140)
    assert MockRib(20, every=4).girth(60, 200.0) == pytest.approx(150)
    assert Rib(20, flat=180.0).girth(60, 200.0) == pytest.approx(180)


@pytest.mark.parametrize(
    ("pulled", "wrong"),
    [("10.4 cm", True), ("10.5 cm", False), ("35 cm", False), ("35.1 cm", True)],
)
def test_a_cuff_pulls_to_between_1_05_and_3_5_of_its_width(pulled: str, wrong: bool) -> None:
    """Usual for a tube (common practice, no published source), both ends included."""
    changes = {"sock.cuff.kind": "rib", "sock.cuff.flat_width": "10 cm"}
    request = asked({**changes, "sock.cuff.pulled_width": pulled})
    errors = answer({"do": "plan", "request": request}).get("errors", [])
    assert [one["field"] for one in errors] == ["sock.cuff.pulled_width"] * wrong


def test_a_mock_rib_that_does_not_come_out_even_is_offered_those_that_do() -> None:
    """54 slots: every 4th would leave two needles over; the offers are parsed and tried."""
    wrong = {"sock.cuff.kind": "mock rib", "sock.cuff.every": 4, "cylinder.slots": 54}
    problem = refused({**wrong, "foot.length": "300 mm"})["sock.cuff.every"]
    offers = [int(number) for number in re.findall(r"\d+", problem["way_out"])]
    assert offers
    for every in offers:
        assert cuff("mock rib", 54, every=every)["counts"]["cuff"]["needles"] == 54 - 54 // every


def test_all_that_come_out_even_up_to_the_8th_are_offered() -> None:
    """Of 2 to 8 these divide 72."""
    wrong = {"sock.cuff.kind": "mock rib", "sock.cuff.every": 5, "cylinder.slots": 72}
    problem = refused({**wrong, "foot.length": "300 mm"})["sock.cuff.every"]
    assert problem["way_out"] == "Take out every 2nd, 3rd, 4th, 6th, or 8th."


def test_the_nth_needle_is_ignored_where_it_means_nothing() -> None:
    """A page keeps the field while another kind is chosen."""
    assert cuff("hem", every=7)["counts"]["cuff"]["needles"] == 60


@pytest.mark.parametrize("kind", ["hem", "rib", "mock rib"])
def test_needles_taken_out_are_put_back_before_the_leg(kind: str) -> None:
    sheet = cuff(kind)
    told = " ".join(step["text"] for step in sheet["steps"] if step["part"] in ("waste", "cuff"))
    assert ("Take out every" in told) is ("Put back" in told) is (kind == "mock rib")
    assert ("Hang the hem" in told) is (kind == "hem")
    assert ("ribber" in told) is (kind == "rib")


def test_a_rib_gives_most_and_a_hem_least() -> None:
    hem, mock, rib = (gives(cuff(kind)) for kind in ("hem", "mock rib", "rib"))
    assert hem < mock < rib


@pytest.mark.parametrize(
    ("rounds", "word"), [(18, "fewer than 20"), (20, ""), (40, ""), (42, "more than 40")]
)
def test_a_hem_is_remarked_on_beyond_20_and_40_rounds(rounds: int, word: str) -> None:
    """Common practice, no published source; 20 and 40 themselves are neither too few nor many."""
    said = noted(cuff("hem", rounds=rounds)).get("sock.cuff.rounds", "")
    assert (word in said) if word else (said == "")


def test_only_a_hem_is_remarked_on_for_its_depth() -> None:
    assert "sock.cuff.rounds" not in noted(cuff("rib", rounds=12))
    assert "sock.cuff.rounds" in noted(cuff("hem", rounds=12))


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"sock.cuff.kind": "frill"}, "sock.cuff.kind"),
        ({"sock.cuff.rounds": 0}, "sock.cuff.rounds"),
        ({"sock.cuff.rounds": "2.5"}, "sock.cuff.rounds"),
        ({"sock.cuff.rounds": 1000}, "sock.cuff.rounds"),
        ({"sock.cuff.kind": "mock rib", "sock.cuff.every": 1}, "sock.cuff.every"),
        ({"sock.cuff.depth": "1 in"}, "sock.cuff.depth"),
    ],
)
def test_what_is_no_cuff_is_refused_at_its_field(changes: dict[str, Any], field: str) -> None:
    problem = refused(changes)[field]
    assert problem["message"]
    assert problem["way_out"]
