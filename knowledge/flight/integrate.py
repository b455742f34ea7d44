"""Balls through the air, many at once: drag, spin, wind and gravity, step by step.

Method: 1. acceleration a = -k |v - w| (v - w) + l s x (v - w) - g, with wind w, spin s and k, l
of the ball; 2. Runge and Kutta's classical fourth-order step, all balls together, until the last
is down; 3. every step is kept, so that any crossing can be read off afterwards.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.flight.ball import GRAVITY_MPS2, OUTDOOR, Ball
from knowledge.flight.launch import STILL_AIR, Floats, Moving, Vector

STEP_S: Final = 0.08
"""Landings, the second bounce too, are within 0.1 mm of those of a step a hundred times finer."""

LONGEST_S: Final = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Track:
    """Where balls were: `states` (steps + 1, 6, n) of places over velocities, `step_s` apart."""

    states: Floats
    spins: Floats
    step_s: float
    ball: Ball

    @property
    def times_s(self) -> Floats:
        return self.step_s * np.arange(len(self.states), dtype=np.float64)


def fly(
    balls: Moving,
    *,
    ball: Ball = OUTDOOR,
    wind_mps: Vector = STILL_AIR,
    step_s: float = STEP_S,
    longest_s: float = LONGEST_S,
) -> Track:
    """The tracks until every ball is down, or `longest_s`; they go on below the ground."""
    wind = np.array(wind_mps)[:, np.newaxis]
    state = np.concatenate([balls.places, balls.velocities])
    states = [state]
    while len(states) * step_s < longest_s + step_s:
        state = _stepped(state, balls.spins, wind, ball, step_s)
        states.append(state)
        if np.all((state[2] <= ball.radius_m) & (state[5] < 0)):
            break
    return Track(states=np.stack(states), spins=balls.spins, step_s=step_s, ball=ball)


def _stepped(state: Floats, spins: Floats, wind: Floats, ball: Ball, step_s: float) -> Floats:
    """One classical Runge-Kutta step."""
    half = step_s / 2
    one = _rate(state, spins, wind, ball)
    two = _rate(state + half * one, spins, wind, ball)
    three = _rate(state + half * two, spins, wind, ball)
    four = _rate(state + step_s * three, spins, wind, ball)
    found: Floats = state + (step_s / 6) * (one + 2 * (two + three) + four)
    return found


def _rate(state: Floats, spins: Floats, wind: Floats, ball: Ball) -> Floats:
    rate = np.empty_like(state)
    rate[:3] = state[3:]
    air = state[3:] - wind
    speed = np.sqrt(np.einsum("ij,ij->j", air, air))
    np.multiply(-ball.drag_per_m * speed, air, out=rate[3:])
    lift = ball.lift * spins
    rate[3] += lift[1] * air[2]
    rate[4] -= lift[0] * air[2]
    rate[5] += lift[0] * air[1] - lift[1] * air[0] - GRAVITY_MPS2
    return rate
