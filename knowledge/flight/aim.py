"""The best aim of a shot: pace and elevation that most often do what is meant."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from knowledge.court import KITCHEN_DEPTH_M, Lane, lane_ends
from knowledge.dataclass import dataclass
from knowledge.flight.ball import OUTDOOR, Ball
from knowledge.flight.bounce import bounced
from knowledge.flight.crossing import at_distance, landing, net_clearance_m, top_m
from knowledge.flight.integrate import fly
from knowledge.flight.launch import Floats, Launch
from knowledge.flight.scatter import chances
from knowledge.flight.shots import FORMS, Shot, ShotForm
from knowledge.flight.window import Window, size, window

SPREADS_BEYOND: Final = 5.0
"""How far, in usual standard deviations, a grid goes on beyond the aims it is asked for."""

SPEED_CELLS: Final = 60
ANGLE_STEP_DEG: Final = 0.75
AIMS: Final = 21


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """The launch aimed at and how it goes: chances to be in play and to do what is meant.

    The rest is what the aim itself does: air over the net, where and when it lands, height and
    speed at their kitchen line (0 if it bounces before), the top of its bounce. `window_size` is
    that of all legal launches, in metres a second times degrees.
    """

    speed_mps: float
    elevation_deg: float
    legal: float
    meant: float
    clearance_m: float
    depth_m: float
    landing_s: float
    at_line_m: float
    at_line_mps: float
    bounce_m: float
    window_size: float


def shot_window(
    shot: Shot,
    *,
    height_m: float,
    from_net_m: float,
    lane: Lane,
    wind_mps: float = 0.0,
    ball: Ball = OUTDOOR,
) -> Window:
    """The window of a shot; `wind_mps` blows along the court, from behind us if positive."""
    form = FORMS[shot]
    near, far = form.meant.depth_m
    start, target = lane_ends(lane, from_net_m=from_net_m, depth_m=(near + far) / 2)
    return window(
        start,
        target,
        height_m=height_m,
        speeds_mps=_speeds(form),
        elevations_deg=_elevations(form),
        topspin_rpm=form.topspin_rpm,
        ball=ball,
        wind_mps=(0.0, wind_mps, 0.0),
    )


def times_wider_across(
    shot: Shot, *, height_m: float, from_net_m: float, wind_mps: float = 0.0
) -> float:
    """How much larger the window of what is meant is cross-court than down the line.

    Integrates two windows, so not for inside a turn, where `usual_aim` tells the chances by lane.
    """
    line, cross = (
        size(
            shot_window(
                shot, height_m=height_m, from_net_m=from_net_m, lane=lane, wind_mps=wind_mps
            ),
            FORMS[shot].meant,
        )
        for lane in (Lane.LINE, Lane.CROSS)
    )
    return cross / line if line else math.inf


def best_aim(
    shot: Shot, shown: Window, *, factor: float = 1.0, wind_mps: float = 0.0, ball: Ball = OUTDOOR
) -> Aim:
    """The aim for a player whose scatter is `factor` times the usual.

    Being in play and doing what is meant count alike. The wind is the window's: it is known and
    aimed for.
    """
    form = FORMS[shot]
    scatter = form.scatter.times(factor)
    speeds = np.linspace(*form.speeds_mps, AIMS)
    angles = np.arange(*form.elevations_deg, ANGLE_STEP_DEG)
    legal, meant = (
        chances(shown, intent, scatter, speeds_mps=speeds, elevations_deg=angles)
        for intent in (form.legal, form.meant)
    )
    row, column = np.unravel_index(np.argmax(legal + meant), legal.shape)
    launch = shown.launch(float(speeds[row]), float(angles[column]))
    return Aim(
        speed_mps=launch.speed_mps,
        elevation_deg=launch.elevation_deg,
        legal=float(legal[row, column]),
        meant=float(meant[row, column]),
        window_size=size(shown, form.legal),
        **_flown(launch, ball, wind_mps),
    )


def _flown(launch: Launch, ball: Ball, wind_mps: float) -> dict[str, float]:
    """What one launch does, by the names of `Aim`."""
    wind = (0.0, wind_mps, 0.0)
    track = fly(launch.moving(), ball=ball, wind_mps=wind)
    landed, line = landing(track), at_distance(track, KITCHEN_DEPTH_M)
    arrives = bool(line.times_s[0] < landed.times_s[0])
    after = fly(bounced(landed, track.spins, ball), ball=ball, wind_mps=wind)
    return {
        "clearance_m": float(net_clearance_m(track, landed)[0]),
        "depth_m": float(landed.places[1, 0]),
        "landing_s": float(landed.times_s[0]),
        "at_line_m": float(line.places[2, 0]) if arrives else 0.0,
        "at_line_mps": float(line.speeds_mps[0]) if arrives else 0.0,
        "bounce_m": float(top_m(after)[0]),
    }


def _speeds(form: ShotForm) -> Floats:
    low, high = form.speeds_mps
    beyond = SPREADS_BEYOND * form.scatter.speed_share
    return np.linspace(low * (1 - beyond), high * (1 + beyond), SPEED_CELLS)


def _elevations(form: ShotForm) -> Floats:
    low, high = form.elevations_deg
    beyond = SPREADS_BEYOND * form.scatter.elevation_deg
    return np.arange(low - beyond, high + beyond, ANGLE_STEP_DEG)
