"""How often each third works and what that is worth: against outside numbers, and in the right way.

Outside: scipy's solve_ivp, the 2025 rulebook's net, the published window of drops that work (Steyn
et al., arXiv 2501.00163, abstract; read), the step that a player without a split step loses (Uzu et
al. 2009).
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from flight_oracle import solved
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from knowledge.ball_facts import BallFacts
from knowledge.court import KITCHEN_DEPTH_M, Lane, Point, lane_ends
from knowledge.flight import FORMS, OUTDOOR, Launch, Shot, azimuth_deg, integrate
from knowledge.reach import Placed, move_time_s, mover
from knowledge.side_flights import flight_window, flown
from knowledge.side_view import SideFlight, SideView
from knowledge.situation import Asked, Situation, Wind
from knowledge.tactics import advise
from knowledge.tactics.shot_success import OurScatter, our_scatter
from knowledge.tactics.third_contact import Contact, Met, contact_of, contact_words, met_words
from knowledge.tactics.third_success import (
    PADDLE_THERE_S,
    PLAIN,
    SHOTS,
    ThirdBall,
    late_share,
    plain_chance,
    they_have_s,
)
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import BallQuality, Level, Topic, Trait

USUAL = OurScatter()
INCH_M = 0.0254
DEEP = ThirdBall(contact=Contact(height_m=0.5, from_net_m=6.7))
SHORT = ThirdBall(contact=Contact(height_m=1.05, from_net_m=4.4))
HIGH_TABLE_M = FORMS[Shot.DRIVE].heights_m[-1]


def _launch(
    ball: ThirdBall, shot: Shot, *, speed: float, up_deg: float, aside_deg: float
) -> Launch:
    near, far = FORMS[shot].meant.depth_m
    start, target = lane_ends(
        Lane.MIDDLE, from_net_m=ball.contact.from_net_m, depth_m=(near + far) / 2
    )
    return Launch(
        x_m=start.x_m,
        y_m=start.y_m,
        z_m=ball.contact.height_m,
        speed_mps=speed,
        elevation_deg=up_deg,
        azimuth_deg=azimuth_deg(start, target) + aside_deg,
        topspin_rpm=FORMS[shot].topspin_rpm,
    )


@pytest.mark.parametrize(("shot", "ball"), [(Shot.DROP, DEEP), (Shot.DRIVE, SHORT)])
def test_balls_scattered_and_flown_by_scipy_stay_in_as_often(shot: Shot, ball: ThirdBall) -> None:
    """150 launches round the aim by solve_ivp: in play as often as the table says, within chance.

    Three standard deviations of a count of 150 at 0.92 are 0.07.
    """
    aim, scatter = ball.aimed(shot, USUAL), FORMS[shot].scatter
    dice = np.random.default_rng(5)
    inside = 0
    for speed, up, aside in dice.standard_normal((150, 3)):
        launch = _launch(
            ball,
            shot,
            speed=aim.speed_mps * (1 + scatter.speed_share * speed),
            up_deg=aim.elevation_deg + scatter.elevation_deg * up,
            aside_deg=scatter.azimuth_deg * aside,
        )
        inside += _is_in(launch)
    assert inside / 150 == pytest.approx(aim.legal, abs=0.07)


def _is_in(launch: Launch) -> bool:
    """Over a net of 36 in at the sides and 34 in at the centre (2025 edition, 2.C), and in."""
    up, aside = math.radians(launch.elevation_deg), math.radians(launch.azimuth_deg)
    ahead = np.array([math.sin(aside), math.cos(aside), 0.0])
    above = np.array([0.0, 0.0, 1.0])
    spin = launch.topspin_rpm * 2 * math.pi / 60 * np.cross(above, ahead)
    per_m = OUTDOOR.air_kg_per_m3 * math.pi * OUTDOOR.radius_m**2 / (2 * OUTDOOR.mass_kg)

    def rate(_t: float, state: Any) -> Any:
        v = state[3:]
        drag = -per_m * OUTDOOR.drag_coefficient * np.linalg.norm(v) * v
        lift = per_m * OUTDOOR.lift_per_spin * OUTDOOR.radius_m * np.cross(spin, v)
        return np.concatenate([v, drag + lift - 9.81 * above])

    def ground(_t: float, state: Any) -> float:
        return float(state[2] - OUTDOOR.radius_m)

    def net(_t: float, state: Any) -> float:
        return float(state[1])

    event: Any = ground
    event.terminal, event.direction = True, -1
    start = [launch.x_m, launch.y_m, launch.z_m]
    start += list(launch.speed_mps * (math.cos(up) * ahead + math.sin(up) * above))
    found = solve_ivp(rate, (0, 10), start, events=(ground, net), rtol=1e-6, atol=1e-6)
    if not len(found.y_events[1]):
        return False
    x_net, _, z_net = found.y_events[1][0][:3]
    top = INCH_M * (34 + 2 * min(1.0, abs(x_net) / 3.05))
    x, y, _ = found.y[:3, -1]
    return bool(z_net - OUTDOOR.radius_m >= top and y <= 6.706 and abs(x) <= 3.05)


def test_the_published_drops_overlap_the_band_that_is_drawn() -> None:
    """Straight: 10.9 to 13.0 m/s at 15.5 to 22.5 degrees work; their contact is not told."""
    inside = 0
    for height in (0.5, 0.8, 1.1):
        for speed in (10.9, 12.0, 13.0):
            for up in (15.5, 19.0, 22.5):
                one = _drop(height_m=height, speed_mps=speed, elevation_deg=up)
                window = flight_window(one)
                if not window:
                    continue
                along, low, high = np.array(window).T
                places = np.array(flown(_view(one)).paths[0].places)
                at_net = np.interp(0.0, places[:, 0], places[:, 1])
                low_net, high_net = (np.interp(0.0, along, each) for each in (low, high))
                inside += bool(low_net <= at_net <= high_net)
    assert inside >= 1


def _drop(**changes: Any) -> SideFlight:
    found = SideFlight(
        shot="drop",
        height_m=0.5,
        from_net_m=6.7,
        speed_mps=11.0,
        elevation_deg=31.0,
        label="drop",
        has_window=True,
    )
    return replace(found, **changes)


def _view(one: SideFlight) -> SideView:
    return SideView(title="x", alt="x", net_m=0.9, flights=(one,))


def test_the_lowest_ball_of_the_band_clears_the_net_of_the_rulebook() -> None:
    """34 in at the centre (2025 edition, 2.C) and the ball's radius; 36 in and it at the most."""
    window = flight_window(_drop())
    low = np.interp(0.0, [row[0] for row in window], [row[1] for row in window])
    radius = OUTDOOR.radius_m
    assert 34 * INCH_M + radius - 0.01 <= low <= 36 * INCH_M + radius + 0.12


