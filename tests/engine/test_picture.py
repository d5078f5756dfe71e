"""The drawing: well-formed, to scale, its counts on it, nothing that a strict page forbids.

One unit of the drawing is 1 mm and coordinates have one decimal, so a distance is right to 0.1 mm
and the 0.05 mm that sizes are rounded by.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import pairwise
from typing import Any, NamedTuple

import pytest

from engine.api import answer
from tests.asking import asked, mm

SVG = "{http://www.w3.org/2000/svg}"
ROUNDED = 0.16
ALLOWED = {
    "svg": {"class", "role", "viewBox"},
    "title": set(),
    "path": {"class", "d"},
    "text": {"class", "x", "y", "font-size", "text-anchor", "transform"},
}
PARTS = ("cuff", "leg", "heel", "foot", "toe")
CLASSES = {f"part-{name}" for name in PARTS} | {
    *("sock", "part", "seam", "fold", "hatch", "count", "name", "measure", "measure-line")
}
SOCKS: dict[str, dict[str, Any]] = {
    "a woman's": {},
    "in centimetres": {"units": "cm"},
    "a man's on 72": {"cylinder.slots": 72, "foot.length": "290 mm", "sock.leg.rounds": 90},
    "on 54, mock rib": {"cylinder.slots": 54, "sock.cuff.kind": "mock rib"},
    "ribbed": {"sock.cuff.kind": "rib", "sock.cuff.rounds": 40},
    "hardly a leg": {"sock.leg.rounds": 0},
    "hardly a foot": {"foot.length": "125 mm", "sock.leg.rounds": 20, "sock.toe.left": 12},
    "deep heel": {"sock.heel.left": 4, "sock.heel.needles": 36},
    "knee high": {"sock.leg.rounds": 200},
}


class Box(NamedTuple):
    """What a path spans."""

    left: float
    top: float
    right: float
    bottom: float


def drawn(name: str) -> tuple[ET.Element, dict[str, Any]]:
    """The drawing, parsed, and the plan beside it."""
    page = answer({"do": "page", "request": asked(SOCKS[name])})
    assert "errors" not in page, page
    return ET.fromstring(page["picture"]), page["plan"]  # noqa: S314 - the engine's own text


def points(d: str) -> list[tuple[float, float]]:
    """The corners and handles of a path of absolute M, L, H, V, Q and Z."""
    found, x, y = list[tuple[float, float]](), 0.0, 0.0
    for letter, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", d):
        numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", rest)]
        if letter == "H":
            x = numbers[0]
            found.append((x, y))
        elif letter == "V":
            y = numbers[0]
            found.append((x, y))
        elif letter != "Z":
            assert letter in "MLQ", f"{letter} is not drawn with"
            found += list(zip(numbers[::2], numbers[1::2], strict=True))
            x, y = found[-1]
    return found


def box(*paths: str) -> Box:
    across, down = zip(*(point for d in paths for point in points(d)), strict=True)
    return Box(min(across), min(down), max(across), max(down))


def paths(svg: ET.Element, kind: str) -> list[str]:
    return [
        one.get("d", "") for one in svg.iter(f"{SVG}path") if kind in one.get("class", "").split()
    ]


def part(svg: ET.Element, name: str) -> str:
    (only,) = paths(svg, f"part-{name}")
    return only


def texts(svg: ET.Element, kind: str) -> list[str]:
    return [str(one.text) for one in svg.iter(f"{SVG}text") if one.get("class") == kind]


@pytest.mark.parametrize("name", SOCKS)
def test_only_what_a_strict_page_allows(name: str) -> None:
    """No style, script, link or colour: classes and places only; every class has a known name."""
    svg, _ = drawn(name)
    for element in svg.iter():
        tag = element.tag.removeprefix(SVG)
        assert set(element.attrib) <= ALLOWED[tag]
        assert set(element.get("class", "").split()) <= CLASSES


@pytest.mark.parametrize("name", SOCKS)
def test_to_scale(name: str) -> None:
    svg, sheet = drawn(name)
    cuff, foot, toe = (box(part(svg, which)) for which in ("cuff", "foot", "toe"))
    whole = box(*(part(svg, which) for which in PARTS))
    rounds = sheet["fabric"]["rounds"]["value"]
    counts = sheet["counts"]
    assert cuff.right - cuff.left == pytest.approx(mm(sheet, "tube_girth") / 2, abs=ROUNDED)
    assert cuff.bottom - cuff.top == pytest.approx(mm(sheet, "cuff_depth"), abs=ROUNDED)
    assert whole.right - whole.left == pytest.approx(mm(sheet, "foot_length"), abs=ROUNDED)
    assert whole.bottom - whole.top == pytest.approx(mm(sheet, "top_above_floor"), abs=ROUNDED)
    back = [y for x, y in points(part(svg, "leg")) if x == whole.left]
    assert max(back) - min(back) == pytest.approx(mm(sheet, "leg_length"), abs=ROUNDED)
    back = [y for x, y in points(part(svg, "heel")) if x == whole.left]
    assert max(back) - min(back) == pytest.approx(mm(sheet, "heel_height"), abs=ROUNDED)
    turned = counts["toe"]["rows_each_way"] / rounds
    assert toe.right - toe.left == pytest.approx(turned, abs=ROUNDED)
    sole = [x for x, y in points(part(svg, "foot")) if y == whole.bottom]
    assert max(sole) - min(sole) == pytest.approx(counts["foot"]["rounds"] / rounds, abs=ROUNDED)
    if cuff.right < toe.left:  # else the foot is shorter than the leg is wide
        assert foot.right == toe.left


@pytest.mark.parametrize("name", SOCKS)
def test_parts_join_without_a_gap(name: str) -> None:
    """Each shares at least two corners with the next, so no ground shows between them."""
    svg, _ = drawn(name)
    for one, other in pairwise(PARTS):
        shared = set(points(part(svg, one))) & set(points(part(svg, other)))
        assert len(shared) >= 2, (one, other)


@pytest.mark.parametrize("name", SOCKS)
def test_its_counts_are_on_it(name: str) -> None:
    svg, sheet = drawn(name)
    counts = sheet["counts"]
    expected = [
        f"cuff {counts['cuff']['rounds']}",
        *([str(counts["leg"]["rounds"])] if counts["leg"]["rounds"] else []),
        str(counts["heel"]["rows"]),
        str(counts["foot"]["rounds"]),
        str(counts["toe"]["rows"]),
    ]
    assert texts(svg, "count") == expected
    assert len(texts(svg, "name")) == len(expected) - 1
    sizes = [sheet["sizes"][size]["text"] for size in ("foot_length", "top_above_floor")]
    assert texts(svg, "measure") == sizes


@pytest.mark.parametrize("name", SOCKS)
def test_measure_lines_are_as_long_as_what_they_measure(name: str) -> None:
    svg, sheet = drawn(name)
    along, up = (box(d) for d in paths(svg, "measure-line"))
    assert along.right - along.left == pytest.approx(mm(sheet, "foot_length"), abs=ROUNDED)
    assert up.bottom - up.top == pytest.approx(mm(sheet, "top_above_floor"), abs=ROUNDED)


@pytest.mark.parametrize("name", SOCKS)
def test_all_of_it_lies_in_the_frame(name: str) -> None:
    svg, _ = drawn(name)
    left, top, width, height = map(float, svg.get("viewBox", "").split())
    assert (left, top) == (0, 0)
    whole = box(*(one.get("d", "") for one in svg.iter(f"{SVG}path")))
    assert whole.left >= 0
    assert whole.top >= 0
    assert whole.right <= width
    assert whole.bottom <= height
    for text in svg.iter(f"{SVG}text"):
        if text.get("x"):
            assert 0 < float(text.get("x", "")) < width
            assert 0 < float(text.get("y", "")) < height


@pytest.mark.parametrize("name", SOCKS)
def test_it_is_told_in_words_too(name: str) -> None:
    """For people who hear the page instead of seeing it."""
    svg, sheet = drawn(name)
    assert svg.get("role") == "img"
    title = svg.findtext(f"{SVG}title") or ""
    for part_of in sheet["parts"]:
        assert re.search(rf"\b{part_of['part']}\b.*?\b{part_of['count']}\b", title)


def test_cuffs_are_told_apart_by_strokes() -> None:
    """A hem by its fold, a rib and a mock rib by closer and wider strokes."""
    hem, mock, rib = (drawn(name)[0] for name in ("a woman's", "on 54, mock rib", "ribbed"))
    assert len(paths(hem, "fold")) == 1
    assert paths(hem, "hatch") == paths(rib, "fold") == paths(mock, "fold") == []
    close, wide = (paths(svg, "hatch")[0].count("M") for svg in (rib, mock))
    assert close > wide > 1
