"""How high and how deep, by name: parts of the body and places of the court, in metres.

Heights are shares of a stature, which nobody says of themselves: DEFAULT_STATURE_M stands in.
Knee, hip, shoulder and arm are those of `knowledge.reach`, ankle and eyes from the same source. The
parts between them that players name too are placed between those, as said at each (common
practice, no source).
"""

from __future__ import annotations

from enum import StrEnum
from types import MappingProxyType
from typing import Final

from knowledge.court import (
    HALF_LENGTH_M,
    KITCHEN_DEPTH_M,
    NET_HEIGHT_CENTRE_M,
    NET_HEIGHT_SIDELINE_M,
)
from knowledge.reach.body import ARM_TO_FINGERTIP, DEFAULT_STATURE_M, HIP, KNEE, SHOULDER

ANKLE: Final = 0.039
EYES: Final = 0.936
"""Fractions of stature: Drillis and Contini 1966, as given in Winter."""

NET_M: Final = (NET_HEIGHT_CENTRE_M + NET_HEIGHT_SIDELINE_M) / 2
NET_OFFSET_M: Final = 0.30
"""How far "above the net" and "below the net" are taken to be off it: common practice."""


class HeightName(StrEnum):
    """A height as players say it."""

    FEET = "feet"
    ANKLE = "ankle"
    SHIN = "shin"
    KNEE = "knee"
    THIGH = "thigh"
    HIP = "hip"
    WAIST = "waist"
    CHEST = "chest"
    SHOULDER = "shoulder"
    HEAD = "head"
    OVERHEAD = "overhead"
    BELOW_NET = "below_net"
    NET = "net"
    ABOVE_NET = "above_net"


SHARES: Final = MappingProxyType(
    {
        HeightName.FEET: ANKLE / 2,
        HeightName.ANKLE: ANKLE,
        HeightName.SHIN: (ANKLE + KNEE) / 2,
        HeightName.KNEE: KNEE,
        HeightName.THIGH: (KNEE + HIP) / 2,
        HeightName.HIP: HIP,
        HeightName.WAIST: HIP + (SHOULDER - HIP) / 4,  # belt and belly
        HeightName.CHEST: HIP + (SHOULDER - HIP) * 2 / 3,
        HeightName.SHOULDER: SHOULDER,
        HeightName.HEAD: EYES,
        HeightName.OVERHEAD: SHOULDER + ARM_TO_FINGERTIP,
    }
)
"""Shares of stature, from the ground."""


def height_m(name: HeightName, *, stature_m: float = DEFAULT_STATURE_M) -> float:
    """That height above the ground."""
    if name is HeightName.NET:
        return NET_M
    if name is HeightName.ABOVE_NET:
        return NET_M + NET_OFFSET_M
    if name is HeightName.BELOW_NET:
        return NET_M - NET_OFFSET_M
    return SHARES[name] * stature_m


class PlaceName(StrEnum):
    """How deep on our side a ball is met, as players say it."""

    IN_KITCHEN = "in_kitchen"
    AT_LINE = "at_line"
    MID_COURT = "mid_court"
    BASELINE = "baseline"
    BEHIND_BASELINE = "behind_baseline"


BEHIND_BASELINE_M: Final = 0.6
"""Where "behind the baseline" is without a number: two feet; common practice."""

FROM_NET_M: Final = MappingProxyType(
    {
        PlaceName.IN_KITCHEN: KITCHEN_DEPTH_M / 2,
        PlaceName.AT_LINE: KITCHEN_DEPTH_M,
        PlaceName.MID_COURT: (KITCHEN_DEPTH_M + HALF_LENGTH_M) / 2,
        PlaceName.BASELINE: HALF_LENGTH_M,
        PlaceName.BEHIND_BASELINE: HALF_LENGTH_M + BEHIND_BASELINE_M,
    }
)
"""Metres from the net. "In" a zone is its middle."""
