"""The time a return buys: flights against a general solver, runs against published splits.

Sizes are common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math

import pytest
from flight_oracle import solved
from hypothesis import given
from hypothesis import strategies as st
from noted_players import often_noted, player
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.special import logit
from scipy.stats import norm

from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.flight import DRIVE_MPS, FORMS, OUTDOOR, FlatFire, Launch, Shot, usual_aim
from knowledge.reach import Feet, mover
from knowledge.tactics.return_sizes import AT_THE_LINE
from knowledge.tactics.return_time import (
    FINISH_S,
    SPREAD_S,
    THIRD_S,
    Contact,
    Style,
    bought_points,
    chance_set,
    feet_of,
    flown,
    ground_ft,
    run_s,
    slack_s,
)

USUAL = Contact(height_m=0.7, from_net_m=7.2)
WINDS_MPS = (-4.5, 0.0, 4.5)
LEVELS = st.floats(-1, 1)


def launched(style: Style, contact: Contact, *, speed_mps: float | None = None) -> Launch:
    """What the table aims, as a launch straight ahead."""
    aim = contact.ball(style).aimed()
    return Launch(
        y_m=-contact.from_net_m,
        z_m=contact.height_m,
        speed_mps=aim.speed_mps if speed_mps is None else speed_mps,
        elevation_deg=aim.elevation_deg,
        topspin_rpm=FORMS[contact.ball(style).shot].topspin_rpm,
    )


@pytest.mark.parametrize("wind_mps", WINDS_MPS)
@pytest.mark.parametrize("style", [Style.HIGH, Style.HARD])
def test_the_time_in_the_air_is_that_of_a_general_solver(style: Style, wind_mps: float) -> None:
    """scipy's solve_ivp on the launch that the table aims; between its cells to 0.03 s."""
    contact = Contact(height_m=0.7, from_net_m=7.2, wind_mps=wind_mps)
    exact = solved(launched(style, contact), OUTDOOR, (0.0, wind_mps, 0.0))
    ball = flown(style, contact, factor=1.0)
    assert ball.air_s == pytest.approx(exact.first_s, abs=0.03)
    assert ball.rise_s == pytest.approx((exact.second_s - exact.first_s) / 2, abs=0.05)


@pytest.mark.parametrize("aim_ft", [3.0, 6.0, 11.0])
def test_a_shorter_aim_flies_as_long_as_a_general_solver_says(aim_ft: float) -> None:
    """The same arc, hit softer until it lands there: solve_ivp again."""

    def lands_ft(speed_mps: float) -> float:
        found = solved(launched(Style.HIGH, USUAL, speed_mps=speed_mps), OUTDOOR, (0.0, 0.0, 0.0))
        return (HALF_LENGTH_M - float(found.first[1])) / METRES_PER_FOOT - aim_ft

    speed = brentq(lands_ft, 10.0, 18.0, xtol=1e-3)
    exact = solved(launched(Style.HIGH, USUAL, speed_mps=speed), OUTDOOR, (0.0, 0.0, 0.0))
    ball = flown(Style.HIGH, USUAL, factor=1.0, aim_ft=aim_ft)
    assert ball.air_s == pytest.approx(exact.first_s, abs=0.02)
    assert ball.to_third_s == pytest.approx((exact.first_s + exact.second_s) / 2, abs=0.06)


@pytest.mark.parametrize("style", [Style.HIGH, Style.HARD])
def test_times_lie_between_two_closed_forms(style: Style) -> None:
    """Longer than at the launch's own speed along the ground all the way; in still air, without
    topspin, shorter than the parabola of a drag-free ball of the same launch."""
    launch = launched(style, USUAL)
    along = launch.speed_mps * math.cos(math.radians(launch.elevation_deg))
    rises = launch.speed_mps * math.sin(math.radians(launch.elevation_deg))
    free_s = (rises + math.sqrt(rises**2 + 2 * 9.81 * launch.z_m)) / 9.81
    way = USUAL.from_net_m + USUAL.ball(style).aimed().depth_m
    assert way / along < flown(style, USUAL, factor=1.0).air_s < free_s


def test_height_buys_what_the_review_computed() -> None:
    """Computed separately: 1.24 to 1.29 s high; half a second more than hard, 5 to 7 ft of run.

    It has a hard one at 47 to 49 mph, 0.76 to 0.79 s; the table's drive, the surest that clears
    the net, leaves at 40 with topspin and takes longer.
    """
    high = flown(Style.HIGH, USUAL, factor=1.0, aim_ft=7.0)  # where a usual hand best aims
    hard = flown(Style.HARD, USUAL, factor=1.0)
    assert 1.24 <= high.air_s <= 1.29
    assert 0.79 < hard.air_s < 0.90
    assert high.to_third_s - hard.to_third_s == pytest.approx(0.5, abs=0.05)
    assert 5 <= ground_ft(high.to_third_s, hard.to_third_s, Feet()) <= 7


