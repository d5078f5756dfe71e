"""What the instructions say beside the steps: drawing, gauge, yarn, ease, tools."""

from __future__ import annotations

import re
from itertools import combinations, pairwise
from typing import Any

import pytest

from tests.engine.instructions.asking_sets import Json, made, request

KINDS: dict[str, Json] = {
    "usual": {},
    "footie": {"leg": {"kind": "footie"}},
    "tall": {"leg": {"rounds": 120}},
    "tube": {"heel": {"kind": "none"}, "leg": {"rounds": 90}},
    "picot, gathered": {"cuff": {"kind": "picot hem", "rounds": 12}, "toe": {"kind": "gathered"}},
}


def section(blocks: list[Json], name: str) -> list[Json]:
    """The blocks under a heading, up to the next of its level."""
    at = next(n for n, block in enumerate(blocks) if block.get("id") == name)
    level = blocks[at]["level"]
    rest = blocks[at + 1 :]
    ends = [n for n, block in enumerate(rest) if block.get("level", level + 1) <= level]
    return rest[: ends[0]] if ends else rest


def written(blocks: list[Json]) -> str:
    """The words of some blocks."""
    return " ".join(str(block.get("text", block.get("items", ""))) for block in blocks)


def whole(told: Json, sizes: str = "36, 40", **details: Any) -> list[Json]:
    blocks: list[Json] = made(told, "EU", sizes, details=details)["document"]["all_sizes"]
    return blocks


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("size", ["24", "40", "50"])
def test_a_lettered_line_is_as_long_as_what_it_measures(kind: str, size: str) -> None:
    """In mm of the drawing, to 0.3 mm of its rounding; B is the tube lying flat.

    A sock with hardly a leg is drawn a little low at the instep, so there B is shorter.
    """
    found = made(request(sock=KINDS[kind]), "EU", [size])
    blocks = section(found["document"]["all_sizes"], "measures")
    drawn, table = (block for block in blocks if block["kind"] != "text")
    lines = [path["d"] for path in drawn["paths"] if path["kind"] == "measure"]
    letters = [one["letter"] for one in drawn["letters"]]
    assert len(lines) == len(letters)
    long = {}
    for letter, d in zip(letters, lines, strict=True):
        x, y, way, to = re.match(r"M([\d.-]+) ([\d.-]+)([HV])([\d.-]+)", d).groups()  # type: ignore[union-attr]
        long[letter] = abs(float(to) - float(x if way == "H" else y))
    sock = found["sizes"][0]["finished"]
    assert long["A"] == pytest.approx(sock["foot"]["value"], abs=0.3)
    flat = sock["girth"]["value"] / 2
    assert long["B"] <= flat + 0.3 if kind == "footie" else abs(long["B"] - flat) <= 0.3
    assert long["C"] == pytest.approx(sock["height"]["value"], abs=0.3)
    parts = [long[letter] for letter in letters[3:]]
    assert sum(parts) == pytest.approx(long["C"], abs=0.5)
    assert [head[0] for head in table["head"][1:]] == letters
    (row,) = table["rows"]
    for letter, cell in zip(letters, row["cells"], strict=True):
        cm = float(cell.removesuffix(" cm"))
        if letter == "B":
            assert cm * 10 == pytest.approx(2 * flat, abs=1.1)
            continue
        assert cm * 10 == pytest.approx(long[letter], abs=1.1)


DRAWN: dict[str, Json] = {
    **KINDS,
    "hardly a leg": {"leg": {"rounds": 1}, "cuff": {"rounds": 2}},
    "hardly a cuff": {"leg": {"rounds": 60}, "cuff": {"rounds": 2}},
    "wide at the top": {"leg": {"bands": [{"rounds": 60, "stitches": "24 / 10 cm"}]}},
    "flap": {"heel": {"kind": "flap"}, "leg": {"rounds": 9}},
    "low heel": {"heel": {"needles": 20, "left": 16}, "leg": {"rounds": 4}},
    "short tube": {"heel": {"kind": "none"}, "leg": {"rounds": 2}, "toe": {"kind": "left open"}},
    "mock rib hem": {"cuff": {"kind": "mock rib hem", "rounds": 12, "every": 4}},
    "rib": {"cuff": {"kind": "rib", "rounds": 60}, "leg": {"kind": "ribbed", "rounds": 20}},
}
# A capital of a plain typeface, in sizes of type: so high above its line, and at most so wide (from
# memory). It stands on a line a third of a size below the place of its letter (sets/tree.js).
CAP, WIDE, BELOW = 0.74, 0.8, 1 / 3
Box = tuple[float, float, float, float]
STROKE = 0.8  # mm, half of what a line is drawn with


