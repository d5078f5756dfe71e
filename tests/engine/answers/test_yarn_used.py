"""What a sock takes off the shelf: what the plan says or the scale, and never below none."""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked, plan

NUMBER = "400 m / 100 g"


def used(yarns: Any, changes: dict[str, Any] | None = None) -> dict[str, Any]:
    request = asked({"fabric.yarn": NUMBER, **(changes or {})})
    return answer({"do": "used", "request": request, "shelf": {"yarns": yarns}})


def test_half_of_what_the_plan_says_the_pair_takes() -> None:
    """To the 0.01 g that is kept of either."""
    pair = plan({"fabric.yarn": NUMBER})["yarn"]["grams"]["value"]
    found = used([{"name": "oat", "colour": "grey", "yarn": "400m/100 g", "left": "4 oz"}])
    assert found["takes"]["value"] == pytest.approx(pair / 2, abs=0.01)
    [one] = found["yarns"]
    assert (one["row"], one["name"], one["likely"]) == (0, "oat, grey", True)
    after = 4 * 28.349523125 - pair / 2  # g in the avoirdupois ounce of 1959
    assert one["after"] == f"{after:.0f} g"


def test_what_stays_can_be_written_in_its_place() -> None:
    metric = {"units": "cm", "fabric.stitches": "30 / 10 cm", "fabric.rounds": "39 / 10 cm"}
    left, socks = "100 g", 0
    while left != "0 g":
        [one] = used([{"left": left}], metric)["yarns"]
        left, socks = one["after"], socks + 1
    assert socks == 4  # of about 31 g, the last of them not whole
    [one] = used([{"left": left}], metric)["yarns"]
    assert one["after"] == "0 g"


def test_a_weighed_sock_counts_as_it_weighs() -> None:
    found = used([], {"stock.sock_one": "44 g"})
    assert found["takes"]["value"] == 44


def test_only_the_main_yarn_is_taken() -> None:
    whole = used([])["takes"]["value"]
    apart = {"stock.apart": "heel and toe"}
    main = plan({"fabric.yarn": NUMBER, **apart})["yarn"]["colors"][0]["grams"]["value"] / 2
    assert used([], apart)["takes"]["value"] == pytest.approx(main, abs=0.01)
    assert main < 0.85 * whole


def test_only_yarns_whose_weight_is_told() -> None:
    yarns = [{"name": "a"}, {"name": "b", "left": "50 g", "yarn": "300 m / 100 g"}, {}]
    assert [(one["row"], one["likely"]) for one in used(yarns)["yarns"]] == [(1, False)]


@pytest.mark.parametrize("left", ["much", "-3 g", "99999 g"])
def test_a_weight_that_cannot_be_is_told_beside_its_field(left: str) -> None:
    [error] = used([{"left": left}])["errors"]
    assert error["field"] == "shelf.yarns.0.left"


def test_a_shelf_that_is_none_is_refused() -> None:
    [error] = used(7)["errors"]
    assert error["field"] == "shelf.yarns"
