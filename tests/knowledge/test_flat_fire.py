"""A hard ball in closed form, against scipy's integrator, `fly` and the trade's own tables.

Reference: quadratic drag and lift integrated by scipy.integrate.solve_ivp with the constants of
knowledge/flight/ball.py (k = 0.0352 /m by hand; Cl = 0.195 S by Steyn et al., second-hand).
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from knowledge.court import METRES_PER_FOOT
from knowledge.flight import LOW_LIFT, MPS_PER_MPH, OUTDOOR, FlatFire, at_distance, fly, moving

GRAVITY_MPS2 = 9.81
DRAG_PER_M = 0.0352
DRAG_COEFFICIENT = 0.33
LIFT_SLOPE = 0.195
BALL_RADIUS_M = 0.0371
RPM = 1200.0


def integrated(ball: FlatFire, slope: float, x_m: float) -> tuple[float, float]:
    """Height and time at x by solve_ivp, with the full drag, lift and wind."""
    spin = BALL_RADIUS_M * 2 * math.pi * ball.topspin_rpm / 60

    def motion(_t: float, s: NDArray[np.float64]) -> list[float]:
        u, w = s[2] - ball.wind_mps, s[3]
        v = math.hypot(u, w)
        lift = DRAG_PER_M / DRAG_COEFFICIENT * LIFT_SLOPE * spin
        return [
            s[2],
            s[3],
            -DRAG_PER_M * v * u + lift * w,
            -GRAVITY_MPS2 - DRAG_PER_M * v * w - lift * u,
        ]

    def arrives(_t: float, s: NDArray[np.float64]) -> float:
        return float(s[0] - x_m)

    arrives.terminal = True  # type: ignore[attr-defined]
    angle = math.atan(slope)
    start = [
        0.0,
        ball.height_m,
        ball.speed_mps * math.cos(angle),
        ball.speed_mps * math.sin(angle),
    ]
    found = solve_ivp(motion, (0, 5), start, events=arrives, rtol=1e-9, atol=1e-9)
    return float(found.y[1, -1]), float(found.t[-1])


@settings(max_examples=60, deadline=None)
@given(
    height=st.floats(0.4, 1.3),
    from_net=st.floats(2.0, 4.0),
    mph=st.floats(30, 50),
    rpm=st.sampled_from([0.0, RPM]),
    slope=st.floats(-0.1, 0.15),
)
def test_height_and_time_against_solve_ivp(
    height: float, from_net: float, mph: float, rpm: float, slope: float
) -> None:
    """At the other kitchen line: 4 cm and 2% of the time, for balls near the level."""
    ball = FlatFire(
        height_m=height, speed_mps=mph * MPS_PER_MPH, topspin_rpm=rpm, lift_per_spin=LOW_LIFT
    )
    x_m = from_net + 2.13
    there, time_s = integrated(ball, slope, x_m)
    assert ball.height_at_m(x_m, slope) == pytest.approx(there, abs=0.04)
    assert ball.time_s(x_m) == pytest.approx(time_s, rel=0.02)


@settings(max_examples=60, deadline=None)
@given(
    mph=st.floats(30, 50),
    rpm=st.sampled_from([0.0, RPM]),
    wind=st.floats(-4, 4),
    elevation=st.floats(-6, 8),
)
def test_height_and_time_against_the_full_flight(
    mph: float, rpm: float, wind: float, elevation: float
) -> None:
    """Kitchen line to kitchen line, the default lift and wind along the lane: 10 cm and 3%."""
    ball = FlatFire(height_m=0.9, speed_mps=mph * MPS_PER_MPH, topspin_rpm=rpm, wind_mps=wind)
    launch = moving(
        y_m=0.0, z_m=0.9, speed_mps=ball.speed_mps, elevation_deg=elevation, topspin_rpm=rpm
    )
    line = at_distance(fly(launch, ball=OUTDOOR, wind_mps=(0.0, wind, 0.0)), 4.27)
    assume(len(line.places[2]) and line.places[2][0] > 0)
    slope = math.tan(math.radians(elevation))
    assert ball.height_at_m(4.27, slope) == pytest.approx(float(line.places[2][0]), abs=0.10)
    assert ball.time_s(4.27) == pytest.approx(float(line.times_s[0]), rel=0.03)


@settings(deadline=None)
@given(
    x_m=st.floats(1.0, 12.0),
    height_m=st.floats(0.0, 2.0),
    rpm=st.floats(0, 2000),
    wind=st.floats(-4, 4),
)
def test_the_slope_through_a_place_passes_it(
    x_m: float, height_m: float, rpm: float, wind: float
) -> None:
    ball = FlatFire(height_m=0.9, speed_mps=16.0, topspin_rpm=rpm, wind_mps=wind)
    assert ball.height_at_m(x_m, ball.slope_through(x_m, height_m)) == pytest.approx(height_m)


@pytest.mark.parametrize(("feet", "ms"), [(10, 365), (7, 296)])
def test_how_long_they_have_as_the_review_computed_it(feet: float, ms: float) -> None:
    """Computed separately beforehand: 35 mph to a player at the line."""
    ball = FlatFire(height_m=0.9, speed_mps=35 * MPS_PER_MPH)
    assert 1000 * ball.time_s((feet + 7) * METRES_PER_FOOT) == pytest.approx(ms, abs=5)


@pytest.mark.parametrize(("mph", "ms"), [(30, 343), (40, 257), (50, 206)])
def test_kitchen_line_to_kitchen_line(mph: float, ms: float) -> None:
    """Facts sheet, section 4 (computed by others of us with the full model)."""
    ball = FlatFire(height_m=0.9, speed_mps=mph * MPS_PER_MPH)
    assert 1000 * ball.time_s(2 * 2.1336) == pytest.approx(ms, abs=1)


def test_level_it_falls_as_a_parabola_where_there_is_no_time_for_drag() -> None:
    """The closed form without drag, any mechanics textbook: g x^2 / 2 u^2 for a short way."""
    ball = FlatFire(height_m=1.0, speed_mps=20.0)
    assert ball.drop_m(0.5) == pytest.approx(9.81 * 0.5**2 / (2 * 20.0**2), rel=0.02)
