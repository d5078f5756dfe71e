"""The way onto the home screen: a button, words, or nothing.

Expected behaviour: WICG Manifest Incubations (`beforeinstallprompt`, whose offer can be taken up
once; `appinstalled`); `navigator.standalone` as Safari has it on a phone; W3C Badging API (a count
on the icon of what is installed).
"""

from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import with_wearers
from tests.browser.host import until
from tests.browser.walk import opened

NewPhone = Callable[..., BrowserContext]
OFFERED = """() => {
    globalThis.prompted = 0;
    const offer = new Event("beforeinstallprompt", { cancelable: true });
    offer.prompt = async () => { prompted += 1; };
    dispatchEvent(offer);
    return offer.defaultPrevented;
}"""


def listening(phone: BrowserContext) -> Page:
    """A page most of whose later parts are here."""
    page = opened(phone)
    expect(page.locator("#changes details").first).to_be_attached()
    return page


def test_a_button_where_the_browser_offers_it(new_phone: NewPhone) -> None:
    page = listening(new_phone())
    expect(page.locator("#install")).to_have_count(0)
    until(page, f"({OFFERED})()")  # else a banner of the browser's own would cover her work
    button = page.get_by_role("button", name="Install it on this phone")
    box = button.bounding_box()
    assert box
    assert box["height"] >= 44
    button.tap()
    assert page.evaluate("prompted") == 1
    expect(page.locator("#install")).to_have_count(0)
    page.evaluate(OFFERED)
    expect(button).to_be_visible()
    page.evaluate("dispatchEvent(new Event('appinstalled'))")
    expect(page.locator("#install")).to_have_count(0)


def test_words_where_only_the_browsers_menu_can(new_phone: NewPhone) -> None:
    for there, count in (("false", 1), ("true", 0)):
        phone = new_phone()
        phone.add_init_script(
            f"Object.defineProperty(navigator, 'standalone', {{ value: {there} }});"
        )
        page = listening(phone)
        expect(page.locator("#install")).to_have_count(count)
        if count:
            expect(page.locator("#install")).to_contain_text("Add to Home Screen")


# An icon of ours, on a page that was installed or not.
ICON = """
globalThis.icon = [];
navigator.setAppBadge = async (count) => { icon.push(count); };
navigator.clearAppBadge = async () => { icon.push(0); };
const ask = matchMedia;
globalThis.matchMedia = (query) =>
  query.includes("standalone") ? { matches: INSTALLED } : ask(query);
"""


def promised(days: int | None, state: str = "planned") -> dict[str, Any]:
    """An invented wearer whose pair is promised so many days from now."""
    due = "" if days is None else (date.today() + timedelta(days)).isoformat()
    name = f"w-{due or 'none'}-{state}".replace(" ", "-")
    return {"id": name, "label": f"Invented {name}", "state": state, "due": due, "made": 1}


def test_the_icon_tells_what_is_due(new_phone: NewPhone) -> None:
    phone = new_phone()
    phone.add_init_script(ICON.replace("INSTALLED", "true"))
    people = [promised(-3), promised(0), promised(0, "handed over"), promised(1), promised(None)]
    page = with_wearers(phone, [*people, {**promised(9), "due": "20262-11-28"}])
    page.reload()
    until(page, "icon.length")
    assert page.evaluate("icon") == [2]
    page.evaluate("icon.length = 0; document.dispatchEvent(new Event('visibilitychange'))")
    until(page, "icon.length")
    assert page.evaluate("icon") == [2]


def test_an_icon_without_a_book_or_a_place_tells_nothing(new_phone: NewPhone) -> None:
    for installed, told in (("true", [0]), ("false", [])):
        phone = new_phone()
        phone.add_init_script(ICON.replace("INSTALLED", installed))
        page = listening(phone)
        page.wait_for_timeout(1000)
        assert page.evaluate("icon") == told
        names = page.evaluate("indexedDB.databases().then(all => all.map(({ name }) => name))")
        assert "heelwise.book" not in names, "asking has made none"
