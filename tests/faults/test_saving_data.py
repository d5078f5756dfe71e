"""A phone that saves data stores the site without the snapshot, until that is asked for.

Expected behaviour: WICG Save Data API (`navigator.connection.saveData`, in workers too).
"""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, expect

from tests.browser.host import comes_true, until
from tests.faults.played_host import USABLE, files, gone, played, small, stored

pytestmark = pytest.mark.stored
SAVES = "Object.defineProperty(navigator, 'connection', { value: { saveData: true } });\n"


@pytest.fixture(scope="module")
def saving(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site whose workers find that data are to be saved."""
    dist = small(tmp_path_factory.mktemp("saving"))
    script = dist / "sw.js"
    script.write_text(SAVES + script.read_text())
    return dist


def test_the_snapshot_waits_for_a_tap(phone: BrowserContext, saving: Path) -> None:
    (snapshot,) = (name for name in files(saving) if name.startswith("snapshot-"))
    phone.add_init_script(SAVES)
    with played(saving) as host:
        page = phone.new_page()
        page.goto(host.address)
        expect(page.locator("#stored-line")).to_be_visible()
        assert stored(page) == [name for name in files(saving) if name != snapshot]
        assert not any("snapshot-" in one for one in host.asked)
        offer = page.locator("#storing")
        expect(offer).to_contain_text("because this phone saves data")
        offer.get_by_role("button", name="Get it").tap()
        comes_true(page, lambda: snapshot in stored(page))
        expect(offer).to_be_hidden()
        host.alter = gone
        page.reload()
        until(page, USABLE)
        expect(page.locator("#stored-line")).to_be_visible()
        expect(offer).to_be_hidden()


def test_how_much_is_stored_is_told(phone: BrowserContext, first: Path) -> None:
    with played(first) as host:
        phone.add_init_script(
            """addEventListener("DOMContentLoaded", () => {
                globalThis.told = [];
                const watch = new MutationObserver(() => {
                    const words = document.getElementById("storing")?.textContent;
                    if (words && words !== told.at(-1)) told.push(words);
                });
                watch.observe(document.body, { childList: true, subtree: true });
            });"""
        )
        page = phone.new_page()
        page.goto(host.address)
        expect(page.locator("#stored-line")).to_be_visible()
        told = page.evaluate("told")
        assert told
        assert told[0].startswith("Storing it on this phone: ")
        assert told[-1].split(": ")[1].split(" of ")[0] + " MB" == told[-1].split(" of ")[1]
        expect(page.locator("#storing")).to_be_hidden()
        assert stored(page) == files(first)