def boxes(drawn: Json) -> dict[str, Box]:
    """Left, top, right and bottom of each letter."""
    high = drawn["letter_height"]
    return {
        one["letter"]: (
            one["x"] - WIDE / 2 * high,
            one["y"] + (BELOW - CAP) * high,
            one["x"] + WIDE / 2 * high,
            one["y"] + BELOW * high,
        )
        for one in drawn["letters"]
    }


def places(d: str) -> list[tuple[float, float]]:
    """Places along a path (SVG 2, chapter 9: M, L, H, V, Q and Z), half a mm apart or closer."""
    found: list[tuple[float, float]] = []
    begun = now = (0.0, 0.0)
    for way, told in re.findall(r"([A-Z])([^A-Z]*)", d):
        given = [float(one) for one in re.findall(r"-?[\d.]+", told)]
        if way == "M":
            begun = now = (given[0], given[1])
            continue
        match way:
            case "H":
                corners = [now, (given[0], now[1])]
            case "V":
                corners = [now, (now[0], given[0])]
            case "Z":
                corners = [now, begun]
            case "L":
                corners = [now, *zip(given[::2], given[1::2], strict=True)]
            case "Q":
                assert len(given) == 4
                corners = [now, (given[0], given[1]), (given[2], given[3])]
            case other:
                raise AssertionError(other)
        if way == "Q":
            (ax, ay), (bx, by), (cx, cy) = corners
            shares = [at / 64 for at in range(65)]
            corners = [
                (
                    (1 - t) ** 2 * ax + 2 * t * (1 - t) * bx + t * t * cx,
                    (1 - t) ** 2 * ay + 2 * t * (1 - t) * by + t * t * cy,
                )
                for t in shares
            ]
        for (ax, ay), (bx, by) in pairwise(corners):
            pieces = max(1, int(2 * max(abs(bx - ax), abs(by - ay))))
            found += [
                (ax + (bx - ax) * at / pieces, ay + (by - ay) * at / pieces)
                for at in range(pieces + 1)
            ]
        now = corners[-1]
    return found


@pytest.mark.parametrize("kind", DRAWN)
@pytest.mark.parametrize(("slots", "size"), [(84, "34"), (84, "40"), (60, "50"), (40, "22")])
def test_no_letter_touches_a_line_or_another_letter(kind: str, slots: int, size: str) -> None:
    blocks = section(whole(request(slots, sock=DRAWN[kind]), size), "measures")
    (drawn,) = (block for block in blocks if block["kind"] == "schematic")
    found = boxes(drawn)
    for left, top, right, bottom in found.values():
        assert left >= 0
        assert top >= 0
        assert right <= drawn["width"]
        assert bottom <= drawn["height"]
    for (one, a), (other, b) in combinations(found.items(), 2):
        clear = a[2] < b[0] or b[2] < a[0] or a[3] < b[1] or b[3] < a[1]
        assert clear, (one, other)
    for path in drawn["paths"]:
        for x, y in places(path["d"]):
            assert -0.1 <= x <= drawn["width"]
            assert -0.1 <= y <= drawn["height"]
            touched = [
                letter
                for letter, (left, top, right, bottom) in found.items()
                if left - STROKE < x < right + STROKE and top - STROKE < y < bottom + STROKE
            ]
            assert not touched, (path["d"], x, y)
    down = [found[letter][1] for letter in "DEF" if letter in found]
    assert down == sorted(down), "in the order of their measures"
    assert all(letter + " " in drawn["text"] for letter in found)


def test_the_gauge_is_told_over_10_cm_and_over_4_in() -> None:
    """By arithmetic: 4 in are 101.6 mm, and 60 needles at 3 stitches a cm lie 10 cm wide."""
    told = written(section(whole(request()), "gauge"))
    assert (
        "30 stitches and 38 rounds over 10 cm, or 30.5 stitches and 38.6 rounds over 4 in" in told
    )
    assert "10 cm (3 7/8 in) is right" in told
    assert "all 60 needles" in told


