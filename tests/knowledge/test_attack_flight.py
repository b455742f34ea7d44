"""A hard, flat ball in closed form, against scipy's integrator and the trade's own tables.

Reference: quadratic drag and lift integrated by scipy.integrate.solve_ivp with the constants of
the facts sheet, section 4 (k = 0.0352 /m computed; Cl = 0.195 S by Steyn et al., second-hand).
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from knowledge.court import METRES_PER_FOOT
from knowledge.tactics.attack_flight import (
    BALL_RADIUS_M,
    DRAG_COEFFICIENT,
    DRAG_PER_M,
    GRAVITY_MPS2,
    HIGH_LIFT,
    LIFT_SLOPE,
    MPS_PER_MPH,
    TOPSPIN_RPM,
    HardBall,
    fastest_mps,
)


def integrated(ball: HardBall, slope: float, x_m: float) -> tuple[float, float]:
    """Height and time at x by solve_ivp, with the full drag, lift and wind."""
    spin = BALL_RADIUS_M * 2 * math.pi * TOPSPIN_RPM / 60

    def motion(_t: float, s: NDArray[np.float64]) -> list[float]:
        u, w = s[2] - ball.wind_mps, s[3]
        v = math.hypot(u, w)
        lift = ball.lift * DRAG_PER_M / DRAG_COEFFICIENT * LIFT_SLOPE * spin
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
    lift=st.sampled_from([0.0, 1.0]),
    slope=st.floats(-0.1, 0.15),
)
def test_height_and_time_against_solve_ivp(
    height: float, from_net: float, mph: float, lift: float, slope: float
) -> None:
    """At the other kitchen line: 4 cm and 1% of the time, for balls near the level."""
    ball = HardBall(height_m=height, from_net_m=from_net, speed_mps=mph * MPS_PER_MPH, lift=lift)
    x_m = from_net + 2.13
    there, time_s = integrated(ball, slope, x_m)
    assert ball.height_at_m(x_m, slope) == pytest.approx(there, abs=0.04)
    assert ball.time_s(x_m) == pytest.approx(time_s, rel=0.02)


@pytest.mark.parametrize(("feet", "ms"), [(10, 365), (7, 296)])
def test_how_long_they_have_as_the_review_computed_it(feet: float, ms: float) -> None:
    """Coaching review, 2.6, computed: 35 mph to a player at the line."""
    ball = HardBall(height_m=0.9, from_net_m=feet * METRES_PER_FOOT, speed_mps=35 * MPS_PER_MPH)
    assert 1000 * ball.time_s((feet + 7) * METRES_PER_FOOT) == pytest.approx(ms, abs=5)


@pytest.mark.parametrize(("mph", "ms"), [(30, 343), (40, 257), (50, 206)])
def test_kitchen_line_to_kitchen_line(mph: float, ms: float) -> None:
    """Facts sheet, section 4 (computed by others of us with the full model)."""
    ball = HardBall(height_m=0.9, from_net_m=2.13, speed_mps=mph * MPS_PER_MPH)
    assert 1000 * ball.time_s(2 * 2.1336) == pytest.approx(ms, abs=1)


@pytest.mark.parametrize(
    ("height_ft", "from_net_ft", "mph", "flat", "low_fit", "wind_behind"),
    [
        (2.5, 9, 35, 3.4, 3.7, 3.0),
        (3.5, 7, 40, 3.2, 3.4, 3.0),
        (3.0, 22, 50, 3.4, 3.8, 2.9),
        (3.0, 22, 55, 3.0, 3.3, 2.6),
    ],
)
def test_leave_heights_near_the_reviews_table(
    height_ft: float,
    from_net_ft: float,
    mph: float,
    flat: float,
    low_fit: float,
    wind_behind: float,
) -> None:
    """Coaching review, 2.11b, computed with the full model: within 0.3 ft."""
    for lift, wind, expected in ((0.0, 0.0, flat), (1.0, 0.0, low_fit), (0.0, 10.0, wind_behind)):
        ball = HardBall(
            height_m=height_ft * METRES_PER_FOOT,
            from_net_m=from_net_ft * METRES_PER_FOOT,
            speed_mps=mph * MPS_PER_MPH,
            lift=lift,
            wind_mps=wind * MPS_PER_MPH,
        )
        found = ball.leave_height_m(7 * METRES_PER_FOOT)
        assert found is not None
        assert found / METRES_PER_FOOT == pytest.approx(expected, abs=0.3)


@pytest.mark.parametrize("mph", [35, 40])
def test_a_knee_high_flat_ball_is_always_out(mph: float) -> None:
    """Coaching review, 2.11b, first two rows: 1.5 ft high, 2 ft behind the line."""
    ball = HardBall(
        height_m=1.5 * METRES_PER_FOOT,
        from_net_m=9 * METRES_PER_FOOT,
        speed_mps=mph * MPS_PER_MPH,
    )
    assert ball.leave_height_m(2.13) is None
    assert ball.window_deg < 0


def test_higher_slower_and_more_spin_widen_the_window() -> None:
    def window(height_m: float = 0.9, mph: float = 35, lift: float = 0.0) -> float:
        return HardBall(
            height_m=height_m, from_net_m=2.4, speed_mps=mph * MPS_PER_MPH, lift=lift
        ).window_deg

    assert window(height_m=1.2) > window() > window(height_m=0.7)
    assert window(mph=28) > window() > window(mph=45)
    assert window(lift=HIGH_LIFT) > window(lift=1.0) > window()


def test_the_fastest_speed_is_the_last_one_with_that_window() -> None:
    ball = HardBall(height_m=0.9, from_net_m=2.4, speed_mps=10)
    fastest = fastest_mps(ball, window_deg=3.0)
    assert 30 < fastest / MPS_PER_MPH < 45
    assert fastest_mps(ball, window_deg=80) == 0.0