def test_the_runner_reaches_the_line_when_the_review_says() -> None:
    """About 1.7 s (the review's estimate), the end of the stroke included."""
    assert FINISH_S + run_s(USUAL.way_m, Feet()) == pytest.approx(1.7, abs=0.05)


@pytest.mark.parametrize(("metres", "split_s"), [(5, 1.158), (10, 1.893), (20, 3.149), (40, 5.444)])
def test_the_published_sprinter_runs_the_published_splits(metres: float, split_s: float) -> None:
    """Example of a sprint-modelling package: Vmax 8.591 m/s, tau 0.811 s (published, read)."""
    sprinter = Feet(forward_mps=8.591, rise_s=0.811)
    found = run_s(metres, sprinter)
    assert found == pytest.approx(split_s, abs=0.06)
    area, _ = quad(lambda t: 8.591 * (1 - math.exp(-t / 0.811)), 0, found)
    assert area == pytest.approx(metres, abs=1e-6)


def test_a_third_is_slower_than_a_drive_and_quicker_than_a_drop() -> None:
    """From the baseline to our line: a drive in closed form, the drop of the tables to its bounce
    in our kitchen."""
    drive_s = FlatFire(height_m=0.8, speed_mps=DRIVE_MPS).time_s(HALF_LENGTH_M + 2.4)
    drop = usual_aim(Shot.DROP, height_m=0.7, from_net_m=HALF_LENGTH_M)
    assert drive_s < THIRD_S < drop.landing_s


@given(slower=LEVELS, faster=LEVELS, style=st.sampled_from(Style))
def test_a_faster_returner_never_has_less_slack(slower: float, faster: float, style: Style) -> None:
    low, high = sorted((slower, faster))
    ball = flown(style, USUAL, factor=1.0)
    slow, fast = (
        slack_s(ball, USUAL, mover(forward_speed=level).feet) for level in (low, high)
    )  # fmt: skip
    assert fast >= slow - 1e-9
    assert chance_set(fast) >= chance_set(slow) - 1e-9


@given(near=st.floats(3, 8), far=st.floats(3, 8))
def test_a_longer_way_never_leaves_more_slack(near: float, far: float) -> None:
    short, long = sorted((near, far))
    ball = flown(Style.HIGH, USUAL, factor=1.0)
    contacts = (Contact(height_m=0.7, from_net_m=each) for each in (short, long))
    closer, farther = (slack_s(ball, contact, Feet()) for contact in contacts)
    assert closer >= farther - 1e-9


@given(slack=st.floats(-1, 1), other=st.floats(-1, 1))
def test_points_are_row_two_by_the_normal_chance(slack: float, other: float) -> None:
    """x = late + Phi(slack / spread) (set - late) round .56, points (logit x - logit x') / 0.04:
    scipy's normal distribution and logit."""
    worth = [0.56 + 0.06 * (norm.cdf(each / SPREAD_S) - 0.5) for each in (slack, other)]
    found = bought_points(slack, other)
    assert found.mean == pytest.approx((logit(worth[0]) - logit(worth[1])) / 0.04)
    assert abs(found.mean) <= AT_THE_LINE.mean * 1.03
    assert found.sd >= 0


def test_no_time_bought_is_worth_nothing() -> None:
    assert bought_points(0.2, 0.2).mean == 0.0


def test_a_slow_returner_loses_most_from_a_hard_return() -> None:
    """Row 1's exception: hard and flat with a slow returner."""
    high, hard = (flown(style, USUAL, factor=1.0) for style in (Style.HIGH, Style.HARD))
    feet = [
        feet_of(player(1, "Mira", None, *often_noted(f"forward_speed {value}")).profile)
        for value in ("weakness", "strength")
    ]
    slow, usual, quick = (
        bought_points(slack_s(high, USUAL, each), slack_s(hard, USUAL, each)).mean
        for each in (feet[0], feet_of(None), feet[1])
    )
    assert slow > usual > quick > 0


def test_a_head_start_is_slack() -> None:
    ball = flown(Style.HIGH, USUAL, factor=1.0)
    running = Contact(height_m=0.7, from_net_m=7.2, head_start_s=0.25)
    assert slack_s(ball, running, Feet()) == pytest.approx(slack_s(ball, USUAL, Feet()) + 0.25)
