"""The ledger: what several swatches and socks say together, against statsmodels and scipy."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import optimize, stats
from statsmodels.regression.linear_model import WLS

from engine import sources
from engine.fabric import swatch_line
from engine.fabric.fabric import Fabric
from engine.fabric.knitter import UNKNOWN
from engine.fabric.swatch import Swatch
from engine.sock import plan as planning
from tests.asking import answer, asked, noted, plan, refused

NO_TELLING: dict[str, Any] = {"fabric.stitches": None, "fabric.rounds": None}
KS = 23.1  # fully relaxed, GATE 2015 Textile Engineering, question 54


def tube(mark: float, loop: float, tape: float = 0.01, **more: Any) -> Swatch:
    """A tube of Munden's shape, 4.2 and 5.5 over its loop in mm."""
    return Swatch("fabric.swatch", "swatch", mark, 4.2 / loop, 5.5 / loop, tape, tape, **more)


def line(tubes: Sequence[Swatch], tex: float | None = None) -> swatch_line.Line:
    found = swatch_line.line(tubes, tex, UNKNOWN)
    assert found is not None
    return found


TUBES = (tube(5, 12.6), tube(5, 12.9, 0.02), tube(6, 13.4, 0.015), tube(7, 14.5), tube(8, 15.1))


def reference(tubes: Sequence[Swatch]) -> Any:
    """statsmodels' weighted least squares with the usual errors as they are (fixed scale)."""
    loops = np.array([math.sqrt(KS / ((t.stitches or 0) * (t.rounds or 0))) for t in tubes])
    errors = [math.hypot(math.hypot(t.stitches_tape, t.rounds_tape) / 2, 0.02) for t in tubes]
    marks = np.array([[1.0, t.mark or 0.0] for t in tubes])
    weights = 1 / (loops * np.array(errors)) ** 2
    return WLS(loops, marks, weights=weights).fit(cov_type="fixed scale")


def test_the_line_is_that_of_statsmodels() -> None:
    """Its errors are theirs, times what her own scatter of the loops is against the usual 2 %."""
    ours, theirs = line(TUBES), reference(TUBES)
    read = sum((t.stitches_tape**2 + t.rounds_tape**2) / 4 for t in TUBES) / 5
    times = math.sqrt((0.75 * ours.scatter.square + read) / (0.02**2 + read))
    assert ours.slope == pytest.approx(theirs.params[1], rel=1e-9)
    assert ours.loop_at(0)[0] == pytest.approx(theirs.params[0], rel=1e-9)
    assert ours.slope_sd == pytest.approx(theirs.bse[1] * times, rel=1e-9)
    assert ours.loop_at(0)[1] == pytest.approx(theirs.bse[0] * times, rel=1e-9)
    for mark in (3.0, 5.0, 6.25, 9.5):
        there = theirs.get_prediction(np.array([[1.0, mark]]))
        assert ours.loop_at(mark)[0] == pytest.approx(there.predicted_mean[0], rel=1e-9)
        assert ours.loop_at(mark)[1] == pytest.approx(there.se_mean[0] * times, rel=1e-9)


def test_turned_round_the_line_gives_fiellers_marks() -> None:
    """At both ends of the interval the wanted loop lies t sd away, found by scipy's brentq.

    t is Student's (scipy) with the degrees by Satterthwaite; swatches share a habit of 1.25 %.
    """
    ours = line(TUBES)
    stitches = 4.2 / 13.8
    found = ours.mark_for_stitches(stitches)
    assert found is not None
    mark, low, high = found
    wanted = ours.wales / stitches
    habit, known = 0.0125, ours.foretold(ours.middle)
    free = ours.scatter.free * (known.doubt / known.hanging) ** 2
    t = stats.t.ppf(0.9, free)
    assert ours.loop_at(mark)[0] == pytest.approx(wanted, rel=1e-9)

    def away(at: float) -> float:
        loop, sd = ours.loop_at(at)
        return abs(loop - wanted) - float(t) * math.hypot(
            sd, wanted * ours.shape_sd, wanted * habit
        )

    assert low == pytest.approx(optimize.brentq(away, mark - 4, mark), abs=2e-3)
    assert high == pytest.approx(optimize.brentq(away, mark, mark + 4), abs=2e-3)


