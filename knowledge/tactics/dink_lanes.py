"""Where a dink can go: four lanes, two spots in front of each opponent, and what a lane costs."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from knowledge.court import (
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    NET_HEIGHT_CENTRE_M,
    Point,
    at_kitchen_line,
    net_crossing_x_m,
    net_height_m,
    x_of_side_m,
)
from knowledge.effects import Points
from knowledge.normal import normal_cdf
from knowledge.vocabulary import Side


class Spot(StrEnum):
    """The two feet a dink can be played at."""

    MIDDLE = "middle"
    SIDELINE = "sideline"

    @property
    def other(self) -> Spot:
        return Spot.SIDELINE if self is Spot.MIDDLE else Spot.MIDDLE


class Lane(StrEnum):
    """How the ball gets there from our striker's court."""

    CENTRE = "centre"
    STRAIGHT = "straight"
    WIDE = "wide"
    LINE = "line"


def lane_to(spot: Spot, *, in_front: bool) -> Lane:
    """The lane to a spot of the opponent straight across the net, or of the diagonal one."""
    if in_front:
        return Lane.STRAIGHT if spot is Spot.MIDDLE else Lane.LINE
    return Lane.CENTRE if spot is Spot.MIDDLE else Lane.WIDE


FROM_CENTRE_LINE_M = 0.4
INSIDE_SIDELINE_M = 0.6
LANDING_DEPTH_M = 1.6
"""Where an aimed dink lands. Common practice, no source."""

CLEARANCE_M = 0.20
"""How far over the middle of the net a dink passes. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """A good club player's dink: standard deviations. Common practice, no source."""

    height_m: float = 0.10
    depth_m: float = 0.35
    direction_rad: float = math.radians(4)

    def times(self, factor: float) -> Scatter:
        return Scatter(
            height_m=factor * self.height_m,
            depth_m=factor * self.depth_m,
            direction_rad=factor * self.direction_rad,
        )


USUAL_SCATTER = Scatter()
SCATTER_DOUBT = 0.25
"""How far the usual scatter may be off, as a share of it."""

RALLY_LOST = 0.5
"""What a miss costs: the chance that we would otherwise have had, near even in a dink rally."""

SITTING_UP_COSTS = 0.2
"""Rally chance lost when a dink carries past the kitchen line. Common practice, no source."""


def spot_point(side: Side, spot: Spot) -> Point:
    """Where a dink at a spot of an opponent lands."""
    share = (
        FROM_CENTRE_LINE_M / HALF_WIDTH_M
        if spot is Spot.MIDDLE
        else 1 - INSIDE_SIDELINE_M / HALF_WIDTH_M
    )
    return Point(x_m=x_of_side_m(side, ours=False, share=share), y_m=LANDING_DEPTH_M)


def lane_points(lane: Lane) -> tuple[Point, Point]:
    """Start and landing of a lane from our right court; from the left it is the mirror image."""
    spot = Spot.MIDDLE if lane in (Lane.CENTRE, Lane.STRAIGHT) else Spot.SIDELINE
    in_front = lane in (Lane.STRAIGHT, Lane.LINE)
    side = Side.LEFT if in_front else Side.RIGHT
    return at_kitchen_line(Side.RIGHT, ours=True), spot_point(side, spot)


def lane_net_height_m(lane: Lane) -> float:
    """Height of the net where the lane crosses it."""
    return net_height_m(net_crossing_x_m(*lane_points(lane)))


def miss_cost(lane: Lane, scatter: Scatter = USUAL_SCATTER) -> float:
    """Rally points that misses cost on a lane.

    Method: 1. net: the same arc everywhere, so a higher net leaves less clearance; 2. wide of
    the sideline, by direction; 3. past the kitchen line along the lane, where it sits up;
    4. each chance from a normal scatter, times what it costs.
    """
    start, landing = lane_points(lane)
    length = start.distance_m(landing)
    slant = (landing.y_m - start.y_m) / length
    clearance = CLEARANCE_M - (lane_net_height_m(lane) - NET_HEIGHT_CENTRE_M)
    into_net = normal_cdf(-clearance / scatter.height_m)
    to_sideline = HALF_WIDTH_M - abs(landing.x_m)
    wide = normal_cdf(-to_sideline / (length * scatter.direction_rad * slant))
    to_kitchen_line = (KITCHEN_DEPTH_M - landing.y_m) / slant
    sits_up = normal_cdf(-to_kitchen_line / scatter.depth_m)
    return 100 * (RALLY_LOST * (into_net + wide) + SITTING_UP_COSTS * sits_up)


@cache
def gain_over_line(lane: Lane) -> Points:
    """What a lane saves in misses against down the line; the doubt is the scatter's."""
    gains = [
        miss_cost(Lane.LINE, scatter) - miss_cost(lane, scatter)
        for scatter in (
            USUAL_SCATTER,
            USUAL_SCATTER.times(1 - SCATTER_DOUBT),
            USUAL_SCATTER.times(1 + SCATTER_DOUBT),
        )
    ]
    return Points(mean=gains[0], sd=abs(gains[2] - gains[1]) / 2)
