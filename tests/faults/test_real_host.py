"""A visit in the middle of a deploy, on a real nginx set up as build/headers.py tells it.

RFC 9111, 3 and RFC 8246: an error that says it is good for a year stays in the browser for a year.
"""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from build import headers
from tests.browser.host import until
from tests.faults.played_host import USABLE, small
from tests.nginx_host import needs_nginx, replaced, served

pytestmark = needs_nginx
NewPhone = Callable[..., BrowserContext]
NOT_STARTED = "#not-started"


def deployed(folder: Path, under: str) -> tuple[Path, Path]:
    """A site below a new root in `folder`, and where its page's script lies."""
    root = folder / "host"
    site = root / under.strip("/")
    site.parent.mkdir(parents=True, exist_ok=True)
    small(folder).rename(site)
    found = re.search(r'data-main="([^"]+)"', (site / "index.html").read_text())
    assert found
    return root, site / found[1]


def first_visit(phone: BrowserContext, address: str, script: Path) -> Page:
    """One while the script is missing; it is there again afterwards."""
    away = script.rename(script.with_suffix(".away"))
    page = phone.new_page()
    with page.expect_response(lambda answer: answer.url.endswith(script.name)) as missed:
        page.goto(address)
    assert missed.value.status == 404
    expect(page.locator(NOT_STARTED)).to_be_visible()
    away.rename(script)
    return page


@pytest.mark.parametrize("under", ["/", "/socks/"])
def test_a_script_missing_in_mid_deploy_is_there_at_the_next_visit(
    new_phone: NewPhone, tmp_path: Path, under: str
) -> None:
    root, script = deployed(tmp_path, under)
    work = tmp_path / "work"
    work.mkdir()
    with served(root, work, under) as address:
        phone = new_phone()
        first_visit(phone, address, script)
        page = phone.new_page()
        page.goto(address)
        until(page, USABLE)
        expect(page.locator(NOT_STARTED)).to_be_hidden()


def lasting_errors(printed: str) -> str:
    """As hosts are set up that say of every answer in a folder that it never changes."""
    return replaced(printed, f'default "{headers.NEVER}";', f'default "{headers.FOR_EVER}";')


def test_an_error_that_a_host_let_the_browser_keep(new_phone: NewPhone, tmp_path: Path) -> None:
    root, script = deployed(tmp_path, "/")
    work = tmp_path / "work"
    work.mkdir()
    with served(root, work, change=lasting_errors) as address:
        phone = new_phone()
        first_visit(phone, address, script)
        page = phone.new_page()
        page.goto(address)
        until(page, USABLE)
        expect(page.locator(NOT_STARTED)).to_be_hidden()
