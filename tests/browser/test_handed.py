"""A copy that comes from outside the page: by the phone's share sheet, or opened as a file.

Expected behaviour: W3C Web Share Target (a form posted to the action, multipart/form-data) and WICG
File Handling (`launchQueue`, whose consumer is told of file handles). The phone's own sheet and its
list of files are out of a test's reach: a form and a queue of ours stand in for them.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun
from tests.browser.book import labels
from tests.browser.host import until
from tests.browser.walk import opened

NewPhone = Callable[..., BrowserContext]
KEPT = Path(__file__).with_name("kept")  # as older versions kept it; all of it invented
FORM = """<!doctype html><form method="post" enctype="multipart/form-data" action="{action}">
<input type="file" name="{name}"><button>Send</button></form>"""
# The queue of files, of which the page makes itself the consumer.
QUEUE = """
globalThis.launches = [];
Object.defineProperty(globalThis, "launchQueue", { configurable: true, value: {
  setConsumer: (take) => launches.push(take),
} });
"""
OPEN = """async ([text, broken]) => {
  const getFile = async () => {
    if (broken) throw new DOMException("gone", "NotFoundError");
    return new File([text], "copy.json", { type: "application/json" });
  };
  await launches.at(-1)({ files: [{ kind: "file", getFile }] });
}"""
COPY = KEPT.joinpath("copy_1.json").read_text()
PEOPLE = {one["wearer"]["label"] for one in json.loads(COPY)["book"]}


def manifest(dist: Path) -> dict[str, Any]:
    """The site's."""
    found: dict[str, Any] = json.loads((dist / "manifest.webmanifest").read_text())
    return found


def hand(page: Page, site: str, target: dict[str, Any], content: bytes) -> None:
    """As a share sheet does: the file in a form, posted."""
    (file,) = target["params"]["files"]
    page.goto("about:blank")
    page.set_content(FORM.format(action=site + target["action"], name=file["name"]))
    page.locator("input").set_input_files(
        {"name": "copy.json", "mimeType": "application/json", "buffer": content}
    )
    page.locator("button").click()


def take_in(page: Page) -> None:
    """All that stands there."""
    expect(page.locator("#book-title")).to_contain_text("Copies")
    page.locator("#take-in").tap()
    expect(page.locator("#book .note")).to_contain_text("added")
    page.locator("#all-wearers").tap()
    assert set(labels(page)) == PEOPLE


@pytest.mark.stored
@pytest.mark.parametrize("offline", [False, True])
def test_a_copy_from_the_share_sheet(
    new_phone: NewPhone, site: str, dist: Path, offline: bool
) -> None:
    phone = new_phone()
    page = opened(phone)
    expect(page.locator("#stored-line")).to_be_visible()
    phone.set_offline(offline)
    target = manifest(dist)["share_target"]
    assert (target["method"], target["enctype"]) == ("POST", "multipart/form-data")
    hand(page, site, target, COPY.encode())
    take_in(page)
    page.reload()  # it came once
    expect(page.locator("#stored-line")).to_be_attached()
    page.wait_for_timeout(1000)
    expect(page.locator("#take-in")).to_have_count(0)
    hand(page, site, {**target, "params": {"files": [{"name": "other"}]}}, COPY.encode())
    expect(page.locator("#take-copy-error")).to_contain_text("could not be opened")
    hand(page, site, target, b"a letter")
    expect(page.locator("#take-copy-error")).to_contain_text("is not a copy")


def test_a_copy_opened_as_a_file(new_phone: NewPhone, dist: Path) -> None:
    (handler,) = manifest(dist)["file_handlers"]
    assert handler["action"] == "./#book"
    assert handler["accept"] == {"application/json": [".json"]}
    phone = new_phone()
    phone.add_init_script(QUEUE)
    page = opened(phone, handler["action"])
    until(page, "launches.length")
    page.evaluate(OPEN, ["", True])
    expect(page.locator("#take-copy-error")).to_contain_text("could not be opened")
    page.evaluate(OPEN, [COPY, False])
    take_in(page)


def test_a_copy_that_comes_while_she_counts(new_phone: NewPhone) -> None:
    """The counter is left, and Back leads to it."""
    phone = new_phone()
    phone.add_init_script(QUEUE)
    page = begun(phone)
    until(page, "launches.length")
    page.evaluate(OPEN, [COPY, False])
    expect(page.locator("#take-in")).to_be_visible()
    expect(page.locator("#machine")).to_be_hidden()
    page.go_back()
    expect(page.locator("#machine")).to_be_visible()
