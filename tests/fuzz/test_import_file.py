"""Anything at all as a file to take in: what can be read of it or the one sentence, no more.

The page's own reader runs in node, in 256 MB. What it takes in, it writes and reads again the same.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import strategies as st

from tests.fuzz.drawn import anything, cut_up, spoilt, tried

pytestmark = pytest.mark.slow

Json = Any
ROOT = Path(__file__).resolve().parents[2]
MILLISECONDS = 50  # of the reader's own time, twice: it reads what it took in once more
KEPT = [
    json.loads((ROOT / "tests" / path).read_text(encoding="utf-8"))
    for path in ("browser/kept/copy_1.json", "fuzz/corpus/copy_2.json", "browser/kept/copy_3.json")
]
NAMES = sorted({name for one in KEPT for name in json.dumps(one).split('"')[1::2]})


def read(take: Callable[[str], Json], text: str) -> Json:
    """What came of a file, which is a copy or a sentence; else the test fails."""
    for _ in range(3):  # what seems slow may have been the collector of rubbish
        found = take(text)
        if found["ms"] <= 2 * MILLISECONDS:
            break
    assert found["ms"] <= 2 * MILLISECONDS
    assert found["polluted"] == 0
    assert "thrown" not in found, found["thrown"]
    if "copy" in found:
        assert found["copy"] == found["again"]["copy"]
        assert not found["again"]["damaged"]
    else:
        assert found["sentence"].endswith((".", "heelwise-."))
        assert len(found["sentence"]) < 300
    return found


@pytest.mark.parametrize("kept", KEPT, ids=lambda one: f"version {one['version']}")
def test_what_others_are_made_of_is_itself_taken_in(
    take: Callable[[str], Json], kept: Json
) -> None:
    found = read(take, json.dumps(kept))
    assert found["copy"]
    assert not found["damaged"]


def test_any_text_as_a_file(take: Callable[[str], Json], pytestconfig: pytest.Config) -> None:
    inputs = int(pytestconfig.getoption("--inputs")) // 4
    whole = spoilt(KEPT, anything(NAMES)) | anything(NAMES)
    texts = (
        whole.map(lambda value: json.dumps(value, default=str))
        | cut_up([json.dumps(one) for one in KEPT], st.text(max_size=8))
        | st.text(max_size=60)
    )

    def check(text: str) -> None:
        read(take, text.encode("utf-8", "replace").decode())

    assert tried(inputs, texts, check) >= inputs * 0.9


@pytest.mark.parametrize("deep", [100, 10_000, 1_000_000])
def test_what_is_nested_too_deep_is_refused(take: Callable[[str], Json], deep: int) -> None:
    for text in ("[" * deep, "[" * deep + "]" * deep, '{"a":' * deep + "1" + "}" * deep):
        found = take(text)
        assert "sentence" in found
        assert found["polluted"] == 0
