"""Wind and the ball: how far a said wind moves the landing point of a typical stroke.

The flight is that of `knowledge.flight`, without spin; it knows neither gusts nor the lee of a
fence. `shift` tells a typical stroke's landing, `landing` any stroke's, `at_court` the wind itself.
"""

from __future__ import annotations

import math
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import Final

from knowledge import flight
from knowledge.court import METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.flight import MPS_PER_MPH, OUTDOOR, Ball

MPH_MPS: Final = MPS_PER_MPH

DRAG_PER_M: Final = OUTDOOR.drag_per_m
BALL_RADIUS_M: Final = OUTDOOR.radius_m
"""The ball lands when its centre is this high."""

NOBODY_PLAYS_MPH: Final = 75.0
"""From here on it is a hurricane (Beaufort scale, from memory)."""

STEP_S: Final = 0.02

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
        return self.along_m / METRES_PER_FOOT

    @property
    def across_ft(self) -> float:
        return self.across_m / METRES_PER_FOOT


def landing(
    launch: Launch,
    *,
    wind_mps: Vector = STILL,
    ball: Ball = OUTDOOR,
    step_s: float = STEP_S,
) -> Landing:
    """Where a ball comes down; ValueError if it is still up after the longest of flights."""
    along, across, up = wind_mps
    struck = flight.Launch(
        y_m=0.0, z_m=launch.height_m, speed_mps=launch.speed_mps, elevation_deg=launch.angle_deg
    )
    track = flight.fly(struck.moving(), ball=ball, wind_mps=(across, along, up), step_s=step_s)
    down = flight.landing(track)
    time_s = float(down.times_s[0])
    if math.isnan(time_s):
        raise ValueError(f"still up: {launch}")
    x_m, y_m, _ = down.places[:, 0]
    return Landing(along_m=float(y_m), across_m=float(x_m), time_s=time_s)


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
