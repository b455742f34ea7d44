"""A hard ball near the level in closed form: when it is where along its lane, and how high.

For times, pictures, and which of many passing balls can be; what is attackable and what flies out
stands in tables. With the speed along the ground for the ball's speed, drag and lift give

    u(x) = u0 exp(-k x),  t(x) = (exp(k x) - 1) / (k u0),
    y(x) = h + s0 x - (g / u0^2) (exp(2 k x) - 1 - 2 k x) / (4 k^2) - l (exp(k x) - 1 - k x) / k^2

with x along the lane from the contact, s0 the slope there, k of the drag and l of the topspin
(the "flat-fire" solution of exterior ballistics, from memory). Good to some centimetres for drives,
speed-ups and overheads; wrong for lobs and drops.
"""

from __future__ import annotations

import math

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.flight.ball import DEFAULT_LIFT, GRAVITY_MPS2, OUTDOOR, RAD_PER_S_PER_RPM
from knowledge.flight.launch import Floats


def level_time_s(
    way_m: Floats, speed_mps: float, *, drag_per_m: float = OUTDOOR.drag_per_m
) -> Floats:
    """Time over a way along the ground, with this speed along it at the start."""
    found: Floats = np.expm1(drag_per_m * way_m) / (drag_per_m * speed_mps)
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatFire:
    """A hard ball as it is struck; `speed_mps` is along the ground, the wind along its way."""

    height_m: float
    speed_mps: float
    topspin_rpm: float = 0.0
    lift_per_spin: float = DEFAULT_LIFT
    wind_mps: float = 0.0

    @property
    def drag_per_m(self) -> float:
        """Drag goes with the square of the speed through the air: less with a following wind."""
        return OUTDOOR.drag_per_m * (1 - self.wind_mps / self.speed_mps) ** 2

    @property
    def bend_per_m(self) -> float:
        """How fast topspin bends the way down at the start, as a slope per metre."""
        lift = OUTDOOR.lift * self.lift_per_spin / OUTDOOR.lift_per_spin
        return lift * self.topspin_rpm * RAD_PER_S_PER_RPM / self.speed_mps

    def time_s(self, x_m: float) -> float:
        """How long it takes to come this far."""
        return float(level_time_s(np.array(x_m), self.speed_mps, drag_per_m=self.drag_per_m))

    def way_m(self, time_s: Floats) -> Floats:
        """How far it has come by these times."""
        k = self.drag_per_m
        found: Floats = np.log1p(k * self.speed_mps * time_s) / k
        return found

    def heights_m(self, x_m: Floats, slope: float) -> Floats:
        """`height_at_m` for many ways at once."""
        k = self.drag_per_m
        fall = GRAVITY_MPS2 / self.speed_mps**2 * (np.expm1(2 * k * x_m) - 2 * k * x_m)
        bend = self.bend_per_m * (np.expm1(k * x_m) - k * x_m)
        found: Floats = self.height_m + slope * x_m - (fall / 4 + bend) / (k * k)
        return found

    def drop_m(self, x_m: float) -> float:
        """How far it is below the straight line of its start after this way."""
        k = self.drag_per_m
        fall = GRAVITY_MPS2 / self.speed_mps**2 * (math.expm1(2 * k * x_m) - 2 * k * x_m)
        bend = self.bend_per_m * (math.expm1(k * x_m) - k * x_m)
        return (fall / 4 + bend) / (k * k)

    def height_at_m(self, x_m: float, slope: float) -> float:
        return self.height_m + slope * x_m - self.drop_m(x_m)

    def slope_through(self, x_m: float, height_m: float) -> float:
        """The slope at the start of a ball that passes a height after this way."""
        return (height_m - self.height_m + self.drop_m(x_m)) / x_m
