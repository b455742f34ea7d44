"""The bounce: gripping and sliding, with and without spin."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.flight import OUTDOOR, Crossing, bounced
from knowledge.flight.bounce import slip_mps


def into(speed: float, down: float) -> Crossing:
    """A ball coming down along the court."""
    return Crossing(
        times_s=np.zeros(1),
        places=np.array([[0.0], [1.0], [OUTDOOR.radius_m]]),
        velocities=np.array([[0.0], [speed], [-down]]),
    )


def spins(rpm: float) -> np.ndarray:
    return np.array([[-rpm * 2 * math.pi / 60], [0.0]])


def test_a_gripping_shell_keeps_six_tenths() -> None:
    """A thin shell that grips: without spin the speed along the ground drops to 0.600."""
    off = bounced(into(5.0, 5.0), spins(0), OUTDOOR)
    assert off.velocities[1, 0] == pytest.approx(0.600 * 5.0)
    assert off.velocities[2, 0] == pytest.approx(0.64 * 5.0)
    assert slip_mps(off.velocities, off.spins, OUTDOOR) == pytest.approx(np.zeros((2, 1)))


def test_a_flat_fast_ball_slides() -> None:
    """Sliding friction takes mu (1 + e) of the downward speed: Cross 2002."""
    off = bounced(into(20.0, 3.0), spins(0), OUTDOOR)
    assert off.velocities[1, 0] == pytest.approx(20.0 - 0.5 * 1.64 * 3.0)
    assert slip_mps(off.velocities, off.spins, OUTDOOR)[1, 0] > 0


def test_a_rolling_ball_keeps_its_speed() -> None:
    """A ball that already rolls does not slip, so the ground takes nothing along it."""
    rolling_rpm = 8.0 / OUTDOOR.radius_m * 60 / (2 * math.pi)
    off = bounced(into(8.0, 4.0), spins(rolling_rpm), OUTDOOR)
    assert off.velocities[1, 0] == pytest.approx(8.0)


def test_topspin_kicks_on_and_slice_checks() -> None:
    """Common practice, no source: topspin shoots forward, slice holds up."""
    after = [
        bounced(into(5.0, 4.0), spins(rpm), OUTDOOR).velocities[1, 0] for rpm in (-900, 0, 900)
    ]
    assert after[0] < after[1] < after[2]


@settings(max_examples=80, deadline=None)
@given(st.floats(0, 25), st.floats(0.2, 12), st.floats(-3000, 3000))
def test_the_ground_gives_no_energy(speed: float, down: float, rpm: float) -> None:
    before, off = into(speed, down), bounced(into(speed, down), spins(rpm), OUTDOOR)

    def energy(velocities: np.ndarray, turning: np.ndarray) -> float:
        shell = OUTDOOR.inertia * OUTDOOR.radius_m**2
        return float(np.sum(velocities**2) + shell * np.sum(turning**2)) / 2

    assert energy(off.velocities, off.spins) <= energy(before.velocities, spins(rpm)) + 1e-9


@settings(max_examples=80, deadline=None)
@given(st.floats(0, 25), st.floats(0.2, 12), st.floats(-3000, 3000))
def test_turning_about_the_touching_point_is_kept(speed: float, down: float, rpm: float) -> None:
    """Friction acts at the touching point: m v R + I w about it does not change."""
    before, off = into(speed, down), bounced(into(speed, down), spins(rpm), OUTDOOR)
    arm = OUTDOOR.inertia * OUTDOOR.radius_m

    def about(velocities: np.ndarray, turning: np.ndarray) -> float:
        return float(velocities[1, 0] - arm * turning[0, 0])

    assert about(off.velocities, off.spins) == pytest.approx(
        about(before.velocities, spins(rpm)), abs=1e-9
    )
