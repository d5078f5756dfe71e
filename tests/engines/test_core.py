"""What must hold on every engine: counts, links, no host behind it, the counter, the book."""

from typing import Any

from tests import asking as api
from tests.browser.host import Host
from tests.engines.conftest import NewPhone
from tests.engines.phone import Phone
from tests.engines.steps import (
    at_machine,
    comes_to,
    new_wearer,
    open_book,
    opened,
    take_in,
    three_steps,
)

REQUEST: dict[str, Any] = {
    "units": "cm",
    "foot": {"length": "24,6"},
    "cylinder": {"slots": "60"},
    "fabric": {"stitches": "30", "rounds": "38"},
}
PAGE = api.answer({"do": "page", "request": REQUEST})


def test_three_steps_then_the_same_with_no_host_behind_it(phone: Phone, host: Host) -> None:
    opened(phone, host.address)
    three_steps(phone)
    comes_to(phone, PAGE)
    phone.reads("#stored-line", "Stored on this phone")
    host.stop()
    phone.reload()
    phone.ready()
    comes_to(phone, PAGE)
    phone.tap(".tape a[data-to=measure]")
    phone.fill("[name='foot.length']", "9 in")
    phone.reads("#in-hand", "22.9 cm")
    shorter = {**REQUEST, "foot": {"length": "9 in"}}
    foot = api.answer({"do": "page", "request": shorter})["counted"]["figures"]["foot"]
    phone.reads("#so-far-counts", f"Foot {foot} rounds")
    phone.tap(".tape a[data-to=counts]")
    at_machine(phone)


def test_a_shared_link_opens_beside_her_own(phone: Phone, site: str) -> None:
    opened(phone, site)
    phone.fill("[name='foot.length']", "27,1")
    phone.reads("#in-hand", "10 5/8 in")
    phone.open(f"{site}#{PAGE['link']}")
    phone.reads("#visit-line", "A shared plan")
    comes_to(phone, PAGE)
    phone.tap("#visit-line button", "My own page")
    phone.tap(".tape a[data-to=measure]")
    phone.reads("#measure", "[27,1]")


def test_a_pair_is_counted_and_comes_back_in_the_same_place(phone: Phone, site: str) -> None:
    opened(phone, f"{site}#{PAGE['link']}")
    at_machine(phone)
    phone.tap(".target")
    phone.reads(".done-words", "11 of")
    phone.page_down()
    phone.reads(".done-words", "12 of")
    with phone.held(".take-back"):
        phone.reads(".done-words", "11 of")
    phone.page_down()
    phone.reads(".done-words", "12 of")
    phone.reload()
    phone.reads(".done-words", "12 of")
    phone.reads(".at-title", "Foot")
    phone.tap(".target")
    phone.reads(".done-words", "13 of")


def test_the_book_is_saved_and_goes_to_a_fresh_phone(
    engine: str, new_phone: NewPhone, site: str
) -> None:
    phone = opened(new_phone(engine), site)
    open_book(phone)
    new_wearer(phone, "Invented: Nuri", "24")
    phone.tap(".head [data-book=list]")
    phone.tap("#to-copies")
    file = phone.saved("#save-copy")
    other = opened(new_phone(engine), site)
    open_book(other)
    take_in(other, file, "To add: one wearer")
    other.tap(".wearers a", "Nuri")
    other.reads("#book .sizes", "24 cm")
