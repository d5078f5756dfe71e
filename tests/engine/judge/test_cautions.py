"""Cautions: the same for every plan; that of a tight leg is said with its counts."""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import fit, plan

SUBJECTS = {  # what customary care warns of, and a word that it cannot be said without
    "needles": "needle",
    "hair": "hair",
    "sleeves": "sleeve",
    "children": "children",
    "falling weights": "weight",
    "swollen legs": "swollen",
    "diabetes": "diabetes",
    "circulation": "circulation",
    "numb feet": "numb",
    "a clinician": "clinician",
    "compression": "compression",
    "the first wash": "wash",
    "wool": "wool",
    "elastic": "elastic",
}
TIGHT = {"foot.ankle_girth": "300 mm", "foot.calf_girth": "450 mm"}
REQUESTS: list[dict[str, Any]] = [
    {},
    {"units": "cm"},
    TIGHT,
    {"cylinder.slots": 72, "sock.cuff.kind": "rib"},
    {"foot": {"length": "180 mm"}, "person": {"age": 7}},
]


@pytest.mark.parametrize("changes", REQUESTS, ids=str)
@pytest.mark.parametrize("subject", SUBJECTS)
def test_every_plan_warns_of_it(subject: str, changes: dict[str, Any]) -> None:
    assert SUBJECTS[subject] in " ".join(plan(changes)["cautions"]).casefold()


@pytest.mark.parametrize("changes", REQUESTS, ids=str)
def test_they_are_whole_sentences_and_said_once(changes: dict[str, Any]) -> None:
    cautions = plan(changes)["cautions"]
    assert len(cautions) == len(set(cautions))
    for caution in cautions:
        assert caution[0].isupper()
        assert caution.endswith(".")


def told(sheet: dict[str, Any]) -> list[str]:
    """What is said of no field."""
    return [note["text"] for note in sheet["notes"] if note["field"] is None]


def test_a_tight_leg_is_warned_of_with_its_plan() -> None:
    easy, tight = plan(), plan(TIGHT)
    assert fit(tight, "ankle")["verdict"] == "tight"
    (more,) = set(told(tight)) - set(told(easy))
    assert "the leg is tight" in more
    assert told(tight)[0] == more
    assert tight["cautions"] == easy["cautions"]


def test_a_sock_that_may_not_go_on_is_warned_of() -> None:
    """The cuff that must pass the heel is the band on the leg."""
    tight = plan({"foot.heel_girth": "400 mm", "cylinder.slots": 54})
    assert fit(tight, "over_heel")["level"] == "bad"
    assert "the leg is tight" in told(tight)[0]


def test_a_loose_sock_or_a_tight_ball_is_no_tight_leg() -> None:
    for girth in ("190 mm", "270 mm"):
        sheet = plan({"foot.ball_girth": girth})
        assert fit(sheet, "ball")["level"] == "bad"
        assert not [one for one in told(sheet) if "tight" in one]
