"""How far one comes in behind a third before they hit it, and how far the line is.

The ball's time over the ground from knowledge.flight, as if it flew level; the run from
knowledge.reach.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.flight import level_time_s
from knowledge.reach import Feet
from knowledge.sources import computed
from knowledge.wind import TYPICAL, Stroke

MET_BEHIND_NET_M: Final = KITCHEN_DEPTH_M + 0.3
"""Where a pair at the line meets it."""

FOLLOW_THROUGH_S: Final = 0.3
"""From our contact to the first step in. Common practice, no source."""

RUN_IN = computed("run in against the ball's time of flight")


def flight_s(stroke: Stroke, from_net_m: float = HALF_LENGTH_M) -> float:
    """From our contact there until they meet a typical one at their line."""
    return over_ground_s(stroke, from_net_m + MET_BEHIND_NET_M)


def over_ground_s(stroke: Stroke, way_m: float) -> float:
    """A typical one's time over this way, slowed by drag alone; a bounce makes it a bit longer."""
    launch = TYPICAL[stroke]
    forward_mps = launch.speed_mps * math.cos(math.radians(launch.angle_deg))
    return float(level_time_s(np.array(way_m), forward_mps))


def run_in_m(stroke: Stroke, feet: Feet, from_net_m: float = HALF_LENGTH_M) -> float:
    """How far forward from there before they hit; never past the line."""
    run_m = feet.ahead_m(np.array([flight_s(stroke, from_net_m) - FOLLOW_THROUGH_S]))
    return min(float(run_m[0]), to_the_line_m(from_net_m))


def to_the_line_m(from_net_m: float) -> float:
    """How far the place to stand at the line is from there."""
    return max(0.0, from_net_m - MET_BEHIND_NET_M)
