"""Copies of one's own two phones: what was written later stays, on both, deletions too."""

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.book import card, copies, held, labels, open_book
from tests.browser.test_keeping import GOOD, NewPhone, saved, take, two_wearers
from tests.browser.walk import field, more_of, opened, step


def at_copies(page: Page) -> None:
    """From anywhere in the book."""
    expect(page.locator("#book h2")).to_be_visible()
    if page.locator("#all-wearers").is_visible():
        page.locator("#all-wearers").tap()
    copies(page)


def taken(page: Page, text: str, words: str) -> None:
    """Take a copy in that would do this."""
    at_copies(page)
    take(page, text)
    expect(page.locator("#book .visit")).to_contain_text(words)
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("Loaded:")


def copy(page: Page, folder: Path) -> str:
    """A copy of a phone, as text."""
    at_copies(page)
    return saved(page, "#save-copy", folder).read_text()


def written(page: Page, label: str, **words: str) -> None:
    """On a wearer's page."""
    if page.locator("#all-wearers").is_visible():
        page.locator("#all-wearers").tap()
    card(page, label)
    for name, text in words.items():
        page.locator(f"#wearer-{name}").fill(text)
    page.wait_for_timeout(400)


def deleted(page: Page, label: str) -> None:
    if page.locator("#all-wearers").is_visible():
        page.locator("#all-wearers").tap()
    card(page, label)
    page.locator("#delete-wearer").tap()
    page.locator("#delete-surely").tap()
    expect(page.locator("#all-wearers")).to_have_count(0)  # back at the list


def book(page: Page) -> list[Any]:
    """What a phone has of the wearers, the one like the other."""
    page.wait_for_timeout(700)
    return sorted(held(page)["wearers"], key=lambda one: str(one["id"]))


@pytest.fixture
def two(new_phone: NewPhone, tmp_path: Path) -> tuple[Page, Page]:
    """Two phones with Nuri and Wren."""
    one = two_wearers(new_phone())
    text = copy(one, tmp_path / "first")
    other = opened(new_phone())
    open_book(other)
    taken(other, text, "To add: 2 wearers")
    return one, other


def test_each_field_that_was_changed_later_stays_on_both(
    two: tuple[Page, Page], tmp_path: Path
) -> None:
    one, other = two
    written(one, "Wren", colours="moss", price="two pies")
    written(other, "Wren", colours="blue", allergy="lanolin")  # later than on the first
    taken(other, copy(one, tmp_path / "one"), "Changed later than here: one wearer.")
    expect(other.locator("#book .note")).to_have_text("Loaded: one wearer brought up to date.")
    back = copy(other, tmp_path / "other")
    at_copies(one)
    take(one, back)
    one.locator("#book .fold > summary", has_text="What changes").tap()
    rows = one.locator(".later tbody tr")
    assert [row.split("\t") for row in rows.all_inner_texts()] == [
        ["Colors", "moss", "blue"],
        ["Allergy", "–", "lanolin"],
    ]
    one.locator("#take-in").tap()
    expect(one.locator("#book .note")).to_contain_text("brought up to date")
    assert book(one) == book(other)
    (wren,) = [each for each in book(one) if each["label"] == "Wren"]
    assert (wren["colours"], wren["price"], wren["allergy"]) == ("blue", "two pies", "lanolin")
    take(one, copy(other, tmp_path / "again"))
    expect(one.locator("#book .note")).to_contain_text("is here already")


def test_who_is_deleted_on_one_phone_goes_from_the_other(
    two: tuple[Page, Page], tmp_path: Path
) -> None:
    one, other = two
    before = copy(one, tmp_path / "before")
    deleted(one, "Wren")
    gone = copy(one, tmp_path / "gone")
    assert "Wren" not in gone
    at_copies(other)
    take(other, gone)
    expect(other.locator("#book .visit")).to_contain_text("Deleted on the other phone: one wearer.")
    expect(other.locator(".differing")).to_contain_text("delete them here, too")
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_have_text("Loaded: one wearer deleted.")
    assert [each["label"] for each in book(other)] == ["Nuri"]

    # An older copy does not bring them back unasked, on either phone.
    for page in two:
        page.reload()
        at_copies(page)
        take(page, before)
        expect(page.locator("#book .visit")).to_contain_text("Deleted here since: one wearer")
        page.locator("#take-in").tap()
        expect(page.locator("#book .note")).to_have_text("Loaded: nothing.")
        assert [each["label"] for each in book(page)] == ["Nuri"]
    take(one, before)
    one.locator(".differing label", has_text="bring them back").tap()
    one.locator("#take-in").tap()
    expect(one.locator("#book .note")).to_have_text("Loaded: one wearer brought back.")
    taken(other, copy(one, tmp_path / "back"), "To add: one wearer")
    assert book(one) == book(other)
    assert len(book(one)) == 2