def test_knitted_at_the_mark_it_gives_the_stitches_wanted() -> None:
    ours = line(TUBES)
    mark = (ours.mark_for_stitches(0.3) or (0,))[0]
    assert ours.at(mark)[0] == pytest.approx(0.3, rel=1e-9)
    assert ours.at(mark)[1] == pytest.approx(0.3 * 5.5 / 4.2, rel=1e-9)  # Munden's shape


def test_a_line_as_good_as_level_gives_no_mark() -> None:
    assert line([tube(5, 13.0), tube(6, 13.05)]).mark_for_stitches(0.3) is None


def test_the_bound_of_scatter_is_that_of_chi_square() -> None:
    """scipy.stats.chi2; the approximation of Wilson and Hilferty is within 1 %."""
    for free in range(1, 80):
        bound = stats.chi2.isf(0.01, free)
        assert swatch_line.scattered(bound * 1.01, free)
        assert not swatch_line.scattered(bound * 0.99, free)
    assert not swatch_line.scattered(99.0, 0)


def test_scatter_is_told_and_does_not_widen() -> None:
    calm = [tube(5, 12.6), tube(6, 13.4), tube(7, 14.2)]
    wild = [tube(5, 12.6), tube(6, 15.4), tube(7, 14.2)]
    assert not line(calm).scattered
    assert line(wild).scattered


def test_tubes_weighed_to_the_gram_make_the_line_where_that_is_surer() -> None:
    weighed = [
        tube(5, 12.6, 0.05, grams=12.0 * 240 / 1e6, grams_sd=0.005),
        tube(7, 14.6, 0.05, grams=14.0 * 240 / 1e6, grams_sd=0.005),
    ]
    ours = line(weighed, 240.0)
    assert ours.loop_at(5)[0] == pytest.approx(12.0, rel=1e-9)
    assert ours.at(5)[0] == pytest.approx(4.2 / 12.6, rel=0.01)  # tex drops out again
    assert line(weighed).loop_at(5)[0] == pytest.approx(12.6, rel=1e-9)


@pytest.mark.parametrize(
    ("tape", "scale", "loop"), [(0.05, 0.02, 12.0), (0.02, 0.02, 12.6), (0.01, 0.02, 12.6)]
)
def test_which_is_surer_is_told_by_the_sum_of_the_variances(
    tape: float, scale: float, loop: float
) -> None:
    """The ruler's two errors make a loop unsure by hypot(tape, tape) / 2: 3.5, 1.4 and 0.7 %."""
    tubes = [
        tube(5, 12.6, tape, grams=12.0 * 240 / 1e6, grams_sd=scale),
        tube(7, 14.6, tape, grams=14.0 * 240 / 1e6, grams_sd=scale),
    ]
    assert line(tubes, 240.0).loop_at(5)[0] == pytest.approx(loop, rel=1e-9)


KNITTED = st.builds(
    tube,
    st.sampled_from([4.0, 5.0, 6.0, 7.5]),
    st.floats(11, 16),
    st.floats(0.003, 0.05),
)


@settings(max_examples=60)
@given(st.lists(st.sampled_from([4.0, 5.0, 6.0, 7.5]), max_size=6), st.floats(4, 8))
def test_one_more_tube_on_the_line_never_widens_it(more: list[float], last: float) -> None:
    few = [tube(mark, 8 + mark) for mark in (5, 7, *more)]
    before, after = line(few), line([*few, tube(last, 8 + last)])
    for mark in (3.0, 5.5, 9.0):
        assert after.at(mark)[2] <= before.at(mark)[2] * (1 + 1e-9)


def test_a_tube_that_contradicts_the_line_makes_it_less_sure() -> None:
    few = [tube(5, 12.6), tube(7, 14.5), tube(6, 13.5)]
    assert line([*few, tube(6, 15.0)]).at(6)[2] > line(few).at(6)[2]


def test_their_order_does_not_matter() -> None:
    first = line(TUBES)
    for some in list(permutations(TUBES))[::17]:
        assert line(some).at(6.5) == pytest.approx(first.at(6.5), rel=1e-9)
        assert line(some).mark_for_stitches(0.3) == pytest.approx(first.mark_for_stitches(0.3))


