"""The shelf: the same stretches as a plan, a score that can be had another way, plain refusals."""

from __future__ import annotations

import math
import random
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from engine import sources
from engine.judge import fit, fit_score
from engine.read.errors import Refused
from engine.say.aloud import text
from engine.sock import plan
from tests.asking import AVERAGE_WOMAN, answer, asked

MM_PER_INCH = 25.4
WORN_PLACES = ("ball", "heel", "over_heel", "ankle", "calf")
AT_MARK, LOOSE = "shelf.yarns.0.marks.0", {"stitches": "1 / in"}
ONE_YARN = [{"name": "a", "stitches": "7.5 / in", "rounds": "9.6 / in"}]


def ranked(shelf: dict[str, Any], changes: dict[str, Any] | None = None) -> dict[str, Any]:
    found = answer({"do": "shelf", "request": asked(changes), "shelf": shelf})
    assert "errors" not in found, found
    return found


def refused(shelf: Any, changes: dict[str, Any] | None = None) -> dict[str, dict[str, Any]]:
    found = answer({"do": "shelf", "request": asked(changes), "shelf": shelf})
    assert set(found) == {"errors"}, "this should have been refused"
    return {problem["field"]: problem for problem in found["errors"]}


def told(name: str, stitches: float, rounds: float, **more: Any) -> dict[str, Any]:
    return {"name": name, "stitches": f"{stitches} / in", "rounds": f"{rounds} / in", **more}


def reason(candidate: dict[str, Any], place: str) -> dict[str, Any]:
    found: dict[str, Any] = next(one for one in candidate["reasons"] if one["place"] == place)
    return found


def drawn(seed: int) -> tuple[dict[str, Any], dict[str, Any]]:
    """A foot known in part, with wishes that belong to another cylinder, and a shelf."""
    chance = random.Random(seed)
    foot = {
        name: f"{float(text[:-3]) * chance.uniform(0.8, 1.2):.1f} mm"
        for name, text in AVERAGE_WOMAN.items()
        if name == "length" or chance.random() < 0.6
    }
    wishes = chance.choice(
        [
            {},
            {"heel": {"needles": 30, "left": 4}, "toe": {"left": 12}},
            {"cuff": {"kind": "mock rib", "every": 5}, "leg": {"rounds": 110}},
            {"cuff": {"kind": "rib", "rounds": 30}, "length_ease": "2 %", "heel": {"left": 6}},
            {"foot_length_of_sock": "8 in", "leg": {"rounds": 20}},
            {"heel": {"kind": "two at first", "left": 8}, "leg": {"kind": "footie"}},
        ]
    )
    request = asked({"foot": foot, "sock": wishes, "cylinder": None, "fabric": None})
    if seed % 4 == 1:
        request["foot"]["toe_breadth"] = f"{60 + seed} mm"
    if seed % 3 == 0:  # sock one was knitted on another cylinder
        request |= {"first_sock": {"foot_rounds": 50, "length": "9 in"}}
    yarns = []
    for at in range(3):
        stitches = chance.uniform(5, 10)
        mark = {"mark": at, "stitches": f"{stitches:.2f} / in"}
        if chance.random() < 0.8:
            mark["rounds"] = f"{stitches * chance.uniform(1.1, 1.5):.2f} / in"
        number = {"yarn": f"{chance.randint(200, 600)} m / 100 g"} if chance.random() < 0.6 else {}
        yarns.append({"name": f"invented {at}", "marks": [mark], **number})
    yarns.append({"yarn": f"{chance.randint(150, 700)} m / 100 g"})
    slots = chance.sample(range(24, 122, 2), 3)
    return request, {"cylinders": [{"slots": n} for n in slots], "yarns": yarns}


