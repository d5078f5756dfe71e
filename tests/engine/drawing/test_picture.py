"""The drawing: well-formed, to scale, its counts on it, nothing that a strict page forbids.

One unit of the drawing is 1 mm and coordinates have one decimal, so a distance is right to 0.1 mm
and the 0.05 mm that sizes are rounded by.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import combinations, pairwise
from pathlib import Path
from types import SimpleNamespace
from typing import Any, NamedTuple, cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.drawing import bands
from engine.drawing.course import Course
from engine.drawing.outline import Outline
from engine.judge.fit import Place
from engine.say import aloud
from engine.say.grammar import GRAMMARS
from engine.sock import plan as planning
from engine.sources import ANKLE_HEIGHT_OVER_FOOT
from tests.asking import answer, asked, fit, mm
from tests.asking import drawn as joined

SVG = "{http://www.w3.org/2000/svg}"
ROUNDED = 0.16
PX = 16  # a rem
ALLOWED = {
    "svg": {"class", "role", "viewBox", "overflow"},
    "title": set(),
    "path": {"class", "d"},
    "text": {"class", "x", "y", "dy", "font-size", "text-anchor", "transform"},
}
PARTS = ("cuff", "leg", "heel", "foot", "toe")
CLASSES = {f"part-{name}" for name in PARTS} | {
    *("sock", "part", "dashes", "fold", "wale", "hatch", "count", "name", "measure"),
    *("measure-line", "stretch", "worn", "outside", "on-cloth"),
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
    "a flap": {"sock.heel.kind": "flap"},
    "two at first": {"sock.heel.kind": "two at first", "sock.toe.kind": "two at first"},
    "no heel": {"sock.heel.kind": "none"},
    "gathered": {"sock.toe.kind": "gathered"},
    "left open": {"sock.toe.kind": "left open"},
    "a rib that changes": {
        "sock.cuff": {
            "kind": "set-up rib",
            "rounds": "40",
            "every": "2",
            "change_after": "20",
            "change_every": "4",
        }
    },
    "a ribbed leg": {"sock.cuff.kind": "rib", "sock.leg.kind": "ribbed"},
    "a ribbed instep": {"sock.cuff.kind": "rib", "sock.leg.kind": "ribbed instep"},
    "a footie": {"sock.leg.kind": "footie"},
    "rounds before the toe": {"sock.toe.plain": "5"},
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
    return ET.fromstring(joined(page["picture"])), page["plan"]  # noqa: S314 - the engine's own text


def points(d: str) -> list[tuple[float, float]]:
    """The corners of a path of absolute M, L, H, V, Q and Z, and of l."""
    found, x, y = list[tuple[float, float]](), 0.0, 0.0
    for letter, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", d):
        numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", rest)]
        if letter == "H":
            x = numbers[0]
            found.append((x, y))
        elif letter == "V":
            y = numbers[0]
            found.append((x, y))
        elif letter == "l":
            for across, down in zip(numbers[::2], numbers[1::2], strict=True):
                x, y = x + across, y + down
                found.append((x, y))
        elif letter != "Z":
            assert letter in "MLQ", f"{letter} is not drawn with"
            step = 4 if letter == "Q" else 2
            found += list(zip(numbers[step - 2 :: step], numbers[step - 1 :: step], strict=True))
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
    """The sole lies on y = 0 and the heel's back on x = 0; sizes are those of the answer."""
    svg, sheet = drawn(name)
    sock = planning.make(asked(SOCKS[name]))
    rounds = sheet["fabric"]["rounds"]["value"]
    counts = sheet["counts"]
    (left, top), (right, _), *_ = points(part(svg, "cuff"))
    cuff = sock.cuff.size(sock.cylinder, sock.placed[sock.sections.index(sock.cuff)].cloth)
    assert right - left == pytest.approx(cuff.girth / 2, abs=ROUNDED)
    assert -top == pytest.approx(mm(sheet, "top_above_floor"), abs=ROUNDED)
    fold = points(part(svg, "leg"))[0][1]
    assert fold - top == pytest.approx(mm(sheet, "cuff_depth"), abs=ROUNDED)
    if counts.get("heel", {}).get("rows"):
        heel = points(part(svg, "heel"))
        assert -heel[0][1] == pytest.approx(mm(sheet, "heel_height"), abs=ROUNDED)
    whole = box(*(part(svg, which) for which in ("foot", "toe")))
    assert whole.right == pytest.approx(mm(sheet, "foot_length"), abs=1.5)
    assert whole.bottom == pytest.approx(0, abs=ROUNDED)
    if "rows" in counts["toe"]:
        sole = [x for x, y in points(part(svg, "foot")) if y == 0]
        plain = sock.foot_rounds + sock.rounds_before_toe
        assert max(sole) - min(sole) == pytest.approx(plain / rounds, abs=ROUNDED)
        narrow = (counts["toe"]["rows"] - counts["toe"]["rows_each_way"]) / rounds
        assert whole.right - max(sole) == pytest.approx(narrow, abs=ROUNDED)


