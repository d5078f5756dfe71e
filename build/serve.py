"""Serve the built site on this machine, with the headers that a real host must send.

    python3 build/serve.py [--dist FOLDER] [--port 8000] [--host 127.0.0.1]

For trying the site out here. A real host serves the same folder as static files.
"""

import argparse
import contextlib
import socket
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

from flask import Flask, Response, abort, request, send_from_directory
from werkzeug.serving import BaseWSGIServer, WSGIRequestHandler, make_server

from build.headers import headers_for

DIST = Path(__file__).resolve().parent.parent / "dist"


def create_app(dist: Path) -> Flask:
    """A Flask app that serves the files under `dist`, and nothing else."""
    app = Flask(__name__, static_folder=None)

    @app.get("/")
    @app.get("/<path:name>")
    def file(name: str = "index.html") -> Response:
        if name.endswith("/") or any(part.startswith(".") for part in name.split("/")):
            abort(404)  # folders are not listed, hidden files are not part of the site
        for coding, ending in (("br", ".br"), ("gzip", ".gz")):  # see precompress.mjs
            packed = f"{name}{ending}"
            if request.accept_encodings.quality(coding) and (dist / packed).is_file():
                response = send_from_directory(dist.resolve(), packed)
                response.headers["Content-Encoding"] = coding
                break
        else:
            response = send_from_directory(dist.resolve(), name)
        # Flask's word to who saves a file under its name; no host of static files says it.
        response.headers.pop("Content-Disposition", None)
        return response

    @app.after_request
    def with_headers(response: Response) -> Response:
        response.headers.update(headers_for(request.path, response.status_code))
        response.headers.pop("Date", None)  # the server beneath sends its own
        return response

    return app


class QuietHandler(WSGIRequestHandler):
    """Keeps a browser's connections open, and says nothing about each request."""

    protocol_version = "HTTP/1.1"

    def log_request(self, code: int | str = "-", size: int | str = "-") -> None:
        """Nothing: whoever started this wants to read the address, not the traffic."""


def make(app: Flask, port: int, host: str = "127.0.0.1") -> BaseWSGIServer:
    """A server ready to `serve_forever()`; port 0 takes any free one (see its `port`).

    Raises OSError when the port is taken.
    """
    with socket.create_server((host, port)) as listener:
        return make_server(
            host,
            listener.getsockname()[1],
            app,
            threaded=True,
            request_handler=QuietHandler,
            fd=listener.fileno(),
        )


def main() -> int:
    """Serves until it is stopped; 1 if it cannot."""
    parser = argparse.ArgumentParser(
        prog="python3 build/serve.py", description="Serve the built site on this machine."
    )
    parser.add_argument("--dist", type=Path, default=DIST, help="the built folder")
    parser.add_argument("--port", type=int, default=8000)
    parser.add_argument("--host", default="127.0.0.1", help="0.0.0.0 lets other machines in")
    options = parser.parse_args()
    if not (options.dist / "index.html").is_file():
        print(f"Nothing is built in {options.dist}. Run python3 build/start.py.", file=sys.stderr)
        return 1
    try:
        server = make(create_app(options.dist), options.port, options.host)
    except OSError as error:
        print(
            f"Port {options.port} cannot be used ({error.strerror}). "
            f"Try another: --port {options.port + 1}",
            file=sys.stderr,
        )
        return 1
    print(
        f"Heelwise is on http://localhost:{server.port}, for this machine. Ctrl+C stops it.",
        flush=True,
    )
    with contextlib.suppress(KeyboardInterrupt):
        server.serve_forever()
    return 0


if __name__ == "__main__":
    sys.exit(main())