@pytest.mark.parametrize("seed", range(40))
def test_every_candidate_is_what_its_plan_says(seed: int) -> None:
    """The plan is asked for by the fields that `choose` names, and by nothing else."""
    request, shelf = drawn(seed)
    found = answer({"do": "shelf", "request": request, "shelf": shelf})
    assert len(found["best"]) == found["tried"] == 12
    for candidate in found["best"]:
        adopted = {**request, **candidate["choose"]}
        if reason(candidate, "length")["level"] == "bad":
            with pytest.raises(Refused, match=r"cylinder\.slots|foot\.length|sock\.foot_length"):
                plan.make(adopted)
            assert candidate["verdict"] == "does not fit"
            assert candidate["reasons"][0]["place"] == "length"
            continue
        sock = plan.make(adopted)
        places = fit.judge(
            sock.measures, sock.tube, sock.heel_girth, sock.cuff, sock.fabric, sock.top_above_floor
        )
        for place in places:
            if place.place in WORN_PLACES:
                own = reason(candidate, place.place)
                assert own["value"] == pytest.approx(place.stretch, rel=1e-9, abs=0)
                assert (own["level"], own["words"]) == (place.level, text(place.words))
        assert reason(candidate, "length")["value"] == pytest.approx(sock.exact_rounds, abs=1e-9)
        assert reason(candidate, "firmness")["value"] == pytest.approx(sock.fabric.tightness)
        bad = any(place.level == "bad" for place in places)
        assert (candidate["verdict"] == "does not fit") == bad
        assert candidate["swatch_first"] == (sock.fabric.way == "yarn")


def by_quadrature(request: dict[str, Any], candidate: dict[str, Any]) -> float:
    """The score anew, from the plan: discomfort times the normal density, integrated by scipy."""
    sock = plan.make({**request, **candidate["choose"]})
    cloth, measures = sock.fabric, sock.measures
    w, c = cloth.stitches_sd, cloth.rounds_sd

    def expected(mean: float, sd: float, bounds: Any) -> float:
        low_bad, low, high, high_bad = (float(bound) for bound in bounds)

        def worth(x: float) -> float:
            felt = max(0.0, (low - x) / (low - low_bad), (x - high) / (high_bad - high))
            return felt * float(stats.norm.pdf(x, mean, sd))

        kinks = sorted(
            {
                mean - 8 * sd,
                mean + 8 * sd,
                *(edge for edge in (low, mean, high) if abs(edge - mean) < 8 * sd),
            }
        )
        return sum(float(integrate.quad(worth, a, b)[0]) for a, b in pairwise(kinks))

    def girth(name: str, fabric: float, error: float) -> tuple[float, float]:
        body = measures[name]
        stretch = body.value / fabric
        return stretch, stretch * math.hypot(body.sd / body.value, error)

    # How the heel's girth follows stitches and rounds, by small differences.
    nudge = 1e-6

    def heel(stitches: float, rounds: float) -> float:
        n, left = sock.pockets["heel"].needles, sock.pockets["heel"].left
        fewer = 2 if sock.pockets["heel"].kind == "two at first" else 0  # rows, narrowing
        slants = [
            math.hypot((n - left) / 2 / stitches, (n - left - less) / rounds) for less in (fewer, 0)
        ]
        return (sock.cylinder.slots - n + left) / stitches + sum(slants)

    own = heel(cloth.stitches, cloth.rounds)
    by_w = (heel(cloth.stitches * (1 + nudge), cloth.rounds) / own - 1) / nudge
    by_c = (heel(cloth.stitches, cloth.rounds * (1 + nudge)) / own - 1) / nudge
    of_heel = math.hypot(by_w * w, by_c * c)
    total = expected(*girth("ball_girth", sock.tube, w), sources.BALL_STRETCH)
    total += expected(*girth("heel_girth", own, of_heel), sources.HEEL_STRETCH)
    total += expected(*girth("ankle_girth", sock.tube, w), sources.LEG_STRETCH) / 2
    height = sources.CALF_HEIGHT_OVER_FOOT * measures["length"].value
    if sock.top_above_floor >= sources.CALF_REACHED * height:
        total += expected(*girth("calf_girth", sock.tube, w), sources.LEG_STRETCH) / 2
    pull = sock.cuff.pull(cloth, sock.tube)
    needed, sd = girth("heel_girth", sock.tube, w)
    total += expected(needed / pull, sd / pull, (-1e9, -1e8, sources.GOES_ON_EASILY_SHARE, 1))
    if cloth.tex_told and cloth.way != "yarn":
        firm = cloth.tightness
        total += expected(firm, firm * math.hypot(w, c) / 2, (0.9, 1.0, 1.4, 1.6)) / 2
    return total + float(stats.norm.cdf(0.5, sock.exact_rounds, sock.rounds_sd))


