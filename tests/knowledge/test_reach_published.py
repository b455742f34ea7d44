"""Bodies and their times against published values; each source stands beside its check."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from knowledge.ball_places import HeightName, height_m
from knowledge.court import METRES_PER_FOOT
from knowledge.flight import level_time_s
from knowledge.reach import (
    Body,
    choice_cost_s,
    mover,
    reaction_s,
    run_m,
)
from knowledge.reach.reacting import CLUB_ANTICIPATION

MPH_MPS = 0.44704


def test_simple_reaction_is_the_measured_one_less_the_machine() -> None:
    """Woods et al. 2015, Frontiers in Human Neuroscience 9:131, abstract: 231 ms, 213 corrected,
    0.55 ms a year."""
    plain = reaction_s(choices=1, anticipation=0)
    assert plain == pytest.approx(0.213)
    years = reaction_s(choices=1, anticipation=0, age_years=60) - reaction_s(
        choices=1, anticipation=0, age_years=20
    )
    assert years == pytest.approx(40 * 0.00055)


def test_a_choice_slows_with_age_five_times_as_fast() -> None:
    """Woods et al. 2015, Frontiers in Human Neuroscience 9:193, abstract: 2.80 ms a year."""
    old, young = (reaction_s(anticipation=0, age_years=years) for years in (65, 25))
    assert old - young == pytest.approx(40 * 0.0028)


@pytest.mark.parametrize(("choices", "bits_more"), [(1, 0), (3, 1), (7, 2)])
def test_hicks_law_costs_a_bit_the_same_each_time(choices: int, bits_more: int) -> None:
    """Hick 1952, Quarterly Journal of Experimental Psychology 4:11: time grows with log2(n + 1),
    about 0.15 s a bit; a design handbook gives 0.155 (Lidwell et al., Universal Principles of
    Design, "Hick's law", note 3)."""
    assert choice_cost_s(choices, practised=1) == pytest.approx(0.153 * bits_more, rel=0.03)


def test_practice_and_reading_shorten_a_choice() -> None:
    assert choice_cost_s(3) < choice_cost_s(3, practised=1)
    reactions = [reaction_s(anticipation=share) for share in (0, 0.3, 1)]
    assert reactions == sorted(reactions, reverse=True)
    assert reactions[-1] == 0


def test_an_expert_moves_before_our_club_player() -> None:
    """Aviles et al. 2021, Journal of Sports Sciences: expert returners move 177 ms after contact:
    less than nothing read would give, and somewhat more reading than a club player's."""
    assert reaction_s() > 0.177
    read = 1 - 0.177 / reaction_s(anticipation=0)
    assert CLUB_ANTICIPATION < read < 0.4


def test_no_split_step_costs_a_tenth_of_a_second() -> None:
    """Uzu et al. 2009, Journal of Sports Sciences 27:1233: 764 and 868 ms."""
    assert reaction_s(is_split=False) - reaction_s() == pytest.approx(0.104)


@pytest.mark.parametrize("bad", [-0.1, 1.1])
def test_impossible_readings_are_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="anticipation"):
        reaction_s(anticipation=bad)
    with pytest.raises(ValueError, match="at least one"):
        choice_cost_s(0)


SPLITS = (
    (5, 1.158, -0.053),
    (10, 1.893, -0.004),
    (15, 2.541, 0.020),
    (20, 3.149, 0.027),
    (30, 4.313, 0.014),
    (40, 5.444, -0.022),
)
"""Metres, an athlete's time over them in seconds, and what the published fit leaves of it."""


@pytest.mark.parametrize(("distance_m", "time_s", "residual_s"), SPLITS)
def test_the_sprint_model_meets_an_athletes_splits(
    distance_m: float, time_s: float, residual_s: float
) -> None:
    """Splits, fit (8.5911 m/s, 0.8113 s) and residuals of the first example in the documentation
    of the sprint-modelling package `shorts` for R: the time it gives, to the millisecond."""
    fitted_s = np.asarray(time_s - residual_s)
    run = float(run_m(fitted_s, top_mps=8.5911, rise_s=0.8113))
    assert run == pytest.approx(distance_m, abs=0.001 * 8.6)


