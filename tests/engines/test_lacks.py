"""Phones of every engine that lack or refuse something: she plans, counts and keeps the book.

Not every browser takes a script before a page, so the host sends it with the page.
"""

import json
import os
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tests.browser.host import Host
from tests.conftest import free_port
from tests.engines.altered_site import altered, put
from tests.engines.conftest import ENGINES
from tests.engines.phone import Phone
from tests.engines.steps import (
    comes_to,
    figures,
    new_wearer,
    open_book,
    opened,
    three_steps,
    to_foot,
)
from tests.engines.test_core import PAGE
from tests.faults import lacks

NO_WASM = "delete globalThis.WebAssembly;"
# Errors that nobody caught.
LISTEN = """globalThis.thrown = [];
addEventListener("error", ({ message }) => thrown.push(message));
addEventListener("unhandledrejection", ({ reason }) => thrown.push(String(reason)));
"""

INSTALLED = """async () => {
  const gate = window.trustedTypes?.createPolicy("gate", { createScriptURL: String });
  const { installing } = await navigator.serviceWorker.register(
    gate?.createScriptURL("sw.js") ?? "sw.js");
  return new Promise((over) => installing.addEventListener("statechange", () => {
    if (installing.state !== "installing") over(installing.state);
  }));
}"""


def instead(name: str, what: str) -> str:
    """Whatever navigator has of this name, or has not."""
    return f"Object.defineProperty(Navigator.prototype, '{name}', {{ get: () => ({what}) }});"


def denied(method: str) -> str:
    """Asked, it says no."""
    return f"{{ {method}: () => Promise.reject(new DOMException('no', 'NotAllowedError')) }}"


WAKE_LOCK = instead("wakeLock", denied("request"))
AWAKE = instead("wakeLock", "{ request: async () => ({ release() {} }) }")


@dataclass(frozen=True)
class Lack:
    """What runs before the page, and what is told for it, "" where nothing is to be said."""

    script: str
    typed: str = ""
    counted: str = ""
    book: str = ""
    link: str = ""


LACKS = {
    "no_database": Lack(
        lacks.NO_DATABASE
        + lacks.gone("Navigator.prototype.serviceWorker", "caches", "BroadcastChannel")
        + AWAKE,
        counted=lacks.COUNTED,
        book=lacks.BOOK,
    ),
    "database_closed_to_us": Lack(
        lacks.throws(lacks.OPEN, "SecurityError")
        + WAKE_LOCK
        + lacks.rejects(lacks.SHARE, "NotAllowedError")
        + instead("clipboard", denied("writeText")),
        counted=lacks.COUNTED,
        book=lacks.BOOK,
        link=lacks.BY_HAND,
    ),
    "database_hangs_at_open": Lack(
        f"{lacks.OPEN} = () => new EventTarget();" + AWAKE,
        counted=lacks.COUNTED,
        book=lacks.BOOK,
    ),
    "local_storage_closed": Lack(lacks.NO_LOCAL_STORAGE + WAKE_LOCK, counted=lacks.DARK),
    "nothing_kept": Lack(
        lacks.NO_LOCAL_STORAGE + lacks.NO_DATABASE + AWAKE,
        typed=lacks.TYPED,
        counted=lacks.COUNTED,
        book=lacks.BOOK,
    ),
    "database_closed_under_us": Lack(lacks.CLOSED_UNDER_US + AWAKE),
}


@pytest.fixture(scope="module")
def lacking(dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A host of the site as each phone would have it, in a folder of its name."""
    folder = tmp_path_factory.mktemp("lacking")
    for name, lack in LACKS.items():
        altered(dist, folder / name, page=LISTEN + lack.script)
    altered(dist, folder / "no_wasm", page=LISTEN + NO_WASM, worker=NO_WASM)
    (folder / "index.html").write_text("<!doctype html><title>Each in its folder</title>")
    host = Host(free_port())
    host.serve(folder)
    yield host.address
    host.stop()


def says(phone: Phone, selector: str, words: str) -> None:
    """It says this, or nothing at all."""
    if words:
        phone.reads(selector, words)
    else:
        assert phone.sight(selector) == ""


def wearer_and_copy(phone: Phone, book: str) -> dict[str, Any]:
    """Somebody into the book, and all of it into a file; returns what it holds."""
    open_book(phone)
    new_wearer(phone, "Invented: Nuri", "24")
    phone.tap(".head [data-book=list]")
    phone.reads(".wearers", "Invented: Nuri")
    says(phone, "#book .trouble", book)
    phone.tap("#to-copies")
    copy: dict[str, Any] = json.loads(phone.saved("#save-copy").read_bytes())
    ((visit,),) = [one["visits"] for one in copy["book"]]
    assert visit["values"]["foot.length"] == "24"
    return copy


# Chromium walks with these and more in tests/faults/test_phone_lacks.py.
@pytest.mark.parametrize("engine", ENGINES[1:])
@pytest.mark.parametrize("name", LACKS)
def test_three_steps_counter_and_book(phone: Phone, lacking: str, name: str) -> None:
    lack = LACKS[name]
    opened(phone, f"{lacking}{name}/index.html")
    three_steps(phone)
    comes_to(phone, PAGE)
    says(phone, "#status-line", lack.typed)
    if lack.link:
        phone.tap("#to-share")
        phone.tap("#share-place button", "Send it")
        phone.reads("#share-place [role=status]", lack.link)
    to_foot(phone)
    phone.tap(".target")
    phone.reads(".done-words", "11 of")
    says(phone, ".notice", lack.counted)
    phone.tap(".at-machine .leave")
    phone.reads("#machine-line", "foot, 11 of 50 rounds done")
    copy = wearer_and_copy(phone, lack.book)
    assert [one["kind"] for one in copy["pairs"][0]["happenings"]] == ["jump", "done"]
    assert copy["sheets"]["mine"]["foot.length"] == "24,6"
    assert phone.evaluate("() => thrown") == []


def test_a_browser_without_webassembly_says_so_and_keeps_the_book(
    phone: Phone, lacking: str
) -> None:
    phone.open(f"{lacking}no_wasm/index.html")
    phone.reads("#status-line", "WebAssembly")
    phone.fill("[name='foot.length']", "24,6")
    copy = wearer_and_copy(phone, "")
    assert copy["sheets"]["mine"]["foot.length"] == "24,6"
    assert phone.evaluate("() => thrown") == []


def test_a_spoilt_install_then_no_host_then_both_mended(
    phone: Phone, host: Host, dist: Path, tmp_path: Path
) -> None:
    spoilt = tmp_path / "spoilt"
    shutil.copytree(dist.resolve(), spoilt, copy_function=os.symlink)
    (counter,) = (spoilt / "assets").glob("machine-*.js")
    put(counter, counter.read_bytes()[:1000])
    host.serve(spoilt)
    opened(phone, host.address)
    three_steps(phone)
    figures(phone)
    assert phone.evaluate(INSTALLED) == "redundant"  # given up, as the specification calls it
    assert phone.sight("#stored-line") == ""
    host.stop()
    phone.tap("#knit-it")
    phone.reads("#machine-trouble", "Check your connection")
    host.serve(dist)
    phone.reload()
    phone.reads("#stored-line", "Stored on this phone")
    phone.tap(".tape a[data-to=counts]")
    comes_to(phone, PAGE)
    to_foot(phone)
