"""A set of instructions before it is written: its sizes, and what is the same in all of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from engine.instructions.details import Details
from engine.instructions.sizes import Size
from engine.read import units
from engine.say import messages as say
from engine.say.message import Words
from engine.sock.sock import Sock


class Pattern(NamedTuple):
    """Sizes `by` a system or length, from the smallest, and the maker's words.

    `any_size` is the sock of a size that always goes; `strung` tells that the maker's own pair
    hangs together on the machine, which is no part of the set.
    """

    by: str
    sizes: list[Size]
    details: Details
    any_size: Sock
    strung: bool = False

    @property
    def system(self) -> units.System:
        """Return the maker's units."""
        return self.any_size.system

    @property
    def title(self) -> Words:
        """Return what it is called."""
        slots = self.any_size.cylinder.slots
        return self.details.told["title"] or say.set_title(slots=slots)

    @property
    def socks(self) -> list[Sock | None]:
        """Return the sock of each size, None where it cannot be knitted."""
        return [size.sock for size in self.sizes]

    @property
    def made(self) -> list[tuple[Size, Sock]]:
        """Return the sizes that can be knitted, each with its sock."""
        return [(size, size.sock) for size in self.sizes if size.sock is not None]

    def each(self, told: Callable[[Sock], object]) -> list[object]:
        """Return something of each size's sock, None where there is none."""
        return [None if sock is None else told(sock) for sock in self.socks]

    def only(self, size: Size) -> Pattern:
        """Return the same for one size."""
        return self._replace(sizes=[size])