# --- Through the door ----------------------------------------------------------------------------
def swatch(width: str, length: str, **more: Any) -> dict[str, Any]:
    return {"needles": 60, "flat_width": width, "rounds": 60, "length": length, **more}


def of(newest: dict[str, Any], *others: dict[str, Any], **more: Any) -> dict[str, Any]:
    told = {f"fabric.{name}": value for name, value in more.items()}
    return {**NO_TELLING, "fabric.swatch": newest, "fabric.swatches": list(others), **told}


def fabric(changes: dict[str, Any]) -> Fabric:
    return planning.make(asked(changes)).fabric


AT_5 = swatch("9.6 cm", "14.7 cm", mark=5)
AT_7 = swatch("11 cm", "16.8 cm", mark=7)


def test_at_one_mark_the_mean_is_by_inverse_variances() -> None:
    """By hand, as in NIST/SEMATECH e-Handbook, weighted means: of the logarithms."""
    cloth = fabric(of(swatch("10.2 cm", "15.6 cm"), swatch("9.5 cm", "15 cm")))
    across = cloth.across
    assert across
    seen = [(60 / 204, 1.5 / 102), (60 / 190, 1.5 / 95)]
    weights = [1 / (across.scatter + tape**2) for _, tape in seen]
    by_hand = sum(w * math.log(x) for w, (x, _) in zip(weights, seen, strict=True)) / sum(weights)
    assert cloth.stitches == pytest.approx(math.exp(by_hand), rel=1e-9)
    assert sum(one.share for one in cloth.seen) == pytest.approx(1)
    assert across.doubt == pytest.approx(1 / sum(weights) + 0.0125**2)


def test_the_share_of_a_swatch_and_how_far_off_it_is_by_hand() -> None:
    """Across, 1.5 / 102 and 1.5 / 95 besides a scatter of 2 % or more weigh 0.513 to 0.487, or
    nearer to alike, along both weigh alike: in the middle 0.507 and 0.493 at most. They are
    log(204 / 190) = 7.11 % apart, so the second is 3.64 % above: of hypot(1.5 / 95, 0.02) = 0.02548
    that is 1.43.
    """
    sheet = plan(of(swatch("10.2 cm", "15 cm"), swatch("9.5 cm", "15 cm")))
    first, second = sheet["fabric"]["observations"]
    assert (first["share"], second["share"]) == pytest.approx((0.505, 0.495), abs=0.003)
    assert (first["off"], second["off"]) == pytest.approx((-1.40, 1.42), abs=0.02)


@pytest.mark.parametrize(("percent", "said"), [(0, False), (6.5, False), (8.5, True)])
def test_two_swatches_further_apart_than_rulers_explain_are_told(
    percent: float, said: bool
) -> None:
    """By hand: two of error s that differ by d have a chi-square of d^2 / (2 s^2), and one degree
    of freedom. Across s = hypot(1.5 / 102, 0.02) = 0.025, along hypot(1.5 / 156, 0.02) = 0.022, so
    6.5 % come to 3.4 + 4.3 = 7.7 and 8.5 % to 5.9 + 7.3 = 13.2. The upper 1 % point of two degrees
    is 9.21 (NIST/SEMATECH e-Handbook, section 1.3.6.7.4).
    """
    smaller = 1 + percent / 100
    other = swatch(f"{10.2 / smaller:.4f} cm", f"{15.6 / smaller:.4f} cm")
    words = plan(of(swatch("10.2 cm", "15.6 cm"), other))["fabric"]["words"]
    assert ("more than errors of measuring" in words) == said


def test_on_a_line_scatter_is_told_where_there_is_some() -> None:
    words = plan(of(AT_7, AT_5))["fabric"]["words"]
    assert "more than errors of measuring" not in words
    at_6 = swatch("11.6 cm", "17.7 cm", mark=6)  # wider than the one at mark 7
    assert "more than errors of measuring" in plan(of(AT_7, AT_5, at_6))["fabric"]["words"]


