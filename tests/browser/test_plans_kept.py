"""A wearer's plans: kept as knitted, moved along by the machine, told where they now differ."""

import json
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import go_to, knit, settings, target, title
from tests.browser.book import PUT, back_to_book, card, held, new_wearer, open_book, typed
from tests.browser.host import comes_true
from tests.browser.walk import SOCK, behind, choose, field, fill_sock, opened, step

SESSIONS = """async () => {
  const database = await new Promise((done) => {
    const asked = indexedDB.open("heelwise.machine");
    asked.onsuccess = () => done(asked.result);
  });
  const asked = database.transaction("sessions").objectStore("sessions").getAll();
  await new Promise((done) => { asked.onsuccess = done; });
  database.close();
  return asked.result;
}"""


def wearer_on_the_machine(phone: BrowserContext, label: str) -> Page:
    """Somebody in the book whose sock is on the machine."""
    settings(phone, guard=0)
    page = opened(phone)
    open_book(page)
    new_wearer(page, label)
    fill_sock(page)
    step(page, "counts")
    expect(page.locator(".tally-foot .figure")).not_to_be_empty()
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    return page


def leave(page: Page) -> None:
    """From the counter to the page."""
    page.locator(".at-machine .leave").tap()
    expect(page.locator("#machine")).to_be_hidden()


def visit(page: Page) -> dict[str, Any]:
    """The one visit in the book."""
    [found] = held(page)["visits"]
    return found


def state(page: Page) -> str:
    """How far the one wearer's pair is."""
    return str(held(page)["wearers"][0]["state"])


def end_sock(page: Page, sock: str = "") -> None:
    """To the end of a sock, past grafting and washing."""
    go_to(page, "Off the machine", sock=sock)
    knit(page)
    expect(page.locator(".at-end")).to_be_visible()


def test_the_machine_moves_the_wearers_pair_on(phone: BrowserContext, screens: Path) -> None:
    page = wearer_on_the_machine(phone, "Ferry 10")
    expect(title(page).locator("small")).to_have_text("Sock one · Ferry 10")
    leave(page)
    expect(page.locator(".on-machine")).to_contain_text("For Ferry 10.")
    comes_true(page, lambda: state(page) == "sock one")
    [plan] = visit(page)["plans"]
    [session] = page.evaluate(SESSIONS)
    assert plan["knitted"] == session["id"]
    assert plan["counted"] == session["socks"][0]["counted"]

    open_book(page)
    card(page, "Ferry 10")
    kept = page.locator(".kept-plan")
    expect(kept).to_contain_text("Counts as knitted")
    for section, figure in zip(("Cuff", "Foot"), ("cuff", "foot"), strict=True):
        row = kept.locator("tr", has_text=section).locator("td")
        expect(row).to_contain_text(plan["counted"]["figures"][figure])
    expect(kept.locator(".counted-otherwise")).to_have_count(0)
    page.screenshot(path=screens / "plan-kept.png", full_page=True)

    page.locator("[id^=to-machine]").tap()
    expect(target(page)).to_be_visible()
    end_sock(page)
    page.locator("#begin-unmeasured").tap()
    page.go_back()
    expect(page.locator("#book h2")).to_have_text("Ferry 10")
    expect(page.locator("[name=wearer-state]:checked")).to_have_value("sock two")

    page.locator("[id^=to-machine]").tap()
    end_sock(page)
    page.go_back()
    expect(page.locator("[name=wearer-state]:checked")).to_have_value("washed")
    expect(page.locator("[id^=to-machine]")).to_have_count(0)


def test_a_pair_of_another_wearer_is_not_gone_on_with_by_mistake(
    phone: BrowserContext, screens: Path
) -> None:
    page = wearer_on_the_machine(phone, "Ferry 10")
    leave(page)
    asked = page.locator(".machine-sheet")
    page.locator("#knit-it").tap()
    expect(asked).to_contain_text("For Ferry 10. Sock one, waste yarn")
    expect(asked.locator(".go")).to_have_text("Go on with it")
    page.keyboard.press("Escape")
    back_to_book(page)
    new_wearer(page, "Ferry 11", "23,8")
    step(page, "yarn")
    choose(page, "Stitches and rounds")
    for name in ("cylinder.slots", "fabric.stitches", "fabric.rounds"):
        field(page, name).fill(SOCK[name])
    step(page, "counts")
    page.locator("#knit-it").tap()
    expect(asked).to_contain_text("For Ferry 10. Sock one, waste yarn")
    page.screenshot(path=screens / "another-wearers-pair.png")
    expect(asked.locator(".go")).to_have_text("Begin a new pair")
    asked.locator(".go").tap()
    expect(title(page).locator("small")).to_have_text("Sock one · Ferry 11")


