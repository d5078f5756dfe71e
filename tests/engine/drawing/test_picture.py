"""The drawing: well-formed, to scale, its counts on it, nothing that a strict page forbids.

One unit of the drawing is 1 mm and coordinates have one decimal, so a distance is right to 0.1 mm
and the 0.05 mm that sizes are rounded by.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.api import answer
from engine.sources import ANKLE_HEIGHT_OVER_FOOT
from tests.asking import asked, fit, mm

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
    *("sock", "part", "seam", "fold", "hatch", "count", "name", "measure", "measure-line"),
    *("stretch", "lead", "worn", "outside"),
}
# From the emptiest band to the fullest: the ladder of levels, what is bad parted by its side.
DENSITIES = ("baggy", "loose", "good", "tight", "cuts")
CLASSES |= {f"stretch-{density}" for density in DENSITIES}
SOCKS: dict[str, dict[str, Any]] = {
    "a woman's": {},
    "in centimetres": {"units": "cm"},
    "a man's on 72": {"cylinder.slots": 72, "foot.length": "290 mm", "sock.leg.rounds": 90},
    "on 54, mock rib": {"cylinder.slots": 54, "sock.cuff.kind": "mock rib"},
    "picot": {"sock.cuff.kind": "picot hem"},
    "mock rib hung": {"sock.cuff.kind": "mock rib hem"},
    "ribbed": {"sock.cuff.kind": "rib", "sock.cuff.rounds": 40},
    "hardly a leg": {"sock.leg.rounds": 0},
    "hardly a foot": {"foot.length": "125 mm", "sock.leg.rounds": 20, "sock.toe.left": 12},
    "deep heel": {"sock.heel.left": 4, "sock.heel.needles": 36},
    "knee high": {"sock.leg.rounds": 200},
    "a child's": {
        "cylinder.slots": 48,
        "foot": {"length": "165 mm", "ball_girth": "166 mm", "ankle_girth": "165 mm"},
        "person": {"age": "6"},
    },
    "up to a height": {"sock.leg": {"height": "330 mm"}},
    "a cuff of its own widths": {
        "sock.leg.rounds": 90,
        "sock.cuff": {"kind": "rib", "rounds": 30, "flat_width": "80 mm"},
    },
    "a calf too wide": {"foot.calf_girth": "430 mm", "sock.leg.rounds": 130},
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
    return [str(one.text) for one in svg.iter(f"{SVG}text") if kind in one.get("class", "").split()]


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
    picot, hung = (drawn(name)[0] for name in ("picot", "mock rib hung"))
    assert [paths(svg, "hatch") == [] for svg in (picot, hung)] == [True, False]
    assert [len(paths(svg, "fold")) for svg in (picot, hung)] == [2, 1]


def density(place: dict[str, Any]) -> str:
    """The band a place should have, by its level and, where that is bad, by its side."""
    if place["level"] != "bad":
        return str(place["level"])
    return "baggy" if place["stretch"] < 1 else "cuts"


def worn(sheet: dict[str, Any]) -> list[dict[str, Any]]:
    """The places of the fit where the sock is worn, from the top down."""
    ankle = ANKLE_HEIGHT_OVER_FOOT * sheet["measures"]["length"]["value"]
    below = mm(sheet, "top_above_floor") - mm(sheet, "cuff_depth") < ankle
    left_out = {"over_heel"} | ({"ankle"} if below else set())
    found = {
        place["place"]: place
        for place in sheet["fit"]
        if place["place"] not in left_out and place["level"] != "apart"
    }
    return [found[name] for name in ("cuff", "calf", "ankle", "heel", "ball") if name in found]


def check_bands(svg: ET.Element, sheet: dict[str, Any]) -> None:
    """Every worn place has its band, its percent and its verdict, and nothing else has.

    A verdict that is not sure has a question mark.
    """
    places = worn(sheet)
    bands = [
        one.get("class") for one in svg.iter(f"{SVG}path") if "stretch" in one.get("class", "")
    ]
    assert bands == [f"stretch stretch-{density(place)}" for place in places]
    words = " ".join(texts(svg, "worn")).replace("\u00a0", " ")
    told = (svg.findtext(f"{SVG}title") or "").partition("Stretch when worn: ")[2]
    said = list[str]()
    for place in places:
        verdict = place["verdict"] + "?" * (place["sure"] != "plain")
        pattern = rf"\b{place['place']} (\+?)(\d+) %( wider)? {re.escape(verdict)}(?= |$)"
        label = re.search(pattern, words)
        assert label, (pattern, words)
        plus, percent, wider = label.groups()
        assert bool(plus) != bool(wider)
        stretch = place["stretch"]  # to 0.001, and the percent is whole
        exact = 100 * (stretch - 1 if plus else 1 / stretch - 1)
        assert abs(int(percent) - exact) < 0.8, (label, exact)
        said.append(re.escape(label[0]))
    assert re.fullmatch(", ".join(said) + r"\.", told)


@pytest.mark.parametrize("name", SOCKS)
def test_every_worn_place_has_its_band_and_words(name: str) -> None:
    """The same places, levels and verdicts as the fit beside it; the percent from its girths."""
    check_bands(*drawn(name))


@pytest.mark.parametrize("name", SOCKS)
def test_no_words_lie_on_each_other(name: str) -> None:
    """With letters 0.6 of their size wide, as in the wider plain faces."""
    svg, _ = drawn(name)
    boxes = list[tuple[str, Box]]()
    for one in svg.iter(f"{SVG}text"):
        if not one.get("x"):
            continue
        x, y, size = (float(one.get(name, "")) for name in ("x", "y", "font-size"))
        wide = 0.6 * size * len(str(one.text))
        left = x - wide * {"start": 0.0, "middle": 0.5}[one.get("text-anchor", "")]
        boxes.append((str(one.text), Box(left, y - 0.75 * size, left + wide, y)))
    _, _, width, height = map(float, svg.get("viewBox", "").split())
    for text, found in boxes:
        assert found.left >= 0, text
        assert found.right <= width, text
        assert found.bottom <= height, text
    for (text, found), (other_text, other) in combinations(boxes, 2):
        across = min(found.right, other.right) - max(found.left, other.left)
        down = min(found.bottom, other.bottom) - max(found.top, other.top)
        assert across <= 0 or down <= 0, (text, other_text)


@pytest.mark.parametrize("name", SOCKS)
def test_bands_keep_clear_of_the_counts(name: str) -> None:
    """A band across the leg leaves the leg's count and name to be read."""
    svg, sheet = drawn(name)
    if sheet["counts"]["leg"]["rounds"] < 40:  # too short for both: the count wins
        return
    fold = box(part(svg, "cuff")).bottom
    across = [box(d) for d in paths(svg, "stretch")]
    levels = [band.top for band in across if band.top == band.bottom and band.top > fold]
    (count,) = (
        float(one.get("y", ""))
        for one in svg.iter(f"{SVG}text")
        if one.get("class") == "name" and one.text == "leg"
    )
    big = 0.09 * mm(sheet, "foot_length")
    assert all(not count - 1.5 * big < y < count + 2 for y in levels)


