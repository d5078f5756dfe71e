"""A site whose page is machine_bench.js, served."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.browser.host import Host, built
from tests.conftest import free_port

# The script comes after the page, in which something else is called so until then.
BENCH_READY = "Boolean(globalThis.machine?.tap)"


@contextmanager
def machine_site(folder: Path) -> Iterator[str]:
    """Built in `folder`; gives its address."""

    def change(root: Path) -> None:
        bench = Path(__file__).with_name("machine_bench.js")
        shutil.copy(bench, root / "webapp" / "page" / "main.js")

    host = Host(free_port())
    host.serve(built(folder, change))
    try:
        yield host.address
    finally:
        host.stop()
