"""What of a sheet stays for the next: of machine and yarn, of the person, the foot and the wish.

All the fields that the form has are filled, so that a new one cannot be forgotten: it is in no list
here until somebody has said whose it is. Whose each is, is common practice, no published source.
"""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.book import PUT, back_to_book, card, next_of, with_wearers
from tests.browser.walk import fill_foot, opened, share, step

MEASURES = ("length", "ball_girth", "instep_girth", "heel_girth", "ankle_girth", "calf_girth")
PIECE = ("mark", "hung", "grams", "unwashed_width", "unwashed_length")
TUBE = ("needles", "flat_width", "rounds", "length")
MACHINE = {
    "units", "way", "band",
    "cylinder.slots", "cylinder.carrier", "cylinder.spring", "cylinder.thread",
    "cylinder.ribber", "cylinder.weights",
    "fabric.stitches", "fabric.rounds",
    "fabric.yarn", "fabric.strands", "fabric.along", "fabric.mark", "fabric.hung",
    *(f"fabric.swatch.{name}" for name in (*TUBE, "pulled_width", *PIECE)),
    *(f"fabric.swatches.0.{name}" for name in ("kind", "whole_stitches", *TUBE, *PIECE)),
    "stock.ball", "stock.margin", "stock.repeat",
}  # fmt: skip
PERSON = {"who"}
FOOT = {
    *(f"{foot}.{name}" for name in MEASURES
      for foot in ("foot", "foot.again", "other_foot", "other_foot.again")),
    "foot.toe_breadth", "other_foot.toe_breadth",
    "person.age", "person.height", "person.weight",
    "person.shoe_size.system", "person.shoe_size.size",
    "sock.leg.girths.0.height", "sock.leg.girths.0.girth", "sock.foot_length_of_sock",
}  # fmt: skip
WISH = {
    "sock.cuff.kind", "sock.cuff.rounds", "sock.cuff.every", "sock.cuff.change_after",
    "sock.cuff.change_every", "sock.leg.kind", "sock.leg.rounds", "sock.leg.plain",
    "sock.leg.height",
    "sock.heel.kind", "sock.heel.flap", "sock.toe.kind", "sock.toe.plain", "sock.end.rounds",
    "sock.length_ease", "sock.closeness",
    "sock.growing_room", "stock.apart",
    *(f"sock.colors.{part}" for part in ("cuff", "leg", "heel", "foot", "toe")),
    "origin.title", "origin.maker", "origin.version", "origin.slots",
}  # fmt: skip
WISH_ON_THIS_CYLINDER = {
    "sock.heel.needles", "sock.heel.left", "sock.toe.needles", "sock.toe.left",
}  # fmt: skip
WISH_ON_THIS_FABRIC = {
    "sock.leg.bands.0.rounds", "sock.leg.bands.0.mark", "sock.leg.bands.0.stitches",
    "sock.cuff.flat_width", "sock.cuff.pulled_width",
}  # fmt: skip
PAIR = {
    "first_sock.foot_rounds", "first_sock.length", "first_sock.flat_width", "first_sock.like",
    "first_sock.unwashed_length",
    "stock.left", "stock.sock_one", "stock.repeat_rounds", "sock.string",
}  # fmt: skip
ALL = MACHINE | PERSON | FOOT | WISH | WISH_ON_THIS_CYLINDER | WISH_ON_THIS_FABRIC | PAIR

# What a choice says once something was chosen; every other field gets a text of its own.
CHOSEN = {
    "units": "in",
    "way": "gauge",
    "who": "man",
    "cylinder.carrier": "right",
    "cylinder.spring": "no",
    "cylinder.thread": "yes",
    "cylinder.ribber": "yes",
    "cylinder.weights": "claws",
    "sock.string": "pair",
    "fabric.swatches.0.kind": "sock",
    "person.shoe_size.system": "UK",
    "sock.cuff.kind": "mock rib",
    "sock.leg.kind": "footie",
    "sock.closeness": "snug",
    "first_sock.like": "between",
    "sock.heel.kind": "two at first",
    "sock.toe.kind": "two at first",
    "stock.apart": "heel, toe",
    "cylinder.slots": "64",
    "foot.length": "9 3/8",
    "sock.leg.height": "14",
    "fabric.stitches": "7.5",
    "fabric.rounds": "9.5",
}
FILLED = {name: CHOSEN.get(name, f"text {at}") for at, name in enumerate(sorted(ALL))}
# What stands in choices that nobody has touched.
UNTOUCHED = {
    "units": "cm",
    "way": "swatch",
    "fabric.swatches.0.kind": "swatch",
    "person.shoe_size.system": "EU",
}

NAMES = """() => {
  const names = (place) => [...place.querySelectorAll("[name]")].map((one) => one.name);
  const form = document.getElementById("form");
  const rows = [...form.querySelectorAll("template")].flatMap(({ content }) => names(content));
  return [...names(form), ...rows].map((name) => name.replace("ROW", "0"));
}"""
HELD = """() => Object.fromEntries([...new FormData(document.getElementById("form"))]
  .filter(([, value]) => String(value).trim()))"""
# All fields get their text and the button is pressed before anything is counted anew: not all of
# them go together.
FILL_AND_PRESS = """([values, button]) => {
  const form = document.getElementById("form");
  for (const add of form.querySelectorAll("[data-rows] > .add")) add.click();
  for (const field of form.elements) {
    if (!(field.name in values)) continue;
    if (field.type === "radio") field.checked = field.value === values[field.name];
    else field.value = values[field.name];
  }
  document.querySelector(button).click();
}"""


