"""When a ball that flies flat is over a place: drag alone, in closed form."""

from __future__ import annotations

import numpy as np

from knowledge.flight import OUTDOOR
from knowledge.reach.body import Floats


def arrival_s(distance_m: Floats, speed_mps: float) -> Floats:
    """Time over a distance along the ground with quadratic drag: x = ln(1 + k v t) / k."""
    return (np.exp(OUTDOOR.drag_per_m * distance_m) - 1.0) / (OUTDOOR.drag_per_m * speed_mps)
