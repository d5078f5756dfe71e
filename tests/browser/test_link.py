"""A link carries a plan from one phone to another and never touches what the other holds."""

import re
from collections.abc import Callable

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import planned, target
from tests.browser.book import new_wearer, open_book
from tests.browser.walk import choose, field, figures, fill_foot, more_of, opened, share, step
from tests.engine.answers.test_link import made_of

NewPhone = Callable[..., BrowserContext]


def copied_link(new_phone: NewPhone) -> tuple[str, dict[str, str]]:
    """The link of a plan made on one phone, and its figures there."""
    page = opened(new_phone(permissions=["clipboard-read", "clipboard-write"]))
    fill_foot(page)
    step(page, "measure")
    choose(page, "woman")
    step(page, "counts")
    page.wait_for_timeout(500)  # the last answer has come
    made = figures(page)
    share(page)
    page.locator("#share-place button", has_text="With the foot").tap()
    share(page, "#copy-link")
    expect(page.locator("#share-place")).to_contain_text("Copied")
    link = str(page.evaluate("navigator.clipboard.readText()"))
    assert "#2." in link
    return link, made


def with_own_foot(new_phone: NewPhone) -> Page:
    page = opened(new_phone())
    field(page, "foot.length").fill("27.1 cm")
    return page


def test_same_counts_on_a_fresh_phone_offline(new_phone: NewPhone) -> None:
    link, made = copied_link(new_phone)
    other = new_phone(service_workers="allow")
    page = opened(other)
    expect(page.locator("#stored-line")).to_be_visible(timeout=30_000)
    other.set_offline(True)
    page.close()
    page = opened(other, link)
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    expect(page.locator("#counts")).to_be_visible()
    assert figures(page) == made
    page.reload()
    assert figures(page) == made


def test_a_shared_plan_stays_apart_from_hers(new_phone: NewPhone) -> None:
    link, _ = copied_link(new_phone)
    page = with_own_foot(new_phone)
    page.goto(link)  # the same document: only the fragment changes
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    step(page, "measure")
    expect(field(page, "foot.length")).to_have_value("23,8")
    field(page, "foot.length").fill("30 cm")
    page.reload()
    expect(field(page, "foot.length")).to_have_value("30 cm")
    page.locator("#visit-line button", has_text="My own page").tap()
    expect(field(page, "foot.length")).to_have_value("27.1 cm")
    expect(page.locator("#visit-line")).to_be_empty()
    assert "#2." not in page.url
    page.reload()
    expect(field(page, "foot.length")).to_have_value("27.1 cm")


def test_copying_it_asks_first_when_hers_is_not_empty(new_phone: NewPhone) -> None:
    link, made = copied_link(new_phone)
    page = with_own_foot(new_phone)
    page.goto(link)
    more_of(page.locator("#visit-line"))
    page.locator("#visit-line button", has_text="Make it mine").tap()
    page.locator("#visit-line button", has_text="Leave it as it is").tap()
    more_of(page.locator("#visit-line"))
    page.locator("#visit-line button", has_text="Make it mine").tap()
    page.locator("#visit-line button", has_text="Replace it").tap()
    expect(page.locator("#visit-line")).to_be_empty()
    assert figures(page) == made
    step(page, "measure")
    page.locator("#bring-back").tap()  # even then hers is not gone
    expect(field(page, "foot.length")).to_have_value("27.1 cm")

    empty = opened(new_phone(), link)
    more_of(empty.locator("#visit-line"))
    empty.locator("#visit-line button", has_text="Make it mine").tap()
    expect(empty.locator("#visit-line")).to_be_empty()
    assert figures(empty) == made


# All that the site keeps, but for the sheet that is looked at, which has to survive a reload, and
# the counts shown last, which are worked out again.
KEPT = """async () => {
  const kept = { ...localStorage };
  for (const name of ["visit", "last"]) {
    delete kept[`heelwise.${name}`];
    delete kept[`heelwise.${name}.changed`];
  }
  for (const { name } of await indexedDB.databases()) {
    const database = await new Promise((done) => {
      const asked = indexedDB.open(name);
      asked.onsuccess = () => done(asked.result);
    });
    for (const store of database.objectStoreNames) {
      const got = database.transaction(store).objectStore(store).getAll();
      await new Promise((done) => { got.onsuccess = done; });
      // Which step and which link are looked at overwrite nothing, and what is empty is let go.
      kept[`${name} ${store}`] = got.result.filter(
        (one) => one.value !== null && !["knitting", "shown", "visit", "last"].includes(one.name));
    }
    database.close();
  }
  return kept;
}"""


def test_no_link_writes_over_anything(new_phone: NewPhone) -> None:
    link, _ = copied_link(new_phone)
    address, good = link.split("#")
    page = opened(new_phone())
    open_book(page)
    new_wearer(page, "Invented Nuri", "24")
    page.locator("#visit-line button", has_text="My own page").tap()
    planned(page)
    page.locator("#knit-it").tap()
    target(page).tap()
    page.go_back()
    expect(page.locator("#machine-line")).to_contain_text("A sock is on the machine")
    page.wait_for_timeout(600)  # what was typed last has gone to the book
    before = page.evaluate(KEPT)
    assert len(before["heelwise.book wearers"]) == len(before["heelwise.machine sessions"]) == 1
    names = made_of(b'{"foot": {"__proto__": {"shown": "1"}}}')
    like_a_copy = made_of(b'{"sheets": {"mine": {"foot": "1"}}, "book": [], "pairs": []}')
    page.goto("about:blank")  # the first is opened anew, the others into the open page
    shared, refused = "A shared plan", "Your own page is below"
    for fragment, words in (
        (good, shared),
        (names, refused),
        (like_a_copy, shared),
        (good[:-6], refused),
        ("99.AAAA", refused),
    ):
        page.goto(f"{address}#{fragment}")
        expect(page.locator("#visit-line")).to_contain_text(words)
        page.wait_for_timeout(600)  # longer than anything waits before it is kept
        assert page.evaluate(KEPT) == before, fragment
        assert page.evaluate("({}).shown") is None, fragment


def test_damaged_and_foreign_links_get_one_sentence(new_phone: NewPhone) -> None:
    link, _ = copied_link(new_phone)
    address, fragment = link.split("#")
    middle = len(fragment) // 2
    changed = "A" if fragment[middle] != "A" else "B"
    page = with_own_foot(new_phone)
    page.goto("about:blank")  # the first is opened anew, the others into the open page
    for damaged in (
        fragment[:-6],
        f"{fragment[:middle]}{changed}{fragment[middle + 1 :]}",
        "99.AAAA",
        "some-other-page",
    ):
        page.goto(f"{address}#{damaged}")
        expect(page).to_have_url(re.compile("#measure$"))  # it has been looked at
        line = page.locator("#visit-line [role=alert]")
        expect(line).to_contain_text("Your own page is below")
        expect(page.locator("#visit-line .line")).to_have_count(1)
        expect(field(page, "foot.length")).to_have_value("27.1 cm")
        expect(page.locator("#visit-line button")).to_have_text(["Got it"])
