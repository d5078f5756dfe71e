"""Every kind of cuff, leg, heel and toe knitted through at the counter, from first to last step.

What is counted in each section is what the engine's own steps hold. A sock is opened by its link,
as on another phone.
"""

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from engine.sections.leg import KINDS as LEGS
from engine.sections.registry import BARE_TOES, CUFFS, HEELS, NO_HEEL, POCKETS
from tests.asking import answer
from tests.browser.at_machine import done, knit, request, settings, target
from tests.browser.walk import opened, step

KINDS = [
    *(("cuff", kind) for kind in CUFFS),
    *(("leg", kind) for kind in LEGS),
    *(("heel", kind) for kind in (*HEELS, *NO_HEEL)),
    *(("toe", kind) for kind in (*POCKETS, *BARE_TOES)),
]
# What a kind cannot do without.
BESIDES: dict[tuple[str, str], dict[str, Any]] = {
    ("leg", "ribbed"): {"cuff": {"kind": "rib"}},
    ("leg", "ribbed instep"): {"cuff": {"kind": "rib"}},
}


def of_kind(part: str, kind: str) -> dict[str, Any]:
    """A sock of that kind on 60 slots, for a measured leg."""
    sock = {part: {"kind": kind}, **BESIDES.get((part, kind), {})}
    gauge = request()["fabric"]
    foot = {"length": "24 cm", "ankle_girth": "19 cm", "calf_girth": "33 cm"}
    return {"units": "cm", "cylinder": {"slots": 60}, "fabric": gauge, "foot": foot, "sock": sock}


def on_machine(phone: BrowserContext, asked: dict[str, Any]) -> Page:
    """Its counter, nothing counted."""
    page = opened(phone, f"./#{answer({'do': 'page', 'request': asked})['link']}")
    expect(page.locator("#visit-line")).to_contain_text("A shared plan")
    step(page, "counts")
    page.locator("#knit-it").tap()
    expect(target(page)).to_be_visible()
    return page


@pytest.mark.parametrize(("part", "kind"), KINDS)
def test_every_kind_is_knitted_through(
    phone: BrowserContext, screens: Path, part: str, kind: str
) -> None:
    settings(phone, guard=0, sounds=False)
    asked = of_kind(part, kind)
    page = on_machine(phone, asked)
    planned: dict[str, int] = {}
    for one in answer({"do": "knit", "request": asked})["steps"]:
        counted = one["rounds"] if one["kind"] == "rounds" else int(one["kind"] == "row")
        if counted:
            planned[one["title"]] = planned.get(one["title"], 0) + counted
    assert planned, json.dumps(asked)
    assert knit(page) == planned
    expect(page.locator(".at-end")).to_contain_text("Sock one is off the machine.")
    expect(done(page)).to_have_count(0)
    page.screenshot(path=screens / f"through-{part}-{kind.replace(' ', '-')}.png")
