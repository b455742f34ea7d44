"""A ball hit down: where it passes, when it is there, and how often our scatter keeps it in.

The flight is `knowledge.flight.FlatFire`, without spin: exact for a level shot and a few
centimetres off for the steepest smash. Window and scatter are in closed form here: the package's
window integrates hundreds of launches, and its tables hold one scatter, not one for each footing.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from knowledge.court import HALF_WIDTH_M, Point, lane_in_court_m, net_crossing_x_m, net_height_m
from knowledge.dataclass import dataclass
from knowledge.flight import FlatFire
from knowledge.flight.launch import Floats
from knowledge.normal import normal_cdf
from knowledge.tactics.ball_courses import Rebound
from knowledge.wind import BALL_RADIUS_M

BOUNCE_RESTITUTION: Final = 0.60
"""Of the vertical speed: 0.64 from the drop test (2025 edition, equipment), less when fast."""

BOUNCE_KEEPS: Final = 0.60
"""Of the speed along the ground, for a thin shell that grips (computed from its inertia)."""

NET_ROOM_DEG: Final = 3.5
"""An aim lower than this over the net is lifted, to land deeper. Common practice, no source."""

STEPS: Final = 8
"""Rounds of the fixed point for the launch angle: it settles to a millionth by then."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """Where we meet the ball, how hard we hit it, and where it is meant to land."""

    contact: Point
    height_m: float
    speed_mps: float
    target: Point

    @property
    def lane_m(self) -> float:
        return self.contact.distance_m(self.target)

    def along_m(self, y_m: float) -> float:
        """How far along the lane a line across the court lies."""
        return self.lane_m * (y_m - self.contact.y_m) / (self.target.y_m - self.contact.y_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Standard deviations of our aim, up and down and sideways."""

    up_deg: float
    across_deg: float

    def times(self, factor: float) -> Scatter:
        return Scatter(up_deg=factor * self.up_deg, across_deg=factor * self.across_deg)


def angle_through_deg(shot: Shot, x_m: float, z_m: float) -> float:
    """The launch angle above level at which the ball passes a height at a distance."""
    angle = 0.0
    for _ in range(STEPS):
        angle = math.atan(fired(shot, angle).slope_through(x_m, z_m))
    return math.degrees(angle)


def fired(shot: Shot, angle: float) -> FlatFire:
    """The ball as it leaves the paddle at an angle above level, in radians."""
    return FlatFire(height_m=shot.height_m, speed_mps=shot.speed_mps * math.cos(angle))


def window_deg(shot: Shot) -> tuple[float, float]:
    """The lowest angle that clears the net, and the highest that lands in along the lane."""
    net = net_height_m(net_crossing_x_m(shot.contact, shot.target)) + BALL_RADIUS_M
    clears = angle_through_deg(shot, shot.along_m(0.0), net)
    in_court = lane_in_court_m(shot.contact, shot.target)
    lands = angle_through_deg(shot, shot.along_m(0.0) + in_court, BALL_RADIUS_M)
    return clears, lands


def misses(shot: Shot, scatter: Scatter) -> float:
    """The chance that it ends in the net, long or wide.

    1. the window of angles; 2. our aim in it: at the target, but with room over the net;
    3. a normal scatter round the aim, up and down and sideways.
    """
    clears, lands = window_deg(shot)
    if clears >= lands:
        return 1.0
    aim = _aimed_deg(shot, clears, lands)
    stays = normal_cdf((lands - aim) / scatter.up_deg) - normal_cdf((clears - aim) / scatter.up_deg)
    sideways_m = shot.lane_m * math.radians(scatter.across_deg) * _slant(shot)
    wide = normal_cdf(-(HALF_WIDTH_M - abs(shot.target.x_m)) / sideways_m)
    return 1 - stays * (1 - wide)


def aim_deg(shot: Shot) -> float:
    """The launch angle that lands on the target, or one with room over the net if that is more."""
    return _aimed_deg(shot, *window_deg(shot))


def _aimed_deg(shot: Shot, clears: float, lands: float) -> float:
    on_target = angle_through_deg(shot, shot.lane_m, BALL_RADIUS_M)
    return max(on_target, min(clears + NET_ROOM_DEG, (clears + lands) / 2))


def _slant(shot: Shot) -> float:
    """How much a sideways error along a slanted lane grows across the court."""
    return shot.lane_m / (shot.target.y_m - shot.contact.y_m)


def struck(shot: Shot) -> tuple[FlatFire, float]:
    """The ball as it is aimed, and the slope it starts with."""
    angle = math.radians(aim_deg(shot))
    return fired(shot, angle), math.tan(angle)


@dataclass(frozen=True, slots=True, kw_only=True)
class HitDown:
    """The leg of an overhead from the net to its first bounce."""

    shot: Shot
    ball: FlatFire
    slope: float
    start_s: float
    end_s: float

    @property
    def bounces(self) -> int:
        return 0

    def points(self, times_s: Floats) -> Floats:
        way = self.ball.way_m(times_s)
        share = way / self.shot.lane_m
        contact, target = self.shot.contact, self.shot.target
        x_m = contact.x_m + share * (target.x_m - contact.x_m)
        y_m = contact.y_m + share * (target.y_m - contact.y_m)
        return np.stack((x_m, y_m, self.ball.heights_m(way, self.slope)), axis=-1)


def course(shot: Shot) -> tuple[HitDown, Rebound]:
    """The ball from the net to its second bounce."""
    ball, slope = struck(shot)
    net = shot.along_m(0.0)
    landing = _landing_m(ball, slope, net, 3 * shot.lane_m)
    down = HitDown(
        shot=shot, ball=ball, slope=slope, start_s=ball.time_s(net), end_s=ball.time_s(landing)
    )
    return down, _rebound(down, landing)


def _landing_m(ball: FlatFire, slope: float, low: float, high: float) -> float:
    """How far along the lane it comes down, by bisection: at the target or, lifted, beyond."""
    for _ in range(40):
        middle = (low + high) / 2
        is_up = ball.height_at_m(middle, slope) > BALL_RADIUS_M
        low, high = (middle, high) if is_up else (low, middle)
    return high


def _rebound(down: HitDown, landing_m: float) -> Rebound:
    """How it comes up: the speeds just before the bounce, less what the court takes."""
    step_m = 1e-3
    ball, shot = down.ball, down.shot
    step_s = down.end_s - ball.time_s(landing_m - step_m)
    last = ball.height_at_m(landing_m, down.slope)
    down_mps = (ball.height_at_m(landing_m - step_m, down.slope) - last) / step_s
    along_mps = BOUNCE_KEEPS * step_m / step_s / shot.lane_m
    x_m, y_m, _ = (float(each) for each in down.points(np.array(down.end_s)))
    return Rebound(
        start_s=down.end_s,
        place=Point(x_m=x_m, y_m=y_m),
        across_mps=along_mps * (shot.target.x_m - shot.contact.x_m),
        along_mps=along_mps * (shot.target.y_m - shot.contact.y_m),
        up_mps=BOUNCE_RESTITUTION * down_mps,
    )
