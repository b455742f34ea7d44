"""The wind along the court, as said or as taken where only its direction is."""

from __future__ import annotations

from typing import Final

from knowledge.flight import MPS_PER_MPH
from knowledge.situation import Wind

BREEZE_MPS: Final = 10 * MPS_PER_MPH
"""A wind that is told without a number. Common practice, no source."""


def wind_along_mps(wind: Wind | None, told_mps: float | None) -> float:
    """Positive from behind us, negative against us; 0 where its direction along is not told."""
    speed = BREEZE_MPS if told_mps is None else abs(told_mps)
    return {Wind.BEHIND_US: speed, Wind.AGAINST_US: -speed}.get(wind or Wind.NONE, 0.0)
