"""How balls leave the paddle: one for people to read, many at once to compute with."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from knowledge.court import Point
from knowledge.dataclass import dataclass
from knowledge.flight.ball import RAD_PER_S_PER_RPM

Floats = NDArray[np.float64]
Vector = tuple[float, float, float]
"""x, y, z as in knowledge.court: to our right, into their half, up."""

STILL_AIR: Vector = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Launch:
    """One ball as it leaves the paddle, in the court's coordinates.

    `elevation_deg` is above level. `azimuth_deg` is 0 straight into their half, positive towards
    our right; 180 comes straight at us. `topspin_rpm` below 0 is slice.
    """

    x_m: float = 0.0
    y_m: float
    z_m: float
    speed_mps: float
    elevation_deg: float
    azimuth_deg: float = 0.0
    topspin_rpm: float = 0.0

    def moving(self) -> Moving:
        return moving(
            x_m=self.x_m,
            y_m=self.y_m,
            z_m=self.z_m,
            speed_mps=self.speed_mps,
            elevation_deg=self.elevation_deg,
            azimuth_deg=self.azimuth_deg,
            topspin_rpm=self.topspin_rpm,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Moving:
    """Balls in flight: places and velocities (3, n), spins (2, n) in rad/s.

    The spin's axis is level, so two components tell it; it stays as it is while in the air.
    """

    places: Floats
    velocities: Floats
    spins: Floats

    def __len__(self) -> int:
        return int(self.places.shape[1])


def moving(
    *,
    x_m: ArrayLike = 0.0,
    y_m: ArrayLike,
    z_m: ArrayLike,
    speed_mps: ArrayLike,
    elevation_deg: ArrayLike,
    azimuth_deg: ArrayLike = 0.0,
    topspin_rpm: ArrayLike = 0.0,
) -> Moving:
    """Many launches at once; numbers and arrays are broadcast against each other."""
    given = (x_m, y_m, z_m, speed_mps, elevation_deg, azimuth_deg, topspin_rpm)
    flat = (np.ravel(one) for one in np.broadcast_arrays(*map(np.asarray, given)))
    x, y, z, speed, elevation, azimuth, rpm = (one.astype(np.float64) for one in flat)
    up, aside = np.radians(elevation), np.radians(azimuth)
    across, along = np.sin(aside), np.cos(aside)
    level = speed * np.cos(up)
    spin = rpm * RAD_PER_S_PER_RPM
    return Moving(
        places=np.stack([x, y, z]),
        velocities=np.stack([level * across, level * along, speed * np.sin(up)]),
        spins=np.stack([-spin * along, spin * across]),
    )


def azimuth_deg(start: Point, target: Point) -> float:
    """The direction from one place on the court to another, as in `Launch`."""
    return math.degrees(math.atan2(target.x_m - start.x_m, target.y_m - start.y_m))
