"""A text that got into the page, by whatever door, neither runs nor calls home: the site's policy
bites on every engine (W3C Content Security Policy Level 3), and Trusted Types where it has them.
"""

import http.server
import threading
import urllib.request
from collections.abc import Iterator

import pytest

from tests.engines.phone import Phone
from tests.engines.steps import opened

# Each tries to set `ran`.
RUNS = {
    "a script in the page": "document.body.append(made('script', [text]))",
    "a handler in the markup": "const b = made('b'); b.setAttribute('onclick', text); b.click()",
    "a text evaluated": "(0, eval)(text)",
    "a function of a text": "Function(text)()",
    "a timer of a text": "setTimeout(text)",
    "a script from a data address": "import(`data:text/javascript,${text}`)",
    "an address that is a script": "made('a', [], { href: `javascript:${text}` }).click()",
    "a worker from a blob": "new Worker(URL.createObjectURL(new Blob([`postMessage(1)`])))"
    ".onmessage = () => { window.ran = 'in a worker'; }",
}
# Each asks another host, `away`.
CALLS = {
    "a picture": "document.body.append(made('img', [], { src: away }))",
    "a request": "fetch(away, { mode: 'no-cors' })",
    "a beacon": "navigator.sendBeacon(away, 'her foot')",
    "a style": "document.head.append(made('link', [], { rel: 'stylesheet', href: away }))",
    "a picture in a style": "made('b').style.background = `url(${away})`",
    "a frame": "document.body.append(made('iframe', [], { src: away }))",
    "a script": "import(away)",
    "a form": "made('form', [], { action: away, target: '_self' }).requestSubmit()",
}
# Each turns a text into markup or a script's address: what Trusted Types are about.
TURNS = {
    "markup": "made('b').innerHTML = '<i>x</i>'",
    "markup beside": "made('b').insertAdjacentHTML('beforeend', '<i>x</i>')",
    "markup written": "document.write('<i>x</i>')",
    "markup read": "new DOMParser().parseFromString('<i>x</i>', 'text/html')",
    "a frame's markup": "made('iframe').srcdoc = '<i>x</i>'",
    "a script's address": "made('script').src = 'sw.js'",
    "a worker's address": "new Worker('sw.js')",
    "a rule of one's own": "trustedTypes.createPolicy('anything', { createHTML: String })",
}
# Each act in a task of the page's own, then what the browser said of it.
TRIED = """async (away) => {
    const text = "window.ran = 'a text'";
    const made = (tag, inside = [], facts = {}) => {
        const one = Object.assign(document.createElement(tag), facts);
        one.append(...inside);
        if (tag !== "script") document.body.append(one);
        return one;
    };
    const came = {};
    for (const [name, act] of Object.entries({ %s })) {
        came[name] = await new Promise((over) => {
            document.addEventListener(
                "securitypolicyviolation",
                ({ effectiveDirective }) => over(effectiveDirective),
                { once: true },
            );
            setTimeout(() => { try { act(); } catch { /* stopped at once */ } });
            setTimeout(over, 5000, "not stopped");
        });
        if (window.ran) came[name] = "ran";
    }
    return came;
}"""


def tried(phone: Phone, acts: dict[str, str], away: str = "") -> dict[str, str]:
    """The rule of the policy that stopped each."""
    functions = ", ".join(f'"{name}": () => {{ {act}; }}' for name, act in acts.items())
    came: dict[str, str] = phone.evaluate(TRIED % functions, away)
    assert came.keys() == acts.keys()
    return came


@pytest.fixture
def away() -> Iterator[tuple[str, list[str]]]:
    """Another host, and what it was asked."""
    asked: list[str] = []

    class Listening(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_response(200)
            self.send_header("Access-Control-Allow-Origin", "*")
            self.end_headers()

        do_POST = do_GET  # noqa: N815 (the library's name)

        def log_message(self, *_: object) -> None:
            pass

    with http.server.ThreadingHTTPServer(("localhost", 0), Listening) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://localhost:{server.server_port}/", asked
        server.shutdown()


def test_no_text_runs_or_calls_home(phone: Phone, site: str, away: tuple[str, list[str]]) -> None:
    opened(phone, site)
    stopped = tried(phone, RUNS)
    assert not {"ran", "not stopped"} & set(stopped.values()), stopped
    address, asked = away
    urllib.request.urlopen(address).close()
    assert asked == ["/"]  # it would hear
    stopped = tried(phone, CALLS, address)
    assert "not stopped" not in stopped.values(), stopped
    assert asked == ["/"]
    phone.reads(".wordmark", "Heelwise")  # and the page is still there


def test_no_text_becomes_markup_or_a_scripts_address(phone: Phone, site: str) -> None:
    opened(phone, site)
    if not phone.evaluate("() => 'trustedTypes' in window"):
        pytest.skip("this engine has no Trusted Types")
    stopped = tried(phone, TURNS)
    assert set(stopped.values()) <= {"require-trusted-types-for", "trusted-types"}, stopped
