"""A plan in a link: there and back, for ever, and never by accident.

CRC-32 finds every change within 32 bits in a row, hence every single wrong character (6 bits):
W. W. Peterson and D. T. Brown, Cyclic codes for error detection, Proc. IRE 49 (1961) 228.
"""

from __future__ import annotations

import base64
import json
import string
import time
import zlib
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine.answers import link, sent_counts
from engine.read.errors import Refused
from engine.sock import plan as plan_of_sock
from tests.asking import answer, asked
from tests.engine.drawn_requests import Json, knittable, plan

# Made by version 1 on the day it was finished. Never change these lines: people keep such links.
GOLDEN: dict[str, Json] = {
    "1.TMsUL8MaAGYGKAFAyFsIlxjrWEBdgmwHAA": {
        "cylinder": {"slots": 60},
        "fabric": {"yarn": "400 m / 100 g"},
        "foot": {"length": "23,8 cm"},
        "units": "cm",
    },
    (
        "1.xNGAwJWTyw3DIAxAV0FcerFCcQyBXbpFekXKJVtki2yUSWryocRNK_VqDsZP710C0B3qfxH0T1MzYL"
        "2owe_Hh2WclmGWAOJDSwCWGicJWFTW0PaPwiGq1oQ8O4FYzW4J3nK7m1-31Ijg0ubAWzC_FauP0HlFaS"
        "Ty7crnSHgqxdtj5v27glXoB1UWFqTQWAvtE8g87gk-GnLwKxpKwoMX"
    ): {
        "cylinder": {"slots": "72"},
        "fabric": {"rounds": "9.6 / in", "stitches": "7.5 st/in", "yarn": "Nm 4.2"},
        "foot": {
            "ankle_girth": "8⅜″",
            "ball_girth": '9"',
            "calf_girth": "14.5",
            "heel_girth": "12 1/4 in",
            "length": "9 3/8 in",
        },
        "person": {
            "age": 34,
            "height": "5'6\"",
            "sex": "woman",
            "shoe_size": {"size": "8 1/2", "system": "US women"},
            "weight": "9 st 6 lb",
        },
        "sock": {
            "cuff": {"every": 4, "kind": "mock rib", "rounds": 30},
            "heel": {"left": 12, "needles": 36},
            "leg": {"rounds": 0},
            "length_ease": 0.05,
            "toe": {"left": 10, "needles": 34},
        },
        "units": "in",
    },
    (
        "1.JnUceMMaAKYmKAGAI9EZGugZoTnF0BTiFKTYMANGDVoiNrSAqIEFrJlBLVIgoQSIkZGeBYZ3zYAhng"
        "v2L45oBuWcWh3UNKZkoqCKHBIgzwMA"
    ): {
        "cylinder": {"slots": 54},
        "fabric": {
            "swatch": {
                "flat_width": "10.2 cm",
                "length": "15.6 cm",
                "needles": 60,
                "pulled_width": "18 cm",
                "rounds": 60,
            }
        },
        "foot": {"ball_girth": "22.8 cm", "length": "246.5 mm"},
        "sock": {"cuff": {"kind": "rib"}, "length_ease": "4 %"},
        "units": "cm",
    },
    "1.qAf5W8MaAEYmKAGA5Nn3eya93zMF7DcMK8FpyATofHAityopKk0FysNiAnsyMDQ8tABkTi0A": {
        "cylinder": {"slots": 24},
        "fabric": {"stitches": "２４ / 10 cm"},
        "person": {"age": 4, "child": True},
        "sock": {"foot_length_of_sock": "11\xa0cm"},
    },
}
# Made by version 2 on the day it was finished, with its counts: never change these lines either.
GOLDEN_2: dict[str, Json] = {
    "2.PCgZnhQZHhTwE1fXwxoAZgYoAUDIW9hcgmwHAA": {
        "request": {
            "cylinder": {"slots": 60},
            "fabric": {"yarn": "400 m / 100 g"},
            "foot": {"length": "24.6 cm"},
            "units": "cm",
        },
        "sent": {
            "slots": 60,
            "figures": {
                "cuff": "20",
                "leg": "51",
                "heel": "30→10→30",
                "foot": "50",
                "toe": "30→10→30",
            },
            "two": False,
        },
    },
}
ALPHABET = string.ascii_letters + string.digits + "-_"


def opened(text: object) -> Json:
    """What the door makes of a link."""
    return answer({"do": "open", "link": text})


def message(text: object) -> str:
    """The one sentence said of a link that cannot be opened."""
    (problem,) = opened(text)["errors"]
    assert problem["field"] == "link"
    assert problem["way_out"]
    return str(problem["message"])


