"""What the ground does to a ball: a thin shell that slides or grips.

Method (the grip-slip model of R. Cross, Grip-slip behavior of a bouncing ball, American Journal
of Physics 70:1093, 2002; from memory): 1. upwards it keeps `restitution` of its speed;
2. friction works against the slip of the touching point; 3. sliding all through, it takes
`friction` times what the ground gives upwards; 4. if that were more than stops the slip, the ball
grips and leaves rolling. No tangential spring-back. A thin shell without spin that grips keeps
0.600 of its speed along the ground.
"""

from __future__ import annotations

import numpy as np

from knowledge.flight.ball import Ball
from knowledge.flight.crossing import Crossing
from knowledge.flight.launch import Floats, Moving


def bounced(landed: Crossing, spins: Floats, ball: Ball) -> Moving:
    """The balls as they leave the ground."""
    slip = slip_mps(landed.velocities, spins, ball)
    down = -landed.velocities[2]
    size = np.sqrt(np.sum(slip**2, axis=0))
    to_stop = size * ball.inertia / (1 + ball.inertia)
    sliding = ball.friction * (1 + ball.restitution) * down
    kick = -slip * np.minimum(to_stop, sliding) / np.where(size > 0, size, 1.0)
    velocities = np.stack([*(landed.velocities[:2] + kick), ball.restitution * down])
    turned = np.stack([kick[1], -kick[0]]) / (ball.inertia * ball.radius_m)
    return Moving(places=landed.places, velocities=velocities, spins=spins + turned)


def slip_mps(velocities: Floats, spins: Floats, ball: Ball) -> Floats:
    """Speed along the ground (2, n) of the point that touches it."""
    found: Floats = velocities[:2] + ball.radius_m * np.stack([-spins[1], spins[0]])
    return found