def test_who_was_written_in_after_that_lives_on(two: tuple[Page, Page], tmp_path: Path) -> None:
    one, other = two
    deleted(one, "Wren")
    gone = copy(one, tmp_path / "gone")
    written(other, "Wren", colours="moss")
    at_copies(other)
    take(other, gone)
    expect(other.locator("#book .note")).to_contain_text("is here already")
    other.locator("#all-wearers").tap()
    assert sorted(labels(other)) == ["Nuri", "Wren"]
    taken(one, copy(other, tmp_path / "other"), "To add: one wearer")
    assert book(one) == book(other)


def test_sheets_and_feet_are_put_together_too(two: tuple[Page, Page], tmp_path: Path) -> None:
    one, other = two
    for page, ball, slots in ((one, "22", "54"), (other, "", "72")):
        if page.locator("#all-wearers").is_visible():
            page.locator("#all-wearers").tap()
        card(page, "Wren")
        page.locator("#open-sheet").tap()
        name, text = ("foot.ball_girth", ball) if ball else ("foot.calf_girth", "36")
        field(page, name).fill(text)
        page.locator("#visit-line button", has_text="My own page").tap()
        step(page, "yarn")
        field(page, "cylinder.slots").fill(slots)
        page.wait_for_timeout(700)
        open_book(page)
    first, second = copy(one, tmp_path / "one"), copy(other, tmp_path / "other")
    taken(one, second, "Changed later than here: one wearer and your own page.")
    taken(other, first, "Changed later than here: one wearer")
    for page in two:  # what lies on the table follows, and is not taken for typed since
        page.locator(".head [data-book=close]").tap()
        expect(field(page, "cylinder.slots")).to_have_value("72")
        step(page, "measure")
        field(page, "foot.length").fill("25")
        page.wait_for_timeout(700)
        open_book(page)
    two_copies = [json.loads(copy(page, tmp_path / "end")) for page in two]
    ends = [{name: each[name] for name in ("book", "sheets")} for each in two_copies]
    assert ends[0]["sheets"]["mine"]["foot.length"] == "25"
    assert ends[0] == ends[1]
    assert ends[0]["sheets"]["mine"]["cylinder.slots"] == "72"
    (values,) = [
        each["visits"][0]["values"] for each in ends[0]["book"] if each["wearer"]["label"] == "Wren"
    ]
    assert (values["foot.ball_girth"], values["foot.calf_girth"]) == ("22", "36")


def test_two_days_measures_under_one_number_stay_two_visits(
    two: tuple[Page, Page], tmp_path: Path
) -> None:
    one, other = two
    for page, length in ((one, "27"), (other, "28")):
        page.locator("#all-wearers").tap()
        card(page, "Wren")
        page.locator("#come-again").tap()
        field(page, "foot.length").fill(length)
        page.wait_for_timeout(700)
        page.locator(".head [data-book=list]").tap()
    taken(other, copy(one, tmp_path / "one"), "Changed later than here: one wearer")
    taken(one, copy(other, tmp_path / "other"), "Changed later than here: one wearer")
    for page in two:
        page.wait_for_timeout(700)
        wren = next(each["id"] for each in book(page) if each["label"] == "Wren")
        lengths = {
            each["values"].get("foot.length")
            for each in held(page)["visits"]
            if each["wearer"] == wren
        }
        assert lengths == {"26,5", "27", "28"}


def test_a_pair_that_is_deleted_goes_from_the_other_too(
    two: tuple[Page, Page], tmp_path: Path
) -> None:
    one, other = two
    pair = json.dumps({**GOOD, "book": [], "sheets": {}, "settings": None})
    for page in two:
        taken(page, pair, "To add: one pair at the machine.")
    one.locator(".head [data-book=close]").tap()
    more_of(one.locator("#machine-line"))
    one.locator("#machine-line .put-away").tap()
    one.locator("#machine-line .remove").tap()
    one.locator("#remove-pair").tap()
    expect(one.locator("#machine-line")).not_to_contain_text("invented")
    open_book(one)
    gone = copy(one, tmp_path / "gone")
    taken(other, gone, "Deleted on the other phone: one pair at the machine.")
    expect(other.locator("#book .note")).to_contain_text("one pair at the machine deleted")
    assert json.loads(copy(other, tmp_path / "other"))["pairs"] == []
    at_copies(other)
    take(other, pair)
    expect(other.locator("#book .visit")).to_contain_text("Deleted here since: one pair")
    other.locator(".differing label", has_text="bring them back").tap()
    other.locator("#take-in").tap()
    expect(other.locator("#book .note")).to_contain_text("one pair at the machine brought back")
    assert len(json.loads(copy(other, tmp_path / "back"))["pairs"]) == 1
