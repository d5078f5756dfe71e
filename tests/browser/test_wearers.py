"""The book of wearers: somebody new in a few taps, sheets that never mix, nothing lost or left."""

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.axe import violations
from tests.browser.book import (
    PUT,
    all_of_storage,
    back_to_book,
    card,
    held,
    labels,
    new_wearer,
    next_of,
    open_book,
    whole_card,
    with_wearers,
)
from tests.browser.host import comes_true, until
from tests.browser.pseudo import said
from tests.browser.test_looks import LOOKS, WIDTHS, sideways, too_small
from tests.browser.walk import choose, field, figures, fill_foot, more_of, opened, share, step

NewPhone = Callable[..., BrowserContext]

# Seconds a tap and a key take, keystroke-level model (Card, Moran and Newell 1980: point 1.1 s,
# click 0.2 s, key 0.28 s), from memory; a thumb on glass is taken to be twice as slow at the keys.
TAP, KEY = 1.3, 0.56
FRAME = 16.8  # ms
LATE = 50.5  # ms: three frames of a sixtieth of a second are 50, by a clock that is 0.1 ms coarse

WEARERS: list[dict[str, Any]] = [
    {"id": "a", "label": "Ferry 10", "state": "measured", "due": "2199-11-28", "made": 1},
    {"id": "b", "label": "Ferry 9", "state": "handed over", "due": "2020-01-01", "made": 2},
    {"id": "c", "label": "Élan", "state": "sock one", "due": "2020-02-02", "made": 3},
    {
        "id": "d",
        "label": "apron",
        "state": "planned",
        "due": "",
        "made": 4,
        "colours": "moss green",
    },
]


def test_a_new_wearer_within_45_seconds_of_taps(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "measure")
    taps, keys = 0, 0

    def tap(selector: str) -> None:
        nonlocal taps
        page.locator(selector).first.tap()
        taps += 1

    def type_in(selector: str, text: str, tapped: bool = True) -> None:
        nonlocal keys
        if tapped:
            tap(selector)
        expect(page.locator(selector)).to_be_focused()
        page.keyboard.type(text)
        keys += len(text)

    tap(".head [data-book=list]")
    tap("#new-wearer")
    type_in("#new-label", "Stand 4, red scarf", tapped=False)  # the field waits for the label
    page.keyboard.press("Enter")
    keys += 1
    for name, text in {
        "foot.length": "25,1",
        "foot.ball_girth": "24",
        "foot.heel_girth": "32,5",
        "foot.ankle_girth": "23",
    }.items():
        type_in(f"[name='{name}']", text)
    tap(".head [data-book=list]")
    assert taps <= 8
    seconds = taps * TAP + keys * KEY
    assert seconds < 45, f"{taps} taps and {keys} keys take {seconds:.0f} s"
    assert labels(page) == ["Stand 4, red scarf"]
    expect(next_of(page)).to_have_text("Plan the socks")


def test_machine_and_yarn_come_from_her_own_page_and_nothing_goes_back(
    phone: BrowserContext,
) -> None:
    page = opened(phone)
    fill_foot(page)
    choose(page, "My swatch")
    open_book(page)
    new_wearer(page, "Nuri", "21,5")
    expect(field(page, "cylinder.slots")).to_have_value("60")
    step(page, "yarn")
    page.locator("#chips button", has_text="72").tap()
    back_to_book(page)
    new_wearer(page, "Wren")
    expect(field(page, "foot.length")).to_be_empty()
    expect(field(page, "cylinder.slots")).to_have_value("60")  # hers, not Nuri's
    field(page, "foot.length").fill("26")
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(page.locator("#visit-line")).to_be_empty()
    expect(field(page, "foot.length")).to_have_value("23,8")
    open_book(page)
    card(page, "Nuri")
    expect(page.locator("#book .sizes")).to_contain_text("21,5 cm")
    page.locator("#open-sheet").tap()
    expect(field(page, "foot.length")).to_have_value("21,5")
    expect(field(page, "cylinder.slots")).to_have_value("72")


