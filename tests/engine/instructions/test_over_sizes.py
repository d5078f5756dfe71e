"""How one sentence stands for all sizes.

Smallest first and the others in parentheses: Craft Yarn Council, Standards and Guidelines for
Knitting and Crochet (www.YarnStandards.com).
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.instructions import over_sizes
from engine.say import messages as say
from engine.say.aloud import text
from tests.engine.instructions.hands import for_size


@pytest.mark.parametrize(
    ("found", "written"),
    [
        ([46, 50, 54, 58], "46 (50, 54, 58)"),
        ([46, 46, 46], "46"),
        ([46], "46"),
        ([None, 50, 54], "– (50, 54)"),
        ([46, None, 54], "46 (–, 54)"),
        ([46, None, 46], "46"),
        ([None, None], "–"),
        (["6¼", "7", "7"], "6¼ (7, 7)"),
    ],
)
def test_figures_stand_smallest_size_first(found: list[Any], written: str) -> None:
    assert over_sizes.figures(found) == written


@given(st.lists(st.integers(0, 200), min_size=2, max_size=12))
def test_each_size_reads_its_own_figure(found: list[int]) -> None:
    sentences = [say.knit_rounds(part="foot", rounds=rounds) for rounds in found]
    one = text(over_sizes.one(sentences))
    for at, rounds in enumerate(found):
        told = for_size(one, at, len(found))
        assert told.rpartition(" ")[0] == f"Foot: knit {rounds}"


def test_sentences_that_differ_in_more_than_figures_have_two_shapes() -> None:
    shape = over_sizes.shape
    foot, leg = (say.knit_rounds(part=part, rounds=9) for part in ("foot", "leg"))
    assert shape(foot) != shape(leg)
    assert shape(foot) == shape(say.knit_rounds(part="foot", rounds=12))
    assert shape(foot) != shape(say.set_ribber())
    sizes = [say.set_other_stitch(size=s, stitches="30 / 10 cm") for s in ("smaller", "larger")]
    assert shape(sizes[0]) != shape(sizes[1])