def test_a_newest_without_a_mark_is_knitted_at_the_one_that_was_tried() -> None:
    bare = swatch("10.2 cm", "15.6 cm")
    assert plan(of(bare, AT_7))["fabric"]["mark"] == 7
    assert plan(of(bare, bare))["fabric"]["mark"] is None


def test_ten_swatches_alike_are_surer_but_no_surer_than_her_next_sock() -> None:
    one = swatch("10.2 cm", "15.6 cm")
    found = [fabric(of(one, *[one] * more)) for more in range(10)]
    sds = [cloth.rounds_sd for cloth in found]
    assert sds == sorted(sds, reverse=True)
    along = found[-1].along
    assert along
    assert along.scatter < 0.019**2, "they scatter less than usual"
    assert sds[-1] > math.hypot(math.sqrt(along.scatter), 0.0125), "her habit stays unknown"


def test_the_plan_is_made_at_the_newest_swatchs_mark_or_at_the_one_wanted() -> None:
    loose, firm = fabric(of(AT_7, AT_5)), fabric(of(AT_5, AT_7))
    assert (loose.mark, firm.mark) == (7, 5)
    assert loose.stitches < firm.stitches
    between = fabric(of(AT_7, AT_5, mark=6))
    assert loose.stitches < between.stitches < firm.stitches
    assert loose.at(6).stitches == pytest.approx(between.stitches)
    with pytest.raises(LookupError):
        fabric(of(AT_7)).at(6)


def test_beyond_the_marks_tried_it_is_less_sure_and_says_so() -> None:
    sheet = plan(of(AT_7, AT_5, mark=8))
    assert "beyond the marks tried" in noted(sheet)["fabric.mark"]
    sds = [fabric(of(AT_7, AT_5, mark=mark)).stitches_sd for mark in (6.0, 7.0, 8.0, 9.0)]
    assert sds == sorted(sds)
    assert "far" in refused(of(AT_7, AT_5, mark=12))["fabric.mark"]["message"]


@pytest.mark.parametrize(("mark", "beyond"), [(4.75, True), (5, False), (7, False), (7.25, True)])
def test_only_beyond_the_marks_tried_it_is_less_sure(mark: float, beyond: bool) -> None:
    assert ("fabric.mark" in noted(plan(of(AT_7, AT_5, mark=mark)))) == beyond


def test_one_mark_says_nothing_of_another() -> None:
    assert "Only mark 7" in refused(of(AT_7, mark=6))["fabric.mark"]["message"]
    assert fabric(of(AT_7, mark=7)).mark == 7


def test_a_swatch_without_its_mark_stays_out_of_the_line() -> None:
    sheet = plan(of(AT_7, AT_5, swatch("10 cm", "15 cm")))
    assert "left out" in noted(sheet)["fabric.swatches.1.mark"]


def test_the_newest_without_a_mark_is_taken_by_itself() -> None:
    cloth = fabric(of(swatch("10 cm", "15 cm"), AT_5, AT_7))
    assert cloth.stitches == pytest.approx(60 / 200)
    assert cloth.mark is None
    assert cloth.line is not None


def test_a_swatch_far_from_the_others_is_asked_about() -> None:
    one = swatch("10.2 cm", "15.6 cm")
    sheet = plan(of(one, one, swatch("13 cm", "15.6 cm")))
    assert "far from" in noted(sheet)["fabric.swatches.1.flat_width"]
    assert "differ by more" in sheet["fabric"]["words"]


def test_a_sock_counts_as_a_swatch() -> None:
    sock = swatch("10.2 cm", "23 cm", kind="sock", rounds=30)
    sheet = plan(of({}, {**sock, "rounds": 88}))
    assert sheet["fabric"]["words"].startswith("From your sock.")
    assert sheet["fabric"]["rounds"]["value"] == pytest.approx(88 / 230, abs=1e-5)
    assert "fabric.swatches.0.rounds" not in noted(sheet)  # a sock is as long as it is


