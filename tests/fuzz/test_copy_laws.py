"""Two laws of a copy, tried on many invented books.

Whatever the phone accepts comes back equal from its own copy on a fresh phone; and one bad record
of a file keeps none of the others out. The page's own writer and reader run in node.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import strategies as st

from tests.browser.small_sock import knit, session
from tests.fuzz.drawn import anything, paths, tried

pytestmark = pytest.mark.slow

Json = Any
Take = Callable[[Json], Json]

TEXTS = st.text(max_size=12) | st.sampled_from(["", " ", "<b>", "\u202e", "\ud800", '"}],{"', "\0"])
DAYS = st.dates().map(str) | st.sampled_from(["", "20261-11-26", "0002-11-26", "soon"])
MOMENTS = st.integers(0, 2**53)
FIELDS = st.sampled_from(["foot.length", "units", "shelf.yarns.1.name"]) | st.from_regex(
    r"[a-z][A-Za-z0-9_]{0,4}(\.[A-Za-z0-9_]{1,4}){0,2}", fullmatch=True
)
VALUES = st.dictionaries(FIELDS, TEXTS, max_size=4)
DATES = st.dictionaries(FIELDS, MOMENTS, max_size=3)
COUNTED = st.fixed_dictionaries(
    {
        "engine": TEXTS,
        "figures": st.dictionaries(TEXTS, TEXTS, max_size=3),
        "facts": st.lists(st.fixed_dictionaries({"name": TEXTS, "text": TEXTS}), max_size=2),
    }
)
PLANS = st.fixed_dictionaries(
    {"at": MOMENTS, "values": VALUES, "counted": COUNTED},
    optional={"two": COUNTED, "knitted": TEXTS},
)
SOCK = {**knit(), "steps": knit()["steps"][:3] + knit()["steps"][10:12]}
NAMES = st.from_regex(r"[a-z]{1,6}", fullmatch=True)
IDS = st.from_regex(r"[A-Za-z0-9_-]{1,9}", fullmatch=True)


@st.composite
def wearers(draw: st.DrawFn) -> Json:
    """Some wearers, and the visits of each."""
    ids = draw(st.lists(IDS, unique=True, max_size=4))
    words = ("due", "price", "asked", "length", "colours", "allergy")
    optional = dict.fromkeys(words, TEXTS) | {
        "due": DAYS,
        "ease": st.sampled_from(["snug", "", "loose"]),
        "state": st.sampled_from(["measured", "sock one", "nonsense"]),
        "changed": DATES,
    }
    return {
        "wearers": [
            draw(
                st.fixed_dictionaries(
                    {"id": st.just(one), "label": TEXTS, "made": MOMENTS}, optional=optional
                )
            )
            for one in ids
        ],
        "visits": [
            draw(
                st.fixed_dictionaries(
                    {
                        "wearer": st.just(one),
                        "number": st.just(number),
                        "at": MOMENTS,
                        "values": VALUES,
                    },
                    optional={
                        "plans": st.lists(PLANS, max_size=2),
                        "changed": DATES,
                        "state": TEXTS,
                        "due": DAYS,
                        "price": TEXTS,
                    },
                )
            )
            for one in ids
            for number in range(1, 1 + draw(st.integers(0, 3)))
        ],
    }


TIMES = st.fixed_dictionaries(
    {"took": st.lists(st.integers(0, 9999), min_size=2, max_size=2)},
    optional={"round": st.floats(0, 90), "row": st.floats(0, 90)},
)
KNITTED = st.fixed_dictionaries(
    {
        "id": IDS,
        "began": MOMENTS,
        "ended": MOMENTS,
        "label": TEXTS,
        "request": st.dictionaries(NAMES, VALUES, max_size=3),
        "counted": st.lists(COUNTED, max_size=2),
        "times": st.dictionaries(NAMES, TIMES, max_size=3),
        "notes": st.lists(
            st.fixed_dictionaries(
                {
                    "sock": st.sampled_from([0, 1]),
                    "section": TEXTS,
                    "done": st.integers(0, 400),
                    "text": TEXTS,
                }
            ),
            max_size=2,
        ),
        "yarn": st.lists(TEXTS, min_size=2, max_size=2),
        "last": st.integers(1, 2000),
    },
    optional={
        "who": TEXTS,
        "wearer": TEXTS,
        "cut": st.just(True),
        "measured": st.fixed_dictionaries(
            {"foot_rounds": TEXTS, "length": TEXTS}, optional={"flat_width": TEXTS}
        ),
    },
)


@st.composite
def pairs(draw: st.DrawFn) -> Json:
    """Some pairs at the machine, and what was counted of each."""
    ids = draw(st.lists(IDS, unique=True, max_size=3))
    happening = st.fixed_dictionaries(
        {
            "sock": st.sampled_from([0, 1]),
            "kind": st.sampled_from(["done", "back", "jump", "note", "turn", "yarn", "lost"]),
            "took": st.none() | st.floats(0, 1e6),
            "at": MOMENTS,
        },
        optional={"text": TEXTS, "place": st.just({"step": 2, "done": 1}), "tab": TEXTS},
    )
    return {
        "sessions": [
            draw(
                st.fixed_dictionaries(
                    {
                        "id": st.just(one),
                        "label": TEXTS,
                        "began": MOMENTS,
                        "request": st.dictionaries(NAMES, VALUES, max_size=3),
                    },
                    optional={"away": st.booleans(), "who": TEXTS},
                )
            )
            for one in ids
        ],
        "happenings": [
            {"session": one, "number": number, **draw(happening)}
            for one in ids
            for number in range(1, 1 + draw(st.integers(0, 4)))
        ],
        "ended": draw(st.lists(KNITTED, max_size=2, unique_by=lambda one: str(one["id"]))),
    }


def with_socks(phone: Json) -> Json:
    """The steps of each pair, which are long and always these."""
    sessions = [{**one, "socks": [SOCK, SOCK]} for one in phone["sessions"]]
    return {**phone, "sessions": sessions}


SETTINGS = st.none() | st.fixed_dictionaries(
    {}, optional={"guard": st.integers(0, 2000), "ticks": st.booleans()}
)
NO_SHEETS = dict.fromkeys(("mine", "before", "shelf", "chart", "sets"))
SHEETS = st.fixed_dictionaries(
    dict.fromkeys(("mine", "before", "shelf", "chart", "sets"), st.none() | VALUES)
)
GONE = st.lists(st.fixed_dictionaries({"id": IDS, "at": MOMENTS}), max_size=2)
PHONES = st.builds(
    lambda book, machine, **more: {**book, **machine, **more},
    wearers(),
    pairs(),
    sheets=SHEETS,
    settings=SETTINGS,
    gone=GONE,
    dates=st.dictionaries(FIELDS, st.integers(1, 2**52), max_size=2),
)


def test_whatever_the_phone_accepts_comes_back_equal(
    take: Take, pytestconfig: pytest.Config
) -> None:
    inputs = int(pytestconfig.getoption("--inputs")) // 20
    rich = 0

    def check(phone: Json) -> None:
        nonlocal rich
        found = take(with_socks(phone))
        assert found.get("copy") == found["held"], found.get("sentence")
        assert (found["damaged"], found["unread"], found["altered"]) == (False, [], [])
        # What is accepted is whatever was drawn: a reader that accepts nothing keeps no law.
        assert len(found["held"]["book"]) == len(phone["wearers"])
        assert len(found["held"]["pairs"]) == len(phone["sessions"])
        assert len(found["held"]["ended"]) == len(phone["ended"])
        rich += bool(phone["visits"] and phone["happenings"])

    assert tried(inputs, PHONES, check) >= inputs * 0.9
    assert rich >= inputs // 20


def whole(take: Take, phone: Json) -> tuple[Json, dict[str, Json]]:
    """A phone's copy, and each of its records by name."""
    found = take(with_socks(phone))
    return json.loads(found["text"]), records(found["copy"])


