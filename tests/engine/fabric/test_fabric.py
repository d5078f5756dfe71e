"""The fabric: which way of knowing it wins, how sure each is, and what is asked about it."""

from __future__ import annotations

from typing import Any

import pytest

from engine.answers import fabric_sheet
from engine.fabric import swatch_line
from engine.say.aloud import text
from engine.sock import plan as planning
from tests.asking import asked, noted, plan, refused

UNTOLD: dict[str, Any] = {"fabric.stitches": None, "fabric.rounds": None}
SWATCH = {"needles": 60, "flat_width": "10.2 cm", "rounds": 60, "length": "15.6 cm"}


def swatch(**changes: Any) -> dict[str, Any]:
    """A request by swatch; None leaves a field of it out."""
    fields = {**SWATCH, **changes}
    return {**UNTOLD, "fabric.swatch": {k: v for k, v in fields.items() if v is not None}}


def per_mm(changes: dict[str, Any]) -> tuple[float, float]:
    fabric = plan(changes)["fabric"]
    return fabric["stitches"]["value"], fabric["rounds"]["value"]


def spread(changes: dict[str, Any]) -> int:
    found = plan(changes)["range"]["foot"]
    return int(found["high"] - found["low"])


def test_a_swatch_is_needles_over_twice_its_flat_width_and_rounds_over_its_length() -> None:
    assert per_mm(swatch()) == pytest.approx((60 / 204, 60 / 156), abs=1e-5)


def test_a_swatch_need_not_be_as_wide_as_the_cylinder() -> None:
    assert per_mm({**swatch(needles=54), "cylinder.slots": 72})[0] == pytest.approx(
        54 / 204, abs=1e-5
    )


def test_told_in_either_system_it_is_the_same_fabric() -> None:
    metric = {"fabric.stitches": "30 / 10 cm", "fabric.rounds": "38 / 10 cm"}
    imperial = {"fabric.stitches": "7.62 / in", "fabric.rounds": "9.652 / in"}
    assert per_mm(metric) == per_mm(imperial) == (0.3, 0.38)


@pytest.mark.parametrize(
    ("changes", "way"),
    [
        (swatch(), "swatch"),
        ({**swatch(), "fabric.stitches": "8 / in", "fabric.yarn": "400 m / 100 g"}, "swatch"),
        ({}, "gauge"),
        ({"fabric.yarn": "400 m / 100 g"}, "gauge"),
        ({**UNTOLD, "fabric.yarn": "400 m / 100 g"}, "yarn"),
    ],
)
def test_the_best_known_way_wins(changes: dict[str, Any], way: str) -> None:
    """Measured before told, told before guessed; only the guess asks for a swatch."""
    fabric = plan(changes)["fabric"]
    assert fabric["from"] == way
    assert fabric["swatch_first"] is (way == "yarn")


def test_a_swatch_wins_over_other_figures_told_beside_it() -> None:
    beside = {**swatch(), "fabric.stitches": "8 / in", "fabric.rounds": "12 / in"}
    assert per_mm(beside) == per_mm(swatch())


def test_the_surer_way_leaves_fewer_rounds_in_doubt() -> None:
    long_swatch = swatch(rounds=180, length="46.8 cm")
    guessed = {**UNTOLD, "fabric.yarn": "400 m / 100 g"}
    sds = [planning.make(asked(one)).rounds_sd for one in (long_swatch, swatch(), {}, guessed)]
    assert sds == sorted(sds)
    assert spread({}) < spread(guessed)
    assert spread(swatch(rounds=12, length="3.1 cm")) > spread(long_swatch)


@pytest.mark.parametrize("left_out", ["flat_width", "rounds", "length"])
def test_half_a_swatch_is_asked_for_the_other_half(left_out: str) -> None:
    problem = refused(swatch(**{left_out: None}))[f"fabric.swatch.{left_out}"]
    assert "both" in problem["way_out"]


def test_a_swatch_may_know_only_stitches() -> None:
    """Then the rounds are guessed, and the words say so."""
    fabric = plan(swatch(rounds=None, length=None))["fabric"]
    assert fabric["from"] == "swatch"
    assert "guessed" in fabric["words"]


