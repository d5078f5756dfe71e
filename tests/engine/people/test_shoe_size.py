"""Shoe sizes: what holds for every scale, whatever its figures."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.random import default_rng

from engine.people.shoe_size import PARIS_POINT, RANGE, SYSTEMS, foot_length, size


@given(system=st.sampled_from(SYSTEMS), mm=st.floats(80, 350))
def test_there_and_back(system: str, mm: float) -> None:
    back, _ = foot_length(system, size(system, mm))
    assert back == pytest.approx(mm, abs=1e-9)


@given(system=st.sampled_from(SYSTEMS), mm=st.floats(80, 350), more=st.floats(0.1, 50))
def test_a_longer_foot_has_a_larger_size(system: str, mm: float, more: float) -> None:
    assert size(system, mm + more) > size(system, mm)


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_sensible_size_is_a_human_foot(system: str) -> None:
    """Mean foot at 2 years 143 mm, sd 10 (UM-HSRI-77-17); the longest in ANSUR II 323 mm."""
    smallest, largest = RANGE[system]
    assert smallest < largest
    assert 85 < foot_length(system, smallest)[0] < 220
    assert 190 < foot_length(system, largest)[0] < 345


@pytest.mark.parametrize("system", SYSTEMS)
def test_unsure_by_half_a_size_at_least(system: str) -> None:
    """Half a size as sold (whole sizes; in Japan and Mondopoint 5 mm), and half a Paris point."""
    step = {"Japan": 0.5, "Mondopoint": 5.0}.get(system, 1.0)
    low, sd = foot_length(system, RANGE[system][0])
    high, same = foot_length(system, RANGE[system][0] + step)
    assert sd == same
    assert sd >= (high - low) / 2 - 1e-9
    assert sd >= PARIS_POINT / 2


def test_an_unknown_system_is_refused() -> None:
    with pytest.raises(KeyError):
        foot_length("Mars", 4)
    with pytest.raises(KeyError):
        size("Mars", 240)


def test_how_sure_a_size_is_by_hand() -> None:
    """Of labels half a size, of a barleycorn (8.47 mm) 4.23 mm, never less than half a Paris point
    of 6.67 mm; a size of women's is in doubt by another half. A child's last is 1.08 of the foot.
    Besides 4 mm of people, and a step of even spread, whose sd is the step over the root of 12.
    """
    for system, label, step in (
        ("UK", 4.2333, 8.4667),
        ("US women", 5.9868, 8.4667),
        ("EU", 3.3333, 6.6667),
        ("Japan", 3.3333, 5.0),
        ("Mondopoint", 3.75, 7.5),
        ("UK child", 8.4667 / 1.08 / 2, 8.4667 / 1.08),
        ("EU child", 3.3333, 6.6667 / 1.08),
    ):
        by_hand = math.hypot(4, label, step / math.sqrt(12))
        assert foot_length(system, 20)[1] == pytest.approx(by_hand, abs=1e-3), system


@pytest.mark.parametrize("system", ["EU", "UK", "US men", "US women", "Japan", "Mondopoint"])
def test_four_in_five_of_those_who_wear_a_size_lie_within_its_range(system: str) -> None:
    """A made-up world: feet normal, each label as its maker has it, the size nearest on sale worn.

    Women's US sizes are counted half a size further by two shops in three.
    """
    chance = default_rng(41)
    step = {"Japan": 0.5, "Mondopoint": 7.5}.get(system, 0.5)
    held = []
    for mm in chance.normal(255, 17, 4000):
        shoe = mm + chance.normal(0, 4)  # whose length feels right
        unit = 7.5 if system == "Mondopoint" else 0.5 if system == "Japan" else 1.0
        exact = size(system, shoe) + chance.normal(0, 0.5) * unit
        if system == "US women" and chance.random() < 2 / 3:
            exact += 0.5
        mean, sd = foot_length(system, round(exact / step) * step)
        held.append(abs(mean - mm) <= 1.2816 * sd)
    assert 0.75 <= sum(held) / len(held) <= 0.87
