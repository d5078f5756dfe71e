"""The code against ISO/IEC 18004:2015, by its own figures and by a reader that others wrote.

Reader: zxing-cpp, an independent decoder. Figures of tables 7 and 9 from memory.
"""

from __future__ import annotations

import random
import string

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.asking import answer
from tests.published.code_reader import DARK, WHITE, found, pixels, read

# Table 7: bytes that versions 1 to 16 hold at level M.
BYTES_AT_M = (14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450)
OF_A_LINK = string.ascii_letters + string.digits + "-_."


def code(text: str) -> dict[str, object]:
    return answer({"do": "code", "text": text})


def link_of(length: int) -> str:
    """An address of so many letters, as links look."""
    chance = random.Random(length)
    return "".join(chance.choice(OF_A_LINK) for _ in range(length))


@given(st.text(alphabet=OF_A_LINK + ":/#?%=&", min_size=1, max_size=450))
def test_another_reader_reads_what_was_written(text: str) -> None:
    assert read(pixels(str(code(text)["svg"]))) == text


@pytest.mark.parametrize("version", range(1, 17))
def test_the_smallest_version_that_holds_it(version: int) -> None:
    """4 x version + 17 modules a side (6.3.1), and 4 of quiet zone on each (6.3.8)."""
    most = BYTES_AT_M[version - 1]
    made = code(link_of(most))
    assert (made["version"], made["across"]) == (version, 4 * version + 17 + 2 * 4)
    assert read(pixels(str(made["svg"]))) == link_of(most)
    if version < 16:
        assert code(link_of(most + 1))["version"] == version + 1


def test_level_m_in_bytes() -> None:
    (seen,) = found(pixels(str(code(link_of(100))["svg"])))
    assert seen.ec_level == "M"
    assert seen.content_type.name == "Text"


def test_the_quiet_zone_is_white_and_four_wide() -> None:
    drawn = pixels(str(code(link_of(100))["svg"]), per_module=1)
    dark = np.argwhere(drawn == DARK)
    assert dark.min() == 4
    assert dark.max() == len(drawn) - 1 - 4


@pytest.mark.parametrize("corner", ["middle", "lower right"])
def test_a_thumb_may_cover_some_of_it(corner: str) -> None:
    """Level M mends about 15 % of the codewords (5.1), those that are covered in part too."""
    drawn = pixels(str(code(link_of(200))["svg"]))
    side = len(drawn)
    thumb = int(side * 0.05**0.5)
    at = (side - thumb) // 2 if corner == "middle" else side - thumb - 16
    drawn[at : at + thumb, at : at + thumb] = WHITE
    assert read(drawn) == link_of(200)


def test_half_of_it_may_not() -> None:
    """So that the test above can fail."""
    drawn = pixels(str(code(link_of(200))["svg"]))
    drawn[len(drawn) // 2 :] = WHITE
    assert not any(seen.valid for seen in found(drawn))


@pytest.mark.parametrize("text", ["", None, 7, "https://example.org/ß", link_of(451)])
def test_what_makes_no_code_is_said(text: object) -> None:
    (problem,) = answer({"do": "code", "text": text})["errors"]
    assert problem["message"]
    assert problem["way_out"]