def test_the_highest_ball_of_the_band_is_no_higher_at_their_line_than_meant() -> None:
    window = flight_window(_drop())
    along, _, high = zip(*window, strict=True)
    limit = FORMS[Shot.DROP].meant.at_line_m[1]
    at_line = float(np.interp(KITCHEN_DEPTH_M, along, high))
    assert limit - 0.15 <= at_line <= limit + 0.02


def test_a_drawn_path_lands_where_scipy_says() -> None:
    one = _drop()
    path = flown(_view(one)).paths[0]
    launch = _launch(DEEP, Shot.DROP, speed=11.0, up_deg=31.0, aside_deg=0.0)
    assert path.places[-1][0] == pytest.approx(
        solved(launch, OUTDOOR, (0, 0, 0)).first[1], abs=0.01
    )
    assert path.lands_in is True


def test_a_met_ball_ends_where_it_is_met() -> None:
    drive = replace(_drop(speed_mps=18.0, elevation_deg=15.0), shot="drive", met_at_m=2.4)
    path = flown(_view(drive)).paths[0]
    assert path.places[-1][0] == pytest.approx(2.4)
    assert path.lands_in is None


def test_where_nothing_works_no_band_is_drawn() -> None:
    assert flight_window(_drop(speed_mps=4.0)) == ()


@settings(max_examples=80)
@given(
    shot=st.sampled_from([Shot.DROP, Shot.DRIVE, Shot.LOB]),
    height=st.floats(0.2, 1.3),
    away=st.floats(4.0, 8.0),
    wind=st.sampled_from([-4.4, 0.0, 4.4]),
    factors=st.tuples(st.floats(0.6, 2.2), st.floats(0.6, 2.2)),
)
def test_more_scatter_is_never_worth_more(
    shot: Shot, height: float, away: float, wind: float, factors: tuple[float, float]
) -> None:
    """Where some aim works; else more scatter may only help: a lob into the wind from the back, as
    aimed, falls short of their reach. The aim is best for in play and as meant alike, so worth may
    slip by a hundredth.
    """
    tight, wild = sorted(factors)
    ball = ThirdBall(contact=Contact(height_m=height, from_net_m=away), wind_mps=wind)
    one, two = (ball.aimed(shot, OurScatter(factor=each)) for each in (tight, wild))
    assume(one.legal > 0.5 and (one.meant > 0.5 or shot is not Shot.LOB))
    assert two.legal + two.meant <= one.legal + one.meant + 2e-3
    assert ball.chance(shot, wild) <= ball.chance(shot, tight) + 0.01


@settings(max_examples=80)
@given(
    heights=st.tuples(st.floats(0.2, HIGH_TABLE_M), st.floats(0.2, HIGH_TABLE_M)),
    away=st.floats(4.0, 8.0),
    factor=st.floats(0.6, 1.5),
)
def test_from_higher_up_a_drive_never_stays_in_less(
    heights: tuple[float, float], away: float, factor: float
) -> None:
    low, high = sorted(heights)
    chances = [
        ThirdBall(contact=Contact(height_m=each, from_net_m=away))
        .aimed(Shot.DRIVE, OurScatter(factor=factor))
        .legal
        for each in (low, high)
    ]
    assert chances[0] <= chances[1] + 0.015


