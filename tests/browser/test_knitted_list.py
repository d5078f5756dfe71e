"""Pairs that are knitted, on the page: what stays of them, deleted, brought back, brought over."""

import re
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, go_to, knit, settings, target
from tests.browser.book import card, held, open_book
from tests.browser.host import comes_true
from tests.browser.knitted import pair
from tests.browser.test_ended import MOST, on_disk, size
from tests.browser.test_kept_versions import MAKE
from tests.browser.test_plans_kept import leave, wearer_on_the_machine
from tests.browser.walk import step

NONE: dict[str, list[Any]] = {"sessions": [], "happenings": []}


def knitted(page: Page) -> None:
    """Both socks to their end, by the shortest way."""
    for sock in ("Sock one", "Sock two"):
        go_to(page, "Off the machine", sock=sock)
        knit(page)
    expect(page.locator(".at-end")).to_contain_text("Both socks are knitted.")


def was_on_screen(page: Page, pair: str) -> None:
    """As if the counter of a pair had been on screen last."""
    page.evaluate(
        """pair => {
          localStorage['heelwise.shown'] = JSON.stringify({ pair });
          localStorage['heelwise.shown.changed'] = JSON.stringify({ at: Date.now() });
        }""",
        pair,
    )


def holding(phone: BrowserContext, *pairs: dict[str, Any]) -> Page:
    """A page of the site without a script, where the first version kept these pairs."""
    stores = {
        "sessions": {"keyPath": "id", "records": [one["session"] for one in pairs]},
        "happenings": {
            "keyPath": ["session", "number"],
            "records": [each for one in pairs for each in one["happenings"]],
        },
    }
    page = phone.new_page()
    page.goto("manifest.webmanifest")
    page.evaluate(MAKE, ["heelwise.machine", {"version": 1, "stores": stores}])
    return page


def under_way(page: Page) -> dict[str, list[Any]]:
    """What is kept of pairs that are not knitted."""
    there = on_disk(page)
    return {name: there[name] for name in NONE}


def test_a_knitted_pair_is_kept_small_deleted_and_brought_back(
    phone: BrowserContext, screens: Any
) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 31)
    page.get_by_role("button", name="Note").tap()
    page.locator("#note-text").fill("dropped stitch")
    page.locator("#keep-note").tap()
    knitted(page)
    page.reload()
    expect(page.locator(".at-end")).to_contain_text("Both socks are knitted.")
    assert on_disk(page)["ended"] == [], "as long as its counter is on screen it can be taken back"
    page.get_by_role("button", name="Leave the counter").tap()
    comes_true(page, lambda: under_way(page) == NONE)
    [ended] = on_disk(page)["ended"]
    assert size(ended) <= MOST
    place = page.locator("#knitted-place")
    expect(place.locator("summary")).to_have_text("Knitted: 1 pair")
    place.locator("summary").tap()
    expect(place.locator(".knitted-pair")).to_contain_text("60 slots, 46 foot rounds")
    expect(place.locator(".knitted-pair")).to_contain_text("foot 46")
    expect(place.locator(".notes")).to_contain_text(
        re.compile("Sock one, foot, 31 done *dropped stitch")
    )
    place.scroll_into_view_if_needed()
    page.screenshot(path=screens / "knitted.png")
    place.locator(".delete-pair").tap()
    expect(place.locator(".knitted-pair")).to_have_count(0)
    assert on_disk(page)["ended"] == []
    assert [one["id"] for one in on_disk(page)["gone"]] == [ended["id"]]
    place.locator(".bring-back").tap()
    expect(place.locator(".knitted-pair")).to_have_count(1)
    assert on_disk(page)["ended"] == [ended]
    assert on_disk(page)["gone"] == []

    page.reload()
    expect(page.locator("#counts-title")).to_be_visible()
    expect(place.locator("summary")).to_have_text("Knitted: 1 pair")
    place.locator("summary").tap()
    place.locator(".delete-pair").tap()
    expect(place.locator(".bring-back")).to_be_visible()
    page.reload()
    expect(page.locator("#counts-title")).to_be_visible()
    page.wait_for_timeout(1000)
    expect(place).to_be_empty()
    # Its address says so, and nothing is on screen that was not asked for.
    was_on_screen(page, "x")
    page.goto("about:blank")
    page.goto("./#knit")
    expect(page.locator("#machine-trouble")).to_contain_text("Begin it again")


