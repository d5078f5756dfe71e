"""All that one phone keeps, taken in by a fresh phone of another engine: every screen is the same.

The people in it are invented.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.engines.conftest import NewPhone
from tests.engines.phone import Phone, until
from tests.engines.steps import (
    at_machine,
    figures,
    new_wearer,
    open_book,
    opened,
    take_in,
    three_steps,
)

NURI, WREN = "Invented: Nuri", "Invented: Wren"


def on_her_page(phone: Phone) -> None:
    """Her own counts, a shelf, and the pair of her counts at the machine."""
    three_steps(phone)
    figures(phone)
    phone.tap(".tape a[data-to=yarn]")
    phone.tap("#to-shelf")
    phone.fill("[name='shelf.cylinders']", "54, 60")
    phone.fill("[name='shelf.yarns.0.name']", "the grey one")
    phone.fill("[name='shelf.yarns.0.yarn']", "412 m / 100 g")
    phone.reads("#shelf-place", "60 slots")
    phone.tap(".tape a[data-to=counts]")
    at_machine(phone)
    phone.tap(".at-machine .leave")


def in_the_book(phone: Phone) -> None:
    """Two wearers with plans; the first came twice."""
    open_book(phone)
    for label, length in ((NURI, "24"), (WREN, "26,5")):
        new_wearer(phone, label, length)
        planned(phone)
    phone.tap(".wearers a", NURI)
    phone.tap(".again > summary")
    phone.tap("#come-again")
    phone.fill("[name='foot.length']", "25")
    planned(phone)


def planned(phone: Phone) -> None:
    """From somebody's foot by the counts to the list."""
    phone.reads("#in-hand", "in")
    phone.tap(".tape a[data-to=counts]")
    figures(phone)
    phone.tap(".head [data-book=list]")
    phone.reads("#book h2", "Wearers")


@pytest.fixture(scope="module")
def first(begun: NewPhone, site: str) -> Iterator[tuple[Phone, Path]]:
    """A phone with something of every kind, and its copy."""
    phone = opened(begun("Chromium"), site)
    on_her_page(phone)
    in_the_book(phone)
    phone.tap("#to-copies")
    yield phone, phone.saved("#save-copy")
    phone.close()


def test_every_screen_is_the_same_in_firefox(
    first: tuple[Phone, Path], new_phone: NewPhone, site: str
) -> None:
    one, file = first
    other = opened(new_phone("Firefox"), site)
    open_book(other)
    take_in(other, file, "To add: 2 wearers, one pair at the machine, your own page")
    both = (opened(one, site), opened(other, site))
    one.tap("#visit-line button", "My own page")  # it was left at a wearer's sheet
    for phone in both:
        phone.tap(".tape a[data-to=measure]")

    def tap(selector: str, words: str = "") -> None:
        for phone in both:
            phone.tap(selector, words)

    def same(place: str, *words: str) -> None:
        """Once both say these, both say all the same."""
        for phone in both:
            for some in words:
                phone.reads(place, some)
        until(
            lambda: one.sight(place) == other.sight(place),
            lambda: f"{one.sight(place)}\n\nis not\n\n{other.sight(place)}",
        )

    same("#measure", "[24,6]")
    same("#so-far", "Foot", "50")
    tap(".tape a[data-to=yarn]")
    same("#yarn", "[60]")
    tap("#to-shelf")
    same("#shelf", "[54, 60]", "[the grey one]", "60 slots")
    tap(".tape a[data-to=counts]")
    same("#counts-place", "Cuff", "Toe")
    same("#machine-line", "foot, 10 of 50 rounds done")
    tap("#machine-line .go-on")
    same("#machine", "10 of")
    tap(".at-machine .leave")
    tap(".head [data-book=list]")
    same("#book .wearers", NURI, WREN)
    for label, words in ((NURI, "25 cm"), (WREN, "26,5 cm")):
        tap(".wearers a", label)
        same("#book", words, "Counts as planned")
        tap("#open-sheet")
        same("#measure", f"[{words.removesuffix(' cm')}]")
        tap(".tape a[data-to=counts]")
        same("#counts-place", "Cuff", "Toe")
        tap(".head [data-book=list]")
