"""How deep to aim: landings against a general solver and the whole window, sums against scipy.

Sizes are common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

import math
import sys
from dataclasses import replace

import numpy as np
import pytest
from flight_oracle import solved
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import minimize_scalar
from scipy.special import logit
from scipy.stats import norm

from knowledge import wind
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT, Lane
from knowledge.flight import FORMS, OUTDOOR, Launch, Shot, integrate, shot_window, success_chance
from knowledge.situation import Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.return_depth import depth_row
from knowledge.tactics.return_sizes import DEEP, LAST_FT, MID_COURT_FT
from knowledge.tactics.serve_answer import DEPTH_ROW
from knowledge.tactics.serve_return_depth import (
    CARRIES_FT,
    GUSTS,
    Landings,
    best_depth,
    carry_ft,
    inside_ft,
    landings,
)
from knowledge.tactics.serve_sizes import MID_BOX_FT
from knowledge.tactics.shot_success import Ball, OurScatter
from knowledge.tactics.wind_along import BREEZE_MPS, wind_along_mps
from knowledge.vocabulary import Level, RallyChance, Topic

RETURN = Ball(shot=Shot.RETURN, height_m=0.7, from_net_m=7.2)
SERVE = Ball(shot=Shot.SERVE, height_m=0.7, from_net_m=7.0, lane=Lane.CROSS)
ROW = depth_row(Situation(topic=Topic.AIM_RETURN))
RECEIVING = RallyChance(0.56)
SPREADS = st.floats(1.0, 8.0)
AIMS = st.floats(1.0, 12.0)
FACTORS = st.floats(0.6, 2.2)


@given(spread=SPREADS, aim=AIMS, last=st.floats(2, 7))
def test_landings_are_a_normal_curve(spread: float, aim: float, last: float) -> None:
    """scipy's normal distribution; feet gained by quadrature of (mid - x) over balls in play."""
    lands, curve = Landings(spread_ft=spread), norm(loc=aim, scale=spread)
    assert lands.long(aim) == pytest.approx(curve.cdf(0))
    assert lands.deep(aim, last) == pytest.approx(curve.cdf(last) - curve.cdf(0))
    area, _ = quad(lambda x: (11 - x) * curve.pdf(x), 0, aim + 10 * spread, epsabs=1e-9)
    assert lands.feet_gained(aim, 11) == pytest.approx(area, abs=1e-6)


@pytest.mark.parametrize("ball", [RETURN, SERVE], ids=["return", "serve"])
def test_the_spread_is_what_speed_and_angle_move_the_landing(ball: Ball) -> None:
    """By the propagation of errors, each derivative from scipy's solve_ivp at one sd to either
    side: within a fifth of what the table tells."""
    aim, form = ball.aimed(), FORMS[ball.shot]

    def lands_ft(speed: float, angle: float) -> float:
        launch = Launch(
            y_m=-ball.from_net_m,
            z_m=ball.height_m,
            speed_mps=aim.speed_mps * (1 + speed * form.scatter.speed_share),
            elevation_deg=aim.elevation_deg + angle * form.scatter.elevation_deg,
            topspin_rpm=form.topspin_rpm,
        )
        return inside_ft(float(solved(launch, OUTDOOR, (0.0, 0.0, 0.0)).first[1]))

    by_speed = (lands_ft(-1, 0) - lands_ft(1, 0)) / 2
    by_angle = (lands_ft(0, -1) - lands_ft(0, 1)) / 2
    told = landings(ball, 1.0).spread_ft
    assert told == pytest.approx(math.hypot(by_speed, by_angle), rel=0.2)


