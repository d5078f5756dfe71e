"""The table of sizes on a phone: as the engine has it, as she asks for it, printed and saved."""

import csv
import io
from collections.abc import Callable
from pathlib import Path
from typing import Literal
from urllib.parse import unquote

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.host import comes_true
from tests.browser.walk import COUNTED, choose, error_at, field, fill_foot, opened, step

GREY = ("first", "last", "step", "loosest", "firmest", "between")


def unfolded(page: Page) -> None:
    """The table of a measured foot, open."""
    fill_foot(page)
    step(page, "counts")
    page.locator("#chart > summary").tap()
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(23)  # 20 to 31 cm by ½


def shown(page: Page) -> list[list[str]]:
    """The table on screen: a row a foot, its label first, with plain spaces."""
    return [
        [
            row.locator("th b").inner_text().replace("\u00a0", " "),
            *row.locator("td").all_inner_texts(),
        ]
        for row in page.locator("table.chart tbody tr:not(.own)").all()
    ]


def test_her_own_row_and_column_cross_at_her_count(phone: BrowserContext) -> None:
    page = opened(phone)
    unfolded(page)
    row = page.locator("table.chart tr.own")
    expect(row.locator("th b")).to_have_text("This foot")
    expect(row.locator("th small")).to_have_text("23.8 cm")
    expect(page.locator("table.chart thead .own")).to_contain_text("yours")
    crossing = row.locator("td.own").inner_text()
    assert crossing == page.locator(".tally-foot .figure").inner_text(), "what the plan says"
    for name in GREY:
        assert field(page, f"chart.{name}").get_attribute("placeholder"), name


def test_rows_by_size_keep_apart_from_rows_by_length(phone: BrowserContext) -> None:
    page = opened(phone)
    unfolded(page)
    field(page, "chart.first").fill("24")
    field(page, "chart.last").fill("26")
    field(page, "chart.step").fill("1")
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(3)
    field(page, "chart.by").select_option("EU")
    expect(page.locator("table.chart thead th").first).to_have_text("Shoe size EU")
    expect(field(page, "chart.first")).to_be_empty()
    field(page, "chart.first").fill("38")
    field(page, "chart.last").fill("40")
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(3)
    assert [row[0] for row in shown(page)] == ["38", "39", "40"]
    expect(page.locator(".assumptions")).to_contain_text("Measure if you can")
    page.reload()
    page.locator("#chart > summary").tap()
    expect(field(page, "chart.first")).to_have_value("38")
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(3)
    field(page, "chart.by").select_option("length")
    expect(field(page, "chart.first")).to_be_empty()  # a reload keeps what is on screen
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(23)


def test_what_makes_no_table_is_said_beside_its_field(phone: BrowserContext) -> None:
    page = opened(phone)
    unfolded(page)
    first = field(page, "chart.first")
    first.fill("40")
    expect(page.locator("#chart-place")).to_contain_text("nothing is left to fix")
    first.blur()
    expect(page.locator("#chart .error:not(:empty)")).to_have_count(1)
    expect(page.locator("#counts .error:not(:empty)")).to_have_count(0)
    first.fill("30")
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(3)
    expect(page.locator("#chart .error:not(:empty)")).to_have_count(0)
    field(page, "chart.loosest").fill("39")
    field(page, "chart.firmest").fill("37")
    field(page, "chart.firmest").blur()
    expect(error_at(page, "chart.firmest")).not_to_be_empty()


def test_the_table_follows_the_counts_and_the_units(phone: BrowserContext) -> None:
    page = opened(phone)
    unfolded(page)
    field(page, "chart.first").fill("22")
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(19)
    step(page, "measure")
    choose(page, "inches")
    step(page, "yarn")
    page.locator("#chips button", has_text="72").tap()
    step(page, "counts")
    expect(page.locator("table.chart caption")).to_have_text("Foot rounds on 72 slots")
    expect(field(page, "chart.first")).to_have_value("22 cm")
    expect(page.locator("table.chart thead")).to_contain_text("Rounds per in")


def test_the_engine_is_asked_only_while_it_is_open(phone: BrowserContext) -> None:
    """Every call goes through one worker: its messages are counted."""
    phone.add_init_script(
        """const send = Worker.prototype.postMessage; window.asked = [];
        Worker.prototype.postMessage = function (message, ...more) {
          if (message.text) window.asked.push(JSON.parse(message.text).do);
          return send.call(this, message, ...more);
        };"""
    )
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    expect(page.locator(COUNTED)).to_have_count(5)
    count = "asked.filter((call) => call === 'chart').length"
    assert page.evaluate(count) == 0
    page.locator("#chart > summary").tap()
    expect(page.locator("table.chart")).to_be_visible()
    assert page.evaluate(count) == 1
    field(page, "chart.first").press_sequentially("21.5", delay=20)
    expect(page.locator("table.chart tbody tr:not(.own)")).to_have_count(20)
    assert page.evaluate(count) < 5, "one ask for every key is too many"
    page.locator("#chart > summary").tap()
    before = page.evaluate(count)
    step(page, "yarn")
    page.locator("#chips button", has_text="72").tap()
    expect(page.locator("#so-far-yarn")).to_have_text("72 slots")
    assert page.evaluate(count) == before