def test_what_was_typed_last_is_begun_however_soon_she_taps(phone: BrowserContext) -> None:
    """The tap comes before the answer: it waits, for what stood there before was another's."""
    page = opened(phone)
    fill_sock(page)
    step(page, "counts")
    page.locator("#knit-it").wait_for()
    page.evaluate(
        """() => {
          const typed = document.querySelector("[name='cylinder.slots']");
          typed.value = "72";
          typed.dispatchEvent(new Event("input", { bubbles: true }));
          document.getElementById("knit-it").click();
        }"""
    )
    expect(target(page)).to_be_visible()
    [session] = page.evaluate(SESSIONS)
    assert session["request"]["cylinder"]["slots"] == "72"


def test_a_long_name_takes_no_room_of_the_counts(phone: BrowserContext, screens: Path) -> None:
    """One line, the sock's own words whole: the rest is for two pairs on two machines."""
    page = wearer_on_the_machine(phone, "The ferryman's eldest, who comes on Thursdays" * 3)
    small = title(page).locator("small")
    expect(small).to_contain_text("Sock one · The ferryman")
    height, font = small.evaluate(
        "(e) => [e.clientHeight, parseFloat(getComputedStyle(e).fontSize)]"
    )
    assert height < 1.5 * font
    first, last = (page.locator(f".at-top {one}").bounding_box() for one in (".leave", ".set"))
    assert first
    assert last
    assert first["y"] == last["y"]
    page.screenshot(path=screens / "counter-long-name.png")


# Of what was knitted the database, too, has nothing left for the book.
def test_what_a_newer_version_counts_otherwise_is_told_beside_it(
    phone: BrowserContext, screens: Path
) -> None:
    """The book of an older version, whose counts were others."""
    page = wearer_on_the_machine(phone, "Ferry 10")
    leave(page)
    told = "!Object.keys(JSON.parse(localStorage['heelwise.knitted'] || '{}')).length"
    comes_true(page, lambda: "knitted" in visit(page).get("plans", [{}])[0] and page.evaluate(told))
    # What waits for the book yet would be told once more.
    comes_true(page, lambda: not any(n.startswith("knitted.") for n in typed(page)))
    old = visit(page)
    foot = old["plans"][0]["counted"]["figures"]["foot"]
    old["plans"][0]["counted"] |= {"engine": "0.9"}
    old["plans"][0]["counted"]["figures"]["foot"] = "99"
    page.goto("licences.txt")  # the page itself might still write what it has in memory
    page.evaluate(PUT, {"visits": [old]})
    page.goto("./")
    open_book(page)
    card(page, "Ferry 10")
    kept = page.locator(".kept-plan")
    expect(kept.locator("tr", has_text="Foot").locator("td")).to_contain_text("99")
    expect(kept.locator(".counted-otherwise")).to_contain_text(f"foot {foot}, not 99")
    page.screenshot(path=screens / "plan-otherwise.png", full_page=True)


def test_planned_again_only_until_it_is_knitted(phone: BrowserContext) -> None:
    """Knitted from paper: what she says of the pair keeps its counts too."""
    page = opened(phone)
    open_book(page)
    new_wearer(page, "Ferry 10")
    fill_sock(page)
    step(page, "counts")
    comes_true(page, lambda: len(visit(page).get("plans", [])) == 1)
    first = visit(page)["plans"][0]["counted"]["figures"]["foot"]

    def of_length(text: str) -> None:
        behind(page, "made")
        field(page, "sock.foot_length_of_sock").fill(text)
        step(page, "counts")

    of_length("25 cm")
    comes_true(page, lambda: visit(page)["plans"][-1]["counted"]["figures"]["foot"] != first)
    [plan] = visit(page)["plans"]  # nobody knitted the first
    assert "knitted" not in plan
    step(page, "measure")
    back_to_book(page)
    card(page, "Ferry 10")
    expect(page.locator(".kept-plan")).to_contain_text("Counts as planned")
    page.locator(".states label", has_text="sock one").tap()
    expect(page.locator(".kept-plan")).to_contain_text("Counts as knitted")
    page.locator("#open-sheet").tap()
    of_length("23 cm")
    comes_true(page, lambda: len(visit(page)["plans"]) == 2)
    assert visit(page)["plans"][0]["counted"] == plan["counted"]


def test_a_deleted_wearer_leaves_no_name_at_the_machine(phone: BrowserContext) -> None:
    page = wearer_on_the_machine(phone, "Ferry 10")
    leave(page)
    open_book(page)
    card(page, "Ferry 10")
    page.locator("#wearer-label").fill("Ferry 11")
    comes_true(page, lambda: page.evaluate(SESSIONS)[0].get("who") == "Ferry 11")
    page.locator("#delete-wearer").tap()
    page.locator("#delete-surely").tap()
    comes_true(page, lambda: "who" not in page.evaluate(SESSIONS)[0])
    assert "Ferry" not in json.dumps(page.evaluate(SESSIONS))
    page.locator("#bring-wearer-back").tap()
    comes_true(page, lambda: page.evaluate(SESSIONS)[0].get("who") == "Ferry 11")
