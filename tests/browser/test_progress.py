"""Places, reckoned against a list of all taps of a sock, and the pace learned from them."""

import random
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.host import until
from tests.browser.machine_site import BENCH_READY, machine_site
from tests.browser.small_sock import knit, session

Doing = dict[str, Any]


@pytest.fixture(scope="module")
def page(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    with machine_site(tmp_path_factory.mktemp("machine")) as address:
        context = browser.new_context(service_workers="block")
        page = context.new_page()
        page.goto(address)
        until(page, BENCH_READY)
        yield page
        context.close()


class Model:
    """A sock as the list of all its taps, one of which is next."""

    def __init__(self, counts: dict[str, Any]) -> None:
        self.steps = counts["steps"]
        self.taps = [
            (at, done)
            for at, step in enumerate(self.steps)
            for done in range(step.get("rounds", 1))
        ]
        self.next = 0

    def place(self, at: int | None = None) -> dict[str, int]:
        step, done = [*self.taps, (len(self.steps), 0)][self.next if at is None else at]
        return {"step": step, "done": done}

    def view(self) -> dict[str, Any]:
        ended = self.next == len(self.taps)
        knits = [self.steps[step]["kind"] != "do" for step, _ in self.taps]
        whole = {"share": sum(knits[: self.next]) / sum(knits), "ended": ended}
        if ended:
            return {**whole, "title": "", "left": 0, "stepLeft": 0, "next": ""}
        now = self.taps[self.next][0]
        here = [self.steps[step]["part"] == self.steps[now]["part"] for step, _ in self.taps]
        left = sum(a and b for a, b in zip(knits[self.next :], here[self.next :], strict=True))
        total = sum(a and b for a, b in zip(knits, here, strict=True))
        step_left = [step for step, _ in self.taps[self.next :]].count(now)
        later = self.steps[now + 1 : now + 2]
        return {
            **whole,
            "title": self.steps[now]["title"],
            "step": self.steps[now],
            "left": left,
            "total": total,
            "done": total - left,
            "stepLeft": step_left if self.steps[now]["kind"] != "do" else 0,
            "next": later[0]["text"] if later else "",
        }


def doings(chance: random.Random, steps: int) -> list[Doing]:
    """Mostly rounds, now and then all that can go another way."""
    kinds = ["done"] * 12 + ["back"] * 4 + ["jump", "turn", "note"]
    found: list[Doing] = []
    for kind in chance.choices(kinds, k=steps):
        found += [{"kind": kind}] * (chance.randint(1, 12) if kind in ("done", "back") else 1)
    return found


def test_a_sock_that_another_one_follows_hangs_on_the_machine(page: Page) -> None:
    apart = knit()
    followed = knit()
    followed["steps"] = [*followed["steps"][:-3], {**followed["steps"][1], "part": "between"}]
    hangs = "both => both.map(machine.hangs)"
    assert page.evaluate(hangs, [apart, followed]) == [False, True]


def test_socks_of_a_string_are_grafted_and_washed_with_the_last_of_them(page: Page) -> None:
    one, two = knit(), knit()
    one["steps"] = [*one["steps"][:-3], {**one["steps"][1], "part": "between"}]
    two["steps"] = [
        *two["steps"],
        {**two["steps"][-1], "makes": "grafted"},
        {**two["steps"][-1], "makes": "washed"},
    ]
    length = len(two["steps"])

    def state(socks: list[dict[str, Any]], at: int) -> str:
        places = [{"step": len(one["steps"]), "done": 0}, {"step": at, "done": 0}]
        told = {"sock": 1, "socks": socks, "places": places, "ended": [True, False]}
        found: str = page.evaluate("state => machine.reached(state)", told)
        return found

    assert [state([one, two], length - back) for back in (2, 1, 0)] == [
        "sock two",
        "grafted",
        "washed",
    ]
    # Where the next pair follows, nothing is grafted yet.
    assert state([one, one], len(one["steps"])) == "sock two"
    # Sock one of a pair that is cast on apart has a toe of its own to graft.
    assert state([knit(), two], length) == "sock two"


@pytest.mark.parametrize("number", range(8))
def test_any_way_through_a_pair_is_reckoned_like_the_list_of_taps(page: Page, number: int) -> None:
    chance = random.Random(number)
    pair = session()
    models = [Model(counts) for counts in pair["socks"]]
    sock, undo = 0, list[int]()
    given: list[Doing] = []
    wanted: list[Doing] = []
    for doing in doings(chance, 120):
        kind = doing["kind"]
        model = models[sock]
        if kind == "done":
            undo.append(model.next)
            model.next = min(model.next + 1, len(model.taps))
        elif kind == "back" and undo:
            model.next = undo.pop()
        elif kind == "jump":
            undo.append(model.next)
            model.next = chance.randint(0, len(model.taps))
            doing = {**doing, "place": model.place()}
        elif kind == "turn":
            sock, undo = 1 - sock, []
            doing = {**doing, "sock": sock}
        undo = undo[-10:]
        given.append(doing)
        wanted.append(
            {
                "sock": sock,
                "places": [one.place() for one in models],
                "undo": [models[sock].place(at) for at in undo],
                "ended": [one.next == len(one.taps) for one in models],
                "view": models[sock].view(),
            }
        )
    walked = page.evaluate("([pair, given]) => machine.walk(pair, given)", [pair, given])
    assert walked["same"]
    for number_, (seen, want) in enumerate(zip(walked["seen"], wanted, strict=True)):
        seen["view"] = {name: seen["view"].get(name) for name in want["view"]}
        assert seen == want, (number_, given[number_])


def test_a_section_by_hand_alone_counts_its_things(page: Page) -> None:
    only = [{"part": "finish", "title": "Finish", "kind": "do", "text": f"{n}"} for n in range(3)]
    seen = page.evaluate("only => machine.view({steps: only}, {step: 1, done: 0})", only)
    assert (seen["unit"], seen["done"], seen["left"], seen["stepLeft"]) == ("thing", 1, 2, 0)
    units = page.evaluate(
        "knit => knit.steps.map((_, step) => machine.view(knit, {step, done: 0}).unit)", knit()
    )
    rows = [step["part"] in ("heel", "toe") for step in knit()["steps"]]
    assert units == ["row" if row else "round" for row in rows]


@pytest.mark.parametrize(
    ("step", "done", "foot", "wanted"),
    [
        ("foot", 5, 15, ("foot", 5)),  # longer: as far as she was
        ("foot", 5, 9, ("foot", 5)),
        ("foot", 10, 9, ("toe", 0)),  # past the new end: the foot is done
        ("leg", 3, 15, ("leg", 3)),
        ("toe", 0, 9, ("toe", 0)),
    ],
)
def test_other_counts_leave_her_where_she_is(
    page: Page, step: str, done: int, foot: int, wanted: tuple[str, int]
) -> None:
    before, after = knit(foot=12), knit(foot=foot)
    at = next(at for at, one in enumerate(before["steps"]) if one["part"] == step)
    place = page.evaluate(
        "([before, after, place]) => machine.moved(before, after, place)",
        [before, after, {"step": at, "done": done}],
    )
    assert (after["steps"][place["step"]]["part"], place["done"]) == wanted


def test_new_counts_for_sock_two_touch_neither_sock_one_nor_what_can_be_taken_back(
    page: Page,
) -> None:
    given = [
        *[{"kind": "done"}] * 6,
        {"kind": "plan", "sock": 1, "knit": knit(foot=9)},
        {"kind": "back"},
    ]
    seen = page.evaluate("([pair, given]) => machine.walk(pair, given).seen", [session(), given])
    assert [len(one["undo"]) for one in seen[-3:]] == [6, 6, 5]
    assert seen[-1]["places"][0] == seen[-4]["places"][0]
    assert (seen[-2]["sock"], seen[-2]["view"]["step"]["kind"]) == (0, "do")


def _journal(took: list[tuple[str, float | None]], clock: int = 1) -> list[Doing]:
    """What happened on the way: (kind, took in ms); the phone's clock runs in steps of `clock`."""
    taps, undo, at = Model(knit()), list[int](), 0
    found = []
    for number, (kind, ms) in enumerate(took, 1):
        if kind == "done":
            undo.append(at)
            at += 1
        elif kind == "back":
            at = undo.pop()
        happening = {"number": number, "sock": 0, "kind": kind, "took": ms, "at": number * clock}
        found.append({**happening, "place": taps.place(at)})
    return found


PACE = "([session, happenings]) => machine.learned({session, happenings})"
TO_THE_LEG: list[tuple[str, float | None]] = [("done", 10_000)] * 14


def test_pace_is_the_middle_of_what_rounds_took(page: Page) -> None:
    leg: list[tuple[str, float | None]] = [
        ("done", None),  # the first of a visit
        ("done", 8_000),
        ("note", 3_000),  # written at the machine, in the time of the round
        ("done", 4_000),
        ("done", 500),  # a slip, taken back: its time is the next one's
        ("back", 1_500),
        ("done", 6_000),
        ("done", 600_000),  # away for tea
    ]
    pace = page.evaluate(PACE, [session(), _journal([*TO_THE_LEG, *leg])])
    assert pace == {"waste round": 10, "cuff round": 10, "leg round": 8}  # of 7, 8 and 8 s


@pytest.mark.parametrize("clock", [1000, -1000, 0])
def test_a_clock_set_back_changes_no_pace(page: Page, clock: int) -> None:
    plain = page.evaluate(PACE, [session(), _journal(TO_THE_LEG)])
    assert page.evaluate(PACE, [session(), _journal(TO_THE_LEG, clock)]) == plain
    assert plain["cuff round"] == 10


def test_the_pair_before_tells_until_this_one_does(page: Page) -> None:
    before = {"waste round": 3, "cuff round": 4, "heel row": 20}
    pair = {**session(), "earlier": before}
    pace = page.evaluate(PACE, [pair, _journal(TO_THE_LEG[:8])])
    assert pace == before  # 3 and 4 rounds of her own
    pace = page.evaluate(PACE, [pair, _journal(TO_THE_LEG)])
    assert pace == {**before, "cuff round": 10}


def test_time_left_adds_up_what_is_left(page: Page) -> None:
    call = "([knit, place, pace]) => machine.timeLeft(knit, place, pace)"
    foot = next(at for at, one in enumerate(knit()["steps"]) if one["part"] == "foot")
    place = {"step": foot, "done": 2}
    # 10 rounds of the foot, 4 rows of the toe (like the heel's), 3 of waste (the middle of all)
    pace = {"cuff round": 4, "leg round": 5, "foot round": 6, "heel row": 20}
    left = page.evaluate(call, [knit(), place, pace])
    assert left == {"section": 60, "sock": 60 + 80 + 15}
    del pace["heel row"]
    assert page.evaluate(call, [knit(), place, pace]) == {"section": 60, "sock": None}
    end = {"step": len(knit()["steps"]), "done": 0}
    assert page.evaluate(call, [knit(), end, {}]) == {"section": 0, "sock": 0}
