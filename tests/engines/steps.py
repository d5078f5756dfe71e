"""How a person goes about on a phone of any engine: what the flows share."""

from pathlib import Path
from typing import Any

from tests.engines.phone import Phone, until

TITLES = ("cuff", "leg", "heel", "foot", "toe")


def opened(phone: Phone, address: str) -> Phone:
    """The page with the calculator up."""
    phone.open(address)
    phone.ready()
    return phone


def three_steps(phone: Phone) -> None:
    """By hand from the foot to its counts."""
    phone.fill("[name='foot.length']", "24,6")
    phone.reads("#in-hand", "9 5/8 in")  # 246 mm = 9.685 in
    phone.tap("#measure .go")
    machine(phone)
    phone.tap("#yarn .go")


def machine(phone: Phone) -> None:
    """Cylinder and fabric."""
    phone.tap("#chips button", "60")
    phone.tap(".choice label", "Stitches and rounds")
    phone.fill("[name='fabric.stitches']", "30")
    phone.fill("[name='fabric.rounds']", "38")


def figures(phone: Phone) -> dict[str, str]:
    """The big figures of step three, once they stand."""
    until(lambda: phone.sight(".tally-toe .figure"), lambda: phone.sight("#counts"))
    return {name: phone.sight(f".tally-{name} .figure").replace(" ", "") for name in TITLES}


def comes_to(phone: Phone, page: dict[str, Any]) -> None:
    """Waits until they are those that the engine gives to a page: others stand while one types."""
    right = {name: page["counted"]["figures"][name] for name in TITLES}
    until(lambda: figures(phone) == right, lambda: f"{figures(phone)}, not {right}")


def at_machine(phone: Phone) -> None:
    """From the counts to the foot of sock one, 10 rounds done; two at once are two."""
    to_foot(phone)
    phone.tap(".at-machine button", "Settings")
    phone.tap(".machine-sheet .choice label", "off")
    phone.tap(".machine-sheet .sheet-head button", "Close")


def to_foot(phone: Phone) -> None:
    """The same, with two at once taken for one."""
    phone.tap("#knit-it")
    until(lambda: phone.sight("#cared") or phone.sight(".target"), lambda: phone.sight("body"))
    if phone.sight("#cared"):  # the cautions, before the first knitting
        phone.tap("#cared")
    phone.tap("button", "Go to…")
    phone.tap(".machine-sheet .sections label", "Foot")
    phone.fill("#places-done", "10")
    phone.tap("#places-ask")
    phone.tap("#places-go")
    phone.reads(".done-words", "10 of")


def open_book(phone: Phone) -> None:
    """From the page's head to the list."""
    phone.tap(".head [data-book=list]")
    phone.reads("#book h2", "Wearers")


def new_wearer(phone: Phone, label: str, length: str) -> None:
    """From the list to the sheet of somebody new, with the foot's length."""
    phone.tap("#book button", "New wearer")
    phone.fill("#new-label", label)
    phone.tap("#begin-wearer")
    phone.reads("#visit-line", label)
    phone.fill("[name='foot.length']", length)


def take_in(phone: Phone, file: Path, adds: str) -> None:
    """Take a copy in, from the list."""
    phone.tap("#to-copies")
    phone.give("#take-copy", file)
    phone.reads("#book", adds)
    phone.tap("#take-in")
    phone.reads("#book .note", "Loaded")
    phone.tap("#all-wearers")
