"""Starting from Python's memory written down at build time, and what is done when that fails.

The answers must be those of the ordinary start whatever becomes of the snapshot; the authority for
them is the engine run natively here.
"""

import json
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.asking import answer
from tests.browser.host import REQUEST, Host, ask, built, until
from tests.conftest import free_port

pytestmark = pytest.mark.pyodide

PLAN = {"do": "plan", "request": REQUEST}
STARTS = int(os.environ.get("HEELWISE_STARTS", "60"))  # 200 in `check.py --long`

READ = {"do": "read", "units": "cm", "fields": {"foot.length": "24,6"}}
# Puts other bytes in the place of the stored snapshot; `spoil` changes them.
SPOIL = """async (kind) => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    const key = (await cache.keys()).find(({ url }) => url.includes("/snapshot-"));
    if (kind === "missing") return cache.delete(key);
    let bytes = new Uint8Array(await (await cache.match(key)).arrayBuffer());
    if (kind === "corrupt") bytes[bytes.length >> 1] ^= 1;
    if (kind === "cut short") bytes = bytes.slice(0, -4096);
    if (kind === "another file") bytes = new TextEncoder().encode("<!doctype html>");
    await cache.put(key, new Response(bytes));
}"""

# A worker of its own, handed what the page hands over, but for a snapshot that was changed before.
START = """async (change) => {
    const { worker, pyodide, engine, words, snapshot } = document.documentElement.dataset;
    const whole = (address) => new URL(address, document.baseURI).href;
    const bytes = new Uint8Array(await (await fetch(snapshot)).arrayBuffer());
    const length = new DataView(bytes.buffer).getUint32(0, true);
    let facts = new TextDecoder().decode(bytes.subarray(4, 4 + length));
    let pages = bytes.subarray(4 + length);
    if (change === "build") facts = facts.replace(/"build":"../, '"build":"zz');
    if (change === "size") facts = facts.replace(/"size":\\d/, '"size":9');
    if (change === "pages") pages = pages.subarray(4096);
    if (change === "heap") pages = pages.slice().fill(0x55, pages.length >> 1);
    const head = new Uint8Array(4);
    new DataView(head.buffer).setUint32(0, length, true);
    const memory = new Uint8Array(await new Blob([head, facts, pages]).arrayBuffer());
    const module = await WebAssembly.compileStreaming(fetch(`${pyodide}pyodide.asm.wasm`));
    const gate = trustedTypes.createPolicy("gate", { createScriptURL: String });
    const python = new Worker(gate.createScriptURL(worker), { type: "module" });
    const said = new Promise((heard) => {
        python.onmessage = ({ data }) => data.alive || "come" in data || heard(data);
        python.onerror = (event) => heard({ failed: event.message });
    });
    python.postMessage({
        pyodide: whole(pyodide), engine: whole(engine), words: whole(words), snapshot: "",
    });
    python.postMessage({ module });
    python.postMessage({ stored: true });
    python.postMessage({ memory });
    const { ready, failed } = await said;
    python.terminate();
    return ready ? "ready" : failed;
}"""


@pytest.fixture(scope="module")
def benched(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site whose page puts the engine within reach."""
    return built(tmp_path_factory.mktemp("snapshot"))


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context()
    yield context
    context.close()


@pytest.fixture
def asked(phone: BrowserContext) -> list[str]:
    """Names of the files asked for from now on, by page and worker."""
    names: list[str] = []
    phone.on("request", lambda request: names.append(request.url.rsplit("/")[-1]))
    return names


@pytest.fixture
def page(phone: BrowserContext, benched: Path, asked: list[str]) -> Page:
    """A later visit: all is stored and the host is gone."""
    host = Host(free_port())
    host.serve(benched)
    page = phone.new_page()
    page.goto(host.address)
    until(page, "bench.stored && bench.engine.state === 'ready'", seconds=60)
    host.stop()
    asked.clear()
    return page


def started_anew(page: Page) -> None:
    page.reload()
    until(page, "bench.engine.state === 'ready'", seconds=60)


def answers_rightly(page: Page) -> None:
    assert ask(page, PLAN) == json.loads(json.dumps(answer(PLAN)))


def test_later_visit_starts_from_the_snapshot(page: Page, asked: list[str]) -> None:
    started_anew(page)
    answers_rightly(page)
    assert "empty.zip" in asked
    assert not [name for name in asked if name == "python_stdlib.zip" or name.startswith("engine-")]
    assert page.evaluate("bench.states") == ["ready"]


@pytest.mark.parametrize("kind", ["missing", "corrupt", "cut short", "another file"])
def test_spoilt_snapshot_costs_only_time(page: Page, asked: list[str], kind: str) -> None:
    page.evaluate(SPOIL, kind)
    started_anew(page)
    answers_rightly(page)
    assert "python_stdlib.zip" in asked
    assert "starting" not in page.evaluate("bench.states")  # nobody hears of a second start


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (None, "ready"),
        ("build", "belongs to another Pyodide"),
        ("size", "belongs to another Pyodide"),
        ("pages", "not whole"),
    ],
)
def test_snapshot_of_another_build_is_refused(page: Page, change: str | None, said: str) -> None:
    assert said in page.evaluate(START, change)


@pytest.mark.whole
def test_memory_full_of_nonsense_does_not_pass_for_ready(page: Page) -> None:
    assert page.evaluate(START, "heap") != "ready"


@pytest.mark.slow
def test_many_starts_leak_nothing(page: Page) -> None:
    """Each holds some 31 MB: were one in ten kept, it would show threefold; of 200, tenfold."""
    starts = """async ([times, call]) => {
        for (let n = 0; n < times; n++) {
            bench.engine.start();
            await bench.engine.ask(call);
        }
    }"""
    page.evaluate(starts, [20, READ])  # whatever a browser keeps for good, it has by now
    before = resident(page)
    page.evaluate(starts, [STARTS, READ])
    assert resident(page) - before < 60e6
    assert len(page.workers) == 1


def resident(page: Page) -> float:
    """Bytes in memory of all processes that render pages, once they have tidied up."""
    page.wait_for_timeout(3000)
    page.request_gc()
    page.wait_for_timeout(1000)
    browser = page.context.browser
    assert browser
    session = browser.new_browser_cdp_session()
    processes = session.send("SystemInfo.getProcessInfo")["processInfo"]
    session.detach()
    sizes = [
        int(Path(f"/proc/{process['id']}/statm").read_text().split()[1]) * 4096
        for process in processes
        if process["type"] == "renderer"
    ]
    assert sizes
    return sum(sizes)
