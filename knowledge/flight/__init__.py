"""The ball's flight: drag, spin, wind and bounce, many launches at once.

Coordinates are those of `knowledge.court`. Pure: numbers in, numbers out.
"""

from knowledge.flight.ball import (
    DEFAULT_LIFT,
    HIGH_LIFT,
    INDOOR,
    LOW_LIFT,
    MPS_PER_MPH,
    OUTDOOR,
    Ball,
)
from knowledge.flight.bounce import bounced
from knowledge.flight.crossing import Crossing, at_distance, landing, net_clearance_m, top_m
from knowledge.flight.integrate import Track, fly
from knowledge.flight.launch import STILL_AIR, Launch, Moving, Vector, azimuth_deg, moving
from knowledge.flight.path import BallPath, path

__all__ = [
    "DEFAULT_LIFT",
    "HIGH_LIFT",
    "INDOOR",
    "LOW_LIFT",
    "MPS_PER_MPH",
    "OUTDOOR",
    "STILL_AIR",
    "Ball",
    "BallPath",
    "Crossing",
    "Launch",
    "Moving",
    "Track",
    "Vector",
    "at_distance",
    "azimuth_deg",
    "bounced",
    "fly",
    "landing",
    "moving",
    "net_clearance_m",
    "path",
    "top_m",
]
