"""Kinds of cuff, heel and toe, chosen on the form and followed at the counter."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import go_to, knit, settings, target, title
from tests.browser.walk import (
    COUNTED,
    behind,
    error_at,
    field,
    figures,
    fill_sock,
    opened,
    panel,
    step,
)


def chosen(phone: BrowserContext, name: str, words: str) -> Page:
    """The counts of the sock of `walk.SOCK` with one kind chosen by its words."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, name), has_text=words).first.tap()
    step(page, "counts")
    figures(page)
    return page


def test_two_needles_at_once_are_told_and_drawn(phone: BrowserContext, screens: Path) -> None:
    page = chosen(phone, "sock.heel.kind", "two each")
    rows = page.locator("#steps-place .needles-row .what")
    expect(rows.first).to_contain_text("29 and 30")  # the answer to that choice has come
    told = [" ".join(text.split()) for text in rows.all_text_contents()]
    assert told[:3] == [
        "knits 1 to 30 · needles 29 and 30 into hold",
        "knits 28 to 1 · needles 1 and 2 into hold",
        "knits 3 to 28 · needle 28 into hold",
    ]
    page.locator("#knit-it").tap()
    go_to(page, "Heel", 0)
    while target(page).locator(".by-hand").count():
        expect(page.locator(".at-machine")).to_have_attribute("data-look", "do")
        before = target(page).inner_text()
        target(page).tap()
        expect(target(page)).not_to_have_text(before, use_inner_text=True)
    words = page.locator(".row-words")
    expect(words).to_contain_text("then lift needles 29 and 30 into hold")
    expect(words).to_contain_text("2nd and 1st needle from the right half mark")
    now = page.locator(".needle-now").get_attribute("d") or ""
    assert now.count("M") == 3, "a stem for each needle, and one head"
    expect(page.locator(".needle-number")).to_have_text("29 30")
    page.screenshot(path=screens / "machine-two-at-first.png")
    assert knit(page, "Foot")["Heel"] == 38


def test_a_flap_is_knitted_and_joined_again(phone: BrowserContext, screens: Path) -> None:
    """From its first row to its last; each row under the heel says where a loop is hung."""
    page = chosen(phone, "sock.heel.kind", "after a flap")
    expect(page.locator(".tally-heel")).to_contain_text("after a flap of 8 rows")
    expect(page.locator(".tally-foot .figure")).to_have_text("38")  # 46 less 8
    page.set_viewport_size({"width": 360, "height": 640})
    page.locator("#picture, .picture").first.screenshot(path=screens / "flap.png")
    page.locator("#knit-it").tap()
    go_to(page, "Heel", 3)
    expect(page.locator(".row-words")).to_contain_text("Carrier")
    expect(page.locator(".needle-now")).to_have_count(0)
    page.screenshot(path=screens / "machine-flap.png")
    go_to(page, "Heel", 48)
    words = page.locator(".row-words")
    expect(words).to_contain_text("From here each row joins the flap")
    expect(words).to_contain_text("Hang a loop of the flap’s edge on needle 30")
    page.screenshot(path=screens / "machine-flap-joined.png")
    go_to(page, "Heel", 49)
    expect(words).to_contain_text("on needle 1")
    page.set_viewport_size({"width": 320, "height": 568})
    page.screenshot(path=screens / "machine-flap-320.png")
    assert knit(page, "Foot") == {"Heel": 7}


def test_a_picot_hem_is_followed_to_its_end(phone: BrowserContext, screens: Path) -> None:
    page = chosen(phone, "sock.cuff.kind", "picot hem")
    expect(page.locator(".tally-cuff")).to_contain_text("picot hem")
    page.locator("#picture, .picture").first.screenshot(path=screens / "picot-hem.png")
    page.locator("#knit-it").tap()
    go_to(page, "Cuff", 10)
    expect(target(page)).to_contain_text("Move every second stitch onto the needle at its right")
    assert knit(page, "Leg")["Cuff"] == 10


