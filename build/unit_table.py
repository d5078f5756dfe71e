"""In the place of pint the phone gets a table of the engine's units, made here by pint itself.

The engine asks pint for factors between the few units that it defines, and to recognize their
names as people write them. pint answers that from a parser and a registry of half a megabyte; the
table has each name that pint would take, and each factor as pint works it out, to the bit.
"""

from itertools import product

import pint

from engine.read import units

_MODULE = '''\
"""Of pint what the engine asks of it: a table that build/unit_table.py made with {version}."""

from pint.errors import DimensionalityError, UndefinedUnitError

NAMES = {names}
FACTORS = {factors}


class UnitRegistry:
    def __init__(self, filename):
        pass

    def define(self, definition):
        pass

    def convert(self, value, src, dst):
        if src not in NAMES:
            raise UndefinedUnitError(src)
        try:
            return value * FACTORS[NAMES[src], NAMES[dst]]
        except KeyError:
            raise DimensionalityError(src, dst) from None
'''
_ERRORS = """\
class DimensionalityError(TypeError):
    pass


class UndefinedUnitError(AttributeError):
    pass
"""


def modules() -> dict[str, bytes]:
    """The modules that stand for pint, by their places in an archive."""
    names = _names()
    factors = {
        (one, other): float(units.REGISTRY.convert(1.0, one, other))
        for one, other in product(sorted(set(names.values())), repeat=2)
        if units.REGISTRY.is_compatible_with(one, other)
    }
    made = _MODULE.format(version=pint.__version__, names=names, factors=factors)
    return {"pint/__init__.py": made.encode(), "pint/errors.py": _ERRORS.encode()}


def _names() -> dict[str, str]:
    """The unit of each word that pint takes for one, plurals among them."""
    known = [name for name in dir(units.REGISTRY) if name.isalpha()]
    found = {}
    for word in sorted({*known, *(f"{name}s" for name in known)}):
        try:
            found[word] = str(units.REGISTRY.parse_units(word))
        except (pint.UndefinedUnitError, ValueError):
            continue
    return {word: unit for word, unit in found.items() if unit}
