"""Balls' paths in closed form for tests of reach, which takes any path with times and points.

Drag slows a ball along the ground, gravity alone bends it, and it bounces once.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from knowledge.court import Point
from knowledge.flight import level_time_s
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.reach.body import Floats
from knowledge.wind import BALL_RADIUS_M, DRAG_PER_M

SAMPLES: Final = 40
"""Places looked at along a path, the last at its end."""

REBOUND: Final = 0.64
KEPT_ALONG: Final = 0.60
"""Upward and forward speed left after a bounce: the drop test's, and a thin shell that grips."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PlainPath:
    """Times and points of one ball (n,) and (n, 3), or of several: (..., n) and (..., n, 3)."""

    times_s: Floats
    points: Floats


def travelled_m(time_s: Floats, speed_mps: float | Floats) -> Floats:
    """Distance along the ground after a time: the same the other way round."""
    return np.log1p(DRAG_PER_M * speed_mps * time_s) / DRAG_PER_M


def plain_path(
    start: Point,
    through: tuple[Floats, Floats],
    *,
    contact_m: float,
    speed_mps: float,
    height_m: float,
    lasts_s: float,
) -> PlainPath:
    """Balls from `start`, struck at `contact_m`, `height_m` high over the places `through`.

    `speed_mps` is along the ground. x and y of the places broadcast to one path each.
    """
    dx, dy = through[0] - start.x_m, through[1] - start.y_m
    ground = np.hypot(dx, dy)[..., None]
    there = level_time_s(ground, speed_mps)
    up = (height_m - contact_m) / there + GRAVITY_MPS2 * there / 2
    land = (up + np.sqrt(up**2 + 2 * GRAVITY_MPS2 * (contact_m - BALL_RADIUS_M))) / GRAVITY_MPS2
    time = np.broadcast_to(np.linspace(0.0, lasts_s, SAMPLES), (*ground.shape[:-1], SAMPLES))
    after = np.maximum(time - land, 0.0)
    before = np.minimum(time, land)
    slowed = KEPT_ALONG * speed_mps / (1.0 + DRAG_PER_M * speed_mps * land)
    gone = travelled_m(before, speed_mps) + travelled_m(after, slowed)
    rebound = REBOUND * (GRAVITY_MPS2 * land - up)
    height = contact_m + up * before - GRAVITY_MPS2 * before**2 / 2
    height = height + rebound * after - GRAVITY_MPS2 * after**2 / 2
    share = gone / ground
    points = np.stack(
        (start.x_m + dx[..., None] * share, start.y_m + dy[..., None] * share, height), axis=-1
    )
    return PlainPath(times_s=time, points=points)