def test_a_wearers_counts_and_how_far_the_pair_is(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    mine = figures(page)
    open_book(page)
    new_wearer(page, "Nuri")
    field(page, "foot.length").fill("27,5")
    step(page, "counts")
    expect(page.locator(".tally-foot .figure")).not_to_have_text(mine["Foot"])
    back_to_book(page)
    expect(next_of(page)).to_have_text("Knit sock 1 of 2")
    card(page, "Nuri")
    page.locator(".states label", has_text="sock one").tap()
    page.locator("#wearer-due").fill("2199-12-24")
    page.locator("#all-wearers").tap()
    expect(next_of(page)).to_have_text("Knit sock 1 of 2")
    expect(page.locator(".wearers .due")).to_contain_text("December 24, 2199")


def test_all_that_is_written_of_a_wearer_stays(phone: BrowserContext) -> None:
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    card(page, "Nuri")
    asked = page.locator("#wearer-asked")
    where = page.locator("#wearer-asked-where")
    expect(where).to_contain_text("For a child, ask a parent")
    expect(where).to_contain_text("stays on this phone")
    page.locator(".quick button", has_text="a parent").tap()
    expect(asked).to_have_value("a parent")
    written = {
        "length": "to the knee",
        "colours": "moss",
        "allergy": "lanolin",
        "price": "two pies",
    }
    for name, text in written.items():
        page.locator(f"#wearer-{name}").fill(text)
    choose(page, "snug")
    page.locator("#wearer-label").fill("Nuri, ferry")
    until(page, "document.querySelector('#book h2').textContent === 'Nuri, ferry'")
    page.wait_for_timeout(700)
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Nuri, ferry")
    for name, text in {**written, "asked": "a parent"}.items():
        expect(page.locator(f"#wearer-{name}")).to_have_value(text)  # without a tap
    whole_card(page)
    for name, text in {**written, "asked": "a parent"}.items():
        expect(page.locator(f"#wearer-{name}")).to_have_value(text)
    expect(page.locator("#book label", has_text="snug").locator("input")).to_be_checked()
    page.locator("#wearer-label").fill("  ")
    expect(page.locator("#wearer-label-error")).to_contain_text("name is missing")
    page.locator("#all-wearers").tap()
    assert labels(page) == ["Nuri, ferry"]
    expect(page.locator(".wearers .allergy")).to_have_text("allergy: lanolin")
    card(page, "Nuri, ferry")
    page.locator("#open-sheet").tap()
    expect(page.locator("#visit-line")).to_contain_text("Allergy: lanolin")
    expect(page.locator("#visit-line")).to_contain_text("Wishes: to the knee, moss.")


def test_how_close_is_one_wish_in_the_book_and_on_the_sheet(phone: BrowserContext) -> None:
    """A wearer who was written down before the sheet asked has it there too."""
    written = {"id": "w", "label": "Invented: Nuri", "state": "measured", "ease": "snug"}
    page = with_wearers(phone, [written])
    visit = {"wearer": "w", "number": 1, "at": 1, "values": {"foot.length": "24"}}
    page.evaluate(PUT, {"visits": [visit]})
    page.reload()

    def on_sheet() -> str:
        return str(
            page.evaluate("document.getElementById('form').elements['sock.closeness'].value")
        )

    card(page, "Invented: Nuri")
    page.locator("#open-sheet").tap()
    expect(page.locator("#visit-line")).to_contain_text("Saved in the book")
    assert on_sheet() == "snug"
    page.locator("#form [name='sock.closeness'][value=loose]").evaluate("one => one.click()")
    back_to_book(page)
    card(page, "Invented: Nuri")
    expect(page.locator("#book label", has_text="loose").locator("input")).to_be_checked()
    choose(page, "as usual")
    page.locator("#open-sheet").tap()
    expect(page.locator("#visit-line")).to_contain_text("Saved in the book")
    assert on_sheet() == ""


def test_a_label_is_wanted(phone: BrowserContext) -> None:
    page = opened(phone)
    open_book(page)
    expect(page.locator("#book")).to_contain_text("No one is in the book yet")
    page.locator("#book button", has_text="New wearer").tap()
    page.locator("#begin-wearer").tap()
    expect(page.locator("#new-label-error")).to_contain_text("name is missing")
    expect(page.locator("#new-label")).to_be_focused()
    assert held(page)["wearers"] == []


def test_back_and_reload_stay_in_place(phone: BrowserContext) -> None:
    page = opened(phone)
    step(page, "yarn")
    open_book(page)
    expect(page.locator(".tape")).to_be_hidden()
    new_wearer(page, "Nuri", "24")
    page.go_back()
    expect(page.locator("#book h2")).to_have_text("Wearers")
    card(page, "Nuri")
    page.reload()
    expect(page.locator("#book h2")).to_have_text("Nuri")
    page.go_back()
    expect(page.locator("#book h2")).to_have_text("Wearers")
    page.go_back()
    expect(page.locator("#yarn")).to_be_visible()
    expect(page.locator("#book")).to_be_hidden()
    expect(page.locator("#visit-line")).to_contain_text("Nuri")  # still on the table
    page.go_forward()
    expect(page.locator("#book h2")).to_have_text("Wearers")
    page.locator("#close-book").tap()
    expect(page.locator("#yarn")).to_be_visible()
    page.goto("./#book")
    expect(page.locator("#book h2")).to_have_text("Wearers")
    page.locator("#close-book").tap()
    expect(page.locator("#measure")).to_be_visible()


def test_what_is_typed_survives_at_once(phone: BrowserContext) -> None:
    """Reloaded in the moment of typing, before the book has it; then a link takes its place."""
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri")
    field(page, "foot.length").fill("24,5")
    page.reload()
    expect(field(page, "foot.length")).to_have_value("24,5")
    field(page, "foot.ball_girth").fill("23,5")
    page.evaluate("location.hash = '#some-other-page'")
    expect(page.locator("#visit-line [role=alert]")).to_be_visible()
    expect(field(page, "foot.length")).to_be_empty()  # her own
    open_book(page)
    card(page, "Nuri")
    expect(page.locator("#book .sizes")).to_contain_text("23,5 cm")


def test_a_second_visit_keeps_the_first(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    open_book(page)
    new_wearer(page, "Nuri", "21")
    back_to_book(page)
    card(page, "Nuri")
    page.locator(".states label", has_text="handed over").tap()
    page.locator("#wearer-price").fill("two pies")
    page.locator("#come-again").tap()
    expect(field(page, "foot.length")).to_be_empty()
    expect(field(page, "cylinder.slots")).to_have_value("60")
    field(page, "foot.length").fill("22,5")
    back_to_book(page)
    expect(next_of(page)).to_have_text("Plan the socks")
    page.wait_for_timeout(700)
    page.reload()
    card(page, "Nuri")
    expect(page.locator("#book .sizes").first).to_contain_text("22,5 cm")
    before = page.locator(".visit-before")
    expect(before).to_have_count(1)
    before.locator("summary").tap()
    expect(before).to_contain_text("21 cm")
    expect(before).to_contain_text("handed over")
    expect(before).to_contain_text("two pies")
    assert [one["number"] for one in held(page)["visits"]] == [1, 2]


def test_deleting_asks_can_be_undone_and_is_thorough(phone: BrowserContext) -> None:
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Zinnia", "24,9")
    back_to_book(page)
    new_wearer(page, "Nuri", "21")
    page.wait_for_timeout(900)
    page.go_back()
    card(page, "Zinnia")
    page.locator("#open-sheet").tap()  # on the table, too
    back_to_book(page)
    card(page, "Zinnia")
    page.locator("#delete-wearer").tap()
    expect(page.locator("#delete-surely")).to_be_focused()
    page.locator("#book button", has_text="Keep them").tap()
    assert "Zinnia" in all_of_storage(page)
    page.locator("#delete-wearer").tap()
    page.locator("#delete-surely").tap()
    expect(page.locator("#book h2")).to_have_text("Wearers")
    assert labels(page) == ["Nuri"]
    page.locator("#bring-wearer-back").tap()
    assert sorted(labels(page)) == ["Nuri", "Zinnia"]
    card(page, "Zinnia")
    expect(page.locator("#book .sizes")).to_contain_text("24,9 cm")

    page.locator("#delete-wearer").tap()
    page.locator("#delete-surely").tap()
    expect(page.locator("#bring-wearer-back")).to_be_visible()
    page.wait_for_timeout(700)
    kept = all_of_storage(page)
    assert "Nuri" in kept, "only one was deleted"
    assert "Zinnia" not in kept
    assert "24,9" not in kept
    page.locator("#close-book").tap()
    expect(page.locator("#visit-line")).to_be_empty()
    expect(field(page, "foot.length")).to_be_empty()
    open_book(page)
    expect(page.locator("#bring-wearer-back")).to_have_count(0)
    page.reload()
    expect(page.locator(".wearers li")).to_have_count(1)


def test_search_and_order(phone: BrowserContext) -> None:
    page = with_wearers(phone, WEARERS)
    assert labels(page) == ["Élan", "Ferry 10", "apron", "Ferry 9"]
    expect(page.locator(".wearers li").first).to_contain_text("late:")
    expect(page.locator(".wearers li", has_text="Ferry 9")).not_to_contain_text("late")
    page.get_by_label("Order").select_option("newest")
    assert labels(page) == ["apron", "Élan", "Ferry 9", "Ferry 10"]
    page.get_by_label("Order").select_option("by name")
    assert labels(page) == ["apron", "Élan", "Ferry 9", "Ferry 10"]
    search = page.locator("#book-search")
    for typed, expected in {
        "elan": ["Élan"],
        "FERRY": ["Ferry 9", "Ferry 10"],
        "green": ["apron"],
        "sock one": ["Élan"],
    }.items():
        search.fill(typed)
        assert labels(page) == expected, typed
    search.fill("nobody at all")
    expect(page.locator("#book")).to_contain_text("Try fewer letters")
    search.fill("")
    expect(page.locator(".wearers li")).to_have_count(4)


HOSTILE = {
    "markup": "<img src=x onerror=document.title=1><b>Bo</b>",
    "turned round": "‮gnorw yaw‬ ⁦up",
    "very long": "Zo" * 5000,
    "no spaces": "𝒳" * 300,
}


@pytest.mark.parametrize("kind", list(HOSTILE))
def test_any_label_is_only_text(phone: BrowserContext, kind: str) -> None:
    page = opened(phone)
    open_book(page)
    new_wearer(page, HOSTILE[kind], "24")
    wide = "document.documentElement.scrollWidth"
    assert page.evaluate(wide) == 390
    back_to_book(page)
    shown = labels(page)[0]
    assert shown[:20] == HOSTILE[kind][:20]
    assert len(shown) <= 2 * 80 + 1
    row = page.locator(".wearers a")
    box = row.bounding_box()
    assert box is not None
    assert box["height"] < 100, "one line for the label, however long"
    assert page.evaluate(wide) == 390
    row.tap()
    whole_card(page)
    expect(page.locator("#wearer-label")).to_have_value(HOSTILE[kind])
    assert page.evaluate(wide) == 390
    page.locator("#delete-wearer").tap()
    assert page.evaluate(wide) == 390
    assert page.locator("#book img, #book b").count() == 0
    assert page.title() == "One wearer · Heelwise", "browsers keep titles: no label is in it"


def test_this_foot_goes_into_the_book(new_phone: NewPhone) -> None:
    """From her own page, and from a plan that came by link; both sheets stay as they are."""
    page = opened(new_phone(permissions=["clipboard-read", "clipboard-write"]))
    fill_foot(page)
    step(page, "measure")
    page.locator("#measure-end [data-book=keep]").tap()
    page.locator("#new-label").fill("Mine")
    page.locator("#begin-wearer").tap()
    expect(page.locator("#book h2")).to_have_text("Mine")
    expect(page.locator("#book .sizes")).to_contain_text("23,8 cm")
    page.locator("#close-book").tap()
    expect(page.locator("#visit-line")).to_be_empty()
    expect(field(page, "foot.length")).to_have_value("23,8")
    step(page, "counts")
    figures(page)
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    link = str(page.evaluate("navigator.clipboard.readText()"))

    other = opened(new_phone(), link)
    expect(other.locator("#visit-line")).to_contain_text("A shared plan")
    made = figures(other)
    more_of(other.locator("#visit-line"))
    other.locator("#visit-line [data-book=keep]").tap()
    other.locator("#new-label").fill("By link")
    other.locator("#begin-wearer").tap()
    other.locator("#open-sheet").tap()
    expect(other.locator("#visit-line")).to_contain_text("By link")
    step(other, "counts")
    assert figures(other) == made
    other.locator("#visit-line button", has_text="My own page").tap()
    step(other, "measure")
    expect(field(other, "foot.length")).to_be_empty()


THROW = "() => {{ throw new DOMException('', '{}'); }};"
REFUSED = {
    "no database": "Object.defineProperty(window, 'indexedDB', { value: undefined });",
    "closed to us": "IDBFactory.prototype.open = " + THROW.format("SecurityError"),
    "silent": "const real = IDBFactory.prototype.open; IDBFactory.prototype.open = function () {"
    " const asked = real.call(this, 'another'); asked.addEventListener = () => 0; return asked; };",
    "full": "IDBObjectStore.prototype.put = " + THROW.format("QuotaExceededError"),
}


@pytest.mark.parametrize("how", list(REFUSED))
def test_a_phone_that_keeps_no_book_is_told_and_goes_on(phone: BrowserContext, how: str) -> None:
    phone.add_init_script(REFUSED[how])
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    expect(page.locator("#book .trouble")).to_contain_text("isn’t saving the book")
    assert labels(page) == ["Nuri"]
    new_wearer(page, "Wren", "26")
    back_to_book(page)
    card(page, "Nuri")
    expect(page.locator("#book .sizes")).to_contain_text("24 cm")


def test_once_the_phone_keeps_it_again_all_is_written(phone: BrowserContext) -> None:
    phone.add_init_script(
        """const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...given) {
          if (!window.room) throw new DOMException("", "QuotaExceededError");
          return put.apply(this, given);
        };"""
    )
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    expect(page.locator("#book .trouble")).to_be_visible()
    page.evaluate("window.room = true")
    expect(page.locator("#book .trouble")).to_have_count(0)
    assert [one["label"] for one in held(page)["wearers"]] == ["Nuri"]
    assert held(page)["visits"][0]["values"]["foot.length"] == "24"


def test_an_entry_that_cannot_be_read_is_set_aside(phone: BrowserContext) -> None:
    damaged: list[dict[str, Any]] = [
        {"id": "x", "label": 7},
        {"id": 12},
        {"id": "y", "label": "ok", "due": []},
    ]
    page = with_wearers(phone, [*WEARERS, *damaged])
    expect(page.locator(".wearers li")).to_have_count(4)
    expect(page.locator("#book .trouble")).to_have_count(3)
    card(page, "apron")
    page.locator("#wearer-price").fill("nothing")
    page.wait_for_timeout(700)
    assert {"id": "x", "label": 7} in held(page)["wearers"], "left as it is"
    page.locator("#all-wearers").tap()
    first = page.locator("#book .trouble").first
    first.locator("summary").tap()
    first.locator(".drop-aside").tap()
    expect(page.locator("#book .trouble")).to_have_count(2)
    page.evaluate(
        PUT, {"wearers": [], "visits": [{"wearer": "d", "number": 1, "at": 1, "values": 3}]}
    )
    page.reload()
    card(page, "apron")
    expect(page.locator("#book .sizes")).to_have_count(0)
    expect(page.locator("#book")).to_contain_text("Nothing is measured yet")
    page.locator("#open-sheet").tap()
    field(page, "foot.length").fill("24")
    back_to_book(page)
    expect(page.locator("#book")).to_contain_text("A visit in the book cannot be read")
    of_both = "the damaged one is left as it is, what is measured now stands beside it"
    comes_true(page, lambda: [one["number"] for one in held(page)["visits"]] == [1, 2])
    assert [one["values"] == 3 for one in held(page)["visits"]] == [True, False], of_both


def test_an_entry_that_the_phone_does_not_delete_is_still_told(phone: BrowserContext) -> None:
    page = with_wearers(phone, [*WEARERS, {"id": "x", "label": 7}])
    thrown: list[str] = []
    page.on("pageerror", lambda error: thrown.append(str(error)))
    page.evaluate(f"() => {{ IDBObjectStore.prototype.delete = {THROW.format('UnknownError')} }}")
    page.locator("#book .set-aside summary").tap()
    page.locator("#book .drop-aside").tap()
    expect(page.locator("#book .trouble").first).to_contain_text("isn’t saving")
    expect(page.locator("#book .set-aside")).to_have_count(1)
    assert not thrown


def test_two_tabs_see_each_other(phone: BrowserContext) -> None:
    one, other = opened(phone), opened(phone)
    open_book(other)
    open_book(one)
    new_wearer(one, "Nuri", "24")
    expect(other.locator(".wearers li")).to_have_count(1)
    card(other, "Nuri")
    expect(other.locator("#book .sizes")).to_contain_text("24 cm")
    other.locator("#delete-wearer").tap()
    other.locator("#delete-surely").tap()
    expect(one.locator("#visit-line")).to_contain_text("deleted in another tab")
    expect(one.locator("#visit-line")).not_to_contain_text("Nuri")
    one.wait_for_timeout(700)
    assert held(one)["wearers"] == []


def test_keyboard_alone(new_phone: NewPhone) -> None:
    page = opened(new_phone(is_mobile=False, has_touch=False))

    def tab_to(selector: str) -> None:
        for _ in range(80):
            page.keyboard.press("Tab")
            if page.locator(":focus").evaluate("(e, s) => e.matches(s)", selector):
                return
        pytest.fail(f"Tab does not reach {selector}")

    tab_to("[data-book=list]")
    page.keyboard.press("Enter")
    expect(page.locator("#book-title")).to_be_focused()
    tab_to("#new-wearer")
    page.keyboard.press("Enter")
    expect(page.locator("#new-label")).to_be_focused()
    page.keyboard.type("Nuri")
    page.keyboard.press("Enter")
    expect(page.locator("#measure-title")).to_be_focused()
    tab_to("[name='foot.length']")
    page.keyboard.type("24")
    tab_to("#measure-end [data-book=list]")
    page.keyboard.press("Enter")
    expect(page.locator("#book-title")).to_be_focused()
    tab_to(".wearers a")
    page.keyboard.press("Enter")
    expect(page.locator("#book-title")).to_have_text("Nuri")
    expect(page.locator("#book-title")).to_be_focused()
    tab_to(".states > summary")
    page.keyboard.press("Enter")
    tab_to("[name='wearer-state']")
    page.keyboard.press("ArrowDown")
    expect(page.locator("[value='planned']")).to_be_checked()


def many(count: int) -> list[dict[str, object]]:
    """So many wearers, with labels of several lengths, due over two years."""
    return [
        {
            "id": f"w{number:05}",
            "label": f"Stand {number % 40}, {'with a long story ' * (number % 4)}{number}",
            "state": ["to measure", "measured", "sock one", "handed over"][number % 4],
            "due": f"2199-{number % 12 + 1:02}-{number % 28 + 1:02}" if number % 3 else "",
            "made": 1_700_000_000_000 + number,
        }
        for number in range(count)
    ]


GAPS = """() => {
  window.gaps = [];
  let last = performance.now();
  const next = (now) => { window.gaps.push(now - last); last = now; requestAnimationFrame(next); };
  requestAnimationFrame((now) => { last = now; requestAnimationFrame(next); });
}"""


# A piece of work that takes QUIET ms on the machine these tests were written on, at such times.
YARD = """() => {
  const begun = performance.now();
  let sum = 0;
  for (let at = 0; at < 20_000_000; at += 1) sum += Math.sqrt(at);
  return sum && performance.now() - begun;
}"""
QUIET = 220.0
PICK = """(at) => {
  const order = document.getElementById("book-order");
  order.selectedIndex = at;
  order.dispatchEvent(new Event("change"));
}"""


@pytest.mark.alone
@pytest.mark.pyodide
def test_two_thousand_wearers_without_a_late_frame(phone: BrowserContext) -> None:
    """No more than 50 ms between frames with the processor four times slower, in the best of twenty
    rounds: other work can only lengthen them. A slower machine has longer. To scroll takes the
    browser time too when nothing is drawn: then drawing may add one frame to it."""
    page = with_wearers(phone, WEARERS)
    page.evaluate(PUT, {"wearers": many(2000)})
    page.reload()
    expect(page.locator("#book")).to_contain_text("2004 wearers")
    session = phone.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    slow = max(1.0, min(page.evaluate(YARD) for _ in range(5)) / QUIET)
    page.evaluate(GAPS)
    best: dict[str, float] = {}
    allowed = LATE * slow

    def rounds(name: str, do: Callable[[], object], *, afresh: bool = True) -> None:
        for _ in range(20):
            if afresh:  # the list is at its first rows again
                page.locator("#book-search").fill("s")
                page.locator("#book-search").fill("")
                expect(page.locator("#book")).to_contain_text("2004 wearers")
            page.evaluate("scrollTo(0, 0)")
            page.wait_for_timeout(300)
            page.evaluate("window.gaps.length = 0")
            do()
            page.wait_for_timeout(200)
            worst = float(page.evaluate("Math.max(...window.gaps)"))
            best[name] = min(worst, best.get(name, worst))
            if worst <= allowed:
                return

    def search() -> None:
        page.locator("#book-search").focus()
        page.keyboard.type("stand 17", delay=60)
        expect(page.locator("#book")).to_contain_text("175 of 2004")

    def orders() -> None:
        for order in range(3):  # clicked from inside: what looks for the label takes frames, too
            page.evaluate(PICK, 2 - order)
            page.wait_for_timeout(150)

    rows = page.locator(".wearers li")

    def scroll(wheels: int) -> None:
        for _ in range(wheels):
            page.mouse.wheel(0, 900)
            page.wait_for_timeout(60)

    def scroll_and_draw() -> None:
        drawn = rows.count()
        scroll(18)  # rows are low
        assert rows.count() >= drawn + 100

    rounds("searching", search)
    rounds("putting in order", orders)
    assert max(best.values()) <= allowed, best
    scroll(18)
    there = rows.count()
    rounds("scrolling what is drawn", lambda: scroll(12), afresh=False)
    assert rows.count() <= there + 20, "next to nothing was drawn"
    allowed = max(allowed, best["scrolling what is drawn"] + FRAME * slow)
    rounds("scrolling", scroll_and_draw)
    print(slow, {name: round(worst, 1) for name, worst in best.items()})
    assert best["scrolling"] <= allowed, best


def test_the_whole_list_can_be_scrolled_to_its_end(phone: BrowserContext) -> None:
    page = with_wearers(phone, many(200))
    assert page.locator(".wearers li").count() < 100, "not all drawn at once"
    for _ in range(60):
        page.evaluate("scrollBy(0, 3000)")
        if page.locator(".wearers li").count() == 200:
            break
        page.wait_for_timeout(50)
    assert len(set(labels(page))) == 200
    expect(page.locator("#book .more")).to_have_count(0)
    row = page.locator(".wearers a").nth(150)
    label = str(row.locator(".label").text_content())
    row.scroll_into_view_if_needed()
    where = page.evaluate("scrollY")
    row.tap()
    expect(page.locator("#book h2")).to_have_text(re.compile(re.escape(label.strip())))
    page.go_back()
    expect(page.locator(".wearers li")).to_have_count(200)
    assert abs(page.evaluate("scrollY") - where) < 300, "where she was in the list"


def test_the_database_has_a_version_and_comes_up_from_nothing(phone: BrowserContext) -> None:
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    page.wait_for_timeout(700)
    versions = page.evaluate("indexedDB.databases()")
    assert [one["version"] for one in versions if one["name"] == "heelwise.book"] == [2]
    assert set(held(page)) == {"wearers", "visits", "gone"}
    assert "who" not in json.dumps(held(page)["visits"]), "blank fields take no room"


def test_a_book_kept_by_a_newer_version_is_left_alone(phone: BrowserContext) -> None:
    page: Page = opened(phone)
    page.evaluate(
        """async () => { const made = await new Promise((done) => {
          const asked = indexedDB.open("heelwise.book", 99);
          asked.onsuccess = () => done(asked.result); });
        made.close(); }"""
    )
    open_book(page)
    expect(page.locator("#book .trouble")).to_contain_text("a newer version reads it")
    new_wearer(page, "Nuri", "24")
    back_to_book(page)
    assert labels(page) == ["Nuri"]


def screens_of(page: Page) -> Iterator[str]:
    """Walk through the book; yields the name of each screen as it stands."""
    open_book(page)
    yield "book-empty"
    page.locator("#book button", has_text=said("New wearer")).tap()
    page.locator("#begin-wearer").tap()
    yield "book-new"
    page.locator("#new-label").fill("Nuri")
    page.locator("#begin-wearer").tap()
    field(page, "foot.length").fill("24")
    yield "book-sheet"
    back_to_book(page)
    more = [*WEARERS, {"id": "x", "label": 7}]
    page.evaluate(PUT, {"wearers": more})
    page.evaluate(
        "kept => new BroadcastChannel('heelwise.book').postMessage({ kept, gone: [] })",
        [one["id"] for one in more],
    )
    expect(page.locator(".wearers li")).to_have_count(5)
    yield "book-list"
    card(page, "Nuri")
    page.locator("#come-again").tap()
    back_to_book(page)
    card(page, "Nuri")
    page.locator(".visit-before summary").tap()
    page.locator("#wearer-label").fill("")
    yield "book-wearer"
    page.locator("#delete-wearer").tap()
    yield "book-sure"
    page.locator("#delete-surely").tap()
    expect(page.locator("#bring-wearer-back")).to_be_visible()
    yield "book-deleted"


@pytest.mark.slow
@LOOKS
def test_every_screen_of_the_book(
    new_phone: NewPhone, screens: Path, width: str, scheme: str
) -> None:
    across, down = WIDTHS[width]
    size = {"width": across, "height": down}
    looks = {"color_scheme": scheme, "reduced_motion": "reduce", "device_scale_factor": 1.5}
    page = opened(new_phone(viewport=size, **looks))
    for name in screens_of(page):
        page.screenshot(path=screens / f"{name}-{width}-{scheme}.png", full_page=True)
        assert sideways(page) == 0, f"{name} scrolls sideways"
        assert violations(page) == [], name
        assert too_small(page) == [], name


@pytest.mark.slow
def test_the_book_with_text_twice_as_large(new_phone: NewPhone, screens: Path) -> None:
    phone = new_phone(viewport={"width": 320, "height": 800})
    page = opened(phone)
    session = phone.new_cdp_session(page)
    session.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
    for name in screens_of(page):
        assert page.evaluate("getComputedStyle(document.documentElement).fontSize") == "34px"
        page.screenshot(path=screens / f"{name}-large-text.png")
        assert sideways(page) == 0, f"{name} scrolls sideways"
