"""Shoe sizes: what holds for every scale, whatever its figures."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

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
    """Half a size, of a barleycorn (8.47 mm), is 4.23 mm, never less than half a Paris point of
    6.67 mm; a size of women's is in doubt by another half. A child's last is 1.08 of the foot.
    """
    assert foot_length("UK", 6)[1] == pytest.approx(4.2333, abs=1e-4)
    assert foot_length("US women", 8)[1] == pytest.approx(5.9868, abs=1e-4)
    assert foot_length("EU", 39)[1] == pytest.approx(3.3333, abs=1e-4)
    assert foot_length("Japan", 24)[1] == pytest.approx(3.3333, abs=1e-4)
    assert foot_length("Mondopoint", 240)[1] == pytest.approx(3.75)
    assert foot_length("UK child", 8)[1] == pytest.approx(8.4667 / 1.08 / 2, abs=1e-4)
    assert foot_length("EU child", 28)[1] == pytest.approx(3.3333, abs=1e-4)
