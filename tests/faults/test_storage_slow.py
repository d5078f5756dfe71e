"""A phone whose storage takes its time: the sock on the machine is waited for, not given up."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, expect

from tests.browser.at_machine import begun, done, go_to, settings, target

# An upgrade of the database that does not end: nobody can open it meanwhile.
SIT = """() => new Promise(resolve => {
    const opening = indexedDB.open("heelwise.machine", 99);
    opening.onupgradeneeded = () => {
        const store = opening.transaction.objectStore("sessions");
        const again = () => {
            if (globalThis.enough) opening.transaction.abort();
            else store.count().onsuccess = again;
            resolve();
        };
        again();
    };
})"""


def test_a_sock_that_storage_is_slow_to_tell(phone: BrowserContext, site: str) -> None:
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 10)
    page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("11 of 46 done")
    page.goto("about:blank")
    other = phone.new_page()
    other.goto(f"{site}manifest.webmanifest")
    other.evaluate(SIT)
    page.goto("./")
    page.wait_for_timeout(4000)  # twice what the journal waits before it counts in memory
    expect(target(page)).to_have_count(0)
    waiting = "getComputedStyle(document.getElementById('machine'), '::before').visibility"
    assert page.evaluate(waiting) == "visible"  # the screen says so
    other.evaluate("globalThis.enough = true")
    expect(done(page)).to_have_text("11 of 46 done")
    assert page.evaluate(waiting.replace("visibility", "content")) == "none"
    expect(page.locator(".notice", has_text="keeps nothing")).to_have_count(0)
    page.keyboard.press("PageDown")
    expect(done(page)).to_have_text("12 of 46 done")


@pytest.mark.parametrize("address", ["./", "./#knit"])
def test_a_sock_that_cannot_be_read_is_not_forgotten(
    new_phone: Callable[..., BrowserContext], address: str
) -> None:
    phone = new_phone()
    settings(phone, guard=0)
    page = begun(phone)
    go_to(page, "Foot", 10)
    refusing = phone.new_page()
    page.close()
    refusing.add_init_script(
        "IDBFactory.prototype.open = () => { throw new DOMException('no', 'UnknownError'); };"
    )
    refusing.goto(address)
    expect(refusing.locator("#machine-trouble")).to_contain_text("storage does not answer")
    expect(refusing.locator("#counts")).to_be_visible()  # where the counter was opened from
    refusing.close()
    page = phone.new_page()
    page.goto("./")
    expect(done(page)).to_have_text("10 of 46 done")
