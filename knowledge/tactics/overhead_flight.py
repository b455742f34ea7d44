"""A ball hit down: where it passes, when it is there, and how often our scatter keeps it in.

The flight is `knowledge.flight.FlatFire`, without spin: exact for a level shot and a few
centimetres off for the steepest smash. Window and scatter are in closed form here: the package's
window integrates hundreds of launches, and its tables hold one scatter, not one for each footing.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from knowledge.court import HALF_WIDTH_M, Point, lane_in_court_m, net_crossing_x_m, net_height_m
from knowledge.flight import FlatFire
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.normal import normal_cdf
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
    aim = aim_deg(shot)
    stays = normal_cdf((lands - aim) / scatter.up_deg) - normal_cdf((clears - aim) / scatter.up_deg)
    sideways_m = shot.lane_m * math.radians(scatter.across_deg) * _slant(shot)
    wide = normal_cdf(-(HALF_WIDTH_M - abs(shot.target.x_m)) / sideways_m)
    return 1 - stays * (1 - wide)


def aim_deg(shot: Shot) -> float:
    """The launch angle that lands on the target, or one with room over the net if that is more."""
    clears, lands = window_deg(shot)
    on_target = angle_through_deg(shot, shot.lane_m, BALL_RADIUS_M)
    return max(on_target, min(clears + NET_ROOM_DEG, (clears + lands) / 2))


def _slant(shot: Shot) -> float:
    """How much a sideways error along a slanted lane grows across the court."""
    return shot.lane_m / (shot.target.y_m - shot.contact.y_m)


@dataclass(frozen=True, slots=True, kw_only=True)
class BallAt:
    """The ball at a moment after it passed the net."""

    time_s: float
    place: Point
    height_m: float


def struck(shot: Shot) -> tuple[FlatFire, float]:
    """The ball as it is aimed, and the slope it starts with."""
    angle = math.radians(aim_deg(shot))
    return fired(shot, angle), math.tan(angle)


def _landing_m(ball: FlatFire, slope: float, low: float, high: float) -> float:
    """How far along the lane it comes down, by bisection: at the target or, lifted, beyond."""
    for _ in range(40):
        middle = (low + high) / 2
        is_up = ball.height_at_m(middle, slope) > BALL_RADIUS_M
        low, high = (middle, high) if is_up else (low, middle)
    return high


def ball_at(shot: Shot, samples: int = 12) -> tuple[BallAt, ...]:
    """The ball from the net to its second bounce, in even steps before and after the first.

    After the bounce drag is left out: the ball is slow and the way short.
    """
    ball, slope = struck(shot)
    net = shot.along_m(0.0)
    landing = _landing_m(ball, slope, net, 3 * shot.lane_m)
    before = [net + (landing - net) * part / samples for part in range(1, samples + 1)]
    found = [_point(shot, x, ball.time_s(x), ball.height_at_m(x, slope)) for x in before]
    bounce_s = found[-1].time_s
    step = 1e-3
    step_s = bounce_s - ball.time_s(landing - step)
    down_mps = (ball.height_at_m(landing - step, slope) - found[-1].height_m) / step_s
    up_mps = BOUNCE_RESTITUTION * down_mps
    along_mps = BOUNCE_KEEPS * step / step_s
    aloft_s = 2 * up_mps / GRAVITY_MPS2
    for part in range(1, samples + 1):
        since = aloft_s * part / samples
        height = up_mps * since - GRAVITY_MPS2 * since**2 / 2
        found.append(_point(shot, landing + along_mps * since, bounce_s + since, height))
    return tuple(found)


def _point(shot: Shot, x_m: float, time_s: float, height_m: float) -> BallAt:
    share = x_m / shot.lane_m
    return BallAt(
        time_s=time_s,
        place=Point(
            x_m=shot.contact.x_m + share * (shot.target.x_m - shot.contact.x_m),
            y_m=shot.contact.y_m + share * (shot.target.y_m - shot.contact.y_m),
        ),
        height_m=height_m,
    )
