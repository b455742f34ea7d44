"""Where a dink can go: four lanes, and two spots in front of each opponent."""

from __future__ import annotations

from enum import StrEnum

from knowledge.court import (
    HALF_WIDTH_M,
    Point,
    at_kitchen_line,
    net_crossing_x_m,
    net_height_m,
    x_of_side_m,
)
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


def lane_across_m(lane: Lane) -> float:
    """How far a lane goes across the court."""
    start, landing = lane_points(lane)
    return abs(landing.x_m - start.x_m)
