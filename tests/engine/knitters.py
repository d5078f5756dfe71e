"""A world of knitters, to try what the calculator says of its own certainty: not the model's own.

What is so here (all made up, drawn from a seed):

- A knitter's tubes scatter about her mean by 1.2 % (steady), 2 % (usual) or 3 % (unsteady), or over
  a population lognormally about 2 %, four in five between 1.2 and 3.3 %. Stitches and rounds of a
  tube go together with a correlation of 0.5, and stray like Student's t with 8 degrees of freedom.
- Her socks differ from her swatches by a habit of her own, normal with 1 %.
- Loops grow with the mark by 3 to 7 % a mark, in a slightly bent line.
- In the wash her yarn's tubes get 3 % shorter, yarns differ by 5 % and tubes by 2 %.
- Rulers are out by 1.5 mm on a swatch, 3 mm on a sock's foot and on a foot, 1.5 mm on a flat width,
  and are read to the millimetre; one swatch in seven has a round miscounted.

Readings and figures go through the door as text, as they would be typed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.random import Generator

from engine.fabric import fabric
from engine.read.fields import Fields
from engine.sock import first_sock
from engine.sock import plan as planning
from engine.sock.sock import Sock

SCATTERS = {"steady": 0.012, "usual": 0.02, "unsteady": 0.03}
MEDIAN, SPREAD = 0.02, 0.40  # of the population's scatter: median, sd of its logarithm
HABIT, RULER, SOCK_RULER, FOOT_RULER, MISCOUNTS = 0.01, 1.5, 3.0, 3.0, 1 / 7
WASHES = 0.02
_FREE = 8
SLOTS, POCKETS = 60, 40  # rounds along the sole that the customary heel and toe of 60 slots take
STITCHES, ROUNDS = 7.5 / 25.4, 9.6 / 25.4


@dataclass
class Knitter:
    """One knitter with one yarn: her mean logs of stitches and rounds per mm at mark 10."""

    chance: Generator
    scatter: float
    mean: np.ndarray
    habit: np.ndarray
    per_mark: float
    bend: float

    def at(self, mark: float) -> np.ndarray:
        """Her mean logs for socks at a mark."""
        away = mark - 10
        logs: np.ndarray = self.mean - np.log1p(self.per_mark * away + self.bend * away**2)
        return logs

    def tube(self, mark: float = 10) -> np.ndarray:
        """The logs of one tube's stitches and rounds per mm, as a sock."""
        one, other = self.chance.normal(size=2)
        both = np.array([one, one / 2 + math.sqrt(3 / 4) * other])
        wild = math.sqrt((_FREE - 2) / self.chance.chisquare(_FREE))  # so that its variance is 1
        logs: np.ndarray = self.at(mark) + self.scatter * both * wild
        return logs

    def swatch(self, mark: float | None = None, wash: float | None = None) -> dict[str, Any]:
        """A swatch as it is typed; measured before a wash too, where that is told."""
        w, c = np.exp(self.tube(10 if mark is None else mark) - self.habit)
        knitted = int(self.chance.integers(50, 90))
        counted = knitted + (self.chance.choice((-1, 1)) if self.chance.random() < MISCOUNTS else 0)
        told = {
            "needles": SLOTS,
            "rounds": int(counted),
            "length": self._read(knitted / c, RULER),
            "flat_width": self._read(SLOTS / w / 2, RULER),
        }
        if wash is not None:
            told["unwashed_length"] = self.unwashed(knitted / c, wash, RULER)
        return told if mark is None else {**told, "mark": mark}

    def sock(self, logs: np.ndarray, rounds: int) -> dict[str, Any]:
        """A finished sock with so many foot rounds as a row of the swatches."""
        first = self.first(logs, rounds)
        return {
            "kind": "sock",
            "needles": SLOTS,
            "rounds": rounds + POCKETS,
            "length": first["length"],
            "flat_width": first["flat_width"],
        }

    def first(self, logs: np.ndarray, rounds: int) -> dict[str, Any]:
        """The same as sock one of a pair."""
        w, c = np.exp(logs)
        return {
            "foot_rounds": rounds,
            "length": self._read((rounds + POCKETS) / c, SOCK_RULER),
            "flat_width": self._read(SLOTS / w / 2, RULER),
        }

    def wash(self) -> float:
        """How her yarn's lengths change in the wash: a log, drawn anew at each call."""
        return float(self.chance.normal(-0.03, 0.05))

    def unwashed(self, mm: float, wash: float, ruler: float) -> str:
        """What a tube of washed `mm` measured before."""
        return self._read(mm * math.exp(-self.chance.normal(wash, WASHES)), ruler)

    def first_unwashed(self, logs: np.ndarray, rounds: int, wash: float) -> dict[str, Any]:
        """Sock one of a pair off the machine."""
        mm = (rounds + POCKETS) / math.exp(logs[1])
        return {"foot_rounds": rounds, "unwashed_length": self.unwashed(mm, wash, SOCK_RULER)}

    def _read(self, mm: float, sd: float) -> str:
        return f"{self.chance.normal(mm, sd):.0f} mm"


