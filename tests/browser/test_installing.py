"""The way onto the home screen: a button, words, or nothing.

Expected behaviour: WICG Manifest Incubations (`beforeinstallprompt`, whose offer can be taken up
once; `appinstalled`); `navigator.standalone` as Safari has it on a phone.
"""

from collections.abc import Callable

from playwright.sync_api import BrowserContext, Page, expect

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
    page.wait_for_function(OFFERED)  # else a banner of the browser's own would cover her work
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
