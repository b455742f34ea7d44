"""The window of a shot: which speeds and angles from one contact point do what is meant.

A window is a grid, speeds by elevations, of what every launch would do: air over the net, place
and time of landing, height and speed at their kitchen line. Asking it for an intent is then a
comparison. Everything is hit from our half into theirs; a ball at us is the same turned round.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, KITCHEN_DEPTH_M, Point
from knowledge.dataclass import dataclass
from knowledge.flight.ball import OUTDOOR, Ball
from knowledge.flight.crossing import at_distance, landing, net_clearance_m
from knowledge.flight.integrate import STEP_S, fly
from knowledge.flight.launch import STILL_AIR, Floats, Launch, Vector, azimuth_deg, moving

Bools = NDArray[np.bool_]
WHOLE_WIDTH: Final = (-HALF_WIDTH_M, HALF_WIDTH_M)


@dataclass(frozen=True, slots=True, kw_only=True)
class Intent:
    """What a ball is meant to do; the defaults are a legal ball in play.

    `net_margin_m` is air between tape and ball. `depth_m` is the band of landing behind the net,
    `aside_m` the band across. `at_line_m` is the band of heights at their kitchen line; a ball
    that bounces before it counts as 0 high there.
    """

    net_margin_m: float = 0.0
    depth_m: tuple[float, float] = (0.0, HALF_LENGTH_M)
    aside_m: tuple[float, float] = WHOLE_WIDTH
    at_line_m: tuple[float, float] = (0.0, math.inf)


LEGAL: Final = Intent()


def on_target(target: Point, *, within_m: float, net_margin_m: float = 0.0) -> Intent:
    """Landing within so much of a target, both ways, and in the court."""
    low, high = target.y_m - within_m, target.y_m + within_m
    left, right = target.x_m - within_m, target.x_m + within_m
    return Intent(
        net_margin_m=net_margin_m,
        depth_m=(max(0.0, low), min(HALF_LENGTH_M, high)),
        aside_m=(max(-HALF_WIDTH_M, left), min(HALF_WIDTH_M, right)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """What launches from one point in one direction do: arrays (speeds, elevations).

    Where a ball does not get there, clearance is minus infinity and the rest NaN. `net_slope` is
    how steeply it rises or falls over the net, `net_aside_m` where along it.
    """

    start: Point
    height_m: float
    azimuth_deg: float
    topspin_rpm: float
    speeds_mps: Floats
    elevations_deg: Floats
    clearance_m: Floats
    net_aside_m: Floats
    net_slope: Floats
    aside_m: Floats
    depth_m: Floats
    landing_s: Floats
    at_line_m: Floats

    def launch(self, speed_mps: float, elevation_deg: float) -> Launch:
        return Launch(
            x_m=self.start.x_m,
            y_m=self.start.y_m,
            z_m=self.height_m,
            speed_mps=speed_mps,
            elevation_deg=elevation_deg,
            azimuth_deg=self.azimuth_deg,
            topspin_rpm=self.topspin_rpm,
        )


def window(
    start: Point,
    target: Point,
    *,
    height_m: float,
    speeds_mps: Floats,
    elevations_deg: Floats,
    topspin_rpm: float = 0.0,
    ball: Ball = OUTDOOR,
    wind_mps: Vector = STILL_AIR,
    step_s: float = STEP_S,
) -> Window:
    """All launches of the grid from `start`, `height_m` up, in the direction of `target`."""
    direction = azimuth_deg(start, target)
    launches = moving(
        x_m=start.x_m,
        y_m=start.y_m,
        z_m=height_m,
        speed_mps=speeds_mps[:, np.newaxis],
        elevation_deg=elevations_deg[np.newaxis],
        azimuth_deg=direction,
        topspin_rpm=topspin_rpm,
    )
    track = fly(launches, ball=ball, wind_mps=wind_mps, step_s=step_s)
    landed, line = landing(track), at_distance(track, KITCHEN_DEPTH_M)
    net = at_distance(track, 0.0)
    level = np.hypot(net.velocities[0], net.velocities[1])
    arrives = line.times_s < landed.times_s
    shape = (len(speeds_mps), len(elevations_deg))
    return Window(
        start=start,
        height_m=height_m,
        azimuth_deg=direction,
        topspin_rpm=topspin_rpm,
        speeds_mps=speeds_mps,
        elevations_deg=elevations_deg,
        clearance_m=net_clearance_m(track, landed).reshape(shape),
        net_aside_m=net.places[0].reshape(shape),
        net_slope=(net.velocities[2] / level).reshape(shape),
        aside_m=landed.places[0].reshape(shape),
        depth_m=landed.places[1].reshape(shape),
        landing_s=landed.times_s.reshape(shape),
        at_line_m=np.where(arrives, line.places[2], 0.0).reshape(shape),
    )


def works(shown: Window, intent: Intent = LEGAL) -> Bools:
    """Which launches of the window do what is meant."""
    left, right = intent.aside_m
    found: Bools = (
        goes_right(shown, intent, shown.clearance_m, shown.depth_m)
        & (shown.aside_m >= left)
        & (shown.aside_m <= right)
    )
    return found


def goes_right(shown: Window, intent: Intent, clearance_m: Floats, depth_m: Floats) -> Bools:
    """Which launches do what is meant, but for their place across the court."""
    near, far = intent.depth_m
    low, high = intent.at_line_m
    found: Bools = (
        (clearance_m >= intent.net_margin_m)
        & (depth_m >= near)
        & (depth_m <= far)
        & (shown.at_line_m >= low)
        & (shown.at_line_m <= high)
    )
    return found


def slowest(shown: Window, intent: Intent = LEGAL) -> Launch | None:
    """The slowest launch of the window that works, in the middle of its angles; None if none."""
    return _first(shown, intent, backwards=False)


def fastest(shown: Window, intent: Intent = LEGAL) -> Launch | None:
    """The fastest launch of the window that works, in the middle of its angles; None if none."""
    return _first(shown, intent, backwards=True)


def _first(shown: Window, intent: Intent, *, backwards: bool) -> Launch | None:
    good = works(shown, intent)
    rows = np.flatnonzero(good.any(axis=1))
    if not len(rows):
        return None
    row = int(rows[-1 if backwards else 0])
    angle = float(np.mean(shown.elevations_deg[good[row]]))
    return shown.launch(float(shown.speeds_mps[row]), angle)


def size(shown: Window, intent: Intent = LEGAL) -> float:
    """How large the window is, in metres a second times degrees; needs evenly spaced axes."""
    speeds, angles = shown.speeds_mps, shown.elevations_deg
    cell = (speeds[1] - speeds[0]) * (angles[1] - angles[0])
    return float(works(shown, intent).sum() * cell)