@pytest.mark.parametrize(
    ("known", "field"),
    [
        ({"needles": 60, "flat_width": "10.2 cm"}, "fabric.swatch.rounds"),
        ({"rounds": 60, "length": "15.6 cm"}, "fabric.swatch.flat_width"),
    ],
)
def test_what_swatches_lack_is_asked_for_at_the_newest(known: dict[str, Any], field: str) -> None:
    """Rounds are asked for at the rounds, stitches at the width that they follow from."""
    asked = noted(plan({**UNTOLD, "fabric.swatch": known, "fabric.swatches": [known, known]}))
    assert [at for at, text in asked.items() if text.startswith("Left empty")] == [field]


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        (swatch(flat_width="4.0 mm"), "fabric.swatch.flat_width"),
        (swatch(flat_width="39 cm"), "fabric.swatch.flat_width"),
        (swatch(length="1.2 cm"), "fabric.swatch.length"),
        (swatch(length="190 cm"), "fabric.swatch.length"),
        (swatch(pulled_width="9 cm"), "fabric.swatch.pulled_width"),
        (swatch(pulled_width="38 cm"), "fabric.swatch.pulled_width"),
        (swatch(needles="sixty"), "fabric.swatch.needles"),
        ({"fabric.stitches": "75 / in"}, "fabric.stitches"),
        ({"fabric.rounds": "0.9 / in"}, "fabric.rounds"),
        (UNTOLD, "fabric"),
    ],
)
def test_what_no_sock_fabric_can_be_is_refused_at_its_field(
    changes: dict[str, Any], field: str
) -> None:
    problem = refused(changes)[field]
    assert problem["message"].endswith(".")
    assert problem["way_out"].endswith((".", "?"))


@pytest.mark.parametrize(
    ("changes", "field", "size"),
    [
        ({"flat_width": "3 cm"}, "flat_width", "small for so many needles"),
        ({"flat_width": "39 cm"}, "flat_width", "large for so many needles"),
        ({"length": "3 cm"}, "length", "small for so many rounds"),
        ({"length": "150 cm"}, "length", "large for so many rounds"),
    ],
)
def test_a_tube_that_no_sock_can_be_is_told_on_which_side(
    changes: dict[str, Any], field: str, size: str
) -> None:
    """60 needles are 75 to 667 mm round, 60 rounds 55 to 600 mm long."""
    problem = refused(swatch(**changes))[f"fabric.swatch.{field}"]
    assert problem["message"] == f"Too {size}."


def test_an_error_is_told_as_the_reach_of_four_times_in_five() -> None:
    """1.2816 standard deviations."""
    found = [fabric_sheet._percent(sd) for sd in (0.02, 0.09, 0.1, 0.3)]
    assert found == ["2.6 %", "11.5 %", "12.8 %", "38.4 %"]  # 2.56, 11.53, 12.82 and 38.448


@pytest.mark.parametrize(
    ("slope", "words"),
    [
        (1.245, "each whole mark makes the stitch about 12 % larger."),
        (1.255, "each whole mark makes the stitch about 13 % larger."),
        (-0.245, "each whole mark makes the stitch about 2 % smaller."),
        (-1.245, "each whole mark makes the stitch about 12 % smaller."),
    ],
)
def test_a_mark_is_told_by_what_it_does_to_the_stitch(slope: float, words: str) -> None:
    """1.245 mm of a loop of 10 mm are 12.45 %; a line may go down as well as up."""
    points = (swatch_line.Point(5.0, 10 - slope, 0.1), swatch_line.Point(7.0, 10 + slope, 0.1))
    line = swatch_line.Line(points, 6.0, 10.0, slope, 0.01, 0.01, 4.2, 5.5, 0.01)
    assert text(fabric_sheet._line(line)) == f"Marks 5 to 7: {words}"


def test_swapped_stitches_and_rounds_are_asked_about() -> None:
    swapped = {"fabric.stitches": "9.6 / in", "fabric.rounds": "7.5 / in"}
    assert "swapped" in noted(plan(swapped))["fabric.rounds"]
    assert noted(plan()) == {}


