"""The page's line to the engine when things go wrong: crash, silence, a host set up badly.

The engine under test is the real one with a door more: it can be told to crash or to fall silent.
"""

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

import pytest
from flask import Response, request
from playwright.sync_api import Browser, Page

from build import serve
from tests.browser.host import REQUEST, ask, built, until

# A browser that hangs up in the middle of a file leaves that file open in the server here.
pytestmark = pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")

PLAN = {"do": "plan", "request": REQUEST}

# `until` is a moment in ms since 1970: before it the call goes wrong, after it all is well. A new
# start of Python takes longer than the half second that tests give, so the second try succeeds.
TROUBLE = """

_answer_text = answer_text


def answer_text(text):
    import os
    import time

    call = json.loads(text)
    trouble = call["do"] if time.time() * 1000 < call.get("until", 0) else None
    if trouble == "crash":
        os.abort()
    held = []
    while trouble == "memory":
        held.append(bytearray(1 << 24))
    while trouble == "silence" and time.time() * 1000 < call["until"]:
        pass
    if call["do"] == "raise":
        raise ZeroDivisionError
    if call["do"] == "echo":
        return text
    return _answer_text(text)
"""

# A phone short of memory gives Python no more than so much. A worker that says everything twice:
# what it said to the call before comes while the next is waited for.
WORKER = """
const { grow } = WebAssembly.Memory.prototype;
WebAssembly.Memory.prototype.grow = function (pages) {
  if (this.buffer.byteLength + pages * 65536 > 256 * 2 ** 20) throw new RangeError("no more");
  return grow.call(this, pages);
};
const say = globalThis.postMessage.bind(globalThis);
let said;
globalThis.postMessage = (message) => {
  if (said && message.text) say(said);
  if (message.text) said = message;
  say(message);
};
"""

Serving = Callable[..., AbstractContextManager[str]]


