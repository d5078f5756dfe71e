"""A change of color: the yarn in the carrier becomes another, and the next round is knitted in it.

Colors are letters; A is the sock's main yarn. Common practice, no published source: the yarn is cut
at each change, and a hand's length of both is left hanging.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from engine.machine.cylinder import Cylinder
from engine.machine.operations import MAIN, Yarn
from engine.say import messages as say
from engine.sections.section import Do, Part, Stage, Unworn

LETTERS = "ABCDEF"


def yarn(letter: str) -> str:
    """Return the name of a color's yarn at the machine."""
    return MAIN if letter == LETTERS[0] else letter


def letter(name: str) -> str:
    """Return the color of a yarn at the machine."""
    return LETTERS[0] if name == MAIN else name


@dataclass(frozen=True)
class Color(Unworn):
    """The color from here on, `letter`."""

    kind: ClassVar[str] = "color"
    rounds = 0
    part: Part
    letter: str

    def stages(self, machine: Cylinder, stop: int | None = None) -> tuple[Stage, ...]:
        """Return the one change."""
        return (Do(say.change_color(color=self.letter), (Yarn(yarn(self.letter)),), sets="color"),)
