"""On paper as small as A6, and by the browser's own Print, nothing is lost either."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.asking import answer
from tests.browser.book import with_wearers
from tests.browser.on_paper import NewPhone, nothing_cut_off, picture, printed, text_of, to_a_file
from tests.browser.walk import choose, field, figures, fill_foot, opened, panel, share, step
from tests.published.code_reader import read


def words_of(made: bytes) -> str:
    """All words of all pages, one space between them."""
    return " ".join(" ".join(text_of(made)).split())


def planned(phone: NewPhone) -> Page:
    """The counts of a measured foot, with a printer that only counts."""
    page = opened(to_a_file(phone()))
    fill_foot(page)
    step(page, "counts")
    figures(page)
    return page


def test_a_tag_on_a6(new_phone: NewPhone, screens: Path) -> None:
    page = planned(new_phone)
    share(page, "#write-tag")
    page.locator("#tag-label").fill("Invented Ada")
    page.locator("#print-tag").tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    made = printed(page, "A6", screens / "tag-A6.pdf")
    assert nothing_cut_off(made, "A6") == 1
    assert "for Invented Ada" in words_of(made)
    link = read(picture(made)).partition("#")[2]
    assert "request" in answer({"do": "open", "link": link})


def test_orders_on_a6(new_phone: NewPhone, screens: Path) -> None:
    """Names were printed one letter a line."""
    names = [f"Invented person {at:02d}" for at in range(12)]
    wearers: list[dict[str, object]] = [
        {"id": f"w{at}", "label": name, "made": at, "state": "sock one", "due": "2010-01-03"}
        for at, name in enumerate(names)
    ]
    page = with_wearers(to_a_file(new_phone()), wearers)
    page.locator("#to-copies").tap()
    page.locator("#print-orders").tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    made = printed(page, "A6", screens / "orders-A6.pdf")
    nothing_cut_off(made, "A6")
    lines = [line.strip() for sheet in text_of(made) for line in sheet.splitlines()]
    for name in names:
        assert name in lines, "on a line of its own, whole"
    assert words_of(made).count("late: January 3, 2010") == len(names)


def test_every_step_goes_to_paper_with_the_counts(new_phone: NewPhone, screens: Path) -> None:
    """Printed by the browser itself: folded away on the screen, they were headings alone."""
    page = planned(new_phone)
    panel(page, "steps")
    folds = page.locator("#steps-place details")
    assert folds.count() > 5
    page.locator("#steps-place summary").nth(1).tap()
    made = printed(page, "A4", screens / "counts-A4.pdf", margin="12mm")
    words = words_of(made)
    heel = page.locator("#steps-place details", has=page.locator("summary", has_text="Heel"))
    rows = heel.locator(".needles-row").count()
    assert rows > 20
    assert len(re.findall(r"\d+ in work", words)) >= 2 * rows
    expect(page.locator("#steps-place details[open]")).to_have_count(1)  # as it was


def test_the_tables_last_column_in_inches(new_phone: NewPhone) -> None:
    """The usual five stand whole on a phone of 360; where there are more, a mark says so."""
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    fill_foot(page)
    step(page, "measure")
    choose(page, "inches")
    step(page, "counts")
    page.locator("#chart > summary").tap()
    expect(page.locator("table.chart thead tr").nth(1).locator("th")).to_have_count(5)
    wide = "e => e.scrollWidth - e.clientWidth"
    assert page.locator("#chart .scroll").evaluate(wide) <= 0
    field(page, "chart.loosest").fill("8")
    field(page, "chart.firmest").fill("11")
    field(page, "chart.between").fill("0.4")
    expect(page.locator("table.chart thead tr").nth(1).locator("th")).to_have_count(8)
    page.locator("#chart .scroll").scroll_into_view_if_needed()
    expect(page.locator("#chart .scroll")).to_have_class(re.compile("wider"))
    page.locator("#chart .scroll").evaluate("e => { e.scrollLeft = 9999; }")
    expect(page.locator("#chart .scroll")).not_to_have_class(re.compile("wider"))
