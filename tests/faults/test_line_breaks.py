"""The line breaks off while the calculator comes: it goes on, and where it cannot, says what to do.

A body that breaks off ends without an error in some browsers (WHATWG Fetch leaves to them how an
incomplete body is told), so the size counts.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from flask import Response, request
from playwright.sync_api import BrowserContext, Page, expect

from build.slow_line import Line, before
from tests.browser.host import comes_true
from tests.browser.walk import field
from tests.faults.played_host import (
    Alter,
    as_it_is,
    cut_off,
    gone,
    played,
    truncated,
)

pytestmark = pytest.mark.pyodide
NewPhone = Callable[..., BrowserContext]
PYTHONS = ("pyodide.asm.wasm", "python_stdlib.zip", "engine-")


def times(asked: list[str], name: str) -> int:
    return sum(name in one for one in asked)


def thin(alter: Alter) -> Alter:
    """So that the phone takes the line for a thin one: then it comes without the snapshot."""

    def slowed(response: Response) -> Response:
        if request.path.endswith(".mjs"):
            time.sleep(0.5)
        return alter(response)

    return slowed


def once(name: str, spoil: Alter) -> Alter:
    """Spoil it the first time, and no more."""
    seen: list[str] = []

    def alter(response: Response) -> Response:
        if name not in request.path or seen or response.status_code != 200:
            return response
        seen.append(name)
        return spoil(response)

    return alter


def reads_a_foot(page: Page) -> None:
    field(page, "foot.length").fill("24,6")
    expect(page.locator("#foot-length-other")).to_contain_text("9 5/8 in", timeout=60_000)


@pytest.mark.parametrize("name", PYTHONS)
@pytest.mark.parametrize("spoil", [cut_off, truncated])
def test_a_file_that_broke_off_is_fetched_again_and_no_other(
    phone: BrowserContext, dist: Path, name: str, spoil: Alter
) -> None:
    with played(dist) as host:
        host.alter = thin(once(name, spoil))
        page = phone.new_page()
        page.goto(host.address)
        reads_a_foot(page)
        assert times(host.asked, name) == 2
        for other in set(PYTHONS) - {name}:
            assert times(host.asked, other) == 1
        # The very first start came to its end.
        assert times(host.asked, "assets/worker-") == 1


def test_a_line_that_is_gone_is_told_with_what_to_do(phone: BrowserContext, dist: Path) -> None:
    def library_is_cut(response: Response) -> Response:
        return gone(response) if "python_stdlib" in request.path else response

    with played(dist) as host:
        host.alter = thin(library_is_cut)
        page = phone.new_page()
        page.goto(host.address)
        field(page, "foot.length").fill("24,6")
        trouble = page.locator("#status-line [role=alert]")
        expect(trouble).to_contain_text("The connection is gone. What came so far", timeout=60_000)
        expect(field(page, "foot.length")).to_have_value("24,6")
        host.alter = thin(as_it_is)
        host.asked.clear()
        trouble.get_by_role("button", name="Try again").tap()
        reads_a_foot(page)
        expect(trouble).to_have_count(0)
        assert times(host.asked, "python_stdlib") == 1
        assert times(host.asked, "pyodide.asm.wasm") == 0, "it had come"


def test_how_much_has_come_is_told(phone: BrowserContext, dist: Path) -> None:
    """Of all that a start waits for, in the bytes of the files as they lie in the site."""
    waited = sum(
        path.stat().st_size
        for path in dist.rglob("*")
        if path.is_file() and any(one in path.name for one in PYTHONS)
    )
    told: list[str] = []
    with played(dist) as host:
        # The host packs nothing here: some 9.6 MB in six seconds.
        line = Line(rate=13e6, round_trip=0.3)
        with before(host.server.port, line) as port:
            page = phone.new_page()
            page.goto(f"http://localhost:{port}/")
            waiting = page.locator("#waiting")

            def ready() -> bool:
                told.append(str(waiting.text_content()))
                return "over" in str(waiting.get_attribute("class"))

            comes_true(page, ready, seconds=60)
            reads_a_foot(page)
    found = [
        re.fullmatch(r"Calculator: ([\d.]+) of ([\d.]+) MB(?:, (\d+) s left)?", one) for one in told
    ]
    counted = [one for one in found if one]
    come = [float(one[1]) for one in counted]
    assert len(set(come)) > 3
    assert come == sorted(come)
    assert {one[2] for one in counted} == {f"{waited / 1e6:.1f}"}
    left = [int(one[3]) for one in counted if one[3]]
    assert left
    assert left[-1] <= left[0]