@pytest.mark.parametrize("seed", [1, 2, 4])
def test_the_score_by_another_way(seed: int) -> None:
    """Score and order against scipy's quadrature and its Spearman's rank correlation."""
    request, shelf = drawn(seed)
    found = answer({"do": "shelf", "request": request, "shelf": shelf})
    able = [one for one in found["best"] if reason(one, "length")["level"] != "bad"]
    ours = [one["score"] for one in able]
    theirs = [by_quadrature(request, one) for one in able]
    assert len(able) > 6
    assert ours == pytest.approx(theirs, rel=2e-3, abs=2e-4)
    assert stats.spearmanr(ours, theirs).statistic > 0.99


@given(st.floats(-3, 3), st.floats(1e-3, 2))
def test_expected_excess_is_scipys(mean: float, sd: float) -> None:
    """Of a normal cut off at 0: mean of x where x > 0, by scipy.stats.truncnorm."""
    above = float(stats.norm.sf(0, mean, sd))
    theirs = 0.0
    if above > 1e-12:
        theirs = above * float(stats.truncnorm.mean(-mean / sd, 60, mean, sd))
    assert fit_score.expected_excess(mean, sd) == pytest.approx(theirs, abs=1e-8, rel=1e-6)


@given(
    st.integers(18, 50), st.floats(5, 10), st.floats(1.2, 1.4), st.integers(0, 5), st.integers(2, 6)
)
def test_a_foot_fitted_exactly_ranks_its_own_first(
    half: int, stitches: float, shape: float, at: int, step: int
) -> None:
    """The foot is made from a sock: every measure with the stretch that is wanted there."""
    slots, w = 2 * half, stitches / MM_PER_INCH
    tube = slots / w
    foot = {
        "length": f"{1.05 * tube:.2f} mm",
        "ball_girth": f"{sources.BALL_STRETCH_WANTED * tube:.2f} mm",
        "heel_girth": f"{1.45 * tube:.2f} mm",
        "ankle_girth": f"{1.12 * tube:.2f} mm",
    }
    if not 120 < 1.05 * tube < 330 or tube > 280:
        return
    others = [slots + 2 * step * (n - at) for n in range(6)]
    shelf = {
        "cylinders": [{"slots": n} for n in others if 24 <= n <= 120],
        "yarns": [told("own", round(stitches, 6), round(stitches * shape, 6))],
    }
    found = ranked(shelf, {"foot": foot, "sock.leg.rounds": 20})
    first = found["best"][0]
    assert abs(first["slots"] - slots) <= (2 if step == 1 else 0)
    assert reason(first, "ball")["level"] == "good"


def test_the_customary_sock_is_first_of_the_usual_cylinders() -> None:
    """Sock yarn on 60 slots, 8 in round, on a 9 in foot: common practice, no published source."""
    found = ranked(
        {
            "cylinders": [{"slots": n} for n in (48, 54, 60, 64, 72, 80)],
            "yarns": [told("sock yarn", 7.5, 9.6, yarn="412 m / 100 g")],
        },
        {"foot.ball_girth": "8.8 in"},
    )
    first = found["best"][0]
    assert (first["slots"], first["verdict"], first["tube"]["text"]) == (60, "fits well", "8 in")
    assert [one["slots"] for one in found["best"][-2:]] != [60]
    assert found["fits"]
    assert found["wanted"] == []


@pytest.mark.parametrize("times", [0.7, 1.3])
def test_a_larger_foot_in_a_coarser_yarn_is_stretched_the_same(times: float) -> None:
    foot = {name: float(text[:-3]) for name, text in AVERAGE_WOMAN.items()}

    def first(scale: float) -> dict[str, Any]:
        grown = {name: f"{mm * scale:.6f} mm" for name, mm in foot.items()}
        yarns = [told("a", round(7.5 / scale, 9), round(9.6 / scale, 9))]
        found = ranked({"cylinders": [{"slots": 60}], "yarns": yarns}, {"foot": grown})
        best: dict[str, Any] = found["best"][0]
        return best

    one, other = first(1.0), first(times)
    for place in (*WORN_PLACES[:4], "length"):
        assert reason(one, place)["value"] == pytest.approx(reason(other, place)["value"], rel=1e-6)


