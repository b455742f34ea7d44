"""A hard, flat ball in closed form: time in the air, window over the net, height where it is met.

Near the level the ball's speed is taken as its speed along the ground, so drag and lift give

    u(x) = u0 exp(-k x),  t(x) = (exp(k x) - 1) / (k u0),
    y(x) = h + s0 x - (g / u0^2) (exp(2 k x) - 1 - 2 k x) / (4 k^2) - l (exp(k x) - 1 - k x) / k^2

with x along the lane from the contact, s0 the slope there, k of the drag and l of the topspin
(the "flat-fire" solution of exterior ballistics, from memory). Good for drives and speed-ups;
wrong for lobs and drops. `knowledge.flight` integrates the ball in full: this is the small sum that
answers a question at once.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Final

from knowledge.court import HALF_LENGTH_M, NET_HEIGHT_CENTRE_M, NET_HEIGHT_SIDELINE_M

GRAVITY_MPS2: Final = 9.81
MPS_PER_MPH: Final = 0.44704

DRAG_PER_M: Final = 0.0352
"""k of the model ball at Cd 0.33 and air of 1.20 kg/m3 (Lindsey 2025, second-hand)."""

DRAG_COEFFICIENT: Final = 0.33
LIFT_SLOPE: Final = 0.195
"""Cl = 0.195 S with S = R w / v (Steyn et al., second-hand); another fit is four times larger."""

HIGH_LIFT: Final = 4.0
"""How much larger the other published fit is."""

BALL_RADIUS_M: Final = 0.0371
TOPSPIN_RPM: Final = 1200.0
"""A speed-up or drive with topspin. Common practice, no source: published is 1,400 to 1,500."""

NET_M: Final = (NET_HEIGHT_CENTRE_M + NET_HEIGHT_SIDELINE_M) / 2
"""The net half-way between its ruled heights at the centre and the sideline."""

CLEARANCE_M: Final = 0.05
"""What a ball needs over the net: its radius and a little more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HardBall:
    """A hard ball: its height and distance from the net when hit, its speed, spin and wind.

    `lift` says how the topspin is taken: 0 flat, 1 by the low fit, HIGH_LIFT by the high one.
    `wind_mps` blows along its way, against it below 0.
    """

    height_m: float
    from_net_m: float
    speed_mps: float
    lift: float = 0.0
    wind_mps: float = 0.0

    @property
    def drag_per_m(self) -> float:
        """Drag goes with the square of the speed through the air: less with a following wind."""
        return DRAG_PER_M * (1 - self.wind_mps / self.speed_mps) ** 2

    @property
    def lift_per_m(self) -> float:
        """How fast topspin bends the way down at the start, as a slope per metre."""
        spin = 2 * math.pi * TOPSPIN_RPM / 60
        ratio = BALL_RADIUS_M * spin / self.speed_mps
        return self.lift * DRAG_PER_M / DRAG_COEFFICIENT * LIFT_SLOPE * ratio

    def time_s(self, x_m: float) -> float:
        """How long it takes to come this far."""
        k = self.drag_per_m
        return math.expm1(k * x_m) / (k * self.speed_mps)

    def drop_m(self, x_m: float) -> float:
        """How far it is below the straight line of its start after this way."""
        k = self.drag_per_m
        fall = GRAVITY_MPS2 / self.speed_mps**2 * (math.expm1(2 * k * x_m) - 2 * k * x_m)
        bend = self.lift_per_m * (math.expm1(k * x_m) - k * x_m)
        return (fall / 4 + bend) / (k * k)

    def height_at_m(self, x_m: float, slope: float) -> float:
        return self.height_m + slope * x_m - self.drop_m(x_m)

    def slope_through(self, x_m: float, height_m: float) -> float:
        """The slope at the start of a ball that passes a height after this way."""
        return (height_m - self.height_m + self.drop_m(x_m)) / x_m

    @property
    def least_slope(self) -> float:
        """The flattest ball that clears the net."""
        return self.slope_through(self.from_net_m, NET_M + CLEARANCE_M)

    @property
    def most_slope(self) -> float:
        """The highest ball that still lands on their baseline."""
        return self.slope_through(self.from_net_m + HALF_LENGTH_M, 0.0)

    @property
    def window_deg(self) -> float:
        """The angle between the two; below 0 no ball of this speed is legal from here."""
        return math.degrees(math.atan(self.most_slope) - math.atan(self.least_slope))

    def leave_height_m(self, met_m: float) -> float | None:
        """Above which height, met so far behind our net, it flies out; None: always out."""
        if self.window_deg <= 0:
            return None
        return self.height_at_m(self.from_net_m + met_m, self.most_slope)


def fastest_mps(ball: HardBall, *, window_deg: float) -> float:
    """The fastest speed that leaves such a window from where the ball is hit; 0 for none."""
    speeds = [MPS_PER_MPH * mph for mph in range(60, 14, -1)]
    return next(
        (each for each in speeds if replace(ball, speed_mps=each).window_deg >= window_deg), 0.0
    )
