"""Nothing that was counted is lost: the journal on disk, what it does without one, and two tabs."""

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.browser.host import until
from tests.browser.machine_site import BENCH_READY, machine_site
from tests.browser.small_sock import session

KEPT, MEMORY = "kept", "in memory"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with machine_site(tmp_path_factory.mktemp("machine")) as address:
        yield address


@pytest.fixture
def browsing(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(service_workers="block")
    yield context
    context.close()


@pytest.fixture
def tab(browsing: BrowserContext, address: str) -> Page:
    """A tab in which a sock is begun."""
    page = opened(browsing, address)
    assert page.evaluate("machine.open()")
    page.evaluate("session => machine.journal.begin(session)", session())
    return page


def opened(context: BrowserContext, address: str, trouble: str = "") -> Page:
    """A tab with the bench on it; `trouble` is what runs before it."""
    page = context.new_page()
    if trouble:
        page.add_init_script(trouble)
    page.goto(address)
    until(page, BENCH_READY)
    return page


def tap(page: Page, times: int = 1, name: str = "one") -> list[int]:
    """Numbers of so many taps, one after the other."""
    script = """async ([name, times]) => {
        const numbers = [];
        while (times--) numbers.push(await machine.tap(name));
        return numbers;
    }"""
    numbers: list[int] = page.evaluate(script, [name, times])
    return numbers


def last(page: Page) -> int:
    """How much has happened, as this tab has it."""
    number: int = page.evaluate("machine.state('one').then(state => state.last)")
    return number


def stored(page: Page) -> list[int]:
    """Numbers of all that is on disk."""
    numbers: list[int] = page.evaluate("machine.stored('one')")
    return numbers


def until_stored(page: Page, count: int) -> None:
    """Waits for the journal's own next try, which comes within seconds."""
    until(page, f"machine.stored('one').then(all => all.length === {count})")
    assert stored(page) == list(range(1, count + 1))


def test_counted_is_on_disk_before_it_is_told(
    tab: Page, browsing: BrowserContext, address: str
) -> None:
    other = opened(browsing, address)
    order = tab.evaluate(
        """async () => {
            const order = [];
            const { transaction } = IDBDatabase.prototype;
            IDBDatabase.prototype.transaction = function (stores, mode, options) {
                const made = transaction.call(this, stores, mode, options);
                if (mode !== "readwrite") return made;
                order.push(options.durability, made.durability);
                made.addEventListener("complete", () => order.push("complete"));
                return made;
            };
            await machine.tap("one");
            order.push("told");
            return order;
        }"""
    )
    assert order == ["strict", "strict", "complete", "told"]
    for number in range(2, 12):
        assert tap(tab) == [number]
        assert stored(other) == list(range(1, number + 1))


def test_another_visit_finds_all_of_it(tab: Page, browsing: BrowserContext, address: str) -> None:
    tap(tab, 5)
    tab.evaluate("session => machine.journal.update({...session, label: 'Left'})", session())
    before = tab.evaluate("machine.journal.read('one')")
    tab.close()
    later = opened(browsing, address)
    assert later.evaluate("machine.open()")
    assert later.evaluate("machine.journal.read('one')") == before
    assert [one["label"] for one in later.evaluate("machine.journal.sessions()")] == ["Left"]
    assert tap(later) == [6]


def test_two_writers_never_take_one_number(
    tab: Page, browsing: BrowserContext, address: str
) -> None:
    other = opened(browsing, address)
    other.evaluate("machine.open()")
    assert last(other) == 0
    tap(tab)
    late = other.evaluate(
        """machine.journal.append({
            session: "one", number: 1, sock: 0, kind: "done", place: {step: 1, done: 0}, took: 5,
            at: 5,
        }).then(() => "counted", error => error.name)"""
    )
    assert late == "NumberTaken"
    assert tap(other) == [2]  # made anew from what is there
    race = """async () => {
        const numbers = [];
        while (numbers.length < 30) await machine.tap("one").then(
            number => numbers.push(number),
            error => { if (error.name !== "NumberTaken") throw error; });
        machine.numbers = numbers;
    }"""
    for page in (tab, other):  # both at once: neither waits for its end
        page.evaluate(f"void ({race})()")
    numbers = [number for page in (tab, other) for number in until(page, "machine.numbers")]
    assert sorted(numbers) == list(range(3, 63))
    assert stored(tab) == list(range(1, 63))
    assert last(tab) == last(other) == 62
    places = [page.evaluate("machine.state('one').then(s => s.places)") for page in (tab, other)]
    assert places[0] == places[1]


FULL = """
    const { add } = IDBObjectStore.prototype;
    machine.free = () => { IDBObjectStore.prototype.add = add; };
    IDBObjectStore.prototype.add = () => { throw new DOMException("full", "QuotaExceededError"); };
"""


def test_full_storage_is_told_and_nothing_is_lost(tab: Page) -> None:
    tap(tab, 3)
    tab.evaluate(f"(() => {{{FULL}}})()")
    assert tap(tab, 4) == [4, 5, 6, 7]
    assert tab.evaluate("[machine.journal.kept, machine.heard]") == [False, [MEMORY]]
    assert last(tab) == 7
    assert stored(tab) == [1, 2, 3]
    tab.evaluate("machine.free()")
    tap(tab)
    until(tab, "machine.journal.kept")
    assert tab.evaluate("machine.heard") == [MEMORY, KEPT]
    assert stored(tab) == list(range(1, 9))


def test_it_tries_again_by_itself(tab: Page) -> None:
    tab.evaluate(f"(() => {{{FULL}}})()")
    tap(tab, 2)
    tab.evaluate("machine.free()")
    until_stored(tab, 2)
    until(tab, "machine.journal.kept")


WITHOUT = {
    "absent": "Object.defineProperty(globalThis, 'indexedDB', {value: undefined});",
    "forbidden": """IDBFactory.prototype.open = () => {
        throw new DOMException("no", "SecurityError");
    };""",
    "refused": """IDBFactory.prototype.open = () => {
        const request = new EventTarget();
        request.error = new DOMException("no", "UnknownError");
        setTimeout(() => request.dispatchEvent(new Event("error")));
        return request;
    };""",
    "silent": "IDBFactory.prototype.open = () => new EventTarget();",
}


@pytest.mark.parametrize("trouble", WITHOUT.values(), ids=WITHOUT.keys())
def test_without_storage_it_goes_on_in_memory(
    browsing: BrowserContext, address: str, trouble: str
) -> None:
    page = opened(browsing, address, f"globalThis.realOpen = IDBFactory.prototype.open; {trouble}")
    waited = page.evaluate(
        """async () => {
            const start = performance.now();
            const kept = await machine.open(400);
            return [kept, performance.now() - start < 1500];
        }"""
    )
    assert waited == [False, True]
    page.evaluate("session => machine.journal.begin(session)", session())
    took = page.evaluate(
        """async () => {
            const start = performance.now();
            for (let n = 0; n < 5; n++) await machine.journal.append(
                {session: "one", number: n + 1, sock: 0, kind: "done", took: null, at: 0,
                 place: {step: 1, done: n}});
            return performance.now() - start;
        }"""
    )
    assert took < 400  # no tap waits for what does not answer
    assert last(page) == 5
    if trouble != WITHOUT["absent"]:
        page.evaluate("void (IDBFactory.prototype.open = realOpen)")
        until_stored(page, 5)
        until(page, "machine.journal.kept")


def test_storage_that_falls_silent_while_she_knits(
    browsing: BrowserContext, tab: Page, address: str
) -> None:
    """Another tab sits on the database: its transaction never ends, or it will not let go of it."""
    other = opened(browsing, address)
    sit = """() => new Promise(resolve => {
        indexedDB.open("heelwise.machine").onsuccess = ({ target }) => {
            machine.database = target.result;
            const sitting = target.result.transaction("happenings", "readwrite");
            const store = sitting.objectStore("happenings");
            const again = () => {
                if (!machine.stop) store.count().onsuccess = again;
                resolve();
            };
            again();
        };
    })"""
    tab.evaluate("machine.open(500)")
    tap(tab, 2)
    other.evaluate(sit)
    tab.evaluate("machine.append = machine.tap('one')")
    until(tab, "machine.heard.length")
    assert tab.evaluate("machine.append") == 3  # counted, in memory
    assert tap(tab) == [4]
    assert last(tab) == 4
    other.evaluate("machine.stop = true")
    until_stored(tab, 4)
    until(tab, "machine.journal.kept")


def test_opening_that_another_tab_holds_up(browsing: BrowserContext, address: str) -> None:
    """A database about to be deleted opens for nobody, until the last tab lets go of it."""
    other = opened(browsing, address)
    other.evaluate(
        """() => new Promise(resolve => {
            indexedDB.open("heelwise.machine", 1).onsuccess = ({ target }) => {
                machine.database = target.result;
                indexedDB.deleteDatabase("heelwise.machine").onblocked = resolve;
            };
        })"""
    )
    page = opened(browsing, address)
    assert page.evaluate("machine.open(500)") is False
    page.evaluate("session => machine.journal.begin(session)", session())
    assert tap(page, 2) == [1, 2]
    other.evaluate("machine.database.close()")
    until(page, "machine.journal.kept")
    assert stored(page) == [1, 2]


@pytest.mark.parametrize("how", ["thrown away by the browser", "deleted by another tab"])
def test_storage_thrown_away_in_mid_sock_is_written_anew(
    browsing: BrowserContext, tab: Page, address: str, how: str
) -> None:
    tap(tab, 5)
    other = opened(browsing, address)
    if how == "deleted by another tab":
        other.evaluate(
            """() => new Promise((resolve, reject) => {
                const deleting = indexedDB.deleteDatabase("heelwise.machine");
                deleting.onsuccess = resolve;
                deleting.onerror = reject;
            })"""
        )
    else:
        line = browsing.new_cdp_session(other)
        origin = {"origin": address[:-1], "storageTypes": "indexeddb"}
        line.send("Storage.clearDataForOrigin", origin)
    until_stored(tab, 5)  # at once, without another tap
    assert tap(tab, 2) == [6, 7]
    assert stored(other) == list(range(1, 8))
    assert other.evaluate("machine.open()")
    assert [one["id"] for one in other.evaluate("machine.journal.sessions()")] == ["one"]
    assert tab.evaluate("machine.heard") == []  # never in memory only


def test_storage_emptied_without_a_word(tab: Page) -> None:
    tap(tab, 5)
    tab.evaluate(
        """() => new Promise(resolve => {
            indexedDB.open("heelwise.machine").onsuccess = ({ target }) => {
                const emptying = target.result.transaction(["sessions", "happenings"], "readwrite");
                for (const name of emptying.objectStoreNames) emptying.objectStore(name).clear();
                emptying.oncomplete = resolve;
            };
        })"""
    )
    assert stored(tab) == []
    assert tap(tab) == [6]
    assert stored(tab) == list(range(1, 7))


def test_a_connection_that_is_closed_under_us(tab: Page) -> None:
    tab.evaluate(
        """() => {
            const { transaction } = IDBDatabase.prototype;
            IDBDatabase.prototype.transaction = function (...how) {
                if (!machine.closed) this.close();
                machine.closed = true;
                return transaction.apply(this, how);
            };
        }"""
    )
    assert tap(tab, 2) == [1, 2]
    assert tab.evaluate("[machine.closed, machine.heard]") == [True, []]
    assert stored(tab) == [1, 2]


def test_what_two_tabs_counted_without_storage_is_all_kept(
    browsing: BrowserContext, tab: Page, address: str
) -> None:
    """One tab in memory, the other took over and counted on: all of it is there in the end."""
    tap(tab, 2)
    other = opened(browsing, address)
    other.evaluate("machine.open()")
    tab.evaluate(f"(() => {{{FULL}}})()")
    assert tap(tab, 3) == [3, 4, 5]
    assert tap(other, 2) == [3, 4]
    tab.evaluate("machine.free()")
    until(tab, "machine.journal.kept")
    assert tab.evaluate("machine.heard") == [MEMORY, "changed", KEPT]
    assert stored(tab) == list(range(1, 8))
    assert last(tab) == last(other) == 7
    places = "machine.state('one').then(state => state.places[0])"
    shown = {"step": 3, "done": 0}  # where the tab in memory was: five taps
    assert tab.evaluate(places) == other.evaluate(places) == shown


def test_the_clock_set_back_changes_nothing(
    tab: Page, browsing: BrowserContext, address: str
) -> None:
    script = """async () => {
        let now = 2_000_000_000_000;
        Date.now = () => (now -= 86_400_000);
        for (let n = 0; n < 12; n++) await machine.tap("one", 4000);
        const kept = await machine.journal.read("one");
        const { places, socks } = await machine.state("one");
        const pace = machine.learned(kept);
        const left = machine.timeLeft(socks[0], places[0], pace);
        return [kept.happenings, places[0], pace, left.section];
    }"""
    happenings, place, pace, left = tab.evaluate(script)
    assert [one["number"] for one in happenings] == list(range(1, 13))
    times = [one["at"] for one in happenings]
    assert times == sorted(times, reverse=True)  # it went back indeed
    assert place == {"step": 3, "done": 7}
    assert pace == {"waste round": 4, "cuff round": 4}
    assert left == 4  # one round of the cuff
    later = opened(browsing, address)
    later.evaluate("machine.open()")
    assert later.evaluate("machine.journal.read('one')")["happenings"] == happenings


def names(page: Page, what: str) -> list[str]:
    found: list[Any] = page.evaluate(
        f"Promise.all([machine.journal.{what}()]).then(all => all.flat())"
    )
    return [one["id"] for one in found if one]


def test_what_was_put_away_can_be_brought_back(
    tab: Page, browsing: BrowserContext, address: str
) -> None:
    tap(tab, 3)
    tab.evaluate("machine.journal.discard('one')")
    assert (names(tab, "sessions"), names(tab, "discarded")) == ([], ["one"])
    later = opened(browsing, address)  # also by another visit
    later.evaluate("machine.open()")
    assert (names(later, "sessions"), names(later, "discarded")) == ([], ["one"])
    later.evaluate("machine.journal.restore('one')")
    assert (names(later, "sessions"), names(later, "discarded")) == (["one"], [])
    assert tap(later) == [4]
    later.evaluate("session => machine.journal.begin(session)", {**session("two"), "began": 2})
    assert names(later, "sessions") == ["one", "two"]
    later.evaluate("machine.journal.discard('one')")
    later.evaluate("machine.journal.discard('two')")
    assert names(later, "discarded") == ["one", "two"]
    later.evaluate("machine.journal.remove('one')")
    assert names(later, "discarded") == ["two"]
    assert stored(later) == []  # what happened to the one removed is gone


def counting(*pages: Page) -> list[bool]:
    return [page.evaluate("machine.one.counting") for page in pages]


FOLLOW = """async () => {
    machine.one = await machine.OneCounter.of("one");
    machine.one.addEventListener("told", () => machine.heard.push("told"));
    machine.one.addEventListener("counting", () => machine.heard.push(machine.one.counting));
}"""


def test_of_several_tabs_exactly_one_counts(browsing: BrowserContext, address: str) -> None:
    first, second, third = (opened(browsing, address) for _ in range(3))
    for page in (first, second, third):
        page.evaluate(FOLLOW)
    assert counting(first, second, third) == [True, False, False]

    first.evaluate("machine.one.tell()")
    for page in (second, third):
        assert until(page, "machine.heard.length") == 1
    assert first.evaluate("machine.heard") == []

    second.evaluate("machine.one.take()")  # she goes on there
    until(first, "!machine.one.counting")
    assert counting(first, second, third) == [False, True, False]
    first.evaluate("machine.one.take()")  # and back again
    until(second, "!machine.one.counting")
    assert counting(first, second, third) == [True, False, False]

    first.close()  # the next in line counts
    until(third, "machine.one.counting")
    assert counting(second, third) == [False, True]
    third.evaluate("machine.one.close()")
    until(second, "machine.one.counting")


def test_another_session_has_a_counter_of_its_own(browsing: BrowserContext, address: str) -> None:
    first, second = (opened(browsing, address) for _ in range(2))
    first.evaluate(FOLLOW)
    second.evaluate(FOLLOW.replace('"one"', '"two"'))
    assert counting(first, second) == [True, True]


LOCKLESS = {
    "absent": """Object.defineProperty(navigator, 'locks', {value: undefined});
        delete globalThis.BroadcastChannel;""",
    "forbidden": """LockManager.prototype.request = async () => {
        throw new DOMException("no", "SecurityError");
    };""",
}


@pytest.mark.parametrize("trouble", LOCKLESS.values(), ids=LOCKLESS.keys())
def test_where_no_tab_can_ask_it_counts(
    browsing: BrowserContext, address: str, trouble: str
) -> None:
    page = opened(browsing, address, trouble)
    page.evaluate(FOLLOW)
    assert counting(page) == [True]
    page.evaluate("machine.one.tell(); machine.one.close()")
