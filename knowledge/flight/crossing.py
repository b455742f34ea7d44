"""Where tracks cross a level or a plane: the landing, the net, the opponent's line, the top.

Between two steps a track is the cubic through both places with both velocities (Hermite); its
root by Newton's method. Nothing found is NaN.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from knowledge.court import (
    HALF_WIDTH_M,
    NET_HEIGHT_CENTRE_M,
    NET_HEIGHT_SIDELINE_M,
    POST_FROM_CENTRE_M,
)
from knowledge.dataclass import dataclass
from knowledge.flight.ball import Ball
from knowledge.flight.integrate import Track
from knowledge.flight.launch import Floats

ALONG, UP = 1, 2
NEWTON_STEPS: Final = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """When and where balls cross, and how fast: times (n,), places and velocities (3, n)."""

    times_s: Floats
    places: Floats
    velocities: Floats

    @property
    def speeds_mps(self) -> Floats:
        found: Floats = np.sqrt(np.sum(self.velocities**2, axis=0))
        return found


def landing(track: Track) -> Crossing:
    """Where each ball comes down: its centre a radius above the ground."""
    above = track.states[:, UP] - track.ball.radius_m
    return _crossing(track, above, (above[:-1] >= 0) & (above[1:] < 0), UP)


def at_distance(track: Track, y_m: float) -> Crossing:
    """Where each ball first passes the plane across the court at `y_m`, from either side."""
    beyond = track.states[:, ALONG] - y_m
    passes = (beyond[:-1] < 0) != (beyond[1:] < 0)
    return _crossing(track, beyond, passes, ALONG)


def top_m(track: Track) -> Floats:
    """The greatest height of each ball's centre."""
    rising = track.states[:, 5]
    turns = _crossing(track, rising, (rising[:-1] > 0) & (rising[1:] <= 0), 5)
    found: Floats = np.fmax(turns.places[UP], track.states[0, UP])
    return found


def net_heights_m(x_m: Floats) -> Floats:
    """The net's height at each `x_m`, as `court.net_height_m` has it; beyond the posts none."""
    out_m = np.abs(x_m)
    top = np.interp(out_m, (0.0, HALF_WIDTH_M), (NET_HEIGHT_CENTRE_M, NET_HEIGHT_SIDELINE_M))
    found: Floats = np.where(out_m > POST_FROM_CENTRE_M, 0.0, top)
    return found


def air_over_net_m(net: Crossing, ball: Ball) -> Floats:
    """Air between the tape and the underside of balls where they pass the net's plane."""
    found: Floats = net.places[UP] - ball.radius_m - net_heights_m(net.places[0])
    return found


def net_clearance_m(track: Track, landed: Crossing | None = None) -> Floats:
    """Air over the net; minus infinity if a ball never gets there."""
    net = at_distance(track, 0.0)
    landed = landing(track) if landed is None else landed
    arrives = net.times_s < np.where(np.isnan(landed.times_s), np.inf, landed.times_s)
    found: Floats = np.where(arrives, air_over_net_m(net, track.ball), -np.inf)
    return found


def _crossing(track: Track, values: Floats, passes: NDArray[np.bool_], axis: int) -> Crossing:
    """The first step of each ball that `passes`, and the place within it."""
    balls = np.arange(values.shape[1])
    step = np.argmax(passes, axis=0)
    found = passes[step, balls]
    before, after = track.states[step, :, balls].T, track.states[step + 1, :, balls].T
    level = (track.states[step, axis, balls] - values[step, balls])[np.newaxis]
    if axis < 3:
        part = _root(before, after, axis, level[0], track.step_s)
    else:
        part = before[axis] / np.where(found, before[axis] - after[axis], 1.0)
    places = between(before, after, part, track.step_s)
    velocities = slope_between(before, after, part, track.step_s)
    times = track.step_s * (step + part)
    nothing = np.where(found, 0.0, np.nan)
    return Crossing(
        times_s=times + nothing, places=places + nothing, velocities=velocities + nothing
    )


def _root(before: Floats, after: Floats, axis: int, level: Floats, step_s: float) -> Floats:
    one, two = before[[axis, axis + 3]], after[[axis, axis + 3]]
    part = np.ones_like(level)
    for _ in range(NEWTON_STEPS):
        value = _cubic(one[0], one[1], two[0], two[1], part, step_s) - level
        slope = step_s * _cubic_slope(one[0], one[1], two[0], two[1], part, step_s)
        part = part - np.divide(value, slope, out=np.zeros_like(value), where=slope != 0)
    found: Floats = np.clip(part, 0.0, 1.0)
    return found


def between(before: Floats, after: Floats, part: Floats, step_s: float) -> Floats:
    """Places (3, n) between two steps' states (6, n), so far along."""
    return _cubic(before[:3], before[3:], after[:3], after[3:], part, step_s)


def slope_between(before: Floats, after: Floats, part: Floats, step_s: float) -> Floats:
    """Velocities there."""
    return _cubic_slope(before[:3], before[3:], after[:3], after[3:], part, step_s)


def _cubic(p: Floats, v: Floats, q: Floats, w: Floats, part: Floats, step_s: float) -> Floats:
    """Hermite's cubic from place p, velocity v to place q, velocity w."""
    rest = 1 - part
    found: Floats = (
        rest**2 * ((1 + 2 * part) * p + part * step_s * v)
        + part**2 * ((3 - 2 * part) * q - rest * step_s * w)
    )  # fmt: skip
    return found


def _cubic_slope(p: Floats, v: Floats, q: Floats, w: Floats, part: Floats, step_s: float) -> Floats:
    rest = 1 - part
    found: Floats = (
        6 * part * rest * (q - p) / step_s
        + rest * (1 - 3 * part) * v
        + part * (3 * part - 2) * w
    )  # fmt: skip
    return found
