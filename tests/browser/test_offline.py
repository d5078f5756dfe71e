"""The site on the phone: stored whole, one version at a time, with no host behind it.

Expected behaviour: W3C Service Workers (an install fails as a whole; a new worker waits), W3C
Subresource Integrity, W3C Web Application Manifest.
"""

import json
import shutil
import struct
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from build import site
from tests.browser.host import REQUEST, Host, ask, built, until
from tests.conftest import free_port

pytestmark = pytest.mark.pyodide

PLAN = {"do": "plan", "request": REQUEST}


@pytest.fixture(scope="module")
def first(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site."""
    return built(tmp_path_factory.mktemp("first"))


@pytest.fixture(scope="module")
def second(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its next version: another look, another engine."""

    def change(root: Path) -> None:
        with (root / "webapp" / "style" / "page.css").open("a") as style:
            style.write("\nbody { outline: 0 solid }\n")
        with (root / "engine" / "sources.py").open("a") as engine:
            engine.write("\nSECOND_VERSION = True\n")

    return built(tmp_path_factory.mktemp("second"), change)


@pytest.fixture
def host() -> Iterator[Host]:
    host = Host(free_port())
    yield host
    host.stop()


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context()
    yield context
    context.close()


def visit(phone: BrowserContext, host: Host) -> Page:
    """A page of the site, opened when all is stored and ready."""
    page = phone.new_page()
    page.goto(host.address)
    until(page, "bench.stored && bench.engine.state === 'ready'")
    return page


def version(page: Page) -> str:
    return str(page.evaluate("bench.version"))


def look_for_update(page: Page) -> None:
    """Have the browser ask for a new service worker, and wait for the end of its install."""
    page.evaluate(
        """async () => {
            const registration = await navigator.serviceWorker.getRegistration();
            await registration.update();
            const worker = registration.installing;
            await new Promise((done) => {
                const over = () => worker?.state !== "installing" && done();
                worker?.addEventListener("statechange", over);
                over();
            });
        }"""
    )


def loaded(page: Page) -> set[str]:
    """Paths of the files this page was made of, its worker's among them."""
    page.wait_for_timeout(100)
    urls = page.evaluate("performance.getEntriesByType('resource').map((entry) => entry.name)")
    return {"/".join(url.split("/")[3:]) for url in urls} - {""}


def files(dist: Path) -> set[str]:
    return {path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file()}


def stored_files(dist: Path) -> set[str]:
    """Those of them that a phone stores."""
    return {one for one in files(dist) if not one.startswith(site.SHOWN)} - {"sw.js", site.STAMP}


def test_real_page_works_after_the_server_is_gone(browser: Browser, dist: Path, host: Host) -> None:
    """The real site offline: after a plain reload, in a new tab, and again after a hard reload.

    A hard reload asks the host and not the phone, so it may show the browser's own error; the page
    must be there all the same when it is opened next.
    """
    phone = browser.new_context()
    host.serve(dist)
    page = phone.new_page()
    page.goto(host.address)
    until(page, "navigator.serviceWorker.ready.then(() => true)")
    host.stop()

    def reads_a_foot(page: Page) -> None:
        page.locator("#foot-length").fill("24.6 cm")
        expect(page.locator("#foot-length-other")).to_contain_text("9 ", timeout=30_000)

    page.reload()
    reads_a_foot(page)
    page.close()
    page = phone.new_page()
    page.goto(f"{host.address}?from=a-messenger#1.nonsense")
    expect(page.locator("h1")).to_be_visible()
    page.goto(f"{host.address}index.html")
    reads_a_foot(page)
    with phone.expect_page() as beside:
        page.locator("#to-settings").click()
        page.get_by_role("link", name="Their licenses").click()
    expect(beside.value.locator("body")).to_contain_text("This site carries")
    beside.value.close()
    expect(page.locator("#foot-length")).to_have_value("24.6 cm")  # where she was
    phone.new_cdp_session(page).send("Page.reload", {"ignoreCache": True})
    page.close()
    page = phone.new_page()
    page.goto(f"{host.address}index.html")
    reads_a_foot(page)
    phone.close()


def test_everything_needed_is_stored_and_nothing_else(
    phone: BrowserContext, host: Host, first: Path
) -> None:
    host.serve(first)
    page = visit(phone, host)
    stored = page.evaluate(
        """async () => {
            const paths = [];
            for (const name of await caches.keys())
                for (const request of await (await caches.open(name)).keys())
                    paths.push(new URL(request.url).pathname.slice(1));
            return paths;
        }"""
    )
    assert sorted(stored) == sorted(stored_files(first))


def test_first_visit_is_under_the_service_workers_care_without_a_reload(
    phone: BrowserContext, host: Host, first: Path
) -> None:
    host.serve(first)
    page = visit(phone, host)
    until(page, "navigator.serviceWorker.controller !== null")
    host.stop()
    page.evaluate("bench.engine.start()")  # as after a crash: everything is fetched again
    assert "counts" in ask(page, PLAN)


def test_new_version_is_offered_then_taken_by_all_tabs(
    phone: BrowserContext, host: Host, first: Path, second: Path
) -> None:
    host.serve(first)
    page, other = visit(phone, host), visit(phone, host)
    old = version(page)
    host.serve(second)
    look_for_update(page)
    until(page, "bench.offers.length > 0")
    until(other, "bench.offers.length > 0")

    # Not forced: page and engine stay as they were, also after a reload.
    assert version(page) == version(other) == old
    page.reload()
    until(page, "bench.engine.state === 'ready'")
    assert version(page) == old
    assert loaded(page) <= files(first)
    until(page, "bench.offers.length > 0")

    # Taken in one tab, it reaches both, and nothing of the old is left.
    with page.expect_navigation(), other.expect_navigation():
        page.evaluate("bench.offers[0]()")
    for tab in (page, other):
        until(tab, "globalThis.bench?.engine.state === 'ready'")
        assert version(tab) != old
        assert loaded(tab) <= files(second)
    host.stop()
    page.reload()
    assert "counts" in ask(page, PLAN)
    keys = page.evaluate("caches.keys().then(([name]) => caches.open(name)).then(c => c.keys())")
    assert len(keys) == len(stored_files(second))


def truncated(dist: Path) -> None:
    """The engine's archive, cut off in the middle."""
    archive = next(dist.glob("engine-*.zip"))
    archive.write_bytes(archive.read_bytes()[:100_000])


def sign_in_page(dist: Path) -> None:
    """What the Wi-Fi of a hall gives for every address until someone pays."""
    for path in dist.rglob("*.*"):
        if path.is_file() and path.name != "sw.js":
            path.write_text("<!doctype html><title>Welcome! Please sign in.</title>")


def missing(dist: Path) -> None:
    """A host to which not all files were copied yet."""
    next(dist.glob("assets/page-*.css")).unlink()


@pytest.mark.parametrize("spoil", [truncated, sign_in_page, missing])
def test_spoiled_download_leaves_the_old_version_whole(
    phone: BrowserContext,
    host: Host,
    first: Path,
    second: Path,
    tmp_path: Path,
    spoil: Callable[[Path], None],
) -> None:
    host.serve(first)
    page = visit(phone, host)
    old = version(page)
    spoiled = tmp_path / "spoiled"
    shutil.copytree(second, spoiled)
    spoil(spoiled)
    host.serve(spoiled)
    look_for_update(page)
    state = page.evaluate(
        "navigator.serviceWorker.getRegistration()"
        ".then(r => [r.installing, r.waiting, r.active].map(w => w?.state ?? null))"
    )
    assert state == [None, None, "activated"]
    assert page.evaluate("bench.offers.length") == 0

    host.stop()
    page.reload()
    assert "counts" in ask(page, PLAN)
    assert version(page) == old
    assert loaded(page) <= files(first)

    # Once the host gives the right files, the new version comes after all.
    host.serve(second)
    look_for_update(page)
    until(page, "bench.offers.length > 0")


def test_browser_finds_it_installable(browser: Browser, dist: Path, host: Host) -> None:
    host.serve(dist)
    phone = browser.new_context()
    page = phone.new_page()
    page.goto(host.address)
    until(page, "navigator.serviceWorker.ready.then(() => true)")
    chromium = phone.new_cdp_session(page)
    manifest = chromium.send("Page.getAppManifest")
    assert manifest["errors"] == []
    assert manifest["url"] == f"{host.address}manifest.webmanifest"
    problems = chromium.send("Page.getInstallabilityErrors")["installabilityErrors"]
    # A private window cannot install anything; that is all Chromium may have against it.
    assert {problem["errorId"] for problem in problems} <= {"in-incognito"}
    phone.close()


def test_manifest_tells_the_truth(dist: Path) -> None:
    manifest: dict[str, Any] = json.loads((dist / "manifest.webmanifest").read_text())
    assert manifest["name"] == "Heelwise"
    assert manifest["display"] == "standalone"
    assert manifest["start_url"] == "."
    assert manifest["id"]
    for icon in manifest["icons"]:
        content = (dist / icon["src"]).read_bytes()
        if icon["type"] == "image/png":
            assert content[:8] == b"\x89PNG\r\n\x1a\n"
            width, height = struct.unpack(">II", content[16:24])
            assert icon["sizes"] == f"{width}x{height}"
    for shortcut in manifest["shortcuts"]:
        assert shortcut["name"]
        assert shortcut["url"].startswith("./#")
    assert [one["url"] for one in manifest["shortcuts"]] == ["./#measure", "./#knit", "./#book"]
    for picture in manifest["screenshots"]:
        width, height = struct.unpack(">II", (dist / picture["src"]).read_bytes()[16:24])
        assert picture["sizes"] == f"{width}x{height}"
        # What Chromium asks of them: 320 to 3840 pixels, no side 2.3 times the other.
        assert 320 <= width < height <= min(3840, 2.3 * width)
        assert picture["label"]
    sizes = {icon["sizes"] for icon in manifest["icons"]}
    assert {"192x192", "512x512"} <= sizes  # what installing needs
    assert any(icon.get("purpose") == "maskable" for icon in manifest["icons"])


def test_shortcuts_lead_where_they_say(phone: BrowserContext, host: Host, dist: Path) -> None:
    """Also where no sock is on the machine yet."""
    host.serve(dist)
    page = phone.new_page()
    page.goto(f"{host.address}#measure")
    expect(page.locator("#measure-title")).to_be_visible()
    page.goto(f"{host.address}licences.txt")
    page.goto(f"{host.address}#book")
    expect(page.locator("#book")).to_be_visible()
    page.goto(f"{host.address}licences.txt")
    page.goto(f"{host.address}#knit")
    expect(page.locator("#machine-trouble")).to_contain_text("No sock is on the machine yet")
    expect(page.locator("#measure-title")).to_be_visible()


def test_maskable_icon_survives_being_cut_to_a_circle(
    phone: BrowserContext, host: Host, dist: Path
) -> None:
    """Nothing is drawn outside the manifest text's safe zone: a circle of 80 % of the width."""
    host.serve(dist)
    page = phone.new_page()
    page.goto(f"{host.address}icons/maskable-512.png")
    farthest = page.evaluate(
        """(ground) => {
            const picture = document.querySelector("img");
            const { naturalWidth: w, naturalHeight: h } = picture;
            const context = new OffscreenCanvas(w, h).getContext("2d");
            context.drawImage(picture, 0, 0);
            const { data } = context.getImageData(0, 0, w, h);
            let farthest = 0;
            for (let y = 0; y < h; y++)
                for (let x = 0; x < w; x++)
                    if (Math.hypot(x - w / 2, y - h / 2) > 0.4 * w)
                        for (const [channel, value] of ground.entries())
                            farthest = Math.max(
                                farthest, Math.abs(data[4 * (y * w + x) + channel] - value));
            return farthest;
        }""",
        [0xF4, 0xEE, 0xE1, 0xFF],
    )
    assert farthest <= 2  # of 255: the soft edge between two like grounds


def test_site_may_live_in_a_sub_folder(
    phone: BrowserContext, host: Host, first: Path, tmp_path: Path
) -> None:
    (tmp_path / "index.html").write_text("<!doctype html><title>Something else</title>")
    shutil.copytree(first, tmp_path / "socks")
    host.serve(tmp_path)
    page = phone.new_page()
    page.goto(f"{host.address}socks/index.html")
    until(page, "bench.stored && bench.engine.state === 'ready'")
    host.stop()
    page.goto(f"{host.address}socks/")
    assert "counts" in ask(page, PLAN)


def test_nothing_is_asked_of_anyone_else(browser: Browser, host: Host, first: Path) -> None:
    """Every request of a whole visit, the worker's and the service worker's included."""
    host.serve(first)
    phone = browser.new_context()
    asked: list[str] = []
    lock = threading.Lock()

    def note(request: Any) -> None:
        with lock:
            asked.append(request.url)

    phone.on("request", note)
    page = visit(phone, host)
    assert "counts" in ask(page, PLAN)
    page.reload()
    until(page, "bench.engine.state === 'ready'")
    assert any("pyodide.asm.wasm" in url for url in asked), "the worker's requests are not seen"
    assert [url for url in asked if not url.startswith(host.address)] == []
    assert page.evaluate("bench.violations") == []
    phone.close()