@pytest.mark.parametrize("factor", [0.6, 1.0])
@pytest.mark.parametrize("wind_mps", [0.0, 4.5])
@pytest.mark.parametrize("ball", [RETURN, SERVE], ids=["return", "serve"])
def test_misses_are_those_of_the_whole_window(ball: Ball, wind_mps: float, factor: float) -> None:
    """The window integrated, its scatter over speed, angle and direction: extra misses against
    mid-court within 1.5 in 100, and balls in the last 5 ft within 4."""
    blown = replace(ball, wind_mps=wind_mps)
    gusts = GUSTS * carry_ft(ball.shot, wind_mps)
    told = landings(blown, factor).spread_ft
    lands = Landings(spread_ft=math.sqrt(told**2 - gusts**2))
    form, shown = FORMS[ball.shot], _window(blown)
    scatter = form.scatter.times(factor)
    last = replace(form.legal, depth_m=(HALF_LENGTH_M - 5 * METRES_PER_FOOT, HALF_LENGTH_M))
    column = int(np.argmin(np.abs(shown.elevations_deg - blown.aimed(factor).elevation_deg)))
    angle = float(shown.elevations_deg[column])

    def speed_to(feet: float) -> float:
        depth_m = HALF_LENGTH_M - feet * METRES_PER_FOOT
        return float(np.interp(depth_m, shown.depth_m[:, column], shown.speeds_mps))

    def chance(intent: object, feet: float) -> float:
        return success_chance(
            shown,
            intent,  # type: ignore[arg-type]
            scatter,
            speed_mps=speed_to(feet),
            elevation_deg=angle,
        )

    middle = chance(form.legal, 7.5)
    for feet in (3.0, 5.0, 7.0):
        extra = lands.long(feet) - lands.long(7.5)
        assert extra == pytest.approx(middle - chance(form.legal, feet), abs=0.015)
        assert lands.deep(feet, 5.0) == pytest.approx(chance(last, feet), abs=0.04)


def _window(ball: Ball):  # type: ignore[no-untyped-def]
    return shot_window(
        ball.shot,
        height_m=ball.height_m,
        from_net_m=ball.from_net_m,
        lane=ball.lane,
        wind_mps=ball.wind_mps,
    )


def test_the_middles_are_the_rulebooks() -> None:
    """2025 edition, 2.A: 22 ft from net to baseline, of which 7 are the kitchen."""
    half, kitchen = (round(each / METRES_PER_FOOT) for each in (HALF_LENGTH_M, KITCHEN_DEPTH_M))
    assert (half, kitchen) == (22, 7)
    assert half / 2 == MID_COURT_FT
    assert (half - kitchen) / 2 == MID_BOX_FT


def test_rows_one_and_five_keep_their_size() -> None:
    """A ball in the middle of the last feet is worth the row, one at mid-court nothing."""
    for row in (ROW, DEPTH_ROW):
        assert row.per_foot.mean * (row.mid_ft - row.last_ft / 2) == pytest.approx(row.worth.mean)
    assert (ROW.worth, ROW.last_ft) == (DEEP, LAST_FT)
    beginner = depth_row(Situation(topic=Topic.AIM_RETURN, level=Level.L3_0))
    assert beginner.worth.mean == 2 * DEEP.mean  # the review's note: rows 1, 2 and 9 double


@pytest.mark.parametrize(
    ("shot", "stroke"),
    [(Shot.SERVE, wind.Stroke.SERVE), (Shot.RETURN, wind.Stroke.HIGH_RETURN)],
)
def test_ten_miles_an_hour_move_a_ball_as_the_flight_says(shot: Shot, stroke: wind.Stroke) -> None:
    behind, against = (wind.shift(stroke, along_mph=mph).along_ft for mph in (10, -10))
    assert CARRIES_FT[shot] == pytest.approx((behind, -against), abs=0.06)


def test_the_reviews_feet_are_those_of_a_flatter_return() -> None:
    """Computed separately: +3.7 and -4.3 ft for a return in 10 mph along the court. A flat one
    (12 degrees) comes within a foot of that; a high one is longer in the wind and moves 1.7 times
    as far, and that is the one advised."""
    flat = wind.Stroke.RETURN
    behind, against = (wind.shift(flat, along_mph=mph).along_ft for mph in (10, -10))
    assert behind == pytest.approx(3.7, abs=0.9)
    assert against == pytest.approx(-4.3, abs=0.9)
    assert 1.5 < carry_ft(Shot.RETURN, BREEZE_MPS) / 3.7 < 1.8
    assert 1.5 < carry_ft(Shot.RETURN, -BREEZE_MPS) / -4.3 < 1.8


