"""Where a lob goes and what its lane is worth: room to the baseline, and the wind's share.

The flight is that of `knowledge.flight`, as `knowledge.wind` asks it; room and scatter are in
closed form here: no lob's window is needed, only what one lane gains over the other.
"""

from __future__ import annotations

import math
from enum import StrEnum
from functools import cache
from typing import Final

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    METRES_PER_FOOT,
    Point,
    at_kitchen_line,
)
from knowledge.effects import Points
from knowledge.normal import normal_cdf
from knowledge.sources import computed
from knowledge.vocabulary import Hand, Side
from knowledge.wind import Launch, Stroke, landing, shift

IN_THE_WIND: Final = "10 mph moves a lob {longer:.0f} to {shorter:.0f} ft; who runs stays."
"""What wind does to whoever runs: nothing to who it is, much to where it comes down."""

LANE = computed("room along the lane, times the scatter of a lob")
FLIGHT = computed("point mass in quadratic drag, no spin")

INSIDE_BASELINE_M: Final = 3 * METRES_PER_FOOT
DEPTH_SCATTER_M: Final = 1.1
DIRECTION_SCATTER_DEG: Final = 5.0
SCATTER_DOUBT: Final = 0.25
"""Where a lob is aimed, how it scatters, and how far that may be off. Common practice."""

KEPT_FOR_SAFETY: Final = 0.5
"""How much of a longer lane's room is left as a margin. Common practice, no source."""

MISS_COSTS: Final = 0.5
"""A miss costs the chance that we would have had: near even in a dink rally."""

OFF_SHOULDER_M: Final = 0.7
"""So far beside the body a ball over the shoulder lands. Common practice."""


class LobLane(StrEnum):
    """Over whoever stands across from us, or over the other one."""

    STRAIGHT = "straight"
    CROSS = "cross"


def landing_over(side: Side, hand: Hand | None) -> Point:
    """Where a lob over a player of that side lands: beyond the non-hitting shoulder if known.

    Their left is on our right, so a right-hander's left shoulder is on the side of larger x.
    """
    stands = at_kitchen_line(side, ours=False)
    shoulder = {Hand.RIGHT: OFF_SHOULDER_M, Hand.LEFT: -OFF_SHOULDER_M}
    x_m = stands.x_m + (shoulder.get(hand, 0.0) if hand is not None else 0.0)
    return Point(x_m=x_m, y_m=HALF_LENGTH_M - INSIDE_BASELINE_M)


def _ends(lane: LobLane) -> tuple[Point, Point]:
    """From our right half: straight is at their left, which stands across from it."""
    side = Side.LEFT if lane is LobLane.STRAIGHT else Side.RIGHT
    return at_kitchen_line(Side.RIGHT, ours=True), landing_over(side, None)


def misses(lane: LobLane, factor: float = 1.0) -> float:
    """The chance that a lob lands long or wide.

    1. long: the same swing in every lane leaves more court behind it where the lane is longer;
    half of that is kept for safety, half goes into depth; 2. wide: the direction scatter across
    the lane against the room to the sideline.
    """
    start, target = _ends(lane)
    length = start.distance_m(target)
    slant = (target.y_m - start.y_m) / length
    extra_m = INSIDE_BASELINE_M / slant + length - _straight_m() - INSIDE_BASELINE_M
    behind_m = INSIDE_BASELINE_M + KEPT_FOR_SAFETY * extra_m
    long = normal_cdf(-behind_m / (factor * DEPTH_SCATTER_M))
    sideways_m = length * math.radians(factor * DIRECTION_SCATTER_DEG) / slant
    wide = normal_cdf(-(HALF_WIDTH_M - abs(target.x_m)) / sideways_m)
    return 1 - (1 - long) * (1 - wide)


def _straight_m() -> float:
    start, target = _ends(LobLane.STRAIGHT)
    return start.distance_m(target)


@cache
def straight_costs() -> Points:
    """What a straight lob costs in misses against a diagonal one; the doubt is the scatter's."""
    each = [
        100 * MISS_COSTS * (misses(LobLane.CROSS, one) - misses(LobLane.STRAIGHT, one))
        for one in (1.0, 1 - SCATTER_DOUBT, 1 + SCATTER_DOUBT)
    ]
    return Points(mean=each[0], sd=max(abs(each[2] - each[1]) / 2, 0.5))


def wind_feet(along_mph: float) -> float:
    """Feet that a wind from behind us carries a lob further; negative in our faces."""
    return shift(Stroke.LOB, along_mph=float(round(along_mph))).along_ft


HIGH_LOB: Final = Launch(speed_mps=15.3, angle_deg=65, height_m=0.5, from_net_m=5.5)
SOFT_BLOCK: Final = Launch(speed_mps=9.3, angle_deg=30, height_m=0.4, from_net_m=5.5)
"""A desperate lob and a soft ball to the kitchen, both from the back: within what lands in."""


@cache
def aloft_s(launch: Launch) -> float:
    """Seconds until a ball struck so comes down."""
    return landing(launch).time_s


def said_in_the_wind() -> str:
    """What a breeze does to a lob that is run for."""
    return IN_THE_WIND.format(longer=wind_feet(10.0), shorter=-wind_feet(-10.0))