def test_a_sock_in_the_list_says_what_it_says_as_sock_one() -> None:
    """Kept among the swatches, a sock moves the fabric as it did as sock one."""
    swatched = {**of(swatch("10.2 cm", "15.6 cm")), "foot.heel_girth": None}
    as_first = {"foot_rounds": 49, "length": "9 in", "flat_width": "4 in"}
    kept = {"kind": "sock", "needles": 60, "rounds": 89, "length": "9 in", "flat_width": "4 in"}
    one = fabric({**swatched, "first_sock": as_first})
    two = fabric({**swatched, "fabric.swatches": [kept]})
    assert (one.stitches, one.rounds) == pytest.approx((two.stitches, two.rounds))


def test_washing_is_carried_over_from_a_swatch_measured_before_and_after() -> None:
    both = swatch("10 cm", "15 cm", unwashed_width="10.5 cm", unwashed_length="16 cm")
    raw = {"needles": 60, "unwashed_width": "10.5 cm", "rounds": 60, "unwashed_length": "16 cm"}
    sheet = plan(of(raw, both))
    stitches = sheet["fabric"]["stitches"]["value"]
    assert 60 / 201 < stitches < 60 / 200, "drawn a little to none at all (see test_swatch)"
    assert "made it 5 % narrower and 6 % shorter" in sheet["fabric"]["observations"][1]["words"]
    assert "as this yarn did" in noted(sheet)["fabric.swatch.unwashed_width"]
    alone = fabric(of(raw))
    assert alone.stitches == pytest.approx(60 / 210)
    assert alone.stitches_sd > 0.06
    assert "Wash it" in noted(plan(of(raw)))["fabric.swatch.unwashed_width"]


def test_a_weighed_swatch_settles_the_yarn() -> None:
    """60 x 60 stitches that weigh 12 g: 3.33 mg a stitch, whatever the label says."""
    weighed = swatch("10.2 cm", "15.6 cm", grams="12 g")
    for yarn in (None, "400 m / 100 g", "420 m / 100 g"):
        cloth = fabric(of(weighed, yarn=yarn))
        assert cloth.loop * cloth.tex / 1e6 == pytest.approx(12 / 3600)
        assert cloth.weighed_sd == pytest.approx(math.hypot(1 / 12, 0.02))
    assert fabric(of(weighed)).tex_told, "a weighed stitch tells the yarn's number"
    assert fabric(of(weighed, yarn="400 m / 100 g")).loop == pytest.approx(12 / 3600 / 250 * 1e6)
    heavy = plan(of(swatch("10.2 cm", "15.6 cm", grams="30 g"), yarn="400 m / 100 g"))
    assert "Weigh it again" in noted(heavy)["fabric.swatch.grams"]
    nonsense = refused(of(swatch("10.2 cm", "15.6 cm", grams="480 g")))
    assert "weigh" in nonsense["fabric.swatch.grams"]["message"]


def test_a_weighed_swatch_settles_the_grams_of_a_pair() -> None:
    """Weighing beats the label: twice as heavy a swatch makes twice as heavy a pair."""
    pairs = [
        plan(of(swatch("10.2 cm", "15.6 cm", grams=grams)))["yarn"]["grams"]["value"]
        for grams in ("9 g", "18 g")
    ]
    assert pairs[1] == pytest.approx(2 * pairs[0], rel=1e-3)


def test_the_mark_for_a_foot_makes_the_tube_that_fits_its_ball() -> None:
    """The tube at that mark stretches by the usual 10 % (common practice, no published source)."""
    found = plan(of(AT_7, AT_5))["fabric"]["mark_for_ball"]
    assert found["low"] < found["mark"] < found["high"]
    assert "somewhere from" in found["words"]
    there = plan(of(AT_7, AT_5, mark=found["mark"]))
    ball = next(one for one in there["fit"] if one["place"] == "ball")
    assert ball["stretch"] == pytest.approx(1.10, abs=0.003)
    assert plan(of(AT_7))["fabric"]["mark_for_ball"] is None