def test_the_address_of_a_knitted_pair_says_that_it_is_knitted(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    knitted(page)
    page.go_back()
    expect(page.locator("#knitted-place summary")).to_be_visible()
    [ended] = on_disk(page)["ended"]
    was_on_screen(page, ended["id"])
    page.goto("about:blank")
    page.goto("./#knit")
    expect(page.locator("#machine-trouble")).to_contain_text("That pair is knitted")
    expect(page.locator("#machine")).to_be_hidden()


def test_what_it_took_is_known_for_the_next_pair(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot")
    for _ in range(7):
        page.wait_for_timeout(60)
        page.keyboard.press("PageDown")
    knitted(page)
    page.go_back()
    comes_true(page, lambda: len(on_disk(page)["ended"]) == 1)
    [ended] = on_disk(page)["ended"]
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    [session] = on_disk(page)["sessions"]
    assert session["earlier"]["foot round"] == ended["times"]["foot"]["round"] > 0


def test_pairs_of_an_older_version_are_brought_over(phone: BrowserContext) -> None:
    whole, half = pair("p-1", 1), pair("p-2", 2)
    half["happenings"] = half["happenings"][:300]
    away = pair("p-3", 3, away=True)
    pairs = (whole, half, away)
    page = holding(phone, *pairs)
    page.evaluate("localStorage['heelwise.knitting'] = '{\"shown\": null, \"unfinished\": 1}'")
    page.goto("./")
    expect(page.locator("#machine-line .on-machine")).to_have_count(1)
    there = on_disk(page)
    assert [one["id"] for one in there["sessions"]] == ["p-2"]
    assert there["happenings"] == half["happenings"], "those under way are as they were"
    assert [one["id"] for one in there["ended"]] == ["p-1", "p-3"]
    step(page, "counts")
    expect(page.locator("#knitted-place summary")).to_have_text("Knitted: 2 pairs")
    page.locator("#machine-line .go-on").tap()
    expect(target(page)).to_be_visible()


def test_a_deleted_wearer_leaves_no_word_in_their_knitted_pair(phone: BrowserContext) -> None:

    page = wearer_on_the_machine(phone, "Ferry 10")
    go_to(page, "Foot", 5)
    page.get_by_role("button", name="Note").tap()
    page.locator("#note-text").fill("for the ferryman")
    page.locator("#keep-note").tap()
    knitted(page)
    leave(page)
    comes_true(page, lambda: len(on_disk(page)["ended"]) == 1)
    comes_true(page, lambda: held(page)["wearers"][0]["state"] == "washed")
    before = on_disk(page)["ended"]
    assert before[0]["who"] == "Ferry 10"
    open_book(page)
    card(page, "Ferry 10")
    page.locator("#delete-wearer").tap()
    page.locator("#delete-surely").tap()
    comes_true(page, lambda: "who" not in on_disk(page)["ended"][0])
    text = str(on_disk(page)["ended"])
    assert "ferryman" not in text
    assert "9 in" not in text
    page.locator("#bring-wearer-back").tap()
    comes_true(page, lambda: on_disk(page)["ended"] == before)


def test_how_the_socks_came_out_is_shown_and_saved(phone: BrowserContext, tmp_path: Any) -> None:
    """Sock one planned at some 23 cm: two within what was promised, one far beyond."""
    pairs = [pair(f"p-{at}", at) for at in (1, 2, 3)]
    for one, length in zip(pairs, ("23", "22,6", "27"), strict=True):
        for each in one["happenings"]:
            if "measured" in each:
                each["measured"] = {**each["measured"], "length": length}
    page = holding(phone, *pairs)
    page.goto("./")
    expect(page.locator("#waiting")).to_be_hidden()
    step(page, "counts")
    page.locator("#knitted-place summary").tap()
    page.locator("#came-out").tap()
    place = page.locator(".came-out")
    expect(place.locator("li")).to_have_count(3)
    assert page.evaluate("document.activeElement.id") == "came-out-title"
    expect(place.locator("circle")).to_have_count(2)
    expect(place.locator(".cross")).to_have_count(1)
    expect(place).to_contain_text("2 of 3 socks came out within their range")
    expect(place).to_contain_text("differ from one to the next by about")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    with page.expect_download() as saving:
        place.locator("#save-record").tap()
    saving.value.save_as(tmp_path / "socks.csv")
    lines = (tmp_path / "socks.csv").read_text(encoding="utf-8-sig").splitlines()
    assert lines[0].startswith('"Pair","Day"')
    assert len(lines) == 4
    assert all(re.search(r',"20\d\d-\d\d-\d\d",', line) for line in lines[1:])
    assert [line.rsplit(",", 1)[1] for line in lines[1:]] == ['"1"', '"1"', '"0"']
