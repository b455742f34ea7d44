"""The wind's flight against closed forms, a general solver, and the coach's own numbers."""

from __future__ import annotations

import math
from typing import Any

import pytest
from scipy.integrate import solve_ivp

from knowledge.flight import Ball
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.wind import (
    BALL_RADIUS_M,
    DRAG_PER_M,
    MPH_MPS,
    TYPICAL,
    Launch,
    Stroke,
    Vector,
    at_court,
    landing,
    shift,
)

NET_CENTRE_M = 34 * 0.0254
FOOT_M = 0.3048
BASELINE_M = 22 * FOOT_M
KITCHEN_M = 7 * FOOT_M
SMOOTH = Ball(drag_coefficient=0.0)


def test_without_drag_it_is_the_parabola() -> None:
    launch = Launch(speed_mps=12, angle_deg=40, height_m=1, from_net_m=0)
    up, ahead = 12 * math.sin(math.radians(40)), 12 * math.cos(math.radians(40))
    time = (up + math.sqrt(up**2 + 2 * GRAVITY_MPS2 * (1 - BALL_RADIUS_M))) / GRAVITY_MPS2
    found = landing(launch, ball=SMOOTH)
    assert found.time_s == pytest.approx(time, abs=1e-6)
    assert found.along_m == pytest.approx(ahead * time, abs=1e-6)


def test_a_drop_follows_the_closed_form_of_quadratic_drag() -> None:
    """y = (vt^2 / g) ln cosh(g t / vt), vt = sqrt(g / k): any mechanics textbook."""
    terminal = math.sqrt(GRAVITY_MPS2 / DRAG_PER_M)
    assert terminal == pytest.approx(16.7, abs=0.05)  # sqrt(g / k), by hand
    launch = Launch(speed_mps=0, angle_deg=0, height_m=8 + BALL_RADIUS_M, from_net_m=0)
    time = landing(launch).time_s
    fallen = terminal**2 / GRAVITY_MPS2 * math.log(math.cosh(GRAVITY_MPS2 * time / terminal))
    assert fallen == pytest.approx(8, abs=1e-5)


def test_a_ball_thrown_up_at_terminal_speed_returns_at_its_half_root() -> None:
    """Up for (vt / g) atan(1), down from the top: total time by the two closed forms."""
    terminal = math.sqrt(GRAVITY_MPS2 / DRAG_PER_M)
    top = terminal**2 / GRAVITY_MPS2 * 0.5 * math.log(2)
    up = terminal / GRAVITY_MPS2 * math.atan(1)
    down = terminal / GRAVITY_MPS2 * math.acosh(math.exp(top * GRAVITY_MPS2 / terminal**2))
    launch = Launch(speed_mps=terminal, angle_deg=90, height_m=BALL_RADIUS_M, from_net_m=0)
    assert landing(launch).time_s == pytest.approx(up + down, abs=1e-5)


WINDS: list[Vector] = [(0, 0, 0), (4.47, 0, 0), (-4.47, 0, 0), (0, 6, 0), (3, -5, 0)]


@pytest.mark.parametrize("stroke", list(Stroke))
@pytest.mark.parametrize("wind", WINDS)
def test_it_lands_where_scipys_solver_says(stroke: Stroke, wind: Vector) -> None:
    launch = TYPICAL[stroke]

    def rate(_t: float, state: list[float]) -> list[float]:
        relative = [v - w for v, w in zip(state[3:], wind, strict=True)]
        slow = -DRAG_PER_M * math.hypot(*relative)
        ahead, across, up = (slow * one for one in relative)
        return [*state[3:], ahead, across, up - GRAVITY_MPS2]

    def down(_t: float, state: list[float]) -> float:
        return state[2] - BALL_RADIUS_M

    ends: Any = down
    ends.terminal, ends.direction = True, -1
    angle = math.radians(launch.angle_deg)
    struck = (launch.speed_mps * math.cos(angle), 0.0, launch.speed_mps * math.sin(angle))
    start = [0.0, 0.0, launch.height_m, *struck]
    solved = solve_ivp(rate, (0, 9), start, events=ends, rtol=1e-10, atol=1e-10)
    found = landing(launch, wind_mps=wind)
    assert found.along_m == pytest.approx(solved.y[0, -1], abs=1e-4)
    assert found.across_m == pytest.approx(solved.y[1, -1], abs=1e-4)
    assert found.time_s == pytest.approx(solved.t[-1], abs=1e-4)


def test_half_the_step_changes_nothing_visible() -> None:
    for launch in TYPICAL.values():
        fine = landing(launch, step_s=0.005).along_m
        assert landing(launch).along_m == pytest.approx(fine, abs=1e-5)