def test_the_tables_aim_for_the_wind() -> None:
    """What the table hits in the wind, hit in still air instead (solve_ivp): with the wind behind
    it would fall short by what the wind carries, to a foot and a half, for its arc differs a
    little. Against the wind it would fly out by more than that: it is hit harder, and a harder
    ball meets more wind."""
    moved_ft = []
    for wind_mps in (4.5, -4.5):
        aim = replace(RETURN, wind_mps=wind_mps).aimed()
        launch = Launch(y_m=-7.2, z_m=0.7, speed_mps=aim.speed_mps, elevation_deg=aim.elevation_deg)
        still_m = float(solved(launch, OUTDOOR, (0.0, 0.0, 0.0)).first[1])
        moved_ft.append((aim.depth_m - still_m) / METRES_PER_FOOT)
    behind, against = moved_ft
    assert behind == pytest.approx(carry_ft(Shot.RETURN, 4.5), abs=1.5)
    assert -12 < against < carry_ft(Shot.RETURN, -4.5)


@given(one=FACTORS, other=FACTORS, aim=AIMS, ball=st.sampled_from([RETURN, SERVE]))
def test_more_scatter_never_misses_less_and_never_aims_deeper(
    one: float, other: float, aim: float, ball: Ball
) -> None:
    tight, wild = sorted((one, other))
    assert landings(ball, wild).long(aim) >= landings(ball, tight).long(aim) - 1e-3
    deep, safe = (
        best_depth(ROW, ball, OurScatter(factor=factor), RECEIVING) for factor in (tight, wild)
    )
    assert safe.inside_ft >= deep.inside_ft


@given(factor=FACTORS, aim=AIMS, ball=st.sampled_from([RETURN, SERVE]))
def test_a_wind_behind_makes_a_deep_aim_riskier(factor: float, aim: float, ball: Ball) -> None:
    behind = replace(ball, wind_mps=BREEZE_MPS)
    assert landings(behind, factor).long(aim) > landings(ball, factor).long(aim) - 1e-9


@pytest.mark.parametrize("factor", [0.7, 1.0, 1.2])
def test_the_best_aim_is_the_best(factor: float) -> None:
    """scipy's bounded minimiser on row 1 per foot less .56 for a miss, to half a step."""
    found = best_depth(ROW, RETURN, OurScatter(factor=factor), RECEIVING)
    lands = landings(RETURN, factor)

    def loses(aim: float) -> float:
        gained = 5 / 8.5 * lands.feet_gained(aim, 11)
        return 56 * float(norm.cdf(-aim / lands.spread_ft)) - gained

    exact = minimize_scalar(loses, bounds=(3, 8), method="bounded").x
    assert found.inside_ft == pytest.approx(exact, abs=0.26)


@pytest.mark.parametrize("factor", [0.8, 1.5])
def test_misses_cost_the_chance_we_would_have_had(factor: float) -> None:
    """(1 - e) v against (1 - e') v on the log-odds scale: facts section 3 and scipy's logit."""
    depth = best_depth(ROW, RETURN, OurScatter(factor=factor), RECEIVING)
    lands = landings(RETURN, factor)
    kept = 0.56 * (1 - lands.long(depth.inside_ft)) / (1 - lands.long(11))
    assert depth.cost.mean == pytest.approx((logit(kept) - logit(0.56)) / 0.04)
    assert depth.cost.sd > 0
    assert depth.extra_misses == pytest.approx(
        100 * (lands.long(depth.inside_ft) - lands.long(11))
    )  # fmt: skip


def test_a_wind_that_is_told_counts_and_one_across_does_not() -> None:
    assert wind_along_mps(Wind.BEHIND_US, None) == BREEZE_MPS
    assert wind_along_mps(Wind.AGAINST_US, 2.0) == -2.0
    assert [wind_along_mps(each, 3.0) for each in (Wind.ACROSS, Wind.SOME, None)] == [0.0] * 3


def test_no_turn_integrates(monkeypatch: pytest.MonkeyPatch) -> None:
    """Serve and return answer from the tables: nothing calls the integrator."""

    def refuse(*_args: object, **_options: object) -> None:
        raise AssertionError("a turn integrated a flight")

    holders = [
        module
        for module in list(sys.modules.values())
        if getattr(module, "fly", 0) is integrate.fly
    ]
    assert len(holders) > 2
    for module in holders:
        monkeypatch.setattr(module, "fly", refuse)
    for topic in (Topic.AIM_RETURN, Topic.AIM_SERVE):
        for blows in (None, *Wind):
            assert advise(Situation(topic=topic, wind=blows, level=Level.L4_0)).call
