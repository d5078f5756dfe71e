"""What sock one taught at the counter is known on every screen, and on no other sheet."""

import json
from collections.abc import Callable

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, go_to, knit, settings, sock_one_measured
from tests.browser.book import back_to_book, card, held, open_book
from tests.browser.host import comes_true
from tests.browser.test_plans_kept import wearer_on_the_machine
from tests.browser.walk import choose, field, opened, share, step

NewPhone = Callable[..., BrowserContext]
FIELDS = ("foot_rounds", "length", "flat_width")


def measured(page: Page, length: str = "21,5", width: str = "") -> str:
    """Sock one off the machine and measured at its counter; returns sock two's foot rounds."""
    go_to(page, "Off the machine")
    knit(page)
    page.locator("#measure-first").tap()
    return measure(page, length, width)


def measure(page: Page, length: str, width: str = "") -> str:
    page.locator("#machine-length").fill(length)
    page.locator("#machine-flat_width").fill(width)
    page.locator("#work-two").tap()
    words = page.locator(".machine-sheet .lesson").inner_text()
    page.locator("#begin-two").tap()
    expect(page.locator(".at-title")).to_contain_text("Sock two")
    return words.split("Knit ")[1].split(" foot rounds")[0]


def leave(page: Page) -> None:
    page.get_by_role("button", name="Leave", exact=True).tap()
    expect(page.locator("#machine")).to_be_hidden()


def sock_one(page: Page) -> list[str]:
    """What stands in the fold."""
    return [field(page, f"first_sock.{name}").input_value() for name in FIELDS]


def test_every_screen_says_sock_two(new_phone: NewPhone) -> None:
    phone = new_phone(permissions=["clipboard-read", "clipboard-write"])
    settings(phone, guard=0)
    page = begun(phone)
    rounds = measured(page, width="10,4")
    assert rounds != "46"
    leave(page)
    expect(page.locator("#machine-line .on-machine")).to_contain_text(f"{rounds} foot rounds")
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)
    expect(field(page, "first_sock.length")).to_be_visible()
    assert sock_one(page) == ["46", "21,5", "10,4"]
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    other = opened(new_phone(), str(page.evaluate("navigator.clipboard.readText()")))
    expect(other.locator(".which-sock")).to_have_text("Sock two")
    expect(other.locator(".tally-foot .figure")).to_have_text(rounds)
    page.evaluate("window.print = () => {}")
    share(page, "#print-card", "#print-this-card")
    expect(page.locator("#paper")).to_contain_text("Sock two on 60 slots")
    expect(page.locator("#paper")).to_contain_text(rounds)

    # One tap makes a swatch of it, and nothing is asked for.
    page.locator("#keep-sock").tap()
    expect(page.locator("#first-sock")).to_contain_text("Kept among the swatches")
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    expect(page.locator("#problems")).to_be_empty()
    step(page, "yarn")
    row = {"rounds": "86", "length": "21,5", "flat_width": "10,4", "needles": "60"}
    for name, text in row.items():
        expect(field(page, f"fabric.swatches.0.{name}")).to_have_value(text)


def test_a_swatch_of_it_keeps_the_stitches_that_were_told(phone: BrowserContext) -> None:
    """Its width was not measured, but stitches per length were told: they are not asked again."""
    settings(phone, guard=0)
    page = begun(phone)
    measured(page)
    leave(page)
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    page.locator("#keep-sock").tap()
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    expect(page.locator("#problems")).to_be_empty()
    step(page, "yarn")
    # 60 stitches at 7.5 an inch are 8 in round: 4 in flat, by hand.
    expect(field(page, "fabric.swatches.0.flat_width")).to_have_value("10.16 cm")
    expect(page.locator("#form")).not_to_contain_text("the counts depend on it")


def test_at_the_counter_too_sock_two_may_be_like_sock_one(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Off the machine")
    knit(page)
    page.locator("#measure-first").tap()
    page.locator("#machine-length").fill("21,5")
    page.locator("#work-two").tap()
    wish = page.locator("label", has=page.locator("#two-like-sock-one"))
    rounds = wish.locator("small").inner_text().split()[0]
    wish.tap()
    expect(page.locator("#two-like-sock-one")).to_be_checked()
    expect(page.locator("#two-taught")).to_contain_text(f"{rounds} foot rounds")
    page.locator("#begin-two").tap()
    leave(page)
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)
    expect(page.locator("#pair-wish input:checked")).to_have_value("sock one")


