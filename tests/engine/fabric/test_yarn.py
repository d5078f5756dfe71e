"""Yarn numbers that are left half unsaid or out of reach, and how sure enough is written."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.answers import yarn_sheet
from engine.fabric import yarn
from engine.read.errors import Unreadable
from engine.say.aloud import text as spoken


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("50 g = 210 m", 50 / 210 * 1000),
        ("210 m / 50 g", 50 / 210 * 1000),
        ("420 m / 100 g", 100 / 420 * 1000),
        ("4 m / g", 250.0),  # where no number stands it is one
        ("Nm 15/3", 200.0),
        ("Nm 3/15", 200.0),
        ("Nm 15", 1000 / 15),
        ("tex 60/4", 240.0),
    ],
)
def test_numbers_by_hand(text: str, tex: float) -> None:
    assert yarn.read(text).tex == pytest.approx(tex)


@pytest.mark.parametrize(
    ("text", "words"),
    [("1 tex", "yarn-too-fine"), ("9000 tex", "yarn-too-thick")],
)
def test_out_of_reach_on_either_side(text: str, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        yarn.read(text)


@pytest.mark.parametrize("text", ["0 tex", "0 m / 100 g", "Nm 0", "400 m / 0 g"])
def test_none_of_it_is_no_yarn(text: str) -> None:
    with pytest.raises(Unreadable, match="yarn-number-zero"):
        yarn.read(text)


@pytest.mark.parametrize(
    ("likely", "text"),
    [
        (0.9951, "more than 99 %"),
        (0.9949, "99 %"),
        (0.504, "50 %"),
        (0.0051, "1 %"),
        (0.0049, "less than 1 %"),
    ],
)
def test_a_likelihood_is_never_written_as_none_or_all(likely: float, text: str) -> None:
    assert spoken(yarn_sheet._percent(likely)) == text


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("400 m 100 g", 250),
        ("50 g 200 m", 250),
        ("50g, 200m", 250),
        ("100g = 425 m", 1e5 / 425),
        ("220 yds / 50g", 50 / (220 * 0.9144) * 1000),
        ("437 yards per 100 grams", 100 / (437 * 0.9144) * 1000),
        ("50 g / 1.75 oz, 200 m / 219 yd", 250),
        ("200 m (219 yds) per 50 g ball", 250),
        ("approx. 400 m to a 100 g skein", 250),
        ("fingering, 400 m / 100 g", 250),
        ("420 m = 100 g, 75 % wool", 1e5 / 420),
        ("75% superwash merino, 25% nylon, 420m/100g", 1e5 / 420),
        ("400 m / 100 g merino", 250),
        ("210 m auf 50 g", 1e5 / 420),
        ("LL 210m/50g", 1e5 / 420),
        ("Lauflänge 420 m/100 g", 1e5 / 420),
        ("1,984 yd / lb", 453.59237 / (1984 * 0.9144) * 1000),
        ("m/4g", 4000 / 1),
        ("420 METRES - 100 GRAMS", 1e5 / 420),
    ],
)
def test_a_band_in_any_order(text: str, tex: float) -> None:
    """1 yd = 0.9144 m, 1 oz = 28.35 g, 1 lb = 453.59237 g (international yard and pound, 1959)."""
    if tex > yarn.THICKEST:
        with pytest.raises(Unreadable, match="yarn-too-thick"):
            yarn.read(text)
        return
    found = yarn.read(text)
    assert found.tex == pytest.approx(tex)
    assert (found.sd, found.name) == (0.05, None)


@pytest.mark.parametrize(
    ("text", "offers"),
    [
        ("437 yd", ("437 yd / 100 g", "437 yd / 50 g")),
        ("220 yds", ("220 yds / 50 g", "220 yds / 100 g")),
        ("200m", ("200m / 50 g", "200m / 100 g")),
        ("412", ("412 m / 100 g",)),
        ("4", ("4 ply", "category 4")),
        ("2", ("2 ply", "category 2")),
        ("sock or sport", ()),
        ("sock sport", ("super fine", "fine")),
        ("3 sock", ("super fine", "light")),
    ],
)
def test_half_a_band_is_asked_about(text: str, offers: tuple[str, ...]) -> None:
    with pytest.raises(Unreadable) as told:
        yarn.read(text)
    assert told.value.offers == offers
    assert told.value.way_out
    for offer in offers:
        assert yarn.read(offer)


@pytest.mark.parametrize(
    "text",
    ["merino", "100 g", "400 / 100 g", "400 m / 100 kn", "200 m / 400 m / 100 g", "8/2", "3 ply",
     "5 socks", "400 m / 100 g / 50 g", "x", "ply", "9"],
)  # fmt: skip
def test_what_tells_no_yarn_is_refused(text: str) -> None:
    with pytest.raises(Unreadable) as told:
        yarn.read(text)
    assert told.value.way_out == yarn.EXAMPLE


@given(st.text(max_size=60) | st.lists(st.sampled_from(
    ["4", "100", "ply", "sock", "super", "fine", "m", "g", "yd", " ", "/", "=", ",", "nm", "#"]
), max_size=9).map("".join))  # fmt: skip
def test_any_text_is_a_yarn_or_refused(text: str) -> None:
    try:
        found = yarn.read(text)
    except Unreadable as no:
        refusal: Unreadable = no
    else:
        assert yarn.FINEST <= found.tex <= yarn.THICKEST
        assert 0 < found.sd < 0.3
        return
    assert refusal.way_out
