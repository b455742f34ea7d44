"""First steps: how far arm and feet get in a time, forward, aside and back."""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.reach.body import Floats

FORWARD_MPS: Final = 5.5
RISE_S: Final = 0.8
"""A club player's run v = V (1 - exp(-t/T)): 1, 2 and 3 m in about 0.6, 0.9 and 1.1 s. Our guess;
a published athlete has 8.59 m/s and 0.81 s."""

SHUFFLE_MPS: Final = 2.0
SHUFFLE_RISE_S: Final = 0.15
"""A side shuffle: 1.5 to 2.5 m/s, soon reached. From memory."""

BACKWARD_SHARE: Final = 0.7
"""A step back against a step forward. From memory."""

TURN_ASIDE_S: Final = 0.15
TURN_BACK_S: Final = 0.35
"""Time to cross over and run sideways, and to turn and run back. Our guess."""

ARM_MPS2: Final = 45.0
"""The paddle's pull from the ready position: half a metre in 0.15 s. Our guess."""


def run_m(time_s: Floats, *, top_mps: float, rise_s: float) -> Floats:
    """Metres from standing: the integral of V (1 - exp(-t/T)); 0 before the start."""
    time = np.maximum(time_s, 0.0)
    return top_mps * (time - rise_s * (1.0 - np.exp(-time / rise_s)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Feet:
    """How a player moves: the run forward, the run to a side or back, and the shuffle."""

    forward_mps: float = FORWARD_MPS
    run_mps: float = FORWARD_MPS
    shuffle_mps: float = SHUFFLE_MPS
    rise_s: float = RISE_S

    def ahead_m(self, time_s: Floats) -> Floats:
        return run_m(time_s, top_mps=self.forward_mps, rise_s=self.rise_s)

    def aside_m(self, time_s: Floats) -> Floats:
        """By shuffling at first, by crossing over and running where that gets further."""
        shuffled = run_m(time_s, top_mps=self.shuffle_mps, rise_s=SHUFFLE_RISE_S)
        ran = run_m(time_s - TURN_ASIDE_S, top_mps=self.run_mps, rise_s=self.rise_s)
        return np.maximum(shuffled, ran)

    def back_m(self, time_s: Floats) -> Floats:
        """By stepping back at first, by turning and running (which is safer too) after that."""
        stepped = BACKWARD_SHARE * run_m(time_s, top_mps=self.run_mps, rise_s=self.rise_s)
        ran = run_m(time_s - TURN_BACK_S, top_mps=self.run_mps, rise_s=self.rise_s)
        return np.maximum(stepped, ran)


def arm_out_m(time_s: Floats) -> Floats:
    """How far the paddle comes from the ready position, were the arm endless."""
    return 0.5 * ARM_MPS2 * np.square(time_s)
