"""From a fresh copy to the page in a browser: installs, builds the site, serves it here."""

from __future__ import annotations

import argparse
import os
import socket
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install


def need_free(port: int) -> None:
    """Raises Stop if another program listens on the port."""
    with socket.socket() as trial:
        trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            trial.bind(("127.0.0.1", port))
        except OSError:
            raise install.Stop(
                f"Port {port} is taken by another program (or by an earlier start). "
                f"Use another: python3 build/start.py --port {port + 1}"
            ) from None


def port_number(text: str) -> int:
    """A port that any user may open."""
    if not text.isdecimal() or not 1024 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError("a port is a whole number from 1024 to 65535")
    return int(text)


def main() -> None:
    """Does it, or says in one sentence what is in the way."""
    parser = argparse.ArgumentParser(
        prog="python3 build/start.py",
        description="Installs what is pinned, builds the site into dist/ and serves it here.",
    )
    parser.add_argument("--port", type=port_number, default=8000, help="where to serve (8000)")
    parser.add_argument("--no-serve", action="store_true", help="build dist/ and stop")
    options = parser.parse_args()
    with install.plainly():
        if not options.no_serve:
            need_free(options.port)
        install.make(install.SITE)
        with install.timed("Site"):
            install.quietly("The site", (install.PYTHON, install.BUILD / "site.py"))
        if options.no_serve:
            print("The site is in dist/. To serve it here: python3 build/start.py")
            return
        print("Open the address below in a browser. To check everything: python3 build/check.py")
        serve = [str(install.PYTHON), str(install.BUILD / "serve.py"), "--port", str(options.port)]
        os.execve(serve[0], serve, install.environment())  # noqa: S606 (no shell is the point)


if __name__ == "__main__":
    main()
