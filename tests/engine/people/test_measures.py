"""The table of measures: each entry is read, passed on, estimated or not, judged and asked for."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from engine.answers import link
from engine.judge import fit
from engine.people import population
from engine.people.measures import ESTIMATED, MEASURES, BodyMeasure
from engine.say.aloud import text
from tests.asking import answer, asked, noted, plan, refused
from tests.asking import fit as at

WEBAPP = Path(__file__).resolve().parents[3] / "webapp"
NOT_ESTIMATED = sorted(set(MEASURES) - set(ESTIMATED))


def usual(kind: BodyMeasure) -> str:
    return f"{(kind.span.low + kind.span.high) / 2:.0f} mm"


@pytest.mark.parametrize("name", MEASURES)
def test_a_plan_does_without_any_measure_but_a_length(name: str) -> None:
    """Left out it is estimated, or it is not there; a plan it has either way."""
    left_out: dict[str, Any] = {f"foot.{name}": None}
    if name == "length":
        assert refused({**left_out, "foot": None}).keys() == {"foot.length"}
    found = plan(left_out)["measures"]
    assert (name in found) == (name in ESTIMATED)
    if name in ESTIMATED:
        assert found[name]["from"] == "estimated"


@pytest.mark.parametrize("name", MEASURES)
def test_a_measure_is_read_passed_on_and_judged(name: str) -> None:
    kind = MEASURES[name]
    told = {f"foot.{name}": usual(kind), "sock.leg.rounds": 150}
    found = plan(told)
    assert found["measures"][name]["from"] == "measured"
    places = {place["place"] for place in found["fit"] if place["from"] == "measured"}
    assert set(kind.judged) <= places
    assert set(kind.judged) <= set(fit.TITLES)
    assert link.read(link.write(asked(told)))["request"]["foot"][name] == usual(kind)
    for group in ("foot", "foot.again", "other_foot", "other_foot.again"):
        typed = answer({"do": "read", "fields": {f"{group}.{name}": usual(kind)}, "units": "cm"})
        assert list(typed["readings"]) == [f"{group}.{name}"]
    low = refused({f"foot.{name}": f"{kind.span.low - 1:.0f} mm"})[f"foot.{name}"]
    assert text(kind.span.name) in low["message"]


@pytest.mark.parametrize("name", MEASURES)
def test_a_measure_has_its_field(name: str) -> None:
    form = (WEBAPP / "templates" / "measure.html").read_text(encoding="utf-8")
    assert f'field("foot.{name}"' in form
    assert f'("{name}", ' in form, "a second reading, and the other foot"


def test_what_is_estimated_is_what_the_surveys_took() -> None:
    for group in population._GROUPS.values():
        assert set(ESTIMATED) <= set(group.names)
        assert not set(NOT_ESTIMATED) & set(group.names)


@pytest.mark.parametrize("name", NOT_ESTIMATED)
def test_what_is_not_estimated_says_nothing_of_the_rest(name: str) -> None:
    """With it, without it: the other measures, the questions and the counts stay.

    A high instep is only told which heel has room for it.
    """
    bare: dict[str, Any] = {f"foot.{one}": None for one in MEASURES if one != "length"}
    without, with_it = plan(bare), plan({**bare, f"foot.{name}": usual(MEASURES[name])})
    assert with_it["counts"] == without["counts"]
    told = {"sock.heel.kind"} if name == "instep_girth" else set[str]()
    assert noted(with_it).keys() - noted(without).keys() == told
    assert {**noted(with_it), **noted(without)} == noted(with_it)
    others = {one: told for one, told in with_it["measures"].items() if one != name}
    assert others == without["measures"]


@pytest.mark.parametrize(
    ("mm", "level", "words"),
    [
        (190, "good", "Goes on easily: it passes the instep without stretch."),
        (245, "good", "Goes on easily: it must stretch to 1.21 times its girth"),
        (345, "tight", "Goes on with a pull: it must stretch to 1.70 times"),
        (390, "bad", "May not go on: it must stretch to 1.92 times"),
    ],
)
def test_a_measured_instep_is_a_question_of_getting_on(mm: int, level: str, words: str) -> None:
    """Held against the plain tube of 8 in, which gives 1.8 times: common practice, no source."""
    found = at(plan({"foot.instep_girth": f"{mm} mm"}), "instep")
    assert (found["level"], found["words"].startswith(words)) == (level, True)
    assert found["from"] == "measured"
    assert "instep" not in [place["place"] for place in plan()["fit"]]


def test_the_larger_instep_of_two_feet_counts() -> None:
    told = {"foot.instep_girth": "245 mm", "other_foot.instep_girth": "252 mm"}
    found = plan({**told, "foot.again": {"instep_girth": "247 mm"}})
    assert found["measures"]["instep_girth"]["value"] == 252
    assert "other_foot.instep_girth" in noted(found)
