"""The phone's table of units gives what pint itself gives, to the bit."""

import random
import re
import sys
from collections.abc import Callable, Iterator
from types import ModuleType
from typing import Any

import pint
import pytest

from build import unit_table
from engine.read import units

INTO = ("millimeter", "meter", "gram", "kilogram", "inch", "yard", "ounce", "pound", "centimeter")
LETTERS = "abcdefghijklmnopqrstuvwxyzäßéıſµ"
WORDS = """
    furlong hectometer kgs nan inf e pi dimensionless delta_degc angstrom s ss ms ins inss inchs
    feets foots lbss grs yds convert check define context formatter
"""


@pytest.fixture
def table(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    made = unit_table.modules()
    errors, package = ModuleType("pint.errors"), ModuleType("pint")
    monkeypatch.setitem(sys.modules, "pint.errors", errors)
    exec(made["pint/errors.py"], errors.__dict__)  # noqa: S102
    exec(made["pint/__init__.py"], package.__dict__)  # noqa: S102
    return package


def outcome(convert: Callable[[float, str, str], Any], word: str, into: str) -> object:
    """The factor, or None where the engine hears that there is none."""
    try:
        return float(convert(1.0, word, into))
    except (AttributeError, TypeError, ValueError):  # of these kinds are those the engine catches
        return None


def words() -> Iterator[str]:
    yield from re.findall(r"\w+", WORDS)
    known = [name for name in dir(units.REGISTRY) if name.isalpha()]
    for name in known:
        yield from (name, f"{name}s", f"{name}ss", name[:-1], f"k{name}", f"milli{name}")
    chance = random.Random(20261127)
    for _ in range(3000):
        yield "".join(chance.choices(LETTERS, k=chance.randint(1, 5)))


def test_every_word_means_what_it_means_to_pint(table: ModuleType) -> None:
    registry = table.UnitRegistry(None)
    asked = sorted({word.casefold() for word in words()})
    known = 0
    for word in asked:
        for into in INTO:
            wanted = outcome(units.REGISTRY.convert, word, into)
            assert outcome(registry.convert, word, into) == wanted, (word, into)
            known += wanted is not None
    assert known > 300


def test_what_it_is_asked_is_what_the_engine_asks(table: ModuleType) -> None:
    """Its errors are caught by the names that `units` imports from pint."""
    registry = table.UnitRegistry(None)
    with pytest.raises(AttributeError, match="furlong"):
        registry.convert(1.0, "furlong", "millimeter")
    with pytest.raises(TypeError, match="gram"):
        registry.convert(1.0, "gram", "millimeter")
    assert issubclass(pint.UndefinedUnitError, AttributeError)
    assert issubclass(pint.DimensionalityError, TypeError)
