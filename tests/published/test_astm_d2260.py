"""Yarn numbers against the tables of ASTM and the definitions behind them.

ASTM D2260-03 (2013), Tables of Conversion Factors and Equivalent Yarn Numbers Measured in Various
Numbering Systems: tex = 1000/Nm = den/9 = 590.541/Ne cotton = 885.812/Ne worsted = 1653.52/lea
linen = 310.034/woollen run; yards per pound = 496.055 Nm. Each factor is worked out a second time
from its hank (840, 560, 300 and 1600 yd in a pound), the yard of 0.9144 m and the pound of
453.59237 g. One printed equivalence: GATE 1992, Textile Engineering, question 2.

Tolerances: the six figures that the factors are printed to (1 part in 100,000); 1 part in 1,000
where a plan's grams and metres are read, which are rounded to 0.01.
"""

from __future__ import annotations

from math import ceil

import pytest

from engine.fabric.yarn import read
from tests.asking import plan

SIX_FIGURES = 1e-5
FACTORS = [  # how a label may write number 1, factor printed, yards to a hank
    (("Ne {}", "{} Ne", "cotton {}", "NeC {}"), 590.541, 840),
    (("worsted {}", "{} worsted", "NeK {}"), 885.812, 560),
    (("lea {}", "{} lea", "linen {}"), 1653.52, 300),
    (("run {}", "{} run", "{} woollen"), 310.034, 1600),
]


@pytest.mark.parametrize(("labels", "factor", "hank"), FACTORS, ids=lambda one: str(one)[:8])
def test_factors_printed_and_from_their_hank(
    labels: tuple[str, ...], factor: float, hank: int
) -> None:
    from_the_hank = 453.59237 / (hank * 0.9144) * 1000
    assert factor == pytest.approx(from_the_hank, rel=SIX_FIGURES)
    for label in labels:
        for number in (2, 4.5, 6):
            tex = read(label.format(number)).tex
            assert tex == pytest.approx(factor / number, rel=SIX_FIGURES), label


@pytest.mark.parametrize("metric", [1.5, 2.0, 3.8, 4.2, 8.0])
def test_yards_per_pound(metric: float) -> None:
    """A yarn of Nm 4.2 has 2083 yards to the pound."""
    yards = 496.055 * metric
    assert read(f"{yards:.4f} yd/lb").tex == pytest.approx(1000 / metric, rel=SIX_FIGURES)
    assert read(f"Nm {metric}").tex == pytest.approx(1000 / metric, rel=SIX_FIGURES)


def test_one_yarn_in_every_system() -> None:
    """GATE 1992: 20 tex is 29.5 English cotton (29.525 when solved), 180 denier, 50 metric."""
    for text in ("20 tex", "Ne 29.525", "180 den", "180 denier", "50 Nm", "200 dtex"):
        assert read(text).tex == pytest.approx(20, abs=0.01), text


@pytest.mark.parametrize(
    "text",
    [
        "250 tex",
        "2500 dtex",
        "0.25 ktex",
        "2250 den",
        "Nm 4",
        "400 m / 100 g",
        "200 m / 50 g",
        "4000 m per kg",
        "437.445 yd / 100 g",
        "218.723 yards per 50 g",
        "1984.22 yd/lb",
        "124.014 yd / oz",
        "100 g = 400 m",
        "50 g / 200 m",
        "Ne 2.362164",
        "2.362164 cotton",
    ],
)
def test_a_plan_weighs_one_yarn_alike_however_its_label_says_it(text: str) -> None:
    """250 tex is 0.25 g in a metre; the answer's grams over its metres must say so."""
    yarn = plan({"fabric.yarn": text})["yarn"]
    grams_in_a_metre = yarn["grams"]["value"] / yarn["metres"]["value"]
    assert grams_in_a_metre == pytest.approx(0.250, rel=0.001)


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("Nm 28/2", 2000 / 28),
        ("2/28 Nm", 2000 / 28),
        ("Ne 8/2", 2 * 590.541 / 8),
        ("60/4 tex", 240),
    ],
)
def test_strands_add_their_tex(text: str, tex: float) -> None:
    """A folded yarn is as thick as all its strands together."""
    assert read(text).tex == pytest.approx(tex, rel=SIX_FIGURES)


def test_balls_of_an_ounce_by_yards_to_the_pound() -> None:
    """Nm 4 has 496.055 x 4 = 1984.22 yd in a pound of 16 oz, 124.01 yd in a ball of one."""
    changes = {"fabric.yarn": "Nm 4", "stock": {"ball": "1 oz", "margin": "0 %", "apart": "toe"}}
    for colour in plan(changes)["yarn"]["colors"]:
        yards = colour["metres"]["value"] / 0.9144
        assert colour["balls"] == ceil(yards / (496.055 * 4 / 16)), colour["name"]
