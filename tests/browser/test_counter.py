"""At the machine: counted by touch, key and pedal; taken back, gone to, noted; kept."""

import json
import re
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests import asking as api
from tests.browser.at_machine import (
    begun,
    done,
    go_to,
    knit,
    planned,
    request,
    settings,
    sock_one_measured,
    take_back,
    target,
    title,
)
from tests.browser.book import typed
from tests.browser.host import comes_true, until
from tests.browser.walk import field, figures, fill_sock, more_of, opened, step

NewPhone = Callable[..., BrowserContext]


def by_hand(page: Page) -> Locator:
    """The target while it shows a thing to do by hand."""
    return page.locator("[data-look=do] .target")


def said(page: Page) -> Locator:
    """What the counter announces."""
    return page.locator("body > .said[role=status], #machine ~ .said").first


def past_the_hands(page: Page) -> None:
    """Tap what is to be done by hand until there is something to crank."""
    while by_hand(page).count():
        before = page.locator(".by-hand-text").inner_text()
        target(page).tap()
        expect(page.locator(".by-hand-text", has_text=before)).to_have_count(0)


def test_a_section_and_a_heel_by_touch(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    expect(title(page)).to_contain_text("Sock one")
    expect(title(page)).to_contain_text("Waste yarn")
    expect(target(page)).to_have_accessible_name(re.compile("Tap when done Done$"))
    past_the_hands(page)
    # It is called by what it reads (WCAG 2.2, 2.5.3), and by what a press says.
    name = re.compile("^10 rounds left 0 of 10 done .*Round done$")
    expect(target(page)).to_have_accessible_name(name)
    for left in range(10, 0, -1):
        expect(page.locator(".left-figure")).to_have_text(str(left))
        expect(page.locator(".last-few")).to_have_count(1 if left <= 5 else 0)
        target(page).tap()
    expect(title(page)).to_contain_text("Cuff")
    expect(by_hand(page)).to_be_visible()

    go_to(page, "Heel", 0)
    past_the_hands(page)
    plan = api.answer({"do": "knit", "request": request()})
    rows = [one for one in plan["steps"] if one["part"] == "heel" and one["kind"] == "row"]
    assert len(rows) == 40
    for at, row in enumerate(rows):
        expect(done(page)).to_have_text(f"Row {at + 1} of 40")
        expect(page.locator(".ring-figure")).to_have_text(str(40 - at))
        words = page.locator(".row-words").inner_text()
        assert f"carrier {row['direction']}" in words.lower()
        moved = f"Bring needle {row['back']} back" if row["back"] else f"lift needle {row['hold']}"
        assert moved in words
        where = row["back_where"] or row["hold_where"]
        assert where in words
        expect(page.locator(".needle-number")).to_have_text(str(row["back"] or row["hold"]))
        if at:  # no two rows are alike: each is announced
            expect(said(page)).to_contain_text(row["text"])
        for reminder in row["remind"]:
            expect(page.locator(".remind", has_text=reminder)).to_be_visible()
        in_work = str(page.locator(".needle-work").get_attribute("d"))
        assert in_work.count("M") == abs(row["knits"][0] - row["knits"][1]) + 1
        target(page).tap()
    expect(by_hand(page)).to_be_visible()
    expect(title(page)).to_contain_text("Heel")


def test_keys_and_pedals_count_and_held_keys_do_not(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 10)
    keys = ["Space", "Enter", "PageDown", "ArrowRight", "ArrowDown", "MediaTrackNext"]
    for count, key in enumerate(keys, start=11):
        page.keyboard.press(key)
        expect(done(page)).to_have_text(f"{count} of 46 done")
    for count, name in enumerate(("MediaPlayPause", "AudioVolumeUp", "AudioVolumeDown"), start=17):
        page.evaluate(
            """(key) => document.body.dispatchEvent(
                new KeyboardEvent("keydown", { key, bubbles: true }))""",
            name,
        )
        expect(done(page)).to_have_text(f"{count} of 46 done")
    target(page).focus()
    page.keyboard.press("Space")  # once, though a button takes a space for a click
    page.keyboard.press("Enter")
    expect(done(page)).to_have_text("21 of 46 done")
    page.keyboard.down("PageDown")
    page.keyboard.down("PageDown")  # what a key that is held repeats
    page.keyboard.up("PageDown")
    expect(done(page)).to_have_text("22 of 46 done")
    page.keyboard.press("a")
    page.get_by_role("button", name="Note").focus()
    page.keyboard.press("Enter")  # on another control it is that control's
    expect(page.locator("#note-text")).to_be_focused()
    page.keyboard.press("Space")
    page.keyboard.press("PageDown")
    page.keyboard.press("Escape")
    expect(page.locator(".machine-sheet")).to_be_hidden()
    expect(done(page)).to_have_text("22 of 46 done")
    # A screen reader clicks without a finger.
    target(page).dispatch_event("click")
    expect(done(page)).to_have_text("23 of 46 done")


@pytest.mark.whole
def test_two_too_close_are_one_and_the_second_is_offered(phone: BrowserContext) -> None:
    page = begun(phone)
    go_to(page, "Foot", 10)
    page.wait_for_timeout(300)
    two = """() => ["PageDown", "PageDown"]
        .map((key) => new KeyboardEvent("keydown", { key, bubbles: true }))
        .forEach((event) => document.body.dispatchEvent(event))"""
    page.evaluate(two)
    notice = page.locator(".notice")
    expect(notice).to_contain_text("Two within 0.25 s: one counted.")
    expect(done(page)).to_have_text("11 of 46 done")
    notice.get_by_role("button", name="Count the second too").tap()
    expect(done(page)).to_have_text("12 of 46 done")
    expect(notice).to_have_count(0)

    page.wait_for_timeout(300)
    page.evaluate(two)
    expect(notice).to_be_visible()
    page.get_by_role("button", name="Settings").tap()
    page.locator(".machine-sheet label", has_text="off").tap()
    page.get_by_role("button", name="Close").tap()
    page.evaluate(two)
    page.evaluate(two)
    expect(done(page)).to_have_text("17 of 46 done")
    expect(notice).to_have_count(0)


def test_ten_are_taken_back_by_a_hold(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 30)
    for _ in range(11):
        page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("41 of 46 done")
    page.locator(".take-back").tap()
    expect(page.locator(".at-middle")).to_contain_text("Hold to take back the last round.")
    expect(done(page)).to_have_text("41 of 46 done")
    for count in range(40, 30, -1):
        take_back(page)
        expect(done(page)).to_have_text(f"{count} of 46 done")
    expect(page.locator(".take-back")).to_be_disabled()
    expect(done(page)).to_have_text("31 of 46 done")
    page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("32 of 46 done")
    # By keyboard it asks instead.
    page.locator(".take-back").focus()
    page.keyboard.press("Enter")
    expect(done(page)).to_have_text("32 of 46 done")
    expect(page.locator(".notice")).to_contain_text("Take back the last round?")
    page.get_by_role("button", name="Take it back").tap()
    expect(done(page)).to_have_text("31 of 46 done")


def test_any_place_can_be_gone_to_and_the_number_set(phone: BrowserContext) -> None:
    page = begun(phone)
    page.get_by_role("button", name="Go to…").tap()
    sheet = page.locator(".machine-sheet")
    sheet.locator(".sections label", has_text="Foot").tap()
    for wrong in ("47", "-1", "", "ten"):
        sheet.locator("#places-done").fill(wrong)
        sheet.locator("#places-ask").tap()
        expect(sheet.locator("#places-error")).to_have_text(
            "Foot has 46 rounds. Write how many are done, from 0 to 46."
        )
        expect(sheet.locator("#places-go")).to_have_count(0)
    sheet.locator("#places-done").fill("31")
    sheet.locator("#places-ask").tap()
    expect(sheet.locator(".sure")).to_have_text(
        re.compile(r"From waste yarn: 0 of 10 done\s+to foot: 31 of 46 done\.")
    )
    expect(title(page)).to_contain_text("Waste yarn")
    sheet.locator("#places-go").tap()
    expect(title(page)).to_contain_text("Foot")
    expect(done(page)).to_have_text("31 of 46 done")
    # The number by hand: the section she is in is chosen already.
    page.get_by_role("button", name="Go to…").tap()
    expect(sheet.locator("#places-done")).to_have_value("31")
    sheet.locator("#places-done").fill("29")
    sheet.locator("#places-done").press("Enter")
    sheet.locator("#places-go").tap()
    expect(done(page)).to_have_text("29 of 46 done")
    # Taken back, a jump goes whole: before and after it the strip says so.
    page.locator(".take-back").tap()
    expect(page.locator(".at-middle")).to_contain_text(
        "Hold to take back the jump: to foot, 31 of 46 rounds done."
    )
    take_back(page)
    expect(done(page)).to_have_text("31 of 46 done")
    expect(page.locator(".at-middle")).to_contain_text(
        "The jump is taken back: Foot. 31 of 46 rounds done"
    )


def test_both_answers_to_a_jump_are_in_sight(new_phone: NewPhone) -> None:
    page = begun(new_phone(viewport={"width": 390, "height": 640}))
    page.get_by_role("button", name="Go to…").tap()
    page.locator(".machine-sheet .sections label", has_text="Foot").tap()
    page.locator("#places-ask").tap()
    expect(page.locator("#places-go")).to_be_focused()
    expect(page.get_by_role("button", name="Stay here")).to_be_in_viewport(ratio=1)


def test_what_makes_ready_for_the_heel_fits_a_phone(new_phone: NewPhone) -> None:
    """Every line to tick and, below the last, what is tapped when all is done."""
    phone = new_phone(viewport={"width": 360, "height": 640})
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Leg", 48)
    expect(page.locator(".to-tick label")).to_have_count(5)
    for one in (*page.locator(".to-tick label").all(), target(page)):
        expect(one).to_be_in_viewport(ratio=1)


@pytest.mark.whole
def test_what_comes_next_is_read_whole_on_a_tap(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Leg", 40)
    strip = page.locator("button.strip")
    following = page.locator(".at-next")
    expect(following).to_contain_text(
        "Heel. Make ready for the heel. Stop with the yarn carrier left of needle 1"
    )
    cut = "(e) => e.scrollHeight > e.clientHeight + 1"
    assert following.evaluate(cut)
    strip.tap()
    expect(strip).to_have_attribute("aria-expanded", "true")
    assert not following.evaluate(cut)
    page.keyboard.press("Space")  # a pedal goes on counting
    expect(done(page)).to_have_text("41 of 48 done")
    expect(strip).to_have_attribute("aria-expanded", "true")
    strip.tap()
    assert following.evaluate(cut)
    go_to(page, "Cuff", 19)
    expect(following).to_contain_text("Next: Take the weight off")
    go_to(page, "Heel", 5)
    expect(following).to_have_text(re.compile(r"^\s*Next:\s+Carrier right, then lift needle \d"))


def test_the_figure_stands_still_when_the_stop_is_near(new_phone: NewPhone) -> None:
    phone = new_phone(viewport={"width": 390, "height": 844})
    settings(phone, guard=0)
    page = begun(phone)

    def top(name: str) -> float:
        box = page.locator(name).bounding_box()
        assert box
        return box["y"]

    go_to(page, "Foot", 40)
    before = top(".left-figure")
    target(page).tap()
    expect(page.locator(".last-few")).to_be_visible()
    assert top(".left-figure") == before
    go_to(page, "Heel", 5)
    ring = top(".rim")
    target(page).tap()
    expect(page.locator(".remind")).to_be_visible()
    assert top(".rim") == ring


def test_a_note_comes_back_at_its_round_of_the_other_sock(phone: BrowserContext) -> None:
    page = begun(phone)
    go_to(page, "Foot", 31)
    page.get_by_role("button", name="Note").tap()
    page.locator("#keep-note").tap()
    expect(page.locator("#note-error")).to_contain_text("The note is empty")
    page.locator("#note-text").fill("dropped stitch, 31")
    page.locator("#keep-note").tap()
    expect(page.locator(".of-other")).to_have_count(0)
    go_to(page, "Foot", 30, sock="Sock two")
    expect(title(page)).to_contain_text("Sock two")
    expect(page.locator(".of-other")).to_have_count(0)
    target(page).tap()
    expect(page.locator(".of-other")).to_have_text("Sock one, here: dropped stitch, 31")


def test_a_second_tab_follows_and_can_take_over(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 10)
    other = phone.new_page()
    other.goto("./#knit")
    expect(done(other)).to_have_text("10 of 46 done")
    expect(other.locator(".notice")).to_contain_text("Another tab is counting")
    target(page).tap()
    expect(done(other)).to_have_text("11 of 46 done")
    target(other).dispatch_event("pointerdown", {"pointerType": "touch"})
    expect(other.locator(".follows")).to_be_visible()
    expect(done(other)).to_have_text("11 of 46 done")
    other.get_by_role("button", name="Count here").tap()
    expect(other.locator(".follows")).to_have_count(0)
    target(other).tap()
    expect(done(other)).to_have_text("12 of 46 done")
    expect(done(page)).to_have_text("12 of 46 done")
    expect(page.locator(".follows")).to_be_visible()
    other.close()
    expect(page.locator(".follows")).to_have_count(0)
    target(page).tap()
    expect(done(page)).to_have_text("13 of 46 done")


def test_reload_back_and_the_line_at_the_top(phone: BrowserContext) -> None:
    page = begun(phone)
    go_to(page, "Foot", 31)
    expect(done(page)).to_have_text("31 of 46 done")
    page.reload()
    expect(done(page)).to_have_text("31 of 46 done")
    page.go_back()
    expect(page.locator(".at-machine")).to_be_hidden()
    assert page.url.endswith("#counts")
    line = page.locator("#machine-line")
    expect(line).to_contain_text("A sock is on the machine. Sock one, foot, 31 of 46 rounds done.")
    line.locator(".go-on").tap()
    expect(done(page)).to_have_text("31 of 46 done")
    page.get_by_role("button", name="Leave").tap()
    expect(page.locator("#counts-title")).to_be_visible()
    page.reload()
    expect(line).to_contain_text("31 of 46")
    more_of(line)
    line.locator(".put-away").tap()
    expect(line).not_to_contain_text("is on the machine")
    expect(line.locator(".bring-back")).to_be_visible()
    page.reload()
    expect(page.locator("#counts-title")).to_be_visible()
    expect(line).to_contain_text("Put away: 1 pair")
    page.locator("#knit-it").tap()  # nothing is on it: begun anew, and asked nothing
    expect(title(page)).to_contain_text("Waste yarn")
    page.go_back()
    more_of(line)
    line.locator(".put-away").tap()  # two are away now, and neither takes the other's place
    expect(line.locator(".bring-back")).to_have_count(2)
    line.locator(".remove").first.tap()
    page.locator("#keep-pair").tap()
    line.locator(".bring-back").last.tap()
    expect(line.locator(".on-machine")).to_contain_text("31 of 46")
    expect(line.locator(".bring-back")).to_have_count(1)
    line.locator(".away > summary").tap()
    line.locator(".bring-back").tap()
    expect(line.locator(".on-machine")).to_have_count(2)
    page.locator("#knit-it").tap()
    expect(page.locator(".machine-sheet")).to_contain_text("You have a pair under way")
    page.locator("#go-on-instead").tap()
    expect(target(page)).to_be_visible()


def test_it_comes_back_at_once_and_without_the_calculator(new_phone: NewPhone) -> None:
    phone = new_phone(service_workers="block")
    page = begun(phone)
    go_to(page, "Foot", 31)
    expect(done(page)).to_have_text("31 of 46 done")
    page.close()
    phone.route("**/assets/worker-*.js", lambda route: route.abort())
    again = phone.new_page()
    again.goto("./")  # as from the home screen: the address says nothing
    expect(done(again)).to_have_text("31 of 46 done")
    target(again).tap()
    expect(done(again)).to_have_text("32 of 46 done")
    again.go_back()
    expect(again.locator("#counts-title")).to_be_visible()  # whence "Knit it" was tapped
    line = again.locator("#machine-line")
    expect(line).to_contain_text("32 of 46")
    step(again, "yarn")
    line.locator(".go-on").tap()
    expect(done(again)).to_have_text("32 of 46 done")
    until(again, "JSON.parse(localStorage['heelwise.shown']).pair")
    again.goto("about:blank")
    again.goto("./#knit")
    again.get_by_role("button", name="Leave").tap()
    expect(again.locator("#yarn-title")).to_be_visible()
    expect(again.locator("#counts-title")).to_be_hidden()


def test_left_it_stays_left_where_local_storage_is_late(new_phone: NewPhone) -> None:
    """Chromium writes local storage seconds after the page did; a kill in between loses that."""
    phone = new_phone()
    page = begun(phone)
    before = page.evaluate(
        "Object.entries(localStorage).filter(([key]) => key.startsWith('heelwise.shown'))"
    )
    assert "pair" in before[0][1] + before[1][1]
    page.get_by_role("button", name="Leave").tap()
    comes_true(page, lambda: typed(page)["shown"]["pair"] is None)
    page.goto("licences.txt")  # the page itself would write what it has in memory
    late = "(before) => before.forEach(([key, text]) => localStorage.setItem(key, text))"
    page.evaluate(late, before)
    page.goto("./")
    expect(page.locator("#machine-line .on-machine")).to_be_visible()
    expect(page.locator("#counts-title")).to_be_visible()
    expect(target(page)).to_be_hidden()


# A busy phone after a kill: the database of what was typed answers when the test lets it.
SLOW_DATABASE = """
const released = new Promise((resolve) => { globalThis.release = resolve; });
const open = IDBFactory.prototype.open;
IDBFactory.prototype.open = function (name, ...more) {
  const request = open.call(this, name, ...more);
  if (name !== "heelwise.typed") return request;
  const listen = request.addEventListener.bind(request);
  request.addEventListener = (kind, act) =>
    listen(kind, kind === "success" ? (event) => released.then(() => act(event)) : act);
  return request;
};
"""
WAITED_FOR = 2500  # ms: more than a page waits for what it has kept


def test_a_database_that_answers_late_is_still_believed(new_phone: NewPhone) -> None:
    """Local storage as it was before the counter came, and then as it was before it was left."""
    phone = new_phone()
    page = opened(phone)
    planned(page)
    stored = "Object.entries(localStorage).filter(([key]) => key.startsWith('heelwise.shown'))"
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    comes_true(page, lambda: typed(page).get("shown", {}).get("pair"))
    on_screen = page.evaluate(stored)
    assert on_screen
    phone.add_init_script(SLOW_DATABASE)
    page.goto("licences.txt")  # the page itself would write what it has in memory
    page.evaluate("names => names.forEach(([name]) => localStorage.removeItem(name))", on_screen)
    page.goto("./")
    page.wait_for_timeout(WAITED_FOR)
    expect(page.locator("#measure-title")).to_be_visible()
    expect(target(page)).to_be_hidden()
    page.evaluate("release()")
    expect(target(page)).to_be_visible()
    page.get_by_role("button", name="Leave").tap()
    comes_true(page, lambda: typed(page)["shown"]["pair"] is None)
    page.goto("licences.txt")
    page.evaluate(
        "all => all.forEach(([name, text]) => localStorage.setItem(name, text))", on_screen
    )
    page.goto("./")
    page.wait_for_timeout(WAITED_FOR)
    expect(target(page)).to_be_visible()
    page.evaluate("release()")
    expect(target(page)).to_be_hidden()
    expect(page.locator("#machine-line .on-machine")).to_be_visible()


def test_a_whole_pair_is_as_planned_and_sock_two_as_corrected(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0, sounds=False)
    page = begun(phone)
    sock = api.answer({"do": "plan", "request": request()})["counts"]
    waste = 10  # rounds of waste yarn at either end: engine.sources.WASTE_ROUNDS
    planned = {
        "Waste yarn": waste,
        "Cuff": sock["cuff"]["rounds"],
        "Leg": sock["leg"]["rounds"],
        "Heel": sock["heel"]["rows"],
        "Foot": sock["foot"]["rounds"],
        "Toe": sock["toe"]["rows"],
        "Off the machine": waste,
    }
    assert planned["Foot"] == 46
    assert knit(page) == planned
    expect(page.locator(".at-end")).to_contain_text("Sock one is off the machine.")
    page.locator(".at-end .go").tap()
    expect(page.locator("#machine-foot_rounds")).to_have_value("46")
    page.locator("#machine-length").fill("9,x")
    page.locator("#work-two").tap()
    expect(page.locator("#machine-length-error")).to_contain_text("cannot be read")
    page.locator("#machine-length").fill("21,5")
    page.locator("#work-two").tap()
    first = {"foot_rounds": "46", "length": "21,5"}
    two = api.answer({"do": "plan", "request": request(first_sock=first)})["counts"]
    assert two["foot"]["rounds"] != planned["Foot"]
    expect(page.locator(".machine-sheet .lesson")).to_contain_text(
        f"{two['foot']['rounds']} foot rounds"
    )
    expect(page.locator(".machine-sheet .lesson")).to_be_in_viewport(ratio=1)
    expect(page.locator(".machine-sheet .lesson")).to_be_focused()
    page.locator("#begin-two").tap()
    expect(title(page)).to_contain_text("Sock two")
    assert knit(page) == {**planned, "Foot": two["foot"]["rounds"]}
    expect(page.locator(".at-end")).to_contain_text("Both socks are knitted.")
    page.get_by_role("button", name="Leave the counter").tap()
    expect(page.locator("#counts-title")).to_be_visible()
    expect(page.locator("#machine-line")).not_to_contain_text("on the machine")


def test_sock_two_without_measuring_and_measured_later(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Off the machine")
    expect(title(page)).to_contain_text("Off the machine")
    knit(page)
    page.get_by_role("button", name="Leave the counter").tap()
    expect(page.locator("#machine-line")).to_contain_text(
        "A pair is half knitted. Sock one is off the machine; sock two comes next."
    )
    page.locator("#machine-line .go-on").tap()
    page.locator("#begin-unmeasured").tap()
    expect(title(page)).to_contain_text("Sock two")
    go_to(page, "Foot", 31)
    page.get_by_role("button", name="Go to…").tap()
    page.locator("#measure-one").tap()
    page.locator("#machine-foot_rounds").fill("46")
    page.locator("#machine-length").fill("21,5")
    page.locator("#work-two").tap()
    page.locator("#begin-two").tap()
    expect(done(page)).not_to_have_text("31 of 46 done")
    expect(done(page)).to_contain_text("31 of ")
    go_to(page, "Toe", 1)
    page.get_by_role("button", name="Go to…").tap()
    expect(page.locator("#places-ask")).to_be_visible()
    expect(page.locator("#measure-one")).to_have_count(0)


def test_what_is_said_to_those_who_listen(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 38)
    expect(said(page)).to_have_text("Foot. 38 of 46 rounds done")
    page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("39 of 46 done")
    expect(said(page)).to_have_text("Foot. 38 of 46 rounds done")  # not every round
    for _ in range(2):
        page.keyboard.press("PageDown")
    expect(said(page)).to_have_text("5 rounds to go.")
    for _ in range(5):
        page.keyboard.press("PageDown")
    expect(said(page)).to_contain_text("Foot done. Toe.")
    go_to(page, "Cuff", 19)
    expect(said(page)).to_contain_text("Cuff. 19 of 20")
    page.keyboard.press("PageDown")
    expect(by_hand(page)).to_be_visible()
    past_the_hands(page)
    expect(said(page)).to_have_text("Cuff done. Leg: knit 48 rounds.")
    assert not page.locator("#said").evaluate("(e) => e.checkVisibility()")  # the page's own


def test_the_phone_that_keeps_nothing_says_so_and_goes_on(new_phone: NewPhone) -> None:
    phone = new_phone()
    phone.add_init_script("IDBFactory.prototype.open = () => { throw new Error('closed'); };")
    settings(phone, guard=0, awake=False)
    page = begun(phone)
    expect(page.locator(".notice")).to_contain_text("Your phone isn’t saving")
    go_to(page, "Foot", 31)
    target(page).tap()
    expect(done(page)).to_have_text("32 of 46 done")
    page.get_by_role("button", name="Got it").tap()
    expect(title(page)).to_contain_text("Not saving")
    page.reload()
    expect(page.locator("#machine-trouble")).to_contain_text("storage does not answer")
    expect(page.locator("#form")).to_be_visible()


def test_a_screen_that_may_go_dark_is_told(new_phone: NewPhone) -> None:
    phone = new_phone()
    phone.add_init_script(
        "WakeLock.prototype.request = () => Promise.reject(new DOMException('', 'AbortError'));"
    )
    page = begun(phone)
    expect(page.locator(".notice")).to_contain_text("it may go dark")
    page.get_by_role("button", name="Got it").tap()
    expect(page.locator(".notice")).to_have_count(0)
    page.reload()
    expect(target(page)).to_be_visible()
    expect(page.locator(".notice")).to_have_count(0)  # once told, told


def test_sock_two_of_a_plan_that_knows_sock_one(phone: BrowserContext) -> None:
    page = opened(phone)
    planned(page)
    rounds = sock_one_measured(page)
    page.locator("#knit-it").tap()
    page.locator("#begin-sock-two").tap()
    expect(title(page)).to_contain_text("Sock two")
    go_to(page, "Foot", 1)
    expect(done(page)).to_have_text(f"1 of {rounds} done")


def test_a_new_pair_begins_at_sock_one_though_an_old_one_was_measured(
    phone: BrowserContext,
) -> None:
    page = opened(phone)
    planned(page)
    sock_one_measured(page)
    page.locator("#knit-it").tap()
    page.locator("#begin-sock-one").tap()
    expect(title(page)).to_contain_text("Sock one")
    go_to(page, "Foot", 1)
    expect(done(page)).to_have_text("1 of 46 done")


def test_what_was_written_of_sock_one_on_the_plan_is_taken_up_here(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Off the machine")
    knit(page)
    page.get_by_role("button", name="Leave the counter").tap()
    rounds = sock_one_measured(page)
    page.locator("#machine-line .go-on").tap()
    page.locator("#measure-first").tap()
    expect(page.locator("#machine-length")).to_have_value("21,5")
    page.locator("#work-two").tap()
    page.locator("#begin-two").tap()
    go_to(page, "Foot", 1)
    expect(done(page)).to_have_text(f"1 of {rounds} done")


def test_rows_go_the_way_of_a_machine_whose_carrier_stops_at_the_right(
    phone: BrowserContext,
) -> None:
    page = opened(phone)
    fill_sock(page)
    step(page, "yarn")
    page.locator("#carrier > summary").tap()
    field(page, "cylinder.carrier").select_option("right")
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    go_to(page, "Heel", 1)  # its second row, which would go to the left
    expect(page.locator(".row-words")).to_contain_text("Carrier right")
    expect(page.locator(".row-words")).to_contain_text("lift needle 30 into hold")


def test_what_came_too_soon_is_offered_only_where_it_came(new_phone: NewPhone) -> None:
    phone = new_phone()
    settings(phone, guard=2000)
    page = begun(phone)
    go_to(page, "Foot", 20)
    page.keyboard.press("PageDown")
    page.keyboard.press("PageDown")
    expect(page.locator(".notice")).to_contain_text("Two within")
    go_to(page, "Foot", 30)
    expect(done(page)).to_have_text("30 of 46 done")
    expect(page.locator(".notice-close")).to_have_count(0)


def test_the_needles_of_a_mock_rib_that_are_out_are_drawn(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, "sock.cuff.kind"), has_text="mock rib").first.tap()
    field(page, "sock.cuff.every").fill("4")
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Take out every 4th needle")
    drawn = page.locator(".cylinder-out .needle-out").get_attribute("d") or ""
    assert drawn.count("M") == 60 // 4
    work = page.locator(".cylinder-out .needle-work").get_attribute("d") or ""
    assert work.count("M") == 60 - 60 // 4


@pytest.mark.whole
def test_going_into_a_shaped_leg_tells_how_the_tension_stands_there(phone: BrowserContext) -> None:
    """Tubes of two marks, and a leg that widens: bands at marks of their own."""
    typed = {"units": "cm", "way": "swatch", "foot.length": "24.6 cm", "cylinder.slots": "84"}
    typed |= {"foot.ankle_girth": "230 mm", "foot.calf_girth": "340 mm", "sock.leg.height": "36 cm"}
    tube = {"needles": "60", "rounds": "60"}
    loose = tube | {"mark": "7", "flat_width": "101.6 mm", "length": "158.8 mm"}
    firm = tube | {"mark": "3", "flat_width": "71.4 mm", "length": "111.6 mm"}
    typed |= {f"fabric.swatch.{name}": text for name, text in loose.items()}
    typed |= {f"fabric.swatches.0.{name}": text for name, text in firm.items()}
    kept = json.dumps(json.dumps(typed))
    phone.add_init_script(f"localStorage['heelwise.mine'] ??= {kept}")
    page = opened(phone)
    step(page, "counts")
    page.locator("#knit-it").tap()
    page.get_by_role("button", name="Go to…").tap()
    sheet = page.locator(".machine-sheet")
    sheet.locator(".sections label", has_text="Leg").tap()
    sheet.locator("#places-done").fill("9")
    sheet.locator("#places-ask").tap()
    said = sheet.locator(".sure").inner_text()
    assert "Set the tension mark to " in said
    sheet.locator("#places-go").tap()
    page.locator("button.strip").tap()
    expect(page.locator(".at-next")).to_contain_text(re.findall("“.+”", said)[0])