@pytest.mark.parametrize("text", GOLDEN)
def test_links_of_version_1_decode_for_ever(text: str) -> None:
    request = GOLDEN[text]
    for form in (text, "#" + text, f"  {text}\n"):
        assert opened(form) == {"request": request}
    assert "errors" not in plan(request)


@pytest.mark.parametrize("text", GOLDEN_2)
def test_links_of_version_2_decode_for_ever(text: str) -> None:
    for form in (text, "#" + text, f"  {text}\n"):
        assert opened(form) == GOLDEN_2[text]


def test_the_counts_lie_in_their_bits() -> None:
    """By hand: 1 bit to spare, then 6, 8, 10, 7, 7, 10, 7, 7 and 1 bits."""
    (text,) = GOLDEN_2
    bits = "0011110000101000000110011001111000010100000110010001111000010100"
    body = base64.urlsafe_b64decode(text[2:] + "=" * (-len(text[2:]) % 4))
    assert body[:8] == int(bits.replace(" ", ""), 2).to_bytes(8, "big")


@given(knittable())
def test_the_counts_of_a_link_are_those_of_its_plan(request: Json) -> None:
    page = answer({"do": "page", "request": request})
    assume("errors" not in page)
    figures = page["counted"]["figures"]
    for name in ("link", "counts_link"):
        if page[name] is None:
            continue
        found = opened(page[name])["sent"]
        assert found["slots"] == page["plan"]["counts"]["needles"]
        assert found["two"] == bool(page["plan"]["pair"])
        assert found["figures"] == {
            part: figures[part]
            for part in ("cuff", "leg", "heel", "foot", "toe")
            if figures.get(part, "0") != "0"
        }
        kept = {"engine": page["counted"]["engine"], "figures": found["figures"]}
        assert answer({"do": "again", "request": request, "counted": kept})["moved"] == []


def test_counts_too_large_for_a_link_stay_behind() -> None:
    sock = plan_of_sock.make(asked())
    assert sent_counts.pack(sock.with_foot(1023)) is not None
    assert sent_counts.pack(sock.with_foot(1024)) is None


def without_blanks(value: Any) -> Any:
    """The value without blank fields and empty groups, which say nothing."""
    if not isinstance(value, dict):
        return value
    kept = {name: without_blanks(inner) for name, inner in value.items()}
    return {name: inner for name, inner in kept.items() if inner not in (None, "", {})}


@given(knittable())
def test_there_and_back(request: Json) -> None:
    text = link.write(request)
    assert opened(text) == {"request": without_blanks(request)}
    assert set(text) <= {*ALPHABET, "."}, (
        "safe in the fragment of an address: RFC 3986, section 3.5"
    )
    assert plan(link.read(text)["request"]) == plan(request)
    assert len(text) <= 400


def test_a_usual_link_is_short_enough_for_a_small_code() -> None:
    """154 bytes fit version 7 of a QR code: ISO/IEC 18004, table 7 (from memory)."""
    usual = list(GOLDEN.values())[2]
    assert len(link.write(usual)) < 154 - len("https://example.org/heelwise/#")


def test_words_of_any_script_survive() -> None:
    request = {"foot": {"length": "９⅜″"}, "units": "in"}
    assert link.read(link.write(request)) == {"request": request}


@pytest.mark.parametrize("text", [*list(GOLDEN)[:2], *GOLDEN_2])
def test_every_wrong_character_is_noticed(text: str) -> None:
    """Each place, each other character. What changes spare bits only, opens as it should."""
    right = link.read(text)
    for at, was in enumerate(text):
        for wrong in ALPHABET + ".#% ":
            if wrong == was:
                continue
            try:
                assert link.read(text[:at] + wrong + text[at + 1 :]) == right
            except Refused:
                continue
            assert at >= len(text) - 2, "spare bits after the end, at most a byte and a letter"


@pytest.mark.parametrize("text", [*GOLDEN, *GOLDEN_2])
def test_every_cut_is_noticed(text: str) -> None:
    for end in range(len(text)):
        assert message(text[:end])
    for start in range(1, len(text)):
        assert message(text[start:])
    assert message(text + "A")
    assert message(text + text)


@given(
    st.sampled_from(["", "#", "1.", "#1.", "2.", "3.", "4."]),
    st.text(alphabet=ALPHABET, max_size=200) | st.text(max_size=50),
)
def test_a_foreign_text_gets_one_sentence(lead: str, text: str) -> None:
    assert message(lead + text)


@pytest.mark.parametrize("text", [None, 1, [], {}, "", "#", "#top", "1.", "https://example.org/"])
def test_what_is_no_link_is_said_to_be_none(text: object) -> None:
    assert message(text) == "This link holds no sock plan."


def test_a_newer_link_is_not_called_damaged() -> None:
    assert "newer" in message("4.AbCdEfGhIjKl")
    assert "newer" in message("#10.AbCdEfGhIjKl")


