"""Whole pairs as the counter keeps them, every tap of both socks; invented, from the real steps."""

import copy
import functools
import random
from typing import Any

from tests import asking as api

Json = dict[str, Any]
# As full as a careful knitter fills it in.
REQUEST: Json = {
    "units": "cm",
    "foot": {"length": "24,6", "ball_girth": "23,1", "heel_girth": "32", "ankle_girth": "22,4"},
    "other_foot": {"length": "24,4"},
    "person": {
        "sex": "woman", "age": "41", "height": "168", "shoe_size": {"system": "EU", "size": "39"},
    },
    "cylinder": {"slots": "60"},
    "fabric": {
        "yarn": "420 m / 100 g",
        "mark": "6",
        "swatch": {
            "needles": "60", "flat_width": "10,2", "rounds": "60", "length": "15,9", "mark": "6",
        },
        "swatches": [
            {"kind": "sock", "needles": "60", "rounds": "86", "length": "22,8", "flat_width": "10",
             "mark": "6"},
        ],
    },
    "sock": {
        "cuff": {"kind": "hem", "rounds": "20"},
        "heel": {"needles": "30", "left": "10"},
        "toe": {"needles": "30", "left": "10"},
        "leg": {"rounds": "50"},
    },
    "stock": {"ball": "100 g", "left": "62 g"},
}  # fmt: skip
MEASURED = {"foot_rounds": "48", "length": "22,2", "flat_width": "10,1"}
NOTES = ("dropped stitch, hung again", "carrier stiff here: oiled", "second cone from here")
BEGAN = 1_700_000_000_000  # ms


@functools.cache
def _knits() -> tuple[Json, Json]:
    one = api.answer({"do": "knit", "request": REQUEST})
    two = api.answer({"do": "knit", "request": {**REQUEST, "first_sock": MEASURED}})
    assert "errors" not in one, one
    assert "errors" not in two, two
    return one, two


def places(knit: Json) -> list[Json]:
    """Every place of a sock after its start, tap by tap."""
    found = []
    for at, step in enumerate(knit["steps"]):
        found += [{"step": at, "done": done} for done in range(1, step.get("rounds", 1))]
        found.append({"step": at + 1, "done": 0})
    return found


def pair(name: str, seed: int = 0, **more: Any) -> Json:
    """A pair knitted to its end: `session` and `happenings`; `more` joins the session."""
    one, two = copy.deepcopy(_knits())
    chance = random.Random(seed)
    session = {"id": name, "began": BEGAN + seed, "label": one["words"], "request": REQUEST}
    session |= {"socks": [one, copy.deepcopy(one)], "earlier": {"foot round": 3.1}, **more}
    happenings: list[Json] = []

    def happen(sock: int, kind: str, **facts: Any) -> None:
        number = len(happenings) + 1
        took = None if number == 1 else chance.randint(2000, 6000)
        at = BEGAN + seed + 5000 * number
        happened = {"session": name, "number": number, "sock": sock, "kind": kind, **facts}
        happenings.append({**happened, "took": took, "at": at, "tab": "k3j2h1g"})

    for sock, knit in enumerate((one, two)):
        if sock:
            happen(1, "plan", knit=two, measured=MEASURED, place={"step": 0, "done": 0})
            happen(1, "turn")
        all_of_it = places(knit)
        noted = chance.sample(range(len(all_of_it)), 1 + sock)
        for at, place in enumerate(all_of_it):
            happen(sock, "done", place=place)
            if at in noted:
                happen(sock, "note", text=chance.choice(NOTES))
    return {"session": session, "happenings": happenings}