@pytest.mark.parametrize(
    ("yarn", "number", "name"),
    [
        ("400 m / 100 g", 1, "super fine"),
        ("300 m / 100 g", 2, "fine"),
        ("230 m / 100 g", 3, "light"),
        ("180 m / 100 g", 4, "medium"),
        ("800 m / 100 g", 0, "lace"),
    ],
)
def test_a_yarn_has_its_number_of_the_craft_yarn_council(yarn: str, number: int, name: str) -> None:
    """Craft Yarn Council, Standard Yarn Weight System (www.YarnStandards.com): number and name.

    Super fine is 383 to 484 m per 100 g in a handspinners' journal; the others from memory.
    """
    told = request()
    told["fabric"] = {**told["fabric"], "yarn": yarn}
    words = written(section(whole(told), "yarn"))
    assert f"The yarn has {yarn.partition(' /')[0]} (" in words
    assert f"is number {number}: {name} yarn" in words


def test_ease_is_told_in_length_and_around() -> None:
    """By arithmetic: the girth around the ball over the 20 cm of 60 stitches."""
    found = made(request(), "EU", "36, 40")
    words = written(section(found["document"]["all_sizes"], "ease"))
    stretches = [round(one["ball_girth"]["value"] / 200 * 100 - 100) for one in found["sizes"]]
    assert "4 % shorter than the foot" in words
    assert f"stretches {stretches[0]} ({stretches[1]}) %" in words


@pytest.mark.parametrize(
    ("sock", "there", "missing"),
    [
        ({}, "heel spring", "ribber"),
        ({"cuff": {"kind": "rib"}}, "ribber", "Knitting needles"),
        ({"toe": {"kind": "left open"}}, "Knitting needles", "ribber"),
        ({"heel": {"kind": "none"}, "toe": {"kind": "gathered"}}, "darning needle", "spring"),
    ],
)
def test_the_machine_has_what_the_sock_needs(sock: Json, there: str, missing: str) -> None:
    words = written(section(whole(request(sock=sock)), "machine"))
    assert there in words
    assert missing not in words


def test_colors_stand_with_their_parts_and_their_yarn() -> None:
    told = request(sock={"colors": {"heel": "B", "toe": "B"}})
    blocks = whole(told)
    (table,) = (block for block in section(blocks, "colors") if block["kind"] == "table")
    assert [(row["head"], row["cells"]) for row in table["rows"]] == [
        ("Color A", ["Cuff, Leg, and Foot"]),
        ("Color B", ["Heel and Toe"]),
    ]
    (yarn,) = (block for block in section(blocks, "yarn") if block["kind"] == "table")
    assert [(row["head"], row["cells"][0]) for row in yarn["rows"]] == [
        ("36", "Color A"),
        ("36", "Color B"),
        ("40", "Color A"),
        ("40", "Color B"),
    ]
    assert "one color" in written(section(whole(request()), "colors"))


def test_cautions_stand_before_the_first_step_and_are_cautions() -> None:
    blocks = whole(request())
    kinds = {block["kind"] for block in section(blocks, "care")}
    assert kinds == {"caution"}
    names = [block.get("id") for block in blocks]
    assert names.index("care") < names.index("instructions")
    words = written(section(blocks, "care"))
    assert "never for compression wear" in words
    assert "Latch needles pinch and stab" in words


@pytest.mark.parametrize("place", ["apart", "pair", "first", "between", "last"])
def test_a_string_is_left_out_in_so_many_words(place: str) -> None:
    """How the maker's own pair hangs together is of that pair; counts are those of any sock."""
    found = made(request(sock={"string": place}), "EU", "36, 40")
    plain = made(request(), "EU", "36, 40")
    said = written(section(found["document"]["all_sizes"], "instructions"))
    assert ("The maker knits sock after sock" in said) is (place != "apart")
    assert [one["counts"] for one in found["sizes"]] == [one["counts"] for one in plain["sizes"]]


def test_errata_and_contact_have_a_place_only_where_they_are_told() -> None:
    told = whole(request(), errata="https://example.org/errata", contact="Invented: a@example.org")
    (listed,) = section(told, "errata")
    assert listed["items"] == [
        "Corrections: https://example.org/errata",
        "Contact: Invented: a@example.org",
    ]
    assert "errata" not in {block.get("id") for block in whole(request())}


def test_a_scale_of_shoes_that_sells_none_of_the_sizes_is_left_out() -> None:
    """Youth sizes of the US go on from children's 13 (customary)."""
    for sizes, sold in (("20, 24", False), ("24, 36", True)):
        blocks = made(request(48), "EU child", sizes)["document"]["all_sizes"]
        (table,) = (
            block
            for block in blocks
            if block["kind"] == "table" and block["caption"] == "Shoe sizes of such a foot, about"
        )
        assert ("US youth" in table["head"]) is sold
        assert "US child" in table["head"]
        assert all(len(row["cells"]) == len(table["head"]) - 1 for row in table["rows"])