def test_the_mark_for_a_foot_by_hand() -> None:
    """Loops sqrt(23.1 / 0.12755) = 13.457 mm at 5 and sqrt(23.1 / 0.09740) = 15.400 mm at 7.

    Stitches times loop are 4.2054 and 4.2000, weighed about alike 4.203. The ball is 228.1 mm round
    and wants 228.1 / 1.10 = 207.4 mm, so a loop of 4.203 x 207.4 / 60 = 14.525 mm: mark 5 + 1.067 /
    0.9714 = 6.10. A mark is 0.971 mm of some 14.4, which is 7 %.
    """
    changes = of(AT_7, AT_5)
    found = plan(changes)["fabric"]
    mark = found["mark_for_ball"]
    assert found["line"] == "Marks 5 to 7: each whole mark makes the stitch about 7 % larger."
    assert mark["mark"] == pytest.approx(6.10, abs=0.005)
    over = fabric(changes).line
    assert over
    exact = over.mark_for_stitches(60 * 1.10 / 228.1)
    assert exact
    assert (mark["low"], mark["high"]) == pytest.approx(exact[1:], abs=0.005)
    assert (mark["low"], mark["high"]) == pytest.approx((5.70, 6.52), abs=0.005)
    for one in plan(changes)["fabric"]["observations"]:
        assert f"Counts for {one['share'] * 100:.0f} %" in one["words"]
    assert all(round(mark[end], 2) == mark[end] for end in ("mark", "low", "high"))
    # to quarters: the mark to the nearest, its range outwards
    assert mark["use"] == "6"
    assert "set the mark to about 6: somewhere from 5½ to 6¾." in mark["words"]
    # a ball of 280 mm wants a loop of 17.83 mm, mark 9.5: more than 2 beyond 7
    far = plan({**changes, "foot.ball_girth": "280 mm"})["fabric"]["mark_for_ball"]
    assert "about 9½, is far" in far["words"]
    assert far["use"] is None


def test_the_mark_for_a_slim_foot_by_hand() -> None:
    """As above: 220 mm want 200 mm and a loop of 14.01 mm, mark 5 + 0.553 / 0.9714 = 5.57."""
    found = plan({**of(AT_7, AT_5), "foot.ball_girth": "220 mm"})["fabric"]["mark_for_ball"]
    assert found["mark"] == 5.57
    assert "set the mark to about 5½: " in found["words"]


def test_the_mark_is_set_before_the_cuff() -> None:
    steps = plan(of(AT_7, AT_5, mark=6.25))["steps"]
    at = next(n for n, one in enumerate(steps) if one["text"] == "Set the tension mark to 6¼.")
    assert steps[at]["kind"] == "do"
    assert all(one["part"] == "waste" for one in steps[:at])
    assert not any("tension mark" in one["text"] for one in plan()["steps"])


def test_sock_one_is_handed_over_as_a_row_of_the_swatches() -> None:
    sock = {"foot_rounds": 49, "length": "9 in", "flat_width": "4 in"}
    sheet = plan({**of(AT_7), "foot.heel_girth": None, "first_sock": sock})
    keep = sheet["fabric"]["keep"]
    assert int(keep.pop("whole_stitches")) > 60 * (49 + 20), "what the sole has, and more"
    assert keep == {
        "kind": "sock",
        "needles": "60",
        "rounds": "89",  # and 20 rows of one half of either customary pocket
        "mark": "7",
    }
    assert plan(of(AT_7))["fabric"]["keep"] is None


def test_where_stitches_were_told_the_width_of_sock_one_follows() -> None:
    """60 stitches at 7.5 to the inch are 8 in round, and lie 4 in wide: 10.16 cm, by hand."""
    told = {"fabric": {"stitches": "7.5 / in", "rounds": "9.5 / in"}}
    asked = {"units": "cm", "foot": {"length": "24.6 cm"}, "cylinder": {"slots": 60}, **told}
    sock = {"foot_rounds": 46, "length": "21.5 cm"}
    sheet = answer({"do": "plan", "request": {**asked, "first_sock": sock}})
    assert sheet["fabric"]["keep"]["flat_width"] == "10.16 cm"


def test_the_weight_of_a_whole_sock_is_not_that_of_its_foot() -> None:
    sock = swatch("10.2 cm", "23 cm", kind="sock", grams="35 g")
    sheet = plan(of(swatch("10.2 cm", "15.6 cm"), sock))
    assert "Fill in how many" in noted(sheet)["fabric.swatches.0.grams"]
    assert fabric(of(swatch("10.2 cm", "15.6 cm"), sock)).weighed_sd is None