def test_a_mock_rib_hem_asks_which_needle_is_out(phone: BrowserContext, screens: Path) -> None:
    page = chosen(phone, "sock.cuff.kind", "mock rib hem")
    expect(page.locator(".tally-cuff")).to_contain_text("hung, folded to 10")
    behind(page, "made")
    expect(field(page, "sock.cuff.every")).to_be_visible()
    page.get_by_role("button", name="2×1").tap()
    expect(field(page, "sock.cuff.every")).to_have_value("3")
    page.set_viewport_size({"width": 360, "height": 640})
    field(page, "sock.cuff.every").scroll_into_view_if_needed()
    page.screenshot(path=screens / "usual-ribs.png")
    step(page, "counts")
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Take out every 3rd needle")
    go_to(page, "Cuff", 20)
    expect(target(page)).to_contain_text("Take the weight off")
    target(page).tap()
    expect(target(page)).to_contain_text("lift each of the 40 loops of its first round")


def test_a_rib_on_a_set_up_edge_is_followed_to_the_leg(phone: BrowserContext) -> None:
    """Needles stand out for the ribber only after they are told so: none is drawn before."""
    page = chosen(phone, "sock.cuff.kind", "rib on a set-up edge")
    expect(page.locator(".tally-cuff")).to_contain_text("1×1 rib on a set-up edge")
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Thread waste yarn")
    expect(page.locator(".cylinder-out")).to_have_count(0)
    go_to(page, "Cuff", 1)
    expect(target(page)).to_contain_text("Set the ribber to idle")
    assert knit(page, "Leg")["Cuff"] == 19


def test_a_rib_that_changes_is_asked_for_and_followed(phone: BrowserContext) -> None:
    page = chosen(phone, "sock.cuff.kind", "rib on a set-up edge")
    behind(page, "made")
    field(page, "sock.cuff.change_after").fill("13")
    field(page, "sock.cuff.change_every").fill("3")
    field(page, "sock.cuff.change_every").blur()
    expect(page.locator("#sock-cuff-change_every-error")).to_contain_text("Keep every 4th or 6th")
    field(page, "sock.cuff.change_every").fill("4")
    step(page, "counts")
    expect(page.locator(".tally-cuff")).to_contain_text("3×1 after round 13")
    page.locator("#knit-it").tap()
    go_to(page, "Cuff", 13)
    expect(target(page)).to_contain_text("Move 15 of the ribber’s stitches back")
    assert knit(page, "Leg")["Cuff"] == 7


