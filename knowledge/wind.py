"""Wind and the ball: how far a said wind moves the landing point of a typical stroke.

A point mass without spin in drag of the square of its speed through the air,
a = -k |v - w| (v - w) - g, stepped by Runge and Kutta's classical fourth-order method. It knows
neither spin nor gusts nor the lee of a fence. Small and alone, so that a fuller model of flight
can take its place: `shift` and `at_court` are all that others use.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import Final

FOOT_M: Final = 0.3048
MPH_MPS: Final = 0.44704

DRAG_PER_M: Final = 0.0352
"""k = air density x area x drag coefficient / 2 mass, for an outdoor ball (24.3 g, 74.2 mm,
coefficient 0.33) in air of 1.20 kg/m3. Coefficient: Lindsey 2025, second-hand; k computed."""

GRAVITY_MPS2: Final = 9.81
BALL_RADIUS_M: Final = 0.037
"""Half the model ball's diameter: it lands when its centre is this high."""

STEP_S: Final = 0.02
LONGEST_FLIGHT_S: Final = 10.0

Vector = tuple[float, float, float]
"""Along the court (away from us), across it (to our right), up: metres or metres a second."""

STILL: Final[Vector] = (0.0, 0.0, 0.0)


class Stroke(StrEnum):
    """The strokes whose typical flight is assumed; the values are the trade's words."""

    SERVE = "serve"
    RETURN = "return"
    HIGH_RETURN = "high return"
    DROP = "drop"
    DRIVE = "drive"
    DINK = "dink"
    LOB = "lob"
    OVERHEAD = "overhead"


@dataclass(frozen=True, slots=True, kw_only=True)
class Launch:
    """How a ball leaves the paddle: speed, angle above level, height; where it is struck."""

    speed_mps: float
    angle_deg: float
    height_m: float
    from_net_m: float

    def velocity(self) -> Vector:
        angle = math.radians(self.angle_deg)
        return (self.speed_mps * math.cos(angle), 0.0, self.speed_mps * math.sin(angle))


