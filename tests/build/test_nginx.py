"""What a real nginx sends by the file that build/headers.py prints, header by header.

RFC 9110 (types, codings, ranges, conditions), RFC 9111 (caching) and RFC 8246 (immutable).
build/serve.py, which every other test stands on, has to send the same.
"""

import http.client
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

import pytest

from build import headers, nginx, serve
from tests.nginx_host import needs_nginx, served

pytestmark = needs_nginx
NOT_SHOWN = "not part of the site"
LONG = "a line that shrinks " * 100
FILES = {
    "index.html": "text/html; charset=utf-8",
    "sw.js": "text/javascript; charset=utf-8",
    "licences.txt": "text/plain; charset=utf-8",
    "manifest.webmanifest": "application/manifest+json",
    "icons/icon.svg": "image/svg+xml",
    "icons/192.png": "image/png",
    "assets/main-ABCDEF12.js": "text/javascript; charset=utf-8",
    "assets/page-ABCDEF12.css": "text/css; charset=utf-8",
    "assets/words-ABCDEF12.json": "application/json",
    "engine-12345678.zip": "application/zip",
    "snapshot-12345678.bin": "application/octet-stream",
    "pyodide-1.2.3-12345678/pyodide.mjs": "text/javascript; charset=utf-8",
    "pyodide-1.2.3-12345678/pyodide.asm.wasm": "application/wasm",
    "a-kind-nobody-named.xyz": "application/octet-stream",
}
NEVER_CHANGE = {name for name in FILES if "12345678" in name or "ABCDEF12" in name}
FORBIDDEN = "assets/forbidden-ABCDEF12.js"
# The server's own business: what it is, when it answered, how it goes on, which marks it gives.
ITS_OWN = {"server", "date", "connection", "keep-alive", "etag"}
# What they differ in by status: each has words of its own for errors, and RFC 9110 leaves open
# whether the others say these.
APART = {
    206: {"accept-ranges"},
    304: {"content-type", "last-modified", "accept-ranges"},
    404: {"content-type", "content-length"},
}
PLACES = ("/", "/socks/")


class Answer(NamedTuple):
    """Status, headers by their names in small letters, and body."""

    status: int
    headers: dict[str, str]
    body: bytes


def get(port: int, path: str, method: str = "GET", **sent: str) -> Answer:
    """Ask for a path exactly as it is written."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    try:
        connection.request(method, path, headers=sent)
        answer = connection.getresponse()
        names = [name.lower() for name, _ in answer.getheaders()]
        # With 416 nginx says what it had said of the whole file, then what holds of an error.
        twice = len(names) > len(set(names))
        assert not twice or answer.status == 416, f"a header comes twice: {names}"
        pairs = {name: ", ".join(answer.headers.get_all(name, ())) for name in names}
        return Answer(answer.status, pairs, answer.read())
    finally:
        connection.close()


def make_site(folder: Path) -> None:
    """A file of every kind, its compressed twins beside two of them, and what nobody may see."""
    for name in FILES:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(f"{name} {LONG}")
    for name in ("index.html", "engine-12345678.zip"):
        (folder / f"{name}.br").write_text(f"{name} by brotli")
        (folder / f"{name}.gz").write_text(f"{name} by gzip")
    (folder / ".inputs").write_text(NOT_SHOWN)
    (folder / FORBIDDEN).write_text(NOT_SHOWN)
    (folder / FORBIDDEN).chmod(0)


class Hosts(NamedTuple):
    """Ports of both servers, and the site's path on the first; our own always serves the top."""

    nginx: int
    ours: int
    under: str


def port_of(address: str) -> int:
    """The port that an address names."""
    port = urlsplit(address).port
    assert port
    return port


@contextmanager
def our_own(site: Path) -> Iterator[int]:
    """The port of build/serve.py over a folder."""
    server = serve.make(serve.create_app(site), 0)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield server.port
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


@pytest.fixture(scope="module", params=PLACES)
def hosts(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Hosts]:
    root, work = tmp_path_factory.mktemp("root"), tmp_path_factory.mktemp("work")
    site = root / request.param.strip("/")
    make_site(site)
    with served(root, work, request.param) as address, our_own(site) as port:
        yield Hosts(port_of(address), port, request.param)


@pytest.mark.parametrize("name", FILES)
def test_a_file_comes_with_type_guards_and_its_time(hosts: Hosts, name: str) -> None:
    status, sent, body = get(hosts.nginx, f"{hosts.under}{name}")
    assert (status, body.decode()) == (200, f"{name} {LONG}")
    assert sent["content-type"] == FILES[name]
    for guard, value in headers.ALWAYS.items():
        assert sent[guard.lower()] == value
    wanted = "public, max-age=31536000, immutable" if name in NEVER_CHANGE else "no-cache"
    assert sent["cache-control"] == wanted


def test_the_folder_gives_the_page(hosts: Hosts) -> None:
    status, sent, body = get(hosts.nginx, f"{hosts.under}?from=a-messenger")
    assert (status, body.decode()) == (200, f"index.html {LONG}")
    assert sent["content-type"] == "text/html; charset=utf-8"
    assert sent["cache-control"] == "no-cache"


def test_a_folder_without_its_slash_leads_to_it(hosts: Hosts) -> None:
    """A way that works behind any name, port and https."""
    status, sent, _ = get(hosts.nginx, hosts.under.rstrip("/") or "/")
    if hosts.under == "/":
        assert status == 200  # the top of a host has no name without it
    else:
        assert (status, sent["location"]) == (301, hosts.under)


