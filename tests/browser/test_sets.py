"""Instructions over sizes: written, kept, read, printed and saved."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from pathlib import Path
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Download, Page, expect

from tests.browser.axe import violations
from tests.browser.book import open_book
from tests.browser.on_paper import NewPhone, nothing_cut_off, printed, text_of, to_a_file
from tests.browser.test_keeping import take
from tests.browser.test_looks import sideways, too_small
from tests.browser.test_two_phones import at_copies, copy
from tests.browser.walk import choose, figures, fill_foot, opened, share, step
from tests.set_files import KINDS
from tests.set_files import written as written_files

xml = ElementTree.fromstring
TITLE = "Invented: Plain & <b>warm</b>"
XHTML = "{http://www.w3.org/1999/xhtml}"
OPF = "{http://www.idpf.org/2007/opf}"
DC = "{http://purl.org/dc/elements/1.1/}"


def sets_of(page: Page) -> None:
    """From an empty page to the sets."""
    fill_foot(page)
    again(page)


def again(page: Page) -> None:
    step(page, "counts")
    figures(page)
    share(page)
    page.get_by_role("button", name="Instructions over sizes").tap()
    expect(page.get_by_role("dialog", name="Instructions over sizes")).to_be_visible()


def written(page: Page, sizes: str = "36, 40, 44") -> None:
    """A new set, read."""
    page.get_by_role("button", name="New set from these counts").tap()
    page.get_by_role("textbox", name="Title", exact=True).fill(TITLE)
    page.get_by_label("Made by").fill("Invented Ada")
    page.get_by_role("combobox", name="Sizes of").select_option("EU")
    page.get_by_role("textbox", name="Sizes", exact=True).fill(sizes)


def shown(page: Page) -> None:
    page.get_by_role("button", name="Show the instructions").tap()
    expect(page.get_by_role("article")).to_contain_text("Instructions", timeout=60_000)


def saved(page: Page, button: str) -> Download:
    summary = page.locator(".set-ways > summary")
    if not page.get_by_role("button", name=button).is_visible():
        summary.tap()
    with page.expect_download() as download:
        page.get_by_role("button", name=button).tap()
    return download.value


# What is in small type, slanted, in capitals, not at the left, in close lines or with serifs. Of
# 22 points for low vision (accessiblepatternsindex.com/accessibility-tips), which are 29.3 CSS
# px (CSS Values 4: 1 pt is 4/3 px).
TEXTS = "p, li, td, th, caption, figcaption, h2, h3, h4"
HARD_TO_READ = f"""(all) => [...all.querySelectorAll("{TEXTS}")]"""
HARD_TO_READ += """
  .map((one) => [one.tagName, getComputedStyle(one)])
  .filter(([, { fontSize, fontStyle, textAlign, textTransform, lineHeight, fontFamily }]) =>
    parseFloat(fontSize) < 22 * 4 / 3 || fontStyle !== "normal" || textTransform !== "none" ||
    !/start|left/.test(textAlign) || parseFloat(lineHeight) < 1.25 * parseFloat(fontSize) ||
    !fontFamily.endsWith("sans-serif"))
  .map(([name, { fontSize, textAlign, textTransform, lineHeight }]) =>
    [name, fontSize, textAlign, textTransform, lineHeight].join(" "))"""


def test_one_size_at_a_time_in_large_type(new_phone: NewPhone, screens: Path) -> None:
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    sets_of(page)
    written(page)
    shown(page)
    article = page.get_by_role("article")
    expect(page.get_by_role("dialog", name=TITLE)).to_be_visible()
    page.screenshot(path=screens / "set-read-360.png")
    foot_36 = article.inner_text()
    page.get_by_role("combobox", name="Size", exact=True).select_option(label="Size 44")
    expect(article).not_to_have_text(foot_36)
    assert article.evaluate(HARD_TO_READ) == []
    colors = article.evaluate(
        "(all) => [getComputedStyle(all).color, getComputedStyle(all).backgroundColor]"
    )
    assert colors == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    page.get_by_text("Contents", exact=True).tap()
    page.screenshot(path=screens / "set-contents-360.png")
    page.get_by_role("link", name="With another row gauge").tap()
    split = article.evaluate(r"all => all.textContent.match(/\d[ \n](cm|in|g|m|oz|yd|%)\b/g)")
    assert split is None, "no figure is parted from its unit"
    head = page.get_by_role("heading", name="With another row gauge")
    expect(head).to_be_focused()
    expect(head).to_be_in_viewport()
    assert sideways(page) <= 0
    page.locator("#set-reading table").first.scroll_into_view_if_needed()
    page.screenshot(path=screens / "set-table-360.png")
    page.locator("#set-reading figure").first.scroll_into_view_if_needed()
    page.screenshot(path=screens / "set-figure-360.png")
    assert violations(page) == []


def test_a_set_is_kept_copied_deleted_and_brought_back(new_phone: NewPhone) -> None:
    page = opened(new_phone())
    sets_of(page)
    written(page)
    page.get_by_text("Version, date, license, notes").tap()
    page.get_by_role("textbox", name="Notes").fill("One.\nTwo <i>x</i>.")
    page.wait_for_timeout(500)
    page.reload()
    again(page)
    kept = page.get_by_role("list", name="Sets you keep").get_by_role("listitem")
    expect(kept).to_have_count(1)
    expect(kept).to_contain_text(f"{TITLE}")
    expect(kept).to_contain_text("36, 40, 44")
    page.get_by_role("button", name=f"Copy {TITLE}", exact=True).tap()
    expect(page.get_by_role("textbox", name="Title", exact=True)).to_have_value(f"{TITLE}, copy")
    page.get_by_role("button", name="All sets").tap()
    expect(kept).to_have_count(2)
    page.get_by_role("button", name=f"Delete {TITLE}", exact=True).tap()
    expect(kept).to_have_count(1)
    page.get_by_role("button", name="Bring it back").tap()
    expect(kept).to_have_count(2)
    page.get_by_role("button", name=f"Open {TITLE}", exact=True).tap()
    page.get_by_text("Version, date, license, notes").tap()
    expect(page.get_by_role("textbox", name="Notes")).to_have_value("One.\nTwo <i>x</i>.")
    values = page.evaluate("JSON.parse(localStorage['heelwise.sets'])")
    fields = {name.partition(".")[2] for name in values}
    assert "plan.cylinder.slots" in fields
    of_person = ("plan.foot", "plan.person", "plan.other_foot", "plan.knitter")
    assert [one for one in fields if one.startswith(of_person)] == []


def test_sizes_that_cannot_be_are_said_at_their_field(new_phone: NewPhone) -> None:
    page = opened(new_phone())
    sets_of(page)
    written(page, sizes="36, far")
    page.get_by_role("button", name="Show the instructions").tap()
    expect(page.locator("#set-sizes-error")).not_to_be_empty()
    expect(page.locator("#set-sizes")).to_be_focused()
    expect(page.locator("#set-sizes")).to_have_value("36, far")


@pytest.mark.parametrize("paper", ["A4", "Letter", "card"])
def test_all_sizes_on_paper(new_phone: NewPhone, screens: Path, paper: str) -> None:
    page = opened(to_a_file(new_phone(color_scheme="dark")))
    sets_of(page)
    written(page, "36, 38, 40, 42, 44, 46")
    shown(page)
    page.get_by_role("combobox", name="Size", exact=True).select_option(label="All sizes")
    page.locator(".set-ways > summary").tap()
    page.get_by_role("radio", name="Card, folded once" if paper == "card" else paper).check()
    page.get_by_role("button", name="Print", exact=True).tap()
    expect(page.locator("html")).to_have_attribute("data-print", "paper")
    made = printed(page, "A4" if paper == "card" else paper, screens / f"set-{paper}.pdf")
    if paper != "card":
        nothing_cut_off(made, paper)
    pages = [" ".join(words.split()) for words in text_of(made)]
    whole = " ".join(pages)
    assert TITLE in whole
    for at, words in enumerate(pages, 1):
        assert f"{at} / {len(pages)}" in words
    tables = page.locator("#set-reading table").evaluate_all(
        """all => all.map(one => [...one.querySelectorAll("caption, th, td")]
          .map(cell => cell.textContent).join(""))"""
    )
    close = ["".join(words.split()) for words in pages]
    assert len(tables) > 10
    for table in tables:
        inside = "".join(table.split())
        assert any(inside in words for words in close), ("on no one page:", table)
    for other in ("Heelwise", "Close", "Save as"):
        assert other not in whole


def test_saved_as_web_page_text_and_table(new_phone: NewPhone, tmp_path: Path) -> None:
    page = opened(new_phone())
    sets_of(page)
    written(page)
    shown(page)
    page.get_by_role("combobox", name="Size", exact=True).select_option(label="All sizes")
    html = saved(page, "Save as a web page")
    assert html.suggested_filename.endswith(".html")
    html.save_as(tmp_path / "set.html")
    other = page.context.new_page()
    other.set_content((tmp_path / "set.html").read_text())
    expect(other).to_have_title(TITLE)
    assert other.locator("b").count() == 0, "a title is no markup"
    assert violations(other) == []
    for link in other.locator("nav a").all():
        assert other.locator(link.get_attribute("href") or "none").count() == 1
    whole = (tmp_path / "set.html").read_text()
    assert not re.search(r"(src|href)=\"(?!#)", whole), "it needs nothing else"
    text = saved(page, "Save as plain text")
    text.save_as(tmp_path / "set.txt")
    lines = (tmp_path / "set.txt").read_text().splitlines()
    assert lines[0] == f"# {TITLE}"
    steps = page.locator("#set-reading ol > li").all_text_contents()
    assert len(steps) > 20
    plain = [one.replace("\u00a0", " ") for one in steps]
    assert all(any(line.endswith(one) for line in lines) for one in plain)
    table = saved(page, "Save as CSV")
    table.save_as(tmp_path / "set.csv")
    rows = list(csv.reader(io.StringIO((tmp_path / "set.csv").read_text("utf-8-sig"))))
    assert [row[0] for row in rows[1:]] == ["36", "40", "44"]


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("width", [320, 1280])
def test_axe_finds_nothing_in_a_web_page(
    new_phone: NewPhone, tmp_path: Path, kind: str, width: int
) -> None:
    """As one opens the file: no site, no script."""
    page = new_phone(viewport={"width": width, "height": 640}).new_page()
    written_file = written_files(KINDS[kind], tmp_path) / "set.html"
    page.set_content(written_file.read_text(encoding="utf-8"))
    assert violations(page) == []
    assert sideways(page) <= 0
    assert page.locator("main").evaluate(HARD_TO_READ) == []


def test_an_e_book_by_the_rules_of_epub(new_phone: NewPhone, tmp_path: Path) -> None:
    """EPUB 3.3: OCF 4.2.2 (mimetype), 4.2.6.3 (container), 5 (package), 7 (navigation); EPUB
    Accessibility 1.1, 2.2 (metadata)."""
    page = opened(new_phone())
    sets_of(page)
    written(page)
    shown(page)
    book = saved(page, "Save as an e-book")
    assert book.suggested_filename.endswith(".epub")
    book.save_as(tmp_path / "set.epub")
    raw = (tmp_path / "set.epub").read_bytes()
    assert raw[30:58] == b"mimetypeapplication/epub+zip"
    assert raw[28:30] == b"\0\0", "no extra field"
    with zipfile.ZipFile(tmp_path / "set.epub") as inside:
        assert inside.testzip() is None
        first = inside.infolist()[0]
        assert (first.filename, first.compress_type) == ("mimetype", zipfile.ZIP_STORED)
        files = {name: inside.read(name) for name in inside.namelist()}
    container = xml(files["META-INF/container.xml"])
    (root,) = container.iter("{urn:oasis:names:tc:opendocument:xmlns:container}rootfile")
    assert root.get("media-type") == "application/oebps-package+xml"
    package = xml(files[root.get("full-path") or ""])
    identifier = package.find(f".//{DC}identifier")
    assert identifier is not None
    assert package.get("version") == "3.0"
    assert package.get("unique-identifier") == identifier.get("id")
    assert re.fullmatch(
        r"urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}",
        identifier.text or "",
    )
    assert package.findtext(f".//{DC}title") == TITLE
    assert package.findtext(f".//{DC}language") == "en"
    assert package.findtext(f".//{DC}creator") == "Invented Ada"
    metas = [(one.get("property"), one.text or "") for one in package.iter(f"{OPF}meta")]
    told = dict(metas)
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", told["dcterms:modified"])
    for name in ("accessMode", "accessibilityFeature", "accessibilityHazard"):
        assert told[f"schema:{name}"]
    items = {one.get("id"): one for one in package.iter(f"{OPF}item")}
    listed = {f"OEBPS/{one.get('href')}" for one in items.values()}
    assert listed | {"mimetype", "META-INF/container.xml", "OEBPS/package.opf"} == set(files)
    (nav,) = [one for one in items.values() if one.get("properties") == "nav"]
    for ref in package.iter(f"{OPF}itemref"):
        assert items[ref.get("idref")].get("media-type") == "application/xhtml+xml"
    contents = xml(files[f"OEBPS/{nav.get('href')}"])
    (toc,) = contents.iter(f"{XHTML}nav")
    assert toc.get("{http://www.idpf.org/2007/ops}type") == "toc"
    for link in toc.iter(f"{XHTML}a"):
        name, _, place = (link.get("href") or "").partition("#")
        there = xml(files[f"OEBPS/{name}"])
        assert [one for one in there.iter() if one.get("id") == place]
    reading = xml(files["OEBPS/instructions.xhtml"])
    assert "".join(reading.itertext()).count(TITLE) == 2, "as head and as title"
    ids = [one.get("id") for one in reading.iter() if one.get("id")]
    assert len(ids) == len(set(ids))
    assert any(one.tag.endswith("svg") for one in reading.iter())


@pytest.mark.parametrize(("width", "scheme"), [(320, "dark"), (360, "light")])
def test_how_sets_are_listed_and_written(
    new_phone: NewPhone, screens: Path, width: int, scheme: str
) -> None:
    size = {"width": width, "height": 640}
    page = opened(new_phone(viewport=size, color_scheme=scheme, reduced_motion="reduce"))
    sets_of(page)
    written(page)
    page.get_by_text("Version, date, license, notes").tap()
    page.screenshot(path=screens / f"set-form-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []
    shown(page)
    page.locator(".set-ways > summary").tap()
    page.screenshot(path=screens / f"set-ways-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []
    page.get_by_role("button", name="Change what is written").tap()
    page.get_by_role("button", name="All sets").tap()
    page.screenshot(path=screens / f"set-list-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []


def test_sets_go_along_with_a_copy_field_by_field(new_phone: NewPhone, tmp_path: Path) -> None:
    """Each later change stays on both phones, and what is deleted goes from both."""
    one, other = opened(new_phone()), opened(new_phone())
    sets_of(one)
    written(one)
    one.get_by_role("button", name="Close").tap()
    open_book(one)
    first = copy(one, tmp_path / "first")
    open_book(other)
    at_copies(other)
    take(other, first)
    expect(other.locator("#book .visit")).to_contain_text("instructions over sizes")
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("Loaded")
    assert kept_sets(other) == kept_sets(one)
    assert "Invented Ada" in kept_sets(one)

    one.locator("#close-book").tap()
    again(one)
    one.get_by_role("button", name=f"Open {TITLE}", exact=True).tap()
    one.get_by_role("textbox", name="Made by").fill("Invented Bo")
    one.get_by_role("button", name="Close").tap()
    open_book(one)
    second = copy(one, tmp_path / "second")
    take(other, second)
    other.locator("#book .fold > summary", has_text="What changes").tap()
    expect(other.locator(".later tbody tr")).to_have_text(re.compile("Made by.*Ada.*Bo", re.DOTALL))
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("Loaded")
    assert kept_sets(other) == kept_sets(one)

    one.locator("#close-book").tap()
    again(one)
    one.get_by_role("button", name=f"Delete {TITLE}", exact=True).tap()
    one.get_by_role("button", name="Close").tap()
    open_book(one)
    take(other, copy(one, tmp_path / "third"))
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("Loaded")
    assert "Invented" not in kept_sets(other)


def kept_sets(page: Page) -> str:
    """What the phone has of them, as one text."""
    found: str = page.evaluate(
        """() => JSON.stringify(Object.entries(
          JSON.parse(localStorage["heelwise.sets"])).sort())"""
    )
    return found


def link_of(page: Page) -> str:
    """The address of the set that is read."""
    page.get_by_text("A link or a code").tap()
    address: str = page.locator(".set-link .code-address").inner_text()
    assert len(address.partition("#")[2]) <= 400
    return address


@pytest.mark.parametrize(("width", "scheme"), [(320, "dark"), (360, "light")])
def test_a_reader_opens_it_and_knits_a_size(
    new_phone: NewPhone, screens: Path, width: int, scheme: str
) -> None:
    maker = opened(new_phone())
    sets_of(maker)
    written(maker)
    shown(maker)
    address = link_of(maker)
    maker.get_by_role("dialog").get_by_role("button", name="Show a code to scan").tap()
    expect(maker.locator("#code svg")).to_be_visible()

    size = {"width": width, "height": 640}
    page = opened(new_phone(viewport=size, color_scheme=scheme), address)
    sheet = page.get_by_role("dialog", name=TITLE)
    expect(sheet).to_be_visible(timeout=60_000)
    sheet.get_by_label("For which foot").select_option(label="Size 40")
    page.screenshot(path=screens / f"set-reader-{width}-{scheme}.png")
    assert sideways(page) <= 0
    assert violations(page) == []
    assert too_small(page) == []
    sheet.get_by_role("button", name="See the counts").tap()
    usual = figures(page)
    line = page.locator("#origin")
    expect(line).to_have_text(f"From “{TITLE}” by Invented Ada.")
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    page.screenshot(path=screens / f"set-adopted-{width}-{scheme}.png")
    expect(page.locator("#knit-it")).to_be_visible()
    page.reload()
    expect(line).to_have_text(f"From “{TITLE}” by Invented Ada.")
    assert figures(page) == usual


def test_a_reader_reads_all_of_it_and_keeps_it(new_phone: NewPhone, screens: Path) -> None:
    maker = opened(new_phone())
    sets_of(maker)
    written(maker)
    shown(maker)
    page = opened(new_phone(viewport={"width": 360, "height": 640}), link_of(maker))
    sheet = page.get_by_role("dialog", name=TITLE)
    expect(sheet).to_contain_text(
        "By Invented Ada. For EU sizes 36, 40, 44, on 60 slots.", timeout=60_000
    )
    sheet.get_by_role("button", name="Read the instructions").tap()
    expect(sheet.get_by_role("article")).to_contain_text("Invented Ada")
    assert sideways(page) <= 0
    sheet.get_by_role("button", name="Back to the choice of size").tap()
    sheet.get_by_role("button", name="Keep them on this phone").tap()
    expect(sheet).to_contain_text("You find them under Wearers")
    page.screenshot(path=screens / "set-reader-kept-360.png")
    assert violations(page) == []
    assert too_small(page) == []
    sheet.get_by_role("button", name="Close").tap()
    open_book(page)
    page.locator("#to-sets", has_text="Instructions: 1 set").tap()
    page.get_by_role("button", name=f"Open {TITLE}", exact=True).tap()
    expect(page.get_by_label("Made by")).to_have_value("Invented Ada")
    expect(page.get_by_role("textbox", name="Sizes", exact=True)).to_have_value("36, 40, 44")
    shown(page)


def test_a_reader_brings_their_own_foot_and_gauge(new_phone: NewPhone) -> None:
    maker = opened(new_phone())
    sets_of(maker)
    written(maker)
    shown(maker)
    address = link_of(maker)
    page = opened(new_phone(), address)
    sheet = page.get_by_role("dialog", name=TITLE)
    sheet.get_by_label("For which foot").select_option(label="My own foot", timeout=60_000)
    sheet.get_by_label("Foot length").fill("27 cm")
    sheet.get_by_text("My own gauge").tap()
    sheet.get_by_label("Stitches").fill("30 / 10 cm")
    sheet.get_by_label("Rounds").fill("40 / 10 cm")
    sheet.get_by_role("button", name="See the counts").tap()
    assert figures(page)["Foot"]
    step(page, "measure")
    expect(page.locator("[name='foot.length']")).to_have_value("27 cm")
    step(page, "yarn")
    expect(page.locator("[name='fabric.rounds']")).to_have_value("40 / 10 cm")


def test_usual_sizes_go_with_their_system_and_hers_stay(new_phone: NewPhone) -> None:
    """Where letter paper is sold a set begins with women's sizes of the US, else with EU's."""
    for locale, by, first in (("en-US", "US women", "5, 6, 7"), ("de-DE", "EU", "36, 38, 40")):
        page = opened(new_phone(locale=locale))
        choose(page, "centimeters")
        sets_of(page)
        page.locator("#new-set").tap()
        expect(page.locator("#set-by")).to_have_value(by)
        expect(page.locator("#set-sizes")).to_have_value(re.compile(f"^{first}"))
        page.locator("#set-by").select_option("length")
        expect(page.locator("#set-sizes")).to_have_value(re.compile("cm|in"))
        page.locator("#set-sizes").fill("24 cm; 25 cm")
        page.locator("#set-by").select_option("US women")
        expect(page.locator("#set-sizes")).to_have_value("24 cm; 25 cm")


def test_sets_are_opened_from_the_book(new_phone: NewPhone, screens: Path) -> None:
    """Where the wearers are, with or without any; nothing is asked of the counts there."""
    page = opened(new_phone(viewport={"width": 360, "height": 640}))
    open_book(page)
    expect(page.locator("#to-sets")).to_have_count(0)
    page.locator("#close-book").tap()
    sets_of(page)
    written(page)
    page.get_by_role("button", name="Close").tap()
    page.goto("./#book")
    page.reload()
    page.locator("#to-sets", has_text="Instructions: 1 set").tap()
    sheet = page.get_by_role("dialog", name="Instructions over sizes")
    expect(sheet).to_be_visible()
    expect(sheet.locator("#new-set")).to_have_count(0)
    page.screenshot(path=screens / "set-list-of-book-360.png")
    assert violations(page) == []
    assert too_small(page) == []
    assert sideways(page) <= 0
    sheet.get_by_role("button", name=f"Copy {TITLE}", exact=True).tap()
    page.get_by_role("textbox", name="Title", exact=True).fill("Invented: other")
    shown(page)
    page.get_by_role("button", name="Close").tap()
    page.screenshot(path=screens / "set-book-360.png")
    assert too_small(page) == []
    assert sideways(page) <= 0
    page.locator("#to-sets", has_text="Instructions: 2 sets").tap()
    for title in (TITLE, "Invented: other"):
        sheet.get_by_role("button", name=f"Delete {title}", exact=True).tap()
    page.go_back()
    expect(page.locator("#book-title")).to_be_visible()
    expect(page.locator("#to-sets")).to_have_count(0)