def records(copy: Json) -> dict[str, Json]:
    """What came of a file, by name."""
    return {
        **{f"wearer {one['wearer']['id']}": one for one in copy["book"]},
        **{f"pair {one['session']['id']}": one for one in copy["pairs"]},
        **{f"knitted {one['id']}": one for one in copy["ended"]},
        **{f"sheet {name}": one for name, one in copy["sheets"].items() if one is not None},
        **({} if copy["settings"] is None else {"settings": copy["settings"]}),
    }


SPOILT = st.tuples(PHONES, anything(["wearer", "id", "visits", "values"]), st.randoms())


def test_one_bad_record_keeps_no_other_out(take: Take, pytestconfig: pytest.Config) -> None:
    """A place of one record exchanged for anything, or the whole of it."""
    inputs = int(pytestconfig.getoption("--inputs")) // 40
    told = 0

    def check(drawn: Json) -> None:
        nonlocal told
        phone, junk, chance = drawn
        copy, before = whole(take, phone)
        places = [
            ("book", at, "wearer", one["wearer"]["id"]) for at, one in enumerate(copy["book"])
        ]
        places += [
            ("pairs", at, "pair", one["session"]["id"]) for at, one in enumerate(copy["pairs"])
        ]
        places += [
            ("ended", at, "knitted", one["ended"]["id"]) for at, one in enumerate(copy["ended"])
        ]
        if not places:
            return
        part, at, kind, name = chance.choice(places)
        inner = [(), *paths(copy[part][at])]
        way: list[Any] = [part, at, *chance.choice(inner)]
        last = way.pop()
        place = copy
        for key in way:
            place = place[key]
        place[last] = junk
        after = take(json.dumps(copy, default=str))
        assert "copy" in after, after
        now = records(after["copy"])
        for other, record in before.items():
            if other != f"{kind} {name}":
                assert now.get(other) == record, other
        if now.get(f"{kind} {name}") != before[f"{kind} {name}"]:
            assert after["damaged"]
            assert after["unread"] or after["altered"] or after["lacking"]
            told += 1

    tried(inputs, SPOILT, check)
    assert told > inputs / 4