TYPICAL: Final = MappingProxyType(
    {
        Stroke.SERVE: Launch(speed_mps=16.5, angle_deg=15, height_m=0.7, from_net_m=6.71),
        Stroke.RETURN: Launch(speed_mps=17.6, angle_deg=12, height_m=0.8, from_net_m=6.71),
        Stroke.HIGH_RETURN: Launch(speed_mps=13.8, angle_deg=25, height_m=0.8, from_net_m=6.71),
        Stroke.DROP: Launch(speed_mps=11.4, angle_deg=22.5, height_m=0.55, from_net_m=6.71),
        Stroke.DRIVE: Launch(speed_mps=20.5, angle_deg=7, height_m=0.85, from_net_m=6.71),
        Stroke.DINK: Launch(speed_mps=4.4, angle_deg=50, height_m=0.5, from_net_m=1.2),
        Stroke.LOB: Launch(speed_mps=12.5, angle_deg=60, height_m=0.5, from_net_m=4.0),
        Stroke.OVERHEAD: Launch(speed_mps=23.0, angle_deg=-8, height_m=2.3, from_net_m=3.5),
    }
)
"""What each stroke is taken to be. Drop: inside the range of Steyn et al. (arXiv 2501.00163).
Speeds of the others within ranges from memory (drive 35 to 55 mph, overhead 35 to 60, lob 20 to
30, return 25 to 40, dink under 10); angles and heights chosen so that each clears the net and
lands in, over the middle in still air: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Landing:
    """Where and when a ball comes down, from where it was struck."""

    along_m: float
    across_m: float
    time_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """How far the wind moves a landing point: farther from us, and to our right, in metres."""

    along_m: float
    across_m: float

    @property
    def along_ft(self) -> float:
        return self.along_m / FOOT_M

    @property
    def across_ft(self) -> float:
        return self.across_m / FOOT_M


@dataclass(frozen=True, slots=True)
class _Ball:
    place: Vector
    velocity: Vector


def landing(
    launch: Launch,
    *,
    wind_mps: Vector = STILL,
    drag_per_m: float = DRAG_PER_M,
    step_s: float = STEP_S,
) -> Landing:
    """Where a ball comes down; ValueError if it is still up after LONGEST_FLIGHT_S.

    1. whole steps until the centre is below the radius; 2. the part of the last step at which it
    is there, by bisection.
    """
    ball = _Ball((0.0, 0.0, launch.height_m), launch.velocity())
    time_s = 0.0
    while time_s < LONGEST_FLIGHT_S:
        after = _stepped(ball, wind_mps, drag_per_m, step_s)
        if after.place[2] <= BALL_RADIUS_M and after.velocity[2] < 0:
            return _touching(ball, time_s, wind_mps, drag_per_m, step_s)
        ball, time_s = after, time_s + step_s
    raise ValueError(f"still up after {LONGEST_FLIGHT_S:g} s: {launch}")


def _touching(
    ball: _Ball, time_s: float, wind_mps: Vector, drag_per_m: float, step_s: float
) -> Landing:
    low, high = 0.0, step_s
    for _ in range(30):
        middle = (low + high) / 2
        is_up = _stepped(ball, wind_mps, drag_per_m, middle).place[2] > BALL_RADIUS_M
        low, high = (middle, high) if is_up else (low, middle)
    along, across, _up = _stepped(ball, wind_mps, drag_per_m, high).place
    return Landing(along_m=along, across_m=across, time_s=time_s + high)


def _stepped(ball: _Ball, wind_mps: Vector, drag_per_m: float, step_s: float) -> _Ball:
    """One step of the classical Runge-Kutta method."""
    v1 = ball.velocity
    a1 = _acceleration(v1, wind_mps, drag_per_m)
    v2 = _moved(v1, a1, step_s / 2)
    a2 = _acceleration(v2, wind_mps, drag_per_m)
    v3 = _moved(v1, a2, step_s / 2)
    a3 = _acceleration(v3, wind_mps, drag_per_m)
    v4 = _moved(v1, a3, step_s)
    a4 = _acceleration(v4, wind_mps, drag_per_m)
    return _Ball(
        _moved(ball.place, _mean(v1, v2, v3, v4), step_s),
        _moved(v1, _mean(a1, a2, a3, a4), step_s),
    )


def _acceleration(velocity: Vector, wind_mps: Vector, drag_per_m: float) -> Vector:
    x, y, z = (v - w for v, w in zip(velocity, wind_mps, strict=True))
    slowing = -drag_per_m * math.sqrt(x * x + y * y + z * z)
    return (slowing * x, slowing * y, slowing * z - GRAVITY_MPS2)


def _moved(start: Vector, rate: Vector, by: float) -> Vector:
    return (start[0] + by * rate[0], start[1] + by * rate[1], start[2] + by * rate[2])


def _mean(one: Vector, two: Vector, three: Vector, four: Vector) -> Vector:
    x, y, z = (
        (a + 2 * b + 2 * c + d) / 6 for a, b, c, d in zip(one, two, three, four, strict=True)
    )
    return (x, y, z)


@cache
def shift(stroke: Stroke, *, along_mph: float = 0.0, across_mph: float = 0.0) -> Shift:
    """How far a wind at ball height moves a typical stroke that is struck as in still air.

    `along_mph` blows from behind us (negative: in our faces), `across_mph` to our right.
    """
    launch = TYPICAL[stroke]
    still = landing(launch)
    blown = landing(launch, wind_mps=(along_mph * MPH_MPS, across_mph * MPH_MPS, 0.0))
    return Shift(along_m=blown.along_m - still.along_m, across_m=blown.across_m - still.across_m)


FORECAST_HEIGHT_M: Final = 10.0
BALL_HEIGHT_M: Final = 2.0
ROUGHNESS_M: Final = 0.03
"""Flat, open grassland (log wind profile, as in textbooks of the surface layer; read). Fences,
trees and houses take off more."""


def at_court(forecast_mph: float) -> float:
    """The wind where the ball flies when a forecast, made for 10 m up, says this much.

    Logarithmic profile in neutral air: ln(z / z0) / ln(10 m / z0).
    """
    part = math.log(BALL_HEIGHT_M / ROUGHNESS_M) / math.log(FORECAST_HEIGHT_M / ROUGHNESS_M)
    return forecast_mph * part
