"""A phone that is really full: the browser itself refuses to write more."""

from collections.abc import Callable, Iterator

import pytest

from tests.browser.host import until
from tests.browser.machine_site import BENCH_READY, machine_site
from tests.browser.small_sock import session
from tests.faults.kept_phone import KeptPhone

# Of a kind that does not pack well.
NOTE = """async () => {
    const { last } = await machine.state("one");
    const text = Array.from({ length: 20_000 }, () => Math.random().toString(36)[3]).join("");
    await machine.journal.append(
        {session: "one", number: last + 1, sock: 0, kind: "note", text, took: null, at: 0});
}"""


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with machine_site(tmp_path_factory.mktemp("machine")) as address:
        yield address


def test_full_is_told_and_all_is_written_once_there_is_room(
    address: str, kept_phone: Callable[..., KeptPhone]
) -> None:
    phone = kept_phone(service_workers="block")
    with phone.opened() as context:
        page = context.pages[0]
        page.goto(address)
        until(page, BENCH_READY)
        line = context.new_cdp_session(page)
        origin = {"origin": address.rstrip("/")}
        line.send("Storage.overrideQuotaForOrigin", {**origin, "quotaSize": 200_000})
        page.evaluate("machine.open()")
        page.evaluate("session => machine.journal.begin(session)", session())
        for _ in range(30):
            page.evaluate(NOTE)
        assert page.evaluate("machine.heard") == ["in memory"]
        assert page.evaluate("machine.state('one').then(state => state.last)") == 30
        assert 1 < len(page.evaluate("machine.stored('one')")) < 30
        line.send("Storage.overrideQuotaForOrigin", origin)  # room again
        until(page, "machine.journal.kept")
        assert page.evaluate("machine.heard") == ["in memory", "kept"]
    with phone.opened() as context:
        page = context.pages[0]
        page.goto(address)
        until(page, BENCH_READY)
        assert page.evaluate("machine.stored('one')") == list(range(1, 31))
