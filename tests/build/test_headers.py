"""What the server sends. Reasons: W3C Content Security Policy Level 3, RFC 9111 (caching),
RFC 8246 (immutable), the WebAssembly Web API (application/wasm), W3C Web Application Manifest.
"""

import http.client
import re
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from build import headers, serve

HIDDEN = "not part of the site"
FILES = {
    "index.html": "text/html",
    "sw.js": "text/javascript",
    "manifest.webmanifest": "application/manifest+json",
    "icons/icon.svg": "image/svg+xml",
    "icons/192.png": "image/png",
    "assets/main-ABCDEF12.js": "text/javascript",
    "assets/page-ABCDEF12.css": "text/css",
    "engine-12345678.zip": "application/zip",
    "snapshot-12345678.bin": "application/octet-stream",
    "pyodide-1.2.3-12345678/pyodide.mjs": "text/javascript",
    "pyodide-1.2.3-12345678/pyodide.asm.wasm": "application/wasm",
}
NEVER_CHANGE = [name for name in FILES if "12345678" in name or "ABCDEF12" in name]


@pytest.fixture(scope="module")
def port(tmp_path_factory: pytest.TempPathFactory) -> Iterator[int]:
    """A server over a small site that has neighbours it must not show."""
    around = tmp_path_factory.mktemp("around")
    (around / "secret.txt").write_text(HIDDEN)
    dist = around / "dist"
    for name in FILES:
        (dist / name).parent.mkdir(parents=True, exist_ok=True)
        (dist / name).write_text(name)
    (dist / ".inputs").write_text(HIDDEN)
    server = serve.make(serve.create_app(dist), 0)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield server.port
    server.shutdown()
    thread.join()
    server.server_close()


def get(port: int, path: str, **sent: str) -> tuple[int, http.client.HTTPMessage, str]:
    """Ask for a path exactly as it is written, as no browser would."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    try:
        connection.request("GET", path, headers=sent)
        answer = connection.getresponse()
        return answer.status, answer.headers, answer.read().decode()
    finally:
        connection.close()


@pytest.mark.parametrize("name", FILES)
def test_every_file_comes_with_type_and_guards(port: int, name: str) -> None:
    status, sent, body = get(port, f"/{name}")
    assert (status, body) == (200, name)
    assert sent["Content-Type"].split(";")[0] == FILES[name]
    assert sent["X-Content-Type-Options"] == "nosniff"
    assert sent["Referrer-Policy"] == "no-referrer"
    assert sent["Cross-Origin-Opener-Policy"] == "same-origin"
    assert "camera=()" in sent["Permissions-Policy"]
    for header in sent:
        assert len(sent.get_all(header, [])) == 1, f"{header} is sent twice"


def test_policy_allows_only_this_site_and_one_inline_script(port: int) -> None:
    policy = get(port, "/")[1]["Content-Security-Policy"]
    rules = dict(rule.split(" ", 1) for rule in policy.split("; "))
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == f"'self' 'wasm-unsafe-eval' '{headers.OPENING}'"
    assert re.fullmatch(r"sha256-[\w+/]{43}=", headers.OPENING)  # CSP 3, 2.3.1: a hash, no keyword
    # W3C Trusted Types: texts become markup or a script's address through these three alone;
    # lit-html stands in several bundles, each of which makes its policy.
    assert rules.pop("require-trusted-types-for") == "'script'"
    assert rules.pop("trusted-types") == "lit-html opening gate 'allow-duplicates'"
    allowed = {source for rule in rules.values() for source in rule.split()}
    assert allowed == {"'none'", "'self'", "'wasm-unsafe-eval'", "data:", f"'{headers.OPENING}'"}
    # These three do not fall back on default-src: left out, they would allow everything.
    assert {rules[name] for name in ("base-uri", "form-action", "frame-ancestors")} == {"'none'"}


def test_hashed_files_are_kept_for_ever_and_others_asked_for_anew(port: int) -> None:
    for name in FILES:
        rule = get(port, f"/{name}")[1]["Cache-Control"]
        assert rule == (
            "public, max-age=31536000, immutable" if name in NEVER_CHANGE else "no-cache"
        )
    assert get(port, "/")[1]["Cache-Control"] == "no-cache"


def test_what_is_unchanged_is_not_sent_again(port: int) -> None:
    tag = get(port, "/sw.js")[1]["ETag"]
    status, sent, body = get(port, "/sw.js", **{"If-None-Match": tag})
    assert (status, body) == (304, "")
    assert sent["Cache-Control"] == "no-cache"


def test_folder_gives_the_page(port: int) -> None:
    status, sent, body = get(port, "/?from=a-messenger")
    assert (status, body) == (200, "index.html")
    assert sent["Content-Type"] == "text/html; charset=utf-8"


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/assets/../../secret.txt",
        "/%2e%2e/secret.txt",
        "/%2e%2e%2fsecret.txt",
        "/..%5csecret.txt",
        "//secret.txt",
        "/.inputs",
        "/%2einputs",
        "/assets",
        "/assets/",
        "/nothing",
        "/index.html/",
        "/%00",
    ],
)
def test_nothing_else_is_shown(port: int, path: str) -> None:
    status, sent, body = get(port, path)
    assert status == 404
    assert HIDDEN not in body
    assert "ABCDEF12" not in body, "a folder's list is shown"
    assert sent["X-Content-Type-Options"] == "nosniff"
    assert sent["Cache-Control"] == "no-store", "a missing file is kept"


def test_changing_anything_is_refused(port: int) -> None:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request("PUT", "/index.html", body="mine")
    assert connection.getresponse().status == 405
    connection.close()


def test_other_machines_cannot_reach_it_unless_asked(tmp_path: Path) -> None:
    server = serve.make(serve.create_app(tmp_path), 0)
    assert server.socket.getsockname()[0] == "127.0.0.1"
    server.server_close()


def test_taken_port_is_said_plainly(
    port: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "index.html").touch()
    arguments = ["serve.py", "--dist", str(tmp_path), "--port", str(port)]
    monkeypatch.setattr("sys.argv", arguments)
    assert serve.main() == 1
    assert f"--port {port + 1}" in capsys.readouterr().err


def test_file_compressed_beforehand_is_sent_to_those_who_can_read_it(tmp_path: Path) -> None:
    """RFC 9110, 8.4 and 12.5.3: same type, its coding named, and caches told that it depends."""
    name = "engine-12345678.zip"
    (tmp_path / name).write_text("plain")
    (tmp_path / f"{name}.br").write_text("by brotli")
    (tmp_path / f"{name}.gz").write_text("by gzip")
    (tmp_path / "index.html").write_text("plain")
    ask = serve.create_app(tmp_path).test_client().get
    for accepted, text, coding in (
        ("gzip, deflate, br", "by brotli", "br"),
        ("gzip", "by gzip", "gzip"),
        ("br;q=0, gzip;q=0", "plain", None),
        ("", "plain", None),
    ):
        answer = ask(f"/{name}", headers={"Accept-Encoding": accepted})
        assert answer.text == text
        assert answer.headers.get("Content-Encoding") == coding
        assert answer.headers["Content-Type"] == "application/zip"
        assert answer.headers["Vary"] == "Accept-Encoding"
        answer.close()
    with ask("/index.html", headers={"Accept-Encoding": "br"}) as page:
        assert page.get_data(as_text=True) == "plain"