def test_a_guess_ranks_below_the_same_fabric_told() -> None:
    number = "412 m / 100 g"
    guessed = ranked({"cylinders": "60", "yarns": [{"name": "guess", "yarn": number}]})["best"][0]
    same = {name: f"{guessed[name]['value'] * 25.4:.4f} / in" for name in ("stitches", "rounds")}
    shelf = {
        "cylinders": "60",
        "yarns": [{"name": "guess", "yarn": number}, {"name": "told", "yarn": number, **same}],
    }
    found = ranked(shelf)
    assert [one["yarn"] for one in found["best"]] == ["told", "guess"]
    assert [one["swatch_first"] for one in found["best"]] == [False, True]
    assert found["best"][1]["standing"] != "fits"
    assert any("Swatch first" in line for line in found["assumptions"])


def test_where_nothing_fits_it_says_what_would() -> None:
    """And what it says is true: a plan with it has no place that is bad."""
    shelf = {"cylinders": "96, 100", "yarns": ONE_YARN}
    found = ranked(shelf)
    assert not found["fits"]
    assert "Nothing" in found["words"]
    assert {one["verdict"] for one in found["best"]} == {"does not fit"}
    assert all(one["reasons"][0]["level"] == "bad" for one in found["best"])
    by_yarn, *by_cylinder = found["wanted"]
    assert abs(by_yarn["slots"] - 228.1 / 1.1 * 7.5 / 25.4) < 4
    assert [one["slots"] for one in by_cylinder] == [96, 100]
    for one in found["wanted"]:
        fabric = {
            name: f"{one[name]['value'] * 25.4:.3f} / in" if name in one else ONE_YARN[0][name]
            for name in ("stitches", "rounds")
        }
        changes = {"cylinder.slots": one["slots"], "fabric": fabric}
        sheet = answer({"do": "plan", "request": asked(changes)})
        assert all(place["level"] != "bad" for place in sheet["fit"]), one
        assert str(one["slots"]) in one["words"]


def test_where_no_tube_fits_it_says_so() -> None:
    """A heel no plain tube passes, over an ankle that would lose it."""
    found = ranked(
        {"cylinders": "60", "yarns": ONE_YARN},
        {"foot.ball_girth": "180 mm", "foot.ankle_girth": "150 mm", "foot.heel_girth": "420 mm"},
    )
    assert not found["fits"]
    (only,) = found["wanted"]
    assert set(only) == {"words"}


def test_a_height_of_the_leg_counts_for_the_calf_and_its_girths_wait_for_the_plan() -> None:
    shelf = {"cylinders": "60", "yarns": ONE_YARN}
    leg = {"height": "16 in", "girths": [{"height": "12 in", "girth": "14 in"}]}
    low = ranked(shelf)["best"][0]
    found = ranked(shelf, {"sock.leg": leg})
    high = found["best"][0]
    assert (reason(low, "calf")["level"], reason(high, "calf")["level"]) == ("apart", "bad")
    assert any("plain tube" in line for line in found["assumptions"])
    assert "sock" not in high["choose"]
    assert "sock.leg.height" in refused(shelf, {"sock.leg": {"height": "16 miles"}})


def test_each_yarn_has_its_best_mark() -> None:
    marks = [
        {"mark": n, "stitches": f"{5.5 + n} / in", "rounds": f"{7 + n} / in"} for n in range(4)
    ]
    found = ranked({"cylinders": "54 60 72", "yarns": [*ONE_YARN, {"name": "b", "marks": marks}]})
    assert found["tried"] == 15 + 1  # 54 want mark 1 and 72 one beyond all: only 60 one between
    assert sorted(one["yarn"] for one in found["yarns"]) == ["a", "b"]
    for best in found["yarns"]:
        of_it = [one["rank"] for one in found["best"] if one["yarn"] == best["yarn"]]
        assert best["rank"] == min(of_it)
    assert [one["rank"] for one in found["best"]] == list(range(1, 13))
    kinds = ["fits well", "can be worn", "does not fit"]
    order = [kinds.index(one["verdict"]) for one in found["best"]]
    assert order == sorted(order)
    for candidate in found["best"]:
        parts = [one["discomfort"] for one in candidate["reasons"]]
        assert sum(parts) == pytest.approx(candidate["score"], abs=5e-4)


