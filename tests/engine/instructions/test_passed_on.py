"""A set's link: short, nobody's, and the same counts on another phone."""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked

SET: dict[str, Any] = {
    "by": "EU",
    "sizes": "36, 38, 40, 42, 44, 46",
    "details": {"title": "Invented plain socks", "maker": "Invented Ada", "version": "2"},
}
RARE = "".join(chr(0x4E00 + 7 * at) for at in range(200))  # deflate finds nothing to shorten
LONG = {"notes": "Invented. " * 300, "licence": RARE, "errata": RARE[::-1]}


def written(request: Any, wanted: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = answer({"do": "set", "request": request, "set": wanted})
    return found


@pytest.mark.parametrize("more", [{}, LONG])
def test_a_link_of_at_most_400_bytes_opens_the_same_counts(more: dict[str, str]) -> None:
    wanted = {**SET, "details": {**SET["details"], **more}}
    here = written(asked(), wanted)
    assert len(here["link"].encode()) <= 400
    there = answer({"do": "open", "link": f"#{here['link']}"})
    assert not {"foot", "person", "knitter", "other_foot"} & set(there["request"])
    assert there["set"]["details"] == SET["details"]
    again = written(there["request"], there["set"])
    assert [one["counts"] for one in again["sizes"]] == [one["counts"] for one in here["sizes"]]
    assert again["link"] == here["link"]


SOCKS: dict[str, Any] = {
    "stripes": {"colors": {"cuff": "B", "leg": "2 A, 1 B, 3 C", "heel": "C", "foot": "3 A, B"}},
    "a rib that changes": {
        "cuff": {
            "kind": "set-up rib",
            "rounds": 128,
            "every": 2,
            "change_after": 53,
            "change_every": 4,
        },
        "end": {"rounds": 4},
    },
    "a leg in bands": {
        "leg": {
            "bands": [
                {"rounds": 20 + at, "stitches": f"{26 + at / 3:.6f} / 10 cm"} for at in range(6)
            ]
        }
    },
    "flap, gathered": {"heel": {"kind": "flap", "flap": 20}, "toe": {"kind": "gathered"}},
}


@pytest.mark.parametrize("kind", SOCKS)
def test_twelve_sizes_of_any_sock_are_in_400_bytes(kind: str) -> None:
    sizes = ", ".join(map(str, range(35, 47)))
    here = written(asked({"sock": SOCKS[kind]}), {**SET, "sizes": sizes})
    assert len(here["link"].encode()) <= 400
    there = answer({"do": "open", "link": here["link"]})
    assert there["set"]["details"] == SET["details"], "whose it is stays in it"
    again = written(there["request"], there["set"])
    assert [one["counts"] for one in again["sizes"]] == [one["counts"] for one in here["sizes"]]


def test_one_that_cannot_be_short_is_none() -> None:
    details = {"title": RARE, "maker": RARE[::-1]}
    assert written(asked(), {**SET, "details": details})["link"] is None


def test_a_reader_adopts_from_the_link_alone() -> None:
    there = answer({"do": "open", "link": written(asked(), SET)["link"]})
    call = {"do": "adopt", "request": there["request"], "set": there["set"]}
    plan = answer({**call, "reader": {"size": "40"}})
    assert plan["request"]["origin"] == {
        "title": "Invented plain socks",
        "maker": "Invented Ada",
        "version": "2",
    }
    (size,) = [one for one in written(asked(), SET)["sizes"] if one["label"] == "40"]
    counts = answer({"do": "plan", "request": plan["request"]})["counts"]
    foot = next(one for one in size["counts"] if one["part"] == "foot")
    assert str(counts["foot"]["rounds"]) == foot["figure"]