def test_rounds_after_the_toe_have_a_place_of_their_own(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.end.rounds").fill("4")
    step(page, "counts")
    expect(page.locator(".tally-end")).to_contain_text("After the toe")
    sections = page.locator(".by-section tbody th").all_text_contents()
    assert sections[-3:] == ["After the toe", "Ends", sections[-1]]
    expect(page.locator(".tally-end .figure")).to_have_text("4")
    expect(page.locator(COUNTED)).to_have_count(6)
    page.locator("#knit-it").tap()
    go_to(page, "Toe 40 rows", 40)
    assert knit(page, "Off the machine") == {"After the toe": 4}


def test_rounds_before_the_toe_are_counted_apart(phone: BrowserContext, screens: Path) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    field(page, "sock.toe.plain").fill("5")
    page.set_viewport_size({"width": 360, "height": 640})
    field(page, "sock.toe.plain").scroll_into_view_if_needed()
    page.screenshot(path=screens / "before-toe-form.png")
    step(page, "counts")
    expect(page.locator(".tally-before_toe .figure")).to_have_text("5")
    expect(page.locator(".tally-foot .figure")).to_have_text("41")  # 46 less 5
    page.locator(".counts").screenshot(path=screens / "before-toe.png")
    page.locator("#knit-it").tap()
    go_to(page, "Foot", 41)
    expect(page.locator(".at-title")).to_contain_text("Before the toe")
    page.screenshot(path=screens / "machine-before-toe.png")
    assert knit(page, "Off the machine") == {"Before the toe": 5, "Toe": 40}


def _toe(phone: BrowserContext, words: str) -> Page:
    """The counts of the sock of `walk.SOCK` with a toe that is no pocket."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    kind = page.locator("label", has=field(page, "sock.toe.kind"), has_text=words)
    kind.tap()
    expect(error_at(page, "sock.toe.needles")).to_contain_text("no needles of its own")
    field(page, "sock.toe.needles").fill("")
    field(page, "sock.toe.left").fill("")
    step(page, "counts")
    expect(page.locator(COUNTED)).to_have_count(5)
    return page


def test_a_gathered_toe_is_drawn_up_at_the_end(phone: BrowserContext, screens: Path) -> None:
    page = _toe(phone, "gathered")
    expect(page.locator(".tally-toe")).to_contain_text("drawn up on a thread")
    expect(page.locator(".tally-foot .figure")).to_have_text("66")
    page.locator("#picture, .picture").first.screenshot(path=screens / "toe-gathered.png")
    page.locator("#knit-it").tap()
    go_to(page, "Foot", 66)
    expect(target(page)).to_contain_text("Cut the sock yarn")
    target(page).tap()
    expect(target(page)).to_contain_text("take all 60 stitches off onto that thread")
    page.screenshot(path=screens / "machine-gathered.png")
    assert knit(page) == {}


def test_a_toe_left_open_is_finished_by_hand(phone: BrowserContext, screens: Path) -> None:
    page = _toe(phone, "left open")
    expect(page.locator(".tally-toe")).to_contain_text("to finish by hand")
    page.locator("#picture, .picture").first.screenshot(path=screens / "toe-left-open.png")
    page.locator("#knit-it").tap()
    go_to(page, "Foot", 47)
    assert knit(page) == {"Off the machine": 10}


def test_a_rib_goes_on_down_the_leg(phone: BrowserContext, screens: Path) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    ribbed = field(page, "sock.leg.kind").and_(page.locator("[value=ribbed]")).locator("..")
    ribbed.tap()
    expect(error_at(page, "sock.leg.kind")).to_contain_text("no rib to go on with")
    page.locator("label", has=field(page, "sock.cuff.kind"), has_text="rib on a set-up edge").tap()
    expect(error_at(page, "sock.leg.kind")).to_be_empty()
    field(page, "sock.leg.rounds").fill("40")
    field(page, "sock.leg.plain").fill("5")
    page.set_viewport_size({"width": 360, "height": 640})
    ribbed.scroll_into_view_if_needed()
    page.screenshot(path=screens / "ribbed-leg-form.png")
    step(page, "counts")
    expect(page.locator(".tally-leg")).to_contain_text("ribbed, with 5 plain rounds")
    page.locator("#picture, .picture").first.screenshot(path=screens / "ribbed-leg.png")
    page.locator("#knit-it").tap()
    go_to(page, "Leg", 35)
    expect(target(page)).to_contain_text("Move the ribber’s stitches back")
    page.screenshot(path=screens / "machine-ribbed-leg.png")
    assert knit(page, "Heel") == {"Leg": 5}


def test_a_tube_sock_is_knitted_without_a_heel(phone: BrowserContext, screens: Path) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, "sock.heel.kind"), has_text="straight tube").tap()
    expect(error_at(page, "sock.heel.needles")).to_contain_text("no needles for one")
    field(page, "sock.heel.needles").fill("")
    field(page, "sock.heel.left").fill("")
    step(page, "counts")
    expect(page.locator(COUNTED)).to_have_count(4)
    page.set_viewport_size({"width": 360, "height": 640})
    page.locator("#picture, .picture").first.screenshot(path=screens / "tube-sock.png")
    expect(page.locator(".sizes")).not_to_contain_text("Around the heel")
    page.locator("#knit-it").tap()
    go_to(page, "Leg")
    expect(page.locator(".at-title")).to_contain_text("Leg")
    counts = knit(page, "Toe")
    assert list(counts) == ["Leg", "Foot"]
    assert counts["Foot"] == 66


def test_sock_two_follows_on_the_machine(phone: BrowserContext, screens: Path) -> None:
    """A string of two, knitted through: one cast-on, a ravel cord, and both off at the end."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.set_viewport_size({"width": 360, "height": 640})
    string = page.locator("label", has=field(page, "sock.string"), has_text="sock two on the waste")
    string.tap()
    page.screenshot(path=screens / "string-form.png")
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Thread waste yarn")
    one = knit(page)
    assert one["Between the socks"] == 20
    assert "Off the machine" not in one
    expect(title(page)).to_contain_text("Hanging below")
    expect(page.locator(".at-end")).to_contain_text("hangs below the needles")
    page.screenshot(path=screens / "machine-string-between.png")
    page.locator("#begin-unmeasured").tap()
    expect(target(page)).to_contain_text("Move the weight up")
    page.screenshot(path=screens / "machine-string-two.png")
    two = knit(page)
    assert two["Off the machine"] == 10
    assert "Waste yarn" not in two
    assert {part: two[part] for part in ("Cuff", "Leg", "Heel", "Foot", "Toe")} == {
        part: one[part] for part in ("Cuff", "Leg", "Heel", "Foot", "Toe")
    }
    expect(page.locator(".at-end")).to_contain_text("Both socks are knitted")


def test_sock_one_of_a_string_comes_off_by_its_cord_and_is_measured(
    phone: BrowserContext, screens: Path
) -> None:
    """46 foot rounds came to 220 mm, 9 in are 228.6: (46 + 40) x 228.6 / 220 - 40 = 49.4."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.set_viewport_size({"width": 360, "height": 640})
    page.locator("label", has=field(page, "sock.string"), has_text="sock two on the waste").tap()
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Thread waste yarn")
    knit(page)
    page.screenshot(path=screens / "machine-string-measure.png")
    expect(page.locator(".at-end")).to_contain_text("pull the ravel cord: it comes off")
    page.locator("#measure-first").tap()
    page.locator("#machine-length").fill("22")
    page.locator("#work-two").tap()
    page.locator("#begin-two").tap()
    expect(target(page)).to_contain_text("Move the weight up")
    two = knit(page)
    assert 47 <= two["Foot"] <= 50, "longer than sock one's 46"
    assert "Waste yarn" not in two


def test_the_next_pair_follows_too(phone: BrowserContext) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, "sock.string"), has_text="and another follows").tap()
    step(page, "counts")
    figures(page)
    page.locator("#knit-it").tap()
    expect(target(page)).to_contain_text("Move the weight up to the waste yarn")
    knit(page)
    page.locator("#begin-unmeasured").tap()
    expect(target(page)).to_contain_text("Move the weight up")
    knit(page)
    expect(page.locator(".at-end")).to_contain_text("The next pair begins on the waste yarn")


def test_colors_change_where_the_plan_says(phone: BrowserContext, screens: Path) -> None:
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.set_viewport_size({"width": 360, "height": 640})
    field(page, "sock.leg.rounds").fill("9")
    field(page, "sock.colors.heel").fill("C")
    field(page, "sock.colors.leg").fill("4 A, two B")
    field(page, "sock.colors.foot").click()
    expect(error_at(page, "sock.colors.leg")).to_contain_text("Write one letter")
    field(page, "sock.colors.leg").fill("4 A, 2 B")
    expect(error_at(page, "sock.colors.leg")).to_be_empty()
    field(page, "sock.colors.leg").scroll_into_view_if_needed()
    page.screenshot(path=screens / "colors-form.png")
    step(page, "counts")
    figures(page)
    expect(page.locator(".tally-leg")).to_contain_text("4 A, 2 B, over and over")
    page.locator("#picture, .picture").first.screenshot(path=screens / "colors.png")
    expect(page.locator("#colours-place")).to_contain_text("Color B")
    page.locator("#knit-it").tap()
    go_to(page, "Leg", 4)
    expect(target(page)).to_contain_text("Change to color B.")
    page.screenshot(path=screens / "machine-color.png")
    assert knit(page, "Heel") == {"Leg": 5}
    expect(target(page)).to_contain_text("Change to color C.")
    assert knit(page) == {"Heel": 40, "Foot": 46, "Toe": 40, "Off the machine": 10}


def test_a_rib_goes_on_over_the_instep(phone: BrowserContext, screens: Path) -> None:
    """From the form to the last step: the ribber waits at the heel, and comes off at the toe."""
    settings(phone, guard=0)
    page = opened(phone)
    fill_sock(page)
    page.locator("label", has=field(page, "sock.cuff.kind"), has_text="rib on a set-up edge").tap()
    over = page.locator("label", has=field(page, "sock.leg.kind"), has_text="over the instep")
    over.tap()
    page.set_viewport_size({"width": 360, "height": 640})
    over.scroll_into_view_if_needed()
    page.screenshot(path=screens / "ribbed-instep-form.png")
    step(page, "counts")
    expect(page.locator(".tally-leg")).to_contain_text("on over the instep")
    panel(page, "sock")
    page.locator("#picture, .picture").first.screenshot(path=screens / "ribbed-instep.png")
    page.locator("#knit-it").tap()
    go_to(page, "Foot", 0)
    expect(target(page)).to_contain_text("Set the ribber to knit again.")
    counts = knit(page)
    assert counts["Foot"] == 46
    assert counts["Toe"] == 40
