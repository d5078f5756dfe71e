"""What she hands over and works by on paper, on A4 and on Letter: tags, orders, the table."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.asking import answer
from tests.browser.axe import violations
from tests.browser.book import PUT, back_to_book, card, copies, new_wearer, open_book, with_wearers
from tests.browser.on_paper import (
    PAPER,
    UNPRINTED,
    NewPhone,
    ink,
    nothing_cut_off,
    picture,
    printed,
    text_of,
    to_a_file,
)
from tests.browser.test_looks import WIDTHS, sideways, too_small
from tests.browser.walk import choose, field, figures, fill_foot, more, more_of, opened, share, step
from tests.published.code_reader import found, read

CUT_OUT = (8 + 110, 6 + 85)  # mm: right and lower edge of the tag
MARKUP = "<img src=x onerror=alert(1)> & “Ünïcødé”"


def order(at: int, **more: str) -> dict[str, object]:
    """An invented wearer; the earlier the number, the sooner the day."""
    day = f"20{10 + at // 12:02d}-{1 + at % 12:02d}-03"
    return {"id": f"w{at}", "label": f"Invented {at:02d}.", "due": day, "made": at, **more}


# Enough for three sheets; number 39 is handed over.
ORDERS = [
    order(0, label="Bird " * 59 + "ends", state="sock one", price="24", length="over the calf"),
    order(1, label=MARKUP, state="planned", allergy="wool, " + MARKUP, ease="loose"),
    *(order(at, state="washed", colours=f"colour {at}", price=f"{at} paid") for at in range(2, 39)),
    order(39, state="handed over"),
    order(40, due="", state="to measure"),
]
VISITS = [
    {"wearer": f"w{at}", "number": 1, "at": 1, "values": {"units": "cm", "foot.length": f"2{at}"}}
    for at in range(10)
]


def printing(page: Page, button: str) -> None:
    """Tap a button that sends something to the printer."""
    page.keyboard.press("Shift")  # what was printed before is over
    asked = page.evaluate("window.asked ?? 0")
    page.locator(button).tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    assert page.evaluate("window.asked") == asked + 1


def tag_field(page: Page, name: str, text: str) -> None:
    page.locator(f"#tag-{name}").fill(text)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_tag_from_the_wearers_page(new_phone: NewPhone, screens: Path, scheme: str) -> None:
    page = opened(to_a_file(new_phone(color_scheme=scheme)))
    open_book(page)
    new_wearer(page, "Invented Ada 7")
    fill_foot(page)
    step(page, "measure")
    more(page, "#shoe > summary")
    field(page, "person.shoe_size.size").fill("38")
    step(page, "counts")
    rounds = figures(page)["Foot"]
    back_to_book(page)
    card(page, "Invented Ada 7")
    expect(page.locator(".kept-plan")).to_contain_text("Counts as planned")
    page.locator(".states label", has_text="washed").tap()
    expect(page.locator(".kept-plan")).to_contain_text("Counts as knitted")
    page.locator("#open-sheet").tap()
    field(page, "foot.length").fill("27")  # for the next pair; the tag is this one's
    back_to_book(page)
    card(page, "Invented Ada 7")
    page.locator("#wearer-tag").tap()
    expect(page.locator("#tag-label")).to_have_value("Invented Ada 7")
    tag_field(page, "fibre", "75 % wool, 25 % polyamide")
    tag_field(page, "title", "Socks of the invented mill")
    tag_field(page, "date", "2026-11-28")
    page.locator(".tag-care > summary").tap()
    choose(page, "machine, wool program")
    for paper in PAPER:
        printing(page, "#print-tag")
        made = printed(page, paper, screens / f"tag-{paper}-{scheme}.pdf")
        assert nothing_cut_off(made, paper) == 1
        (words,) = text_of(made)
        words = " ".join(words.split())
        for said in (
            "Socks of the invented mill",
            "for Invented Ada 7",
            "Fits a foot of",
            "EU 38",
            "75 % wool, 25 % polyamide",
            "November 28, 2026",
            "on its wool program",
            "Dry flat",
            "Wash before the first wear.",
            "ask a clinician",
        ):
            assert said in words
        for other in ("Heelwise", "http", "23.8", "Close", "Print"):
            assert other not in words, "nothing else is on the paper"
        seen = picture(made)
        assert ink(seen)[2:] == pytest.approx(CUT_OUT, abs=0.6), "the line to cut on"
        address = read(seen)
        page_address, _, link = address.partition("#")
        assert page_address == page.url.partition("#")[0]
        request = answer({"do": "open", "link": link})["request"]
        assert not {"foot", "person"} & set(request)
        assert str(answer({"do": "plan", "request": request})["counts"]["foot"]["rounds"]) == rounds


def test_a_tag_from_the_counts_and_what_is_remembered_for_the_next(new_phone: NewPhone) -> None:
    page = opened(to_a_file(new_phone()))
    fill_foot(page)
    step(page, "counts")
    figures(page)
    share(page, "#write-tag")
    expect(page.locator("#tag-label")).to_have_value("")
    tag_field(page, "title", MARKUP)
    tag_field(page, "fibre", "cotton")
    tag_field(page, "more", "x" * 120)
    tag_field(page, "date", "")
    page.locator(".tag-care > summary").tap()
    choose(page, "on a line")
    printing(page, "#print-tag")
    (words,) = text_of(printed(page, "A4"))
    assert MARKUP in " ".join(words.split())
    assert "Finished" not in words
    assert "for " not in words.partition("Fits")[0].removeprefix(MARKUP)
    page.locator("#close-tag").tap()

    page.reload()
    step(page, "counts")
    figures(page)
    share(page, "#write-tag")
    expect(page.locator("#tag-title")).to_have_value(MARKUP)
    expect(page.locator("#tag-more")).to_have_value("x" * 120)
    expect(page.get_by_label("on a line")).to_be_checked()
    expect(page.locator("#tag-fibre")).to_have_value("")  # offered, not filled in
    page.locator("#tag-sheet .chosen", has_text="cotton").tap()
    expect(page.locator("#tag-fibre")).to_have_value("cotton")
    tag_field(page, "label", MARKUP + "w" * 260)
    tag_field(page, "fibre", "merino wool " * 25)  # never shortened: it may harm
    printing(page, "#print-tag")
    for paper in PAPER:
        made = printed(page, paper)
        assert nothing_cut_off(made, paper) == 1
        assert text_of(made)[0].count("merino") == 25
        assert ink(picture(made))[2] == pytest.approx(CUT_OUT[0], abs=0.6)
        assert read(picture(made))
    assert page.locator("#paper img").count() == 0
    page.go_back()
    expect(page.locator("#tag-sheet")).to_be_hidden()


def test_several_tags_on_one_sheet(new_phone: NewPhone, screens: Path) -> None:
    page = opened(to_a_file(new_phone()))
    fill_foot(page)
    step(page, "counts")
    figures(page)
    for at in range(3):
        share(page, "#write-tag")
        tag_field(page, "label", f"Invented {at}")
        if at < 2:
            later = page.locator("#keep-tag")
            expect(later).to_have_accessible_description(re.compile("it waits on this phone"))
            later.tap()
            waiting = re.compile("(One tag waits|2 tags wait) to be printed")
            expect(page.locator("#tag-sheet")).to_contain_text(waiting)
            page.get_by_role("button", name="Close").tap()
            page.reload()
            figures(page)
    expect(page.locator("#tag-sheet .line")).to_contain_text("2 tags wait")
    printing(page, "#print-tag")
    for paper in PAPER:
        made = printed(page, paper, screens / f"tags-{paper}.pdf")
        assert nothing_cut_off(made, paper) == 1
        assert ink(picture(made))[3] == pytest.approx(3 * (6 + 85), abs=0.6), "as high as it should"
        labels = re.findall(r"for Invented (\d)", text_of(made)[0])
        assert labels == ["0", "1", "2"]
        assert len({code.text for code in found(picture(made))}) == 1, "the same pair"
        assert len(found(picture(made))) == 3
    page.locator("#keep-tag").tap()  # once more, for a sheet to come; the others are done
    printing(page, "#print-waiting")
    (words,) = text_of(printed(page, "A4"))
    assert re.findall(r"for Invented (\d)", words) == ["2"], "that one, and no blank one besides"
    page.locator("#close-tag").tap()
    share(page, "#write-tag")
    expect(page.locator("#tag-sheet .line")).to_have_count(0)  # printed, it waits no longer
    page.locator("#keep-tag").tap()
    page.locator("#close-tag").tap()
    share(page, "#write-tag")
    expect(page.locator("#tag-sheet .line")).to_contain_text("One tag waits")
    more_of(page.locator("#tag-sheet .line"))
    page.locator("#drop-tags").tap()
    expect(page.locator("#tag-sheet .line")).to_have_count(0)


@pytest.mark.parametrize(("width", "scheme"), [("narrow", "dark"), ("desk", "light")])
def test_how_the_tag_is_asked_for(
    new_phone: NewPhone, screens: Path, width: str, scheme: str
) -> None:
    across, down = WIDTHS[width]
    phone = new_phone(
        viewport={"width": across, "height": down}, color_scheme=scheme, reduced_motion="reduce"
    )
    yarn = {"shelf.yarns.0.yarn": "Nm 4", "shelf.yarns.0.fibre": "alpaca " + "w" * 60}
    phone.add_init_script(f"localStorage['heelwise.shelf'] = {json.dumps(json.dumps(yarn))}")
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    share(page, "#write-tag")
    page.locator("#tag-sheet .chosen", has_text="alpaca").tap()
    expect(page.locator("#tag-fibre")).to_have_value(yarn["shelf.yarns.0.fibre"])
    page.screenshot(path=screens / f"tag-sheet-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []


def test_a_pair_without_counts_has_a_tag_too(new_phone: NewPhone) -> None:
    page = opened(to_a_file(new_phone()))
    open_book(page)
    new_wearer(page, "Invented Bo")
    back_to_book(page)
    card(page, "Invented Bo")
    page.locator("#wearer-tag").tap()
    expect(page.locator("#tag-sheet .note")).to_contain_text("This pair has no counts yet")
    printing(page, "#print-tag")
    made = printed(page, "A4")
    (words,) = text_of(made)
    assert "for Invented Bo" in words
    assert "Fiber" in words, "with a line to write on"
    assert "Fits" not in words
    assert "Scan" not in words
    assert not found(picture(made))
    assert ink(picture(made))[0] >= UNPRINTED


def test_the_orders_to_work_by(new_phone: NewPhone, screens: Path) -> None:
    page = with_wearers(to_a_file(new_phone(color_scheme="dark")), ORDERS)
    page.evaluate(PUT, {"visits": VISITS})
    copies(page)
    for paper in PAPER:
        printing(page, "#print-orders")
        made = printed(page, paper, screens / f"orders-{paper}.pdf")
        sheets = nothing_cut_off(made, paper)
        pages = [" ".join(words.split()) for words in text_of(made)]
        assert sheets == len(pages) > 1
        for number, words in enumerate(pages, 1):
            assert words.startswith(f"{number} of {sheets} Open orders, "), "numbered, and headed"
            assert "Promised for How far Price" in words, "the head again"
        whole = " ".join(pages)
        assert f"{'Bird ' * 59}ends over the calf late: January 3, 2010 sock one 24" in whole
        assert f"{MARKUP} loose Allergy: wool, {MARKUP}" in whole
        for at in range(2, 39):
            (sheet,) = (words for words in pages if f"Invented {at:02d}." in words)
            row = sheet.partition(f"Invented {at:02d}.")[2]
            assert row.startswith(f" colour {at} late: "), "a row on one sheet"
            assert row.partition(" paid")[0].endswith(f" washed {at}")
        numbers = [int(found) for found in re.findall(r"Invented (\d\d)\.", whole)]
        assert numbers == [*range(2, 39), 40], "in the order of their days"
        assert "Foot length" not in whole
    expect(page.locator("#paper tbody tr")).to_have_count(40)
    expect(page.locator("#paper .orders-box")).to_have_count(40)
    page.emulate_media(media="print")
    edge = "e => getComputedStyle(e).borderTopWidth + getComputedStyle(e).fontWeight"
    assert page.locator(".orders-allergy").evaluate(edge) == "2px700"
    page.emulate_media(media="null")

    choose(page, "with them")
    choose(page, "all")
    printing(page, "#print-orders")
    whole = " ".join("".join(text_of(printed(page, "A4"))).split())
    assert "Foot length 27 cm" in whole
    assert "handed over" in whole
    assert "All orders, " in whole
    assert page.locator("#paper img").count() == 0


@pytest.mark.parametrize("paper", PAPER)
def test_the_widest_table_over_sizes(new_phone: NewPhone, screens: Path, paper: str) -> None:
    """Twelve columns of counts and sixty rows are the most the engine makes."""
    page = opened(to_a_file(new_phone(color_scheme="dark")))
    fill_foot(page)
    step(page, "counts")
    page.locator("#chart > summary").tap()
    for name, text in {
        "first": "10 cm", "last": "33.6", "step": "0.4",
        "loosest": "30", "firmest": "43.75", "between": "1.25",
    }.items():  # fmt: skip
        field(page, f"chart.{name}").fill(text)
    rows = page.locator("table.chart tbody tr:not(.own)")
    expect(rows).to_have_count(60)
    expect(rows.first.locator("td")).to_have_count(12)
    on_screen = [" ".join(row.inner_text().split()) for row in rows.all()]
    page.locator("#print-table").tap()
    made = printed(page, paper, screens / f"widest-table-{paper}.pdf")
    sheets = nothing_cut_off(made, paper, margin=10)
    pages = [" ".join(words.split()) for words in text_of(made)]
    assert sheets == len(pages)
    whole = " ".join(pages)
    assert "Foot rounds on 60 slots" in pages[0]
    for row in on_screen:
        assert row in whole
    for words in pages:
        if re.search(r"\d cm", words):
            assert "43.8" in words, "the head of every column on every sheet"
    assert "A dash means that heel and toe alone are longer" in whole
    for other in ("Heelwise", "Save as CSV", "Print", "Loosest"):
        assert other not in whole
    assert picture(made)[: 5 * 8].min() == 255, "white paper"


def test_the_tag_shows_the_sock_that_is_planned(new_phone: NewPhone) -> None:
    """The same drawing as above the form, in the preview and on paper."""
    page = opened(to_a_file(new_phone()))
    fill_foot(page)
    outline = page.locator("#so-far .part-foot").get_attribute("d")
    assert outline
    step(page, "counts")
    share(page)
    page.get_by_role("button", name="Write the tag").tap()
    sheet = page.get_by_role("dialog", name="The tag for a pair")
    expect(sheet.locator(".part-foot")).to_have_attribute("d", outline)
    sheet.get_by_role("button", name="Print the tag").tap()
    expect(page.locator("#paper .part-foot")).to_have_attribute("d", outline)
