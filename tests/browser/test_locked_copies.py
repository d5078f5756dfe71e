"""Copies locked with a passphrase: opened with it and with nothing else, and what is said then."""

import base64
import hashlib
import json
import subprocess
import unicodedata
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from build import install
from tests.browser.book import copies, held, labels, open_book
from tests.browser.test_keeping import NewPhone, saved, take, two_wearers
from tests.browser.walk import opened

WORDS = "crank heel Bänke 7"
NO_SUBTLE = "Object.defineProperty(Crypto.prototype, 'subtle', { get: () => undefined });"


def lock(page: Page, first: str = WORDS, second: str | None = None) -> None:
    """Write the passphrase into both fields."""
    if not page.locator("#passphrase-first").is_visible():
        page.locator("#lock > summary").tap()
    page.locator("#passphrase-first").fill(first)
    page.locator("#passphrase-second").fill(first if second is None else second)


def unlock(page: Page, words: str) -> None:
    """Write a passphrase for the file that was picked."""
    page.locator("#unlock-passphrase").fill(words)
    page.locator("#unlock-copy").tap()


def test_a_locked_copy_opens_with_its_passphrase_alone(new_phone: NewPhone, tmp_path: Path) -> None:
    page = two_wearers(new_phone())
    lock(page)
    expect(page.locator("#save-copy")).to_have_text("Save all to a locked file")
    file = saved(page, "#save-copy", tmp_path)
    expect(page.locator("#book .note")).to_contain_text("Saved to a locked file: 2 wearers")
    expect(page.locator("#book")).to_contain_text("Last copy:")
    assert "Nuri" not in file.read_text()

    other = opened(new_phone())
    open_book(other)
    copies(other)
    take(other, file.read_bytes())
    expect(other.locator("#unlock")).to_contain_text("This copy is locked.")
    for wrong in ("", "crank heel banke 7", WORDS + " "):
        unlock(other, wrong)
        expect(other.locator("#unlock-error")).to_contain_text("does not open this copy")
        expect(other.locator("#unlock-passphrase")).to_have_value(wrong)
    assert held(other)["wearers"] == []
    unlock(other, unicodedata.normalize("NFD", WORDS))  # as another keyboard writes it
    expect(other.locator("#book")).to_contain_text("To add: 2 wearers")
    other.locator("#take-in").tap()
    other.locator("#all-wearers").tap()
    assert sorted(labels(other)) == ["Nuri", "Wren"]


def test_another_program_opens_it_by_what_the_file_states(
    phone: BrowserContext, tmp_path: Path
) -> None:
    """The key by Python's hashlib (PBKDF2, RFC 8018), the cipher by OpenSSL in node."""
    page = two_wearers(phone)
    plain = json.loads(saved(page, "#save-copy", tmp_path).read_text())
    lock(page)
    file = saved(page, "#save-copy", tmp_path / "locked")
    stated = json.loads(file.read_text())
    how = stated["key"]
    salt = base64.b64decode(how["salt"])
    words = unicodedata.normalize("NFKC", WORDS).encode()
    key = hashlib.pbkdf2_hmac(
        "sha256", words, salt, how["iterations"], stated["cipher"]["bits"] // 8
    )
    program = [install.VENV / "bin" / "node", Path(__file__).with_name("open_locked.mjs")]
    found = subprocess.run([*program, file, key.hex()], check=True, capture_output=True)
    assert json.loads(found.stdout) == plain
    # NIST SP 800-132: a salt of 128 bits at least. OWASP, Password Storage Cheat Sheet (2023):
    # 600,000 iterations for HMAC-SHA-256. NIST SP 800-38D: a nonce of 96 bits.
    assert len(salt) * 8 >= 128
    assert (how["hash"], how["iterations"] >= 600_000) == ("SHA-256", True)
    assert len(base64.b64decode(stated["cipher"]["nonce"])) * 8 == 96
    again = json.loads(saved(page, "#save-copy", tmp_path / "again").read_text())
    assert again["key"]["salt"] != how["salt"]
    assert again["cipher"]["nonce"] != stated["cipher"]["nonce"]


def changed(stated: dict[str, Any], **parts: Any) -> str:
    return json.dumps({**stated, **parts})