@pytest.fixture(scope="module")
def dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site whose engine can get into trouble."""

    def change(root: Path) -> None:
        with (root / "engine" / "api.py").open("a") as api:
            api.write(TROUBLE)
        with (root / "webapp" / "worker" / "worker.js").open("a") as worker:
            worker.write(WORKER)

    return built(tmp_path_factory.mktemp("trouble"), change)


@pytest.fixture(scope="module")
def serving(dist: Path) -> Serving:
    """Serves the site; `alter` may spoil each response before it goes out."""

    @contextmanager
    def serving(alter: Callable[[Response], Response] = lambda response: response) -> Iterator[str]:
        app = serve.create_app(dist)
        # Flask runs the last function first: `alter` has to come before, to have the last word.
        app.after_request_funcs.setdefault(None, []).insert(0, alter)
        server = serve.make(app, 0)
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        try:
            yield f"http://localhost:{server.port}/"
        finally:
            server.shutdown()
            thread.join()
            server.server_close()

    return serving


@pytest.fixture
def bare(browser: Browser) -> Iterator[Page]:
    """A page without service worker, so that every file comes from the host."""
    context = browser.new_context(service_workers="block")
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def ready_page(browser: Browser, serving: Serving) -> Iterator[Page]:
    """A page with the engine ready, for all tests here: each leaves it ready again."""
    context = browser.new_context(service_workers="block")
    with serving() as address:
        page = context.new_page()
        page.goto(address)
        yield page
        context.close()


@pytest.fixture
def bench(ready_page: Page) -> Page:
    """The same page, with nothing noted yet."""
    until(ready_page, "bench.engine.state === 'ready'", seconds=60)
    ready_page.evaluate("bench.states.splice(0)")
    return ready_page


def test_calls_made_before_the_start_are_answered_in_order(bare: Page, serving: Serving) -> None:
    with serving() as address:
        bare.goto(address)
        until(bare, "Boolean(bench)")
        answers = bare.evaluate(
            """async () => {
                const order = [];
                const calls = [1, 2, 3].map((n) =>
                    bench.engine.ask({ do: "echo", n }).then((answer) => order.push(answer.n)));
                const before = bench.engine.state;
                await Promise.all(calls);
                return [before, ...order, bench.engine.state];
            }"""
        )
    assert answers == ["starting", 1, 2, 3, "ready"]


@pytest.mark.parametrize("trouble", ["crash", "silence", "memory"])
def test_trouble_costs_a_new_start_and_the_call_is_made_again(bench: Page, trouble: str) -> None:
    deadline = 30_000 if trouble == "memory" else 400
    answers = bench.evaluate(
        """async ([trouble, deadline]) => Promise.all([
            bench.engine.ask({ do: trouble, until: Date.now() + 500 }, { deadline }),
            bench.engine.ask({ do: "echo", n: 7 }),
        ])""",
        [trouble, deadline],
    )
    # The call was heard (and refused, for its name) by the second engine; the one behind it too.
    assert answers[0]["errors"][0]["field"] == "do"
    assert answers[1] == {"do": "echo", "n": 7}
    assert bench.evaluate("bench.states") == ["starting", "ready"]


@pytest.mark.parametrize("trouble", ["crash", "silence"])
def test_second_failure_is_told_and_the_next_call_works(bench: Page, trouble: str) -> None:
    never = {"do": trouble, "until": (time.time() + 3600) * 1000}
    assert "did not answer" in ask(bench, never, deadline=400)["rejected"]
    assert ask(bench, {"do": "echo", "n": 1}) == {"do": "echo", "n": 1}
    assert bench.evaluate("bench.states.join()") == "starting,ready,starting,ready"


def test_fault_in_the_engine_is_told_at_once_and_costs_no_start(bench: Page) -> None:
    assert "fault" in ask(bench, {"do": "raise"})["rejected"]
    assert ask(bench, {"do": "echo", "n": 1}) == {"do": "echo", "n": 1}
    assert bench.evaluate("bench.states") == []


def test_a_stale_reply_is_ignored(bench: Page) -> None:
    """The worker says the answer before once more ahead of each."""
    assert [ask(bench, {"do": "echo", "n": n})["n"] for n in range(3)] == [0, 1, 2]
    assert bench.evaluate("bench.states") == []


def test_aborted_calls_end_at_once_and_disturb_no_other(bench: Page) -> None:
    """One while Python works on it, one while it waits, one before it was made."""
    outcome = bench.evaluate(
        """async () => {
            const [working, waiting, early] = [1, 2, 3].map(() => new AbortController());
            early.abort();
            const end = (promise) => promise.then((a) => a, (e) => e.name);
            const calls = [
                [{ do: "silence", until: Date.now() + 3000 }, working.signal],
                [{ do: "echo", n: 2 }, waiting.signal],
                [{ do: "echo", n: 3 }, early.signal],
            ].map(([call, signal]) => end(bench.engine.ask(call, { signal })));
            const last = end(bench.engine.ask({ do: "echo", n: 4 }));
            await new Promise((done) => setTimeout(done, 100));
            working.abort();
            waiting.abort();
            const asked = performance.now();
            const ends = await Promise.all(calls);
            const waited = performance.now() - asked;
            return [ends, waited < 1500, await last, bench.states];
        }"""
    )
    assert outcome == [["AbortError"] * 3, True, {"do": "echo", "n": 4}, []]


def test_aborted_call_that_crashes_is_not_made_again(bench: Page) -> None:
    bench.evaluate(
        """async () => {
            const stop = new AbortController();
            const { signal } = stop;
            const call = { do: "silence", until: Date.now() + 3_600_000 };
            bench.engine.ask(call, { signal, deadline: 400 }).catch(() => {});
            await new Promise((done) => setTimeout(done, 100));
            stop.abort();
        }"""
    )
    assert ask(bench, {"do": "echo", "n": 1}) == {"do": "echo", "n": 1}
    assert bench.evaluate("bench.states") == ["starting", "ready"]


def wrong_type(response: Response) -> Response:
    """A host that does not know WebAssembly."""
    if request.path.endswith(".wasm"):
        response.headers["Content-Type"] = "application/octet-stream"
    return response


def strict_policy(response: Response) -> Response:
    """A host whose policy forgot WebAssembly."""
    policy = response.headers["Content-Security-Policy"]
    response.headers["Content-Security-Policy"] = policy.replace(" 'wasm-unsafe-eval'", "")
    return response


def no_engine(response: Response) -> Response:
    """A host that lost two files: the engine and the snapshot with the engine in it."""
    if "/engine-" in request.path or "/snapshot-" in request.path:
        response.status_code = 404
    return response


@pytest.mark.parametrize("alter", [wrong_type, strict_policy, no_engine])
def test_badly_set_up_host_is_told_soon(
    bare: Page, serving: Serving, alter: Callable[[Response], Response]
) -> None:
    """Pyodide itself would wait for ever for the first two."""
    with serving(alter) as address:
        bare.goto(address)
        assert "could not start" in ask(bare, PLAN)["rejected"]
        assert bare.evaluate("bench.states") == ["failed"]
        assert bare.evaluate("bench.engine.reason") == ask(bare, PLAN)["rejected"]


def test_stalled_download_is_given_up_and_can_be_tried_again(bare: Page, serving: Serving) -> None:
    flows = threading.Event()

    def stall(response: Response) -> Response:
        if request.path.endswith(".wasm"):
            flows.wait(60)
        return response

    with serving(stall) as address:
        bare.goto(f"{address}?patience=4000")
        start = time.monotonic()
        assert "could not start" in ask(bare, PLAN)["rejected"]
        assert time.monotonic() - start < 30  # two tries of 4 s, and what a busy machine adds
        flows.set()
        for _ in range(10):  # on a busy machine 4 s may be too short: press again, as one would
            bare.evaluate("bench.engine.start()")
            until(bare, "bench.engine.state !== 'starting'")
            if bare.evaluate("bench.engine.state") == "ready":
                break
        assert ask(bare, {"do": "echo", "n": 1}) == {"do": "echo", "n": 1}
