"""A second way to the ball's flight: scipy's solver on the equations, one ball at a time.

Written from the equations, not from knowledge.flight: the spin is a vector of three, the bounce
is worked out along the slip with angular momentum about the touching point.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.integrate import solve_ivp

from knowledge.flight import Ball, Launch, Vector

G_MPS2 = 9.81
UP = np.array([0.0, 0.0, 1.0])


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """Time and place of the first and the second bounce, the velocity into the first."""

    first_s: float
    first: Any
    into: Any
    second_s: float
    second: Any


def solved(
    launch: Launch, ball: Ball, wind: Vector, *, rtol: float = 1e-9, atol: float = 1e-9
) -> Solved:
    """Both flights of a launch by `solve_ivp` with an event at the ground."""
    up, aside = math.radians(launch.elevation_deg), math.radians(launch.azimuth_deg)
    ahead = np.array([math.sin(aside), math.cos(aside), 0.0])
    velocity = launch.speed_mps * (math.cos(up) * ahead + math.sin(up) * UP)
    spin = launch.topspin_rpm * 2 * math.pi / 60 * np.cross(UP, ahead)
    place = np.array([launch.x_m, launch.y_m, launch.z_m])
    time, place, into = _down(place, velocity, spin, ball, wind, rtol, atol)
    velocity, spin = _off_the_ground(into, spin, ball)
    after, second, _ = _down(place, velocity, spin, ball, wind, rtol, atol)
    return Solved(first_s=time, first=place, into=into, second_s=time + after, second=second)


def _down(
    place: Any, velocity: Any, spin: Any, ball: Ball, wind: Vector, rtol: float, atol: float
) -> tuple[float, Any, Any]:
    per_m = ball.air_kg_per_m3 * math.pi * ball.radius_m**2 / (2 * ball.mass_kg)
    turning = math.sqrt(float(spin @ spin))
    blown = np.array(wind)

    def rate(_t: float, state: Any) -> list[float]:
        vx, vy, vz = state[3] - blown[0], state[4] - blown[1], state[5] - blown[2]
        speed = math.sqrt(vx * vx + vy * vy + vz * vz)
        slow = -per_m * ball.drag_coefficient * speed
        pull = (slow * vx, slow * vy, slow * vz - G_MPS2)
        if turning and speed:
            lift_coefficient = ball.lift_per_spin * ball.radius_m * turning / speed
            size = per_m * lift_coefficient * speed * speed / (turning * speed)
            sx, sy, sz = spin
            pull = (
                pull[0] + size * (sy * vz - sz * vy),
                pull[1] + size * (sz * vx - sx * vz),
                pull[2] + size * (sx * vy - sy * vx),
            )
        return [state[3], state[4], state[5], *pull]

    def ground(_t: float, state: Any) -> float:
        return float(state[2] - ball.radius_m)

    event: Any = ground
    event.terminal, event.direction = True, -1
    start = np.concatenate([place, velocity])
    found = solve_ivp(rate, (0, 20), start, events=event, rtol=rtol, atol=atol)
    return float(found.t[-1]), found.y[:3, -1], found.y[3:, -1]


def _off_the_ground(into: Any, spin: Any, ball: Ball) -> tuple[Any, Any]:
    arm = -ball.radius_m * UP
    slip = into + np.cross(spin, arm)
    slip[2] = 0.0
    size = math.sqrt(float(slip @ slip))
    up = -ball.restitution * into[2]
    impulse = np.zeros(3)
    if size > 1e-12:
        most = ball.friction * (up - into[2])
        impulse = -slip / size * min(most, size / (1 + 1 / ball.inertia))
    turned = np.cross(arm, impulse) / (ball.inertia * ball.radius_m**2)
    velocity = into + impulse
    velocity[2] = up
    return velocity, spin + turned