def test_a_damaged_locked_copy_is_told_from_a_wrong_passphrase(
    phone: BrowserContext, tmp_path: Path
) -> None:
    page = two_wearers(phone)
    lock(page)
    text = saved(page, "#save-copy", tmp_path).read_text()
    stated = json.loads(text)
    sealed = stated["sealed"]
    letter = "A" if sealed[40] != "A" else "B"
    for name, spoilt in {
        "cut short": text[: len(text) // 2],
        "a letter": changed(stated, sealed=f"{sealed[:40]}{letter}{sealed[41:]}"),
        "no salt": changed(stated, key={**stated["key"], "salt": "?"}),
        "for ever": changed(stated, key={**stated["key"], "iterations": 10**12}),
        "no key": changed(stated, key=None),
        "version 0": changed(stated, version=0),
    }.items():
        take(page, spoilt)
        expect(page.locator("#take-copy-error"), name).to_contain_text("locked copy is damaged")
        expect(page.locator("#unlock"), name).to_have_count(0)
    take(page, changed(stated, version=2))
    expect(page.locator("#take-copy-error")).to_contain_text("newer version of this page")
    take(page, text)
    unlock(page, WORDS)
    expect(page.locator("#book .note")).to_contain_text("is here already")


def test_a_short_or_mistyped_passphrase_locks_nothing(phone: BrowserContext) -> None:
    page = two_wearers(phone)
    lock(page, "crank 7")
    page.locator("#save-copy").tap()
    expect(page.locator("#passphrase-first-error")).to_contain_text("at least 8 characters")
    expect(page.locator("#passphrase-first")).to_be_focused()
    lock(page, WORDS, "crank heel")
    page.locator("#save-copy").tap()
    expect(page.locator("#passphrase-second-error")).to_contain_text("not the same")
    expect(page.locator("#passphrase-first")).to_have_value(WORDS)
    lock(page, "", WORDS)
    page.locator("#save-copy").tap()
    expect(page.locator("#passphrase-second-error")).to_contain_text("not the same")
    expect(page.locator("#book")).to_contain_text("No copy saved yet")
    expect(page.locator("#lock")).to_contain_text("Nobody can bring back a passphrase")


def test_a_browser_that_cannot_lock_says_so(new_phone: NewPhone, tmp_path: Path) -> None:
    page = two_wearers(new_phone())
    lock(page)
    file = saved(page, "#save-copy", tmp_path)
    lacking = new_phone()
    lacking.add_init_script(NO_SUBTLE)
    other = two_wearers(lacking)
    other.locator("#lock > summary").tap()
    expect(other.locator("#lock")).to_contain_text("A copy can be locked only")
    assert "Nuri" in saved(other, "#save-copy", tmp_path / "open").read_text()
    take(other, file.read_bytes())
    expect(other.locator("#take-copy-error")).to_contain_text("only on a page that came by https")


SHARE = """([kinds, answers]) => {
  window.sent = [];
  const may = ({ name }) => kinds.includes(name.split(".").pop());
  navigator.canShare = ({ files }) => files.every(may);
  navigator.share = async ({ files: [file] }) => {
    const answer = answers.shift();
    if (answer) throw new DOMException("made up", answer);
    window.sent.push([file.name, file.type, await file.text()]);
  };
}"""


@pytest.mark.parametrize(("kinds", "ending"), [(["json", "txt"], "json"), (["txt"], "txt")])
def test_a_copy_is_handed_on_and_taken_in_again(
    new_phone: NewPhone, kinds: list[str], ending: str
) -> None:
    phone = new_phone()
    phone.add_init_script(f"({SHARE})({json.dumps([kinds, ['AbortError', 'NotAllowedError']])})")
    page = two_wearers(phone)
    page.locator("#hand-on").tap()
    expect(page.locator("#book .note")).to_have_text("It was not sent. Nothing has changed.")
    expect(page.locator("#book")).to_contain_text("No copy saved yet")
    page.locator("#hand-on").tap()
    page.locator("#hand-on-now").tap()
    expect(page.locator("#book .note")).to_have_text("Passed on: 2 wearers and all that you typed.")
    expect(page.locator("#book")).to_contain_text("Last copy:")
    ((name, kind, text),) = page.evaluate("window.sent")
    assert name.startswith("heelwise-all-")
    assert name.endswith(f".{ending}")
    other = opened(new_phone())
    open_book(other)
    copies(other)
    picker = other.locator("#take-copy")
    accepted = (picker.get_attribute("accept") or "").split(",")
    assert {f".{ending}", kind} <= set(accepted)
    picker.set_input_files({"name": name, "mimeType": kind, "buffer": text.encode()})
    expect(other.locator("#book")).to_contain_text("To add: 2 wearers")


def test_where_no_file_may_be_handed_on_nothing_offers_it(new_phone: NewPhone) -> None:
    for script in ("delete Navigator.prototype.canShare", "navigator.canShare = () => false"):
        phone = new_phone()
        phone.add_init_script(script)
        page = two_wearers(phone)
        expect(page.locator("#hand-on")).to_have_count(0)
        expect(page.locator("#save-copy")).to_be_visible()


def test_a_phone_that_does_not_take_the_file_says_what_to_do(phone: BrowserContext) -> None:
    phone.add_init_script(f"({SHARE})({json.dumps([['json'], ['DataError']])})")
    page = two_wearers(phone)
    page.locator("#hand-on").tap()
    expect(page.locator("#book .note")).to_contain_text("Save it to a file instead")
    expect(page.locator("#book")).to_contain_text("No copy saved yet")