def test_the_nearer_the_less_time_they_have_and_a_runner_has_less_still() -> None:
    near, far = (they_have_s(ball, 18.0) for ball in (SHORT, DEEP))
    assert near < far
    assert late_share(near, moving=0.0) > late_share(far, moving=0.0)
    assert late_share(far, moving=1.0) > late_share(far, moving=0.5) > late_share(far, moving=0.0)


def test_time_in_the_air_is_the_closed_form() -> None:
    """Level with quadratic drag: t = (e^(kx) - 1) / (k v) (facts section 4)."""
    k, way = OUTDOOR.drag_per_m, 4.4 + 2.4
    level = (math.exp(k * way) - 1) / (k * 18.0)
    assert they_have_s(SHORT, 18.0) == pytest.approx(level, rel=0.03)


def test_the_paddles_time_is_that_of_reach() -> None:
    who = mover()
    at = Placed(mover=who, at=Point(x_m=0.0, y_m=-2.4))
    aside, ahead, up = (np.array([each]) for each in (0.7, -2.35, 0.95))
    moved = move_time_s(at, aside, ahead, up, volleyed=np.array([True]))
    assert pytest.approx(who.reaction_s + float(moved[0]), abs=0.01) == PADDLE_THERE_S


def test_a_plain_drop_is_the_neutral_chance_of_a_serving_rally() -> None:
    """44 in 100 (common practice: the receivers win 56 at the higher levels)."""
    assert plain_chance(1.0) == pytest.approx(0.44, abs=0.015)
    assert PLAIN.chance(Shot.DROP, 1.0) == plain_chance(1.0)


def test_our_level_makes_every_shot_wilder_and_the_plain_drop_with_it() -> None:
    factors = [our_scatter(None, Trait.LOB, level).factor for level in Level]
    assert factors == sorted(factors, reverse=True)
    worths = [plain_chance(each) for each in factors]
    assert worths == sorted(worths)


@pytest.mark.parametrize(
    ("met", "said"),
    [
        (Met(height_m=0.5, from_net_m=6.7), "Knee high at the baseline"),
        (Met(height_m=1.5, from_net_m=8.3), "Shoulder high 5 ft behind"),
        (Met(from_net_m=4.3), "8 ft inside"),
        (Met(height_m=0.95), "Hip high"),
        (Met(deep=True, low=True), "Deep and low"),
        (Met(quality=BallQuality.STRETCHED), "Stretched"),
        (Met(), "Plain return"),
    ],
)
def test_the_ball_is_named_as_it_was_told(met: Met, said: str) -> None:
    assert met_words(met) == said


def test_what_is_told_is_kept_and_the_rest_assumed() -> None:
    told = contact_of(Met(height_m=1.0, deep=True))
    assert told.height_m == 1.0
    assert contact_words(told) == "waist high at the baseline"
    assert contact_of(Met(short=True)).from_net_m < contact_of(Met()).from_net_m
    assert contact_of(Met(low=True)).height_m < contact_of(Met()).height_m


def test_a_reason_with_its_chance_fits_a_line() -> None:
    longest = max(
        (
            f"{met_words(Met(height_m=height, from_net_m=away))}: 9 of 10 drives work"
            for height in (0.1, 0.5, 0.7, 0.95, 1.05, 1.3, 1.5)
            for away in (4.0, 6.7, 8.3)
        ),
        key=len,
    )
    assert len(longest) <= 50


def test_wind_from_behind_is_positive_and_ten_miles_an_hour_unless_told() -> None:
    assert wind_along_mps(Wind.BEHIND_US, None) == pytest.approx(4.4704)
    assert wind_along_mps(Wind.AGAINST_US, 2.0) == -2.0
    assert wind_along_mps(Wind.ACROSS, 5.0) == wind_along_mps(None, 5.0) == 0.0


def test_no_flight_is_integrated_in_a_turn(monkeypatch: pytest.MonkeyPatch) -> None:
    """Tables only; the picture's flights are worked out when it is drawn."""

    def never(*_args: object, **_more: object) -> None:
        raise AssertionError("a ball was integrated in a turn")

    monkeypatch.setattr(integrate, "_stepped", never)
    for words in ("deep return", "short return sits up", "he is still running in", "lob them?"):
        asked = Asked(words=words, facts=BallFacts(height_m=0.731))
        advice = advise(Situation(topic=Topic.THIRD_SHOT, asked=asked))
        assert isinstance(advice.picture, SideView)
        with pytest.raises(AssertionError):
            flown(advice.picture)


def test_numbers_carry_the_success_of_every_option_at_full_precision() -> None:
    facts = BallFacts(height_m=0.5, from_net_m=6.7)
    advice = advise(Situation(topic=Topic.THIRD_SHOT, asked=Asked(facts=facts, words="drop")))
    for word, shot in SHOTS.items():
        aim = DEEP.aimed(shot, USUAL)
        assert advice.numbers[f"{word}_in_play"] == aim.legal
        assert advice.numbers[f"{word}_works"] == aim.meant
