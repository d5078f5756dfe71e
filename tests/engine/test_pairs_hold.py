"""Planned by what her finished pairs taught, what is said holds as well (`knitters`, seeded).

Each person is drawn with a stream of her own, so that with and without pairs she knits the same.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import NamedTuple

import numpy as np
import pytest
from numpy.random import default_rng

from engine.answers import finished_pairs
from engine.answers.finished_pairs import Pair, Said
from engine.fabric import fabric
from engine.fabric.knitter import UNKNOWN
from engine.read.fields import Fields
from engine.sock import first_sock
from tests.engine import knitters
from tests.engine.knitters import CUSTOMARY, SCATTERS, SLOTS, Knitter

pytestmark = pytest.mark.slow
PEOPLE, KIND = 400, 200


class Came(NamedTuple):
    inside: float
    error: float  # root mean square of the log of the next sock's rounds, foretold and come


def a_pair(who: Knitter) -> Said:
    """A finished pair of a yarn of its own, by one swatch."""
    yarn = who.chance.normal(0, 0.05)
    who.mean = np.log([knitters.STITCHES, knitters.ROUNDS]) + yarn
    fields = Fields({"fabric": {"swatches": [who.swatch()]}, "sock": who.first(who.tube(), 50)})
    cloth, one = fabric.read(fields.part("fabric"), SLOTS), first_sock.read(fields.part("sock"))
    assert cloth
    assert one
    said = finished_pairs.said(Pair(replace(CUSTOMARY, fabric=cloth), one))
    assert said
    return said


def after(
    pairs: int, people: int, scatter: float | None = None, habit: float | None = None
) -> Came:
    """The first sock of a new yarn by one swatch, after so many pairs of others."""
    held, errors = [], []
    for at in range(people):
        who = knitters.knitter(default_rng([95, at]), scatter)
        if habit is not None:
            who.habit = np.full(2, habit * (-1) ** at)
        hers = finished_pairs.learn(a_pair(who) for _ in range(pairs)) if pairs else UNKNOWN
        who.chance = default_rng([96, at])
        who.mean = np.log([knitters.STITCHES, knitters.ROUNDS]) + who.chance.normal(0, 0.05)
        mm, told = knitters.foot(who.chance)
        cloth = fabric.read(Fields({"swatches": [who.swatch()]}), SLOTS, hers)
        assert cloth
        share, tape = 1 - CUSTOMARY.ease, CUSTOMARY.measures["length"].sd
        aimed = float(told.removesuffix(" mm")) * share
        sock = replace(CUSTOMARY, fabric=cloth, aimed=aimed, aimed_sd=tape * share)
        logs = who.tube()
        held.append(knitters.held(knitters.needed(mm, logs), *sock.rounds_range))
        errors.append(math.log(cloth.rounds) - float(logs[1]))
    return Came(sum(held) / people, float(np.sqrt(np.mean(np.square(errors)))))


@pytest.mark.parametrize("pairs", [10, 20])
def test_over_the_population_it_holds_four_times_in_five(pairs: int) -> None:
    assert 0.75 <= after(pairs, PEOPLE).inside <= 0.86  # 0.85 and what chance leaves


@pytest.mark.parametrize("kind", ["steady", "unsteady"])
def test_for_the_steady_and_the_unsteady_it_comes_nearer(kind: str) -> None:
    """Than without pairs, where they are furthest off, and within 0.70 to 0.90."""
    before, now = (after(pairs, KIND, SCATTERS[kind]).inside for pairs in (0, 10))
    assert 0.70 <= now <= 0.90
    assert abs(now - 0.8) < abs(before - 0.8)


def test_a_habit_of_one_and_a_half_percent_is_learned() -> None:
    """After ten pairs the next sock is foretold at least 4 % nearer, and held as often."""
    before, now = (after(pairs, PEOPLE, habit=0.015) for pairs in (0, 10))
    assert now.error <= 0.96 * before.error
    assert 0.75 <= now.inside <= 0.87
