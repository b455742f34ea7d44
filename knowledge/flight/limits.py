"""The two angles that bound a ball hit low and hard: just over the net, and just in.

Below the lower one it is in the net, above the higher one it flies out; where the lower one is
above the higher one, that pace cannot be kept in from there. Both are smooth in height, distance,
pace, spin and wind, so tables of them can be read between their cells.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, KITCHEN_DEPTH_M, Lane, lane_ends
from knowledge.dataclass import dataclass
from knowledge.flight.ball import OUTDOOR, Ball
from knowledge.flight.crossing import air_over_net_m, at_distance, landing
from knowledge.flight.integrate import STEP_S, Track, fly
from knowledge.flight.launch import Floats, azimuth_deg, moving

ELEVATIONS_DEG: Final = np.arange(-60.0, 45.1, 1.5)
"""Angles tried; limits lie between them on the straight line of what is measured."""

NOT_OVER_DEG: Final = 60.0
"""Stands for the lowest angle where no angle tried clears the net."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """Per pace: the angles that bound it, and how high the ball that lands on the line is when it
    crosses the receivers' kitchen line. If the ball cannot fly out at all, `highest_deg` is the
    last angle tried and the height infinite; if it cannot clear the net, `lowest_deg` is
    NOT_OVER_DEG, and if it clears it however steeply down, the first angle tried.
    """

    lowest_deg: Floats
    highest_deg: Floats
    leave_m: Floats


def limits(
    *,
    height_m: float,
    from_net_m: float,
    speeds_mps: Floats,
    topspin_rpm: float = 0.0,
    wind_mps: float = 0.0,
    lane: Lane = Lane.LINE,
    ball: Ball = OUTDOOR,
    step_s: float = STEP_S,
) -> Limits:
    """The limits from one contact point; the wind blows along the court, positive from behind."""
    start, target = lane_ends(lane, from_net_m=from_net_m, depth_m=HALF_LENGTH_M)
    launches = moving(
        x_m=start.x_m,
        y_m=start.y_m,
        z_m=height_m,
        speed_mps=speeds_mps[:, np.newaxis],
        elevation_deg=ELEVATIONS_DEG[np.newaxis],
        azimuth_deg=azimuth_deg(start, target),
        topspin_rpm=topspin_rpm,
    )
    track = fly(launches, ball=ball, wind_mps=(0.0, wind_mps, 0.0), step_s=step_s)
    shape = (len(speeds_mps), len(ELEVATIONS_DEG))
    over, beyond = _over_the_net(track).reshape(shape), _beyond_the_line(track).reshape(shape)
    at_line = at_distance(track, KITCHEN_DEPTH_M).places[2].reshape(shape)
    angles = np.broadcast_to(ELEVATIONS_DEG, shape)
    lowest = np.where(over[:, 0] >= 0, ELEVATIONS_DEG[0], _where_it_turns(over, angles))
    highest, leave = _where_it_turns(beyond, angles), _where_it_turns(beyond, at_line)
    never = np.isnan(highest)
    return Limits(
        lowest_deg=np.where(np.isnan(lowest), NOT_OVER_DEG, lowest),
        highest_deg=np.where(never, ELEVATIONS_DEG[-1], highest),
        leave_m=np.where(never, np.inf, leave),
    )


def _over_the_net(track: Track) -> Floats:
    """Air over the tape; a track that would pass below the ground counts as it runs on there."""
    gap = air_over_net_m(at_distance(track, 0.0), track.ball)
    found: Floats = np.where(np.isnan(gap), -np.inf, gap)
    return found


def _beyond_the_line(track: Track) -> Floats:
    """How far out it lands, behind the baseline or beside the sideline, whichever is more."""
    landed = landing(track).places
    found: Floats = np.fmax(landed[1] - HALF_LENGTH_M, np.abs(landed[0]) - HALF_WIDTH_M)
    return found


def _where_it_turns(signed: Floats, values: Floats) -> Floats:
    """`values` where each row of `signed` first goes from below 0 to 0 or above; NaN if never."""
    turns = (signed[:, :-1] < 0) & (signed[:, 1:] >= 0)
    at, rows = np.argmax(turns, axis=1), np.arange(len(signed))
    before, after = signed[rows, at], signed[rows, at + 1]
    with np.errstate(invalid="ignore", divide="ignore"):
        part = np.where(np.isfinite(before), before / (before - after), 1.0)
        between = values[rows, at] * (1 - part) + values[rows, at + 1] * part
    found: Floats = np.where(turns[rows, at], between, np.nan)
    return found