def test_it_is_told_once_and_what_she_then_forgets_stays_so(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    measured(page)
    leave(page)
    page.locator("#forget-sock").tap()
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    page.locator("#machine-line .go-on").tap()
    expect(page.locator(".target")).to_be_visible()
    page.reload()
    expect(page.locator(".target")).to_be_visible()
    # Measured again, nothing that is known is asked.
    page.get_by_role("button", name="Go to…").tap()
    page.locator("#measure-one").tap()
    expect(page.locator("#machine-foot_rounds")).to_have_value("46")
    expect(page.locator("#machine-length")).to_have_value("21,5")
    page.keyboard.press("Escape")
    leave(page)
    assert sock_one(page) == ["", "", ""]


def test_where_the_page_died_before_it_was_told_it_is_told_later(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    before = page.evaluate("({...localStorage})")
    rounds = measured(page)
    page.evaluate(
        "before => { localStorage.clear(); Object.assign(localStorage, before); }", before
    )
    page.reload()
    expect(page.locator(".target")).to_be_visible()
    leave(page)
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)


def test_other_units_since_then_are_no_other_plan(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    leave(page)
    step(page, "measure")
    choose(page, "inches")
    page.locator("#machine-line .go-on").tap()
    rounds = measured(page, "21,5")
    leave(page)
    step(page, "counts")
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)
    assert sock_one(page) == ["46", "21,5 cm", ""]


def test_a_sheet_that_asks_for_another_pair_is_not_told(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    leave(page)
    step(page, "yarn")
    field(page, "cylinder.slots").fill("64")
    page.locator("#machine-line .go-on").tap()
    measured(page)
    leave(page)
    assert sock_one(page) == ["", "", ""]


def own_page(page: Page) -> dict[str, str]:
    """What is typed on her own page."""
    found: dict[str, str] = json.loads(page.evaluate("localStorage['heelwise.mine'] ?? '{}'"))
    return {name: text for name, text in found.items() if name.startswith("first_sock") and text}


def test_a_wearers_sock_one_goes_to_the_wearer_alone(new_phone: NewPhone) -> None:
    phone = new_phone(permissions=["clipboard-read", "clipboard-write"])
    page = wearer_on_the_machine(phone, "Ferry 10")
    rounds = measured(page)
    leave(page)
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)
    assert sock_one(page)[:2] == ["46", "21,5"]
    assert own_page(page) == {}
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    other = opened(new_phone(), str(page.evaluate("navigator.clipboard.readText()")))
    expect(other.locator(".counts:not(.pencil) .tally-foot .figure")).to_have_text(rounds)
    assert "Ferry" not in other.content()
    came = json.loads(other.evaluate("localStorage['heelwise.visit']"))["values"]
    of_person = ("foot.", "other_foot.", "person.")
    told = {name for name, text in came.items() if text and name.startswith(of_person)}
    assert told <= {"person.shoe_size.system"}, "a choice that always has a value"
    assert came["first_sock.length"] == "21,5"
    comes_true(page, lambda: held(page)["visits"][0]["plans"][0].get("measured"))
    [plan] = held(page)["visits"][0]["plans"]
    assert plan["measured"] == {"foot_rounds": "46", "length": "21,5"}
    assert plan["two"]["figures"]["foot"] == rounds
    assert not any(name.startswith("first_sock") for name in plan["values"])


def test_a_wearers_sheet_that_lies_in_the_book_says_so_too(phone: BrowserContext) -> None:
    page = wearer_on_the_machine(phone, "Ferry 10")
    leave(page)
    comes_true(page, lambda: held(page)["visits"][0].get("plans"))
    back_to_book(page)
    page.locator(".head [data-book=close]").tap()
    page.locator("#visit-line button", has_text="My own page").tap()
    page.locator("#machine-line .go-on").tap()
    rounds = measured(page)
    leave(page)
    comes_true(page, lambda: held(page)["visits"][0]["values"].get("first_sock.length"))
    assert own_page(page) == {}
    open_book(page)
    card(page, "Ferry 10")
    page.locator("#open-sheet").tap()
    step(page, "counts")
    expect(page.locator(".tally-foot .figure")).to_have_text(rounds)


def test_a_way_past_sock_one_tells_that_it_was_measured_since(phone: BrowserContext) -> None:
    """The pair was begun first; sock one was measured on the sheet; then the list leads on."""
    settings(phone, guard=0)
    page = begun(phone)
    leave(page)
    rounds = sock_one_measured(page)
    page.locator("#knit-it").tap()
    page.get_by_role("button", name="Go on with it").tap()
    page.get_by_role("button", name="Go to…").tap()
    sheet = page.locator(".machine-sheet")
    expect(sheet.locator("#measure-one")).to_have_count(0)
    sheet.locator("label", has_text="Sock two").tap()
    sheet.locator(".sections label", has_text="Foot").tap()
    sheet.locator("#places-ask").tap()
    expect(sheet.locator(".sure")).to_contain_text("You measured sock one")
    sheet.locator("#measure-one").tap()
    sheet.locator("#work-two").tap()
    expect(sheet.locator(".lesson")).to_contain_text(f"{rounds} foot rounds")
    page.locator("#begin-two").tap()
    page.get_by_role("button", name="Go to…").tap()
    sheet.locator(".sections label", has_text="Foot").tap()
    expect(sheet.locator(".sections label", has_text="Foot")).to_contain_text(rounds)
    sheet.locator("#places-ask").tap()
    expect(sheet.locator(".sure")).not_to_contain_text("You measured sock one")