def test_a_damaged_link_is_called_damaged() -> None:
    text = next(iter(GOLDEN))
    assert "damaged" in message(text[:-3])
    assert "damaged" in message(text[:10] + text[11] + text[10] + text[12:])


def made_of(data: bytes) -> str:
    """A link with a right checksum around any bytes, deflated without the dictionary."""
    squeeze = zlib.compressobj(9, zlib.DEFLATED, -15)
    body = zlib.crc32(data).to_bytes(4, "big") + squeeze.compress(data) + squeeze.flush()
    return "1." + base64.urlsafe_b64encode(body).rstrip(b"=").decode()


def test_the_forger_of_these_tests_makes_links() -> None:
    request = {"foot": {"length": "24 cm"}}
    assert opened(made_of(json.dumps(request).encode())) == {"request": request}


@pytest.mark.parametrize(
    "data",
    [
        b"[]",
        b"1",
        b"null",
        b'"x"',
        b"{",
        b"\xff\xfe",
        b"[" * 4000,
        b'{"a":' * 800,
        b'{"a":' + b"[" * 2000 + b"]" * 2000 + b"}",
        b"9" * 4090,
    ],
)
def test_other_things_in_a_link_are_refused(data: bytes) -> None:
    assert message(made_of(data))


@pytest.mark.parametrize("name", ["__proto__", "constructor", "prototype", "a.b", "<img>", "é", ""])
def test_a_name_that_no_field_has_is_refused(name: str) -> None:
    """The page makes paths of names: one that led behind its objects would change them all."""
    for request in ({name: "1"}, {"foot": {name: {"shown": "1"}}}, {"fabric": {"a": [{name: 1}]}}):
        text = made_of(json.dumps(request).encode())
        assert message(text) == "This link holds no sock plan."


@pytest.mark.parametrize("size", [4097, 100_000, 1_000_000, 100_000_000])
def test_what_would_swell_is_refused_at_once(size: int) -> None:
    """Within 50 ms, best of three, whatever it would swell to."""
    bomb = made_of(b'{"a":"' + b"0" * size + b'"}')
    took = []
    for _ in range(3):
        start = time.perf_counter()
        assert message(bomb)
        took.append(time.perf_counter() - start)
    assert min(took) < 0.05


def test_the_largest_link_that_is_read_is_bounded() -> None:
    assert message("1." + "A" * 10_000_000) == "This link holds no sock plan."


# Made by the version before grams were usual beside inches: there its bare weights are ounces.
OUNCES = (
    "1.tiexG8MaAEpmBkooQYAj2ZkAnZFelJgL0mKgZ4rsKDMFQ30TlMQINBMpPUJsgJgLko7GY7ShCTAY0Yyq1cGj4dBeDO"
    "WxiNgxNldAyg1I0QN3vKWCsb4F2H0l0HQEiiWghDHQV0Zgb4JSnZKhngUoLQDVxOfngZK_oY6hQn4VeoADAA"
)


def test_bare_weights_of_an_older_link_in_inches_stay_ounces() -> None:
    request = opened(OUNCES)["request"]
    assert request["stock"] == {"left": "1.8 oz", "ball": "3 1/2 oz", "sock_one": "1,1 oz"}
    assert request["fabric"]["swatch"]["grams"] == "0.5 oz"
    assert [row.get("grams") for row in request["fabric"]["swatches"]] == ["14 g", "½ oz"]
    assert request["foot"]["length"] == "9 3/8", "lengths are as they were"
    found = answer({"do": "plan", "request": request})
    assert found["yarn"]["enough"]["left"]["other"] == "1.8 oz"
    assert opened(link.write(request)) == {"request": request}


@pytest.mark.parametrize("units", ["in", " IN", "cm", None])
def test_a_bare_weight_goes_into_a_link_as_the_grams_it_is(units: str | None) -> None:
    written = {
        "units": units,
        "stock": {"left": "27", "ball": 50, "sock_one": "1 oz", "apart": "x"},
    }
    again = opened(link.write(written))["request"]["stock"]
    grams = {"cm": ("27", 50)}.get(units or "cm", ("27 g", "50 g"))
    assert (again["left"], again["ball"]) == grams
    assert (again["sock_one"], again["apart"]) == ("1 oz", "x")


NAMES = st.sampled_from(["grams", "left", "swatch", "swatches"])
ANYTHING = st.recursive(
    st.none() | st.integers() | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(NAMES, inner),
    max_leaves=8,
)


@given(group=st.sampled_from(["stock", "fabric"]), anything=ANYTHING)
def test_anything_in_place_of_a_weight_goes_through(group: str, anything: Any) -> None:
    assert link.read(link.write({"units": "in", group: anything}))["request"]["units"] == "in"