def test_a_pull_alone_is_no_swatch() -> None:
    assert plan({"fabric.swatch": {"pulled_width": "18 cm"}})["fabric"]["from"] == "gauge"
    assert refused(of({"pulled_width": "18 cm"}))["fabric"]["message"]


def test_strands_and_a_yarn_run_along_add_their_tex() -> None:
    """ISO 1144: tex is a weight per length, so that of yarns side by side is their sum."""
    cloth = fabric({"fabric.yarn": "120 tex", "fabric.strands": 2, "fabric.along": "15 tex"})
    assert cloth.tex == pytest.approx(255)
    assert "missing" in refused({"fabric.along": "15 tex"})["fabric.along"]["message"]


PIECES = st.fixed_dictionaries(
    {"needles": st.just(60), "flat_width": st.integers(60, 160), "rounds": st.integers(30, 90)},
    optional={
        "length": st.integers(60, 300),
        "mark": st.sampled_from([0, 4, 5, 7, "9 1/2", "x"]),
        "grams": st.integers(1, 60),
        "unwashed_width": st.integers(60, 160),
        "unwashed_length": st.integers(60, 300),
    },
).map(lambda piece: {k: f"{v} mm" if k[-5:] in ("width", "ength") else v for k, v in piece.items()})


@settings(max_examples=150)
@given(PIECES, st.lists(PIECES, max_size=5), st.none() | st.integers(0, 12))
def test_any_pieces_make_a_plan_or_say_what_is_wrong(
    newest: dict[str, Any], others: list[dict[str, Any]], mark: int | None
) -> None:
    found = answer({"do": "plan", "request": asked(of(newest, *others, mark=mark))})
    if "errors" in found:
        assert all(problem["message"] and problem["way_out"] for problem in found["errors"])
        return
    shares = [one["share"] for one in found["fabric"]["observations"]]
    assert sum(shares) == pytest.approx(1, abs=0.005)
    assert found["range"]["foot"]["low"] <= found["counts"]["foot"]["rounds"]


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        (of(AT_5, swatch("10 cm", "15 cm", mark="loose")), "fabric.swatches.0.mark"),
        (of(AT_5, swatch("4 mm", "15 cm")), "fabric.swatches.0.flat_width"),
        (of(AT_5, {"needles": 60}), "fabric.swatches.0.flat_width"),
        (of(AT_5, *[AT_7] * 41), "fabric.swatches"),
        (of(AT_5, {**AT_7, "kind": "hat"}), "fabric.swatches.0.kind"),
        (of({**AT_5, "kind": "sock"}), "fabric.swatch.kind"),
        (of(AT_5, strands="1.5", yarn="60 tex"), "fabric.strands"),
        (of({"unwashed_width": "1 mm", "needles": 60}), "fabric.swatch.unwashed_width"),
    ],
)
def test_what_cannot_be_is_said_at_its_field(changes: dict[str, Any], field: str) -> None:
    assert field in refused(changes)


def test_a_piece_of_more_needles_than_the_cylinder_has_is_asked_about() -> None:
    """Common practice, no published source: a gauge is of the cylinder it was knitted on."""
    asked = "fabric.swatch.needles"
    piece = {"needles": 72, "flat_width": "12.2 cm", "rounds": 60, "length": "15.8 cm"}
    for slots, told in ((60, True), (72, False), (84, False)):
        sheet = plan({"foot.length": "24.6 cm", "cylinder.slots": slots, "fabric.swatch": piece})
        assert (asked in {note["field"] for note in sheet["notes"]}) is told


# --- Its parts by hand ---------------------------------------------------------------------------
def test_a_mean_of_two_by_hand() -> None:
    """10 and 12, each to a tenth: 11, and (1/11 / 0.1)^2 twice."""
    found = swatch_line.mean([(10.0, 0.1), (12.0, 0.1)])
    assert (found.value, found.sd) == pytest.approx((11, 0.1 / math.sqrt(2)))
    assert found.chi_square == pytest.approx(2 * (10 / 11) ** 2)
    assert found.tubes == 2