def held(page: Page) -> dict[str, str]:
    """What stands in the fields that are not blank, but for choices that nobody has touched."""
    found: dict[str, str] = page.evaluate(HELD)
    return {name: text for name, text in found.items() if UNTOUCHED.get(name) != text}


def texts(*of: set[str]) -> dict[str, str]:
    """What those fields are filled with."""
    return {name: FILLED[name] for names in of for name in names}


def test_every_field_of_the_form_is_somebodys(phone: BrowserContext) -> None:
    page = opened(phone)
    names = set(page.evaluate(NAMES))
    assert names - ALL == set(), "say whose they are, in webapp/page/stays.js and here"
    assert ALL - names == set(), "these are no fields any more"


def test_for_the_next_foot_machine_and_yarn_stay_alone(phone: BrowserContext) -> None:
    """After a boot sock the next foot got its cuff of 28 rounds and its top at 36 cm."""
    page = opened(phone)
    fill_foot(page)
    step(page, "counts")
    share(page)
    expect(page.locator("#next-foot")).to_be_visible()
    page.evaluate(FILL_AND_PRESS, [FILLED, "#next-foot"])
    expect(page.locator("#measure")).to_be_visible()
    assert held(page) == texts(MACHINE)


DAY_MS = 24 * 60 * 60 * 1000
# The knitter's own page by now: other cylinder, yarn and units, and another wearer's wishes.
MINE = {
    "units": "cm",
    "way": "swatch",
    "cylinder.slots": "72",
    "fabric.swatch.needles": "72",
    "fabric.swatch.flat_width": "11,4",
    "fabric.swatch.rounds": "60",
    "fabric.swatch.length": "15,6",
}
MINE_HELD = {name: text for name, text in MINE.items() if UNTOUCHED.get(name) != text}
ANOTHERS = {"who": "child", "foot.length": "18", "sock.leg.rounds": "97", "sock.cuff.rounds": "28"}


def wearer_of(phone: BrowserContext, days: int, who: str = "man") -> Page:
    """One wearer's page in the book; the visit was so many days ago."""
    own = json.dumps(json.dumps({**MINE, **ANOTHERS}))
    phone.add_init_script(f"localStorage['heelwise.mine'] ??= {own}")
    page = with_wearers(phone, [{"id": "w", "label": "Invented: Nuri", "state": "washed"}])
    at = page.evaluate("Date.now()") - days * DAY_MS
    values = {**FILLED, "who": who}
    page.evaluate(PUT, {"visits": [{"wearer": "w", "number": 1, "at": at, "values": values}]})
    page.reload()
    card(page, "Invented: Nuri")
    return page


def wished() -> dict[str, str]:
    """What goes along with this wearer onto another cylinder and yarn."""
    return {**texts(PERSON, WISH), "sock.leg.height": "14 in"}


def test_measured_anew_a_wearers_own_wishes_stay(phone: BrowserContext) -> None:
    """Last year's woman of 48 leg rounds got a leg of 97: it was the last wearer's."""
    page = wearer_of(phone, days=30)
    expect(page.locator("#old-measures")).to_have_count(0)
    page.locator("#come-again").tap()
    expect(page.locator("#measure")).to_be_visible()
    assert held(page) == {**MINE_HELD, **wished()}
    back_to_book(page)
    expect(next_of(page)).to_have_text("Measure the foot")


def test_another_pair_for_the_same_feet(phone: BrowserContext) -> None:
    page = wearer_of(phone, days=400)
    expect(page.locator("#old-measures")).to_contain_text("over a year ago")
    page.locator("#another-pair").tap()
    expect(page.locator("#yarn")).to_be_visible()  # the yarn is what is other
    expect(page.locator("#visit-line")).to_contain_text("over a year ago")
    feet = {**texts(FOOT), "foot.length": "9 3/8 in"}
    assert held(page) == {**MINE_HELD, **wished(), **feet}
    back_to_book(page)
    expect(next_of(page)).to_have_text("Plan the socks")
    card(page, "Invented: Nuri")
    expect(page.locator("#old-measures")).to_contain_text("over a year ago")  # and still
    expect(page.locator(".visit-before")).to_have_count(1)


@pytest.mark.parametrize(("days", "old"), [(150, False), (200, True)])
def test_a_childs_measures_are_old_after_half_a_year(
    phone: BrowserContext, days: int, old: bool
) -> None:
    page = wearer_of(phone, days, who="child")
    expect(page.locator("#another-pair")).to_be_visible()
    said = page.locator("#old-measures", has_text="over half a year ago")
    expect(said).to_have_count(1 if old else 0)


def test_on_the_same_machine_and_yarn_needles_and_bands_stay_too(phone: BrowserContext) -> None:
    page = wearer_of(phone, days=30)
    same = texts(MACHINE)
    page.evaluate("text => localStorage['heelwise.mine'] = text", json.dumps(same))
    page.reload()
    page.locator(".again > summary").tap()
    page.locator("#another-pair").tap()
    expect(page.locator("#yarn")).to_be_visible()
    everything = texts(PERSON, FOOT, WISH, WISH_ON_THIS_CYLINDER, WISH_ON_THIS_FABRIC)
    assert held(page) == {**same, **everything}