def test_saved_it_holds_what_is_shown(phone: BrowserContext, tmp_path: Path) -> None:
    """Read back with Python's own reader of RFC 4180."""
    page = opened(phone)
    unfolded(page)
    with page.expect_download() as saving:
        page.locator("#save-table").tap()
    assert unquote(saving.value.suggested_filename) == "heelwise-60-slots.csv"
    saving.value.save_as(tmp_path / "table.csv")
    text = (tmp_path / "table.csv").read_bytes().decode("utf-8-sig")
    head, *rows = csv.reader(io.StringIO(text, newline=""))
    assert [[row[0], *row[2:]] for row in rows] == shown(page)
    columns = page.locator("table.chart thead tr:last-child th").all_inner_texts()
    gauges = [float(name.split()[0]) for name in head[2:]]  # to 0.01, on screen to 0.1
    assert gauges == pytest.approx([float(column.split()[0]) for column in columns], abs=0.051)


@pytest.mark.parametrize("by", ["length", "EU"])
def test_printed_it_stands_alone(phone: BrowserContext, screens: Path, by: str) -> None:
    phone.add_init_script("window.print = () => { window.printed = true; };")
    page = opened(phone)
    unfolded(page)
    field(page, "chart.by").select_option(by)
    head = "Foot length" if by == "length" else f"Shoe size {by}"
    expect(page.locator("table.chart thead th").first).to_have_text(head)
    page.locator("#print-table").tap()
    assert page.evaluate("window.printed")
    page.emulate_media(media="print", color_scheme="dark")
    expect(page.locator("table.chart caption")).to_have_text("Foot rounds on 60 slots")
    expect(page.locator("table.chart")).to_be_visible()
    expect(page.locator(".assumptions")).to_be_visible()
    for left_out in (".head", "#counts", ".tape", ".foot", "#chart-form", "#print-table"):
        expect(page.locator(left_out)).to_be_hidden()
    ink = "getComputedStyle(document.querySelector('table.chart td')).color"
    assert page.evaluate(ink) == "rgb(0, 0, 0)"
    page.screenshot(path=screens / f"table-on-paper-{by}.png", full_page=True)
    page.pdf(path=screens / f"table-on-paper-{by}.pdf", format="A4")
    page.emulate_media(media="screen")
    page.locator("#chart-by").tap()
    page.emulate_media(media="print")
    expect(page.locator("#counts")).to_be_visible()  # the counts go to paper as before
    expect(page.locator("table.chart")).to_be_hidden()


def in_inches(page: Page) -> None:
    """The table of a foot measured with a tape in inches, open."""
    choose(page, "inches")
    field(page, "foot.length").fill("9 3/8")
    step(page, "yarn")
    page.locator("#chips button", has_text="72").tap()
    swatch = {"needles": "72", "flat_width": "4 3/4", "rounds": "60", "length": "5 1/2"}
    for name, text in swatch.items():
        field(page, f"fabric.swatch.{name}").fill(text)
    expect(page.locator("#so-far-counts")).to_contain_text("Foot")
    step(page, "counts")
    page.locator("#chart > summary").tap()
    expect(page.locator("table.chart")).to_be_visible()


# By how much the table is wider than the room for it.
WIDER = "(box) => box.scrollWidth - box.clientWidth"
EDGE = """(box) => {
  const edge = getComputedStyle(box, "::after");
  return edge.content.includes("→") && edge.borderLeftStyle === "dashed";
}"""


def test_the_usual_columns_stand_whole_in_inches_too(phone: BrowserContext) -> None:
    page = opened(phone)
    in_inches(page)
    scroller = page.locator(".scroll")
    expect(page.locator("table.chart tbody tr:not(.own)").first.locator("td")).to_have_count(5)
    assert scroller.evaluate(WIDER) == 0
    page.wait_for_timeout(300)  # it has been looked whether there is more
    assert not scroller.evaluate(EDGE)


@pytest.mark.parametrize("forced", ["none", "active"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_where_there_is_more_it_shows(
    new_phone: Callable[..., BrowserContext],
    screens: Path,
    forced: Literal["none", "active"],
    scheme: Literal["light", "dark"],
) -> None:
    page = opened(new_phone(forced_colors=forced, color_scheme=scheme))
    in_inches(page)
    field(page, "chart.loosest").fill("9")
    expect(page.locator("table.chart tbody tr:not(.own)").first.locator("td")).to_have_count(10)
    scroller = page.get_by_role("region", name="Table of sizes", exact=True)
    assert scroller.evaluate(WIDER) > 100
    comes_true(page, lambda: scroller.evaluate(EDGE))
    scroller.evaluate("(box) => box.scrollIntoView({ behavior: 'instant' })")
    page.screenshot(path=screens / f"table-wide-{scheme}-{forced}.png")
    scroller.focus()
    for _ in range(30):
        page.keyboard.press("ArrowRight")
    comes_true(page, lambda: not scroller.evaluate(EDGE))
    cell = page.locator("table.chart td").last
    whole = "(cell) => cell.getBoundingClientRect().right <= innerWidth"
    comes_true(page, lambda: cell.evaluate(whole))  # keys scroll at the browser's leisure
    scroller.evaluate("(box) => { box.scrollLeft = 0; }")
    comes_true(page, lambda: scroller.evaluate(EDGE))