def knitter(chance: Generator, scatter: float | None = None) -> Knitter:
    """One knitter of the population, or one of this scatter."""
    own = MEDIAN * np.exp(chance.normal(0, SPREAD)) if scatter is None else scatter
    mean = np.log([STITCHES, ROUNDS]) + chance.normal(0, 0.05)
    habit = chance.normal(0, HABIT, 2)
    return Knitter(chance, own, mean, habit, chance.uniform(0.03, 0.07), chance.normal(0, 0.0008))


def foot(chance: Generator) -> tuple[float, str]:
    """A foot's true length in mm, and as it was measured."""
    mm = chance.normal(250, 15)
    return mm, f"{chance.normal(mm, FOOT_RULER):.0f} mm"


CUSTOMARY = planning.make(
    {
        **{"units": "cm", "foot": {"length": "25 cm"}, "person": {"sex": "woman"}},
        **{"cylinder": {"slots": SLOTS}, "fabric": {"stitches": "30 / 10 cm"}, "sock": {}},
    }
)


def planned(
    told: str, rows: Sequence[dict[str, Any]], mark: float | None = None, **first: Any
) -> Sock:
    """The sock for a foot measured so, as a plan has it, by these rows of swatches and sock one.

    Only fabric and length are read anew: heel, toe and the rest are the customary ones.
    """
    typed = {"swatches": list(rows), **({} if mark is None else {"mark": mark})}
    fields = Fields({"fabric": typed, "first_sock": first})
    cloth = fabric.read(fields.part("fabric"), SLOTS)
    assert cloth, fields.problems
    share, tape = 1 - CUSTOMARY.ease, CUSTOMARY.measures["length"].sd
    aimed = float(told.removesuffix(" mm")) * share
    made = replace(CUSTOMARY, fabric=cloth, aimed=aimed, aimed_sd=tape * share)
    knitted = first_sock.read(fields.part("first_sock"))
    if knitted is None:
        return made
    knitted = first_sock.as_washed(fields.part("first_sock"), knitted, made)
    assert knitted, fields.problems
    cloth = first_sock.learn(fields.part("first_sock"), knitted, made)
    pair = planning.pair_after(made, knitted, cloth)
    return replace(
        made,
        fabric=cloth,
        pair=pair,
        aimed=pair.chosen.aimed,
        aimed_sd=pair.chosen.aimed_sd,
        knitted_rounds=knitted.foot_rounds,
    )


def needed(length: float, logs: np.ndarray, ease: float = 0.04) -> float:
    """The foot rounds that this tube would have needed for this foot."""
    return float(length * (1 - ease) * np.exp(logs[1]) - POCKETS)


def held(x: float, low: int, high: int) -> bool:
    """Whether the nearest whole rounds lie in a stated range."""
    return low <= math.floor(x + 0.5) <= high
