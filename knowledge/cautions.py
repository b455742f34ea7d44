"""Heat, bodies, eyes and falls: what we may say, and who decides.

Heat index: Rothfusz 1990 (US National Weather Service, SR 90-23) with the simple form below
80 degrees F and the two adjustments of NOAA's page "The heat index equation". It assumes
shade and light wind.
"""

from __future__ import annotations

import math
from enum import StrEnum
from typing import Final

from knowledge.emergencies import emergency_of

SIMPLE_BELOW_F: Final = 80.0
"""Where the simple form (averaged with the temperature) stays below this, it stands."""

FULL_SUN_ADDS_F: Final = 15.0
"""Full sun adds up to this much (National Weather Service)."""

DEFERS = "Not medical advice: medical staff decide."
HEAT_DEFERS = "Unwell? Stop. Event and medical staff decide."


class HeatLevel(StrEnum):
    """The National Weather Service's classes of heat index."""

    NONE = "no heat warning"
    CAUTION = "caution"
    EXTREME_CAUTION = "extreme caution"
    DANGER = "danger"
    EXTREME_DANGER = "extreme danger"


HEAT_LEVEL_FROM_F: Final = (
    (125.0, HeatLevel.EXTREME_DANGER),
    (103.0, HeatLevel.DANGER),
    (90.0, HeatLevel.EXTREME_CAUTION),
    (80.0, HeatLevel.CAUTION),
)
"""Thresholds of the current pages; older pages say 105 and 130 for the upper two."""


def heat_index_f(temperature_f: float, humidity_percent: float) -> float:
    """Heat index in degrees F; ValueError for a humidity outside 0 to 100.

    1. the simple form, averaged with the temperature; 2. from 80 F on, Rothfusz's regression;
    3. less in dry heat, more in humid warmth.
    """
    if not 0 <= humidity_percent <= 100:
        raise ValueError(f"humidity is 0 to 100 %, not {humidity_percent}")
    t, rh = temperature_f, humidity_percent
    simple = 0.5 * (t + 61.0 + (t - 68.0) * 1.2 + rh * 0.094)
    average = (simple + t) / 2
    if average < SIMPLE_BELOW_F:
        return average
    return rothfusz_f(t, rh) + _adjustment_f(t, rh)


def rothfusz_f(t: float, rh: float) -> float:
    """The regression alone: the printed chart. Temperature in degrees F, humidity in percent."""
    return (
        -42.379
        + 2.04901523 * t
        + 10.14333127 * rh
        - 0.22475541 * t * rh
        - 6.83783e-3 * t**2
        - 5.481717e-2 * rh**2
        + 1.22874e-3 * t**2 * rh
        + 8.5282e-4 * t * rh**2
        - 1.99e-6 * t**2 * rh**2
    )


def _adjustment_f(t: float, rh: float) -> float:
    if rh < 13 and 80 <= t <= 112:
        return -((13 - rh) / 4) * math.sqrt((17 - abs(t - 95)) / 17)
    if rh > 85 and 80 <= t <= 87:
        return ((rh - 85) / 10) * ((87 - t) / 5)
    return 0.0


def heat_level(index_f: float) -> HeatLevel:
    """The class of a heat index in degrees F."""
    return next((level for least, level in HEAT_LEVEL_FROM_F if index_f >= least), HeatLevel.NONE)


def fahrenheit(celsius: float) -> float:
    return celsius * 9 / 5 + 32


def celsius_of(degrees_f: float) -> float:
    return (degrees_f - 32) * 5 / 9


def is_emergency(words: str) -> bool:
    """Whether the words tell of something that must stop play, whatever else they ask."""
    return emergency_of(words) is not None
