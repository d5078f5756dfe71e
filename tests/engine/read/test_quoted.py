"""Words of others within ours. Unicode Bidirectional Algorithm (UAX 9): the characters that set a
direction (`Bidi_Control`, PropList.txt), and isolates (2.4, 6.3).
"""

import unicodedata

import pytest

from engine.read.quoted import LONGEST, plain, quoted
from tests.asking import refused

# PropList.txt of Unicode 15.1, Bidi_Control.
TURNING = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"


def test_nothing_that_turns_words_round_or_has_no_shape_is_left() -> None:
    assert plain(f"a{TURNING}b\0\n\ud83dc") == "abc"
    # The rest, joiners of emoji and piled marks among it, is as it was.
    for whole in ("moß", "👩‍👩‍👧", "e\u0301\u0301", "<b>{{x}}</b>", "zero\u200bwidth"):
        assert plain(whole) == whole


@pytest.mark.parametrize("word", ["שלום", "صوف 60"])
def test_words_from_right_to_left_are_kept_apart(word: str) -> None:
    assert plain(word) == f"\u2068{word}\u2069"
    assert [unicodedata.name(one) for one in (plain(word)[0], plain(word)[-1])] == [
        "FIRST STRONG ISOLATE",
        "POP DIRECTIONAL ISOLATE",
    ]


def test_a_long_word_is_cut_and_looks_cut() -> None:
    assert quoted("x" * LONGEST) == "“" + "x" * LONGEST + "”"
    assert quoted("x" * 10_000) == "“" + "x" * LONGEST + "…”"


@pytest.mark.parametrize(
    "field",
    [
        "foot.length",
        "person.age",
        "cylinder.slots",
        "fabric.stitches",
        "fabric.yarn",
        "sock.cuff.kind",
        "stock.apart",
        "12 \u202ewax\u2067",
    ],
)
def test_no_refusal_turns_its_own_words_round(field: str) -> None:
    (told,) = refused({field: "12 \u202ewax\u2067"}).values()
    assert "wax" in told["message"]
    assert not set(TURNING) & set(told["message"] + told["way_out"])