def test_a_damaged_place_of_the_text_costs_what_it_lies_in(
    take: Take, pytestconfig: pytest.Config
) -> None:
    """Any one character of any record exchanged: all the others come back, and it is told."""
    inputs = int(pytestconfig.getoption("--inputs")) // 40

    def check(drawn: Json) -> None:
        phone, letter, chance = drawn
        found = take(with_socks(phone))
        text, before = found["text"], records(found["copy"])
        all_of = json.loads(text)
        numbered = [(part, at) for part in ("book", "pairs") for at in range(len(all_of[part]))]
        if not numbered:
            return
        part, at = chance.choice(numbered)
        record = json.dumps(all_of[part][at], ensure_ascii=False, separators=(",", ":"))
        begin = text.find(record)
        if begin < 0:  # a half character is written otherwise here
            return
        where = begin + chance.randrange(len(record))
        after = take(text[:where] + letter + text[where + 1 :])
        inside = all_of[part][at].get("wearer") or all_of[part][at]["session"]
        name = f"{'wearer' if part == 'book' else 'pair'} {inside['id']}"
        now = records(after["copy"])
        for other, one in before.items():
            if other != name:
                assert now.get(other) == one, other
        assert now.get(name) == before[name] or after["damaged"]

    letters = st.sampled_from('"{}[],:\\x0') | st.characters(exclude_categories=["Cs"])
    tried(inputs, st.tuples(PHONES, letters, st.randoms()), check)


def test_a_file_that_is_cut_short_gives_what_is_whole(take: Take) -> None:
    phone = {
        "wearers": [{"id": f"w{at}", "label": f"Wearer {at}", "made": at} for at in range(20)],
        "visits": [],
        "sheets": {**NO_SHEETS, "mine": {"foot.length": "24"}},
        "sessions": [session("p-1")],
        "happenings": [],
        "ended": [],
        "settings": None,
    }
    text = take(phone)["text"]
    for share in (0.2, 0.5, 0.8, 0.99):
        found = take(text[: int(len(text) * share)])
        assert found["damaged"]
        assert found["copy"]["sheets"]["mine"] == {"foot.length": "24"}
        many = len(found["copy"]["book"])
        cut = text[: int(len(text) * share)].count('"sum":') - len(found["copy"]["pairs"])
        assert many >= cut - 1, share


def test_the_checksum_is_that_of_zlib(take: Take) -> None:
    """RFC 1952's CRC-32, as Python's zlib reckons it, of RFC 8785's one text for one value."""
    phone = {
        "wearers": [{"id": "w-1", "label": "Zoë “é”", "made": 5}],
        "visits": [{"wearer": "w-1", "number": 1, "at": 5, "values": {"foot.length": "24"}}],
        "sheets": NO_SHEETS,
        "sessions": [],
        "happenings": [],
        "ended": [],
        "settings": None,
    }
    (one,) = json.loads(take(phone)["text"])["book"]
    stated = one.pop("sum")
    text = json.dumps(one, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    assert stated == f"{zlib.crc32(text.encode()):08x}"


@pytest.mark.parametrize("version", [0, -1, 1.5, "3", None, True, [3], 10**30])
def test_only_known_whole_numbers_are_versions(take: Take, version: Json) -> None:
    found = take(json.dumps({"heelwise": "wearers", "version": version, "book": []}))
    assert "version" in found["sentence"]
    assert "Nothing was loaded" in found["sentence"] or "newer version" in found["sentence"]
