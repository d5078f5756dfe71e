"""What people write, as they write it, read through the door.

Expected values are worked out from 1 in = 25.4 mm, exact by the international yard and pound
agreement of 1959, 1 lb = 0.45359237 kg by the same.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.read import reading, units
from engine.read.errors import Unreadable
from tests.asking import answer, asked, plan, refused

IN = 25.4
NBSP, THIN, NARROW = "\u00a0", "\u2009", "\u202f"


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("9 3/8 in", 9.375 * IN),
        ('9.375"', 9.375 * IN),
        ("23,8 cm", 238),
        ("238mm", 238),
        ('9⅜"', 9.375 * IN),
        ("9⅜ in", 9.375 * IN),
        ("9 ⅜ in", 9.375 * IN),
        ("9⅜", 9.375 * IN),
        ("9-3/8 in", 9.375 * IN),
        ("9 - 3/8 in", 9.375 * IN),
        ("9 3⁄8 in", 9.375 * IN),  # the fraction slash
        ("9 3∕8 in", 9.375 * IN),  # the division slash
        ("9 3 / 8 in", 9.375 * IN),
        ("9,375 in", 9.375 * IN),
        ("9.375 in.", 9.375 * IN),
        ("9.375 Inches", 9.375 * IN),
        ("9 3/8 INCH", 9.375 * IN),
        ("9 3/8”", 9.375 * IN),  # a phone's closing quote
        ("9 3/8“", 9.375 * IN),  # a phone's opening quote
        ("9 3/8″", 9.375 * IN),  # double prime
        ("9 3/8''", 9.375 * IN),
        ("9 3/8’’", 9.375 * IN),
        ("9 3/8′′", 9.375 * IN),
        ('9" 3/8', 9.375 * IN),
        ("9½in", 9.5 * IN),
        ("9.5", 9.5 * IN),
        ("9,5", 9.5 * IN),
        ("0.8 ft", 9.6 * IN),
        (".8 ft", 9.6 * IN),
        ("⅘ ft", 9.6 * IN),
        ("238 mm", 238),
        ("238 millimetres", 238),
        ("23.8cm", 238),
        ("23.8 CM.", 238),
        ("23.8 centimeters", 238),
        ("23.8 cms", 238),
        ("0.238 m", 238),
        ("23 cm 8 mm", 238),
        ("  23.8   cm  ", 238),
        (f"23,8{NBSP}cm", 238),
        (f"23,8{NARROW}cm", 238),
        (f"{THIN}9{THIN}⅜{THIN}in", 9.375 * IN),
        ("２３.８ cm", 238),  # full-width digits of a Japanese keyboard
    ],
)
def test_a_foot(text: str, mm: float) -> None:
    found = plan({"foot.length": text})
    assert found["measures"]["length"]["value"] == pytest.approx(mm, abs=0.051)


@pytest.mark.parametrize("units", ["in", "cm"])
@pytest.mark.parametrize("bare", [9.25, "9.25", "9 1/4"])
def test_a_number_alone_is_in_the_units_of_the_page(units: str, bare: float | str) -> None:
    if units == "in":
        found = plan({"units": units, "foot.length": bare})
        assert found["measures"]["length"]["value"] == pytest.approx(9.25 * IN, abs=0.051)
    else:
        problem = refused({"units": units, "foot.length": bare})["foot.length"]
        # a baby's foot may be so short in cm
        assert problem["way_out"] == f"Did you mean {bare} in or {bare} cm?"


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("5 ft 6 in", 66 * IN),
        ("5'6\"", 66 * IN),
        ("5'6", 66 * IN),
        ("5’6”", 66 * IN),
        ("5′6″", 66 * IN),
        ("5‘6“", 66 * IN),
        ("5 feet 6 1/2 inches", 66.5 * IN),
        ("5 ft 6½", 66.5 * IN),
        ("1 m 68 cm", 1680),
        ("1,68 m", 1680),
        ("168 cm", 1680),
    ],
)
def test_a_height(text: str, mm: float) -> None:
    assert reading.read_length(text, "in").mm == pytest.approx(mm)
    assert plan({"person.height": text})


@pytest.mark.parametrize(
    ("text", "per_mm"),
    [
        ("7.5 / in", 7.5 / IN),
        ("7.5 st/in", 7.5 / IN),
        ("7 1/2", 7.5 / IN),
        ("7½", 7.5 / IN),
        ("7½ per inch", 7.5 / IN),
        ("7½ sts per inch", 7.5 / IN),
        ("7.5 spi", 7.5 / IN),
        ("9 rpi", 9 / IN),
        ("30 sts = 4 in", 7.5 / IN),
        ("7.5 sts / inch", 7.5 / IN),
        ("7½ stitches per inch", 7.5 / IN),
        ("7,5/in", 7.5 / IN),
        ('7.5 / "', 7.5 / IN),
        ("30 st / 4 in", 7.5 / IN),
        ('30/4"', 7.5 / IN),
        ("7.5", 7.5 / IN),
        ("30 st / 10 cm", 0.3),
        ("34 rounds over 10 cm", 0.34),
        ("34 rds over 10cm", 0.34),
        ("34 rows to 10 cm", 0.34),
        ("34 r. per 10 centimetres", 0.34),
        ("34 in 10 cm", 0.34),
        ("9.6 rows to the inch", 9.6 / IN),
        ("9.6 rounds an inch", 9.6 / IN),
        ("9.6 rounds in an inch", 9.6 / IN),
        ("34 rounds = 10 cm", 0.34),
        (f"34{NBSP}/{NBSP}10{NBSP}cm", 0.34),
        ("3,4 / cm", 0.34),
        ("60 needles / 20 cm", 0.3),
    ],
)
def test_a_count_over_a_length(text: str, per_mm: float) -> None:
    for name in ("stitches", "rounds"):
        found = plan({f"fabric.{name}": text})
        assert found["fabric"][name]["value"] == pytest.approx(per_mm, abs=1e-5)


@pytest.mark.parametrize(
    ("text", "offers"),
    [
        ("71/2", ["7 1/2", "71 / 2 in"]),
        ("30/4", ["30 / 4 in"]),
        ("28/10", ["2 8/10", "28 / 10 in"]),
    ],
)
def test_a_fraction_that_may_be_a_count_over_a_length(text: str, offers: list[str]) -> None:
    request = asked({"units": "in", "fabric.stitches": text})
    (error,) = answer({"do": "page", "request": request})["errors"]
    assert (error["field"], error["offers"]) == ("fabric.stitches", offers)


def test_sock_one_in_inches_is_not_taken_for_centimetres() -> None:
    """8 1/2 was read as 8.5 cm, and sock two got 105 rounds."""
    first = {"first_sock.foot_rounds": "46", "first_sock.flat_width": "4"}
    request = asked({"units": "cm", **first, "first_sock.length": "8 1/2"})
    errors = answer({"do": "page", "request": request})["errors"]
    assert {error["field"]: error["offers"] for error in errors} == {
        "first_sock.length": ["8 1/2 in", "8 1/2 cm"],
        "first_sock.flat_width": ["4 in", "4 cm"],
    }


@pytest.mark.parametrize("text", ['9" 1', '9" 1.5', "5 cm 3"])
def test_behind_inches_only_a_part_of_one_may_stand(text: str) -> None:
    assert reading.read_length('9" 3/8', "in").mm == pytest.approx(9.375 * 25.4)
    with pytest.raises(Unreadable):
        reading.read_length(text, "in")


def test_a_count_alone_may_say_what_is_counted() -> None:
    assert reading.read_rates("30 stitches", "cm")[0] == pytest.approx((0.3, 30))
    assert reading.read_rates("7.5 sts", "in")[0] == pytest.approx((7.5 / 25.4, 7.5))


@pytest.mark.parametrize(
    ("text", "stitches", "rounds"),
    [
        ("28 st x 40 r = 10 cm", 0.28, 0.4),
        ("28 sts × 40 rnds = 10 cm × 10 cm", 0.28, 0.4),
        ("28x40 = 10x10 cm", 0.28, 0.4),
        ("28 sts / 40 rows per 10 cm", 0.28, 0.4),
        ("28 sts, 40 rds over 10cm", 0.28, 0.4),
        ("40 rounds and 28 stitches to 10 cm", 0.28, 0.4),
        ("30 st x 38½ r = 4 in", 7.5 / IN, 38.5 / 4 / IN),
        ("28 x 40", 28 / IN, 40 / IN),
    ],
)
def test_stitches_and_rounds_in_one(text: str, stitches: float, rounds: float) -> None:
    """As a band or a pattern says both; it stands in either field, or in both."""
    found = reading.read_rates(text, "in")
    assert [rate.per_mm for rate in found] == pytest.approx([stitches, rounds])
    if stitches > 0.8:  # finer than any sock: the reader reads, the field refuses
        assert refused({"fabric.stitches": text})["fabric.stitches"]
        return
    for told in ({"stitches": text}, {"rounds": text}, {"stitches": text, "rounds": text}):
        cloth = plan({"fabric": told})["fabric"]
        assert cloth["stitches"]["value"] == pytest.approx(stitches, abs=1e-5)
        assert cloth["rounds"]["value"] == pytest.approx(rounds, abs=1e-5)


@pytest.mark.parametrize(
    ("text", "kg"),
    [
        ("60 kg", 60),
        ("60kg", 60),
        ("60,5 kilos", 60.5),
        ("132 lb", 132 * 0.45359237),
        ("132 lbs.", 132 * 0.45359237),
        ("132 pounds", 132 * 0.45359237),
        ("9 st 6 lb", (9 * 14 + 6) * 0.45359237),
    ],
)
def test_a_weight(text: str, kg: float) -> None:
    assert reading.read_weight(text, "kg") == pytest.approx(kg)
    assert plan({"person.weight": text})


@pytest.mark.parametrize(
    ("text", "share"), [("4 %", 0.04), ("4%", 0.04), ("0,04", 0.04), (0.04, 0.04)]
)
def test_an_ease(text: str | float, share: float) -> None:
    given_so = plan({"sock.length_ease": text})
    assert given_so["counts"] == plan({"sock.length_ease": share})["counts"]
    assert given_so["counts"] == plan()["counts"], "4 % is usual: common practice"


@pytest.mark.parametrize("text", ["60", 60, 60.0, " 60 ", "60 needles", "60 slots"])
def test_a_count(text: object) -> None:
    assert plan({"cylinder.slots": text})["counts"]["needles"] == 60


@pytest.mark.parametrize(
    "text",
    [
        "nothing",
        "9 3/0 in",
        "-24 cm",
        "−24 cm",
        "9 in 24 cm",
        "24 cm 9 in",
        "9 1/2 1/4 in",
        "24.6.1 cm",
        "1.000,5 mm",
        "24 parsecs",
        "24 kg",
        "cm",
        "in 9",
        "9''' ",
        "1e3 mm",
        "0x18 cm",
        "nan",
        "inf in",
        "½½ in",
        "²4 cm",
        "9 3/8 in or so",
        "24 cm" + " " * 60,
        "\u0000",
        "💩",
    ],
)
def test_what_cannot_be_read_is_said_beside_its_field(text: str) -> None:
    problems = refused({"foot.length": text})
    assert set(problems) == {"foot.length"}
    assert problems["foot.length"]["message"]
    assert problems["foot.length"]["way_out"]


READERS: list[Callable[[str], float]] = [
    lambda text: reading.read_length(text, "cm").mm,
    lambda text: reading.read_length(text, "in").mm,
    lambda text: reading.read_rates(text, "cm")[0].per_mm,
    lambda text: reading.read_rates(text, "in")[-1].per_mm,
    reading.read_grams,
    lambda text: reading.read_weight(text, "kg"),
    reading.read_number,
    reading.read_share,
]


def read_or_refused(text: str) -> None:
    """Each reader gives a number, or the one error of readers with both its sentences."""
    for read in READERS:
        try:
            value = read(text)
        except Unreadable as no:
            refusal: Unreadable = no
        else:
            assert 0 <= value < float("inf")
            continue
        assert refusal.message
        assert refusal.way_out


@given(st.text(max_size=70))
def test_any_text_is_read_or_refused(text: str) -> None:
    read_or_refused(text)


_LIKE_PEOPLE = st.lists(
    st.sampled_from(
        [
            *"0123456789",
            " ",
            ".",
            ",",
            "/",
            "-",
            "'",
            '"',
            "″",
            "’",
            "½",
            "⅜",
            "in",
            "cm",
            "mm",
            "ft",
            "m",
            "st",
            "lb",
            "kg",
            "per",
            "over",
            "%",
        ]
    ),
    max_size=12,
).map("".join)


@given(_LIKE_PEOPLE)
def test_scraps_of_what_people_write_are_read_or_refused(text: str) -> None:
    read_or_refused(text)


@given(
    whole=st.integers(0, 99),
    parts=st.sampled_from((2, 3, 4, 5, 6, 8, 16, 32)).flatmap(
        lambda below: st.tuples(st.integers(1, below - 1), st.just(below))
    ),
    mark=st.sampled_from((" in", '"', "″", "''", " inches")),
)
def test_a_fraction_is_the_sum_of_its_parts(whole: int, parts: tuple[int, int], mark: str) -> None:
    above, below = parts
    read = reading.read_length(f"{whole} {above}/{below}{mark}", "cm").mm
    assert read == pytest.approx((whole + above / below) * IN)


@given(st.integers(1, 3600))
def test_what_the_engine_writes_it_reads_the_same(tenths: int) -> None:
    """A text shown is as good as what was typed, to the precision of the tape it is shown in."""
    mm = tenths / 10
    assert reading.read_length(units.centimetres(mm), "in").mm == pytest.approx(mm, abs=0.501)
    assert reading.read_length(units.inches(mm), "cm").mm == pytest.approx(mm, abs=IN / 16 + 1e-9)


@pytest.mark.parametrize(
    ("text", "offers"),
    [
        ("93/8 in", ["9 3/8 in", "11 5/8 in"]),
        ('93/8"', ['9 3/8"', '11 5/8"']),
        ("75/8 in", ["7 5/8 in", "9 3/8 in"]),
        ("913/16 in", ["9 13/16 in"]),  # 91 3/16 and 57 1/16 are no foot
        ("9 15/8 in", ["10 7/8 in"]),
        ("20/2 in", ["10 in"]),
        ("93/8", ["9 3/8", "11 5/8"]),
    ],
)
def test_a_missed_space_is_asked_about(text: str, offers: list[str]) -> None:
    """Eighths on the wrong side: 67 foot rounds for 46. Each offer is taken as it stands."""
    request = asked({"foot.length": text})
    (error,) = answer({"do": "page", "request": request})["errors"]
    assert (error["field"], error["offers"]) == ("foot.length", offers)
    assert error["way_out"] == f"Did you mean {' or '.join(offers)}?"
    for offer in offers:
        assert plan({"foot.length": offer})


def test_a_whole_number_before_it_settles_a_fraction() -> None:
    with pytest.raises(Unreadable) as told:
        reading.read_length("13/16 in", "in")
    assert told.value.offers == ("1 3/16 in", "0 13/16 in")
    assert reading.read_length("0 13/16 in", "in").mm == pytest.approx(13 / 16 * IN)
    assert reading.read_length("3/8 in", "cm").mm == pytest.approx(3 / 8 * IN)


@pytest.mark.parametrize(
    ("field", "text", "offers"),
    [
        ("foot.length", "9 3/4", ["9 3/4 in", "9 3/4 cm"]),
        ("foot.length", "10 1/4", ["10 1/4 in", "10 1/4 cm"]),
        ("foot.length", "10¼", ["10 1/4 in", "10 1/4 cm"]),
        ("foot.length", 11, ["11 in", "11 cm"]),
        ("foot.length", "11", ["11 in", "11 cm"]),
        ("foot.length", "93/8", ["9 3/8 in", "11 5/8 in"]),
        ("other_foot.length", "11", ["11 in", "11 cm"]),
        ("foot.again.ball_girth", "9.5", ["9.5 in", "9.5 cm"]),
        ("foot.heel_girth", "13 1/4", ["13 1/4 in", "13 1/4 cm"]),
        ("foot.calf_girth", "15", ["15 in", "15 cm"]),
        ("person.height", "66", ["66 in", "66 cm"]),
        ("sock.foot_length_of_sock", "9 1/2", ["9 1/2 in", "9 1/2 cm"]),
    ],
)
def test_in_centimetres_a_bare_number_that_must_be_inches_is_asked_about(
    field: str, text: object, offers: list[str]
) -> None:
    request = asked({"units": "cm", field: text})
    (error,) = answer({"do": "page", "request": request})["errors"]
    assert (error["field"], error["offers"]) == (field, offers)
    for offer in offers:
        again = answer({"do": "page", "request": asked({"units": "cm", field: offer})})
        said = [error["message"] for error in again.get("errors", [])]
        assert not [message for message in said if "very small for" in message]


@pytest.mark.parametrize(
    "person", [{"child": True}, {"age": 1}, {"shoe_size": {"system": "EU child", "size": 18}}]
)
def test_a_small_childs_foot_is_believed(person: dict[str, object]) -> None:
    """11 cm is the foot of a child of about a year (Snyder et al. 1977: 143 mm at two, sd 10)."""
    foot = {"foot": {"length": "11"}, "person": person, "units": "cm", "cylinder": {"slots": 36}}
    fabric = {"stitches": "36 / 10 cm", "rounds": "50 / 10 cm"}
    found = answer({"do": "plan", "request": {**foot, "fabric": fabric}})
    assert found["measures"]["length"]["value"] == 110


def test_twelve_centimetres_and_any_unit_are_believed() -> None:
    for text in ("12", "11.99 cm", "110 mm"):
        found = answer({"do": "foot", "request": {"units": "cm", "foot": {"length": text}}})
        assert found["measures"]["length"]["value"] < 121
