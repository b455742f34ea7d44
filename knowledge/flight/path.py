"""One ball's whole path, the bounce included, as reach looks at it; not for inside a turn."""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.court import Point
from knowledge.dataclass import dataclass
from knowledge.flight.ball import OUTDOOR, Ball
from knowledge.flight.bounce import bounced
from knowledge.flight.crossing import (
    Crossing,
    between,
    landing,
    net_clearance_m,
    slope_between,
)
from knowledge.flight.integrate import STEP_S, Track, fly
from knowledge.flight.launch import STILL_AIR, Floats, Launch, Vector

ROW_S: Final = 0.02
"""Straight lines between rows are then off by half a millimetre at most (g row^2 / 8)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BallPath:
    """A ball from the paddle to its second bounce; arrays are read-only.

    `times_s` (n,), `points` and `velocities` (n, 3): x, y, z. `landing_index` is the row of the
    first bounce, with the velocity before it; the next row is the same place and time after it.
    The net does not stop the ball: a `net_clearance_m` below 0 is a ball into the net.
    """

    times_s: Floats
    points: Floats
    velocities: Floats
    landing_index: int
    net_clearance_m: float

    @property
    def landing_s(self) -> float:
        return float(self.times_s[self.landing_index])

    @property
    def lands_at(self) -> Point:
        x_m, y_m, _ = self.points[self.landing_index]
        return Point(x_m=float(x_m), y_m=float(y_m))

    @property
    def bounce_height_m(self) -> float:
        """How high the centre rises after the bounce."""
        return float(self.points[self.landing_index :, 2].max())

    def at(self, time_s: float) -> tuple[float, float, float]:
        """Where the ball is then, straight between rows; before and after, the ends."""
        x, y, z = (float(np.interp(time_s, self.times_s, axis)) for axis in self.points.T)
        return (x, y, z)


def path(
    launch: Launch,
    *,
    ball: Ball = OUTDOOR,
    wind_mps: Vector = STILL_AIR,
    step_s: float = STEP_S,
) -> BallPath:
    """The path of one launch; ValueError if the ball stays up for longer than a flight lasts."""
    first = fly(launch.moving(), ball=ball, wind_mps=wind_mps, step_s=step_s)
    landed = landing(first)
    if np.isnan(landed.times_s[0]):
        raise ValueError(f"still up: {launch}")
    second = fly(bounced(landed, first.spins, ball), ball=ball, wind_mps=wind_mps, step_s=step_s)
    before, after = _rows(first, landed), _rows(second, landing(second))
    after[:, 0] += landed.times_s[0]
    rows = np.concatenate([before, after])
    rows.flags.writeable = False
    return BallPath(
        times_s=rows[:, 0],
        points=rows[:, 1:4],
        velocities=rows[:, 4:],
        landing_index=len(before) - 1,
        net_clearance_m=float(net_clearance_m(first, landed)[0]),
    )


def _rows(track: Track, landed: Crossing) -> Floats:
    """Time, place and velocity every ROW_S and at the landing, one ball."""
    until = landed.times_s[0]
    times = np.append(np.arange(0.0, until, ROW_S), until)
    step = np.minimum((times / track.step_s).astype(int), len(track.states) - 2)
    before, after = track.states[step, :, 0].T, track.states[step + 1, :, 0].T
    part = times / track.step_s - step
    places = between(before, after, part, track.step_s)
    velocities = slope_between(before, after, part, track.step_s)
    return np.vstack([times, places, velocities]).T