@pytest.mark.parametrize("stroke", list(Stroke))
def test_a_typical_stroke_clears_the_net_and_lands_in(stroke: Stroke) -> None:
    """Court and net: national rulebook 2025, 2.A to 2.C."""
    launch = TYPICAL[stroke]
    past_net = landing(launch).along_m - launch.from_net_m
    deep = KITCHEN_M if stroke in (Stroke.DROP, Stroke.DINK) else BASELINE_M
    assert 0 < past_net <= deep
    assert stroke is not Stroke.SERVE or past_net > KITCHEN_M
    floor_at_net = Launch(
        speed_mps=launch.speed_mps,
        angle_deg=launch.angle_deg,
        height_m=launch.height_m - NET_CENTRE_M,
        from_net_m=launch.from_net_m,
    )  # the same flight, started a net's height lower: it must come down beyond the net
    if launch.angle_deg > 0:  # the overhead goes down all the way, from well above the net
        assert landing(floor_at_net).along_m > launch.from_net_m
    else:
        fall = launch.from_net_m * math.tan(math.radians(-launch.angle_deg - 2))
        assert launch.height_m - fall > NET_CENTRE_M


def test_the_drop_is_one_that_works() -> None:
    """Steyn et al., arXiv 2501.00163, abstract: 10.9 to 13.0 m/s at 15.5 to 22.5 degrees."""
    drop = TYPICAL[Stroke.DROP]
    assert 10.9 <= drop.speed_mps <= 13.0
    assert 15.5 <= drop.angle_deg <= 22.5


@pytest.mark.parametrize(
    ("stroke", "behind", "against", "within"),
    [
        (Stroke.LOB, 8.0, -11.0, 0.35),
        (Stroke.DROP, 3.5, -4.4, 0.15),
        # The coach's return is flatter than ours: 0.8 ft apart; the next test has his.
        (Stroke.RETURN, 3.7, -4.3, 0.85),
    ],
)
def test_the_coachs_feet_for_ten_mph(
    stroke: Stroke, behind: float, against: float, within: float
) -> None:
    """Our coach's own computation for 10 mph along the court, an earlier and separate one."""
    assert shift(stroke, along_mph=10).along_ft == pytest.approx(behind, abs=within)
    assert shift(stroke, along_mph=-10).along_ft == pytest.approx(against, abs=within)


def test_a_flat_return_gives_the_coachs_numbers() -> None:
    """45 mph at 8 degrees: the ball behind his +3.7 and -4.3."""
    flat = Launch(speed_mps=20.2, angle_deg=8, height_m=0.8, from_net_m=6.71)
    still = landing(flat).along_m
    for mph, feet in ((10, 3.7), (-10, -4.3)):
        blown = landing(flat, wind_mps=(mph * MPH_MPS, 0, 0)).along_m
        assert (blown - still) / FOOT_M == pytest.approx(feet, abs=0.15)


@pytest.mark.parametrize("stroke", list(Stroke))
def test_half_the_wind_is_near_half_the_shift(stroke: Stroke) -> None:
    for sign in (1, -1):
        five = shift(stroke, along_mph=5 * sign).along_ft
        ten = shift(stroke, along_mph=10 * sign).along_ft
        assert five == pytest.approx(ten / 2, abs=0.7)


@pytest.mark.parametrize("stroke", list(Stroke))
def test_a_headwind_takes_more_than_a_tailwind_gives(stroke: Stroke) -> None:
    assert -shift(stroke, along_mph=-10).along_m > shift(stroke, along_mph=10).along_m > 0


@pytest.mark.parametrize("stroke", list(Stroke))
def test_a_crosswind_is_the_same_from_either_side(stroke: Stroke) -> None:
    right, left = shift(stroke, across_mph=12), shift(stroke, across_mph=-12)
    assert right.across_m == pytest.approx(-left.across_m)
    assert right.across_m > 0


def test_the_higher_slower_return_is_moved_more() -> None:
    high, flat = Stroke.HIGH_RETURN, Stroke.RETURN
    assert shift(high, along_mph=10).along_m > shift(flat, along_mph=10).along_m


def test_a_forecast_is_less_at_the_ball() -> None:
    """Logarithmic profile, z0 = 0.03 m; the seventh-root law (AMS glossary) gives a like figure."""
    assert at_court(10) == pytest.approx(7.23, abs=0.01)
    assert at_court(10) == pytest.approx(10 * (2 / 10) ** (1 / 7), rel=0.12)


def test_a_ball_that_never_lands_is_refused() -> None:
    thrown = Launch(speed_mps=200, angle_deg=89, height_m=1, from_net_m=0)
    with pytest.raises(ValueError, match="still up"):
        landing(thrown, ball=SMOOTH)