def at_marks(*marks: tuple[str, float], name: str = "b", **more: str) -> list[dict[str, Any]]:
    """Rows of one yarn, as the page sends them: stitches per inch at each mark."""
    return [
        {
            "name": name,
            "marks": [{"mark": mark, "stitches": f"{w} / in", "rounds": f"{w * 1.3:.2f} / in"}],
            **more,
        }
        for mark, w in marks
    ]


def test_between_two_marks_the_one_for_the_ball_is_ranked_too() -> None:
    """By hand: the loop, 1 over the stitches, is a line over the marks (Munden 1959)."""
    found = ranked({"cylinders": "60", "yarns": at_marks(("4", 9.0), ("8", 6.5), yarn="240 tex")})
    assert found["tried"] == 3
    best = found["best"][0]
    wanted = 60 * sources.BALL_STRETCH_WANTED / 228.1 * MM_PER_INCH
    mark = 4 + 4 * (1 / wanted - 1 / 9) / (1 / 6.5 - 1 / 9)
    nearest = round(mark * 4) / 4
    assert (
        best["mark"] == f"{int(nearest)}{ {0.25: '¼', 0.5: '½', 0.75: '¾'}[nearest % 1] }"
        ", between those you knitted"
    )
    there = 1 / (1 / 9 + (1 / 6.5 - 1 / 9) * (nearest - 4) / 4)
    assert best["stitches"]["value"] * MM_PER_INCH == pytest.approx(there, abs=0.006)
    assert best["choose"]["fabric"]["yarn"] == "240 tex"
    sheet = answer({"do": "plan", "request": {**asked(), **best["choose"]}})
    ball = next(place for place in sheet["fit"] if place["place"] == "ball")
    assert ball["stretch"] == pytest.approx(reason(best, "ball")["value"], abs=5e-4)
    assert ball["stretch"] == pytest.approx(sources.BALL_STRETCH_WANTED, rel=0.02)
    assert any("between two of yours" in line for line in found["assumptions"])


@pytest.mark.parametrize(
    "yarns",
    [
        at_marks(("4", 7.6), ("8", 7.4)),  # the mark hardly moves the stitch
        at_marks(("tight", 9.0), ("loose", 6.5)),
        [*at_marks(("4", 9.0)), *at_marks(("8", 6.5), name="c")],
        [*at_marks(("4", 9.0), yarn="240 tex"), *at_marks(("8", 6.5), yarn="300 tex")],
        at_marks(("4", 12.0), ("8", 9.5)),  # the ball wants a mark beyond both
    ],
)
def test_nothing_is_foretold_without_a_sure_line_or_beyond_the_marks(yarns: list[Any]) -> None:
    assert ranked({"cylinders": "60", "yarns": yarns})["tried"] == 2


def test_what_belongs_to_another_cylinder_is_left_out_and_no_more() -> None:
    sock = {"heel": {"left": 10}, "cuff": {"kind": "rib", "every": 4}, "leg": {"rounds": 40}}
    (best,) = ranked({"cylinders": "60", "yarns": ONE_YARN}, {"sock": sock})["best"]
    assert best["choose"]["sock"] == {"cuff": {"kind": "rib"}, "leg": {"rounds": 40}}
    sock = {"heel": {"left": 10, "kind": "two at first"}, "toe": {"needles": 28}}
    (best,) = ranked({"cylinders": "60", "yarns": ONE_YARN}, {"sock": sock})["best"]
    assert best["choose"]["sock"] == {"heel": {"kind": "two at first"}}
    (best,) = ranked({"cylinders": "60", "yarns": ONE_YARN}, {"sock": {"leg": {"rounds": 40}}})[
        "best"
    ]
    assert set(best["choose"]) == {"cylinder", "fabric"}


def test_of_two_that_suit_alike_the_one_with_a_ribber_stands_first_for_a_ribbed_cuff() -> None:
    def lacking(kind: str, ribbers: str) -> list[tuple[str, str | None]]:
        shelf = {
            "cylinders": [{"slots": 60, "name": "a"}, {"slots": 62, "name": "b"}],
            "ribbers": ribbers,
            "yarns": ONE_YARN,
        }
        found = ranked(shelf, {"sock.cuff": {"kind": kind}})["best"]
        assert len({one["verdict"] for one in found}) == 1, "they suit alike"
        return [(one["cylinder"], one["lacks"]) for one in found]

    for kind, ribbers in (("hem", "60"), ("hem", "62"), ("rib", ""), ("rib", "60, 62")):
        assert [lacks for _, lacks in lacking(kind, ribbers)] == [None, None]
    for ribbers, first, other in (("60", "a", "b"), ("62", "b", "a")):
        (one, lacks_none), (two, lacks) = lacking("rib", ribbers)
        assert (one, lacks_none, two) == (first, None, other)
        assert lacks is not None
        assert "ribber" in lacks


