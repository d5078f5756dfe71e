"""Sock one, washed and measured, makes the counts those of sock two, and can be forgotten."""

from collections.abc import Callable

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.walk import choose, error_at, field, fill_foot, opened, share, step

NewPhone = Callable[..., BrowserContext]


def measured(page: Page) -> str:
    """Sock one came out short at its planned rounds; returns those rounds."""
    step(page, "counts")
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    planned = foot(page)
    page.locator("#first-sock summary").tap()
    page.locator("#as-planned button", has_text=planned).tap()
    expect(field(page, "first_sock.foot_rounds")).to_have_value(planned)
    field(page, "first_sock.length").fill("21,5")
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    return planned


def foot(page: Page) -> str:
    """The foot rounds as they stand in the big figure."""
    return page.locator(".tally-foot .figure").inner_text()


def test_a_short_sock_one_lengthens_sock_two(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    planned = measured(page)
    assert int(foot(page)) > int(
        planned
    )  # a sock too short takes more rounds, whatever the weights
    lesson = page.locator(".lesson")
    expect(lesson).to_have_text(
        f"Knit {foot(page)} foot rounds in sock two: that makes the length the foot asks for. "
        f"Sock one has {planned}. Cuff, leg, heel and toe stay the same."
    )
    expect(page.locator("#so-far-counts")).to_have_text(f"Sock two: {foot(page)}")
    expect(page.locator("#first_sock-length-other")).to_have_text("21.5 cm · 8 1/2 in")  # 8.46 in
    expect(page.locator("#said")).to_have_text(lesson.inner_text())

    page.locator("#forget-sock").tap()
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    assert foot(page) == planned
    expect(field(page, "first_sock.length")).to_be_empty()
    page.locator("#recall-sock").tap()
    expect(page.locator(".which-sock")).to_have_text("Sock two")


def test_sock_one_is_kept_sent_and_emptied_for_the_next_foot(new_phone: NewPhone) -> None:
    phone = new_phone(permissions=["clipboard-read", "clipboard-write"])
    page = opened(phone)
    fill_foot(page)
    measured(page)
    made = foot(page)
    page.reload()
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    expect(field(page, "first_sock.length")).to_be_visible()  # the fold is open: it holds something
    assert foot(page) == made
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    link = str(page.evaluate("navigator.clipboard.readText()"))

    other = opened(new_phone(), link)
    expect(other.locator(".which-sock")).to_have_text("Sock two")
    assert foot(other) == made
    expect(field(other, "first_sock.length")).to_have_value("21,5")

    share(page, "#next-foot")
    step(page, "counts")
    expect(page.locator("#problems li")).to_have_count(1)
    for name in ("foot_rounds", "length", "flat_width"):
        expect(field(page, f"first_sock.{name}")).to_be_empty()


def test_sock_two_may_be_like_the_foot_or_like_sock_one(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    expect(page.locator("#pair-wish")).to_be_hidden()
    measured(page)
    to_the_foot = int(foot(page))
    wishes = page.locator("#pair-wish label")
    expect(wishes).to_have_count(3)
    counts = [int(text.split()[0]) for text in page.locator("#pair-wish small").all_inner_texts()]
    assert counts == sorted(counts, reverse=True), "sock one is short, and so is its like"
    assert counts[0] == to_the_foot
    knitted = field(page, "first_sock.foot_rounds").input_value()
    assert str(counts[2]) != knitted
    why = page.get_by_role("group", name="How long shall sock two be?").get_by_text(
        "Sock one is short partly by chance"  # as it came out with the rounds that were planned
    )
    expect(why).to_contain_text(f"Why not {knitted} again?")
    expect(why).to_contain_text(f"{counts[2]} come closest")
    wishes.last.tap()
    expect(page.locator(".tally-foot .figure")).to_have_text(str(counts[2]))
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    page.reload()
    expect(page.locator(".tally-foot .figure")).to_have_text(str(counts[2]))
    expect(wishes.last.locator("input")).to_be_checked()
    page.locator("#forget-sock").tap()
    expect(page.locator("#pair-wish")).to_be_hidden()


def test_off_the_machine_it_is_told_what_to_expect_and_sock_two_follows(
    phone: BrowserContext,
) -> None:
    """Without a swatch measured before and after the wash, it is said how to learn it."""
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    planned = foot(page)
    page.locator("#first-sock summary").tap()
    expect(page.locator("#off-machine")).to_contain_text("before and after the wash")
    page.locator("#as-planned button").tap()
    before = field(page, "first_sock.unwashed_length")
    before.fill("22,5")
    before.blur()
    expect(error_at(page, "first_sock.unwashed_length")).to_contain_text("not known yet")
    assert foot(page) == planned
    field(page, "fabric.swatch.unwashed_length").evaluate("one => { one.value = '16,5'; }")
    field(page, "fabric.swatch.unwashed_length").dispatch_event("input")
    expect(page.locator(".which-sock")).to_have_text("Sock two")
    expect(page.locator("#first_sock-unwashed_length-note")).to_contain_text("after the wash")
    assert int(foot(page)) > int(planned)
    expect(page.locator("#off-machine")).to_be_hidden()
    page.locator("#forget-sock").tap()
    expect(page.locator("#off-machine")).to_contain_text("should measure about")


def test_what_is_missing_of_sock_one_leaves_the_counts_standing(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    planned = foot(page)
    page.locator("#first-sock summary").tap()
    width = field(page, "first_sock.flat_width")
    width.fill("9,x")
    expect(error_at(page, "first_sock.flat_width")).to_be_empty()  # not while she is typing
    expect(error_at(page, "first_sock.length")).to_be_empty()
    width.blur()
    expect(error_at(page, "first_sock.flat_width")).not_to_be_empty()
    expect(width).to_have_attribute("aria-invalid", "true")
    expect(page.locator(".which-sock")).to_have_text("For both socks")
    assert foot(page) == planned
    expect(page.locator("#problems")).to_be_empty()


def test_other_units_keep_sock_one(phone: BrowserContext) -> None:
    page = opened(phone)
    fill_foot(page)
    measured(page)
    made = foot(page)
    step(page, "measure")
    choose(page, "inches")
    step(page, "counts")
    expect(field(page, "first_sock.length")).to_have_value("21,5 cm")
    expect(page.locator("#so-far-counts")).to_have_text(f"Sock two: {made}")
