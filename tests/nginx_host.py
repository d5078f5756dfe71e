"""A real nginx that serves a folder as the file printed by build/headers.py tells it to."""

import os
import re
import shutil
import subprocess
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from build import headers, nginx
from tests.conftest import free_port

NOT_TRIED = (
    "no nginx on this machine, and none could be had (Debian's, by root): "
    "NOT TRIED on a real host (python3 build/nginx.py gets one)"
)
needs_nginx = pytest.mark.skipif(nginx.find() is None, reason=NOT_TRIED)
# Root may read what nobody may; nginx, run by root in a test, may not.
AS_ANYONE = ("setpriv", "--inh-caps=-all", "--bounding-set=-all")
AROUND = """\
{main}
daemon off;
master_process off;
pid {work}/pid;
events {{}}
http {{
    access_log off;
    client_body_temp_path {work}/body;
    proxy_temp_path {work}/proxy;
    fastcgi_temp_path {work}/fastcgi;
    uwsgi_temp_path {work}/uwsgi;
    scgi_temp_path {work}/scgi;
{printed}
}}
"""


def replaced(text: str, pattern: str, by: str) -> str:
    """With the one place that `pattern` fits replaced; a file without it is not what we print."""
    changed, times = re.subn(pattern, by, text)
    assert times == 1, pattern
    return changed


@contextmanager
def served(
    root: Path, work: Path, under: str = "/", change: Callable[[str], str] = lambda text: text
) -> Iterator[str]:
    """The address of the site in `root` + `under`, by nginx in the folder `work`, until the end.

    Of what is printed the port and the folder are filled in, as its reader would, and brotli is
    switched on where the module is there; `change` may do more.
    """
    found = nginx.find()
    assert found
    program, port = shutil.copy2(found, work), free_port()
    module = nginx.brotli(found)
    printed = replaced(headers.nginx(under), r"listen 80;.*", f"listen 127.0.0.1:{port};")
    printed = replaced(printed, r"root /srv/heelwise;.*", f"root {root};")
    if module:
        module = Path(shutil.copy2(module, work))
        printed = replaced(printed, "# brotli_static on;", "brotli_static on;")
    main = f"load_module {module};" if module else ""
    if as_anyone := AS_ANYONE if os.geteuid() == 0 else ():
        main += " user root root;"  # it would give its folders to another
    settings = work / "nginx.conf"
    settings.write_text(AROUND.format(main=main, work=work, printed=change(printed)))
    command = [program, "-p", work, "-c", settings, "-e", work / "error.log"]
    process = subprocess.Popen([*as_anyone, *command])
    address = f"http://localhost:{port}{under}"
    try:
        for _ in range(100):
            try:
                urllib.request.urlopen(address).close()
            except urllib.error.HTTPError as error:
                error.close()  # it answers
            except OSError:
                assert process.poll() is None, (work / "error.log").read_text()
                time.sleep(0.05)
                continue
            break
        yield address
    finally:
        process.terminate()
        process.wait()
