"""Second readings and the other foot: folded away, kept, sent, turned to inches, and emptied."""

from collections.abc import Callable

from playwright.sync_api import BrowserContext, expect

from tests.browser.walk import choose, error_at, field, fill_foot, more, opened, share, step

NewPhone = Callable[..., BrowserContext]


def test_both_feet_are_read_kept_sent_and_emptied_for_the_next(new_phone: NewPhone) -> None:
    phone = new_phone(permissions=["clipboard-read", "clipboard-write"])
    page = opened(phone)
    fill_foot(page)  # 23.8 cm
    step(page, "measure")
    again, other = field(page, "foot.again.length"), field(page, "other_foot.length")
    expect(again).to_be_hidden()
    more(page, "#feet > summary")
    expect(again).to_be_hidden()  # a fold within: never a wall of fields
    page.locator("#foot-again > summary").tap()
    again.fill("24,9")
    note = page.locator("#foot-again-length-note")
    expect(note).to_contain_text("11 mm apart")
    again.fill("24")
    expect(note).to_be_empty()
    expect(page.locator("#foot-again-length-other")).to_have_text("24 cm · 9 1/2 in")  # 9.449 in

    page.locator("#other_foot > summary").tap()
    other.fill("x")
    other.blur()
    expect(error_at(page, "other_foot.length")).to_contain_text("cannot be read")
    other.fill("24,9")
    expect(error_at(page, "other_foot.length")).to_be_empty()
    note = page.locator("#other_foot-length-note")
    expect(note).to_contain_text("planned on this foot: the first is 10 mm smaller")
    expect(note).to_contain_text("Two different socks")

    choose(page, "inches")
    expect(note).to_contain_text("3/8 in smaller")  # 10 mm is 0.394 in
    expect(other).to_have_value("24,9 cm")
    page.reload()
    expect(other).to_be_visible()  # the folds are open: they hold something
    expect(other).to_have_value("24,9 cm")
    expect(again).to_have_value("24 cm")

    step(page, "counts")
    share(page)
    page.locator("#share-place button", has_text="With the foot").tap()
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    visitor = opened(new_phone(), str(page.evaluate("navigator.clipboard.readText()")))
    step(visitor, "measure")
    expect(field(visitor, "other_foot.length")).to_have_value("24,9 cm")
    expect(field(visitor, "foot.again.length")).to_have_value("24 cm")

    asked = page.locator("#around-place .note", has_text="Two different socks")
    expect(asked).to_contain_text("Foot length, other foot.")
    page.locator("#around-place button", has_text="Go there").first.tap()
    expect(other).to_be_focused()
    step(page, "counts")

    share(page, "#next-foot")
    for name in ("foot.length", "foot.again.length", "other_foot.length"):
        expect(field(page, name)).to_be_empty()


def test_guesses_and_questions_stand_before_there_is_a_yarn(phone: BrowserContext) -> None:
    page = opened(phone)
    choose(page, "child")
    expect(field(page, "person.shoe_size.system")).to_have_value("EU child")
    choose(page, "woman")
    expect(field(page, "person.shoe_size.system")).to_have_value("EU")
    field(page, "foot.length").fill("24,8")
    expect(page.locator("#foot-ankle_girth-estimate")).to_contain_text("Left empty")
    field(page, "foot.heel_girth").fill("26")
    expect(page.locator("#foot-heel_girth-note")).to_contain_text("Measure it again?")
    expect(page.locator("#foot-ankle_girth-estimate")).to_contain_text("Left empty")