@pytest.mark.parametrize(
    ("shelf", "field", "word"),
    [
        ({"cylinders": "60", "ribbers": "72", "yarns": ONE_YARN}, "shelf.ribbers", "72"),
        ({"cylinders": "60", "ribbers": "yes", "yarns": ONE_YARN}, "shelf.ribbers", "yes"),
        # What is told of it is 20 characters, for more would fill the screen.
        ({"cylinders": "60", "ribbers": "9" * 21, "yarns": []}, "shelf.ribbers", f" {'9' * 20} "),
        (None, "shelf.cylinders", "no cylinders"),
        ({"cylinders": "54, 61", "yarns": ONE_YARN}, "shelf.cylinders", "61"),
        ({"cylinders": "54, sixty", "yarns": ONE_YARN}, "shelf.cylinders", "sixty"),
        ({"cylinders": "8", "yarns": ONE_YARN}, "shelf.cylinders", "8"),
        ({"cylinders": [{"slots": 61}], "yarns": ONE_YARN}, "shelf.cylinders.0.slots", "61"),
        ({"cylinders": [{"slots": 60}] * 25, "yarns": ONE_YARN}, "shelf.cylinders", "25"),
        ({"cylinders": "60 " * 25, "yarns": ONE_YARN}, "shelf.cylinders", "25"),
        ({"cylinders": "60", "yarns": []}, "shelf.yarns", "no yarns"),
        ({"cylinders": "60", "yarns": [{"name": "a"}]}, "shelf.yarns.0.yarn", "Nothing"),
        ({"cylinders": "60", "yarns": [{"yarn": "many"}]}, "shelf.yarns.0.yarn", "many"),
        ({"cylinders": "60", "yarns": ONE_YARN * 61}, "shelf.yarns", "61"),
        ({"cylinders": "60", "yarns": [{"name": "a" * 99}]}, "shelf.yarns.0.name", "long"),
        ({"cylinders": "60", "yarns": [{"marks": [{"mark": 3}]}]}, f"{AT_MARK}.stitches", "mark"),
        ({"cylinders": "60", "yarns": [{"marks": [LOOSE]}]}, f"{AT_MARK}.stitches", "small"),
        ({"cylinders": "60", "yarns": ONE_YARN, "pans": 2}, "shelf.pans", "pans"),
        ({"cylinders": "60", "yarns": 7}, "shelf.yarns", "list"),
    ],
)  # fmt: skip
def test_each_fault_is_told_at_its_field(shelf: Any, field: str, word: str) -> None:
    problem = refused(shelf)[field]
    assert word in problem["message"]
    assert problem["way_out"]


def test_faults_of_foot_and_shelf_are_told_together() -> None:
    found = refused({"cylinders": "61", "yarns": ONE_YARN}, {"foot.length": "9 furlongs"})
    assert set(found) == {"foot.length", "shelf.cylinders"}


def test_a_mark_and_a_name_may_be_as_long_as_they_say() -> None:
    """A mark of 15 letters, a name of 60."""

    def faults(mark: str, name: str) -> set[str]:
        rates = {"stitches": "7.5 / in", "rounds": "9.6 / in"}
        yarns = [{"name": name, "marks": [{"mark": mark, **rates}]}]
        asking = {"do": "shelf", "request": asked(), "shelf": {"cylinders": "60", "yarns": yarns}}
        return {problem["field"] for problem in answer(asking).get("errors", [])}

    assert faults("0000005 001/002", "n" * 60) == set()
    assert faults("00000005 001/002", "n") == {f"{AT_MARK}.mark"}
    assert faults("5", "n" * 61) == {"shelf.yarns.0.name"}


def test_yarns_without_a_name_are_counted() -> None:
    rates = {"stitches": "7.5 / in", "rounds": "9.6 / in"}
    found = ranked({"cylinders": "60", "yarns": [rates, rates, {**rates, "colour": "red"}]})
    assert sorted(one["yarn"] for one in found["best"]) == ["red", "yarn 1", "yarn 2"]


