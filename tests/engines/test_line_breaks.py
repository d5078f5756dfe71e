"""On every engine the calculator comes although its largest file broke off on the way.

Some engines then hear of no error (WHATWG Fetch leaves to them how an incomplete body is told).
"""

from pathlib import Path

import pytest

from tests.engines.phone import Phone
from tests.engines.steps import opened
from tests.faults.played_host import Alter, cut_off, played, truncated
from tests.faults.test_line_breaks import once, thin, times


@pytest.mark.parametrize("spoil", [cut_off, truncated])
@pytest.mark.parametrize("name", ["pyodide.asm.wasm", "engine-"])
def test_a_file_that_broke_off_is_fetched_again(
    phone: Phone, dist: Path, name: str, spoil: Alter
) -> None:
    with played(dist) as host:
        host.alter = thin(once(name, spoil))
        opened(phone, host.address)
        phone.fill("[name='foot.length']", "24,6")
        phone.reads("#in-hand", "9 5/8 in")
        start = host.asked[: host.asked.index("sw.js")] if "sw.js" in host.asked else host.asked
        assert times(start, name) == 2
        assert times(start, "assets/worker-") == 1, "the very first start came to its end"
