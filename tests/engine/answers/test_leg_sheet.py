"""The leg in words: each kind there is, from the bands it has."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.answers import leg_sheet
from engine.fabric.swatch_line import Line, Point
from engine.say import messages as say
from engine.say.aloud import aloud, text
from engine.sections.leg import Band, Leg
from engine.sock import plan as planning
from engine.sock.sock import Sock
from tests.asking import asked
from tests.engine.socks import with_leg


def sock(mark: float | None, *bands: Band) -> Sock:
    """A sock of 9.6 rounds an inch with those bands, the foot knitted at `mark`."""
    made = planning.make(asked())
    return with_leg(made, Leg(bands, say.leg_words(why="told")), replace(made.fabric, mark=mark))


@pytest.mark.parametrize(
    ("mark", "bands", "words"),
    [
        (7.0, [Band(50)], "plain"),
        (7.0, [Band(50, 1.1, 6.25)], "at mark 6¼"),
        (None, [Band(50, 1.1)], "at its own tension"),
        (7.0, [Band(20), Band(30, 1.1, 6.0)], "in 2 bands at marks 6 to 7"),
        (7.0, [Band(9, 0.9, 8.0), Band(9), Band(9, 1.1, 6.5)], "in 3 bands at marks 6½ to 8"),
        (None, [Band(20), Band(30, 1.1)], "in 2 bands"),
        (7.0, [Band(20), Band(30, 1.1)], "in 2 bands"),  # one mark is not known
    ],
)
def test_each_kind_of_leg(mark: float | None, bands: list[Band], words: str) -> None:
    assert text(leg_sheet.kind(sock(mark, *bands))) == words


def test_bands_stand_one_under_the_other() -> None:
    """9.6 an inch: 24 rounds are 63.5 mm, and 24 at half the stitch 127; the cuff is above."""
    found = aloud(leg_sheet.write(sock(None, Band(24), Band(24, 0.5))))
    assert (
        found["words"]
        == "48 rounds in 2 bands, as you set it. Knit swatches at two marks to get the marks "
        "for these bands."
    )
    top, bottom = found["bands"]
    assert (top["from_round"], top["to_round"]) == (1, 24)
    assert (bottom["from_round"], bottom["to_round"]) == (25, 48)
    high, middle, low = (
        *(top["from_height"]["value"], top["to_height"]["value"]),
        bottom["to_height"]["value"],
    )
    assert bottom["from_height"]["value"] == middle
    assert (high - middle, middle - low) == pytest.approx((63.5, 127), abs=0.11)
    assert top["words"].startswith("the same stitch as the foot, down to ")
    assert bottom["words"].startswith("a stitch of 3.75 / in, down to ")


def test_one_round_is_one_round() -> None:
    assert text(leg_sheet.write(sock(None, Band(1)))["words"]) == "1 round plain, as you set it."
    assert text(leg_sheet.write(sock(None, Band(2)))["words"]) == "2 rounds plain, as you set it."


def test_only_beyond_the_marks_tried_a_band_is_called_less_sure() -> None:
    """Swatches at the marks 5 and 7: those two were tried themselves."""
    points = (Point(5.0, 12.6, 0.1), Point(7.0, 14.6, 0.1))
    line = Line(points, 6.0, 13.6, 1.0, 0.1, 0.1, 4.2, 5.5, 0.01)
    made = sock(6.0, *(Band(9, 1.1, mark) for mark in (4.75, 5.0, 7.0, 7.25)))
    found = leg_sheet.write(replace(made, fabric=replace(made.fabric, line=line)))
    less_sure = next(one for one in found["words"]["sentences"] if one["say"] == "beyond-marks")
    assert (less_sure["low"], less_sure["high"]) == ("5", "7")
    beyond = [band["words"]["say"] == "band-beyond" for band in found["bands"]]
    assert beyond == [True, False, False, True]


def test_as_sure_as_the_fabric() -> None:
    """50 rounds to 2.5 %, four times in five within 1.2816 x 1.25 = 1.6."""
    found = leg_sheet.reach(sock(None, Band(50)))
    assert (found["low"], found["high"]) == (48, 52)
    assert found["words"]["by"] == "fabric"