def near(one: Course, other: Course) -> bool:
    return all(abs(a - b) < 0.01 for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("name", SOCKS)
def test_parts_join_without_a_gap(name: str) -> None:
    """The last course of each is the first of the next; a heel's ends halves of its neighbours'."""
    laid = [
        one
        for one in Outline(planning.make(asked(SOCKS[name]))).laid
        if one.part not in ("waste", "finish")
    ]
    for one, then in pairwise(laid):
        last, first = one.course(1.0), then.course(0.0)
        pocket = {"heel", "toe"} & {one.part, then.part}
        if not pocket or one.section is then.section:
            assert near(last, first), (one.part, then.part)
        elif then.part == "heel":
            assert near(last.halves()[0], first)
        elif one.part == "heel":
            assert near(last, first.halves()[0])
        elif then.section.courses().turn:
            assert abs(last.start - first.start) < 0.01
            assert abs(last.end - laid[-1].course(1.0).start) < 0.01
        else:
            assert abs(last.start - first.start) < 0.01
            assert abs(last.end - first.end) < 0.01


@pytest.mark.parametrize("name", SOCKS)
def test_rows_of_a_pocket_end_on_its_seam(name: str) -> None:
    """Each as far in as it is wide: narrower ones end nearer the point, and both halves meet."""
    laid = Outline(planning.make(asked(SOCKS[name]))).laid
    for narrow, widen in pairwise(laid):
        if narrow.section is not widen.section:
            continue
        rows = len(narrow.widths)
        long = [abs(narrow.course(row / rows).end - widen.course(0.0).end) for row in range(rows)]
        assert long == sorted(long, reverse=True)
        flap = sum(width == 1 for width in narrow.widths) - 1
        assert flap == getattr(narrow.section, "flap", 0)
        assert near(narrow.course(1.0), widen.course(0.0))


@pytest.mark.parametrize("name", SOCKS)
def test_its_counts_are_on_it(name: str) -> None:
    """A number on the drawing is that of the list, part by part, and every part is named."""
    svg, sheet = drawn(name)
    counts = {part_of["part"]: part_of["count"] for part_of in sheet["parts"]}
    others = [one for one in PARTS[1:] if counts.get(one)]
    expected = [f"cuff {counts['cuff']}", *(str(counts[one]) for one in others)]
    assert texts(svg, "count") == expected
    assert texts(svg, "name") == others
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
    whole = box(*(one.get("d", "") for one in svg.iter(f"{SVG}path")))
    assert left <= whole.left < whole.right <= left + width
    assert top <= whole.top < whole.bottom <= top + height
    for text in svg.iter(f"{SVG}text"):
        if text.get("x"):
            assert left < float(text.get("x", "")) < left + width
            assert top < float(text.get("y", "")) < top + height


@pytest.mark.parametrize("name", SOCKS)
def test_it_is_told_in_words_too(name: str) -> None:
    """For people who hear the page instead of seeing it."""
    svg, sheet = drawn(name)
    assert svg.get("role") == "img"
    title = svg.findtext(f"{SVG}title") or ""
    for part_of in sheet["parts"]:
        named = {"before_toe": "before the toe"}.get(part_of["part"], part_of["part"])
        assert re.search(rf"\b{named}\b.*?\b{part_of['count']}\b", title)


def test_cuffs_are_told_apart_by_strokes() -> None:
    """A hem by its fold, a rib by its wales, a mock rib by its ladders, a picot by its points."""
    names = ("a woman's", "on 54, mock rib", "ribbed", "picot", "mock rib hung")
    svgs = [drawn(name)[0] for name in names]
    folds = [sum(d.count("M") for d in paths(svg, "fold")) for svg in svgs]
    wales = [sum(d.count("M") for d in paths(svg, "wale")) for svg in svgs]
    hem, mock, rib, picot, hung = zip(folds, wales, strict=True)
    assert hem == (1, 0)
    assert mock[0] > 5
    assert mock[1] == 0
    assert rib[0] == 0
    assert rib[1] > 1.5 * mock[0]
    assert picot[0] == 1
    assert picot[1] > 10
    assert hung[0] > 6
    assert hung[1] == 0


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
    """Every worn place has its band and its percent, and nothing else has.

    Who cannot see it hears the verdict too; one that is not sure has a question mark.
    """
    places = worn(sheet)
    bands = [
        one.get("class") for one in svg.iter(f"{SVG}path") if "stretch" in one.get("class", "")
    ]
    assert bands == [f"stretch stretch-{density(place)}" for place in places]
    words = [text.replace("\u00a0", " ") for text in texts(svg, "worn")]
    assert len(words) == len(places)
    told = (svg.findtext(f"{SVG}title") or "").partition("Stretch when worn: ")[2]
    said = list[str]()
    for place in places:
        verdict = place["verdict"] + "?" * (place["sure"] != "plain")
        (label,) = filter(
            None, (re.fullmatch(rf"{place['place']} (\+?)(\d+) %( wider)?", one) for one in words)
        )
        plus, percent, wider = label.groups()
        assert bool(plus) != bool(wider)
        stretch = place["stretch"]  # to 0.001, and the percent is whole
        exact = 100 * (stretch - 1 if plus else 1 / stretch - 1)
        assert abs(int(percent) - exact) < 0.8, (label, exact)
        said.append(f"{label[0]} {verdict}")
    assert told == (f"{GRAMMARS['en'].listed(said)}." if said else "")


@pytest.mark.parametrize("name", SOCKS)
def test_every_worn_place_has_its_band_and_words(name: str) -> None:
    """The same places, levels and verdicts as the fit beside it; the percent from its girths."""
    check_bands(*drawn(name))


def words_of(svg: ET.Element, larger: float, letter: float) -> list[tuple[str, Box]]:
    """All words but those that stand upright, of a page whose text is so much `larger`."""
    boxes = list[tuple[str, Box]]()
    for one in svg.iter(f"{SVG}text"):
        if not one.get("x"):
            continue
        x, y = (float(one.get(name, "")) for name in ("x", "y"))
        rem, most = map(float, re.findall(r"([\d.]+)(?:rem|px)", one.get("font-size", "")))
        size = min(PX * rem * larger, most)
        y += size * float(one.get("dy", "0em").removesuffix("em"))
        wide = letter * size * len(str(one.text))
        left = x - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[one.get("text-anchor", "")]
        boxes.append((str(one.text), Box(left, y - 0.75 * size, left + wide, y)))
    return boxes


def apart(boxes: list[tuple[str, Box]]) -> None:
    for (text, found), (other_text, other) in combinations(boxes, 2):
        across = min(found.right, other.right) - max(found.left, other.left)
        down = min(found.bottom, other.bottom) - max(found.top, other.top)
        assert across <= 0 or down <= 0, (text, other_text)


@pytest.mark.parametrize("name", SOCKS)
def test_no_words_lie_on_each_other(name: str) -> None:
    """With letters 0.6 of their size wide, as in the wider plain faces."""
    svg, _ = drawn(name)
    boxes = words_of(svg, 1, 0.6)
    at, top, width, height = map(float, svg.get("viewBox", "").split())
    for text, found in boxes:
        assert found.left >= at, text
        assert found.right <= at + width, text
        assert top <= found.bottom <= top + height, text
    apart(boxes)


@pytest.mark.parametrize("name", ["a woman's", "in centimetres", "picot", "a flap", "two at first"])
def test_words_grow_with_text_and_stay_apart(name: str) -> None:
    """Text twice as large (WCAG 2.2, 1.4.4), letters 0.55 of their size wide."""
    svg, _ = drawn(name)
    usual, larger = (words_of(svg, times, 0.55) for times in (1, 2))
    for (_, small), (_, large) in zip(usual, larger, strict=True):
        assert large.bottom - large.top > 1.6 * (small.bottom - small.top)
    apart(larger)


@pytest.mark.parametrize("name", SOCKS)
def test_bands_keep_clear_of_the_counts(name: str) -> None:
    """A band across the leg leaves the leg's count and name to be read."""
    svg, sheet = drawn(name)
    if sheet["counts"]["leg"]["rounds"] < 40:  # too short for both: the count wins
        return
    fold = max(y for x, y in points(part(svg, "cuff")))
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
        check_bands(ET.fromstring(joined(page["picture"])), page["plan"])  # noqa: S314 - ours


def test_levels_and_bands_go_one_to_one() -> None:
    """A ball ever wider goes through all five, each with verdicts of its own, and in order."""
    seen = list[str]()
    verdicts = dict[str, str]()
    for girth in range(170, 300, 5):
        page = answer({"do": "page", "request": asked({"foot.ball_girth": f"{girth} mm"})})
        svg = ET.fromstring(joined(page["picture"]))  # noqa: S314 - the engine's own text
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


@pytest.mark.parametrize(
    ("stretch", "said"),
    [
        (0.9, "ball 11 % wider"),
        (0.998, "ball: no stretch"),
        (1.0, "ball: no stretch"),
        (1.2, "ball +20 %"),
    ],
)
def test_a_sock_as_wide_as_the_foot_is_no_stretch_of_nothing(stretch: float, said: str) -> None:
    """Beside "a little loose" stood "+0 %"."""
    place = cast("Place", SimpleNamespace(place="ball", stretch=stretch))
    assert aloud.text(bands.percent(place)).replace("\u00a0", " ") == said