@pytest.mark.parametrize(("distance_m", "low_s", "high_s"), [(1, 0.5, 0.6), (2, 0.7, 0.9)])
def test_a_club_players_first_steps(distance_m: float, low_s: float, high_s: float) -> None:
    """First metre 0.5 to 0.6 s, second by 0.7 to 0.9 s. From memory, no source."""
    feet = mover().feet
    assert feet.ahead_m(np.asarray(low_s)) <= distance_m <= feet.ahead_m(np.asarray(high_s)) + 0.03


def test_a_side_shuffle_and_a_step_back_are_slower_than_a_run() -> None:
    """Shuffle 1.5 to 2.5 m/s, back about 70% of forward. From memory, no source."""
    feet, early = mover().feet, np.asarray([0.2, 0.3])
    shuffled = np.diff(feet.aside_m(np.asarray([0.25, 0.35]))) / 0.1
    assert 1.5 <= float(shuffled[0]) <= 2.5
    assert feet.back_m(early) == pytest.approx(0.7 * feet.ahead_m(early))


@pytest.mark.parametrize("stature_m", [1.55, 1.70, 1.90])
def test_joints_are_fractions_of_stature(stature_m: float) -> None:
    """Drillis and Contini 1966, as in Winter, Biomechanics and Motor Control of Human Movement:
    shoulder .818, hip .530, knee .285; upper arm .186, forearm .146, hand .108; shoulder .129
    from the middle."""
    body = Body(stature_m=stature_m)
    assert body.shoulder_m / stature_m == pytest.approx(0.818)
    hip_m, knee_m = (
        height_m(name, stature_m=stature_m) for name in (HeightName.HIP, HeightName.KNEE)
    )
    assert hip_m / stature_m == pytest.approx(0.530)
    assert knee_m / stature_m == pytest.approx(0.285)
    longest_paddle_m = 17 * 0.0254  # 2025 edition, 2.E
    fingertips_m = (0.186 + 0.146 + 0.108) * stature_m
    assert fingertips_m < body.arm_m < fingertips_m + longest_paddle_m
    assert body.forehand_m - body.arm_m == pytest.approx(0.129 * stature_m)


def test_reach_with_a_paddle_is_what_players_measure() -> None:
    """Sideways 1.1 to 1.2 m, overhead 2.2 to 2.5 m. Common practice, no source."""
    body = mover().body
    assert 1.1 <= body.forehand_m <= 1.2
    assert 2.2 <= body.overhead_m <= 2.5


@pytest.mark.parametrize(("speed_mph", "feet"), [(40, 44), (30, 14), (50, 14)])
def test_a_flat_balls_time_agrees_with_an_integrator(speed_mph: float, feet: float) -> None:
    """scipy's solve_ivp on v' = -k v^2 along the ground; k = air x area x drag / 2 mass, of a ball
    of 24.3 g and 74.2 mm (2025 edition, 2.D), drag 0.33 (Lindsey 2025, second-hand)."""
    drag_per_m = 1.20 * math.pi * 0.0371**2 * 0.33 / (2 * 0.0243)
    distance_m, speed_mps = feet * METRES_PER_FOOT, speed_mph * MPH_MPS

    def there(_time: float, state: np.ndarray) -> float:
        return float(state[0]) - distance_m

    there.terminal = True  # type: ignore[attr-defined]
    solved = solve_ivp(
        lambda _time, state: (state[1], -drag_per_m * state[1] ** 2),
        (0, 5),
        (0.0, speed_mps),
        events=there,
        rtol=1e-9,
        atol=1e-9,
    )
    assert float(level_time_s(np.asarray(distance_m), speed_mps)) == pytest.approx(
        float(solved.t_events[0][0]), abs=1e-6
    )