def test_swapped_swatches_are_asked_about_at_the_newest() -> None:
    """60 needles over 15.6 cm of girth and 60 rounds over 20.4 cm."""
    swapped = {**SWATCH, "flat_width": "7.8 cm", "length": "20.4 cm"}
    told = noted(plan({**UNTOLD, "fabric.swatch": swapped, "fabric.swatches": [swapped]}))
    assert [at for at, text in told.items() if "swapped" in text] == ["fabric.swatch.rounds"]


@pytest.mark.parametrize(
    ("left_out", "taken"), [("rounds", "9.82 / in"), ("stitches", "7.33 / in")]
)
def test_what_was_left_out_is_told_as_it_is_taken(left_out: str, taken: str) -> None:
    """By Munden's 5.5 and 4.2: 7.5 x 5.5 / 4.2 rounds, or 9.6 x 4.2 / 5.5 stitches."""
    note = noted(plan({f"fabric.{left_out}": None}))[f"fabric.{left_out}"]
    assert f"we take about {taken}." in note


@pytest.mark.parametrize(
    ("yarn", "word"),
    [("700 m / 100 g", "loose"), ("412 m / 100 g", None), ("180 m / 100 g", "firm")],
)
def test_fabric_too_loose_or_too_firm_for_its_yarn_is_asked_about(
    yarn: str, word: str | None
) -> None:
    """At 30 stitches and 38 rounds per 10 cm l is 14.2 mm: sqrt(tex)/l is 0.84, 1.10 and 1.66."""
    rates = {"fabric.stitches": "30 / 10 cm", "fabric.rounds": "38 / 10 cm"}
    note = noted(plan({**rates, "fabric.yarn": yarn})).get("fabric.yarn", "")
    assert (word in note) if word else (note == "")


@pytest.mark.parametrize(("metres", "said"), [(400, False), (200, True)])
def test_a_weighed_swatch_is_asked_about_where_it_does_not_fit_the_yarn(
    metres: int, said: bool
) -> None:
    """60 x 60 stitches with l = sqrt(23.1 / (0.2941 x 0.3846)) = 14.29 mm are 51.4 m: 12.9 g of
    250 tex, half of what they would be of 500 tex.
    """
    sheet = plan({**swatch(grams="12.9 g"), "fabric.yarn": f"{metres} m / 100 g"})
    assert ("Weigh it again" in noted(sheet).get("fabric.swatch.grams", "")) is said


def test_a_yarn_that_was_not_told_is_not_held_against_the_fabric() -> None:
    """At 20 stitches and 26 rounds per 10 cm usual sock yarn would be loose, this may not be."""
    rates = {"fabric.stitches": "20 / 10 cm", "fabric.rounds": "26 / 10 cm"}
    long = {**rates, "foot.length": "300 mm"}
    assert "loose" in noted(plan({**long, "fabric.yarn": "412 m / 100 g"}))["fabric.yarn"]
    assert "fabric.yarn" not in noted(plan(long))


def test_of_several_pulled_swatches_the_newest_tells_how_far_it_goes() -> None:
    """102 mm pulled to 204 are 2, less 8 % that a hung hem takes: 1.84. The older gave 1.5."""
    newest, older = ({**SWATCH, "pulled_width": mm} for mm in ("20.4 cm", "15.3 cm"))
    sheet = plan({**UNTOLD, "fabric.swatch": newest, "fabric.swatches": [older]})
    words = next(one["words"] for one in sheet["fit"] if one["place"] == "over_heel")
    assert "can reach about 1.84." in words


def test_a_pulled_swatch_replaces_the_usual_stretch() -> None:
    """A tube of 102 mm pulled to 153 gives 1.5; a hung hem gives less than that."""
    pulled = plan(swatch(pulled_width="15.3 cm"))
    words = next(one["words"] for one in pulled["fit"] if one["place"] == "over_heel")
    assert "You measured that on your swatch, less what a hung hem takes from it." in words
    assert "That is guessed: pull a swatch to know." in str(plan(swatch())["fit"])


def test_a_finer_swatch_never_makes_fewer_foot_rounds() -> None:
    rounds = [
        plan(swatch(length=f"{length} mm"))["counts"]["foot"]["rounds"]
        for length in range(190, 120, -5)
    ]
    assert rounds == sorted(rounds)
    assert rounds[-1] > rounds[0]