def test_one_tube_alone_never_scatters() -> None:
    assert not swatch_line.scattered(1e9, 0)
    assert swatch_line.scattered(1e9, 1)


def test_what_a_tube_lacks_follows_by_the_shape_and_is_less_sure() -> None:
    """5.5 / 4.2 rounds to a stitch."""
    across = Swatch("", stitches=0.3, stitches_tape=0.01)
    assert swatch_line.whole(across) == pytest.approx(
        (0.3, 0.3 * 5.5 / 4.2, 0.01, math.hypot(0.01, sources.SHAPE_SD))
    )
    along = Swatch("", rounds=0.4, rounds_tape=0.01)
    assert swatch_line.whole(along) == pytest.approx(
        (0.4 * 4.2 / 5.5, 0.4, math.hypot(0.01, sources.SHAPE_SD), 0.01)
    )
    with pytest.raises(ValueError, match="stitches or rounds"):
        swatch_line.whole(Swatch(""))


def plain(slope: float, slope_sd: float = 0.01) -> swatch_line.Line:
    """A line through 15 mm halfway between the marks 1 and 2."""
    points = (
        swatch_line.Point(1.0, 15 - slope / 2, 0.1),
        swatch_line.Point(2.0, 15 + slope / 2, 0.1),
    )
    return swatch_line.Line(points, 1.5, 15.0, slope, 0.3, slope_sd, 4.2, 5.5, 0.01)


@pytest.mark.parametrize(
    ("off", "told"), [((2.4, 0, 0), False), ((2.8, 0, 0), True), ((2, -2, 0), True)]
)
def test_scatter_has_two_degrees_of_freedom_less_than_tubes(
    off: tuple[float, ...], told: bool
) -> None:
    """2.4^2 = 5.8, 2.8^2 = 7.8, 2^2 + 2^2 = 8; the upper 1 % point of chi-square is 6.635 with one
    degree, 9.210 with two (NIST/SEMATECH e-Handbook, section 1.3.6.7.4).
    """
    flat = plain(0.0)
    points = tuple(swatch_line.Point(n, 15.0 + 0.1 * by, 0.1) for n, by in enumerate(off))
    assert replace(flat, points=points).scattered == told


def test_near_is_no_further_out_than_the_marks_lie_apart() -> None:
    found = plain(1.0)
    assert (found.low, found.high) == (1, 2)
    assert [found.near(mark) for mark in (-0.01, 0.0, 1.5, 3.0, 3.01)] == [
        *(False, True, True, True, False),
    ]


@pytest.mark.parametrize(
    ("slope", "sure"), [(0.0233, True), (0.0232, False), (-0.0233, True), (-0.0232, False)]
)
def test_sure_is_beyond_one_in_a_hundred(slope: float, sure: bool) -> None:
    """2.3263 standard deviations of 0.01, on either side."""
    assert plain(slope).sure == sure
    assert (plain(slope).mark_for_stitches(0.3) is None) == (not sure)


def test_a_point_on_a_line_by_hand() -> None:
    """At 3.5 the loop is 17 mm, known to hypot(0.3, 0.01 x 2) of it; besides, the habit that two
    swatches share, and the next tube's 1.9 %.
    """
    found = plain(1.0)
    stitches, rounds, sd = found.at(3.5)
    assert (stitches, rounds) == pytest.approx((4.2 / 17, 5.5 / 17))
    doubt = math.hypot(math.hypot(0.3, 0.02) / 17, 0.01, 0.0125)
    assert math.sqrt(found.foretold(3.5).doubt) == pytest.approx(doubt)
    t = stats.t.ppf(0.9, 3 * (1 + doubt**2 / 0.019**2) ** 2)
    assert sd == pytest.approx(math.hypot(doubt, 0.019) * t / 1.2816, rel=1e-3)
    assert found.off(swatch_line.Point(1.5, 15.3, 0.1)) == pytest.approx(3)
    assert found.off(swatch_line.Point(1.5, 14.8, 0.1)) == pytest.approx(-2)
    assert plain(10.0).at(0.05)[0] == pytest.approx(8.4)  # 14.5 mm less, so there is 0.5 left
    with pytest.raises(ValueError, match="ends before"):
        plain(10.0).at(0.0)