@pytest.mark.parametrize("name", sorted(NEVER_CHANGE | {"index.html"}))
def test_what_a_browser_has_is_not_sent_again(hosts: Hosts, name: str) -> None:
    path = f"{hosts.under}{name}"
    first = get(hosts.nginx, path)
    again = get(hosts.nginx, path, **{"If-None-Match": first.headers["etag"]})
    assert (again.status, again.body) == (304, b"")
    assert again.headers["cache-control"] == first.headers["cache-control"]
    assert again.headers["vary"] == "Accept-Encoding"


@pytest.mark.parametrize("name", sorted(NEVER_CHANGE | {"index.html"}))
def test_a_part_of_a_file(hosts: Hosts, name: str) -> None:
    path = f"{hosts.under}{name}"
    part = get(hosts.nginx, path, Range="bytes=2-5")
    assert (part.status, part.body) == (206, f"{name} {LONG}".encode()[2:6])
    assert part.headers["content-type"] == FILES[name]
    assert part.headers["cache-control"] == get(hosts.nginx, path).headers["cache-control"]


NO_FILE = (
    "assets/main-12345678.js",
    "pyodide-1.2.3-12345678/nothing.wasm",
    "engine-00000000.zip",
    "nothing.html",
    "assets",
    "assets/",
    "index.html/",
    ".inputs",
    "%2einputs",
    "assets/.hidden",
)


@pytest.mark.parametrize(
    ("method", "name", "status"),
    [
        *(("GET", name, 404) for name in NO_FILE),
        ("GET", FORBIDDEN, 403),
        ("PUT", "assets/main-ABCDEF12.js", 405),
        ("POST", "index.html", 405),
    ],
)
def test_no_error_is_kept(hosts: Hosts, method: str, name: str, status: int) -> None:
    answer = get(hosts.nginx, f"{hosts.under}{name}", method)
    assert answer.status == status
    assert answer.headers["cache-control"] == "no-store"
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert NOT_SHOWN.encode() not in answer.body
    assert b"ABCDEF12" not in answer.body, "a folder's list is shown"


def test_a_part_that_is_not_there_is_not_kept_for_a_year(hosts: Hosts) -> None:
    answer = get(hosts.nginx, f"{hosts.under}assets/main-ABCDEF12.js", Range="bytes=999999-")
    assert answer.status == 416
    assert "no-store" in answer.headers["cache-control"].split(", "), answer.headers


@pytest.mark.parametrize("name", ["index.html", "engine-12345678.zip"])
def test_what_was_compressed_beforehand_is_sent_as_it_is(hosts: Hosts, name: str) -> None:
    path = f"{hosts.under}{name}"
    for accepted, coding, text in (
        ("gzip, deflate, br", "br", "by brotli"),
        ("gzip", "gzip", "by gzip"),
        ("br;q=0, gzip;q=0", None, LONG),
    ):
        if coding == "br" and not nginx.brotli(nginx.find() or Path()):
            continue  # this nginx cannot: who asks gets gzip
        answer = get(hosts.nginx, path, **{"Accept-Encoding": accepted})
        assert answer.body.decode() == f"{name} {text}"
        assert answer.headers.get("content-encoding") == coding
        assert answer.headers["content-type"] == FILES[name]
        assert answer.headers["vary"] == "Accept-Encoding"


@pytest.mark.parametrize("name", sorted(set(FILES) - {"index.html", "engine-12345678.zip"}))
def test_all_that_shrinks_is_compressed_on_the_way(hosts: Hosts, name: str) -> None:
    answer = get(hosts.nginx, f"{hosts.under}{name}", **{"Accept-Encoding": "gzip"})
    assert answer.headers.get("content-encoding") == (None if name.endswith(".png") else "gzip")
    assert answer.headers["content-type"] == FILES[name]


@pytest.mark.parametrize("asked", ["GET", "HEAD", "a part", "the same again"])
def test_our_own_server_sends_the_same(hosts: Hosts, asked: str) -> None:
    """Where it does not, nginx is right: it is what stands on a host."""
    apart = {}
    for name in ("", *FILES, *NO_FILE):
        told = []
        for port, under in ((hosts.nginx, hosts.under), (hosts.ours, "/")):
            method, fields = ("GET" if " " in asked else asked), {}
            if asked == "a part":
                fields = {"Range": "bytes=2-5"}
            elif asked == "the same again" and name not in NO_FILE:
                date = get(port, f"{under}{name}").headers["last-modified"]
                fields = {"If-Modified-Since": date}
            answer = get(port, f"{under}{name}", method, **fields)
            leave = ITS_OWN | APART.get(answer.status, set())
            kept = {key: value for key, value in answer.headers.items() if key not in leave}
            told.append((answer.status, kept, answer.status in headers.GOOD and answer.body))
        if told[0] != told[1]:
            apart[name] = told
    assert not apart


def test_the_file_fits_a_host_that_has_other_things_beside(tmp_path: Path) -> None:
    """In a sub-folder it touches nothing outside."""
    make_site(tmp_path / "root" / "socks")
    (tmp_path / "root" / "assets").mkdir()
    (tmp_path / "root" / "assets" / "other.txt").write_text("somebody else's")
    (tmp_path / "work").mkdir()
    with served(tmp_path / "root", tmp_path / "work", "/socks/") as address:
        port = port_of(address)
        answer = get(port, "/assets/other.txt")
    assert answer.body == b"somebody else's"
    assert "content-security-policy" not in answer.headers
    assert "cache-control" not in answer.headers
