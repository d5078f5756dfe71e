"""What several tubes at one mark say together, by hand: shares, how far each is off, and words."""

from __future__ import annotations

import math
import re

import pytest

from engine.fabric import gauge
from engine.fabric.gauge import Gauge
from engine.fabric.knitter import UNKNOWN
from engine.fabric.swatch import Swatch
from engine.read.fields import Fields
from engine.say import messages as say
from engine.say.message import Message
from tests.asking import plan

# As the ruler adds nothing here, each is as sure as one tube is like the next.
WHOLE = Swatch("fabric.swatch", stitches=0.30, rounds=0.40)
HALF = Swatch("fabric.swatches.0", stitches=0.31)
SOCK = Swatch("fabric.swatches.1", "sock", stitches=0.30, rounds=0.40)


def together(*tubes: Swatch) -> Gauge:
    found = gauge.from_tubes(Fields({}), tubes, None, None, UNKNOWN)
    assert found
    return found


def test_shares_and_how_far_each_is_off() -> None:
    """Across the mean is half from each; along it is all the first one's: 3/4 and 1/4."""
    found = together(WHOLE, HALF)
    assert (found.stitches, found.rounds) == pytest.approx((math.sqrt(0.30 * 0.31), 0.40))
    assert [one.share for one in found.seen] == pytest.approx([0.75, 0.25])
    off = math.log(0.31 / 0.30) / 2 / 0.02
    assert [one.off for one in found.seen] == pytest.approx([-off, off])


def test_what_nobody_measured_stays_unknown() -> None:
    found = together(HALF)
    assert found.stitches == pytest.approx(0.31)
    assert found.rounds is None
    assert found.along == gauge.UNKNOWN
    assert [one.share for one in found.seen] == pytest.approx([1.0])
    along = together(Swatch("fabric.swatch", rounds=0.4))
    assert along.stitches is None
    assert along.across == gauge.UNKNOWN


@pytest.mark.parametrize(
    ("tubes", "words"),
    [
        ((WHOLE,), say.from_swatches(swatches=1)),
        ((SOCK,), say.from_socks(socks=1)),
        ((WHOLE, HALF), say.from_swatches(swatches=2)),
        ((WHOLE, SOCK), say.from_swatches_and_socks(swatches=1, socks=1)),
        ((WHOLE, HALF, SOCK, SOCK), say.from_swatches_and_socks(swatches=2, socks=2)),
    ],
)
def test_in_words(tubes: tuple[Swatch, ...], words: Message) -> None:
    assert together(*tubes).words == (words,)


@pytest.mark.parametrize(("mark", "knitted"), [(6.5, True), (7.0, False)])
def test_where_the_line_leaves_what_can_be_knitted_the_mark_is_refused(
    mark: float, knitted: bool
) -> None:
    """Loops of 30 and 40 mm at the marks 5 and 6 are 45 at 6.5, with 4.2 / 45 = 0.093 stitches a
    mm, and 50 at 7, with 0.084: too few, though 0.11 rounds are just enough (`swatch`).
    """
    tubes = [
        Swatch("fabric.swatch", "swatch", at, 4.2 / loop, 5.5 / loop, 0.01, 0.01)
        for at, loop in ((5.0, 30.0), (6.0, 40.0))
    ]
    fields = Fields({})
    found = gauge.from_tubes(fields, tuple(tubes), mark, None, UNKNOWN)
    assert bool(found) == knitted
    assert [problem.field for problem in fields.problems] == ["mark"] * (not knitted)


@pytest.mark.parametrize(("stitches", "asked"), [(0.345, False), (0.346, True)])
def test_a_tube_far_from_the_others_is_asked_about(stitches: float, asked: bool) -> None:
    """x and 0.30 lie half of log(x / 0.30) off their mean, at 0.3451 by 3.5 x 2 %."""
    found = together(WHOLE, Swatch("fabric.swatches.0", stitches=stitches))
    fields = [field for field, _ in found.questions]
    assert fields == ["fabric.swatch.flat_width", "fabric.swatches.0.flat_width"] * asked
    along = together(
        Swatch("fabric.swatch", rounds=0.30), Swatch("fabric.swatches.0", rounds=stitches)
    )
    fields = [field for field, _ in along.questions]
    assert fields == ["fabric.swatch.length", "fabric.swatches.0.length"] * asked


def test_each_more_swatch_is_seen_in_the_percent_that_is_said() -> None:
    """One, two, three alike: to a tenth of a percent each is a little surer."""
    one = {"needles": 60, "rounds": 60, "flat_width": "10.2 cm", "length": "15.6 cm"}
    said = []
    for more in (1, 2, 3):
        words = plan({"fabric": {"swatches": [one] * more}})["fabric"]["words"]
        found = re.search(r"rounds to within (\d+\.\d) %, four times in five", words)
        assert found, words
        said.append(float(found[1]))
    assert said == sorted(set(said), reverse=True)
