"""The weight hung on a tube: kept with it, and told where the sock gets another.

That it changes both gauges is common practice, no published source; two weights within a tenth
count as one (our choice).
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.asking import answer, asked, noted, plan, refused

TUBE = {"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}


def of(newest: str | None, other: str | None, sock: str | None) -> dict[str, Any]:
    """A fabric of two tubes and a sock with these weights hung."""
    weights = {"hung": newest}, {"hung": other}
    one, two = ({**TUBE, **{k: v for k, v in each.items() if v}} for each in weights)
    fabric = {"swatch": one, "swatches": [two], **({"hung": sock} if sock else {})}
    return {"units": "cm", "foot.heel_girth": None, "fabric": fabric}


@pytest.mark.parametrize(
    ("weights", "told"),
    [
        ((None, None, None), []),
        (("500 g", "500 g", None), []),
        (("500 g", "460 g", None), []),
        (("500 g", "300 g", None), ["fabric.swatches.0.hung"]),
        (("500 g", "300 g", "300 g"), ["fabric.swatch.hung"]),
        (("500 g", "500", "1 kg"), ["fabric.swatch.hung", "fabric.swatches.0.hung"]),
        ((None, None, "1 kg"), []),
        ((None, "500 g", None), []),
    ],
)
def test_where_the_sock_gets_another_weight_it_is_told(
    weights: tuple[str | None, str | None, str | None], told: list[str]
) -> None:
    notes = noted(plan(of(*weights)))
    assert [field for field in notes if field and field.endswith("hung")] == told
    assert all("both" not in notes[field] and "hung" in notes[field] for field in told)


def test_no_count_moves_by_it() -> None:
    assert plan(of("500 g", "300 g", "1 kg"))["counts"] == plan(of(None, None, None))["counts"]


def test_too_much_is_refused_and_a_link_keeps_it() -> None:
    assert "fabric.hung" in refused(of(None, None, "20 kg"))
    assert "fabric.swatch.hung" in refused(of("20 kg", None, None))
    request = {**asked(of("500", "300", "400")), "units": "in"}
    link = answer({"do": "page", "request": request})["link"]
    again = answer({"do": "open", "link": link})["request"]["fabric"]
    assert (again["swatch"]["hung"], again["hung"]) == ("500 g", "400")