@settings(max_examples=60, deadline=None)
@given(
    ball=st.integers(150, 330),
    heel=st.integers(220, 420),
    ankle=st.integers(150, 320),
    calf=st.integers(250, 480),
    leg=st.integers(0, 180),
)
def test_bands_follow_any_foot(ball: int, heel: int, ankle: int, calf: int, leg: int) -> None:
    girths = {"ball": ball, "heel": heel, "ankle": ankle, "calf": calf}
    changes = {f"foot.{name}_girth": f"{girth} mm" for name, girth in girths.items()}
    page = answer({"do": "page", "request": asked({**changes, "sock.leg.rounds": leg})})
    if "errors" not in page:
        check_bands(ET.fromstring(page["picture"]), page["plan"])  # noqa: S314 - ours


def test_levels_and_bands_go_one_to_one() -> None:
    """A ball ever wider goes through all five, each with verdicts of its own, and in order."""
    seen = list[str]()
    verdicts = dict[str, str]()
    for girth in range(170, 300, 5):
        page = answer({"do": "page", "request": asked({"foot.ball_girth": f"{girth} mm"})})
        svg = ET.fromstring(page["picture"])  # noqa: S314 - the engine's own text
        kind = svg.findall(f"{SVG}path[@class]")
        last = [one.get("class", "") for one in kind if "stretch" in one.get("class", "")][-1]
        ball = fit(page["plan"], "ball")
        seen += [last] if last not in seen else []
        assert verdicts.setdefault(last, ball["verdict"]) == ball["verdict"]
    assert seen == [f"stretch stretch-{density}" for density in DENSITIES]
    assert len(set(verdicts.values())) == len(DENSITIES)


def test_each_band_is_denser_than_the_one_before() -> None:
    """By the dashes in the style sheet: the share of a band that is filled only grows."""
    style = (Path(__file__).parents[3] / "webapp/style/picture.css").read_text()
    filled = list[float]()
    for name in DENSITIES:
        (rule,) = re.findall(rf"\.stretch-{name} {{(.*?)}}", style, re.S)
        dashes = re.search(r"stroke-dasharray: ([\d.]+) ([\d.]+);", rule)
        dash, gap = map(float, dashes.groups()) if dashes else (1.0, 0.0)
        filled.append(dash / (dash + gap))
    assert all(fuller > 1.3 * emptier for emptier, fuller in pairwise(filled[:4]))
    assert filled[3] < 0.85 < filled[4] == 1
