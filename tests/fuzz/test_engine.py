"""Anything at all, as a link, as a measure and as a call: a valid object or the documented error.

`--inputs N` says how many are tried in all; `python3 build/check.py --long` tries a million.
"""

from __future__ import annotations

import base64
import json
import zlib
from typing import Any

import pytest
from hypothesis import strategies as st

from engine.answers import link
from tests.asking import answer_text
from tests.fuzz.drawn import anything, corpus, cut_up, spoilt, tried
from tests.fuzz.invariant import answered, in_little_room

pytestmark = pytest.mark.slow

Json = Any
LETTERS = st.text("ABCDEFabcdef0123456789-_.#", max_size=12) | st.text(max_size=8)
SCRAPS = st.lists(
    st.sampled_from([*"0123456789 .,/-'\"″’½⅜×x", " in", " cm", "mm", "1e9", "\u00a0", "٣", "-0"])
    | st.text(max_size=3),
    max_size=9,
).map("".join)
DOORS = (
    ("plan", "measures"), ("page", "plan"), ("knit", "steps"), ("card", "parts"), ("tag", "facts"),
    ("foot", "measures"), ("again", "moved"), ("used", "takes"), ("shelf", "best"),
    ("chart", "rows"), ("read", "readings"), ("open", "request"), ("code", "svg"),
)  # fmt: skip
NAMES = sorted(
    {str(name) for call in corpus("calls") for name in json.dumps(call).split('"')[1::2]}
)


@pytest.fixture
def inputs(pytestconfig: pytest.Config) -> int:
    """How many each of the four is to try."""
    return int(pytestconfig.getoption("--inputs")) // 4


def opened(text: str) -> None:
    """What a link holds is asked for too: it may be anything that JSON can say."""
    found = answered({"do": "open", "link": text}, "request")
    if "request" in found:
        answered({"do": "page", "request": found["request"]}, "plan")


def enveloped(data: bytes) -> str:
    """A whole link of version 1 with this inside."""
    squeeze = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zlib.Z_DEFAULT_STRATEGY, link._WORDS)
    body = zlib.crc32(data).to_bytes(4, "big") + squeeze.compress(data) + squeeze.flush()
    return "1." + base64.urlsafe_b64encode(body).rstrip(b"=").decode()


def test_any_text_as_a_link(inputs: int) -> None:
    requests = [
        call["request"] for call in corpus("calls") if isinstance(call.get("request"), dict)
    ]
    inside = (spoilt(requests, anything(NAMES)) | anything(NAMES)).map(
        lambda value: enveloped(json.dumps(value, default=str).encode())
    )
    raw = st.binary(max_size=300).map(enveloped)
    texts = cut_up(corpus("links"), LETTERS) | LETTERS | inside | raw
    assert tried(inputs, texts, opened) >= inputs * 0.9


def test_any_text_as_a_measure(inputs: int) -> None:
    """A reading is of what can be: a weight or a length, above nothing and below a mile."""

    def read(text: str) -> None:
        fields = {"foot.length": text, "stock.left": text, "stock.repeat": text}
        found = answered({"do": "read", "fields": fields, "units": "in"}, "readings")
        for shown in found["readings"].values():
            assert 0 <= shown["value"] < 1.7e6
            assert shown["text"].strip()

    texts = cut_up(corpus("measures"), SCRAPS) | SCRAPS
    assert tried(inputs, texts, read) >= inputs * 0.9


def test_anything_as_a_call(inputs: int) -> None:
    keys = dict(DOORS)

    def call(value: Json) -> None:
        door = value.get("do") if isinstance(value, dict) else None
        answered(value, keys.get(door, "errors") if isinstance(door, str) else "errors")

    calls = spoilt(corpus("calls"), anything(NAMES)) | anything(NAMES)
    assert tried(inputs, calls, call) >= inputs * 0.9


@pytest.mark.parametrize("text", [*corpus("links"), *corpus("bad_links")])
def test_every_kept_link(text: str) -> None:
    in_little_room({"do": "open", "link": text}, "request")


@pytest.mark.parametrize("text", corpus("measures"))
def test_every_kept_measure(text: str) -> None:
    in_little_room({"do": "read", "fields": {"foot.length": text}, "units": "cm"}, "readings")


@pytest.mark.parametrize("call", corpus("calls"), ids=lambda call: str(call.get("do")))
def test_every_kept_call(call: Json) -> None:
    found = in_little_room(call, dict(DOORS)[call["do"]])
    assert not found.get("errors"), "what others are made of is itself sound"


@pytest.mark.parametrize("million", [1, 10])
def test_a_link_that_would_swell_is_refused(million: int) -> None:
    """Nothing but noughts, 1000 to 1: it fits a link as far as letters go, and opens no further."""
    bomb = enveloped(b"0" * (million * 1_000_000))
    found = in_little_room({"do": "open", "link": bomb}, "request")
    assert [error["field"] for error in found["errors"]] == ["link"]


@pytest.mark.parametrize("deep", [100, 100_000])
def test_what_is_nested_too_deep_is_refused(deep: int) -> None:
    for text in ("[" * deep, "[" * deep + "]" * deep, '{"a":' * deep + "1" + "}" * deep):
        assert "errors" in json.loads(answer_text(text))
