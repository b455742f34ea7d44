"""The ball and the air it flies in: mass, size, drag, the lift of spin, and how it bounces."""

from __future__ import annotations

import math
from typing import Final

from knowledge.dataclass import dataclass

MPS_PER_MPH: Final = 0.44704
RAD_PER_S_PER_RPM: Final = 2 * math.pi / 60
GRAVITY_MPS2: Final = 9.81

MODEL_MASS_KG: Final = 0.0243
MODEL_DIAMETER_M: Final = 0.0742
"""Middle of what the rules allow, 0.78 to 0.935 oz and 2.87 to 2.97 in (national rulebook and
equipment standards, 2025, section 2); computed."""

AIR_KG_PER_M3: Final = 1.20
"""Air at 20 degrees Celsius near sea level; any textbook."""

OUTDOOR_DRAG: Final = 0.33
INDOOR_DRAG: Final = 0.45
"""Drag coefficients, taken as constant (Lindsey, Pickleball aerodynamics, 2025; second-hand).
Steyn et al. (arXiv 2501.00163; second-hand) have 0.30 +- 0.02 for an outdoor ball."""

LOW_LIFT: Final = 0.195
"""Lift coefficient over spin parameter, Cl / S with S = radius x spin / speed (Steyn et al.,
arXiv 2501.00163; second-hand)."""

HIGH_LIFT: Final = 4 * LOW_LIFT
"""A second published fit is four times the first at 1,500 rpm (second-hand)."""

DEFAULT_LIFT: Final = math.sqrt(LOW_LIFT * HIGH_LIFT)
"""Between the two fits, as far from one as from the other: twice the low one. Good players land
knee-high rolls at 30 to 35 mph (common practice, no source). At 35 mph, 1,200 rpm, two feet behind
the kitchen line, the low fit leaves half a degree for that, this one two, the high one five
(computed)."""

RESTITUTION: Final = 0.64
"""Speed up over speed down. From the drop test (78 in gives 30 to 34 in; rulebook 2025, 2.D);
computed. It falls with speed and on a hard court; nobody has published by how much."""

FRICTION: Final = 0.5
"""Of a sliding ball on an acrylic court. Common practice, no source."""

SHELL_INERTIA: Final = 2 / 3
"""Moment of inertia of a thin shell over mass x radius squared; any mechanics textbook."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ball:
    """A ball in still or moving air; the defaults are an outdoor ball of middling make."""

    mass_kg: float = MODEL_MASS_KG
    diameter_m: float = MODEL_DIAMETER_M
    drag_coefficient: float = OUTDOOR_DRAG
    lift_per_spin: float = DEFAULT_LIFT
    restitution: float = RESTITUTION
    friction: float = FRICTION
    inertia: float = SHELL_INERTIA
    air_kg_per_m3: float = AIR_KG_PER_M3

    @property
    def radius_m(self) -> float:
        return self.diameter_m / 2

    @property
    def _per_m(self) -> float:
        """Air density x cross-section / (2 x mass)."""
        return self.air_kg_per_m3 * math.pi * self.radius_m**2 / (2 * self.mass_kg)

    @property
    def drag_per_m(self) -> float:
        """k of the deceleration k v^2."""
        return self._per_m * self.drag_coefficient

    @property
    def lift(self) -> float:
        """Factor of spin x velocity (a cross product, rad/s and m/s) in the acceleration.

        Cl = c R w / v makes the lift, (density A / 2m) Cl v^2, linear in both.
        """
        return self._per_m * self.lift_per_spin * self.radius_m

    @property
    def terminal_mps(self) -> float:
        """Speed at which drag holds the weight."""
        return math.sqrt(GRAVITY_MPS2 / self.drag_per_m)


OUTDOOR: Final = Ball()
INDOOR: Final = Ball(drag_coefficient=INDOOR_DRAG)