def test_a_yarn_of_which_nothing_is_known_is_told_once() -> None:
    shelf = {"cylinders": "60", "yarns": [{"name": "a"}]}
    found = answer({"do": "shelf", "request": asked(), "shelf": shelf})
    assert [problem["field"] for problem in found["errors"]] == ["shelf.yarns.0.yarn"]


def test_what_is_asked_of_a_yarn_names_it() -> None:
    found = ranked({"cylinders": "60", "yarns": [{"name": "a", "stitches": "7.5 / in"}]})
    (note,) = [one for one in found["notes"] if one["field"].startswith("shelf")]
    assert note["field"] == "shelf.yarns.0.rounds"
    assert note["text"].startswith("a: ")


def test_blank_rows_are_passed_over_and_names_kept() -> None:
    shelf = {
        "cylinders": [{"slots": 60, "name": "the old one"}, {"slots": " "}],
        "yarns": [{"name": " ", "marks": [{"mark": ""}]}, None, {"name": "b", "yarn": "238 tex"}],
    }
    (best,) = ranked(shelf)["best"]
    assert (best["cylinder"], best["yarn"], best["mark"]) == ("the old one", "b", None)


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(
                st.sampled_from(
                    ["cylinders", "ribbers", "yarns", "marks", "slots", "stitches", "yarn", "x"]
                ),
                inner,
                max_size=4,
            )
        ),
        max_leaves=12,
    )
)
def test_anything_at_all_is_ranked_or_refused(shelf: Any) -> None:
    found = answer({"do": "shelf", "request": asked(), "shelf": shelf})
    assert "best" in found or found["errors"]
    assert "errors" in answer({"do": "shelf", "request": shelf, "shelf": shelf})


@pytest.mark.parametrize(
    ("cylinders", "words"),
    [
        ("60", "There is one way to knit it, and it would fit well."),
        ("66", "There is one way to knit it, and it can be worn."),
        ("54", "Nothing on this shelf fits this foot."),
        ("54, 60", "Of 2 ways to knit it, 1 would fit well."),
        ("60, 64, 66", "Of 3 ways to knit it, 1 would fit well and 2 more can be worn."),
        ("66, 72", "Of 2 ways to knit it, none would fit well, and 1 can be worn."),
    ],
)
def test_the_sum_of_a_shelf_in_words_is_that_of_its_verdicts(cylinders: str, words: str) -> None:
    found = ranked({"cylinders": cylinders, "yarns": ONE_YARN})
    assert found["words"] == words
    standings = [one["standing"] for one in found["best"]]
    assert (" 1 would" in words or "it would" in words) == ("fits" in standings)
    assert ("can be worn" in words) == ("worn" in standings)


@pytest.mark.parametrize(
    ("left", "level"), [("200 g", "yes"), ("66 g", "maybe"), ("40 g", "no"), (None, None)]
)
def test_it_is_told_whether_the_yarn_there_is_this_pair(
    left: str | None, level: str | None
) -> None:
    """The plan of that cylinder and yarn says how much the pair takes: some 62 g."""
    yarn = {"name": "a", "yarn": "410 m / 100 g", "stitches": "7.5 / in", "rounds": "9.6 / in"}
    found = ranked({"cylinders": "60", "yarns": [{**yarn, **({"left": left} if left else {})}]})
    (best,) = found["best"]
    assert (best["enough"] and best["enough"]["level"]) == level
    sheet = answer({"do": "plan", "request": {**asked(), **best["choose"]}})
    takes = sheet["yarn"]["grams"]["text"]
    assert level is None or f"about {takes}" in best["enough"]["words"]


def test_what_is_in_another_color_is_not_asked_of_the_yarn_there() -> None:
    yarn = {"name": "a", "yarn": "410 m / 100 g", "stitches": "7.5 / in", "rounds": "9.6 / in"}
    shelf = {"cylinders": "60", "yarns": [{**yarn, "left": "50 g"}]}
    levels = [
        ranked(shelf, apart)["best"][0]["enough"]["level"]
        for apart in (None, {"stock.apart": "cuff, heel and toe"})
    ]
    assert levels == ["no", "yes"]
