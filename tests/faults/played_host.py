"""A host that a test can spoil file by file, and a site small enough to be stored many times."""

import re
import shutil
import socket
import struct
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from flask import Flask, Response, request
from playwright.sync_api import Page, expect
from werkzeug.wsgi import FileWrapper

from build import serve, site

DIST = "heelwise.dist"  # among what is known of a request
Alter = Callable[[Response], Response]
# Of a page: what is typed from now on stays.
USABLE = "performance.getEntriesByName('usable').length"


class _Small(site.Site):
    """The real page; a few bytes stand in for Python, so the calculator never starts."""

    def python(self) -> None:
        for name in (*site.PYODIDE_FILES, "python_stdlib.zip", "empty.zip"):
            self.put(f"pyodide-0/{name}", name.encode())
        self.assets["pyodide"] = "pyodide-0/"
        self.assets["engine"] = self.put("engine-00000000.zip", b"engine")
        self.assets["snapshot"] = self.put("snapshot-00000000.bin", b"snapshot")


def small(folder: Path, change: Callable[[Path], None] = lambda root: None) -> Path:
    """A site in `folder`/dist whose page is real and which has no calculator.

    `change` may alter the copy of the sources before it is built.
    """
    root, out = folder / "root", folder / "dist"
    shutil.copytree(site.ROOT / "webapp", root / "webapp")
    out.mkdir()
    change(root)
    _Small(root, out.resolve()).make()
    return out


def as_it_is(response: Response) -> Response:
    """Nothing is wrong."""
    return response


class PlayedHost:
    """Serves `dist`; `alter` has the last word on each answer. Both may be replaced at any time."""

    def __init__(self, dist: Path) -> None:
        self.alter: Alter = as_it_is
        self.asked: list[str] = []
        self.server = serve.make(self._app(dist), 0)
        self.address = f"http://localhost:{self.server.port}/"

    def deploy(self, dist: Path) -> None:
        """Have another version in place of what was served before."""
        self.server.app = self._app(dist)

    def _app(self, dist: Path) -> Flask:
        app = serve.create_app(dist)
        # Flask runs the last function first: `alter` has to come before, to have the last word.
        app.after_request_funcs.setdefault(None, []).insert(0, self._answer)
        self.dist = dist
        return app

    def _answer(self, response: Response) -> Response:
        self.asked.append(request.path[1:])
        request.environ[DIST] = self.dist
        file = response.response
        response.direct_passthrough = False
        response.get_data()
        if isinstance(file, FileWrapper):
            file.close()  # now: a browser may hang up in the middle
        return self.alter(response)


@contextmanager
def played(dist: Path) -> Iterator[PlayedHost]:
    """A host of `dist`, gone afterwards."""
    host = PlayedHost(dist)
    thread = threading.Thread(target=host.server.serve_forever, daemon=True)
    thread.start()
    try:
        yield host
    finally:
        host.server.shutdown()
        thread.join()
        host.server.server_close()


def gone(response: Response) -> Response:
    """Nobody is there: the line is cut before a word is said."""
    return _cut_after(b"", 1, response)


def cut_off(response: Response) -> Response:
    """The line is cut in the middle of a file."""
    content = _content()
    return _cut_after(content[: len(content) // 2], len(content), response)


def missing(response: Response) -> Response:
    """Not all files were copied to the host yet, or this one was deleted."""
    response.status_code = 404
    return response


def sign_in_page(response: Response) -> Response:
    """What the Wi-Fi of a hall gives for every address until someone pays."""
    response.headers["Content-Type"] = "text/html"
    return _given(b"<!doctype html><title>Welcome! Please sign in.</title>", response)


def truncated(response: Response) -> Response:
    """Half of the file was copied to the host."""
    content = _content()
    return _given(content[: len(content) // 2], response)


def altered(response: Response) -> Response:
    """One byte is another."""
    content = bytearray(_content())
    content[len(content) // 2] ^= 1
    return _given(bytes(content), response)


def wrong_type(response: Response) -> Response:
    """The right bytes from a host that does not know what they are; a browser runs none of them."""
    scripts = request.path.endswith((".js", ".mjs"))
    response.headers["Content-Type"] = "text/plain" if scripts else "application/octet-stream"
    return response


SPOILT = (cut_off, missing, sign_in_page, truncated, altered)


def only(name: str, spoil: Alter, seen: list[str], to_store: bool = True) -> Alter:
    """Spoil nothing but `name`, and that only where it is fetched to be stored; adds to `seen`."""

    def alter(response: Response) -> Response:
        if request.path[1:] != name or (to_store and not for_the_store()):
            return response
        seen.append(name)
        return spoil(response)

    return alter


def for_the_store() -> bool:
    """Whether a script asks by its own hand, as the service worker does for every file."""
    return request.headers.get("Sec-Fetch-Dest") == "empty"


def _content() -> bytes:
    """The whole of the file that is asked for, also where the browser has part of it or all."""
    dist: Path = request.environ[DIST]
    return (dist / (request.path[1:] or "index.html")).read_bytes()


def _given(content: bytes, response: Response) -> Response:
    """This in place of the file."""
    response.status_code = 200
    response.set_data(content)
    for name in ("ETag", "Last-Modified", "Content-Range"):  # they are another content's
        response.headers.pop(name, None)
    return response


def _cut_after(sent: bytes, whole: int, response: Response) -> Response:
    """Send this much of so much, then reset the connection."""
    line: socket.socket = request.environ["werkzeug.socket"]

    def body() -> Iterator[bytes]:
        if sent:
            yield sent
        line.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
        line.shutdown(socket.SHUT_RDWR)
        yield b""

    _given(b"", response)
    response.response = body()
    response.headers["Content-Length"] = str(whole)
    return response


def files(dist: Path) -> list[str]:
    """Addresses of all that a phone stores of a version."""
    found = (path.relative_to(dist).as_posix() for path in dist.rglob("*") if path.is_file())
    stored = {name for name in found if not name.startswith(site.SHOWN)}
    return sorted(stored - {"sw.js", site.STAMP})


def in_order(dist: Path) -> list[str]:
    """The same, as one is stored after the other."""
    names = re.findall(r'url:"([^"]+)",revision', (dist / "sw.js").read_text())
    assert sorted(names) == files(dist)
    return names


def stored(page: Page) -> list[str]:
    """Addresses of all that the phone has stored."""
    found: list[str] = page.evaluate(
        """async () => {
            const paths = [];
            for (const name of await caches.keys())
                for (const request of await (await caches.open(name)).keys())
                    paths.push(new URL(request.url).pathname.slice(1));
            return paths.sort();
        }"""
    )
    return found


def all_is_stored(page: Page, host: PlayedHost) -> None:
    """The page says so, and it is so."""
    expect(page.locator("#stored-line")).to_be_visible()
    assert stored(page) == files(host.dist)


def version_of(dist: Path) -> str:
    """The version that a page of it calls itself."""
    page = (dist / "index.html").read_text()
    return page.split('data-version="')[1].split('"')[0]
